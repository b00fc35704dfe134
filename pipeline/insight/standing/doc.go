// Package standing puts results in order: places in a run, places within an
// age group, ranks and percentiles over a season, who is next ahead, who has
// improved most; and the arithmetic of even-pace splits.
//
// Ranks are competition ranks: ties share a rank and the next is skipped, as
// in 1, 2=, 2=, 4. Everything is in whole seconds, rounded up, as times are
// compared; lower is better.
package standing
