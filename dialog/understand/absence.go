package understand

import "strings"

// Heat that is missing, gone, refused or awaited, and heat that does not go.

// without says whether the heat at sign i is told as what was not found, or is no longer there:
// "can't feel any heat", "not a spark of heat", "de calor nada", "se le fue el calor".
func (c *clause) without(i int) bool {
	if n := len(c.signs) - 1; i == n-1 && c.signs[n].text == "nada" || i == n-2 && c.signs[n-1].sense == "is" && c.signs[n].text == "over" || i == n-2 && c.signs[n-1].text == "left" && c.signs[n].text == "it" {
		return true // "the heat is over", but not "heat all over"; "the warmth left it"
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
			if s.hindi() && s.to > s.from+1 && s.tense&past != 0 && k == c.past(i+1, "filler", "", "not") {
				return true // "garmi nikal chuki", "गर्मी टिकी नहीं सारी निकल गई"
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

// gone says whether the heat or the cold at sign i is no longer there, or nowhere.
func (r *reader) gone(c *clause, i int) bool {
	k := c.past(i+1, "is", "known", "")
	return k < len(c.signs) && (oneOf(c.signs[k].sense, "vanished", "fails") || oneOf(r.word(c.signs[k].from), "gone", "ido", "parti"))
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
		for k := i + 1; k < len(c.signs); k++ {
			n := &c.signs[k]
			if kind(r.word(n.from)) && !n.hindi() {
				return true
			}
			if !oneOf(n.sense, "filler", "is", "have", "didaux", "will") {
				break
			}
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
