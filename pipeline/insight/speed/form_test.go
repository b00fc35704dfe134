package speed

import (
	"math"
	"slices"
	"testing"
)

// formCoverage is the share of runners whose 90 % interval of form holds the
// truth, less the common offset, by number of results; and how often a claim
// of a change is right.
type formCoverage struct {
	few, many, change float64
	improved          int
	right             float64 // of those said to be improved or improving
	level             int
	levelRight        float64 // of those said to be level within 2 %
	wrongWay          float64 // said to be faster though over 1 % slower
}

func (tr *truth) judgeForm(in *Input, m *Model) formCoverage {
	var c formCoverage
	var off []float64
	for r, f := range m.Form {
		if f.Results >= 10 {
			off = append(off, f.Log-tr.ability[in.Offsets[r+1]-1])
		}
	}
	slices.Sort(off)
	offset := off[len(off)/2]
	var nFew, nMany, nChange float64
	for r, f := range m.Form {
		last := in.Offsets[r+1] - 1
		in90 := 0.0
		if math.Abs(f.Log-offset-tr.ability[last]) <= z90*f.SD {
			in90 = 1
		}
		switch {
		case f.Results >= 20:
			c.many += in90
			nMany++
		case f.Results >= 3 && f.Results < 20:
			c.few += in90
			nFew++
		}
		if !f.HasChange || f.Before < fewestEachSide || f.Within < fewestEachSide {
			continue
		}
		i := last - f.Within
		change := tr.ability[last] - tr.ability[i]
		nChange++
		if math.Abs(f.Change-change) <= z90*f.ChangeSD {
			c.change++
		}
		switch f.Trend() {
		case Improved, Improving:
			c.improved++
			if change < 0 {
				c.right++
			}
			if change > .01 {
				c.wrongWay++
			}
		case Level:
			c.level++
			if math.Abs(change) < levelBand {
				c.levelRight++
			}
		}
	}
	c.few, c.many, c.change = c.few/nFew, c.many/nMany, c.change/nChange
	c.right /= float64(c.improved)
	c.wrongWay /= float64(c.improved)
	c.levelRight /= float64(c.level)
	return c
}

// checkBands wants the band of form along every runner's results to hold the
// truth, less a common offset, and to end at the form of today.
func (tr *truth) checkBands(t *testing.T, in *Input, m *Model) {
	t.Helper()
	var off, reach []float64
	var figures []Figure
	for r, f := range m.Form {
		figures = m.Figures(r, figures)
		for k, g := range figures {
			form, low, high, ok := g.FormBand()
			if ok != (g.FormSD <= formSD) || !(low < form && form < high) || math.Abs(form-Seconds(g.Form, referenceM)) > 1e-9 {
				t.Fatalf("band %g (%g to %g), %v of form %g ± %g", form, low, high, ok, g.Form, g.FormSD)
			}
			if ok {
				off = append(off, g.Form-tr.ability[int(in.Offsets[r])+k])
				reach = append(reach, math.Log(high/form))
			}
		}
		if g := figures[len(figures)-1]; g.Form != f.Log || g.FormSD != f.SD {
			t.Fatalf("form %+v, at the last result %+v", f, g)
		}
	}
	offset := slices.Sorted(slices.Values(off))[len(off)/2]
	held := 0.
	for i, e := range off {
		if math.Abs(e-offset) <= reach[i] {
			held++
		}
	}
	share := held / float64(len(off))
	t.Logf("bands shown at %d of %d results hold %.3f", len(off), len(in.Run), share)
	if len(off) < len(in.Run)/2 || share < .85 || share > .99 {
		t.Errorf("bands of form, at %d of %d results, hold %.3f", len(off), len(in.Run), share)
	}
}

func TestFormIntervalsAndClaims(t *testing.T) {
	d := district{world: base, courses: 20, runners: 4000, weeks: 150, results: 90000, seed: 7}
	in, tr := d.simulate()
	m := mustFit(t, in)
	c := tr.judgeForm(in, m)
	tr.checkBands(t, in, m)
	t.Logf("%+v", c)
	for name, share := range map[string]float64{"3-19 results": c.few, "20 or more": c.many, "change over 12 weeks": c.change} {
		if share < .85 || share > .99 {
			t.Errorf("90 %% interval, %s, covers %.3f", name, share)
		}
	}
	if c.improved < 30 || c.right < .8 || c.wrongWay > .05 {
		t.Errorf("%d said to be improving, %.2f right, %.3f over 1 %% slower", c.improved, c.right, c.wrongWay)
	}
	if c.level < 30 || c.levelRight < .8 {
		t.Errorf("%d said to be level, %.2f right", c.level, c.levelRight)
	}
}
