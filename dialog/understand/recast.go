package understand

import (
	"slices"
	"strings"
)

// recast gives a word with two senses the one that its clause (the n-th of the message) or
// the open question asks for. Most such words stand in homonyms.tsv; here are those whose
// company takes more than a table to tell.
func (r *reader) recast(c *clause, n, k int) {
	s := &c.signs[k]
	switch s.sense {
	case "bit":
		if s.text == "bit" && k > 0 && k+1 < len(c.signs) && r.word(s.from-1) != "a" && oneOf(c.signs[k+1].sense, "", "known", "person", "neighbor", "body", "me") && r.creatureBefore(s) {
			s.sense, s.tense = "bite", past // "a snake came and bit Peter"
		}
	case "body":
		if r.breadth(c, k) {
			s.sense = "length" // "sank a hand": a measure, and no wound
		}
	case "filler":
		if r.asked == "layer" && len(c.signs) > 1 && s.hindi() && oneOf(s.text, "lag", "लग") && k+1 < len(c.signs) && c.signs[k+1].tense&past != 0 && !c.hasAct() {
			s.sense = "done" // "चौथी भी लग गई"
		}
	case "ok":
		switch r.asked {
		case "moisture", "worms", "smell":
			if k > 0 && r.describes(c.signs[k-1]) || c.has("smell", "worm", "damp") && !(k+1 == len(c.signs) && r.deedBefore(c.signs)) {
				s.sense = "good" // "seems ok"
			}
		}
	case "moto":
		if k > 0 && c.signs[k-1].sense == "seen=sunk" && s.tongue == sw && r.near[c.signs[k-1].to-1] {
			s.sense = "seen=fire" // "limeshka moto": mistyped, it caught fire
		}
	case "water", "sheet":
		if as, ok := map[string]string{"water": "did=watered", "cover": "did=covered"}[s.text]; ok && s.tongue == en && c.verbHere(k) {
			s.sense, s.tense = as, bare // "did not water it", "forgot to cover the heap"
			s.neg = c.signs[k-1].sense == "not"
		}
	case "material=weeds":
		if c.has("heap") && !r.counted(c, k) && !c.hasAct() {
			s.sense = "seen=weeds" // weeds on the heap
		}
	case "what":
		if s.text == "quoi" && k > 0 && k+1 == len(c.signs) && c.end != "?" && !c.has("or") && !act(c.signs[k-1].sense) && (c.hasQuality() || c.hasPast() && c.hasDeed()) {
			s.sense = "filler" // "on a arrosé le tas quoi": so to say
		}
	case "bite":
		if s.tongue == sw && !s.whom && !s.pass && (strings.Contains(s.text, "vami") || strings.Contains(s.text, "shambuli")) && !c.has("person", "me", "body") {
			s.sense = "known" // "siafu wamevamia sanduku": the box
		}
	case "earlier":
		if s.text == "tout" && (c.ahead() || c.has("later") && !c.hasPast()) {
			s.sense = "later" // "je regarde tout à l'heure", "tout à l'heure quand je rentre"
		}
	}
	r.turn(c, n, k)
}

// describes says whether a sign is a verb of being or seeming.
func (r *reader) describes(s sign) bool {
	switch s.text {
	case "seems", "seem", "looks", "look", "feels", "feel", "its", "is", "are", "theyre", "parece", "parecen", "ve", "ven", "esta", "estan", "semble", "semblent", "est", "sont", "smells",
		"देखा", "देखी", "लगा", "लगी", "लग", "dekha", "dekhi", "laga", "lagi", "lag", "naona", "inaonekana", "linaonekana", "wanaonekana":
		return true
	}
	return s.sense == "is"
}

// creatureBefore says whether an animal was named before a sign.
func (r *reader) creatureBefore(s *sign) bool {
	return slices.ContainsFunc(r.signs, func(o sign) bool { return o.from < s.from && (o.sense == "stinger" || o.beast()) })
}

// verbHere says whether an English word at sign k that may be a noun is a verb: "did not
// water the heap", "forgot to cover it".
func (c *clause) verbHere(k int) bool {
	switch {
	case k > 1 && c.signs[k-1].sense == "rangeto":
		return c.signs[k-2].sense == "forgot"
	case k > 0 && c.signs[k-1].sense == "not":
		return k == 1 || c.signs[k-2].sense != "is"
	}
	return false
}
