package sheet

import (
	"fmt"
	"regexp"

	"lapwing/pipeline/place"
)

// The answers about times that a sheet has not, and that those on it are counted from.
const (
	StartAnswer = "start" // the time of day at the start, "9:00" or "9:00:15"
	FirstAnswer = "first" // the first runner's time, "17:45", where the others' are those behind it
	ClockAnswer = "clock" // OneClock or OwnClock, where each runner had a start of his own
)

// What the times beside starts of each runner's own are.
const (
	OneClock = "one" // of one clock, that went on from the first start
	OwnClock = "own" // each runner's own
)

// saidTimes are these answers, in seconds; 0 or "" where nobody gave one.
type saidTimes struct {
	start, first                    float64
	clock                           string
	startUsed, firstUsed, clockUsed bool
}

func newSaidTimes(o Options) saidTimes {
	start, _ := StartSeconds(o.StartSaid)
	first, _ := FirstSeconds(o.FirstSaid)
	return saidTimes{start: start, first: first, clock: o.ClockSaid}
}

var (
	saidClock = regexp.MustCompile(`^([01]?\d|2[0-3]):[0-5]\d(:[0-5]\d)?$`)
	saidFirst = regexp.MustCompile(`^(\d{1,3}|[01]:[0-5]\d):[0-5]\d([.,]\d{1,3})?$`)
)

// StartSeconds reads a time of day as it is answered, in seconds from midnight.
func StartSeconds(s string) (float64, bool) {
	if !saidClock.MatchString(s) {
		return 0, false
	}
	if len(s) <= len("09:00") {
		s += ":00" // hours and minutes, not minutes and seconds
	}
	return looseNumber(s), true
}

// FirstSeconds reads the time of a first runner as it is answered, in seconds; only times that a run takes.
func FirstSeconds(s string) (float64, bool) {
	if !saidFirst.MatchString(s) {
		return 0, false
	}
	v := looseNumber(s)
	return v, v >= leastFirst && v <= mostFirst
}

// Bounds of the time of the first runner of a weekly run, of 3 km or of a half marathon, s. Our own
// measure.
const leastFirst, mostFirst = 8 * 60, 2 * 3600

// askFirst asks for the time from which those of a column are counted.
func (s *settler) askFirst(p *Part, sheet string, headingRow, column int) {
	p.problem(sheet, headingRow, column, place.Waits, "times-behind-first", s.headings[column], "running times",
		"The times are those behind the first. What was the first runner's time? Or add a column headed Time with each runner's own, and load the sheet again.")
	p.Problems[len(p.Problems)-1].Answers = place.AnswerLines(place.Answer{Flags: fmt.Sprintf("--answer %q", FirstAnswer+"=MINUTES:SECONDS")})
}

// askStart asks for the time of day from which those of a column are counted.
func (s *settler) askStart(p *Part, sheet string, headingRow, column int) {
	wrong := ""
	if at := s.lex.times.start; at > 0 {
		wrong = fmt.Sprintf(" From a start at %s they would be no times of a run.", clockText(int64(at*1000)))
	}
	p.problem(sheet, headingRow, column, place.Waits, "time-column-missing", rowText(s.headings), "running times, or a column with the time of the start",
		"The times are times of day."+wrong+" At what time was the start? If each runner had another, write it into a column headed Start, and load the sheet again.")
	p.Problems[len(p.Problems)-1].Answers = place.AnswerLines(place.Answer{Flags: fmt.Sprintf("--answer %q", StartAnswer+"=HOURS:MINUTES"), When: "with its seconds, as in 9:00:15, if they are known"})
}

// askClock asks whether times are those of one clock, unless that is answered: each runner had another start.
func (s *settler) askClock(p *Part, sheet string, headingRow, offset int) {
	said := &s.lex.times
	if said.clock == OwnClock {
		said.clockUsed = true
		return
	}
	p.problem(sheet, headingRow, offset, place.Waits, "handicap-in-time", rowText(s.headings), "running times",
		"Each runner has another start. Are the times those of one clock, or each runner's own? Or add a column headed Net time, and load the sheet again.")
	flag := fmt.Sprintf("--answer \"%s=%%s\"", ClockAnswer)
	answers := []place.Answer{{Flags: fmt.Sprintf(flag, OwnClock), When: "if they are each runner's own"}}
	if s.startedAfter(offset) && s.profiles[offset].shareOf(kClock, kInt) > .8 {
		answers = append([]place.Answer{{Flags: fmt.Sprintf(flag, OneClock), When: "if they are of one clock, so that each start is to be taken off"}}, answers...)
	}
	p.Problems[len(p.Problems)-1].Answers = place.AnswerLines(answers...)
}

// askUnusedTimes holds a sheet of which somebody has answered a time that nothing on it is counted from.
func (s *Sheet) askUnusedTimes(o Options, said saidTimes) {
	ask := func(key, value, expected, why string) {
		s.Parts[0].problem(s.Name, 0, -1, place.Waits, "answer-unused", key+"="+value, expected, why+" Put the answer right, or leave it out.")
	}
	const nothingFrom = "Nothing on this sheet could be counted from that time."
	if said.start > 0 && !said.startUsed {
		ask(StartAnswer, o.StartSaid, "the time of day at the start, of a sheet that has times of day at the finish, so that nearly all took from 8 minutes to 4 hours", nothingFrom)
	}
	if said.clock != "" && !said.clockUsed {
		ask(ClockAnswer, o.ClockSaid, "a sheet with one column of times and one of starts that differ from runner to runner", "This sheet has no such columns.")
	}
	if said.first > 0 && !said.firstUsed {
		ask(FirstAnswer, o.FirstSaid, "the first runner's time, of a sheet that has the times behind it", nothingFrom)
	}
}
