package understand

import (
	"slices"
	"strings"
)

// warmth reads how hot or cold the stick or the heap is.
func (r *reader) warmth(c *clause, i int, in scope) (code string, ok bool) {
	if in.about.eye && !in.here.heap && r.several && c.signs[i].sense == "stick=hot" && r.asked != "stick" {
		return "", true // "trae el ojo rojo y le arde"
	}
	s := &c.signs[i]
	asked := r.asked
	here := in.here
	switch s.sense {
	case "stick=hot":
		return r.isHot(c, i, in)
	case "stick=warm":
		return r.isWarm(c, i, in)
	case "stick=cold":
		return r.isCold(c, i, in)
	case "heat", "joto":
		return r.ofHeat(c, i, in)
	case "moto":
		return r.ofMoto(c, i, in)
	case "poa":
		if s.tense != 0 || here.heap {
			if in.stick || here.heap {
				if s.neg || c.unreached(i) {
					return notCold, true
				}
				return "stick=cold", true
			}
		}
		return "", true
	case "fireglyph":
		if asked == "stick" {
			return "stick=hot", true
		}
		return "", true
	case "hold":
		if (asked == "stick" || c.has("stick")) && (c.cant || c.has("couldnt") || c.has("forgot") && s.tongue == sw && s.tense&bare != 0) {
			return "stick=hot", true // could not touch it
		}
		return "", true
	case "burn":
		if !s.neg && !s.self && !c.has("heap", "inside", "edge", "compost", "bed", "layer", "seen=ash") && (asked == "stick" || c.has("stick")) && !c.has("me", "person") && (!c.has("body") || asked == "stick" && s.tense&(past|participle) == 0) && s.tense&(present|ongoing|imperfect) != 0 {
			return "stick=hot", true // el palo quema, ça brûle
		}
		return "", true
	case "burning":
		if s.neg {
			return "", true
		}
		if in.stick && (asked == "stick" || c.has("stick")) {
			return "stick=hot", true
		}
		return "", true
	}
	return "", false
}

// isHot: "hot", said of the stick or the heap.
func (r *reader) isHot(c *clause, i int, in scope) (code string, ok bool) {
	s := &c.signs[i]
	if in.stick && !s.neg && c.nothingOfIt(i) {
		return "stick=cold", true // "nothing hot about it"
	}
	if c.has("seen=ash") || !in.stick && !s.own {
		return "", true
	}
	switch {
	case c.unreached(i), r.gone(c, i):
		return notHot, true // "refuses to get hot", "waiting for it to get hot"
	case s.neg && s.grade == strongly && (r.says(c, "never", "jamas", "nunca", "jamais", "expect", "expected", "expecting", "esperaba", "attendais") || r.says(c, "kabhi", "कभी", "देखा", "dekha") && r.says(c, "itna", "itni", "इतना", "इतनी")):
		return "stick=hot", true // "never been so hot", "कभी इतना गरम नहीं देखा"
	case s.neg && s.grade == strongly:
		return "stick=warm", true
	case s.neg && s.grade == notAtAll:
		return "stick=cold", true
	case s.neg:
		return notHot, true
	case s.grade == slightly:
		return "stick=warm", true
	}
	return "stick=hot", true
}

// isWarm: "warm".
func (r *reader) isWarm(c *clause, i int, in scope) (code string, ok bool) {
	s := &c.signs[i]
	if in.stick && !s.neg && c.nothingOfIt(i) {
		return "stick=cold", true
	}
	if !in.stick && !s.own {
		return "", true
	}
	if c.unreached(i) || r.names(s, "hata") && slices.ContainsFunc(c.signs[:i], func(v sign) bool { return v.neg }) {
		return "stick=cold", true // "fails to get even lukewarm", "hakikushika joto hata kidogo"
	}
	if s.neg && s.hindi() && r.names(s, "kam", "kami", "कम", "कमी") {
		return "", true // "garmi kam nahi hui"
	}
	if s.neg {
		return "stick=cold", true
	}
	return "stick=warm", true
}

// isCold: "cold".
func (r *reader) isCold(c *clause, i int, in scope) (code string, ok bool) {
	s := &c.signs[i]
	if c.coldWater(i) {
		return "", true
	}
	if !in.stick && !s.own {
		return "", true
	}
	if s.neg || c.nothingOfIt(i) || c.unreached(i) || r.gone(c, i) {
		return notCold, true
	}
	if r.names(s, "pas") && r.word(s.from-1) == "manque" {
		return "", true // "ça manque pas de chaleur"
	}
	return "stick=cold", true
}

// ofHeat: "heat", there or not.
func (r *reader) ofHeat(c *clause, i int, in scope) (code string, ok bool) {
	s := &c.signs[i]
	if !in.stick || s.sense == "heat" && c.has("stick=cold", "stick=warm") {
		return "", true
	}
	switch {
	case r.names(s, "enfriar", "enfriarse", "refroidir") && (s.neg || c.unreached(i)):
		return "", true // "se niega a enfriarse": how hot it is is not said
	case r.deniesVerb(c, ends):
		return "stick=hot", true // "the heat hasn't gone"
	case r.deniesVerb(c, goes):
		return "", true // "the heat won't go": away, or up
	case c.has("lacks", "await") && !s.neg, r.says(c, "attends", "attend", "attendons") && !s.neg, i > 0 && c.signs[i-1].sense == "want", c.has("fails", "lacks") && c.has("not", "no"):
		return "", true // "waiting for the heat", "no le falta calor"
	case s.hindi() && !s.neg && s.grade == plainly && c.figure(), s.sense == "heat" && i+1 < len(c.signs) && c.signs[i+1].sense == "num":
		return "", true // "ताप 55", "temperature is 61": a figure, not a feel
	case (s.neg || c.without(i)) && r.bears(c):
		return "stick=hot", true // "no aguanto el calor"
	case c.without(i):
		return "stick=cold", true // "couldn't find any heat"
	case (s.hindi() || s.tongue == sw) && !s.neg && c.has("finish"):
		return "stick=cold", true // "garmi bilkul khatam"
	case s.neg && s.grade == strongly:
		return "stick=warm", true
	case s.neg:
		return "stick=cold", true
	case s.grade == slightly:
		return "stick=warm", true
	case s.grade == strongly || s.grade == notAtAll:
		return "stick=hot", true
	case s.sense == "heat":
		return "stick=hot", true
	}
	return "", true
}

// ofMoto: Swahili "moto": hot, and fire.
func (r *reader) ofMoto(c *clause, i int, in scope) (code string, ok bool) {
	s := &c.signs[i]
	if c.unreached(i) && in.stick {
		return notHot, true // "imegoma kupata moto"
	}
	if c.has("seen=sunk") {
		return "", true // "moto umepungua": less than it was
	}
	if s.neg {
		if !in.stick {
			return "", true
		}
		switch s.grade {
		case strongly:
			return "stick=warm", true
		case notAtAll:
			return "stick=cold", true
		}
		return notHot, true
	}
	if i > 0 && c.signs[i-1].sense == "hold" && c.signs[i-1].tense&past != 0 {
		return "", true // limeshika moto: it caught fire
	}
	if oneOf(r.word(s.from-1), "kwenye", "juu") && r.says(c, "napika", "ninapika", "tunapika", "anapika", "nimepika", "kupika", "nachemsha") {
		return "", true // "napika kwenye moto"
	}
	if c.has("give") || i > 0 && c.signs[i-1].sense == "have" {
		return "", true
	}
	if in.stick {
		if s.grade == slightly {
			return "stick=warm", true
		}
		return "stick=hot", true
	}
	return "", true
}

// notFelt says whether "it was not" at sign i denies a warmth just named, rather than a
// deed.
func (r *reader) notFelt(i int) bool {
	if !strings.HasPrefix(r.signs[i].text, "नह") && !strings.HasPrefix(r.signs[i].text, "nah") && !strings.HasPrefix(r.signs[i].text, "nhi") {
		return false
	}
	for k := i - 1; k >= 0 && k >= i-3; k-- {
		switch s := &r.signs[k]; {
		case property(s.sense) == "stick", r.asked == "bottle" && inDim(s.sense, "bottle"):
			return true
		case s.sense != "" && s.sense != "filler" && s.sense != "very" && s.sense != "bit" && s.sense != "atall":
			return false
		}
	}
	return false
}

// uncaught: "गर्मी पकड़ी नहीं" is heat that did not take, not a stick that cannot be held.
func (r *reader) uncaught(i int) bool {
	if i == 0 || r.signs[i-1].sense != "heat" {
		return false
	}
	w := r.signs[i].text
	return strings.HasPrefix(w, "पकड") || strings.HasPrefix(w, "pakad") || strings.HasPrefix(w, "pakd") || strings.HasPrefix(w, "pkd")
}

// coldWater says whether the cold at sign i is of water that was put somewhere: "le pusimos
// agua fría". The bare "cold water" is what the stick felt like.
func (c *clause) coldWater(i int) bool {
	beside := func(k int) bool {
		return k >= 0 && k < len(c.signs) && (c.signs[k].sense == "water" || c.signs[k].sense == "did=watered")
	}
	return (beside(i-1) || beside(i+1)) && !c.has("heap", "stick", "inside") && (c.has("did=watered") || c.actBut("do") || c.hasHarm())
}
