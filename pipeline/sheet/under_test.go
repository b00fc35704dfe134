package sheet

import (
	"fmt"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"
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
	marked := "Pos|Name|Under 20|20-39|40+|Time\n1|Jo Lee||✓||18:20\n2|Ann Page|✓|||18:31\n3|Cy Dee|||✓|19:10\n4|Di Fox||✓||19:20\n5|Ed Gow|||✓|19:40\n"
	if got := strings.Join(cellsOf(t, marked, AgeGroup), ","); got != "20-39,Under 20,40+,20-39,40+" {
		t.Errorf("marks under ages: %s", got)
	}
	placed := "Pos|Name|Club|V40|V50|Time\n1|Jo Lee|AC|||18:20\n2|Ann Page|AC|1||18:31\n3|Cy Dee|AC||1|19:10\n4|Di Fox|AC|2||19:20\n5|Ed Gow|RC|||19:40\n"
	if got := strings.Join(cellsOf(t, placed, AgeGroup), ","); got != ",V40,V50,V40," {
		t.Errorf("places under ages: %s", got)
	}
	few := "Pos|Name|Junior|Time\n1|Jo Lee||18:20\n2|Ann Page|U17|18:31\n3|Cy Dee|U17|19:10\n4|Di Fox||19:20\n5|Ed Gow|U17|19:40\n"
	if got := strings.Join(cellsOf(t, few, AgeGroup), ","); got != ",U17,U17,,U17" {
		t.Errorf("a group under Junior: %s", got)
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
		"Männliche Jugend U20": kGroup, "Gutter 13-17 år": kGroup, "Jongens t/m 17": kGroup, "Menn 40 år og eldre": kGroup, "Pojkar 15": kGroup, "Messieurs": kSex, "Guy Fox": kBlank, "Chap 2": kBlank, "His": kBlank, "Girls aloud": kBlank,
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

// The sex that places say: a column of places for each sex, or for one of them, places among men and women, and places
// of all with the sex beside them.
func TestSexesOfPlaces(t *testing.T) {
	names := []string{"Jo Lee", "Ann Page", "Cy Dee", "Di Fox", "Ed Gow", "Hal Jay", "Ida Kerr"}
	for _, k := range []struct{ headings, cells, want string }{
		{"M|L", "1|,|1,2|,|2,3|,4|,|3", "M,L,M,L,M,M,L"},
		{"Herren|Damen", "1|,|1,2|,|2,3|,4|,|3", "Herren,Damen,Herren,Damen,Herren,Herren,Damen"},
		{"Men|Women", "1/4|,|1/3,2/4|,|2/3,3/4|,4/4|,|3/3", "Men,Women,Men,Women,Men,Men,Women"},
		{"Male|Female", "TRUE|,|TRUE,TRUE|,|TRUE,TRUE|,TRUE|,|TRUE", "Male,Female,Male,Female,Male,Male,Female"},
		{"Male|Female", "1|0,0|1,1|0,0|1,1|0,1|0,0|1", "Male,Female,Male,Female,Male,Male,Female"},
		{"Boys/Men|Girls/Women", "x|,|x,x|,|x,x|,x|,|x", "Boys/Men,Girls/Women,Boys/Men,Girls/Women,Boys/Men,Boys/Men,Girls/Women"},
		{"B|G", "X|,|X,X|,|X,X|,X|,|X", "boy,girl,boy,girl,boy,boy,girl"},
		{"J|G", "X|,|X,X|,|X,X|,X|,|X", "girl,boy,girl,boy,girl,girl,boy"},
		{"G", "X,,X,,X,X,", ",,,,,,"}, // a mark, and nobody's sex
		{"L.Pos", ",1,,2,,,3", ",l,,l,,,l"},
		{"Lady pos", ",L1,,L2,,,L3", ",lady,,lady,,,lady"},
		{"1st ladies", ",1st lady,,2nd lady,,,3rd lady", ",ladies,,ladies,,,ladies"},
		{"F pos", "1,2,3,4,5,6,7", ",,,,,,"}, // of the finish
		{"Gen Pos", "1 (M),1 (F),2 (M),2 (F),3 (M),4 (M),3 (F)", "M,F,M,F,M,M,F"},
		{"Sex place", "M01,L01,M02,L02,M03,M04,L03", "M,L,M,L,M,M,L"},
	} {
		lines := []string{"Pos|Name|" + k.headings + "|Time"}
		for i, c := range strings.Split(k.cells, ",") {
			lines = append(lines, strings.Join([]string{string(rune('1' + i)), names[i], c, "18:2" + string(rune('0'+i))}, "|"))
		}
		if got := strings.Join(cellsOf(t, strings.Join(lines, "\n")+"\n", Sex), ","); got != k.want {
			t.Errorf("%s: %s\n got %s\nwant %s", k.headings, k.cells, got, k.want)
		}
	}
	for _, k := range []struct{ places, want string }{
		{"1 (M1),2 (F1),3 (M2),4 (F2),5 (M3),6 (M4),7 (F3)", "1 M,2 F,3 M,4 F,5 M,6 M,7 F"},
		{"1 / M1,2 / F1,3 / M2,4 / F2,5 / M3,6 / M4,7 / F3", "1 M,2 F,3 M,4 F,5 M,6 M,7 F"},
		{"M1,F2,M3,F4,M5,M6,F7", "1 M,2 F,3 M,4 F,5 M,6 M,7 F"},
		{"1,2 (1st lady),3,4 (2nd lady),5,6,7 (3rd lady)", "1 ,2 lady,3 ,4 lady,5 ,6 ,7 lady"},
		{"1,2L,3,4L,5,6,7L", "1 ,2 L,3 ,4 L,5 ,6 ,7 L"},
		{"1,2,3w,4,5w,6,7", "1 ,2 ,3w ,4 ,5w ,6 ,7 "}, // walkers
		{"1st,2nd,3rd,4th,5th,6th,7th", "1st ,2nd ,3rd ,4th ,5th ,6th ,7th "},
	} {
		lines := []string{"Pos|Name|Time"}
		for i, c := range strings.Split(k.places, ",") {
			lines = append(lines, c+"|"+names[i]+"|18:2"+string(rune('0'+i)))
		}
		if got := strings.Join(cellsOf(t, strings.Join(lines, "\n")+"\n", Position, Sex), ","); got != k.want {
			t.Errorf("%s\n got %s\nwant %s", k.places, got, k.want)
		}
	}
	for _, headings := range []string{"Men|Women", "Name (men)|Name (women)", "Male runner|Female runner"} {
		text := "Pos|" + headings + "|Time\n1|Jo Lee||18:20\n2||Ann Page|18:31\n3|Cy Dee||18:40\n4||Di Fox|18:42\n5|Ed Gow||18:50\n"
		got := strings.ToLower(strings.Join(cellsOf(t, text, Name, Sex), ","))
		men, women, _ := strings.Cut(strings.ToLower(headings), "|")
		if want := "jo lee " + men + ",ann page " + women + ",cy dee " + men + ",di fox " + women + ",ed gow " + men; got != want {
			t.Errorf("%s: %s", headings, got)
		}
	}
}

// A column whose cells are words for both sexes is one of sexes though its heading promises a race or a wave, and so are
// two letters for them under no heading; sizes and other letters are not.
func TestSexesUnderAnyHeading(t *testing.T) {
	for _, c := range []struct{ heading, man, woman, want string }{
		{"Race", "Men", "Women", "MWMWM"},
		{"Wave", "Gents", "Ladies", "MWMWM"},
		{"Lauf", "Männer", "Frauen", "MWMWM"},
		{"Course", "Hommes", "Femmes", "MWMWM"},
		{"Wave", "A", "B", ""},
		{"", "M", "N", "MWMWM"},
		{"", "М", "Ж", "MWMWM"},
		{"", "M", "L", ""},
		{"", "S", "V", ""},
		{"Cat", "S", "V", ""},
		{"", "Y", "N", ""},
	} {
		head, text := "Name|Time|"+c.heading+"\n", ""
		for i, n := range []string{"Jo Lee", "Ann Page", "Cy Dee", "Di Fox", "Ed Gow"} {
			sex := c.man
			if i%2 > 0 {
				sex = c.woman
			}
			text += n + "|18:2" + string(rune('0'+i)) + "|" + sex + "\n"
		}
		if c.heading == "" {
			head = ""
		}
		got := strings.Join(cellsOf(t, head+text, Sex), " ")
		got = strings.NewReplacer(c.man, "M", c.woman, "W", " ", "").Replace(got)
		if got != c.want {
			t.Errorf("%s %s/%s: %q", c.heading, c.man, c.woman, got)
		}
	}
}

// Tabs called after age groups say the ages of their rows; those called after places do not.
func TestTabsOfAges(t *testing.T) {
	for _, c := range []struct{ tabs, want string }{
		{"Women 60+;Men 18-39", "Women 60+;Men 18-39"},
		{"Under 18;18-39;40 and over", "Under 18;18-39;40 and over"},
		{"1-25;26-50", ";"},
	} {
		tabs := strings.Split(c.tabs, ";")
		book := workbook(t, func(f *excelize.File) {
			for i, tab := range tabs {
				f.NewSheet(tab)
				setRows(t, f, tab, []any{"Pos", "Name", "Time"}, []any{3*i + 1, "Al Roe " + tab[:1], fmt.Sprintf("18:2%d", i)}, []any{3*i + 2, "Jo Lee " + tab[:1], fmt.Sprintf("18:3%d", i)}, []any{3*i + 3, "Cy Dee", fmt.Sprintf("18:4%d", i)})
			}
			f.DeleteSheet("Sheet1")
		})
		s, err := Read("alder-bank_2026-01-03.xlsx", book, Options{})
		if err != nil {
			t.Fatal(err)
		}
		var got []string
		for _, p := range s.Parts {
			group := ""
			p.Each(func(_ int, cells []string) error {
				group = cellAt(cells, p.Index(AgeGroup))
				return nil
			})
			got = append(got, group)
		}
		if strings.Join(got, ";") != c.want {
			t.Errorf("%s: %q", c.tabs, got)
		}
	}
}

// A time that is typed otherwise than the others is not joined to the text before it.
func TestHyphenatedTimeStays(t *testing.T) {
	const text = "|Pos|Name|Club|Time|\n|1|Jo Lee|Vale AC|18:20|\n|2|Al Roe|Vale AC|18:31|PB\n|3|Cy Dee|Vale AC|19-02|\n|4|Di Fox|Vale AC|19:44|PB\n|5|Ed Gow||19:50|\n|6|Fay Hill|Vale AC|20:50|cancelled\n"
	if got := cellsOf(t, text, Club, Time)[2]; got != "Vale AC 19-02" {
		t.Errorf("club and time %q", got)
	}
}

// Cells that are padded with spaces are divided by their commas, whatever stands above and below them.
func TestPaddedCommas(t *testing.T) {
	s, err := Read("alder-bank_2026-01-03.csv", []byte("\" Alder Bank 5k, 3 January 2026  \"\n\n Pos  , Name  , Club  , Time  \n 1  , Jo Lee  ,, 18:10  \n 2  , Al Roe  , Vale AC  , 18:24  \n 3  , Cy Dean  , Vale AC  , 18:51  \n 4  , Dora Fox  ,, 19:10  \n 5  , Ed Gow  , Vale AC  , 19 37  \n 6  , Flo Hay  , Vale AC  , 19:58  \n 7  , Gus Ivory  ,, 20:39  \n 8  , Hal Jex  , Vale AC  , 20:55  \n 9  , Ida Kay  , Vale AC  , 21:41  \n 10  , Jim Low  ,, 22:24  \n 11  , Kit Moy  , Vale AC  , 23:19  \n 12  , Lea Nye  , Vale AC  , 23:41  \n 13  , Max Orr  ,, 25:22  \n 14  , Nan Pym  , Vale AC  , 26:41  \n\n 6: not Flo Hay but Bob Trent  \n"), Options{})
	if err != nil || !strings.HasPrefix(s.Dialect, "divided by comma") {
		t.Errorf("%v, %v", s.Dialect, err)
	}
}
