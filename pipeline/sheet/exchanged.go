package sheet

// exchanged puts the meanings of two headings right that somebody has exchanged: under that
// of the names stand nothing but times, and under that of the times names.
func (s *settler) exchanged() (names, times int, ok bool) {
	names, times = -1, -1
	for i, g := range s.guesses {
		switch {
		case !g.known:
		case g.meaning == Name && names < 0:
			names = i
		case g.meaning == Name:
			return 0, 0, false
		case g.meaning.isTime() && times < 0:
			times = i
		case g.meaning.isTime():
			return 0, 0, false
		}
	}
	if names < 0 || times < 0 {
		return 0, 0, false
	}
	n, t := s.profiles[names], s.profiles[times]
	if n.count[kClock] < 4 || n.share(kClock) < .9 || t.count[kText] < 4 || t.share(kText) < .9 || t.spaces*10 < t.count[kText]*7 {
		return 0, 0, false
	}
	s.guesses[names], s.guesses[times] = s.guesses[times], s.guesses[names]
	return names, times, true
}
