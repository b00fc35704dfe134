package main

import (
	"io"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// readme gives the README and, in order, its indented blocks.
func readme(t *testing.T) (whole string, blocks []string) {
	t.Helper()
	data, err := os.ReadFile(filepath.Join("..", "..", "README.md"))
	if err != nil {
		t.Fatal(err)
	}
	block := ""
	for _, line := range strings.Split(string(data), "\n") {
		switch text, indented := strings.CutPrefix(line, "    "); {
		case indented:
			block += text + "\n"
		case block != "" && line == "":
			block += "\n"
		case block != "":
			blocks = append(blocks, strings.TrimSpace(block))
			block = ""
		}
	}
	return string(data), blocks
}

// blockWith is the one block that holds a text.
func blockWith(t *testing.T, blocks []string, text string) string {
	t.Helper()
	for _, b := range blocks {
		if strings.Contains(b, text) {
			return b
		}
	}
	t.Fatalf("the README has no block with %q", text)
	return ""
}

// What the README shows of the demo is what the demo gives.
func TestReadmeShowsTheDemo(t *testing.T) {
	_, blocks := readme(t)
	dir := demo(t, 0)
	must(t, dir, "run")
	oneLine := func(s string) string { return strings.Join(strings.Fields(s), " ") }

	writeup, err := os.ReadFile(filepath.Join(dir, "reports", "osierholm-meadow_2026-04-18.txt"))
	if err != nil {
		t.Fatal(err)
	}
	shown := strings.Split(blockWith(t, blocks, "people finished"), "\n\n")
	if len(shown) != 2 {
		t.Fatalf("%d paragraphs of the write-up are shown", len(shown))
	}
	for _, paragraph := range shown {
		if !strings.Contains(oneLine(string(writeup)), oneLine(paragraph)) {
			t.Errorf("the write-up has no\n%s\nbut is\n%s", paragraph, writeup)
		}
	}

	shown = strings.Split(blockWith(t, blocks, "sheets explain"), "\n")
	sheet := regexp.MustCompile(`"(.*)"`).FindStringSubmatch(shown[0])
	if sheet == nil || len(shown) < 6 {
		t.Fatalf("what is shown of an explanation: %q", shown)
	}
	explained := must(t, dir, "sheets", "explain", sheet[1]).out
	for _, line := range shown[2:] {
		if !strings.Contains(explained, line+"\n") {
			t.Errorf("the explanation has no line %q:\n%s", line, explained)
		}
	}
}

// Every command that the README or the guide for developers names is there, with the
// flags beside it, and every setting is taken.
func TestReadmeNamesWhatIsThere(t *testing.T) {
	whole, blocks := readme(t)
	developers, err := os.ReadFile(filepath.Join("..", "..", "DEVELOPERS.md"))
	if err != nil {
		t.Fatal(err)
	}
	a := &app{out: io.Discard, err: io.Discard}
	command := regexp.MustCompile("(?:`|\n    (?:\\./)?|; |&& )(?:\\./)?lapwing((?: --archive A)? [a-z][^`;&\n]*)")
	n := 0
	for _, m := range command.FindAllStringSubmatch(whole+string(developers), -1) {
		args := strings.Fields(strings.TrimPrefix(m[1], " --archive A"))
		root := a.root()
		root.InitDefaultCompletionCmd(args...)
		found, _, err := root.Find(args)
		if err != nil || found == found.Root() {
			t.Errorf("there is no command lapwing%s", m[1])
			continue
		}
		n++
		for _, arg := range args {
			if name, ok := strings.CutPrefix(strings.Trim(arg, "()`,.;"), "--"); ok && found.Flag(name) == nil && found.InheritedFlags().Lookup(name) == nil && name != "help" {
				t.Errorf("lapwing%s: there is no flag --%s", m[1], name)
			}
		}
	}
	if n < 30 {
		t.Errorf("only %d commands were found in the texts", n)
	}

	dir := folderWith(t, nil)
	write(t, dir, map[string]string{"lapwing.toml": blockWith(t, blocks, "date_order")})
	must(t, dir, "sheets")
}
