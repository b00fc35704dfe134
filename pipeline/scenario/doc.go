// Package scenario makes up districts of weekly runs: invented courses, clubs
// and people, the sheets that their results desks would send in, and the truth
// behind every line.
//
// Three sizes share the same name lists and the same ideas about running:
//
//   - Demo is a small district with a cast of characters, written by WriteDemo
//     as somebody's real folder would look: sheets, side tables and a config.
//   - District is a middle-sized, messy one for measuring how well people are
//     recognised and courses compared.
//   - Archive streams millions of clean results, for measuring speed.
//
// Everything is drawn from a seed: the same options give the same bytes on the
// same processor family, for any number of threads. (Processors that fuse
// multiplication and addition may round the last bit differently.)
//
// The numbers that describe running here (how much people differ, how often
// they go all-out, what mud costs) are common practice and the writer's
// judgement, no source, except where a comment names one. They are a world to
// measure in, not evidence about the real one.
package scenario
