package understand

// What got into an eye, and a smell that only stings it.

// eyes reads an eye that something got into, that pains or does not open.
func (p *peril) eyes(i int) string {
	switch {
	case p.r.asked != "smell" && !p.has("smell") && (p.r.pains(p.clause) || p.has("cap", "bottle=burst") && !p.has("open")),
		(p.r.asked != "smell" || p.has("cap", "bottle", "liquid", "starter")) && p.intoEye(i),
		p.has("open") && (p.has("not", "couldnt", "cant") || p.signs[p.find("open")].neg) && !p.has("bottle", "cap"), // it does not open any more
		p.streams(i),
		p.has("dust", "stuff", "water", "gas", "seen=ash", "liquid", "starter", "compost", "get", "dung"), p.hasDim("material"):
		return "harm=eye"
	}
	return ""
}

// streams: "my left eye is streaming", what wets is the eye.
func (p *peril) streams(i int) bool {
	k := p.past(i+1, "is", "filler", "very", "keep", "now")
	return k < len(p.signs) && (p.signs[k].sense == "moisture=wet" || p.signs[k].sense == "bottle=leaking") && p.r.asked != "smell"
}

// intoEye: Swahili "jichoni", into the eye, with something that went or struck there.
func (c *clause) intoEye(i int) bool {
	return (c.signs[i].text == "jichoni" || c.signs[i].text == "machoni" || i > 0 && c.signs[i].tongue == sw && oneOf(c.signs[i-1].text, "kwa", "kwenye", "katika", "ndani")) && !c.has("canq", "how", "if", "whatif")
}

// stings: asked for the smell, "so sharp the eyes water" is a smell and no hurt; an eye
// that is red or has something in it is one.
func (r *reader) stings(c *clause, i int) bool {
	if r.asked != "smell" || !c.has("sharp", "smell=ammonia", "smell") && !r.nose(c) || c.has("dust", "get", "stuff", "seen=ash", "cap", "bottle", "liquid", "starter") {
		return false
	}
	for _, t := range r.tokens[c.signs[i].from:c.signs[i].to] {
		switch t.text {
		case "में", "me", "mein", "machoni", "jichoni":
			return c.has("smell=ammonia") // "आंखों में चुभती है"
		case "लाल", "lal", "laal", "सूज", "suj", "sooj", "jekundu", "mekundu", "limevimba", "yamevimba":
			return false
		}
	}
	return true
}

func (r *reader) nose(c *clause) bool {
	for k := range c.signs {
		switch c.signs[k].text {
		case "नाक", "naak", "nak", "pua", "puani":
			return true
		}
	}
	return false
}
