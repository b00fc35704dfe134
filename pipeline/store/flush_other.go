//go:build !linux

package store

import "os"

// flushAll puts written files on disk.
func flushAll(files []*os.File) error {
	for _, f := range files {
		if err := f.Sync(); err != nil {
			return err
		}
	}
	return nil
}
