package understand

import (
	"slices"
	"strings"
)

// What a small animal or a beast does to somebody, and what it only does to others.

// attacked reads what a small animal or a beast did to somebody: what only its mouth, claws or
// sting does, or any verb that is not understood and has a part of the body for its object.
// "चूहे ने कान कुतर लिया", "a viper struck my brother", "les fourmis ont dévoré les mollets".
func (p *peril) attacked(i int) string {
	s := &p.signs[i]
	if p.has("bite", "cut", "harm=bite", "harm=cut", "not", "nothing") {
		return ""
	}
	if s.hindi() {
		if oneOf(p.r.word(s.to), "ने", "ne") && (p.has("body") || p.has("person", "me") && p.r.says(p.clause, "को", "ko", "मुझे", "mujhe")) {
			return "harm=bite"
		}
		return ""
	}
	if p.hasDim("animal") || s.sense != "stinger" && p.has("heap", "bed", "worm", "bottle") {
		return ""
	}
	whom := func(o sign) bool {
		return o.sense == "person" || o.sense == "neighbor" || o.sense == "me" || o.sense == "body" || o.whom
	}
	somebody := func(of []sign) bool {
		return slices.ContainsFunc(of, whom) || s.tongue == es && (p.r.says(p.clause, "me", "le", "les", "nos") || s.sense == "stinger" && p.r.says(p.clause, "lo", "la"))
	}
	if k := p.find("maul"); k >= 0 && k < i && p.signs[k].tongue != en && !p.signs[k].neg && somebody(p.signs) {
		return "harm=bite" // "me pegó un ciempiés"
	}
	for k := i + 1; k < len(p.signs); k++ {
		switch v := &p.signs[k]; {
		case v.beast() && !whom(p.signs[k-1]), v.neg, inDim(v.sense, "did"):
			return ""
		case v.sense == "maul" && (v.whom || somebody(p.signs[i+1:])),
			v.sense == "eat" && v.tense&(past|participle|ongoing) != 0 && (v.whom || p.has("body")):
			return "harm=bite"
		case v.sense == "" && p.r.tokens[v.from].kind == word && (p.object(k) == "body" || s.sense == "stinger" && oneOf(p.object(k), "person", "neighbor")),
			k == i+1 && oneOf(v.text, "got", "get", "gets") && oneOf(p.object(k), "person", "neighbor"):
			return "harm=bite" // "bees got the old man"
		}
	}
	return ""
}

// mauled reads what only an animal's mouth, claws or sting does, of one that was named before:
// "there was a snake and it got my husband in the hand".
func (p *peril) mauled(i int) string {
	s := &p.signs[i]
	gnaws := p.has("body") && (p.r.names(s, "kutar", "कुतर", "gnawed", "gnawing", "chewed") || oneOf(s.text[:min(4, len(s.text))], "mord", "rong", "roye"))
	if !p.about.sting && !gnaws || s.neg || p.hasHarm() || p.has("not", "nothing", "bite", "worm") || s.tense&(future|order|unless) != 0 {
		return ""
	}
	for _, o := range p.signs[i+1:] {
		if o.beast() {
			return ""
		}
	}
	if s.whom || p.has("body", "person") || p.r.hurtsMe(p.clause) {
		return "harm=bite"
	}
	return ""
}

// bitten says whether Hindi काटना, to cut and to bite, is of a mouth or a sting: what has one is
// named in the clause, or before it and nothing here that cuts.
func (p *peril) bitten(i int) bool {
	return p.has("stinger") && !p.has("pointed") ||
		p.has("seen=ants", "seen=rodents") && !p.has("bottle", "cloth") ||
		p.has("animal") && p.r.says(p.clause, "ने", "ne") ||
		p.about.sting && p.has("body") && !p.has("pointed", "bottle", "known", "cloth") && strings.HasPrefix(p.signs[i].text, "काट")
}

// byBeast says whether the subject of the verb at sign i is a beast.
func (c *clause) byBeast(i int) bool {
	k := c.back(i-1, "filler", "didaux", "done", "already")
	return k >= 0 && c.signs[k].beast()
}

// stungBefore says whether a small animal is the subject of the verb at sign i.
func (p *peril) stungBefore(i int) bool {
	k := p.back(i-1, "filler", "didaux", "me", "", "neighbor", "known")
	return k >= 0 && (oneOf(p.signs[k].sense, "stinger", "seen=rodents") ||
		p.signs[k].beast() && (p.has("body") || p.signs[i].whom || p.r.strikes(p.clause, i)))
}

// bites reads a verb of biting and stinging, which is also of blades, aches and chopped stalks.
func (p *peril) bites(i int) string {
	s := &p.signs[i]
	switch {
	case p.has("worm") && !p.person:
		return "" // "do worms bite?"
	case p.pricked() && p.has("body"):
		return "harm=cut" // "the blade bit into my finger"
	case s.text == "bit" && !p.person && !p.animal && !p.has("body", "stinger", "seen=ants", "me"):
		return "" // "bit crooked"
	case s.tongue == es && strings.HasPrefix(s.text, "picad") && !p.person && !p.animal && !p.r.says(p.clause, "estoy", "ando", "quede"):
		return "" // "todo picado y mojado": chopped
	case s.tongue == sw && !s.whom && !s.pass && p.about.eye && !p.has("animal", "stinger", "seen=ants"):
		return "" // "jicho ni jekundu na linauma"
	case s.tongue == sw && s.pass && s.tense&past == 0 && p.r.word(s.to) != "na":
		return "" // naumwa: I am ill
	case s.tongue == sw && !s.pass && (!s.whom || p.aches(i)) && p.has("body", "eye") && !p.has("seen=ants", "animal") && !p.hasDim("animal"):
		return "" // mkono unauma: it aches
	}
	return "harm=bite"
}

// aches: Swahili "mgongo uliniuma", the back hurt me. A part of the body stands right
// before the verb, and the verb is not of somebody living, who would bite.
func (c *clause) aches(i int) bool {
	if t := c.signs[i].text; t[0] == 'a' || t[0] == 'w' || strings.HasPrefix(t, "ka") {
		return false
	}
	k := c.back(i-1, "filler", "mine", "very")
	return k >= 0 && c.signs[k].sense == "body"
}
