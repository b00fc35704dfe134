package pipeline

import (
	"bytes"
	"encoding/csv"
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	"lapwing/pipeline/record/name"
	"lapwing/pipeline/sheet"
)

// eraser takes one person out of the tables of the archive folder.
type eraser struct {
	id        string          // R12, "" where the person never ran
	keys      map[string]bool // folded names
	byName    bool            // nobody else has the name: lines that give only a name are this person's
	spellings []string
	hashes    map[string]string  // of sheets, before → after
	lines     map[tableLine]bool // the person's, by the hash before

	Decisions, Members, Volunteers, History int // lines changed or taken out
}

func (e *eraser) is(text string) bool {
	if e.id != "" && strings.EqualFold(strings.TrimSpace(text), e.id) {
		return true
	}
	if !e.byName {
		return false
	}
	for _, k := range nameKeys(name.Parse(text)) {
		if e.keys[k] {
			return true
		}
	}
	return false
}

// words takes the spellings out of a text.
func (e *eraser) words(text string) string { return sheet.ReplaceWords(text, e.spellings, anonymous) }

// rewriteTable changes the records of a CSV file. edit gets a record by the
// names of its columns and says whether it stays; records that it does not
// change stay byte for byte.
func rewriteTable(data []byte, edit func(get func(string) string, set func(column, value string)) (keep bool)) ([]byte, error) {
	r := csv.NewReader(bytes.NewReader(data))
	r.FieldsPerRecord = -1
	var head []string
	var out bytes.Buffer
	from := int64(0)
	for {
		rec, err := r.Read()
		if err == io.EOF {
			out.Write(data[from:])
			return out.Bytes(), nil
		}
		if err != nil {
			return nil, err
		}
		to := r.InputOffset()
		raw := data[from:to]
		from = to
		if head == nil {
			for _, h := range rec {
				head = append(head, strings.ToLower(strings.TrimSpace(strings.TrimPrefix(h, "\ufeff"))))
			}
			out.Write(raw)
			continue
		}
		changed := false
		keep := edit(func(c string) string {
			if i := slices.Index(head, c); i >= 0 && i < len(rec) {
				return rec[i]
			}
			return ""
		}, func(c, v string) {
			if i := slices.Index(head, c); i >= 0 && i < len(rec) && rec[i] != v {
				rec[i], changed = v, true
			}
		})
		switch {
		case !keep:
		case !changed:
			out.Write(raw)
		default:
			w := csv.NewWriter(&out)
			if err := w.Write(rec); err != nil {
				return nil, err
			}
			w.Flush()
		}
	}
}

// table gives the new content of a table of the archive folder, by its name.
func (e *eraser) table(file string, data []byte) ([]byte, error) {
	switch file {
	case decisionTable:
		return rewriteTable(data, e.decision)
	case memberTable:
		return rewriteTable(data, func(get func(string) string, set func(string, string)) bool {
			if e.is(get("person")) {
				e.Members++
				return false
			}
			return true
		})
	case "announced.csv":
		return rewriteTable(data, func(get func(string) string, set func(string, string)) bool {
			return e.id == "" || !strings.EqualFold(get("runner"), e.id)
		})
	case "volunteers.csv":
		return rewriteTable(data, func(get func(string) string, set func(string, string)) bool {
			if e.is(get("name")) {
				e.Volunteers++
				set("name", anonymous)
			}
			return true
		})
	case "history.csv":
		return rewriteTable(data, func(get func(string) string, set func(string, string)) bool {
			if !e.is(get("name")) {
				return true
			}
			e.History++
			set("name", anonymous)
			return strings.EqualFold(get("fact"), heldRecord)
		})
	}
	return data, nil
}

func (e *eraser) decision(get func(string) string, set func(string, string)) bool {
	row, _ := strconv.Atoi(get("row")) // a row that is no number is nobody's
	table, _ := strconv.Atoi(get("table"))
	line := tableLine{lineRef{get("sheet"), get("tab"), row}, table}
	mine := e.lines[line] || e.id != "" && strings.EqualFold(get("runner"), e.id)
	switch get("kind") {
	case DecideName, DecideClaim, DecidePrintName:
		if mine || e.is(get("value")) {
			set("value", anonymous)
			e.Decisions++
		}
	case DecideClub, DecideGroup, DecideSex, DecideCategory, DecideEarlierRuns, DecideEarlierBest:
		if mine {
			e.Decisions++
			return false // says something about nobody now
		}
	}
	for _, c := range []string{"by", "value", "why"} {
		set(c, e.words(get(c)))
	}
	set("sheet", e.hash(get("sheet")))
	if v := get("value"); get("kind") == DecideExchange {
		old, rest, _ := strings.Cut(v, ":")
		set("value", e.hash(old)+":"+rest)
	}
	return true
}

func (e *eraser) hash(old string) string {
	if now, ok := e.hashes[old]; ok {
		return now
	}
	return old
}

// ledger gives the ledger with the hashes of the new copies.
func (e *eraser) ledger(data []byte) ([]byte, error) {
	return rewriteTable(data, func(get func(string) string, set func(string, string)) bool {
		set("hash", e.hash(get("hash")))
		set("path", e.words(get("path")))
		return true
	})
}

// folder goes through everything else that the archive folder holds and gives
// the new content of each file that names the person, by path.
func (e *eraser) folder(dir string, skip map[string]bool) (map[string][]byte, error) {
	out := map[string][]byte{}
	err := filepath.WalkDir(dir, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		rel, err := filepath.Rel(dir, path)
		if err != nil {
			return err
		}
		if skip[filepath.ToSlash(rel)] || strings.HasPrefix(rel, "lapwing.duckdb") {
			if d.IsDir() {
				return filepath.SkipDir
			}
			return nil
		}
		if !d.Type().IsRegular() {
			return nil
		}
		data, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		now, err := e.file(filepath.ToSlash(rel), data)
		if err != nil {
			return errors.Join(errors.New(path), err)
		}
		if !bytes.Equal(now, data) {
			out[filepath.ToSlash(rel)] = now
		}
		return nil
	})
	return out, err
}

// file gives the new content of one file of the archive folder.
func (e *eraser) file(rel string, data []byte) ([]byte, error) {
	now, err := e.table(rel, data)
	if err != nil {
		return nil, err
	}
	if !e.byName && rel != decisionTable {
		return now, nil // the name may be a namesake's
	}
	return withoutWords(rel, now, e.spellings)
}
