package main

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// inFolder makes a folder and goes there, as the weekly volunteer does: every path that
// is printed can be typed.
func inFolder(t *testing.T, files map[string]string) string {
	dir := folderWith(t, files)
	t.Chdir(dir)
	return dir
}

// plainly calls the program in this process, in the folder of the test.
func plainly(t *testing.T, args ...string) outcome {
	t.Helper()
	var out, errOut bytes.Buffer
	code := run(context.Background(), args, &out, &errOut)
	return outcome{code, out.String(), errOut.String()}
}

// typed runs the first line of an output that starts as given, as somebody would type
// it.
func typed(t *testing.T, out, start string) outcome {
	t.Helper()
	for _, line := range strings.Split(out, "\n") {
		line = strings.TrimSpace(line)
		if !strings.HasPrefix(line, start) {
			continue
		}
		var args []string
		for i, part := range strings.Split(strings.TrimPrefix(line, "lapwing "), "\"") {
			if i%2 == 1 {
				args = append(args, part)
			} else {
				args = append(args, strings.Fields(part)...)
			}
		}
		return plainly(t, args...)
	}
	t.Fatalf("no line starts with %q:\n%s", start, out)
	return outcome{}
}

// A question is asked once, with the lines that answer it, which can be typed as they
// stand; the setting that answers all such is named, and answers it.
func TestQuestionWithItsAnswers(t *testing.T) {
	files := func() map[string]string {
		return map[string]string{
			"sheets/old/a.csv": "Alder Bank\n03/10/2026\nPos,Name,Time\n1,Ana Sol,20:01\n2,Ben Orr,21:02\n3,Cy Ash,22:02\n",
		}
	}
	const question = "Which date was the run?"
	for _, args := range [][]string{{"run"}, {"load", "sheets"}, {"load", "old/a.csv", "--dry-run"}} {
		dir := inFolder(t, files())
		o := plainly(t, args...)
		if o.code != exitFailed || strings.Count(o.out, question) != 1 {
			t.Errorf("lapwing %s: exit %d, and the question stands %d times:\n%s", strings.Join(args, " "), o.code, strings.Count(o.out, question), o.out)
		}
		wants(t, o.out, `date_order = "dmy"`, "10 March 2026", "3 October 2026")
		if o = typed(t, o.out, "lapwing load"); o.code != exitOK {
			t.Fatalf("the answer, as printed: exit %d: %s%s", o.code, o.out, o.errOut)
		}
		wants(t, plainly(t, "run").out, "alder-bank, ")
		_ = os.RemoveAll(filepath.Join(dir, "archive"))
		write(t, dir, map[string]string{"lapwing.toml": "date_order = \"dmy\"\n"})
		wants(t, plainly(t, "run").out, "alder-bank, Saturday 3 October 2026")
	}
}

// A sheet that is in the archive is not read anew because something else is said about
// it: the message tells how.
func TestSaidAnewOfALoadedSheet(t *testing.T) {
	inFolder(t, map[string]string{"sheets/alder-bank_2026-10-03.csv": fieldSheet(12)})
	if o := plainly(t, "run"); o.code != exitOK {
		t.Fatal(o.out, o.errOut)
	}
	for _, said := range [][]string{{"--kind", "excerpt"}, {"--answer", "time=h:mm"}, {"--session", "2"}} {
		args := append([]string{"load", "alder-bank_2026-10-03.csv"}, said...)
		o := plainly(t, args...)
		if o.code != exitFailed {
			t.Errorf("%v: exit %d", said, o.code)
		}
		wants(t, o.out, "in the archive already", `lapwing sheets withdraw "alder-bank_2026-10-03.csv"`)
	}
	if o := plainly(t, "load", "alder-bank_2026-10-03.csv", "--course", "alder-bank"); o.code != exitOK {
		t.Errorf("said what the sheet says itself: exit %d: %s", o.code, o.out)
	}
}

// A mile of juniors that was loaded as the run itself is the sheet that is left out,
// also where it came first; that is said once and of no line, and everywhere in the same
// words.
func TestLeftOut(t *testing.T) {
	inFolder(t, map[string]string{
		"sheets/a/juniors.csv": "Alder Bank\n3 October 2026\nPlace,Name,Time,Age\n1,Kit Moss,7:10,9\n2,Lily Moss,7:30,10\n3,Ben Orr,8:02,8\n4,Zoe Orr,8:40,7\n5,Max Hale,9:12,9\n",
		"sheets/b.csv":         "Alder Bank\n3 October 2026\n" + fieldSheet(12),
	})
	wants(t, plainly(t, "load", "a/juniors.csv").out, "distance missing")
	if o := plainly(t, "load", "a/juniors.csv", "--distance", "5 km"); o.code != exitOK { // a slip
		t.Fatal(o.out, o.errOut)
	}
	wants(t, plainly(t, "sheets", "problems").out, "time impossible")
	out := plainly(t, "load", "b.csv").out
	wants(t, out, "juniors.csv: other people or times", "5 lines are left out", "if it is another race of that day", `lapwing load "juniors.csv" --session 2`)
	list := plainly(t, "sheets").out
	for _, line := range strings.Split(list, "\n") {
		if strings.Contains(line, "juniors.csv") != strings.Contains(line, "  left out  ") {
			t.Errorf("the list of sheets: %q", line)
		}
	}
	problems := plainly(t, "sheets", "problems", "--all").out
	wants(t, problems, "juniors.csv: other people or times")
	if strings.Contains(problems, "juniors.csv:") && strings.Contains(problems, "time impossible") {
		t.Errorf("lines of a sheet that is left out are complained of:\n%s", problems)
	}
	wants(t, plainly(t, "sheets", "problems", "--all", "--settled").out, "time impossible", "the sheet is left out")
	plainly(t, "sheets", "withdraw", "juniors.csv")
	if o := plainly(t, "load", "a/juniors.csv", "--session", "2", "--distance", "1 mile"); o.code != exitOK {
		t.Fatal(o.out, o.errOut)
	}
	if list = plainly(t, "sheets").out; strings.Contains(list, "left out") {
		t.Errorf("after the answer:\n%s", list)
	}
	if problems = plainly(t, "sheets", "problems").out; strings.Contains(problems, "juniors") {
		t.Errorf("after the answer:\n%s", problems)
	}
}

// A club that writes neither course nor date answers for the first and the last of its
// numbered sheets, and the others follow.
func TestNumberedSheetsFollow(t *testing.T) {
	files := map[string]string{}
	for n := 1; n <= 12; n++ {
		var b strings.Builder
		b.WriteString("Pos,Name,Time\n")
		for k := range 10 {
			fmt.Fprintf(&b, "%d,%s %s,%d:%02d\n", k+1, []string{"Ana", "Ben", "Cy", "Dee", "Eli"}[(k+n)%5], []string{"Sol", "Orr", "Ash"}[(k+n*k)%3]+"ley", 20+k, (7*n+3*k)%60)
		}
		files[fmt.Sprintf("sheets/Run %d.csv", n)] = b.String()
	}
	inFolder(t, files)
	got := plainly(t, "load", "sheets")
	for _, say := range []string{"and 2 more sheets wait", "Once one of them has its course", "Run 12.csv\" --course NAME --date YEAR-MONTH-DAY"} {
		if got.code != 1 || !strings.Contains(got.out, say) {
			t.Errorf("no %q in\n%s", say, got.out)
		}
	}
	plainly(t, "load", "sheets/Run 1.csv", "--course", "Alder Bank")
	if got = plainly(t, "load", "sheets/Run 1.csv", "--date", "2026-01-03"); got.code != 0 {
		t.Error(got)
	}
	if got = plainly(t, "run"); !strings.Contains(got.out, "answer the first and the last") || strings.Contains(got.out, "--course NAME") {
		t.Errorf("after the course and the first date\n%s", got.out)
	}
	if got = plainly(t, "load", "sheets/Run 12.csv", "--date", "2026-03-21"); got.code != 0 || !strings.Contains(got.out, "11 sheets loaded") {
		t.Errorf("after the last date\n%s", got.out)
	}
	if got = plainly(t, "run"); got.code != 0 || strings.Contains(got.out, "Waiting") {
		t.Errorf("in the end\n%s", got.out)
	}
}
