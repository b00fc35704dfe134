package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// What a course's sheets were read by is remembered: next week's sheet with
// the same headings is read the same way though it does not show it, a changed
// heading is told in words, and a rebuild reads all as they were read.
func TestSheetsReadAsBefore(t *testing.T) {
	dir := folderWith(t, map[string]string{
		"w1/alder-bank_2026-01-03.csv": "Pos,Name,Group,Time\n1,Jo Lee,M40,18.33\n2,Sam Roe,M35,19.75\n3,Ann Hill,W45,20.90\n4,Bo Marsh,M50,22.83\n",
		"w2/alder-bank_2026-01-10.csv": "Pos,Name,Group,Time\n1,Jo Lee,M40,18.33\n2,Sam Roe,M35,19.15\n3,Ann Hill,W45,20.50\n4,Bo Marsh,M50,22.23\n",
		"w2/ember-quay_2026-01-10.csv": "Pos,Name,Group,Time\n1,Di Fox,W40,18.33\n2,Sam Roe,M35,19.15\n3,Ann Hill,W45,20.50\n4,Bo Marsh,M50,22.23\n",
		"w3/alder-bank_2026-01-17.csv": "Pos,Name,Cat,Time\n1,Jo Lee,M40,18:33\n2,Sam Roe,M35,19:15\n",
	})
	must(t, dir, "load", filepath.Join(dir, "w1"))
	o := must(t, dir, "load", "--dry-run", filepath.Join(dir, "w2", "alder-bank_2026-01-10.csv"))
	wants(t, o.out, "Remembered: alder-bank has had sheets with these headings before, the latest alder-bank_2026-01-03.csv", "time=decimal minutes", "place 1, Jo Lee, time 18:20")
	must(t, dir, "load", filepath.Join(dir, "w2"))
	wants(t, must(t, dir, "sheets", "explain", "alder-bank_2026-01-10.csv:3").out, "minutes as a decimal number", "time as before=decimal minutes", "Time: 19:09")
	// another course's sheets are none of its
	wants(t, must(t, dir, "sheets", "explain", "ember-quay_2026-01-10.csv:3").out, "Time: 19:15")
	o = must(t, dir, "load", filepath.Join(dir, "w3"))
	wants(t, o.out, `the headings of alder-bank have changed since alder-bank_2026-01-10.csv: "Cat" is new, "Group" is gone. All is read as before`)

	results := func() string {
		must(t, dir, "export", filepath.Join(dir, "out"))
		data, err := os.ReadFile(filepath.Join(dir, "out", "results.csv"))
		if err != nil {
			t.Fatal(err)
		}
		return string(data)
	}
	before := results()
	must(t, dir, "rebuild")
	if after := results(); after != before || strings.Count(before, "\n") != 15 {
		t.Errorf("after a rebuild:\n%s\nbefore:\n%s", after, before)
	}
	// a sheet that proves another reading is read by what it proves
	proof := filepath.Join(dir, "alder-bank_2026-01-24.csv")
	if err := os.WriteFile(proof, []byte("Pos,Name,Cat,Time\n1,Jo Lee,M40,18.33\n2,Sam Roe,M35,19.75\n3,Ann Hill,W45,20.50\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	wants(t, must(t, dir, "load", "--dry-run", proof).out, "time 18:20")
}

// Of gun and chip times those count that the places of an earlier sheet with these headings
// followed, also where the places of this week's follow both; an answer says so as well.
func TestTimesThatCountAsBefore(t *testing.T) {
	const head = "Place,Name,Chip Time,Gun Time\n"
	dir := folderWith(t, map[string]string{
		"w1/alder-bank_2026-01-03.csv": head + "1,Jo Lee,18:20,18:27\n2,Sam Roe,18:25,18:26\n3,Ann Hill,18:40,18:44\n4,Bo Marsh,19:05,19:06\n5,Di Fox,19:30,19:39\n6,Ed Gow,20:01,20:02\n",
		"w2/alder-bank_2026-01-10.csv": head + "1,Jo Lee,18:22,18:29\n2,Sam Roe,18:35,18:36\n3,Ann Hill,18:50,18:54\n4,Bo Marsh,19:15,19:16\n5,Di Fox,19:40,19:49\n6,Ed Gow,20:11,20:12\n",
		"w2/ember-quay_2026-01-10.csv": head + "1,Al Ing,18:22,18:29\n2,Cy Orr,18:35,18:36\n3,Flo Day,18:50,18:54\n4,Gus Low,19:15,19:16\n5,Hal Job,19:40,19:49\n6,Ida Kay,20:11,20:12\n",
		"w3/ember-quay_2026-01-17.csv": head + "1,Al Ing,18:23,18:30\n2,Cy Orr,18:36,18:37\n3,Flo Day,18:51,18:55\n4,Gus Low,19:16,19:17\n5,Hal Job,19:41,19:50\n6,Ida Kay,20:12,20:13\n",
	})
	must(t, dir, "load", filepath.Join(dir, "w1"))
	must(t, dir, "load", filepath.Join(dir, "w2"))
	wants(t, must(t, dir, "sheets", "explain", "alder-bank_2026-01-10.csv:2").out, "official as before=Chip Time", "Time: 18:22")
	wants(t, must(t, dir, "sheets", "explain", "ember-quay_2026-01-10.csv:2").out, "Time: 18:29", `if it counts, load the sheet with --answer "official=Chip Time"`)
	must(t, dir, "load", filepath.Join(dir, "w3"), "--answer", "official=Chip Time")
	wants(t, must(t, dir, "sheets", "explain", "ember-quay_2026-01-17.csv:2").out, "Time: 18:23")
	must(t, dir, "rebuild")
	wants(t, must(t, dir, "sheets", "explain", "alder-bank_2026-01-10.csv:2").out, "Time: 18:22")
	wants(t, must(t, dir, "sheets", "explain", "ember-quay_2026-01-17.csv:2").out, "Time: 18:23")
}

// The first sheet with gun and chip times says which of them count, and how to have it the
// other way round; one that shows it, and the next of the same headings, says nothing.
func TestFirstSheetSaysWhichTimesCount(t *testing.T) {
	const rows = "1,Jo Lee,18:33,18:30\n2,Sam Roe,19:15,19:11\n3,Ann Hill,20:30,20:24\n"
	inFolder(t, map[string]string{
		"sheets/alder-bank_2026-01-03.csv": "Pos,Name,Gun Time,Chip Time\n" + rows,
		"sheets/alder-bank_2026-01-10.csv": "Pos,Name,Gun Time,Chip Time\n" + strings.ReplaceAll(rows, ":3", ":4"),
		"sheets/ember-quay_2026-01-03.csv": "Pos,Name,Gun Time,Chip Time\n1,Jo Lee,18:33,18:30\n2,Sam Roe,19:15,18:40\n3,Ann Hill,19:01,18:50\n4,Bo Marsh,22:50,22:41\n5,Di Fox,22:45,22:44\n6,Al Fenn,24:10,24:01\n7,Vi Holt,24:02,24:02\n",
	})
	const asked = `the times under "Gun Time" count, those under "Chip Time" do not (the gun time is the official time of a road race). To have it the other way round: lapwing sheets withdraw "alder-bank_2026-01-03.csv", then load it with --answer "official=Chip Time"`
	wants(t, plainly(t, "load", "alder-bank_2026-01-03.csv").out, asked)
	for _, quiet := range []string{"alder-bank_2026-01-10.csv", "ember-quay_2026-01-03.csv"} {
		if out := plainly(t, "load", quiet).out; strings.Contains(out, "count, those under") {
			t.Errorf("%s: %s", quiet, out)
		}
	}
	plainly(t, "sheets", "withdraw", "alder-bank_2026-01-03.csv")
	plainly(t, "load", "alder-bank_2026-01-03.csv", "--answer", "official=Chip Time")
	wants(t, plainly(t, "sheets", "explain", "alder-bank_2026-01-03.csv:2").out, "Time: 18:30")
}

// Changed headings are told with what they do to the reading: what is not read any more,
// and what is taken for something by its values alone.
func TestWhatChangedHeadingsDo(t *testing.T) {
	const rows = "1,Jo Lee,%sM40,18:33\n2,Sam Roe,%sM35,19:15\n3,Ann Hill,%sW45,20:30\n4,Bo Marsh,%sM50,22:50\n5,Di Fox,%sW40,23:01\n"
	inFolder(t, map[string]string{
		"sheets/alder-bank_2026-01-03.csv": "Pos,Name,Age,Group,Time\n" + strings.ReplaceAll(rows, "%s", "41,"),
		"sheets/alder-bank_2026-01-10.csv": "Pos,Name,Group,Zeitxy\n" + strings.ReplaceAll(rows, "%s", ""),
	})
	plainly(t, "load", "alder-bank_2026-01-03.csv")
	out := plainly(t, "load", "alder-bank_2026-01-10.csv").out
	wants(t, out, `"Zeitxy" is new, "Age" and "Time" are gone. No column is taken for the age any more; "Zeitxy" is taken for the time by what stands in it. To see how each is read: lapwing load "alder-bank_2026-01-10.csv" --dry-run`)
}

// A name that stands in two columns now is not lost, nor is one in the other half of a result.
func TestNamesInTwoColumnsAreNamesStill(t *testing.T) {
	inFolder(t, map[string]string{
		"sheets/alder-bank_2026-01-03.csv":   "Pos,Name,Time\n1,Jo Lee,18:33\n2,Sam Roe,19:15\n3,Ann Hill,20:30\n",
		"sheets/alder-bank_2026-01-10.csv":   "Pos,First name,Surname,Time\n1,Jo,Lee,18:34\n2,Sam,Roe,19:16\n3,Ann,Hill,20:31\n",
		"sheets/alder-bank_2026-01-17 t.csv": "Pos,Time\n1,18:34\n2,19:16\n3,20:31\n",
	})
	plainly(t, "load", "alder-bank_2026-01-03.csv")
	for _, name := range []string{"alder-bank_2026-01-10.csv", "alder-bank_2026-01-17 t.csv"} {
		out := plainly(t, "load", name).out
		wants(t, out, "the headings of alder-bank have changed")
		if strings.Contains(out, "No column is taken for") {
			t.Errorf("%s: %s", name, out)
		}
	}
}

// What a person says of a sheet that says otherwise itself is told, and so is a run on another
// weekday than all others of its course.
func TestSlipsOfTheHandAreTold(t *testing.T) {
	files := map[string]string{
		"sheets/m.csv": "Mill Lane 5k\nSunday 22 November 2026\nPos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n3,Cy Dee,18:40\n",
		"sheets/n.csv": "Pos,Name,Time\n1,Jo Lee,18:27\n2,Al Roe,18:38\n3,Cy Dee,18:47\n",
	}
	for i, day := range []string{"2026-10-03", "2026-10-10", "2026-10-17", "2026-10-24"} {
		files["sheets/alder-bank_"+day+".csv"] = strings.ReplaceAll(files["sheets/n.csv"], "18:", fmt.Sprintf("%d:", 19+i))
	}
	inFolder(t, files)
	plainly(t, "load", "sheets")
	plainly(t, "sheets", "withdraw", "m.csv")
	wants(t, plainly(t, "load", "m.csv", "--course", "alder-bank", "--date", "2026-11-21").out,
		`it is taken for alder-bank 2026-11-21, as you say; the sheet itself says mill-lane 2026-11-22. If the sheet is right: lapwing sheets withdraw "m.csv", then load it without --course and --date`)
	wants(t, plainly(t, "load", "n.csv", "--course", "alder-bank", "--date", "2026-11-06").out, "6 November 2026 is a Friday; all 5 other runs of alder-bank are on a Saturday")
	if out := plainly(t, "load", "n.csv", "--course", "alder-bank", "--date", "2026-11-07").out; strings.Contains(out, "slip") {
		t.Error(out)
	}
}
