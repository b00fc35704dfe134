package record

import (
	"strings"
)

// remark is what a note or status cell says.
type remark struct {
	part   TakingPart
	status Status
	first  Status // the code that the note begins with
}

const remarkLimit = 8192

// remark reads a note or status cell, each distinct text once.
func (r *Reader) remark(s string) remark {
	if len(s) == 0 || len(s) > 200 {
		return remark{}
	}
	if m, ok := r.remarks[s]; ok {
		return m
	}
	r.scratch = r.scratch[:0]
	for line := range strings.Lines(s) { // a note of several lines says several things
		if len(r.scratch) > 0 {
			r.scratch = append(r.scratch, ';')
		}
		r.scratch = fold(r.scratch, line)
	}
	m := remark{}
	m.part, _ = partOf(r.scratch, r.words)
	m.status, _ = statusOf(r.scratch, r.states)
	m.first, _ = startsWithStatus(r.scratch)
	if len(r.remarks) < remarkLimit {
		r.remarks[strings.Clone(s)] = m
	}
	return m
}
