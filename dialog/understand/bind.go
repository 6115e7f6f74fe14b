package understand

import "slices"

// bind ties every "not" and every word of degree to what it is about.
func (r *reader) bind(c *clause) {
	target := func(s *sign) bool {
		return quality(s.sense) || act(s.sense) || s.sense == "gas" || s.sense == "smell" || s.sense == "drop" ||
			s.sense == "burn" || s.sense == "cut" || s.sense == "bite" || s.sense == "drink" || s.sense == "breathe" ||
			s.sense == "ready" || s.sense == "wrong" || s.sense == "want" || s.sense == "water" || s.sense == "nothing" || s.sense == "goout" ||
			s.sense == "enough" || s.sense == "will" || s.sense == "did" || s.sense == "moving" || s.sense == "worry" || s.sense == "continue" || s.sense == "weather" || s.sense == "rainword"
	}
	for i := range c.signs {
		s := &c.signs[i]
		switch s.sense {
		case "not", "nor", "no", "neither":
		case "notyet": // "todavía no calienta", "not yet hot"
			if i+1 < len(c.signs) && (s.tongue == es || s.tongue == en) {
				for k := i + 1; k < len(c.signs); k++ {
					if quality(c.signs[k].sense) {
						c.signs[k].neg = true
						break
					}
					if x := c.signs[k].sense; x != "filler" && x != "is" && x != "very" && x != "bit" && x != "too" && x != "enough" && x != "have" {
						break
					}
				}
			}
			continue
		case "num":
			if s.value != 0 {
				continue // "zero smell" denies
			}
		case "nothing": // "dhuan kuch nahi dikha", with an echo of the word between them: "dhuan wuan"
			for k := i - 1; s.hindi() && k >= 0; k-- {
				if inDim(c.signs[k].sense, "seen") {
					c.signs[k].neg = true
				}
				if c.signs[k].sense != "filler" && c.signs[k].sense != "" && c.signs[k].sense != "known" {
					break
				}
			}
			continue
		default:
			continue
		}
		if s.sense == "no" && len(c.signs) == 1 {
			continue
		}
		t := -1
		if i == 1 && len(c.signs) == 2 && (s.tongue == sw && s.text == "hapana" && quality(c.signs[0].sense) || s.text == "non" && inDim(c.signs[0].sense, "did")) {
			t = 0 // "moto hapana", "retourné non"
		}
		if s.tongue == hi || s.tongue == hiLatn {
			if s.sense != "nor" {
				for k := i - 1; k >= 0; k-- {
					if target(&c.signs[k]) {
						t = k
						break
					}
					if x := c.signs[k].sense; x != "filler" && x != "is" && x != "very" && x != "atall" && x != "bit" && x != "too" && x != "enough" && x != "was" && x != "now" {
						break
					}
				}
				// "pani nahi dala": the verb is denied, not the water
				if t >= 0 && (c.signs[t].sense == "water" || c.signs[t].sense == "gas") {
					for k := i + 1; k < len(c.signs); k++ {
						if act(c.signs[k].sense) {
							t = k
							break
						}
					}
				}
			}
		}
		if s.tongue == fr && t < 0 && s.text != "ne" && s.text != "n" {
			// ne ... pas: one denial, of what stands between
			for j := i - 1; j >= 0 && j >= i-4 && t < 0; j-- {
				if c.signs[j].sense == "not" && (c.signs[j].text == "ne" || c.signs[j].text == "n") {
					for k := j + 1; k < i; k++ {
						if target(&c.signs[k]) && c.signs[k].tense&participle == 0 {
							t = k
						}
					}
				}
			}
			if t >= 0 && !act(c.signs[t].sense) && c.signs[t].sense != "weather" && c.signs[t].sense != "rainword" {
				t = -1 // "ne sent pas mauvais": the second word denies what follows
			}
		}
		if t < 0 {
			for k := i + 1; k < len(c.signs); k++ {
				if target(&c.signs[k]) {
					t = k
					break
				}
				if c.signs[k].sense == "nor" || c.signs[k].sense == "not" && c.signs[k].tongue != fr || c.signs[k].sense == "hold" && c.has("couldnt") {
					break // but not "no pude ni agarrarlo de lo que quemaba"
				}
			}
		}
		if t < 0 && s.sense != "no" && s.sense != "num" {
			for k := i - 1; k >= 0; k-- {
				if s.hindi() && inDim(c.signs[k].sense, "smell") && k+1 < i && c.signs[k+1].sense == "" {
					break // "बदबू के मारे खड़ा नहीं रहा जाता": another verb is denied
				}
				if quality(c.signs[k].sense) && oneOf(r.word(c.signs[k].to), "que", "qu", "that") {
					break // "si gonflée qu'elle ne tenait plus"
				}
				if c.signs[k].sense == "body" && s.tongue != en {
					break // "itni garam ki haath nahi tikta"
				}
				if target(&c.signs[k]) {
					t = k
					break
				}
			}
		}
		if t >= 0 && s.tongue == sw && i == len(c.signs)-2 && c.signs[i+1].sense == "very" && t < i {
			c.signs[t].grade = slightly // "joto kidogo tu, si sana"
			c.signs[i+1].sense = "filler"
			continue
		}
		if t >= 0 && c.signs[t].to > c.signs[t].from+1 {
			switch c.signs[t].text {
			case "ni", "neither", "nor", "not", "no", "pas", "sin", "sans", "nada", "nadita", "plus", "aucun", "aucune", "cero", "zero", "rien", "ningun", "ninguna", "nunca", "jamas", "jamais", "never", "without", "none",
				"haina", "halina", "hakina", "hakuna", "hamna", "haijapata", "halijapata", "hakijapata", "haitoi", "halitoi", "bila":
				continue // "no está ni seco ni mojado": the phrase denies already
			}
		}
		if t > i && s.tongue == sw && s.text == "hapana" && r.lex.verbPrefix(r.word(c.signs[t].from)) > 2 {
			continue // "hapana nimegongwa na nge": an answer, and then what happened
		}
		if t >= 0 && c.signs[t].sense == "smell" {
			t = c.smelt(t)
		}
		if t >= 0 {
			c.signs[t].neg = true
			for k := t - 1; k >= 0 && s.hindi() && inDim(c.signs[t].sense, "smell") && inDim(c.signs[k].sense, "smell"); k-- {
				c.signs[k].neg = true // "सड़ने की बदबू अब नहीं रही"
			}
			// "not hot or cold": what "or" joins shares the not
			for k := t + 1; k+1 < len(c.signs); k++ {
				if c.signs[k].sense == "or" && quality(c.signs[k+1].sense) {
					c.signs[k+1].neg = true
				}
			}
		}
	}
	for i := range c.signs { // "no huele mal": what is denied is how it smells
		s := &c.signs[i]
		if s.sense == "smell=none" && i+1 < len(c.signs) {
			if k := c.smelt(i); k != i {
				s.sense, c.signs[k].neg = "smell", true
			}
		}
	}
	for i := range c.signs {
		s := &c.signs[i]
		var g grade
		denies := false
		switch s.sense {
		case "very", "too":
			if i > 0 && c.signs[i-1].sense == "squeeze" {
				continue // "en pressant fort"
			}
			g = strongly
		case "bit":
			g = slightly
		case "atall":
			g = notAtAll
			denies = s.text == "ni" || s.text == "pas" || s.text == "meme" || s.text == "aucunement"
		default:
			continue
		}
		t := -1
		after := s.tongue != sw
		for pass := 0; pass < 2 && t < 0; pass++ {
			if after {
				for k := i + 1; k < len(c.signs) && k <= i+4; k++ {
					if quality(c.signs[k].sense) {
						t = k
						break
					}
					if c.signs[k].sense == "inside" || c.signs[k].sense == "edge" {
						break
					}
				}
			} else {
				for k := i - 1; k >= 0 && k >= i-4; k-- {
					if quality(c.signs[k].sense) {
						t = k
						break
					}
				}
			}
			after = !after
		}
		if t >= 0 && c.signs[t].neg && s.text == "kabisa" {
			g = notAtAll // "haina moto kabisa"
		}
		if t >= 0 && (c.signs[t].grade == plainly || g == notAtAll) {
			c.signs[t].grade = g
			c.signs[t].neg = c.signs[t].neg || denies // "ni tantito tibio"
		}
	}
}

// smelt is the sign that says how it smells after sign i, past small words; i itself
// when none does.
func (c *clause) smelt(i int) int {
	for k := i + 1; k < len(c.signs); k++ {
		s := &c.signs[k]
		switch {
		case inDim(s.sense, "smell") && s.sense != "smell=none", s.sense == "bad", s.sense == "good", s.sense == "burnt":
			return k
		case s.sense == "filler", s.sense == "inside_of", s.sense == "rangeto", s.sense == "very", s.sense == "too", s.sense == "bit", s.sense == "one", s.sense == "have", s.sense == "smell", s.sense == "know":
		default:
			return i
		}
	}
	return i
}

// freed says whether a clause tells of a trouble that is not there, or no longer.
func (c *clause) freed() bool {
	return c.ask == telling && !c.doubt && !c.cond && slices.ContainsFunc(c.signs, func(s sign) bool {
		switch s.sense {
		case "seen=flies", "seen=maggots", "seen=ants", "seen=termites", "seen=rodents", "seen=mould", "seen=runoff", "seen=weeds", "smell=rotten", "smell=ammonia":
			return s.neg
		}
		return false
	})
}

// vanish takes back the smell or the sight that is gone, which stands before the word that says
// so or, in Spanish, behind it: "the flies are gone", "ya se fueron las moscas". Smoke and fire
// are told all the same.
func (c *clause) vanish() {
	i := c.find("vanished")
	if i < 0 {
		return
	}
	gone := func(s *sign) bool {
		return inDim(s.sense, "smell") || inDim(s.sense, "seen") && s.sense != "seen=smoke" && s.sense != "seen=fire"
	}
	before := false
	for k := 0; k < len(c.signs) && !(before && k > i); k++ {
		if gone(&c.signs[k]) {
			c.signs[k].neg, before = true, before || k < i
		}
	}
}
