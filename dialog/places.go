package dialog

import (
	_ "embed"
	"slices"
	"strings"
	"sync"
	"time"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/unicode/norm"

	"warmstick/dialog/understand"
)

//go:embed places.tsv
var placeRows string

//go:embed languages.tsv
var languageRows string

// place is somewhere a farmer may live: what the plan needs is its zone and
// whether nights are cold.
type place struct {
	id, zone string
	highland bool
	offered  []string // languages whose farmers are shown it as a button
	words    []string // in their normal form
	names    []string // the same as they are written
	label    string   // as it is written first in the table
}

// rows reads a table of ours: tabs between columns, # for remarks, the first
// row names the columns.
func rows(table string) [][]string {
	var list [][]string
	for line := range strings.Lines(table) {
		line = strings.TrimRight(line, "\r\n")
		if line == "" || strings.HasPrefix(line, "#") {
			continue
		}
		list = append(list, strings.Split(line, "\t"))
	}
	return list[1:]
}

var places = sync.OnceValue(func() []place {
	var list []place
	for _, r := range rows(placeRows) {
		p := place{id: r[0], zone: r[1], highland: r[2] == "yes", offered: strings.Fields(r[3])}
		for w := range strings.SplitSeq(r[4], ",") {
			p.words, p.names = append(p.words, unaccented(bare(w))), append(p.names, strings.TrimSpace(w))
		}
		p.label = strings.SplitN(r[4], ",", 2)[0]
		list = append(list, p)
	}
	return list
})

// townIn is the town or district of a place that a text names; "" when it names the
// place alone.
func (p place) townIn(line string) string {
	said := " " + unaccented(bare(line)) + " "
	town := ""
	for i, w := range p.words {
		if i > 0 && w != "" && len(w) > len(town) && strings.Contains(said, " "+w+" ") {
			town = p.names[i]
		}
	}
	words := strings.Fields(town)
	for i, w := range words {
		words[i] = capital(w)
	}
	return strings.Join(words, " ")
}

// findPlace reads a country, a town or an IANA zone name.
func findPlace(line string) (place, bool) {
	said := " " + unaccented(bare(line)) + " "
	best, longest := place{}, 0
	for _, p := range places() {
		for _, w := range p.words {
			if len(w) > longest && strings.Contains(said, " "+w+" ") {
				best, longest = p, len(w)
			}
		}
	}
	if longest > 0 {
		return best, true
	}
	if name := strings.TrimSpace(line); strings.Contains(name, "/") || name == "UTC" {
		if _, err := time.LoadLocation(name); err == nil {
			return place{id: name, zone: name}, true
		}
	}
	return place{}, false
}

// unaccented drops the accents of Latin letters, which phones leave out; the marks
// of other scripts are letters to their readers and stay.
func unaccented(s string) string {
	return norm.NFC.String(strings.Map(func(r rune) rune {
		if unicode.Is(unicode.Diacritic, r) && unicode.Is(unicode.Inherited, r) {
			return -1
		}
		return r
	}, norm.NFD.String(s)))
}

// in is the place's name on a button: in the script of the language, where the
// table has it.
func (p place) in(lang string) string {
	if lang == "hi" {
		for _, w := range p.words {
			if strings.ContainsFunc(w, func(r rune) bool { return unicode.Is(unicode.Devanagari, r) }) {
				return w
			}
		}
	}
	return capital(p.label)
}

func placeByID(id string) (place, bool) {
	i := slices.IndexFunc(places(), func(p place) bool { return p.id == id })
	if i < 0 {
		return place{}, false
	}
	return places()[i], true
}

// Highland says whether the person's first heat is expected a day later.
func (p Person) Highland() bool {
	pl, ok := placeByID(p.Area)
	return ok && pl.highland
}

type tongue struct {
	tag, label string
	words      []string
}

var tongues = sync.OnceValue(func() []tongue {
	var list []tongue
	for _, r := range rows(languageRows) {
		list = append(list, tongue{r[0], r[1], strings.Split(r[2], ",")})
	}
	return list
})

// findTongue reads the name of a language, in any of them; "English please" names
// one, "English or Swahili" none. A typed "hi" greets; only a button ("say=hi") means the
// tag by it.
func findTongue(line string) (string, bool) {
	if tag, button := strings.CutPrefix(line, "say="); button {
		return tag, slices.ContainsFunc(tongues(), func(t tongue) bool { return t.tag == tag })
	}
	said := strings.ToLower(plain(line))
	for _, t := range tongues() {
		if slices.Contains(t.words, said) || strings.EqualFold(t.label, said) {
			return t.tag, true
		}
	}
	named, spaced := "", " "+bare(line)+" "
	for _, t := range tongues() {
		for _, w := range append([]string{t.label}, t.words...) {
			if utf8.RuneCountInString(w) < 3 || !strings.Contains(spaced, " "+bare(w)+" ") {
				continue
			}
			if named != "" && named != t.tag {
				return "", false
			}
			named = t.tag
		}
	}
	return named, named != ""
}

// misspeltTongue reads the name of a language with a slip in it: "kiswahil", "englsh". It is
// for who was asked for a language: Francis is a name, and no French.
func misspeltTongue(line string) (string, bool) {
	for _, t := range tongues() {
		if slices.ContainsFunc(t.words, func(w string) bool { return utf8.RuneCountInString(w) > 4 && understand.Mistyped(line, w) }) {
			return t.tag, true
		}
	}
	return "", false
}
