package scenario

import (
	"bufio"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strconv"

	"lapwing/pipeline/age"
	"lapwing/pipeline/unit"
)

// Archive writes a large archive to w as one season list: a line for every
// result, in order of date, course and position. Each see, if any, is shown
// every run as it is written, with the person behind each line.
func Archive(o LargeOptions, w io.Writer, see ...func(*LargeRun) error) (*LargeArchive, error) {
	a, err := NewLarge(o)
	if err != nil {
		return nil, err
	}
	return a, a.WriteSeason(w, see...)
}

// ArchiveSheets writes a large archive as one sheet a run,
// dir/<course>/<course>_<date>.csv, with the columns of the season list.
func ArchiveSheets(o LargeOptions, dir string, see ...func(*LargeRun) error) (*LargeArchive, error) {
	a, err := NewLarge(o)
	if err != nil {
		return nil, err
	}
	return a, a.WriteSheets(dir, see...)
}

// WriteSeason writes every result as one CSV with a heading: position, name,
// number, age group (or age), sex, club, time, course, date.
func (a *LargeArchive) WriteSeason(w io.Writer, see ...func(*LargeRun) error) error {
	out := bufio.NewWriterSize(w, 1<<20)
	if _, err := out.WriteString(a.heading()); err != nil {
		return err
	}
	err := a.each(a.appendRun, func(r *LargeRun, text []byte) error {
		if _, err := out.Write(text); err != nil {
			return err
		}
		return showAll(r, see)
	})
	if err != nil {
		return err
	}
	return out.Flush()
}

// WriteSheets writes every run as a sheet of its own under dir.
func (a *LargeArchive) WriteSheets(dir string, see ...func(*LargeRun) error) error {
	for _, c := range a.Courses {
		if err := os.MkdirAll(filepath.Join(dir, c.Slug), 0o755); err != nil {
			return err
		}
	}
	errs := make([]error, len(a.Courses))
	write := func(b []byte, r *LargeRun) []byte {
		if len(r.Person) > 0 {
			b = a.appendRun(append(b, a.heading()...), r)
			errs[r.Course] = os.WriteFile(filepath.Join(dir, a.SheetName(r)), b, 0o644)
		}
		return b
	}
	return a.each(write, func(r *LargeRun, _ []byte) error {
		if err := errs[r.Course]; err != nil {
			return fmt.Errorf("large archive: %w", err)
		}
		return showAll(r, see)
	})
}

// SheetName is the path of a run's sheet under the folder of WriteSheets. Its
// first result stands in row 2.
func (a *LargeArchive) SheetName(r *LargeRun) string {
	slug := a.Courses[r.Course].Slug
	return slug + "/" + slug + "_" + r.Date.String() + ".csv"
}

func showAll(r *LargeRun, see []func(*LargeRun) error) error {
	for _, s := range see {
		if err := s(r); err != nil {
			return err
		}
	}
	return nil
}

func (a *LargeArchive) heading() string {
	if a.Options.Ages {
		return "position,name,number,age,sex,club,time,course,date\n"
	}
	return "position,name,number,age group,sex,club,time,course,date\n"
}

// groupNames holds the printed age group by age and sex (0 M, 1 W).
var groupNames = func() (g [2][121]string) {
	s := age.DefaultScheme()
	for a := range g[0] {
		g[0][a], g[1][a] = s.Name(a, "M"), s.Name(a, "W")
	}
	return g
}()

func (a *LargeArchive) appendRun(b []byte, r *LargeRun) []byte {
	tail := "," + a.Courses[r.Course].Name + "," + r.Date.String() + "\n"
	year, month, day := r.Date.Date()
	today := month*32 + day
	for i, p := range r.Person {
		runner := &a.runners[p]
		b = strconv.AppendInt(b, int64(i+1), 10)
		b = append(a.appendName(append(b, ','), p), ',')
		b = append(strconv.AppendInt(b, int64(a.Number(p)), 10), ',')
		birthYear, birthMonth, birthDay := unit.Day(runner.born).Date()
		years := year - birthYear
		if today < birthMonth*32+birthDay {
			years--
		}
		sex := 0
		if runner.sex == 'W' {
			sex = 1
		}
		if a.Options.Ages {
			b = strconv.AppendInt(b, int64(years), 10)
		} else {
			b = append(b, groupNames[sex][years]...)
		}
		b = append(b, ',', runner.sex, ',')
		if runner.club != noClub {
			b = append(b, a.clubs[runner.club]...)
		}
		b = appendClock(append(b, ','), r.TimeMS[i]/1000)
		b = append(b, tail...)
	}
	return b
}

// appendClock prints 24:31 or 1:02:03, as unit.Clock does, without allocating.
func appendClock(b []byte, s int32) []byte {
	two := func(n int32) { b = append(b, byte('0'+n/10), byte('0'+n%10)) }
	if s >= 3600 {
		b = append(strconv.AppendInt(b, int64(s/3600), 10), ':')
		two(s / 60 % 60)
	} else {
		b = strconv.AppendInt(b, int64(s/60), 10)
	}
	b = append(b, ':')
	two(s % 60)
	return b
}
