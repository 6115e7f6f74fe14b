package understand

// value is the code that sign i states, or "" when it states nothing by itself.
func (r *reader) value(c *clause, i int, here, about topic) string {
	s := &c.signs[i]
	asked := r.asked
	heap := here.heap || asked == "stick" || asked == "moisture" || about.heap && !here.bottle && !here.worm
	smell := here.smell || asked == "smell" || about.smell && !here.bottle && !here.worm && !here.heap
	bottle := here.bottle || asked == "bottle" || about.bottle && !here.heap && !here.worm
	worm := here.worm || asked == "worms" || about.worm && !here.heap && !here.bottle
	stick := here.heap || asked == "stick" || about.heap && !here.bottle && !here.worm
	if r.correcting && !here.bottle && !here.worm {
		heap, smell, stick = true, true, true
	}
	wet := r.correcting || here.heap || asked == "moisture" || asked == "stick" && (c.hasDim("stick") || about.stick) || c.has("damp", "bed") || about.heap && !here.bottle || here.worm || asked == "worms" && c.has("inside")
	switch s.sense {
	case "stick=hot":
		if c.has("seen=ash") || !stick && !s.own {
			return ""
		}
		switch {
		case s.neg && s.grade == strongly:
			return "stick=warm"
		case s.neg && s.grade == notAtAll:
			return "stick=cold"
		case s.neg:
			return notHot
		case s.grade == slightly:
			return "stick=warm"
		}
		return "stick=hot"
	case "stick=warm":
		if !stick && !s.own {
			return ""
		}
		if s.neg {
			return "stick=cold"
		}
		return "stick=warm"
	case "stick=cold":
		if !stick && !s.own {
			return ""
		}
		if s.neg {
			return notCold
		}
		return "stick=cold"
	case "heat", "joto":
		if !stick || s.sense == "heat" && c.has("stick=cold", "stick=warm") {
			return ""
		}
		switch {
		case (s.hindi() || s.tongue == sw) && !s.neg && c.has("finish"):
			return "stick=cold" // "garmi bilkul khatam"
		case s.neg && s.grade == strongly:
			return "stick=warm"
		case s.neg:
			return "stick=cold"
		case s.grade == slightly:
			return "stick=warm"
		case s.grade == strongly || s.grade == notAtAll:
			return "stick=hot"
		case s.sense == "heat":
			return "stick=hot"
		}
		return ""
	case "moto": // Swahili: hot, and fire
		if s.neg {
			if !stick {
				return ""
			}
			switch s.grade {
			case strongly:
				return "stick=warm"
			case notAtAll:
				return "stick=cold"
			}
			return notHot
		}
		if i > 0 && c.signs[i-1].sense == "hold" && c.signs[i-1].tense&past != 0 {
			return "" // limeshika moto: it caught fire
		}
		if c.has("give") || i > 0 && c.signs[i-1].sense == "have" {
			return ""
		}
		if stick {
			if s.grade == slightly {
				return "stick=warm"
			}
			return "stick=hot"
		}
		return ""
	case "poa":
		if s.tense != 0 || here.heap {
			if stick || here.heap {
				if s.neg {
					return notCold
				}
				return "stick=cold"
			}
		}
		return ""
	case "fireglyph":
		if asked == "stick" {
			return "stick=hot"
		}
		return ""
	case "hold":
		if (asked == "stick" || c.has("stick")) && (c.cant || c.has("couldnt")) {
			return "stick=hot" // could not touch it
		}
		return ""
	case "burn":
		if !s.neg && !s.self && !here.heap && (asked == "stick" || c.has("stick")) && !c.has("body", "me", "person") && s.tense&(present|ongoing|imperfect) != 0 {
			return "stick=hot" // el palo quema, ça brûle
		}
		return ""
	case "burning":
		if s.neg {
			return ""
		}
		if stick && (asked == "stick" || c.has("stick")) {
			return "stick=hot"
		}
		return ""
	case "moisture=dry":
		if c.has("seen=worms_dead", "die") && !here.heap {
			return "" // "केंचुए सूख कर मर रहे"
		}
		if !wet && !s.own {
			return ""
		}
		if s.neg {
			return notDry
		}
		return s.sense
	case "moisture=wet":
		if !wet && !s.own && !(bottle && s.hindi()) {
			return ""
		}
		if s.neg {
			return notWet
		}
		if bottle && !here.heap && s.hindi() && s.to > s.from+1 {
			return "bottle=leaking" // "बोतल से पानी रिस रहा है"
		}
		return s.sense
	case "moisture=right":
		if !wet && !s.own {
			return ""
		}
		if s.neg {
			return ""
		}
		if s.grade == strongly {
			return "moisture=wet"
		}
		return s.sense
	case "dust":
		if asked == "moisture" && len(c.signs) <= 3 && !c.has("eye", "body", "breathe", "not") {
			return "moisture=dry" // squeezed: "just dust"
		}
		return ""
	case "damp":
		switch {
		case s.neg || s.grade == notAtAll:
			return "moisture=dry"
		case s.grade == strongly:
			return "moisture=wet"
		case c.has("good", "enough"):
			return "moisture=right"
		}
		return ""
	case "good":
		if s.neg || c.has("heat") {
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
			if c.hasDim("seen") {
				return ""
			}
			return "seen=worms_well"
		case asked == "moisture" && !here.bottle && !here.worm && !c.hasDim("moisture"):
			return "moisture=right"
		}
		return ""
	case "sharp": // stings the nose, unless a smell is named
		if s.neg || !smell && !s.own || c.hasDim("smell") || c.has("bad", "good", "burnt") {
			return ""
		}
		return "smell=ammonia"
	case "bad":
		if s.neg || !smell {
			return ""
		}
		return "smell=rotten"
	case "smell=none":
		if s.neg || !smell && !s.own {
			return ""
		}
		return s.sense
	case "smell":
		if s.neg && !c.hasDim("smell") && !c.has("bad", "good", "burnt") {
			return "smell=none"
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
	case "drop":
		if !wet {
			return ""
		}
		n := i - 1
		for n > 0 && n >= i-2 && c.signs[n].sense != "num" {
			n-- // "two small drops"
		}
		switch {
		case s.neg || n >= 0 && c.signs[n].sense == "num" && c.signs[n].value == 0:
			return "moisture=dry"
		case n >= 0 && c.signs[n].sense == "num" && c.signs[n].high <= 6, i+1 < len(c.signs) && c.signs[i+1].sense == "num" && c.signs[i+1].high <= 6:
			return "moisture=right"
		}
		return ""
	case "body":
		switch {
		case asked == "stick" && (c.cant || c.has("couldnt")) && !c.hasDim("stick") && !c.hasHarm():
			return "stick=hot" // the hand cannot stay on it
		case (asked == "smell" || here.smell) && r.names(s, "nose", "nariz", "narices", "nez") && (c.hasAct() || c.has("hold") || r.closes(c)) && !c.hasDim("smell"):
			return "smell=rotten" // I had to cover my nose
		}
		return ""
	case "eye":
		if asked == "smell" && !c.hasDim("smell") && !c.hasDim("harm") && !c.has("get", "dust", "liquid") {
			return "smell=ammonia" // it makes the eyes water
		}
		return ""
	case "squeeze":
		if c.has("rag", "cloth") && (asked == "moisture" || here.heap) && !s.neg && !c.hasDim("moisture") {
			return "moisture=right" // like a wrung cloth
		}
		return ""
	case "size":
		if here.heap && (c.halfway() || c.has("partly")) {
			return "seen=sunk" // half its height
		}
		return ""
	case "liquid":
		if bottle && !s.neg && !c.has("me") && (c.has("goout", "come", "leave", "takeout") || r.comesOut(c)) {
			return "bottle=leaking"
		}
		return ""
	case "water":
		if asked == "moisture" && s.neg && s.tongue == sw && i+1 < len(c.signs) && c.signs[i+1].sense == "very" {
			return notWet // "si maji sana"
		}
		if asked == "moisture" && !c.hasDim("moisture") && c.has("body") && !s.neg && !c.has("not", "no") {
			return "moisture=wet" // water all over my hand
		}
		if asked == "moisture" && !c.hasDim("moisture") && c.has("takeout", "goout", "come", "leave", "seen=worms_escaping", "seen=runoff", "bottle=leaking") || asked == "moisture" && !c.hasDim("moisture") && r.comesOut(c) {
			if s.neg || c.has("not", "no") {
				return "moisture=dry"
			}
			return "moisture=wet" // squeezed: "water came out between my fingers"
		}
		return ""
	case "takeout", "come":
		if c.nothingCame(asked, s) {
			return "moisture=dry" // "hakuna kinachotoka"
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
		if c.has("animal") && !here.worm || c.has("plant") {
			return ""
		}
		return "seen=worms_dead"
	case "leave", "seen=worms_escaping", "goout":
		if s.sense == "goout" && c.nothingCame(asked, s) {
			return "moisture=dry"
		}
		if s.neg || !worm && !s.own || s.sense == "goout" && !here.worm && asked != "worms" {
			return ""
		}
		return "seen=worms_escaping"
	case "alive", "seen=worms_well":
		if r.names(s, "eat", "eating", "comiendo", "mangent", "come", "comen") && c.has("seen=rodents", "seen=ants", "seen=termites") {
			return "" // a rat is eating them
		}
		if s.neg || !worm && !s.own {
			return ""
		}
		return "seen=worms_well"
	}
	if s.sense == "did=watered" && c.has("weather") && here.heap && !s.neg {
		return "moisture=wet" // the rain watered it
	}
	switch dimension(s.sense) {
	case "smell":
		if s.neg || !smell && !s.own {
			return ""
		}
		return s.sense
	case "seen":
		if s.neg {
			return ""
		}
		switch s.sense {
		case "seen=smoke", "seen=fire", "seen=ash":
			if s.sense == "seen=fire" && i > 0 && c.signs[i-1].sense == "hold" && (asked == "stick" || c.has("stick")) {
				return "stick=hot"
			}
			return "" // read with the dangers
		case "seen=rodents", "seen=maggots":
			if asked == "smell" && c.has("seen=worms_dead", "die") {
				return "smell=rotten" // a dead rat
			}
		case "seen=runoff":
			if bottle && !here.heap {
				return "bottle=leaking"
			}
		case "seen=weeds":
			if c.has("seen=mould") && s.hindi() {
				return "" // "मशरूम उग आए"
			}
			if !s.own && r.counted(c, i) {
				return ""
			}
		case "seen=sunk":
			if c.has("animal", "seen=smoke", "smell", "seen=fire") || c.hasDim("animal") {
				return "" // a dog sits on it; the smoke has gone down
			}
			if !s.own && !heap && asked != "none" && asked != "menu" && asked != "turn" || c.has("heat", "joto", "degree") || c.figure() || (asked == "stick" || asked == "moisture") && !here.heap && c.has("me", "nothing", "water") || c.has("body") && !here.heap {
				return ""
			}
		}
		return s.sense
	case "bottle":
		if s.sense == "bottle=leaking" && asked == "moisture" && !here.bottle && !s.neg {
			return "moisture=wet"
		}
		if s.neg || !bottle && !s.own {
			return ""
		}
		return s.sense
	}
	return ""
}

func (c *clause) hasDim(dim string) bool {
	for _, s := range c.signs {
		if dimension(s.sense) == dim && s.sense != "seen=steam" {
			return true
		}
	}
	return false
}

// counted says whether sign i is counted: "two bags of weeds".
func (r *reader) counted(c *clause, i int) bool {
	for _, s := range c.signs {
		if dimension(s.sense) == "unit" || s.sense == "num" {
			return true
		}
	}
	return false
}

// figure says whether a clause holds a number that could be a temperature.
func (c *clause) figure() bool {
	for _, s := range c.signs {
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
			case "they", "theyre", "them", "all", "ils", "elles", "sont", "vont", "estan", "andan", "van", "ellas", "todas":
				return true
			}
		}
	}
	return false
}

// comesOut says whether something comes out in a clause, by verbs that elsewhere are
// small words.
func (r *reader) comesOut(c *clause) bool {
	for i := range c.signs {
		if r.names(&c.signs[i], "salio", "sale", "salen", "saliendo", "salieron", "sort", "sorti", "sortie", "sortait", "came", "comes", "dripped") {
			return true
		}
	}
	return false
}

// closes says whether a clause shuts something: the nose, before a stench.
func (r *reader) closes(c *clause) bool {
	for i := range c.signs {
		if r.names(&c.signs[i], "cover", "covered", "hold", "held", "block", "close", "closed", "pinch", "pinched", "tapar", "taparme", "tape", "tapo", "boucher", "bouche", "pincer") {
			return true
		}
	}
	return false
}

// nothingCame: squeezed, "nothing that comes out".
func (c *clause) nothingCame(asked string, s *sign) bool {
	return asked == "moisture" && s.neg && !c.has("water", "worm") && !c.hasDim("moisture")
}
