package text

import "regexp"

var (
	sessionNumber = regexp.MustCompile(`^\d{1,2}$`)
	sessionStart  = regexp.MustCompile(`^\d{1,2}[:.]\d\d`)
)

// Session is which of several runs of a day one is, as it is printed behind the day:
// "run 2", "start 9:30"; a name stands as it is.
func Session(session string) string {
	switch {
	case sessionNumber.MatchString(session):
		return "run " + session
	case sessionStart.MatchString(session):
		return "start " + session
	}
	return session
}
