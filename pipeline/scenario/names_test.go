package scenario

import (
	"strings"
	"testing"
)

func TestNameLists(t *testing.T) {
	b := book()
	if n := len(b.given); n < 600 {
		t.Errorf("%d given names, want at least 600", n)
	}
	if n := len(b.surnames); n < 1500 {
		t.Errorf("%d surnames, want at least 1500", n)
	}
	t.Logf("%d given names, %d surnames, %d cultures", len(b.given), len(b.surnames), len(b.cultures))
	for _, c := range b.cultures {
		if c.given['M'] == nil || c.given['W'] == nil || c.surnames == nil || c.share <= 0 {
			t.Errorf("culture %s lacks given names of M or W, surnames or a share", c.name)
		}
	}
	for full, forms := range b.short {
		if len(forms) == 0 {
			t.Errorf("%s has no short form", full)
		}
	}
	for _, w := range append(append([]string{}, b.given...), b.surnames...) {
		if strings.ContainsAny(w, ",;\t\"") || strings.TrimSpace(w) != w || w == "" {
			t.Errorf("name %q would need quoting", w)
		}
	}
}
