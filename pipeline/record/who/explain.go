package who

import (
	"fmt"
	"math"
	"strings"

	"lapwing/pipeline/unit"
)

// Reason is one part of the evidence in plain words.
type Reason struct {
	Evidence Evidence
	Words    string
	Bits     float64 // positive speaks for one runner, negative against
}

// Explanation is the evidence that two runners are one, as a sum.
type Explanation struct {
	Reasons []Reason // in a fixed order, the starting odds first
	Bits    float64  // their sum
	Chance  float64  // that they are one person, 0..1
}

// String prints one reason a line, as a sum.
func (e Explanation) String() string {
	var b strings.Builder
	for _, r := range e.Reasons {
		fmt.Fprintf(&b, "%+6.1f  %s\n", r.Bits, r.Words)
	}
	fmt.Fprintf(&b, "%+6.1f  together: %s\n", e.Bits, chanceWords(e.Chance))
	return b.String()
}

func chanceWords(p float64) string {
	switch {
	case p > .999:
		return "surely one runner"
	case p > .01:
		return fmt.Sprintf("about %.0f in 100 that this is one runner", 100*p)
	}
	return "hardly one runner"
}

// Explain weighs two runners of the result against one another as they stand.
func (r *Result) Explain(a, b int32) Explanation {
	m := r.m
	lo, hi := min(m.roots[a], m.roots[b]), max(m.roots[a], m.roots[b])
	x, y := m.group.pool[lo], m.group.pool[hi]
	s := m.weighForAsking(x, y)
	return m.explain(&s, x, y)
}

// Step is one join that made a runner: the rows on both sides as they were,
// named by the first row of each by Key, and the evidence.
type Step struct {
	A, B    int32 // rows
	Decided bool  // by a person, whatever the evidence
	Why     Explanation
}

// Steps lists the joins that made a runner, in the order in which they were
// made. A runner whose rows agree in name, sex and number or course needs none.
func (r *Result) Steps(runner int32) []Step {
	m := r.m
	if r.firstRow == nil {
		r.firstRow = make([]int32, len(m.sigs))
		for i := range r.firstRow {
			r.firstRow[i] = -1
		}
		for _, i := range m.lab.order {
			if s := m.sigOf[i]; r.firstRow[s] < 0 {
				r.firstRow[s] = i
			}
		}
	}
	var out []Step
	for i := range m.group.joins {
		j := &m.group.joins[i]
		if m.runner[j.a] != runner {
			continue
		}
		out = append(out, Step{r.firstRow[j.a], r.firstRow[j.b], j.decided, m.explain(&j.why, nil, nil)})
	}
	return out
}

// explain puts a sum into words. x and y are the clusters compared, nil where
// they are gone.
func (m *model) explain(s *sum, x, y *cluster) Explanation {
	few := int32(1)
	if x != nil {
		few = min(x.n, y.n)
	}
	e := Explanation{Bits: s.total, Chance: m.chance(s, few)}
	for ev := Prior; ev < nEvidence; ev++ {
		bits := float64(s.bits[ev])
		if bits == 0 && s.level[ev] == Missing {
			continue
		}
		if w := m.words(ev, s, x, y); w != "" {
			e.Reasons = append(e.Reasons, Reason{ev, w, bits})
		}
	}
	return e
}

func (m *model) words(ev Evidence, s *sum, x, y *cluster) string {
	t := &m.names
	k1, k2 := t.keys[s.names[0]], t.keys[s.names[1]]
	level := s.level[ev]
	switch ev {
	case Prior:
		return fmt.Sprintf("to start with: of about %.0f runners, two taken at random are hardly ever one", m.people)
	case GivenName:
		a, b := t.given.text[k1.given], t.given.text[k2.given]
		if level == Equal {
			return fmt.Sprintf("same given name %q, %s", a, oneIn(t.given.mass[k1.given]))
		}
		return fmt.Sprintf("given names %q and %q: %s", a, b, levelWords[level])
	case FamilyName:
		a, b := t.family.text[k1.family], t.family.text[k2.family]
		switch level {
		case Equal:
			return fmt.Sprintf("same family name %q, %s", a, oneIn(t.family.mass[k1.family]))
		case Swapped:
			return fmt.Sprintf("%q and %q: given and family name exchanged", t.given.text[k1.given]+" "+a, t.given.text[k2.given]+" "+b)
		}
		return fmt.Sprintf("family names %q and %q: %s", a, b, levelWords[level])
	case NewSurname:
		if s.bits[ev] > 0 {
			return "one family name ends before the other begins, as after a change of name"
		}
		return "both family names are in use over the same weeks"
	case Number:
		switch level {
		case Equal:
			return "same runner's number"
		case Near:
			return "numbers one digit apart, one of them seen once"
		}
		return "different runner's numbers"
	case NumberTurns:
		if level == Equal {
			return "one number is used no more once the other begins, as after a loss"
		}
		return "both numbers are in use over the same time"
	case Birth:
		switch {
		case level == Equal && x != nil:
			lo, hi := max(x.lo, y.lo), min(x.hi, y.hi)
			return "ages fit one birth date, " + span(min(lo, hi), max(lo, hi))
		case level == Equal:
			return "ages fit one birth date"
		case x != nil:
			text := fmt.Sprintf("ages contradict: one born %s (%s), the other %s (%s)",
				span(x.lo, x.hi), lines(x.births), span(y.lo, y.hi), lines(y.births))
			if float64(s.bits[ev]) > m.w.BirthNear {
				text += "; a few wrong ages would explain it"
			}
			return text
		}
		return "ages contradict"
	case Sex:
		if level == Equal {
			return "same sex"
		}
		return "M or W given differently"
	case Club:
		switch level {
		case Equal:
			return "same club"
		case OneSide:
			return "a club on one side only"
		case Neither:
			return "no club on either side"
		}
		return "different clubs"
	case Course:
		if s.bits[ev] >= 0 {
			return "at courses that share runners"
		}
		return "at courses that share few runners"
	case Pace:
		if s.bits[ev] >= 0 {
			return "similar times, allowing for course and day"
		}
		return "very different times, allowing for course and day"
	case SameRun:
		if x == nil {
			return "both on the same day"
		}
		same, sameDay := m.clashes(x, y)
		text := "both on the same day once"
		if n := same + sameDay; n > 1 {
			text = fmt.Sprintf("both on the same day %d times", n)
		}
		if met := m.meetings(x, y); met >= 1.5 {
			text += fmt.Sprintf("; two people would have met about %.0f times", met)
		}
		return text
	case TakeTurns:
		return "never on the same day, though both run on that weekday"
	case Unplaced:
		return "no age on either side to tell namesakes apart"
	}
	return ""
}

var levelWords = map[Level]string{
	WithLost: "the same but for a letter lost on the way", Nickname: "a usual short form", ShortForm: "looks like a short form",
	Initial: "an initial", FirstOnly: "the first of several given names", Slip: "one letter apart, both being names", Mistyped: "one letter apart, the rarer one will be mistyped",
	OneToken: "one part of a double name", Alike: "much alike", Sounds: "may sound alike", Differs: "different",
}

func oneIn(share float64) string {
	n := 1 / share
	switch {
	case n >= 1000:
		return fmt.Sprintf("about 1 in %d000 here", int(math.Round(n/1000)))
	case n >= 100:
		return fmt.Sprintf("about 1 in %d here", int(math.Round(n/100))*100)
	}
	return fmt.Sprintf("about 1 in %d here", int(math.Round(n)))
}

func span(lo, hi unit.Day) string {
	switch {
	case lo == hi:
		return "on " + lo.String()
	case hi-lo > 10*366:
		return fmt.Sprintf("in %s to %s", lo.String()[:4], hi.String()[:4])
	}
	return lo.String() + " to " + hi.String()
}

func lines(n int32) string {
	if n == 1 {
		return "1 line"
	}
	return fmt.Sprintf("%d lines", n)
}

// WeightLine is one row of the table of weights: what it stands for and how
// many bits it adds or takes away.
type WeightLine struct {
	Words string
	Bits  float64
}

// Table lists the weights in plain words.
func (w Weights) Table() []WeightLine {
	return []WeightLine{
		{"given names much alike", w.GivenAlike},
		{"given names that may sound alike", w.GivenSounds},
		{"given names different", w.GivenDiffers},
		{"family names much alike", w.FamilyAlike},
		{"family names that may sound alike", w.FamilySounds},
		{"family names two letters apart", w.FamilyTwice},
		{"family names different", w.FamilyDiffers},
		{"names one letter apart in the first letter: so much less", firstLetter},
		{"same number (added to log2 of the number of runners)", w.NumberShared},
		{"numbers one digit apart", w.NumberNear},
		{"numbers different", w.NumberDiffers},
		{"of two numbers, one used no more once the other begins (at most)", math.Log2(inTurnShare + (1-inTurnShare)/apartShare)},
		{"of two numbers, both in use over the same time (at most)", math.Log2(inTurnShare)},
		{"numbers different: so much more is needed to be joined", numberBits},
		{"births less than a year apart", w.BirthNear},
		{"births one to three years apart", w.BirthFar},
		{"births further apart", w.BirthApart},
		{"one line with a wrong age (less among many lines)", w.BirthOdd},
		{"M on one side, W on the other", w.SexDiffers},
		{"one line with a wrong M or W (less among many lines)", w.SexOdd},
		{"X on one side, M or W on the other", w.SexX},
		{"clubs different", w.ClubDiffers},
		{"a club on one side only", w.ClubOneBlank},
		{"no club on either side", w.ClubBothBlank},
		{"both in one run", w.SameRun},
		{"both on one day at different runs", w.SameDay},
	}
}
