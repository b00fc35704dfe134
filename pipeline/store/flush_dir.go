package store

// FlushDir makes sure that what was renamed or removed in a folder is so after
// a power cut.
func FlushDir(dir string) error { return flushDir(dir) }
