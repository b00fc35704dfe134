package pipeline

import "context"

// step is one piece of a refresh, in the order of steps.
type step struct {
	name string // what the progress bar says
	run  func(pl *Pipeline, ctx context.Context, w *work) error
}

// work is what the steps hand on to each other.
type work struct {
	field     *field
	decisions []Decision
	problems  []storedProblem
	people    *people
	link      *linkage
	figures   figures
	speed     *speedFigures
}

// steps lists every step of a refresh, in order. Loading (load.go, parse.go,
// write.go) comes before: it fills sheet.* and record.line.
var steps = []step{
	// record: what stands, and whose it is
	{"Reading the lines", (*Pipeline).stepRead},
	{"Applying decisions", (*Pipeline).stepDecisions},
	{"Comparing sheets of the same run", (*Pipeline).stepCompare},
	{"Working out who is who", (*Pipeline).stepLink},
	{"Bringing together what is known of each runner", (*Pipeline).stepGather},
	// insight: figures
	{"Age grades", (*Pipeline).stepGrades},
	{"Bests, streaks and milestones", (*Pipeline).stepHistories},
	{"Course speed, conditions and form", (*Pipeline).stepSpeed},
	// store: write what was found
	{"Writing the figures", (*Pipeline).stepWrite},
}
