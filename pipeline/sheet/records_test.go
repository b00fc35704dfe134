package sheet

import (
	"encoding/json"
	"fmt"
	"strings"
	"testing"
)

// Lists of records that programs keep are tables.
func TestProgramRecords(t *testing.T) {
	for _, c := range []struct{ name, text, run, lines, refused string }{
		{"a list of records", `[{"place":1,"name":"Jo Lee","time":"18:20"},{"place":2,"name":"Zo\u00eb M\u00fcller","time":"18:31"}]`, "alder-bank 2026-01-03", "1 Jo Lee 18:20; 2 Zoë Müller 18:31", ""},
		{"one record a line, some without a value", "{\"place\":1,\"name\":\"Jo Lee\",\"time\":\"18:20\"}\n{\"place\":2,\"name\":null,\"time\":\"18:31\"}\n", "alder-bank 2026-01-03", "1 Jo Lee 18:20; 2  18:31", ""},
		{"what is said of all beside the list", "{\n \"event\": {\"course\": \"Ember Quay\", \"date\": \"10 January 2026\"},\n \"finishers\": [\n  {\"place\": 1, \"runner\": {\"name\": \"Jo Lee\"}, \"time\": \"18:20\", \"splits\": [\"9:01\", \"18:20\"]},\n  {\"place\": 2, \"runner\": {\"name\": \"Al \\\"Ace\\\" Roe\"}, \"time\": \"18:31\", \"splits\": []}\n ]\n}", "ember-quay 2026-01-10", `1 Jo Lee 18:20; 2 Al "Ace" Roe 18:31`, ""},
		{"lists of men and of women", `{"women":[{"place":1,"name":"Jo Lee","time":"18:20"},{"place":2,"name":"Di Fox","time":"18:52"}],"men":[{"place":1,"name":"Al Roe","time":"17:31"},{"place":2,"name":"Cy Dee","time":"18:01"}]}`, "alder-bank 2026-01-03", "1 Jo Lee 18:20; 2 Di Fox 18:52; 1 Al Roe 17:31; 2 Cy Dee 18:01", ""},
		{"XML, attributes and what is said of all", "<?xml version=\"1.0\"?>\n<results course=\"Ember Quay\" date=\"2026-01-10\">\n <runner place=\"1\" name=\"Jo Lee\" time=\"18:20\"/>\n <runner place=\"2\" name='Zo&#xEB; &quot;Zed&quot; M&#xFC;ller' time=\"18:31\"/>\n</results>\n", "ember-quay 2026-01-10", "1 Jo Lee 18:20; 2 Zoë \"Zed\" Müller 18:31", ""},
		{"XML, elements within elements, in a fence", "```xml\n<?xml version=\"1.0\" encoding=\"ISO-8859-1\"?><race><info><venue>Ember Quay</venue><date>10 January 2026</date></info><finishers><finisher place=\"1\"><person><name>Jo Lee</name></person><time>18:20</time></finisher><finisher place=\"2\"><person><name>Al Roe</name></person><time unit=\"min\">18:31</time></finisher></finishers></race>\n```\n", "ember-quay 2026-01-10", "1 Jo Lee 18:20; 2 Al Roe 18:31", ""},
		{"XML of a page of a feed", "<?xml version=\"1.0\"?><rss><channel><item><title>A</title><link>b</link></item><item><title>C</title><link>d</link></item></channel></rss>", "", "", "program data (XML); of its lists, "},
		{"XML that is broken off", "<?xml version=\"1.0\"?><results><runner place=\"1\"", "", "", "can't be read"},
		{"rows, the headings first", `[["place","name","time"],[1,"Jo Lee","18:20"],[2,"Al Roe","18:31"]]`, "alder-bank 2026-01-03", "1 Jo Lee 18:20; 2 Al Roe 18:31", ""},
		{"rows, the headings beside them", `{"event":"Ember Quay","date":"2026-01-10","rows":[[1,"Jo Lee","18:20"],[2,"Al Roe","18:31"]],"columns":[{"title":"Place","width":3},{"title":"Name","width":20},{"title":"Time","width":5}]}`, "ember-quay 2026-01-10", "1 Jo Lee 18:20; 2 Al Roe 18:31", ""},
		{"rows that begin with a figure", `[[1,"Jo Lee","M","18:20"],[2,"Al Roe","F","18:31"]]`, "alder-bank 2026-01-03", "1 Jo Lee 18:20; 2 Al Roe 18:31", ""},
		{"people with their runs", `[{"runner":{"name":"Jo Lee","sex":"F"},"runs":[{"course":"Alder Bank","date":"2026-01-03","place":1,"time":"18:20"}]},{"runner":{"name":"Al Roe","sex":"M"},"runs":[{"course":"Alder Bank","date":"2026-01-03","place":2,"time":"18:31"}]}]`, "alder-bank 2026-01-03", "1 Jo Lee 18:20; 2 Al Roe 18:31", ""},
		{"records under keys", `{"event":"Ember Quay","date":"2026-01-10","finishers":{"17":{"place":1,"name":"Jo Lee","time":"18:20"},"21":{"place":2,"name":"Al Roe","time":"18:31"}}}`, "ember-quay 2026-01-10", "1 Jo Lee 18:20; 2 Al Roe 18:31", ""},
		{"rows, one of them without a name", `{"event":"Ember Quay","date":"2026-01-10","columns":["Place","Name","Time"],"data":[[1,"Jo Lee","18:20"],[2,"Al Roe","18:31"],[3,"Cy Dee","19:02"],[4,"?","19:28"]]}`, "ember-quay 2026-01-10", "1 Jo Lee 18:20; 2 Al Roe 18:31; 3 Cy Dee 19:02; 4 ? 19:28", ""},
		{"columns beside one another", `{"course":"Ember Quay 5k","date":"2026-01-10","position":[1,2,3],"name":["Jo Lee","Al Roe","Cy Dee"],"time":["18:20","18:31","19:02"]}`, "ember-quay 2026-01-10", "1 Jo Lee 18:20; 2 Al Roe 18:31; 3 Cy Dee 19:02", ""},
		{"points of a way are no rows", `{"name":"Ember Quay","points":[[51.2,-1.3],[51.3,-1.2],[51.4,-1.1]]}`, "", "", "without a list of records"},
		{"no list", `{"name":"settings","port":"8080"}`, "", "", "without a list of records"},
		{"no results", `[{"name":"red","code":"#f00"},{"name":"blue","code":"#00f"}]`, "", "", "program data (JSON); of its lists, "},
		{"broken off", `[{"place":1,"name":"Jo Lee","time":"18:20"},{"place":2,`, "", "", "can't be read"},
		{"lists without end", strings.Repeat(`{"a":[`, 100), "", "", "can't be read"},
	} {
		t.Run(c.name, func(t *testing.T) {
			file := "alder-bank_2026-01-03.json"
			if strings.Contains(c.text, "Ember Quay") {
				file = "results.json"
			}
			s, err := Read(file, []byte(c.text), Options{})
			if c.refused != "" {
				if err == nil || !strings.Contains(err.Error(), c.refused) {
					t.Fatalf("refused: %v, want %q", err, c.refused)
				}
				return
			}
			if err != nil {
				t.Fatal(err)
			}
			var lines []string
			for _, p := range s.Parts {
				if err := p.Each(func(_ int, cells []string) error {
					lines = append(lines, strings.Join([]string{cells[p.Index(Position)], cells[p.Index(Name)], cells[p.Index(Time)]}, " "))
					return nil
				}); err != nil {
					t.Fatal(err)
				}
			}
			if got := strings.Join(lines, "; "); got != c.lines || s.Parts[0].RunOfFirst() != c.run {
				t.Errorf("%s\n%s\nwant %s\n%s", s.Parts[0].RunOfFirst(), got, c.run, c.lines)
			}
		})
	}
}

// Times under names, and nothing else, are a list of names and times.
func TestTimesUnderNames(t *testing.T) {
	s, err := Read("x.json", []byte(`{"title":"Alder Bank 5k, 3 January 2026","times":{"Jo Lee":"18:20","Al Roe":"18:31","Cy Dee":"18:40"}}`), Options{})
	if err != nil {
		t.Fatal(err)
	}
	if got := outcome(s); got.columns != "name time" || got.run != "alder-bank 2026-01-03" {
		t.Errorf("columns %q, run %q", got.columns, got.run)
	}
	if _, err = Read("x.json", []byte(`{"opens":"9:00","closes":"17:00","lunch":"12:30"}`), Options{}); err == nil {
		t.Error("hours of opening are read as a list")
	}
}

// Somebody who is erased stands in no part of program data any more.
func TestProgramRecordsRedacted(t *testing.T) {
	r := Redaction{Words: []string{"Zoë Müller"}, Text: "(erased)", Everywhere: true}
	for _, text := range []string{
		`[{"place":1,"name":"Jo Lee","time":"18:20"},{"place":2,"name":"Zo\u00eb M\u00fcller","time":"18:31"}]`,
		"<?xml version=\"1.0\"?><r><x place=\"1\" name=\"Jo Lee\" time=\"18:20\"/><x place=\"2\" name=\"Zo&#xEB; M&#xFC;ller\" time=\"18:31\"/></r>",
		`{"by":[["Zo\u00eb M\u00fcller"]],"list":[{"place":1,"name":"Jo Lee","time":"18:20"}]}`,
	} {
		out, err := Redact("x.json", []byte(text), Options{}, r)
		if err != nil || strings.Contains(unescaped(string(out)), "Müller") || !strings.Contains(string(out), "Jo Lee\t18:20") {
			t.Errorf("%q, %v", out, err)
		}
	}
	plain := `[{"place":1,"name":"Jo Lee","time":"18:20"}]`
	if out, err := Redact("x.json", []byte(plain), Options{}, r); err != nil || string(out) != plain {
		t.Errorf("%q, %v", out, err)
	}
}

// An element of very many names in it, which would take long to tell apart, is refused.
func TestRecordsOfManyNames(t *testing.T) {
	var b strings.Builder
	b.WriteString("<?xml version=\"1.0\"?>\n<results>\n<r>")
	for i := range 2000 {
		fmt.Fprintf(&b, "<a%d>x</a%d>\n", i, i)
	}
	b.WriteString("</r></results>")
	if _, err := Read("x.xml", []byte(b.String()), Options{}); err == nil || !strings.Contains(err.Error(), "more than 1000 others") {
		t.Errorf("told %v", err)
	}
}

// Races with the numbers of those who ran are no people with their runs.
func TestNoRunners(t *testing.T) {
	n, err := readNode(json.NewDecoder(strings.NewReader(`[{"name":"Ember Quay","date":"2026-01-03","results":[{"bib":7,"date":"2026-01-03","time":"18:20"}]},{"name":"Alder Bank","date":"2026-01-10","results":[{"bib":7,"date":"2026-01-10","time":"18:21"}]}]`)), 0)
	if err != nil || n.ofRunners() {
		t.Errorf("%v, %v", n.ofRunners(), err)
	}
}
