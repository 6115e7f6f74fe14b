package understand

import (
	"slices"
	"strings"
	"sync/atomic"
	"unicode/utf8"
)

// kindred is what words of the tables stand for beside themselves, each looked up once. Words of
// no table are looked up each time.
type kindred []atomic.Pointer[[]int32]

func (k kindred) of(l *lexicon, ids []int32, w string, look func(string) []int32) []int32 {
	if len(ids) == 0 || l.spelled[ids[0]] != w {
		return look(w)
	}
	known := &k[ids[0]]
	if list := known.Load(); list != nil {
		return *list
	}
	list := look(w)
	known.Store(&list)
	return list
}

// forms are the words of the tables that differ from a Hindi word in gender and number
// only: निकला, निकली, निकले and the stem निकल; टपकता, टपकती. Set phrases hold one form
// for all.
func (l *lexicon) forms(w string) (out []int32) {
	w = fold(shortVowels(w))
	endings := devaEndings
	if w[0] < utf8.RuneSelf {
		endings = romanEndings
	}
	for _, group := range endings {
		for _, end := range group {
			stem, has := strings.CutSuffix(w, end)
			if !has || end == "" || len(stem) < 4 {
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

// Endings of gender and number that stand for one another, longest first.
var (
	devaEndings  = [][]string{{"ता", "ती", "ते"}, {"ना", "नी", "ने"}, {"ा", "ी", "े", "ीं", ""}}
	romanEndings = [][]string{{"ta", "ti", "te"}, {"na", "ni", "ne"}, {"a", "i", "e", ""}}
)

// unjoin parts a Hindi verb from the helping verb typed onto it: "छानलिया", "hilaadi".
func (r *reader) unjoin() {
	for i := 0; i < len(r.tokens); i++ {
		t := r.tokens[i]
		if t.kind != word || len(t.text) < 6 || t.text[0] < 0x80 && r.lang != "hi" && r.lang != "hi-Latn" {
			continue
		}
		flat := shortVowels(t.text)
		for _, help := range helping(flat) {
			stem, has := strings.CutSuffix(flat, help)
			if !has || !r.lex.nakedStem(stem) {
				stem, has = strings.CutSuffix(t.text, help)
			}
			if has && known(t.text) {
				break
			}
			short := has && len(stem) == 3 && bones(stem) == stem && len(r.lex.ear[hiLatn]().bones[stem]) > 0 // "pltdiya"
			if !has || !short && (len(stem) < 4 || !r.lex.nakedStem(stem)) {
				continue
			}
			first, second := t, t
			first.raw, first.text, first.to = stem, stem, min(t.to, t.from+utf8.RuneCountInString(stem))
			second.raw, second.text, second.from = help, help, first.to
			r.tokens = slices.Replace(r.tokens, i, i+1, first, second)
			break
		}
	}
}

// helping are the helping verbs that end as a word does, in its last two letters.
func helping(w string) []string {
	if !endsHelping[w[len(w)-1]] {
		return nil // most words, seen by their last byte
	}
	return helpingBy[lastTwo(w)]
}

var endsHelping = func() (last [256]bool) {
	for _, help := range slices.Concat(devaHelping, romanHelping) {
		last[help[len(help)-1]] = true
	}
	return last
}()

func lastTwo(w string) string {
	_, last := utf8.DecodeLastRuneInString(w)
	_, before := utf8.DecodeLastRuneInString(w[:len(w)-last])
	return w[len(w)-last-before:]
}

var helpingBy = func() map[string][]string {
	by := map[string][]string{}
	for _, help := range slices.Concat(devaHelping, romanHelping) {
		end := lastTwo(help)
		by[end] = append(by[end], help)
	}
	return by
}()

var (
	devaHelping = []string{"दिया", "दीया", "दिए", "दि", "दी", "लिया", "लीया", "लिए", "लि", "ली", "चुका", "चुकी", "चुके", "गया", "गयी", "गई", "गए",
		"के", "कर", "दूंगा", "दूँगा", "दूंगी", "दूँगी", "देंगे", "लूंगा", "लूँगा", "लूंगी", "लूँगी", "लेंगे"}
	romanHelping = []string{"diya", "dia", "dya", "diye", "di", "liya", "lia", "lya", "liye", "li", "chuka", "chuki", "gaya", "gya", "gayi", "gyi", "gai", "gaye", "gye",
		"ke", "kar", "kr", "dunga", "dungi", "denge", "lunga", "lungi", "lenge"}
)

// nakedStem says whether a word is the naked stem of a Hindi verb.
func (l *lexicon) nakedStem(w string) bool {
	id, ok := l.id[fold(w)]
	return ok && slices.ContainsFunc(l.senses[id], func(e entry) bool {
		return e.hindi() && e.tense&bare != 0 && (act(e.sense()) || verbal(e.sense()))
	})
}
