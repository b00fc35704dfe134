// Package who says which result lines are the same runner's.
//
// The method is probabilistic record linkage after Fellegi and Sunter (1969),
// "A theory for record linkage", Journal of the American Statistical
// Association 64:1183-1210. Rows that agree in name, sex and number (or name,
// sex and course) form signatures; blocking keys find the pairs of signatures
// worth comparing; each pair is weighed, in bits, as a sum of named evidence;
// and clusters grow from the best pair downwards, their pooled evidence
// weighed again after every join. What stays doubtful is listed for a person
// to decide, and decisions override every weight.
//
//	name.go    keys, frequencies, slips and nicknames of names
//	community.go  names that go together
//	sign.go    rows to signatures
//	twins.go   two people of one name, sex and course
//	birth.go   birth windows as evidence
//	edge.go    the birth dates that most lines allow
//	course.go  which courses share runners
//	block.go   pairs worth comparing
//	sketch.go  pairs ruled out at a glance
//	weigh.go   the evidence and its weights
//	turns.go   two numbers one after the other, or by turns
//	cluster.go joining, best first
//	again.go   runners who may be one although no line says so
//	decide.go  decisions of people
//	learn.go   weights learned from the archive (EM)
//	review.go  doubtful pairs and namesake questions
//	group.go   several pairs as one question
//	split.go   runners who may be two people
//	side.go    one runner's lines, to lay beside another's
//	explain.go the evidence in plain words
//	ids.go     runner ids that outlive a rebuild
//	known.go   what a linkage leaves behind
//	search.go  the known runners whose new rows may be
//	attach.go  new rows to known runners
//	threads.go sorting and counting on several threads
//
// It is pure: no database, files or clock. The result depends on the rows and
// not on their order, nor on the number of threads.
package who
