package record

import (
	"fmt"
	"math"
	"strings"

	"lapwing/pipeline/place"
)

// describe says how the column is read, and why.
func (k *clockColumn) describe() (means, why string) {
	var ms, ws []string
	for i := range k.families {
		f := &k.families[i]
		if f.n == 0 {
			continue
		}
		ms = append(ms, clockReadings[f.reading].means)
		ws = append(ws, fmt.Sprintf("%d like %q%s", f.n, f.example, k.because(f)))
	}
	if k.exact > 0 {
		ms = append(ms, "times that name their units")
		ws = append(ws, fmt.Sprintf("%d with units", k.exact))
	}
	if k.blank > 0 {
		ws = append(ws, fmt.Sprintf("%d without a time", k.blank))
	}
	if k.unclear > 0 {
		ws = append(ws, fmt.Sprintf("%d not understood", k.unclear))
	}
	if len(ms) == 0 {
		return "no running time found", strings.Join(ws, "; ")
	}
	return "running time: " + strings.Join(ms, "; "), strings.Join(ws, "; ")
}

// because names the evidence against the next best reading.
func (k *clockColumn) because(f *family) string {
	if f.runnerUp == unread {
		if math.IsInf(f.margin, 1) {
			return ", as answered"
		}
		return ""
	}
	for i, r := range readingsOf(f.shape) {
		if r != f.runnerUp {
			continue
		}
		if f.lent != nil && f.misfits[i] == 0 && f.lent[i] <= -asBefore/2 {
			return "; as in the like column of this sheet"
		}
		if f.misfits[i] > 0 {
			if f.misfits[i] == f.n {
				return fmt.Sprintf("; they can't be %s", r.plain())
			}
			return fmt.Sprintf("; %d of them can't be %s", f.misfits[i], r.plain())
		}
	}
	return fmt.Sprintf("; read as %s they would look less like running times of this distance", f.runnerUp.plain())
}

// plain is how a reading is put to a person, without its example.
func (r clockReading) plain() string {
	words, _, _ := strings.Cut(clockReadings[r].means, " (")
	return words
}

// askBelow is the log odds under which a person is asked: 20 to 1.
const askBelow = 3

// answer is what would have to be answered for most cells to be read as they
// are.
func (k *clockColumn) answer() string {
	most := -1
	for i := range k.families {
		if f := &k.families[i]; f.n > 0 && f.runnerUp != unread && (most < 0 || f.n > k.families[most].n) {
			most = i
		}
	}
	if most < 0 {
		return ""
	}
	return "time=" + clockReadings[k.families[most].reading].name
}

// questions asks about a column of times that can be read in two ways, or in
// none that fits the distance.
func (k *clockColumn) questions(index int, ask asker) {
	all := k.all()
	for i := range k.families {
		f := &k.families[i]
		if f.n == 0 || f.runnerUp == unread || k.stray(f) {
			continue
		}
		a, b := clockReadings[f.reading], clockReadings[f.runnerUp]
		if f.margin < askBelow {
			question := "How are the times written?"
			if f.sampled < all {
				question = fmt.Sprintf("How are times like this one written? There are %d of them among %d.", f.sampled, all)
			}
			ask(index, place.Waits, "time-column-unclear", f.example, fmt.Sprintf("%s, or %s", a.means, b.means),
				question, fmt.Sprintf("--answer \"time=%s\"", a.name), fmt.Sprintf("--answer \"time=%s\"", b.name))
			return
		}
		for j, r := range readingsOf(f.shape) {
			// Walkers' hours among minutes and seconds fit well enough.
			if r == f.reading && f.sampled >= 5 && 2*f.sampled > all && f.score[j] < 0.9*implausible*float64(f.sampled) {
				ask(index, place.Waits, "times-do-not-fit-distance", f.example, "running times of this distance", "Which distance was it? If it is right, another column holds the time, or none does", `--distance "NUMBER km"`)
				return
			}
		}
	}
}
