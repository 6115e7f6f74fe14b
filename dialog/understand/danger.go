package understand

import (
	"slices"
	"strings"
)

// peril is a clause on its way to the dangers it tells of: what is in it, and from where
// on nothing in it has happened.
type peril struct {
	*clause
	r      *reader
	about  topic
	person bool // somebody is named, who may be hurt
	plant  bool // a plant, cloth or crop, which may be burnt and is no harm
	animal bool // a beast, and nobody
	asks   bool // it asks whether something can happen
	ifAt   int  // where a what-if begins; -1 nowhere
	allIf  bool // Hindi: all of it hangs on the if
	ifVerb bool // Swahili: the if is in the verb, nothing else hangs on it
}

// dangers reads harm, smoke and fire out of one clause. There is no doubt rule
// for them: "I think it smokes" counts. Only a denial, a what-if and a plan do not.
func (r *reader) dangers(c *clause, about topic) (out []string) {
	p := r.perilOf(c, about)
	for i := range c.signs {
		if code := p.tells(i); code != "" && !p.unreal(i) {
			out = append(out, code)
		}
	}
	return out
}

func (r *reader) perilOf(c *clause, about topic) *peril {
	p := &r.peril
	*p = peril{clause: c, r: r, about: about, ifAt: -1}
	p.asks = c.has("canq", "avoid") && !c.has("normal", "why", "worry", "ask=help", "help", "officer", "ask=officer") && !(c.has("what") && c.has("do")) && !r.says(c, "normal", "normale", "normales", "grave")
	if c.has("seen=smoke") && c.has("seen=steam") && c.has("or") {
		p.asks = false // "is that smoke or steam": it is there
	}
	p.person = c.has("me", "mine", "person", "body", "eye", "neighbor")
	for i := range c.signs {
		s := &c.signs[i]
		p.person = p.person || s.mine || s.self || s.whom
		switch {
		case !c.cond || p.ifAt >= 0 || p.ifVerb:
		case s.sense == "si" && oneOf(r.word(s.from-1), "se", "c", "ce"): // "no c si es humo": I do not know whether
		case s.sense == "if" || s.sense == "whatif" || s.sense == "si":
			p.ifAt, p.allIf = i, s.hindi()
		case s.tense&unless != 0:
			p.ifAt, p.ifVerb = max(0, i-1), true
		}
	}
	p.plant = c.has("plant", "cloth") || (c.hasDim("crop") || c.has("foreign") && !c.has("heap", "inside", "stick")) && !p.person
	if p.plant && slices.ContainsFunc(c.signs, func(s sign) bool { return s.tongue == sw && hurts(s.sense) && (s.text[0] == 'a' || s.text[0] == 'w') }) {
		p.plant, p.person = false, true // "nyanya ameungua": the grandmother, and no tomato
	}
	p.animal = slices.ContainsFunc(c.signs, func(s sign) bool { return s.beast() && !s.unsure }) && !p.person // a misspelt goat may be a name
	return p
}

// unreal says whether what sign i tells has not happened: it is denied, asked, feared,
// supposed or planned, or it happened to a plant or a beast of no account.
func (p *peril) unreal(i int) bool {
	c, r, s := p.clause, p.r, &p.signs[i]
	switch {
	case s.neg && r.denied(c, i):
	case s.tongue == sw && c.cond && i+1 < len(c.signs) && c.signs[i+1].tense&unless != 0 && (c.end == "?" || c.has("how", "what", "normal", "worry", "ask=next", "ask=help")): // "ni hatari moshi ukitoka?"
	case c.wouldHurt(i): // "haath jal jaaye": it may, it did not
	case s.hindi() && oneOf(s.text, "jali", "jaali") && i+1 < len(c.signs) && oneOf(c.signs[i+1].sense, "bring", "make", "put", "take", "look"): // a mesh was brought
	case s.hindi() && oneOf(s.text, "jali", "jaali") && oneOf(r.word(s.from+1), "se", "ka", "ki", "ke", "me", "mein", "par", "pe"): // "jaali se ungli kat gayi": of a wire mesh
	case c.almost(i): // "casi me quemo": it did not happen
	case s.tongue == sw && i > 0 && oneOf(c.signs[max(0, c.back(i-1, "moto"))].text, "hakuna", "hamna") && (s.sense == "seen=fire" || s.sense == "seen=smoke"): // "hakuna moto unaowaka"
	case s.tongue == es && r.word(s.from-1) == "de" && r.word(s.from-2) == "nada": // "nada de humo"
	case (c.could || p.asks && c.sameTongue("canq", s.tongue)) && !(s.sense == "harm=breath" && s.neg && c.end != "?"): // "can it burn?", but "ya no puedo respirar"
	case p.supposed(i): // "what if a snake bites"
	case s.tense&(future|unless|order) != 0 && s.tense&(past|present|participle|ongoing) == 0 && !c.made(i):
	case hurts(s.sense) && r.suffers(c, i):
	default:
		return false
	}
	return true
}

// supposed says whether sign i hangs on an if.
func (p *peril) supposed(i int) bool {
	if p.ifVerb && p.signs[i].tense&unless == 0 && !(i > 0 && p.signs[i-1].tense&unless != 0 && strings.HasSuffix(p.signs[i].text, "ni")) {
		return false // but "vumbi likiingia machoni": if it gets into the eyes
	}
	return p.ifAt >= 0 && (i > p.ifAt || i == p.ifAt && p.ifVerb || p.allIf)
}

// tells gives the danger that sign i tells of; "" for none.
func (p *peril) tells(i int) string {
	switch s := &p.signs[i]; s.sense {
	case "seen=ash":
		return p.ashes(i)
	case "seen=smoke", "seen=fire":
		return p.smokes(i)
	case "moto":
		if i > 0 && p.signs[i-1].sense == "hold" && p.signs[i-1].tense&past != 0 && !p.signs[i-1].neg {
			return "seen=fire" // limeshika moto
		}
	case "burnt":
		return p.burnt(i)
	case "burn":
		return p.burns(i)
	case "burning":
		return p.burning(i)
	case "pointed":
		return p.pierced(i)
	case "stinger", "seen=rodents", "seen=ants", "animal":
		return p.attacked(i)
	case "maul":
		return p.mauled(i)
	case "swelling":
		if p.about.sting && p.has("body") && !p.hasHarm() {
			return "harm=bite" // "tataiya chipak gaya gardan pe, sujan hai"
		}
	case "smell=ammonia", "bottle=bloated", "bottle=burst", "seen=sunk", "open":
		return p.otherwise(s, i)
	case "cut":
		return p.cuts(i)
	case "bite":
		return p.bites(i)
	case "drink", "eat":
		return p.swallows(i)
	case "alive":
		if p.r.names(s, "eating", "eatin", "comiendo", "mangeait") && p.unfit("eat") {
			return "harm=swallowed" // "the small one was eating the compost"
		}
	case "mistook":
		if p.has("smell=alcohol", "foreign") && p.has("bottle", "starter", "liquid") && !p.has("drink", "harm=swallowed", "smell") && p.hasPast() {
			return "harm=swallowed" // "nanaji daaru samajh ke chadha gaye botal wala"
		}
	case "eye":
		return p.eyes(i)
	case "get", "put", "take":
		return p.mouthed(i)
	case "breathe":
		if s.neg || p.has("not", "couldnt", "cant", "nothing", "wrong") || p.r.says(p.clause, "anashindwa", "nashindwa", "ninashindwa", "ameshindwa", "alishindwa") {
			return "harm=breath"
		}
	case "material=ash":
		if p.r.asked != "have" && p.has("inside") && !p.has("num", "one") && !p.hasDim("unit") {
			return p.ashes(i)
		}
	case "dust":
		if p.has("breathe") {
			return "harm=breath"
		}
	default:
		if inDim(s.sense, "harm") {
			return p.harm(i)
		}
	}
	return ""
}
