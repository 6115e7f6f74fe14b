package understand

import (
	"embed"
	"fmt"
	"io/fs"
	"path"
	"strings"
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

// lexicon is all tables together, read once.
type lexicon struct {
	id      map[string]int32
	spelled []string
	senses  [][]entry
	said    []phrase
	phrases map[int32][]int32 // by first word, into said
	single  map[string][]int32
	sound   [tongues]map[string][]int32
	bones   map[string][]int32
	near    nearest
	roots   map[string][]entry // Swahili verb roots
	sw      swahili
	rows    []row // kept for tests and for listing collisions
}

// row is one line of a table as a person wrote it.
type row struct {
	tongue tongue
	file   string
	sense  string
	forms  []string
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
	const words = 1 << 15 // about as many as the tables make; only saves growing
	l := &lexicon{id: make(map[string]int32, words), phrases: make(map[int32][]int32, 1<<12), said: make([]phrase, 0, words),
		spelled: make([]string, 0, words), senses: make([][]entry, 0, words),
		single: make(map[string][]int32, 1<<11), roots: map[string][]entry{}, bones: make(map[string][]int32, 1<<12)}
	for t := range l.sound {
		l.sound[t] = make(map[string][]int32, 1<<12)
	}
	for t := tongue(0); t < tongues; t++ {
		dir := path.Join("lexicon", folders[t])
		list, err := fs.ReadDir(fsys, dir)
		if err != nil {
			return nil, fmt.Errorf("read lexicon %s: %w", folders[t], err)
		}
		ends := map[string][]ending{}
		var verbs [][]string
		for _, f := range list {
			if !strings.HasSuffix(f.Name(), ".tsv") {
				continue
			}
			name := path.Join(dir, f.Name())
			b, err := fs.ReadFile(fsys, name)
			if err != nil {
				return nil, fmt.Errorf("read lexicon: %w", err)
			}
			for n, line := range strings.Split(string(b), "\n") {
				if strings.TrimSpace(line) == "" || line[0] == '#' {
					continue
				}
				cols := strings.Split(strings.TrimRight(line, "\r\t "), "\t")
				if len(cols) < 2 {
					return nil, fmt.Errorf("%s line %d: need a sense, a tab and the forms", name, n+1)
				}
				switch f.Name() {
				case "verbs.tsv":
					if len(cols) < 3 {
						return nil, fmt.Errorf("%s line %d: need sense, class and stems", name, n+1)
					}
					verbs = append(verbs, cols)
				case "endings.tsv":
					if err := endings(ends, cols); err != nil {
						return nil, fmt.Errorf("%s line %d: %w", name, n+1, err)
					}
				case "prefixes.tsv":
					l.sw.prefix(cols)
				case "calendar.tsv", "lengths.tsv", "commands.tsv":
					// small tables of their own, see glossary.go
				default:
					if err := l.words(t, f.Name(), cols); err != nil {
						return nil, fmt.Errorf("%s line %d: %w", name, n+1, err)
					}
				}
			}
		}
		for _, v := range verbs {
			if err := l.verb(t, v, ends); err != nil {
				return nil, fmt.Errorf("lexicon %s verb %s: %w", folders[t], v[0], err)
			}
		}
	}
	l.index()
	return l, nil
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
		for id, w := range l.spelled {
			if s := single(w); s != w {
				l.single[s] = append(l.single[s], int32(id))
			}
			if used[id][hiLatn] {
				if k := bones(w); len(k) >= 2 {
					l.bones[k] = append(l.bones[k], int32(id))
				}
			}
		}
	})
	for t := tongue(0); t < everyone; t++ {
		if t == hi || t == en {
			continue
		}
		work.Go(func() {
			for id, w := range l.spelled {
				if !used[id][t] {
					continue
				}
				if k := sound(t, w); k != "" {
					l.sound[t][k] = append(l.sound[t][k], int32(id))
				}
			}
		})
	}
	work.Wait()
}
