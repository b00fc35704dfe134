package scenario

import (
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"
)

var (
	placeFirst = strings.Fields(`Otter Quill Thistle Bram Corvin Dunnel Ember Fallow Gannet Hollin Iver Jessa
		Kestrel Larchen Merrin Nettle Pellin Quern Ruskin Saffin Tamber Ullin Vesper Wrenna Yarrin Bracken
		Cindle Dapple Elvan Fennick Garrow Hobble Juniper Kettle Linnet Marrow Osier Pipit Rushen Sallow
		Tarn Umber Willet Yaffle Bittern Curlew Dunnock Fescue Gorse Heron`)
	placeLast = strings.Fields(`mere holt combe wick fell haven thwaite garth beck toft shiel brae lowe stoke
		stow ness den ridge`)
	placeKind = []string{"Common", "Meadow", "Water", "Wood", "Green", "Quay", "Downs", "Moor", "Lock", "Mill",
		"Heath", "Orchard"}
	clubKind = []string{"Harriers", "Runners", "Athletic Club", "Joggers", "Road Runners", "Running Club"}
)

// placeCount is how many different courses placeName can name.
func placeCount() int { return len(placeFirst) * len(placeLast) * len(placeKind) }

// placeName makes up the k-th course: a town that is on no map, and the kind
// of ground it runs on. Different k below placeCount give different names.
func placeName(k int) (town, course string) {
	f, rest := k%len(placeFirst), k/len(placeFirst)
	l := (rest + 5*f) % len(placeLast)
	kind := (rest/len(placeLast) + 7*f + 3*l) % len(placeKind)
	town = placeFirst[f] + placeLast[l]
	return town, town + " " + placeKind[kind]
}

// slug is a name for files and folders: lower case, marks dropped, one hyphen
// for anything that is neither letter nor digit.
func slug(name string) string {
	var b strings.Builder
	for _, r := range norm.NFD.String(strings.ToLower(name)) {
		switch {
		case unicode.Is(unicode.Mn, r):
		case unicode.IsLetter(r) || unicode.IsDigit(r):
			b.WriteRune(r)
		case b.Len() > 0 && !strings.HasSuffix(b.String(), "-"):
			b.WriteByte('-')
		}
	}
	return strings.TrimSuffix(b.String(), "-")
}
