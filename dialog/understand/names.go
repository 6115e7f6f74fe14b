package understand

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// named says whether word i looks like somebody's name: it begins with a capital in the
// middle of a sentence, in a text that is not written so throughout. "Deepak" is then no
// misspelt "deemak".
func (r *reader) named(i int) bool {
	w := r.tokens[i].raw
	if w == "" || w[0] > 127 {
		return false
	}
	title := strings.ToUpper(w[:1]) + w[1:]
	before, behind, found := strings.Cut(r.text, title)
	last, _ := utf8.DecodeLastRuneInString(before)
	next, _ := utf8.DecodeRuneInString(behind)
	if !found || unicode.IsLetter(last) || unicode.IsLetter(next) {
		return false
	}
	before = strings.TrimRightFunc(before, func(c rune) bool { return unicode.IsSpace(c) && c != '\n' })
	if before == "" || strings.ContainsAny(before[len(before)-1:], ".!?\n:") {
		return false
	}
	capital, all := 0, 0
	for f := range strings.FieldsSeq(r.text) {
		c, _ := utf8.DecodeRuneInString(f)
		all++
		if unicode.IsUpper(c) {
			capital++
		}
	}
	return 2*capital < all
}

// farOff says whether word i is known neither in the text's own language nor in English. A
// part of a phrase ("gracias a Dios") is not.
func (r *reader) farOff(i int) bool {
	for _, id := range r.ids[i] {
		if len(r.lex.senses[id]) == 0 {
			return false
		}
		for _, e := range r.lex.senses[id] {
			if r.rank[e.tongue] == 0 || e.tongue == en || e.tongue == everyone {
				return false
			}
		}
	}
	return true
}
