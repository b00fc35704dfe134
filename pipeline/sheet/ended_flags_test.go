package sheet

import (
	"strings"
	"testing"
)

// Columns of yes and no under a word for how a race ended are its status; others of that kind
// keep what they are.
func TestEndedByFlag(t *testing.T) {
	const head = "pos,name,time,"
	for _, c := range []struct{ name, text, status string }{
		{"void", head + "void\n1,Jo Lee,18:20,0\n2,Al Roe,18:31,1\n3,Cy Dee,18:40,0\n4,Di Fox,18:42,0\n", ",void,,"},
		{"two flags", head + "is_dnf,is_dq\n1,Jo Lee,18:20,false,false\n2,Al Roe,,true,false\n3,Cy Dee,18:40,false,true\n4,Di Fox,18:42,false,false\n5,Ed Gow,18:45,f,f\n6,Ida Kay,18:50,f,f\n", ",dnf,dq,,,"},
		{"letters of a database", head + "deleted\n1,Jo Lee,18:20,f\n2,Al Roe,18:31,f\n3,Cy Dee,18:40,t\n4,Di Fox,18:42,f\n", ",,void,"},
		{"nobody", head + "dnf\n1,Jo Lee,18:20,false\n2,Al Roe,18:31,false\n3,Cy Dee,18:40,false\n4,Di Fox,18:42,false\n", ",,,"},
		{"a tick", head + "DNF?\n1,Jo Lee,18:20,\n2,Al Roe,,x\n3,Cy Dee,18:40,\n4,Di Fox,18:42,\n", ",dnf,,"},
		{"most have finished", head + "finished\n1,Jo Lee,18:20,1\n2,Al Roe,18:31,1\n3,Cy Dee,18:40,1\n4,Di Fox,18:42,0\n", ",,,did not finish"},
		{"not counted", head + "Not counted\n1,Jo Lee,18:20,\n2,Al Roe,18:31,x\n3,Cy Dee,18:40,\n4,Di Fox,18:42,\n", ",not counted,,"},
		{"a question", head + "Finished?\n1,Jo Lee,18:20,Y\n2,Al Roe,18:31,N\n3,Cy Dee,18:40,Y\n4,Di Fox,18:42,Y\n", ",did not finish,,"},
		{"valid, in German", head + "gültig\n1,Jo Lee,18:20,ja\n2,Al Roe,18:31,nein\n3,Cy Dee,18:40,ja\n4,Di Fox,18:42,ja\n", ",void,,"},
		{"all of the way", head + "Full distance?\n1,Jo Lee,18:20,Y\n2,Al Roe,18:31,N\n3,Cy Dee,18:40,Y\n4,Di Fox,18:42,Y\n", ",did not finish,,"},
		{"counted", head + "Include in results\n1,Jo Lee,18:20,yes\n2,Al Roe,18:31,no\n3,Cy Dee,18:40,yes\n4,Di Fox,18:42,yes\n", ",void,,"},
		{"counted for something else", head + "Counts for league\n1,Jo Lee,18:20,yes\n2,Al Roe,18:31,no\n3,Cy Dee,18:40,yes\n4,Di Fox,18:42,yes\n", "-"},
		{"looked at", head + "Verified\n1,Jo Lee,18:20,Y\n2,Al Roe,18:31,N\n3,Cy Dee,18:40,Y\n4,Di Fox,18:42,Y\n", ",unconfirmed,,"},
		{"only ticks", head + "Finished\n1,Jo Lee,18:20,✓\n2,Al Roe,18:31,\n3,Cy Dee,18:40,✓\n4,Di Fox,18:42,✓\n", ",did not finish,,"},
		{"a cross", head + "Valid\n1,Jo Lee,18:20,✓\n2,Al Roe,18:31,✗\n3,Cy Dee,18:40,✓\n4,Di Fox,18:42,✓\n", ",void,,"},
		{"under a known heading", head + "Full distance\n1,Jo Lee,18:20,yes\n2,Al Roe,18:31,no\n3,Cy Dee,18:40,yes\n4,Di Fox,18:42,yes\n5,Ed Gow,18:45,yes\n6,Ida Kay,18:50,yes\n", ",did not finish,,,,"},
		{"a word for a name", head + "Finisher\n1,Jo Lee,18:20,1\n2,Al Roe,18:31,0\n3,Cy Dee,18:40,1\n4,Di Fox,18:42,1\n5,Ed Gow,18:45,1\n6,Ida Kay,18:50,1\n", ",did not finish,,,,"},
		{"valid, in Turkish", head + "Geçerli\n1,Jo Lee,18:20,evet\n2,Al Roe,18:31,hayır\n3,Cy Dee,18:40,evet\n4,Di Fox,18:42,evet\n", ",void,,"},
		{"in letters", head + "V cíli\n1,Jo Lee,18:20,A\n2,Al Roe,18:31,N\n3,Cy Dee,18:40,A\n4,Di Fox,18:42,A\n", ",did not finish,,"},
		{"to be left out", head + "Ignore?\n1,Jo Lee,18:20,\n2,Al Roe,18:31,x\n3,Cy Dee,18:40,\n4,Di Fox,18:42,\n", ",ignore,,"},
		{"rows that end before a blank cell", head + "Valid\n1,Jo Lee,18:20,x\n2,Al Roe,18:31\n3,Cy Dee,18:40,x\n4,Di Fox,18:42,x\n", ",void,,"},
		{"finished, in Croatian", head + "Završio\n1,Jo Lee,18:20,da\n2,Al Roe,18:31,ne\n3,Cy Dee,18:40,da\n4,Di Fox,18:42,da\n", ",did not finish,,"},
		{"finished, in Romanian", head + "A terminat\n1,Jo Lee,18:20,da\n2,Al Roe,18:31,nu\n3,Cy Dee,18:40,da\n4,Di Fox,18:42,da\n", ",did not finish,,"},
		{"finished, in Ukrainian", head + "Фініш\n1,Jo Lee,18:20,так\n2,Al Roe,18:31,ні\n3,Cy Dee,18:40,так\n4,Di Fox,18:42,так\n", ",did not finish,,"},
		{"a circle and a cross", head + "完走\n1,Jo Lee,18:20,○\n2,Al Roe,18:31,×\n3,Cy Dee,18:40,○\n4,Di Fox,18:42,○\n", ",did not finish,,"},
		{"a letter for a circle", head + "완주\n1,Jo Lee,18:20,O\n2,Al Roe,18:31,X\n3,Cy Dee,18:40,O\n4,Di Fox,18:42,O\n", ",did not finish,,"},
		{"finished, in Korean", head + "완주\n1,Jo Lee,18:20,예\n2,Al Roe,18:31,아니오\n3,Cy Dee,18:40,예\n4,Di Fox,18:42,예\n", ",did not finish,,"},
		{"ran", head + "Ran?\n1,Jo Lee,18:20,yes\n2,Al Roe,18:31,no\n3,Cy Dee,18:40,yes\n4,Di Fox,18:42,yes\n", ",did not run,,"},
		{"a token of their own", head + "Own token?\n1,Jo Lee,18:20,Y\n2,Al Roe,18:31,N\n3,Cy Dee,18:40,Y\n4,Di Fox,18:42,Y\n", ",wrong token,,"},
		{"which way", head + "Course\n1,Jo Lee,18:20,full\n2,Al Roe,18:31,short\n3,Cy Dee,18:40,full\n4,Di Fox,18:42,full\n", ",short course,,"},
		{"a member, in Croatian", head + "Član\n1,Jo Lee,18:20,da\n2,Al Roe,18:31,ne\n3,Cy Dee,18:40,da\n4,Di Fox,18:42,da\n", "-"},
		{"how they came", head + "Bike\n1,Jo Lee,18:20,\n2,Al Roe,18:31,x\n3,Cy Dee,18:40,\n4,Di Fox,18:42,\n", "-"},
		{"most have not finished something else", head + "completed\n1,Jo Lee,18:20,no\n2,Al Roe,18:31,no\n3,Cy Dee,18:40,yes\n4,Di Fox,18:42,no\n", "-"},
		{"how many were finished", head + "finished\n1,Jo Lee,18:20,12\n2,Al Roe,18:31,1\n3,Cy Dee,18:40,0\n4,Di Fox,18:42,3\n", "-"},
		{"a status in words", head + "DNF\n1,Jo Lee,18:20,\n2,Al Roe,,DNF\n3,Cy Dee,18:40,\n4,Di Fox,18:42,\n", "-"},
		{"numbers", head + "ab\n1,Jo Lee,18:20,1\n2,Al Roe,18:31,2\n3,Cy Dee,18:40,0\n4,Di Fox,18:42,3\n", "-"},
	} {
		s, err := Read("alder-bank_2026-01-03.csv", []byte(c.text), Options{})
		if err != nil {
			t.Fatal(err)
		}
		p, got := s.Parts[0], ""
		if at := p.Index(Status); at >= 0 && p.Columns[at].Heading == "Status" {
			n := 0
			p.Each(func(_ int, cells []string) error {
				if n++; n > 1 {
					got += ","
				}
				got += cellAt(cells, at)
				return nil
			}) // a grid has no errors of its own
		} else {
			got = "-"
		}
		if got != c.status {
			t.Errorf("%s: %q, want %q", c.name, got, c.status)
		}
	}
}

// A column headed state is a status where all its values are words for how races ended, and
// none where they are states of a country.
func TestState(t *testing.T) {
	for values, want := range map[string]Meaning{"finished,did_not_finish,finished,finished": Status, "OH,PA,OH,NY": Other} {
		v := strings.Split(values, ",")
		s, err := Read("alder-bank_2026-01-03.csv", []byte("pos,name,time,state\n1,Jo Lee,18:20,"+v[0]+"\n2,Al Roe,,"+v[1]+"\n3,Cy Dee,18:40,"+v[2]+"\n4,Di Fox,18:42,"+v[3]+"\n"), Options{})
		if err != nil {
			t.Fatal(err)
		}
		if got := s.Parts[0].Columns[3].Meaning; got != want {
			t.Errorf("%s: %v, want %v", values, got, want)
		}
	}
}
