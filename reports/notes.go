package reports

import "lapwing/reports/table"

// notes builds the tab Notes that every workbook ends with.
type notes struct{ t *table.Table }

// newNotes begins with the issue and what changed since the one before.
func newNotes(name, issue string, changes []string) notes {
	n := notes{&table.Table{Name: name, Columns: []table.Column{{Head: "What", Max: 20, Width: 20}, {Head: "Meaning", Max: 74, Width: 74}}}}
	n.add("Issue", issue+".")
	for _, c := range changes {
		n.add("Changed", c)
	}
	return n
}

func (n notes) add(what, meaning string) { n.t.Add(nil, table.Words(what), table.Words(meaning)) }

// health is the caution that ends every explanation.
func (n notes) health() {
	n.add("Health", "Times, grades and form are a guide, not advice on health or training. Stop for pain, dizziness or illness; ask a doctor first if in doubt.")
}

// madeWith names what the figures come from.
func (n notes) madeWith(o Options) {
	if m := o.madeWith(); m != "" {
		n.add("Made with", m)
	}
}

func (n notes) tab(title string) *table.Tab {
	tab := &table.Tab{Name: "Notes"}
	tab.Add(table.Title{Level: 1, Text: title}, table.Full{Table: n.t})
	return tab
}
