package understand

// wetness reads how dry or wet the heap is, or the handful that was squeezed.
func (r *reader) wetness(c *clause, i int, in scope) (code string, ok bool) {
	s := &c.signs[i]
	asked := r.asked
	here := in.here
	switch s.sense {
	case "moisture=dry":
		if c.has("seen=worms_dead", "die") && !here.heap {
			return "", true // "केंचुए सूख कर मर रहे"
		}
		if !in.wet && !s.own {
			return "", true
		}
		if s.neg {
			return notDry, true
		}
		return s.sense, true
	case "moisture=wet":
		if next := i + 1; c.has("smell") && next < len(c.signs) && c.signs[next].sense == "smell=earthy" {
			return "", true // "smells like wet forest"
		}
		if in.bottle && !here.heap && r.names(s, "dripping") {
			return "bottle=leaking", true
		}
		if !in.wet && !s.own && !(in.bottle && s.hindi()) {
			return "", true
		}
		if s.neg {
			return notWet, true
		}
		if c.has("rag") && c.has("squeeze") {
			return "moisture=right", true // "like a wet rag you wring"
		}
		if s.hindi() && i > 0 && c.signs[i-1].sense == "moisture=right" && oneOf(s.text, "pani", "paani", "पानी") {
			return "", true // "do boond pani nikla": drops of it
		}
		if s.hindi() && i > 0 && oneOf(c.signs[i-1].sense, "bottle", "cap") {
			return "bottle=leaking", true // "बोतल टपक रही है", whatever else is said
		}
		if in.bottle && !here.heap && s.hindi() && s.to > s.from+1 {
			return "bottle=leaking", true // "बोतल से पानी रिस रहा है"
		}
		return s.sense, true
	case "moisture=right":
		if !in.wet && !s.own {
			return "", true
		}
		if s.neg && s.hindi() && oneOf(s.text, "एक", "ek") {
			return "moisture=dry", true // "एक बूंद ना निकली": not one drop
		}
		if s.neg {
			return "", true
		}
		if c.nothingFlows() {
			return "moisture=dry", true // "tone hata moja halikudondoka"
		}
		if s.grade == strongly && !r.names(s, "right", "sawa", "correct", "perfect", "sahi", "सही") && s.text != "si" && s.text != "sio" && s.text != "siyo" { // "si kavu si mbichi sana"
			return "moisture=wet", true
		}
		return s.sense, true
	case "dust":
		if asked == "moisture" && (len(c.signs) <= 3 || c.core() == 1 || c.has("squeeze")) && !c.has("eye", "body", "breathe", "not") {
			return "moisture=dry", true // squeezed: "just dust"
		}
		return "", true
	case "damp":
		switch {
		case c.scant():
			return "moisture=dry", true // "नमी बहुत कम"
		case s.neg || s.grade == notAtAll:
			return "moisture=dry", true
		case s.grade == strongly:
			return "moisture=wet", true
		case c.has("good", "enough"):
			return "moisture=right", true
		}
		return "", true
	case "drop":
		if !in.wet {
			return "", true
		}
		n := i - 1
		for n > 0 && n >= i-2 && c.signs[n].sense != "num" {
			n-- // "two small drops"
		}
		switch {
		case s.neg || c.nothingFlows() || n >= 0 && c.signs[n].sense == "num" && c.signs[n].value == 0:
			return "moisture=dry", true
		case n >= 0 && c.signs[n].sense == "num" && c.signs[n].high <= 6, i+1 < len(c.signs) && c.signs[i+1].sense == "num" && c.signs[i+1].high <= 6:
			return "moisture=right", true
		}
		return "", true
	case "squeeze":
		if c.has("rag", "cloth") && (asked == "moisture" || here.heap) && !s.neg && !c.hasDim("moisture") {
			return "moisture=right", true // like a wrung cloth
		}
		return "", true
	case "water":
		if asked == "moisture" && s.neg && s.tongue == sw && i+1 < len(c.signs) && c.signs[i+1].sense == "very" {
			return notWet, true // "si maji sana"
		}
		if asked == "moisture" && !c.hasDim("moisture") && c.has("body") && !s.neg && !c.has("not", "no") {
			return "moisture=wet", true // water all over my hand
		}
		if asked == "moisture" && !c.hasDim("moisture") && c.has("takeout", "goout", "come", "leave", "seen=worms_escaping", "seen=runoff", "bottle=leaking") || asked == "moisture" && !c.hasDim("moisture") && r.comesOut(c) {
			if s.neg || c.has("not", "no") || c.nothingFlows() {
				return "moisture=dry", true
			}
			return "moisture=wet", true // squeezed: "water came out between my fingers"
		}
		return "", true
	case "takeout", "come":
		if c.nothingCame(asked, s) {
			return "moisture=dry", true // "hakuna kinachotoka"
		}
		return "", true
	}
	return "", false
}

// scent reads what it smells of, where no table row says so outright.
func (r *reader) scent(c *clause, i int, in scope) (code string, ok bool) {
	s := &c.signs[i]
	asked := r.asked
	switch s.sense {
	case "sharp": // stings the nose, unless a smell is named
		if s.neg || !in.smell && !s.own || c.hasDim("smell") || c.has("bad", "good", "burnt") {
			return "", true
		}
		return "smell=ammonia", true
	case "bad":
		if s.neg || !in.smell || c.has("ask=undo") && !in.here.smell {
			return "", true // "the answer before was bad"
		}
		return "smell=rotten", true
	case "smell=none":
		if s.neg || !in.smell && !s.own {
			return "", true
		}
		return s.sense, true
	case "smell":
		if s.neg && !c.hasDim("smell") && !c.has("bad", "good", "burnt") {
			return "smell=none", true
		}
		return "", true
	case "eye":
		if asked == "smell" && !c.hasDim("smell") && !c.hasDim("harm") && !c.has("get", "dust", "liquid") {
			return "smell=ammonia", true // it makes the eyes water
		}
		return "", true
	}
	return "", false
}

// scant says whether a clause says how little there is.
func (c *clause) scant() bool {
	for i := range c.signs {
		switch c.signs[i].text {
		case "कम", "kam", "mdogo", "ndogo", "haba", "hafifu":
			return true
		case "kidogo":
			return c.has("very")
		}
	}
	return false
}

// nothingFlows says whether a Swahili verb of flowing carries its own "not", unless much
// is what did not flow: "matone hayadondoki", but "maji hayadondoki mengi".
func (c *clause) nothingFlows() bool {
	for i := range c.signs {
		s := &c.signs[i]
		if s.tongue == sw && s.neg && s.sense == "bottle=leaking" {
			return !c.has("very")
		}
	}
	return false
}
