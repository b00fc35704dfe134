package pipeline

import (
	"context"

	"lapwing/pipeline/record/club"
)

// step is one piece of a refresh, in the order of steps.
type step struct {
	name string // what the progress bar says
	run  func(pl *Pipeline, ctx context.Context, w *work) error
}

// work is what the steps hand on to each other.
type work struct {
	full      bool // nothing is taken over from the last refresh
	keepLink  bool // what the linker found is written at once, and let go
	field     *field
	decisions []Decision
	proposed  []Decision // not kept yet: a correction on trial
	desk      *lineDecisions
	states    []runState
	clubs     []knownSpelling      // other names of clubs
	proposals chan []club.Proposal // names that may be one club's; looked for while the figures are written
	members   []member
	held      []heldBefore // records of history.csv
	wishes    wishes
	problems  []storedProblem
	people    *people
	link      *linkage
	linkKept  bool // what the linker found is written
	doubtful  []doubtfulPair
	figures   figures
	speed     *speedFigures
	carriedOn bool // the model is carried on from its last full fit
}

// stepNameSpeed is the step that a trial of decisions stops before: it is the
// longest, and its estimates move a little with any change.
const stepNameSpeed = "Course speed, conditions and form"

// steps lists every step of a refresh, in order. Loading (load.go, parse.go,
// write.go) comes before: it fills sheet.* and record.line.
var steps = []step{
	// record: what stands, and whose it is
	{"Reading the lines", (*Pipeline).stepRead},
	{"Comparing sheets of the same run", (*Pipeline).stepCompare},
	{"Applying decisions", (*Pipeline).stepDecisions},
	{"Working out who is who", (*Pipeline).stepLink},
	{"Keeping what is doubtful about it", (*Pipeline).stepKeepLink},
	{"Bringing together what is known of each runner", (*Pipeline).stepGather},
	// insight: figures
	{"Age grades", (*Pipeline).stepGrades},
	{"Bests, streaks and milestones", (*Pipeline).stepHistories},
	{stepNameSpeed, (*Pipeline).stepSpeed},
	{"Looking for exchanged codes", (*Pipeline).stepExchanged},
	// store: write what was found
	{"Writing the figures", (*Pipeline).stepWrite},
}
