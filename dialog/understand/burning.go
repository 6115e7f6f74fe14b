package understand

import (
	"slices"
	"strings"
)

// Fire and smoke, and who or what is burnt by them: one word burns heaps, hands, eyes and
// plants, and what stands beside it tells which.

// ashes: ash inside a heap has burnt there; ash that was brought has not.
func (p *peril) ashes(i int) string {
	if (p.has("inside") || p.has("heap") && p.r.within(p.clause) || p.r.inHeap(p.clause, i)) && !p.hasAct() && !p.r.counted(p.clause, i) {
		return "seen=smoke"
	}
	return ""
}

func (p *peril) smokes(i int) string {
	s := &p.signs[i]
	switch {
	case i > 0 && p.signs[i-1].sense == "hold" && (p.r.asked == "stick" || p.has("stick")):
		return "" // "like holding fire"
	case p.will && !p.has("now"), s.sense == "seen=fire" && p.cooks(i):
		return ""
	case s.text == "fumes" && p.has("harm=breath", "breathe"):
		return "" // "fumes nearly choked me"
	case s.sense == "seen=fire" && p.ofEye(i):
		return "harm=eye" // "my eyes are on fire"
	case s.sense == "seen=fire" && p.object(i) == "plant":
		return "" // "le compost a brûlé mes plants"
	case s.hindi() && p.has("body") && oneOf(s.text, "ढेर", "dher", "heap"):
		return "harm=burn" // "हाथ ढेर में जल गया": the hand, not the heap
	}
	return s.sense
}

// cooks says whether the fire at sign i is what something is cooked on, and has gone no further:
// "cooking supper on the fire", "je cuis le riz au feu de bois".
func (p *peril) cooks(i int) bool {
	s := &p.signs[i]
	if ablaze(p.r.word(s.to-2), p.r.word(s.to-1)) || p.has("heap", "compost", "worm", "bottle", "body", "cloth", "leaf", "dry_leaf", "straws") || slices.ContainsFunc(p.r.tokens, func(t token) bool { return spreads(t.text) }) {
		return false
	}
	if s.to == s.from+1 && oneOf(p.r.word(s.from-1), "cooking", "kitchen") {
		return true
	}
	on := oneOf(p.r.word(s.from), "on", "over", "au", "al", "en", "motoni") || oneOf(p.r.word(s.to), "par", "pe", "पर", "पे") ||
		oneOf(p.r.word(s.from-1), "on", "over", "sur", "al", "en", "sobre", "kwenye") || oneOf(p.r.word(s.from-2), "on", "over", "sur", "en", "sobre")
	return on && p.r.says(p.clause, "cook", "cooking", "cooked", "boiling", "roasting", "frying", "baking",
		"cocinando", "cocino", "cocinamos", "cociendo", "guisando", "asando", "hirviendo", "cuis", "cuit", "cuisine", "cuisons", "cuisinons", "grille", "prepare",
		"napika", "ninapika", "tunapika", "anapika", "pika", "kupika", "nachemsha", "paka", "pakaa", "pak", "bana", "पका", "पक", "बना")
}

// ablaze says whether two words say that a thing burns, and not where a pot stands: "on fire", "en feu".
func ablaze(on, fire string) bool {
	return on == "on" && fire == "fire" || on == "en" && oneOf(fire, "feu", "flammes", "llamas")
}

// spreads says whether a word tells that a fire goes on to something else.
func spreads(w string) bool {
	switch w {
	case "caught", "catch", "catching", "spread", "spreading", "reached", "jumped", "everywhere",
		"agarro", "prendio", "paso", "llego", "extendio", "pris", "propage", "propagee", "gagne", "atteint",
		"umeshika", "imeshika", "limeshika", "umefika", "umeenea", "pakad", "fail", "phail", "pahunch", "पकड़", "फैल", "पहुँच", "पहुंच":
		return true
	}
	return false
}

// ofCrop says whether the subject of the verb at sign i is a crop.
func (c *clause) ofCrop(i int) bool {
	k := c.back(i-1, "mine", "filler")
	return k >= 0 && (inDim(c.signs[k].sense, "crop") || c.signs[k].sense == "plant")
}

// ofEye says whether what the sign at i tells of is an eye, which stands before it.
func (c *clause) ofEye(i int) bool {
	k := c.back(i-1, "is", "filler", "very", "")
	return k >= 0 && oneOf(c.signs[k].sense, "eye", "harm=eye")
}

// noSmell says whether the smell of a clause is denied: "jalne wali koi boo nahi".
func (c *clause) noSmell() bool {
	k := c.find("smell")
	return c.signs[k].neg || k+1 < len(c.signs) && oneOf(c.signs[k+1].sense, "not", "no", "nothing") && c.signs[k].hindi()
}

// object is the sense of what follows the verb at sign i, small words aside.
func (c *clause) object(i int) string {
	if k := c.past(i+1, "filler", "me", "mine", "one", "up", "rangeto"); k < len(c.signs) {
		return c.signs[k].sense
	}
	return ""
}

func (p *peril) burnt(i int) string {
	s := &p.signs[i]
	switch {
	case p.r.says(p.clause, "cuit", "cuite"):
		if p.about.limb {
			return "harm=burn" // "elle a mis le doigt dans le tas, il est tout cuit"
		}
		return ""
	case p.has("smell") && p.noSmell():
		return ""
	case p.has("smell") || p.r.asked == "smell" && !p.person:
		return "seen=smoke"
	case p.has("eye", "harm=eye") && !p.has("body") && s.hindi():
		return "harm=eye" // "आँख में जलन"
	case p.about.bite && !p.has("body", "heap", "inside", "stuff", "smell", "seen=steam"):
		return "" // "chinti ne kaata, bahut jalan hai": the bite burns
	case p.about.eye && !p.has("body", "heap", "inside", "stuff"):
		return "harm=eye" // "a drop went into the eye, it burns"
	case p.burntRubbish(i), p.has("weather") && !p.has("person", "body", "heap"):
		return ""
	case p.has("body", "eye") || p.person && !p.plant && !p.has("heap", "inside") || p.r.strikes(p.clause, i):
		return "harm=burn"
	case p.plant:
		return ""
	case s.own:
		return "seen=smoke"
	case p.has("heap", "inside", "stuff") || p.hasDim("material"):
		return "seen=smoke"
	case p.r.asked == "stick" || p.has("stick"):
		return ""
	}
	return "harm=burn"
}

// burntRubbish says whether somebody burnt something of the field or the house, and no heap:
// "I burned the stove wood", "quemé el rastrojo".
func (p *peril) burntRubbish(i int) bool {
	s := &p.signs[i]
	if s.hindi() || s.tongue == sw || s.self || s.pass || s.tense&past == 0 || p.has("heap", "inside", "bed", "body", "eye", "is", "was", "seen=steam", "seen=smoke") {
		return false
	}
	k := p.past(i+1, "filler", "mine")
	if k == len(p.signs) {
		return false
	}
	of := p.signs[k].sense
	return oneOf(of, "known", "foreign", "plant", "leaf", "dry_leaf", "smell=rotten") || inDim(of, "material") || inDim(of, "crop")
}

func (p *peril) burns(i int) string {
	s := &p.signs[i]
	switch {
	case s.hindi() && oneOf(s.text, "jali", "jaali") && !p.has("body", "heap", "inside") && !p.person:
		return "" // a wire mesh, by the same letters
	case s.hindi() && p.has("smell") && p.noSmell():
		return "" // "jalne wali koi boo nahi"
	case p.has("harm=burn"):
		return "harm=burn"
	case p.has("smell") && !p.has("body", "eye") && !s.self:
		return "seen=smoke"
	case p.has("eye", "harm=eye"):
		return "harm=eye"
	case s.tongue == sw && p.has("stinger", "seen=ants"):
		return "harm=bite" // kuchoma is to burn and to sting
	case s.tongue == sw && p.has("pointed"):
		return "harm=cut"
	case s.tongue == sw && (p.has("stick") || p.r.asked == "stick") && strings.Contains(s.text, "chomek"):
		return "" // kuchomeka: to stick in
	case s.tongue == sw && p.ofCrop(i): // "mahindi yangu yameungua na jua"
		return ""
	case p.has("weather") && !p.has("person", "body"), inDim(p.object(i), "crop"):
		return "" // "jua limechoma maharage", "griller du maïs"
	case s.tongue == en && i > 0 && p.r.names(&p.signs[i-1], "got", "get", "getting"):
		return "harm=burn" // "i got burnd touching it"
	case s.tongue == fr && p.r.asked == "stick" && s.tense&present != 0 && oneOf(p.r.word(s.from-1), "ca", "c"):
		return "" // "je l'ai lâché tellement ça brûle"
	case p.r.asked == "stick" && s.tense&(ongoing|present) != 0 && s.tense&(past|participle) == 0 && p.has("body") && !s.pass && !s.self && !p.has("person"):
		return "" // "kinanichoma mkono", "haath jala raha hai": so hot it is
	case p.has("body") || s.self || s.whom && !p.animal || p.r.strikes(p.clause, i):
		return "harm=burn"
	case p.plant, p.burntRubbish(i):
		return ""
	case !s.hindi() && s.tense&past != 0 && i+1 < len(p.signs) && oneOf(p.signs[len(p.signs)-1].sense, "", "known", "person", "neighbor") &&
		slices.ContainsFunc(p.signs[:i], func(o sign) bool { return o.sense == "seen=steam" }):
		return "harm=burn" // "el vapor quemó a Pedro"
	case p.about.eye && !p.person && !p.has("heap", "inside", "straws", "stuff"):
		return "harm=eye" // "les yeux sont rouges et ça brûle"
	case p.has("heap", "inside", "straws") && !p.has("person", "me") && !s.mine && !p.r.neighborBurns(p.clause, i):
		if s.tense&(ongoing|present|past) != 0 || s.tense == 0 {
			return "seen=fire"
		}
		return ""
	case p.person:
		return "harm=burn"
	case p.r.asked == "smell":
		return "seen=smoke" // "km kitu kimeungulia"
	case s.tongue == es && p.about.who && p.r.word(s.from) == "se":
		return "harm=burn" // "la chamaca lo agarró | y se quemó"
	case p.r.asked == "stick" || p.has("stick"):
		// "ça brule le baton": without its accent a French participle is the present too,
		// and only what it was done with tells that somebody was burnt
		suffered := s.tense&present == 0 || p.r.says(p.clause, "avec", "par")
		if suffered && s.tense&(past|participle) != 0 && p.r.asked != "stick" {
			return "harm=burn"
		}
		return ""
	case s.tense&(ongoing|present) != 0, p.about.heap:
		return "seen=fire"
	}
	return "harm=burn"
}

func (p *peril) burning(i int) string {
	switch {
	case (p.has("smell") || p.hasDim("smell")) && !p.has("eye", "body"):
		return "seen=smoke"
	case p.has("eye", "harm=eye"):
		return "harm=eye"
	case p.has("body"):
		return "harm=burn"
	case p.about.eye && !p.has("heap", "inside", "stuff"),
		i+1 < len(p.signs) && p.signs[i+1].sense == "stick=hot",
		p.r.asked == "stick" && !p.has("heap") || p.has("stick"),
		p.plant:
		return ""
	}
	return "seen=fire"
}

// inHeap: "ढेर में राख है", "lundoni kuna majivu".
func (r *reader) inHeap(c *clause, i int) bool {
	for k := 0; k < i; k++ {
		if c.signs[k].sense != "heap" {
			continue
		}
		if strings.HasSuffix(r.tokens[c.signs[k].from].text, "ni") || k+1 < i && (c.signs[k+1].text == "में" || c.signs[k+1].text == "me" || c.signs[k+1].text == "mein") {
			return true
		}
	}
	return false
}
