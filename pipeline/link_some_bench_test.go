//go:build unix

package pipeline

import (
	"context"
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"syscall"
	"testing"
	"time"

	"lapwing/pipeline/age"
	"lapwing/pipeline/record"
	"lapwing/pipeline/record/name"
	"lapwing/pipeline/record/who"
	"lapwing/pipeline/unit"
)

// syllables make names up: enough of them for a million runners.
func madeUpName(rng *rand.Rand, parts int) string {
	var b strings.Builder
	for range parts {
		b.WriteString([]string{"b", "d", "f", "g", "h", "k", "l", "m", "n", "p", "r", "s", "t", "v", "w", "br", "st", "th"}[rng.IntN(18)])
		b.WriteString([]string{"a", "e", "i", "o", "u", "ea", "ai"}[rng.IntN(7)])
	}
	return b.String()
}

type madeUpRunner struct {
	given, family, home, club int32
	sex                       uint8
	born                      unit.Day
}

// cpuTime is the processor time that the program has used.
func cpuTime() time.Duration {
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		return 0
	}
	return time.Duration(u.Utime.Nano() + u.Stime.Nano())
}

// BenchmarkNewSheetAmongAMillion finds the runners of a sheet of 300 lines, of
// whom one in ten is misspelt and one in thirty new, in an archive of a million
// runners: what was kept is read from the database, every candidate has ten
// lines.
func BenchmarkNewSheetAmongAMillion(b *testing.B) {
	runners := 1_000_000
	if testing.Short() {
		runners = 100_000
	}
	const courses, clubs, lines = 1700, 5000, 300
	ctx := context.Background()
	pl := openForTest(b, b.TempDir())
	rng := rand.New(rand.NewPCG(401, 1))
	k := &keptLinkage{Lines: 10 * runners, Next: int32(runners) + 1, Decisions: peopleStamp(nil)}
	known := &k.Known
	known.Weights, known.People, known.Signatures, known.Single = who.StartingWeights(), float64(runners)*.7, float64(runners)*1.3, 1e-4
	known.BirthStart = unit.NewDay(1916, 1, 1)
	for m := range 1320 {
		known.Births = append(known.Births, float64(m+1)/1320)
	}
	known.Start = []int32{0}
	for c := range int32(courses) {
		known.RowShare, known.PeopleShare = append(known.RowShare, 1./courses), append(known.PeopleShare, 2./courses)
		known.CourseLevel, known.Clubbed, known.Unsure = append(known.CourseLevel, 7_350_000), append(known.Clubbed, true), append(known.Unsure, false)
		for d := max(0, c-6); d < min(courses, c+7); d++ {
			known.Other = append(known.Other, d)
			known.RowCount, known.PeopleCount = append(known.RowCount, 20), append(known.PeopleCount, 40)
		}
		known.Start = append(known.Start, int32(len(known.Other)))
	}
	known.RowTotal, known.PeopleTotal = 3e6, 3e5
	known.Clubs = make([]float32, clubs)
	for c := range known.Clubs {
		known.Clubs[c] = 1. / clubs
		k.Clubs = append(k.Clubs, fmt.Sprintf("Club %d", c))
	}
	list := func(n, syllables int) (out []who.Name) {
		seen := map[string]bool{}
		for len(seen) < n {
			seen[madeUpName(rng, syllables)] = true
		}
		texts := make([]string, 0, n)
		for s := range seen {
			texts = append(texts, s)
		}
		slices.Sort(texts)
		for i, s := range texts {
			out = append(out, who.Name{Text: s, No: int32(i), Mass: 1e-7, Rare: 1e-7, Slip: 1e-6, Double: 1e-7, AsRead: 1})
		}
		return out
	}
	given, family := list(20_000, 3), list(150_000, 4)
	k.Parts = [2]int32{int32(len(given)), int32(len(family))}
	common := func(n int) int32 { // a few are very common
		x := rng.Float64()
		return int32(float64(n) * x * x * x)
	}
	people := make([]madeUpRunner, runners)
	var spellings []who.Spelling
	for r := range people {
		x := madeUpRunner{given: common(len(given)), family: common(len(family)), home: int32(rng.IntN(courses)), club: int32(rng.IntN(clubs)),
			sex: uint8(1 + rng.IntN(2)), born: unit.NewDay(1940+rng.IntN(75), 1, 1) + unit.Day(rng.IntN(365))}
		people[r] = x
		given[x.given].Mass += 1 / known.Signatures
		family[x.family].Mass += 1 / known.Signatures
		spellings = append(spellings, who.Spelling{Runner: int32(r + 1), Given: x.given, Family: x.family, Course: x.home + 1})
		for range rng.IntN(3) {
			spellings = append(spellings, who.Spelling{Runner: int32(r + 1), Given: x.given, Family: x.family, Course: (x.home+int32(rng.IntN(6)))%courses + 1})
		}
	}
	began, used := time.Now(), cpuTime()
	for part, l := range [2][]who.Name{given, family} {
		if err := pl.insertNameParts(ctx, part, l); err != nil {
			b.Fatal(err)
		}
	}
	if err := pl.insertSpellings(ctx, spellings); err != nil {
		b.Fatal(err)
	}
	if err := pl.insertRows(ctx, "record.runner_number", runnerNumberSchema, runners, func(r row, i int) {
		r.ints(0, int32(i+1))
		r.texts(1, itoa(int32(1_000_000+7*i)))
	}); err != nil {
		b.Fatal(err)
	}
	if err := pl.writeLinked(ctx, k); err != nil {
		b.Fatal(err)
	}
	b.Logf("%d spellings; written in %.2f s, %.2f s of processor time", len(spellings), time.Since(began).Seconds(), (cpuTime() - used).Seconds())

	day := unit.NewDay(2026, 10, 31)
	line := func(f *field, x *madeUpRunner, runner, course, run int32, text string, number int32) {
		i := f.n
		f.n++
		on := f.runs[run].day
		a := age.On(x.born, on)
		w := age.OfAges(a, a, on)
		f.lineNo, f.key = append(f.lineNo, int32(i)), append(f.key, int64(i))
		f.run, f.runner, f.timeMS = append(f.run, run+1), append(f.runner, runner), append(f.timeMS, int32(1_200_000+rng.IntN(900_000)))
		f.name, f.club = append(f.name, f.addName(text)), append(f.club, f.clubs.number(k.Clubs[x.club]))
		no := int32(0)
		if number > 0 {
			no = f.numbers.number(itoa(1_000_000 + 7*(number-1)))
		}
		f.number = append(f.number, no)
		f.sex, f.basis, f.takingPart, f.status = append(f.sex, x.sex), append(f.basis, 0), append(f.takingPart, 0), append(f.status, uint8(record.OK))
		f.birthLo, f.birthHi = append(f.birthLo, w.Lo), append(f.birthHi, w.Hi)
		f.sameAs, f.part, f.row = append(f.sameAs, -1), append(f.part, 1), append(f.row, int32(i))
	}
	text := func(x *madeUpRunner) string { return given[x.given].Text + " " + family[x.family].Text }
	empty := func() *field {
		f := &field{names: newTexts(), numbers: newTexts(), clubs: newTexts(), doubts: newTexts(), person: []name.Name{{Unnamed: true}},
			parts: []partInfo{{no: 1, sheetNo: 1}}}
		for c := range int32(courses) {
			f.courses = append(f.courses, courseInfo{no: c + 1, distanceM: 5000})
		}
		for w := range int32(11) {
			for c := range int32(courses) {
				f.runs = append(f.runs, runInfo{no: w*courses + c + 1, course: c + 1, day: day - unit.Day(7*(10-w)), distanceM: 5000})
			}
		}
		return f
	}
	fresh := func(f *field, numbers bool) []int32 {
		course := int32(rng.IntN(courses))
		var at []int32
		for i := 0; len(at) < lines; i++ {
			r := int32(rng.IntN(runners))
			x := people[r]
			if d := x.home - course; len(at)%10 < 9 && (d < 0 || d > 0) { // mostly regulars
				for people[r].home != course {
					r = (r + 1) % int32(runners)
				}
				x = people[r]
			}
			s := text(&x)
			switch rng.IntN(30) {
			case 0, 1, 2:
				s = s[:len(s)-2] + "q" + s[len(s)-1:]
			case 3:
				s = madeUpName(rng, 3) + " " + madeUpName(rng, 4)
			}
			no := int32(0)
			if numbers {
				no = r + 1
			}
			at = append(at, int32(f.n))
			line(f, &x, 0, course, 10*courses+course, s, no)
		}
		return at
	}
	for _, numbers := range []bool{false, true} {
		b.Run(fmt.Sprintf("numbers=%v", numbers), func(b *testing.B) {
			var found, weighed, slowest, cpu time.Duration
			candidates, rounds := 0, 0
			for b.Loop() {
				b.StopTimer()
				f := empty()
				at := fresh(f, numbers)
				b.StartTimer()
				began, used := time.Now(), cpuTime()
				kept, cs, err := pl.candidateRunners(ctx, f, at, nil)
				if err != nil || kept == nil {
					b.Fatal(err)
				}
				took := time.Since(began)
				cpu += cpuTime() - used
				b.StopTimer()
				for _, c := range cs {
					x := &people[c-1]
					for w := range int32(10) {
						no := int32(0)
						if numbers {
							no = c
						}
						line(f, x, c, x.home, w*courses+x.home, text(x), no)
					}
				}
				b.StartTimer()
				began, used = time.Now(), cpuTime()
				if ok, err := pl.linkSome(ctx, &work{field: f, desk: &lineDecisions{}}, kept, at); err != nil || !ok {
					b.Fatalf("%v %v", ok, err)
				}
				cpu += cpuTime() - used
				found, weighed = found+took, weighed+time.Since(began)
				slowest = max(slowest, took+time.Since(began))
				candidates += len(cs)
				rounds++
			}
			b.ReportMetric(found.Seconds()*1000/float64(rounds), "ms-candidates")
			b.ReportMetric(weighed.Seconds()*1000/float64(rounds), "ms-weighing")
			b.ReportMetric(slowest.Seconds()*1000, "ms-slowest")
			b.ReportMetric(cpu.Seconds()*1000/float64(rounds), "cpu-ms")
			b.ReportMetric(float64(candidates)/float64(rounds), "candidates")
		})
	}
}
