package understand

import (
	"slices"
	"strings"
)

// recast gives a word with two senses the one that its clause (the n-th of the
// message) or the open question asks for: "bit" is little before a quality, "fine"
// is good of worms and OK of a plan.
func (r *reader) recast(c *clause, n, k int) {
	s := &c.signs[k]
	if s.text == "well" && oneOf(r.word(s.from-1), "the", "our", "a") && r.word(s.to) != "as" {
		s.sense = "foreign" // the well is low
	}
	if r.hotDay(c, s) {
		s.sense = "known"
	}
	switch s.sense {
	case "stick=hot":
		if actOf(r.asked) != "" && oneOf(s.text, "हाथ", "haath", "hath") && r.names(s, "लगाया", "lagaya", "lagaayi", "लगाई") && !c.has("stick") {
			s.sense = "notyet" // "बोतल को हाथ भी नहीं लगाया"
		}
	case "smell=alcohol":
		if s.text == "vino" && k+1 < len(c.signs) && (oneOf(c.signs[k+1].sense, "me", "person", "neighbor", "officer") || c.signs[k+1].sense == "" && r.named(c.signs[k+1].from)) {
			s.sense = "known" // "vino mi comadre": she came
		}
	case "did=harvested":
		if s.text == "cosecha" && s.tongue == es && oneOf(r.word(s.from-1), "la", "una", "mi", "su", "esta", "buena", "de") {
			s.sense = "known" // the harvest
		}
	case "seen=worms_dead":
		if s.hindi() && (strings.HasPrefix(s.text, "मार") || strings.HasPrefix(s.text, "maar")) && !c.has("worm") {
			s.sense = "known" // "गप्पें मार के"
		}
	case "bit":
		if s.text == "bit" && k > 0 && k+1 < len(c.signs) && r.word(s.from-1) != "a" && oneOf(c.signs[k+1].sense, "", "known", "person", "neighbor", "body", "me") && r.creatureBefore(s) {
			s.sense, s.tense = "bite", past // "a snake came and bit Peter"
		}
	case "done":
		if s.tongue == en && k+1 < len(c.signs) && c.signs[k+1].sense == "not" && r.word(s.to-1) == "did" {
			s.sense = "didaux" // "I did not"
		}
	case "moisture=wet":
		if s.text == "wet" && s.tongue == en && oneOf(r.word(s.to), "the", "them", "it", "my", "our") && !c.has("is", "was") && (k == 0 || c.signs[k-1].sense == "me" || c.signs[k-1].sense == "and") {
			s.sense, s.tense = "did=watered", past // "gave them peels and wet the bed"
		}
	case "rainword":
		s.sense = "weather"
		if (r.asked == "smell" || c.has("smell")) && !c.has("today", "tomorrow", "kal", "past", "night") && !r.says(c, "हुई", "hui", "huyi") {
			s.sense = "smell=earthy"
		}
	case "weather":
		if r.names(s, "सूखा", "sukha", "sookha") && c.has("inside", "heap") {
			s.sense = "moisture=dry" // a drought elsewhere
		}
	case "fine":
		s.sense = "ok"
		switch r.asked {
		case "moisture", "worms", "smell":
			s.sense = "good"
		}
		if c.has("smell", "worm", "damp") {
			s.sense = "good"
		}
	case "ask=officer":
		if r.names(s, "rappelez", "rappelle", "rappeler") && c.has("tomorrow", "later") {
			s.sense = "filler" // "rappelez-moi demain": remind me
		}
	case "ask=help":
		if s.tongue == fr && r.names(s, "vois") && c.hasDim("seen") {
			s.sense = "not" // "je vois pas de mouches"
		}
	case "ask=next":
		if s.to == s.from+1 && c.end != "?" && c.has("layer", "tomorrow", "later") && len(c.signs) > 1 {
			s.sense = "filler" // "next layer tomorrow"
		}
	case "busy":
		if r.asked == "worms" && s.text == "busy" {
			s.sense = "alive" // the worms are; a farmer who is tired says nothing of them
		}
	case "seen=mould":
		if (r.asked == "smell" || c.has("smell")) && r.names(s, "mushroom", "mushrooms", "hongo", "hongos", "champignon", "champignons") {
			s.sense = "smell=earthy"
		}
	case "body":
		if k > 0 && k+1 == len(c.signs) && s.text == "sir" {
			s.sense = "filler" // "ढेर में आग लग गई sir": said to somebody
			break
		}
		if r.breadth(c, k) {
			s.sense = "length" // "sank a hand": a measure, and no wound
		}
	case "length":
		if r.names(s, "foot", "feet", "pied", "pieds", "pie", "pies") && (k == 0 || c.signs[k-1].sense != "num" && c.signs[k-1].sense != "one") {
			s.sense = "body"
		}
	case "bottle=bloated":
		if r.names(s, "hard", "fuerte", "fort") && c.has("did=shook") && !c.has("is", "bottle") {
			s.sense = "filler" // "shook it hard"
		}
		if r.asked == "moisture" && r.names(s, "apretado", "apretada", "serre", "serree") {
			s.sense = "squeeze"
		}
	case "past":
		if s.tongue == fr && oneOf(s.text, "derniere", "dernier") && c.has("tomorrow", "later") {
			s.sense = "filler" // "on pose la dernière demain"
		}
	case "ask=status":
		switch {
		case c.end != "?" && c.has("tomorrow", "later"):
			s.sense = "filler" // "mañana ya estará volteado"
		case s.text == "how" && c.has("stick", "water", "layer", "canq", "must"):
			s.sense = "howmany" // "how far in should the stick go"
		}
	case "is":
		if s.hindi() && s.text == "ha" && len(c.signs) == 1 {
			s.sense = "yes"
		}
	case "filler":
		if r.asked == "layer" && len(c.signs) > 1 && (s.tongue == en && s.text == "down" || s.hindi() && oneOf(s.text, "lag", "लग") && k+1 < len(c.signs) && c.signs[k+1].tense&past != 0) && !c.hasAct() {
			s.sense = "done" // "the first one is down", "चौथी भी लग गई"
		}
		if r.asked == "smell" && s.text == "fresh" && c.core() == 0 {
			s.sense = "smell=earthy"
		}
		if r.asked == "moisture" && s.text == "mbichi" && !c.hasDim("material") {
			s.sense = "moisture=wet"
		}
	case "isaid":
		if r.asked == "moisture" && r.names(s, "pressed") {
			s.sense = "squeeze"
		}
	case "unit=litre":
		if s.text == "l" && s.tongue == fr && (k == 0 || c.signs[k-1].sense != "num") {
			s.sense = "filler" // l'appareil
		}
	case "edge":
		if s.text == "left" && s.to == s.from+1 && oneOf(r.word(s.to), "it", "in", "them", "for", "there") {
			s.sense = "filler" // "left it 10 minutes"
			break
		}
		if s.text == "left" && s.to == s.from+1 && k > 0 && (quality(c.signs[k-1].sense) || c.signs[k-1].sense == "nothing") {
			s.sense = "filler" // "no warmth left"
		}
		if k+1 < len(c.signs) && c.signs[k+1].sense == "stick" || k+2 < len(c.signs) && c.signs[k+2].sense == "stick" && c.signs[k+1].sense != "and" {
			s.sense = "filler" // the tip of the stick
		}
	case "ok":
		switch r.asked {
		case "moisture", "worms", "smell":
			if k > 0 && r.describes(c.signs[k-1]) || c.has("smell", "worm", "damp") && !(k+1 == len(c.signs) && r.deedBefore(c.signs)) {
				s.sense = "good" // "seems ok"
			}
		}
		if c.end == "?" && c.core() == 1 && n > 0 {
			s.sense = "tag"
		}
	case "material=curd":
		if r.asked == "smell" || c.has("smell") {
			s.sense = "smell=sour"
		}
	case "green":
		if r.asked == "smell" && s.text == "fresh" && c.core() == 1 {
			s.sense = "smell=earthy"
		}
		if s.text == "mbichi" && r.asked == "moisture" && !c.hasDim("material") {
			s.sense = "moisture=wet"
		}
	case "stick=cold":
		if s.text == "cooler" && r.word(s.to) == "than" {
			s.sense = "filler" // "cooler than last time but warm"
		}
	case "food":
		if s.text == "feed" && s.tongue == en && (k > 0 && oneOf(c.signs[k-1].sense, "me", "will", "must", "want", "not", "notyet") || oneOf(r.word(s.to), "them", "the")) {
			s.sense, s.tense = "did=fed", bare // "I'll feed them": the verb
			s.neg = k > 0 && c.signs[k-1].sense == "not"
		}
	case "water", "sheet":
		if as, ok := map[string]string{"water": "did=watered", "cover": "did=covered"}[s.text]; ok && s.tongue == en && c.verbHere(k) {
			s.sense, s.tense = as, bare // "did not water it", "forgot to cover the heap"
			s.neg = c.signs[k-1].sense == "not"
		}
	case "cap":
		if oneOf(s.text, "ढकना", "dhakna", "dhakana") && c.has("heap") && !c.has("bottle") {
			s.sense, s.tense = "did=covered", bare // to cover, and no cap
		}
	case "seen=weeds":
		if r.asked == "have" && !c.has("heap", "bed", "inside", "edge") {
			s.sense = "material=weeds" // what is at hand
		}
	case "material=weeds":
		if c.has("heap") && !r.counted(c, k) && !c.hasAct() {
			s.sense = "seen=weeds" // weeds on the heap
		}
	case "put":
		if r.asked == "have" && c.hasDim("unit") && !c.has("layer", "heap", "inside") && r.names(s, "rakha", "rakhi", "rakhe", "रखा", "रखी", "रखे") {
			s.sense = "have" // "do balti gobar rakha": it lies there
		}
	case "rangeto":
		if s.text == "or" {
			s.sense = "or" // "smoke or maybe its steam": no figures
		}
	case "medium":
		s.sense = "stick=warm"
		if c.has("degree") {
			s.sense = "inside" // "ढेर के बीच का तापमान 60 डिग्री"
			break
		}
		if r.asked == "moisture" {
			s.sense = "moisture=right"
		}
	case "very":
		if (s.text == "bien" || s.text == "well") && !c.hasQuality() {
			s.sense = "good"
			s.neg = k > 0 && c.signs[k-1].sense == "not"
		}
	case "or":
		if (s.text == "कि" || s.text == "ki") && k > 0 && c.has("very") {
			s.sense = "filler" // "इतनी गरम कि": so hot that
		}
	case "what":
		if s.text == "quoi" && k > 0 && k+1 == len(c.signs) && c.end != "?" && !c.has("or") && !act(c.signs[k-1].sense) && (c.hasQuality() || c.hasPast() && c.hasDeed()) {
			s.sense = "filler" // "on a arrosé le tas quoi": so to say
		}
	case "bite":
		if s.tongue == sw && r.asked == "worms" && bitesThem(s.text) && !c.has("person") {
			s.sense = "known" // "siafu wanawashambulia": the worms, nobody
		}
		if s.tongue == sw && !s.whom && !s.pass && (strings.Contains(s.text, "vami") || strings.Contains(s.text, "shambuli")) && !c.has("person", "me", "body") {
			s.sense = "known" // "siafu wamevamia sanduku": the box
		}
		if s.text == "bit" && k+1 < len(c.signs) && quality(c.signs[k+1].sense) {
			s.sense, s.tense = "bit", 0 // "bit dry"
		}
	case "atall":
		if (s.text == "nada" || s.text == "nadita") && !c.hasQuality() {
			s.sense = "nothing"
		}
	case "not":
		if c.end == "?" && c.core() == 1 && n > 0 {
			s.sense = "tag" // "frío, ¿no?"
		}
		if c.core() == 1 && s.text == "none" && r.asked == "smell" {
			s.sense = "nothing"
		}
		if c.core() == 1 && (s.text == "hakuna" || s.text == "hamna") {
			s.sense = "nothing"
		}
	case "no", "yes":
		if c.end == "?" && c.core() == 1 && n > 0 {
			s.sense = "tag" // "chaud, non ?"
		}
	case "moisture=right":
		if s.text == "right" && c.end == "?" && len(c.signs) == 1 {
			s.sense = "tag"
		}
		if s.text == "right" && s.to == s.from+1 && s.from > 0 && r.tokens[s.from-1].text == "the" {
			s.sense = "edge"
		}
	case "earlier":
		if s.text == "tout" && c.ahead() {
			s.sense = "later" // "je regarde tout à l'heure"
		}
	}
}

// bitesThem says whether a Swahili verb has "them" for its object: wana-wa-shambulia.
func bitesThem(verb string) bool {
	for _, p := range [...]string{"wanawa", "wamewa", "waliwa", "anawa", "amewa", "aliwa"} {
		if strings.HasPrefix(verb, p) {
			return true
		}
	}
	return false
}

// describes says whether a sign is a verb of being or seeming.
func (r *reader) describes(s sign) bool {
	switch s.text {
	case "seems", "seem", "looks", "look", "feels", "feel", "its", "is", "are", "theyre", "parece", "parecen", "ve", "ven", "esta", "estan", "semble", "semblent", "est", "sont", "smells",
		"देखा", "देखी", "लगा", "लगी", "लग", "dekha", "dekhi", "laga", "lagi", "lag", "naona", "inaonekana", "linaonekana", "wanaonekana":
		return true
	}
	return s.sense == "is"
}

// creatureBefore says whether an animal was named before a sign.
func (r *reader) creatureBefore(s *sign) bool {
	return slices.ContainsFunc(r.signs, func(o sign) bool { return o.from < s.from && (o.sense == "stinger" || o.beast()) })
}

// verbHere says whether an English word at sign k that may be a noun is a verb: "did not
// water the heap", "forgot to cover it".
func (c *clause) verbHere(k int) bool {
	switch {
	case k > 1 && c.signs[k-1].sense == "rangeto":
		return c.signs[k-2].sense == "forgot"
	case k > 0 && c.signs[k-1].sense == "not":
		return k == 1 || c.signs[k-2].sense != "is"
	}
	return false
}

// hotDay says whether a Hindi word for heat is of the weather: "गर्मी बहुत है".
func (r *reader) hotDay(c *clause, s *sign) bool {
	return s.hindi() && (s.sense == "heat" || s.sense == "stick=hot") && r.asked != "stick" && oneOf(r.tokens[s.from].text, "गर्मी", "गरमी", "garmi") && !c.has("heap", "inside", "stick", "compost")
}
