package understand

// sight: what is seen on or in a heap.
func (r *reader) sight(c *clause, i int, in scope) string {
	s := &c.signs[i]
	if s.sense == "seen=runoff" && s.hindi() && in.about.bottle && !in.here.heap && !s.neg {
		return "bottle=leaking" // "botal hila di lekin neeche se tapak rahi hai"
	}
	if s.neg || !in.here.heap && !in.here.worm && !in.here.bottle && c.otherThan(s, r) || s.sense == "seen=sunk" && (r.sat(c, s) || c.has("worm") && !c.has("heap", "compost", "inside", "bed")) {
		return ""
	}
	switch s.sense {
	case "seen=smoke", "seen=fire", "seen=ash":
		if s.sense == "seen=fire" && i > 0 && c.signs[i-1].sense == "hold" && (r.asked == "stick" || c.has("stick")) {
			return "stick=hot"
		}
		return "" // read with the dangers
	case "seen=flies":
		if c.has("seen=maggots") && (s.hindi() && oneOf(r.word(s.to), "के", "ke", "का", "ka", "की", "ki") || oneOf(r.word(s.from-1), "de", "of", "ya")) {
			return "" // "मक्खी के लार्वा", "larvas blancas de mosca"
		}
	case "seen=rodents", "seen=maggots":
		if r.asked == "smell" && c.has("seen=worms_dead", "die") {
			return "smell=rotten" // a dead rat
		}
	case "seen=runoff":
		if in.bottle && !in.here.heap && (in.here.bottle || r.asked == "bottle" || !s.hindi()) {
			return "bottle=leaking"
		}
	case "seen=weeds":
		if c.has("seen=mould") && (s.hindi() || s.tongue == sw) {
			return "" // "मशरूम उग आए"
		}
		if !s.own && r.counted(c, i) {
			return ""
		}
	case "seen=sunk":
		if c.has("animal", "seen=smoke", "smell", "seen=fire", "moto") || c.hasDim("animal") {
			return "" // a dog sits on it; the smoke has gone down
		}
		if s.hindi() && (c.has("seen=flies", "seen=ants", "ask=undo") || c.hasDim("moisture") && !in.here.heap) {
			return "" // flies sit on it; a button was pressed; "नमी सही बैठ रही है"
		}
		if !s.own && !in.heap && r.asked != "none" && r.asked != "menu" && r.asked != "turn" || (c.has("heat", "joto", "degree") || c.figure() && !r.long(c)) && !c.heapItself(i) || (r.asked == "stick" || r.asked == "moisture") && !in.here.heap && c.has("me", "nothing", "water") || c.has("body") && !in.here.heap {
			return ""
		}
	}
	return s.sense
}

// heapItself says whether what went down at sign i is the heap, and a figure that follows is told for
// itself: "the heap sank 55 degrees inside", but not "sank to 55".
func (c *clause) heapItself(i int) bool {
	return i > 0 && c.signs[i-1].sense == "heap" && i+1 < len(c.signs) && c.signs[i+1].sense == "num" && c.signs[i+1].from == c.signs[i].to
}

// counted says whether sign i is counted: "two bags of weeds".
func (r *reader) counted(c *clause, i int) bool {
	for at := range c.signs {
		s := &c.signs[at]
		if inDim(s.sense, "unit") || s.sense == "num" {
			return true
		}
	}
	return false
}

// figure says whether a clause holds a number that could be a temperature.
func (c *clause) figure() bool {
	for at := range c.signs {
		s := &c.signs[at]
		if s.sense == "num" && s.high >= 10 {
			return true
		}
	}
	return false
}

// long says whether a clause measures a length.
func (r *reader) long(c *clause) bool {
	for at := range c.signs {
		s := &c.signs[at]
		if s.sense == "length" || r.names(s, "cm", "m", "ft", "inch", "inches", "इंच", "centimetros", "centimetres") {
			return true
		}
	}
	return false
}

// otherThan says whether a sight in a clause without heap, bottle or worms is of somebody or
// of the weather: "nació mi nieto", "mon oncle est descendu", "il y a du brouillard".
func (c *clause) otherThan(s *sign, r *reader) bool {
	switch s.sense {
	case "seen=sunk":
		return c.has("person", "foreign") || c.hasBeast() || s.hindi() && (c.odd > 0 || c.has("known"))
	case "seen=weeds":
		return c.has("person") || c.hasBeast()
	case "seen=steam":
		return r.names(s, "brouillard", "brume", "mist", "fog", "neblina", "niebla", "कोहरा", "kohra", "ukungu")
	}
	return false
}

// sat says whether a Hindi "बैठ" is of people who sat down, and not of a heap gone down.
func (r *reader) sat(c *clause, s *sign) bool {
	if !s.hindi() || !oneOf(r.tokens[s.from].text, "बैठ", "बैठे", "बैठा", "बैठी", "baith", "baithe", "baitha", "baithi") {
		return false
	}
	return !c.has("heap", "layer") && (oneOf(r.word(s.to), "के", "कर", "ke", "kar") || c.odd > 0 || c.has("known", "person", "foreign", "look"))
}
