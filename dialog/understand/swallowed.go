package understand

import "slices"

// What went down a throat that is no food or drink: the starter, the slurry, compost, a worm.

// swallows reads a verb of eating or drinking: who did, and that it was no food.
func (p *peril) swallows(i int) string {
	s := &p.signs[i]
	if (p.animal || s.sense == "eat" && p.hasBeast()) && s.tense != 0 && !p.has("person") {
		return ""
	}
	if p.byBeast(i) {
		return "" // "the goat drank my starter"
	}
	if s.sense == "drink" && p.has("mistook") || p.wormEaten(i) {
		return "harm=swallowed"
	}
	if p.about.beast && !p.person {
		return "" // "बैलों ने खली खा ली और पानी भी पी लिया"
	}
	if s.sense == "drink" && p.refreshing(i) && !p.licked() && !p.has("starter", "liquid", "bottle", "compost", "medicine", "stir") {
		return "" // "we were drinking tea when the bottle burst"
	}
	if s.tense&(past|participle) != 0 && s.sense == "drink" && (p.core() <= 2 || p.core() == 3 && p.has("ok", "yes")) && p.has("person", "neighbor") && (p.r.asked == "none" || p.r.asked == "menu") {
		return "harm=swallowed" // "my son drank it", whatever it was
	}
	p.person = p.person || p.byNe()
	if (s.tense&(past|participle|ongoing) != 0 || p.afterIt(i)) && p.unfit(s.sense) && (p.person || s.sense == "drink") {
		return "harm=swallowed"
	}
	return ""
}

// byNe says whether Hindi "ne" marks somebody who did it, whoever it is, and no beast: "chhote ne khad
// kha li".
func (p *peril) byNe() bool {
	return slices.ContainsFunc(p.signs, func(o sign) bool {
		return (oneOf(p.r.word(o.to), "ने", "ne") || oneOf(p.r.word(o.to-1), "ने", "ne")) && !o.beast() && !crawling(o.sense) && o.sense != "worm" && o.sense != "weather"
	})
}

// unfit says whether what was drunk or eaten is of the heap or the bottle, and no food.
func (p *peril) unfit(verb string) bool {
	if verb == "eat" {
		return p.person && !p.has("worm") && (p.has("starter", "medicine", "compost", "dung", "heap", "cap", "bottle") || p.rawMaterial() || p.r.says(p.clause, "soil", "dirt", "tierra", "terre", "udongo", "mitti", "मिट्टी", "eso") || p.about.bottle && p.licked() || p.smelt() && p.has("stuff", "liquid") || p.ofIt())
	}
	switch {
	case p.has("starter", "liquid", "bottle", "medicine", "compost", "stir", "seen=runoff"), p.about.bottle, p.r.asked == "bottle" || p.r.asked == "shake":
		return true
	case p.person && (p.has("unit=bucket", "unit=basin", "unit=tin", "dung") || p.r.says(p.clause, "that", "the") && p.has("stuff")):
		return true // "drank that stuff"
	}
	return p.smelt() || p.hasDim("material") && !p.has("food")
}

// ofIt says whether French "en" stands for what was eaten: "mon fils en a mangé".
func (p *peril) ofIt() bool {
	return (p.about.smell || p.about.bottle || p.about.heap || p.r.asked == "smell") && !p.has("food") &&
		slices.ContainsFunc(p.signs, func(s sign) bool { return s.tongue == fr && p.r.word(s.from) == "en" && s.to == s.from+1 })
}

// licked says whether a clause tells of licking or sucking, which needs no object after a bottle.
func (p *peril) licked() bool {
	return p.r.says(p.clause, "licked", "sucked", "chupo", "lamio", "leche", "suce", "chaat", "chat", "चाट", "chaata", "amelamba", "kalamba")
}

// rawMaterial says whether a material is named that nobody eats.
func (p *peril) rawMaterial() bool {
	return p.hasDim("material") && !p.has("material=jaggery", "material=curd", "material=fruit_waste")
}

// refreshing says whether what was drunk at sign i is something that people drink: no other
// verb stands between the two.
func (p *peril) refreshing(i int) bool {
	step := 1
	if p.signs[i].hindi() {
		step = -1
	}
	for k := i + step; k >= 0 && k < len(p.signs) && !verbal(p.signs[k].sense); k += step {
		if o := p.signs[k].sense; o == "foreign" || o == "material=curd" && p.signs[i].hindi() {
			return true
		}
	}
	return false
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

// smelt says whether the smell was just told, so that what was drunk is what smells: "sour. my
// daughter took a big sip". "The beer he drank" is what it smells like.
func (p *peril) smelt() bool {
	return (p.about.smell || p.r.asked == "smell") && !p.has("smell") && !p.hasDim("smell")
}

// onlyAfter says whether a number follows sign i and nothing but it: "se comió una".
func (c *clause) onlyAfter(i int, senses ...string) bool {
	return i+1 < len(c.signs) && c.past(i+1, senses...) == len(c.signs) && slices.ContainsFunc(c.signs[i+1:], func(s sign) bool { return s.sense == "one" || s.sense == "num" })
}

// mouthed reads what somebody put into the mouth: "se metió abono a la boca".
func (p *peril) mouthed(i int) string {
	s := &p.signs[i]
	if !p.has("compost", "heap", "dung", "worm", "starter", "liquid") && !p.rawMaterial() || !p.person || p.hasHarm() || s.tense&(future|unless|order) != 0 || !p.r.says(p.clause, mouths...) {
		return ""
	}
	return "harm=swallowed"
}

// wormEaten says whether somebody ate a worm, who stands before it: "मुन्ने ने केंचुआ खा लिया".
// Worms that were named before are a pronoun or nothing: "se las comió", "bachhe ne kha liye".
func (p *peril) wormEaten(i int) bool {
	s := &p.signs[i]
	if s.tense&(past|participle) == 0 || s.neg || p.has("food") {
		return false
	}
	worm := p.find("worm")
	if s.hindi() {
		by := slices.IndexFunc(p.signs, func(o sign) bool {
			return oneOf(p.r.word(o.to), "ने", "ne") || oneOf(p.r.word(o.to-1), "ने", "ne")
		})
		if who := p.find("person"); by < 0 && who >= 0 && who < worm && worm < i && oneOf(p.r.word(p.signs[len(p.signs)-1].to-1), "गई", "गयी", "गया", "gayi", "gyi", "gai", "gaya", "gya") {
			return true // "gudiya kechua kha gayi"
		}
		return by >= 0 && by < i && !p.signs[by].beast() && !crawling(p.signs[by].sense) && (worm > by || worm < 0 && p.about.worm && p.has("person") && !p.hasDim("material") && !p.hasDim("crop"))
	}
	who := p.find("person")
	if worm < 0 && p.about.caught && p.core() <= 2 {
		return true // "agarró una lombriz y se la comió"
	}
	if worm < 0 {
		return p.about.worm && (p.r.names(s, "las", "los") || who >= 0 && who < i && p.onlyAfter(i, "one", "num", "maybe", "filler"))
	}
	child := s.tongue == sw && (s.text[0] == 'a' || s.text[0] == 'k') // one ate; the worms would be "wa-"
	return worm > i && (child || who >= 0 && who < i)
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
