package understand

func (r *reader) forgot(cs []clause, f *finding) bool {
	for k := range cs {
		c := &cs[k]
		if c.ask != telling || c.doubt {
			continue
		}
		if c.orNot() {
			continue // "yaad nahi hilayi ki nahi": open which
		}
		if c.has("forgot", "couldnt") || c.cant && !c.tomorrow && !c.later && !c.has("today", "now") && c.odd == 0 {
			for _, d := range f.deeds {
				if d.clause == k && d.code != "" && d.code != actOf(r.asked) {
					return false
				}
			}
			return true
		}
	}
	return false
}

// didNot says whether a clause denies something past, in English: didn't, haven't.
func (r *reader) didNot(c *clause) bool {
	for i := range c.signs {
		if s := &c.signs[i]; s.tongue == en && (r.names(s, "didnt", "havent", "hasnt", "hadnt") || s.sense == "didaux" && i+1 < len(c.signs) && c.signs[i+1].sense == "not") {
			return true
		}
		if s := &c.signs[i]; s.hindi() && act(s.sense) && s.neg && s.tense&past != 0 {
			return true // "आज नहीं हिलाया"
		}
		if s := &c.signs[i]; r.asked == "feed" && s.sense == "eat" && s.neg || (r.asked == "stick" || r.asked == "moisture") && s.saw() && c.has("not") {
			return true
		}
	}
	return false
}

// saw: Hindi "looked", which as a rule only leads up to what was seen.
func (s *sign) saw() bool {
	if !s.hindi() {
		return false
	}
	switch shortVowels(s.text) {
	case "देखा", "देखी", "देखे", "dekha", "dekhi", "dekhe":
		return true
	}
	return false
}

// unlooked: "did not check", "no lo he sacado", under a question that asks to look.
func (r *reader) unlooked(cs []clause) bool {
	if r.asked != "stick" && r.asked != "moisture" {
		return false
	}
	for k := range cs {
		c := &cs[k]
		if c.ask == telling && !c.cond && !c.doubt && !c.will && !c.tomorrow && (c.has("look", "squeeze", "takeout") || c.sawIt() || c.has("put", "stick") && c.has("stick")) && (c.has("not", "notyet", "forgot", "couldnt") || c.unseen()) && !c.hasQuality() {
			return true
		}
	}
	return false
}

func (r *reader) plainNotYet(cs []clause) bool {
	for k := range cs {
		if cs[k].has("notyet", "forgot") || cs[k].has("couldnt") && !cs[k].has("hold") {
			return true
		}
	}
	return r.unlooked(cs)
}

// unseen: "sijapima", the looking is denied in the verb itself.
func (c *clause) unseen() bool {
	for i := range c.signs {
		if s := &c.signs[i]; s.real && (s.sense == "look" || s.sense == "squeeze") && s.tense&(past|yet) != 0 {
			return true
		}
	}
	return false
}

func (c *clause) sawIt() bool {
	for i := range c.signs {
		if c.signs[i].saw() {
			return true
		}
	}
	return false
}
