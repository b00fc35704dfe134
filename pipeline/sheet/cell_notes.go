package sheet

import (
	"archive/zip"
	"encoding/xml"
	"path"
	"slices"
	"strings"

	"github.com/xuri/excelize/v2"

	"lapwing/pipeline/text"
)

// Notes to cells say what nobody typed into a column: "did not finish", "time to be checked". They
// stand in a member of the package of their own (ECMA-376 Part 1, 18.7).

// noteBytes and mostNotes bound the notes of a tab that are read, longestNote is how long one
// may be that is about a result; longer ones tell how to fill in the sheet.
const noteBytes, mostNotes, longestNote = 8 << 20, 10000, 200

// cellNotes are the notes of a tab by row; nil where it has none, and where they can't be read, for
// the results stand without them.
func cellNotes(zr *zip.Reader, tab *zip.File) map[int]string {
	if !slices.ContainsFunc(zr.File, func(f *zip.File) bool { return strings.Contains(strings.ToLower(f.Name), "comments") }) {
		return nil
	}
	decode := func(name string, into any) bool {
		for _, f := range zr.File {
			if strings.EqualFold(strings.TrimPrefix(f.Name, "/"), name) {
				if f.UncompressedSize64 > noteBytes {
					return false
				}
				r, err := f.Open()
				if err != nil {
					return false
				}
				defer r.Close()
				return xml.NewDecoder(r).Decode(into) == nil
			}
		}
		return false
	}
	dir, base := path.Split(strings.TrimPrefix(strings.ReplaceAll(tab.Name, "\\", "/"), "/"))
	var links struct {
		Relationship []struct {
			Type   string `xml:"Type,attr"`
			Target string `xml:"Target,attr"`
		} `xml:"Relationship"`
	}
	if !decode(path.Join(dir, "_rels", base+".rels"), &links) {
		return nil
	}
	notes := map[int]string{}
	for _, l := range links.Relationship {
		if !strings.HasSuffix(l.Type, "/comments") {
			continue
		}
		target := strings.TrimPrefix(l.Target, "/")
		if target == l.Target {
			target = path.Join(dir, target)
		}
		var list struct {
			Comments []struct {
				Ref  string   `xml:"ref,attr"`
				Text []string `xml:"text>t"`
				Runs []string `xml:"text>r>t"`
			} `xml:"commentList>comment"`
		}
		if !decode(target, &list) || len(list.Comments) > mostNotes {
			return nil
		}
		said, texts := map[string]int{}, make([]string, len(list.Comments))
		for i, c := range list.Comments {
			texts[i] = noteText(strings.Join(append(c.Text, c.Runs...), ""))
			said[texts[i]]++
		}
		for i, c := range list.Comments {
			note := texts[i]
			_, row, err := excelize.CellNameToCoordinates(c.Ref)
			if err != nil || !aboutResult(note) || len(note) > longestNote || 4*said[note] > len(list.Comments) && said[note] >= leastOfList {
				continue
			}
			if notes[row] != "" {
				note = notes[row] + "; " + note
			}
			notes[row] = note
		}
	}
	return notes
}

// aboutResult says whether a note says something against a result, or how it came about. Others are
// the desk's own, and nobody else's.
func aboutResult(note string) bool {
	const usualKM = usualDistance / 1000
	f := fold(note)
	return saysEnded(f) || text.AgainstTime(f, usualKM) || text.Disputes(f) || text.MayBear(f, usualKM) || timesOff(note)
}

// noteText is a note without the name of its author, which programs put on a line above it, and
// without what they say to older programs before it.
func noteText(text string) string {
	if _, after, ok := strings.Cut(text, "Comment:\n"); ok && strings.HasPrefix(text, "[") {
		text = after
	}
	if first, rest, ok := strings.Cut(text, "\n"); ok && strings.HasSuffix(strings.TrimSpace(first), ":") {
		text = rest
	}
	return strings.Join(strings.Fields(text), " ")
}
