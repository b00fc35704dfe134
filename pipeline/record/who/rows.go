package who

import (
	"context"
	"fmt"
	"runtime"

	"lapwing/pipeline/record/name"
	"lapwing/pipeline/unit"
)

// Sex codes of Rows.Sex.
const (
	SexNotGiven uint8 = iota
	SexM
	SexW
	SexX
)

// Rows are the named result lines as columns of equal length n, in any order.
// Ids are labels: equal or not, their order means nothing.
type Rows struct {
	Key    []int64 // unique, the same after every rebuild; gives the total order
	Name   []int32 // index into the names given to Link
	Number []int32 // 0 none, else label of the runner's number
	Sex    []uint8 // SexNotGiven, SexM, SexW, SexX
	Club   []int32 // label, 0 blank
	Course []int32 // label, from 0
	Run    []int32 // label, from 0
	Series []int32 // label of the family of sheets the row came from, from 0
	Day    []unit.Day
	// BirthLo, BirthHi bound the birth date, both included; 0, 0 unknown.
	BirthLo, BirthHi []unit.Day
	Basis            []uint8   // age.Basis of the window
	LogTime          []float32 // natural log of the seconds, scaled to 5 km; 0 none

	// PlaceOf is the label of the place by label of the course, where several courses
	// are at one place: two distances of one morning. nil: each is a place.
	PlaceOf []int32

	// Numbers holds the texts of the numbers, indexed by Number (entry 0
	// unused). Without it mistyped numbers are not looked for.
	Numbers []string
}

// Len is the number of rows.
func (r *Rows) Len() int { return len(r.Key) }

func (r *Rows) check(names int) error {
	n := len(r.Key)
	for _, c := range []struct {
		name string
		n    int
	}{{"Name", len(r.Name)}, {"Number", len(r.Number)}, {"Sex", len(r.Sex)}, {"Club", len(r.Club)},
		{"Course", len(r.Course)}, {"Run", len(r.Run)}, {"Series", len(r.Series)}, {"Day", len(r.Day)},
		{"BirthLo", len(r.BirthLo)}, {"BirthHi", len(r.BirthHi)}, {"Basis", len(r.Basis)}, {"LogTime", len(r.LogTime)}} {
		if c.n != n {
			return fmt.Errorf("who: column %s has %d rows, Key has %d", c.name, c.n, n)
		}
	}
	for i, k := range r.Name {
		if k < 0 || int(k) >= names {
			return fmt.Errorf("who: row %d has name %d of %d", i, k, names)
		}
		if r.Number[i] < 0 || r.Club[i] < 0 || r.Course[i] < 0 || r.Run[i] < 0 || r.Series[i] < 0 || r.Sex[i] > SexX {
			return fmt.Errorf("who: row %d has a negative label or an unknown sex", i)
		}
		if r.PlaceOf != nil && int(r.Course[i]) >= len(r.PlaceOf) {
			return fmt.Errorf("who: row %d has course %d of %d", i, r.Course[i], len(r.PlaceOf))
		}
		if len(r.Numbers) > 0 && int(r.Number[i]) >= len(r.Numbers) {
			return fmt.Errorf("who: row %d has number %d of %d", i, r.Number[i], len(r.Numbers))
		}
	}
	return nil
}

// Options of Link; the zero value is the usual way.
type Options struct {
	Threads   int     // 0: all cores
	Join      float64 // bits added to the weight from which two are joined, see JoinFrom
	Review    float64 // bits below which a pair is not even doubtful; 0: -12
	Fixed     bool    // use the starting weights, learn nothing
	Decisions []Decision
}

func (o Options) withDefaults() Options {
	if o.Threads <= 0 {
		o.Threads = runtime.GOMAXPROCS(0)
	}
	if o.Review == 0 {
		o.Review = -12
	}
	return o
}

// Result says who is who.
type Result struct {
	// Runner is, per row, the runner's number from 0, in the order of each
	// runner's first row by Key. It is not stable when rows are added: see
	// AssignIDs.
	Runner  []int32
	Runners int
	// Doubtful lists pairs of runners that may be one, likeliest gain first.
	Doubtful []Pair
	// Questions lists rows that belong to one of several namesakes, one
	// question for each set of namesakes.
	Questions []Question
	// Groups lists runners of whom several may be one person, from the pairs.
	Groups []Group
	// Splits lists rows that fit the rest of their runner badly.
	Splits []Split
	// Contradictions between decisions; none of them was followed.
	Contradictions []Contradiction
	Weights        Weights // as used
	Counts         Counts

	m        *model
	firstRow []int32 // signature -> row; made when first asked for
	rowsOf   []int32 // rows by runner, from rowsFrom[runner]; the same
	rowsFrom []int32
}

// Counts tells how much work a linkage was.
type Counts struct {
	Rows, Signatures, Pairs, Joins int
}

// Link finds the runners of rows. names are the parsed texts that Rows.Name
// points to; a row of an unnamed text or of several people stays alone.
func Link(ctx context.Context, rows *Rows, names []name.Name, o Options) (*Result, error) {
	o = o.withDefaults()
	if err := rows.check(len(names)); err != nil {
		return nil, err
	}
	m := &model{ctx: ctx, rows: rows, in: names, o: o, w: StartingWeights()}
	for _, step := range []func() error{
		m.label, m.tabulate, m.readDecisions, m.sign, m.frequencies, m.findCommunities, m.density, m.affinity,
		m.block, m.learn, m.cluster,
	} {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		if err := step(); err != nil {
			return nil, err
		}
	}
	return m.result(), nil
}

// model is one linkage under way.
type model struct {
	ctx  context.Context
	rows *Rows
	in   []name.Name
	o    Options
	w    Weights

	lab       labels
	names     nameTable
	recs      []rec           // while rows are grouped
	sigs      []cluster       // signatures in the order of their first row's Key
	sigOf     []int32         // row -> signature
	sakes     map[int32]int32 // whole name -> people known to have it, where more than one
	unsure    []bool          // series whose ages change all in one week; nil: none
	clubbed   []bool          // series whose sheets give clubs
	join      float64         // bits from which a single line is joined
	people    float64         // distinct full name and sex: the N of the prior
	community *communities    // nil: all names are one community
	birth     birthDensity
	lift      courseLift
	clubs     []float32 // share of rows by club label
	sketches  []sketch  // of the signatures, while pairs are sought
	pairs     []uint64  // candidate pairs, lower signature << 32 | higher
	bans      map[int32][]int32
	must      [][2]int32
	contra    []Contradiction
	byKey     map[int64]int32 // rows that decisions speak of
	runner    []int32         // signature -> runner
	roots     []int32         // runner -> lowest signature

	group joined // outcome of clustering

	known *Known  // of the linkage that this one carries on; nil: there is none
	fixed []bool  // signatures that stand for whole runners: not joined with one another; nil: none
	homes []homed // new rows that go without saying to a known runner
}
