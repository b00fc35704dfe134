package record

import (
	"cmp"
	"strings"

	"lapwing/pipeline/age"
	"lapwing/pipeline/place"
	"lapwing/pipeline/unit"
)

// reckoning is the day on which ages of a basis are reckoned.
func (r *Reader) reckoning(b age.Basis, day unit.Day) unit.Day {
	switch b {
	case age.YearEnd:
		y, _, _ := day.Date()
		return unit.NewDay(y, 12, 31)
	case age.SeasonStart:
		return day.LastOn(r.o.SeasonMonth, r.o.SeasonDay)
	}
	return day
}

// windowOf is age.OfAges of a single age, kept from row to row.
func (r *Reader) windowOf(n int, on unit.Day) age.Window {
	k := &r.ageWindow[n]
	if k.on != on || !k.w.Known() {
		k.on, k.w = on, age.OfAges(n, n, on)
	}
	return k.w
}

// Ages that are read without asking, give or take a day.
const youngestAge, oldestAge = 3, 105

// staleGroup is how many days an age group may lag behind the age beside it, as
// groups do that are kept from the last season.
const staleGroup = 2 * 366

const (
	likelyAges = "an age from 3 to 105"
	askAge     = "Ask how old this runner was and correct the age, or the date of the run; until then the age is not known"
)

// readPerson reads sex and age from every column that carries them.
func (r *Reader) readPerson(row int, cells []string, day unit.Day, out *Line, take func(remark)) {
	if s := words(cells, r.c.Sex); s != "" {
		m := r.sexes.mark(s, &r.scratch)
		out.Sex = r.sexes.letters.sex(m)
		if m == strange || m.open() && !r.sexes.letters.known(m) {
			if e := r.remark(s); e.part != Runner || e.status != OK {
				take(e)
			} else if !m.open() || byte(m) != r.sexes.letters.ask { // else the column is asked about
				out.problem(row, r.c.Sex, place.Look, "sex-unreadable", s, "M, W, X or nothing", "Correct the cell; until then the sex is not known")
			}
		}
	}
	var found age.Window
	basis := age.NoBasis
	apart := false
	meet := func(index int, w age.Window, b age.Basis, s string) {
		if !w.Known() {
			return
		}
		if int(day-w.Lo) <= youngestAge*1461/4 || int(day-w.Hi) >= (oldestAge+1)*1461/4 { // 1461 days in four years
			out.problem(row, index, place.Look, "age-unlikely", s, likelyAges, askAge)
			return
		}
		if apart {
			return
		}
		both, ok := found.Meet(w)
		switch {
		case !ok && found.Gap(w) > staleGroup && mayBeUnder18(found, day) != mayBeUnder18(w, day):
			// one of the two says a child: neither is taken
			out.problem(row, index, place.Look, "ages-contradict", s, "what the other age column of the row says", "Ask which is right; until then the age is not known, and this runner may be shown as a child would be")
			found, basis, apart = age.Window{}, age.NoBasis, true
		case !ok:
			out.problem(row, index, place.Look, "ages-contradict", s, "what the other age column of the row says", "Ask which is right; the more exact one is used")
		case basis == age.NoBasis:
			found, basis = both, b
		default:
			found = both
		}
	}
	if s := words(cells, r.c.BirthDate); s != "" {
		w, ok := r.birthDate(s, day)
		if !ok {
			out.problem(row, r.c.BirthDate, place.Look, "birth-date-unreadable", "", "a date like 1985-01-03", "Correct the date of birth in the sheet")
		}
		meet(r.c.BirthDate, w, age.Born, "")
	}
	if r.inNames.meaning == noNameAge {
		if _, n, ok := saidAge(r.nameCell(cells)); ok && n < len(r.ageWindow) {
			meet(r.c.Name, r.windowOf(n, r.ageOn(day)), r.o.AgeBasis, "")
		}
	} else {
		switch n, ok := bracketNumber(r.nameCell(cells)); {
		case !ok:
		case r.inNames.meaning == nameHasYear && n >= 1900 && n < 2100:
			meet(r.c.Name, age.OfYear(n), age.Born, "")
		case r.inNames.meaning == nameHasShortYear && n < 100:
			meet(r.c.Name, age.OfYear(fullYear(n, day)), age.Born, "")
		case r.inNames.meaning == nameHasAge && n < len(r.ageWindow):
			meet(r.c.Name, r.windowOf(n, r.ageOn(day)), r.o.AgeBasis, "")
		}
	}
	for _, k := range [...]struct {
		index int
		col   *ageColumn
	}{{r.c.BirthYear, &r.years}, {r.c.Age, &r.ages}} {
		s := words(cells, k.index)
		if s == "" {
			continue
		}
		w, b, secret, ok := r.readAge(s, k.col, day, out, take)
		switch {
		case ok:
		case lexAge(s).text:
			out.problem(row, k.index, place.Look, "age-unreadable", s, "an age, a year of birth or an age group", "Correct the cell")
		default:
			out.problem(row, k.index, place.Look, "age-unlikely", s, likelyAges, askAge)
		}
		meet(k.index, w, b, s)
		if !secret && w.Known() {
			out.AgeText = s
		}
	}
	r.readTail(cells, day, out, meet)
	if r.c.Group < 0 && r.inBrackets.said() && !r.tails.saySex {
		if s := bracketGroup(r.nameCell(cells)); s != "" {
			r.readBracket(s, r.inBrackets.column, day, out, meet)
		}
	}
	if r.bareGroups.on {
		if at, s, _ := bareGroup(r.nameCell(cells)); at > 0 {
			r.readBracket(s, r.bareGroups.column, day, out, meet)
		}
	}
	if r.c.Sex < 0 && out.Sex == NotGiven && r.placeSexes.said() {
		out.Sex, _ = sexOfPlace(cell(cells, r.c.Position))
	}
	if r.c.Sex < 0 && out.Sex == NotGiven && r.timeTails.saySex {
		_, out.Sex, _, _ = r.timeTails.read(cell(cells, r.c.Time), day, &r.scratch)
	}
	if r.c.Sex < 0 && out.Sex == NotGiven {
		out.Sex, _ = r.titles.read(cmp.Or(r.nameCell(cells), cell(cells, r.c.Given)))
	}
	if s := words(cells, r.c.Group); s != "" {
		e := r.groups.find(s, &r.spare, &r.scratch)
		take(remark{part: e.part, status: e.status})
		switch {
		case e.known:
			b := r.o.GroupBasis
			if e.g.kind == bornIn {
				b = age.Born
			}
			// Beside a year of birth a group of the age reached in the year says
			// nothing more, and one of the age on the day only where it shows.
			says := r.groupCutsYears || basis != age.Born || found.Days() < 365
			if !says { // only now: the entry keeps its window for one day
				y := e.birth(r.reckoning(age.YearEnd, day))
				says = y.Lo > found.Lo || y.Hi < found.Hi
			}
			if says {
				meet(r.c.Group, r.groupBirth(e, day), b, s)
			}
			out.AgeText = s
		case e.g.kind == noGroup && e.g.sex == noMark && !emptyGroups[strings.ToLower(s)]:
			out.problem(row, r.c.Group, place.Note, "group-unreadable", s, "an age group like M40 or 40-44", "Nothing to do, or correct the cell; until then the group is not known")
		}
		if e.g.kind != special {
			r.groupSex(row, s, e.sex, out)
		}
	}
	r.readRemarks(cells, day, out, meet, found.Known() || apart)
	out.Birth, out.Basis = found, basis
}

// readBracket reads the group or sex behind a name.
func (r *Reader) readBracket(s string, column *groupColumn, day unit.Day, out *Line, meet func(int, age.Window, age.Basis, string)) {
	if len(s) == 1 {
		if sex, _ := sexOfPlace(s + "1"); out.Sex == NotGiven {
			out.Sex = sex
		}
		return
	}
	e := column.find(s, &r.spare, &r.scratch)
	if e.known {
		b := r.o.GroupBasis
		if e.g.kind == bornIn {
			b = age.Born
		}
		meet(r.c.Name, r.groupBirth(e, day), b, s)
		out.AgeText = s
	}
	if out.Sex == NotGiven {
		out.Sex = e.sex
	}
}

// mayBeUnder18 says whether somebody with this birth window can be a child.
func mayBeUnder18(w age.Window, day unit.Day) bool {
	low, _, ok := w.On(day)
	return ok && low < 18
}

// emptyGroups stand for no group.
var emptyGroups = wordSet(`-|--|?|n/a|na|none|unknown|not given|open|overall|all|guest|.|x`)

// groupSex adds the sex that an age group carries. X on the sheet stands beside
// any group.
func (r *Reader) groupSex(row int, text string, s Sex, out *Line) {
	switch {
	case s == NotGiven || out.Sex == X || out.Sex == s:
	case out.Sex == NotGiven:
		out.Sex = s
	default:
		out.problem(row, r.c.Group, place.Look, "sex-contradicts-group", text, "a group of "+out.Sex.String()+", as the sex column says", "Ask which is right; the sex column is used")
	}
}

// readAge reads a cell of an age or year column. secret says that it is a date
// of birth, which must not be printed; ok is false where it is not understood.
func (r *Reader) readAge(s string, k *ageColumn, day unit.Day, out *Line, take func(remark)) (w age.Window, b age.Basis, secret, ok bool) {
	c := lexAge(s)
	if c.text {
		r.scratch = fold(r.scratch[:0], s)
		n, withUnit := ageWithUnit(r.scratch)
		if !withUnit {
			n, withUnit = k.number(r.scratch)
		}
		if plain := lexAge(string(r.scratch)); !plain.text {
			n, withUnit = plain.n, true
		}
		if !withUnit {
			if _, isDate := lexDate(r.scratch); isDate {
				w, ok = r.birthDate(s, day)
				return w, age.Born, true, ok
			}
			e := r.ageGroups.find(s, &r.spare, &r.scratch)
			take(remark{part: e.part, status: e.status})
			if out.Sex == NotGiven {
				out.Sex = e.sex
			}
			b = r.o.GroupBasis
			if e.g.kind == bornIn {
				b = age.Born
			}
			return r.groupBirth(e, day), b, false, e.known || e.g.kind == special || e.g.sex != noMark
		}
		c = ageCell{n: n}
	}
	switch {
	case c.blank:
		return age.Window{}, age.NoBasis, false, true
	case c.n >= 1900 && c.n < 2100 && !c.decimals:
		return age.OfYear(c.n), age.Born, false, true
	case k.meaning == twoDigitYears && c.n < 100 && !c.decimals:
		return age.OfYear(fullYear(c.n, day)), age.Born, false, true
	case c.sentinel || k.meaning == noAges:
		return age.Window{}, age.NoBasis, false, true
	case c.n >= len(r.ageWindow):
		return age.Window{}, age.NoBasis, false, false
	case k.meaning == firstAges:
		last := after(k.starts, c.n, c.n+5) - 1
		if r.groupDay.month > 0 {
			return age.OfAges(c.n, last, r.groupDay.on(day)), r.o.GroupBasis, false, true
		}
		return r.groupAges(c.n, last, r.o.GroupBasis, day), r.o.GroupBasis, false, true
	}
	if r.nextBirthday && k == &r.ages && c.n > 0 {
		c.n--
	}
	return r.windowOf(c.n, r.ageOn(day)), r.o.AgeBasis, false, true
}

// birthDate reads a date of birth, or a year where only that is given.
func (r *Reader) birthDate(s string, day unit.Day) (age.Window, bool) {
	switch c := lexAge(s); {
	case c.blank || c.sentinel:
		return age.Window{}, true
	case c.n >= 1900 && c.n < 2100 && !c.text:
		return age.OfYear(c.n), true
	}
	r.scratch = fold(r.scratch[:0], s)
	if n := len(r.scratch); n == 5 && allDigits(r.scratch) {
		// A stored spreadsheet date: days from 1899-12-30 (ECMA-376 Part 1, 18.17.4.1).
		return age.OfDate(unit.NewDay(1899, 12, 30) + unit.Day(atoi(r.scratch))), true
	}
	d, ok := lexDate(r.scratch)
	if !ok {
		if w, ok := monthOfBirth(r.scratch); ok {
			return w, true
		}
		if _, _, y, one := splitAffix(r.scratch); one && y >= 1900 && y < 2100 { // *1984, 1984 г.р.
			return age.OfYear(y), true
		}
		if g := parseGroup(r.scratch); g.kind == bornIn { // 1980-1984
			return r.groupBirth(&groupEntry{g: g, lo: int(g.lo), hi: int(g.hi), known: true}, day), true
		}
		return age.Window{}, false
	}
	born, ok := d.day(r.order, day)
	if !ok {
		return age.Window{}, false
	}
	return age.OfDate(born), true
}
