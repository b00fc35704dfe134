package pipeline

import (
	"context"

	"lapwing/pipeline/record/who"
	"lapwing/pipeline/store"
)

// MatchWeight is one weight of the linkage. A share is the m of the weight
// log2(m/u) of Fellegi and Sunter (1969); its u is taken name by name from how
// common the name is. A weight in bits stands as it is.
type MatchWeight struct {
	Words    string  `json:"what"`
	Kind     string  `json:"kind"` // bits or share
	InForce  float64 `json:"in_force"`
	Starting float64 `json:"starting"`
}

// Linkage tells how the lines were linked at the last refresh.
type Linkage struct {
	Lines      int     `json:"lines"`
	Runners    int     `json:"runners"`
	Signatures int     `json:"signatures"`
	Pairs      int     `json:"pairs_weighed"`
	Joins      int     `json:"joins"`
	JoinBits   float64 `json:"join_from_bits"`
	ReviewBits float64 `json:"doubtful_from_bits"`
	Learned    bool    `json:"learned"`
	Matches    float64 `json:"learned_from_matches"`
	Doubtful   int     `json:"doubtful_pairs"`

	latest int // newest sheet in the ledger
}

// nameLevels are the levels of agreement of names whose share is estimated.
var nameLevels = []struct {
	level who.Level
	words string
}{
	{who.Equal, "the same"},
	{who.Swapped, "given and family name exchanged"},
	{who.Nickname, "a usual short form"},
	{who.ShortForm, "looks like a short form"},
	{who.FirstOnly, "the first of several given names"},
	{who.OneToken, "one part of a double name"},
	{who.Slip, "one letter apart, both being names"},
	{who.Mistyped, "one letter apart, one far rarer"},
}

// weightList lists the weights beside what they started from.
func weightList(w who.Weights) []MatchWeight {
	start := who.StartingWeights()
	var out []MatchWeight
	for _, n := range []struct {
		words       string
		now, before []float64
	}{{"given name: ", w.Given[:], start.Given[:]}, {"family name: ", w.Family[:], start.Family[:]}} {
		for _, l := range nameLevels {
			if n.now[l.level] != 0 || n.before[l.level] != 0 {
				out = append(out, MatchWeight{n.words + l.words, "share", n.now[l.level], n.before[l.level]})
			}
		}
	}
	before := start.Table()
	for i, l := range w.Table() {
		out = append(out, MatchWeight{l.Words, "bits", l.Bits, before[i].Bits})
	}
	return append(out,
		MatchWeight{"starting odds, added to log2 of 1 in the number of names", "bits", w.Prior, start.Prior},
		MatchWeight{"least that two family names wholly different need to be joined without a shared number", "bits", w.NewSurname, start.NewSurname})
}

func (pl *Pipeline) writeWeights(ctx context.Context, r *who.Result) error {
	list := weightList(r.Weights)
	schema := store.Columns("place", store.Int32, "words", store.Text, "kind", store.Text, "in_force", store.Float64, "starting", store.Float64)
	return pl.insertRows(ctx, "record.weight", schema, len(list), func(row row, i int) {
		row.ints(0, int32(i+1))
		row.texts(1, list[i].Words, list[i].Kind)
		row.numbers(3, list[i].InForce, list[i].Starting)
	})
}

// MatchWeights gives the weights in force, and how the linkage went.
func (pl *Pipeline) MatchWeights(ctx context.Context) (Linkage, []MatchWeight, error) {
	k, err := pl.linkage(ctx)
	if err != nil {
		return k, nil, err
	}
	rows, err := pl.DB.QueryContext(ctx, "select words, kind, in_force, starting from record.weight order by place")
	if err != nil {
		return k, nil, err
	}
	defer rows.Close()
	var out []MatchWeight
	for rows.Next() {
		var w MatchWeight
		if err := rows.Scan(&w.Words, &w.Kind, &w.InForce, &w.Starting); err != nil {
			return k, nil, err
		}
		out = append(out, w)
	}
	return k, out, rows.Err()
}

func (pl *Pipeline) linkage(ctx context.Context) (k Linkage, err error) {
	rows, err := pl.DB.QueryContext(ctx, `select lines, runners, signatures, pairs, joins, join_bits, review_bits, learned, coalesce(matches, 0), doubtful, latest_sheet
		from record.linkage`)
	if err != nil {
		return k, err
	}
	defer rows.Close()
	for rows.Next() {
		if err := rows.Scan(&k.Lines, &k.Runners, &k.Signatures, &k.Pairs, &k.Joins, &k.JoinBits, &k.ReviewBits, &k.Learned, &k.Matches, &k.Doubtful, &k.latest); err != nil {
			return k, err
		}
	}
	return k, rows.Err()
}
