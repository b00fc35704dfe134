package sheet

import (
	"testing"
)

// Courses and days that stand in the headings of one table, or over its lists: of every list the run.
func TestCoursesOverColumns(t *testing.T) {
	const rows = "Jo Lee,18:20,18:31,18:25\nAl Roe,19:20,19:31,19:25\nCy Dee,20:20,20:31,20:25\n"
	for _, c := range []struct {
		name, text string
		want       []string
	}{
		{"courses in the heading over their days, and a column of bests", "Vale RC 5k Championship 2025\nMember,Oak Hollow,Elder Knoll,Sandy Spit,Best\n,12/04/25,14/06/25,13/09/25,\nJo Lee,18:20,18:31,18:25,18:20\nAl Roe,19:20,19:31,19:25,19:20\nCy Dee,20:20,20:31,20:25,20:20\n",
			[]string{"oak-hollow 2025-04-12", "elder-knoll 2025-06-14", "sandy-spit 2025-09-13"}},
		{"courses in the heading below their days", "Series 2025\n,12 April 2025,14 June 2025,13 September 2025\nRunner,Oak Hollow,Elder Knoll,Sandy Spit\n" + rows,
			[]string{"oak-hollow 2025-04-12", "elder-knoll 2025-06-14", "sandy-spit 2025-09-13"}},
		{"kinds of races under their days, on a course that the title names", "Alder Bank 5k, summer 2025\n,12 April 2025,14 June 2025,13 September 2025\nRunner,Spring Handicap,Time Trial,Autumn Pairs\n" + rows,
			[]string{"alder-bank 2025-04-12", "alder-bank 2025-06-14", "alder-bank 2025-09-13"}},
		{"places of a club's people at runs that do not begin with the first", "Tarn AC weekend results, Saturday 1 November 2025\n\nOak Hollow 5k\n3 Jo Lee 17:15\n12 Al Roe 22:46\n21 Cy Dee 30:56\n\nSandy Spit 5k\n6 Di Fox 19:33\n15 Ed Gow 24:05\n24 Flo Hay 32:07\n\nTarn Side 5k\n9 Gus Orr 20:13\n18 Hal Ives 27:29\n27 Ida Kerr 32:55\n",
			[]string{"oak-hollow 2025-11-01", "sandy-spit 2025-11-01", "tarn-side 2025-11-01"}},
		{"three lists without places, each under its course", "Our runners on Saturday 1 November 2025, all 5k\n\nOak Hollow\nJo Lee 20:03\nAl Roe 23:08\nCy Dee 31:49\n\nElder Knoll\nDi Fox 20:28\nEd Gow 25:34\nFlo Hay 35:47\n\nSandy Spit\nGus Orr 22:49\nHal Ives 27:20\nIda Kerr 41:20\n", []string{"oak-hollow 2025-11-01", "elder-knoll 2025-11-01", "sandy-spit 2025-11-01"}},
		{"a line for each course", "Our runners on Saturday 1 November 2025, all 5k\n\nOak Hollow: Jo Lee 20:03, Al Roe 23:08, Cy Dee 31:49\nElder Knoll: Di Fox 20:28, Ed Gow 25:34, Flo Hay 35:47\n", []string{"oak-hollow 2025-11-01", "elder-knoll 2025-11-01"}},
		{"clubs over their people in one run", "Alder Bank results, Saturday 1 November 2025\n\nTarn AC 5k\n3 Jo Lee 17:15\n12 Al Roe 22:46\n21 Cy Dee 30:56\n\nVale Striders 5k\n6 Di Fox 19:33\n15 Ed Gow 24:05\n24 Flo Hay 32:07\n",
			[]string{"alder-bank 2025-11-01"}},
		{"weekdays under a title with both days, as columns", "Festival Field 5k, 7-8 June 2025\nName,Sat,Sun\nJo Lee,18:20,18:22\nAl Roe,18:31,18:44\nCy Dee,18:40,18:59\n", []string{"festival-field 2025-06-07", "festival-field 2025-06-08"}},
		{"the same, as lines", "Festival Field 5k, 7-8 June 2025\nSaturday\nPos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n3,Cy Dee,18:40\nSunday\nPos,Name,Time\n1,Di Fox,18:22\n2,Ed Gow,18:33\n3,Flo Hay,18:44\n", []string{"festival-field 2025-06-07", "festival-field 2025-06-08"}},
		{"the same, as a column", "Festival Field 5k, 7-8 June 2025\nDay,Pos,Name,Time\nSun,1,Jo Lee,18:20\nSun,2,Al Roe,18:31\nSun,3,Cy Dee,18:40\nSat,1,Di Fox,18:22\nSat,2,Ed Gow,18:33\nSat,3,Flo Hay,18:44\n", []string{"festival-field 2025-06-08"}},
		{"days of a series between its first and its last", "Alder Bank summer series, 7-28 June 2025\nName,7 June,14 June,28 June\n" + rows, []string{"alder-bank 2025-06-07", "alder-bank 2025-06-14", "alder-bank 2025-06-28"}},
	} {
		wantRuns(t, c.name, "x.csv", c.text, c.want)
	}
}
