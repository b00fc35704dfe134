package main

import (
	"fmt"
	"os"
	"path/filepath"

	"lapwing/pipeline"
	"lapwing/pipeline/place"
	"lapwing/pipeline/text"
)

// mostAsked is how many questions are put at a time: who has answered them has
// seen how it goes.
const mostAsked = 10

// askQuestions prints the questions of waiting sheets, each with the lines that
// answer it, ready to be typed.
func (a *app) askQuestions(questions []pipeline.Question) {
	order, answers, mend := false, false, ""
	lacking := map[string]int{}
	for _, q := range questions {
		lacking[q.Lacks]++
	}
	for i, q := range questions {
		if last := len(questions) - 1; i >= mostAsked-1 && i < last {
			if i == mostAsked-1 {
				fmt.Fprintf(a.out, "… and %d more sheets wait; see lapwing sheets. The last of them:\n", last-i)
			}
			continue
		}
		switch len(q.Answers) {
		case 0:
			fmt.Fprintf(a.out, "Waiting: %s\n", q.Words)
			if !q.TabOnly {
				mend = q.Sheet
			}
		case 1:
			fmt.Fprintf(a.out, "Waiting: %s To answer, type:\n", q.Words)
		default:
			fmt.Fprintf(a.out, "Waiting: %s To answer, type one of these:\n", q.Words)
		}
		a.printAnswers("  ", q.Sheet, q.Answers)
		order, answers = order || q.Order, answers || len(q.Answers) > 0
	}
	if lacking["course"] > 1 {
		fmt.Fprintln(a.out, "Once one of them has its course, the others that say none are taken for it too, where some of their people have run there.")
	}
	if lacking["date"] > 2 {
		fmt.Fprintln(a.out, "Of sheets that are numbered and not dated, answer the first and the last: those between follow, where no week was left out.")
	}
	if order && a.settings.DateOrder == "" {
		fmt.Fprintln(a.out, "If all your sheets write the day first, put the line  date_order = \"dmy\"  into lapwing.toml (\"mdy\" for the month first), then type lapwing run: it is not asked again.")
	}
	if mend != "" {
		fmt.Fprintf(a.out, "A sheet that you save under another name, or that holds no results, is taken out with: lapwing sheets withdraw %s\n", text.Typed(mend))
	}
	if answers {
		fmt.Fprintln(a.out, "After that: lapwing run")
	}
}

// printAnswers prints the lines that answer a question about a sheet, ready to be typed.
func (a *app) printAnswers(indent, sheet string, answers []place.Answer) {
	for _, answer := range answers {
		if answer.When != "" {
			fmt.Fprintf(a.out, "%s%s:\n%s", indent, answer.When, "  ")
		}
		fmt.Fprintf(a.out, "%slapwing load %s %s\n", indent, text.Typed(a.fileOf(sheet)), answer.Flags)
	}
}

// findSheets finds the sheets that paths stand for, and remembers which file each is.
func (a *app) findSheets(paths []string) (files, names []string, err error) {
	if files, names, err = a.settings.FindSheets(paths); err != nil {
		return nil, nil, err
	}
	a.files = make(map[string]string, len(files))
	for i, name := range names {
		if rel, err := filepath.Rel(a.settings.Archive, files[i]); err == nil && filepath.IsLocal(rel) {
			continue // the archive's copy, which nobody types
		}
		a.files[name] = files[i]
	}
	return files, names, nil
}

// fileOf is the file of a sheet, as it can be typed: one of those that were
// named, or the one in the inbox.
func (a *app) fileOf(sheet string) string {
	if f, ok := a.files[sheet]; ok {
		return filepath.ToSlash(f)
	}
	if f := filepath.Join(a.settings.Inbox, sheet); isThere(f) {
		return filepath.ToSlash(f)
	}
	return sheet
}

func isThere(file string) bool {
	_, err := os.Stat(file)
	return err == nil
}
