// Package ugly makes result sheets as volunteers, clubs and small timers make
// them, at their worst, together with the truth about every line, and scores
// what was read from them.
//
// It is written from the description of the sheets only, never from the code
// that reads them: it stands for the sheets that nobody has seen yet. Every
// sheet is either decidable by a careful person, or marked as one that has to
// be held with a question.
//
// Each sheet varies along some thirty dimensions (delimiter, encoding, language,
// spelling of times, of names, of ages, where the course and the date stand,
// …; see dimensions). One sheet in four differs from a plain one in a single
// option, so that a failure points at its cause; the others mix several.
//
// Places, clubs and people are invented.
package ugly
