package main

import (
	"fmt"
	"strings"
	"testing"
	"time"
)

// What is typed with a slip is told, and nothing is kept of it.
func TestAnswersWithASlip(t *testing.T) {
	inFolder(t, map[string]string{"sheets/results.csv": "Pos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n"})
	wants(t, plainly(t, "load", "results.csv").out, "course missing", "--course NAME --date YEAR-MONTH-DAY")
	for _, c := range []struct{ args, says string }{
		{"--course|NAME|--date|2026-10-03", "write the name of the course"},
		{"--course|???", "write the name of the course"},
		{"--course|alder-bank|--date|YEAR-MONTH-DAY", "is not a date: write the year, the month and the day in figures"},
		{"--course|alder-bank|--date|2026-02-30", `there is no day "2026-02-30"`},
		{"--course|alder-bank|--date|03/10/2026", "is not a date"},
		{"--distance|NUMBER km", "write it as in 5 km"},
		{"--answer|year=YEAR", "write the year in place of YEAR"},
		{"--answer|tiem=mm.ss", "answers no question"},
		{"--answer|time=mm-ss", "one of: mm:ss"},
		{"--answer|date order=day", `"date order=dmy" (day first)`},
		{"--answer|sex V=male", `"sex V=W"`},
		{"--answer|weekday=Monday", `"weekday=any"`},
		{"--answer|start=HOURS:MINUTES", `"start=9:00"`},
		{"--answer|start=9.00", `"start=9:00"`},
		{"--answer|first=MINUTES:SECONDS", `"first=17:45"`},
		{"--answer|first=0:45", `"first=17:45"`},
		{"--answer|clock=both", `"clock=own" (each runner's own)`},
	} {
		o := plainly(t, append([]string{"load", "results.csv"}, strings.Split(c.args, "|")...)...)
		if o.code != exitUsage || !strings.Contains(o.errOut, c.says) {
			t.Errorf("%s: exit %d, %s", c.args, o.code, o.errOut)
		}
	}
	wants(t, plainly(t, "sheets").out, "waiting", "course missing")
}

// A course that somebody says and that is new is told, with the one that it may be a
// slip of; a day to come is told too.
func TestAnswersThatMayBeSlips(t *testing.T) {
	inFolder(t, map[string]string{
		"sheets/alder-bank_2026-10-03.csv": fieldSheet(12),
		"sheets/a.csv":                     "10 October 2026\nPos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n",
		"sheets/b.csv":                     "Alder Bank\nPos,Name,Time\n1,Jo Lee,18:21\n2,Al Roe,18:32\n",
	})
	if o := plainly(t, "load", "alder-bank_2026-10-03.csv"); o.code != exitOK {
		t.Fatal(o.out, o.errOut)
	}
	out := plainly(t, "load", "a.csv", "--course", "alder bnak").out
	wants(t, out, "New course: alder-bnak, 5 km, in a.csv", `If that is alder-bank: lapwing sheets withdraw "a.csv"; then lapwing load "sheets/a.csv" --course alder-bank`)
	for _, line := range []string{"sheets|withdraw|a.csv", "load|sheets/a.csv|--course|alder-bank"} {
		if o := plainly(t, strings.Split(line, "|")...); o.code != exitOK || strings.Contains(o.out, "New course") {
			t.Errorf("%s: exit %d: %s%s", line, o.code, o.out, o.errOut)
		}
	}
	write(t, ".", map[string]string{"sheets/c.csv": "Pos,Name,Time\n1,Jo Lee,18:23\n2,Al Roe,18:34\n"})
	wants(t, plainly(t, "load", "c.csv", "--course", "alder bamk", "--date", "2026-10-17").out,
		`then lapwing load "sheets/c.csv" --course alder-bank --date "2026-10-17"`)
	write(t, ".", map[string]string{"sheets/d.csv": "Alder Bank, 3 January 2062\nPos,Name,Time\n1,Jo Lee,18:25\n2,Al Roe,18:35\n"})
	for range 2 {
		wants(t, plainly(t, "load", "d.csv").out, "date far ahead", "3 January 2062", `lapwing load "sheets/d.csv" --date YEAR-MONTH-DAY`)
	}
	wants(t, plainly(t, "load", "d.csv", "--date", "2026-10-24").out, "1 sheet loaded")
	late := time.Now().AddDate(1, 0, 0).Format("2006-01-02")
	wants(t, plainly(t, "load", "b.csv", "--date", late).out, "a day that is still to come", `lapwing sheets withdraw "b.csv"`)
}

// What is asked of a sheet that is loaded is answered with the printed line, at once, and
// is gone then; in the list it stands with its answers.
func TestAnswerOfALoadedSheet(t *testing.T) {
	inFolder(t, map[string]string{
		"sheets/alder-bank_2026-10-03.csv": "Pos,Name,Sex,Time\n1,Ana Sol,V,20:01\n2,Ben Orr,W,21:02\n3,Cy Ash,V,22:02\n4,Di Fay,W,22:09\n",
		"sheets/alder-bank_2026-10-10.csv": "Pos,Name,Time\n1,Ana Sol,20:01\n3,Ben Orr,21:02\n9,Cy Ash,22:02\n14,Di Fay,22:09\n",
	})
	if o := plainly(t, "load", "sheets"); o.code != exitOK {
		t.Fatal(o.out, o.errOut)
	}
	out := plainly(t, "sheets", "problems").out
	wants(t, out, "What does V stand for in this column?", `--answer "sex V=M"`, `--answer "sex V=W"`, "if the sheet holds only some of the field:")
	if strings.Contains(out, "sex unreadable") {
		t.Errorf("each row is complained of, too:\n%s", out)
	}
	for _, line := range []string{`lapwing load "sheets/alder-bank_2026-10-03.csv" --answer "sex V=M"`, `lapwing load "sheets/alder-bank_2026-10-10.csv" --kind excerpt`} {
		if o := throughShell(t, out, line); o.code != exitOK {
			t.Errorf("%s: exit %d: %s%s", line, o.code, o.out, o.errOut)
		}
	}
	if out = plainly(t, "sheets", "problems").out; strings.Contains(out, "sex") || strings.Contains(out, "positions") {
		t.Errorf("after the answers:\n%s", out)
	}
}

// Where the courses are known and few, each is an answer ready to be typed; beyond the
// problems that are shown the others are counted by their kind; and a sheet that can only
// be mended says how it is taken out.
func TestAnswersOfferWhatIsKnown(t *testing.T) {
	rows := ""
	for i := 1; i <= 40; i++ {
		time := fmt.Sprintf("%d:%02d", 20+i/2, i%60)
		if i > 26 {
			time = "24.a"
		}
		rows += fmt.Sprintf("%d,%c%c Oak,%s\n", i, 'A'+i%26, 'a'+i/2, time)
	}
	inFolder(t, map[string]string{
		"sheets/alder-bank_2026-10-03.csv": fieldSheet(12),
		"sheets/x.csv":                     "24 October 2026\nPos,Name,Time\n1,Zed Zonk,18:20\n2,Yul Yonk,18:31\n",
		"sheets/alder-bank_2026-10-10.csv": "Pos,Name,Time\n" + rows,
		"sheets/alder-bank_2026-10-17.csv": "Pos,Name,Lap 1\n1,Ana Sol,7:01\n2,Ben Orr,7:02\n3,Cy Ash,7:22\n4,Di Fay,7:29\n5,Ed Gil,7:33\n",
	})
	plainly(t, "load", "alder-bank_2026-10-03.csv")
	out := plainly(t, "load", "sheets").out
	wants(t, out, `lapwing load "sheets/x.csv" --course alder-bank`, "if it is another course:", `--course NAME`, `taken out with: lapwing sheets withdraw "alder-bank_2026-10-17.csv"`)
	if o := throughShell(t, out, `lapwing load "sheets/x.csv" --course alder-bank`); o.code != exitOK {
		t.Error(o.out, o.errOut)
	}
	wants(t, plainly(t, "sheets", "problems", "alder-bank_2026-10-10.csv").out, "… and 4 more: 4 time unreadable")
}

// A time that the sheet has not, and those on it are counted from, is answered without touching it; it
// holds for that sheet, after a rebuild too, and not for next week's, which may have started later.
func TestAnswersOfOneDay(t *testing.T) {
	stamps := func(s string) string {
		return "Pos,Name,Time\n1,Ana Sol,9:20:0" + s + "\n2,Ben Orr,9:21:0" + s + "\n3,Cy Ash,9:22:02\n4,Di Fay,9:23:09\n5,Ed Gow,9:24:10\n6,Fay Ho,9:25:11\n7,Gus Orr,9:26:30\n"
	}
	gaps := func(s string) string {
		return "Pos,Name,Gap\n1,Ana Sol,-\n2,Ben Orr,1:0" + s + "\n3,Cy Ash,2:02\n4,Di Fay,3:09\n5,Ed Gow,4:10\n"
	}
	for _, c := range []struct {
		name, answer, time string
		sheet              func(string) string
	}{
		{"start", "start=9:01", "Time: 21:02", stamps},
		{"first", "first=19:00", "Time: 21:02", gaps},
	} {
		dir := inFolder(t, map[string]string{"sheets/alder-bank_2026-10-03.csv": c.sheet("1")})
		wants(t, plainly(t, "load", "sheets").out, "--answer \""+c.name+"=")
		if o := plainly(t, "load", "sheets/alder-bank_2026-10-03.csv", "--answer", c.answer); o.code != exitOK {
			t.Fatal(c.name, o.out, o.errOut)
		}
		for range 2 {
			wants(t, plainly(t, "sheets", "explain", "alder-bank_2026-10-03.csv:4").out, c.time, "by an answer")
			plainly(t, "rebuild")
		}
		write(t, dir, map[string]string{"sheets/alder-bank_2026-10-10.csv": c.sheet("4")})
		wants(t, plainly(t, "load", "sheets").out, "1 waits for an answer", "--answer \""+c.name+"=")
	}
}

// What somebody said of a sheet is not asked again of next week's with the same headings:
// the meaning of a letter, that it is an excerpt, its distance. It is said, and can be taken
// back; a sheet that does not ask it is not touched.
func TestAnswersAreRemembered(t *testing.T) {
	sexes := func(a, b string) string {
		return "Pos,Name,Sex,Time\n1,Ana Sol,V,20:0" + a + "\n2,Ben Orr,W,21:02\n3,Cy Ash,V,22:0" + b + "\n4,Di Fay,W,22:19\n"
	}
	gaps := func(s string) string {
		return "Place,Name,Time\n1,Ana Sol,20:0" + s + "\n5,Ben Orr,21:0" + s + "\n9,Cy Ash,22:02\n14,Di Fay,22:09\n"
	}
	short := func(s string) string {
		return "Place,Name,Time\n1,Kit Moss,7:1" + s + "\n2,Lily Moss,7:3" + s + "\n3,Ben Orr,8:02\n4,Zoe Orr,8:40\n5,Max Hale,9:12\n"
	}
	watches := func(s string) string {
		return "Place,Name,T1,T2\n1,Ana Sol,20:0" + s + ",19:58\n2,Ben Orr,21:0" + s + ",20:59\n3,Cy Ash,22:02,22:00\n4,Di Fay,22:09,22:05\n"
	}
	halves := func(s string) string {
		return "1,Ana,Sol,20:0" + s + "\n2,Ben,Orr,21:0" + s + "\n3,Cy,Ash,22:02\n4,Di,Fay,22:09\n"
	}
	for _, c := range []struct {
		name, first, next, answer, note string
		asks                            []string
	}{
		{"letter", sexes("1", "2"), sexes("3", "4"), `--answer "sex V=M"`, "", []string{"What does V stand for"}},
		{"watches", watches("1"), watches("4"), `--answer "column T2=time"`, "", []string{"Say which counts"}},
		{"halves of names", halves("1"), halves("4"), `--answer "column B=given-name" --answer "column C=family-name"`, "", []string{"Say which has the first names"}},
		{"excerpt", gaps("1"), gaps("4"), "--kind excerpt", "it was taken for an excerpt, some of the field", []string{"many positions missing"}},
		{"distance", short("0"), short("1"), `--distance "2 km"`, "it was taken for a run over 2 km", []string{"Over which distance"}},
	} {
		dir := inFolder(t, map[string]string{"sheets/alder-bank_2026-10-03.csv": c.first})
		out := plainly(t, "load", "sheets").out + plainly(t, "sheets", "problems").out
		wants(t, out, c.asks...)
		line := `lapwing load "sheets/alder-bank_2026-10-03.csv" ` + c.answer
		if o := throughShell(t, line, line); o.code != exitOK {
			t.Fatal(c.name, o.out, o.errOut)
		}
		write(t, dir, map[string]string{"sheets/alder-bank_2026-10-10.csv": c.next})
		wants(t, plainly(t, "load", "sheets", "--dry-run").out, c.note)
		out = plainly(t, "load", "sheets").out
		wants(t, out, "1 sheet loaded", c.note)
		problems := plainly(t, "sheets", "problems").out
		for _, asked := range c.asks {
			if strings.Contains(out+problems, asked) {
				t.Errorf("%s: asked again:\n%s%s", c.name, out, problems)
			}
		}
		plainly(t, "rebuild")
		if again := plainly(t, "sheets", "problems").out; strings.Contains(again, c.asks[0]) {
			t.Errorf("%s: after a rebuild:\n%s", c.name, again)
		}
	}
}
