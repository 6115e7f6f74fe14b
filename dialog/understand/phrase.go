package understand

import (
	"slices"
)

// yielding cuts sign s short where a better phrase begins inside it and reaches
// further: "looks like | a balloon" is "looks | like a balloon", "l'eau | noire" is
// "l' | eau noire".
func (r *reader) yielding(i int, s sign) sign {
	if s.to == i+2 && s.sense == "done" {
		if x := r.one(i + 1); x.to > s.to+1 && inDim(x.sense, "did") {
			s.sense, s.tense, s.to = "already", 0, i+1 // "déjà | fait sortir le gaz"
		}
		return s
	}
	if s.to < i+2 || s.sense != "filler" && (s.to != i+2 || !article(r.tokens[i].text)) {
		return s
	}
	for j := i + 1; j < s.to; j++ {
		if x := r.one(j); x.to > s.to && x.to > j+1 && x.sense != "filler" && x.sense != "known" {
			s.sense, s.tense, s.own, s.value, s.high, s.to = "filler", 0, false, 0, 0, j
			return s
		}
	}
	return s
}

func article(w string) bool {
	switch w {
	case "the", "a", "of", "el", "la", "los", "las", "un", "una", "de", "l", "le", "les", "une", "d", "du", "des":
		return true
	}
	return false
}

// topics notes whether worms or the bottle are spoken of at all.
func (r *reader) topics() {
	r.worms = r.asked == "worms" || r.asked == "feed"
	r.bottles = r.asked == "bottle" || r.asked == "shake"
	for _, ids := range r.ids {
		for _, id := range ids {
			for _, e := range r.lex.senses[id] {
				if r.rank[e.tongue] > 1 {
					continue
				}
				switch e.sense() {
				case "worm", "bed":
					r.worms = true
				case "bottle", "cap", "starter":
					r.bottles = true
				}
			}
		}
	}
}

// beside says whether a phrase is about a thing nobody speaks of: "on the sides" is
// of worms only where there are worms.
func (r *reader) beside(e *entry) bool {
	if e.own {
		return false
	}
	switch e.sense() {
	case "seen=worms_escaping", "seen=worms_dead":
		return !r.worms
	}
	return inDim(e.sense(), "bottle") && !r.bottles
}

// suits says whether a sense is of the kind that was asked for, and another is not.
func (r *reader) suits(e *entry, other string) bool {
	if r.asked == "" || dimension(other) == r.asked || e.sense() == other {
		return false
	}
	if len(r.tokens) == 1 && (dimension(e.sense()) == r.asked || r.asked == "worms" && e.sense() == "seen=worms_well") {
		switch other {
		case "ok", "not", "good", "compost", "starter", "chat=hello", "known", "smell":
			return true // "aucune", "terreau", "buenas": a word alone answers
		}
	}
	return (dimension(e.sense()) == r.asked || e.sense() == "sharp" && r.asked == "smell") && (quality(other) || other == "very")
}

// match follows the words of a phrase from token j. One filler ("the", "very") may
// stand between two words of a phrase.
func (r *reader) match(j int, words []int32) (end int, ok bool) {
	if len(words) == 0 {
		return j, true
	}
	if words[0] == gap {
		for skip := 0; skip <= 3 && j+skip < len(r.tokens); skip++ {
			if e, ok := r.match(j+skip, words[1:]); ok {
				return e, true
			}
			if r.tokens[j+skip].kind == mark {
				return 0, false
			}
		}
		return 0, false
	}
	if j >= len(r.tokens) || r.tokens[j].kind == mark && r.tokens[j].text != "'" && r.tokens[j].text != "-" {
		return 0, false
	}
	if r.is(j, words[0]) {
		return r.match(j+1, words[1:])
	}
	if (r.tokens[j].kind == mark || r.skippable(j)) && j+1 < len(r.tokens) && r.is(j+1, words[0]) {
		return r.match(j+2, words[1:])
	}
	return 0, false
}

// is says whether token j is a word of a phrase, as typed or by ear.
func (r *reader) is(j int, id int32) bool {
	return slices.Contains(r.ids[j], id) || slices.Contains(r.hears(j), id)
}

func (r *reader) hears(j int) []int32 { return r.heard[j] }

// ahead lists the words that may stand at token j or after it, a gap first, and makes of
// them a sieve of one bit a word.
func (r *reader) ahead(j int) (next []int32, sieve uint64) {
	next = append(r.next[:0], gap)
	for k := j; k <= j+1 && k < len(r.ids); k++ {
		for _, ids := range [...][]int32{r.ids[k], r.hears(k)} {
			for _, id := range ids {
				sieve |= 1 << (id & 63)
				if !slices.Contains(next, id) {
					next = append(next, id)
				}
			}
		}
	}
	r.next = next
	return next, sieve
}

// openings are the phrases that begin with a word and may go on with one of the next, in
// the order of the tables. Some words begin hundreds.
func (r *reader) openings(id int32, next []int32) []opening {
	all := r.lex.phrases[id]
	if len(all) < manyOpenings {
		return all
	}
	some, words := r.some[:0], 0
	for _, second := range next {
		before := len(some)
		at, end := 0, len(all) // the first that goes on with it, halving; slices.BinarySearchFunc takes twice as long
		for at < end {
			if mid := (at + end) / 2; all[mid].second < second {
				at = mid + 1
			} else {
				end = mid
			}
		}
		for ; at < len(all) && all[at].second == second; at++ {
			some = append(some, all[at])
		}
		if len(some) > before {
			words++
		}
	}
	if words > 1 {
		inOrder(some)
	}
	r.some = some
	return some
}

// inOrder sorts a few openings by their place; they come in runs that are sorted, which is
// what insertion is quick at.
func inOrder(list []opening) {
	for i := 1; i < len(list); i++ {
		for j := i; j > 0 && list[j].at < list[j-1].at; j-- {
			list[j], list[j-1] = list[j-1], list[j]
		}
	}
}

// follows says whether a word stands at token j or, past one filler, after it.
func (r *reader) follows(j int, id int32) bool {
	return j < len(r.ids) && r.is(j, id) || j+1 < len(r.ids) && r.is(j+1, id)
}

// skippable says whether token j is a filler that a phrase may hold; "just" parts "no fire, just ants".
func (r *reader) skippable(j int) bool {
	if len(r.skips) == 0 {
		r.skips = sized(r.skips, len(r.tokens))
	}
	if r.skips[j] == unknown {
		r.skips[j] = not
		if r.tokens[j].text != "just" && r.lex.may(r.ids[j], func(e entry) bool {
			return e.sense() == "filler" && (r.rank[e.tongue] == 0 || r.home(e.tongue))
		}) {
			r.skips[j] = yes
		}
	}
	return r.skips[j] == yes
}

// maybe is what is known of a token that is asked about time and again.
type maybe uint8

const (
	unknown maybe = iota
	yes
	not
)
