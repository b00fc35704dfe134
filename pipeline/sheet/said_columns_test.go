package sheet

import (
	"strings"
	"testing"
)

// What somebody says of a column wins over its heading and its values; a question offers just the
// answers that can be told apart; an answer about no column of the sheet is asked about.
func TestSaidColumns(t *testing.T) {
	const two = "Alder Bank, 3 January 2026\nPos,Name,T1,T2\n1,Jo Lee,18:20,18:15\n2,Ann Roe,18:31,18:25\n3,Sam Field,19:02,18:58\n4,Bo Gale,19:40,19:31\n"
	for _, k := range []struct {
		name, text      string
		said            map[string]string
		columns, answer string
	}{
		{"asked", two, nil, "position name other other", `--answer "column T1=time"`},
		{"answered", two, map[string]string{"T2": "time"}, "position name other time", ""},
		{"as it is compared", two, map[string]string{"t2": "time"}, "position name other time", ""},
		{"of two with one heading", strings.Replace(two, "T2", "T1", 1), nil, "position name other other", `--answer "column D=time"`},
		{"two headed Time", strings.NewReplacer("T1", "Time", "T2", "Time").Replace(two), nil, "position name time other", `--answer "column D=time"`},
		{"two headed Time, answered", strings.NewReplacer("T1", "Time", "T2", "Time").Replace(two), map[string]string{"D": "time"}, "position name other time", ""},
		{"over another column of times", strings.Replace(two, "T1", "Time", 1), map[string]string{"T2": "time"}, "position name other time", ""},
		{"what is not to be read", two, map[string]string{"T2": "other"}, "position name time other", ""},
		{"by letter, without headings", strings.Replace(two, "Pos,Name,T1,T2\n", "", 1), map[string]string{"D": "time"}, "position name other time", ""},
		{"no such column", two, map[string]string{"T1": "time", "T3": "time"}, "position name time other", "no such column"},
	} {
		s, err := Read("x.csv", []byte(k.text), Options{Columns: k.said})
		if err != nil {
			t.Fatal(k.name, err)
		}
		var words, told []string
		for _, c := range s.Parts[0].Columns {
			words = append(words, c.Meaning.String())
		}
		for _, p := range s.Parts[0].Problems {
			told = append(told, p.String())
		}
		if got := strings.Join(words, " "); got != k.columns {
			t.Errorf("%s: columns are %s, not %s", k.name, got, k.columns)
		}
		if got := strings.Join(told, "\n"); !strings.Contains(got, k.answer) || k.answer == "" && strings.Contains(got, "--answer") {
			t.Errorf("%s: told %q", k.name, got)
		}
	}
}
