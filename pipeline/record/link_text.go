package record

import "strings"

// linkText is what stands in brackets behind nearly every name of a sheet and is the same
// behind all of them, as the text of a link on a web page does: "Jo Lee [profile]", "Jo Lee
// (view)". In round brackets and with a capital letter it may be their club.
type linkText struct {
	text    string // of the first name that has one
	n, same int    // names, and those of them with this text
}

func (k *linkText) observe(name string) {
	k.n++
	if n := len(name); n == 0 || name[n-1] != ')' && name[n-1] != ']' {
		return
	}
	i := strings.LastIndexAny(name, "([")
	switch {
	case i <= 0 || name[i] == '(' && (name[i+1] < 'a' || name[i+1] > 'z'):
	case k.text == "":
		k.text, k.same = strings.Clone(name[i:]), 1
	case k.text == name[i:]:
		k.same++
	}
}

// is says whether a text in brackets is that one.
func (k *linkText) is(brackets string) bool {
	return k.same >= 5 && k.same*10 >= k.n*9 && brackets == k.text
}
