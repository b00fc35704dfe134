package pipeline

import "strings"

// wholeSeconds says whether no time of a part has a fraction of a second.
func (f *field) wholeSeconds(s *issue) bool {
	for _, i := range s.lines {
		if f.timeMS[i]%1000 != 0 {
			return false
		}
	}
	return true
}

// sameButRounded finds, for lines of a later part in whole seconds, the lines of an
// earlier part in fractions that have the same place and person, and a time less
// than a second away. It fills same, and returns how many it found.
func (f *field) sameButRounded(later *issue, same []int, people map[string]int) (found int) {
	for n, i := range later.lines {
		k := f.lineKey(i)
		if j, ok := people[k.person]; same[n] < 0 && ok && k.person != "" && f.position[j] == k.position && f.sameTime(i, j, true) {
			same[n] = j
			found++
		}
	}
	return found
}

// sameButShorter finds, for lines of a later part, the lines of an earlier part that
// have the same place and time, and the same name but for a given name that is an
// initial or left out on the later. It fills same, and returns how many it found.
func (f *field) sameButShorter(later *issue, same []int, places map[int32]int, rounded bool) (found int) {
	for n, i := range later.lines {
		j, ok := places[f.position[i]]
		if same[n] >= 0 || !ok || f.position[i] == 0 || f.timeMS[i] <= 0 || !f.sameTime(i, j, rounded) {
			continue
		}
		short, full := &f.person[f.name[i]], &f.person[f.name[j]]
		if short.Family != "" && short.Family == full.Family && len(short.Given) < 2 && len(full.Given) > 1 && strings.HasPrefix(full.Given, short.Given) {
			same[n] = j
			found++
		}
	}
	return found
}

// sameTime says whether two lines have the same time; rounded, where one of them is
// in whole seconds and the other not.
func (f *field) sameTime(i, j int, rounded bool) bool {
	apart := f.timeMS[i] - f.timeMS[j]
	return apart == 0 || rounded && f.timeMS[i] > 0 && f.timeMS[j] > 0 && apart > -sameTimeMS && apart < sameTimeMS
}

// samePersonAndTime finds the lines of a later part that say the same as one of the
// earlier, but for the place: by index of the later line, the line of the earlier.
// nil where two of them would be the same.
func (f *field) samePersonAndTime(later *issue, same []int, people map[string]int, rounded bool) map[int]int {
	out, taken := map[int]int{}, map[int]bool{}
	for n, i := range later.lines {
		if same[n] >= 0 {
			taken[same[n]] = true
		}
		k := f.lineKey(i)
		if j, ok := people[k.person]; same[n] < 0 && ok && k.person != "" && f.timeMS[i] > 0 && f.sameTime(i, j, rounded) {
			if taken[j] {
				return nil
			}
			taken[j] = true
			out[n] = j
		}
	}
	return out
}

// isSelection says of a part all of whose people stand with the same times on an
// earlier one that it is some of these, with places of their own: the women, the
// juniors, a club. A corrected sheet lacks one or two, whoever they are; a quarter of
// the field, or all of the other sex, is no correction. Common practice, no source.
func (f *field) isSelection(later, earlier *issue) bool {
	if later.part.kind == fullByHand || mended(earlier, later) || len(later.lines) >= len(earlier.lines) {
		return false
	}
	if 4*len(later.lines) <= 3*len(earlier.lines) {
		return true
	}
	var there, here [4]int
	for _, i := range earlier.lines {
		there[f.sex[i]&3]++
	}
	for _, i := range later.lines {
		here[f.sex[i]&3]++
	}
	for sex := 1; sex < 4; sex++ {
		if here[sex] == len(later.lines) && there[sex] == here[sex] && there[0] == 0 {
			return true
		}
	}
	return false
}
