package understand

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// words files one row: sense, tab, forms parted by "|".
func (l *lexicon) words(t tongue, file string, cols []string) error {
	e, err := sense(t, cols[0])
	if err != nil {
		return err
	}
	r := row{tongue: t, file: file, sense: cols[0]}
	for _, form := range strings.Split(cols[1], "|") {
		form = strings.TrimSpace(form)
		if form == "" {
			continue
		}
		r.forms = append(r.forms, form)
		l.file(e, form)
	}
	l.rows = append(l.rows, r)
	return nil
}

// sense reads "stick=hot!", "do.past", "num=12".
func sense(t tongue, s string) (entry, error) {
	e := entry{tongue: t}
	if i := strings.LastIndexByte(s, '.'); i > 0 && !strings.HasPrefix(s, "num=") {
		ten, ok := tenseNames[s[i+1:]]
		if !ok {
			return e, fmt.Errorf("no such tense %q", s[i+1:])
		}
		e.tense, s = ten, s[:i]
	}
	s, e.own = strings.CutSuffix(s, "!")
	if v, ok := strings.CutPrefix(s, "num="); ok {
		f, err := strconv.ParseFloat(v, 64)
		if err != nil {
			return e, fmt.Errorf("number %q: %w", v, err)
		}
		e.value, s = f, "num"
	}
	if !senseKnown(s) {
		return e, fmt.Errorf("no such sense %q", s)
	}
	e.sense = s
	return e, nil
}

// file puts one form, of one word or more, under its sense. Hindi forms are
// filed a second time in Latin letters, as they sound.
func (l *lexicon) file(e entry, form string) {
	if e.tongue != hi && simple(form) && strings.IndexByte(form, ' ') < 0 && form != "" {
		l.single1(e, l.word(form)) // most verb forms
		return
	}
	var ids, bareIDs []int32
	accented := false
	for _, t := range tokens0(form) {
		if t == ".." {
			ids, bareIDs = append(ids, gap), append(bareIDs, gap)
			continue
		}
		a := l.word(t)
		b := a
		if !ascii(t) {
			b = l.word(string(plain([]rune(t))))
		}
		accented = accented || a != b
		ids, bareIDs = append(ids, a), append(bareIDs, b)
	}
	l.put(e, ids)
	if accented {
		l.put(e, bareIDs)
	}
	if e.tongue == hi {
		e.tongue = hiLatn
		var roman []int32
		for _, t := range tokens0(form) {
			if t == ".." {
				roman = append(roman, gap)
				continue
			}
			roman = append(roman, l.word(romanise(fold(t))))
		}
		l.put(e, roman)
	}
}

// tokens0 cuts a table form into words; ".." stays as it is.
func tokens0(form string) []string {
	if simple(form) {
		return strings.Fields(form)
	}
	var out []string
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

// simple says whether a form is lower-case letters and single spaces already.
func simple(form string) bool {
	for i := 0; i < len(form); i++ {
		c := form[i]
		if c != ' ' && (c < 'a' || c > 'z') || i >= 2 && c == form[i-1] && c == form[i-2] {
			return false
		}
	}
	return true
}

func (l *lexicon) word(w string) int32 {
	k := fold(w)
	if id, ok := l.id[k]; ok {
		return id
	}
	id := int32(len(l.spelled))
	l.id[k] = id
	l.spelled = append(l.spelled, k)
	l.senses = append(l.senses, nil)
	return id
}

func (l *lexicon) put(e entry, ids []int32) {
	if len(ids) == 0 {
		return
	}
	if len(ids) > 1 {
		if e.tense != 0 { // the same words in two tenses: "le echo agua", "le echó agua"
			for _, k := range l.phrases[ids[0]] {
				old := &l.said[k]
				if old.entry.tongue == e.tongue && old.entry.sense == e.sense && old.entry.own == e.own && slices.Equal(old.words, ids) {
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
		l.phrases[ids[0]] = append(l.phrases[ids[0]], int32(len(l.said)))
		l.said = append(l.said, phrase{words: ids, fixed: fixed, entry: e})
		return
	}
	l.single1(e, ids[0])
}

// single1 files a sense under one word.
func (l *lexicon) single1(e entry, id int32) {
	for i, old := range l.senses[id] {
		if old.tongue == e.tongue && old.sense == e.sense && old.own == e.own {
			l.senses[id][i].tense |= e.tense
			return
		}
	}
	l.senses[id] = append(l.senses[id], e)
}

func ascii(s string) bool {
	for i := 0; i < len(s); i++ {
		if s[i] > 127 {
			return false
		}
	}
	return true
}
