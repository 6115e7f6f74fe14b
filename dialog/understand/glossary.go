package understand

import (
	"cmp"
	"errors"
	"io/fs"
	"slices"
	"sync"
)

// glossary is a small table read beside the lexicon: words of the calendar, the
// clock, of lengths and of commands, in all languages, phrase by first word.
type glossary struct {
	first [tongues]map[string][]glossRow
	heard [tongues]map[string][]glossRow // by the sound of the first word: "oy" for "hoy"
}

type glossRow struct {
	words []string
	entry entry
}

var (
	calendarWords = sync.OnceValue(func() *glossary { return mustGloss("calendar.tsv", "numbers.tsv") })
	lengthWords   = sync.OnceValue(func() *glossary { return mustGloss("lengths.tsv", "numbers.tsv") })
	commandWords  = sync.OnceValue(func() *glossary { return mustGloss("commands.tsv") })
	choiceWords   = sync.OnceValue(func() *glossary { return mustGloss("choices.tsv", "numbers.tsv") })
)

func mustGloss(names ...string) *glossary {
	g, err := gloss(files, names...)
	if err != nil {
		panic(err) // embedded; a test reads them all
	}
	return g
}

func gloss(fsys fs.FS, names ...string) (*glossary, error) {
	g := &glossary{}
	for t := tongue(0); t < everyone; t++ {
		g.first[t], g.heard[t] = map[string][]glossRow{}, map[string][]glossRow{}
	}
	for t := tongue(0); t < everyone; t++ {
		for _, name := range names {
			for r, err := range rows(fsys, t, name) {
				if errors.Is(err, fs.ErrNotExist) {
					break // a folder may lack a table: hi-Latn takes most from hi
				}
				if err != nil {
					return nil, err
				}
				e, err := parseSense(t, r.cols[0])
				if err != nil {
					return nil, r.fault(err)
				}
				for form := range r.forms() {
					ws := tokens0(nil, form)
					if len(ws) == 0 {
						continue
					}
					g.put(t, ws, e)
					if t == hi {
						var roman []string
						for _, w := range ws {
							roman = append(roman, romanise(fold(w)))
						}
						g.put(hiLatn, roman, e)
					}
				}
			}
		}
	}
	return g, nil
}

func (g *glossary) put(t tongue, ws []string, e entry) {
	e.tongue = t
	key := make([]string, len(ws))
	for i, w := range ws {
		key[i] = glossKey(t, w)
	}
	g.first[t][key[0]] = append(g.first[t][key[0]], glossRow{key, e})
	if heard := hearing(t, key[0]); heard != "" {
		g.heard[t][heard] = append(g.heard[t][heard], glossRow{key, e})
	}
}

// hearing is the key of a folded word by ear, where a language is often written as it is
// heard; "" where it is not.
func hearing(t tongue, w string) string {
	if t != es && t != fr && t != sw {
		return ""
	}
	return cmp.Or(sound(t, w), w)
}

// glossKey folds a word for its language: accents off, Hindi by ear.
func glossKey(t tongue, w string) string {
	if !ascii(w) {
		w = fold(string(plain([]rune(w))))
	}
	if t == hiLatn {
		return earKey(w)
	}
	return w
}

// earKey is the key by ear of a folded word.
func earKey(w string) string {
	if len(w) < 3 {
		return w
	}
	return cmp.Or(hindiSound(w), w)
}

// keyed are tokens with the keys of their words, so that one text can be read in all
// languages without folding it for each.
type keyed struct {
	tokens []token
	folded []string
	heard  []string // nil until they are asked for
}

func keysOf(ts []token) *keyed {
	k := &keyed{tokens: ts, folded: make([]string, len(ts))}
	for i, t := range ts {
		if t.kind != mark {
			k.folded[i] = glossKey(everyone, t.text)
		}
	}
	return k
}

// in are the keys under which a language files the words.
func (k *keyed) in(t tongue) []string {
	if t != hiLatn {
		return k.folded
	}
	if k.heard == nil {
		k.heard = make([]string, len(k.folded))
		for i, w := range k.folded {
			k.heard[i] = earKey(w)
		}
	}
	return k.heard
}

// languages lists the tables to try for a chat language, its own first.
func languages(lang string) []tongue {
	switch lang {
	case "sw":
		return []tongue{sw, en}
	case "hi", "hi-Latn":
		return []tongue{hi, hiLatn, en}
	case "es":
		return []tongue{es, en}
	case "fr":
		return []tongue{fr, en}
	}
	return []tongue{en}
}

// elsewhere lists the languages left when a chat's own did not answer.
func elsewhere(lang string) []tongue {
	return []tongue{en, sw, hi, hiLatn, es, fr}
}

// unhyphened drops the hyphens inside words: après-demain, aidez-moi.
func unhyphened(ts []token) []token {
	out := make([]token, 0, len(ts))
	for i, t := range ts {
		if t.text == "-" && t.glued && i > 0 && i+1 < len(ts) && ts[i-1].kind == word && ts[i+1].kind == word && ts[i+1].glued {
			continue
		}
		out = append(out, t)
	}
	return out
}

// read turns a text into signs by the glossary, longest phrase first; words it
// does not have become signs without a sense.
func (g *glossary) read(text *keyed, of ...tongue) []sign {
	out := make([]sign, 0, len(text.tokens))
	for i := 0; i < len(text.tokens); {
		s := g.at(text, i, of...)
		if s.sense == "" && len(of) > 1 { // by ear in the chat's own language alone
			g.longest(&s, text, g.heard[of[0]][hearing(of[0], text.folded[i])], of[0])
		}
		out = append(out, s)
		i = s.to
	}
	r := reader{signs: out}
	r.numbers()
	return r.signs
}

// at reads the sign that begins at token i.
func (g *glossary) at(text *keyed, i int, of ...tongue) sign {
	t := &text.tokens[i]
	s := sign{from: i, to: i + 1, text: t.text}
	switch t.kind {
	case number:
		s.sense, s.value, s.high, s.typed = "num", t.value, t.value, true
		return s
	case mark:
		s.sense = t.text
		return s
	}
	for _, lang := range of {
		if g.longest(&s, text, g.first[lang][text.in(lang)[i]], lang) {
			break
		}
	}
	return s
}

// longest makes a sign of the longest of the rows that fit at its token, if any does.
func (g *glossary) longest(s *sign, text *keyed, rows []glossRow, lang tongue) bool {
	keys, best := text.in(lang), 0
	for _, r := range rows {
		n := len(r.words)
		if n <= best || s.from+n > len(keys) {
			continue
		}
		fits := true
		for k := 1; k < n && fits; k++ {
			fits = text.tokens[s.from+k].kind != mark && keys[s.from+k] == r.words[k]
		}
		if fits {
			best = n
			s.sense, s.value, s.high, s.tongue, s.to = r.entry.sense(), r.entry.value, r.entry.value, r.entry.tongue, s.from+n
		}
	}
	return best > 0
}

// is says whether a word is of a dimension in the first of the languages that has it.
func (g *glossary) is(w, dim string, of []tongue) bool {
	for _, lang := range of {
		for _, r := range g.first[lang][glossKey(lang, w)] {
			if len(r.words) == 1 {
				return inDim(r.entry.sense(), dim)
			}
		}
	}
	return false
}

// holds says whether a language has any word of a text.
func (g *glossary) holds(text *keyed, t tongue) bool {
	return slices.ContainsFunc(text.in(t), func(key string) bool { return len(g.first[t][key]) > 0 })
}
