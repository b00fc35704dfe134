package record

// isNull recognises what programs write into a text file for a value that is missing:
// NULL of SQL databases, \N of their dumps, NaN of statistics programs (IEEE 754).
func isNull(s string) bool {
	if len(s) < 2 || len(s) > 6 {
		return false
	}
	switch s {
	case "NULL", "null", "(null)", "<null>", "<NULL>", `\N`, "NaN", "<NA>":
		return true
	}
	return false
}
