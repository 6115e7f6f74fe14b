package understand

import (
	"errors"
	"io/fs"
	"sync"
)

// glossary is a small table read beside the lexicon: words of the calendar, the
// clock, of lengths and of commands, in all languages, phrase by first word.
type glossary struct {
	first [tongues]map[string][]glossRow
}

type glossRow struct {
	words []string
	entry entry
}

var (
	calendarWords = sync.OnceValue(func() *glossary { return mustGloss("calendar.tsv", "numbers.tsv") })
	lengthWords   = sync.OnceValue(func() *glossary { return mustGloss("lengths.tsv", "numbers.tsv") })
	commandWords  = sync.OnceValue(func() *glossary { return mustGloss("commands.tsv") })
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
		g.first[t] = map[string][]glossRow{}
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
				e, err := sense(t, r.cols[0])
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
}

// glossKey folds a word for its language: accents off, Hindi by ear.
func glossKey(t tongue, w string) string {
	w = fold(string(plain([]rune(w))))
	if t == hiLatn {
		if k := hindiSound(w); len(w) >= 3 && k != "" {
			return k
		}
	}
	return w
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
func (g *glossary) read(ts []token, of []tongue) []sign {
	var out []sign
	for i := 0; i < len(ts); {
		t := ts[i]
		if t.kind == number {
			out = append(out, sign{sense: "num", value: t.value, high: t.value, typed: true, from: i, to: i + 1, text: t.text})
			i++
			continue
		}
		if t.kind == mark {
			out = append(out, sign{sense: t.text, from: i, to: i + 1, text: t.text})
			i++
			continue
		}
		best, entry := 0, entry{}
		for _, lang := range of {
			for _, r := range g.first[lang][glossKey(lang, t.text)] {
				n := len(r.words)
				if n <= best || i+n > len(ts) {
					continue
				}
				fits := true
				for k := 1; k < n && fits; k++ {
					fits = ts[i+k].kind != mark && glossKey(lang, ts[i+k].text) == r.words[k]
				}
				if fits {
					best, entry = n, r.entry
				}
			}
			if best > 0 {
				break
			}
		}
		if best == 0 {
			out = append(out, sign{from: i, to: i + 1, text: t.text})
			i++
			continue
		}
		out = append(out, sign{sense: entry.sense, value: entry.value, high: entry.value, tongue: entry.tongue, from: i, to: i + best, text: t.text})
		i += best
	}
	r := reader{signs: out}
	r.numbers()
	return r.signs
}
