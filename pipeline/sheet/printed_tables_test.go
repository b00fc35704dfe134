package sheet

import (
	"strings"
	"testing"
)

// Tables and records as programs print them.
func TestPrintedByPrograms(t *testing.T) {
	const four = "position 1, name Jo Lee, time 18:20\nposition 2, name Al Rowntree, time 18:31\nposition 3, name Cy Dee, time 18:40\nposition 4, name Di Fox, time 18:42\nposition 5, name Ed Gow, time 18:45\nposition 6, name Flo Hay, time 18:51"
	const three = "position 1, name Jo Lee, time 18:20\nposition 2, name Al Rowntree, time 18:31\nposition 3, name Cy Dee, time 18:40"
	const clubs = "position 1, name Jo Lee, club Mill Runners, time 18:20\nposition 2, name Al Rowntree, club Hollis AC, time 18:31\nposition 3, name Cy Dee, time 18:40\nposition 4, name Di Fox, club Hollis AC, time 18:42\nposition 5, name Ed Gow, time 18:45\nposition 6, name Flo Hay, club Mill Runners, time 18:51"
	for _, c := range []struct{ name, text, want string }{
		{"one space between, below the last letter", `
position        name         club  time
       1      Jo Lee Mill Runners 18:20
       2 Al Rowntree    Hollis AC 18:31
       3      Cy Dee              18:40
       4      Di Fox    Hollis AC 18:42
       5      Ed Gow              18:45
       6     Flo Hay Mill Runners 18:51
`, clubs},
		{"one space between, below the first letter, numbers below the last", `
pos name        club         time
  1 Jo Lee      Mill Runners 18:20
  2 Al Rowntree Hollis AC    18:31
  3 Cy Dee                   18:40
  4 Di Fox      Hollis AC    18:42
  5 Ed Gow                   18:45
  6 Flo Hay     Mill Runners 18:51
`, clubs},
		{"rows counted from 0", `
   time  position         name
0 18:20         1       Jo Lee
1 18:31         2  Al Rowntree
2 18:40         3       Cy Dee
3 18:42         4       Di Fox
4 18:45         5       Ed Gow
5 18:51         6      Flo Hay
`, four},
		{"rows counted from 1, beside the places", `
  time  position name
1 18:20        1 Jo Lee
2 18:31        2 Al Rowntree
3 18:40        3 Cy Dee
4 18:42        4 Di Fox
5 18:45        5 Ed Gow
6 18:51        6 Flo Hay
`, four},
		{"rows counted from 1, the places", `
         name         club  time
1      Jo Lee Mill Runners 18:20
2 Al Rowntree    Hollis AC 18:31
3      Cy Dee              18:40
4      Di Fox    Hollis AC 18:42
5      Ed Gow              18:45
6     Flo Hay Mill Runners 18:51
`, clubs},
		{"the kinds of the columns below their names", `
# 6 rows, 3 columns
   name        club         time
   <chr>       <chr>        <chr>
 1 Jo Lee      Mill Runners 18:20
 2 Al Rowntree Hollis AC    18:31
 3 Cy Dee                   18:40
 4 Di Fox      Hollis AC    18:42
 5 Ed Gow                   18:45
 6 Flo Hay     Mill Runners 18:51
`, clubs},
		{"a rule between the counts and the rows", `
 Row │ time    position  name
     │ String  Int64     String
─────┼───────────────────────────
   1 │ 18:20          1  Jo Lee
   2 │ 18:31          2  Al Rowntree
   3 │ 18:40          3  Cy Dee
   4 │ 18:42          4  Di Fox
   5 │ 18:45          5  Ed Gow
   6 │ 18:51          6  Flo Hay
`, four},
		{"facts a line between numbered rules", `
*************************** 1. row ***************************
place: 1
 name: Jo Lee
 time: 18:20
*************************** 2. row ***************************
place: 2
 name: Al Rowntree
 time: 18:31
*************************** 3. row ***************************
place: 3
 name: Cy Dee
 time: 18:40
3 rows in set
`, three},
		{"facts a line behind bars", "\n-[ RECORD 1 ]--\nplace | 1\nname  | Jo Lee\ntime  | 18:20\n-[ RECORD 2 ]--\nplace | 2\nname  | Al Rowntree\ntime  | 18:31\n-[ RECORD 3 ]--\nplace | 3\nname  | Cy Dee\ntime  | 18:40\n", three},
		{"facts a line in quotes", "\n[[result]]\nplace = 1\nname = \"Jo Lee\"\ntime = \"18:20\"\n\n[[result]]\nplace = 2\nname = \"Al Rowntree\"\ntime = \"18:31\"\n\n[[result]]\nplace = 3\nname = \"Cy Dee\"\ntime = \"18:40\"\n", three},
		{"in braces", "\nresults = [{'place': 1, 'name': 'Jo Lee', 'time': '18:20'},\n {'place': 2, 'name': \"Al Rowntree\", 'time': '18:31'},\n {'place': 3, 'name': 'Cy Dee', 'time': '18:40'}]\n", three},
		{"in braces, keys without quotes", "\n- {place: 1, name: Jo Lee, time: \"18:20\"}\n- {place: 2, name: Al Rowntree, time: \"18:31\"}\n- {place: 3, name: Cy Dee, time: \"18:40\"}\n", three},
		{"statements", "\n-- all of them\nINSERT INTO results (place, name, time) VALUES\n(1, 'Jo Lee', '18:20'),\n(2, 'Al Rowntree', '18:31'),\n(3, 'Cy Dee', '18:40');\n", three},
	} {
		t.Run(c.name, func(t *testing.T) {
			s, err := Read("x.txt", []byte("Alder Bank 5k, 3 January 2026\n"+c.text), Options{})
			if err != nil {
				t.Fatal(err)
			}
			if p := s.Parts[0]; p.Course.Value != "alder-bank" || p.Date.Day.String() != "2026-01-03" {
				t.Errorf("course %q on %s", p.Course.Value, p.Date.Day)
			}
			if got := strings.Join(factsRead(s), "\n"); got != c.want {
				t.Errorf("read as\n%s\nwant\n%s", got, c.want)
			}
		})
	}
}
