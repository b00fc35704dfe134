package record

import (
	"fmt"
	"strconv"
	"strings"
	"testing"

	"lapwing/pipeline/age"
	"lapwing/pipeline/place"
)

// Classes in the words and letters of many languages, each in a column of its like (from
// memory of the federations' lists; the words are the languages' own).
func TestClassesOfManyLanguages(t *testing.T) {
	for _, k := range []struct{ heading, cells, want string }{
		{"部門", "男子30代|女子40歳代|男子20～29歳|女子70歳以上|男子10代", "M 30-39|W 40-49|M 20-29|W 70+|M 10-19"},
		{"Kategoria", "poniżej 18|18-39", "0-17|18-39"},
		{"Grupė", "iki 17 metų|vyresni nei 60", "0-17|60+"},
		{"Grupa", "līdz 17 gadiem|18-39", "0-17|18-39"},
		{"Vanuseklass", "alla 18|üle 60", "0-17|60+"},
		{"Categoria", "sotto i 18|over 60", "0-17|60+"},
		{"Kategorija", "ispod 18|preko 60", "0-17|60+"},
		{"Κατηγορία", "κάτω των 18|άνω των 60", "0-17|60+"},
		{"Kategória", "Nő 40-49|Férfi 50-59", "W 40-49|M 50-59"},
		{"Altersklasse", "MKU12|WKU10|MJU16", "M 10-11|W 0-9|M 12-15"},
		{"部門", "中学男子|高校女子|一般男子", "M|W|M"},
		{"Age group", "aged 60 or more|40-59", "60+|40-59"},
		{"부문", "남자 30대|여자 40대|남자 60세 이상", "M 30-39|W 40-49|M 60+"},
		{"组别", "男子30-39岁组|女60岁以上|女40-49岁", "M 30-39|W 60+|W 40-49"},
		{"組別", "男30-39歲|女60歲以上|女40-49歲", "M 30-39|W 60+|W 40-49"},
		{"Category", "5K Male|Women 5 km|10k female", "M|W|W"},
		{"קטגוריה", "גברים 18-39|נשים 40-49", "M 18-39|W 40-49"},
		{"الفئة", "رجال 18-39|سيدات ٤٠-٤٩", "M 18-39|W 40-49"},
		{"Sarja", "M yl|N yl|M 45|N 50|M17|N19|T15", "M|W|M 45-49|W 50-54|M 16-17|W 18-19|W 0-15"},
		{"Klass", "Herrar Motion|Damer Elit|Herrar 40", "M|W|M 40-44"},
		{"Kategorija", "MSen|ŽSen|M40|Ž45", "M 18-39|W 18-39|M 40-44|W 45-49"},
		{"Kategória", "MA|ŽA|M40-49|Ž50-59", "M|W|M 40-49|W 50-59"},
		{"Categoria", "TM|TF|MM35|MF40", "M|W|M 35-39|W 40-44"},
		{"Kategorie", "Junioren U20|Juniorinnen U20|Herren 20-29|männliche Jugend U18", "M 18-19|W 18-19|M 20-29|M 0-17"},
		{"Klasse", "Gutter t.o.m. 19 år|Menn 20-29 år", "M 0-19|M 20-29"},
		{"Группа", "Мужчины до 18 лет|Женщины 18-39 лет", "M 0-17|W 18-39"},
		{"Kategoria", "Mężczyźni 70 lat i więcej|Kobiety 60-69 lat", "M 70+|W 60-69"},
		{"Categoría", "Vet. E M|Vet. D F|Vet. A M", "M 35+|W 35+|M 35+"},
		{"Klasse", "G 13-14|J 15-17|M 45-49|K 50-54", "M 13-14|W 15-17|M 45-49|W 50-54"},
		{"Kategorie", "Junioři do 19 let|Juniorky do 19 let|Muži 20-39 let", "M 0-19|W 0-19|M 20-39"},
		{"Categoría", "60 años en adelante|de 40 a 59 años", "60+|40-59"},
		{"Categoría", "Masculino hasta 19 años|Femenino 60 años y más|Masculino 20-29 años", "M 0-19|W 60+|M 20-29"},
		{"Kategória", "Férfi 20-29 év|Női 60 év felett", "M 20-29|W 60+"},
		{"Κατηγορία", "Άνδρες 20-29 ετών|Γυναίκες άνω των 60 ετών", "M 20-29|W 60+"},
		{"Escalão", "Homens 20 a 29 anos|Mulheres 60 anos ou mais", "M 20-29|W 60+"},
		{"Категорија", "Мушкарци 20-29 год.|Жене преко 60 год.", "M 20-29|W 60+"},
		{"Група", "Чоловіки 20-29 років|Жінки 60 років і старші", "M 20-29|W 60+"},
		{"Klasse", "Herrer 40-49 år|Damer 70 år og derover", "M 40-49|W 70+"},
		{"Klass", "Män 20–29 år|Kvinnor 60 år –", "M 20-29|W 60+"},
		{"Sarja", "Miehet alle 40 v|Naiset 40 v|Miehet yli 70 v", "M 0-39|W 40-44|M 70+"},
		{"组别", "男子青年组|女子老年组", "M|W"},
		{"Kategorie", "Männer Ü40|Frauen ü 50|Männer U18", "M 40+|W 50+|M 0-17"},
		{"Klasse/Jg.", "M 1984|W 1989|M 1993", "M 41-42|W 36-37|M 32-33"},
		{"Categoria", "M1519|F2024|M3034", "M 15-19|W 20-24|M 30-34"},
		{"Category", "NBV40|MV40|FV45", "X 40-44|M 40-44|W 45-49"},
		{"Catégorie", "Vétéran 1 Homme|Vétéran 2 Femme|Senior Homme", "M 40-49|W 50-59|M 18-39"},
		{"Catégorie", "Masters 0 Hommes|Masters 3 Femmes", "M 35-39|W 50-54"},
		{"Catégorie", "SE F|M0 M|CA F|M1 F", "W 23-34|M 35-39|W 16-17|W 40-44"},
	} {
		var got []string
		for _, l := range readGroups(t, k.heading, strings.Split(k.cells, "|")...) {
			got = append(got, agesOf(l))
		}
		if s := strings.Join(got, "|"); s != k.want {
			t.Errorf("%s: %s\n got %s\nwant %s", k.heading, k.cells, s, k.want)
		}
	}
}

// A place in the class before it, and how many there are, is no age.
func TestPlacesBeforeClasses(t *testing.T) {
	for _, form := range []string{"%d/9 %s", "%d of 9 %s", "%de %s", "%d:%s", "%d. %s"} {
		var cells []string
		for i := range 9 {
			cells = append(cells, fmt.Sprintf(form, i/3+1, []string{"M40", "F55", "M65"}[i%3]))
		}
		for i, l := range readGroups(t, "Category", cells...) {
			if got, want := agesOf(l), []string{"M 40-44", "W 55-59", "M 65-69"}[i%3]; got != want {
				t.Errorf("%s: %s, want %s", cells[i], got, want)
			}
		}
	}
}

// V and M are men and women on a Lithuanian sheet.
func TestLithuanianClasses(t *testing.T) {
	c := NoColumns()
	c.Name, c.Time, c.Group = 0, 1, 2
	cells := []string{"V40", "M35", "V", "M", "V 40-49 m.", "M 18-39 m."}
	want := []string{"M 40-44", "W 35-39", "M", "W", "M 40-49", "W 18-39"}
	lines, _ := readRows(t, c, []string{"Vardas, pavardė", "Laikas", "Grupė"}, Options{}, func(yield func([]string)) {
		for i, s := range cells {
			yield([]string{fmt.Sprintf("Ada Brook%c", 'a'+i), fmt.Sprintf("24:%02d", i), s})
		}
	})
	for i, l := range lines {
		if got := agesOf(l); got != want[i] {
			t.Errorf("%s: %s, want %s", cells[i], got, want[i])
		}
	}
}

// V and S are men and women on a Latvian sheet.
func TestLatvianClasses(t *testing.T) {
	c := NoColumns()
	c.Name, c.Time, c.Group = 0, 1, 2
	cells := []string{"V40", "S35", "V", "S", "SU20"}
	want := []string{"M 40-44", "W 35-39", "M", "W", "W 0-19"}
	lines, _ := readRows(t, c, []string{"Vārds, uzvārds", "Laiks", "Grupa"}, Options{}, func(yield func([]string)) {
		for i, s := range cells {
			yield([]string{fmt.Sprintf("Ada Brook%c", 'a'+i), fmt.Sprintf("24:%02d", i), s})
		}
	})
	for i, l := range lines {
		if got := agesOf(l); got != want[i] {
			t.Errorf("%s: %s, want %s", cells[i], got, want[i])
		}
	}
}

// Ages that are still to come, and ages of the year.
func TestAgesByHeading(t *testing.T) {
	if got := agesOf(readAges(t, "Age next birthday", false, []string{"41", "36"})[0]); got != "40-40" {
		t.Errorf("next birthday: %s", got)
	}
	for _, heading := range []string{"Ålder i år", "Age this year"} {
		if got := agesOf(readAges(t, heading, false, []string{"41", "36"})[0]); got != "40-41" {
			t.Errorf("%s: %s", heading, got)
		}
	}
}

// readAges reads a column of ages (or, with year, of years of birth) in the given form.
func readAges(t *testing.T, heading string, year bool, cells []string) []Line {
	t.Helper()
	c := NoColumns()
	c.Name, c.Time, c.Age = 0, 1, 2
	if year {
		c.Age, c.BirthYear = -1, 2
	}
	lines, _ := readRows(t, c, []string{"Name", "Time", heading}, Options{}, func(yield func([]string)) {
		for i, s := range cells {
			yield([]string{fmt.Sprintf("Ada Brook%c", 'a'+i), fmt.Sprintf("24:%02d", i), s})
		}
	})
	return lines
}

// What stands around the number on every line says nothing: the word for years in any
// language, a star for born.
func TestWordsAroundAges(t *testing.T) {
	numbers := []int{41, 38, 52, 33, 29, 64, 40, 47, 36}
	arabic := strings.NewReplacer("0", "٠", "1", "١", "2", "٢", "3", "٣", "4", "٤", "5", "٥", "6", "٦", "7", "٧", "8", "٨", "9", "٩")
	for _, form := range []string{"%d v.", "%d歳", "%d세", "%d岁", "%d歲", "%d éves", "%d let", "arabic"} {
		var cells []string
		for _, n := range numbers {
			if form == "arabic" {
				cells = append(cells, arabic.Replace(fmt.Sprint(n)))
			} else {
				cells = append(cells, fmt.Sprintf(form, n))
			}
		}
		for i, l := range readAges(t, "Age", false, cells) {
			if got, want := agesOf(l), fmt.Sprintf("%d-%d", numbers[i], numbers[i]); got != want {
				t.Errorf("%s: %s, want %s", cells[i], got, want)
			}
		}
	}
	year, _, _ := raceDay.Date()
	for _, form := range []string{"*%d", "%d г.р.", "%d г.", "%d m.", "%d r.", "%d年", "-%02d", "'%02d"} {
		var cells []string
		for _, n := range numbers {
			if strings.Contains(form, "%02d") {
				cells = append(cells, fmt.Sprintf(form, (year-n)%100))
			} else {
				cells = append(cells, fmt.Sprintf(form, year-n))
			}
		}
		for i, l := range readAges(t, "Born", true, cells) {
			if got, want := agesOf(l), fmt.Sprintf("%d-%d", numbers[i]-1, numbers[i]); got != want {
				t.Errorf("%s: %s, want %s", cells[i], got, want)
			}
		}
	}
	// Letters that differ are sexes, and multiples of five are groups.
	for i, l := range readAges(t, "Age", false, []string{"41M", "38F", "52M", "33F", "29M", "64F", "40M", "47F", "36M"}) {
		if want := fmt.Sprintf("%s %d-%d", []string{"M", "W"}[i%2], numbers[i], numbers[i]); agesOf(l) != want {
			t.Errorf("age beside a sex: %s, want %s", agesOf(l), want)
		}
	}
	for i, l := range readAges(t, "Age", false, []string{"40 v.", "35 v.", "50 v.", "45 v.", "55 v.", "60 v.", "40 v.", "45 v."}) {
		if lo, hi, _ := l.Birth.On(raceDay); lo == hi {
			t.Errorf("line %d: first ages of groups are taken for ages", i)
		}
	}
}

// Serbian and Croatian have one word for years of age and of birth: the numbers tell.
func TestYearsOfAge(t *testing.T) {
	numbers := []int{41, 38, 52, 33, 29, 64, 40, 47, 36}
	var cells, born []string
	year, _, _ := raceDay.Date()
	for _, n := range numbers {
		cells, born = append(cells, fmt.Sprint(n)), append(born, fmt.Sprintf("%02d", (year-n)%100))
	}
	// An apostrophe says that a number is a year, however old most runners are.
	old := []string{"'54", "'47", "'51", "'57", "'49", "'53", "'58", "'44", "'05"}
	if l := readAges(t, "YOB", true, old); l[0].Birth != age.OfYear(1954) || l[8].Birth != age.OfYear(2005) {
		t.Errorf("years with an apostrophe: %v, %v", l[0].Birth, l[8].Birth)
	}
	if got := agesOf(readAges(t, "Године", true, cells)[0]); got != "41-41" {
		t.Errorf("ages under a word for years: %s", got)
	}
	if got := agesOf(readAges(t, "Године", true, born)[0]); got != "40-41" {
		t.Errorf("years of birth: %s", got)
	}
}

// One cell that is written unlike all the others and fits no way of writing is asked about
// by itself; the column is read.
func TestStrayCellHoldsNoColumn(t *testing.T) {
	c := NoColumns()
	c.Position, c.Name, c.Time = 0, 1, 2
	for _, stray := range []string{"7:12", "45"} {
		lines, r := readRows(t, c, []string{"Pos", "Name", "Time"}, Options{}, func(yield func([]string)) {
			for i := range 40 {
				s := fmt.Sprintf("0:%02d:%02d", 20+i/2, 30*(i%2))
				if i == 20 {
					s = stray
				}
				yield([]string{fmt.Sprint(i + 1), fmt.Sprintf("Ada Brook%c%c", 'a'+i/20, 'a'+i%20), s})
			}
		})
		for _, p := range r.Problems {
			if p.Severity == place.Waits {
				t.Errorf("%s holds the sheet: %v", stray, p)
			}
		}
		doubted := false
		for _, p := range lines[20].Problems {
			doubted = doubted || p.Severity == place.Doubtful
		}
		if !doubted || lines[19].TimeMS != 1770000 || lines[21].TimeMS != 1830000 {
			t.Errorf("%s: %v, beside %d and %d", stray, lines[20].Problems, lines[19].TimeMS, lines[21].TimeMS)
		}
	}
}

// Titles before the names say the sex, where most have one and both sexes do.
func TestTitlesBeforeNames(t *testing.T) {
	c := NoColumns()
	c.Name, c.Time = 0, 1
	for _, k := range []struct{ names, want string }{
		{"Mr Jo Lee|Mrs Ann Page|Miss Di Fox|Mr Ed Gow", "M W W M"},
		{"Herr Jo Lee|Frau Ann Page|Frau Di Fox|Herr Ed Gow|Cy Dee", "M W W M "},
		{"LEE, Mr Jo|PAGE, Mrs Ann|FOX, Ms Di|GOW, Mr Ed", "M W W M"},
		{"Jo Lee ♂|Ann Page ♀|Di Fox (♀)|♂ Ed Gow", "M W W M"},
		{"Pan Wei|Jo Lee|Ann Page|Di Fox|Ed Gow", "    "},
	} {
		lines, _ := readRows(t, c, []string{"Name", "Time"}, Options{}, func(yield func([]string)) {
			for i, n := range strings.Split(k.names, "|") {
				yield([]string{n, fmt.Sprintf("24:%02d", i)})
			}
		})
		var got []string
		for _, l := range lines {
			got = append(got, l.Sex.String())
		}
		if s := strings.Join(got, " "); s != k.want {
			t.Errorf("%s: %q, want %q", k.names, s, k.want)
		}
	}
}

// A year behind a letter with a full stop is one of birth and says no sex.
func TestBornIsShort(t *testing.T) {
	c := NoColumns()
	c.Position, c.Name, c.Time = 0, 1, 2
	for _, form := range []string{"(b. 1966)", "(b.1966)", "(f. 1966)", "(n. 1966)"} {
		lines, _ := readRows(t, c, nil, Options{}, func(yield func([]string)) {
			for i, name := range []string{"Al Roe", "Jo Lee", "Cy Dee", "Di Fox", "Ed Gow"} {
				yield([]string{strconv.Itoa(i + 1), name + " " + form, "18:2" + strconv.Itoa(i)})
			}
		})
		for _, l := range lines {
			if l.Sex != NotGiven || l.Birth != age.OfYear(1966) {
				t.Errorf("%s: sex %v, born %v", form, l.Sex, l.Birth)
			}
		}
	}
}
