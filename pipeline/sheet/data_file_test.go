package sheet

import (
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
