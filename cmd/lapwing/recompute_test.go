package main

import (
	"archive/zip"
	"cmp"
	"encoding/csv"
	"encoding/xml"
	"fmt"
	"io"
	"maps"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"
)

// sheetCell is a cell of a workbook as its XML has it (ECMA-376 Part 1, 18.3.1.4).
type sheetCell struct {
	At     string `xml:"r,attr"`
	Type   string `xml:"t,attr"`
	Style  int    `xml:"s,attr"`
	Value  string `xml:"v"`
	Inline string `xml:"is>t"`
}

// bookRows reads a workbook with nothing but a ZIP and an XML reader: for each
// tab its rows of cells, shown by their number format.
func bookRows(t *testing.T, path string) map[string][][]string {
	t.Helper()
	z, err := zip.OpenReader(path)
	if err != nil {
		t.Fatal(err)
	}
	defer z.Close()
	load := func(name string, to any) {
		t.Helper()
		f, err := z.Open(name)
		if err != nil {
			t.Fatal(err)
		}
		defer f.Close()
		b, err := io.ReadAll(f)
		if err == nil {
			err = xml.Unmarshal(b, to)
		}
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
	}
	var styles struct {
		Formats []struct {
			ID   int    `xml:"numFmtId,attr"`
			Code string `xml:"formatCode,attr"`
		} `xml:"numFmts>numFmt"`
		Cells []struct {
			Format int `xml:"numFmtId,attr"`
		} `xml:"cellXfs>xf"`
	}
	load("xl/styles.xml", &styles)
	codes := map[int]string{}
	for _, f := range styles.Formats {
		codes[f.ID] = f.Code
	}
	var book struct {
		Sheets []struct {
			Name string `xml:"name,attr"`
		} `xml:"sheets>sheet"`
	}
	load("xl/workbook.xml", &book)
	out := map[string][][]string{}
	for i, s := range book.Sheets {
		var data struct {
			Rows []struct {
				Cells []sheetCell `xml:"c"`
			} `xml:"sheetData>row"`
		}
		load(fmt.Sprintf("xl/worksheets/sheet%d.xml", i+1), &data)
		for _, r := range data.Rows {
			var row []string
			for _, c := range r.Cells {
				col := 0
				for _, l := range strings.TrimRight(c.At, "0123456789") {
					col = col*26 + int(l-'A') + 1
				}
				for len(row) < col {
					row = append(row, "")
				}
				switch {
				case c.Type == "inlineStr":
					row[col-1] = c.Inline
				case c.Type == "e":
					t.Errorf("%s, tab %s, cell %s holds the error %s", filepath.Base(path), s.Name, c.At, c.Value)
				case c.Value != "":
					n, err := strconv.ParseFloat(c.Value, 64)
					if err != nil {
						t.Fatalf("%s, tab %s, cell %s: %v", filepath.Base(path), s.Name, c.At, err)
					}
					row[col-1] = shownAs(n, codes[styles.Cells[c.Style].Format])
				}
			}
			out[s.Name] = append(out[s.Name], row)
		}
	}
	return out
}

// shownAs is a number in a cell with a number format, as far as the workbooks
// use them.
func shownAs(v float64, code string) string {
	mark := ""
	for _, m := range []string{"=", "~"} {
		if strings.Contains(code, `"`+m+`"`) {
			mark = m
		}
	}
	switch {
	case strings.HasPrefix(code, "[h]:mm:ss"), strings.HasPrefix(code, "m:ss"):
		return clockOf(int(math.Round(v*86400))) + mark
	case strings.HasPrefix(code, "d mmm yyyy"):
		return time.Unix(0, 0).UTC().AddDate(0, 0, int(v)-25569).Format("2 Jan 2006")
	case strings.Contains(code, `" s"`):
		return signed(v, 0, "+") + " s"
	case strings.HasPrefix(code, "0.00"):
		return strconv.FormatFloat(v, 'f', 2, 64) + mark
	case strings.HasPrefix(code, "0.0"):
		return signed(v, 1, "") + mark
	}
	return strconv.FormatFloat(v, 'f', 0, 64) + mark
}

func signed(v float64, digits int, plus string) string {
	s := strconv.FormatFloat(math.Abs(v), 'f', digits, 64)
	switch {
	case strings.Trim(s, "0.") == "":
		return s
	case v < 0:
		return "−" + s
	}
	return plus + s
}

func clockOf(s int) string {
	if s >= 3600 {
		return fmt.Sprintf("%d:%02d:%02d", s/3600, s/60%60, s%60)
	}
	return fmt.Sprintf("%d:%02d", s/60, s%60)
}

// tableOf finds the table of a tab by its headings and gives its rows, cells
// joined by " | " in the order of the headings asked for.
func tableOf(t *testing.T, book map[string][][]string, tab string, heads ...string) []string {
	t.Helper()
	rows, ok := book[tab]
	if !ok {
		rows = book["Lists"]
	}
	var at []int
	var out []string
	for _, r := range rows {
		if at == nil {
			for _, h := range heads {
				if i := slices.Index(r, h); i >= 0 {
					at = append(at, i)
				}
			}
			if len(at) < len(heads) {
				at = nil
			}
			continue
		}
		cells, filled := make([]string, len(at)), 0
		for k, i := range at {
			if i < len(r) {
				if cells[k] = r[i]; cells[k] != "" {
					filled++
				}
			}
		}
		if filled < 2 {
			break
		}
		if slices.Equal(cells, heads) { // written again at the head of a printed page
			continue
		}
		out = append(out, strings.Join(cells, " | "))
	}
	if at == nil {
		t.Fatalf("tab %s has no table with the headings %q", tab, heads)
	}
	return out
}

// line is a row of an exported view.
type line map[string]string

func (l line) is(head string) bool { return l[head] == "true" }

func (l line) int(head string) int {
	n, err := strconv.Atoi(l[head])
	if err != nil {
		return 0
	}
	return n
}

func (l line) num(head string) float64 {
	f, err := strconv.ParseFloat(l[head], 64)
	if err != nil {
		return math.NaN()
	}
	return f
}

func (l line) day() time.Time {
	d, _ := time.Parse(time.DateOnly, l["run_date"])
	return d
}

func exported(t *testing.T, path string) (out []line) {
	t.Helper()
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil || len(rows) < 2 {
		t.Fatalf("%s: %d rows, %v", path, len(rows), err)
	}
	for _, r := range rows[1:] {
		l := line{}
		for i, h := range rows[0] {
			l[h] = r[i]
		}
		out = append(out, l)
	}
	return out
}

func sameRows(t *testing.T, what string, got, want []string, inOrder bool, least int) {
	t.Helper()
	got, want = slices.Clone(got), slices.Clone(want)
	if !inOrder {
		slices.Sort(got)
		slices.Sort(want)
	}
	if len(want) < least {
		t.Errorf("%s: only %d rows worked out, too few to say anything", what, len(want))
	}
	if len(got) != len(want) {
		t.Errorf("%s: %d rows in the workbook, %d worked out", what, len(got), len(want))
	}
	told := 0
	for i := range min(len(got), len(want)) {
		if got[i] != want[i] {
			if told++; told <= 5 {
				t.Errorf("%s, row %d:\n  workbook   %s\n  worked out %s", what, i+1, got[i], want[i])
			}
		}
	}
}

// label is an age group with the letter of its list.
func label(sex, group string) string {
	if group == "" || sex == "" || strings.HasPrefix(group, sex) {
		return group
	}
	return group + " " + sex
}

func competes(l line) bool {
	return slices.Contains([]string{"runner", "walker", "guided"}, l["taking_part_as"]) && (l["status"] == "ok" || l["status"] == "untimed") && l["runner_id"] != ""
}

// ranks of values, lower first, equal ones with "=".
func ranked(v []float64) []string {
	out := make([]string, len(v))
	for i := range v {
		n, level := 1, 0
		for _, x := range v {
			if x < v[i] {
				n++
			}
			if x == v[i] {
				level++
			}
		}
		if out[i] = strconv.Itoa(n); level > 1 {
			out[i] += "="
		}
	}
	return out
}

func dateOf(l line) string { return l.day().Format("2 Jan 2006") }

func percent2(l line) string { return strconv.FormatFloat(l.num("age_grade_pct"), 'f', 2, 64) }

// TestWorkbooksFromTheExport works out the tables of the reports of the demo a
// second time, from the files that lapwing export writes and with code of its
// own, and reads the workbooks with a reader of its own.
func TestWorkbooksFromTheExport(t *testing.T) {
	if testing.Short() {
		t.Skip("SKIPPED, NOT PASSED: the demo district takes a while")
	}
	dir := demo(t, 0)
	must(t, dir, "load", filepath.Join(dir, "sheets"))
	const course, date = "osierholm-meadow", "2026-04-18"
	must(t, dir, "weekly", "--course", course, "--date", date)
	must(t, dir, "season", "--season", "2026")
	must(t, dir, "export", filepath.Join(dir, "out"))
	view := func(name string) []line { return exported(t, filepath.Join(dir, "out", name+".csv")) }
	results, runs, courses, runners, helped := view("results"), view("runs"), view("courses"), view("runners"), view("volunteers")
	slices.SortStableFunc(results, func(a, b line) int {
		return cmp.Or(cmp.Compare(a["run_date"], b["run_date"]), cmp.Compare(a["course"], b["course"]), cmp.Compare(a["session"], b["session"]))
	})
	courseName, person := map[string]string{}, map[string]line{}
	for _, c := range courses {
		courseName[c["course"]] = c["name"]
	}
	for _, r := range runners {
		person[r["runner_id"]] = r
	}

	week := bookRows(t, filepath.Join(dir, "reports", course+"_"+date+".xlsx"))
	var today []line
	for _, r := range results {
		if r["course"] == course && r["run_date"] == date && slices.Contains([]string{"ok", "unnamed", "untimed", "doubtful"}, r["status"]) {
			today = append(today, r)
		}
	}
	slices.SortStableFunc(today, func(a, b line) int { return a.int("position") - b.int("position") })
	checkWeek(t, week, today)

	book := bookRows(t, filepath.Join(dir, "reports", "season_2026.xlsx"))
	var season []line
	for _, r := range results {
		if r["run_date"] >= "2026-01-01" && r.is("counts_run") && r["runner_id"] != "" {
			season = append(season, r)
		}
	}
	checkLeagues(t, book, season, helped, person, courseName)
	checkSeasonLists(t, book, season, results, runs, courses, helped, person, courseName)

	n := map[string]int{}
	for _, r := range results {
		if r.is("counts_time") {
			n[r["runner_id"]]++
		}
	}
	cards := 0
	for _, r := range runners {
		if n[r["runner_id"]] >= 20 && !r.is("protected") && !r.is("hidden") && r["age_group"] != "" && cards < 3 {
			cards++
			must(t, dir, "standing", r["runner_id"], "--xlsx")
			checkCard(t, bookRows(t, filepath.Join(dir, "reports", "standing_"+r["runner_id"]+".xlsx")), r, results, courseName)
		}
	}
	if cards < 3 {
		t.Errorf("only %d cards looked at", cards)
	}
}

func checkWeek(t *testing.T, week map[string][][]string, today []line) {
	t.Helper()
	inGroup, size := map[string]int{}, map[string]int{}
	for _, r := range today {
		if r["age_group"] != "" && !r.is("hidden") {
			size[label(r["sex"], r["age_group"])]++
		}
	}
	var rows, groups []string
	var graded []line
	for _, r := range today {
		place := r["position"]
		if r.is("tied") {
			place += "="
		}
		clock, name, group, within, grade, club := "", r["name"], label(r["sex"], r["age_group"]), "", "", r["club"]
		if r.int("time_s") > 0 {
			clock = clockOf(r.int("time_s"))
		}
		if r["status"] == "unnamed" {
			name = "(not named)"
		}
		if r.is("hidden") || r["status"] == "doubtful" || r["sex"] == "X" && size[group] < 5 {
			group = ""
		}
		certain := !(math.Abs(r.num("age_grade_high")-r.num("age_grade_low")) >= 0.005)
		if r["age_grade_pct"] != "" && !r.is("protected") && !r.is("hidden") && r.is("counts_time") {
			grade = percent2(r)
			if !certain {
				grade += "~"
			} else if competes(r) && r.num("age_grade_pct") < 100 {
				graded = append(graded, r)
			}
		}
		if competes(r) && group != "" && r["sex"] != "" {
			inGroup[group]++
			within = strconv.Itoa(inGroup[group])
			if inGroup[group] <= 3 {
				groups = append(groups, strings.Join([]string{group, within, name, clock, grade, place}, " | "))
			}
		}
		if r.is("protected") || r.is("hidden") || r["status"] == "unnamed" {
			club = ""
		}
		rows = append(rows, strings.Join([]string{place, clock, name, group, within, grade, club, noteOf(r)}, " | "))
	}
	sameRows(t, "Result", tableOf(t, week, "Result", "Place", "Time", "Name", "Group", "In group", "Age grade", "Club", "Note"), rows, true, 30)
	sameRows(t, "Groups", tableOf(t, week, "Groups", "Group", "In group", "Name", "Time", "Age grade", "Place"), groups, false, 15)
	var v []float64
	for _, r := range graded {
		v = append(v, -math.Round(r.num("age_grade_pct")*100))
	}
	var grades []string
	for i, rank := range ranked(v) {
		r := graded[i]
		grades = append(grades, strings.Join([]string{rank, r["name"], label(r["sex"], r["age_group"]), percent2(r), clockOf(r.int("time_s")), r["position"]}, " | "))
	}
	sameRows(t, "Age grade", tableOf(t, week, "Age grade", "Rank", "Name", "Group", "Age grade", "Time", "Place"), grades, false, 15)
}

// noteOf is the note of the result list, from the flags of the export.
func noteOf(r line) string {
	var parts []string
	add := func(sign, margin string) {
		if s := r.int(margin); s > 0 && !r.is("protected") {
			sign += " by "
			if s < 60 {
				sign += fmt.Sprintf("%d s", s)
			} else {
				sign += clockOf(s)
			}
		}
		parts = append(parts, sign)
	}
	if (r["status"] == "ok" || r["status"] == "untimed") && r["runner_id"] != "" && !r.is("hidden") {
		switch {
		case r.is("is_pb"):
			add("PB", "pb_margin_s")
		case r.is("is_course_best"):
			add("CB", "course_best_margin_s")
		case r.is("is_adjusted_best") && !r.is("protected"):
			add("AB", "")
		}
		if r.is("is_newcomer") {
			parts = append(parts, "newcomer")
		} else if r.is("is_visitor") {
			parts = append(parts, "visitor")
		}
		if m := r.int("milestone"); m > 0 {
			parts = append(parts, fmt.Sprintf("%dth run", m)) // all end in 0
		}
		if r.int("pb_streak") >= 3 && !r.is("protected") {
			parts = append(parts, r["pb_streak"]+" PBs running")
		}
	}
	if r["taking_part_as"] != "runner" && !r.is("hidden") {
		parts = append(parts, r["taking_part_as"])
	}
	switch {
	case r["status"] == "doubtful":
		parts = append(parts, "being checked")
	case r["status"] == "untimed" || r["time_s"] == "":
		parts = append(parts, "no time")
	case r.num("age_grade_pct") >= 100 && !r.is("protected") && !r.is("hidden"):
		parts = append(parts, "grade being checked")
	}
	return strings.Join(parts, ", ")
}

// standingLine is a line of a league worked out here.
type standingLine struct {
	id                  string
	total, helped, from int // points, weeks of helping that scored, points from them
	runs                []int
	place               map[string]int // by run
	rank                string
}

func weekOf(d time.Time) string { y, w := d.ISOWeek(); return fmt.Sprint(y, " ", w) }

// rankLines sorts a league: total, best run, next best … to the eleventh, head
// to head, else shared.
func rankLines(lines []*standingLine) {
	key := func(l *standingLine) []int {
		s := slices.Clone(l.runs)
		slices.SortFunc(s, func(a, b int) int { return b - a })
		return append([]int{l.total}, s[:min(11, len(s))]...)
	}
	slices.SortStableFunc(lines, func(a, b *standingLine) int {
		return cmp.Or(slices.Compare(key(b), key(a)), cmp.Compare(len(a.id), len(b.id)), cmp.Compare(a.id, b.id))
	})
	for i := 0; i < len(lines); {
		j := i
		for j < len(lines) && slices.Equal(key(lines[j]), key(lines[i])) {
			j++
		}
		duel(lines[i:j], i+1)
		i = j
	}
}

func duel(group []*standingLine, first int) {
	won := map[*standingLine]int{}
	for _, a := range group {
		for _, b := range group {
			for run, p := range a.place {
				if q, ok := b.place[run]; ok && a != b {
					won[a] += cmp.Compare(q, p)
				}
			}
		}
	}
	slices.SortStableFunc(group, func(a, b *standingLine) int { return won[b] - won[a] })
	if won[group[0]] == won[group[len(group)-1]] {
		for _, l := range group {
			if l.rank = strconv.Itoa(first); len(group) > 1 {
				l.rank += "="
			}
		}
		return
	}
	for i := 0; i < len(group); {
		j := i
		for j < len(group) && won[group[j]] == won[group[i]] {
			j++
		}
		duel(group[i:j], first+i)
		i = j
	}
}

func checkLeagues(t *testing.T, book map[string][][]string, season, helped []line, person map[string]line, courseName map[string]string) {
	t.Helper()
	var league, overall, clubs []string
	for _, course := range slices.Sorted(maps.Keys(courseName)) {
		club := map[string]*standingLine{}
		teams := map[string]map[string][]int{} // run → club → points
		for _, list := range []struct{ sex, name string }{{"W", "women"}, {"M", "men"}, {"", "everybody"}} {
			byRun := map[string][]line{}
			for _, r := range season {
				if r["course"] == course && competes(r) && r["position"] != "" && !r.is("hidden") && (list.sex == "" || person[r["runner_id"]]["sex"] == list.sex) {
					run := r["run_date"] + " " + r["session"]
					if !slices.ContainsFunc(byRun[run], func(x line) bool { return x["runner_id"] == r["runner_id"] }) {
						byRun[run] = append(byRun[run], r)
					}
				}
			}
			of, ran := map[string]*standingLine{}, map[string]map[string]bool{}
			for run, field := range byRun {
				for _, r := range field {
					ahead := 0
					for _, x := range field {
						if x.int("position") < r.int("position") {
							ahead++
						}
					}
					id, points := r["runner_id"], max(1, 100-ahead)
					if of[id] == nil {
						of[id], ran[id] = &standingLine{id: id, place: map[string]int{}}, map[string]bool{}
					}
					of[id].runs, of[id].place[run] = append(of[id].runs, points), ahead
					ran[id][weekOf(r.day())] = true
					if list.sex != "" && !r.is("protected") && r["club"] != "" {
						if teams[run] == nil {
							teams[run] = map[string][]int{}
						}
						teams[run][r["club"]] = append(teams[run][r["club"]], points)
					}
				}
			}
			var lines []*standingLine
			for _, id := range slices.Sorted(maps.Keys(of)) {
				l := of[id]
				sum := 0
				for _, p := range l.runs {
					sum += p
				}
				average := (2*sum + len(l.runs)) / (2 * len(l.runs))
				type score struct {
					points int
					day    string
					helped bool
				}
				var scores []score
				for run := range l.place {
					scores = append(scores, score{max(1, 100-l.place[run]), run, false})
				}
				days := []line{}
				for _, h := range helped {
					if h["runner_id"] == id && h["course"] == course && h["run_date"] >= "2026-01-01" {
						days = append(days, h)
					}
				}
				slices.SortStableFunc(days, func(a, b line) int { return cmp.Compare(a["run_date"], b["run_date"]) })
				for _, h := range days {
					if w := weekOf(h.day()); !ran[id][w] {
						ran[id][w] = true
						l.helped++
						scores = append(scores, score{average, h["run_date"], true})
					}
				}
				slices.SortFunc(scores, func(a, b score) int { return cmp.Or(b.points-a.points, cmp.Compare(a.day, b.day)) })
				for _, s := range scores[:min(10, len(scores))] {
					if l.total += s.points; s.helped {
						l.from += s.points
					}
				}
				lines = append(lines, l)
			}
			rankLines(lines)
			for _, l := range lines {
				row := strings.Join([]string{courseName[course], list.name, l.rank, person[l.id]["name"], strconv.Itoa(l.total), strconv.Itoa(len(l.runs)),
					strconv.Itoa(l.helped), strconv.Itoa(l.from), strconv.Itoa(slices.Max(l.runs))}, " | ")
				if list.sex == "" {
					overall = append(overall, row)
				} else {
					league = append(league, row)
				}
			}
		}
		for run, of := range teams {
			for name, points := range of {
				slices.SortFunc(points, func(a, b int) int { return b - a })
				sum := 0
				for _, p := range points[:min(4, len(points))] {
					sum += p
				}
				if club[name] == nil {
					club[name] = &standingLine{id: name, place: map[string]int{}}
				}
				club[name].runs, club[name].place[run] = append(club[name].runs, sum), -sum
			}
		}
		var lines []*standingLine
		for _, name := range slices.Sorted(maps.Keys(club)) {
			l := club[name]
			s := slices.Sorted(slices.Values(l.runs))
			for _, p := range s[max(0, len(s)-10):] {
				l.total += p
			}
			lines = append(lines, l)
		}
		rankLines(lines)
		for _, l := range lines {
			clubs = append(clubs, strings.Join([]string{courseName[course], l.rank, l.id, strconv.Itoa(l.total), strconv.Itoa(len(l.runs))}, " | "))
		}
	}
	heads := []string{"League", "List", "Rank", "Name", "Points", "Runs", "Weeks helped", "Points from helping", "Best score"}
	sameRows(t, "League", tableOf(t, book, "League", heads...), league, false, 300)
	sameRows(t, "Overall league", tableOf(t, book, "Overall league", heads...), overall, false, 300)
	sameRows(t, "Club league", tableOf(t, book, "Club league", "League", "Rank", "Club", "Points", "Runs"), clubs, false, 20)
}

func checkSeasonLists(t *testing.T, book map[string][][]string, season, results, runs, courses, helped []line, person map[string]line, courseName map[string]string) {
	t.Helper()
	held := map[string]int{}
	var conditions []string
	for _, r := range runs {
		if r["run_date"] < "2026-01-01" {
			continue
		}
		if r["state"] == "held" {
			held[r["course"]]++
		}
		gap := func(head string) string {
			if r[head] == "" {
				return ""
			}
			return signed(r.num(head), 0, "+") + " s"
		}
		conditions = append(conditions, strings.Join([]string{dateOf(r), r["course_name"], r["finishers"], gap("condition_s"), gap("condition_s_low"), gap("condition_s_high")}, " | "))
	}
	sameRows(t, "Conditions", tableOf(t, book, "Conditions", "Date", "Course", "Finishers", "Day against usual", "likely from", "to"), conditions, false, 50)

	at, pbs, days, best := map[string]map[string]int{}, map[string]int{}, map[string]map[string]bool{}, map[string]line{}
	for _, r := range season {
		id := r["runner_id"]
		if r.is("hidden") {
			continue
		}
		if at[id] == nil {
			at[id] = map[string]int{}
		}
		at[id][r["course"]]++
		if r.is("is_pb") {
			pbs[id]++
		}
		certain := !(r.num("age_grade_high")-r.num("age_grade_low") >= 0.005)
		if competes(r) && r.is("counts_time") && certain && r.num("age_grade_pct") < 100 && !r.is("protected") && !person[id].is("protected") {
			if b, ok := best[id]; !ok || r.num("age_grade_pct") > b.num("age_grade_pct") {
				best[id] = r
			}
		}
	}
	for _, h := range helped {
		id := h["runner_id"]
		if p := person[id]; p == nil || p.is("hidden") || h["run_date"] < "2026-01-01" {
			continue
		}
		if at[id] == nil {
			at[id] = map[string]int{}
		}
		if days[id] == nil {
			days[id] = map[string]bool{}
		}
		days[id][h["run_date"]] = true
	}
	var attendance []string
	for id, n := range at {
		ran, home := 0, ""
		for _, c := range slices.Sorted(maps.Keys(n)) {
			if ran += n[c]; home == "" || n[c] > n[home] {
				home = c
			}
		}
		there, share, bests := "", "", strconv.Itoa(pbs[id])
		if home != "" {
			there = strconv.Itoa(n[home])
			p := int(math.Floor(100*float64(n[home])/float64(held[home]) + .5))
			if n[home] < held[home] {
				p = min(p, 99)
			}
			share = strconv.Itoa(max(p, 1))
		}
		if person[id].is("protected") {
			bests = ""
		}
		attendance = append(attendance, strings.Join([]string{person[id]["name"], strconv.Itoa(ran), strconv.Itoa(len(days[id])), courseName[home], there, share, bests}, " | "))
	}
	sameRows(t, "Attendance", tableOf(t, book, "Attendance", "Name", "Ran", "Helped", "Mostly at", "Ran there", "of runs held %", "Bests"), attendance, false, 300)

	var rows []line
	var v []float64
	for _, id := range slices.Sorted(maps.Keys(best)) {
		rows, v = append(rows, best[id]), append(v, -math.Round(100*best[id].num("age_grade_pct")))
	}
	var grades []string
	for i, rank := range ranked(v) {
		r := rows[i]
		grades = append(grades, strings.Join([]string{rank, person[r["runner_id"]]["name"], label(person[r["runner_id"]]["sex"], r["age_group"]), percent2(r),
			clockOf(r.int("time_s")), dateOf(r), courseName[r["course"]]}, " | "))
	}
	sameRows(t, "Age grade of the season", tableOf(t, book, "Age grade", "Rank", "Name", "Group", "Age grade", "Time", "On", "Course"), grades, false, 100)

	var speed []string
	for _, c := range courses {
		gap := func(head string) string {
			if c[head] == "" {
				return ""
			}
			return signed(c.num(head), 0, "+") + " s"
		}
		index := ""
		if c["speed_index"] != "" {
			index = signed(c.num("speed_index"), 1, "")
		}
		speed = append(speed, strings.Join([]string{c["name"], gap("seconds_at_25min"), gap("seconds_low"), gap("seconds_high"), index, c["shared_runners"]}, " | "))
	}
	sameRows(t, "Courses", tableOf(t, book, "Courses", "Course", "Against average", "likely from", "to", "Index", "Shared runners"), speed, false, 5)

	// The fastest of all time, and the records that the sheets hold.
	type list struct{ course, sex, group string }
	bests := map[list]map[string]line{}
	for _, r := range results {
		if !r.is("counts_time") || r["status"] != "ok" || r["runner_id"] == "" || r.is("protected") || r.is("hidden") || r["sex"] != "M" && r["sex"] != "W" {
			continue
		}
		of := []list{}
		if competes(r) {
			of = append(of, list{r["course"], r["sex"], "all time"})
		}
		if r["taking_part_as"] == "runner" || r["taking_part_as"] == "guided" {
			of = append(of, list{r["course"], r["sex"], ""})
			if r["age_group"] != "" {
				of = append(of, list{r["course"], r["sex"], r["age_group"]})
			}
		}
		for _, k := range of {
			if bests[k] == nil {
				bests[k] = map[string]line{}
			}
			if b, ok := bests[k][r["runner_id"]]; !ok || r.int("time_s") < b.int("time_s") {
				bests[k][r["runner_id"]] = r
			}
		}
	}
	var alltime []string
	fastest := map[string]int{} // of a record's list
	sexes := map[string]string{"W": "women", "M": "men"}
	for k, of := range bests {
		var rows []line
		var v []float64
		for _, r := range of {
			rows, v = append(rows, r), append(v, float64(r.int("time_s")))
		}
		name := courseName[k.course] + " | " + label(k.sex, k.group)
		if k.group == "" {
			name = courseName[k.course] + " | " + sexes[k.sex] + ", all ages"
		}
		if k.group != "all time" {
			fastest[name] = int(slices.Min(v))
			continue
		}
		for i, rank := range ranked(v) {
			if n, _ := strconv.Atoi(strings.TrimSuffix(rank, "=")); n <= 10 {
				r := rows[i]
				alltime = append(alltime, strings.Join([]string{courseName[k.course], sexes[k.sex], rank, clockOf(r.int("time_s")), r["name"], dateOf(r)}, " | "))
			}
		}
	}
	sameRows(t, "All time", tableOf(t, book, "All time", "Course", "List", "Rank", "Time", "Name", "On"), alltime, false, 100)
	seen, earlier := 0, 0
	for _, row := range tableOf(t, book, "Records", "Course", "Of", "Time", "Note") {
		c := strings.Split(row, " | ")
		want, ok := fastest[c[0]+" | "+c[1]]
		switch {
		case strings.Contains(c[3], "from before the sheets"):
			if earlier++; ok && clockOf(want) != c[2] && !faster(c[2], clockOf(want)) {
				t.Errorf("Records: %s is slower than %s of the sheets", row, clockOf(want))
			}
		case !ok || clockOf(want) != c[2]:
			t.Errorf("Records: %s, worked out %s", row, clockOf(want))
		default:
			seen++
		}
	}
	if seen < 50 || earlier < 5 {
		t.Errorf("only %d records of the sheets and %d earlier ones looked at", seen, earlier)
	}
}

var clockPattern = regexp.MustCompile(`\d+`)

func faster(a, b string) bool {
	s := func(c string) (n int) {
		for _, p := range clockPattern.FindAllString(c, -1) {
			x, _ := strconv.Atoi(p)
			n = 60*n + x
		}
		return n
	}
	return s(a) < s(b)
}

func checkCard(t *testing.T, book map[string][][]string, who line, results []line, courseName map[string]string) {
	t.Helper()
	id := who["runner_id"]
	ceiling := func(r line) string {
		if r["adjusted_s"] == "" {
			return ""
		}
		return clockOf(int(math.Ceil(r.num("adjusted_s") - 1e-9)))
	}
	var history []string
	own := map[string]bool{}
	for _, r := range results {
		if r["runner_id"] != id || r["status"] == "superseded" || r["status"] == "repeat" {
			continue
		}
		own[r["course"]] = true
		clock, grade := "", ""
		if r.int("time_s") > 0 {
			clock = clockOf(r.int("time_s"))
		}
		if r["age_grade_pct"] != "" {
			grade = percent2(r)
		}
		form := [3]string{}
		if r["form_s"] != "" {
			k := math.Pow(r.num("distance_m")/5000, 1.06)
			for i, h := range []string{"form_s", "form_low", "form_high"} {
				form[i] = clockOf(int(math.Round(k * r.num(h))))
			}
		}
		history = append(history, strings.Join([]string{dateOf(r), courseName[r["course"]], r["position"], clock, ceiling(r), form[0], form[1], form[2], grade}, " | "))
	}
	sameRows(t, id+", History", tableOf(t, book, "History", "Date", "Course", "Place", "Time", "Adjusted", "Form", "likely from", "to", "Grade"), history, true, 20)

	// Everybody once with their best in the group, in every place and span.
	type in struct{ where, when, by string }
	bests := map[in]map[string]float64{}
	put := func(k in, runner string, v float64) {
		if bests[k] == nil {
			bests[k] = map[string]float64{}
		}
		if b, ok := bests[k][runner]; !math.IsNaN(v) && (!ok || v < b) {
			bests[k][runner] = v
		}
	}
	words := map[string]string{"5000": "5 km", "3000": "3 km", "6437": "4 miles"}
	for _, r := range results {
		if r["sex"] != who["sex"] || r["age_group"] != who["age_group"] || !r.is("counts_time") || r["status"] != "ok" || !competes(r) {
			continue
		}
		grade := math.NaN()
		if r.num("age_grade_pct") < 100 && r.num("age_grade_high")-r.num("age_grade_low") < 0.005 {
			grade = -math.Round(100 * r.num("age_grade_pct"))
		}
		for _, when := range []string{"ever", "this season"} {
			if when == "this season" && r["run_date"] < "2026-01-01" {
				continue
			}
			all := "All, " + words[r["distance_m"]]
			put(in{courseName[r["course"]], when, "time"}, r["runner_id"], r.num("time_s"))
			put(in{all, when, "time"}, r["runner_id"], r.num("time_s"))
			put(in{all, when, "adjusted"}, r["runner_id"], math.Ceil(r.num("adjusted_s")-1e-9))
			put(in{all, when, "age grade"}, r["runner_id"], grade)
		}
	}
	var standing []string
	for k, of := range bests {
		mine, ok := of[id]
		if !ok {
			continue
		}
		ahead, level, behind := 0, 0, 0
		for _, v := range of {
			switch {
			case v < mine:
				ahead++
			case v == mine:
				level++
			default:
				behind++
			}
		}
		rank, share := strconv.Itoa(ahead+1), ""
		if level > 1 {
			rank += "="
		}
		if len(of) >= 10 {
			share = strconv.Itoa(100 * behind / (len(of) - 1))
		}
		standing = append(standing, strings.Join([]string{k.where, k.when, rank, strconv.Itoa(len(of)), share, k.by}, " | "))
	}
	sameRows(t, id+", standing", tableOf(t, book, "Card", "Where", "When", "Rank", "of", "Behind, %", "By"), standing, false, 6)
}
