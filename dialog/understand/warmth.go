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
	case "stick=warm":
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
	case "stick=cold":
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
	case "heat", "joto":
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
	case "moto": // Swahili: hot, and fire
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

// without says whether the heat at sign i is told as what was not found, or is no longer there:
// "can't feel any heat", "not a spark of heat", "de calor nada", "se le fue el calor".
func (c *clause) without(i int) bool {
	if n := len(c.signs) - 1; i == n-1 && c.signs[n].text == "nada" || i < n && c.signs[n].text == "over" || i == n-2 && c.signs[n-1].text == "left" && c.signs[n].text == "it" {
		return true // "the heat is over", "the warmth left it"
	}
	for k := range c.signs {
		s := &c.signs[k]
		if k > i && s.text == "gone" {
			return true // "all the heat done gone"
		}
		switch s.sense {
		case "vanished", "fails":
			return true
		case "seen=worms_dead", "die", "finish", "stop", "usedup", "leave", "seen=worms_escaping":
			if k == c.past(i+1, "filler", "is", "have", "didaux", "already") && !s.neg {
				return !c.has("worm") // "the heat died", "la chaleur s'est arrêtée"
			}
		case "goout":
			if k > i && s.hindi() && s.to > s.from+1 && s.tense&past != 0 {
				return true // "garmi nikal chuki"
			}
		case "cant", "couldnt", "nothing", "not":
			if k < i && !s.hindi() && c.past(k+1, "filler", "atall", "bit", "one", "known", "", "get", "have", "look", "collect", "me", "inside_of", "smell", "seen=fire", "like") >= i {
				return true
			}
		case "forgot":
			if (k < i || k == i+1) && strings.HasPrefix(s.text, "fail") {
				return true
			}
		}
	}
	return false
}

// gone says whether the heat or the cold at sign i is no longer there, or nowhere.
func (r *reader) gone(c *clause, i int) bool {
	k := c.past(i+1, "is", "known", "")
	return k < len(c.signs) && (oneOf(c.signs[k].sense, "vanished", "fails") || ends(r.word(c.signs[k].from)) && r.names(&c.signs[k], "gone", "ido", "parti"))
}

// deniesVerb says whether a clause denies a verb of a kind: that the heat ends, "no se le ha ido",
// "n'est pas partie", "halijaisha".
func (r *reader) deniesVerb(c *clause, kind func(word string) bool) bool {
	for i := range c.signs {
		s := &c.signs[i]
		if s.tongue == sw {
			if s.sense == "finish" && s.neg {
				return true
			}
			continue
		}
		if !oneOf(s.sense, "not", "nor", "fails") && !(s.sense == "forgot" && s.hindi()) {
			continue
		}
		k := i + 1
		for k < len(c.signs) && oneOf(c.signs[k].sense, "filler", "is", "have", "didaux", "will") && !kind(r.word(c.signs[k].from)) {
			k++
		}
		if k < len(c.signs) && !c.signs[k].hindi() && kind(r.word(c.signs[k].from)) {
			return true
		}
		if s.hindi() && i > 0 && kind(r.word(c.signs[i-1].to-1)) {
			return true
		}

	}
	return false
}

// goes says whether a word is of going, away or not.
func goes(w string) bool { return oneOf(w, "go", "going", "goes", "va", "van", "part", "vont") }

// ends says whether a word is of what ends, leaves or grows less.
func ends(w string) bool {
	switch w {
	case "gone", "leave", "quit", "quits", "left", "leaving", "drop", "dropped", "dropping", "stop", "stops", "stopped", "stopping", "end", "ended", "ends", "died", "die", "dying", "lost", "losing", "fade", "faded", "fading", "reduce", "reduced", "missing", "lacking",
		"ido", "quita", "quitado", "baja", "bajado", "bajo", "deja", "falta", "perdido", "perdio", "acaba", "acabado", "acabo", "pierde", "pierden", "termina", "terminado", "disminuye", "disminuido", "cede", "afloja",
		"parti", "partie", "partir", "quitte", "quitter", "baisse", "baissee", "tombe", "tombee", "manque", "disparu", "perdu", "perdue", "descend", "arrete", "cesse", "diminue",
		"gayi", "gai", "gaya", "kam", "kami", "khatam", "ghati", "utri", "गई", "गयी", "गया", "कम", "कमी", "खत्म", "ख़त्म", "घटी", "उतरी":
		return true
	}
	return false
}

// unreached says whether the heat at sign i is awaited, or does not come: "refuses to get hot",
// "waiting for it to get hot", "can't get it hot".
func (c *clause) unreached(i int) bool {
	for at := range c.signs {
		switch c.signs[at].sense {
		case "fails", "lacks", "await":
			if c.past(at+1, "filler", "get", "is", "bit", "known", "already", "atall", "also", "") == i || at > i && c.past(i+1, "filler", "is", "known", "") == at {
				return true
			}
		case "cant":
			if at+1 < i && c.past(at+1, "filler") == i {
				return true
			}
		}
	}
	return false
}

// nothingOfIt says whether "nothing" stands before the warmth at sign i: "nothing warm in there".
func (c *clause) nothingOfIt(i int) bool {
	k := c.back(i-1, "filler")
	return k >= 0 && c.signs[k].sense == "nothing" && !c.signs[k].hindi()
}

// bears says whether a clause speaks of bearing the heat, or of the hand that did not.
func (r *reader) bears(c *clause) bool {
	grips := c.find("hold") // "no ha agarrado calor": it took none
	if grips > 0 && c.signs[grips-1].sense == "heat" && r.begins(&c.signs[grips], "tik", "टिक") {
		return false // "गर्मी टिकी नहीं": it did not stay
	}
	return grips >= 0 && !(r.begins(&c.signs[grips], "agarr") && grips+1 < len(c.signs) && c.signs[grips+1].sense == "heat") || c.has("body") || r.says(c, "stand", "bear", "take", "tolerate", "resist", "handle", "keep", "aguanto", "aguanta", "aguantar", "aguante", "soporto", "soporta", "soportar", "soporte", "supporte", "supporter", "tiens", "tenir", "kuvumilia", "kustahimili")
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
