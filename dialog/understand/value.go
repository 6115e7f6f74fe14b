package understand

import "slices"

// scope says what a quality in a clause may be about, for want of a thing named
// beside it: the thing spoken of, or the thing asked about.
type scope struct {
	heap, smell, bottle, worm, stick bool
	wet                              bool // a word for wet or dry counts
	here, about                      topic
}

// value is the code that sign i states, or "" when it states nothing by itself.
func (r *reader) value(c *clause, i int, here, about topic) string {
	s := &c.signs[i]
	if s.sense == "" || s.sense == "filler" {
		return ""
	}
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
	in := scope{heap: heap, smell: smell, bottle: bottle, worm: worm, stick: stick, wet: wet, here: here, about: about}
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
		if s.neg || c.has("heat") || i > 0 && oneOf(c.signs[i-1].sense, "notyet", "couldnt", "look") && s.text == "bien" {
			return ""
		}
		switch {
		case here.smell || asked == "smell" && !here.heap && !here.worm && !here.bottle:
			if c.hasDim("smell") {
				return ""
			}
			return "smell=earthy"
		case c.has("damp"):
			return ""
		case here.worm || asked == "worms" && !here.heap && !here.bottle && !here.smell, about.worm && !here.heap && !here.bottle && !here.smell && r.they(c):
			if c.sees() && !oneOf(r.word(s.from), "ab", "अब") {
				return ""
			}
			return "seen=worms_well"
		case asked == "moisture" && !here.bottle && !here.worm && !c.hasDim("moisture"):
			return "moisture=right"
		}
		return ""
	case "nothing":
		switch {
		case here.smell || asked == "smell" && len(c.signs) <= 4:
			if c.hasDim("smell") {
				return ""
			}
			return "smell=none"
		case asked == "moisture" && !here.bottle && !c.hasDim("moisture"):
			return "moisture=dry" // squeezed, and nothing came
		case asked == "bottle" && len(c.signs) <= 4:
			return "bottle=flat"
		case here.bottle:
			return "bottle=flat"
		}
		return ""
	case "body":
		switch {
		case asked == "stick" && (c.cant || c.has("couldnt")) && !c.hasDim("stick") && !c.hasHarm():
			return "stick=hot" // the hand cannot stay on it
		case (asked == "smell" || here.smell) && r.names(s, "nose", "nariz", "narices", "nez") && (c.actBut("put") || c.has("hold") || r.closes(c)) && !c.hasDim("smell"):
			return "smell=rotten" // I had to cover my nose
		}
		return ""
	case "size":
		if here.heap && (c.halfway() || c.has("partly")) {
			return "seen=sunk" // half its height
		}
		return ""
	case "liquid":
		if here.heap && !here.bottle && !s.neg && !c.hasAct() && !c.hasDim("seen") && (c.has("bottle=leaking", "edge", "goout", "come", "leave") || r.comesOut(c)) {
			return "seen=runoff" // juice seeps out below the heap
		}
		if bottle && !s.neg && !c.has("me") && (c.has("cap") && !c.hasAct() || c.has("goout", "come", "leave", "takeout") || r.comesOut(c)) {
			return "bottle=leaking"
		}
		return ""
	case "gas":
		switch {
		case s.neg && (bottle || asked == "shake"), s.neg && !c.hasAct():
			return "bottle=flat"
		case !s.neg && here.bottle && !c.hasAct() && c.has("fill", "very"):
			return "bottle=bloated"
		}
		return ""
	case "seen=worms_dead", "die":
		if s.neg || !worm && !s.own {
			return ""
		}
		if c.hasBeast() && !here.worm || c.has("plant") || !here.worm && c.kinBefore(i) {
			return ""
		}
		return "seen=worms_dead"
	case "leave", "seen=worms_escaping", "goout":
		if c.has("before") && !here.worm {
			return "" // "avant de partir j'ai nourri les vers"
		}
		if c.has("hour", "dayword", "minute") && !here.worm {
			return "" // "दो घंटे निकल गए"
		}
		if s.sense == "goout" && c.nothingCame(asked, s) {
			return "moisture=dry"
		}
		if next := c.past(i+1, "filler"); s.tongue == es && next < len(c.signs) && crawling(c.signs[next].sense) {
			return "" // "les salieron moscas"
		}
		if s.hindi() && i > 0 && !here.worm && (inDim(c.signs[i-1].sense, "seen") || oneOf(c.signs[i-1].sense, "water", "liquid", "gas", "smell")) {
			return "" // "भाप निकल रही है": steam comes out, no worms
		}
		if s.neg || !worm && !s.own || s.sense == "goout" && !here.worm && asked != "worms" {
			return ""
		}
		return "seen=worms_escaping"
	case "alive", "seen=worms_well":
		if r.names(s, "eat", "eating", "comiendo", "mangent", "come", "comen", "wanakula", "wamekula") && (c.has("seen=rodents", "seen=ants", "seen=termites", "animal") || c.hasDim("animal")) {
			return "" // a rat is eating them
		}
		if i > 0 && crawling(c.signs[i-1].sense) {
			return "" // "hormigas coloradas": a word of the ants
		}
		next := i + 1
		if next < len(c.signs) && c.signs[next].sense == "known" {
			next++ // "fat white maggots"
		}
		if next < len(c.signs) && (crawling(c.signs[next].sense) || c.signs[next].beast()) {
			return "" // "de gros asticots"
		}
		if s.neg || !worm && !s.own || c.has("body") {
			return ""
		}
		return "seen=worms_well"
	}
	if s.sense == "did=watered" && c.has("weather") && !s.hindi() && here.heap && !s.neg && !s.whom {
		return "moisture=wet" // the rain watered it
	}
	switch dimension(s.sense) {
	case "smell":
		if s.neg || !smell && !s.own {
			return ""
		}
		return s.sense
	case "seen":
		if s.sense == "seen=runoff" && s.hindi() && about.bottle && !here.heap && !s.neg {
			return "bottle=leaking" // "botal hila di lekin neeche se tapak rahi hai"
		}
		if s.neg || !here.heap && !here.worm && !here.bottle && c.otherThan(s, r) || s.sense == "seen=sunk" && (r.sat(c, s) || c.has("worm") && !c.has("heap", "compost", "inside", "bed")) {
			return ""
		}
		switch s.sense {
		case "seen=smoke", "seen=fire", "seen=ash":
			if s.sense == "seen=fire" && i > 0 && c.signs[i-1].sense == "hold" && (asked == "stick" || c.has("stick")) {
				return "stick=hot"
			}
			return "" // read with the dangers
		case "seen=flies":
			if c.has("seen=maggots") && (s.hindi() && oneOf(r.word(s.to), "के", "ke", "का", "ka", "की", "ki") || oneOf(r.word(s.from-1), "de", "of", "ya")) {
				return "" // "मक्खी के लार्वा", "larvas blancas de mosca"
			}
		case "seen=rodents", "seen=maggots":
			if asked == "smell" && c.has("seen=worms_dead", "die") {
				return "smell=rotten" // a dead rat
			}
		case "seen=runoff":
			if bottle && !here.heap && (here.bottle || asked == "bottle" || !s.hindi()) {
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
			if s.hindi() && (c.has("seen=flies", "seen=ants", "ask=undo") || c.hasDim("moisture") && !here.heap) {
				return "" // flies sit on it; a button was pressed; "नमी सही बैठ रही है"
			}
			if !s.own && !heap && asked != "none" && asked != "menu" && asked != "turn" || (c.has("heat", "joto", "degree") || c.figure() && !r.long(c)) && !c.heapItself(i) || (asked == "stick" || asked == "moisture") && !here.heap && c.has("me", "nothing", "water") || c.has("body") && !here.heap {
				return ""
			}
		}
		return s.sense
	case "bottle":
		if s.sense == "bottle=leaking" && asked == "moisture" && c.hasDim("moisture") && s.tongue == sw {
			return "" // "tone moja limedondoka": the drop was counted
		}
		if s.sense == "bottle=leaking" && asked == "moisture" && !here.bottle {
			if s.neg {
				if s.hindi() && !c.has("very") {
					return "moisture=dry" // "टपक नहीं रहा"
				}
				return ""
			}
			return "moisture=wet"
		}
		if s.sense == "bottle=bloated" && r.names(s, "gas", "gaz") && slices.ContainsFunc(r.signs, func(o sign) bool { return o.sense == "cap" || o.sense == "did=vented" }) {
			return "" // "opened the lid and a lot of gas came out"
		}
		if s.sense == "bottle=burst" && s.hindi() && i > 0 && c.signs[i-1].sense == "" && !c.has("bottle", "cap") {
			return "" // "सीढ़ी टूटी है": something else
		}
		if c.hasHarm() && !c.has("bottle", "cap") && s.sense == "bottle=bloated" {
			return "" // "my chest is tight"
		}
		if s.neg || !bottle && !s.own && !(s.sense == "bottle=leaking" && (asked == "bottle" || asked == "shake") && !c.has("heap")) {
			return "" // but "it leaks from the bottom"
		}
		return s.sense
	}
	return ""
}

// heapItself says whether what went down at sign i is the heap, and a figure that follows is told for
// itself: "the heap sank 55 degrees inside", but not "sank to 55".
func (c *clause) heapItself(i int) bool {
	return i > 0 && c.signs[i-1].sense == "heap" && i+1 < len(c.signs) && c.signs[i+1].sense == "num" && c.signs[i+1].from == c.signs[i].to
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

// comesOut says whether something comes out in a clause, by verbs that elsewhere are
// small words.
func (r *reader) comesOut(c *clause) bool {
	return r.says(c, "salio", "sale", "salen", "saliendo", "salieron", "sort", "sorti", "sortie", "sortait", "came", "comes", "dripped")
}

// actBut says whether a clause holds an act other than one: "I put my nose close".
func (c *clause) actBut(but string) bool {
	return slices.ContainsFunc(c.signs, func(s sign) bool { return act(s.sense) && s.sense != but })
}

// closes says whether a clause shuts something: the nose, before a stench.
func (r *reader) closes(c *clause) bool {
	return r.says(c, "cover", "covered", "hold", "held", "block", "closed", "pinch", "pinched", "tapar", "taparme", "tape", "tapo", "boucher", "bouche", "pincer")
}

// nothingCame: squeezed, "nothing that comes out".
func (c *clause) nothingCame(asked string, s *sign) bool {
	return asked == "moisture" && s.neg && !c.has("water", "worm") && !c.hasDim("moisture")
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

// kinBefore: a person stands right before sign i, small words aside: "mon père est mort",
// "baba amekufa".
func (c *clause) kinBefore(i int) bool {
	k := c.back(i-1, "is", "was", "didaux", "filler", "mine", "me")
	return k >= 0 && oneOf(c.signs[k].sense, "person", "neighbor") && (c.signs[k].tongue == fr || c.signs[k].tongue == sw)
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
