package sheet

import (
	"strings"
	"testing"
)

// Forms of open data about races, as statistics programs, databases and the lists of
// large races write them; people and places are invented. Expected are the columns, and
// the name and the time of the first row.
func TestOpenDataForms(t *testing.T) {
	for _, c := range []struct{ name, text, columns, first, time, asks string }{
		{name: "a marathon with its splits and a projected time that nobody has",
			text:    "Bib,Name,Age,M/F,City,State,Country,5K,10K,Half,40K,Pace,Proj Time,Official Time,Overall,Gender,Division\n11,\"Quarmby, Wenna\",24,F,Ostley,,KEN,0:15:25,0:30:28,1:04:35,2:02:53,0:04:57,-,2:09:37,1,1,1\nF3,\"Tindale, Corin\",30,M,Low Kestle,OR,USA,0:15:26,-,1:04:36,2:03:14,0:04:58,-,2:09:58,2,1,2\n23,\"Lisle, Odile K.\",25,F,Vale Heath,MA,USA,0:15:27,0:30:29,1:04:37,2:03:38,0:04:59,-,2:10:28,3,2,3\n",
			columns: "number name age sex - - - - - - - pace - time position sex-place group-place", first: "Quarmby, Wenna", time: "2:09:37"},
		{name: "places that go by the net time",
			text:    "Place\tDiv/Tot\tNum\tName\tAg\tHometown\tGun Tim\tNet Tim\tPace\n1\t1/86\t30\tWenna Lisle\t22\tOstley .\t32:59\t32:58\t5:19\n2\t2/86\t8\tTamsyn Pellow\t21\tOstley .\t34:14\t33:13\t5:21\n3\t1/247\t3200\tHedda Corvin\t36\tQuill MD\t34:13\t34:12\t5:33\n4\t1/173\t2\tOdile Dravec\t34\tQuill VA\t35:43\t34:42\t5:35\n5\t1/142\t6\tPetra Yarlow\t26\tQuill VA\t35:04\t35:02\t5:39\n6\t1/110\t28\tKatrin Oakden\t45\tOstley .\t36:05\t35:04\t5:39\n7\t2/173\t40\tNoreen Stroud\t31\tQuill VA\t36:04\t36:03\t5:52\n",
			columns: "position group-place number name age - - time pace", first: "Wenna Lisle", time: "32:58"},
		{name: "places that go by the gun",
			text:    "Place,Name,Gun Time,Chip Time\n1,Wenna Lisle,32:59,32:58\n2,Tamsyn Pellow,34:14,33:13\n3,Hedda Corvin,34:16,34:12\n4,Odile Dravec,35:43,34:42\n5,Petra Yarlow,35:44,35:42\n6,Katrin Oakden,36:05,35:04\n",
			columns: "position name time chip-time", first: "Wenna Lisle", time: "32:59"},
		{name: "texts in single quotes, some after a space",
			text:    "Place,Time,Group,Age,Sex,FirstName,LastName,Town,State\n1,'1:09:47','20-39',37,'M','CORIN', 'PELLOW', 'OSTLEY','MA'\n2,'1:11:08','20-39',29,'M','HUGO', 'O'LISLE', 'TANSY, W','MA'\n3,'1:15:43','40-49',42,'F','ODILE', 'DRAVEC', 'QUILL','RI'\n4,'1:16:18','20-39',35,'M','PIRAN', 'STROUD', 'QUILL','RI'\n",
			columns: "position time age-group age sex given-name family-name - -", first: "CORIN PELLOW", time: "1:09:47"},
		{name: "first and last names without headings",
			text:    "1,'1:09:47','M',37,'CORIN', 'PELLOW','MA'\n2,'1:11:08','M',29,'HUGO', 'LISLE','MA'\n3,'1:15:43','F',42,'ODILE', 'DRAVEC','RI'\n4,'1:16:18','M',35,'HUGO', 'STROUD','RI'\n5,'1:16:19','F',31,'ODILE', 'YARLOW','RI'\n6,'1:16:28','M',55,'CORIN', 'OAKDEN','RI'\n",
			columns: "position time sex age - - -", time: "1:09:47", asks: "name-columns-unclear"},
		{name: "names of rows without a heading, tabs",
			text:    "place\tname\tsex\tage\ttime\n1\t1\tCorin Pellow\tM\t34\t18:20\n2\t2\tOdile Dravec\tF\t41\t18:31\n3\t3\tHugo Lisle\tM\t28\t19:02\n4\t4\tWenna Stroud\tF\t52\t19:40\n5\t5\tPiran Yarlow\tM\t61\t20:10\n",
			columns: "- position name sex age time", first: "Corin Pellow", time: "18:20"},
		{name: "names of rows without a heading, single spaces",
			text:    "\"place\" \"name\" \"sex\" \"time\"\n\"1\" 1 \"Corin Pellow\" \"M\" \"18:20\"\n\"2\" 2 \"Odile Dravec\" \"F\" \"18:31\"\n\"3\" 3 \"Hugo Lisle\" \"M\" \"19:02\"\n\"4\" 4 \"Wenna Stroud\" \"F\" \"19:40\"\n\"5\" 5 \"Piran Yarlow\" \"M\" \"20:10\"\n",
			columns: "- position name sex time", first: "Corin Pellow", time: "18:20"},
		{name: "notes beyond the last heading are no names of rows",
			text:    "Pos,Name,Age,Time\n1,Corin Pellow,34,18:20,pb\n2,Odile Dravec,41,18:31,first run\n3,Hugo Lisle,28,19:02,pb\n4,Wenna Stroud,52,19:40,visitor\n",
			columns: "position name age time -", first: "Corin Pellow", time: "18:20"},
		{name: "the result before and behind the times on the way",
			text:    "1,PELLOW Wenna,ETH,3:55.47,46.1,1:02.3,1:18.5,3:55.47\n2,DRAVEC Odile,NED,3:55.93,46.8,1:02.8,1:19.2,3:55.93\n3,LISLE Hedda,ETH,3:57.40,46.3,1:02.5,1:18.7,3:57.40\n4,STROUD Petra,MAR,3:58.84,47.3,1:03.7,1:20.1,3:58.84\n5,YARLOW Noreen,ETH,3:59.02,46.9,1:03.0,1:19.4,3:59.02\n6,OAKDEN Katrin,USA,3:59.83,47.2,1:03.4,1:19.4,3:59.83\n7,CORVIN Tamsyn,CAN,4:00.46,47.8,1:04.0,1:20.4,4:00.46\n8,TINDALE Rosalind,GBR,4:00.97,48.0,1:04.1,1:20.5,4:00.97\n",
			columns: "position name club - - split split time", first: "PELLOW Wenna", time: "3:55.47"},
		{name: "Czech, places among all, the sex and the group",
			text:    "Poř,St.č,Jméno,Ročník,Tým/Bydliště,Stát,Kat,Poř,M/Z,Poř,Cíl,Odstup\n1,77,Pellow Corin,1991,Ostley,CZE,Ak,1,M,1,00:49:05.25, \n2,20,Lisle Hugo,1993,Quill,CZE,Ak,2,M,2,00:50:24.49,00:01:19.24\n3,46,Dravec Odile,2000,Quill,CZE,Ek,1,Z,1,00:50:32.99,00:01:27.74\n4,35,Stroud Piran,1996,Tansy,CZE,Bk,3,M,3,00:51:16.74,00:02:11.49\n",
			columns: "position number name birth-year - - age-group - sex - time gap", first: "Pellow Corin", time: "00:49:05.25"},
		{name: "age, sex, half-way and final time",
			text:    "age,gender,split,final\n33,M,01:05:38,02:08:51\n32,M,01:06:26,02:09:28\n31,W,01:06:49,02:10:42\n38,M,01:06:16,02:13:45\n",
			columns: "age sex split time", time: "02:08:51"},
		{name: "marks beside the times are no sexes",
			text:    "Place,Name,Time,S\n1,Corin Pellow,48:20,*\n2,Hugo Lisle,48:31,\n3,Piran Stroud,49:02,!\n4,Benno Yarlow,49:40,#\n",
			columns: "position name time -", first: "Corin Pellow", time: "48:20"},
		{name: "times in an order of their own show neither chip nor gun",
			text:    "\"\",\"state\",\"time\",\"net\",\"age\",\"sex\"\n\"1\",\"MD\",5210,5196,21,\"M\"\n\"2\",\"MD\",5602,5556,21,\"M\"\n\"3\",\"MD\",4164,4161,23,\"M\"\n\"4\",\"VA\",4150,4121,24,\"M\"\n\"5\",\"VA\",4161,4132,24,\"F\"\n\"6\",\"VA\",3961,3932,24,\"F\"\n\"7\",\"VA\",5961,5902,24,\"F\"\n\"8\",\"ND\",4961,4960,24,\"F\"\n\"9\",\"ND\",4981,4959,24,\"F\"\n",
			columns: "position - time chip-time age sex", time: "5210"},
		{name: "tenths behind a comma and dots before it",
			text:    "Rang,Name,Age,Time,City\n1.,Dravec Odile,1980,\"46.30,6\",Ostley\n2.,Lisle Hedda,1991,\"58.05,3\",Quill\n3.,Pellow Corin,1975,\"1:08.40,8\",Tansy\n",
			columns: "position name birth-year time -", first: "Dravec Odile", time: "46.30,6"},
		{name: "races called after who ran them",
			text:    "Race,Place,Name,Time\nVarsity Girls,1,Odile Dravec,19:40\nVarsity Girls,2,Petra Stroud,20:10\nVarsity Boys,1,Corin Pellow,18:20\nVarsity Boys,2,Hugo Lisle,18:31\n",
			columns: "age-group position name time", first: "Odile Dravec", time: "19:40"},
		{name: "races called after a distance and who ran them",
			text:    "Race,Place,Name,Time\nWomen 5K,1,Odile Dravec,19:40\nWomen 5K,2,Petra Stroud,20:10\nMen 5K,1,Corin Pellow,18:20\nMen 5K,2,Hugo Lisle,18:31\n",
			columns: "age-group position name time", first: "Odile Dravec", time: "19:40"},
		{name: "two distances, each with who ran them",
			text:    "Pos,Name,Category,Time\n1,Odile Dravec,5K Female,19:40\n2,Corin Pellow,5K Male,20:10\n1,Petra Stroud,10K Female,38:20\n2,Hugo Lisle,10K Male,38:31\n",
			columns: "position name distance time", first: "Odile Dravec", time: "19:40"},
		{name: "numbers and names in one column, and how long after the gun somebody started",
			text:    "Pl,Bib-Name,Age,Chip Time,Gun Time,Chip Start\n1,\"47 - Pellow, Corin\",34,17:58,18:00,0:02\n2,\"48 - Lisle, Hugo\",24,18:08,18:12,0:04\n3,\"49 - Dravec, Odile\",44,19:08,19:12,0:04\n4,\"51 - Stroud, Petra\",31,20:08,20:12,0:04\n",
			columns: "position name age chip-time time -", first: "47 - Pellow, Corin", time: "18:00"},
		{name: "a footnote's mark between columns that a rule shows",
			text:    "Alder Bank 5K Road Race\n  Corner Creek, MI   November 13, 2022\n\nPlace Num  Name            Ag Net Tim Gun Tim Pace  S\n===== ==== =============== == ======= ======= ===== =\n    1  101 Corin Pellow    26   16:32   16:32  5:19 M\n    2   93 Hugo Lisle      53   18:15   18:24  5:55 M\n    3  139 Odile Dravec    12   24:55   25:09# 8:06 F\n    4   49 Petra Stroud    50   39:36   39:41#12:46 F\n",
			columns: "position number name age chip-time time pace sex", first: "Corin Pellow", time: "16:32"},
		{name: "several signs between the cells",
			text:    "1-*-Pellow, Corin-*-SR-4-*-Ostley-*-23:54.4\n2-*-Lisle, Hugo-*-JR-3-*-Quill St.-*-23:54.9\n3-*-Dravec, Piran-*- -*-Tansy-*-24:01.5\n4-*-Stroud, Benno-*-SO-2-*-Quill St.-*-24:02.0\n",
			columns: "position name - club time", first: "Pellow, Corin", time: "23:54.4"},
		{name: "two colons between the cells",
			text:    "Pos::Name::Sex::Time\n1::Corin Pellow::M::18:20\n2::Odile Dravec::F::18:31\n3::Hugo Lisle::M::19:02\n",
			columns: "position name sex time", first: "Corin Pellow", time: "18:20"},
		{name: "the pace before the time of the whole",
			text:    "1;Pellow Corin;4:48.5;23:54.4\n2;Lisle Hugo;4:48.6;23:54.9\n3;Dravec Piran;4:49.8;24:00.9\n4;Stroud Benno;4:50.0;24:01.8\n5;Yarlow Edmund;4:51.2;24:07.9\n6;Oakden Kaspar;4:52.0;24:11.5\n7;Corvin Aldous;4:53.6;24:19.4\n8;Tindale Gustav;4:55.0;24:26.1\n",
			columns: "position name - time", first: "Pellow Corin", time: "23:54.4"},
		{name: "one runner's diary by days",
			text:    "Distance,Time,Race,City,Date,Age\n5K,20:51,Quill run,Ostley,7/18/2021,28\n5K,20:57,Ostley run,Ostley,6/26/2021,28\n5K,22:38,Tansy run,Quill,5/19/2021,28\n5K,22:20,Vale run,Quill,4/15/2021,27\n",
			columns: "distance time course - date age", time: "20:51", asks: "name-column-missing"},
		{name: "Italian, where Class. is the place",
			text:    "Class.;Pett.;Cognome e Nome;Anno;Cat.;Società;Tempo;Distacco\n1;12;PELLOW CORIN;1980;SM45;ASD Quill;33:10;\n2;15;LISLE HUGO;1990;SM35;ASD Tansy;33:40;+0:30\n3;19;DRAVEC ODILE;1985;SF40;ASD Quill;34:02;+0:52\n4;22;STROUD PIRAN;1970;SM55;;35:00;+1:50\n5;23;YARLOW BENNO;1971;SM50;;35:10;+2:00\n6;25;OAKDEN HEDDA;1991;SF30;;35:30;+2:20\n7;27;CORVIN PETRA;1979;SF45;;36:00;+2:50\n8;29;TINDALE RURIK;1966;SM55;;36:40;+3:30\n",
			columns: "position number name birth-year age-group club time gap", first: "PELLOW CORIN", time: "33:10"},
		{name: "Japanese", text: "順位,ナンバー,氏名,性別,年齢,所属,記録\n1,12,佐伯 遥,女,31,水辺走友会,33:10\n2,15,水沼 渉,男,44,,33:40\n3,19,梶原 凛,女,28,水辺走友会,34:02\n",
			columns: "position number name sex age club time", first: "佐伯 遥", time: "33:10"},
		{name: "Chinese", text: "名次,号码,姓名,性别,组别,枪声成绩,净成绩\n1,12,林子岚,女,女子组,0:33:10,0:33:09\n2,15,周以宁,男,男子组,0:33:40,0:33:38\n3,19,沈知遥,女,女子组,0:34:02,0:34:01\n",
			columns: "position number name sex age-group time chip-time", first: "林子岚", time: "0:33:10"},
		{name: "Korean", text: "순위,배번,이름,성별,나이,소속,기록\n1,12,한서윤,여,31,강변달리기,0:33:10\n2,15,민도하,남,44,,0:33:40\n3,19,차은결,여,28,강변달리기,0:34:02\n",
			columns: "position number name sex age club time", first: "한서윤", time: "0:33:10"},
		{name: "hours that a spreadsheet has cut off",
			text:    "Place,Name,Time\n1,Corin Pellow,48:20.0\n2,Odile Dravec,49:31.0\n3,Hugo Lisle,52:02.0\n4,Wenna Stroud,54:40.0\n5,Piran Yarlow,57:10.0\n6,Hedda Oakden,59:13.0\n7,Benno Corvin,00:44.0\n8,Petra Tindale,02:13.0\n9,Rurik Maddern,18:20.0\n",
			columns: "position name time", first: "Corin Pellow", time: "48:20.0", asks: "hours-cut-off"},
		{name: "a column aligned by spaces that don't break",
			text:    strings.ReplaceAll("Place    Num  Name              Ag  Gun Tim  Net Tim\n===== ====== ================= == ======== ========\n    1     12 Corin Pellow      34  1:00:20  1:00:19\n    2     15 Odile Dravec      41  1:01:20  1:01:18\n    3    119 Hugo Lisle        28  1:02:20  1:02:19\n", " ", "\u00A0"),
			columns: "position number name age time chip-time", first: "Corin Pellow", time: "1:00:20"},
		{name: "groups behind several distances",
			text:    "Category,Rank,Name,Time\n21-D50,1.,Dravec Odile,1:40:32\n10-D20,1.,Lisle Hedda,46:17\n10-H50,1.,Pellow Corin,48:42\n21-H30,1.,Stroud Piran,1:22:20\n",
			columns: "age-group position name time", first: "Dravec Odile", time: "1:40:32", asks: "distances-differ"},
		{name: "one runner's diary of races, though course and date are given",
			text:    "num,race,year,distance,time\n1,Quill run,2009,5.5km,20:07\n2,Ostley run,2011,4.2km,15:20\n3,Tansy run,2015,?,26:13\n4,Vale run,2017,7km,27:07\n",
			columns: "position course birth-year distance time", time: "20:07", asks: "distances-differ"},
	} {
		t.Run(c.name, func(t *testing.T) {
			s, err := Read("results.txt", []byte(c.text), Options{Course: "alder-bank", Date: "2026-01-03"})
			if err != nil {
				t.Fatal(err)
			}
			got := outcome(s)
			if got.columns != c.columns || got.asks != c.asks {
				t.Errorf("columns %q\n   want %q\nasks %q, want %q", got.columns, c.columns, got.asks, c.asks)
			}
			p := s.Parts[0]
			if err := p.Each(func(_ int, cells []string) error {
				name := trim(cellAt(cells, p.Index(Name)) + cellAt(cells, p.Index(GivenName)) + " " + cellAt(cells, p.Index(FamilyName)))
				if at := trim(cellAt(cells, p.Index(Time))); name != c.first || at != c.time {
					t.Errorf("first row: %q %q, want %q %q", name, at, c.first, c.time)
				}
				return errStop
			}); err != nil && err != errStop {
				t.Fatal(err)
			}
			if c.asks == "" && c.first != "" {
				erasable(t, c.text)
			}
		})
	}
}

// erasable says where the sheet is read in another way once the second row's person is
// taken out of it.
func erasable(t *testing.T, text string) {
	t.Helper()
	o := Options{Course: "alder-bank", Date: "2026-01-03"}
	var rows []int
	var names, times [2]string
	read := func(data []byte, k int) *Part {
		s, err := Read("results.txt", data, o)
		if err != nil {
			t.Fatal(err)
		}
		p := s.Parts[0]
		p.Each(func(row int, cells []string) error {
			if k == 0 {
				rows = append(rows, row)
			}
			if len(rows) > 1 && row == rows[1] {
				names[k] = trim(cellAt(cells, p.Index(Name)) + cellAt(cells, p.Index(GivenName)) + " " + cellAt(cells, p.Index(FamilyName)))
				times[k] = trim(cellAt(cells, p.Index(Time)))
			}
			return nil
		}) // a text has no errors of its own
		return p
	}
	before := read([]byte(text), 0)
	data, err := Redact("results.txt", []byte(text), o, redaction([]string{names[0]}, RowRef{0, rows[1]}))
	if err != nil {
		t.Fatal(err)
	}
	after := read(data, 1)
	if before.Index(Time) != after.Index(Time) || before.Index(Position) != after.Index(Position) || names[1] != "Anonymous" || times[0] != times[1] {
		t.Errorf("erased: name %q, time %q, before %q\n%s", names[1], times[1], times[0], data)
	}
}

// A triathlon's total is no running time.
func TestSeveralSports(t *testing.T) {
	for _, text := range []string{
		"Place,Name,Swim,T1,Bike,T2,Run,Total\n1,Corin Pellow,10:02,1:02,31:20,0:50,18:20,1:01:34\n2,Hugo Lisle,10:12,1:09,32:20,0:51,19:20,1:03:52\n3,Odile Dravec,10:32,1:12,33:20,0:52,20:20,1:06:16\n",
		"Platz;Name;Lauf 1;Rad;Laufen 2;Zeit\n1;Corin Pellow;18:20;31:20;9:30;59:10\n2;Hugo Lisle;19:20;32:20;9:40;1:01:20\n3;Odile Dravec;20:20;33:20;9:50;1:03:30\n",
	} {
		if _, err := Read("results.csv", []byte(text), Options{Course: "alder-bank", Date: "2026-01-03"}); err == nil || !strings.Contains(err.Error(), "several sports") {
			t.Errorf("%.40q: %v", text, err)
		}
	}
	if _, err := Read("results.csv", []byte("Pl,No.,Name,Swim,T1,Bike,T2,Run,Total\n1,12,Corin Pellow,,,,,18:20,18:20\n2,9,Hugo Lisle,,,,,18:31,18:31\n3,4,Odile Dravec,,,,,19:02,19:02\n"), Options{Course: "alder-bank", Date: "2026-01-03"}); err != nil {
		t.Errorf("only the run of it: %v", err)
	}
	if _, err := Read("results.csv", []byte("Run,Pos,Name,Cycle club,Time\nAlder Bank,1,Corin Pellow,Quill,18:20\nAlder Bank,2,Hugo Lisle,,18:31\n"), Options{Course: "alder-bank", Date: "2026-01-03"}); err != nil {
		t.Error(err)
	}
}

// The sex that a file's name says, at its end or before a year.
func TestSexOfFile(t *testing.T) {
	for name, want := range map[string]string{"women 2009.txt": "women", "results_Females.txt": "Females", "women.txt": "", "Kings Men Hill 2009.csv": "", "men 2009 provisional.csv": "", "samborne fete 2009.csv": ""} {
		if got := sexOfFile(name); got != want {
			t.Errorf("%s: %q, want %q", name, got, want)
		}
	}
}
