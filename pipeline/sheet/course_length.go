package sheet

import (
	"regexp"
	"strings"

	"lapwing/pipeline/place"
)

// offLength says that a course was not as long as it should have been, by how much or not:
// "course about 200 m short today", "the turn was placed too early, 300 m short", "300 m zu kurz".
// Common practice, no source.
var offLength = regexp.MustCompile(`(?i)(?:^|[^\pL\d])(?:` +
	`(?:course|route|lap|distance) [^.!?]*?(?:was|is|ran|measured|came out) (?:(?:about|slightly|a bit|a little|rather) )*(?:short|too long)` +
	`|\d{2,4} ?(?:m|metres|meters|yards|yds) (?:too )?(?:short|long)|(?:short|long) by (?:about |approx\.? |approximately |roughly |some )?\d{2,4}` +
	`|\d{2,4} ?m(?:eter)? (?:zu )?(?:kurz|lang)|(?:strecke|runde) (?:war|ist) (?:etwas )?zu (?:kurz|lang)` +
	`|\d{2,4} ?m(?:ètres)? (?:trop|de trop) (?:court|long)|parcours trop (?:court|long)|\d{2,4} ?m(?:etros)? (?:de menos|más corto)|\d{2,4} ?m(?:etri)? (?:in meno|più corto)|\d{2,4} ?m(?:eter)? te (?:kort|lang)` +
	`)(?:[^\pL\d]|$)`)

// saysOffLength says whether a line tells that of this run, and of none before or after it. One that
// gives a distance is read as that (distance.go).
func saysOffLength(line string) bool {
	if len(line) > 300 || ofAnotherRun(line) || saysSince(line) {
		return false
	}
	return offLength.MatchString(line)
}

// sayOffLength points out such a line over or under the results: times of a short course are no bests.
func (p *Part) sayOffLength(sheet string) {
	say := func(row int, line string) {
		p.problem(sheet, row, -1, place.Look, "course-length-said", line, "the course at its full length",
			`The sheet says that the course was short or long. If it was, type lapwing correct COURSE DATE --state "short by 200 m" (or "long by 50 m"), with the right number, so that its times count as no bests.`)
	}
	for _, t := range p.Titles[:max(0, len(p.Titles)-p.lent)] {
		if saysOffLength(t) {
			say(0, t)
			return
		}
	}
	for _, sk := range p.Skipped {
		if strings.IndexByte(sk.Text, ' ') > 0 && saysOffLength(sk.Text) {
			say(sk.Row, sk.Text)
			return
		}
	}
}
