package record

import (
	"fmt"
	"strings"
	"testing"

	"lapwing/pipeline/age"
	"lapwing/pipeline/unit"
)

func readGroups(t testing.TB, heading string, cells ...string) []Line {
	t.Helper()
	c := NoColumns()
	c.Name, c.Time, c.Group = 0, 1, 2
	lines, _ := readRows(t, c, []string{"Name", "Time", heading}, Options{}, func(yield func([]string)) {
		for i, s := range cells {
			yield([]string{fmt.Sprintf("Ada Brook%c", 'a'+i), fmt.Sprintf("24:%02d", i), s})
		}
	})
	return lines
}

// agesOf is the printed form of what a line says: "M 40-44".
func agesOf(l Line) string {
	s := l.Sex.String()
	if lo, hi, ok := l.Birth.On(raceDay); ok {
		if s != "" {
			s += " "
		}
		if hi >= oldest {
			return s + fmt.Sprintf("%d+", lo)
		}
		s += fmt.Sprintf("%d-%d", lo, hi)
	}
	return s
}

// Two figures beside a sex are a year of birth where the heading, a mark or the numbers say so; ages
// and groups, however old, are none.
func TestYearsBesideLetters(t *testing.T) {
	for _, k := range []struct{ heading, cells, want string }{
		{"Sex/YOB", "F77 M82 M79 F61", "W 48-49, M 43-44, M 46-47, W 64-65"},
		{"M/F", "F'77 M'82 M'79 F'61", "W 48-49, M 43-44, M 46-47, W 64-65"},
		{"Cat", "F77 M68 M90 F05 F61 M99", "W 48-49, M 57-58, M 35-36, W 20-21, W 64-65, M 26-27"},
		{"Cat", "F77 M68 M23 F31 F61 M54", "W 77-77, M 68-68, M 23-23, W 31-31, W 61-61, M 54-54"},
		{"Cat", "F70 M65 M75 F80 M90 M65", "W 70-74, M 65-69, M 75-79, W 80-84, M 90-94, M 65-69"},
		{"Age group, year", "M35-39 F77 M90 M91 F92", "M 35-39, W 77-77, M 90-90, M 91-91, W 92-92"},
	} {
		var got []string
		for _, l := range readGroups(t, k.heading, strings.Fields(k.cells)...) {
			got = append(got, agesOf(l))
		}
		if g := strings.Join(got, ", "); g != k.want {
			t.Errorf("%s %s: %s, not %s", k.heading, k.cells, g, k.want)
		}
	}
}

// Usual spellings of groups, each in a column of its like. The five-year
// groups are those of World Masters Athletics; the rest is common practice, no
// source, unless the case says so.
// Classes are taken as on the day though those of the French, Italian and German federations
// go by the year of birth (from memory of their rules), unless the sheet shows it.
func TestGroupColumns(t *testing.T) {
	for _, c := range []struct {
		heading     string
		cells, want []string
	}{
		{"Cat", []string{"M40", "W35", "M45", "U13", "U11", "SM", "SW", "M20"}, []string{"M 40-44", "W 35-39", "M 45-49", "11-12", "0-10", "M 18-34", "W 18-34", "M 20-34"}},
		{"Age Grp", []string{"40s", "30s", "60s", "50s", "F 20s"}, []string{"40-49", "30-39", "60-69", "50-59", "W 20-29"}},
		{"Cat", []string{"Senior", "V40-59", "V60+"}, []string{"18-39", "40-59", "60+"}},
		{"Age group", []string{"8-year-olds", "11-year-olds"}, []string{"8-8", "11-11"}},
		{"Age", []string{"43y 5m", "38y 11m", "41y 0m"}, []string{"43-43", "38-38", "41-41"}},
		{"Age group", []string{"Twenties", "Forties", "Sixties", "teens"}, []string{"20-29", "40-49", "60-69", "13-19"}},
		{"Class", []string{"Homme 20-34 ans", "Femme -20 ans", "Homme 35-39 ans"}, []string{"M 20-34", "W 0-19", "M 35-39"}},
		{"Class", []string{"60 and above", "40-59", "20 to 39"}, []string{"60+", "40-59", "20-39"}},
		{"Age group", []string{"30 thru 39", "55 til 59", "von 20 bis 24", "entre 50 y 59", "20-29-vuotiaat", "dos 30 aos 39"}, []string{"30-39", "55-59", "20-24", "50-59", "20-29", "30-39"}},
		{"Age group", []string{"40er", "in their 50s", "mid 30s"}, []string{"40-49", "50-59", "30-39"}},
		{"Categoría", []string{"mayores de 60", "más de 40", "40-59"}, []string{"60+", "40-59", "40-59"}},
		{"Age Grp", []string{"Over 40s", "Under 20s"}, []string{"40+", "0-19"}},
		{"Cat", []string{"U13", "U17"}, []string{"0-12", "13-16"}},
		{"Cat", []string{"U13"}, []string{"0-12"}},
		{"Age group", []string{"M 40-44", "F 35-39", "F NA"}, []string{"M 40-44", "W 35-39", "W"}},
		{"Age group", []string{"MV40", "FV35", "VM40", "V40", "MV45", "FV45", "LV50", "Vet 40"}, []string{"M 40-44", "W 35-39", "M 40-44", "40-44", "M 45-49", "W 45-49", "W 50-54", "40-44"}},
		{"Cat", []string{"V40", "FV40", "V50", "FV50", "SM", "SW"}, []string{"M 40-49", "W 40-49", "M 50-59", "W 50-59", "M 18-39", "W 18-39"}},
		{"Cat", []string{"V40", "V50", "FV50", "VF60", "V60"}, []string{"40-49", "50-59", "W 50-59", "W 60-69", "60-69"}},
		{"Age group", []string{"M40-44", "M 40 - 44", "40-44", "W40–44", "Male 40-44", "Women 45 to 49", "40/44", "M4044", "45-49 F"}, []string{"M 40-44", "M 40-44", "40-44", "W 40-44", "M 40-44", "W 45-49", "40-44", "M 40-44", "W 45-49"}},
		{"Div", []string{"M2034", "F2039", "M4044", "F4049"}, []string{"M 20-34", "W 20-39", "M 40-44", "W 40-49"}},
		{"Age group", []string{"M40-49", "W50-59", "80+", "M 80+", "Over 80"}, []string{"M 40-49", "W 50-59", "80+", "M 80+", "80+"}},
		{"Age group", []string{"M40", "M50", "M60", "W40", "W50"}, []string{"M 40-49", "M 50-59", "M 60-69", "W 40-49", "W 50-59"}},
		{"Age group", []string{"M40", "M50", "W35", "W45", "W55"}, []string{"M 40-49", "M 50-59", "W 35-44", "W 45-54", "W 55-64"}},
		{"Age group", []string{"M40"}, []string{"M 40-44"}},
		{"Age group", []string{"JM10", "JW11-14", "JM11-14", "JM15-17", "SM18-19", "SW20-24", "VM35-39"}, []string{"M 0-10", "W 11-14", "M 11-14", "M 15-17", "M 18-19", "W 20-24", "M 35-39"}},
		{"Age group", []string{"≤19", "20-39", "40-59", "≥60", "<=19", ">=60"}, []string{"0-19", "20-39", "40-59", "60+", "0-19", "60+"}},
		{"Age group", []string{"M U20", "MU17", "U20 W", "Under 15", "U15 Girls", "<15"}, []string{"M 17-19", "M 15-16", "W 17-19", "0-14", "W 0-14", "0-14"}},
		{"Cat", []string{"M35", "M60", "F35", "F45", "F55", "F45"}, []string{"M 35-39", "M 60-64", "W 35-39", "W 45-49", "W 55-59", "W 45-49"}},
		{"Kategori", []string{"E30-34", "K45-49", "E45", "K60"}, []string{"M 30-34", "W 45-49", "M 45-49", "W 60-64"}},
		{"Kat.", []string{"muži do 39 let", "ženy do 34 let", "muži nad 40 let"}, []string{"M 0-39", "W 0-34", "M 40+"}},
		{"Cat", []string{"M45/1", "W40 (2)", "MV60/12", "M40/44"}, []string{"M 45-49", "W 40-44", "M 60-64", "M 40-44"}},
		{"Cat", []string{"SM (1)", "SM (2)", "SM (11)", "SF (40)", "MU20 (1)", "M45 (3)"}, []string{"M 20-39", "M 20-39", "M 20-39", "W 20-39", "M 0-19", "M 45-49"}},
		{"Cat", []string{"MU18", "VU18", "Msen", "Vsen", "M40", "V45"}, []string{"M 0-17", "W 0-17", "M 18-39", "W 18-39", "M 40-44", "W 45-49"}},
		{"Cat.", []string{"MO18", "VO18", "VO16", "O20", "Msen", "Vsen", "M40", "V45"}, []string{"M 16-17", "W 16-17", "W 0-15", "18-19", "M 20-39", "W 20-39", "M 40-44", "W 45-49"}},
		{"Category", []string{"Junior", "Senior", "50-59", "60-69"}, []string{"0-19", "18-39", "50-59", "60-69"}},
		{"Klass", []string{"P15", "F11", "P19", "M40", "K45", "Kvinnor"}, []string{"M 12-15", "W 0-11", "M 16-19", "M 40-44", "W 45-49", "W"}},
		{"Klass", []string{"P19", "M40", "K45", "M"}, []string{"M 0-19", "M 40-44", "W 45-49", "M"}},
		{"Sarja", []string{"T19", "M40", "N45", "N"}, []string{"W 0-19", "M 40-44", "W 45-49", "W"}},
		{"Klass", []string{"F19", "H40", "D45"}, []string{"W 0-19", "M 40-44", "W 45-49"}},
		{"Cat.", []string{"F25", "M30", "F45", "M35", "M15", "F10"}, []string{"W 25-29", "M 30-34", "W 45-49", "M 35-39", "M 15-19", "W 10-14"}},
		{"Cat.", []string{"F25", "M30", "F45", "M35", "M15", "F12"}, []string{"W 25-29", "M 30-34", "W 45-49", "M 35-39", "M 15-16", "W 12-14"}},
		{"Kat.", []string{"M10", "M30", "M50", "K40", "K60", "M40"}, []string{"M 10-19", "M 30-39", "M 50-59", "W 40-49", "W 60-69", "M 40-49"}},
		{"Cat", []string{"MV35", "MV40", "FV40", "MV50", "FV50", "MV60", "MV40", "MV40", "FV50", "FV40", "MV50", "FV60", "MV40", "FV40", "MV50", "FV50", "MV60"}, []string{"M 35-39", "M 40-49", "W 40-49", "M 50-59", "W 50-59", "M 60-69", "M 40-49", "M 40-49", "W 50-59", "W 40-49", "M 50-59", "W 60-69", "M 40-49", "W 40-49", "M 50-59", "W 50-59", "M 60-69"}},
		{"Cat", []string{"MV35", "MV40", "FV40", "MV50", "FV50", "MV60", "MV40", "MV40", "FV50", "FV40", "MV50", "FV60"}, []string{"M 35-39", "M 40-44", "W 40-44", "M 50-54", "W 50-54", "M 60-64", "M 40-44", "M 40-44", "W 50-54", "W 40-44", "M 50-54", "W 60-64"}}, // too few lines to tell
		{"Cat", []string{"MV35", "MV40", "FV40", "MV50", "FV50", "MV60", "MV40", "MV40", "FV50", "FV45", "MV50", "FV60"}, []string{"M 35-39", "M 40-44", "W 40-44", "M 50-54", "W 50-54", "M 60-64", "M 40-44", "M 40-44", "W 50-54", "W 45-49", "M 50-54", "W 60-64"}},
		{"Nem/Életkor", []string{"F33", "F17", "N29", "F27", "N16", "F34", "N41"}, []string{"M 33-33", "M 17-17", "W 29-29", "M 27-27", "W 16-16", "M 34-34", "W 41-41"}},
		{"Kategorie", []string{"M40-44", "MU15", "Ž20-34", "ŽU15", "ŽS"}, []string{"M 40-44", "M 0-14", "W 20-34", "W 0-14", "W 18-34"}},
		{"Klasse", []string{"40-49 M", "40-49 K", "20-34 K", "20-34 M"}, []string{"M 40-49", "W 40-49", "W 20-34", "M 20-34"}},
		{"Klasse", []string{"M40 - 5 K", "K45 - 5 K"}, []string{"M 40-44", "W 45-49"}},
		{"Sukupuoli/Ikä", []string{"M28", "N36", "N22", "M17", "N9", "M41"}, []string{"M 28-28", "W 36-36", "W 22-22", "M 17-17", "W 9-9", "M 41-41"}},
		{"Køn/alder", []string{"M28", "K36", "K9", "M41"}, []string{"M 28-28", "W 36-36", "W 9-9", "M 41-41"}},
		{"Age Cat", []string{"SL", "SM", "LV40", "MV40", "U17G", "U15B"}, []string{"W 17-39", "M 17-39", "W 40-44", "M 40-44", "W 15-16", "M 0-14"}},
		{"Cat", []string{"L40", "G40", "L45", "G45", "U15G"}, []string{"W 40-44", "M 40-44", "W 45-49", "M 45-49", "M 0-14"}},
		{"Sarja", []string{"MS", "NS", "NU16", "M40", "N45", "N50"}, []string{"M 18-39", "W 18-39", "W 0-15", "M 40-44", "W 45-49", "W 50-54"}},
		{"Kat.", []string{"M10", "M20", "M30", "M40", "M50", "K10", "K20", "K40", "K50"}, []string{"M 10-19", "M 20-29", "M 30-39", "M 40-49", "M 50-59", "W 10-19", "W 20-29", "W 40-49", "W 50-59"}},
		{"Sarja", []string{"P13", "T11", "T13", "M40", "N45"}, []string{"M 12-13", "W 0-11", "W 12-13", "M 40-44", "W 45-49"}},
		{"Cat.", []string{"AM", "CF", "RM", "SM40", "SF", "PM"}, []string{"M 16-17", "W 14-15", "M 12-13", "M 40-44", "W 23-34", "M 20-22"}},
		{"AK", []string{"1. M40", "2. W45", "11. M60"}, []string{"M 40-44", "W 45-49", "M 60-64"}},
		{"Cat (place)", []string{"W55 #1", "M40 #2", "W60 #11"}, []string{"W 55-59", "M 40-44", "W 60-64"}},
		{"Kat.", []string{"K30", "K40", "M20", "M30", "M50", "K60", "M60"}, []string{"W 30-39", "W 40-49", "M 20-29", "M 30-39", "M 50-59", "W 60-69", "M 60-69"}},
		{"Cat.", []string{"SM", "PF", "SF45", "SM35"}, []string{"M 23-34", "W 20-22", "W 45-49", "M 35-39"}},
		{"Группа", []string{"М40", "Ж35", "М45", "Ж50"}, []string{"M 40-44", "W 35-39", "M 45-49", "W 50-54"}},
		{"Κατηγορία", []string{"Α40", "Γ35", "Α45", "Γ50"}, []string{"M 40-44", "W 35-39", "M 45-49", "W 50-54"}},
		{"Kat.", []string{"muži do 39 let", "muži 40-49 let", "ženy nad 50 let"}, []string{"M 0-39", "M 40-49", "W 50+"}},
		{"Kat.", []string{"muži do 39 let", "muži 40 až 49 let", "ženy 50 let a starší"}, []string{"M 0-39", "M 40-49", "W 50+"}},
		{"Sarja", []string{"miehet 40-49 v", "naiset 60 vuotta ja vanhemmat"}, []string{"M 40-49", "W 60+"}},
		{"Klasse", []string{"Menn 20-39 år", "Kvinner 40-49 år"}, []string{"M 20-39", "W 40-49"}},
		{"Age group", []string{"[35,39]", "[40,45)", "(44, 49]", "[50;54]", "[10-14]"}, []string{"35-39", "40-44", "45-49", "50-54", "10-14"}},
		{"Age group", []string{"10/14/2026", "2026-11-12 00:00:00", "14.10.2026", "15-19", "35-39"}, []string{"10-14", "11-12", "10-14", "15-19", "35-39"}},
		{"Age group", []string{"14-Oct", "Oct-14", "11-Dec", "12-Nov", "15-19"}, []string{"10-14", "10-14", "11-12", "11-12", "15-19"}},
		{"Klass", []string{"H40", "D40", "H45", "D35"}, []string{"M 40-44", "W 40-44", "M 45-49", "W 35-39"}},
		{"Klasse", []string{"M40", "K40", "M45", "K45"}, []string{"M 40-44", "W 40-44", "M 45-49", "W 45-49"}},
		{"Categorie", []string{"MSEN", "VSEN", "M40", "V40", "V45"}, []string{"M 18-39", "W 18-39", "M 40-44", "W 40-44", "W 45-49"}},
		{"AK", []string{"MHK", "WHK", "W30", "M35", "W40", "M45"}, []string{"M 18-29", "W 18-29", "W 30-34", "M 35-39", "W 40-44", "M 45-49"}},
		{"Category", []string{"Junior", "Senior", "40+", "50+", "70+"}, []string{"0-19", "18-39", "40-49", "50-69", "70+"}},
		{"AK", []string{"MHK", "WHK", "M30", "W30", "M35", "MJU18", "WJ U16", "WJA", "MJB", "M12", "M11", "W13"}, []string{"M 18-29", "W 18-29", "M 30-34", "W 30-34", "M 35-39", "M 16-17", "W 0-15", "W 18-19", "M 16-17", "M 12-12", "M 11-11", "W 13-14"}},
		{"Cat", []string{"SEM", "SEF", "M0M", "M1F", "V1M", "CAF", "ESM"}, []string{"M 23-34", "W 23-34", "M 35-39", "W 40-44", "M 40-49", "W 16-17", "M 20-22"}},
		{"Catégorie", []string{"SEH", "SEF", "V1H", "V2F", "V3H", "ESH"}, []string{"M 23-39", "W 23-39", "M 40-49", "W 50-59", "M 60-69", "M 20-22"}},
		{"Kategorie", []string{"10-D20", "10-H30", "21-D30", "21-H40", "21-D50", "10-H60", "10-D40"}, []string{"W 20-29", "M 30-39", "W 30-39", "M 40-49", "W 50-59", "M 60-69", "W 40-49"}},
		{"Sexo y cat", []string{"H40", "M40", "H45", "M45"}, []string{"M 40-44", "W 40-44", "M 45-49", "W 45-49"}},
		{"Cat", []string{"Senior", "Senior Men", "Sen W", "M Sen", "Junior", "Vet", "SENM"}, []string{"18-39", "M 18-39", "W 18-39", "M 18-39", "0-19", "35+", "M 18-39"}},
		{"Boy/Girl/Adult", []string{"Adult", "Boy", "Adult", "Girl"}, []string{"18+", "M", "18+", "W"}},
		{"Cat", []string{"Adult", "Junior", "Vet"}, []string{"18-39", "0-19", "35+"}},
		{"Age category", []string{"adult", "under 11s", "under 18s", "over 50"}, []string{"18-49", "0-10", "11-17", "50+"}},
		{"Categoría", []string{"Senior M", "Senior F", "Máster 35 M", "Máster 35 F", "Máster 35 M", "Máster 35 F"}, []string{"M 18-34", "W 18-34", "M 35+", "W 35+", "M 35+", "W 35+"}},
		{"Categoría", []string{"Veterano A", "Veterana B", "Senior M"}, []string{"M 35+", "W 35+", "M 18-39"}},
		{"Cat.", []string{"Masters V35", "Masters M40", "VU12", "Vrouwen"}, []string{"W 35-39", "M 40-44", "W 0-11", "W"}},
		{"Cat.", []string{"Mpup", "Vpup", "M40", "V45"}, []string{"M 0-19", "W 0-19", "M 40-44", "W 45-49"}},
		{"Cat", []string{"BU15", "GU15", "GU13", "MSEN", "FSEN", "M40"}, []string{"M 13-14", "W 13-14", "W 0-12", "M 18-39", "W 18-39", "M 40-44"}},
		{"Kat.", []string{"A - muži do 39 let", "C - muži 50-59 let", "H - ženy 45-54 let"}, []string{"M 0-39", "M 50-59", "W 45-54"}},
		{"Cat", []string{"Y9 boys", "Y10 girls", "Year 8 boys"}, []string{"M", "W", "M"}},
		{"AK", []string{"AK35", "AK 50", "HK"}, []string{"35-39", "50-54", "18-34"}},
		{"Cat", []string{"Super vet 60 men", "Women", "Men"}, []string{"M 60-64", "W", "M"}},
		{"Cat", []string{"SM", "SF", "SM", "JM", "SF", "SM", "SM", "SF", "SM"}, []string{"M 18+", "W 18+", "M 18+", "M 0-19", "W 18+", "M 18+", "M 18+", "W 18+", "M 18+"}},
		{"Cat", []string{"SM", "SF", "SM", "JM", "SF", "SM", "SM", "SF", "F40"}, []string{"M 18-39", "W 18-39", "M 18-39", "M 0-19", "W 18-39", "M 18-39", "M 18-39", "W 18-39", "W 40-44"}},
		{"Cat", []string{"M", "F", "M"}, []string{"M", "W", "M"}},
		{"Cat", []string{"1980-1984", "1985"}, []string{"41-46", "40-41"}},
		{"Group", []string{"X40", "X Senior", "M40"}, []string{"X 40-44", "X 18-39", "M 40-44"}},
		{"Group", []string{"41", "38", "29"}, []string{"41-41", "38-38", "29-29"}},
		{"Group", []string{"40", "35", "45", "50", "40", "35", "45", "60"}, []string{"40-44", "35-39", "45-49", "50-54", "40-44", "35-39", "45-49", "60-64"}},
		// Numbers from one are the French masters where something French stands beside them
		// (M0 35-39, M1 40-44, …; from memory), else nobody knows the second of which groups.
		{"Cat.", []string{"M0", "SE", "M3", "ES"}, []string{"35-39", "23-34", "50-54", "20-22"}},
		{"Catégorie", []string{"Femmes M3", "Hommes M0", "Espoirs Femmes"}, []string{"W 50-54", "M 35-39", "W 20-22"}},
		{"Cat", []string{"WSEN-1", "MSEN-1", "M45-1", "MSEN-2", "W45-1", "MSEN-3", "M45-2"}, []string{"W 18-39", "M 18-39", "M 45-49", "M 18-39", "W 45-49", "M 18-39", "M 45-49"}},
		{"Cat", []string{"1 W45", "1 M40", "2 W45", "1 WSEN", "2 M40", "3 M40"}, []string{"W 45-49", "M 40-44", "W 45-49", "W 18-39", "M 40-44", "M 40-44"}},
		{"Cat", []string{"F66 | 5 km", "M41 | 5 km", "M52 | 5 km", "F | 5 km"}, []string{"W 66-66", "M 41-41", "M 52-52", "W"}},
		{"AK", []string{"20", "35", "30", "40", "45", "60", "20", "50"}, []string{"20-29", "35-39", "30-34", "40-44", "45-49", "60-64", "20-29", "50-54"}},
		{"Cat", []string{"F45 1/2", "M35 1/2", "MSEN 1/3", "MSEN 2/3", "F45 2/2", "M35 2/2", "MSEN 3/3"}, []string{"W 45-49", "M 35-39", "M 18-34", "M 18-34", "W 45-49", "M 35-39", "M 18-34"}},
		{"Lft/geslacht", []string{"36/V", "58/M", "41/M", "42/V", "17/V", "33/M"}, []string{"W 36-36", "M 58-58", "M 41-41", "W 42-42", "W 17-17", "M 33-33"}},
		{"Alter", []string{"36 J.", "35 J.", "24 J.", "17 J.", "53 J."}, []string{"36-36", "35-35", "24-24", "17-17", "53-53"}},
		{"Κατηγορία", []string{"Άνδρες", "Γυναίκες"}, []string{"M", "W"}},
		{"Klass", []string{"H16", "H20", "H21", "D16", "D21", "H45", "D20", "H21", "D45"}, []string{"M 0-16", "M 17-20", "M 21-34", "W 0-16", "W 21-34", "M 45-49", "W 17-20", "M 21-34", "W 45-49"}},
		{"Class", []string{"M2", "F4", "M1"}, []string{"M", "W", "M"}},
		{"Cat", []string{"V1M", "SM", "V2F"}, []string{"M 40-49", "M 18-39", "W 50-59"}},
		{"Cat.", []string{"MM40", "MF55", "MF60"}, []string{"M 40-44", "W 55-59", "W 60-64"}},
		{"Kat.", []string{"M16", "K30", "M20", "M30"}, []string{"M 16-19", "W 30-34", "M 20-29", "M 30-34"}},
		{"Categorie", []string{"M", "V", "V 40+", "M sen", "V sen"}, []string{"M", "W", "W 40+", "M 18-34", "W 18-34"}},
		{"Age group", []string{"Men 60 and over", "Women 60 & over", "Men 40 to 59", "F 35 and under"}, []string{"M 60+", "W 60+", "M 40-59", "W 0-35"}},
		{"Kategorie", []string{"Frauen 60 u. älter", "Männer bis 39", "Frauen 30 und jünger"}, []string{"W 60+", "M 0-39", "W 0-30"}},
		{"Categoría", []string{"Veterano C Masculino", "Veterano A Femenino"}, []string{"M 35+", "W 35+"}},
		{"Escalão", []string{"Seniores Femininos", "Juniores Masculinos"}, []string{"W 18-34", "M 0-19"}},
		{"Cat.", []string{"- de 20 ans", "20-39 ans", "40-49 ans", "Hommes - de 20 ans"}, []string{"0-19", "20-39", "40-49", "M 0-19"}},
		{"Age band", []string{"70 up", "20 to 39", "40 to 69"}, []string{"70+", "20-39", "40-69"}},
		{"Korosztály", []string{"20 alatt", "20-39", "40-49"}, []string{"0-19", "20-39", "40-49"}},
		{"Yaş grubu", []string{"19 ve altı", "20-39", "20 altı"}, []string{"0-19", "20-39", "0-19"}},
		{"Cat pos", []string{"1/V40", "1/V50", "2/V40", "3/V40", "2/V50", "4/V40", "3/V50"}, []string{"40-49", "50-59", "40-49", "40-49", "50-59", "40-49", "50-59"}},
		{"Class pos", []string{"1 (V40)", "1 (V50)", "2 (V40)", "3 (V40)", "2 (V50)", "4 (V40)", "3 (V50)"}, []string{"40-49", "50-59", "40-49", "40-49", "50-59", "40-49", "50-59"}},
		{"AK", []string{"M 1975-79", "W 1980-84"}, []string{"M 46-51", "W 41-46"}},
		{"Gender", []string{"NBSEN", "MSEN", "FSEN"}, []string{"X 18-34", "M 18-34", "W 18-34"}},
		{"Group", []string{"M40+", "M50+", "W35+", "M60+"}, []string{"M 40-49", "M 50-59", "W 35+", "M 60+"}},
		{"Group", []string{"Men's 40-44", "Ladies 35-39", "Men 40-44"}, []string{"M 40-44", "W 35-39", "M 40-44"}},
	} {
		t.Run(c.heading+" "+c.cells[0], func(t *testing.T) {
			lines := readGroups(t, c.heading, c.cells...)
			for i, l := range lines {
				if got := agesOf(l); got != c.want[i] {
					t.Errorf("%q: %q, want %q", c.cells[i], got, c.want[i])
				}
				if len(l.Problems) > 0 {
					t.Errorf("%q: %v", c.cells[i], l.Problems)
				}
			}
		})
	}
}

// Every spelling of every five-year group, sex by sex, holds exactly the ages
// written.
func TestGroupWrittenIsRead(t *testing.T) {
	spell := map[string]func(s string, lo int) string{
		"M40":        func(s string, lo int) string { return fmt.Sprintf("%s%d", s, lo) },
		"M 40-44":    func(s string, lo int) string { return fmt.Sprintf("%s %d-%d", s, lo, lo+4) },
		"40-44 M":    func(s string, lo int) string { return fmt.Sprintf("%d-%d %s", lo, lo+4, s) },
		"MV40":       func(s string, lo int) string { return fmt.Sprintf("%sV%d", s, lo) },
		"VM40-44":    func(s string, lo int) string { return fmt.Sprintf("V%s%d-%d", s, lo, lo+4) },
		"V40 M":      func(s string, lo int) string { return fmt.Sprintf("V%d %s", lo, s) },
		"M-40":       func(s string, lo int) string { return fmt.Sprintf("%s-%d", s, lo) },
		"Mas40M":     func(s string, lo int) string { return fmt.Sprintf("Mas%d%s", lo, s) },
		"40 - 44, M": func(s string, lo int) string { return fmt.Sprintf("%d - %d, %s", lo, lo+4, s) },
	}
	for name, f := range spell {
		for _, women := range []string{"W", "F"} {
			var cells, want []string
			for lo := 35; lo < 90; lo += 5 {
				cells = append(cells, f("M", lo), f(women, lo))
				want = append(want, fmt.Sprintf("M %d-%d", lo, lo+4), fmt.Sprintf("W %d-%d", lo, lo+4))
			}
			for i, l := range readGroups(t, "Category", cells...) {
				if got := agesOf(l); got != want[i] {
					t.Errorf("%s: %q is %q, want %q", name, cells[i], got, want[i])
				}
			}
		}
	}
}

// What other tabs of the workbook use settles what a short one can't.
func TestKnow(t *testing.T) {
	c := NoColumns()
	c.Name, c.Time, c.Group = 0, 1, 2
	for _, k := range []struct {
		others []string
		want   string
	}{{nil, "0-12 40-44"}, {[]string{"U11", "U15", "V50", "V60", "V70"}, "11-12 40-49"}} {
		r := NewReader(c, nil, Options{Groups: k.others})
		rows := [][]string{{"Ada Brook", "24:31", "U13"}, {"Eve Hill", "24:32", "V40"}}
		got := []string{}
		for i, cells := range rows {
			r.Observe(i, cells, raceDay, 0)
		}
		r.Settle()
		for i, cells := range rows {
			var l Line
			r.Read(i, cells, raceDay, 5000, &l)
			got = append(got, agesOf(l))
		}
		if s := strings.Join(got, " "); s != k.want {
			t.Errorf("others %v: %s, want %s", k.others, s, k.want)
		}
	}
}

func readSexes(t testing.TB, heading string, cells ...string) []Line {
	t.Helper()
	c := NoColumns()
	c.Name, c.Time, c.Sex = 0, 1, 2
	lines, _ := readRows(t, c, []string{"Name", "Time", heading}, Options{}, func(yield func([]string)) {
		for i, s := range cells {
			yield([]string{fmt.Sprintf("Ada Brook%c", 'a'+i), fmt.Sprintf("24:%02d", i), s})
		}
	})
	return lines
}

func TestSexColumns(t *testing.T) {
	for _, c := range []struct {
		heading     string
		cells, want []string
	}{
		{"Sex", []string{"M", "F", "m", "f", "X", ""}, []string{"M", "W", "M", "W", "X", ""}},
		{"M/W", []string{"M", "W", "D", "-"}, []string{"M", "W", "X", ""}},
		{"Gender", []string{"Male", "Female", "Non-binary", "Prefer not to say", "Man", "Woman", "Boy", "Girl"}, []string{"M", "W", "X", "", "M", "W", "M", "W"}},
		{"Sexe", []string{"H", "F", "Homme", "Femme", "M."}, []string{"M", "W", "M", "W", "M"}},
		{"Kön", []string{"H", "D", "H"}, []string{"M", "W", "M"}},
		{"Geschlecht", []string{"männlich", "weiblich", "divers", "Herr", "Frau"}, []string{"M", "W", "X", "M", "W"}},
		{"Sexo", []string{"H", "M", "H", "M"}, []string{"M", "W", "M", "W"}},
		{"Sexo", []string{"V", "M"}, []string{"M", "W"}},
		{"Jenis Kelamin", []string{"L", "P", "L"}, []string{"M", "W", "M"}},
		{"L/P", []string{"L", "P", "P"}, []string{"M", "W", "W"}},
		{"Plaats M/V", []string{"V1", "V2", "M1", "M2"}, []string{"W", "W", "M", "M"}},
		{"Anrede", []string{"He", "Da", "He"}, []string{"M", "W", "M"}},
		{"Sex", []string{"Lad", "Lass"}, []string{"M", "W"}},
		{"", []string{"p.", "Paní", "Slečna"}, []string{"M", "W", "W"}},
		{"", []string{"G.", "Ga.", "Gospod"}, []string{"M", "W", "M"}},
		{"", []string{"D.", "Dña.", "Sr."}, []string{"M", "W", "M"}},
		{"Geslacht", []string{"M", "V", "man", "vrouw"}, []string{"M", "W", "M", "W"}},
		{"Kjønn", []string{"M", "K"}, []string{"M", "W"}},
		{"Płeć", []string{"M", "K", "mężczyzna", "kobieta"}, []string{"M", "W", "M", "W"}},
		{"Sesso", []string{"U", "D", "U"}, []string{"M", "W", "M"}},
		{"Sex", []string{"M", "L", "Ladies"}, []string{"M", "W", "W"}},
		{"Sesso", []string{"M", "F", "uomo", "donna"}, []string{"M", "W", "M", "W"}},
		{"Sex", []string{"M", "F", "NB", "N"}, []string{"M", "W", "X", "X"}},
		// ISO/IEC 5218:2022: 0 not known, 1 male, 2 female, 9 not applicable.
		{"Sex", []string{"1", "2", "0", "9"}, []string{"M", "W", "", ""}},
		{"Sex", []string{"B", "G"}, []string{"M", "W"}},
		{"Sex", []string{"Male 40-44", "FV35"}, []string{"M", "W"}},
		{"Sex", []string{"M", "M", "M"}, []string{"M", "M", "M"}},
		{"Sex", []string{"Mr", "Mrs", "Miss"}, []string{"M", "W", "W"}},
		{"Title", []string{"Mr", "Ms", "Mrs."}, []string{"M", "W", "W"}},
		{"Class", []string{"MS", "WS"}, []string{"M", "W"}},
		{"Nem", []string{"F", "N", "F"}, []string{"M", "W", "M"}},
		{"Nem", []string{"férfi", "nő", "Nő"}, []string{"M", "W", "W"}},
		{"Category", []string{"M40", "W35", "N/A"}, []string{"M", "W", ""}},
		{"Rhyw", []string{"G", "B"}, []string{"M", "W"}},
		{"Gnéas", []string{"F", "B"}, []string{"M", "W"}},
		{"Dzimums", []string{"V", "S"}, []string{"M", "W"}},
		{"Lytis", []string{"V", "M"}, []string{"M", "W"}},
		{"Пол", []string{"М", "Ж", "муж."}, []string{"M", "W", "M"}},
		{"Φύλο", []string{"Α", "Γ"}, []string{"M", "W"}},
		{"Kyn", []string{"kk", "kvk"}, []string{"M", "W"}},
		{"Køn", []string{"D", "P", "P"}, []string{"M", "W", "W"}},
		{"Køn", []string{"D", "H", "H"}, []string{"W", "M", "M"}},
		{"Fiú/Lány", []string{"F", "L", "F"}, []string{"M", "W", "M"}},
		{"Spol", []string{"F", "D"}, []string{"M", "W"}},
		{"Lytis", []string{"B", "M"}, []string{"M", "W"}},
		{"Dzimums", []string{"Z", "M"}, []string{"M", "W"}},
		{"Ragazzo/Ragazza", []string{"ragazza", "ragazzo"}, []string{"W", "M"}},
		{"Пол", []string{"мальчик", "девочка"}, []string{"M", "W"}},
		{"Geslag", []string{"Manlik", "Vroulik"}, []string{"M", "W"}},
		{"เพศ", []string{"ชาย", "หญิง"}, []string{"M", "W"}},
		{"Sexua", []string{"Gizona", "Emakumea"}, []string{"M", "W"}},
		{"Inscne", []string{"Fireann", "Baineann"}, []string{"M", "W"}},
		{"Gènere", []string{"Home", "Dona"}, []string{"M", "W"}},
		{"Geslacht / Sexe", []string{"M/H", "V/F"}, []string{"M", "W"}},
		{"Cinsiyet", []string{"E", "K", "Erkek", "Kadın"}, []string{"M", "W", "M", "W"}},
		{"Sexe / Geschlecht", []string{"H/M", "F/W"}, []string{"M", "W"}},
	} {
		t.Run(c.heading+" "+c.cells[0], func(t *testing.T) {
			for i, l := range readSexes(t, c.heading, c.cells...) {
				if l.Sex.String() != c.want[i] {
					t.Errorf("%q: %q, want %q", c.cells[i], l.Sex, c.want[i])
				}
				if len(l.Problems) > 0 {
					t.Errorf("%q: %v", c.cells[i], l.Problems)
				}
			}
		})
	}
	// A letter that nothing explains is asked about, never guessed from a name.
	c := NoColumns()
	c.Name, c.Sex = 0, 1
	lines, got := readRows(t, c, nil, Options{}, func(yield func([]string)) {
		yield([]string{"Ada Brook", "V"})
		yield([]string{"Ben Brook", "F"})
	})
	if lines[0].Sex != NotGiven || len(got.Problems) != 1 || got.Problems[0].Kind != "sex-letter-unclear" {
		t.Errorf("V beside F: %q, problems %v", lines[0].Sex, got.Problems)
	}
}

// Ages, years and dates of birth in every form.
func TestBirthEvidence(t *testing.T) {
	type want struct {
		lo, hi string
		basis  age.Basis
	}
	year := func(y int) want { return want{fmt.Sprintf("%d-01-01", y), fmt.Sprintf("%d-12-31", y), age.Born} }
	date := func(s string) want { return want{s, s, age.Born} }
	aged := func(n int) want {
		w := age.OfAges(n, n, raceDay)
		return want{w.Lo.String(), w.Hi.String(), age.OnTheDay}
	}
	none := want{"", "", age.NoBasis}
	for _, c := range []struct {
		name  string
		col   string
		cells []string
		want  []want
	}{
		{"ages", "age", []string{"41", "8", "41.0", "41 yrs", "age 41", "", "-", "0", "99", "1985"}, []want{aged(41), aged(8), aged(41), aged(41), aged(41), none, none, none, none, year(1985)}},
		{"years", "year", []string{"1985", "2014", "'85", "05", "1985.0"}, []want{year(1985), year(2014), year(1985), year(2005), year(1985)}},
		{"two digits", "year", []string{"85", "99", "14"}, []want{year(1985), year(1999), year(2014)}},
		{"dates, day first", "date", []string{"03/04/1985", "25/12/1990", "3.4.85", "1985-04-03", "3 April 1985", "3 avr. 1985", "April 3, 1985", "19850403", "31140", "1985-04-03T00:00:00", "3 mar&ccedil;o 1985", "3 paÅºdziernika 1985"},
			[]want{date("1985-04-03"), date("1990-12-25"), date("1985-04-03"), date("1985-04-03"), date("1985-04-03"), date("1985-04-03"), date("1985-04-03"), date("1985-04-03"), date("1985-04-03"), date("1985-04-03"), date("1985-03-03"), date("1985-10-03")}},
		{"dates, month first", "date", []string{"04/03/1985", "12/25/1990"}, []want{date("1985-04-03"), date("1990-12-25")}},
		{"dates with words and signs", "date", []string{"17.IV.1985", "Sun 25 Dec 1990", "*03.04.1985", "born 03/04/1985", "03_04_1985", "25.XII.1990"}, []want{date("1985-04-17"), date("1990-12-25"), date("1985-04-03"), date("1985-04-03"), date("1985-04-03"), date("1990-12-25")}},
		{"years of birth in bands", "date", []string{"1980-1984", "1990-1994"}, []want{{"1980-01-01", "1984-12-31", age.Born}, {"1990-01-01", "1994-12-31", age.Born}}},
		{"years and months", "age", []string{"41y 5m", "8 yrs 11 mths", "41"}, []want{aged(41), aged(8), aged(41)}},
		{"two figures each, the year first", "date", []string{"85-04-03", "90-12-25", "01-02-28", "840503"}, []want{date("1985-04-03"), date("1990-12-25"), date("2001-02-28"), date("1984-05-03")}},
		{"two figures each, the year last", "date", []string{"03-04-85", "25-12-90", "28-02-01"}, []want{date("1985-04-03"), date("1990-12-25"), date("2001-02-28")}},
		{"six figures, the year last", "date", []string{"030485", "251290", "280201"}, []want{date("1985-04-03"), date("1990-12-25"), date("2001-02-28")}},
		{"eight figures, some without their first zero", "date", []string{"3041985", "25121990"}, []want{date("1985-04-03"), date("1990-12-25")}},
		{"months of birth", "date", []string{"4/1985", "1985-04", "April 1985", "12.1990"}, []want{{"1985-04-01", "1985-04-30", age.Born}, {"1985-04-01", "1985-04-30", age.Born}, {"1985-04-01", "1985-04-30", age.Born}, {"1990-12-01", "1990-12-31", age.Born}}},
		{"dates in an age column", "age", []string{"25/12/1990", "1985"}, []want{date("1990-12-25"), year(1985)}},
		{"an age grade under Age", "age", []string{"64.31", "58.20", "71.05"}, []want{none, none, none}},
	} {
		t.Run(c.name, func(t *testing.T) {
			cols := NoColumns()
			cols.Name, cols.Time = 0, 1
			switch c.col {
			case "age":
				cols.Age = 2
			case "year":
				cols.BirthYear = 2
			default:
				cols.BirthDate = 2
			}
			lines, _ := readRows(t, cols, nil, Options{}, func(yield func([]string)) {
				for i, s := range c.cells {
					yield([]string{fmt.Sprintf("Ada Brook%c", 'a'+i), "24:31", s})
				}
			})
			for i, l := range lines {
				got := want{basis: l.Basis}
				if l.Birth.Known() {
					got.lo, got.hi = l.Birth.Lo.String(), l.Birth.Hi.String()
				}
				if got != c.want[i] {
					t.Errorf("%q: %v, want %v (%v)", c.cells[i], got, c.want[i], l.Problems)
				}
				if c.col == "date" && l.AgeText != "" {
					t.Errorf("%q: a date of birth would be printed", c.cells[i])
				}
			}
		})
	}
}

// Two columns that agree narrow the window; two that don't are asked about.
func TestAgesMeet(t *testing.T) {
	c := NoColumns()
	c.Name, c.Time, c.Age, c.BirthYear, c.Group, c.Sex = 0, 1, 2, 3, 4, 5
	lines, _ := readRows(t, c, nil, Options{}, func(yield func([]string)) {
		yield([]string{"Ada Brook", "24:31", "40", "1985", "W40", "F"})
		yield([]string{"Eve Brook", "24:32", "40", "1975", "W40", "F"})
		yield([]string{"Joe Brook", "24:33", "40", "1985", "W40", "M"})
		yield([]string{"Kit Brook", "24:34", "", "", "M40", "X"})
	})
	// 40 on 3 January 2026 and born in 1985: 4 January 1985 or later.
	if w := lines[0].Birth; w.Lo != unit.NewDay(1985, 1, 4) || w.Hi != unit.NewDay(1985, 12, 31) || len(lines[0].Problems) != 0 {
		t.Errorf("40, 1985, W40: %v to %v, %v", w.Lo, w.Hi, lines[0].Problems)
	}
	if p := lines[1].Problems; len(p) != 2 || p[0].Kind != "ages-contradict" || p[0].Place.Column != "C" {
		t.Errorf("40 and 1975: %v", p)
	}
	if p := lines[2].Problems; len(p) != 1 || p[0].Kind != "sex-contradicts-group" || lines[2].Sex != M {
		t.Errorf("M in W40: %v %v", lines[2].Sex, p)
	}
	if lines[3].Sex != X || len(lines[3].Problems) != 0 {
		t.Errorf("X in M40: %v %v", lines[3].Sex, lines[3].Problems)
	}
}

func FuzzGroup(f *testing.F) {
	for _, s := range []string{"M40", "MV40", "FV35", "JW11-14", "U17", "80+", "WJA", "SEM", "1980-1984", "4044", "Männer 40-44", "40s", "----", "V40M", "Over 40", "9999", "02"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		for _, l := range readGroups(t, "Cat", "M40", s, "U13", s) {
			if l.Birth.Known() && l.Birth.Lo > l.Birth.Hi {
				t.Errorf("%q: window %v to %v", s, l.Birth.Lo, l.Birth.Hi)
			}
			if lo, hi, ok := l.Birth.On(raceDay); ok && (lo > oldestAge || hi < youngestAge) {
				t.Errorf("%q: ages %d-%d", s, lo, hi)
			}
		}
	})
}

func FuzzBirthDate(f *testing.F) {
	for _, s := range []string{"1985-04-03", "3.4.85", "3 avr. 1985", "19850403", "31/02/1985", "31140", "00/00/0000", "Feb 29 2001", "840503", "84-05-03", "3051984"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		d, ok := lexDate(fold(nil, s))
		if !ok {
			return
		}
		for _, o := range []dateOrder{dayFirst, monthFirst, yearFirst} {
			if born, ok := d.day(o, raceDay); ok {
				if y, m, dd := born.Date(); m < 1 || m > 12 || dd < 1 || dd > 31 || y > 9999 {
					t.Errorf("%q: %v", s, born)
				}
			}
		}
	})
}

func FuzzSex(f *testing.F) {
	for _, s := range []string{"M", "F", "männlich", "1", "Male 40-44", "m/f", "(M)", "?", "VSEN"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		for _, l := range readSexes(t, "Sex", "M", s, "F") {
			if l.Sex > X {
				t.Errorf("%q: %d", s, l.Sex)
			}
		}
	})
}

// Classes by letter, and those of a school, say neither sex nor age.
func TestCodesAreNoGroups(t *testing.T) {
	for heading, cells := range map[string][]string{"Cat": {"A", "B", "D", "F", "C"}, "Year group": {"Year 6", "Year 7"}, "Klasse": {"Klasse 7", "Klasse 10"}, "Classe": {"6e A", "3e", "5ème B"}, "Class": {"Class 9"}} {
		for i, l := range readGroups(t, heading, cells...) {
			if l.Sex != NotGiven || l.Birth.Known() || len(l.Problems) != 1 {
				t.Errorf("%s %q: sex %v, born %v, problems %v; want nothing, and that said", heading, cells[i], l.Sex, l.Birth, l.Problems)
			}
		}
	}
}

// A heading may name the day on which ages are reckoned. By hand: 40 on 31 August 2025 is
// born from 1 September 1984 to 31 August 1985.
func TestAgesOnTheDayOfTheHeading(t *testing.T) {
	for heading, want := range map[string]reckonDay{
		"Age on 31 August 2025": {2025, 8, 31}, "Age at 31/08/2025": {2025, 8, 31}, "Age Aug 31": {0, 8, 31}, "Age on 01/09": {0, 9, 1},
		"Age on 9/1/2025": {2025, 9, 1}, "Age": {}, "Age 04/05": {}, "Age 2025": {}, "Age group 10-14": {},
	} {
		if got, _ := headingDay(string(fold(nil, heading))); got != want {
			t.Errorf("%q: %v, want %v", heading, got, want)
		}
	}
	c := NoColumns()
	c.Name, c.Time, c.Age = 0, 1, 2
	lines, _ := readRows(t, c, []string{"Name", "Time", "Age on 31 August 2025"}, Options{}, func(yield func([]string)) { yield([]string{"Ada Brook", "24:31", "40"}) })
	if w := (age.Window{Lo: unit.NewDay(1984, 9, 1), Hi: unit.NewDay(1985, 8, 31)}); lines[0].Birth != w {
		t.Errorf("born %v, want %v", lines[0].Birth, w)
	}
}

// F is a man under the Hungarian word for sex, however few women there are.
func TestHungarianSexes(t *testing.T) {
	c := NoColumns()
	c.Name, c.Sex, c.Time = 0, 1, 2
	for _, k := range []struct {
		heading, sexes string
		want           Sex
	}{{"Nem (F/N)", "FFFFFFFN", M}, {"Nem", "FFFFFFFF", M}, {"Sex", "FFFFFFFN", W}} {
		lines, _ := readRows(t, c, []string{"Név", k.heading, "Idő"}, Options{}, func(yield func([]string)) {
			for i, s := range k.sexes {
				yield([]string{"Jo Lee" + string(rune('a'+i)), string(s), "18:2" + string(rune('0'+i))})
			}
		})
		if lines[0].Sex != k.want {
			t.Errorf("%s: %v", k.heading, lines[0].Sex)
		}
	}
}

// Years of birth beside groups from ten to ten show how wide these are.
func TestTensByAges(t *testing.T) {
	c := NoColumns()
	c.Name, c.BirthYear, c.Group, c.Time = 0, 1, 2, 3
	for _, k := range []struct {
		years  []string
		groups []string
		lo, hi int // ages of the first
	}{
		{[]string{"1975", "1968", "1988", "1985"}, []string{"M50", "M50", "M30", "M40"}, 50, 51},
		{[]string{"1975", "1972", "1993", "1985"}, []string{"M50", "M50", "M30", "M40"}, 50, 51},
		{[]string{"1971", "1968", "1988", "1985"}, []string{"M50", "M50", "M30", "M40"}, 54, 55}, // ten years wide
		{[]string{"1971", "1972", "1988", "1985"}, []string{"M50", "M50", "M30", "M40"}, 54, 54}, // one slip shows nothing
		{[]string{"1971", "1968", "1988", "1985"}, []string{"M50", "M55", "M30", "M40"}, 54, 54},
	} {
		lines, _ := readRows(t, c, nil, Options{}, func(yield func([]string)) {
			for i, y := range k.years {
				yield([]string{[]string{"Jo Lee", "Al Roe", "Cy Dee", "Di Fox"}[i], y, k.groups[i], "18:2" + string(rune('0'+i))})
			}
		})
		if lo, hi, ok := lines[0].Birth.On(raceDay); !ok || lo != k.lo || hi != k.hi {
			t.Errorf("%v %v: %d-%d", k.years, k.groups, lo, hi)
		}
	}
}

// A class with one group of masters, beside whatever else, goes with a class whose masters are ten years apart.
func TestTensOfTheOtherClass(t *testing.T) {
	c := NoColumns()
	c.Name, c.Group, c.Time = 0, 1, 2
	for first, to := range map[string]int{"M50": 59, "M45": 49} {
		groups := []string{first, "K40", "K50", "K60", "M16", "M20", "K20"}
		lines, _ := readRows(t, c, []string{"Nazwisko", "Kat.", "Czas"}, Options{}, func(yield func([]string)) {
			for i, g := range groups {
				yield([]string{"Jo Lee" + string(rune('a'+i)), g, "18:2" + string(rune('0'+i))})
			}
		})
		if lo, hi, ok := lines[0].Birth.On(raceDay); !ok || hi != to {
			t.Errorf("%s beside K40, K50 and K60: %d-%d", first, lo, hi)
		}
	}
}

// Years of birth with a bound on one side alone.
func TestOpenYearsOfBirth(t *testing.T) {
	c := NoColumns()
	c.Name, c.Time, c.Group = 0, 1, 2
	for cell, want := range map[string]string{"born 1990 or later": "1990-01-01 2023-01-03", "1974 or earlier": "1900-01-01 1974-12-31", "<1970": "1900-01-01 1969-12-31", ">2004": "2005-01-01 2023-01-03", "born before 1970": "1900-01-01 1969-12-31", "born 1975-1989": "1975-01-01 1989-12-31"} {
		lines, _ := readRows(t, c, []string{"Name", "Time", "Group"}, Options{}, func(yield func([]string)) {
			yield([]string{"Jo Lee", "24:31", cell})
			yield([]string{"Al Roe", "24:35", "born 1980-1984"})
		})
		if b := lines[0].Birth; b.Lo.String()+" "+b.Hi.String() != want {
			t.Errorf("%s: %v %v, want %s", cell, b.Lo, b.Hi, want)
		}
	}
}

// Classes of schools say no age, whatever their letters say elsewhere.
func TestSchoolClasses(t *testing.T) {
	for _, c := range []struct {
		heading string
		cells   []string
	}{{"Class", []string{"P5", "P6", "P7"}}, {"Class", []string{"S1", "S3", "S2"}}, {"Klass", []string{"åk 7", "Åk 8"}}, {"Year", []string{"Y7", "Y8"}}} {
		for i, l := range readGroups(t, c.heading, c.cells...) {
			if got := agesOf(l); got != "" {
				t.Errorf("%q: %q", c.cells[i], got)
			}
		}
	}
}
