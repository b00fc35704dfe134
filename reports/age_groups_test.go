package reports

import (
	"context"
	"strings"
	"testing"

	"lapwing/pipeline/age"
)

// Every report states which age its groups go by, and none that they go by the age on the
// day where they don't.
func TestReportsStateTheRuleOfGroups(t *testing.T) {
	db, last := district(t, 8, 40, true)
	byYear := age.DefaultRule()
	byYear.Reckoning = age.ByYear
	for _, o := range []Options{{}, {AgeRule: age.DefaultRule()}, {AgeRule: byYear}} {
		rule := "Age groups go by the age on the day."
		if o.AgeRule.Reckoning == age.ByYear {
			rule = "Age groups go by the age reached on 31 December of the year."
		}
		w, err := readOne(context.Background(), db, o, Run{"heron-mere", last, ""})
		if err != nil {
			t.Fatal(err)
		}
		s, err := readSeason(context.Background(), db, o, season2026(last))
		if err != nil {
			t.Fatal(err)
		}
		if err := s.compute(); err != nil {
			t.Fatal(err)
		}
		c := cardOf(t, db, o, "R1")
		page, err := c.page(issueOf{Number: 1})
		if err != nil {
			t.Fatal(err)
		}
		for report, text := range map[string]string{"weekly": w.public(issueOf{Number: 1}).Text(), "season": s.book(issueOf{Number: 1}).Text(),
			"card": strings.Join(strings.Fields(c.Text()), " "), "workbook of a card": c.book(issueOf{Number: 1}).Text(), "page": string(page)} {
			stated := rule
			if report == "weekly" && o.AgeRule.Reckoning == age.ByDay {
				stated = "Age on the day: two-year groups"
			}
			if !strings.Contains(text, stated) {
				t.Errorf("%s does not say %q", report, stated)
			}
			if o.AgeRule.Reckoning == age.ByYear && (strings.Contains(text, "group on the day") || strings.Contains(text, "Age on the day: two")) {
				t.Errorf("%s says that groups go by the age on the day", report)
			}
		}
	}
}
