package pipeline

import (
	"lapwing/pipeline/place"
	"lapwing/pipeline/sheet"
)

// SheetReport says what became of one sheet of a load.
type SheetReport struct {
	Path     string          `json:"sheet"`
	State    string          `json:"state"` // loaded, already loaded, waiting, refused
	Rows     int             `json:"rows"`
	Runs     []string        `json:"runs,omitempty"` // "alder-bank 2026-01-03"
	Why      string          `json:"why,omitempty"`
	Problems []place.Problem `json:"problems,omitempty"`
	Counts   map[string]int  `json:"counts,omitempty"` // by status
	Notes    []string        `json:"notes,omitempty"`  // how it differs from earlier sheets of its course
	// Forgotten is the number of rows that were kept without a name, because
	// their owner asked to be forgotten.
	Forgotten int `json:"kept_without_a_name,omitempty"`
	// Settled says in words that the title has a course's name misspelt and was
	// read as that course, because of the people on the sheet.
	Settled string `json:"course_settled,omitempty"`
	// Question is what the sheet waits for, nil where it waits for nothing. In
	// words it is in Why.
	Question *Question `json:"-"`

	seq int // in the ledger, where it is kept
}

// LoadReport sums up a load.
type LoadReport struct {
	Sheets  []SheetReport `json:"sheets"`
	Loaded  int           `json:"loaded"`
	Known   int           `json:"already_loaded"`
	Waiting int           `json:"waiting"`
	Refused int           `json:"refused"`
	Rows    int           `json:"rows"`
}

// Err is ErrWaits where a sheet or one of its tabs waits, or a sheet was refused.
func (r *LoadReport) Err() error {
	if r.Waiting+r.Refused > 0 {
		return ErrWaits
	}
	for i := range r.Sheets {
		if len(r.Sheets[i].TabsLeftOut()) > 0 {
			return ErrWaits
		}
	}
	return nil
}

// TabsLeftOut are the questions about tabs that were left out of a sheet that was
// loaded.
func (s *SheetReport) TabsLeftOut() (out []place.Problem) {
	for _, q := range s.Problems {
		if q.Kind == sheet.TabLeftOut && s.State == "loaded" {
			out = append(out, q)
		}
	}
	return out
}
