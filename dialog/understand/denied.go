package understand

import "strings"

// denied says whether a danger is really denied: the "not" stands right beside it,
// and what is denied is not its ending ("can't stop coughing").
func (r *reader) denied(c *clause, i int) bool {
	if c.signs[i].real {
		return true
	}
	if c.has("endless", "stop", "continue") || c.signs[i].sense == "harm=breath" && r.breathless(c, i) {
		return false
	}
	lo, hi := i-4, i+2
	for k := max(0, lo); k < len(c.signs) && k <= hi; k++ {
		switch c.signs[k].sense {
		case "not", "no", "nor", "neither":
			return true
		case "nothing":
			if c.signs[k].hindi() && k > i {
				return true
			}
		}
	}
	return false
}

// breathless says whether what is denied beside a harm of the breath is breathing itself, or the end
// of a cough: "ya no puedo respirar bien", "khansi thamti nahi".
func (r *reader) breathless(c *clause, i int) bool {
	s := &c.signs[i]
	if strings.HasPrefix(s.text, "respir") || strings.HasPrefix(s.text, "breath") {
		return !c.has("wrong", "ask=help", "nothing")
	}
	// a cough that "does not" by any verb but to be, to come, to happen
	return s.hindi() && i+2 < len(c.signs) && oneOf(c.signs[i+1].sense, "", "known") && c.signs[i+2].sense == "not" && i+3 == len(c.signs)
}

// almost says whether a hurt at sign i was a near miss. Smoke and fire have none.
func (c *clause) almost(i int) bool {
	if d := dimension(c.signs[i].sense); d != "harm" && d != "" || c.signs[i].sense == "burning" || c.signs[i].sense == "harm=breath" {
		return false
	}
	for k := max(0, i-2); k < i; k++ {
		switch c.signs[k].text {
		case "nearly", "almost", "casi", "presque", "failli", "faillit":
			return true
		}
	}
	for k := i + 1; c.signs[i].hindi() && k < len(c.signs) && k <= i+3; k++ {
		switch c.signs[k].text {
		case "बचा", "बची", "बचे", "bacha", "bachi", "bache": // "हाथ जलते जलते बचा"
			return c.signs[k].sense != "person" || c.signs[i].tense&present != 0
		}
	}
	return false
}

// within says whether a clause places something in something.
func (r *reader) within(c *clause) bool {
	return r.says(c, "in", "inside", "within", "en", "dentro", "dans")
}

// sameTongue says whether the question word is of the danger's own language:
// Swahili "je" asks, French "je" is I.
func (c *clause) sameTongue(sense string, t tongue) bool {
	for at := range c.signs {
		s := &c.signs[at]
		if s.sense != sense && s.sense != "avoid" {
			continue
		}
		if s.tongue == t || s.tongue == en || (s.tongue == hi || s.tongue == hiLatn) && (t == hi || t == hiLatn) {
			return true
		}
	}
	return false
}

// wouldHurt: a Hindi hurt in the subjunctive or as a possibility, "हाथ जल जाए", "जल सकता है".
func (c *clause) wouldHurt(i int) bool {
	s := &c.signs[i]
	if !s.hindi() || !inDim(s.sense, "harm") || i+1 >= len(c.signs) {
		return false
	}
	n := &c.signs[i+1]
	switch n.sense {
	case "go", "take", "give", "canq":
		if n.tense&bare != 0 && i+2 < len(c.signs) {
			switch c.signs[i+2].text {
			case "वाला", "वाली", "वाले", "wala", "wali", "wale":
				return true // "हाथ जला देने वाली"
			}
		}
		return n.sense == "canq" || n.tense&(order|future) != 0 && n.tense&past == 0
	}
	return false
}

// pains says whether a clause tells of eyes that hurt: they sting, burn, run, are red.
func (r *reader) pains(c *clause) bool {
	for i := range c.signs {
		if !c.signs[i].neg && r.names(&c.signs[i], "sting", "stings", "stinging", "burn", "burns", "burning", "hurt", "hurts", "hurting", "ache", "aching", "pain", "paining", "itch", "itchy", "itching", "sore", "swollen", "watering", "watery", "teary",
			"arde", "arden", "ardiendo", "ardor", "pica", "pican", "duele", "duelen", "irritado", "irritados", "irritada", "irritadas", "hinchado", "hinchados", "hinchada", "hinchadas",
			"pique", "piquent", "brule", "brulent", "mal", "irrite", "irrites", "gonfle", "gonfles",
			"red", "rojo", "roja", "rojos", "rojas", "rouge", "rouges", "लाल", "lal", "laal", "jekundu", "mekundu") {
			return true
		}
	}
	return false
}

// notNow says whether a clause is nothing but "not now", which after "it was hot"
// puts nothing off: it takes the heat back.
func (c *clause) notNow() bool {
	if len(c.signs) != 1 {
		return false
	}
	s := &c.signs[0]
	return s.sense == "later" && s.to-s.from == 2 && (s.text == "not" || s.text == "ahora" || s.text == "plus" || s.text == "pas")
}

// noMore says whether a clause ends in "now" and a bare no: "ilikuwa moto sasa hapana".
func (c *clause) noMore() bool {
	at := c.find("now")
	if at < 0 {
		return false
	}
	no := false
	for _, s := range c.signs[at+1:] {
		switch s.sense {
		case "not", "no", "nothing":
			no = true
		case "is", "filler":
		default:
			return false
		}
	}
	return no && (at == 0 || c.has("was"))
}
