package reports

import (
	"bytes"
	"fmt"
	"strings"

	"lapwing/pipeline/text"
	"lapwing/reports/table"
)

// MatchBook is the workbook in which people decide who is who. Texts are as
// they shall be shown; a code names each row so that it can be read back.
type MatchBook struct {
	Made    string // day of the newest run, 2026-01-03
	Version string
	Found   int // doubtful pairs there were, more than are listed
	// Bits from which a single line is joined unasked, and two with many lines; the
	// second where sheets give one of them a number.
	Join, JoinNumbered [2]float64

	Pairs  []MatchPairRow
	Pieces []MatchPieceRow
	Lines  []MatchLineRow // lines of one of several namesakes
	Fits   []MatchLineRow // lines that fit their runner badly
}

// MatchPairRow is two runners who may be one person.
type MatchPairRow struct {
	Code          string
	First, Second MatchSide
	Evidence      []MatchEvidence
	Bits          float64
	Percent       float64 // chance that they are one person
}

// MatchSide is one of two runners.
type MatchSide struct {
	Shown   string // R12 Ines Okafor
	Facts   string
	History string
	Results string // the last ones
}

// MatchPieceRow is one of several runners of whom some may be one person.
type MatchPieceRow struct {
	Code     string
	Question string // 1: R12, R40, R41
	Runner   MatchSide
	Percent  float64 // chance that it is one person with at least one of the others
}

// MatchEvidence is a part of the evidence: which column it stands in, what was
// found, and its weight in bits.
type MatchEvidence struct {
	Column int // index into MatchColumns
	Words  string
	Bits   float64
}

// MatchLineRow is a line of a sheet and the runners whose it may be.
type MatchLineRow struct {
	Code, Line, Runners string
	Choices             string // what may be answered, in words
}

// MatchColumns are the headings under which evidence stands side by side.
var MatchColumns = []string{"Names", "Number", "Age", "Sex", "Club", "Courses and times", "Days", "To start with"}

// Headings that ReadMatch looks for.
const (
	headFirst    = "First"
	headSecond   = "Second"
	headLine     = "Line"
	headLines    = "Lines"
	headRunner   = "Runner"
	headAmong    = "Question"
	headDecision = "Decision"
	headRemark   = "Remark"
	headCode     = "Code of the row"
)

// Tabs of the workbook.
const (
	tabPairs  = "Pairs"
	tabPieces = "Several"
	tabLines  = "Namesakes"
	tabFits   = "Bad fits"
)

// Write makes the workbook. The choices are the words of the drop-down lists:
// for pairs, for one of several runners and for lines that fit badly.
func (b *MatchBook) Write(pairChoices, pieceChoices, fitChoices []string) ([]byte, error) {
	made := b.Made
	if made == "" {
		made = "1970-01-01"
	}
	book := &table.Book{Title: "FOR THE RESULTS DESK ONLY: who is who", Subject: text.MatchBook,
		Footer: "Lapwing " + b.Version, Made: made}
	book.Tabs = []*table.Tab{b.pairsTab(pairChoices), b.piecesTab(pieceChoices), b.linesTab(tabLines, b.Lines, nil), b.linesTab(tabFits, b.Fits, fitChoices), b.notesTab(pairChoices, fitChoices)}
	var out bytes.Buffer
	if err := book.WriteWorkbook(&out); err != nil {
		return nil, err
	}
	return out.Bytes(), nil
}

// weighted is a part of the evidence with its weight.
func weighted(words string, bits float64) string { return fmt.Sprintf("%s (%s)", words, signed(bits)) }

// signed prints a weight with its sign, the minus as wide as the plus.
func signed(x float64) string {
	s := fmt.Sprintf("%+.1f", x)
	if s == "-0.0" {
		s = "+0.0"
	}
	if s[0] == '-' {
		return "\u2212" + s[1:]
	}
	return s
}

// percent is a chance as a whole number; what would be shown as none or as
// certain is said in words.
func percent(x float64) table.Value {
	switch {
	case x < .5:
		return table.Words("under 1")
	case x >= 99.5:
		return table.Words("over 99")
	}
	return table.Number(x)
}

func (b *MatchBook) pairsTab(choices []string) *table.Tab {
	t := &table.Table{Name: tabPairs, None: "No doubtful pairs.", Columns: []table.Column{
		{Head: "No.", Kind: table.Whole}, {Head: headFirst, Max: 24}, {Head: headSecond, Max: 24},
		{Head: "In 100", Kind: table.Whole}, {Head: headDecision, Width: 16, Input: true, Choices: choices}, {Head: headRemark, Width: 20, Input: true},
		{Head: "First: who", Max: 26}, {Head: "Second: who", Max: 26}, {Head: "First: last results", Max: 34}, {Head: "Second: last results", Max: 34}}}
	for _, c := range MatchColumns {
		t.Columns = append(t.Columns, table.Column{Head: c, Max: 30})
	}
	t.Columns = append(t.Columns, table.Column{Head: "Together", Width: 9}, table.Column{Head: headCode, Max: 20})
	for i, p := range b.Pairs {
		cells := []table.Value{table.Number(i + 1), table.Words(p.First.Shown), table.Words(p.Second.Shown),
			percent(p.Percent), {}, {},
			table.Words(p.First.Facts + "; " + p.First.History), table.Words(p.Second.Facts + "; " + p.Second.History),
			table.Words(p.First.Results), table.Words(p.Second.Results)}
		columns := make([]string, len(MatchColumns))
		for _, e := range p.Evidence {
			columns[e.Column] = joinWords(columns[e.Column], weighted(e.Words, e.Bits))
		}
		for _, c := range columns {
			cells = append(cells, table.Words(c))
		}
		t.Add(nil, append(cells, table.Words(signed(p.Bits)), table.Words(p.Code))...)
	}
	tab := &table.Tab{Name: tabPairs, Landscape: true, PrintColumns: 10}
	tab.Add(table.Title{Level: 1, Text: "Are these one person?"},
		table.Para{Text: "Choose a decision in the column Decision, or leave it. The most useful questions come first. Then: lapwing match apply, with this file's name."},
		table.Para{Text: "Holds full names and ages, also of children: for the results desk, not for publication.", Bold: true},
		table.Full{Table: t})
	return tab
}

func (b *MatchBook) piecesTab(choices []string) *table.Tab {
	t := &table.Table{Name: tabPieces, None: "No such runners.", Columns: []table.Column{
		{Head: headAmong, Max: 24}, {Head: headRunner, Max: 26}, {Head: "Who", Max: 30}, {Head: "Last results", Max: 40}, {Head: "In 100", Kind: table.Whole},
		{Head: headDecision, Width: 12, Input: true, Choices: choices}, {Head: headRemark, Width: 20, Input: true}, {Head: headCode, Max: 20}}}
	for _, p := range b.Pieces {
		t.Add(nil, table.Words(p.Question), table.Words(p.Runner.Shown), table.Words(p.Runner.Facts+"; "+p.Runner.History), table.Words(p.Runner.Results),
			percent(p.Percent), table.Value{}, table.Value{}, table.Words(p.Code))
	}
	tab := &table.Tab{Name: tabPieces, Landscape: true, PrintColumns: 7}
	tab.Add(table.Title{Level: 1, Text: "Which of these belong together?"},
		table.Para{Text: "The runners of one question may be one person, all of them or some. Put the same letter (A, B, C…) beside those that are one person,"},
		table.Para{Text: "another letter beside somebody else, and leave those you don't know. They are in the tab Pairs, too, two by two: answer in one place."},
		table.Full{Table: t})
	return tab
}

func (b *MatchBook) linesTab(name string, rows []MatchLineRow, choices []string) *table.Tab {
	title, head, none := "Whose are these lines?", headLine, "No such lines."
	what := []string{"Nothing on these lines tells the namesakes apart. If you know, write the runner's id under Decision."}
	if choices != nil {
		title, head, none = "Are these lines somebody else's?", headLines, "No bad fits."
		what = []string{"These lines were given to the runner beside them, but fit the rest of that runner's lines badly. Choose theirs if they are this runner's,",
			"not theirs if they are somebody else's, who then becomes a runner of their own. Several lines in one row are answered for together."}
	}
	t := &table.Table{Name: "Lines", None: none, Columns: []table.Column{{Head: head, Max: 60}, {Head: headRunner, Max: 60},
		{Head: "Answers", Max: 28}, {Head: headDecision, Width: 16, Input: true, Choices: choices}, {Head: headRemark, Width: 20, Input: true}, {Head: headCode, Max: 20}}}
	if choices != nil {
		t.Name = "Fits"
	}
	for _, r := range rows {
		t.Add(nil, table.Words(r.Line), table.Words(r.Runners), table.Words(r.Choices), table.Value{}, table.Value{}, table.Words(r.Code))
	}
	tab := &table.Tab{Name: name, Landscape: true, PrintColumns: 5}
	tab.Add(table.Title{Level: 1, Text: title})
	for _, text := range what {
		tab.Add(table.Para{Text: text})
	}
	tab.Add(table.Full{Table: t})
	return tab
}

func (b *MatchBook) notesTab(pairs, fits []string) *table.Tab {
	t := &table.Table{Name: "MatchNotes", Columns: []table.Column{{Head: "What", Max: 20, Width: 20}, {Head: "Meaning", Max: 74, Width: 74}}}
	add := func(what, meaning string) { t.Add(nil, table.Words(what), table.Words(meaning)) }
	add("Pairs", fmt.Sprintf("Two runners who may be one person. Decision: %s.", strings.Join(pairs, ", or ")))
	add("Several", "Runners of whom several may be one person, as one question. Decision: the same letter beside those that are one person. In 100: of 100 such runners about so many are one person with at least one of the others.")
	add("Namesakes", "Lines of a name that several people have, without an age to tell them apart.")
	add("Bad fits", fmt.Sprintf("Lines that were given to a runner but fit the rest badly: perhaps they are somebody else's. Decision: %s.", strings.Join(fits, ", or ")))
	add("Remark", "Is kept with the decision: who told you, how you know.")
	add("Evidence", "Each weight says how much a finding speaks for one person (+) or for two (\u2212). A weight of +1 doubles the odds, +10 makes them about a thousand times as high. They add up to the column Together (log2 of the odds; Fellegi and Sunter 1969, Journal of the American Statistical Association 64:1183-1210).")
	add("Together", fmt.Sprintf("From %s on a single line is joined without asking. The more lines both have, the more it takes, up to %s, because a wrong join of two regulars spoils most; where sheets give one of them a number, from %s and up to %s. It takes more for a line of a name that several people have, and much more where the family names are quite different. So a pair that is asked may well have a high sum.", signed(b.Join[0]), signed(b.Join[1]), signed(b.JoinNumbered[0]), signed(b.JoinNumbered[1])))
	add("In 100", "Of 100 pairs with such evidence about so many are one person, as measured on made-up districts.")
	add("Order", fmt.Sprintf("The questions that an answer helps most come first: likely ones about many lines. %d doubtful pairs were found; the list holds %d.", max(b.Found, len(b.Pairs)), len(b.Pairs)))
	add("What you may change", "Decision and Remark only. Rows may be sorted, filtered or deleted. A row whose other cells were changed, or that is out of date, is refused with its cell, and nothing happens to it.")
	add("A wrong decision", "Can be taken back at any time: lapwing match decisions, then lapwing match undo.")
	add("If you don't know", "Leave it. A wrong \"same person\" gives somebody the results of somebody else; please ask the people themselves where you can.")
	add("Personal data", "This workbook holds full names, ages and results, also of children and of people who asked not to be shown. Keep it at the desk, do not send it around, delete it when it is done.")
	tab := &table.Tab{Name: "Notes"}
	tab.Add(table.Title{Level: 1, Text: "Notes on deciding who is who"}, table.Full{Table: t})
	return tab
}
