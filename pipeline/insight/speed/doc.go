// Package speed separates runner, course, day and effort in the finish times
// of weekly runs: course-speed indices, the conditions of every run, the form
// of every runner and the effort of every result, each with its doubt.
//
// # Model
//
// A result i of runner r in run e on course c has the logarithmic time
//
//	y_i = log(seconds at 5 km) - Origin = c[course(e)] + d[e] + a_r(i) + s_i + eps_i
//
//	c     course effect, N(mu, CourseSD²), mu flat
//	d     conditions of the run, Student t with DayDF degrees of freedom and
//	      scale DaySD, written as N(0, DaySD²/u_e) (Lange, Little and Taylor
//	      1989, JASA 84:881)
//	a     form of the runner, a local level (Harvey 1989; Durbin and Koopman
//	      2012): first value N(0, RunnerSD²), then a random walk in time
//	s     shortfall behind an all-out effort: none, exponential, or that of a
//	      walk or buggy; with a small chance the whole time is somebody else's
//	eps   N(0, Sigma²)
//
// Log times with crossed runner and course effects are the published approach
// (Wilson and Wilson 2024, arXiv:2405.09865; Bates and others 2015, J. Stat.
// Softw. 67). The mixture for the shortfall is there because most results of
// weekly runs are not all-out and because people keep their all-out days for
// fast courses, which biases every symmetric model.
//
// # Reading order
//
//	partition.go   fixed parts, worked on in parallel
//	input.go       the columns that come in, scaling between distances
//	hyper.go       the model's fixed quantities and their defaults
//	density.go     the residual density and its derivatives
//	chain.go       the runner's chain: factor, solve, smooth
//	sites.go       expectation propagation (Minka 2001), one sweep a round
//	shares.go      all-out shares by course, residents and visitors apart
//	days.go        variance components and the weights of the days
//	solve.go       the mixed-model equations by conjugate gradients
//	precondition.go  their two-level preconditioner
//	fit.go         the rounds and when they stop
//	networks.go    which courses can be compared, what may be published
//	intervals.go   standard errors of course effects and conditions
//	form.go        form, change over twelve weeks, plateau
//	effort.go      what one result says: shortfall, effort, wrong owner
//	update.go      a new run from the last full solution
//	reml.go        Gaussian model with estimated variance components
//	tuning.go      hyperparameters from the archive's own data
//	audit.go       checks on data without known truth
//
// # Limits
//
// Measured on simulated districts of 12 courses and 40 000 results: course
// effects 0.1-0.3 % RMS (a symmetric model 0.4-0.6 %), conditions 0.6 %,
// form of runners with 10 results or more 1.6-1.8 %. Where effort follows laws
// other than the model's, courses stay within 0.4 % and form within 2.2 %.
// Selection of fast courses for all-out days is reduced, not removed. The
// level of form is known only through the mixture and is 0.7 % too slow where
// the model holds, 2.8 % where nobody ever runs all-out; differences do not
// suffer. A returning injured runner looks like one who jogs. Where nobody
// holds back at all, tune before believing anything. Courses and conditions
// take a dense matrix in the number of courses: 1 700 are 23 MB and half a
// second, 5 000 would be 200 MB and some 20 s.
//
// Everything is computed over a fixed number of parts and summed in their
// order, so the figures do not depend on the number of threads.
package speed
