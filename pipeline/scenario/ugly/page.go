package ugly

import (
	"fmt"
	"strings"

	"lapwing/pipeline/unit"
)

func textRow(s ...string) row {
	var r row
	for _, x := range s {
		r.cells = append(r.cells, text(x))
	}
	return r
}

// swapped is the other reading of a date in figures, day and month exchanged;
// ok where there is one that differs.
func swapped(d unit.Day) (unit.Day, bool) {
	y, m, dd := d.Date()
	if dd > 12 || dd == m {
		return 0, false
	}
	return unit.NewDay(y, dd, m), true
}

// titles writes the lines from which course and date are found, by the
// plan's source, and says whether they can be.
func (g *gen) titles(p plan, l *language, r *run) (rows []row, hold Hold, asks string) {
	c, d := r.course.name, r.day
	_, _, dd := d.Date()
	// figures are settled by a day over 12, or by the weekday of the course
	figures := Load
	if s, ok := swapped(d); ok && s.Weekday() == d.Weekday() {
		figures = MayHold
	}
	switch p["source"] {
	case "title-words":
		return []row{textRow(c + " – " + l.results + " – " + l.words(d, true))}, Load, ""
	case "title-event":
		return []row{textRow(fmt.Sprintf("%s 5 km, %s no. %d, %s", c, l.results, 100+int(d)%300, l.words(d, false)))}, Load, ""
	case "title-upper":
		return []row{textRow(strings.ToUpper(c + " – " + l.words(d, true)))}, Load, ""
	case "title-typo": // one letter is missing; the other sheets of the course have it
		r := []rune(c)
		return []row{textRow(string(r[:3]) + string(r[4:]) + " – " + l.words(d, true))}, MayHold, ""
	case "file-figures":
		return nil, figures, ""
	case "title-short":
		s := l.words(d, false)
		if p["language"] == "en" {
			y, m, _ := d.Date()
			s = fmt.Sprintf("%s %s %d", ordinal(dd), l.months[m-1][:3], y)
		}
		return []row{textRow(c + " " + s)}, Load, ""
	case "title-figures":
		return []row{textRow(c + " " + l.results + " " + slashed(d))}, figures, ""
	case "title-dots":
		return []row{textRow(c + ", " + dottedDay(d))}, figures, ""
	case "two-digit-year":
		y, m, dd := d.Date()
		return []row{textRow(fmt.Sprintf("%s %d/%d/%02d", c, dd, m, y%100))}, figures, ""
	case "title-month-first":
		y, m, dd := d.Date()
		if figures == MayHold { // nothing would settle it
			return []row{textRow(c, isoDate(d))}, Load, ""
		}
		if dd <= 12 && dd != m { // the weekday in words settles it
			return []row{textRow(fmt.Sprintf("%s %s, %s %d/%d/%d", c, l.results, l.days[d.Weekday()], m, dd, y))}, figures, ""
		}
		return []row{textRow(fmt.Sprintf("%s %s %d/%d/%d", c, l.results, m, dd, y))}, Load, ""
	case "title-iso":
		return []row{textRow(c, isoDate(d))}, Load, ""
	case "labels":
		return []row{textRow(l.venue + ": " + c), textRow(l.when + ": " + l.words(d, g.rng.IntN(2) == 0))}, Load, ""
	case "labels-cells":
		date := dateCell(slashed(d), d, "dd/mm/yyyy")
		if p.text() {
			date = text(l.words(d, false))
		}
		return []row{textRow(l.venue, c), {cells: []cell{text(l.when), date}}}, Load, ""
	case "split":
		return []row{textRow(c + " " + l.results)}, Load, ""
	case "printed-on":
		return []row{textRow(c + " " + l.results), textRow("Run on " + languages["en"].words(d, true) + ", printed " + languages["en"].words(d+2, false))}, Load, ""
	case "no-date":
		return []row{textRow(c + " " + l.results)}, Must, "date"
	case "no-course":
		return []row{textRow(l.results + " " + l.words(d, true))}, Must, "course"
	case "two-dates":
		return []row{textRow(c + " " + l.results + " " + l.words(d, true)), textRow(l.words(d-7, true))}, Must, "two dates"
	case "title-not-file": // the name is three days older: somebody misread a calendar
		return []row{textRow(c + " " + l.results + " " + l.words(d, true))}, MayHold, "two dates"
	case "tab":
		return []row{textRow(c + " " + l.results)}, Load, ""
	case "sections":
		return []row{textRow(c + " – " + l.words(d, true))}, Load, ""
	}
	return nil, Load, ""
}

// page lays a table out with what stands above, between and below it.
func (g *gen) page(p plan, l *language, title, heading, rows []row) tab {
	rng := g.rng
	var t tab
	switch p["top"] {
	case "title":
		t.rows = append(t.rows, textRow(l.results))
	case "blank-title":
		t.rows = append(t.rows, row{}, textRow(l.results), row{})
	case "block":
		t.rows = append(t.rows, textRow("Weather", "dry, light wind"), textRow("Volunteers", "14"), textRow("Finishers", fmt.Sprint(len(rows))))
	case "prose":
		t.rows = append(t.rows, textRow("A lovely morning by the water. Thanks to our 14 volunteers, without whom there would be no run."),
			textRow("Please send corrections to the desk before Wednesday 18:00."))
	}
	t.rows = append(t.rows, title...)
	for i := range t.rows {
		if len(t.rows[i].cells) == 1 {
			t.merged = append(t.merged, i)
		}
	}
	if len(t.rows) > 0 && rng.IntN(2) == 0 {
		t.rows = append(t.rows, row{})
	}
	t.rows = append(t.rows, heading...)
	data := 0
	per := 20 + rng.IntN(20)
	pages := (len(rows) + per - 1) / per
	for i, r := range rows {
		if i > 0 && i%per == 0 && len(r.lines) > 0 {
			switch p["paging"] {
			case "headings":
				t.rows = append(t.rows, heading...)
			case "numbered":
				t.rows = append(t.rows, textRow(fmt.Sprintf("Page %d of %d", i/per, pages)), row{})
				t.rows = append(t.rows, title...)
				t.rows = append(t.rows, heading...)
			case "blank":
				t.rows = append(t.rows, row{}, row{})
			}
		}
		if p["blank"] == "between" && i > 0 && i%5 == 0 {
			t.rows = append(t.rows, row{})
		}
		t.rows = append(t.rows, r)
		data += len(r.lines)
	}
	t.rows = append(t.rows, g.bottom(p, l, heading, rows)...)
	return t
}

func (g *gen) bottom(p plan, l *language, heading, rows []row) []row {
	var named []*finisher
	for _, r := range rows {
		for _, f := range r.lines {
			if f.class == OK {
				named = append(named, f)
			}
		}
	}
	if len(named) == 0 {
		return nil
	}
	f := named[0]
	switch p["bottom"] {
	case "totals":
		return []row{{}, textRow("Total finishers", fmt.Sprint(len(rows))), textRow("Average time", "28:41"), textRow("Men", "31", "Women", "28")}
	case "prose":
		return []row{{}, textRow("Next week's run starts at 9:00 as usual. 3 volunteers still needed."), textRow("* personal best")}
	case "winners":
		return []row{{}, textRow("First home", f.who.name(), mss(f.ms/1000*1000)), textRow("Fastest ever here", "Ruth Penderwick", "17:02"), textRow("1st team", "Marlsby AC", "12 points")}
	case "volunteers":
		return []row{{}, textRow("Volunteers"), textRow("Timekeeper", "Iris Farworth"), textRow("Finish tokens", "Neil Coxhurst"), textRow("Marshal", f.who.name())}
	case "records":
		return []row{{}, textRow("Course records"), textRow("M40", "Alan Elmstone", "16:58", "3 March 2019"), textRow("W40", "Helen Norridge", "18:41", "7 July 2018")}
	case "column-totals":
		r := row{}
		for i := range heading[len(heading)-1].cells {
			switch i {
			case 0:
				r.cells = append(r.cells, text("Total"))
			case 1:
				r.cells = append(r.cells, integer(len(rows)))
			default:
				r.cells = append(r.cells, cell{kind: isBlank})
			}
		}
		return []row{r}
	}
	return nil
}

// spread moves a tab right, adds blank rows and columns.
func (p plan) spread(t *tab) {
	switch p["blank"] {
	case "leading-columns":
		for i := range t.rows {
			if len(t.rows[i].cells) > 0 {
				t.rows[i].cells = append([]cell{{kind: isBlank}, {kind: isBlank}}, t.rows[i].cells...)
			}
		}
		t.merged = nil
	case "trailing-columns":
		for i := range t.rows {
			for k := 0; k < 12; k++ {
				t.rows[i].cells = append(t.rows[i].cells, cell{kind: isBlank})
			}
		}
	case "thousands":
		wide := row{}
		for k := 0; k < 6; k++ {
			wide.cells = append(wide.cells, cell{kind: isBlank})
		}
		for k := 0; k < 3000; k++ {
			t.rows = append(t.rows, wide)
		}
	}
}

// fileName gives the name by the plan's source; i keeps names apart.
func (g *gen) fileName(p plan, l *language, r *run, i int, ext string) string {
	d := r.day
	y, m, dd := d.Date()
	any := pick(g.rng, []string{"results %04d", "Book1 (%d)", "export_%d", "New sheet %d", "uitslag-%d", "final FINAL %d", "scan%05d"})
	any = fmt.Sprintf(any, i)
	en := languages["en"]
	switch p["source"] {
	case "file":
		return fmt.Sprintf("%s_%s%s.%s", r.course.slug, d, pick(g.rng, []string{"", "", "_results", "_final", "_v2"}), ext)
	case "file-spaces":
		return fmt.Sprintf("%s %s results.%s", r.course.name, d, ext)
	case "file-compact":
		return fmt.Sprintf("%s_%04d%02d%02d.%s", strings.ReplaceAll(r.course.slug, "-", "_"), y, m, dd, ext)
	case "file-words":
		return fmt.Sprintf("%s - %d %s %d.%s", r.course.name, dd, en.months[m-1], y, ext)
	case "file-results-first":
		return fmt.Sprintf("Results - %s - %s.%s", r.course.name, d, ext)
	case "file-figures":
		return fmt.Sprintf("%s %02d-%02d-%d.%s", r.course.name, dd, m, y, ext)
	case "folder":
		return fmt.Sprintf("%s/%s.%s", r.course.slug, d, ext)
	case "split", "no-course":
		if p["source"] == "no-course" {
			return any + "." + ext
		}
		return fmt.Sprintf("%s results (%d).%s", d, i, ext)
	case "title-not-file":
		return fmt.Sprintf("%s_%s.%s", r.course.slug, d-3, ext)
	}
	return any + "." + ext
}
