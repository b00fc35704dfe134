package sheet

import (
	"slices"
	"strings"
	"testing"

	"lapwing/pipeline/place"
)

// byHand are sheets typed one at a time: several lists on one, lists that share columns, and
// lines that say of what or of when a list is. want are the lines read, as "name time" after
// each course and day, or the kinds of the questions, or what a refusal says.
var byHand = []struct{ name, text, want string }{
	{"names that repeat from list to list, without headings", "Alder Bank\nSat 3 Jan 2026\n1,Jo Lee,18:20\n2,Al Roe,18:31\n3,Cy Dee,24:40\n\nSat 10 Jan 2026\n1,Al Roe,18:21\n2,Jo Lee,18:32\n\nSat 17 Jan 2026\n1,Jo Lee,18:22\n2,Cy Dee,24:00\n",
		"alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31, Cy Dee 24:40; alder-bank 2026-01-10: Al Roe 18:21, Jo Lee 18:32; alder-bank 2026-01-17: Jo Lee 18:22, Cy Dee 24:00"},
	{"clubs that repeat within a list are no names", "Alder Bank 3 Jan 2026\n1,Mill Runners,18:20\n2,Mill Runners,18:31\n3,Fell Club,18:40\n4,Mill Runners,18:42\n", "alder-bank 2026-01-03: - 18:20, - 18:31, - 18:40, - 18:42"},
	{"a title in one cell that speaks of time, over places", "Alder Bank,Sat 3 January 2026\nWinners (all time on this course)\nM,Gil Tarr,15:59\nF,Una Brisk,17:40\nResults\n1,Jo Lee,18:20\n2,Al Roe,18:31\n3,Cy Dee,18:40\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31, Cy Dee 18:40"},
	{"bests of the season above the results", "Alder Bank 3 January 2026\n\nSeason's best so far\nGil Tarr 17:50\nJo Lee 17:59\nUna Brisk 18:01\n\nToday\nJo Lee 18:20\nAl Roe 18:31\nCy Dee 18:40\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31, Cy Dee 18:40"},
	{"last week's in the same columns, in German", "Alder Bank,3. Januar 2026\nHeute\nJo Lee,18:20\nAl Roe,18:31\nCy Dee,18:40\nLetzte Woche\nGil Tarr,17:50\nJo Lee,17:59\nUna Brisk,18:01\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31, Cy Dee 18:40"},
	{"the day was called off, and last week's results stand under it", "Alder Bank 5k\nSaturday 10 January 2026 - CANCELLED (ice)\nLast week's results:\n1,Jo Lee,18:20\n2,Al Roe,18:31\n3,Cy Dee,18:40\n", "asks date-unclear"},
	{"called off, in French", "Alder Bank\nsamedi 10 janvier 2026\nANNULÉE (neige)\nPlace,Nom,Temps\n1,Jo Lee,18:20\n2,Al Roe,18:31\n", "asks date-unclear"},
	{"one day called off, and results of the next", "Alder Bank\n10 January 2026 cancelled\n17 January 2026\nPos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n", "alder-bank 2026-01-17: Jo Lee 18:20, Al Roe 18:31"},
	{"coffee was cancelled, not the run", "Alder Bank 3 January 2026\nCoffee afterwards was cancelled\nPos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31"},
	{"the course of last week", "Alder Bank 3 January 2026\nSame course as last week\nPos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31"},
	{"how many ran last week", "Alder Bank\nSaturday 10 January 2026\nLast week (3 January): 61 runners. Fastest: Gil Tarr 16:10\nPos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n", "alder-bank 2026-01-10: Jo Lee 18:20, Al Roe 18:31"},
	{"last week's winner is no list", "Alder Bank\nSaturday 10 January 2026\nLast week's winner was Gil Tarr\nPos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n", "alder-bank 2026-01-10: Jo Lee 18:20, Al Roe 18:31"},
	{"a day over the second list only, with the same people", "Alder Bank\n\nWeek 1\nPos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n3,Cy Dee,18:40\n\nWeek 2 - Saturday 10 January 2026\nPos,Name,Time\n1,Al Roe,18:21\n2,Cy Dee,18:32\n3,Di Fox,18:50\n", "asks date-missing"},
	{"tokens as they were handed in, beside the times", "Alder Bank,3 January 2026,,,\nToken,Name,,Place,Time\n1,Jo Lee,,1,18:20\n3,Al Roe,,2,18:31\n2,Cy Dee,,3,18:40\n5,Di Fox,,4,19:10\n,,,5,19:20\n", "alder-bank 2026-01-03: Jo Lee 18:20, Cy Dee 18:31, Al Roe 18:40, - 19:10, Di Fox 19:20"},
	{"times first, and a name without a time", "Alder Bank,3 January 2026,,\nPos,Time,Pos,Name\n1,18:20,2,Jo Lee\n2,18:31,1,Al Roe\n3,18:40,4,Cy Dee\n,,3,Di Fox\n", "alder-bank 2026-01-03: Al Roe 18:20, Jo Lee 18:31, Di Fox 18:40, Cy Dee -"},
	{"numbers in two orders", "Alder Bank,3 January 2026,,,\nBib,Name,,Bib,Time\n101,Jo Lee,,101,18:20\n102,Al Roe,,103,18:31\n103,Cy Dee,,102,18:40\n", "alder-bank 2026-01-03: Jo Lee 18:20, Cy Dee 18:31, Al Roe 18:40"},
	{"places and start numbers", "Alder Bank,3 January 2026,,,\nNr.,Time,Name,Startnummer\n1,18:20,Jo Lee,3\n2,18:31,Al Roe,1\n3,18:40,Cy Dee,2\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31, Cy Dee 18:40"},
	{"the rank of the season and the place of the day", "Alder Bank,3 January 2026,,\nRank,Name,Pos,Time\n1,Jo Lee,2,18:31\n2,Al Roe,1,18:20\n3,Cy Dee,3,18:40\n", "alder-bank 2026-01-03: Jo Lee 18:31, Al Roe 18:20, Cy Dee 18:40"},
	{"who was fastest below a season's list is moved into no column", "Date,Course,Name,Time,Club\n3 January 2026,Alder Bank,Jo Lee,18:20,Mill AC\n,,Al Roe,18:31,Fell AC\n,,Cy Dee,18:40,Mill AC\n10 January 2026,Alder Bank,Jo Lee,18:21,Mill AC\n,,Al Roe,18:32,Fell AC\n,,Cy Dee,18:44,Mill AC\n\nFastest ever here,Una Brisk,17:02,\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31, Cy Dee 18:40; alder-bank 2026-01-10: Jo Lee 18:21, Al Roe 18:32, Cy Dee 18:44"},
	{"a token that stands twice", "Alder Bank,3 January 2026,,,\nToken,Name,,Place,Time\n1,Jo Lee,,1,18:20\n3,Al Roe,,2,18:31\n3,Cy Dee,,3,18:40\n2,Di Fox,,4,19:10\n", "asks lists-apart"},
	{"places and numbers of one list are no two lists", "Alder Bank,3 January 2026,,\nPos,Name,No,Time\n1,Jo Lee,3,18:20\n2,Al Roe,1,18:31\n3,Cy Dee,2,18:40\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31, Cy Dee 18:40"},
	{"the season's standings to the left", "Alder Bank 5k - 3 January 2026,,,,,,\nSeason standings,,,,This week,,\nPos,Name,Best,,Pos,Name,Time\n1,Gil Tarr,17:55,,1,Jo Lee,18:20\n2,Jo Lee,18:05,,2,Al Roe,18:31\n3,Al Roe,18:30,,3,Cy Dee,18:40\n4,Cy Dee,18:35,,,,\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31, Cy Dee 18:40"},
	{"last week to the right", "Alder Bank 5k,,,,Last week,,\n3 January 2026,,,,,,\nPos,Name,Time,,Pos,Name,Time\n1,Jo Lee,18:20,,1,Gil Tarr,17:55\n2,Al Roe,18:31,,2,Jo Lee,18:05\n3,Cy Dee,18:40,,3,Al Roe,18:30\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31, Cy Dee 18:40"},
	{"pairs that ran each for themselves", "Alder Bank,3 January 2026,,,\nPair,Runner 1,Time,Runner 2,Time\nA,Jo Lee,18:20,Al Roe,18:31\nB,Cy Dee,18:40,Di Fox,18:42\nC,Ed Gow,18:45,Ida Kay,18:50\n", "alder-bank 2026-01-03: Jo Lee 18:20, Cy Dee 18:40, Ed Gow 18:45, Al Roe 18:31, Di Fox 18:42, Ida Kay 18:50"},
	{"runners and walkers in columns of their own", "Alder Bank 3 January 2026\nName,Category,Run,Walk\nJo Lee,F,18:20,\nAl Roe,M,,51:00\nCy Dee,M,18:40,\nDi Fox,F,,55:10\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 51:00, Cy Dee 18:40, Di Fox 55:10"},
	{"children in a column of their own, who may have run less", "Alder Bank 3 January 2026\nName,Adults,Kids\nJo Lee,18:20,\nAl Roe,18:31,\nKit Lee,,11:00\nCy Dee,18:40,\n", "asks time-column-missing"},
	{"two runs of a day in columns", "Alder Bank 3 January 2026\nName,Run 1,Run 2,Best\nJo Lee,18:40,18:20,18:20\nAl Roe,18:31,,18:31\nCy Dee,,18:50,18:50\n", "asks time-column-missing"},
	{"the best behind each time", "Alder Bank 3 January 2026\nPos,Name,Time\n1,Jo Lee,18:20 PB 18:11\n2,Al Roe,18:31 PB 18:31\n3,Cy Dee,18:40 First run\n4,Di Fox,18:42 PB 18:40\n", "alder-bank 2026-01-03: Jo Lee 18:20 PB 18:11, Al Roe 18:31 PB 18:31, Cy Dee 18:40 First run, Di Fox 18:42 PB 18:40"},
	{"one column of places for men and women side by side", "Alder Bank 3 January 2026\nPos,Men,Time,Women,Time\n1,Al Roe,18:31,Jo Lee,19:20\n2,Cy Dee,18:40,Di Fox,19:42\n3,Ed Gow,18:45,Ida Kay,20:50\n4,Gus Orr,19:00,,\n", "alder-bank 2026-01-03: Al Roe 18:31, Cy Dee 18:40, Ed Gow 18:45, Gus Orr 19:00, Jo Lee 19:20, Di Fox 19:42, Ida Kay 20:50"},
	{"men and women side by side under their sexes", "Alder Bank 3 January 2026\nMen,Time,Women,Time\nAl Roe,18:31,Jo Lee,18:20\nCy Dee,18:40,Di Fox,18:42\nEd Gow,18:45,Ida Kay,18:50\nGus Ing,18:55,,\n", "alder-bank 2026-01-03: Al Roe 18:31, Cy Dee 18:40, Ed Gow 18:45, Gus Ing 18:55, Jo Lee 18:20, Di Fox 18:42, Ida Kay 18:50"},
	{"few runners of a handicap", "Alder Bank Handicap 3 January 2026\nFinish,Name,H'cap,Time\n1,Jo Lee,0:00,44:10\n2,Al Roe,22:00,44:15\n3,Cy Dee,24:00,44:22\n4,Di Fox,26:00,44:31\n5,Ed Gow,20:00,45:02\n", "asks handicap-in-time"},
	{"few runners, whose handicaps are not in their times", "Alder Bank Handicap 3 January 2026\nFinish,Name,H'cap,Time\n1,Jo Lee,0:00,44:10\n2,Al Roe,22:00,22:15\n3,Cy Dee,24:00,20:22\n4,Di Fox,26:00,18:31\n5,Ed Gow,20:00,24:58\n", "alder-bank 2026-01-03: Jo Lee 44:10, Al Roe 22:15, Cy Dee 20:22, Di Fox 18:31, Ed Gow 24:58"},
	{"when each was sent off, and the clock", "Alder Bank 3 January 2026\nFinish order,Runner,Sent off,Clock\n1,Jo Lee,0:00,30:08\n2,Al Roe,1:00,30:15\n3,Cy Dee,2:00,30:40\n4,Di Fox,3:00,31:02\n", "alder-bank 2026-01-03: Jo Lee 30:08, Al Roe 29:15, Cy Dee 28:40, Di Fox 28:02"},
	{"a start for each that is no time of day", "Alder Bank 3 January 2026\nName,Start,Finish\nJo Lee,0:00,18:20\nAl Roe,1:00,19:31\nCy Dee,2:00,20:40\nDi Fox,3:00,21:42\n", "asks handicap-in-time"},
	{"members under guests, with another column", "Alder Bank 3 January 2026\nVisitors\nPos,Name,Time,From\n2,Jo Lee,18:31,Vale\n5,Al Roe,18:45,Vale\nMembers\nPos,Name,Time,No.\n1,Cy Dee,18:20,12\n3,Di Fox,18:40,31\n4,Ed Gow,18:42,7\n", "alder-bank 2026-01-03: Jo Lee 18:31, Al Roe 18:45, Cy Dee 18:20, Di Fox 18:40, Ed Gow 18:42"},
	{"members under guests, whose places begin again", "Alder Bank 3 January 2026\nPos,Name,Time\nVisitors,,\n1,Jo Lee,18:31\n2,Al Roe,18:45\n3,Ida Kay,18:50\nMembers,,\n1,Cy Dee,18:20\n2,Di Fox,18:40\n3,Ed Gow,18:42\n", "alder-bank 2026-01-03: Jo Lee 18:31, Al Roe 18:45, Ida Kay 18:50, Cy Dee 18:20, Di Fox 18:40, Ed Gow 18:42"},
	{"last week's under a heading of its own", "Alder Bank 3 January 2026\nPos,Name,Time\n1,Jo Lee,18:31\n2,Al Roe,18:45\n3,Ida Kay,18:50\n\nLast week,,\nPos,Name,Time\n1,Cy Dee,18:20\n2,Di Fox,18:40\n3,Ed Gow,18:42\n", "alder-bank 2026-01-03: Jo Lee 18:31, Al Roe 18:45, Ida Kay 18:50"},
	{"the corrected list under the first one", "Alder Bank 3 January 2026\nRESULTS AS TYPED\n1,Jo Lee,18:20\n2,Al Roe,18:31\n3,Cy Dee,18:40\n4,Di Fox,18:42\n\nCORRECTED RESULTS\n1,Jo Lee,18:20\n2,Cy Dee,18:31\n3,Al Roe,18:40\n4,Di Fox,18:42\n", "alder-bank 2026-01-03: Jo Lee 18:20, Cy Dee 18:31, Al Roe 18:40, Di Fox 18:42"},
	{"two rows corrected under the list", "Alder Bank 3 January 2026\nPos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n3,Cy Dee,18:40\n4,Di Fox,18:42\nCORRECTION: 2 and 3 swapped,,\n2,Cy Dee,18:31\n3,Al Roe,18:40\n", "asks corrected-below"},
	{"more runners under a line that only speaks of corrections", "Alder Bank 3 January 2026\nPos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\nCorrections to the desk please,,\n3,Cy Dee,18:40\n4,Di Fox,18:42\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31, Cy Dee 18:40, Di Fox 18:42"},
	{"times below names, in their column", "Alder Bank,3 January 2026\nPos,Name\n1,Jo Lee\n2,Al Roe\n3,Cy Dee\nTimes,\n1,18:20\n2,18:31\n3,18:40\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31, Cy Dee 18:40"},
	{"times of others below names", "Alder Bank,3 January 2026\nPos,Name\n1,Jo Lee\n2,Al Roe\n3,Cy Dee\n4,Di Fox\nTimes,\n1,18:20\n2,18:31\n3,18:40\n", "asks names-apart"},
	{"moved, with the reason", "Alder Bank - run at Mill Leat because of cows\n3 January 2026\nPos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n", "mill-leat 2026-01-03: Jo Lee 18:20, Al Roe 18:31"},
	{"moved from one place to another", "Moved from Alder Bank to Mill Leat because of flood\n3 January 2026\nPos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n", "mill-leat 2026-01-03: Jo Lee 18:20, Al Roe 18:31"},
	{"moved, in German", "Alder Bank, verlegt nach Tannengrund wegen Hochwasser\n3. Januar 2026\nPlatz;Name;Zeit\n1;Jo Lee;18:20\n2;Al Roe;18:31\n", "tannengrund 2026-01-03: Jo Lee 18:20, Al Roe 18:31"},
	{"only the start was moved", "Alder Bank 3 January 2026\nStart moved to Top Gate because of cows\nPos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31"},
	{"moved to another day", "Alder Bank 10 January 2026\nMoved to Sunday 11 January\nPos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n", "alder-bank 2026-01-11: Jo Lee 18:20, Al Roe 18:31"},
	{"something else was moved to another day", "Alder Bank 10 January 2026\nRelay postponed to 2 May 2026\nPos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n", "alder-bank 2026-01-10: Jo Lee 18:20, Al Roe 18:31"},
	{"two courses that the title names", "Quarry Rim and Dale End results\nSaturday 10 January 2026\nQuarry Rim\n1,Jo Lee,18:20\n2,Al Roe,18:31\nDale End\n1,Cy Dee,18:40\n2,Di Fox,18:42\n3,Ed Gow,18:45\n", "quarry-rim 2026-01-10: Jo Lee 18:20, Al Roe 18:31; dale-end 2026-01-10: Cy Dee 18:40, Di Fox 18:42, Ed Gow 18:45"},
	{"a reminder of an earlier run", "Alder Bank - samedi 10 janvier 2026\n1,Jo Lee,18:20\n2,Al Roe,18:31\nRappel: résultats du 3 janvier\n1,Cy Dee,18:40\n2,Jo Lee,18:42\n", "alder-bank 2026-01-10: Jo Lee 18:20, Al Roe 18:31; alder-bank 2026-01-03: Cy Dee 18:40, Jo Lee 18:42"},
	{"two lists under the words for their sexes, typed", "Alder Bank 5k   Saturday 3 January 2026\n\nMen                      Women\n1 Al Roe     18:31       1 Jo Lee    18:20\n2 Cy Dee     18:40       2 Di Fox    18:42\n3 Ed Gow     18:45       3 Ida Kay   18:50\n4 Gus Ing    18:55\n", "alder-bank 2026-01-03: Al Roe 18:31, Cy Dee 18:40, Ed Gow 18:45, Gus Ing 18:55, Jo Lee 18:20, Di Fox 18:42, Ida Kay 18:50"},
	{"this week's and last week's times", "Alder Bank 3 January 2026\nLast wk,This wk,Name\n18:30,18:20,Jo Lee\n,18:31,Al Roe\n18:44,18:40,Cy Dee\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31, Cy Dee 18:40"},
	{"guesses and what came of them", "Alder Bank 3 January 2026\nName,Est.,Actual,Out by\nJo Lee,18:00,18:20,0:20\nAl Roe,18:31,18:31,0:00\nCy Dee,19:00,18:40,-0:20\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31, Cy Dee 18:40"},
	{"handicaps in whole minutes", "Alder Bank Handicap 3 January 2026\nName,Handicap (min),Clock\nJo Lee,12,30:02\nAl Roe,11,29:40\nCy Dee,10,29:15\nDi Fox,9,29:08\nEd Gow,7,29:30\nIda Kay,4,29:45\n", "asks handicap-in-time"},
	{"a club's round-up of places", "Fernbeck Runners – where we ran on Saturday 3 January 2026\n\nAmble Knot\nPos,Name,Time\n8,Jo Lee,18:20\n12,Al Roe,18:31\n\nCinder Spur\nPos,Name,Time\n6,Cy Dee,18:40\n15,Di Fox,18:52\n", "amble-knot 2026-01-03: Jo Lee 18:20, Al Roe 18:31; cinder-spur 2026-01-03: Cy Dee 18:40, Di Fox 18:52"},
	{"a club's run in lists by how fast people are", "Fernbeck Runners 3 January 2026\n\nFast group\nPos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n\nSlow group\nPos,Name,Time\n3,Cy Dee,18:40\n4,Di Fox,18:52\n", "fernbeck-runners 2026-01-03: Jo Lee 18:20, Al Roe 18:31, Cy Dee 18:40, Di Fox 18:52"},
	{"corrected times beside those that they stand in place of", "Alder Bank 3 January 2026\nPos,Name,Time,Corrected time,Reason\n1,Jo Lee,18:27,18:20,watch\n2,Al Roe,18:31,,\n3,Cy Dee,18:40,,\n4,Di Fox,18:58,18:52,watch\n5,Ed Gow,18:59,,\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31, Cy Dee 18:40, Di Fox 18:52, Ed Gow 18:59"},
	{"tenths in a column of their own", "Alder Bank 3 January 2026\nPos,Name,Min,Sec,1/10\n1,Jo Lee,18,20,4\n2,Al Roe,18,31,0\n3,Cy Dee,18,40,9\n", "alder-bank 2026-01-03: Jo Lee 18:20.4, Al Roe 18:31.0, Cy Dee 18:40.9"},
	{"a provisional list and the final one", "Alder Bank 3 January 2026\n\nPROVISIONAL\n1,Jo Lee,18:20\n2,Al Roe,18:31\n3,Cy Dee,18:40\n\nFINAL\n1,Jo Lee,18:20\n2,Alf Roe,18:31\n3,Cy Dee,18:40\n", "alder-bank 2026-01-03: Jo Lee 18:20, Alf Roe 18:31, Cy Dee 18:40"},
	{"another venue, in a note", "Alder Bank 5k\nNOTE: venue changed to Mill Leat\nSaturday 3 January 2026\nPos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n", "mill-leat 2026-01-03: Jo Lee 18:20, Al Roe 18:31"},
	{"the fastest of the year above today's", "Alder Bank 3 January 2026\n\"This year's fastest\",,\nGil Tarr,16:59,\nJo Lee,17:40,\nUna Brisk,17:55,\nToday's result,,\nJo Lee,18:20,\nAl Roe,18:31,\nCy Dee,18:40,\nDi Fox,18:42,\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31, Cy Dee 18:40, Di Fox 18:42"},
	{"laps that differ", "Alder Bank 3 January 2026\nName,Time,Laps\nJo Lee,18:20,4\nAl Roe,18:31,4\nCy Dee,18:40,3\nKit Lee,9:10,1\n", "asks laps-differ"},
	{"laps that are the same for all", "Alder Bank 3 January 2026\nName,Time,Laps\nJo Lee,18:20,4\nAl Roe,18:31,4\nCy Dee,18:40,4\nKit Lee,,2\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31, Cy Dee 18:40, Kit Lee -"},
	{"an example of how to fill one in", "EXAMPLE - how to fill in the sheet\nAlder Bank,3 January 2026\nPos,Name,Time\n1,Joe Bloggs,20:00\n2,Jane Doe,21:00\n", "refused: x.csv is refused: a line above it says that it is an example; if these are results, take that line out"},
	{"the best of a season", "Alder Bank - season bests after race 6\n3 January 2026\nPos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n", "refused: x.csv is refused: a line above it says that its times are the best ones of many days; if they are those of one run, take that line out"},
	{"the best of all time, in French", "Alder Bank : meilleurs temps de tous les temps\nClt,Nom,Temps\n1,Jo Lee,18:20\n2,Al Roe,18:31\n", "refused: x.csv is refused: a line above it says that its times are the best ones of many days; if they are those of one run, take that line out"},
	{"bests of a season that some ran today", "Alder Bank 3 January 2026\nNew season bests for two of us today\nPos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31"},
	{"those who start, by the times that seed them", "Alder Bank 3 January 2026\nSTART LIST with seed times\nNo,Name,Time\n11,Jo Lee,18:30\n12,Al Roe,18:30\n", "refused: x.csv is refused: a line above it says that it is a list of who starts, whose times are of other runs; if they are results, take that line out"},
	{"places and times written into the list of starters", "Alder Bank 3 January 2026\nStart list\nNo,Name,Place,Time\n11,Jo Lee,1,18:20\n12,Al Roe,2,18:31\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31"},
	{"where the list of starters hangs", "Alder Bank 3 January 2026\nStart list and photos are on the wall of the club house\nPos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31"},
	{"run elsewhere, in a sentence", "Alder Bank 3 January 2026 - flooded, so this week we ran at Mill Leat instead\nPos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n", "mill-leat 2026-01-03: Jo Lee 18:20, Al Roe 18:31"},
	{"a corrected time on one line", "Alder Bank 3 January 2026\nPos,Name,Time,Corrected\n1,Jo Lee,18:20,\n2,Al Roe,18:31,\n3,Cy Dee,18:55,18:40\n4,Di Fox,18:52,\n5,Ed Gow,18:59,\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31, Cy Dee 18:40, Di Fox 18:52, Ed Gow 18:59"},
	{"a mark for the family name above", "Alder Bank 3 January 2026\nPos,First,Surname,Time\n1,Jo,Lee,18:20\n2,Al,\"\"\"\",18:31\n3,Cy,Dee,18:40\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Lee 18:31, Cy Dee 18:40"},
	{"a place called after one", "Sample Green 3 January 2026\nPos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n", "sample-green 2026-01-03: Jo Lee 18:20, Al Roe 18:31"},
	{"days without a year over columns with helpers among the times", "Alder Bank 2026\nName,03/01,10/01,17/01,24/01\nJo Lee,18:20,18:21,18:22,18:23\nAl Roe,18:31,V,18:32,18:33\nCy Dee,24:10,,24:00,V\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31, Cy Dee 24:10; alder-bank 2026-01-10: Jo Lee 18:21; alder-bank 2026-01-17: Jo Lee 18:22, Al Roe 18:32, Cy Dee 24:00; alder-bank 2026-01-24: Jo Lee 18:23, Al Roe 18:33"},
	{"days over columns, no heading over the names, and totals", "Alder Bank 5k,,,\n,17/01/2026,24/01/2026,31/01/2026\nJo Lee,18:20,18:21,\nAl Roe,18:31,,18:32\nCy Dee,,24:00,24:10\nNo. of runners,2,2,2\nAverage,18:26,21:11,21:21\n", "alder-bank 2026-01-17: Jo Lee 18:20, Al Roe 18:31; alder-bank 2026-01-24: Jo Lee 18:21, Cy Dee 24:00; alder-bank 2026-01-31: Al Roe 18:32, Cy Dee 24:10"},
	{"the course over the names, beside the days", "Alder Bank,17 Jan 2026,24 Jan 2026\nJo Lee,18:20,18:21\nAl Roe,18:31,\nCy Dee,,24:00\n", "alder-bank 2026-01-17: Jo Lee 18:20, Al Roe 18:31; alder-bank 2026-01-24: Jo Lee 18:21, Cy Dee 24:00"},
	{"the course beside the days, over the headings", "Alder Bank,,17 Jan 2026,24 Jan 2026,PB\nName,Club,,,\nJo Lee,Vale,18:20,18:21,18:00\nAl Roe,,18:31,,18:31\nCy Dee,,,24:00,24:00\n", "alder-bank 2026-01-17: Jo Lee 18:20, Al Roe 18:31; alder-bank 2026-01-24: Jo Lee 18:21, Cy Dee 24:00"},
	{"days of a month over lists side by side", "Alder Bank 5k - January 2026,,,,,\nSat 3rd,,,Sat 10th,,\nPos,Name,Time,Pos,Name,Time\n1,Jo Lee,18:20,1,Al Roe,18:21\n2,Al Roe,18:31,2,Cy Dee,18:32\n3,Cy Dee,18:40,,,\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31, Cy Dee 18:40; alder-bank 2026-01-10: Al Roe 18:21, Cy Dee 18:32"},
	{"course and day at the foot", "Pos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n3,Cy Dee,18:40\nAlder Bank 3 January 2026,,\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31, Cy Dee 18:40"},
	{"printed on one day, run on another, which the foot says", "Printed 27/1/2026 09:14\nAlder Bank\nPos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n3,Cy Dee,18:40\nRun: Sat 24/1/2026\nPage 1 of 1\n", "alder-bank 2026-01-24: Jo Lee 18:20, Al Roe 18:31, Cy Dee 18:40"},
	{"the day at the foot, and who made the list when", "Alder Bank\nPos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n3,Cy Dee,18:40\n\n\"Results of the run held on 17th January 2026, compiled 19/1/26 by J. Lumb\"\n", "alder-bank 2026-01-17: Jo Lee 18:20, Al Roe 18:31, Cy Dee 18:40"},
	{"the time of day at the finish beside gun and chip", "Alder Bank 17 January 2026\nPos,Name,FinishTime,GunTime,ChipTime\n1,Jo Lee,09:18:25,0:18:25,0:18:20\n2,Al Roe,09:18:36,0:18:36,0:18:31\n3,Cy Dee,09:18:45,0:18:45,0:18:40\n", "alder-bank 2026-01-17: Jo Lee 18:25, Al Roe 18:36, Cy Dee 18:45"},
	{"course and day at the foot, a line each", "Pos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n3,Cy Dee,18:40\n\nAlder Bank 5k\nSaturday 3 January 2026\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31, Cy Dee 18:40"},
	{"who signed at the foot", "Pos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n3,Cy Dee,18:40\n\nDi Fox\n3 January 2026\n", "asks course-missing"},
	{"what a telephone writes above", "Sent from my phone\n3 January 2026\nPos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n3,Cy Dee,18:40\n", "asks course-missing"},
	{"added later, one and with an earlier time", "Alder Bank 3 January 2026\nPos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n3,Cy Dee,18:40\n\nLate entries\n,Di Fox,18:35\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31, Cy Dee 18:40, Di Fox 18:35"},
	{"the same in German, behind who did not finish", "Alder Bank 3 January 2026\nPos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n3,Cy Dee,18:40\n,Gus Ing,DNF\n\nNachträge:\n,Di Fox,18:35\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31, Cy Dee 18:40, Gus Ing DNF, Di Fox 18:35"},
	{"added later to a list without places", "Alder Bank 3 January 2026\nName,Time\nJo Lee,18:20\nAl Roe,18:31\nCy Dee,28:40\nEd Gow,29:40\n\nLate additions\nDi Fox,18:35\nIda Kay,18:39\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31, Cy Dee 28:40, Ed Gow 29:40, Di Fox 18:35, Ida Kay 18:39"},
	{"under a blank line, with sex and age", "Alder Bank 3 January 2026\nPos,Name,Time,Sex,Age\n1,Jo Lee,18:20,M,40\n2,Al Roe,18:31,M,50\n3,Cy Dee,18:40,F,30\n4,Ed Gow,18:42,M,20\n\n,Di Fox,18:35,F,31\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31, Cy Dee 18:40, Ed Gow 18:42, Di Fox 18:35"},
	{"under a line of something else", "Alder Bank 3 January 2026\nPos,Name,Time,Sex,Age\n1,Jo Lee,18:20,M,40\n2,Al Roe,18:31,M,50\n3,Cy Dee,18:40,F,30\n4,Ed Gow,18:42,M,20\n\nTimekeeper\n,Di Fox,18:35,F,31\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31, Cy Dee 18:40, Ed Gow 18:42"},
	{"the next run at the foot", "Alder Bank\nPos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n3,Cy Dee,18:40\n\nNext run 24 January 2026\n", "asks date-missing"},
	{"a deadline at the foot", "Alder Bank\nPos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n3,Cy Dee,18:40\n\nCorrections by 24 January 2026 please\n", "asks date-missing"},
	{"another run at the foot of a list that gives its day", "Alder Bank 17 January 2026\nPos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n3,Cy Dee,18:40\n\nMill Leat 24 January 2026\n", "alder-bank 2026-01-17: Jo Lee 18:20, Al Roe 18:31, Cy Dee 18:40"},
	{"a newsletter, and the day of the run at its foot", "Alder Bank Newsletter published Monday 19 January 2026\n\nPos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n3,Cy Dee,18:40\n\nRun held Saturday 17 January 2026; dry and warm.\n", "alder-bank 2026-01-17: Jo Lee 18:20, Al Roe 18:31, Cy Dee 18:40"},
	{"a second watch under the same heading", "Alder Bank 3 January 2026\nPos,Name,Time,Time\n1,Jo Lee,18:20,18:21\n2,Al Roe,18:31,18:31\n3,Cy Dee,18:40,18:42\n", "asks time-column-missing"},
	{"the stopwatch was started again", "Alder Bank 3 January 2026\nPos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\nstopwatch restarted: add 5:00 to the following,,\n3,Cy Dee,13:40\n4,Di Fox,13:42\n", "asks times-to-be-changed"},
	{"all times are slow", "Alder Bank 3 January 2026\nAll times 30 seconds slow - watch started late!\nPos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n", "asks times-to-be-changed"},
	{"times that were corrected", "Alder Bank 3 January 2026\nWatch started late: 30 seconds have been added to all times\nPos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31"},
	{"those who cycled, under the runners", "Alder Bank 3 January 2026\nPos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n3,Cy Dee,18:40\n\nAgainst the clock (bike),,\n1,Gil Tarr,12:02\n2,Una Brisk,13:10\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31, Cy Dee 18:40"},
	{"weeks by number in columns", "Alder Bank,3 January 2026,,,\nWeek,1,2,3,4\nName,,,,\nJo Lee,18:40,18:31,18:20,\nAl Roe,,18:50,18:31,\nCy Dee,19:40,,18:40,\n", "asks time-column-missing"},
	{"lines over lists that are nobody", "Alder Bank 3 January 2026\nName,Time\nJo Lee,18:20\nAl Roe,18:31\nCy Dee,18:40\nPersonal bests today,\nAl Roe,18:31\nClub champion so far,\nGil Tarr,16:59\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31, Cy Dee 18:40, Al Roe 18:31"},
	{"totals of teams side by side", "Alder Bank 3 January 2026\n,Name,Time,,,Name,Time\nA team,Jo Lee,18:20,,B team,Al Roe,18:31\n,Cy Dee,18:40,,,Di Fox,18:42\n,Ed Gow,18:45,,,Ida Kay,18:50\nTotal,,55:45,,Total,,56:03\n", "alder-bank 2026-01-03: Jo Lee 18:20, Cy Dee 18:40, Ed Gow 18:45, Al Roe 18:31, Di Fox 18:42, Ida Kay 18:50"},
	{"a match of two places", "Alder Bank v Mill Leat (away)\nSaturday 3 January 2026\nPos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n", "asks course-missing"},
	{"a match, and at which of the two", "Alder Bank v Mill Leat match, at Mill Leat, 3 January 2026\nPos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n", "mill-leat 2026-01-03: Jo Lee 18:20, Al Roe 18:31"},
	{"parents and their children", "Alder Bank 3 January 2026\nParent,Child,Time\nJo Lee,Kit Lee,28:20\nAl Roe,Ben Roe,28:31\nCy Dee,Cat Dee,28:40\n", "refused: x.csv is refused: it has two people on each line"},
	{"dots between names and times with dots, the last beyond the hour", "Alder Bank 5k\nSaturday 3 January 2026\n\nJo Lee .......... 18.20\nAl Roe .......... 18.31\nCy Dee .......... 18.40\nDi Fox .......... 18.42\nEd Gow .......... 20.45\nIda Kay ......... 24.50\nGus Ing ......... 1.02.30\n", "alder-bank 2026-01-03: Jo Lee 18.20, Al Roe 18.31, Cy Dee 18.40, Di Fox 18.42, Ed Gow 20.45, Ida Kay 24.50, Gus Ing 1.02.30"},
	{"first names among friends", "Alder Bank 3 January 2026\nfrom my notebook\nJo L 18.20\nAl 18.31\nCy D. 18.40\nDi (B) 18.42\nthe tall one 18.45\nGus 22.45\n", "alder-bank 2026-01-03: Jo L 18.20, Al 18.31, Cy D. 18.40, Di (B) 18.42, the tall one 18.45, Gus 22.45"},
	{"groups are no first names", "Alder Bank 3 January 2026\nM40,18:20\nSM,18:31\nW35,18:40\nSW,18:42\n", "alder-bank 2026-01-03: - 18:20, - 18:31, - 18:40, - 18:42"},
	{"a second list without places to the right", "Alder Bank,3 January 2026,,,\nPos,Name,Time,Name,Time\n1,Jo Lee,18:20,Ed Gow,18:45\n2,Al Roe,18:31,Ida Kay,18:50\n3,Cy Dee,18:40,Gus Ing,18:55\n4,Di Fox,18:42,,\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31, Cy Dee 18:40, Di Fox 18:42, Ed Gow 18:45, Ida Kay 18:50, Gus Ing 18:55"},
	{"last Saturday's results once more", "Alder Bank\n10 January 2026\nResults from last Saturday were wrong, here they are again:\nPos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n", "asks date-unclear"},
	{"bests of age groups above the results", "Alder Bank 3 January 2026\n\nAge group bests\nU18,Kit Lee,19:02\n40-49,Jo Lee,17:02\n60+,Gus Ing,21:00\n\nResults\n1,Jo Lee,18:20\n2,Al Roe,18:31\n3,Cy Dee,18:40\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31, Cy Dee 18:40"},
}

// byHandBooks are the same of workbooks, in the form of bookOf.
var byHandBooks = []struct{ name, text, want string }{
	{"tokens on one tab, and a watch on another that names no course", "== Tokens\nAlder Bank|3 January 2026\nToken|Name\n1|Jo Lee\n2|Al Roe\n4|Cy Dee\n== Watch\nPlace|Time\n1|18:20\n2|18:31\n3|18:40\n4|18:42\n", "alder-bank 2026-01-03: Jo Lee -, Al Roe -, Cy Dee -, - 18:20, - 18:31, - 18:40, - 18:42"},
	{"names with marks of who ran a best time, and times", "== Names\nAlder Bank|3 January 2026\nPos|Name|PB?\n1|Jo Lee|PB\n2|Al Roe|\n3|Cy Dee|PB\n== Times\nPos|Time\n1|18:20\n2|18:31\n3|18:40\n", "alder-bank 2026-01-03: Jo Lee -, Al Roe -, Cy Dee -, - 18:20, - 18:31, - 18:40"},
	{"two watches", "== Timer 1\nAlder Bank|3 January 2026\nPos|Time\n1|18:20\n2|18:31\n3|18:40\n== Timer 2\nAlder Bank|3 January 2026\nPos|Time\n1|18:21\n2|18:31\n3|18:41\n== Names\nAlder Bank|3 January 2026\nPos|Name\n1|Jo Lee\n2|Al Roe\n3|Cy Dee\n", "asks two-lists-of-times"},
	{"two chutes that share out the places", "== Chute A\nAlder Bank|3 January 2026\nPos|Time\n1|18:20\n3|18:40\n== Chute B\nAlder Bank|3 January 2026\nPos|Time\n2|18:31\n4|18:42\n", "alder-bank 2026-01-03: - 18:20, - 18:40, - 18:31, - 18:42"},
	{"a tab of runners who were added", "== Results\nAlder Bank|3 January 2026\nName|Time\nJo Lee|18:20\nAl Roe|18:31\nCy Dee|18:40\n== Late entries\nName|Time\nDi Fox|20:08\nEd Gow|21:30\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31, Cy Dee 18:40, Di Fox 20:08, Ed Gow 21:30"},
	{"course and day over the entries only", "== Entries\nAlder Bank 5k|3 January 2026\nNo|Name|Sex\n101|Jo Lee|F\n102|Al Roe|M\n103|Cy Dee|M\n104|Di Fox|F\n== Finish\nPos|No|Time\n1|101|18:20\n2|104|18:31\n3|103|18:40\n", "alder-bank 2026-01-03: Jo Lee 18:20, Di Fox 18:31, Cy Dee 18:40"},
}

func TestByHand(t *testing.T) {
	for _, c := range byHand {
		t.Run(c.name, func(t *testing.T) {
			got := readByHand("x.csv", []byte(c.text))
			if got != c.want {
				t.Errorf("read %q\nwant %q", got, c.want)
			}
		})
	}
	for _, c := range byHandBooks {
		t.Run(c.name, func(t *testing.T) {
			if got := readByHand("x.xlsx", bookOf(t, c.text)); got != c.want {
				t.Errorf("read %q\nwant %q", got, c.want)
			}
		})
	}
}

// readByHand reads a sheet and says what was read in the form of byHand.
func readByHand(file string, data []byte) string {
	s, err := Read(file, data, Options{})
	if err != nil {
		return "refused: " + err.Error()
	}
	var asks, runs []string
	last := ""
	for _, p := range s.Parts {
		for _, q := range p.Problems {
			if q.Severity == place.Waits {
				asks = append(asks, q.Kind)
			}
		}
		name := p.fullNamesAsWritten()
		p.Each(func(_ int, cells []string) error {
			course, day, _, _ := p.RunOf(cells)
			run := course + " " + day.String()
			clock := strings.TrimPrefix(orText(cellAt(cells, p.Index(Time)), "-"), "0:")
			line := orText(name(cells), "-") + " " + clock
			if run != last {
				runs, last = append(runs, run+": "+line), run
			} else {
				runs[len(runs)-1] += ", " + line
			}
			return nil
		}) // the function returns no error
	}
	for _, q := range s.Problems {
		if q.Severity == place.Waits {
			asks = append(asks, q.Kind)
		}
	}
	if len(asks) > 0 {
		return "asks " + strings.Join(asks, " ")
	}
	return strings.Join(runs, "; ")
}

// fullNamesAsWritten gives the name of a line, whether it stands in one column or two.
func (p *Part) fullNamesAsWritten() func(cells []string) string {
	return func(cells []string) string {
		if at := p.Index(Name); at >= 0 {
			return trim(cellAt(cells, at))
		}
		return trim(cellAt(cells, p.Index(GivenName)) + " " + cellAt(cells, p.Index(FamilyName)))
	}
}

// Walkers below a list of children, who ran less, went over the whole distance again; women
// below the men of a second distance did not.
func TestDistanceGoesBack(t *testing.T) {
	for _, c := range []struct {
		text string
		want []int
	}{
		{"Alder Bank 5k,,\n3 January 2026,,\nMEN,,\n1,Al Roe,18:20\n2,Cy Dee,18:31\n3,Ed Gow,18:40\n,,\nCHILDREN (1 mile),,\n1,Kit Lee,7:12\n2,Ben Roe,8:03\n,,\nWALKERS,,\n1,Ida Kay,48:30\n2,Gus Ing,48:31\n", []int{5000, 1609, 5000}},
		{"Alder Bank,,\n3 January 2026,,\n5k,,\n1,Al Roe,18:20\n2,Cy Dee,18:31\n3,Ed Gow,18:40\n10k,,\nMen,,\n1,Hal Job,41:12\n2,Jay Low,42:03\nWomen,,\n1,Ida Kay,48:30\n2,Jo Lee,48:31\n", []int{5000, 10000}},
	} {
		s, err := Read("x.csv", []byte(c.text), Options{})
		if err != nil {
			t.Fatal(err)
		}
		var got []int
		for _, p := range s.Parts {
			got = append(got, p.DistanceM())
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("distances %v, want %v", got, c.want)
		}
	}
}

// Beside a file that is called after its place and day, a line that names neither changes nothing.
func TestLinesOfNoPlace(t *testing.T) {
	for _, line := range []string{"Hollis Road, Kirkham KM4 5QT", "5 km / 3.1 miles", "3.1 miles", "9 o'clock run", "File saved 5.1.26", "Last week: cancelled", "Dates for your diary: 10 Jan, 17 Jan, 24 Jan", "Same course as last week"} {
		got := readByHand("Alder Bank 2026-01-03.csv", []byte("\""+line+"\"\nPos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n"))
		if want := "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31"; got != want {
			t.Errorf("%s: %q", line, got)
		}
	}
}

// Somebody called Max at the end of a list of given and family names is a runner, and no longest time.
func TestGivenNameLikeATotal(t *testing.T) {
	for _, text := range []string{
		"First name,Surname,Time\nJo,Lee,18:20\nAl,Roe,18:31\nMax,Kay,22:41\n", "Club,First name,Surname,Time\nMill AC,Jo,Lee,18:20\nMill AC,Al,Roe,18:31\n,Max,Kay,22:41\n", "Name,Time\nJo Lee,18:20\nAl Roe,18:31\nMax Kay,22:41\n",
	} {
		if got := readByHand("Alder Bank 2026-01-03.csv", []byte(text)); got != "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31, Max Kay 22:41" {
			t.Errorf("%q: %q", text, got)
		}
	}
	if got := readByHand("Alder Bank 2026-01-03.csv", []byte("First name,Surname,Time\nJo,Lee,18:20\nAl,Roe,18:31\nMax,,22:41\nMean,,18:25\n")); got != "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31" {
		t.Errorf("a longest time and a mean: %q", got)
	}
}

// A column of letters for teams holds no clubs, though its heading may; the one beside it does.
func TestTeamsAreLetters(t *testing.T) {
	s, err := Read("Alder Bank 2026-01-03.csv", []byte("Pos,Name,Team,Club,Time\n1,Jo Lee,A,Mill AC,18:20\n2,Al Roe,,Quay AC,18:31\n3,Cy Dee,B,,18:40\n"), Options{})
	if err != nil || s.Parts[0].Index(Club) != 3 {
		t.Errorf("%v %v", err, s.Parts[0].Columns)
	}
	s, err = Read("Alder Bank 2026-01-03.csv", []byte("Pos,Name,Team,Time\n1,Jo Lee,A,18:20\n2,Al Roe,,18:31\n3,Cy Dee,B,18:40\n"), Options{})
	if err != nil || s.Parts[0].Index(Club) >= 0 {
		t.Errorf("%v %v", err, s.Parts[0].Columns)
	}
}

// A row of somebody who left no name or token is a row, where it stands below the heading and where no heading
// stands at all.
func TestRowsOfNobody(t *testing.T) {
	dated := "Date,Event,Position,Token,Name,Run time,Notes\n2026-01-03,Alder Bank,1,813,Jo Lee,17.36,\n2026-01-03,Alder Bank,2,,No name,23.12,,\n2026-01-03,Alder Bank,3,803,Al Roe,23.34,\n"
	bare := "1,Jo Lee,17:36,MV40,Mill AC\n2,no barcode,,,\n3,no barcode,23:12,,\n4,Al Roe,23:34,MV40,Quay AC\n"
	for _, text := range []string{dated, bare} {
		got := strings.ReplaceAll(readByHand("alder-bank-run_3 Jan 2026.csv", []byte(text)), ".", ":")
		if !strings.HasPrefix(got, "alder-bank 2026-01-03: Jo Lee 17:36, ") || !strings.HasSuffix(got, ", Al Roe 23:34") {
			t.Errorf("%q: %q", text, got)
		}
	}
}

// Whom to ring in an emergency did not run.
func TestEmergencyContacts(t *testing.T) {
	got := readByHand("Alder Bank 2026-01-03.csv", []byte("Pos,Runner,Time,ICE name\n1,Jo Lee,18:20,Kit Lee\n2,Al Roe,18:31,Ben Roe\n3,Cy Dee,18:40,Cat Dee\n"))
	if got != "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31, Cy Dee 18:40" {
		t.Error(got)
	}
}

// A street called Close is no day on which something closes, and a saint's name goes on behind the point.
func TestPlacesLikeOtherWords(t *testing.T) {
	for title, want := range map[string]string{"Bluebell Close 5k, 3 January 2026": "bluebell-close", "Sv. Jan 5k, 3 January 2026": "sv-jan", "نتائج Alder Bank 5k, 3 January 2026": "alder-bank"} {
		if got := readByHand("النتائج.csv", []byte("\""+title+"\"\nPos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n")); got != want+" 2026-01-03: Jo Lee 18:20, Al Roe 18:31" {
			t.Errorf("%s: %q", title, got)
		}
	}
	if got := readByHand("Alder Bank 2026-01-03.csv", []byte("Entries close 2 January 2026\nPos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n")); got != "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31" {
		t.Error(got)
	}
}
