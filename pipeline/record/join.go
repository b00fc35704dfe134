package record

import (
	"strings"

	"lapwing/pipeline/place"
)

// Join completes a line of times with the line of the same position from the
// sheet's list of people: who it was, and whatever else the list knows. The
// status is then that of the whole line. distanceM is in metres (0: not known,
// taken as 5000). Strings are copied.
func (l *Line) Join(people *Line, distanceM int) {
	own := func(mine *string, theirs string) {
		if *mine == "" {
			*mine = strings.Clone(theirs)
		}
	}
	named := l.Status != Unnamed || people.Status != Unnamed
	if l.Name == "" || l.Status == Unnamed {
		l.Name = strings.Clone(people.Name)
	}
	own(&l.Number, people.Number)
	own(&l.Club, people.Club)
	own(&l.Note, people.Note)
	own(&l.AgeText, people.AgeText)
	if l.TimeMS == 0 {
		l.TimeMS = people.TimeMS
	}
	if l.Sex == NotGiven {
		l.Sex = people.Sex
	}
	if !l.Birth.Known() {
		l.Birth, l.Basis = people.Birth, people.Basis
	}
	if l.TakingPart == Runner {
		l.TakingPart = people.TakingPart
	}
	l.Tied = l.Tied || people.Tied
	l.Problems = append(l.Problems, people.Problems...)

	ended := OK
	for _, s := range [...]Status{l.Status, people.Status} {
		if s == NotStarted || ended != NotStarted && s == DQ || ended == OK && s == DNF {
			ended = s
		}
	}
	if distanceM <= 0 {
		distanceM = 5000
	}
	doubt := l.TimeMS > 0 && !l.TakingPart.OnWheels() && l.TimeMS < FastestMS(distanceM, l.Sex)
	for _, p := range l.Problems {
		// On wheels, what was impossible for a runner is not.
		doubt = doubt || p.Severity == place.Doubtful && !(p.Kind == "time-impossible" && l.TakingPart.OnWheels())
	}
	switch {
	case ended != OK:
		l.Status = ended
	case !named:
		l.Status = Unnamed
	case l.TimeMS == 0 && !doubt:
		l.Status = Untimed
	case doubt:
		l.Status = Doubtful
	default:
		l.Status = OK
	}
}
