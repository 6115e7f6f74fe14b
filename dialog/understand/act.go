package understand

import (
	"slices"
	"strings"
)

// actOf is the code that "yes" or "done" means under a question.
func actOf(asked string) string {
	switch asked {
	case "shake":
		return "did=shook"
	case "turn":
		return "did=turned"
	case "layer":
		return "did=layered"
	case "sieve":
		return "did=sieved"
	case "feed":
		return "did=fed"
	}
	return ""
}

type outcome uint8

const (
	nothing outcome = iota
	done
	notDone
	planned  // will, is doing, tomorrow, later
	refused  // will not
	wished   // wants to, an order, an unclear form
	doubtful // "turned?"
)

// deed is one act found in a clause and how it stands.
type deed struct {
	code    string // did=..., or "" for a bare "did it"
	outcome outcome
	clause  int
	sign    int
}

// namesIt says whether a phrase for a deed names its thing; "चाय छान रही" has another before it.
func (r *reader) namesIt(c *clause) bool {
	for i := range c.signs {
		if s := &c.signs[i]; (s.hindi() || s.sense == "did=harvested") && s.to > s.from+1 && inDim(s.sense, "did") && !(i > 0 && c.signs[i-1].sense == "foreign") {
			return true
		}
	}
	return false
}

// deeds reads the acts of one clause. last is the tense of the act before, which
// a Swahili infinitive goes on with ("nimegeuza na kumwagia maji").
func (r *reader) deeds(c *clause, n int, last *tense, about topic) (out []deed) {
	if c.foreign {
		return nil
	}
	creature := c.has("animal") || c.hasDim("animal") && !c.has("dung") && !c.hasDim("material")
	main := c.beforeTime()
	own := c.has("heap", "stick", "worm", "bed", "bottle", "cap", "compost", "material=compost", "layer", "starter", "inside", "gas") ||
		r.namesIt(c) // "ढक्कन ढीला किया"
	off := !own && (creature || main.has("plant", "foreign"))
	for i := range c.signs {
		s := &c.signs[i]
		if s.hindi() && i+1 < len(c.signs) && c.signs[i+1].sense == "skip" && s.tense&bare != 0 {
			continue // "पलटाई छोड़ देते हैं"
		}
		if !act(s.sense) || s.tongue == es && oneOf(r.word(s.from-1), "hubiera", "hubiese", "hubieran", "hubieramos") {
			continue // "si la hubiera tapado": it was not
		}
		if (c.has("eye", "harm=eye")) && (s.sense == "did=watered" || s.sense == "put") || s.sense == "did=watered" && c.has("body") {
			continue // "it sprayed in my eye", "पानी पैर भिगो गया"
		}
		if s.sense == "did=turned" && i > 0 && oneOf(c.signs[i-1].sense, "unit=trailer", "unit=cart", "unit=barrow") {
			continue // "trali ulat gayi": it tipped over
		}
		if s.sense == "did=fed" && r.ate(c, i) {
			continue // "los pollos ya comieron": no worms
		}
		if creature && c.beastDid(i) {
			continue // "les chèvres ont renversé le tas"
		}
		if c.helped(i) {
			*last = past // "alinisaidia kugeuza": helped me turn
		}
		if s.unsure && !own && !r.nearWord(c, s) {
			continue // "nos robaron las gallinas" is no misspelt "regaron"
		}
		said := c
		if i < len(main.signs) {
			said = main
		}
		code, ok := r.meaning(said, i, about)
		if code == "did=gathered" && said.has("money") && !said.hasDim("material") {
			continue // "la iglesia está juntando dinero"
		}
		if !ok || code == "" && c.hasHarm() || off && code != "" && code != "did=gathered" && (code != actOf(r.asked) || s.tense&ongoing != 0 || code != s.sense && (c.odd > 0 || creature)) && !(code == "did=watered" && c.has("water") && !creature && !c.has("plant")) {
			continue // but not "arrosé avec l'eau du puits"
		}
		if off && code == "" && s.tense&past == 0 {
			continue // "anafanya mtihani": at something else
		}
		o := r.standing(c, i, *last)
		if o == done {
			*last = past
		} else if o == planned && s.tense&future != 0 {
			*last = future
		}
		out = append(out, deed{code, o, n, i})
	}
	for i := range c.signs {
		if s := &c.signs[i]; len(out) == 0 && s.tongue == sw && s.mine && s.tense&past != 0 && !s.neg && !act(s.sense) {
			*last = past // "nilikata majani | na kujenga lundo"
		}
	}
	if len(out) == 0 && c.has("layer") && c.ask == telling && !c.cond && !c.doubt {
		for i := range c.signs { // "two layers finished"
			s := &c.signs[i]
			if s.sense == "done" || s.sense == "finish" {
				o := done
				if s.neg || c.has("not", "notyet") {
					o = notDone
				}
				return append(out, deed{"did=layered", o, n, i})
			}
		}
	}
	return out
}

// beforeTime is a clause without the time it ends in: "I water | when the well is full".
func (c *clause) beforeTime() *clause {
	k := c.find("while")
	if k <= 0 || c.signs[k].hindi() {
		return c
	}
	return &clause{signs: c.signs[:k]}
}

// nearWord says whether a verb known only by its likeness stands among words that are
// all understood, or is the one asked about.
func (r *reader) nearWord(c *clause, s *sign) bool {
	return c.odd == 0 && !c.strange() || s.sense == actOf(r.asked)
}

// ate says whether a verb of eating has people or beasts for its subject, and not the worms.
func (r *reader) ate(c *clause, i int) bool {
	if c.has("worm") || !r.names(&c.signs[i], "eaten", "ate", "eat", "comieron", "comio", "comido", "mange", "manger", "wamekula", "amekula") {
		return false
	}
	k := c.back(i-1, "filler", "didaux", "done", "already", "mine", "me")
	return k >= 0 && (c.signs[k].sense == "person" || c.signs[k].beast())
}

// feeder says whether the person of a clause is who fed, and not who was fed: "my girl
// fed them", when the worms were asked about.
func (r *reader) feeder(c *clause, i int) bool {
	s := &c.signs[i]
	who := c.find("person")
	return r.asked == "feed" && !c.has("animal") && !s.hindi() && who >= 0 && who < i && !oneOf(r.tokens[c.signs[0].from].text, "a", "al", "aux")
}

// beastAfter says whether an animal follows the act at sign i as the one it was done to:
// "les di de comer a las gallinas".
func (c *clause) beastAfter(i int) bool {
	return !c.signs[i].hindi() && (&clause{signs: c.signs[i+1:]}).hasBeast()
}

// beastDid says whether an animal stands before the act at sign i as the one who did it.
func (c *clause) beastDid(i int) bool {
	if t := c.signs[i].tongue; t != fr && t != sw && t != en || c.signs[i].mine || c.has("mine", "person", "neighbor", "dung", "food", "worm") || c.has("me") && !(t == en && oneOf(c.signs[0].text, "my", "our")) {
		return false
	}
	return (&clause{signs: c.signs[:i]}).hasBeast() && !slices.ContainsFunc(c.signs[:i], func(s sign) bool { return oneOf(s.text, "we", "i", "so", "then") })
}

func (c *clause) hasAnimalDung() bool {
	for at := range c.signs {
		s := &c.signs[at]
		if s.sense == "material=cow_dung" || s.sense == "material=jaggery" || s.sense == "material=curd" {
			return true
		}
	}
	return false
}

// hasSweet says whether a clause names what only the starter is made of.
func (c *clause) hasSweet() bool { return c.has("material=jaggery", "material=curd") }

// gassy says whether the message speaks of gas: "full of gas, I let it out".
func (r *reader) gassy() bool {
	for i := range r.signs {
		if r.signs[i].sense == "gas" || r.names(&r.signs[i], "gas", "gaz") {
			return true
		}
	}
	return false
}

// helped says whether a Swahili "helped" or "managed" stands before the infinitive at sign i.
func (c *clause) helped(i int) bool {
	for k := i - 1; k >= 0 && k >= i-3; k-- {
		if s := &c.signs[k]; s.tongue == sw && !s.neg && (s.sense == "help" && s.tense&past != 0 || s.sense == "able") {
			return true
		}
	}
	return false
}

// begins says whether a word of a sign begins in one of the ways.
func (r *reader) begins(s *sign, ways ...string) bool {
	return slices.ContainsFunc(r.tokens[s.from:s.to], func(t token) bool {
		return slices.ContainsFunc(ways, func(w string) bool { return strings.HasPrefix(t.text, w) })
	})
}

// knocks says whether a verb for turning is also one for knocking over and spilling.
func (r *reader) knocks(s *sign) bool {
	return strings.HasPrefix(s.text, "renvers") || strings.HasPrefix(s.text, "tumb")
}

// eats says whether a person of a clause is the one who is fed by the act at sign i. A Hindi one is marked:
// "बच्चे को खिलाया", but "बेटे ने खिलाया" fed.
func (r *reader) eats(c *clause, i int) bool {
	for k := range c.signs {
		s := &c.signs[k]
		if s.sense != "person" {
			continue
		}
		if s.hindi() && oneOf(r.word(s.to), "को", "ko") || !s.hindi() && (k > i || s.tongue == sw || oneOf(r.word(s.from-1), "a", "al", "au", "aux") || s.from > 1 && oneOf(r.word(s.from-2), "a", "au")) {
			return true
		}
	}
	return false
}
