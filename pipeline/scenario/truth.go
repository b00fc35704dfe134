package scenario

import (
	"encoding/csv"
	"io"
	"strconv"
	"time"

	"lapwing/pipeline/unit"
)

// Truth is what a made-up district knows and its sheets don't say.
type Truth struct {
	Courses []TrueCourse
	People  []TruePerson
	Runs    []TrueRun
	Lines   []TrueLine // in order of run, sheet and row
}

// TrueCourse is a course as it really is.
type TrueCourse struct {
	Slug, Name string
	DistanceM  float64
	Weekday    time.Weekday
	Effect     float64 // log time against a plain course of that distance, dry
	Mud        float64 // log time added in midwinter
	Numbers    bool    // its sheets print registration numbers
	Ages       string  // what its sheets print: "age", "year", "date", "group", "decade" or "none"
}

// TruePerson is somebody who runs.
type TruePerson struct {
	Given, Surname string // at first; a new surname is in Later
	Later          string // surname after a change, else ""
	Sex            string // "M", "W", "X", or "" for not given
	Born           unit.Day
	Club           string // "" for none
	Home           int    // index of the usual course
	Number         int    // registration number, printed by some courses only
}

// TrueRun is one run as it really was.
type TrueRun struct {
	Course     int // index in Courses
	Date       unit.Day
	Conditions float64 // log time of the day, mud included
	Sheet      string  // the last sheet for it, relative to the folder of sheets
}

// TrueLine is one line of a sheet that stands for somebody.
type TrueLine struct {
	Sheet     string  // relative to the folder of sheets, with forward slashes
	Tab       string  // of a workbook, else ""
	Row       int     // 1-based, as an editor or spreadsheet shows it
	Run       int     // index in Runs
	Person    int     // index in People, also where the sheet names nobody
	Position  int     // as printed, 0 for none
	Name      string  // as printed, before any encoding
	TimeMS    int32   // as printed, 0 for none
	Status    string  // ok, unnamed, untimed, dnf, repeat or superseded
	As        string  // taking part as
	AsPrinted bool    // the sheet says so, or they are simply a runner
	Exchanged bool    // the time is somebody else's: two people took each other's place
	Form      float64 // log seconds of an all-out run over a plain course of that distance
	Shortfall float64 // log time behind all-out
}

// WriteCSV writes a line for every line of the truth: sheet, row_number,
// person, time_ms, course, date, status, tab, taking_part_as.
func (t *Truth) WriteCSV(w io.Writer) error {
	out := csv.NewWriter(w)
	if err := out.Write([]string{"sheet", "row_number", "person", "time_ms", "course", "date", "status", "tab", "taking_part_as"}); err != nil {
		return err
	}
	var last int = -1
	var date string
	for i := range t.Lines {
		l := &t.Lines[i]
		if l.Run != last {
			last, date = l.Run, t.Runs[l.Run].Date.String()
		}
		if err := out.Write([]string{l.Sheet, strconv.Itoa(l.Row), strconv.Itoa(l.Person), strconv.Itoa(int(l.TimeMS)),
			t.Courses[t.Runs[l.Run].Course].Slug, date, l.Status, l.Tab, l.As}); err != nil {
			return err
		}
	}
	out.Flush()
	return out.Error()
}
