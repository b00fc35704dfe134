package sheet

import (
	"strings"
	"testing"
)

// dataFileCases are shapes of data files of road races, cross-country and fell races that
// stand in public collections: lists scanned from old programmes, exports of databases,
// pages of clubs. People, clubs and places are invented.
var dataFileCases = []struct {
	name, file, text       string
	columns, rows, refused string
	o                      Options
}{
	{name: "places among the women and ages in brackets that only some have", file: "1983_f.txt",
		text: "Women's Results\n \n" +
			" 87  1 ELLEN WEXLADE MIND     (26) 54:26.0\n" +
			"198  2 DIANE LITTENSEDGE      (21) 58:31.4\n" +
			"238    ANNE SHELBY                 59:31.8\n" +
			"271  5 LYNN JACOBY            (19) 60:11.9\n" +
			"278  6 DONNA BAYLEAF          (34) 60:19.8 \n" +
			"475 10 LAURA CAMBERWICK       (23) 65:40.8\n" +
			"491 11 ANDREA WEXFORD         (25) 65:59.0\n" +
			"522 12 KATHY KESHAM           (21) 106:44.5\n",
		columns: "position - name age time sex", rows: "3-10"},
	{name: "a finish that is one letter off the heading of something else", file: "14km.csv",
		text:    "Pos,Nombre,Apellidos,Genero,Meta,Estado\n1,Inés,Carrillo Olmo,Femenino,01:02:11,Finalizado\n2,Saúl,Monllo Riba,Masculino,01:03:40,Finalizado\n3,Xoel,Quinriz Mora,Masculino,01:05:02,Finalizado\n",
		columns: "position given-name family-name sex time status", rows: "2-4"},
	{name: "categories that are distances", file: "results.csv",
		text:    "BIB,Name,Gender,Category,Gun Time,Chip Time\n937,Satrio Hardibyo,M,FM,03:32:03,03:32:03\n184,Dewi Kusmedi,F,HM,01:50:10,01:50:02\n440,Ayu Pranata,F,10K,45:24,45:20\n",
		columns: "number name sex distance time chip-time", rows: "2-4"},
	{name: "half a marathon in words among distances", file: "virtual.csv",
		text:    "First name,Last name,DISTANCE COMPLETED:,TIME (HH:MM:SS):\nTerri,Wexbill,10K,01:13:16\nCorin,Wadge,HALF MARATHON (13.1),01:47:37\nEdgar,Hampsley,10 MILE,01:27:10\n",
		columns: "given-name family-name distance time", rows: "2-4"},
	{name: "ages a place before their stroke, and a heading that is joined to the next", file: "men10Mile_2006.txt",
		text: "                Official Men's Results (Sorted By Gun Time)\n\n" +
			"Place Div/Tot  Num    Name                   Ag Hometown        Net Tim Gun Tim  Pace  S \n" +
			"===== ======== ====== ====================== == ======================= =======  ===== = \n" +
			"    1 1/670       414 Niall Wexholm          52 Tollgate VA     1:00:34 1:01:05   6:06   \n" +
			"    2 1/596       560 Jasper Fenbridge       44 Kenya           1:07:03 1:07:08   6:42   \n" +
			"    3 1/559       511 Rufus Marstowe            Millbridge DC   1:09:45 1:09:50   6:59   \n" +
			"    4 2/670       553 Piers Marhamley       54  Kenya           1:10:54 1:10:54   7:05   \n" +
			"    5 1/633       367 Corin Penden          45  Quarry Junct MD 1:11:02 1:11:33   7:09   \n" +
			"    6 2/559        10 Alden Holtham          35 Millbridge DC   1:17:55 1:18:00#  7:48   \n",
		columns: "position group-place number name age - chip-time time pace - sex", rows: "5-10"},
	{name: "times on the first day of a spreadsheet's calendar, written with the day first", file: "rezultati.csv",
		text: "Num;Dalībnieks;Dz gads;Grupa;Starts;Finišs;Rezultāts;Komentārs\n" +
			"1.00;Zdeněk Lipavka;1968.00;SV 1;30.12.1899 0:00:30;30.12.1899 0:18:08;30.12.1899 0:17:38;\n" +
			"2.00;Miloš Dubovný;1974.00;TV 3;30.12.1899 0:01:00;30.12.1899 0:19:41;30.12.1899 0:18:41;\n" +
			"3.00;Zdeněk Javorský;1949.00;TV 2;30.12.1899 0:01:30;30.12.1899 0:20:35;30.12.1899 0:19:05;\n",
		columns: "number name birth-year age-group - - time -", rows: "2-4"},
	{name: "heats under headings that say the sex over the names", file: "5000m.csv",
		text:    "5000 meter, Fjellvik stadion 12.06.2022;;;\nPlass;Kvinner;Klubb;Tid\n1;Bjørg Bjørnli;Øyvik;19.07,83\n2;Ragnhild Myrnes;Fjellvik IL;24.57,61\n;Åse Myrdal;Nordli IL;DNF\n;;;\nPlass;Menn B-heat;Klubb;Tid\n1;Torgeir Øyli;Nordli IL;19.08,27\n2;Trygve Langdal;Øyvik;21.29,01\n",
		columns: "position name club time sex", rows: "3-5 8-9"},
	{name: "what one runner has run, by race and year", file: "5km.csv",
		text:    "num,race,year,country,time,details\n1,Kleine Mühle Silvesterlauf,2012,Austria,0:17:42,11. Place AG\n2,WOCHE Silvesterlauf,2013,Austria,0:18:14,11. Place AG\n3,WOCHE Silvesterlauf,2014,Austria,0:19:10,3. Place AG\n4,WOCHE Silvesterlauf,2015,Austria,0:17:34,6. Place AG\n5,Kleine Mühle Silvesterlauf,2016,Austria,0:18:39,8. Place AG\n",
		refused: "it lists races, not who ran in one of them; if one runner ran them all, add a column headed Name with the name in every row"},
	{name: "what one runner has run, by day", file: "race_results.csv",
		text:    "name,distance,date,city,country,duration\n\"XIII Cursa Montegui\",5,2025-01-02,Aldabar,Spain,0:27:53\n\"Cursa d'Aldabar\",5,2025-02-06,Montegui,Spain,0:29:18\n\"XIII Cursa Montegui\",5,2025-03-10,Montegui,Spain,0:25:14\n\"15a Cursa Nocturna de Carri\",5,2025-04-07,Aldabar,Spain,0:26:56\n\"Cursa d'Aldabar\",5,2025-06-06,Montegui,Spain,0:28:18\n",
		refused: "each line is of another day: a list of records, or of one runner's races, whose name then has to stand on every line, in a column headed Name"},
	{name: "tables divided by bars under one another, their headings in another order, with remarks between", file: "results.csv",
		text:    "Alder Bank, 2026-01-03\neindtijd | m/v | club | positie | naam\nPT20M11S | V | Les Foul&eacute;es d&#39;Orm | 1 | Jo Lee\nPT21M11S | V | Les Foul&eacute;es d&#39;Orm | 2 | Al Roe\nPT22M11S | V | Les Foul&eacute;es d&#39;Orm | 3 | Cy Dee\nPT23M11S | V | Les Foul&eacute;es d&#39;Orm | 4 | Di Fox\nPT24M11S | V | Les Foul&eacute;es d&#39;Orm | 5 | Ann Page\nPT25M11S | V | Les Foul&eacute;es d&#39;Orm | 6 | Bo Reed\nPT26M11S | V | Les Foul&eacute;es d&#39;Orm | 7 | Fay Ho\n\n Next week&#39;s run starts at 9:00 as usual. 3 volunteers still needed.\n * personal best\n\nAlder Bank, 2026-01-10\nm/v | eindtijd | club | positie | naam\nV | PT20M12S | Les Foul&eacute;es d&#39;Orm | 1 | Jo Lee\nV | PT21M12S | Les Foul&eacute;es d&#39;Orm | 2 | Al Roe\nV | PT22M12S | Les Foul&eacute;es d&#39;Orm | 3 | Cy Dee\nV | PT23M12S | Les Foul&eacute;es d&#39;Orm | 4 | Di Fox\nV | PT24M12S | Les Foul&eacute;es d&#39;Orm | 5 | Ann Page\nV | PT25M12S | Les Foul&eacute;es d&#39;Orm | 6 | Bo Reed\nV | PT26M12S | Les Foul&eacute;es d&#39;Orm | 7 | Fay Ho\n\n Next week&#39;s run starts at 9:00 as usual. 3 volunteers still needed.\n * personal best\n\nAlder Bank, 2026-01-17\neindtijd | m/v | club | positie | naam\nPT20M13S | V | Les Foul&eacute;es d&#39;Orm | 1 | Jo Lee\nPT21M13S | V | Les Foul&eacute;es d&#39;Orm | 2 | Al Roe\nPT22M13S | V | Les Foul&eacute;es d&#39;Orm | 3 | Cy Dee\nPT23M13S | V | Les Foul&eacute;es d&#39;Orm | 4 | Di Fox\nPT24M13S | V | Les Foul&eacute;es d&#39;Orm | 5 | Ann Page\nPT25M13S | V | Les Foul&eacute;es d&#39;Orm | 6 | Bo Reed\nPT26M13S | V | Les Foul&eacute;es d&#39;Orm | 7 | Fay Ho\n\n Next week&#39;s run starts at 9:00 as usual. 3 volunteers still needed.\n * personal best\n\nAlder Bank, 2026-01-24\neindtijd | m/v | club | positie | naam\nPT20M14S | V | Les Foul&eacute;es d&#39;Orm | 1 | Jo Lee\nPT21M14S | V | Les Foul&eacute;es d&#39;Orm | 2 | Al Roe\nPT22M14S | V | Les Foul&eacute;es d&#39;Orm | 3 | Cy Dee\nPT23M14S | V | Les Foul&eacute;es d&#39;Orm | 4 | Di Fox\nPT24M14S | V | Les Foul&eacute;es d&#39;Orm | 5 | Ann Page\nPT25M14S | V | Les Foul&eacute;es d&#39;Orm | 6 | Bo Reed\nPT26M14S | V | Les Foul&eacute;es d&#39;Orm | 7 | Fay Ho\n\n Next week&#39;s run starts at 9:00 as usual. 3 volunteers still needed.\n * personal best\n\n",
		columns: "time sex club position name", rows: "3-9 16-22 29-35 42-48"},
	{name: "places in brackets", file: "alder-bank_2026-01-03.csv",
		text:    "Pos,Name,Time\n(1),Jo Lee,18:20\n(2),Al Roe,18:31\n(3),Cy Dee,19:02\n(4),Di Fox,19:40\n",
		columns: "position name time", rows: "2-5"},
	{name: "places with a letter before them, which are no ages", file: "alder-bank_2026-01-03.csv",
		text:    "Pos,Name,Time\nP1,Jo Lee,18:20\nP2,Al Roe,18:31\nP3,Cy Dee,19:02\nP4,Di Fox,19:40\n",
		columns: "position name time", rows: "2-5"},
	{name: "places among the men and the women, under the heading of the place", file: "alder-bank_2026-01-03.csv",
		text:    "Pos,Name,Time\nM1,Jo Lee,18:20\nM2,Al Roe,18:31\nF1,Cy Dee,19:02\nM3,Di Fox,19:40\nF2,Bo Reed,19:50\n",
		columns: "sex name time", rows: "2-6"},
	{name: "the first three in words", file: "alder-bank_2026-01-03.csv",
		text:    "Pos,Name,Time\nWinner,Jo Lee,18:20\nSecond,Al Roe,18:31\nThird,Cy Dee,19:02\n4,Di Fox,19:40\n5,Bo Reed,19:50\n6,Fay Ho,20:10\n7,Hal Kay,20:40\n",
		columns: "position name time", rows: "2-8"},
	{name: "the first three in Roman figures", file: "alder-bank_2026-01-03.csv",
		text:    "Pos,Name,Time\nI,Jo Lee,18:20\nII,Al Roe,18:31\nIII,Cy Dee,19:02\n4,Di Fox,19:40\n5,Bo Reed,19:50\n6,Fay Ho,20:10\n7,Hal Kay,20:40\n",
		columns: "position name time", rows: "2-8"},
	{name: "a record above the results is no winner", file: "alder-bank_2026-01-03.csv",
		text:    "Pos,Name,Time\nRecord,Jo Lee,17:20\n1,Di Fox,19:40\n2,Bo Reed,19:50\n3,Fay Ho,20:10\n4,Hal Kay,20:40\n",
		columns: "position name time", rows: "3-6"},
	{name: "a note that sounds like a result in a sentence", file: "alder-bank_2026-01-03.csv",
		text:    " Position ; Name ; Sex ; Club ; Time ; Notes \n 1 ; Rui Lee ; M ; Vale AC ; 18:03 ; ran with sister \n 2 ; Kwame Roe ; M ; Vale AC ; 45:55 ;  \n 3 ; Neil Dee ; M ; Mill AC ; 1:24 ;  \n 4 ; Ilaria Fox ; F ;  ; 1:30 ;  \n",
		columns: "position name sex club time notes", rows: "2-5"},
	{name: "a row of which two words may be headings", file: "alder-bank_2026-01-03.csv",
		text:    "Klubb,Namn,Tid,Kön,Anm\nVale AC,J. Lee,18:20,H,\nMill AC,A. Roe,18:31,D,\nVale AC,C. Dee,19:02,D,\nMill AC,D. Fox,31:04 PB,D,guide runner\nVale AC,B. Reed,32:02,D,\n,F. Ho,33:10,H,\n",
		columns: "club name time sex notes", rows: "2-7"},
	{name: "how often somebody helped is no time", file: "alder-bank_2026-01-03.csv",
		text:    "Finish,Athlete,Finish,Cat pos,Times volunteered\n1,Jo Lee,21:30:00,3,25\n2,Al Roe,22:06:00,3,7\n3,Cy Dee,22:26:00,9,50\n4,Di Fox,22:30:00,8,40\n5,Bo Reed,22:52:00,7,1\n",
		columns: "position name time group-place -", rows: "2-6"},
	{name: "seconds with their unit", file: "alder-bank_2026-01-03.csv",
		text:    "Pos,Name,Time,Club\n1,Jo Lee,1109 s,Vale AC\n2,Al Roe,1131 s,Vale AC\n3,Cy Dee,1199 s,\n4,Di Fox,1240 s,\n",
		columns: "position name time club", rows: "2-5"},
	{name: "running times with the word for a time of day", file: "alder-bank_2026-01-03.csv",
		text:    "Platz,Name,Zeit,Verein\n1,Jo Lee,00:18:29 Uhr,Vale AC\n2,Al Roe,00:18:51 Uhr,Vale AC\n3,Cy Dee,00:19:59 Uhr,\n4,Di Fox,00:20:40 Uhr,\n",
		columns: "position name time club", rows: "2-5"},
	{name: "months of birth, which look like places among many", file: "alder-bank_2026-01-03.csv",
		text:    "Pos,Name,Born,Time\n1,Jo Lee,5/1984,18:20\n2,Al Roe,12/1971,18:31\n3,Cy Dee,1/1999,19:02\n4,Di Fox,7/1965,19:40\n",
		columns: "position name birth-date time", rows: "2-5"},
	{name: "days filled in once, times in seconds", file: "season.csv",
		text:    "Date,Course,Name,Time\n2026-01-03,Alder Bank,Jo Lee,1489\n,,Al Roe,1529\n,,Cy Dee,1569\n2026-01-10,Alder Bank,Al Roe,1489\n,,Cy Dee,1529\n,,Di Fox,1569\n2026-01-17,Alder Bank,Cy Dee,1489\n,,Di Fox,1529\n,,Jo Lee,1569\n2026-01-24,Alder Bank,Di Fox,1489\n,,Jo Lee,1529\n,,Al Roe,1569\n2026-01-31,Alder Bank,Jo Lee,1489\n,,Al Roe,1529\n,,Cy Dee,1569\n2026-02-07,Alder Bank,Al Roe,1489\n,,Cy Dee,1529\n,,Di Fox,1569\n2026-02-14,Alder Bank,Cy Dee,1489\n,,Di Fox,1529\n,,Jo Lee,1569\n2026-02-21,Alder Bank,Di Fox,1489\n,,Jo Lee,1529\n,,Al Roe,1569\n2026-02-28,Alder Bank,Jo Lee,1489\n,,Al Roe,1529\n,,Cy Dee,1569\n",
		columns: "date course name time", rows: "2-28"},
	{name: "one runner's list of runs, the name in every row", file: "my-runs.csv",
		text:    "Name,Date,Course,Time\nJo Lee,2026-01-03,Alder Bank,24:10\nJo Lee,2026-01-10,Ember Quay,23:58\nJo Lee,2026-01-17,Alder Bank,24:31\nJo Lee,2026-01-24,Alder Bank,24:51\nJo Lee,2026-01-31,Alder Bank,23:31\n",
		columns: "name date course time", rows: "2-6"},
	{name: "a calendar of races", file: "race.csv",
		text:    "race_id,event,city,country,date,start_time,distance,elevation_gain,participants\n60000,Quarry Ultras,Osier,United Kingdom,2021-05-26,18:00:00,165.0,4520,50\n60001,Peak Osier Ultras,Osier,United Kingdom,2021-12-20,00:00:00,163.1,4530,300\n60002,Quarry Ultras,Osier,United Kingdom,2021-05-23,00:00:00,167.3,4540,300\n60003,Millstone Ultras,Osier,United Kingdom,2021-01-17,18:00:00,159.5,4550,150\n60004,Millstone Ultras,Osier,United Kingdom,2021-02-17,18:00:00,159.5,4560,150\n",
		refused: "it has neither positions, names nor times"},
	{name: "the legs of a relay, with the time of day at the end of each", file: "runners.csv",
		text:    "Runner;Start;End;Length;Time\nBenci;Fürdő;Bóriváros;5,7;17:59:46\nMarci;Bóriváros;Csókút;11,3;18:58:20\nKris;Csókút;Nádvári;12,4;20:00:44\nKris;Nádvári;Halász;6,2;20:31:44\nBenci;Halász;Kisbori;11,8;21:41:44\nKris;Kisbori;Szalasi;7,7;22:26:31\n",
		refused: "each line begins where the line above it ends: the legs of a relay"},
	{name: "a table on its side", file: "alder-bank_2026-01-03.csv",
		text:    "Place,1,2,3,4\nName,Jo Lee,Al Roe,Cy Dee,Di Fox\nSex,F,M,M,F\nTime,18:20,18:31,19:02,19:28\n",
		columns: "position name sex time", rows: "2-5"},
	{name: "a table on its side with words among its headings that say nothing", file: "alder-bank_2026-01-03.csv",
		text:    "Place,1,2,3,4\nName,Jo Lee,Al Roe,Cy Dee,Di Fox\nLaces,red,blue,red,red\nTime,18:20,18:31,19:02,19:28\n",
		refused: "its people stand beside one another, a column each, and the headings in the first column; copy the table, paste it so that rows become columns (Paste Special, Transpose), and load that"},
	{name: "a fact a line", file: "participation.csv",
		text:    "event_id,date,venue,participant,variable,value,unit\nE17,2026-01-03,Alder Bank,93,name,Susan Marsh,\nE17,2026-01-03,Alder Bank,93,sex,F,\nE17,2026-01-03,Alder Bank,93,finish_time,17:49,mm:ss\nE17,2026-01-03,Alder Bank,16,name,Simon Penn,\nE17,2026-01-03,Alder Bank,16,sex,M,\nE17,2026-01-03,Alder Bank,16,finish_time,18:09,mm:ss\nE17,2026-01-03,Alder Bank,59,name,Beth Howe,\nE17,2026-01-03,Alder Bank,59,sex,F,\nE17,2026-01-03,Alder Bank,59,finish_time,19:09,mm:ss\n",
		columns: "- date course - name sex time", rows: "2 5 8"},
	{name: "a fact a line, sorted by what it is, in Spanish", file: "alder-bank_2026-01-03.csv",
		text:    "linea;dorsal;indicador;valor\n1;93;Nombre y apellidos;Inés Vidal\n2;16;Nombre y apellidos;Raúl Cano\n3;59;Nombre y apellidos;Sofía Rubio\n4;93;Sexo;M\n5;16;Sexo;H\n6;59;Sexo;M\n7;93;Tiempo;0:17:49\n8;16;Tiempo;0:18:09\n9;59;Tiempo;0:19:09\n",
		columns: "number name sex time", rows: "2-4"},
	{name: "matches of two", file: "resultater.csv",
		text:    "Kamp;Række;Nr1;Navn1;Nr2;Navn2;Resultat;Vinder\n1;U15 A;3;Åse Vestli;4;Åsmund Myrdal;21/3 21/10;4\n2;U15 A;4;Turid Skoglund;5;Solveig Solby;21/3 21/8;5\n3;U15 A;5;Sindre Vestby;6;Turid Myrlund;21/4 21/18;6\n",
		refused: "it has two people on each line"},
	{name: "laps", file: "laps.csv",
		text:    "Name,Lap,Time\nIda Wexholm,1,4:30\nIda Wexholm,2,4:40\nIda Wexholm,3,4:50\nIda Wexholm,4,4:52\nBen Fenbridge,1,4:31\nBen Fenbridge,2,4:41\nBen Fenbridge,3,4:51\nBen Fenbridge,4,4:52\nCora Marstowe,1,4:33\nCora Marstowe,2,4:43\nCora Marstowe,3,4:53\nCora Marstowe,4,4:54\n",
		refused: "the same names stand on several lines of one run: laps, or no names of people"},
	{name: "place in a class and the class in brackets", file: "1976.txt",
		text:    "1st Annual \nOsier Vale Mill-athon 15 Km\nNov 21, 1976\n \n 1. Gareth Wexholm (1,50+)  62:08\n 2. Toby Corbin (1,30+)         68:18\n 3. Hester Corsham (1,girls)  70:50\n 4. Rory Shelby (2,H.S.)   75:l5\n 5. Elspeth Dunley (11,women)102:24\n 6. Una Fenbridge         76:05\n",
		columns: "position name - time", rows: "5-10"},
	{name: "a list of a page of markup, with the place behind the name", file: "foulees.md",
		text:    "Foulées du Lac de Valmont 2016\n\n**10KM**\n\n- **Gaspard Rosbel** - 45ème - 40'22\"\n- **Clémence Granval** - 52ème - 41'55\"\n- **Cédric Vervin** - 79ème - 44'19\"\n",
		columns: "name - time", rows: "5-7"},
	{name: "a list of a page of markup, with the time halfway", file: "foulees.rst.txt",
		text:    "Foulées de Valmont\n==================\n\n**10km :**\n\n- **Rémi VERSAL** : 47'51'' (23'26'' aux 5km)\n- **Odile GRANVAL** : 48'28'' (23'44'' aux 5km)\n- **Élodie VERVIN** : 1'00'56'' (24'57'' aux 5km)\n\nNon pointés :\n\n- **Lucien VALMER** : abandon\n",
		columns: "name time notes", rows: "6-8 12"},
	{name: "places of how many, spread out, on a list by name", file: "results.csv",
		text:    "division,name,gender,age,official,overall,net\n3        / 210,\"Lee, Ann\",F,31,181.23,640       / 1340,181.22\n12        / 130,\"Roe, Ben\",M,48,151.73,88       / 1340,151.72\n1        / 210,\"Dee, Cy\",M,25,143.05,12       / 1340,143.04\n7        / 95,\"Fox, Di\",F,52,220.48,1207       / 1340,220.47\n2        / 130,\"Gow, Ed\",M,44,149.90,70       / 1340,149.89\n",
		columns: "group-place name sex age time position chip-time", rows: "2-6"},
	{name: "places that a program took for decimals", file: "polmaraton.csv",
		text:    "Miejsce;Numer startowy;Imię;Nazwisko;Płeć;Rocznik;Czas\n1.0;70;Ann;Lee;M;1970.0;01:02:10\n2.0;69;Ben;Roe;K;1973.0;01:03:11\n3.0;68;Cy;Dee;M;1976.0;01:04:12\n4.0;67;Di;Fox;K;1979.0;01:05:13\n5.0;66;Ed;Gow;M;1982.0;01:06:14\n6.0;65;Flo;Hay;K;1985.0;01:07:15\n",
		columns: "position number given-name family-name sex birth-year time", rows: "2-7"},
	{name: "places that count all beside places within classes, whose heading says place", file: "resultats.csv",
		text:    "Class.,Doss.,Nom,Prénom,Club,cat,place,Temps\n1,300,LEE,Ann,NL,M1,1,\"00:31:10,0\"\n2,307,ROE,Ben,NL,M2,1,\"00:31:13,0\"\n3,314,DEE,Cy,NL,F1,1,\"00:32:10,0\"\n4,321,FOX,Di,NL,M1,2,\"00:32:13,0\"\n5,328,GOW,Ed,NL,M3,1,\"00:33:10,0\"\n6,335,HAY,Flo,NL,M2,2,\"00:33:13,0\"\n7,342,ING,Gus,NL,F1,2,\"00:34:10,0\"\n8,349,JOB,Hal,NL,M3,2,\"00:34:13,0\"\n9,306,KAY,Ida,NL,M1,3,\"00:35:10,0\"\n10,313,LOW,Jay,NL,F1,3,\"00:35:13,0\"\n",
		columns: "position number family-name given-name club age-group - time", rows: "2-11"},
	{name: "several columns of places on a list by number: those that the times follow", file: "split.csv",
		text:    "bib,placeCountry,placeOverall,timeOverall,placeGender,overallTotalPlaces\n10,1,4,2:22:07,3,36863\n11,1,2,2:16:07,2,36863\n12,2,7,2:31:07,5,36863\n13,1,1,2:13:07,1,36863\n14,3,9,2:37:07,6,36863\n15,2,3,2:19:07,1,36863\n16,4,6,2:28:07,4,36863\n17,1,8,2:34:07,3,36863\n",
		columns: "number - position time sex-place -", rows: "2-9"},
	{name: "one line for each year", file: "years.csv",
		text:    "\"\",\"Date\",\"Year\",\"Starters\",\"Finishers\"\n\"1\",1981-04-20,1981,6800,6500\n\"2\",1982-04-21,1982,7400,7090\n\"3\",1983-04-22,1983,8000,7680\n\"4\",1984-04-23,1984,8600,8270\n\"5\",1985-04-24,1985,9200,8860\n\"6\",1986-04-25,1986,9800,9450\n\"7\",1987-04-26,1987,10400,10040\n\"8\",1988-04-27,1988,11000,10630\n",
		refused: "each line is of another day, and nobody is named"},
	{name: "a relay's teams, with numbers and places and no times", file: "runners.csv",
		text:    ",bib_number,category,team_name,start_time,year,place\n466810,1,mixed,Clover,0,2024,1\n4668137,2,female,Sole Train,900,2024,8\n4668174,3,male,Fourteen Feet,1800,2024,4\n46681111,4,mixed,Agony,0,2024,11\n46681148,5,female,Late Start,900,2024,7\n46681185,6,male,No Brakes,1800,2024,3\n46681222,7,mixed,Mud Larks,0,2024,10\n46681259,8,female,Old Boots,900,2024,6\n",
		refused: "it is a list of teams, not of runners"},
	{name: "figures of a game under letters that may be minutes and seconds", file: "tulokset.csv",
		text:    "Pelaaja,Joukkue,O,M,S,P,Min\nAnn Lee,FC Aho,1,0,0,4,243\nBen Roe,FC Aho,2,1,2,2,52\nCy Dee,FC Aho,3,2,1,5,17\nDi Fox,FC Aho,4,0,0,0,360\nEd Gow,FC Aho,1,1,2,2,88\nFlo Hay,FC Aho,2,2,1,4,7\nGus Ing,FC Aho,3,0,0,0,190\nHal Job,FC Aho,4,1,2,5,270\nIda Kay,FC Aho,1,2,1,2,45\nJay Low,FC Aho,2,0,0,4,61\n",
		refused: "its places are in no order of a finish, and it has no times of a run"},
	{name: "jumps among the runs of a meeting", file: "meet.csv",
		text:    "Place,Name,Mark,Event\n1.,Ann Lee,13:01.40,Men's 5000 Metres\n2.,Ben Roe,13:04.22,Men's 5000 Metres\n3.,Cy Dee,13:05.08,Men's 5000 Metres\n4.,Di Fox,13:09.11,Men's 5000 Metres\n1.,Ed Gow,17.27,Men's Triple Jump\n2.,Flo Hay,17.21,Men's Triple Jump\n3.,Gus Ing,16.85,Men's Triple Jump\n4.,Hal Job,16.40,Men's Triple Jump\n",
		refused: "there are jumps or throws among its runs, whose marks are no times; keep the lines of the runs only, and load it again"},
	{name: "places among men and women as decimals, nobody named, and teams of some", file: "all.csv",
		text:    "year,gender,status,resultTime,genderPosition,city,team\n2016,Female,Finished,2:40:20,1.0,Osier,\n2016,Female,Finished,2:41:20,2.0,Osier,Mill RC\n2016,Female,Finished,2:42:20,3.0,Osier,\n2016,Female,Finished,2:43:20,4.0,Osier,\n2016,Male,Finished,2:44:20,1.0,Osier,\n2016,Male,Finished,2:45:20,2.0,Osier,Mill RC\n2016,Male,Finished,2:46:20,3.0,Osier,\n2016,Male,Finished,2:47:20,4.0,Osier,\n",
		columns: "- sex status time sex-place - club", rows: "2-9"},
	{name: "a mile after the other", file: "density.csv",
		text:    "Mile,Minute,Runners\n0,24,600\n1,24,700\n2,24,800\n3,24,900\n4,24,800\n5,24,700\n6,24,600\n7,24,500\n8,24,400\n9,24,300\n10,24,200\n11,24,100\n12,24,0\n0,26,600\n1,26,700\n2,26,800\n3,26,900\n4,26,800\n5,26,700\n6,26,600\n7,26,500\n8,26,400\n9,26,300\n10,26,200\n11,26,100\n12,26,0\n",
		columns: "- time number", rows: "2-27"},
	{name: "no headings, the total in front of the times on the way and once more behind them", file: "teams.dat",
		text:    "1\t3\tVertical Runners\tMixed\t12:13:20\t1:13:20\t2:56:00\t5:30:00\t7:56:40\t10:08:40\t11:07:20\t12:13:20\n2\t40\tThe Heronry\tMixed\t12:25:00\t1:14:30\t2:58:48\t5:35:15\t8:04:15\t10:18:21\t11:17:57\t12:25:00\n3\t77\tSvc Bn\tMixed\t12:36:40\t1:15:40\t3:01:36\t5:40:30\t8:11:50\t10:28:02\t11:28:34\t12:36:40\n4\t24\tLater Named\tMixed\t12:48:20\t1:16:50\t3:04:24\t5:45:45\t8:19:25\t10:37:43\ttbv\t12:48:20\n5\t61\tBucket\tMixed\t13:00:00\t1:18:00\t3:07:12\t5:51:00\t8:27:00\t10:47:24\t11:49:48\t13:00:00\n6\t8\tNo Picnic\tMixed\t13:11:40\t1:19:10\t3:10:00\t5:56:15\t8:34:35\t10:57:05\t12:00:25\t13:11:40\n7\t45\tRocks\tMixed\tDNF\t1:20:20\t3:12:48\t6:01:30\t8:42:10\t11:06:46\t12:11:02\t13:23:20\n8\t82\tTotal Kit\tMixed\t13:35:00\t1:21:30\t3:15:36\t6:06:45\t8:49:45\t11:16:27\t12:21:39\t13:35:00\n",
		columns: "position - name club time split split split split split split -", rows: "1-8"},
	{name: "addresses of people's pages beside their names", file: "ultra.csv",
		text:    "runnerUri,fullname,time,rank,gender\n418948.ann.lee,ANN LEE,19:26:40,1,H\n419661.ben.roe,BEN ROE,19:41:40,2,F\n420374.cy.dee,CY DEE,19:56:40,3,H\n421087.di.fox,DI FOX,20:11:40,4,F\n421800.ed.gow,ED GOW,20:26:40,5,H\n422513.flo.hay,FLO HAY,20:41:40,6,F\n",
		columns: "- name time position sex", rows: "2-7"},
	{name: "a table of paces", file: "alder-bank_2026-01-03.csv",
		text:    "Target,Per km\n18:00,3:36\n18:30,3:42\n19:00,3:48\n19:30,3:54\n20:00,4:00\n20:30,4:06\n21:00,4:12\n21:30,4:18\n22:00,4:24\n",
		refused: "its times stand at even steps: a table of paces or of targets, and no results"},
	{name: "which group each age is in", file: "alder-bank_2026-01-03.csv",
		text:    "Age,Group\n35,35-39\n36,35-39\n37,35-39\n38,35-39\n39,35-39\n40,40-44\n41,40-44\n42,40-44\n43,40-44\n44,40-44\n45,45-49\n46,45-49\n",
		refused: "it has positions but neither names nor times"},
	{name: "names that were made unreadable", file: "2005.csv",
		text:    "place,netTime,yob,sex,name\n1,2:10:00,1960,M,b5a9ff725dcd764e2a14269610e553b301522ee3\n2,2:11:00,1962,W,1b594d23ae213fecfafba0780cc14c8881855044\n3,2:12:00,1964,M,86717f90a7ea19d80d3d6f280b36aa205e631fd9\n4,2:13:00,1966,W,d8a323b04ce26e8edc17cfddf13427e0c16fdd44\n5,2:14:00,1968,M,d503bfab51dcc688e753be51f83cd9f92d4bc195\n6,2:15:00,1970,W,121695318d162e0bf8e6a217c139ab565013352c\n7,2:16:00,1972,M,3d286e7a8bc56eb06ed5d89c5ac2698660f3adb9\n8,2:17:00,1974,W,d522a7de62e2fa0a1c4eada42e31c80b8cdc90d4\n",
		columns: "position time birth-year sex -", rows: "2-9"},
	{name: "two columns of classes, of which one is of words", file: "10k.csv",
		text:    "Rank,Race No,Name,Categoria,Category,Time\n1,70,Ann Lee,Populares (14-39),M20-39,00:37:14\n2,63,Ben Roe,Veteranos (40-49),M40-49,00:38:14\n3,56,Cy Dee,Veteranos (40-49),M40-49,00:39:14\n4,49,Di Fox,FEDERADOS,F20-39,00:40:14\n5,42,Ed Gow,Populares (14-39),F20-39,00:41:14\n6,35,Flo Hay,Populares (14-39),M20-39,00:42:14\n",
		columns: "position number name - age-group time", rows: "2-7"},
	{name: "no headings, places in classes of four figures, and no age", file: "knee.dat",
		text:    "    1   1/2 M5059 0:59:32  4:50 Ann Lee          Osier\n    2   1/1 F5059 1:00:33  4:51 Ben Roe          Pell\n    3   1/3 NOAGE 1:01:34  4:52 Cy Dee           Osier\n    4   2/3 NOAGE 1:02:35  4:53 Di Fox           Quay\n    5   2/2 M5059 1:03:36  4:54 Ed Gow           West Mar\n    6   1/1 F0119 1:04:37  4:55 Flo Hay          Pell\n    7   3/3 NOAGE 1:05:38  4:56 Gus Ing          Osier\n    8   1/1 M2029 1:06:39  4:57 Hal Job          Quay\n    9   1/1 F3039 1:07:40  4:58 Ida Kay          Pell\n   10   1/1 M4049 1:08:41  4:59 Jay Low          Osier\n",
		columns: "position group-place age-group time - name club", rows: "1-10"},
	{name: "minutes, seconds and hundredths between dots, some like a day", file: "kymppi.txt",
		text:    "Miehet 10000m\n1. Ann Lee Saaren Veikot 29.31.06\n2. Ben Roe Aholan Ryhti 30.37.40\n3. Cy Dee Saaren Veikot 31.05.12\n4. Di Fox Aholan Ryhti 31.07.09\n5. Ed Gow Saaren Veikot 32.07.11\n6. Flo Hay Aholan Ryhti 33.44.90\n7. Gus Ing Saaren Veikot 34.01.02\n8. Hal Job Aholan Ryhti 35.59.33\n",
		columns: "position name club time sex", rows: "2-9"},
	{name: "pages whose heads say the sex", file: "varsity.txt",
		text:    "                                                      Page 1\n         Vale Conference\n            GIRLS VARSITY\n \nPlace TmPl Name             No.  School       Time   Pace\n===== ==== ================ ==== ============ ===== =====\n    1    1 Ann Lee           700 Fernwick     18:20  5:40\n    2    2 Ben Roe           693 Fernwick     19:21  5:41\n    3    3 Cy Dee            686 Fernwick     20:22  5:42\n    4    4 Di Fox            679 Fernwick     21:23  5:43\n    5    5 Ed Gow            672 Fernwick     22:24  5:44\n\n                                                      Page 2\n         Vale Conference\n            GIRLS VARSITY\n \nPlace TmPl Name             No.  School       Time   Pace\n===== ==== ================ ==== ============ ===== =====\n    6    6 Flo Hay           665 Fernwick     23:25  5:45\n    7    7 Gus Ing           658 Fernwick     24:26  5:46\n    8    8 Hal Job           651 Fernwick     25:27  5:47\n\n",
		columns: "position - name number - time pace sex", rows: "7-11 19-21"},
	{name: "the name of the event beside that of the runner", file: "corridas.csv",
		text:    "nome,num_peito,nome_evento,sexo,tempo_total,classificacao_total\nAnn Lee,60,Corrida Noturna,F,00:14:10,1\nBen Roe,59,Ponte Velha,M,00:15:10,1\nCy Dee,58,Corrida Noturna,F,00:16:10,2\nDi Fox,57,Ponte Velha,M,00:17:10,2\nEd Gow,56,Corrida Noturna,F,00:18:10,3\nFlo Hay,55,Ponte Velha,M,00:19:10,3\nGus Ing,54,Corrida Noturna,F,00:20:10,4\nHal Job,53,Ponte Velha,M,00:21:10,4\n",
		columns: "name number course sex time position", rows: "2-9"},
	{name: "two people on a line each share a place, the time on the first of them", file: "relay.csv",
		text:    "place,time,first,last,age,team\n1,3:23:56,Jo,Lee,23,The Owls\n1,,Al,Roe,24,\n2,3:40:18,Cy,Dee,26,Four Legs\n2,,Di,Fox,27,\n3,3:49:35,Ed,Gow,51,The Plums\n3,,Fay,Ho,,\n4,3:51:14,Gus,Orr,26,Late\n4,,Hal,Moss,28,\n5,3:59:07,Ida,Nye,44,Team Nye\n5,,Jan,Ott,,\n",
		refused: "several people share each place and its time: teams of a relay, or pairs, whose times are no runner's own"},
	{name: "lists that run on within a line, of distances that were jumped", file: "field.txt",
		text:    "Men, long jump: 1) Bo Lee SuRa 7.10, 2) Al Roe HKV 6.96, 3) Cy Dee SuRa 6.36, 4) Ed Gow KontU 6.26, 5) Gus Orr SuRa 6.11.\nWomen: 1) Ida Nye SuRa 6.06, 2) Di Fox SuRa 5.93, 3) Fay Ho HKV 5.87, 4) Ann Poe SuRa 5.55.\n",
		refused: "no heading row with columns such as position, name and time, and no rows of results. Put each runner on a line, under a line of headings such as Position, Name, Time, save, and load it again. If it is no list of results, take it out of the folder"},
	{name: "entries with the times of other races", file: "1500m.csv",
		text:    "rank,name,team,mark,status,declaration,gender\n1,Jo Lee,Tarn,3:31.10,accepted,declared,women\n2,Al Roe,Tarn,3:31.50,accepted,scratched,men\n3,Cy Dee,,3:32.30,accepted,declared,men\n4,Di Fox,Mill,3:32.60,qualified,declared,women\n5,Ed Gow,,NT,qualified,scratched,men\n",
		refused: "it says who has declared to start: a list of entries, whose times are of other races"},
	{name: "hill races with distance, climb and record", file: "hills.csv",
		text:    "rownames,dist,climb,time\nOak Fell,6.9,500,22.525\nIbb Fell,18.0,6700,163.356\nDacre Crags,3.3,6000,147.080\nLang Hill,18.9,6800,140.195\nAld Crags,23.3,4200,37.080\nSkel Fell,19.2,3800,21.158\nTarn Hill,13.8,3900,55.269\nWold Fell,5.1,900,31.25\nRigg Hill,7.2,1200,40.1\nScar Fell,8.8,1500,47.7\n",
		refused: "nearly every line is of another distance, and nothing but a name says whose: a list of races; if they are people, add a column headed Position"},
	{name: "a capital word behind each name, another on each line", file: "run.txt",
		text: "1. Jo Anna LEE 18:20\n2. Al Bo ROE 18:31\n3. Cy Ed DEE 18:40\n4. Di Fay FOX 19:02\n5. Ed Max GOW 19:10\n", columns: "position name time", rows: "1-5"},
	{name: "two people of a pair have the pair's time each", file: "relay.csv",
		text:    "place,team,time,name\n1,Owls,3:59:05,Jo Lee\n1,Owls,3:59:05,Al Roe\n2,Legs,4:11:06,Cy Dee\n2,Legs,4:11:06,Di Fox\n3,Plums,4:18:09,Ed Gow\n3,Plums,4:18:09,Fay Ho\n4,Late,4:20:46,Gus Orr\n4,Late,4:20:46,Hal Moss\n5,Nye,4:21:03,Ida Nye\n5,Nye,4:21:03,Jan Ott\n",
		refused: "several people share each place and its time: teams of a relay, or pairs, whose times are no runner's own"},
	{name: "seconds and hundredths under the word for a watch", file: "results.csv",
		text:    "Rank,Finisher,Team,Clock,Total runs\n1,Jo Lee,Fell AC,1100.20,1\n2,Al Roe,Fell AC,1111.31,3\n3,Cy Dee,Fell AC,1129.49,5\n4,Di Fox,Fell AC,1150.10,2\n5,Ed Gow,Fell AC,1165.25,4\n6,Gus Ing,Fell AC,1212.12,1\n7,Hal Job,Fell AC,1247.47,3\n8,Ida Kay,Fell AC,1370.50,5\n9,Jay Low,Fell AC,1392.12,2\n10,Kim Moy,Fell AC,1471.31,4\n",
		columns: "position name club time total-runs", rows: "2-11"},
	{name: "a word for a watch with its units", file: "results.csv",
		text:    "Rank,Finisher,Team,Clock (mm:ss)\n1,Jo Lee,Fell AC,18:20\n2,Al Roe,Fell AC,18:31\n3,Cy Dee,Fell AC,18:49\n4,Di Fox,Fell AC,19:10\n5,Ed Gow,Fell AC,19:25\n6,Gus Ing,Fell AC,20:12\n7,Hal Job,Fell AC,20:47\n8,Ida Kay,Fell AC,22:50\n9,Jay Low,Fell AC,23:12\n10,Kim Moy,Fell AC,24:31\n",
		columns: "position name club time", rows: "2-11"},
	{name: "a dash between minutes and seconds under Finish", file: "results.csv",
		text:    "Finish place,Runner,Finish\n1,Jo Lee,18-20\n2,Al Roe,18-31\n3,Cy Dee,18-49\n4,Di Fox,19-10\n5,Ed Gow,19-25\n6,Gus Ing,20-12\n7,Hal Job,20-47\n8,Ida Kay,22-50\n9,Jay Low,23-12\n10,Kim Moy,24-31\n",
		columns: "position name time", rows: "2-11"},
	{name: "places of how many that look like age groups", file: "results.csv",
		text:    "Oak Park\nPosition,Runner,Age group,Time\n\n3 January 2026\n1/10,Jo Leea,Vet 40,18:00\n2/10,Jo Leeb,Sen,18:13\n3/10,Jo Leec,U15,18:26\n4/10,Jo Leed,Vet 50,18:39\n5/10,Jo Leee,Sen,19:52\n6/10,Jo Leef,Vet 40,19:05\n7/10,Jo Leeg,Sen,19:18\n8/10,Jo Leeh,U15,19:31\n9/10,Jo Leei,Vet 50,20:44\n10/10,Jo Leej,Sen,20:57\n\n10 January 2026\n1/10,Jo Leef,Vet 40,18:00\n2/10,Jo Leeg,Sen,18:13\n3/10,Jo Leeh,U15,18:26\n4/10,Jo Leei,Vet 50,18:39\n5/10,Jo Leej,Sen,19:52\n6/10,Jo Leek,Vet 40,19:05\n7/10,Jo Leel,Sen,19:18\n8/10,Jo Leem,U15,19:31\n9/10,Jo Leen,Vet 50,20:44\n10/10,Jo Leeo,Sen,20:57\n\n17 January 2026\n1/10,Jo Leek,Vet 40,18:00\n2/10,Jo Leel,Sen,18:13\n3/10,Jo Leem,U15,18:26\n4/10,Jo Leen,Vet 50,18:39\n5/10,Jo Leeo,Sen,19:52\n6/10,Jo Leep,Vet 40,19:05\n7/10,Jo Leeq,Sen,19:18\n8/10,Jo Leer,U15,19:31\n9/10,Jo Lees,Vet 50,20:44\n10/10,Jo Leet,Sen,20:57\n",
		columns: "position name age-group time", rows: "5-14 17-26 29-38"},
	{name: "blank columns between the halves of the names", file: "results.csv",
		text:    "Pos,,Time,First name,,Surname,Age,,Club\n1,,18:20,Jo,,Lee,30,,Fell AC\n2,,18:31,Al,,Roe,31,,Fell AC\n3,,18:49,Cy,,Dee,32,,Fell AC\n4,,19:10,Di,,Fox,33,,Fell AC\n5,,19:25,Ed,,Gow,34,,Fell AC\n6,,20:12,Gus,,Ing,35,,Fell AC\n7,,20:47,Hal,,Job,36,,Fell AC\n8,,22:50,Ida,,Kay,37,,Fell AC\n9,,23:12,Jay,,Low,38,,Fell AC\n10,,24:31,Kim,,Moy,39,,Fell AC\n",
		columns: "position - time given-name - family-name age - club", rows: "2-11"},
}

func TestDataFiles(t *testing.T) {
	for _, c := range dataFileCases {
		t.Run(c.name, func(t *testing.T) {
			if c.o.Course == "" {
				c.o.Course, c.o.Date = "alder-bank", "2026-01-03"
			}
			s, err := Read(c.file, []byte(c.text), c.o)
			if err != nil {
				if c.refused == "" || err.Error() != c.file+" is refused: "+c.refused {
					t.Fatalf("%v\nwant refused %q", err, c.refused)
				}
				return
			}
			got := outcome(s)
			if c.refused != "" || got.columns != c.columns || got.rows != c.rows {
				t.Errorf("columns %q\n   want %q\nrows %q want %q, want refused %q", got.columns, c.columns, got.rows, c.rows, c.refused)
			}
		})
	}
}

// Family names in capitals, some behind two given names, are no clubs.
func TestFamilyNamesInCapitalsBehind(t *testing.T) {
	s, err := Read("alder-bank_2026-01-03.txt", []byte("1. Jo Anna LEE 18:20\n2. Al Bo ROE 18:31\n3. Cy Ed DEE 18:40\n4. Di Fay LEE 19:02\n5. Ed Max ROE 19:10\n6. Gus HOY 19:20\n"), Options{})
	if err != nil {
		t.Fatal(err)
	}
	if p := s.Parts[0]; p.Index(Club) >= 0 {
		t.Errorf("%+v", p.Columns)
	}
}

// Of two columns of names of which each row has one, the second is where the first is blank.
func TestNameInOneOfTwoColumns(t *testing.T) {
	s, err := Read("alder-bank_2026-01-03.csv", []byte("Rank,Time,\"Surname, first name\",Club,Finishers,\"Original name\nSurname, first name\"\n1,18:20,\"Lee, Jo\",Vale,5,\n2,18:31,\"Roe, Al\",,5,\n3,18:40,,Mill,5,\"Dee, Cy\"\n4,19:02,\"Fox, Di\",Mill,5,\n5,19:10,,Vale,5,\"Gow, Ed\"\n"), Options{})
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	p := s.Parts[0]
	p.Each(func(_ int, cells []string) error {
		names = append(names, cells[p.Index(Name)])
		return nil
	})
	if got := strings.Join(names, "; "); got != "Lee, Jo; Roe, Al; Dee, Cy; Fox, Di; Gow, Ed" {
		t.Errorf("names %s", got)
	}
}
