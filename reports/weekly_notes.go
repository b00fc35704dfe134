package reports

import "lapwing/reports/table"

// notesTab explains every figure, sign and rule of the workbook.
func (d *weekly) notesTab(i issueOf) *table.Tab {
	n := newNotes("Notes", d.standingOf(i), i.Changes)
	add := n.add
	add("Finishers", "Everybody who finished, with or without a name or time, once for each place. Not: did not finish, disqualified, the same line twice.")
	add("Counts", "Times, places and names are counted apart. Where they differ, something is still being looked for.")
	add("Place", "As on the sheet. Two people with the same time and different places are not tied; = is shown where the sheet says so.")
	add("In group", "Among named runners, walkers and guided runners whose age group is certain. Who is not named, or asked not to be shown, is passed over.")
	rule := "Age on the day: " + d.o.groupScheme()
	if !d.o.groupsByDay() {
		rule = d.o.groupRule() + " " + upperFirst(d.o.groupScheme())
	}
	add("Group", rule+". W women, M men, X neither. Empty where the age is not certain. A group of fewer than five X is not printed.")
	for _, m := range d.legend() {
		text := upperFirst(m.Text) + "."
		if m.Sign == "PB" {
			text += " Strictly faster than every earlier time, in whole seconds; a first result is none."
		}
		add(m.Sign, text)
	}
	milestone := "The number of runs so far, at the round numbers."
	if !d.hasHistory() {
		milestone += " Counted in the sheets held here, and what the desk has entered of earlier runs."
	}
	add("10th run, …", milestone)
	add("PBs running", "Timed results one after the other, each of them a PB.")
	add("Weeks in a row", "Weeks (Monday to Sunday), one after the other, in each of which this person finished a run. A week in which no run was held, of which no sheet is here, or in which the person helped instead, does not end the row, and is not counted; Since is the day of the first run of the row.")
	add("Age grade", d.gradeMeaning()+" It allows a fair look across ages. ~ : several ages are possible. 100 or more: to be checked before anybody is praised. Source: road-running age standards and factors compiled by Alan Jones and Tom Bernhard.")
	add("Day against usual", "How much slower (+) or faster (−) the same people were than on a usual day here, in seconds for somebody who takes 25:00; allows for who came. It says nothing about why.")
	add("Records", d.o.byAgeGroup("By sex and age group on the day, runners and guided runners, adults. Candidates until confirmed by the results desk."))
	if !d.hasHistory() {
		add("Since sheets began", "The sheets held here do not go back to the first run, or nobody has said so. Bests and fastest times are the best in these sheets; newcomers can't be told.")
	}
	add("Children", "Anybody who may be under 18: first name and initial, no club, no age grade, no margins, no records.")
	add("Something wrong?", "Please tell the results desk. Corrections appear in the next issue, with a line on what changed.")
	n.health()
	n.madeWith(d.o)
	return n.tab("Notes")
}
