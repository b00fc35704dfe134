package pipeline

import (
	"strings"
	"testing"

	"lapwing/pipeline/unit"
)

func TestSidesOfDecisions(t *testing.T) {
	hash := strings.Repeat("a1", 32)
	for _, s := range []side{{runner: "R9"}, {"R9", lineRef{hash, "", 14}}, {"R9", lineRef{hash, "Results: men! 2", 14}}, {"", lineRef{hash, "Sheet1", 2}}, {"", lineRef{hash, "", 3}}} {
		got, err := readSide(s.String())
		if err != nil || got != s {
			t.Errorf("%q reads back as %+v, %v; want %+v", s.String(), got, err, s)
		}
	}
	for _, bad := range []string{"", "nine", "R9 " + hash, "R9 " + hash + ":x", hash + ":0"} {
		if s, err := readSide(bad); err == nil {
			t.Errorf("%q was read as %+v", bad, s)
		}
	}
}

func TestRowCodes(t *testing.T) {
	r := &Review{latest: 17,
		Pairs:     []MatchPair{{First: MatchPerson{ID: "R1", Name: "Ann Moss", state: "0123456789"}, Second: MatchPerson{ID: "R40", Name: "Ann Mosse", state: "abcdefghij"}}},
		Questions: []MatchQuestion{{Namesakes: []MatchPerson{{ID: "R1", Name: "Ann Moss"}, {ID: "R2", Name: "Ann Moss"}}, Lines: []MatchLine{{keep: lineAt{3, 1, 24}}}}},
		Thin:      []MatchThin{{Runner: MatchPerson{ID: "R1", Name: "Ann Moss"}, Lines: []MatchLine{{keep: lineAt{3, 0, 25}}, {keep: lineAt{4, 0, 9}}}}},
		Several:   []MatchPieces{{Place: 1, Pieces: []MatchPiece{{MatchPerson: MatchPerson{ID: "R1", state: "0123456789"}}, {MatchPerson: MatchPerson{ID: "R2", state: "abcdefghij"}}, {MatchPerson: MatchPerson{ID: "R40"}}}}}}
	r.code()
	pair, ok := readCode(r.Pairs[0].Code)
	if !ok || pair.runners[0] != 1 || pair.runners[1] != 40 || pair.latest != 17 || pair.states[0] != "01234567" || pair.states[1] != "abcdefgh" || len(pair.lines) != 0 || pair.among != "" {
		t.Errorf("%q: %+v, %v", r.Pairs[0].Code, pair, ok)
	}
	if pair.sum != checkSum(pair.body, "R1 Ann Moss", "R40 Ann Mosse") || pair.sum == checkSum(pair.body, "R1 Ann Moss", "R40 Ann Moss") {
		t.Errorf("the check sum %s does not tell names apart", pair.sum)
	}
	if q, ok := readCode(r.Questions[0].Lines[0].Code); !ok || q.fit || len(q.lines) != 1 || q.lines[0] != (lineAt{3, 1, 24}) || len(q.runners) != 2 {
		t.Errorf("%q: %+v, %v", r.Questions[0].Lines[0].Code, q, ok)
	}
	if f, ok := readCode(r.Thin[0].Code); !ok || !f.fit || len(f.lines) != 2 || f.lines[0] != (lineAt{3, 0, 25}) || f.lines[1] != (lineAt{4, 0, 9}) || len(f.runners) != 1 {
		t.Errorf("%q: %+v, %v", r.Thin[0].Code, f, ok)
	}
	if p, ok := readCode(r.Several[0].Pieces[1].Code); !ok || p.among != "R1+R2+R40" || len(p.runners) != 1 || p.runners[0] != 2 || p.states[0] != "abcdefgh" || p.latest != 17 {
		t.Errorf("%q: %+v, %v", r.Several[0].Pieces[1].Code, p, ok)
	}
	for _, bad := range []string{"", "R1 R40", "R1 x 17 a b c", "q3.0 R1 17 c", "q3.0.0 R1 17 c", "x3.0.1 R1 17 c", "f3.0.1+ R1 17 c", "p R1 R1+R2 x a c", "R1 R40 x a b c"} {
		if c, ok := readCode(bad); ok {
			t.Errorf("%q was read as %+v", bad, c)
		}
	}
}

func TestBornInWords(t *testing.T) {
	day := func(y, m, d int) unit.Day { return unit.NewDay(y, m, d) }
	for _, c := range []struct {
		lo, hi unit.Day
		want   string
	}{{day(1984, 3, 2), day(1984, 3, 2), "1984-03-02"}, {day(1984, 12, 30), day(1985, 1, 5), "1984-12-30 to 1985-01-05"},
		{day(1984, 1, 1), day(1984, 12, 31), "1984"}, {day(1984, 2, 1), day(1989, 1, 31), "1984 to 1989"}} {
		if got := born(c.lo, c.hi); got != c.want {
			t.Errorf("born %s to %s: %q, want %q", c.lo, c.hi, got, c.want)
		}
	}
}

func TestChanceInWords(t *testing.T) {
	for p, want := range map[float64]string{.999: "almost surely", .994: "about 99 in 100", .5: "about 50 in 100", .016: "about 2 in 100", .01: "hardly"} {
		if got := ChanceWords(p); !strings.HasPrefix(got, want) {
			t.Errorf("%g: %q, want %q", p, got, want)
		}
	}
}
