// Package sql embeds the SQL of Lapwing. A folder is a schema of the database,
// a file is one table or view, and each holds one SELECT under a header that
// says what a row is, which columns are the key and what each column means.
//
//	sheet/    tables that loading fills: what was received
//	record/   tables that loading and refresh fill: facts
//	insight/  tables that refresh fills: figures
//	main/     the views for other programs
//	reports/  what the reports ask
//	check/    invariants: any row that comes back is a fault
package sql

import "embed"

//go:embed sheet record insight main reports check
var Files embed.FS
