package record

import (
	"fmt"
	"slices"
	"testing"

	"lapwing/pipeline/place"
)

// What stands beside a name or a time and sets it in doubt keeps the line from counting; what says
// nothing against it does not.
func TestDoubtedLines(t *testing.T) {
	c := NoColumns()
	c.Name, c.Time, c.Club, c.Notes = 0, 1, 2, 3
	plain := [][]string{{"Ann Fox", "20:10", "Mill", ""}, {"Bo Grey", "20:20", "Mill", ""}, {"Cy Hart", "20:31", "", ""}, {"Di Ince", "20:42", "Quay", ""}, {"Ed Jons", "20:59", "", ""}, {"Fay King", "21:07", "Quay", ""}, {"Gus Lamb", "21:18", "", ""}, {"Hal Moor", "21:26", "", ""}}
	for _, k := range []struct {
		cells  []string
		status Status
		name   string
		ms     int32
	}{
		{[]string{"Ivy Nash?", "21:30", "", ""}, Doubtful, "", 1290000},
		{[]string{"? Ivy Nash", "21:30", "", ""}, Doubtful, "", 1290000},
		{[]string{"Ivy Nash (?)", "21:30", "", ""}, Doubtful, "Ivy Nash", 1290000},
		{[]string{"Ivy ???", "21:30", "", ""}, Doubtful, "", 1290000},
		{[]string{"Ivy Nash (name unclear)", "21:30", "", ""}, Doubtful, "Ivy Nash", 1290000},
		{[]string{"Ivy Nash (or Ann Cole)", "21:30", "", ""}, Doubtful, "", 1290000},
		{[]string{"Ivy Nash -> Ann Cole", "21:30", "", ""}, Doubtful, "", 1290000},
		{[]string{"Ivy Nash D.Q.", "21:30", "", ""}, DQ, "Ivy Nash", 1290000},
		{[]string{"Ivy Nash", "21:30", "", "w/d"}, DNF, "", 1290000},
		{[]string{"Ivy Nash - check", "21:30", "", ""}, Doubtful, "Ivy Nash", 1290000},
		{[]string{"Ivy Nash", "21:30", "", "should be Ann Cole"}, Doubtful, "Ivy Nash", 1290000},
		{[]string{"Ivy Nash", "21:30", "", "Actually Ann Cole"}, Doubtful, "Ivy Nash", 1290000},
		{[]string{"Ivy Nash", "21:30", "", "time should be 21:03"}, Doubtful, "Ivy Nash", 1290000},
		{[]string{"Ivy Nash", "21:03", "", "time should be 21:03; time put right from 21:30: time should be 21:03"}, OK, "Ivy Nash", 1263000},
		{[]string{"Ivy Nash", "21:30", "", "should swap with next"}, Doubtful, "Ivy Nash", 1290000},
		{[]string{"Ivy Nash", "21:30", "", "wrong, see next"}, Doubtful, "Ivy Nash", 1290000},
		{[]string{"Ivy Nash", "21:30", "", "corrected from 21:03"}, OK, "Ivy Nash", 1290000},
		{[]string{"Ivy Nash", "21:30", "", "actually enjoyed it"}, OK, "Ivy Nash", 1290000},
		{[]string{"Ivy Nash", "*21:30", "", ""}, OK, "Ivy Nash", 1290000},
		{[]string{"Ivy\u00A0Nash", "21\u00A0min\u00A030\u00A0s", "", ""}, OK, "Ivy Nash", 1290000},
		{[]string{"Ivy NashtrÃ\u00A0-Ell", "21:30", "", ""}, OK, "Ivy NashtrÃ\u00A0-Ell", 1290000},
		{[]string{"Ivy Nash\u00A0DNF", "21:30", "", ""}, DNF, "Ivy Nash", 1290000},
		{[]string{"Ivy\u202FNash", "21:30", "", "did\u00A0not\u00A0finish"}, DNF, "Ivy Nash", 1290000},
		{[]string{"Ivy Nash (2 km)", "21:30", "", ""}, Doubtful, "Ivy Nash", 1290000},
		{[]string{"Ivy Nash (removed)", "21:30", "", ""}, Doubtful, "Ivy Nash", 1290000},
		{[]string{"~~Ivy Nash~~", "21:30", "", ""}, Doubtful, "", 1290000},
		{[]string{"Mill Runners B", "21:30", "", ""}, Doubtful, "", 1290000},
		{[]string{"Ivy Nash\nAnn Cole", "21:30", "", ""}, Doubtful, "", 1290000},
		{[]string{"Ivy\nNash", "21:30", "", ""}, OK, "", 1290000},
		{[]string{"Dad", "21:30", "", ""}, Unnamed, "", 1290000},
		{[]string{"Walker 2", "21:30", "", ""}, Unnamed, "", 1290000},
		{[]string{"Poppy", "21:30", "", ""}, OK, "Poppy", 1290000},
		{[]string{"Ivy Nash (Short)", "21:30", "", ""}, OK, "", 1290000},
		{[]string{"Ivy Nash (PB)", "21:30", "", ""}, OK, "", 1290000},
		{[]string{"Jos? Nash", "21:30", "", ""}, OK, "", 1290000},
		{[]string{"Ivy Nash", "21:30", "did not start", ""}, Doubtful, "", 1290000},
		{[]string{"Ivy Nash", "21:30", "DNF", ""}, Doubtful, "", 1290000},
		{[]string{"Ivy Nash", "21:30", "disqualified", ""}, Doubtful, "", 1290000},
		{[]string{"Ivy Nash", "21:30", "", "please check"}, Doubtful, "", 1290000},
		{[]string{"Ivy Nash", "21:30", "기권", ""}, Doubtful, "", 1290000},
		{[]string{"Ivy Nash", "21:30", "未完赛", ""}, Doubtful, "", 1290000},
		{[]string{"Ivy Nash", "21:30", "D N F", ""}, Doubtful, "", 1290000},
		{[]string{"Ivy Nash", "21:30", "", "unfinished"}, DNF, "", 1290000},
		{[]string{"Ivy Nash", "21:30", "", "unfinished business next week"}, OK, "", 1290000},
		{[]string{"Ivy Nash", "21:30", "", "cramp, out at 3 km"}, Doubtful, "", 1290000},
		{[]string{"Ivy Nash", "21:30", "", "shoes checked"}, OK, "", 1290000},
		{[]string{"Ivy Nash", "21:30 (23:30)", "", ""}, Doubtful, "", 1290000},
		{[]string{"Ivy Nash", "21:30~", "", ""}, Doubtful, "", 1290000},
		{[]string{"Ivy Nash", "21:30 provisional", "", ""}, Doubtful, "", 1290000},
		{[]string{"Ivy Nash", "21:30 from photo", "", ""}, OK, "", 1290000},
		{[]string{"Ivy Nash", "21 1/2 min", "", ""}, OK, "", 1290000},
		{[]string{"Ivy Nash", "21½", "", ""}, OK, "", 1290000},
		{[]string{"Ivy Nash", "21 and a half", "", ""}, OK, "", 1290000},
		{[]string{"Ivy Nash", "21.5 min", "", ""}, OK, "", 1290000},
		{[]string{"Ivy Nash", "21:30¹", "", ""}, OK, "", 1290000},
		{[]string{"Ivy Nash", "21.5", "", ""}, Doubtful, "", 1310000},
		{[]string{"Ivy Nash", "21:304", "", ""}, Doubtful, "", 0},
	} {
		lines, _ := readRows(t, c, nil, Options{DistanceM: 5000}, func(yield func([]string)) {
			for _, row := range plain {
				yield(row)
			}
			yield(k.cells)
		})
		l := lines[len(plain)]
		if l.Status != k.status || l.TimeMS != k.ms || k.name != "" && l.Name != k.name {
			t.Errorf("%q is %v %q, %d ms (%v); want %v %q, %d ms", k.cells, l.Status, l.Name, l.TimeMS, l.Problems, k.status, k.name, k.ms)
		}
		for _, l := range lines[:len(plain)] {
			if l.Status != OK {
				t.Errorf("beside %q %s is %v", k.cells, l.Name, l.Status)
			}
		}
	}
}

// The same name in another order or with a title is the same person, and one time out of the
// order of a list without places is told.
func TestOtherOrderOfName(t *testing.T) {
	lines := []Line{{Row: 1, Position: 1, Name: "Sue Hallam", Club: "Quay", TimeMS: 1200000}, {Row: 2, Position: 2, Name: "Hallam, Sue", Club: "Quay", TimeMS: 1200000}, {Row: 3, Position: 3, Name: "Jo Lee", TimeMS: 1230000}, {Row: 4, Position: 4, Name: "Mr Jo Lee", TimeMS: 1250000}}
	CheckRun(lines, 5000)
	if lines[1].Status == OK || lines[3].Status == OK {
		t.Errorf("%v, %v", lines[1].Status, lines[3].Status)
	}
	lines = []Line{{Row: 1, Name: "Jo Lee", TimeMS: 1230000}, {Row: 2, Position: 1, Name: "Jo Lee", TimeMS: 1230000}}
	if CheckRun(lines, 5000); lines[0].Status != Repeat || lines[1].Status != OK {
		t.Errorf("of a winner named above the list, %v and in it %v", lines[0].Status, lines[1].Status)
	}
	lines = nil
	for i := range int32(20) {
		lines = append(lines, Line{Row: i + 1, Name: string(rune('A'+i)) + " Lee", TimeMS: 1200000 + 10000*i})
	}
	if found := CheckRun(lines, 5000); len(found) > 0 {
		t.Error(found)
	}
	lines[9].TimeMS += 60000
	if found := CheckRun(lines, 5000); len(found) != 1 || found[0].Place.Row != 10 {
		t.Error(found)
	}
}

// A note that may bear on a result is pointed out and changes nothing; one that can't is not.
func TestNotesToRead(t *testing.T) {
	c := NoColumns()
	c.Name, c.Time, c.Notes = 0, 1, 2
	rows := [][]string{{"Ann Fox", "20:10", ""}, {"Bo Grey", "20:20", "was 21:25 on my watch"}, {"Cy Hart", "20:31", "best 19:40"}, {"Di Ince", "20:42", "was 20:55 by phone"}, {"Ed Jons", "20:59", "fell at 3 km"}, {"Fay King", "", "was 21:25 on my watch"}}
	lines, _ := readRows(t, c, nil, Options{DistanceM: 5000}, func(yield func([]string)) {
		for _, row := range rows {
			yield(row)
		}
	})
	for i, want := range []bool{false, true, false, true, false, false} {
		told := slices.ContainsFunc(lines[i].Problems, func(p place.Problem) bool { return p.Kind == "note-may-bear" && p.Severity == place.Look })
		if told != want || rows[i][1] != "" && lines[i].Status != OK {
			t.Errorf("%v: told %v, %v", rows[i], told, lines[i].Status)
		}
	}
}

// A name that is written as hardly any other is, or has a remark that may bear on it, is pointed out.
func TestNamesToLookAt(t *testing.T) {
	c := NoColumns()
	c.Name, c.Time = 0, 1
	names := []string{"Ann Fox", "Bo Grey", "Cy Hart", "Di Ince", "Ed Jons", "Fay King", "Gus Lamb", "Hal Moor", "Ivy Nash"}
	for odd, want := range map[string]bool{"same": true, "as 4": true, "1 hour": true, "Ann Cole (at home)": true, "Ann Cole (Tom Hexton's number)": true, "Ann Cole - ran early": true,
		"Ann Cole": false, "Poppy": false, "ann cole": false, "van der Berg": false, "Ann Cole (Mill Farm)": false, "Ann Cole - Mill": false} {
		lines, _ := readRows(t, c, nil, Options{DistanceM: 5000}, func(yield func([]string)) {
			for i, n := range append(slices.Clone(names), odd) {
				yield([]string{n, fmt.Sprintf("20:%02d", i)})
			}
		})
		for i := range lines {
			told := slices.ContainsFunc(lines[i].Problems, func(p place.Problem) bool { return p.Kind == "name-to-look-at" })
			if told != (want && i == len(names)) || lines[i].Status != OK {
				t.Errorf("%s: line %d told %v, %v", odd, i, told, lines[i].Status)
			}
		}
	}
}
