package text

// What Lapwing writes into the properties of its workbooks, so that it knows them again when
// one of them is loaded as a sheet: who made it, and the subject by kind.
const (
	BookMaker = "Lapwing"

	WeeklyBook    = "Results of a weekly run"
	DeskBook      = "Checks and corrections of a weekly run"
	WithdrawnBook = "Withdrawn result of a weekly run"
	SeasonBook    = "Season of weekly runs"
	StandingBook  = "Standing of a runner"
	MatchBook     = "Doubtful pairs of runners, for deciding"
)
