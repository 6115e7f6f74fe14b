package understand

import (
	"cmp"
	"embed"
	"io/fs"
	"slices"
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
	id     senseID // as in the tables, without "!" and ".tense"
	value  float64 // for num=
	tense  tense
	tongue tongue
	own    bool // "!" in the table: it names its thing itself and counts anywhere
}

func (e entry) sense() string { return senseList[e.id] }

// meant is an entry of a sense that is sure to be one.
func meant(t tongue, sense string) entry { return entry{tongue: t, id: senseIDs()[sense]} }

// phrase is one sense of several words, which lie in lexicon.spoken.
type phrase struct {
	from, to int32
	entry    entry
	fixed    int // words that are no gap
}

const gap = -1

// opening points from a phrase's first word to the phrase; second is its next word,
// by which most phrases are ruled out at once.
type opening struct{ second, at int32 }

// manyOpenings is from how many phrases on those of a word are sorted by the next one.
const manyOpenings = 16

// lexicon is all tables together, read once.
type lexicon struct {
	id        map[string]int32
	self      []int32 // every word's id at its own place, to point at as a list of one
	spelled   []string
	senses    [][]entry
	formed    kindred // other forms of Hindi words
	agreeing  kindred // Swahili words in other classes
	said      []phrase
	spoken    []int32                      // the words of all phrases; gap means up to three words of any kind
	phrases   [][]opening                  // by first word
	single    map[string][]int32           // words without their doubled letters
	ear       [tongues]func() *ear         // made when first asked
	homonyms  map[string][]homonym         // by the sense they have in the word tables
	ambiguous [1024]bool                   // by the jumble of a sense: it may have homonyms
	roots     map[string][]entry           // Swahili verb roots
	phone     [everyone]map[string][]int32 // what phones make of words; they count in phrases only
	sw        swahili
}

// of gives the words of a phrase.
func (l *lexicon) of(p *phrase) []int32 { return l.spoken[p.from:p.to] }

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
	var typed []row // filed when all words are
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
				case "homonyms.tsv":
					err = f.homonym(r)
				case "phone.tsv":
					typed = append(typed, r)
				case "calendar.tsv", "lengths.tsv", "commands.tsv", "choices.tsv":
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
	for t := range tongues {
		f.ear[t] = sync.OnceValue(func() *ear { return f.lexicon.listen(t) })
	}
	for _, list := range f.phrases {
		if len(list) >= manyOpenings {
			slices.SortStableFunc(list, func(a, b opening) int { return cmp.Compare(a.second, b.second) })
		}
	}
	doubled := make([]bool, len(f.spelled))
	for id, w := range f.spelled {
		doubled[id] = single(w) != w
	}
	f.single = f.keyed(doubled, single)
	f.formed, f.agreeing = make(kindred, len(f.spelled)), make(kindred, len(f.spelled))
	f.self = make([]int32, len(f.spelled))
	for id := range f.self {
		f.self[id] = int32(id)
	}
	for _, r := range typed {
		f.typed(r)
	}
	return f.lexicon, nil
}
