package understand

import "slices"

// scope says what a quality in a clause may be about, for want of a thing named
// beside it: the thing spoken of, or the thing asked about.
type scope struct {
	heap, smell, bottle, worm, stick bool
	wet                              bool // a word for wet or dry counts
	here, about                      topic
}

// scope is what a quality in a clause may be about; here and about are the things named in the
// clause and before it.
func (r *reader) scope(c *clause, here, about topic) scope {
	asked := r.asked
	heap := here.heap || asked == "stick" || asked == "moisture" || about.heap && !here.bottle && !here.worm
	smell := here.smell || asked == "smell" || about.smell && !here.bottle && !here.worm && !here.heap
	bottle := here.bottle || asked == "bottle" || about.bottle && !here.heap && !here.worm
	worm := here.worm || asked == "worms" || about.worm && !here.heap && !here.bottle
	stick := here.heap || asked == "stick" || about.heap && (asked != "moisture" || r.several) && !here.bottle && !here.worm
	if r.correcting && !here.bottle && !here.worm {
		heap, smell, stick = true, true, true
	}
	wet := r.correcting || here.heap || asked == "moisture" || asked == "stick" && (c.hasDim("stick") || about.stick) || c.has("damp", "bed") || about.heap && !here.bottle || here.worm || asked == "worms" && c.has("inside")
	return scope{heap: heap, smell: smell, bottle: bottle, worm: worm, stick: stick, wet: wet, here: here, about: about}
}

// value is the code that sign i states, or "" when it states nothing by itself.
func (r *reader) value(c *clause, i int, here, about topic) string {
	s := &c.signs[i]
	if s.sense == "" || s.sense == "filler" {
		return ""
	}
	in := r.scope(c, here, about)
	if code, ok := r.warmth(c, i, in); ok {
		return code
	}
	if code, ok := r.wetness(c, i, in); ok {
		return code
	}
	if code, ok := r.scent(c, i, in); ok {
		return code
	}
	switch s.sense {
	case "good":
		return r.fine(c, i, in)
	case "nothing":
		return r.none(c, in)
	case "body":
		return r.felt(c, i, in)
	case "size":
		if here.heap && (c.halfway() || c.has("partly")) {
			return "seen=sunk" // half its height
		}
		return ""
	case "liquid":
		return r.spilt(c, i, in)
	case "gas":
		return r.pressure(c, i, in)
	case "seen=worms_dead", "die":
		return r.dying(c, i, in)
	case "leave", "seen=worms_escaping", "goout":
		return r.leaving(c, i, in)
	case "alive", "seen=worms_well":
		return r.living(c, i, in)
	}
	if s.sense == "did=watered" && c.has("weather") && !s.hindi() && here.heap && !s.neg && !s.whom {
		return "moisture=wet" // the rain watered it
	}
	switch dimension(s.sense) {
	case "smell":
		if !s.neg && (in.smell || s.own) {
			return s.sense
		}
	case "seen":
		return r.sight(c, i, in)
	case "bottle":
		return r.flask(c, i, in)
	}
	return ""
}

// fine: a "good" is of what was asked or spoken of.
func (r *reader) fine(c *clause, i int, in scope) string {
	s := &c.signs[i]
	if s.neg || c.has("heat") || i > 0 && oneOf(c.signs[i-1].sense, "notyet", "couldnt", "look") && s.text == "bien" {
		return ""
	}
	switch {
	case in.here.smell || r.asked == "smell" && !in.here.heap && !in.here.worm && !in.here.bottle:
		if c.hasDim("smell") {
			return ""
		}
		return "smell=earthy"
	case c.has("damp"):
		return ""
	case in.here.worm || r.asked == "worms" && !in.here.heap && !in.here.bottle && !in.here.smell, in.about.worm && !in.here.heap && !in.here.bottle && !in.here.smell && r.they(c):
		if c.sees() && !oneOf(r.word(s.from), "ab", "अब") {
			return ""
		}
		return "seen=worms_well"
	case r.asked == "moisture" && !in.here.bottle && !in.here.worm && !c.hasDim("moisture"):
		return "moisture=right"
	}
	return ""
}

// none: a "nothing" under a question: no smell, no drop, no gas.
func (r *reader) none(c *clause, in scope) string {
	switch {
	case in.here.smell || r.asked == "smell" && len(c.signs) <= 4:
		if c.hasDim("smell") {
			return ""
		}
		return "smell=none"
	case r.asked == "moisture" && !in.here.bottle && !c.hasDim("moisture"):
		return "moisture=dry" // squeezed, and nothing came
	case r.asked == "bottle" && len(c.signs) <= 4:
		return "bottle=flat"
	case in.here.bottle:
		return "bottle=flat"
	}
	return ""
}

// felt: what a hand or a nose tells by drawing back.
func (r *reader) felt(c *clause, i int, in scope) string {
	s := &c.signs[i]
	switch {
	case r.asked == "stick" && (c.cant || c.has("couldnt")) && !c.hasDim("stick") && !c.hasHarm():
		return "stick=hot" // the hand cannot stay on it
	case (r.asked == "smell" || in.here.smell) && r.names(s, "nose", "nariz", "narices", "nez") && (c.actBut("put") || c.has("hold") || r.closes(c)) && !c.hasDim("smell"):
		return "smell=rotten" // I had to cover my nose
	}
	return ""
}

func (c *clause) hasDim(dim string) bool {
	for at := range c.signs {
		s := &c.signs[at]
		if inDim(s.sense, dim) && s.sense != "seen=steam" {
			return true
		}
	}
	return false
}

// they says whether a clause is about more than one: the worms, not the heap.
func (r *reader) they(c *clause) bool {
	for i := range c.signs {
		for _, t := range r.tokens[c.signs[i].from:c.signs[i].to] {
			switch t.text {
			case "all":
				if n := c.signs[i].to; r.word(n-1) != "good" && r.word(n) != "good" { // "all good" is nobody's
					return true
				}
			case "they", "theyre", "them", "ils", "elles", "sont", "vont", "estan", "andan", "van", "ellas", "todas":
				return true
			}
		}
	}
	return false
}

// actBut says whether a clause holds an act other than one: "I put my nose close".
func (c *clause) actBut(but string) bool {
	return slices.ContainsFunc(c.signs, func(s sign) bool { return act(s.sense) && s.sense != but })
}

// closes says whether a clause shuts something: the nose, before a stench.
func (r *reader) closes(c *clause) bool {
	return r.says(c, "cover", "covered", "hold", "held", "block", "closed", "pinch", "pinched", "tapar", "taparme", "tape", "tapo", "boucher", "bouche", "pincer")
}

// sees says whether a clause holds a sight that is not denied.
func (c *clause) sees() bool {
	for i := range c.signs {
		if s := &c.signs[i]; inDim(s.sense, "seen") && s.sense != "seen=steam" && !s.neg {
			return true
		}
	}
	return false
}

// breadth says whether the part of the body at sign k measures how far a heap went
// down: a hand or fingers with a number, and nothing that could have gone into them.
func (r *reader) breadth(c *clause, k int) bool {
	s := &c.signs[k]
	if !c.has("seen=sunk") || c.hasHarm() || c.has("me", "mine") || !r.names(s,
		"hand", "hands", "finger", "fingers", "arm", "arms", "forearm", "elbow",
		"mkono", "mikono", "kiganja", "kidole", "vidole",
		"हाथ", "उँगली", "उंगली", "उँगलियाँ", "उंगलियाँ", "अंगुली", "अँगुली", "haath", "hath", "ungli", "ungliyan",
		"mano", "manos", "dedo", "dedos", "codo", "brazo", "main", "mains", "doigt", "doigts", "coude", "bras") {
		return false
	}
	counts := func(at int) bool {
		return at >= 0 && at < len(c.signs) && (c.signs[at].sense == "num" || c.signs[at].sense == "one")
	}
	count := k - 1
	if s.tongue == sw {
		count = k + 1
	}
	if !counts(count) {
		return false
	}
	return !c.has("") && !r.says(c, "in", "into", "through", "dans", "dedans", "en", "dentro", "में", "mein", "me", "mai", "ndani", "kwenye", "katika") // a thorn in one hand
}
