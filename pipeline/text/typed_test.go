package text

import (
	"os/exec"
	"testing"
)

func TestTyped(t *testing.T) {
	for _, c := range []struct{ word, unix, windows string }{
		{"alder-bank_2026-01-03.csv", `"alder-bank_2026-01-03.csv"`, `"alder-bank_2026-01-03.csv"`},
		{"my sheet.csv", `"my sheet.csv"`, `"my sheet.csv"`},
		{"it's a run.csv", `"it's a run.csv"`, `"it's a run.csv"`},
		{"Läufe & März.csv", `"Läufe & März.csv"`, `"Läufe & März.csv"`},
		{"cost $5.csv", `'cost $5.csv'`, `"cost $5.csv"`},
		{"it's $5!.csv", `'it'\''s $5!.csv'`, `"it's $5!.csv"`},
		{"back`tick`.csv", "'back`tick`.csv'", "\"back`tick`.csv\""},
		{`back\slash.csv`, `'back\slash.csv'`, `"back\slash.csv"`},
		{`say "hi".csv`, `'say "hi".csv'`, ""},
		{"-dash.csv", `"./-dash.csv"`, `"./-dash.csv"`},
		{"two\nlines.csv", `$'two\012lines.csv'`, ""},
		{"nb\u00a0sp.csv", `$'nb\302\240sp.csv'`, "\"nb\u00a0sp.csv\""},
		{"L\xe41's.csv", `$'L\3441\'s.csv'`, ""},
		{"", `""`, `""`},
	} {
		if got := typed(c.word, false); got != c.unix {
			t.Errorf("%q: %s, want %s", c.word, got, c.unix)
		}
		if c.windows == "" {
			continue
		}
		if got := typed(c.word, true); got != c.windows {
			t.Errorf("%q on Windows: %s, want %s", c.word, got, c.windows)
		}
	}
}

// TestTypedInShell lets a shell say what it makes of what was typed.
func TestTypedInShell(t *testing.T) {
	shell, err := exec.LookPath("bash")
	if err != nil {
		t.Skip("there is no bash here")
	}
	for _, word := range []string{"my sheet.csv", "it's.csv", "$HOME $(id) `id`.csv", `a\b\n.csv`, `"q" and 'q' $x`, "!!.csv", "* ? [a] {a,b} ~ # ; & | < > ( ) ^ %.csv",
		"tab\tand\nline.csv", "L\xe4ufe1.csv", "nb\u00a0sp.csv", "emoji🏃‍♀️.csv", "e\u0301tude.csv"} {
		out, err := exec.Command(shell, "-c", "set -H; printf %s "+typed(word, false)).Output()
		if err != nil || string(out) != word {
			t.Errorf("%q typed as %s came out as %q, %v", word, typed(word, false), out, err)
		}
	}
}
