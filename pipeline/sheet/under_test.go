package sheet

import (
	"strings"
	"testing"
)

// cellsOf reads a table of cells divided by bars and gives, for each line, the cells under
// the wanted meanings.
func cellsOf(t *testing.T, text string, wanted ...Meaning) (out []string) {
	t.Helper()
	c := sheetCase{text: text}
	s, err := Read("alder-bank_2026-01-03.csv", c.asText(), Options{})
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range s.Parts {
		err := p.Each(func(_ int, cells []string) error {
			var line []string
			for _, m := range wanted {
				line = append(line, trim(cellAt(cells, p.Index(m))))
			}
			out = append(out, strings.Join(line, " "))
			return nil
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	return out
}

// The sex, the class and the time that stand under a heading which is itself the answer.
func TestUnderHeadings(t *testing.T) {
	names := []string{"Jo Lee", "Ann Page", "Cy Dee", "Di Fox", "Ed Gow", "Hal Jay"}
	table := func(heading string, cells ...string) string {
		lines := []string{"Pos|Name|" + heading + "|Age|Time"}
		for i, c := range cells {
			lines = append(lines, strings.Join([]string{string(rune('1' + i)), names[i], c, string(rune('3'+i)) + "1", "18:2" + string(rune('0'+i))}, "|"))
		}
		return strings.Join(lines, "\n") + "\n"
	}
	for _, k := range []struct{ heading, cells, want string }{
		{"Female", "FALSE,TRUE,FALSE,TRUE,FALSE,TRUE", "male,Female,male,Female,male,Female"},
		{"Female?", "N,Y,N,Y,N,N", "male,Female,male,Female,male,male"},
		{"Male", "Yes,No,Yes,No,Yes,Yes", "Male,female,Male,female,Male,Male"},
		{"F?", ",F,,F,,", ",F,,F,,"},
		{"Lady", ",x,,x,,", ",Lady,,Lady,,"},
		{"Dam", ",X,,X,,", ",Dam,,Dam,,"},
		{"L/G", "G,L,G,L,G,G", "G,L,G,L,G,G"},
	} {
		if got := strings.Join(cellsOf(t, table(k.heading, strings.Split(k.cells, ",")...), Sex), ","); got != k.want {
			t.Errorf("%s: %s\n got %s\nwant %s", k.heading, k.cells, got, k.want)
		}
	}
	if got := cellsOf(t, table("W", "", "W", "", "W", "", ""), Sex); strings.Join(got, "") != "" {
		t.Errorf("W may be a walker: %q", got)
	}
	crosses := "Pos|Name|M|F|MV40|FV40|MV50|Club|Time\n1|Jo Lee|x|||||Moss AC|18:20\n2|Ann Page||x||||Moss AC|18:31\n3|Cy Dee|||x|||Moss AC|19:10\n4|Di Fox||||x||Moss AC|19:20\n5|Ed Gow|||||x|Moss AC|19:40\n"
	if got := strings.Join(cellsOf(t, crosses, AgeGroup, Time), ","); got != "M 18:20,F 18:31,MV40 19:10,FV40 19:20,MV50 19:40" {
		t.Errorf("crosses under classes: %s", got)
	}
	times := "Pos|Name|M20-39|F20-39|M40+|F40+\n1|Jo Lee|18:20|||\n2|Ann Page||18:31||\n3|Cy Dee|||19:10|\n4|Di Fox||||19:20\n5|Ed Gow|19:40|||\n"
	if got := strings.Join(cellsOf(t, times, AgeGroup, Time), ","); got != "M20-39 18:20,F20-39 18:31,M40+ 19:10,F40+ 19:20,M20-39 19:40" {
		t.Errorf("times under classes: %s", got)
	}
	both := "Pos|Name|Men|Women\n1|Jo Lee|18:20|\n2|Ann Page||18:31\n3|Cy Dee|19:10|\n4|Di Fox||19:20\n"
	if got := strings.Join(cellsOf(t, both, Sex, Time), ","); got != "Men 18:20,Women 18:31,Men 19:10,Women 19:20" {
		t.Errorf("times under sexes: %s", got)
	}
}

// Lines between the rows that name a class in more words, or another script.
func TestSectionsOfMoreWords(t *testing.T) {
	for text, want := range map[string]kind{
		"Kategorie muži 30–39 let": kGroup, "MALE AGE GROUP: 30 to 39": kGroup, "男子の部": kSex, "女子40歳以上": kGroup,
		"ΑΝΔΡΕΣ": kSex, "Мужчины 40-49 лет": kGroup, "Page 1 of 7": kBlank, "Round 4 of 8": kBlank, "Manche 2 sur 5": kBlank, "34歳": kBlank, "Other finishers": kBlank, "Other": kSex, "Alder Bank to Mere Side": kBlank,
	} {
		if got := sectionKind(text); got != want && !(want == kBlank && got == kText) {
			t.Errorf("%s: kind %d, want %d", text, got, want)
		}
	}
}

// Hebrew and Arabic headings (common practice, no source).
func TestSemiticHeadings(t *testing.T) {
	for _, text := range []string{
		"מקום|שם|מין|גיל|זמן\n1|נועם צור|ז|39|16:40\n2|הדס שפירא|נ|41|17:48\n3|דוד כהנא|ז|61|18:10\n",
		"المركز|الاسم|الجنس|العمر|الزمن\n1|حسن النجار|ذكر|21|17:12\n2|هدى القاضي|أنثى|34|17:28\n3|كريم البنا|ذكر|53|17:56\n",
	} {
		for _, line := range cellsOf(t, text, Position, Name, Sex, Age, Time) {
			if len(strings.Fields(line)) != 6 {
				t.Errorf("%q", line)
			}
		}
	}
}
