package understand

import (
	"slices"
	"strings"
)

// theirs: "turned his", "volteó el suyo". His at the end of a clause is no "his hand".
func (c *clause) theirs(neighbor bool) bool {
	last := len(c.signs) - 1
	for last > 0 && (oneOf(c.signs[last].sense, "past", "today", "already", "times") || oneOf(c.signs[last].text, "lui", "elle", "eux")) {
		last-- // "turned his yesterday", "hers twice", "le sien lui"
	}
	if last < 0 {
		return false
	}
	switch c.signs[last].text {
	case "theirs", "hers", "suyo", "suya", "suyos", "suyas", "sien", "sienne", "siens", "siennes":
		return c.hasAct()
	case "kwake", "lake", "yake", "zake", "chake":
		return neighbor && c.hasAct() && !c.has("mine") // "jirani amechekecha ya kwake"
	case "ella":
		return c.hasAct() && neighbor // "les dio a las de ella"
	case "his":
		return c.hasAct() && (neighbor || c.has("person"))
	}
	return false
}

// foreign says whether a clause is about somebody else's heap: the owner stands
// next to the thing with no verb between ("jirani's heap", "lundo la jirani").
func (r *reader) foreign(c *clause) bool {
	for i := 0; i+1 < len(c.signs); i++ {
		if s := &c.signs[i]; s.sense == "person" && s.tongue == en && (oneOf(c.signs[i+1].sense, "heap", "stick", "bottle", "worm", "bed", "compost")) && r.names(s, "brothers", "sisters", "uncles", "aunts", "cousins", "friends") {
			return true // my brother's heap
		}
	}
	if r.kinsOwn(c) || r.kinsTheir(c) || r.thoseOf(c) || r.ofThem(c) || r.hersInSwahili(c) {
		return true
	}
	if r.unknownsOwn(c) {
		return true
	}
	n := c.find("neighbor")
	if kin := r.kinAt(c); n < 0 && kin >= 0 && (r.herOwn(c, kin) || c.hasHeap(kin)) {
		return true // "चाचा ने अपना ढेर पलट लिया"
	}
	if n >= 0 && c.signs[n].hindi() && oneOf(r.word(c.signs[n].to), "से", "se") {
		return false // "पड़ोसी से भूसा लाया": from the neighbour
	}
	if c.theirs(n >= 0) {
		return true
	}
	if n < 0 {
		return false
	}
	if r.herOwn(c, n) || c.hasHeap(n) {
		return true
	}
	if r.bystander(c, n) {
		return false
	}
	for i, s := range c.signs {
		if s.sense == "mine" && s.hindi() && i > n && i+1 < len(c.signs) && c.signs[i+1].sense == "heap" {
			return false // "पड़ोसी ने मेरा ढेर पलटा"
		}
		if s.sense == "mine" && !(s.from > 0 && r.tokens[s.from-1].text == "kuliko") && // "kuliko langu": than mine
			i+1 != n && i+2 != n && i != n+1 && i != n+2 {
			return false
		}
	}
	acts := false
	for at := range c.signs {
		s := &c.signs[at]
		counts := at+1 < len(c.signs) && (c.signs[at+1].sense == "num" || c.signs[at+1].sense == "one") // "le voisin a trois sacs"
		acts = acts || (act(s.sense) || s.sense == "help") && s.tense&(past|participle) != 0 || s.sense == "didaux" && !counts
	}
	for i, s := range c.signs {
		switch s.sense {
		case "heap", "stick", "bottle", "worm", "compost", "inside":
		default:
			continue
		}
		lo, hi := min(i, n), max(i, n)
		clear := true
		for _, m := range c.signs[lo+1 : hi] {
			if act(m.sense) || quality(m.sense) || m.sense == "is" || hurts(m.sense) {
				clear = false
			}
		}
		if clear && hi-lo <= 4 {
			return true
		}
	}
	return !acts && !c.has("heap") && !c.hasHarm() // "the bottle burst and cut the neighbour"
}

// ofThem: "mi cuñado ya volteó el montón de él".
func (r *reader) ofThem(c *clause) bool {
	if r.best != es || len(c.signs) <= 2 || !c.has("heap") || !c.has("person", "neighbor") {
		return false
	}
	end := c.signs[len(c.signs)-1].to
	return r.word(end-2) == "de" && oneOf(r.word(end-1), "el", "ella", "ellos")
}

// thoseOf: "las de mi tía", "ceux de ma tante", whose worms or heap stand for the noun.
func (r *reader) thoseOf(c *clause) bool {
	if len(c.signs) == 0 {
		return false
	}
	at := c.signs[0].from
	who := c.find("person")
	return (oneOf(r.word(at), "las", "los") && r.word(at+1) == "de" || oneOf(r.word(at), "ceux", "celles", "celui", "celle") && oneOf(r.word(at+1), "de", "du", "des")) &&
		who >= 0 && c.signs[who].from <= at+3 && kin(r.tokens[c.signs[who].to-1].text)
}

// hersInSwahili: "Mama Otieno amegeuza lundo lake", the heap of the woman who turned it;
// wife, husband and child have the farmer's.
func (r *reader) hersInSwahili(c *clause) bool {
	heap := c.find("heap")
	if heap < 0 || !oneOf(r.word(c.signs[heap].to), "lake", "yake") {
		return false
	}
	who := c.find("person")
	return who >= 0 && who < heap && oneOf(c.signs[who].text, "mama", "baba", "bwana", "bibi", "mzee", "mjomba", "shangazi")
}

// kinsOwn: the heap of a brother, a cousin, a friend is theirs: "lundo la shemeji", "भाई
// का ढेर", "el montón de mi primo".
func (r *reader) kinsOwn(c *clause) bool {
	for i := range c.signs {
		s := &c.signs[i]
		switch s.sense {
		case "heap", "stick", "bottle", "worm", "compost", "bed":
		default:
			continue
		}
		if s.hindi() {
			k := s.from - 1
			if oneOf(r.word(k), "वाला", "वाली", "wala", "wali") { // "mama ke gaon wala dher"
				k--
			}
			if oneOf(r.word(k), "गाँव", "गांव", "घर", "खेत", "gaon", "gaanv", "ghar", "khet") {
				k--
			}
			if oneOf(r.word(k), "का", "के", "की", "ka", "ke", "ki") && kin(r.word(k-1)) {
				return true
			}
			continue
		}
		of := s.to
		if of >= len(r.tokens) || !oneOf(r.tokens[of].text, "la", "ya", "cha", "za", "wa", "de", "del", "du") {
			continue
		}
		who := of + 1
		if who < len(r.tokens) && oneOf(r.tokens[who].text, "mi", "mis", "mon", "ma", "mes", "un", "una", "une") {
			who++
		}
		if who < len(r.tokens) && kin(r.tokens[who].text) {
			return true
		}
	}
	return false
}

// kinsTheir: "a mi compadre se le calentó su pila", "my brother's own heap".
func (r *reader) kinsTheir(c *clause) bool {
	heap := c.find("heap")
	if heap < 0 {
		return false
	}
	for i := range heap {
		s := &c.signs[i]
		switch {
		case s.tongue == es && kin(r.tokens[s.from].text) && oneOf(r.word(s.from-2), "a"),
			s.tongue == en && s.sense == "person" && r.word(s.to) == "own":
			return true
		}
	}
	return false
}

// kinAt finds such a relative as the one who acts; -1 for none.
func (r *reader) kinAt(c *clause) int {
	for i := range c.signs {
		s := &c.signs[i]
		if s.tongue != sw && (kin(r.tokens[s.from].text) || kin(strings.TrimSuffix(r.tokens[s.to-1].text, "s"))) {
			return i // also "mon frère", "my brother's people"
		}
	}
	return -1
}

// hasHeap: "my uncle has a hot heap", "la voisine a un tas".
func (c *clause) hasHeap(n int) bool {
	for k := n + 1; k < len(c.signs); k++ {
		switch s := &c.signs[k]; {
		case s.sense == "have", oneOf(s.sense, "filler", "didaux") && s.text == "has":
			return slices.ContainsFunc(c.signs[k:], func(s sign) bool { return s.sense == "heap" }) && !c.hasPast()
		case !oneOf(s.sense, "filler", "didaux"):
			return false
		}
	}
	return false
}

// kin says whether a word names somebody who has a heap of their own; wife, husband and
// child work on the farmer's.
func kin(w string) bool {
	switch w {
	case "brother", "sister", "uncle", "aunt", "auntie", "cousin", "friend", "kaka", "dada", "mjomba", "shangazi", "binamu", "rafiki", "shemeji", "wifi", "mkwe",
		"भाई", "बहन", "चाचा", "मामा", "मौसा", "ताऊ", "दोस्त", "साले", "जीजा", "देवर", "जेठ", "फूफा", "jeth", "fufa", "mausa", "bhai", "behan", "chacha", "mama", "tau", "dost", "sale", "jija", "devar",
		"hermano", "hermana", "tio", "tia", "primo", "prima", "cuñado", "cuñada", "cunado", "cunada", "amigo", "amiga", "compadre", "comadre", "suegro", "suegra",
		"frere", "soeur", "oncle", "tante", "cousine", "ami", "amie", "beau":
		return true
	}
	return false
}

// bystander says whether the neighbour at sign n only gave, lent a hand or looked on:
// "straw from the neighbour", "built the heap with my neighbours", "con los vecinos".
func (r *reader) bystander(c *clause, n int) bool {
	if n+1 < len(c.signs) {
		switch c.signs[n+1].sense {
		case "heap", "stick", "bottle", "worm", "compost", "bed":
			return false // "from the neighbour's heap"
		case "have", "give", "bring", "helped":
			if s := &c.signs[n+1]; oneOf(s.text, "a", "ont", "possede") && s.tongue == fr && n+2 < len(c.signs) && (c.signs[n+2].sense == "num" || c.signs[n+2].sense == "one") {
				return false // "le voisin a trois sacs"
			}
			return true // "the neighbour gave me two carts"
		}
	}
	k := c.signs[n].to
	for oneOf(r.word(k), "are", "is", "have", "se") {
		k++
	}
	if oneOf(r.word(k), "complain", "complains", "complained", "complaining", "queja", "quejan", "quejo", "quejaron", "quejando", "plaint", "plaignent") {
		return true
	}
	k = c.signs[n].from - 1
	for oneOf(r.word(k), "the", "my", "our", "a", "some", "two", "few", "el", "la", "los", "las", "mi", "mis", "un", "una", "unos", "unas", "nuestros") {
		k--
	}
	return oneOf(r.word(k), "with", "from", "by", "con", "avec")
}

// herOwn: Hindi "apna" is the subject's own, "पड़ोसी ने अपना ढेर पलटा"; so is Swahili
// "lundo lake" after a neighbour, and "her heap", "su montón", "son tas".
func (r *reader) herOwn(c *clause, n int) bool {
	for i := n + 1; i < len(c.signs); i++ {
		for _, t := range r.tokens[c.signs[i].from:c.signs[i].to] {
			switch t.text {
			case "अपना", "अपने", "अपनी", "apna", "apne", "apni", "उसका", "उसके", "उसकी", "uska", "uske", "uski":
				return c.hasAct() || c.has("heap", "stick", "bottle", "worm")
			case "her", "his", "their", "su", "sus", "son", "sa", "ses", "leur", "leurs":
				if i+2 < len(c.signs) && c.signs[i+1].text == "own" {
					i++ // "his own heap"
				}
				if i+1 < len(c.signs) && oneOf(c.signs[i+1].sense, "heap", "stick", "bottle", "worm", "compost", "bed") {
					return true
				}
			case "lake", "yake", "chake", "wake", "zake", "lao", "yao":
				return c.has("heap", "stick", "bottle", "worm") || c.hasAct() && i+1 == len(c.signs)
			}
		}
	}
	return false
}

func oneOf(w string, of ...string) bool { return slices.Contains(of, w) }

// unknownsOwn says whether the heap of a clause belongs to somebody or a house named only there:
// "the widow had her heap turned", "मुखिया जी का ढेर", "the school heap".
func (r *reader) unknownsOwn(c *clause) bool {
	for i := range c.signs {
		s := &c.signs[i]
		if s.sense != "heap" {
			continue
		}
		if i > 0 && s.tongue == en && c.signs[i-1].sense == "foreign" && c.signs[i-1].to == s.from {
			return true // "the school heap"
		}
		if s.hindi() && oneOf(r.word(s.from-2), "जी", "ji", "साहब", "sahab") && oneOf(r.word(s.from-1), "का", "के", "ka", "ke") {
			return true
		}
		if r.several && oneOf(r.word(s.to), "lake", "lao") && !c.has("mine", "me") && !act(c.signs[0].sense) {
			return true
		}
		if oneOf(r.word(s.from-1), "his", "her", "their") && i > 1 && !c.has("me", "mine", "person") && slices.ContainsFunc(c.signs[:i], func(o sign) bool { return oneOf(o.sense, "", "known", "officer") }) {
			return true
		}
	}
	return false
}
