package name

// Soundex is the code of Russell's index (R. C. Russell, United States patents
// 1 261 167 of 1918 and 1 435 663 of 1922) as the United States National Archives
// use it: the first letter, and three figures for the consonants that follow;
// vowels part equal figures, h and w don't. It takes a name as Fold gives it,
// spaces left out; "" where it does not begin with a letter of the alphabet.
func Soundex(folded string) string {
	const figures = "01230120022455012623010202"
	code := [4]byte{0, '0', '0', '0'}
	n, last := 0, byte('0')
	for i := 0; i < len(folded) && n < 4; i++ {
		c := folded[i]
		if c < 'a' || c > 'z' {
			continue
		}
		f := figures[c-'a']
		switch {
		case n == 0:
			code[0] = c - 'a' + 'A'
			n, last = 1, f
		case c == 'h' || c == 'w':
		case f == '0':
			last = '0'
		case f != last:
			code[n] = f
			n, last = n+1, f
		}
	}
	if n == 0 {
		return ""
	}
	return string(code[:])
}
