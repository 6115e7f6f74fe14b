package understand

import (
	"embed"
	"io/fs"
	"sync"
)

//go:embed lexicon
var files embed.FS

// tongue is one of the six lexicon folders; everyone holds what belongs to all (emoji).
type tongue uint8

const (
	en tongue = iota
	sw
	hi
	hiLatn
	es
	fr
	everyone
	tongues
)

var folders = [tongues]string{"en", "sw", "hi", "hi-Latn", "es", "fr", "any"}

// tense is a set: Spanish "voltee" without its accent may be past or an order.
type tense uint16

const (
	past       tense = 1 << iota // turned, nimegeuza, पलट दिया
	present                      // turns, volteo, palatta hai
	future                       // nitageuza, palatunga
	ongoing                      // ninageuza, turning, volteando
	bare                         // turn, voltear, कr: no tense of its own
	order                        // geuza, voltee, palto; also "may I turn"
	unless                       // Swahili -ki-, -nge-: if I turn
	yet                          // Swahili -ja-: not yet
	imperfect                    // giraba, retournait
	participle                   // volteado, retourné: done unless an auxiliary says other
)

var tenseNames = map[string]tense{"past": past, "present": present, "future": future, "ongoing": ongoing,
	"bare": bare, "order": order, "unless": unless, "yet": yet, "imperfect": imperfect, "participle": participle}

// entry is one sense of one word or phrase.
type entry struct {
	tongue tongue
	sense  string  // as in the tables, without "!" and ".tense"
	value  float64 // for num=
	tense  tense
	own    bool // "!" in the table: it names its thing itself and counts anywhere
}

type phrase struct {
	words []int32 // word ids; gap means up to three words of any kind
	fixed int
	entry entry
}

const gap = -1

// opening points from a phrase's first word to the phrase; second is its next word,
// by which most phrases are ruled out at once.
type opening struct{ second, at int32 }

// lexicon is all tables together, read once.
type lexicon struct {
	id      map[string]int32
	spelled []string
	senses  [][]entry
	said    []phrase
	phrases [][]opening // by first word
	single  map[string][]int32
	sound   [tongues]map[string][]int32
	bones   map[string][]int32
	near    nearest
	roots   map[string][]entry // Swahili verb roots
	sw      swahili
}

// tables returns the lexicon, parsed on first use.
var tables = sync.OnceValue(func() *lexicon {
	l, err := load(files)
	if err != nil {
		panic(err) // the tables are part of the program; a test reads them all
	}
	return l
})

func load(fsys fs.FS) (*lexicon, error) {
	f := newFiling()
	for t := tongue(0); t < tongues; t++ {
		names, err := tableFiles(fsys, t)
		if err != nil {
			return nil, err
		}
		ends := map[string][]ending{}
		var verbs []row // filed last: they need the endings, and give way to words
		for _, name := range names {
			for r, err := range rows(fsys, t, name) {
				if err != nil {
					return nil, err
				}
				switch name {
				case "verbs.tsv":
					verbs = append(verbs, r)
				case "endings.tsv":
					err = endings(ends, r.cols)
				case "prefixes.tsv":
					f.sw.prefix(r.cols)
				case "calendar.tsv", "lengths.tsv", "commands.tsv":
					// small tables of their own, see glossary.go
				default:
					err = f.words(r)
				}
				if err != nil {
					return nil, r.fault(err)
				}
			}
		}
		for _, r := range verbs {
			if err := f.verb(r, ends); err != nil {
				return nil, r.fault(err)
			}
		}
	}
	f.index()
	return f.lexicon, nil
}

// index builds the second keys: by single letters, by sound, by consonants, by nearness.
func (l *lexicon) index() {
	used := make([][tongues]bool, len(l.spelled))
	for id, es := range l.senses {
		for _, e := range es {
			used[id][e.tongue] = true
		}
	}
	for _, p := range l.said {
		for _, id := range p.words {
			if id != gap {
				used[id][p.entry.tongue] = true
			}
		}
	}
	var work sync.WaitGroup // the keys do not touch each other
	work.Go(func() { l.near = newNearest(l.spelled, used) })
	work.Go(func() {
		l.single = l.keyed(func(_ int, w string) string {
			if s := single(w); s != w {
				return s
			}
			return ""
		})
		l.bones = l.keyed(func(id int, w string) string {
			if !used[id][hiLatn] {
				return ""
			}
			if k := bones(w); len(k) >= 2 {
				return k
			}
			return ""
		})
	})
	work.Go(func() {
		for _, t := range [...]tongue{sw, hiLatn, es, fr} {
			l.sound[t] = l.keyed(func(id int, w string) string {
				if !used[id][t] {
					return ""
				}
				return sound(t, w)
			})
		}
	})
	work.Wait()
}

// keyed files the words under a second key; "" leaves a word out.
func (l *lexicon) keyed(key func(id int, w string) string) map[string][]int32 {
	m := make(map[string][]int32, len(l.spelled)/4)
	var room room[int32]
	for id, w := range l.spelled {
		k := key(id, w)
		if k == "" {
			continue
		}
		if ids, ok := m[k]; ok {
			m[k] = append(ids, int32(id))
			continue
		}
		m[k] = room.keep(int32(id))
	}
	return m
}
