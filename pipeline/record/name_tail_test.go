package record

import (
	"fmt"
	"strings"
	"testing"
)

// What stands behind names or times says sexes and ages in whatever letters and words; notes,
// runners' numbers and letters of which the sheet has one only say nothing.
func TestBehindNames(t *testing.T) {
	for _, k := range []struct {
		heading, names string
		want           string // name, sex and age of the first two
	}{
		{"Jméno", "Eva Malá (Ž)|Jan Velký (M)|Ota Suk (M)|Ida Par (Ž)", "Eva Malá,W,|Jan Velký,M,"},
		{"Nombre", "Luz Paz (M)|Joel Rey (H)|Raul Sol (H)|Ana Vid (M)", "Luz Paz,W,|Joel Rey,M,"},
		{"Bėgikas", "Rita Auga (M)|Jonas Ves (V)|Petras Oba (V)|Ona Lapė (M)", "Rita Auga,W,|Jonas Ves,M,"},
		{"Δρομέας", "Ελένη Μακρή (Γ)|Νίκος Βλάχος (Α)|Σπύρος Λιάπης (Α)", "Ελένη Μακρή,W,|Νίκος Βλάχος,M,"},
		{"Rhedwr", "Nia Puw (M)|Rhys Ebbw (D)|Iolo Rees (D)|Mair Gethin (M)", "Nia Puw,W,|Rhys Ebbw,M,"},
		{"Name", "Ann Fox (F, 42)|Bob Gow (M, 37)|Cy Dee (M, 63)", "Ann Fox,W,42|Bob Gow,M,37"},
		{"Name", "Ann Fox (42, f)|Bob Gow (37, m)|Cy Dee (63, m)", "Ann Fox,W,42|Bob Gow,M,37"},
		{"Name", "Ann Fox, aged 42|Bob Gow|Cy Dee", "Ann Fox,,42|Bob Gow,,"},
		{"Coureur", "Ann Fox (42 ans)|Bob Gow (37 ans)", "Ann Fox,,42|Bob Gow,,37"},
		{"Jméno", "Eva Malá, 42 let|Jan Velký, 37 let", "Eva Malá,,42|Jan Velký,,37"},
		{"Corredor", "Luz Paz (nacida en 1983)|Joel Rey (nacido en 1988)", "Luz Paz,,43|Joel Rey,,38"},
		{"Namn", "Ann Fox '83|Bob Gow '88|Cy Dee '62|Di Elm '71", "Ann Fox,,43|Bob Gow,,38"},
		{"Name", "Ann Fox (03.11.1983)|Bob Gow (17.05.1988)|Cy Dee (21.02.1962)", "Ann Fox,,42|Bob Gow,,37"},
		// one group behind all names is a group, and no age
		{"Name", "Ann Fox (U18)|Bob Gow (U18)|Cy Dee (U18)|Di Elm (U18)", "Ann Fox,,17|Bob Gow,,17"},
		{"Name", "Ann Fox (W40)|Bea Gow (W40)|Cy Dee (W40)|Di Elm (W40)", "Ann Fox,W,44|Bea Gow,W,44"},
		{"Name", "Ann Fox U18|Bob Gow U18|Cy Dee U18|Di Elm U18", "Ann Fox,,17|Bob Gow,,17"},
		// few ages, and those of somebody who is not named
		{"Name", "Ann Fox (56)|Bob Gow (22)|Cy Dee (71)|Di Elm (46)|Ed Gow (17)|Unknown", "Ann Fox,,56|Bob Gow,,22"},
		{"Nombre", "Sr. Joel Rey|Sr. Raul Sol|Sr. Ivo Mar|Sr. Leo Paz|Desconocido", "Joel Rey,M,|Raul Sol,M,"},
		// counter-examples
		{"Name", "Ann Fox (41)|Bob Gow (42)|Cy Dee (43)|Di Elm (44)|Ed Gow (45)", "Ann Fox,,|Bob Gow,,"},
		{"Name", "Ann Fox (3)|Bob Gow (112)|Cy Dee (43)|Di Elm (14)|Ed Gow (85)", "Ann Fox,,|Bob Gow,,"},
		{"Name", "Ann Fox (27.12.2025)|Bob Gow (20.12.2025)|Cy Dee (27.12.2025)", "Ann Fox,,|Bob Gow,,"},
		{"Name", "Ann Fox (C)|Bob Gow (C)|Cy Dee (C)|Di Elm (C)", "Ann Fox,,|Bob Gow,,"},
		{"Name", "Ann Fox (K)|Bob Gow (K)|Cy Dee (K)|Di Elm (K)", "Ann Fox,,|Bob Gow,,"},
		{"Name", "Ann Fox (10th run)|Bob Gow (first time)|Cy Dee", "Ann Fox,,|Bob Gow,,"},
		{"Name", "Ann Fox (A, 1)|Bob Gow (B, 2)|Cy Dee (A, 3)", "Ann Fox,,|Bob Gow,,"},
		{"Name", "Fox, Ann|Gow, Bob|Dee, Cy", "Fox, Ann,,|Gow, Bob,,"},
		{"Name", "Mr Jo Lee|Mrs Ann Page|Miss Di Fox|Mr Ed Gow", "Jo Lee,M,|Ann Page,W,"},
		{"Nom", "M. Luc Roy|Mme Zoé Pin|Mlle Eva Bas|M. Guy Val", "Luc Roy,M,|Zoé Pin,W,"},
		{"Jméno", "p. Jan Velký|paní Eva Malá|slečna Ida Pár|p. Ota Suk", "Jan Velký,M,|Eva Malá,W,"},
		{"Ime", "Gospodin Ivo Kos|Gđa Ana Car|Gospođa Eva Mak|Gosp. Jan Bor", "Ivo Kos,M,|Ana Car,W,"},
		{"Name", "M. Roy|P. Pin|Eva Bas|Guy Val", "M. Roy,,|P. Pin,,"},
	} {
		c := NoColumns()
		c.Position, c.Name, c.Time = 0, 1, 2
		lines, _ := readRows(t, c, []string{"Pos", k.heading, map[string]string{"Bėgikas": "Laikas", "Rhedwr": "Amser"}[k.heading]}, Options{}, func(yield func([]string)) {
			for i, n := range strings.Split(k.names, "|") {
				yield([]string{fmt.Sprint(i + 1), n, fmt.Sprintf("%d:%02d", 20+i, i)})
			}
		})
		var got []string
		for _, l := range lines[:2] {
			years := ""
			if _, to, ok := l.Birth.On(raceDay); ok {
				years = fmt.Sprint(to)
			}
			name := l.Name
			if i := strings.IndexByte(name, '('); i > 0 {
				name = trim(name[:i])
			}
			got = append(got, name+","+l.Sex.String()+","+years)
		}
		if g := strings.Join(got, "|"); g != k.want {
			t.Errorf("%s: %s, want %s", k.names, g, k.want)
		}
	}
}

// Sexes in brackets behind the times.
func TestSexBehindTime(t *testing.T) {
	c := NoColumns()
	c.Position, c.Name, c.Time = 0, 1, 2
	for marks, want := range map[string]string{"Ž M M Ž": "W M M W", "F M M F": "W M M W", "C C C C": "   "} {
		lines, _ := readRows(t, c, nil, Options{}, func(yield func([]string)) {
			for i, m := range strings.Fields(marks) {
				yield([]string{fmt.Sprint(i + 1), fmt.Sprintf("Ada Brook%c", 'a'+i), fmt.Sprintf("%d:%02d (%s)", 20+i, i, m)})
			}
		})
		var got []string
		for _, l := range lines {
			got = append(got, l.Sex.String())
		}
		if g := strings.Join(got, " "); g != want {
			t.Errorf("%s: %q, want %q", marks, g, want)
		}
	}
}

// Places of all runners with the sex behind them, and places among men and women, which are not.
func TestPlacesWithSexBehind(t *testing.T) {
	c := NoColumns()
	c.Position, c.Name, c.Time = 0, 1, 2
	for places, want := range map[string]string{"1M 2W 3M 4W": "1M 2W 3M 4W", "1M 2M 3M 4M": "0 0 0 0", "1A 2B 3A 4B": "0 0 0 0", "1D 2H 3H 4D": "1W 2M 3M 4W", "1M 1W 2M 2W": "0 0 0 0"} {
		lines, _ := readRows(t, c, nil, Options{}, func(yield func([]string)) {
			for i, p := range strings.Fields(places) {
				yield([]string{p, fmt.Sprintf("Ada Brook%c", 'a'+i), fmt.Sprintf("%d:%02d", 20+i, i)})
			}
		})
		var got []string
		for _, l := range lines {
			got = append(got, fmt.Sprint(l.Position)+l.Sex.String())
		}
		if g := strings.Join(got, " "); g != want {
			t.Errorf("%s: %q, want %q", places, g, want)
		}
	}
}
