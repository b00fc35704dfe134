package ugly

import "lapwing/pipeline/unit"

// Class says what a careful person would make of a line.
type Class string

const (
	OK         Class = "ok"         // a named finisher with a time
	Unnamed    Class = "unnamed"    // finished, nobody named
	Untimed    Class = "untimed"    // finished, no time
	DNF        Class = "dnf"        // did not finish
	DQ         Class = "dq"         // disqualified
	DNS        Class = "dns"        // did not start; need not be in the results at all
	Repeat     Class = "repeat"     // the same result again
	Superseded Class = "superseded" // a later sheet for that run stands
	Impossible Class = "impossible" // faster than the open standard
	Doubtful   Class = "doubtful"   // the same person twice in a run, two people in one line
)

// Hold says whether a sheet can be read without asking.
type Hold uint8

const (
	Load    Hold = iota // everything can be found in the sheet, its name or the others of its course
	MayHold             // a careful person could settle it; asking is no mistake
	Must                // it can't be known: course or date is missing or contradicts
)

// Spot is a row of a sheet as a person sees it.
type Spot struct {
	Sheet string // path relative to the folder, slashes forward
	Tab   string // "" for text sheets
	Row   int    // 1-based spreadsheet row
}

// Half is the row of a two-part line on the other part.
type Half struct {
	Spot
	EditorRow int // as of a Line
}

// Line is the truth about one line that stands for somebody.
type Line struct {
	Spot
	EditorRow int    // 1-based line in a text editor; differs from Row after line breaks inside quotes or a sep= line
	Also      []Half // other rows that the same result may be reported at: the other half of a two-part sheet
	Twin      *Spot  // the line that this one repeats or that replaces it

	Course   string // slug
	Date     string // ISO 8601
	Session  string // "" where the sheet names none
	Position int    // 0: none printed
	TimeMS   int32  // as the sheet shows it; 0: none
	OtherMS  int32  // another reading that is no mistake (chip beside gun time); 0: none
	Class    Class
	Name     string // given and family name in proper case; "" where nobody is named
	Sex      string // evidence on the line: M, W, X or ""
	Born     unit.Day
	BornLo   string // ISO 8601: bounds that the line itself puts on the birth date; "" none
	BornHi   string
	As       string // taking part as; "" means runner
}

// Truth is what is known about one sheet.
type Truth struct {
	Sheet  string
	Traits []string // "dimension=option", all that differ from a plain sheet
	Hold   Hold
	Asks   string // what has to be asked: "date", "course", "two dates", …
	Lines  []Line
}
