package main

import (
	"bytes"
	"context"
	"encoding/json"
	"io"
	"path/filepath"
	"strings"
	"testing"

	"github.com/spf13/cobra"
)

// everyCommand calls f for each command that does something.
func everyCommand(t *testing.T, f func(c *cobra.Command)) {
	t.Helper()
	a := &app{out: io.Discard, err: io.Discard}
	n := 0
	var walk func(c *cobra.Command)
	walk = func(c *cobra.Command) {
		if c.Runnable() && !c.Hidden {
			n++
			f(c)
		}
		for _, sub := range c.Commands() {
			walk(sub)
		}
	}
	walk(a.root())
	if n < 10 {
		t.Fatalf("only %d commands found", n)
	}
}

// TestHelp asks every command for help: it says in a line what it does, shows
// an example that begins with its own name, and needs no archive.
func TestHelp(t *testing.T) {
	everyCommand(t, func(c *cobra.Command) {
		if c.Short == "" {
			t.Errorf("%s: says nothing about itself", c.CommandPath())
		}
		found := false
		for _, line := range strings.Split(c.Example, "\n") {
			found = found || strings.HasPrefix(strings.TrimSpace(line), c.CommandPath())
		}
		if !found {
			t.Errorf("%s: no example of its own: %q", c.CommandPath(), c.Example)
		}
		var out, errOut bytes.Buffer
		code := run(context.Background(), append(strings.Fields(c.CommandPath())[1:], "--help"), &out, &errOut)
		if code != exitOK || errOut.Len() > 0 {
			t.Errorf("%s --help: exit %d: %s", c.CommandPath(), code, errOut.String())
		}
		wants(t, out.String(), "Usage:", "Examples:")
	})
}

// TestExamples parses the flags of every example: an example that does not
// work is worse than none.
func TestExamples(t *testing.T) {
	examples := 0
	everyCommand(t, func(c *cobra.Command) {
		for _, line := range strings.Split(c.Example, "\n") {
			words := split(strings.TrimSpace(line))
			if len(words) == 0 || words[0] != "lapwing" {
				continue
			}
			examples++
			a := &app{out: io.Discard, err: io.Discard}
			sub, rest, err := a.root().Find(words[1:])
			if err != nil {
				t.Errorf("%s: %q: %v", c.CommandPath(), line, err)
				continue
			}
			if err := sub.ParseFlags(rest); err != nil {
				t.Errorf("%s: %q: %v", c.CommandPath(), line, err)
				continue
			}
			if err := sub.ValidateArgs(sub.Flags().Args()); err != nil {
				t.Errorf("%s: %q: %v", c.CommandPath(), line, err)
			}
		}
	})
	if examples < 15 {
		t.Errorf("only %d examples found", examples)
	}
}

// split divides a command line as a shell does, for double quotes.
func split(line string) []string {
	var out []string
	for i, part := range strings.Split(line, `"`) {
		if i%2 == 1 {
			out = append(out, part)
			continue
		}
		out = append(out, strings.Fields(part)...)
	}
	return out
}

// TestJSON calls every command with --json: what it prints is JSON and nothing
// else. A command that is on no line here fails the test.
func TestJSON(t *testing.T) {
	dir := twoRuns(t)
	at := func(name string) string { return filepath.Join(dir, name) }
	write(t, dir, map[string]string{"new/alder-bank_2026-01-17.csv": strings.Replace(strings.Replace(fieldSheet(18), "Alder Harriers", "Alder H.", 3), "Alder Harriers", "Alder Plodders", 2)})
	tried := map[string]bool{}
	for _, line := range []string{
		"run",
		"load " + at("new"),
		"load " + at("new") + " --dry-run",
		"sheets",
		"sheets problems",
		"sheets explain alder-bank_2026-01-03.csv:4",
		"sheets withdraw alder-bank_2026-01-10.csv",
		"sheets restore alder-bank_2026-01-10.csv",
		"refresh",
		"rebuild",
		"weekly",
		"weekly --course alder-bank --date 2026-01-03",
		"season --season 2026",
		"standing R1",
		"courses",
		"courses convert 24:31 --from alder-bank --date 2026-01-03",
		"courses audit",
		"correct alder-bank 2026-01-03 5 --time 21:40 --yes",
		"correct --list",
		"correct --undo 1 --yes",
		"clubs",
		"match list",
		"match explain R1",
		"match explain R1 R2",
		"match part R1 R2",
		"match decisions",
		"match undo 3",
		"match join R1 R2",
		"match weights",
		`clubs part "Alder Plodders" "Alder Harriers" --yes`,
		`clubs join "Alder H." "Alder Harriers" --yes`,
		"match export " + at("who.xlsx"),
		"match apply " + at("who.xlsx") + " --partial",
		"export " + at("out"),
		"check",
		"demo " + at("demo"),
	} {
		words := split(line)
		sub, _, err := (&app{out: io.Discard, err: io.Discard}).root().Find(words)
		if err != nil {
			t.Fatal(err)
		}
		tried[sub.CommandPath()] = true
		o := lapwing(t, dir, append(words, "--json")...)
		if o.code != exitOK {
			t.Errorf("lapwing %s --json: exit %d\n%s%s", line, o.code, o.out, o.errOut)
		}
		var v any
		d := json.NewDecoder(strings.NewReader(o.out))
		if err := d.Decode(&v); err != nil {
			t.Errorf("lapwing %s --json prints no JSON: %v\n%s", line, err, o.out[:min(len(o.out), 200)])
			continue
		}
		if d.Decode(&v) != io.EOF {
			t.Errorf("lapwing %s --json prints more than one value", line)
		}
	}
	elsewhere := map[string]bool{"lapwing": true, "lapwing match": true, // these print their help
		"lapwing forget": true} // tested with its own archive
	everyCommand(t, func(c *cobra.Command) {
		if name := c.CommandPath(); !tried[name] && !elsewhere[name] && !strings.HasPrefix(name, "lapwing completion") && name != "lapwing help" {
			t.Errorf("%s --json is not tried; add a line", name)
		}
	})
}

// TestCompletion makes the completion scripts of the shells, and asks for
// completions as a shell does.
func TestCompletion(t *testing.T) {
	for _, shell := range []string{"bash", "zsh", "fish", "powershell"} {
		var out, errOut bytes.Buffer
		if code := run(context.Background(), []string{"completion", shell}, &out, &errOut); code != exitOK {
			t.Errorf("completion %s: exit %d: %s", shell, code, errOut.String())
		}
		wants(t, out.String(), "lapwing")
	}
	var out, errOut bytes.Buffer
	if code := run(context.Background(), []string{"__complete", "sheets", ""}, &out, &errOut); code != exitOK {
		t.Fatalf("exit %d: %s", code, errOut.String())
	}
	wants(t, out.String(), "withdraw", "restore", "problems", "explain")
}

// TestQuiet prints nothing where nothing needs a look.
func TestQuiet(t *testing.T) {
	dir := twoRuns(t)
	for _, line := range []string{"run", "refresh", "check", "export " + filepath.Join(dir, "out")} {
		if o := must(t, dir, append(strings.Fields(line), "--quiet")...); o.out+o.errOut != "" {
			t.Errorf("lapwing %s --quiet says\n%s%s", line, o.out, o.errOut)
		}
	}
}
