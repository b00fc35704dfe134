package record

import "strings"

// nameTitles counts titles of address before the names, "Mrs Ann Page", "Herr Jo Lee", which
// say the sex where most names have one and both sexes do.
type nameTitles struct{ names, men, women int }

// menTitles and womenTitles are titles of address, without the point behind them.
var (
	menTitles   = strings.Fields("mr herr hr dhr monsieur sig signor senor señor sr pan")
	womenTitles = strings.Fields("mrs ms miss frau fr mme mlle madame mevr mevrouw fru signora senora señora sra srta pani")
)

// titleSex is the sex that the first word of a name says by being a title.
func titleSex(s string) Sex {
	i := strings.IndexByte(s, ' ')
	if i < 2 || i > 9 {
		return NotGiven
	}
	word := strings.TrimRight(s[:i], ".")
	for _, w := range menTitles {
		if strings.EqualFold(w, word) {
			return M
		}
	}
	for _, w := range womenTitles {
		if strings.EqualFold(w, word) {
			return W
		}
	}
	return NotGiven
}

func (k *nameTitles) observe(s string) {
	if s == "" {
		return
	}
	k.names++
	switch titleSex(s) {
	case M:
		k.men++
	case W:
		k.women++
	}
}

// said says whether the names have titles.
func (k *nameTitles) said() bool {
	return k.men >= 2 && k.women >= 2 && 10*(k.men+k.women) >= 7*k.names
}
