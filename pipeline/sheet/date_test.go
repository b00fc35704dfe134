package sheet

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/xuri/excelize/v2"

	"lapwing/pipeline/unit"
)

// dates prints every reading of every date in a text.
func dates(s string, loose bool) string {
	var all []string
	for _, f := range scanDates(s, loose) {
		var rs []string
		for _, r := range f.readings {
			rs = append(rs, fmt.Sprintf("%04d-%02d-%02d", r.y, r.m, r.d))
		}
		t := strings.Join(rs, "|")
		if f.weekday >= 0 {
			t += " " + time.Weekday(f.weekday).String()[:3]
		}
		if f.clock != "" {
			t += " " + f.clock
		}
		all = append(all, t)
	}
	return strings.Join(all, ", ")
}

func TestDates(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"2026-01-03", "2026-01-03"},                                                // ISO 8601
		{"20260103", "2026-01-03"},                                                  // ISO 8601 basic
		{"2026-W01-6", "2026-01-03"},                                                // ISO 8601 week date
		{"1900-01-01T00:25:23", ""}, {"1904-01-01 0:25:23", ""}, {"1899-12-31", ""}, // times of day on a spreadsheet's first day
		{"2026-01-03T09:00:00", "2026-01-03 09:00"}, // ISO 8601
		{"4 Deireadh Fómhair 2025", "2025-10-04"}, {"20 Meán Fómhair 2025", "2025-09-20"}, {"2026年1月3日", "2026-01-03"}, {"2026년 1월 3일", "2026-01-03"},
		{"2026/01/03", "2026-01-03"}, {"2026.01.03", "2026-01-03"},
		{"3rd January 2026", "2026-01-03"}, {"3 January, 2026", "2026-01-03"}, {"January 3, 2026", "2026-01-03"}, {"January 3rd 2026", "2026-01-03"},
		{"Sat 3 Jan 2026", "2026-01-03 Sat"}, {"Saturday, 3rd of January 2026", "2026-01-03 Sat"}, {"Sat 3 Jan", "0000-01-03 Sat"}, {"3-Jan-26", "2026-01-03"}, {"3Jan2026", "2026-01-03"}, {"03JAN26", "2026-01-03"},
		{"3 Jan '26", "2026-01-03"}, {"Jan 3", "0000-01-03"}, {"Saturday 3.1.2026", "2026-01-03 Sat"},
		{"3.1.2026", "2026-01-03"}, {"03.01.26", "2026-01-03"}, {"3. 1. 2026", "2026-01-03"}, {"03/04/2026", "2026-04-03|2026-03-04"}, {"03/04/26", "2026-04-03|2026-03-04"}, {"31/01/2026", "2026-01-31"}, {"01/31/2026", "2026-01-31"}, {"03-04-2026", "2026-04-03|2026-03-04"}, {"04/04/2026", "2026-04-04"},
		{"03.04.2026", "2026-04-03"}, {"3/1/2026 9:00", "2026-01-03|2026-03-01 09:00"}, {"03 01 2026", "2026-01-03|2026-03-01"},
		{"3/1-2026", "2026-01-03"}, {"Sat 3/1 -26", "2026-01-03 Sat"}, {"Sat 31/1 2026", "2026-01-31 Sat"}, {"3/4 2026", "2026-04-03|2026-03-04"}, {"run 3/10 2026", ""}, {"run 3/1-26", "2026-01-03"}, {"Sat 31/1 2026: Alder Bank", "2026-01-31 Sat"}, {"3/4 2026:15", ""}, {"run 3/10 -14 March 2026", "2026-03-14"},
		{"3.01.'26", "2026-01-03"}, {"3·1·2026", "2026-01-03"}, {"3.I.26", "2026-01-03"}, {"3-iii-26", "2026-03-03"}, {"3 i 26", ""}, {"3.i.2026", "2026-01-03"}, {"3 V 26", ""},
		// CLDR month names
		{"samedi 3 janvier 2026", "2026-01-03 Sat"}, {"1er août 2026", "2026-08-01"}, {"Samstag, 3. Januar 2026", "2026-01-03 Sat"}, {"Sa., 3. Jän. 2026", "2026-01-03 Sat"}, {"Sa 03.01.2026", "2026-01-03 Sat"}, {"den 3. März 2026", "2026-03-03"},
		{"sábado, 3 de enero de 2026", "2026-01-03 Sat"}, {"sabato 3 gennaio 2026", "2026-01-03 Sat"}, {"zaterdag 3 januari 2026", "2026-01-03 Sat"}, {"sábado, 3 de janeiro de 2026", "2026-01-03 Sat"}, {"sobota, 3 stycznia 2026", "2026-01-03 Sat"}, {"3 paź 2026", "2026-10-03"}, {"2026. X. 3.", "2026-10-03"}, {"2026/I/3", "2026-01-03"}, {"lördag 3 januari 2026", "2026-01-03 Sat"}, {"lørdag den 3. januar 2026", "2026-01-03 Sat"},
		{"5 أبريل 2025", "2025-04-05"}, {"السبت 28 ديسمبر 2024", "2024-12-28 Sat"}, {"12 تموز 2025", "2025-07-12"}, {"5 avril/8 جويلية 2025", "0000-04-05, 2025-07-08"},
		{"17 באוקטובר 2026", "2026-10-17"}, {"15 פברואר 2025", "2025-02-15"}, {"23 Maret 2024", "2024-03-23"}, {"sabtu, 24 Agustus 2024", "2024-08-24 Sat"}, {"7 Machi 2026", "2026-03-07"}, {"15 มีนาคม 2026", "2026-03-15"},
		{"15 tháng 3 năm 2026", "2026-03-15"}, {"ngày 5 tháng 12, 2025", "2025-12-05"}, {"3 tháng 13 2025", ""},
		// weeks of ISO 8601 with a weekday beside them
		{"KW 12/2026 (Donnerstag)", "2026-03-19 Thu"}, {"Donnerstag, KW 12 2026", "2026-03-19 Thu"}, {"torsdag uge 12, 2026", "2026-03-19 Thu"}, {"Sonntag KW 1/2026", "2026-01-04 Sun"}, {"KW 12/2026", ""}, {"Montag KW 54/2026", ""}, {"Thursday of week 12, 2026", ""},
		// no dates
		{"24:31", ""}, {"5 km", ""}, {"1:02:03", ""}, {"May Hill 5 km", ""}, {"Run 3 of 12", ""}, {"12/13", ""}, {"31/02/2026", ""}, {"M40-44", ""}, {"24.31.5", ""}, {"192.168.1.10", ""}, {"Event 123", ""}, {"January 2026", ""}, {"#2026-01-03", ""}, {"020 7946 0018", ""},
		{"Tobias Mai, 25 min 10 s", ""}, {"Ewa Maj – 24 min 10 sek", ""}, {"May 25, mill run", "0000-05-25"},
		{"57 finishers in 2026", ""}, {"3 Jan 25 finishers", "0000-01-03"}, {"3 Jan 9:30", "0000-01-03 09:30"}, {"3 Jan 9 am", "0000-01-03 09:00"},
		// months one letter off
		{"21st Novmber 2026", "2026-11-21"}, {"3 Janurary 2026", "2026-01-03"}, {"3rd of Septmber, 2026", "2026-09-03"}, {"3 Febraur 2026", "2026-02-03"}, {"15 Junior 2026", ""}, {"3 Novmber", ""}, {"Heat 3 Novembers 26", ""},
		// places named after a day
		{"Plaza 25 de Mayo 2026-11-21", "2026-11-21"}, {"Parc du 8 Mai 1945, 3 janvier 2026", "2026-01-03"}, {"Stade du 11 novembre", ""}, {"Parque 9 de Julho 03/01/2026", "2026-01-03|2026-03-01"},
		{"Parc du Lac 3 janvier", "0000-01-03"}, {"Parque 3 de enero de 2026", "2026-01-03"}, {"Moss Park 3 January", "0000-01-03"}, {"25 May 2026-11-21", "0000-05-25, 2026-11-21"},
		{"Results of 3 January 2026, updated 5 January 2026", "2026-01-03, 2026-01-05"},
	} {
		if got := dates(c.text, false); got != c.want {
			t.Errorf("%q: %q, want %q", c.text, got, c.want)
		}
	}
	for _, c := range []struct{ text, want string }{
		{"030126", "2026-01-03|2026-03-01|2003-01-26"}, {"310126", "2026-01-31|2031-01-26"}, {"3.1.", "0000-01-03"}, {"03-01", "0000-01-03|0000-03-01"}, {"17-01", "0000-01-17"}, {"Sat 3-1", "0000-01-03|0000-03-01 Sat"}, {"03012026", "2026-01-03|2026-03-01"},
	} {
		if got := dates(c.text, true); got != c.want {
			t.Errorf("%q where a date is expected: %q, want %q", c.text, got, c.want)
		}
	}
}

// Every day is read back from every form that has one reading.
func TestDatesAreReadBack(t *testing.T) {
	forms := []string{"2006-01-02", "2 January 2006", "02 Jan 2006", "January 2, 2006", "Monday 2 January 2006", "Mon, 02 Jan 2006", "2.1.2006", "02.01.06", "20060102", "2-Jan-06", "2006/01/02"}
	for d := unit.NewDay(1999, 12, 25); d < unit.NewDay(2030, 1, 10); d += 11 {
		for _, form := range forms {
			text := d.Time().Format(form)
			if got := scanDates("Results "+text+" Alder Bank", false); len(got) != 1 || len(got[0].readings) != 1 || got[0].readings[0].day() != d {
				t.Fatalf("%q is read as %q", text, dates(text, false))
			}
		}
		for _, form := range []string{"2/1/2006", "02/01/06", "1/2/2006", "01-02-2006"} {
			text := d.Time().Format(form)
			if got := scanDates(text, false); len(got) != 1 || !has(got[0].readings, d) {
				t.Fatalf("%q is read as %q", text, dates(text, false))
			}
		}
	}
}

// Month names are checked against the localised number formats of the
// spreadsheet library, which carry the names of ECMA-376 locales.
func TestMonthNamesAgainstSpreadsheetLocales(t *testing.T) {
	f := excelize.NewFile()
	defer f.Close()
	for _, locale := range []string{"409", "809", "40C", "407", "C07", "C0A", "410", "413", "416", "816", "415", "41D", "406", "414"} {
		for _, pattern := range []string{"mmmm", "mmm"} {
			code := "[$-" + locale + "]d " + pattern + " yyyy"
			style, err := f.NewStyle(&excelize.Style{CustomNumFmt: &code})
			if err != nil {
				t.Fatal(err)
			}
			for m := 1; m <= 12; m++ {
				day := unit.NewDay(2026, m, 17)
				f.SetCellValue("Sheet1", "A1", day.Time())
				f.SetCellStyle("Sheet1", "A1", "A1", style)
				text, err := f.GetCellValue("Sheet1", "A1")
				if err != nil {
					t.Fatal(err)
				}
				if got := dates(text, false); got != day.String() {
					t.Errorf("locale %s %s: %q is read as %q, want %v", locale, pattern, text, got, day)
				}
			}
		}
	}
}

func TestCellDate(t *testing.T) {
	// ECMA-376 Part 1, 18.17.4.1: 39448 is 1 January 2008 in the 1900 system;
	// in the 1904 system the same day is 37986.
	for _, c := range []struct {
		text     string
		date1904 bool
		want     string
	}{{"39448", false, "2008-01-01"}, {"37986", true, "2008-01-01"}, {"46025", false, "2026-01-03"}, {"3/1/26", false, "2026-01-03"}, {" 2026-01-03 ", false, "2026-01-03"}} {
		f, ok := cellDate(c.text, c.date1904)
		if !ok || f.readings[0].day().String() != c.want {
			t.Errorf("%q: %v %v, want %s", c.text, f.readings, ok, c.want)
		}
	}
}

func FuzzDates(f *testing.F) {
	for _, s := range []string{"Sat 3 Jan 2026", "03/04/26 9.30am", "2026-W01-6", "3 de enero de 2026", "1er août", "030126", "3.1.", "12 May 5k", "º3º Jan", "2026-01-03T09:00:00.000Z"} {
		f.Add(s, true)
		f.Add(s, false)
	}
	f.Fuzz(func(t *testing.T, s string, loose bool) {
		for _, d := range scanDates(s, loose) {
			if d.from < 0 || d.to > len(s) || d.from >= d.to || len(d.readings) == 0 {
				t.Fatalf("%q: %+v", s, d)
			}
			for _, r := range d.readings {
				if !validDate(r.y, r.m, r.d) {
					t.Fatalf("%q: no such day %+v", s, r)
				}
			}
		}
		cutSpans(s, loose)
		Slug(s)
	})
}
