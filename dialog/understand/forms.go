package understand

import "strings"

// forms are the words of the tables that differ from a Hindi word in gender and number
// only: निकला, निकली, निकले and the stem निकल; टपकता, टपकती. Set phrases hold one form
// for all.
func (l *lexicon) forms(w string, out []int32) []int32 {
	w = fold(w)
	for _, group := range [...][]string{
		{"ता", "ती", "ते"}, {"ना", "नी", "ने"}, {"ा", "ी", "े", "ीं", ""},
		{"ta", "ti", "te"}, {"na", "ni", "ne"}, {"a", "i", "e", ""},
	} {
		for _, end := range group {
			stem, has := strings.CutSuffix(w, end)
			if !has || end == "" || len(stem) < 4 || w[0] < 128 != (end[0] < 128) {
				continue
			}
			var room [64]byte
			for _, other := range group {
				if other == end || len(stem)+len(other) > len(room) {
					continue
				}
				b := append(append(room[:0], stem...), other...)
				if id, ok := l.id[string(b)]; ok {
					out = append(out, id)
				}
			}
			return out
		}
	}
	return out
}
