package pipeline

import (
	"fmt"
	"slices"
	"sort"

	"lapwing/pipeline/parallel"
	"lapwing/pipeline/place"
	"lapwing/pipeline/record"
	"lapwing/pipeline/unit"
)

// samePersonTwice finds people who stand twice in one run: the same name and
// number, or without numbers the same name, club and age. Both places stay in
// the count of finishers; the second is doubtful. Where the desk has said of one
// that it counts, that one is theirs; where it has said so of both, they are two
// people.
func (f *field) samePersonTwice(desk *lineDecisions, workers int) []storedProblem {
	type who struct {
		run, number, club, part int32
		sex                     uint8
		lo, hi                  unit.Day
		name                    string
	}
	// only names that occur twice in a run are worth a look
	id := f.nameClasses()
	twice := f.namedTwice(id, workers)
	if len(twice) == 0 {
		return nil
	}
	lines := f.linesWhere(workers, func(i int) bool {
		return f.named(i) && !f.settled(i) && twice[uint64(f.run[i])<<32|uint64(id[f.name[i]])]
	})
	sort.Slice(lines, func(a, b int) bool { return f.key[lines[a]] < f.key[lines[b]] })
	first := map[who]int{}
	var out []storedProblem
	for _, line := range lines {
		i := int(line)
		k := who{run: f.run[i], number: f.number[i], name: f.person[f.name[i]].Full}
		if f.number[i] == 0 {
			if namesOnly := f.parts[f.part[i]-1].kind == "names"; (f.birthLo[i] == 0 && f.birthHi[i] == 0 || f.club[i] == 0) && !namesOnly {
				continue // nothing that tells namesakes apart
			} else if namesOnly { // as lines with their times are looked at when their sheet is read
				k.part, k.sex = f.part[i], f.sex[i]
			}
			k.club, k.lo, k.hi = f.club[i], f.birthLo[i], f.birthHi[i]
		}
		j, seen := first[k]
		switch {
		case !seen:
			first[k] = i
			continue
		case desk.counts[i] && desk.counts[j]:
			desk.apart = append(desk.apart, [2]int{i, j})
			continue
		case desk.counts[i], k.part > 0 && !desk.counts[j] && f.position[i] < f.position[j]: // a list of names may have any order
			first[k] = i
			i, j = j, i
		}
		f.sameAs[i] = int32(j)
		told := f.is(i, record.Doubtful) && f.part[i] == f.part[j] && !desk.touched[i] && !desk.touched[j] // when the sheet was read
		if p := f.twice(i, j); !told {
			out = append(out, p)
		}
	}
	return out
}

// namedTwice finds the names, by class, that occur twice in a run: run << 32 | class.
func (f *field) namedTwice(class []int32, workers int) map[uint64]bool {
	// lines by run
	begin := make([]int32, len(f.runs)+1)
	for _, r := range f.run {
		begin[r]++
	}
	for r := range len(f.runs) {
		begin[r+1] += begin[r]
	}
	at := slices.Clone(begin[:len(f.runs)])
	of := make([]int32, f.n)
	for i, r := range f.run {
		of[at[r-1]] = int32(i)
		at[r-1]++
	}
	const piece = 256
	found := make([][]uint64, (len(f.runs)+piece-1)/piece)
	parallel.Each(len(found), workers, func(k int) {
		var names []int32
		for r := k * piece; r < min(len(f.runs), (k+1)*piece); r++ {
			names = names[:0]
			for _, i := range of[begin[r]:begin[r+1]] {
				if f.named(int(i)) && !f.settled(int(i)) {
					names = append(names, class[f.name[i]])
				}
			}
			slices.Sort(names)
			for x := 1; x < len(names); x++ {
				if names[x] == names[x-1] {
					found[k] = append(found[k], uint64(r+1)<<32|uint64(names[x]))
				}
			}
		}
	})
	twice := map[uint64]bool{}
	for _, list := range found {
		for _, k := range list {
			twice[k] = true
		}
	}
	return twice
}

// twice makes line i doubtful because its person stands in the run on line j
// already.
func (f *field) twice(i, j int) storedProblem {
	f.setDoubt(i, record.Doubtful, "the same person stands twice in this run")
	p := f.parts[f.part[i]-1]
	return storedProblem{place.Problem{
		Place: place.Place{Sheet: p.path, Tab: p.tab, Row: int(f.row[i])}, Severity: place.Doubtful, Kind: "person-twice",
		Read:     f.names.list[f.name[i]],
		Expected: fmt.Sprintf("one place a person; also at place %d", f.position[j]),
		Do:       "Ask who crossed the line here. Both places are counted, only the first is theirs.",
	}, p.sheetNo, f.run[i]}
}

// onceARun lets only one line of a runner count in a run. The linker sees to
// that; a person's decision, which wins over it, can put two there.
func (f *field) onceARun(p *people) (out []storedProblem) {
	for r := range p.no {
		lines := p.order[p.begin[r]:p.begin[r+1]]
		for k, i := range lines {
			for b := k - 1; b >= 0 && f.day(int(lines[b])) == f.day(int(i)); b-- {
				if j := lines[b]; f.run[j] == f.run[i] && f.counts[i]&1 != 0 && f.counts[j]&1 != 0 {
					out = append(out, f.twice(int(i), int(j)))
					f.counts[i] &= mayBeChild
				}
			}
		}
	}
	return out
}

// nameClasses numbers the texts of names so that spellings of one full name
// have the same number.
func (f *field) nameClasses() []int32 {
	at := map[string]int32{}
	id := make([]int32, len(f.person))
	for i := range f.person {
		k := f.person[i].Full
		n, ok := at[k]
		if !ok {
			n = int32(len(at))
			at[k] = n
		}
		id[i] = n
	}
	return id
}
