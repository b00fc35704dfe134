package sheet

import (
	"fmt"
	"strconv"
	"strings"

	"github.com/xuri/excelize/v2"

	"lapwing/pipeline/text"
)

// Colours behind the cells of a workbook say something where a line beside the table says what:
// a line in the same colour, or one that names it, "pink = women". Without such a line they say
// nothing.

// fillLimit is how many rows of a tab are looked at for their colour.
const fillLimit = 20000

// colourBehind is the colour of a plain fill as 0xRRGGBB, 0 for none; white is none.
func colourBehind(fill excelize.Fill) uint32 {
	if fill.Type != "pattern" || fill.Pattern != 1 || len(fill.Color) == 0 {
		return 0
	}
	rgb := strings.TrimPrefix(fill.Color[0], "#")
	if len(rgb) == 8 {
		rgb = rgb[2:] // with how much shines through
	}
	v, err := strconv.ParseUint(rgb, 16, 32)
	if err != nil || len(rgb) != 6 || v == 0xffffff {
		return 0
	}
	return uint32(v)
}

// rowFill is the one colour that stands behind the cells of a row in hand, none where they have several.
type rowFill struct {
	colour  uint32
	several bool
}

func (r *rowFill) add(c uint32) {
	r.several = r.several || r.colour != 0 && c != 0 && c != r.colour
	if c != 0 {
		r.colour = c
	}
}

// fill notes the colour of a row.
func (g *grid) fill(row int, r rowFill) {
	if r.colour == 0 || r.several || len(g.pieces.fills) >= fillLimit {
		return
	}
	if g.pieces.fills == nil {
		g.pieces.fills = map[int]uint32{}
	}
	g.pieces.fills[row] = r.colour
}

// fillMeaning is what a line says of a colour.
type fillMeaning struct {
	line, sex, ended string
}

// fillLegend is what lines beside the table say of the colours of its rows, nil where none does.
func (p *Part) fillLegend() map[uint32]fillMeaning {
	whole, ok := p.src.(*grid)
	if !ok || len(whole.pieces.fills) == 0 || !p.Whole || p.Kind == Volunteers {
		return nil
	}
	fills := whole.pieces.fills
	data, used, rows := map[int]bool{}, map[uint32]int{}, 0
	p.Each(func(row int, _ []string) error {
		data[row] = true
		rows++
		if c := fills[row]; c != 0 {
			used[c]++
		}
		return nil
	}) // a grid has no error of its own
	var legend map[uint32]fillMeaning
	learn := func(row int, line string, over bool) {
		colour, means := fills[row], line
		if before, after, ok := strings.Cut(line, "="); ok {
			means = after
			if colour == 0 {
				colour = colourNamed(before, used)
			}
		} else if colour == 0 {
			colour = colourNamed(line, used) // "Rows in yellow ran the short course"
		}
		if colour == 0 || used[colour] == 0 || len(line) > 80 || legend[colour].line != "" {
			return
		}
		m := fillMeaning{line: line}
		folded := fold(means)
		switch sexes := sexesOf(means); {
		case len(sexes) == 1 && len(strings.Fields(folded)) <= 3:
			m.sex = sexes[0].sex
		case over || 3*used[colour] > rows:
			return // a line over rows, or every other row is shaded
		case saysEnded(means), text.AgainstTime(folded, usualDistance/1000), text.MayBear(folded, usualDistance/1000):
			m.ended = trim(means)
		default:
			return
		}
		if legend == nil {
			legend = map[uint32]fillMeaning{}
		}
		legend[colour] = m
	}
	for i := range whole.len() {
		row, cells := whole.at(i)
		if !data[row] && rowFilled(cells) == 1 {
			over := false
			if i+1 < whole.len() {
				next, _ := whole.at(i + 1)
				over = next == row+1 && data[next]
			}
			learn(row, titleText(cells), over)
		}
	}
	return legend
}

// tellByFill adds the sexes that a legend of colours says, where it says both.
func (p *Part) tellByFill(legend map[uint32]fillMeaning) bool {
	men, women := false, false
	line := ""
	for _, m := range legend {
		men, women = men || m.sex == "men", women || m.sex == "women"
		if m.sex == "women" {
			line = m.line
		}
	}
	if !men || !women || p.saysSex() {
		return false
	}
	fills := p.src.(*grid).pieces.fills // of a grid, as there is a legend
	of := map[int]string{}
	p.Each(func(row int, _ []string) error {
		of[row] = legend[fills[row]].sex
		return nil
	})
	p.addSexes(of, fmt.Sprintf("%s (a colour)", line))
	return true
}

// colourNamed is the only one of some colours that a text names, 0 for none: one that is called so or, where none is,
// one that lies beside it, as pink does for who says red.
func colourNamed(name string, used map[uint32]int) uint32 {
	want := ""
	for _, w := range strings.Fields(fold(name)) {
		if c := colourWords[w]; c != "" {
			want = c
		}
	}
	if want == "" {
		return 0
	}
	several := false
	only := func(is func(colour string) bool) uint32 {
		var found uint32
		for c := range used {
			if is(colourOf(c)) {
				if several = found != 0; several {
					return 0
				}
				found = c
			}
		}
		return found
	}
	if c := only(func(colour string) bool { return colour == want }); c != 0 || several {
		return c
	}
	return only(func(colour string) bool { return colourBeside[want] == colour || colourBeside[colour] == want })
}

// colourBeside is the colour that a light or a dark shade of another is called.
var colourBeside = map[string]string{"pink": "red", "orange": "yellow", "purple": "blue"}

// colourOf names a colour by its hue and how light it is; light red is pink.
func colourOf(c uint32) string {
	r, g, b := float64(c>>16&255)/255, float64(c>>8&255)/255, float64(c&255)/255
	hi, lo := max(r, g, b), min(r, g, b)
	light, spread := (hi+lo)/2, hi-lo
	if spread < .08 {
		return "grey"
	}
	hue := 0.0
	switch hi {
	case r:
		hue = 60 * (g - b) / spread
	case g:
		hue = 60*(b-r)/spread + 120
	default:
		hue = 60*(r-g)/spread + 240
	}
	if hue < 0 {
		hue += 360
	}
	switch {
	case (hue < 20 || hue >= 320) && light > .6, hue >= 300 && hue < 345:
		return "pink"
	case hue < 15 || hue >= 345:
		return "red"
	case hue < 45:
		return "orange"
	case hue < 70:
		return "yellow"
	case hue < 170:
		return "green"
	case hue < 260:
		return "blue"
	}
	return "purple"
}

// colourWords are the words for them, folded (common practice, no source).
var colourWords = map[string]string{}

func init() {
	for colour, words := range map[string]string{
		"pink":   "pink rosa rose roze rosado lyserod rozowy rozowe ruzova ruzove pinkki vaaleanpunainen rozsaszin roz ruzicasta розовый рожевий",
		"red":    "red rot rouge rojo rosso vermelho rood rod rott rodt czerwony czerwone cervena cervene punainen piros rosu crvena красный червоний",
		"orange": "orange naranja arancione laranja oranje pomaranczowy oranzova narancs portocaliu narancasta",
		"yellow": "yellow gelb jaune amarillo giallo amarelo geel gul zolty zolte zluta zlute keltainen sarga galben zuta желтый жовтий",
		"green":  "green grun vert verde groen gron zielony zielone zelena zelene vihrea zold зеленый зелений",
		"blue":   "blue blau bleu azul blu blauw bla niebieski niebieskie modra modre sininen kek albastru plava синий голубой синій",
		"grey":   "grey gray grau gris grigio cinzento grijs gra szary siva seda harmaa szurke gri серый сірий",
		"purple": "purple violet lila violett morado viola roxo paars fialova fioletowy lilla",
	} {
		for _, w := range strings.Fields(words) {
			colourWords[fold(w)] = colour
		}
	}
}
