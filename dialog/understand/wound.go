package understand

import (
	"slices"
	"strings"
)

// Open wounds: something pointed or sharp that went into a body, the bottle or its cap that
// tore one, and cutting that is work and no wound.

// pierced reads something pointed that went into a part of the body, whatever the verb:
// "कील पैर में घुस गई", "kibanzi kimezama kwenye kiganja", "je me suis enfoncé un clou".
func (p *peril) pierced(i int) string {
	if p.hasHarm() || p.animal {
		return ""
	}
	if p.lodged(i) || p.has("tread") && !p.has("not", "nothing") {
		return "harm=cut"
	}
	if p.has("not", "nothing", "hold", "have", "look", "squeeze", "stinger") || p.hasDim("did") || p.r.says(p.clause, "has", "had", "tiene", "tenia") || p.r.suffers(p.clause, i) {
		return ""
	}
	went := slices.ContainsFunc(p.signs, func(s sign) bool {
		return s.sense == "get" || s.sense == "seen=sunk" || s.sense == "open" || s.sense == "bottle=burst" || s.tense&past != 0 && !inDim(s.sense, "did") ||
			s.sense == "" && p.r.tokens[s.from].kind == word && s.from > p.signs[i].from
	})
	whom := p.has("body") || p.has("seen=sunk") && !p.has("heap", "bed", "layer", "compost", "bottle") && (p.person || p.hasDim("unit"))
	if went && whom {
		return "harm=cut"
	}
	return ""
}

// lodged says whether something pointed is in or under a part of the body, with no verb
// between: "thorn deep inside my heel", "j'ai une épine sous le pied".
func (p *peril) lodged(i int) bool {
	at := p.past(i+1, "filler", "known", "inside", "edge", "me", "mine", "person")
	return at > i+1 && at < len(p.signs) && p.signs[at].sense == "body"
}

// pricked says whether something pointed did it, and nothing alive.
func (p *peril) pricked() bool {
	return p.has("pointed") && !p.animal && !p.hasBeast() && !p.has("stinger", "seen=ants")
}

// torn says whether a part of the body burst open, and nothing in or beside it did.
func (p *peril) torn(i int) bool {
	if i > 0 && p.signs[i-1].sense == "body" && p.signs[i].hindi() {
		return true // "ढक्कन से होंठ फट गया"
	}
	return !p.has("bottle", "cap", "bottle=bloated", "squeeze", "damp", "get", "inside") && !p.r.says(p.clause, "en", "dans", "में", "mein") &&
		slices.ContainsFunc(p.signs, func(s sign) bool { return s.sense == "body" && !s.unsure && !strings.HasSuffix(s.text, "ni") })
}

// mouths are opened without harm; what goes into one, or into a stomach, is swallowed.
var mouths = []string{"mouth", "boca", "bouche", "mdomo", "munh", "मुँह", "stomach", "belly", "panza", "barriga", "ventre", "tumbo", "tumboni", "pet", "पेट"}

// opened says whether the cap or the bottle opened a part of the body, which stands right
// behind the verb: "le bouchon m'a ouvert la lèvre", "se abrió la ceja con la tapa".
func (r *reader) opened(c *clause, i int) bool {
	k := c.past(i+1, "filler", "mine", "me")
	if k == len(c.signs) || c.signs[k].sense != "body" || oneOf(c.signs[k].text, mouths...) || oneOf(r.word(c.signs[k].from-1), "with", "con", "avec") {
		return false
	}
	thing := func(s sign) bool { return s.sense == "bottle" || s.sense == "cap" }
	return slices.ContainsFunc(c.signs[:i], thing) || slices.ContainsFunc(c.signs[k:], thing)
}

// cuts reads a verb of cutting: whom it cut, or that it is work, or what an animal did.
func (p *peril) cuts(i int) string {
	s := &p.signs[i]
	switch {
	case s.hindi() && p.has("harm=bite", "bite"):
		return "" // "मधुमक्खी ने काटा": काटना is to cut and to bite
	case s.pass && (p.hasDim("material") || p.hasDim("unit")) && !p.has("person", "body"), p.byBeast(i) && !p.has("body"):
		return "" // "nyasi zilizokatwa", "le grillage que le bouc a déchiré"
	case p.object(i) == "heap":
		return "" // "son bras est rentré dans le tas"
	case p.has("eye") && !p.has("body"):
		return "harm=eye" // "un grain m'est rentré dans l'œil"
	case p.gnawed(i):
		return ""
	case !s.hindi() && !p.has("pointed") && p.stungBefore(i):
		return "harm=bite" // "una avispa le clavó el aguijón"
	case s.hindi() && p.bitten(i):
		return "harm=bite" // "लाल चींटी ने हाथ में काटा"
	case s.tongue == es && p.r.word(s.from-1) == "que" && p.hasDim("material"):
		return "" // "pasto que cortó mi suegro"
	case p.person && p.has("pointed") && s.tense&past != 0 && !p.plant:
		return "harm=cut" // "child cut with glass"
	case !p.has("body") && p.r.wentThrough(p.clause):
		return ""
	case p.has("body") || s.self || s.whom && !p.animal || p.r.strikes(p.clause, i) || s.pass && p.person,
		p.person && p.has("me") && !p.plant && !p.has("foreign", "grasses", "leaf", "dry_leaf", "stalk", "stem", "veg", "fruit", "food", "peel") && !p.hasDim("material") && !p.hasDim("crop"):
		return "harm=cut"
	}
	return ""
}

// gnawed says whether a beast made a hole in a thing: "panya wametoboa mfuko".
func (c *clause) gnawed(i int) bool {
	if i < 0 {
		return false
	}
	k := c.back(i-1, "filler", "didaux", "done", "already")
	return k >= 0 && crawling(c.signs[k].sense) && c.signs[i].sense == "cut" && !c.signs[i].whom && !c.has("body", "person", "me") && (c.hasDim("unit") || c.has("sheet", "bottle", "bed"))
}

// chopped says whether a Hindi clause has "कटी हुई", what was cut and lies there.
func (r *reader) chopped(c *clause) bool {
	return slices.ContainsFunc(c.signs, func(s sign) bool {
		return oneOf(s.text, "कटी", "कटा", "कटे", "kati", "kata", "kate") && oneOf(r.word(s.to), "हुई", "हुआ", "हुए", "hui", "hua", "hue")
	})
}

// reaped: Hindi काटना is to bite and to cut, "धान काट लिया". It bit when somebody or
// something is named that did it or suffered it.
func (r *reader) reaped(c *clause, i int) bool {
	s := &c.signs[i]
	if !s.hindi() || !strings.HasPrefix(s.text, "काट") && !strings.HasPrefix(s.text, "ka") || oneOf(r.word(s.from-1), "ने", "ne") {
		return false
	}
	if c.has("animal", "body", "eye") || c.hasDim("animal") || c.hasDim("seen") || r.says(c, "को", "ko", "मुझे", "mujhe", "हमें", "hame", "उसे", "use", "usse", "इसे", "ise") {
		return false
	}
	for i > 1 && (c.signs[i-1].sense == "" || c.signs[i-1].sense == "size") && c.signs[i-1].to >= c.signs[i].from-1 {
		i-- // "डंठल छोटे-छोटे काट लिए"
	}
	if i == 0 || c.signs[i-1].to < c.signs[i].from-1 {
		return false
	}
	p := c.signs[i-1].sense // the crop itself, not "घास में काट लिया"
	return inDim(p, "crop") || inDim(p, "material") || oneOf(p, "plant", "leaf", "stem", "stalk", "straws")
}
