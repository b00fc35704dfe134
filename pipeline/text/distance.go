// Package text holds what several rooms need to know about written words: how
// far apart two spellings are, and the names of the months.
package text

import "unicode/utf8"

// OSA is the optimal string alignment distance: the least number of inserted,
// deleted, replaced and neighbouring exchanged letters, no part edited twice
// (Damerau 1964, "A technique for computer detection and correction of
// spelling errors", Communications of the ACM 7:171-176, restricted). Letters
// are Unicode code points.
func OSA(a, b string) int {
	x, y := []rune(a), []rune(b)
	prev2, prev, cur := make([]int, len(y)+1), make([]int, len(y)+1), make([]int, len(y)+1)
	for j := range prev {
		prev[j] = j
	}
	for i := 1; i <= len(x); i++ {
		cur[0] = i
		for j := 1; j <= len(y); j++ {
			cost := 1
			if x[i-1] == y[j-1] {
				cost = 0
			}
			cur[j] = min(prev[j]+1, cur[j-1]+1, prev[j-1]+cost)
			if i > 1 && j > 1 && x[i-1] == y[j-2] && x[i-2] == y[j-1] {
				cur[j] = min(cur[j], prev2[j-2]+1)
			}
		}
		prev2, prev, cur = prev, cur, prev2
	}
	return prev[len(y)]
}

// Within says whether OSA(a, b) is at most limit. Words whose lengths alone
// are too far apart are told without comparing a letter.
func Within(a, b string, limit int) bool {
	if d := utf8.RuneCountInString(a) - utf8.RuneCountInString(b); d > limit || -d > limit {
		return false
	}
	return OSA(a, b) <= limit
}
