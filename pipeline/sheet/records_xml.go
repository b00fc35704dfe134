package sheet

import (
	"bytes"
	"errors"
	"fmt"
	"slices"
	"strings"
)

// Records that a program kept in XML (W3C, Extensible Markup Language 1.0, 5th ed.) are read like
// those in JSON: an element is a record of its attributes and of what stands in it, and elements of
// one name within another are a list.

// startsXMLRecords says whether folded text is XML that is no document of an office program.
func startsXMLRecords(lower string) bool {
	ofOffice := func(word string) bool { return strings.Contains(lower, word) }
	return len(lower) > len("<?xml") && strings.HasPrefix(lower, "<?xml") &&
		!slices.ContainsFunc([]string{"mso-application", "schemas-microsoft-com:office", "opendocument", "<svg", "<!doctype"}, ofOffice)
}

// xmlRecords reads the records of a text in XML, without the line that declares it.
func xmlRecords(text []byte, l Limits) (recordNode, error) {
	if end := bytes.Index(text, []byte("?>")); end >= 0 {
		text = text[end+2:]
	}
	x := newXMLScanner(bytes.NewReader(bytes.TrimSpace(text)), l)
	for {
		if err := x.next(); err != nil {
			return recordNode{}, err
		}
		switch x.kind {
		case xmlEnd:
			return recordNode{}, errors.New("it has no element")
		case xmlOpen:
			name := string(x.name)
			n, err := readElement(x, name, 0, l.Columns)
			return recordNode{record: true, keys: []string{name}, items: []recordNode{n}}, err
		}
	}
}

// readElement reads the element that has just been opened: text where it holds nothing else, a
// record otherwise. Text beside attributes goes by the name of the element. A record has at most so
// many values of other names as a row has cells.
func readElement(x *xmlScanner, name string, depth, most int) (recordNode, error) {
	if depth > deepestRecord {
		return recordNode{}, errors.New("too many elements one within the other")
	}
	n := recordNode{record: true}
	for _, a := range x.attrs {
		n.add(string(a.name), recordNode{text: spacedOnce(string(a.value))})
	}
	var text []byte
	for {
		if len(n.keys) > most {
			return n, fmt.Errorf("an element has more than %d others of different names in it", most)
		}
		if err := x.next(); err != nil {
			return n, err
		}
		switch x.kind {
		case xmlEnd:
			return n, errShort
		case xmlText:
			text = append(text, x.text...)
		case xmlOpen:
			inner := string(x.name)
			item, err := readElement(x, inner, depth+1, most)
			if err != nil {
				return n, err
			}
			n.add(inner, item)
		case xmlClose:
			plain := recordNode{text: spacedOnce(string(text))}
			switch {
			case len(n.items) == 0:
				return plain, nil
			case plain.text != "":
				n.add(name, plain)
			}
			return n, nil
		}
	}
}

// add puts a value under a key; a second one under the same key makes a list of the two.
func (n *recordNode) add(key string, item recordNode) {
	at := slices.Index(n.keys, key)
	switch {
	case at < 0:
		n.keys, n.items = append(n.keys, key), append(n.items, item)
	case n.items[at].list:
		n.items[at].items = append(n.items[at].items, item)
	default:
		n.items[at] = recordNode{list: true, items: []recordNode{n.items[at], item}}
	}
}
