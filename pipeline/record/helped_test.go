package record

import "testing"

// Somebody who only helped has not run, and the winner's name is behind what he won.
func TestHelpedAndPrizes(t *testing.T) {
	c := NoColumns()
	c.Name, c.Time, c.Notes = 0, 1, 2
	rows := [][]string{{"Jo Lee", "18:20", "volunteered last week"}, {"Al Roe", "18:31", "volunteered"}, {"Una Tye", "", "volunteered"}, {"Cy Dee", "", "forgot her barcode"}, {"Winner: Di Fox", "18:40", ""}, {"Lee: Jo", "18:42", ""}}
	lines, _ := readRows(t, c, []string{"Name", "Time", "Notes"}, Options{}, func(yield func([]string)) {
		for _, r := range rows {
			yield(r)
		}
	})
	want := []struct {
		name   string
		status Status
	}{{"Jo Lee", OK}, {"Al Roe", OK}, {"Una Tye", NotStarted}, {"Cy Dee", Untimed}, {"Di Fox", OK}, {"Lee: Jo", OK}}
	for i, w := range want {
		if l := lines[i]; l.Name != w.name || l.Status != w.status {
			t.Errorf("%q: %q %v, want %q %v", rows[i], l.Name, l.Status, w.name, w.status)
		}
	}
}
