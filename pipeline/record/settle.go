package record

import (
	"cmp"
	"fmt"
	"strings"

	"lapwing/pipeline/place"
)

// Settle decides how each column is read, after all rows were observed.
func (r *Reader) Settle() Readings {
	out := Readings{Problems: r.problems}
	add := func(index int, means, why string) {
		h := ""
		if index < len(r.headings) {
			h = r.headings[index]
		}
		out.Columns = append(out.Columns, Reading{Column: place.ColumnLetters(index), Heading: h, Means: means, Why: why})
	}
	var ask asker = func(index int, sev place.Severity, kind, read, expected, do string, answers ...string) {
		out.Problems = append(out.Problems, place.Problem{Place: place.Place{Column: place.ColumnLetters(index)}, Severity: sev, Kind: kind, Read: read, Expected: expected, Do: do, Answers: strings.Join(answers, "\n")})
	}
	if r.c.Position >= 0 {
		ties := "no ties"
		if r.ties > 0 {
			ties = fmt.Sprintf("%d of them ties", r.ties)
		}
		add(r.c.Position, "finishing position", fmt.Sprintf("%d whole numbers, %s", r.positions, ties))
	}
	r.clock.settle(r.o.Answers[TimeAnswer], r.o.Answers[TimeAnswer+AsBefore])
	if r.c.Time >= 0 {
		means, why := r.clock.describe()
		add(r.c.Time, means, why)
		out.Columns[len(out.Columns)-1].Answer = r.clock.answer()
		r.clock.questions(r.c.Time, ask)
	}
	inLanguage := r.inLanguage()
	r.sexes.letters.settle(inLanguage(r.c.Sex), r.o.Answers)
	if r.c.Sex >= 0 {
		means, why := r.sexes.describe()
		add(r.c.Sex, means, why)
		if l := r.sexes.letters; l.ask != 0 {
			letter := strings.ToUpper(string(l.ask))
			ask(r.c.Sex, place.Look, "sex-letter-unclear", letter, l.choices, fmt.Sprintf("What does %s stand for in this column?", letter), sexAnswers(letter, l.choices)...)
		}
	}
	r.nameMarks.settle()
	if r.packed.settle(); r.packed.on {
		add(r.c.Name, "name, with the year of birth or the age and the club in brackets", fmt.Sprintf("%d of %d names", r.packed.packed, r.packed.names))
	}
	if r.inNames.settle(r.heading(r.c.Name)); r.inNames.meaning != noNameAge {
		add(r.c.Name, map[nameAge]string{nameHasAge: "name, with the age in brackets", nameHasYear: "name, with the year of birth in brackets", nameHasShortYear: "name, with the year of birth in brackets"}[r.inNames.meaning],
			fmt.Sprintf("%d of %d names", r.inNames.numbers, r.inNames.names))
	}
	if r.tails.settle(inLanguage(r.c.Name), r.o.Answers); r.tails.saySex || r.tails.column != "" || r.tails.born {
		add(r.c.Name, "name, with the sex, the age or the birth behind it", fmt.Sprintf("%d of %d names", max(r.tails.sexed, r.tails.bare[r.tails.column], r.tails.dates), r.tails.names))
	}
	if r.placeLetters.settle(inLanguage(r.c.Position), r.o.Answers); r.placeLetters.on {
		add(r.c.Position, "finishing position, with the sex behind it", r.placeLetters.letters.describe())
	}
	r.titles.settle()
	if r.timeTails.settle(inLanguage(r.c.Name), r.o.Answers); r.timeTails.saySex {
		add(r.c.Time, "running time, with the sex behind it", fmt.Sprintf("%d of %d times", r.timeTails.sexed, r.timeTails.names))
	}
	if r.inBrackets.said() && !r.tails.saySex {
		r.inBrackets.column.settle("", &r.inBrackets.letters, r.o.Answers)
		add(r.c.Name, "name, with the age group or sex in brackets", fmt.Sprintf("%d of them", r.inBrackets.groups+r.inBrackets.sexes))
	}
	if r.bareGroups.settle(&r.inBrackets); r.bareGroups.on {
		r.bareGroups.inBrackets.column.settle("", &r.bareGroups.letters, r.o.Answers)
		add(r.c.Name, "name, with the age group, or the sex and the age, behind it", fmt.Sprintf("%d of %d names", r.bareGroups.groups+r.bareGroups.sexes, r.bareGroups.names))
	}
	if r.clubInNames = !r.inBrackets.said() && r.c.Club < 0 && r.inNames.meaning == noNameAge && (saysClub(r.heading(r.c.Name)) || r.inNames.clubBelow()); r.clubInNames {
		add(r.c.Name, "name, with the club behind it", "the heading says so, or the lines below the names repeat")
	}
	for i := range r.nameClubs {
		if k := &r.nameClubs[i]; r.c.Club < 0 && r.clubMark == "" && k.said(saysClub(r.heading(r.c.Name))) {
			r.clubMark, r.clubInNames = k.mark, true
			add(r.c.Name, "name, with the club behind it", fmt.Sprintf("full names before %d of %d marks “%s”", k.full, k.commas, trim(k.mark)))
		}
	}
	if k := &r.bracketClubs; r.c.Club < 0 && !r.clubInNames && !r.inBrackets.said() && !r.tails.saySex && r.inNames.meaning == noNameAge && k.said(false) {
		r.clubInNames = true
		add(r.c.Name, "name, with the club in brackets behind it", fmt.Sprintf("%d of %d names", k.full, k.names))
	}
	if r.nameOrder.settle(); r.nameOrder.on {
		add(r.c.Name, "name, the family name first", r.nameOrder.why())
	}
	r.ages.settle()
	r.years.settle()
	others := &r.sexes.letters
	if r.c.Sex < 0 {
		others = nil
	}
	r.ageGroups.settle(inLanguage(r.c.Age), others, r.o.Answers)
	r.groups.tens = r.showTens()
	r.groups.settle(inLanguage(r.c.Group), others, r.o.Answers)
	basisWhy := r.settleBasis()
	if r.c.BirthYear >= 0 {
		means, why := r.years.describe()
		add(r.c.BirthYear, means, why)
	}
	if r.c.Age >= 0 {
		means, why := r.ages.describe()
		add(r.c.Age, means, why)
	}
	if r.c.Group >= 0 {
		means, why := r.groups.describe()
		add(r.c.Group, means, strings.TrimPrefix(why+basisWhy, "; "))
	}
	r.settleDates(add, ask)
	known := (r.dates[0] > 0) != (r.dates[1] > 0) || r.order == yearFirst || r.o.Answers[BirthDateAnswer] != "" || r.o.Answers[BirthDateAnswer+AsBefore] != ""
	if n := len(out.Columns); n > 0 && known && strings.HasPrefix(out.Columns[n-1].Means, "date of birth") {
		out.Columns[n-1].Answer = BirthDateAnswer + "=" + dateAnswers[r.order]
	}
	return out
}

// welshHeadings are Welsh headings, beside which D and M are dynion and merched.
var welshHeadings = wordSet("safle|enw|rhedwr|amser|oed|oedran|rhyw|clwb|enw cyntaf|cyfenw|nodiadau")

const welshSex = "rhyw"

// inLanguage gives the folded heading of a column, or the Lithuanian, Latvian or Welsh one for
// sex where the other headings of the table are in these languages.
func (r *Reader) inLanguage() func(index int) string {
	lt, lv, cy := 0, 0, 0
	for i := range r.headings {
		h := r.heading(i)
		if lithuanian(h) {
			lt++
		}
		if latvian(h) {
			lv++
		}
		if welshHeadings[h] {
			cy++
		}
	}
	sex := ""
	switch {
	case lt >= 2 && lt > lv:
		sex = lithuanianSex
	case lv >= 2:
		sex = latvianSex
	case cy >= 2:
		sex = welshSex
	}
	return func(index int) string { return cmp.Or(sex, r.heading(index)) }
}

// sexAnswers are what a letter may stand for.
func sexAnswers(letter, choices string) (out []string) {
	for _, sex := range strings.Split(choices, " or ") {
		out = append(out, fmt.Sprintf("--answer \"sex %s=%s\"", letter, sex))
	}
	return out
}

// asker raises a question about a column, with its possible answers.
type asker func(index int, sev place.Severity, kind, read, expected, do string, answers ...string)

// settleDates chooses the order of day and month for the dates of birth that
// don't show it.
func (r *Reader) settleDates(add func(int, string, string), ask asker) {
	index := r.c.BirthDate
	if index < 0 {
		index = max(r.c.BirthYear, r.c.Age)
	}
	given := r.o.Answers[BirthDateAnswer]
	why := ""
	switch {
	case answeredOrder(given) != undecided:
		r.order, why = answeredOrder(given), "as answered"
	case r.yearsAt[0] > r.yearsAt[1]:
		r.order, why = yearFirst, fmt.Sprintf("%d of them can only begin with the year", r.yearsAt[0])
	case r.dates[1] > r.dates[0]:
		r.order, why = monthFirst, fmt.Sprintf("%d dates can only be month first", r.dates[1])
	case r.dates[0] > 0:
		r.order, why = dayFirst, fmt.Sprintf("%d dates can only be day first", r.dates[0])
	case r.o.Answers[BirthDateAnswer+AsBefore] != "":
		r.order, why = answeredOrder(r.o.Answers[BirthDateAnswer+AsBefore]), "as on an earlier sheet with these headings"
	case r.o.DateOrder == "mdy":
		r.order, why = monthFirst, "as set in the configuration"
	default:
		r.order, why = dayFirst, "the usual order"
	}
	if r.dates == [3]int{} && r.c.BirthDate < 0 || index < 0 {
		return
	}
	add(index, map[dateOrder]string{dayFirst: "date of birth, day before month", monthFirst: "date of birth, month before day", yearFirst: "date of birth, the year first"}[r.order], why)
	if r.order == yearFirst {
		return
	}
	if r.dates[2] > 0 && (r.dates[0] == 0 && r.dates[1] == 0 && given == "" && r.o.Answers[BirthDateAnswer+AsBefore] == "" || r.dates[0] > 0 && r.dates[1] > 0) {
		ask(index, place.Look, "birth-date-order-unclear", fmt.Sprintf("%d dates like 03/04", r.dates[2]), "dmy or mdy", "Is the day written first (dmy) or the month (mdy)?", `--answer "birth date=dmy"`, `--answer "birth date=mdy"`)
	}
}
