package sheet

import "fmt"

// headingsBeside moves headings that all stand one column beside what they head, as where the
// place has no heading and the others stand from the first column on, or a blank cell too many
// stands before them. As they stand one at most fits its values and three and more do not, the
// times among them; moved by one column three and more fit, and none does not. It says where a
// moved heading stood.
func (s *settler) headingsBeside() (why string) {
	clock := -1
	for i, g := range s.guesses {
		if g.known && g.meaning.isTime() {
			if clock >= 0 {
				return ""
			}
			clock = i
		}
	}
	if clock < 0 || s.profiles[clock].count[kClock] > 0 {
		return ""
	}
	if fit, wrong := s.headingsFit(0); fit > 1 || wrong < 3 {
		return ""
	}
	for _, by := range [...]int{1, -1} {
		// To the right the last heading may be left over, of a column without values.
		if by < 0 && s.headings[0] != "" || clock+by < 0 || clock+by >= len(s.profiles) || s.profiles[clock+by].count[kClock] < 4 {
			continue
		}
		if fit, wrong := s.headingsFit(by); fit < 3 || wrong > 0 {
			continue
		}
		headings, guesses := make([]string, len(s.headings)), make([]guess, len(s.guesses))
		for i := range s.headings {
			if k := i + by; k >= 0 && k < len(headings) {
				headings[k], guesses[k] = s.headings[i], s.guesses[i]
			}
		}
		s.headings, s.guesses = headings, guesses
		for i := range s.columns {
			s.columns[i].Heading = headings[i]
		}
		side := "left"
		if by < 0 {
			side = "right"
		}
		return fmt.Sprintf("; the headings stand one column too far to the %s, as the values show", side)
	}
	return ""
}

// headingsFit counts the headings that fit the values beside them, by columns to the right, and
// those that do not. Those whose values may be anything are not counted.
func (s *settler) headingsFit(by int) (fit, wrong int) {
	for i, g := range s.guesses {
		k := i + by
		if !g.known || k < 0 || k >= len(s.profiles) {
			continue
		}
		p, ok := s.profiles[k], false
		switch {
		case g.meaning.isTime():
			ok = p.share(kClock) > .7
		case g.meaning == Sex:
			ok = p.share(kSex) > .7
		case g.meaning == AgeGroup:
			ok = p.share(kGroup) > .6
		case g.meaning == Position:
			ok = p.share(kInt) > .8
		case g.meaning == Name:
			ok = p.share(kText) > .8 && 2*p.spaces > p.filled
		default:
			continue
		}
		if ok {
			fit++
		} else {
			wrong++
		}
	}
	return fit, wrong
}
