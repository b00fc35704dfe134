package record

import (
	"lapwing/pipeline/age"
	"lapwing/pipeline/place"
)

// Status says what a line of a sheet stands for.
type Status uint8

const (
	OK         Status = iota
	Unnamed           // finished, nobody named
	Untimed           // finished, no time
	DNF               // did not finish
	DQ                // disqualified
	Repeat            // the same result stands elsewhere already
	Doubtful          // a line whose time or person is not trusted; the reason is among the problems
	Superseded        // a later sheet of the run stands, which the caller says; or a note, that another line of the sheet does
	NotStarted        // did not start: no finisher line, to be left out of the results
)

var statusWords = [...]string{"ok", "unnamed", "untimed", "dnf", "dq", "repeat", "doubtful", "superseded", "dns"}

// String is the word of the results view.
func (s Status) String() string { return statusWords[s] }

// TakingPart says in which part somebody was on the course.
type TakingPart uint8

const (
	Runner TakingPart = iota
	Walker
	Guided
	Guide
	Pacer
	BackMarker
	WithChild
	Buggy
	Dog
	RacingWheelchair // racing wheelchair or handcycle
	DayWheelchair    // day wheelchair or frame
)

var takingPartWords = [...]string{"runner", "walker", "guided", "guide", "pacer", "back marker",
	"adult with a child", "buggy", "dog", "racing wheelchair or handcycle", "day wheelchair or frame"}

// String is the plain word for the part taken.
func (t TakingPart) String() string { return takingPartWords[t] }

// OnWheels says whether open standards of running don't bound the time.
func (t TakingPart) OnWheels() bool { return t == RacingWheelchair || t == DayWheelchair }

// Sex as the sheet gives it. It is never inferred from a name.
type Sex uint8

const (
	NotGiven Sex = iota
	M
	W
	X // chosen by people who are neither
)

var sexWords = [...]string{"", "M", "W", "X"}

// String is "", "M", "W" or "X".
func (s Sex) String() string { return sexWords[s] }

// Columns says which cell of a row holds what: a 0-based index, -1 where the
// sheet has no such column.
type Columns struct {
	Position, Name, Given, Family, Time   int
	Age, BirthYear, BirthDate, Group, Sex int
	Club, Number, Notes, Status           int
	Chip                                  int // another column of times, read only for why Time is blank
}

// NoColumns has every column missing.
func NoColumns() Columns {
	return Columns{-1, -1, -1, -1, -1, -1, -1, -1, -1, -1, -1, -1, -1, -1, -1}
}

// Options is what is known about a table besides its cells.
type Options struct {
	DistanceM              int               // metres, of most rows; 0 means 5000
	AgeBasis               age.Basis         // on which day ages are reckoned; NoBasis means on the day of the run
	GroupBasis             age.Basis         // the same for age groups
	SeasonMonth, SeasonDay int               // first day of the season; 0 means 1 January
	Rule                   age.Rule          // who is in which group where GroupBasis and the sheet say nothing; the zero Rule means age.DefaultRule
	DateOrder              string            // "dmy" (default) or "mdy": birth dates the column itself does not settle
	Words                  map[string]string // wording in notes, status or group cells -> "walker", "pacer", "dnf", "untimed", … (the String of a Status or TakingPart)
	// Groups are the age groups that other sheets of the series use (from
	// Reader.Groups): U13 begins at 11 only where there is a U11.
	Groups []string
	// Answers given by hand to earlier questions, by the key that the question
	// names: "time" -> "mm.ss", "sex V" -> "W", "birth date" -> "dmy".
	Answers map[string]string
	// Name says whether a name stands for nobody or for several people; nil
	// means the name room's own rule, with a cache.
	Name func(text string) (unnamed, several bool)
}

// Line is one row of a sheet as facts. Its strings are parts of the cells (or
// of the Reader's own buffer) and stay good only until the next Read.
type Line struct {
	Row      int32 // 1-based row a person sees
	Position int32 // 0 none
	Tied     bool  // printed as a tie: 3=, =3
	// Name as received, trimmed; given and family columns come as "Family,
	// Given", so that the order is kept. A remark in brackets that says how
	// somebody took part, "(walker)", is taken off.
	Name       string
	Number     string
	TimeMS     int32 // milliseconds as received, 0 none
	Sex        Sex
	Birth      age.Window
	Basis      age.Basis
	AgeText    string // the group, age or year of birth as printed; never a date of birth
	Club       string
	Note       string
	TakingPart TakingPart
	Status     Status
	Problems   []place.Problem // place has row and column; the caller adds sheet and tab
}

// Reading says in plain words how one column is read.
type Reading struct {
	Column  string // spreadsheet letters
	Heading string
	Means   string // "running time, minutes and seconds (24:31)"
	Why     string // the evidence
	Answer  string // what would have to be answered to have it read like this, as in "time=mm.ss"; "" where that can't be asked
}

// Keys of answers to questions about columns, and the answer that a mark is no sex; the
// key for what a letter says of sex is "sex " and the letter.
const (
	TimeAnswer      = "time"
	BirthDateAnswer = "birth date"
	NotGivenAnswer  = "not given"
)

// AsBefore after the key of an answer makes it the reading of an earlier sheet:
// likelier, but no match for what the sheet itself proves.
const AsBefore = " as before"

// Readings is what Settle found out about a table.
type Readings struct {
	Columns  []Reading
	Problems []place.Problem // at most one question per column; Severity Waits where the sheet can't be used without the answer
}
