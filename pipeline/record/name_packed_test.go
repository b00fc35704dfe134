package record

import (
	"fmt"
	"strings"
	"testing"
)

// Names with a number and a club in brackets behind them, and names that only look like it.
func TestPackedNames(t *testing.T) {
	for _, k := range []struct {
		names string
		want  string // name as received, without the club, years of age and club of the first
	}{
		{"Jo Lee (1986, Mill AC)|Al Roe (1971, Vale Harriers)|Cy Dee (1962)|Di Fox (1999, Mill AC)|Ed Gow (1986, SK Vale)", "Jo Lee (1986) 39-40 Mill AC"},
		{"Jo Lee (Mill AC, 1986)|Al Roe (Vale Harriers, 1971)|Cy Dee (Mill AC, 1962)|Di Fox (Mill AC, 1999)", "Jo Lee (1986) 39-40 Mill AC"},
		{"Jo Lee (39 / Mill AC)|Al Roe (54 / Vale Harriers)|Cy Dee (39 / Mill AC)|Di Fox (44 / Mill AC)|Ed Gow (54 / Mill AC)|Fi Hay (23 / Mill AC)|Gus Ing (31 / Fell AC)|Hal Job (67 / Fell AC)", "Jo Lee (39) 39-39 Mill AC"},
		{"Jo Lee, M40, Mill AC|Al Roe, W35, Vale Harriers|Cy Dee, M40, Mill AC|Di Fox, W50, Mill AC", "Jo Lee (M40) 40-44 Mill AC"},
		{"Jo Lee (M40, Mill AC)|Al Roe (W35, Vale Harriers)|Cy Dee (M40, Mill AC)|Di Fox (W50, Mill AC)", "Jo Lee (M40) 40-44 Mill AC"},
		{"Jo Lee (39) (Mill AC)|Al Roe (54) (Vale Harriers)|Cy Dee (39) (Mill AC)|Di Fox (44)|Ed Gow (54) (Mill AC)|Fi Hay (23) (Mill AC)", "Jo Lee (39) 39-39 Mill AC"},
		{"Jo Lee (F, 39) (Mill AC)|Al Roe (M, 54) (Vale Harriers)|Cy Dee (M, 33) (Mill AC)|Di Fox (F, 44) (Mill AC)|Ed Gow (M, 51) (Mill AC) (DNF)", "Jo Lee (F, 39) 39-39 Mill AC"},
		{"Jo Lee (39) (F)|Al Roe (54) (M)|Cy Dee (33) (M)|Di Fox (44) (F)", "Jo Lee (39, F) 39-39 "},
		{"Lee, Jo, Jr|Roe, Al|Dee, Cy|Fox, Di", "Lee, Jo, Jr  "},
		{"Jo Lee (1986, Mill AC)|Al Roe|Cy Dee|Di Fox|Ed Gow|Fi Hay", "Jo Lee (1986, Mill AC)  "},
		{"Ann Fox (42, f)|Bob Gow (37, m)|Cy Dee (63, m)|Di Elm (50, f)", "Ann Fox (42, f) 42-42 "},
		{"Ann Fox (A, 1)|Bob Gow (B, 2)|Cy Dee (A, 3)|Di Elm (B, 4)", "Ann Fox (A, 1)  "},
	} {
		c := NoColumns()
		c.Name, c.Time = 0, 1
		lines, _ := readRows(t, c, []string{"Name", "Time"}, Options{}, func(yield func([]string)) {
			for i, s := range strings.Split(k.names, "|") {
				yield([]string{s, fmt.Sprintf("24:%02d", i)})
			}
		})
		l := lines[0]
		age := ""
		if lo, hi, ok := l.Birth.On(raceDay); ok {
			age = fmt.Sprintf("%d-%d", lo, hi)
		}
		if got := l.Name + " " + age + " " + l.Club; got != k.want {
			t.Errorf("%s: %q, want %q", k.names, got, k.want)
		}
	}
}
