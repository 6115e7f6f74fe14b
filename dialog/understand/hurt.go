package understand

import (
	"slices"
	"strings"
)

// Wounds, bites, what went into an eye or down a throat: the verbs that do harm only to
// somebody, and the words that name it outright.

// otherwise reads words that mean something else of heap and bottle: "me lloran los ojos",
// "se me hinchó el ojo", "une épine s'est enfoncée dans mon pouce".
func (p *peril) otherwise(s *sign, i int) string {
	switch s.sense {
	case "smell=ammonia":
		if !s.own && p.r.asked != "smell" && !p.has("smell", "gas", "sharp") && p.r.names(s, "ojos", "ojo", "yeux", "eyes", "macho", "aankh", "ankh", "aankhon", "ankhon", "आँख", "आँखें", "आंख", "आंखें") {
			return "harm=eye"
		}
	case "bottle=bloated":
		switch {
		case p.has("bottle", "cap"):
		case p.has("eye"):
			return "harm=eye"
		case p.has("body") && p.about.sting && !p.hasHarm() && p.r.asked != "bottle":
			return "harm=bite" // "a scorpion was there, his hand is swollen"
		}
	case "seen=sunk":
		switch {
		case !p.has("body") || p.has("heap", "bottle"):
		case p.has("dust"):
			return "harm=breath" // "dust went down my throat"
		default:
			return "harm=cut"
		}
	case "open":
		if p.has("body") && !p.r.says(p.clause, mouths...) && s.tense&(past|participle) != 0 && s.tense&present == 0 && (!p.has("bottle", "cap", "heap", "gas") || p.r.opened(p.clause, i)) && !p.hasHarm() {
			return "harm=cut" // "un tesson m'a ouvert la paume"
		}
	case "bottle=burst":
		if s.tense&(future|unless|order) == 0 && !p.hasHarm() && (p.r.opened(p.clause, i) || p.torn(i)) {
			return "harm=cut" // "wire tore my finger open", "se me reventó el dedo"
		}
	}
	return ""
}

// pierced reads something pointed that went into a part of the body, whatever the verb:
// "कील पैर में घुस गई", "kibanzi kimezama kwenye kiganja", "je me suis enfoncé un clou".
func (p *peril) pierced(i int) string {
	if p.hasHarm() || p.animal {
		return ""
	}
	if p.lodged(i) || p.has("tread") && !p.has("not", "nothing") {
		return "harm=cut"
	}
	if p.has("not", "nothing", "hold", "have", "look", "squeeze", "stinger") || p.hasDim("did") || p.r.says(p.clause, "has", "had", "tiene", "tenia") || p.r.suffers(p.clause, i) {
		return ""
	}
	went := slices.ContainsFunc(p.signs, func(s sign) bool {
		return s.sense == "get" || s.sense == "seen=sunk" || s.sense == "open" || s.sense == "bottle=burst" || s.tense&past != 0 && !inDim(s.sense, "did") ||
			s.sense == "" && p.r.tokens[s.from].kind == word && s.from > p.signs[i].from
	})
	whom := p.has("body") || p.has("seen=sunk") && !p.has("heap", "bed", "layer", "compost", "bottle") && (p.person || p.hasDim("unit"))
	if went && whom {
		return "harm=cut"
	}
	return ""
}

// lodged says whether something pointed is in or under a part of the body, with no verb
// between: "thorn deep inside my heel", "j'ai une épine sous le pied".
func (p *peril) lodged(i int) bool {
	at := p.past(i+1, "filler", "known", "inside", "edge", "me", "mine", "person")
	return at > i+1 && at < len(p.signs) && p.signs[at].sense == "body"
}

// pricked says whether something pointed did it, and nothing alive.
func (p *peril) pricked() bool {
	return p.has("pointed") && !p.animal && !p.hasBeast() && !p.has("stinger", "seen=ants")
}

// attacked reads what a small animal or a beast did to somebody: what only its mouth, claws or
// sting does, or any verb that is not understood and has a part of the body for its object.
// "चूहे ने कान कुतर लिया", "a viper struck my brother", "les fourmis ont dévoré les mollets".
func (p *peril) attacked(i int) string {
	s := &p.signs[i]
	if p.has("bite", "cut", "harm=bite", "harm=cut", "not", "nothing") {
		return ""
	}
	if s.hindi() {
		if oneOf(p.r.word(s.to), "ने", "ne") && (p.has("body") || p.has("person", "me") && p.r.says(p.clause, "को", "ko", "मुझे", "mujhe")) {
			return "harm=bite"
		}
		return ""
	}
	if p.hasDim("animal") || s.sense != "stinger" && p.has("heap", "bed", "worm", "bottle") {
		return ""
	}
	whom := func(o sign) bool {
		return o.sense == "person" || o.sense == "neighbor" || o.sense == "me" || o.sense == "body" || o.whom
	}
	somebody := func(of []sign) bool {
		return slices.ContainsFunc(of, whom) || s.tongue == es && (p.r.says(p.clause, "me", "le", "les", "nos") || s.sense == "stinger" && p.r.says(p.clause, "lo", "la"))
	}
	if k := p.find("maul"); k >= 0 && k < i && p.signs[k].tongue != en && !p.signs[k].neg && somebody(p.signs) {
		return "harm=bite" // "me pegó un ciempiés"
	}
	for k := i + 1; k < len(p.signs); k++ {
		switch v := &p.signs[k]; {
		case v.beast() && !whom(p.signs[k-1]), v.neg, inDim(v.sense, "did"):
			return ""
		case v.sense == "maul" && (v.whom || somebody(p.signs[i+1:])),
			v.sense == "eat" && v.tense&(past|participle|ongoing) != 0 && (v.whom || p.has("body")):
			return "harm=bite"
		case v.sense == "" && p.r.tokens[v.from].kind == word && p.onBody(k):
			return "harm=bite"
		}
	}
	return ""
}

// mauled reads what only an animal's mouth, claws or sting does, of one that was named before:
// "there was a snake and it got my husband in the hand".
func (p *peril) mauled(i int) string {
	s := &p.signs[i]
	if !p.about.sting || s.neg || p.hasHarm() || p.has("not", "nothing", "bite", "worm") || s.tense&(future|order|unless) != 0 {
		return ""
	}
	for _, o := range p.signs[i+1:] {
		if o.beast() {
			return ""
		}
	}
	if s.whom || p.has("body", "person") || p.r.hurtsMe(p.clause) {
		return "harm=bite"
	}
	return ""
}

// onBody says whether a part of the body is the object of the word at sign i.
func (p *peril) onBody(i int) bool {
	k := p.past(i+1, "filler", "me", "mine", "up", "one")
	return k < len(p.signs) && p.signs[k].sense == "body"
}

// torn says whether a part of the body burst open, and nothing in or beside it did.
func (p *peril) torn(i int) bool {
	if i > 0 && p.signs[i-1].sense == "body" && p.signs[i].hindi() {
		return true // "ढक्कन से होंठ फट गया"
	}
	return !p.has("bottle", "cap", "bottle=bloated", "squeeze", "damp", "get", "inside") && !p.r.says(p.clause, "en", "dans", "में", "mein") &&
		slices.ContainsFunc(p.signs, func(s sign) bool { return s.sense == "body" && !s.unsure && !strings.HasSuffix(s.text, "ni") })
}

// mouths are opened without harm.
var mouths = []string{"mouth", "boca", "bouche", "mdomo", "munh", "मुँह"}

// opened says whether the cap or the bottle opened a part of the body, which stands right
// behind the verb: "le bouchon m'a ouvert la lèvre", "se abrió la ceja con la tapa".
func (r *reader) opened(c *clause, i int) bool {
	k := c.past(i+1, "filler", "mine", "me")
	if k == len(c.signs) || c.signs[k].sense != "body" || oneOf(c.signs[k].text, mouths...) || oneOf(r.word(c.signs[k].from-1), "with", "con", "avec") {
		return false
	}
	thing := func(s sign) bool { return s.sense == "bottle" || s.sense == "cap" }
	return slices.ContainsFunc(c.signs[:i], thing) || slices.ContainsFunc(c.signs[k:], thing)
}

func (p *peril) cuts(i int) string {
	s := &p.signs[i]
	switch {
	case s.hindi() && p.has("harm=bite", "bite"):
		return "" // "मधुमक्खी ने काटा": काटना is to cut and to bite
	case s.pass && (p.hasDim("material") || p.hasDim("unit")) && !p.has("person", "body"), p.byBeast(i) && !p.has("body"):
		return "" // "nyasi zilizokatwa", "le grillage que le bouc a déchiré"
	case p.object(i) == "heap":
		return "" // "son bras est rentré dans le tas"
	case p.has("eye") && !p.has("body"):
		return "harm=eye" // "un grain m'est rentré dans l'œil"
	case !s.hindi() && !p.has("pointed") && p.stungBefore(i):
		return "harm=bite" // "una avispa le clavó el aguijón"
	case s.hindi() && p.about.sting && p.has("body") && !p.has("pointed", "bottle", "known", "cloth") && strings.HasPrefix(s.text, "काट"), s.hindi() && (p.has("stinger") && !p.has("pointed") || p.has("seen=ants", "seen=rodents") && !p.has("bottle", "cloth") || p.has("animal") && p.r.says(p.clause, "ने", "ne")):
		return "harm=bite" // "लाल चींटी ने हाथ में काटा"
	case s.tongue == es && p.r.word(s.from-1) == "que" && p.hasDim("material"):
		return "" // "pasto que cortó mi suegro"
	case p.person && p.has("pointed") && s.tense&past != 0 && !p.plant:
		return "harm=cut" // "child cut with glass"
	case !p.has("body") && p.r.wentThrough(p.clause):
		return ""
	case p.has("body") || s.self || s.whom && !p.animal || p.r.strikes(p.clause, i) || s.pass && p.person,
		p.person && p.has("me") && !p.plant && !p.has("foreign", "grasses", "leaf", "dry_leaf", "stalk", "stem", "veg", "fruit", "food", "peel") && !p.hasDim("material") && !p.hasDim("crop"):
		return "harm=cut"
	}
	return ""
}

// byBeast says whether the subject of the verb at sign i is a beast.
func (c *clause) byBeast(i int) bool {
	for k := i - 1; k >= 0; k-- {
		switch s := &c.signs[k]; s.sense {
		case "filler", "didaux", "done", "already":
		default:
			return s.beast()
		}
	}
	return false
}

// stungBefore says whether a small animal is the subject of the verb at sign i.
func (p *peril) stungBefore(i int) bool {
	for k := i - 1; k >= 0; k-- {
		switch p.signs[k].sense {
		case "filler", "didaux", "me", "", "neighbor", "known":
		case "stinger", "seen=rodents":
			return true
		default:
			return p.signs[k].beast() && (p.has("body") || p.signs[i].whom || p.r.strikes(p.clause, i))
		}
	}
	return false
}

func (p *peril) bites(i int) string {
	s := &p.signs[i]
	switch {
	case p.has("worm") && !p.person:
		return "" // "do worms bite?"
	case p.pricked() && p.has("body"):
		return "harm=cut" // "the blade bit into my finger"
	case s.text == "bit" && !p.person && !p.animal && !p.has("body", "stinger", "seen=ants", "me"):
		return "" // "bit crooked"
	case s.tongue == es && strings.HasPrefix(s.text, "picad") && !p.person && !p.animal && !p.r.says(p.clause, "estoy", "ando", "quede"):
		return "" // "todo picado y mojado": chopped
	case s.tongue == sw && !s.whom && !s.pass && p.about.eye && !p.has("animal", "stinger", "seen=ants"):
		return "" // "jicho ni jekundu na linauma"
	case s.tongue == sw && s.pass && s.tense&past == 0 && p.r.word(s.to) != "na":
		return "" // naumwa: I am ill
	case s.tongue == sw && !s.pass && (!s.whom || p.aches(i)) && p.has("body", "eye") && !p.has("seen=ants", "animal") && !p.hasDim("animal"):
		return "" // mkono unauma: it aches
	}
	return "harm=bite"
}

func (p *peril) swallows(i int) string {
	s := &p.signs[i]
	if (p.animal || s.sense == "eat" && p.hasBeast()) && s.tense != 0 && !p.has("person") {
		return ""
	}
	if s.sense == "drink" && p.has("mistook") || s.sense == "eat" && p.wormEaten(i) {
		return "harm=swallowed"
	}
	if p.about.beast && !p.person {
		return "" // "बैलों ने खली खा ली और पानी भी पी लिया"
	}
	if s.sense == "drink" && p.refreshing(i) && !p.has("starter", "liquid", "bottle", "compost", "medicine", "stir") {
		return "" // "we were drinking tea when the bottle burst"
	}
	if s.tense&(past|participle) != 0 && s.sense == "drink" && (p.core() <= 2 || p.core() == 3 && p.has("ok", "yes")) && p.has("person", "neighbor") && (p.r.asked == "none" || p.r.asked == "menu") {
		return "harm=swallowed" // "my son drank it", whatever it was
	}
	ours := p.has("starter", "liquid", "bottle", "medicine", "compost", "stir") || p.person && p.has("unit=bucket", "unit=basin", "unit=tin") && s.sense == "drink" || s.sense == "drink" && p.smelt() || p.has("dung") && p.person || p.hasDim("material") && !p.has("food") || p.about.bottle || p.r.asked == "bottle" || p.r.asked == "shake"
	if s.sense == "eat" {
		ours = p.person && !p.has("worm") && (p.has("starter", "compost", "dung", "heap", "cap", "bottle") || p.hasDim("material") && !p.has("material=jaggery", "material=curd", "material=fruit_waste"))
	}
	if (s.tense&(past|participle|ongoing) != 0 || p.afterIt(i)) && ours && (p.person || s.sense == "drink") {
		return "harm=swallowed"
	}
	return ""
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
	ours := p.has("compost", "heap", "dung", "worm", "starter", "liquid") || p.hasDim("material") && !p.has("material=jaggery", "material=curd", "material=fruit_waste")
	if !ours || !p.person || p.hasHarm() || s.tense&(future|unless|order) != 0 || !p.r.says(p.clause, mouths...) {
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
		by := slices.IndexFunc(p.signs, func(o sign) bool { return oneOf(p.r.word(o.to), "ने", "ne") || oneOf(p.r.word(o.to-1), "ने", "ne") })
		if who := p.find("person"); by < 0 && who >= 0 && who < worm && worm < i && oneOf(p.r.word(p.signs[len(p.signs)-1].to-1), "गई", "गयी", "गया", "gayi", "gyi", "gai", "gaya", "gya") {
			return true // "gudiya kechua kha gayi"
		}
		return by >= 0 && by < i && !p.signs[by].beast() && !crawling(p.signs[by].sense) && (worm > by || worm < 0 && p.about.worm && p.has("person") && !p.hasDim("material") && !p.hasDim("crop"))
	}
	who := p.find("person")
	if worm < 0 {
		return p.about.worm && (p.r.names(s, "las", "los") || who >= 0 && who < i && p.onlyAfter(i, "one", "num", "maybe", "filler"))
	}
	child := s.tongue == sw && (s.text[0] == 'a' || s.text[0] == 'k') // one ate; the worms would be "wa-"
	return worm > i && (child || who >= 0 && who < i)
}

func (p *peril) eyes(i int) string {
	switch {
	case p.r.asked != "smell" && !p.has("smell") && (p.r.pains(p.clause) || p.has("cap", "bottle=burst") && !p.has("open")),
		(p.r.asked != "smell" || p.has("cap", "bottle", "liquid", "starter")) && p.intoEye(i),
		p.has("open") && (p.has("not", "couldnt", "cant") || p.signs[p.find("open")].neg) && !p.has("bottle", "cap"), // it does not open any more
		p.has("dust", "stuff", "water", "gas", "seen=ash", "liquid", "starter", "compost", "get", "dung"), p.hasDim("material"):
		return "harm=eye"
	}
	return ""
}

// harm reads a word that names a hurt outright, by what did it and to whom.
func (p *peril) harm(i int) string {
	c, r, s := p.clause, p.r, &p.signs[i]
	switch s.sense {
	case "harm=cut":
		switch {
		case p.about.sting && !p.has("pointed", "bottle", "known") && c.signs[0].sense == "filler" && oneOf(c.signs[0].text, "it", "ca", "cela", "eso") && c.has("body"):
			return "harm=bite" // "a scorpion was in there, it jabbed my thumb"
		case s.hindi() && c.has("harm=bite", "bite") && (strings.HasPrefix(s.text, "ka") || strings.HasPrefix(s.text, "क")):
			return ""
		case s.hindi() && (c.has("seen=ants", "stinger") || c.has("seen=rodents") && !c.has("bottle", "pointed")):
			return "harm=bite" // "haath pe kaat liya chintiyon ne"
		case strings.HasPrefix(s.text, "cortad") && !c.has("body", "person", "me") && i > 0 && (c.signs[i-1].sense == "" || c.signs[i-1].sense == "known" || inDim(c.signs[i-1].sense, "material")):
			return "" // "leña cortada"
		case s.hindi() && (c.hasDim("material") || r.several && r.asked == "have") && !c.has("body", "person", "me") && i+1 < len(c.signs) && r.says(c, "हुई", "हुआ", "हुए", "hui", "hua", "hue"):
			return "" // "दराँती से कटी हुई घास"
		case strings.HasPrefix(s.text, "clavad") && !c.has("body", "person", "me") && !r.says(c, "espina", "espinas", "clavo", "clavos", "vidrio", "vidrios", "alambre"):
			return "" // "lo dejé clavado": the stick
		case s.hindi() && c.hasDim("crop") && !c.has("body"):
			return "" // "गेहूँ कट गया"
		case oneOf(s.text, "कटा", "कटी", "कटे", "kata", "kati", "kate") && c.hasDim("unit") && !p.person:
			return "" // "तना कटा हुआ": chopped
		}
	case "harm=bite":
		switch {
		case (p.about.eye || c.has("eye", "harm=eye")) && !p.animal && !c.hasBeast() && !c.has("stinger", "seen=ants") && r.says(c, "sting", "stings", "stinging"):
			return "" // "it squirted in my eyes, they sting bad"
		case !s.hindi() && c.has("worm") && !p.person:
			return "" // "the hen pecked the worms"
		case s.text == "bit" && c.beastAfter(i) && slices.ContainsFunc(c.signs[:i], func(o sign) bool { return o.sense == "stinger" || o.beast() }):
			return "" // "a snake bit our goat"
		case p.pricked():
			return "harm=cut" // "un clou m'a piqué"
		case r.reaped(c, i):
			return ""
		}
	case "harm=eye":
		if r.stings(c, i) {
			return ""
		}
	case "harm=swallowed":
		if r.says(c, "throat") && c.has("harm=breath", "breathe") {
			return "harm=breath" // "very dusty, went down my throat, coughing since"
		}
		if p.about.beast && !p.person || p.byBeast(i) || !c.has("mistook") && (r.refreshed(c, i) || c.has("crop=coffee") && !c.has("liquid", "starter", "compost", "bottle")) {
			return "" // "deje que me tome mi café"
		}
	case "harm=burn":
		if s.tongue == sw && p.has("pointed") {
			return "harm=cut" // kuchoma is to burn and to prick
		}
		if p.plant && !c.has("body") || p.object(i) == "seen=weeds" || c.hasDim("material") && r.names(s, "quemaron") && !c.has("body", "person") {
			return "" // ammonia burnt my plants; "se me quemaron las matas"
		}
	}
	switch {
	case !s.own && !p.person && s.tense == 0:
		return ""
	case s.sense == "harm=cut" && c.has("eye") && !c.has("body"):
		return "harm=eye" // a splinter in the eye
	case s.sense == "harm=swallowed" && c.has("dust", "seen=smoke") && !c.has("liquid", "starter", "compost"):
		return "harm=breath" // swallowed dust
	}
	return s.sense
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
	return (c.signs[i].text == "jichoni" || c.signs[i].text == "machoni" || i > 0 && c.signs[i].tongue == sw && oneOf(c.signs[i-1].text, "kwa", "kwenye", "katika", "ndani")) && !c.has("canq", "how", "if", "whatif")
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
	for i > 1 && (c.signs[i-1].sense == "" || c.signs[i-1].sense == "size") && c.signs[i-1].to >= c.signs[i].from-1 {
		i-- // "डंठल छोटे-छोटे काट लिए"
	}
	if i == 0 || c.signs[i-1].to < c.signs[i].from-1 {
		return false
	}
	p := c.signs[i-1].sense // the crop itself, not "घास में काट लिया"
	return inDim(p, "crop") || inDim(p, "material") || oneOf(p, "plant", "leaf", "stem", "stalk", "straws")
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
