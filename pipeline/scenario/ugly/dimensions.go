package ugly

import (
	"math/rand/v2"
	"sort"
)

// dimension is one way in which sheets differ. The first option is the plain one.
type dimension struct {
	name    string
	options []string
}

var dimensions = []dimension{
	{"format", []string{"csv", "book", "rawbook"}}, // rawbook: written part by part, as other programs lay workbooks out
	{"delimiter", []string{"comma", "semicolon", "tab", "pipe"}},
	{"sepline", []string{"no", "yes"}},
	{"quoting", []string{"minimal", "all", "padded", "newline"}},
	{"eol", []string{"lf", "crlf", "cr", "mixed", "nofinal"}},
	{"encoding", []string{"utf8", "utf8-bom", "utf16le", "utf16be", "cp1252", "mojibake", "nfd", "entities"}},
	{"top", []string{"none", "title", "block", "blank-title", "prose"}},
	{"bottom", []string{"none", "totals", "prose", "winners", "volunteers", "records", "column-totals"}},
	{"paging", []string{"none", "headings", "numbered", "blank"}},
	{"language", []string{"en", "de", "fr", "es", "it", "nl", "sv", "pl", "pt", "da"}},
	{"headings", []string{"usual", "other", "upper", "lower", "units", "newline", "misspelt", "colon", "two-row"}},
	{"order", []string{"usual", "shuffled", "time-first"}},
	{"name", []string{"full", "family-comma", "FAMILY-comma", "FAMILY-given", "two-columns", "two-columns-family-first", "upper", "lower", "initial", "spaces", "middle", "typographic"}},
	{"age", []string{"none", "age", "age31dec", "yob", "yob2", "dob", "dob2", "dob-words", "five", "five-spaced", "five-range", "range", "ten-range", "ten-open", "vet", "words", "juniors-even", "juniors-odd", "senior-39", "age-and-group"}},
	{"sex", []string{"letter", "none", "other", "lower", "with-x", "gaps"}},
	{"time", []string{"m:ss", "mm:ss", "m:ss-over-60", "h:mm:ss", "hh:mm:ss", "tenths", "hundredths", "thousandths", "comma", "letters", "words", "primes", "typographic-primes",
		"mm.ss", "mm.ss-lost", "mm,ss-lost", "h.mm.ss", "decimal", "decimal-comma", "fraction", "seconds", "seconds-tenths", "stopwatch", "centiseconds", "iso8601", "mixed", "short-hour", "spaced", "suffix", "min-sec",
		"cell", "cell-mm:ss", "cell-elapsed", "cell-tenths", "cell-general", "cell-stopwatch", "cell-stopwatch-mixed", "cell-mm.ss", "cell-decimal", "cell-seconds", "cell-date-and-time", "cell-mixed"}},
	{"position", []string{"number", "ordinal", "dot", "padded", "ties", "ties-before", "none", "blank-ties", "text"}},
	{"source", []string{"file", "file-spaces", "file-compact", "file-words", "file-results-first", "file-figures", "title-event", "title-upper", "title-typo", "title-words", "title-short", "title-figures", "title-dots", "title-month-first", "title-iso", "labels", "labels-cells", "split", "columns", "tab", "folder", "printed-on", "two-digit-year",
		"title-not-file", "no-date", "no-course", "two-dates"}},
	{"extra", []string{"none", "gap", "pace", "split", "gun-chip", "catpos", "points", "grade", "total", "pb", "speed", "clock", "number", "distance", "many"}},
	{"odd", []string{"none", "unnamed", "dnf", "untimed", "dq", "repeats", "impossible", "walkers", "two-people", "twice", "many"}},
	{"notes", []string{"none", "taking-part", "chat"}},
	{"shape", []string{"single", "season", "season-filldown", "sections", "tabs", "tabs-by-course", "two-part", "two-part-tabs", "men-women", "side-by-side", "excerpt", "reissue", "copy", "same-bytes", "two-sessions", "no-headings", "big", "not-results"}},
	{"tabs", []string{"one", "empty", "helper-hidden", "winners", "old-hidden"}},
	{"cells", []string{"natural", "text", "formula", "inline", "rich"}},
	{"date1904", []string{"no", "yes"}},
	{"blank", []string{"none", "leading-columns", "thousands", "between", "trailing-columns"}},
	{"club", []string{"yes", "none"}},
	{"extension", []string{"usual", "upper", "txt"}},
}

// plan is the option of each dimension for one sheet.
type plan map[string]string

func plainPlan() plan {
	p := plan{}
	for _, d := range dimensions {
		p[d.name] = d.options[0]
	}
	return p
}

// alone lists every option that is not the plain one.
func alone() [][2]string {
	var out [][2]string
	for _, d := range dimensions {
		for _, o := range d.options[1:] {
			out = append(out, [2]string{d.name, o})
		}
	}
	return out
}

// newPlan gives sheet i: one in four differs in one option, the others in several.
func newPlan(i int, rng *rand.Rand) plan {
	p := plainPlan()
	if i%4 == 0 {
		list := alone()
		o := list[i/4%len(list)]
		p[o[0]] = o[1]
		p.settle(o[0])
		return p
	}
	for _, d := range dimensions {
		chance := 0.3
		switch d.name {
		case "shape":
			chance = 0.25
		case "source":
			chance = 0.6
		case "time", "age", "format":
			chance = 0.7
		case "sepline", "eol", "date1904", "club", "extension":
			chance = 0.15
		}
		if rng.Float64() < chance {
			p[d.name] = pick(rng, d.options[1:])
		}
	}
	switch p["source"] {
	case "no-date", "no-course", "two-dates":
		if rng.IntN(2) > 0 { // enough of these come alone
			p["source"] = "title-words"
		}
	}
	p.settle("")
	return p
}

func (p plan) text() bool { return p["format"] == "csv" }

func in(s string, of ...string) bool {
	for _, o := range of {
		if s == o {
			return true
		}
	}
	return false
}

// settle takes back what doesn't go together. keep is the one dimension that
// a sheet is about.
func (p plan) settle(keep string) {
	plainly := func(dims ...string) {
		for _, name := range dims {
			for _, d := range dimensions {
				if d.name == name {
					p[name] = d.options[0]
				}
			}
		}
	}
	// what only workbooks have
	if keep == "tabs" || keep == "cells" || keep == "date1904" || in(p["shape"], "tabs", "tabs-by-course", "two-part-tabs") || p["source"] == "tab" ||
		len(p["time"]) > 4 && p["time"][:4] == "cell" || p["position"] == "text" {
		if p.text() {
			p["format"] = "book"
		}
	}
	if keep == "cells" {
		p["format"] = "rawbook"
		if in(p["cells"], "formula") {
			p["time"] = "cell"
		}
	}
	if keep == "date1904" {
		p["source"] = "labels-cells"
	}
	if p.text() {
		plainly("tabs", "cells", "date1904")
	} else {
		plainly("delimiter", "sepline", "quoting", "eol", "encoding")
		if p["format"] == "book" && in(p["cells"], "formula", "inline", "rich") {
			p["format"] = "rawbook"
		}
	}
	if p["cells"] == "text" && len(p["time"]) > 4 && p["time"][:4] == "cell" {
		plainly("cells")
	}
	// what the shape needs
	switch p["shape"] {
	case "season", "season-filldown":
		p["source"] = "columns"
	case "sections":
		p["source"] = "sections"
		plainly("paging", "top")
	case "tabs", "tabs-by-course":
		p["source"] = p["shape"]
		plainly("tabs", "top")
	case "two-part", "two-part-tabs", "copy", "same-bytes", "reissue", "two-sessions":
		if p["shape"] != "two-part-tabs" {
			p["source"] = "file"
		}
		if in(p["source"], "no-date", "no-course", "two-dates", "folder", "columns", "tab") {
			p["source"] = "file"
		}
		plainly("top", "tabs", "odd")
		if in(p["shape"], "two-part", "two-part-tabs") {
			plainly("headings", "position", "order", "notes", "extra", "bottom", "paging", "blank")
		}
	case "men-women":
		plainly("sex")
		p["sex"] = "none"
		plainly("paging", "position")
		if p["bottom"] == "column-totals" {
			plainly("bottom")
		}
	case "side-by-side":
		plainly("paging", "position", "bottom", "headings", "blank", "odd", "extra", "notes", "quoting")
		p["sex"] = "none"
		p["age"] = pickAge(p["age"])
		if p["order"] == "shuffled" {
			plainly("order")
		}
	case "no-headings":
		plainly("language", "headings", "order", "extra", "odd", "notes", "paging", "age", "top", "bottom", "name", "position", "club", "blank", "sex")
		p["sex"] = "none"
		p["source"] = "file"
		if in(p["time"], "seconds", "seconds-tenths", "fraction", "decimal", "decimal-comma", "mm.ss-lost", "mm,ss-lost", "cell-seconds", "cell-decimal", "cell-general", "min-sec") {
			plainly("time")
		}
	case "not-results":
		plainly("odd", "paging", "bottom", "time", "source", "top", "tabs", "cells")
	}
	if p["source"] == "columns" && in(p["shape"], "single", "excerpt", "big") || in(p["source"], "title-words", "title-short", "title-figures", "title-dots", "title-month-first", "title-iso",
		"labels", "labels-cells", "split", "printed-on", "two-digit-year", "no-date", "no-course", "two-dates", "title-not-file", "tab", "title-event", "title-upper", "title-typo") {
		if in(p["top"], "none", "title", "block") {
			p["top"] = "none" // the source writes the title itself
		}
	}
	if p["source"] == "tab" && in(p["shape"], "men-women", "side-by-side", "excerpt") {
		p["source"] = "file" // their tabs bear no date
	}
	if p["quoting"] == "newline" && keep != "quoting" {
		p["notes"] = "chat"
	}
	if keep == "quoting" && p["quoting"] == "newline" {
		p["notes"] = "chat"
	}
	if p["headings"] == "newline" && p.text() && p["quoting"] == "padded" {
		plainly("headings")
	}
	// comma in the field and comma between the fields is what quotes are for
	if p["quoting"] == "padded" && (p["delimiter"] == "comma" || in(p["name"], "family-comma", "FAMILY-comma")) {
		p["delimiter"] = "pipe"
	}
	if p["extension"] == "txt" {
		if !p.text() {
			plainly("extension")
		} else if p["delimiter"] == "comma" {
			p["delimiter"] = "tab"
		}
	}
	if p["encoding"] == "cp1252" && p["language"] == "pl" {
		plainly("encoding")
	}
	if in(p["encoding"], "mojibake", "cp1252") && p["time"] == "typographic-primes" {
		plainly("time")
	}
	// a group column takes the place of an age
	if p["order"] == "time-first" && p["position"] == "none" && keep == "" {
		plainly("position")
	}
	if in(p["position"], "none", "blank-ties") && in(p["odd"], "untimed", "many", "dnf", "dq") {
		plainly("position")
	}
	if in(p["age"], "ten-open", "juniors-odd", "juniors-even", "senior-39") && p["shape"] == "excerpt" {
		plainly("shape")
	}
	// the man's and the woman's letters must both be there to tell H/M from M/W
	if p["sex"] == "gaps" && p["shape"] == "excerpt" {
		plainly("sex")
	}
	if p["paging"] == "numbered" && p["bottom"] == "column-totals" {
		plainly("bottom")
	}
}

func pickAge(age string) string {
	if in(age, "none", "age", "yob", "range") {
		return age
	}
	return "none"
}

// traits lists what differs from the plain sheet.
func (p plan) traits() []string {
	var out []string
	for _, d := range dimensions {
		if p[d.name] != d.options[0] {
			out = append(out, d.name+"="+p[d.name])
		}
	}
	sort.Strings(out)
	return out
}
