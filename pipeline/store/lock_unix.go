//go:build unix

package store

import (
	"errors"
	"os"

	"golang.org/x/sys/unix"
)

// lockFolder takes a folder for this process until the file is closed; the
// system lets go of it when the process ends, however it ends.
func lockFolder(dir string) (*os.File, error) {
	d, err := os.Open(dir)
	if err != nil {
		return nil, err
	}
	err = unix.Flock(int(d.Fd()), unix.LOCK_EX|unix.LOCK_NB)
	switch {
	case err == nil:
		return d, nil
	case errors.Is(err, unix.EWOULDBLOCK):
		d.Close()
		return nil, ErrHeld
	}
	d.Close()
	// Some network drives can't lock folders: the database's own lock is left.
	return nil, nil
}
