package pipeline

import (
	"cmp"
	"context"
	"database/sql"
	"errors"
	"fmt"
	"maps"
	"slices"
	"strings"

	"lapwing/pipeline/record/club"
	"lapwing/pipeline/record/name"
	"lapwing/pipeline/store"
)

// clubs gives the two names of a decision about clubs: OTHER = CLUB.
func (d Decision) clubs() (other, club string, err error) {
	other, club, ok := strings.Cut(d.Value, " = ")
	other, club = strings.TrimSpace(other), strings.TrimSpace(club)
	if !ok || other == "" || club == "" || other == club {
		return "", "", fmt.Errorf("clubs %q: write the other name, =, and the club's name, as in Osierholm H. = Osierholm Harriers", d.Value)
	}
	return other, club, nil
}

// decideClubs turns what is said of two names into a decision.
func (pl *Pipeline) decideClubs(ctx context.Context, d Decision, c Correction) ([]Decision, error) {
	d.Kind, d.Value = DecideClubName, strings.TrimSpace(c.OtherClub)+" = "+strings.TrimSpace(c.IsClub)
	if c.NotTheClub {
		d.Kind = DecideOtherClub
	}
	other, _, err := d.clubs()
	if err != nil {
		return nil, err
	}
	list, err := pl.Clubs(ctx)
	if err != nil {
		return nil, err
	}
	printed := func(c Club) bool {
		return c.Name == other || slices.Contains(c.Others, other)
	}
	if !slices.ContainsFunc(list.Clubs, printed) {
		return nil, fmt.Errorf("no sheet and no row of %s has the club %q; see lapwing clubs", memberTable, other)
	}
	return []Decision{d}, nil
}

// clubBook knows the clubs' other names: from the settings, and from decisions,
// which win.
type clubBook struct {
	now       map[string]string // folded other name, or the name as written → club
	different map[[2]string]bool
}

func (s Settings) clubBook(ds []Decision) clubBook {
	b := clubBook{map[string]string{}, map[[2]string]bool{}}
	for other, c := range s.Clubs {
		b.now[name.Fold(other)] = c
	}
	for _, d := range ds {
		other, c, err := d.clubs()
		switch {
		case err != nil:
		case d.Kind == DecideOtherClub:
			b.different[pairOf(other, c)] = true
		case d.Kind == DecideClubName && name.Fold(other) == name.Fold(c):
			b.now[other] = c // a spelling: the one meant has the same key
		case d.Kind == DecideClubName:
			b.now[name.Fold(other)] = c
			b.now[other] = c
		}
	}
	return b
}

func pairOf(a, b string) [2]string {
	return [2]string{min(name.Fold(a), name.Fold(b)), max(name.Fold(a), name.Fold(b))}
}

// club is the club's name for any of its names. Names may lead to one another;
// ones that lead in a circle stay as they are.
func (b clubBook) club(received string) string {
	at := received
	for range len(b.now) + 1 {
		next, ok := b.now[at]
		if !ok {
			next, ok = b.now[name.Fold(at)]
		}
		if !ok || next == at {
			return at
		}
		at = next
	}
	return received
}

// knownSpelling is a name that sheets print and that is another club's.
type knownSpelling struct {
	received, club string
	lines          int
}

// knowClubs reads every other name of a club as the club's name, and returns
// the spellings that this changes with the names they now have.
func (f *field) knowClubs(book clubBook) (changed []knownSpelling) {
	if len(book.now) == 0 {
		return nil
	}
	now := make([]int32, len(f.clubs.list))
	at := map[int32]int{}
	for i, received := range f.clubs.list[:len(now)] {
		now[i] = int32(i)
		if c := book.club(received); received != "" && c != received {
			now[i] = f.clubs.number(c)
			at[int32(i)] = len(changed)
			changed = append(changed, knownSpelling{received: received, club: c})
		}
	}
	if len(changed) == 0 {
		return nil
	}
	for i, c := range f.club {
		if now[c] != c {
			changed[at[c]].lines++
			f.club[i] = now[c]
		}
	}
	slices.SortFunc(changed, func(a, b knownSpelling) int { return cmp.Compare(a.received, b.received) })
	return changed
}

// proposeClubs looks for names that are probably one club's, of those that
// stand now. What it returns does the looking, and may do so while the field is
// read by others.
func (f *field) proposeClubs(p *people, book clubBook, members []member) func() []club.Proposal {
	for _, m := range members {
		f.clubs.number(m.club)
	}
	return func() []club.Proposal {
		lines := make([]int, len(f.clubs.list))
		for i, c := range f.club {
			if c != 0 && f.runner[i] != 0 {
				lines[c]++
			}
		}
		for _, m := range members {
			lines[f.clubs.number(m.club)]++
		}
		var clubs []club.Club
		for c, n := range lines {
			if n > 0 {
				clubs = append(clubs, club.Club{Name: f.clubs.list[c], Lines: n})
			}
		}
		settled := func(a, b string) bool { return book.different[pairOf(a, b)] }
		out := club.Propose(clubs, settled)
		return append(out, f.oldNames(p, settled, out)...)
	}
}

// oldNames proposes names that all runners of a club have left for another.
func (f *field) oldNames(p *people, settled func(a, b string) bool, have []club.Proposal) (out []club.Proposal) {
	moves := club.NewMoves()
	var clubs, days []int32
	for r := range p.no {
		clubs, days = clubs[:0], days[:0]
		several := false
		for _, l := range p.order[p.begin[r]:p.begin[r+1]] {
			if !f.stands(int(l)) {
				continue
			}
			clubs, days = append(clubs, f.club[l]), append(days, int32(f.day(int(l))))
			several = several || f.club[l] != 0
		}
		if several {
			moves.Ran(clubs, days)
		}
	}
	proposed := map[string]bool{}
	for _, p := range have {
		proposed[p.Other] = true
	}
	old := moves.OldNames()
	for _, c := range club.Followed(old) {
		a, b := f.clubs.list[c], f.clubs.list[old[c]]
		if !proposed[a] && !settled(a, b) {
			out = append(out, club.Proposal{Other: a, Club: b, Why: club.WhyOldName})
		}
	}
	slices.SortFunc(out, func(a, b club.Proposal) int { return cmp.Compare(a.Other, b.Other) })
	return out
}

func (pl *Pipeline) writeClubs(ctx context.Context, w *work) error {
	if err := pl.insertClubs(ctx, w.clubs); err != nil {
		return err
	}
	found := <-w.proposals
	schema := store.Columns("other", store.Text, "club", store.Text, "why", store.Text)
	return pl.insertRows(ctx, "record.club_proposal", schema, len(found), func(r row, k int) {
		r.texts(0, found[k].Other, found[k].Club, found[k].Why)
	})
}

func (pl *Pipeline) insertClubs(ctx context.Context, list []knownSpelling) error {
	schema := store.Columns("received", store.Text, "club", store.Text)
	return pl.insertRows(ctx, "record.club", schema, len(list), func(r row, k int) { r.texts(0, list[k].received, list[k].club) })
}

// Club is a club with its other names.
type Club struct {
	Name    string   `json:"name"`
	Results int      `json:"results"`
	Runners int      `json:"runners"`
	Members int      `json:"members"` // rows of members.csv
	Others  []string `json:"other_names,omitempty"`
}

// ClubQuestion asks whether two names are one club's.
type ClubQuestion struct {
	Other   string `json:"other"`
	Club    string `json:"club"`
	Why     string `json:"why"`
	Results int    `json:"results"` // that print the other name
}

// ClubList is every club, and what is asked about their names.
type ClubList struct {
	Clubs     []Club         `json:"clubs"`
	Questions []ClubQuestion `json:"questions"`
}

// Clubs lists the clubs that sheets and members.csv name, most results first.
// Figures must be up to date.
func (pl *Pipeline) Clubs(ctx context.Context) (*ClubList, error) {
	by := map[string]*Club{}
	get := func(n string) *Club {
		if by[n] == nil {
			by[n] = &Club{Name: n}
		}
		return by[n]
	}
	out := &ClubList{Clubs: []Club{}, Questions: []ClubQuestion{}}
	var name, other string
	var n, runners int
	err := errors.Join(
		pl.each(ctx, "select club, count(*), count(distinct runner_id) from main.results where club is not null and counts_run group by club", func(rows *sql.Rows) error {
			err := rows.Scan(&name, &n, &runners)
			get(name).Results, get(name).Runners = n, runners
			return err
		}),
		pl.each(ctx, "select club, count(*) from main.members group by club", func(rows *sql.Rows) error {
			err := rows.Scan(&name, &n)
			get(name).Members = n
			return err
		}),
		pl.each(ctx, "select club, received from record.club order by received", func(rows *sql.Rows) error {
			err := rows.Scan(&name, &other)
			get(name).Others = append(get(name).Others, other)
			return err
		}),
		pl.each(ctx, "select other, club, why from main.club_questions order by other", func(rows *sql.Rows) error {
			var q ClubQuestion
			err := rows.Scan(&q.Other, &q.Club, &q.Why)
			q.Results = get(q.Other).Results
			out.Questions = append(out.Questions, q)
			return err
		}))
	if err != nil {
		return nil, err
	}
	for _, n := range slices.Sorted(maps.Keys(by)) {
		out.Clubs = append(out.Clubs, *by[n])
	}
	slices.SortStableFunc(out.Clubs, func(a, b Club) int { return cmp.Compare(b.Results, a.Results) })
	slices.SortStableFunc(out.Questions, func(a, b ClubQuestion) int { return cmp.Compare(b.Results, a.Results) })
	return out, nil
}

// SeasonClub settles which club a season is asked for, by any of its names,
// and whether its members on the day are known. note says in words why the
// club is taken as printed although nobody asked for that; "" otherwise.
func (pl *Pipeline) SeasonClub(ctx context.Context, what string, asPrinted bool) (club string, byMembers bool, note string, err error) {
	if what == "" {
		if asPrinted {
			err = fmt.Errorf("--club-as-printed says how --club is meant: add --club with the club's name")
		}
		return "", false, "", err
	}
	ds, err := pl.Decisions()
	if err != nil {
		return "", false, "", err
	}
	list, err := pl.Clubs(ctx)
	if err != nil {
		return "", false, "", err
	}
	wanted := name.Fold(pl.Settings.clubBook(ds).club(what))
	var found *Club
	var all []string
	for i := range list.Clubs {
		c := &list.Clubs[i]
		all = append(all, c.Name)
		if name.Fold(c.Name) == wanted && (found == nil || c.Name == what || found.Name != what && c.Members > found.Members) {
			found = c
		}
	}
	switch {
	case found == nil:
		return "", false, "", fmt.Errorf("no sheet and no row of %s has a club %q; there are: %s", memberTable, what, shortList(all, 20))
	case asPrinted:
		return found.Name, false, "", nil
	case found.Members == 0:
		return found.Name, false, fmt.Sprintf("%s has no member of %s: those whose line on the sheet prints the club are taken.", memberTable, found.Name), nil
	}
	return found.Name, true, "", nil
}
