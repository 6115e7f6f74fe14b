package understand

import (
	"math/bits"
	"slices"
	"strings"
	"unicode/utf8"
)

// nearest finds the one word a mistyped word was meant to be. It is bounded: one
// slip from four letters up, two from nine; and when two words are equally near
// the caller must see both, since "hot" must never become "not".
type nearest struct {
	byLen [32]nearWords
}

// nearWords are words of one length. What most are told apart by lies together, so that a
// search runs through little memory.
type nearWords struct {
	set  []uint64 // of each word, which letters occur
	id   []int32
	text []rune // of all words, end to end
}

func newNearest(spelled []string, ids []int32) nearest {
	var n nearest
	var many [len(n.byLen)]int
	for _, id := range ids {
		if k := utf8.RuneCountInString(spelled[id]); k >= 3 && k < len(many) {
			many[k]++
		}
	}
	for k := range n.byLen {
		n.byLen[k] = nearWords{make([]uint64, 0, many[k]), make([]int32, 0, many[k]), make([]rune, 0, many[k]*k)}
	}
	for _, id := range ids {
		k := utf8.RuneCountInString(spelled[id])
		if k < 3 || k >= len(many) {
			continue
		}
		of := &n.byLen[k]
		for _, r := range spelled[id] {
			of.text = append(of.text, r)
		}
		of.set, of.id = append(of.set, letters(of.word(len(of.id), k))), append(of.id, id)
	}
	return n
}

// word is the i-th of the words, which have k letters.
func (of *nearWords) word(i, k int) []rune { return of.text[i*k : (i+1)*k] }

// boned gives the ids of the words that w is when their inner vowels are left out.
func (n *nearest) boned(w string) (out []int32) {
	vowels := letters([]rune("aeiou"))
	set, bare := letters([]rune(w))&^vowels, bones(w)
	for length := len(w); length < min(2*len(w)+3, len(n.byLen)); length++ {
		of := &n.byLen[length]
		for i, has := range of.set {
			if has&^vowels == set && of.text[i*length] == rune(w[0]) && bones(string(of.word(i, length))) == bare {
				out = append(out, of.id[i])
			}
		}
	}
	return out
}

func letters(rs []rune) uint64 {
	var s uint64
	for _, r := range rs {
		s |= 1 << (uint(r) % 64)
	}
	return s
}

// reach is how many slips a word may hold: two from nine letters up.
func reach(w string) int {
	if utf8.RuneCountInString(w) >= 9 {
		return 2
	}
	return 1
}

// find gives the ids of all words at the least distance from w, most slips at the
// most, and that distance.
func (n *nearest) find(w string, most int, fits func(int32) bool) (out []int32, least int) {
	rs := []rune(w)
	if len(rs) < 3 || len(rs) > 24 {
		return nil, most
	}
	set := letters(rs)
	for length := max(3, len(rs)-most); length <= min(len(rs)+most, len(n.byLen)-1); length++ {
		of := &n.byLen[length]
		for i, has := range of.set {
			if bits.OnesCount64(set^has) > 2*most {
				continue
			}
			d := slips(rs, of.word(i, length), most)
			if d > most || !fits(of.id[i]) {
				continue
			}
			if d < most {
				most = d
				out = out[:0]
			}
			out = append(out, of.id[i])
		}
	}
	return out, most
}

// oneOff finds the words that w is one slip away from: a letter left out, put in, swapped
// or taken for another that lies beside it or sounds like it. The first letter is kept. It
// takes shorter words and more letters for one another than find does.
func (n *nearest) oneOff(w string) (out []int32) {
	typed := []rune(w)
	shortest := 4
	if w[0] > 127 {
		shortest = 3 // Devanagari writes no vowel in a consonant
	}
	if len(typed) < shortest-1 {
		return nil
	}
	set := letters(typed)
	for length := max(shortest, len(typed)-1); length <= min(len(typed)+1, len(n.byLen)-1); length++ {
		of := &n.byLen[length]
		for i, has := range of.set {
			if bits.OnesCount64(set^has) <= 2 && of.text[i*length] == typed[0] && mistyped(typed, of.word(i, length)) {
				out = append(out, of.id[i])
			}
		}
	}
	return out
}

// Mistyped says whether typed is word, or one slip away from it: a letter left out, put in,
// swapped, or hit beside its key. Both are compared without accents or capitals.
func Mistyped(typed, word string) bool {
	a, b := []rune(Normal(typed)), []rune(Normal(word))
	return slices.Equal(a, b) || len(a) > 2 && len(b) > 3 && a[0] == b[0] && mistyped(a, b)
}

// mistyped says whether one slip makes typed of another word.
func mistyped(typed, word []rune) bool {
	p, q := alike(typed, word)
	x, y := typed[p:len(typed)-q], word[p:len(word)-q]
	switch {
	case len(word) == 3:
		return everyRune(append(x[:len(x):len(x)], y...), vowelSign) && len(x) < 2 && len(y) < 2
	case len(x)+len(y) == 1:
		return len(typed) > 3 || typed[0] > 127 || isVowel(byte(y[0]))
	case len(x) == 1 && len(y) == 1:
		return neighbours(x[0], y[0]) || len(word) >= 6 && mixedUp(x[0], y[0])
	}
	return crossed(x, y)
}

// crossed says whether what differs of two words is two letters swapped.
func crossed(x, y []rune) bool {
	return len(x) == 2 && len(y) == 2 && x[0] == y[1] && x[1] == y[0]
}

// vowelSign says whether a letter of Devanagari is a vowel or the sign of one.
func vowelSign(r rune) bool {
	return r >= 'अ' && r <= 'औ' || r >= 'ा' && r <= 'ौ' || r == 'ं' || r == 'ँ'
}

// slips counts typing slips (a letter left out, put in, changed, or two swapped)
// up to limit; limit+1 means more. Short words may only be swapped or, from four
// letters, lose or gain a letter; the first letter is kept unless swapped.
func slips(a, b []rune, limit int) int {
	if a[0] != b[0] {
		if len(a) == len(b) && len(a) >= 3 && a[0] == b[1] && a[1] == b[0] && string(a[2:]) == string(b[2:]) {
			return 1
		}
		if min(len(a), len(b)) < 6 {
			return limit + 1
		}
	}
	p, q := alike(a, b)
	x, y := a[p:len(a)-q], b[p:len(b)-q]
	short := min(len(a), len(b))
	switch {
	case len(x) == 0 && len(y) == 0:
		return 0
	case crossed(x, y):
		return 1
	case len(x) <= 1 && len(y) <= 1:
		if len(x) == 1 && len(y) == 1 && (short < 5 || short < 6 && (p == 0 || !neighbours(x[0], y[0])) || !mixedUp(x[0], y[0])) {
			return limit + 1 // "cold" and "told", "hot" and "hat" are different words; "snoke" is none
		}
		if len(x) != len(y) && short < 4 && (len(y) != 1 || !isVowel(byte(y[0]&0x7f)) || y[0] > 127) {
			return limit + 1 // three letters: only a vowel left out, "cld"
		}
		return 1
	}
	if limit < 2 {
		return limit + 1
	}
	return bounded(x, y, limit)
}

// alike counts the letters two words begin and end with in common.
func alike(a, b []rune) (begin, end int) {
	for begin < len(a) && begin < len(b) && a[begin] == b[begin] {
		begin++
	}
	for end < len(a)-begin && end < len(b)-begin && a[len(a)-1-end] == b[len(b)-1-end] {
		end++
	}
	return begin, end
}

// strain says how unlike typing a single slip is that makes a of b: letters swapped or one
// doubled least, a key beside the right one or a letter left out, a letter too many, then
// any other letter; the first letter is seldom wrong. Two slips are not told
// apart. Common practice, no source.
func strain(a, b []rune) int {
	p, q := alike(a, b)
	x, y := a[p:len(a)-q], b[p:len(b)-q]
	first := 0
	if p == 0 {
		first = 3
	}
	switch {
	case crossed(x, y):
		return 0
	case len(x)+len(y) == 1:
		if one := append(x[:len(x):len(x)], y...)[0]; p > 0 && a[p-1] == one || q > 0 && a[len(a)-q] == one {
			return 0
		}
		return 2 - len(y) + first // a letter more is seldomer than one less
	case len(x) == 1 && len(y) == 1 && neighbours(x[0], y[0]):
		return 1 + first
	}
	return 4 + first
}

// neighbours says whether two letters lie side by side on a phone's keys, in any of the
// common orders of the Latin ones.
func neighbours(a, b rune) bool {
	return a >= 'a' && a <= 'z' && strings.ContainsRune(beside[a-'a'], b)
}

var beside = [26]string{"qwszx", "vghn", "xdfv", "serfcx", "wrsdf", "drtgvc", "ftyhbv", "gyujnb", "uojkl", "huiknm", "jiolm", "kopm", "njkl", "bhjm", "iklp", "olm", "wsa",
	"edft", "awedxz", "rfgy", "yhjik", "cfgb", "qase", "zsdc", "tghu", "asxe"}

// mixedUp says whether one letter is typed for another: they lie side by side, or sound or
// look alike. "bulaya" is no slip for "hilaya".
func mixedUp(a, b rune) bool {
	if neighbours(a, b) {
		return true
	}
	for _, group := range [...]string{"aeiouyw", "bpvwf", "dt", "ckqgsxz", "gj", "lr", "mn", "hj", "0o", "1il",
		"ािीुूृेैोौंँः़्अआइईउऊएऐओऔ", "कखग", "गघ", "चछज", "जझज़", "टठतथद", "डढदध", "पफब", "बभवम", "सशष", "नणम", "रलड़ढ़", "हख"} {
		if strings.ContainsRune(group, a) && strings.ContainsRune(group, b) {
			return true
		}
	}
	return false
}

// bounded is the plain table of edit distances on what differs, with swaps.
func bounded(x, y []rune, limit int) int {
	if len(x)-len(y) > limit || len(y)-len(x) > limit || len(x) > 8 || len(y) > 8 {
		return limit + 1
	}
	var d [10][10]int
	for i := 0; i <= len(x); i++ {
		for j := 0; j <= len(y); j++ {
			switch {
			case i == 0:
				d[i][j] = j
			case j == 0:
				d[i][j] = i
			default:
				cost := 1
				if x[i-1] == y[j-1] {
					cost = 0
				}
				d[i][j] = min(d[i-1][j]+1, d[i][j-1]+1, d[i-1][j-1]+cost)
				if i > 1 && j > 1 && x[i-1] == y[j-2] && x[i-2] == y[j-1] {
					d[i][j] = min(d[i][j], d[i-2][j-2]+1)
				}
			}
		}
	}
	return d[len(x)][len(y)]
}
