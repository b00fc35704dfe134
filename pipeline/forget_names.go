package pipeline

import (
	"crypto/hmac"
	"crypto/rand"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"slices"
	"strings"
	"sync"
	"time"

	"lapwing/pipeline/record/name"
	"lapwing/pipeline/sheet"
	"lapwing/pipeline/store"
)

// Names of people who asked to be forgotten are kept only as keyed hashes:
// HMAC (RFC 2104, FIPS 198-1) with SHA-256 over the folded name, under a random
// key of 32 bytes. They keep a name from coming back with the next sheet, and
// can't be read back. Whoever has the key can still test whether a name that
// they think of is among them; no scheme that recognises a name can prevent
// that.
const (
	forgottenTable = "forgotten.csv"
	forgottenKey   = "forgotten.key"
)

// forgottenColumns: what is name or sheet; a name has the hash of the folded
// name, a sheet that of the original bytes, and in now the hash of the copy
// that stands for it.
var forgottenColumns = []string{"what", "hash", "now", "when"}

// anonymous stands in the name cell of a row whose owner asked to be
// forgotten. It is a word that every sheet reads as nobody.
const anonymous = "Anonymous"

// forgotten knows the hashes of forgotten names and of sheets that were changed
// to leave one out.
type forgotten struct {
	key    []byte
	names  map[string]bool
	sheets map[string]string

	mu     sync.Mutex
	tested map[string]bool // by folded name
}

// readForgotten reads the archive's list, nil where nobody was forgotten.
func (pl *Pipeline) readForgotten() (*forgotten, error) {
	rows, err := pl.Archive.ReadList(forgottenTable, forgottenColumns)
	if err != nil || len(rows) == 0 {
		return nil, err
	}
	text, err := os.ReadFile(pl.Archive.File(forgottenKey))
	if err != nil {
		return nil, fmt.Errorf("the key to the forgotten names can't be read: %w. Restore it from a backup: without it their names would come back", err)
	}
	f := &forgotten{names: map[string]bool{}, sheets: map[string]string{}, tested: map[string]bool{}}
	if f.key, err = hex.DecodeString(strings.TrimSpace(string(text))); err != nil || len(f.key) != 32 {
		return nil, fmt.Errorf("%s is damaged; restore it from a backup", pl.Archive.File(forgottenKey))
	}
	for _, r := range rows {
		switch r[0] {
		case "name":
			f.names[r[1]] = true
		case "sheet":
			f.sheets[r[1]] = r[2]
		}
	}
	return f, nil
}

// makeForgottenKey gives the archive's key, making it where there is none.
func (pl *Pipeline) makeForgottenKey() ([]byte, error) {
	path := pl.Archive.File(forgottenKey)
	text, err := os.ReadFile(path)
	if err == nil {
		key, err := hex.DecodeString(strings.TrimSpace(string(text)))
		if err != nil || len(key) != 32 {
			return nil, fmt.Errorf("%s is damaged; restore it from a backup", path)
		}
		return key, nil
	}
	if !errors.Is(err, fs.ErrNotExist) {
		return nil, err
	}
	key := make([]byte, 32)
	if _, err := rand.Read(key); err != nil {
		return nil, err
	}
	return key, store.WriteFile(path, []byte(hex.EncodeToString(key)+"\n"))
}

func keyedHash(key []byte, what, text string) string {
	h := hmac.New(sha256.New, key)
	h.Write([]byte(what + "\x00" + text))
	return hex.EncodeToString(h.Sum(nil))
}

// nameKeys are the folded forms under which a name is recognised: given name
// first and family name first.
func nameKeys(n name.Name) []string {
	if n.Full == "" || n.Unnamed || n.Several {
		return nil
	}
	one := strings.ReplaceAll(n.Given+n.Family, " ", "")
	two := strings.ReplaceAll(n.Family+n.Given, " ", "")
	out := []string{n.Full}
	for _, k := range []string{one, two} {
		if k != n.Full && k != out[len(out)-1] {
			out = append(out, k)
		}
	}
	return out
}

// isForgotten says whether a name as a sheet has it is that of somebody who
// asked to be forgotten.
func (f *forgotten) isForgotten(text string) bool {
	f.mu.Lock()
	defer f.mu.Unlock()
	if hit, ok := f.tested[text]; ok {
		return hit
	}
	hit := false
	for _, k := range nameKeys(name.Parse(text)) {
		hit = hit || f.names[keyedHash(f.key, "name", k)]
	}
	if len(f.tested) > 1<<20 {
		clear(f.tested)
	}
	f.tested[strings.Clone(text)] = hit
	return hit
}

// withoutForgotten gives the bytes of a sheet as the archive may keep them:
// data itself, or a copy without those who asked to be forgotten. left is the
// number of rows that were changed.
func (pl *Pipeline) withoutForgotten(path string, data []byte, hand ByHand) (kept []byte, left int, err error) {
	f := pl.forgotten
	if f == nil {
		return data, 0, nil
	}
	if now, ok := f.sheets[keyedHash(f.key, "sheet", store.Hash(data))]; ok {
		ledger, err := pl.Archive.Ledger()
		if err != nil {
			return nil, 0, err
		}
		for _, e := range ledger {
			if e.Hash == now {
				kept, err := os.ReadFile(pl.Archive.Copy(e))
				return kept, 0, err
			}
		}
	}
	o := pl.sheetOptions(hand)
	s, err := sheet.Read(path, data, o)
	if err != nil {
		return data, 0, nil // refused: whoever reads it next says why
	}
	rows, spellings, err := namedRows(s, f.isForgotten)
	if err != nil || len(rows) == 0 {
		return data, 0, err
	}
	kept, err = sheet.Redact(path, data, o, sheet.Redaction{Rows: rows, Keep: keptMeanings, Words: spellingsOf(spellings), Text: anonymous})
	if err != nil {
		return nil, 0, fmt.Errorf("somebody on this sheet asked to be forgotten, and the name can't be taken out: %w", err)
	}
	return kept, len(rows), nil
}

// namedRows lists the rows of a sheet whose name fits, with the spellings.
func namedRows(s *sheet.Sheet, fits func(string) bool) (rows []sheet.RowRef, spellings []string, err error) {
	for i, p := range s.Parts {
		whole, given, family := p.Index(sheet.Name), p.Index(sheet.GivenName), p.Index(sheet.FamilyName)
		err := p.Each(func(row int, cells []string) error {
			text := ""
			switch {
			case whole >= 0 && whole < len(cells):
				text = cells[whole]
			case given >= 0 && family >= 0 && max(given, family) < len(cells):
				text = cells[family] + ", " + cells[given]
			}
			if text = strings.TrimSpace(text); text != "" && fits(text) {
				rows = append(rows, sheet.RowRef{Part: i, Row: row})
				spellings = append(spellings, strings.Clone(text))
			}
			return nil
		})
		if err != nil {
			return nil, nil, err
		}
	}
	return rows, spellings, nil
}

// keptMeanings are the columns that an anonymous result keeps.
var keptMeanings = map[sheet.Meaning]bool{
	sheet.Position: true, sheet.Time: true, sheet.GunTime: true, sheet.ChipTime: true, sheet.Course: true, sheet.Date: true,
	sheet.Session: true, sheet.Distance: true, sheet.Status: true, sheet.Gap: true, sheet.Pace: true, sheet.Split: true,
}

// spellingsOf gives every way in which a name may stand in running text: as
// received, and given and family name in either order. A single word is left
// out: it may be anybody's, or a place.
func spellingsOf(received []string) []string {
	seen := map[string]bool{}
	var out []string
	add := func(s string) {
		s = strings.Join(strings.Fields(s), " ")
		if k := strings.ToLower(s); strings.Contains(s, " ") && !seen[k] {
			seen[k] = true
			out = append(out, s)
		}
	}
	for _, text := range received {
		add(text)
		printed := name.Print(text)
		add(printed)
		for _, t := range []string{strings.TrimSpace(text), printed} {
			if family, given, ok := strings.Cut(t, ","); ok {
				add(given + " " + family)
				add(family + " " + given)
				continue
			}
			f := strings.Fields(t)
			if len(f) > 1 {
				last := f[len(f)-1]
				rest := strings.Join(f[:len(f)-1], " ")
				add(last + ", " + rest)
				add(last + " " + rest)
				add(strings.Join(f[1:], " ") + ", " + f[0])
				add(strings.Join(f[1:], " ") + " " + f[0])
			}
		}
	}
	return out
}

// forgottenRows are new lines of forgotten.csv.
func forgottenRows(key []byte, names []string, sheets map[string]string, now time.Time) [][]string {
	var out [][]string
	when := now.UTC().Format(time.RFC3339)
	for _, n := range names {
		out = append(out, []string{"name", keyedHash(key, "name", n), "", when})
	}
	for old, hash := range sheets {
		out = append(out, []string{"sheet", keyedHash(key, "sheet", old), hash, when})
	}
	// in the order of their hashes, which tells nothing
	slices.SortFunc(out, slices.Compare)
	return out
}
