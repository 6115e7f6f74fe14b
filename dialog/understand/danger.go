package understand

import "strings"

// dangers reads harm, smoke and fire out of one clause. There is no doubt rule
// for them: "I think it smokes" counts. Only a denial, a what-if and a plan do not.
func (r *reader) dangers(c *clause, about topic) (out []string) {
	asksWhether := c.has("canq", "avoid") && !c.has("normal", "why", "worry", "ask=help", "help", "officer", "ask=officer") && !(c.has("what") && c.has("do")) && !r.says(c, "normal", "normale", "normales", "grave")
	if c.has("seen=smoke") && c.has("seen=steam") && c.has("or") {
		asksWhether = false // "is that smoke or steam": it is there
	}
	condAt, softCond, hindi := -1, false, false
	for i := range c.signs {
		s := &c.signs[i]
		switch {
		case (s.sense == "if" || s.sense == "whatif" || s.sense == "si") && c.cond && condAt < 0:
			condAt, hindi = i, s.tongue == hi || s.tongue == hiLatn
		case s.tense&unless != 0 && c.cond && condAt < 0:
			condAt, softCond = 0, true
		}
	}
	if softCond {
		condAt = -1
		for i := range c.signs {
			if c.signs[i].tense&unless != 0 {
				condAt = max(0, i-1) - 1
				break
			}
		}
	}
	person := c.has("me", "mine", "person", "body", "eye", "neighbor")
	for i := range c.signs {
		s := &c.signs[i]
		person = person || s.mine || s.self || s.whom
	}
	plant := c.has("plant", "cloth") || (c.hasDim("crop") || c.has("foreign") && !c.has("heap", "inside", "stick")) && !person
	animal := c.hasBeast() && !person
	add := func(code string) { out = append(out, code) }
	for i := range c.signs {
		s := &c.signs[i]
		if s.neg && r.denied(c, i) {
			continue
		}
		if s.tongue == sw && c.cond && i+1 < len(c.signs) && c.signs[i+1].tense&unless != 0 && (c.end == "?" || c.has("how", "what", "normal", "worry", "ask=next", "ask=help")) {
			continue // "ni hatari moshi ukitoka?"
		}
		if c.wouldHurt(i) {
			continue // "haath jal jaaye": it may, it did not
		}
		if s.hindi() && oneOf(s.text, "jali", "jaali") && s.from+1 < len(r.tokens) && oneOf(r.tokens[s.from+1].text, "se", "ka", "ki", "ke", "me", "mein", "par", "pe") {
			continue // "jaali se ungli kat gayi": of a wire mesh
		}
		if c.almost(i) {
			continue // "casi me quemo": it did not happen
		}
		if c.could || asksWhether && c.sameTongue("canq", s.tongue) {
			continue // "can it burn?": nothing has happened
		}
		if condAt >= 0 && (i > condAt || hindi) && !(softCond && s.tense&unless == 0) {
			continue // "what if a snake bites": nothing has happened
		}
		if s.tense&(future|unless|order) != 0 && s.tense&(past|present|participle|ongoing) == 0 && !c.made(i) {
			continue
		}
		if hurts(s.sense) && r.suffers(c, i) {
			continue
		}
		switch s.sense {
		case "seen=ash":
			if (c.has("inside") || c.has("heap") && r.within(c) || r.inHeap(c, i)) && !c.hasAct() && !r.counted(c, i) {
				add("seen=smoke")
			}
		case "seen=smoke", "seen=fire":
			if i > 0 && c.signs[i-1].sense == "hold" && (r.asked == "stick" || c.has("stick")) {
				continue // "like holding fire"
			}
			if c.will && !c.has("now") {
				continue
			}
			if s.hindi() && c.has("body") && oneOf(s.text, "ढेर", "dher", "heap") {
				add("harm=burn") // "हाथ ढेर में जल गया": the hand, not the heap
				continue
			}
			add(s.sense)
		case "burnt":
			switch {
			case c.has("smell") || r.asked == "smell" && !person:
				add("seen=smoke")
			case c.has("eye", "harm=eye") && !c.has("body") && s.hindi():
				add("harm=eye") // "आँख में जलन"
			case about.eye && !c.has("body", "heap", "inside", "stuff"):
				add("harm=eye") // "a drop went into the eye, it burns"
			case c.has("body", "eye") || person && !plant && !c.has("heap", "inside") || r.strikes(c, i):
				add("harm=burn")
			case plant:
			case s.own:
				add("seen=smoke")
			case c.has("heap", "inside", "stuff") || c.hasDim("material"):
				add("seen=smoke")
			case r.asked == "stick" || c.has("stick"):
			default:
				add("harm=burn")
			}
		case "burn":
			switch {
			case s.hindi() && oneOf(s.text, "jali", "jaali") && !c.has("body", "heap", "inside") && !person:
				// a wire mesh, by the same letters
			case c.has("smell") && !c.has("body", "eye") && !s.self:
				add("seen=smoke")
			case c.has("eye", "harm=eye"):
				add("harm=eye")
			case s.tongue == sw && c.has("stinger", "seen=ants"):
				add("harm=bite") // kuchoma is to burn and to sting
			case s.tongue == sw && c.has("pointed"):
				add("harm=cut")
			case c.has("body") || s.self || s.whom && !animal || r.strikes(c, i):
				add("harm=burn")
			case plant:
			case about.eye && !person && !c.has("heap", "inside", "straws", "stuff"):
				add("harm=eye") // "les yeux sont rouges et ça brûle"
			case c.has("heap", "inside", "straws") && !c.has("person", "me") && !s.mine && !r.neighborBurns(c, i):
				if s.tense&ongoing != 0 || s.tense&present != 0 || s.tense&past != 0 || s.tense == 0 {
					add("seen=fire")
				}
			case person:
				add("harm=burn")
			case r.asked == "stick" || c.has("stick"):
				// "ça brule le baton": without its accent a French participle is the present too,
				// and only what it was done with tells that somebody was burnt
				suffered := s.tense&present == 0 || r.says(c, "avec", "par")
				if suffered && s.tense&(past|participle) != 0 && r.asked != "stick" {
					add("harm=burn")
				}
			case s.tense&ongoing != 0 || s.tense&present != 0:
				add("seen=fire")
			case about.heap:
				add("seen=fire")
			default:
				add("harm=burn")
			}
		case "burning":
			switch {
			case c.has("smell") && !c.has("eye", "body"):
				add("seen=smoke")
			case c.has("eye", "harm=eye"):
				add("harm=eye")
			case c.has("body"):
				add("harm=burn")
			case about.eye && !c.has("heap", "inside", "stuff"):
			case i+1 < len(c.signs) && c.signs[i+1].sense == "stick=hot":
			case r.asked == "stick" && !c.has("heap") || c.has("stick"):
			case plant:
			default:
				add("seen=fire")
			}
		case "smell=ammonia":
			if !s.own && r.asked != "smell" && !c.has("smell", "gas", "sharp") && r.names(s, "ojos", "ojo", "yeux", "eyes", "macho", "आँख", "आँखें", "आंख", "आंखें") {
				add("harm=eye") // "me lloran los ojos", and no smell is spoken of
			}
		case "bottle=bloated":
			if c.has("eye") && !c.has("bottle", "cap") {
				add("harm=eye") // "se me hinchó el ojo"
			}
		case "seen=sunk":
			switch {
			case !c.has("body") || c.has("heap", "bottle"):
			case c.has("dust"):
				add("harm=breath") // "dust went down my throat"
			default:
				add("harm=cut") // "une épine s'est enfoncée dans mon pouce"
			}
		case "open":
			if c.has("body") && s.tense&(past|participle) != 0 && s.tense&present == 0 && !c.has("bottle", "cap", "heap", "gas") && !c.hasHarm() {
				add("harm=cut") // "un tesson m'a ouvert la paume"
			}
		case "cut":
			if s.hindi() && c.has("harm=bite", "bite") {
				break // "मधुमक्खी ने काटा": काटना is to cut and to bite
			}
			if c.has("eye") && !c.has("body") {
				add("harm=eye") // "un grain m'est rentré dans l'œil"
				break
			}
			if s.hindi() && (c.has("seen=ants", "seen=rodents") && !c.has("bottle", "cloth") || c.has("animal") && r.says(c, "ने", "ne")) {
				add("harm=bite") // "लाल चींटी ने हाथ में काटा"
				break
			}
			if c.has("body") || s.self || s.whom && !animal || r.strikes(c, i) || s.pass && person || person && c.has("me") && !plant && !c.has("foreign") && !c.hasDim("material") && !c.has("grasses", "leaf", "dry_leaf", "stalk", "stem", "veg", "fruit", "food", "peel") && !c.hasDim("crop") {
				add("harm=cut")
			}
		case "bite":
			if c.has("worm") && !person {
				continue // "do worms bite?"
			}
			if s.tongue == es && strings.HasPrefix(s.text, "picad") && !person && !animal && !r.says(c, "estoy", "ando", "quede") {
				continue // "todo picado y mojado": chopped
			}
			if s.tongue == sw && (s.pass && s.tense&past == 0 && r.word(s.to) != "na" || !s.pass && (!s.whom || c.aches(i)) && c.has("body", "eye") && !c.has("seen=ants", "animal") && !c.hasDim("animal")) {
				continue // naumwa: I am ill; mkono unauma: it aches
			}
			add("harm=bite")
		case "drink", "eat":
			if animal && s.tense != 0 && !c.has("person") {
				continue
			}
			if s.tense&(past|participle) != 0 && s.sense == "drink" && (c.core() <= 2 || c.core() == 3 && c.has("ok", "yes")) && c.has("person", "neighbor") && (r.asked == "none" || r.asked == "menu") {
				add("harm=swallowed") // "my son drank it", whatever it was
				continue
			}
			liquid := c.has("starter", "liquid", "bottle", "medicine") || c.hasDim("material") && !c.has("food") || about.bottle || r.asked == "bottle" || r.asked == "shake" || c.has("compost")
			if s.sense == "eat" {
				liquid = c.has("starter", "compost", "worm", "dung") || c.hasDim("material")
				if c.has("worm") || !person {
					liquid = false
				}
			}
			if (s.tense&(past|participle|ongoing) != 0 || c.afterIt(i)) && liquid && (person || s.sense == "drink") {
				add("harm=swallowed")
			}
		case "eye":
			if r.asked != "smell" && !c.has("smell") && r.pains(c) {
				add("harm=eye")
				continue
			}
			if (r.asked != "smell" || c.has("cap", "bottle", "liquid", "starter")) && c.intoEye(i) {
				add("harm=eye")
				break
			}
			if c.has("dust", "stuff", "water", "gas", "seen=ash", "liquid", "starter", "compost", "get") || c.hasDim("material") || c.has("dung") {
				add("harm=eye")
			}
		case "moto":
			if i > 0 && c.signs[i-1].sense == "hold" && c.signs[i-1].tense&past != 0 && !c.signs[i-1].neg {
				add("seen=fire") // limeshika moto
			}
		case "dust":
			if c.has("breathe") {
				add("harm=breath")
			}
		}
		if s.sense == "harm=cut" && s.hindi() && c.has("harm=bite", "bite") && (strings.HasPrefix(s.text, "ka") || strings.HasPrefix(s.text, "का") || strings.HasPrefix(s.text, "क")) {
			continue
		}
		if s.sense == "harm=bite" && c.has("pointed") && !animal && !c.hasBeast() && !c.has("stinger", "seen=ants") {
			add("harm=cut") // "un clou m'a piqué"
			continue
		}
		if s.sense == "harm=cut" && s.hindi() && c.has("seen=ants") {
			add("harm=bite") // "haath pe kaat liya chintiyon ne"
			continue
		}
		if s.sense == "harm=eye" && r.stings(c, i) || s.sense == "harm=bite" && r.reaped(c, i) || s.sense == "harm=swallowed" && r.refreshed(c, i) {
			continue
		}
		if dimension(s.sense) == "harm" {
			if s.sense == "harm=swallowed" && c.has("crop=coffee") && !c.has("liquid", "starter", "compost", "bottle") {
				continue // "deje que me tome mi café"
			}
			if s.sense == "harm=burn" && plant && !c.has("body") {
				continue // ammonia burnt my plants
			}
			if s.sense == "harm=cut" && oneOf(s.text, "कटा", "कटी", "कटे", "kata", "kati", "kate") && c.hasDim("unit") && !person {
				continue // "तना कटा हुआ": chopped
			}
			if s.own || person || s.tense != 0 {
				if s.sense == "harm=cut" && c.has("eye") && !c.has("body") {
					add("harm=eye") // a splinter in the eye
					continue
				}
				if s.sense == "harm=swallowed" && c.has("dust", "seen=smoke") && !c.has("liquid", "starter", "compost") {
					add("harm=breath") // swallowed dust
					continue
				}
				add(s.sense)
			}
		}
	}
	return out
}

// aches: Swahili "mgongo uliniuma", the back hurt me. A part of the body stands right
// before the verb, and the verb is not of somebody living, who would bite.
func (c *clause) aches(i int) bool {
	if t := c.signs[i].text; t[0] == 'a' || t[0] == 'w' || strings.HasPrefix(t, "ka") {
		return false
	}
	for k := i - 1; k >= 0; k-- {
		switch c.signs[k].sense {
		case "body":
			return true
		case "filler", "mine", "very":
		default:
			return false
		}
	}
	return false
}

// stings: asked for the smell, "so sharp the eyes water" is a smell and no hurt; an eye
// that is red or has something in it is one.
func (r *reader) stings(c *clause, i int) bool {
	if r.asked != "smell" || !c.has("sharp", "smell=ammonia", "smell") && !r.nose(c) || c.has("dust", "get", "stuff", "seen=ash", "cap", "bottle", "liquid", "starter") {
		return false
	}
	for _, t := range r.tokens[c.signs[i].from:c.signs[i].to] {
		switch t.text {
		case "लाल", "lal", "laal", "सूज", "suj", "sooj", "jekundu", "mekundu", "limevimba", "yamevimba", "में", "me", "mein", "machoni", "jichoni":
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

// intoEye: Swahili "jichoni", into the eye, with something that went or struck there.
func (c *clause) intoEye(i int) bool {
	return (c.signs[i].text == "jichoni" || c.signs[i].text == "machoni") && !c.has("canq", "how", "if", "whatif")
}

// made: Swahili "limenifanya nikohoe", it made me cough.
func (c *clause) made(i int) bool {
	if i == 0 || c.signs[i].tongue != sw {
		return false
	}
	p := &c.signs[i-1]
	if p.sense == "person" && i > 1 {
		p = &c.signs[i-2] // "limemfanya bibi akohoe"
	}
	return p.sense == "do" && p.tense&past != 0 && p.whom && !p.neg
}

// afterIt: "baada ya kunywa", "पीने के बाद": what is sick after it has done it.
func (c *clause) afterIt(i int) bool {
	s := &c.signs[i]
	switch {
	case s.tense&bare == 0:
		return false
	case s.tongue == sw:
		return i > 0 && c.signs[i-1].sense == "after"
	case s.hindi():
		return i+1 < len(c.signs) && c.signs[i+1].sense == "after" || i+2 < len(c.signs) && c.signs[i+1].sense == "filler" && c.signs[i+2].sense == "after"
	}
	return false
}

// reaped: Hindi काटना is to bite and to cut, "धान काट लिया". It bit when somebody or
// something is named that did it or suffered it.
func (r *reader) reaped(c *clause, i int) bool {
	s := &c.signs[i]
	if !s.hindi() || !strings.HasPrefix(s.text, "काट") && !strings.HasPrefix(s.text, "ka") || oneOf(r.word(s.from-1), "ने", "ne") {
		return false
	}
	if c.has("animal", "body", "eye") || c.hasDim("animal") || c.hasDim("seen") || r.says(c, "को", "ko", "मुझे", "mujhe", "हमें", "hame", "उसे", "use", "usse", "इसे", "ise") {
		return false
	}
	if i == 0 || c.signs[i-1].to != s.from {
		return false
	}
	p := c.signs[i-1].sense // the crop itself, not "घास में काट लिया"
	return dimension(p) == "crop" || dimension(p) == "material" || oneOf(p, "plant", "leaf", "stem", "stalk", "straws")
}

// refreshed: "चाय पी ली", a drink that people drink, and nothing of the bottle.
func (r *reader) refreshed(c *clause, i int) bool {
	s := &c.signs[i]
	if i == 0 || !s.hindi() || r.asked == "bottle" || r.asked == "shake" || c.has("bottle", "starter", "medicine", "liquid", "dung") {
		return false
	}
	switch c.signs[i-1].sense {
	case "foreign", "smell=alcohol", "crop=coffee", "material=curd":
		return true
	}
	return false
}
