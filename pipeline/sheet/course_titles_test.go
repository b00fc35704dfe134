package sheet

import (
	"strings"
	"testing"
)

// What people write around a place and a day on the first line of a sheet.
func TestRunOfTitles(t *testing.T) {
	const rows = "Pos;Name;Club;Time\n1;Jo Lee;Vale AC;18:20\n2;Al Roe;;18:31\n3;Bo Fenn;;19:02\n"
	for _, c := range []struct{ title, run string }{
		// dates with something beside them
		{"Mill Leat - Week 12 - June 20, 2026", "mill-leat 2026-06-20"},
		{"Sat 20 Jun 26 Bramley Fields", "bramley-fields 2026-06-20"},
		{"East Cliff Sat 20 Jun 26 PROVISIONAL", "east-cliff 2026-06-20"},
		{"East Cliff Sat 20 Jun 26 finishers", "asks"}, // 26 of them?
		{"East Cliff Fri 20 Jun 26 provisional", "asks"},
		{"Week 12, 20/06/2026: Ossett Water", "ossett-water 2026-06-20"},
		{"Week 12, 20 June 2026: Ossett Water", "ossett-water 2026-06-20"},
		{"Results / Quarry Top / 20 June 2026 / 5 km", "quarry-top 2026-06-20"},
		{"Quarry Top 20 June 2026 / 21", "asks"},
		{"Beacon Hill 2026-06-20 2026 season", "beacon-hill 2026-06-20"},
		{"Beacon Hill July 12-19 2025", "asks"},
		{"Kvarnbacken 5 km 20/6 2026", "kvarnbacken 2026-06-20"},
		{"20/06/2026 - Quinta do Freixo", "quinta-do-freixo 2026-06-20"},
		{"Dolní louky so 20.6.2026", "dolni-louky 2026-06-20"}, // sobota
		{"Auwiesen So 21.6.2026", "auwiesen 2026-06-21"},       // Sonntag
		{"Auwiesen So 22.6.2026", "asks"},
		{"Dolní louky po 15.6.2026", "dolni-louky 2026-06-15"},
		{"Víðigarður laugardaginn 20. júní 2026", "vidigardur 2026-06-20"},
		{"Hồ Liễu – Kết quả 20/06/2026", "ho-lieu 2026-06-20"},
		{"Kết quả Hồ Liễu ngày 20 tháng 6 năm 2026", "ho-lieu 2026-06-20"},
		{"Taman Telaga Hasil lomba 20 Juni 2026", "taman-telaga 2026-06-20"},
		{"Alder Bank 결과 2026년 6월 20일", "alder-bank 2026-06-20"},
		{"גן האלון – תוצאות 20 ביוני 2026", "גן-האלון 2026-06-20"},
		{"Las Brzozowy dnia 20 czerwca 2026", "las-brzozowy 2026-06-20"},
		// who, what for, what form
		{"Great Holm 20.6.26 RD: Jean Marsh", "great-holm 2026-06-20"},
		{"20.6.26 Venue: Great Holm", "great-holm 2026-06-20"},
		{"Glebe Field 'Guess Your Time' 5k 20 June 2026", "glebe-field 2026-06-20"},
		{"“Beat the Clock” at Great Holm, 20 June 2026", "great-holm 2026-06-20"},
		{"Hog's Back 'n' Beyond 20 June 2026", "hogs-back-n-beyond 2026-06-20"},
		{"Competiție: Lunca Mare, 20 iunie 2026", "lunca-mare 2026-06-20"},
		{"Nazwa zawodów: Las Brzozowy, 20 czerwca 2026", "las-brzozowy 2026-06-20"},
		{"Vale AC: Great Holm 5k 20 June 2026", "great-holm 2026-06-20"},
		{"Great Holm 5k, Corner Creek, MI June 20, 2026", "great-holm 2026-06-20"},
		{"Distance: 5k  Hythe Prom  20 June 2026", "hythe-prom 2026-06-20"},
		{"Attendance Ravensmoor Common 20 June 2026", "ravensmoor-common 2026-06-20"},
		{"Hagg Farm Charity 5k 20 June 2026", "hagg-farm 2026-06-20"},
		{"Beacon Hill Christmas 5k 19 December 2026", "beacon-hill 2026-12-19"},
		{"Kirkby Woods Ladies & Gents 20 June 2026", "kirkby-woods 2026-06-20"},
		{"Salterns Run & Walk 20 June 2026", "salterns 2026-06-20"},
		{"Lime Walk 20 June 2026", "lime-walk 2026-06-20"},
		{"Castle Loch Entry fee £2 20 June 2026", "castle-loch 2026-06-20"},
		{"Salterns sponsored by Tarn's Bakery 20 June 2026", "salterns 2026-06-20"},
		{"King's Meadow in aid of the hospice 20 June 2026", "kings-meadow 2026-06-20"},
		{"Whin Moor results as PDF 20 June 2026", "whin-moor 2026-06-20"},
		{"Fenwick Hall DN4 7QX 20 June 2026", "fenwick-hall 2026-06-20"},
		{"@Victoria Gardens 20 June 2026", "victoria-gardens 2026-06-20"},
		{"North Shore dated 20 June 2026", "north-shore 2026-06-20"},
		{"Hi Jean, here is Old Racecourse 20 June 2026", "old-racecourse 2026-06-20"},
		{"Ossett Water TT 20 June 2026", "ossett-water 2026-06-20"},
		{"Alder Bank 20 June 2026\nDistance 4.9 km", "alder-bank 2026-06-20"},
		{"Alder Bank 20 June 2026\n50 runs: Jo Lee", "alder-bank 2026-06-20"},
		{"CR (men) Ben Drake 15:59 12/05/2019\nAlder Bank 20 June 2026", "alder-bank 2026-06-20"},
		{"Alder Bank 20 June 2026\nLast edited by Tom Gale on 21 June 2026", "alder-bank 2026-06-20"},
		// two names, of which nothing says which is the place
		{"Sue Pike\nSalterns\n20 June 2026", "asks"},
		{"The Big One\n20 June 2026\nMill Leat", "asks"},
		{"Dunholme 5k\nTollgate, 20 June 2026", "asks"},
		{"Vale Harriers\nTollgate\n20 June 2026", "tollgate 2026-06-20"},
		{"The Big One\nQuarry Hill\n20 June 2026", "quarry-hill 2026-06-20"},
		{"The Tarn Brewery 5k League\nTollgate, 20 June 2026", "tollgate 2026-06-20"},
		{"Friends of Dunholme Park\nSalterns\n20 June 2026", "salterns 2026-06-20"},
		{"Dehesa Baja: 5 km (3 vueltas)\n20 June 2026", "dehesa-baja 2026-06-20"},
		{"Subject: Stoney Ford results, 20 June 2026\nLovely run today.", "stoney-ford 2026-06-20"},
		// runs of a series
		{"3e loop: Elzenbos, 20 juni 2026", "elzenbos 2026-06-20"},
		{"Zomercompetitie, 3e wedstrijd, Molenpark, 20 juni 2026", "molenpark 2026-06-20"},
		{"Karusell, løp 3: Nordmyra, 20. juni 2026", "nordmyra 2026-06-20"},
		{"Alder Bank, leg 3: Saturday 20 June 2026", "alder-bank 2026-06-20"},
		{"3. osakilpailu: Myllylampi, 20. kesäkuuta 2026", "myllylampi 2026-06-20"},
		// words of other languages
		{"Hej alla, här kommer tiderna från Norra Viken 20 juni 2026", "norra-viken 2026-06-20"},
		{"Carrera semanal Cerro Gordo, 20 de junio de 2026", "cerro-gordo 2026-06-20"},
		{"Ergebnisse des Laufs in Kaiserteich vom 20. Juni 2026", "kaiserteich 2026-06-20"},
		{"Recorregut: Parc dels Àlbers, 20 de juny de 2026", "parc-dels-albers 2026-06-20"},
		{"Route: Two laps of the park, 20 June 2026", "asks"},
	} {
		s, err := Read("x.csv", []byte("\""+strings.ReplaceAll(c.title, "\n", "\"\n\"")+"\"\n"+rows), Options{})
		if err != nil {
			t.Errorf("%s: %v", c.title, err)
			continue
		}
		got := outcome(s)
		if got.asks != "" {
			got.run = "asks"
		}
		if got.run != c.run {
			t.Errorf("%s: run %q, want %q (%s)", c.title, got.run, c.run, got.asks)
		}
	}
}

// What people call a file beside its place and day.
func TestRunOfFiles(t *testing.T) {
	const rows = "Pos,Name,Club,Time\n1,Jo Lee,Vale AC,18:20\n2,Al Roe,,18:31\n3,Bo Fenn,,19:02\n"
	for _, c := range []struct{ file, run string }{
		{"Ravensmoor Common_w12_20_06_26", "ravensmoor-common 2026-06-20"},
		{"CanalTowpath_w12_June 20 2026", "canal-towpath 2026-06-20"},
		{"Ossett Water_r3_June 20 2026", "ossett-water 2026-06-20"},
		{"R3 Kirkby Woods 20th June 2026", "kirkby-woods 2026-06-20"},
		{"Alder Bank20 06 2026", "alder-bank 2026-06-20"},
		{"Fenwick Hall_20jun26_results_final", "fenwick-hall 2026-06-20"},
		{"finishlist_Hythe Prom_2026-06-20", "hythe-prom 2026-06-20"},
		{"stopwatch KingsMeadow 20-06-2026", "kings-meadow 2026-06-20"},
		{"backup FenwickHall 2026_06_20", "fenwick-hall 2026-06-20"},
		{"Backup of Fenwick Hall/2026-06-20", "fenwick-hall 2026-06-20"},
		{"the Fenwick Hall folder/2026-06-20", "fenwick-hall 2026-06-20"},
		{"course=Fenwick Hall/date=2026-06-20/part-0", "fenwick-hall 2026-06-20"},
		{"Fenwick Hall 20th June 2026/email attachment 1", "fenwick-hall 2026-06-20"},
		{"Season 2025-26/Fenwick Hall/3 Jan", "fenwick-hall 2026-01-03"},
		{"2025_26/Fenwick Hall 4 October", "fenwick-hall 2025-10-04"},
		{"Fenwick Hall_2026-06-20 results updated 22 June", "fenwick-hall 2026-06-20"},
		{"Fenwick Hall 20 June 2026 (printed 22-06-2026)", "fenwick-hall 2026-06-20"},
		{"raw_North Shore_2026-06-20", "north-shore 2026-06-20"},
		{"Sat_KingsMeadow_20th June 2026", "kings-meadow 2026-06-20"},
		{"Sun Hill 2026-06-20", "sun-hill 2026-06-20"},
		{"MillLeatWeekly2026_06_20", "mill-leat 2026-06-20"},
		{"TT Alder Bank 20 June 2026", "alder-bank 2026-06-20"},
		{"campus5k_larkfield-campus_2026-06-20", "larkfield-campus 2026-06-20"},
		{"hill5k_alder-bank_2026-06-20", "alder-bank 2026-06-20"},
		{"tollgate5k_vale-harriers_2026-06-20", "tollgate 2026-06-20"},
		{"results/Fenwick Hall/2026-06-20.jsonl", "fenwick-hall 2026-06-20"},
	} {
		if !strings.HasSuffix(c.file, ".jsonl") {
			c.file += ".csv"
		}
		s, err := Read(c.file, []byte(rows), Options{})
		if err != nil {
			t.Errorf("%s: %v", c.file, err)
			continue
		}
		if got := outcome(s); got.run != c.run || got.asks != "" {
			t.Errorf("%s: run %q, want %q (%s)", c.file, got.run, c.run, got.asks)
		}
	}
}

// A line over the day that says neither place nor day gives way to a file that is called after a place, and is
// asked about beside one that may be.
func TestRunOfUndatedFiles(t *testing.T) {
	const rows = "20 June 2026\nPos,Name,Club,Time\n1,Jo Lee,Vale AC,18:20\n2,Al Roe,,18:31\n3,Bo Fenn,,19:02\n"
	for _, c := range []struct{ file, line, run string }{
		{"alder-bank", "Ice on the bridge", "alder-bank 2026-06-20"},
		{"Alder Bank", "Two stopwatches used", "alder-bank 2026-06-20"},
		{"Alder Bank", "Congratulations", "alder-bank 2026-06-20"},
		{"Alder Bank", "Starker Wind", "asks"},
		{"weidenau", "Sorted by position", "weidenau 2026-06-20"},
		{"weidenau", "Sortiert nach Zeit", "weidenau 2026-06-20"},
		{"weidenau", "Classement provisoire", "weidenau 2026-06-20"},
		{"weidenau", "Préliminaire", "preliminaire 2026-06-20"}, // a name, for all that anybody can tell
		{"weidenau", "Taken from both watches", "asks"},
		{"weidenau", "Cake after the run", "weidenau 2026-06-20"},
		{"alder-bank", "Quarry Top", "asks"},
		{"list", "Sorted by position", "asks"},
		{"list for jean", "Mill Leat", "mill-leat 2026-06-20"},
		{"weidenau", "Quarry Top 5k", "quarry-top 2026-06-20"},
		{"alder-bank", "Quarry Top 5k, 20 June 2026", "quarry-top 2026-06-20"},
	} {
		s, err := Read(c.file+".csv", []byte(c.line+"\n"+rows), Options{})
		if err != nil {
			t.Errorf("%s: %v", c.line, err)
			continue
		}
		got := outcome(s)
		if got.asks != "" {
			got.run = "asks"
		}
		if got.run != c.run {
			t.Errorf("%s under %s: run %q, want %q (%s)", c.line, c.file, got.run, c.run, got.asks)
		}
	}
}
