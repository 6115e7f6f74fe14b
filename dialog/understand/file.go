package understand

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// filing is a lexicon while its tables are read, and what is only then of use.
type filing struct {
	*lexicon
	bare    *[]int32 // by word: the word without accents; unasked until it was asked for
	roman   *[]int32 // by word: the Hindi word in Latin letters; likewise
	entries room[entry]
	opens   room[opening]
	cut     []string // the words of the form in hand
	one     []int32  // their ids
	two     []int32  // their ids, written another way
}

const unasked = -1

func newFiling() *filing {
	const words = 5 << 13 // about as many as the tables make; only saves growing
	return &filing{lexicon: &lexicon{id: make(map[string]int32, words), spelled: make([]string, 0, words),
		senses: make([][]entry, 0, words), phrases: make([][]opening, 0, words), said: make([]phrase, 0, words), spoken: make([]int32, 0, 3*words), roots: map[string][]entry{}, homonyms: map[string][]homonym{}},
		bare: new([]int32), roman: new([]int32)}
}

// room keeps short lists side by side in large blocks: most words have one sense
// and most keys one word, and a block each would cost more than what is in it.
type room[T any] struct{ free []T }

func (r *room[T]) keep(list ...T) []T {
	if cap(r.free)-len(r.free) < len(list) {
		r.free = make([]T, 0, max(1024, len(list)))
	}
	from := len(r.free)
	r.free = append(r.free, list...)
	return r.free[from:len(r.free):len(r.free)]
}

// words files one row: sense, tab, forms parted by "|".
func (l *filing) words(r row) error {
	e, err := parseSense(r.tongue, r.cols[0])
	if err != nil {
		return err
	}
	for form := range r.forms() {
		l.file(e, form)
	}
	return nil
}

// typed files a row of what phones make of a word: the word, tab, spellings parted by "|".
func (l *filing) typed(r row) {
	if l.phone[r.tongue] == nil {
		l.phone[r.tongue] = map[string][]int32{}
	}
	w := string(plain([]rune(r.cols[0])))
	ids := l.exact(r.cols[0], w, nil)
	for form := range r.forms() {
		l.phone[r.tongue][form] = append(l.phone[r.tongue][form], ids...)
	}
}

// parseSense reads "stick=hot!", "do.past", "num=12".
func parseSense(t tongue, s string) (entry, error) {
	e := entry{tongue: t}
	if i := strings.LastIndexByte(s, '.'); i > 0 && !strings.HasPrefix(s, "num=") {
		ten, ok := tenseNames[s[i+1:]]
		if !ok {
			return e, fmt.Errorf("no such tense %q", s[i+1:])
		}
		e.tense, s = ten, s[:i]
	}
	s, e.own = strings.CutSuffix(s, "!")
	for _, count := range []string{"num", "nth"} {
		if v, ok := strings.CutPrefix(s, count+"="); ok {
			f, err := strconv.ParseFloat(v, 64)
			if err != nil {
				return e, fmt.Errorf("number %q: %w", v, err)
			}
			e.value, s = f, count
		}
	}
	id, ok := senseIDs()[s]
	if !ok {
		return e, fmt.Errorf("no such sense %q", s)
	}
	e.id = id
	return e, nil
}

// file puts one form, of one word or more, under its sense: as it is written,
// without its accents, and Hindi also in Latin letters, as it sounds.
func (l *filing) file(e entry, form string) {
	l.cut = tokens0(l.cut[:0], form)
	l.one = l.one[:0]
	for _, w := range l.cut {
		if w == ".." {
			l.one = append(l.one, gap)
			continue
		}
		l.one = append(l.one, l.word(w))
	}
	l.put(e, l.one)
	if e.tongue != hi && !ascii(form) {
		l.put(e, l.again(l.bare, func(w string) string { return string(plain([]rune(w))) }))
	}
	if e.tongue == hi {
		e.tongue = hiLatn
		l.put(e, l.again(l.roman, func(w string) string { return romanise(fold(w)) }))
	}
}

// again gives the ids of the words in hand written another way; each way of a word
// is worked out once.
func (l *filing) again(known *[]int32, write func(string) string) []int32 {
	l.two = l.two[:0]
	for i, id := range l.one {
		if id == gap {
			l.two = append(l.two, gap)
			continue
		}
		for len(*known) <= int(id) {
			*known = append(*known, unasked)
		}
		if (*known)[id] == unasked {
			(*known)[id] = l.word(write(l.cut[i]))
		}
		l.two = append(l.two, (*known)[id])
	}
	return l.two
}

func (l *filing) word(w string) int32 {
	k := fold(w)
	if id, ok := l.id[k]; ok {
		return id
	}
	id := int32(len(l.spelled))
	l.id[k] = id
	l.spelled = append(l.spelled, k)
	l.senses, l.phrases = append(l.senses, nil), append(l.phrases, nil)
	return id
}

func (l *filing) put(e entry, ids []int32) {
	switch len(ids) {
	case 0:
		return
	case 1:
		l.sense(e, ids[0])
		return
	}
	if e.tense != 0 { // the same words in two tenses: "le echo agua", "le echó agua"
		for _, o := range l.phrases[ids[0]] {
			old := &l.said[o.at]
			if old.entry.like(e) && slices.Equal(l.of(old), ids) {
				old.entry.tense |= e.tense
				return
			}
		}
	}
	fixed := 0
	for _, id := range ids {
		if id != gap {
			fixed++
		}
	}
	open := opening{ids[1], int32(len(l.said))}
	if list := l.phrases[ids[0]]; list != nil {
		l.phrases[ids[0]] = append(list, open)
	} else {
		l.phrases[ids[0]] = l.opens.keep(open)
	}
	from := int32(len(l.spoken))
	l.spoken = append(l.spoken, ids...)
	l.said = append(l.said, phrase{from: from, to: int32(len(l.spoken)), entry: e, fixed: fixed})
}

// like says whether two entries differ in nothing but their tense.
func (e entry) like(other entry) bool {
	return e.tongue == other.tongue && e.id == other.id && e.own == other.own
}

// sense files a sense under one word.
func (l *filing) sense(e entry, id int32) {
	list := l.senses[id]
	for i := range list {
		old := &list[i]
		if old.like(e) {
			old.tense |= e.tense
			return
		}
	}
	if list == nil {
		l.senses[id] = l.entries.keep(e)
		return
	}
	l.senses[id] = append(list, e)
}

// tokens0 cuts a table form into words; ".." stays as it is.
func tokens0(out []string, form string) []string {
	if tidy(form) {
		for w := range strings.FieldsSeq(form) {
			out = append(out, w)
		}
		return out
	}
	if strings.Contains(form, "..") {
		form = strings.ReplaceAll(form, "..", " \u2025 ")
	}
	for _, f := range strings.Fields(string(spelt(form))) {
		if f == "\u2025" {
			out = append(out, "..")
			continue
		}
		start := -1
		rs := []rune(f)
		for i, r := range rs {
			if letter(r) || r >= '0' && r <= '9' {
				if start < 0 {
					start = i
				}
				continue
			}
			if start >= 0 {
				out = append(out, string(rs[start:i]))
				start = -1
			}
			if r > 0x2000 || r == '°' || r == '$' || r == '₹' || r == '%' {
				out = append(out, string(r))
			}
		}
		if start >= 0 {
			out = append(out, string(rs[start:]))
		}
	}
	return out
}

// tidy says whether a form is nothing but spaces and composed lower-case letters,
// none three times running, so that spelt would leave it as it is.
func tidy(form string) bool {
	var last, before rune
	for _, r := range form {
		switch {
		case r == ' ':
		case r >= 'a' && r <= 'z', r >= 'ß' && r <= 'ÿ' && r != '÷', r == 'œ':
			if r == last && r == before {
				return false
			}
		case r >= 0x0901 && r <= 0x0957 && r != 0x093c:
			if r == last {
				return false
			}
		default:
			return false
		}
		last, before = r, last
	}
	return true
}

func ascii(s string) bool {
	for i := 0; i < len(s); i++ {
		if s[i] > 127 {
			return false
		}
	}
	return true
}
