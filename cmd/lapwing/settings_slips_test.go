package main

import (
	"strings"
	"testing"
)

// A slip in the settings is told with its line or its key and what may stand there;
// nothing is passed over in silence.
func TestSlipsInSettings(t *testing.T) {
	for _, c := range []struct{ toml, says string }{
		{"[headings]\n\"ziel\" = \"tiem\"\n", `[headings]: "ziel" = "tiem": write one of other, position, name,`},
		{"[words]\n\"nordic\" = \"wlaker\"\n", `[words]: "nordic" = "wlaker": write one of runner, walker,`},
		{"[courses]\n\"alder bank 5k\" = \"\"\n", `[courses]: "alder bank 5k" = ""`},
		{"[heading]\n\"ziel\" = \"time\"\n", `there is no setting "heading"`},
		{"memory_limit = \"lots\"\n", `as in "4GB"`},
		{"\n[headings]\nziel = time\n", "lapwing.toml, line 3: ziel = time: this can't be read"},
		{"date_order = “dmy”\n", "lapwing.toml, line 1: date_order = “dmy”: write straight quotation marks"},
		{"threads = 1\nthreads = 2\n", "threads stands there twice"},
	} {
		inFolder(t, map[string]string{"lapwing.toml": c.toml})
		if o := plainly(t, "sheets"); o.code != exitFailed || !strings.Contains(o.errOut, c.says) {
			t.Errorf("%s: exit %d, %s", c.toml, o.code, o.errOut)
		}
	}
	// what some editors put in front is nothing
	inFolder(t, map[string]string{"lapwing.toml": "\ufeff[headings]\r\n\"ziel\" = \"time\"\r\n", "sheets/alder-bank_2026-10-03.csv": "Pos,Name,Ziel\n1,Jo Lee,18:20\n2,Al Roe,18:31\n"})
	if o := plainly(t, "load", "sheets"); o.code != exitOK {
		t.Error(o.out, o.errOut)
	}
}

// Accepting problems where there are none of the kind is refused: most likely a slip.
func TestAcceptWhereThereAreNone(t *testing.T) {
	inFolder(t, map[string]string{"sheets/alder-bank_2026-10-03.csv": "Pos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18.a\n"})
	plainly(t, "load", "sheets")
	wants(t, plainly(t, "sheets", "problems").out, "time unreadable")
	for _, args := range [][]string{{"--course", "alder-bnak"}, {"--date", "2026-10-10"}} {
		o := plainly(t, append([]string{"sheets", "problems", "--accept", "time unreadable"}, args...)...)
		if o.code != exitFailed || !strings.Contains(o.errOut, `no problem of the kind "time unreadable" needs a look there`) {
			t.Errorf("%v: exit %d, %s%s", args, o.code, o.out, o.errOut)
		}
	}
	if o := plainly(t, "sheets", "problems", "--accept", "time unreadable", "--course", "alder-bank", "--date", "2026-10-03"); o.code != exitOK {
		t.Error(o.errOut)
	}
	wants(t, plainly(t, "sheets", "problems").out, "Nothing needs a look")
}
