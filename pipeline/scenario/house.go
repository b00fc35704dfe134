package scenario

import (
	"encoding/binary"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"unicode/utf16"

	"golang.org/x/text/encoding"
	"golang.org/x/text/encoding/charmap"

	"lapwing/pipeline/age"
	"lapwing/pipeline/unit"
)

// field is what a column of a sheet holds.
type field uint8

const (
	position field = iota
	wholeName
	givenName
	surname
	number
	ageInYears
	birthYear
	birthDate
	ageGroup
	decade
	sexField
	clubField
	timeField
	notes
	courseField
	dateField
	gap  // behind the first: not a time
	pace // per kilometre: not a time
)

type column struct {
	holds   field
	heading string
}

// charset is how the bytes of a text sheet are written.
type charset uint8

const (
	utf8Plain charset = iota
	utf8Mark          // with a byte order mark
	utf16LE           // with a byte order mark, little-endian
	windows1252
)

// house is the style in which one course's results desk writes its sheets,
// week after week.
type house struct {
	columns   []column
	workbook  bool
	tab       string // name of a workbook's tab; "" prints the date
	merged    bool   // a workbook's title spans all columns
	delimiter string
	lineEnd   string
	charset   charset
	quoteAll  bool
	title     []string // lines above the heading; {course}, {date}, {long}, {d/m/y}, {n} are filled in
	footer    []string
	file      string // path under the folder of sheets; {slug} too
	name      func(given, surname string) string
	clock     func(ms int32) string
	tenths    bool
	sexes     map[byte]string
	group     func(ageYears int, sex byte) string
	date      func(unit.Day) string
	nobody    string            // what stands for the name of an unnamed finisher
	words     map[string]string // what the notes say of somebody taking part as …
}

// entry is one line as the desk has it, before it is spelt in the house style.
type entry struct {
	person         int
	position       int
	given, surname string
	sex            byte // 0 where not given
	born           unit.Day
	ageError       int // years added to the age by mistake
	club, number   string
	timeMS         int32
	status, as     string
	note           string
	exchanged      bool
	form, short    float64
}

// heading tells what the run is, for titles, file names and repeated columns.
type heading struct {
	course, slug string
	metres       float64
	date         unit.Day
	finishers    int
}

func (h heading) fill(s string) string {
	y, m, d := h.date.Date()
	long := fmt.Sprintf("%s %d %s %d", h.date.Weekday(), d, h.date.Time().Month(), y)
	return strings.NewReplacer("{course}", h.course, "{slug}", h.slug, "{date}", h.date.String(), "{long}", long,
		"{d/m/y}", fmt.Sprintf("%02d/%02d/%d", d, m, y), "{n}", strconv.Itoa(h.finishers)).Replace(s)
}

// cell is what stands in one field, as text and, for workbooks, as a value.
type cell struct {
	text  string
	value any // int, unit.Day or running time; nil means text
}

type running int32 // milliseconds

func (h *house) cell(c column, e *entry, run heading, first int32) cell {
	whole := func(n int) cell { return cell{strconv.Itoa(n), n} }
	named := e.status != "unnamed"
	years := age.On(e.born, run.date) + e.ageError
	switch c.holds {
	case position:
		if e.position > 0 {
			return whole(e.position)
		}
	case wholeName:
		if !named {
			return cell{text: h.nobody}
		}
		return cell{text: h.name(e.given, e.surname)}
	case givenName:
		if named {
			return cell{text: e.given}
		}
	case surname:
		if !named {
			return cell{text: h.nobody}
		}
		return cell{text: e.surname}
	case number:
		if n, err := strconv.Atoi(e.number); err == nil && named {
			return whole(n)
		}
	case ageInYears:
		if named {
			return whole(years)
		}
	case birthYear:
		if y, _, _ := e.born.Date(); named {
			return whole(y - e.ageError)
		}
	case birthDate:
		if y, m, d := e.born.Date(); named {
			born := unit.NewDay(y-e.ageError, m, d)
			return cell{h.date(born), born}
		}
	case ageGroup, decade:
		if named {
			return cell{text: h.group(years, e.sex)}
		}
	case sexField:
		if named {
			return cell{text: h.sexes[e.sex]}
		}
	case clubField:
		if named {
			return cell{text: e.club}
		}
	case timeField:
		switch {
		case e.status == "dnf":
			return cell{text: "DNF"}
		case e.timeMS > 0:
			return cell{h.clock(e.timeMS), running(e.timeMS)}
		}
	case notes:
		return cell{text: e.note}
	case courseField:
		return cell{text: run.course}
	case dateField:
		return cell{h.date(run.date), run.date}
	case gap:
		if e.timeMS > 0 {
			return cell{text: "+" + unit.ClockMS(e.timeMS-first)}
		}
	case pace:
		if e.timeMS > 0 {
			return cell{text: unit.Clock(int32(float64(e.timeMS)/run.metres + .5))}
		}
	}
	return cell{}
}

func (h *house) prints(f field) bool {
	return slices.ContainsFunc(h.columns, func(c column) bool { return c.holds == f })
}

// headingRow is the row of the heading, under the title lines.
func (h *house) headingRow() int { return len(h.title) + 1 }

// text writes a sheet as delimited text and gives the row of each entry.
func (h *house) text(run heading, entries []entry) (data []byte, rows []int) {
	var b strings.Builder
	line := 0
	put := func(cells ...string) {
		for i, c := range cells {
			if i > 0 {
				b.WriteString(h.delimiter)
			}
			if h.quoteAll || strings.ContainsAny(c, h.delimiter+"\"\r\n") {
				c = `"` + strings.ReplaceAll(c, `"`, `""`) + `"`
			}
			b.WriteString(c)
		}
		b.WriteString(h.lineEnd)
		line++
	}
	for _, t := range h.title {
		if t == "" {
			b.WriteString(h.lineEnd)
			line++
			continue
		}
		put(strings.Split(run.fill(t), "\t")...) // a tab starts the next cell
	}
	cells := make([]string, len(h.columns))
	for i, c := range h.columns {
		cells[i] = c.heading
	}
	put(cells...)
	first := firstTime(entries)
	for i := range entries {
		for j, c := range h.columns {
			cells[j] = h.cell(c, &entries[i], run, first).text
		}
		put(cells...)
		rows = append(rows, line)
	}
	for _, t := range h.footer {
		put(run.fill(t))
	}
	return h.encode(b.String()), rows
}

func firstTime(entries []entry) int32 {
	for _, e := range entries {
		if e.timeMS > 0 {
			return e.timeMS
		}
	}
	return 0
}

func (h *house) encode(s string) []byte {
	switch h.charset {
	case utf8Mark:
		return []byte("\ufeff" + s)
	case utf16LE:
		b := []byte{0xff, 0xfe}
		for _, u := range utf16.Encode([]rune(s)) {
			b = binary.LittleEndian.AppendUint16(b, u)
		}
		return b
	case windows1252: // letters outside the code page become a question mark, as spreadsheets write them
		s, err := encoding.ReplaceUnsupported(charmap.Windows1252.NewEncoder()).String(s)
		if err != nil {
			panic(err) // cannot happen: everything unsupported is replaced
		}
		return []byte(strings.ReplaceAll(s, "\x1a", "?"))
	}
	return []byte(s)
}

// Ways of writing a name, a time, a group and a date.

func givenFirst(given, surname string) string { return given + " " + surname }
func surnameCapitals(given, surname string) string {
	return strings.ToUpper(surname) + " " + given
}
func surnameComma(given, surname string) string { return surname + ", " + given }

func plainClock(ms int32) string { return unit.Clock(unit.CeilSeconds(ms)) }

// longClock always shows hours: 00:24:31.
func longClock(ms int32) string {
	s := unit.CeilSeconds(ms)
	return fmt.Sprintf("%02d:%02d:%02d", s/3600, s/60%60, s%60)
}

// tenthClock shows tenths behind a mark: 24:31.4 or 24:31,4.
func tenthClock(mark string) func(int32) string {
	return func(ms int32) string {
		return unit.Clock(ms/1000) + mark + strconv.Itoa(int(ms%1000/100))
	}
}

// primeClock is 24'31", with hours as 1h02'03".
func primeClock(ms int32) string {
	s := unit.CeilSeconds(ms)
	if s >= 3600 {
		return fmt.Sprintf("%dh%02d'%02d\"", s/3600, s/60%60, s%60)
	}
	return fmt.Sprintf("%d'%02d\"", s/60, s%60)
}

func letter(sex byte) string {
	if sex == 0 {
		return ""
	}
	return string(sex)
}

// standardGroup is U18, Senior, M40.
func standardGroup(years int, sex byte) string {
	return age.DefaultScheme().Name(years, letter(sex))
}

// rangeGroup is 16-17, 20-34, 40-44: for sheets with a column for sex.
func rangeGroup(years int, _ byte) string {
	lo, hi := age.DefaultScheme().Bounds(years)
	return fmt.Sprintf("%d-%d", lo, hi)
}

// letterRange is M16-17, W20-34, M40-44.
func letterRange(years int, sex byte) string { return letter(sex) + rangeGroup(years, sex) }

// tenYears is 10-19, 20-29, 30-39: for sheets with a column for sex.
func tenYears(years int, _ byte) string {
	return fmt.Sprintf("%d-%d", years/10*10, years/10*10+9)
}

func isoDate(d unit.Day) string { return d.String() }
func slashDate(d unit.Day) string {
	y, m, dd := d.Date()
	return fmt.Sprintf("%02d/%02d/%d", dd, m, y)
}

var (
	sexMF     = map[byte]string{'M': "M", 'W': "F", 'X': "X"}
	sexMW     = map[byte]string{'M': "M", 'W': "W", 'X': "X"}
	sexSpoken = map[byte]string{'M': "Male", 'W': "Female", 'X': "X"}
	sexMen    = map[byte]string{'M': "Men", 'W': "Women", 'X': "X"}
)
