package main

import (
	"fmt"
	"io"
	"slices"
	"strings"
	"text/tabwriter"

	"lapwing/pipeline"
	"lapwing/pipeline/record/who"
)

// bits prints a weight with its sign.
func bits(x float64) string {
	s := fmt.Sprintf("%+.1f", x)
	if s == "-0.0" {
		s = "+0.0"
	}
	return strings.Replace(s, "-", "\u2212", 1)
}

func printPerson(w io.Writer, p pipeline.MatchPerson) {
	fmt.Fprintf(w, "  %s  %s\n      %s; %s\n", p.ID, p.Name, p.Facts(), p.History())
	if len(p.Results) > 0 {
		fmt.Fprintf(w, "      last: %s\n", strings.Join(p.Results, "; "))
	}
}

func printEvidence(w io.Writer, list []pipeline.Evidence, sum float64) {
	for _, e := range list {
		fmt.Fprintf(w, "    %7s  %s\n", bits(e.Bits), e.Words)
	}
	fmt.Fprintf(w, "    %7s  together\n", bits(sum))
}

func printPair(w io.Writer, p pipeline.MatchPair) {
	printPerson(w, p.First)
	printPerson(w, p.Second)
	printEvidence(w, p.Evidence, p.Bits)
	fmt.Fprintf(w, "    %s\n", pipeline.ChanceWords(p.Chance))
}

func printReview(w io.Writer, r *pipeline.Review) {
	for _, c := range r.Contradictions {
		fmt.Fprintln(w, "Contradiction:", c.Words)
	}
	if len(r.Pairs) == 0 {
		fmt.Fprintln(w, "No doubtful pairs.")
	} else {
		fmt.Fprintf(w, "Are these one person? The first %d of %d pairs, the most useful question first (%d doubtful pairs were found).\n", len(r.Pairs), r.Listed, r.Found)
		fmt.Fprintln(w, "What speaks for one person has a plus, what speaks against it a minus; one point more about doubles the odds.")
		fmt.Fprintln(w, "The chance below the sum allows for what the points are known to get wrong.")
	}
	for _, p := range r.Pairs {
		fmt.Fprintf(w, "\n%d.\n", p.Place)
		printPair(w, p)
	}
	for i, q := range r.Several {
		if i == 0 {
			fmt.Fprintln(w, "\nWhich of these belong together? All of them, or some, may be one person. They are among the pairs, too.")
		}
		fmt.Fprintf(w, "\n%d.\n", q.Place)
		for _, p := range q.Pieces {
			printPerson(w, p.MatchPerson)
			fmt.Fprintf(w, "      with one of the others: %s\n", pipeline.ChanceWords(p.Chance))
		}
	}
	for i, q := range r.Questions {
		if len(q.Lines) == 0 {
			continue
		}
		if i == 0 {
			fmt.Fprintln(w, "\nWhose are these lines? Nothing on them tells the namesakes apart.")
		}
		fmt.Fprintln(w)
		for _, l := range q.Lines {
			fmt.Fprintf(w, "  %s\n", l.Shown())
		}
		fmt.Fprintln(w, "  may be:")
		for _, p := range q.Namesakes {
			fmt.Fprintf(w, "    %s  %s (%s; %s)\n", p.ID, p.Name, p.Facts(), p.History())
		}
	}
	for i, t := range r.Thin {
		if len(t.Lines) == 0 {
			continue
		}
		if i == 0 {
			fmt.Fprintln(w, "\nAre these lines somebody else's? They were given to the runner above them, but fit the rest of that runner's lines badly.")
		}
		fmt.Fprintf(w, "\n  %s  %s (%s; %s), weight of the lines against the rest %s\n", t.Runner.ID, t.Runner.Name, t.Runner.Facts(), t.Runner.History(), bits(t.Bits))
		for _, l := range t.Lines {
			fmt.Fprintf(w, "    %s\n", l.Shown())
		}
	}
	printHowToDecide(w, r)
}

// manyLines are so many that more make no join harder.
const manyLines = 1000

// printHowToDecide gives a command for each kind of question there is, made of one of
// its kind.
func printHowToDecide(w io.Writer, r *pipeline.Review) {
	var say []string
	add := func(what, format string, args ...any) {
		say = append(say, fmt.Sprintf("  %-29s"+format, append([]any{what}, args...)...))
	}
	if len(r.Pairs) > 0 {
		p := r.Pairs[0]
		add("one person:", "lapwing match join %s %s", p.First.ID, p.Second.ID)
		add("two people:", "lapwing match part %s %s", p.First.ID, p.Second.ID)
	}
	if len(r.Several) > 0 {
		ids := make([]string, len(r.Several[0].Pieces))
		for i, p := range r.Several[0].Pieces {
			ids[i] = p.ID
		}
		add("several are one person:", "lapwing match join %s   (without those who are somebody else)", strings.Join(ids, " "))
	}
	if i := slices.IndexFunc(r.Questions, func(q pipeline.MatchQuestion) bool { return len(q.Lines) > 0 }); i >= 0 {
		q := r.Questions[i]
		add("whose a line is:", "lapwing match join %s %s", q.Namesakes[0].ID, toType(q.Lines[0].Place.String()))
	}
	asked := slices.DeleteFunc(slices.Clone(r.Thin), func(t pipeline.MatchThin) bool { return len(t.Lines) == 0 })
	if len(asked) > 0 {
		t := slices.MinFunc(asked, func(x, y pipeline.MatchThin) int { return len(x.Lines) - len(y.Lines) }) // the shortest to read
		refs := make([]string, len(t.Lines))
		for k, l := range t.Lines {
			refs[k] = toType(l.Place.String())
		}
		lines := strings.Join(refs, " ")
		add("lines are not theirs:", "lapwing match part %s %s", t.Runner.ID, lines)
		add("lines are theirs after all:", "lapwing match join %s %s", t.Runner.ID, lines)
	}
	if len(say) == 0 {
		return
	}
	fmt.Fprintf(w, "\nTo decide:\n%s\nAll at once in a spreadsheet: lapwing match export who-is-who.xlsx\n", strings.Join(say, "\n"))
}

// toType is a text as it has to be typed on a command line.
func toType(s string) string {
	if strings.ContainsAny(s, " !&()';") {
		return `"` + s + `"`
	}
	return s
}

func printVerdict(w io.Writer, v *pipeline.MatchVerdict) {
	if v.One {
		printPerson(w, v.First)
	} else {
		printPair(w, v.MatchPair)
	}
	fmt.Fprintln(w)
	fmt.Fprintln(w, v.Why)
	for _, d := range v.Decided {
		fmt.Fprintf(w, "Decided: %s\n", d)
	}
}

func printHistory(w io.Writer, h *pipeline.MatchHistory) {
	printPerson(w, h.Runner)
	if len(h.Old) > 0 {
		fmt.Fprintf(w, "      old ids: %s\n", strings.Join(h.Old, ", "))
	}
	if len(h.Steps) == 0 {
		fmt.Fprintln(w, "\nAll lines agree in name, sex and number or course: nothing had to be joined.")
		return
	}
	fmt.Fprintln(w, "\nHow the lines came together:")
	for i, s := range h.Steps {
		fmt.Fprintf(w, "\n%d.  the lines like %s\n    and those like %s\n", i+1, s.First.Shown(), s.Second.Shown())
		if s.Decided {
			fmt.Fprintln(w, "    joined by a decision, whatever the evidence:")
		}
		printEvidence(w, s.Evidence, s.Bits)
	}
}

func printWeights(out io.Writer, k pipeline.Linkage, list []pipeline.MatchWeight) {
	if k.Learned {
		fmt.Fprintf(out, "Learned from this archive: about %.0f likely pairs of one person.\n", k.Matches)
	} else {
		fmt.Fprintln(out, "Starting weights, but for what differs from them below: this archive holds too few likely pairs of one person to learn more.")
	}
	fmt.Fprintf(out, "%d lines, %d signatures (lines that agree in name, sex and number or course), %d pairs weighed, %d joined; %d runners.\n",
		k.Lines, k.Signatures, k.Pairs, k.Joins, k.Runners)
	fmt.Fprintf(out, "A single line is joined from %s bits on, two with many lines from up to %s; where sheets give one of them a number, from %s and up to %s. Doubtful from %s bits on.\n\n",
		bits(k.JoinBits), bits(who.JoinFrom(k.JoinBits, manyLines, manyLines)), bits(who.JoinNumbered(k.JoinBits, 1, 1)), bits(who.JoinNumbered(k.JoinBits, manyLines, manyLines)), bits(k.ReviewBits))
	w := tabwriter.NewWriter(out, 0, 4, 2, ' ', tabwriter.AlignRight)
	fmt.Fprintln(w, "in force\tstarting\tunit\t What is compared")
	for _, m := range list {
		show := bits
		if m.Kind == "share" {
			show = func(x float64) string { return fmt.Sprintf("%.4f", x) }
		}
		fmt.Fprintf(w, "%s\t%s\t%s\t %s\n", show(m.InForce), show(m.Starting), m.Kind, m.Words)
	}
	w.Flush()
	fmt.Fprintln(out, "\nWeights of names, numbers, births, courses and times that agree depend on how rare the value is: see lapwing match explain A B.")
}
