package dialog

import (
	"slices"
	"strings"

	"warmstick/dialog/understand"
)

// Wishes: what an officer asks for in words of their own, "whom do I visit today",
// "how is Amina", while nothing else is asked.

// wishes are the officers' words that may be asked for so; the phrase
// words_for_<word> says how. Those about one farmer come first and need a name.
var wishes = []struct {
	word  string
	named bool
}{{"write", true}, {"visited", true}, {"announce", false}, {"round", false}, {"board", false}, {"groups", false}, {"digest", false}}

// idle are the questions that an officer leaves open while asking for something else.
var idle = []string{"", "menu", "more_menu", "board", "line", "drill", "groups", "crew", "crew_more", "namesake", "digest", "sending", "visit_stick", "visit_moisture", "visit_advice"}

// wished grants what an officer asks for in free words.
func (x *exchange) wished(line string) bool {
	if !x.s.Person.Officer() || !slices.Contains(idle, x.open.ID) {
		return false
	}
	if _, chosen := x.chosen(line); chosen {
		return false
	}
	if _, chosen := wordPick(x.lang(), x.open, line); chosen {
		return false
	}
	said := spaced(line)
	name := x.farmerIn(said)
	for _, w := range wishes {
		if w.named != (name != "") || x.wordIn(said, "words_for_"+w.word) == "" {
			continue
		}
		if w.named {
			return x.do(func() { x.find(w.word, name) })
		}
		return x.officerWord(understand.Command{Name: w.word}, line)
	}
	if name == "" || strings.HasPrefix(x.open.ID, "visit_") || len(x.s.Active()) > 0 && len(facts(x.read(line).codes)) > 0 {
		return false // "Amina's is cold" answers; "Amina turned it" is of the officer's own heap
	}
	return x.do(func() { x.find("heap", name) })
}

// farmerIn is the name of a farmer of the flock that stands in a spaced text, the
// longest; "" when none does.
func (x *exchange) farmerIn(said string) (name string) {
	for _, c := range x.flock() {
		if n := bare(c.Name); len(n) > len(name) && len(n) > 2 && strings.Contains(said, " "+n+" ") {
			name = n
		}
	}
	return name
}
