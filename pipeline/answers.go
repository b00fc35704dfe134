package pipeline

import (
	"fmt"
	"slices"
	"strings"

	"lapwing/pipeline/record"
	"lapwing/pipeline/sheet"
)

// ParseAnswers reads answers to questions about a sheet's columns, as in
// "time=mm.ss; sex V=W". The keys are those that the questions name.
func ParseAnswers(text string) (map[string]string, error) {
	out := map[string]string{}
	for _, a := range strings.Split(text, ";") {
		if strings.TrimSpace(a) == "" {
			continue
		}
		k, v, ok := strings.Cut(a, "=")
		if !ok {
			return nil, fmt.Errorf("answer %q: write it as in \"time=mm.ss\"", a)
		}
		out[strings.TrimSpace(k)] = strings.TrimSpace(v)
	}
	return out, nil
}

// CheckAnswers says what is wrong with answers that somebody has typed: one that answers
// no question, or not with one of its answers, would do nothing.
func CheckAnswers(text string) error {
	for _, a := range strings.Split(text, ";") {
		parsed, err := ParseAnswers(a)
		if err != nil {
			return err
		}
		for key, value := range parsed {
			if err := checkAnswer(key, value); err != nil {
				return err
			}
		}
	}
	return nil
}

// officialAnswer is the key of an answer that says which of several columns of times counts,
// by its heading: "official=Chip Time".
const officialAnswer = "official"

func checkAnswer(key, value string) error {
	wrong := func(want string) error { return fmt.Errorf("answer %q: write %s", key+"="+value, want) }
	letter, ofSex := strings.CutPrefix(key, "sex ")
	switch {
	case key == record.TimeAnswer:
		if names := record.TimeReadings(); !slices.Contains(names, value) {
			return wrong(fmt.Sprintf("%s= and one of: %s", key, strings.Join(names, ", ")))
		}
	case key == orderAnswer, key == record.BirthDateAnswer:
		if value != "dmy" && value != "mdy" && !(key == record.BirthDateAnswer && value == "ymd") {
			return wrong(fmt.Sprintf("\"%s=dmy\" (day first) or \"%s=mdy\" (month first)", key, key))
		}
	case key == yearAnswer:
		if !sheet.IsYear(value) {
			return wrong(fmt.Sprintf("the year in place of YEAR, as in \"%s=2026\", or \"%s=2025-26\" for a season over two", key, key))
		}
	case key == officialAnswer:
		if value == "" {
			return wrong(fmt.Sprintf("the heading of the times that count, as in \"%s=Chip Time\"", key))
		}
	case strings.HasPrefix(key, sheet.ColumnAnswer):
		if _, ok := sheet.ParseMeaning(value); !ok {
			return wrong(fmt.Sprintf("%s= and one of: %s", key, strings.Join(sheet.MeaningWords(), ", ")))
		}
	case key == sheet.StartAnswer:
		if _, ok := sheet.StartSeconds(value); !ok {
			return wrong(fmt.Sprintf("the time of day in place of HOURS:MINUTES, as in \"%s=9:00\" or \"%s=9:00:15\"", key, key))
		}
	case key == sheet.FirstAnswer:
		if _, ok := sheet.FirstSeconds(value); !ok {
			return wrong(fmt.Sprintf("the first runner's time in place of MINUTES:SECONDS, as in \"%s=17:45\" (from 8 minutes to 2 hours)", key))
		}
	case key == sheet.ClockAnswer:
		if value != sheet.OneClock && value != sheet.OwnClock {
			return wrong(fmt.Sprintf("\"%s=%s\" (times of one clock) or \"%s=%s\" (each runner's own)", key, sheet.OneClock, key, sheet.OwnClock))
		}
	case key == weekdayAnswer:
		if value != "any" {
			return wrong(fmt.Sprintf("\"%s=any\"; it says that the date is right and the weekday beside it is not", key))
		}
	case ofSex:
		if len(letter) != 1 || letter != strings.ToUpper(letter) || !slices.Contains([]string{"M", "W", "X", record.NotGivenAnswer}, value) {
			return wrong("the letter as it is asked about and M, W, X or not given, as in \"sex V=W\"")
		}
	case strings.HasPrefix(key, courseAnswer):
		if sheet.Slug(value) == "" {
			return wrong(fmt.Sprintf("the course behind the name as it was read, as in \"%salder bnak=alder-bank\"", courseAnswer))
		}
	default:
		return fmt.Errorf("answer %q answers no question; those that are asked begin with %s=, %s=, %s=, %s=, %s=, %s=, %s=, %s=, column or sex", key+"="+value, record.TimeAnswer, sheet.StartAnswer, sheet.FirstAnswer, sheet.ClockAnswer, orderAnswer, yearAnswer, weekdayAnswer, record.BirthDateAnswer)
	}
	return nil
}

// applyAnswers hands the answers about columns and dates to the reader of sheets.
func applyAnswers(o *sheet.Options, answers map[string]string) error {
	o.AnyWeekday = answers[weekdayAnswer] == "any"
	if said, ok := answers[yearAnswer]; ok {
		if err := checkAnswer(yearAnswer, said); err != nil {
			return err
		}
		o.YearSaid = said
	}
	if said, ok := answers[orderAnswer]; ok {
		if err := checkAnswer(orderAnswer, said); err != nil {
			return err
		}
		o.OrderSaid = said
	}
	for key, word := range answers {
		if column, ok := strings.CutPrefix(key, sheet.ColumnAnswer); ok {
			if err := checkAnswer(key, word); err != nil {
				return err
			}
			if o.Columns == nil {
				o.Columns = map[string]string{}
			}
			o.Columns[column] = word
		}
	}
	o.StartSaid, o.FirstSaid, o.ClockSaid = answers[sheet.StartAnswer], answers[sheet.FirstAnswer], answers[sheet.ClockAnswer]
	o.Official, o.OfficialBefore = answers[officialAnswer], answers[officialAnswer+record.AsBefore]
	if before := answers[orderAnswer+record.AsBefore]; before != "" && o.DateOrder == "" {
		o.DateOrder, o.OrderWhy, _ = strings.Cut(before, " ")
	}
	return nil
}
