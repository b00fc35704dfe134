package pipeline

import (
	"context"
	"strings"
	"testing"
)

func TestMembers(t *testing.T) {
	files := threeWeeks()
	files["archive/members.csv"] = "person,club,claim,from,to,birth_date\n" +
		"Ben Reed,Wick Runners,First,2025-01-01,,1979-02-03\n" + // 46 on every day: within M45
		"Ben Reed,Tarn Harriers,2nd,2025-06-01,2026-01-05,\n" +
		"Ada Moss,TH,,,,1999-01-01\n" + // not W40: changes nothing and is asked
		"Otto Quillfeather,Tarn Harriers,first,,,2000-01-01\n"
	d := newDesk(t, files)
	d.want("view", d.text(`select string_agg(coalesce(runner_id, '–') || ' ' || name || ' ' || club || ' ' || claim || ' ' || coalesce(member_from::varchar, '–') || ' ' || coalesce(member_to::varchar, '–'), '; ' order by written, club)
		from main.members where written = 'Ben Reed'`),
		"R2 Ben Reed Tarn Harriers second 2025-06-01 2026-01-05; R2 Ben Reed Wick Runners first 2025-01-01 –")
	d.want("not a runner", d.text("select name || coalesce(runner_id, ' nobody') from main.members where written = 'Otto Quillfeather'"), "Otto Quillfeather nobody")
	ages := "select string_agg(age_low || '-' || age_high, ',' order by run_date) from main.results where name = ?"
	d.want("Ben's ages", d.text(ages, "Ben Reed"), "46-46,46-46,46-46")
	d.want("Ada's ages", d.text(ages, "Ada Moss"), "40-44,40-44,40-44")
	if p := d.problems("member-birth-date"); !strings.Contains(p, "members.csv, row 4: Ada Moss") || strings.Contains(p, "1999") {
		t.Errorf("asked: %q", p)
	}
	d.write(map[string]string{"archive/members.csv": "person,club,claim,from,to,birth_date\nBen Reed,Wick Runners,third,,,\n"})
	if _, err := d.pl.Refresh(context.Background(), false); err == nil || !strings.Contains(err.Error(), `claim "third": write first or second`) || !strings.Contains(err.Error(), "members.csv") {
		t.Errorf("a wrong claim: %v", err)
	}
}

// Other names of a club from the settings are the club, in results, for the
// linker and in members.csv; all other spellings stay as printed.
func TestClubNames(t *testing.T) {
	files := threeWeeks()
	files["sheets/alder-bank_2026-01-24.csv"] = week("1,Ada Moss,20:00,W40,W,T.H.", "2,Ben Reed,21:00,M45,M,Wick runners")
	files["archive/members.csv"] = "person,club,claim,from,to,birth_date\nAda Moss,T H,first,,,\n"
	d := &desk{t: t, dir: t.TempDir()}
	d.write(files)
	d.pl = openForTest(t, d.dir)
	d.pl.Settings.Clubs = map[string]string{"t.h.": "Tarn Harriers"}
	d.load()
	d.want("clubs", d.text("select string_agg(distinct club, ', ' order by club) from main.results where name in ('Ada Moss', 'Ben Reed')"), "Tarn Harriers, Wick Runners, Wick runners")
	d.want("runners", d.text("select count(*)::varchar from main.runners"), "4")
	d.want("member", d.text("select club from main.members"), "Tarn Harriers")
	d.pl.Settings.Clubs = nil
	if did, err := d.pl.Refresh(context.Background(), false); err != nil || !did {
		t.Fatalf("another setting does not lead to a refresh: %v", err)
	}
	d.want("clubs without the setting", d.text("select club from main.results where run_date = '2026-01-24' and name = 'Ada Moss'"), "T.H.")
}
