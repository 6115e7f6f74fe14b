package understand

import (
	"cmp"
	"slices"
)

// Meaning is what a reply says.
type Meaning struct {
	Codes    []string // "stick=cold", "have=3 basket goat_dung"; empty when not Sure
	Sure     bool     // act on Codes; false: ask the farmer
	Guess    []string // when not Sure, what it may have meant, to be offered as choices
	Lang     string   // the language the text seems to be in: en sw hi hi-Latn es fr, "" unknown
	Gone     bool     // not Sure, but a trouble is told of as not there (any more): "the flies are gone"
	UnderWay string   // with when=later: the deed that is being done now ("did=turned"), "" if none
}

// Read says what text means. lang is the language of the chat (en sw hi hi-Latn
// es fr), asked the question last put to the farmer (stick, moisture, smell,
// bottle, shake, turn, layer, sieve, feed, worms, have, menu, none; any other
// counts as a yes-no question). asked settles short words and never overrules
// clear ones. Any bytes are accepted.
func Read(text, lang, asked string) Meaning {
	if asked == "squeeze" {
		asked = "moisture"
	}
	r := newReader(text, lang, asked)
	defer r.close()
	m := r.alarmed(r.read())
	m.Lang = r.seems()
	return m
}

// seems is the language most words were found in. Those that mean nothing do not count:
// "invite" is a command in more than one.
func (r *reader) seems() string {
	var n [tongues]int
	for _, s := range r.signs {
		if s.sense != "" && s.sense != "known" && s.from < len(r.tokens) && r.tokens[s.from].kind == word && s.tongue < everyone {
			n[s.tongue]++
		}
	}
	best, most := "", 0
	for _, t := range r.order {
		if t < everyone && n[t] > most {
			best, most = folders[t], n[t]
		}
	}
	return best
}

// finding gathers what the clauses said.
type finding struct {
	danger []string
	facts  []fact
	deeds  []deed
	asks   []string
	haves  []string
	guess  []string
	when   string
	answer string
	hello  bool
	thanks bool
	undo   bool
}

func (r *reader) read() Meaning {
	if r.loneLetter() {
		return Meaning{}
	}
	r.hindiTurns()
	r.hindiVerbs()
	r.swahiliTurns()
	r.relatives()
	cs := r.split()
	r.several = len(cs) > 1
	r.frame(cs)
	for k := range cs {
		r.correcting = r.correcting || cs[k].has("isaid", "imeant", "ask=undo") && cs[k].ask == telling
	}
	a := account{r: r, cs: cs, finding: finding{facts: r.facts[:0]}, corrected: map[int]bool{}, about: r.opening()}
	for k := range cs {
		a.take(k)
	}
	f := &a.finding
	f.putOff(cs)
	f.retold(cs)
	f.facts = append(f.facts, r.temps(cs)...)
	r.facts = f.facts
	f.outdated(cs)
	f.haves = r.haves(cs)
	a.tidy()
	r.undoes(cs, f, a.corrected)
	keep, clash := resolve(f.facts, a.corrected)
	f.guess = append(f.guess, clash...)
	f.facts = keep
	r.times(cs, f)
	r.questions(cs, f)
	r.answers(cs, f)
	m := r.settle(cs, f)
	m.Gone = !m.Sure && slices.ContainsFunc(cs, func(c clause) bool { return c.freed() })
	if hasCode(m.Codes, "when=later") {
		m.UnderWay = r.underWay(cs, f)
	}
	return m
}

// by says whether sign i stands in a clause as what did it: "ameungua | na mvuke", "haath jal
// gaya | bhaap se".
func (r *reader) by(c *clause, i int) bool {
	return i >= 0 && (oneOf(r.word(c.signs[i].to), "se", "से") || oneOf(r.word(c.signs[0].from-1), "par", "por", "by", "from", "kwa", "na"))
}

// ofTold says whether a fact of a clause is but another side of a danger that the message has
// told: what did it, or how the hurt eye is.
func (r *reader) ofTold(c *clause, f fact, dangers []string, told told) bool {
	switch f.code {
	case "seen=steam":
		return hasCode(dangers, "harm=burn") && r.by(c, c.find(f.code))
	case "smell=rotten":
		return hasCode(dangers, "seen=smoke") && c.core() == 1 && c.has("bad") // "une odeur de fumée, bizarre"
	case "smell=ammonia":
		return told.eye && r.asked != "smell" && !c.has("smell")
	case "bottle=bloated", "bottle=flat":
		return told.eye && !c.has("bottle", "cap") // "लगी आँख पे, सूज गई, कुछ दिखता नहीं"
	}
	return crawling(f.code) && hasCode(dangers, "harm=bite") && r.by(c, c.find(f.code))
}

// contrary says whether a Hindi clause ends in what would have been: "ढक देता तो गरम होता".
func (r *reader) contrary(c *clause) bool {
	n := len(c.signs)
	return n > 1 && c.signs[n-1].hindi() && !c.has("is", "was") && oneOf(r.word(c.signs[n-1].to-1), "hota", "hoti", "hote", "होता", "होती", "होते")
}

// runsOn says whether no mark stands before a clause.
func (r *reader) runsOn(c *clause) bool {
	return len(c.signs) > 0 && c.signs[0].from > 0 && r.tokens[c.signs[0].from-1].kind != mark
}

// ofDanger says whether a fact of a clause is but another side of a danger found in it.
func (r *reader) ofDanger(c *clause, f fact, found []string) bool {
	switch f.code {
	case "seen=steam":
		return hasCode(found, "harm=burn") // a mere doer
	case "bottle=leaking", "seen=runoff":
		return hasCode(found, "harm=swallowed") // "drunk the brown water from the bottle"
	case "bottle=bloated":
		return c.has("body") && !c.has("bottle", "cap") && (len(found) > 0 || r.asked != "bottle" && r.asked != "shake") // "चेहरा सूज गया"
	case "stick=hot":
		return hasCode(found, "seen=smoke") && c.hasDim("smell") || hasCode(found, "seen=fire") && (c.has("moto") && !c.has("stick=hot") || r.asked != "stick" && !c.has("stick")) // of the flames
	case "smell=alcohol", "smell=sour":
		return c.has("mistook") && hasCode(found, "harm=swallowed") // "daru samajh ke"
	case "smell=rotten":
		return hasCode(found, "seen=smoke") // "jalne jaisi boo": the burning is what smells
	case "seen=sunk":
		return c.has("pointed") && hasCode(found, "harm=cut") // "kirchi jaangh me dhans gayi": into the leg
	case "bottle=burst":
		i := c.find("bottle=burst")
		if hasCode(found, "harm=eye") && r.says(c, "foam", "froth", "espuma", "mousse", "povu", "jhaag", "jhag", "झाग") {
			return true // "la mousse a sauté dans mon œil"
		}
		return i >= 0 && hasCode(found, "harm=cut") && (r.opened(c, i) || i > 0 && c.signs[i-1].sense == "body") // "the lid split his eyebrow"
	case "smell=earthy", "moisture=right", "seen=worms_well":
		if c.has("good") && slices.ContainsFunc(found, func(code string) bool { return inDim(code, "harm") && !(code == "harm=bite" && f.dim == "seen") }) {
			return true // "hapumui vizuri": of the breath
		}
	}
	if f.code == "moisture=wet" && hasCode(found, "harm=cut") && r.says(c, "blood", "damu", "sangre", "sang", "khoon", "khun", "खून", "ख़ून") {
		return true // "damu inatiririka"
	}
	if crawling(f.code) && hasCode(found, "harm=bite") && !c.has("heap", "bed", "worm", "compost", "layer") {
		return true // "चींटियों ने नोच खाया": a mere doer
	}
	return f.dim == "moisture" && (hasCode(found, "harm=breath") || hasCode(found, "harm=eye")) &&
		!c.has("squeeze", "damp", "heap", "inside", "bed") // "dust went into my eye" tells of the eye
}

// underWay is the deed told as in hand, with no time named for it: "turning it"; the one
// asked for where none is named, as in "half done".
func (r *reader) underWay(cs []clause, f *finding) string {
	if slices.ContainsFunc(cs, func(c clause) bool { return c.tomorrow || c.later || c.will || c.cond }) {
		return ""
	}
	for _, d := range f.deeds {
		if c := &cs[d.clause]; d.outcome == planned && c.signs[d.sign].tense&ongoing != 0 && !c.has("body") && !(c.has("foreign") && !c.has("compost", "heap", "worm", "bottle", "layer", "me")) {
			return cmp.Or(d.code, actOf(r.asked))
		}
	}
	if slices.ContainsFunc(cs, func(c clause) bool { return c.ask == telling && c.has("prog", "partly", "start") }) {
		return actOf(r.asked)
	}
	return ""
}

// putOff takes deeds in the present for planned whose clause is followed by the time they
// wait for: "la volteamos | cuando Pedro traiga el bieldo el jueves".
func (f *finding) putOff(cs []clause) {
	for i := range f.deeds {
		d := &f.deeds[i]
		if k := d.clause + 1; d.outcome == done && k < len(cs) && cs[k].later && cs[k].has("while") && cs[d.clause].signs[d.sign].tense&present != 0 {
			d.outcome = planned
		}
	}
}

// retold drops a deed that a later clause says was not done: in Hindi the tool and the work
// may be one word, "chhani tooti hai isliye nahi chhana"; and one only said to be, "I said we
// turned it but we only watered it".
func (f *finding) retold(cs []clause) {
	f.deeds = slices.DeleteFunc(f.deeds, func(d deed) bool {
		said := cs[d.clause].has("isaid") && cs[d.clause].end == "but"
		return d.outcome == done && d.code != "" && slices.ContainsFunc(f.deeds, func(e deed) bool {
			if said && e.outcome == done && e.clause == d.clause+1 {
				return true
			}
			return e.code == d.code && e.outcome == notDone && e.clause > d.clause && cs[e.clause].signs[e.sign].hindi()
		})
	})
}

// outdated makes a guess of what was, where a "but" follows and what is now was not
// understood: "it was hot on Monday, but ...".
func (f *finding) outdated(cs []clause) {
	f.facts = slices.DeleteFunc(f.facts, func(x fact) bool {
		next := x.clause + 1
		if !x.was || x.dim != "stick" && x.dim != "moisture" || next == len(cs) || cs[x.clause].end != "but" || cs[next].states > 0 || cs[next].hasDeed() || cs[next].foreign || cs[next].has("weather") {
			return false
		}
		f.guess = append(f.guess, x.code)
		return true
	})
}

// justWater says whether a clause names water and where it went, its verb left to the
// clause before.
func (c *clause) justWater() bool {
	return c.ask == telling && c.has("water") && c.onlyOf("water", "edge", "heap", "inside", "filler", "bit", "num", "one", "inside_of", "mine", "layer", "unit=bucket", "unit=tin", "unit=litre", "unit=basin")
}

// sameDim says whether two clauses give a value of the same thing: "wrote hot by
// mistake, it is cold".
func sameDim(a, b *clause) bool {
	for _, d := range [...]string{"stick", "moisture", "smell", "bottle"} {
		if a.hasDim(d) && b.hasDim(d) {
			return true
		}
	}
	return false
}

// faintly says whether a clause is nothing but "only a little", "not very".
func (c *clause) faintly() bool {
	faint, not, very := false, false, false
	for i := range c.signs {
		switch c.signs[i].sense {
		case "bit":
			faint = true
		case "not":
			not = true
		case "very", "too":
			very = true
		case "known":
			if t := c.signs[i].text; t != "mdogo" && t != "ndogo" && t != "dogo" {
				return false
			}
			faint = true
		case "filler", "only", "yes", "ok", "chat=thanks", "chat=hello":
		default:
			return false
		}
	}
	return faint || not && very
}

// forbids says whether a clause has the Hindi "not" of orders.
func (r *reader) forbids(c *clause) bool {
	for i := range c.signs {
		if s := &c.signs[i]; s.hindi() && r.names(s, "मत", "mat") {
			return true
		}
	}
	return false
}

// meansWhat says whether a clause asks what a word means.
func (r *reader) meansWhat(c *clause) bool {
	return r.says(c, meaningWords...)
}

var meaningWords = []string{"mean", "means", "meaning", "significa", "decir", "signifie", "dire", "matlab", "मतलब", "maana", "explain", "expliquez", "explique", "expliqueme"}

// onlyHalf says whether a clause is nothing but "only half".
func (c *clause) onlyHalf() bool {
	for i := range c.signs {
		if s := &c.signs[i]; !s.half() && s.sense != "filler" && s.sense != "only" && s.sense != "is" && s.sense != "notyet" && s.sense != "remain" {
			return false
		}
	}
	return len(c.signs) > 0 && c.halfway()
}

// loneLetter: "k", "x" say nothing (labelling rule).
func (r *reader) loneLetter() bool {
	return len(r.tokens) == 1 && r.tokens[0].kind == word && len(r.tokens[0].raw) == 1 && r.tokens[0].raw[0] < 0x80
}

func onlyNo(c *clause) bool {
	return len(c.signs) == 1 && (c.signs[0].sense == "no" || c.signs[0].sense == "not" || c.signs[0].sense == "nor")
}

// eitherOr: "hot or warm" leaves both open.
func (r *reader) eitherOr(c *clause, st []fact) bool {
	if !c.has("or") {
		return false
	}
	n := 0
	if c.has("seen=smoke", "seen=fire") {
		n++ // "steam or smoke": the danger counts, the steam does not
	}
	for i, f := range st {
		again := slices.ContainsFunc(st[:i], func(e fact) bool { return e.code == f.code }) // "stinks like a drain"
		if !again && f.code != notHot && f.code != notCold && f.code != notDry && f.code != notWet {
			n++
		}
	}
	return n > 1
}

// undoes finds the correction of an earlier message.
func (r *reader) undoes(cs []clause, f *finding, corrected map[int]bool) {
	for k := range cs {
		c := &cs[k]
		if c.has("isaid", "ask=undo") && c.ask == telling && !c.has("canq", "maybe") && !(c.has("drink", "eat") || c.hasHarm()) {
			f.undo = true // but not "he drank it by mistake"
		}
		if c.has("imeant") {
			earlier := false
			for _, x := range f.facts {
				earlier = earlier || x.clause < k
			}
			if !earlier {
				f.undo = true
			}
		}
	}
}

// fedUp: "enough with the texts", "nunca más me escriban", "never write to me again".
func (r *reader) fedUp(c *clause) bool {
	if k := c.find("stop"); k >= 0 && c.has("write", "message") && !c.has("not", "nothing", "water") && c.signs[k].tense&past == 0 {
		return true // "quit sending"
	}
	if c.has("message") && (c.has("fedup") || slices.ContainsFunc(c.signs, func(s sign) bool { return s.sense == "cut" && s.tense&order != 0 })) {
		return true // "nikatieni hizi sms"
	}
	if c.has("message") && (c.has("enough") && c.core() <= 4 || c.has("skip") && c.core() <= 3 && !c.has("today", "now")) {
		return true
	}
	if c.has("message") && slices.ContainsFunc(c.signs, func(s sign) bool {
		return (s.sense == "come" || s.sense == "bring") && s.tense&(past|present) == 0 && (s.neg || c.has("not", "nor"))
	}) {
		return true // "ab message na aaye", "msiniletee ujumbe"
	}
	if !c.has("write") || !c.has("not", "no", "nor") || c.has("officer", "person", "water", "nothing", "money") || c.hasDim("material") {
		return false
	}
	for at := range c.signs {
		s := &c.signs[at]
		if s.sense == "me" || s.sense == "message" || r.names(s, "me", "m", "nos", "us", "mas", "plus", "more", "again", "anymore", "ever", "jamais", "nunca") {
			return true
		}
	}
	return c.core() <= 3
}

// bareStop: the word alone, or with nothing but messages and manners about it.
func (r *reader) bareStop(c *clause, cs []clause) bool {
	if c.ask == telling && !c.cond && r.fedUp(c) {
		return true
	}
	if c.has("message") && c.has("want", "must") && c.has("not", "no") && (c.has("want") || c.signs[c.find("must")].hindi()) && c.ask == telling && !c.cond {
		return true // "do not want any more messages"
	}
	if k := c.find("want"); k >= 0 && c.has("message") && c.signs[k].tongue == fr && oneOf(r.word(c.signs[k].to), "plus", "pus", "pu") && r.word(c.signs[k].to+1) != "de" {
		return true // "je veux plus vos messages"
	}
	if no := max(c.find("not"), c.find("no")); no >= 0 && c.has("message") && !(&clause{signs: c.signs[no:]}).hasPast() && c.ask == telling && !c.cond &&
		(r.says(c, "mas", "more", "anymore", "tena", "recibir", "recevoir") || r.says(c, "plus") && r.says(c, "envoyer", "envoyez", "envoie", "ecrire")) {
		return true // "así que no manden más sms", "prefiero ya no recibir sus avisos"
	}
	if c.has("message") && c.has("do", "write", "give", "say") && c.ask == telling && !c.cond && r.forbids(c) {
		return true // "koi sms mat karna"
	}
	if !c.has("stop") || c.has("today", "tomorrow", "later", "now") || c.cond || c.ask == askModal {
		return false
	}
	if c.has("message") {
		for i := range c.signs {
			if s := &c.signs[i]; s.tongue == fr && s.sense == "stop" && s.to == s.from+1 && !slices.ContainsFunc(c.signs[:i], func(o sign) bool { return o.sense != "filler" }) {
				break // "arreté les messages": an order, as it is said
			}
			if c.signs[i].sense == "stop" && c.signs[i].tense&past != 0 && !c.has("must", "want") {
				return false
			}
		}
		return true
	}
	for i := range c.signs {
		s := &c.signs[i]
		switch s.sense {
		case "stop":
			if s.tense&past != 0 {
				return false
			}
		case "filler", "me", "chat=hello", "chat=thanks", "yes", "ok", "no", "want", "not", "very":
		default:
			return false
		}
	}
	return len(cs) <= 2 || slices.ContainsFunc(cs, func(o clause) bool { return o.has("message") }) // "raat ko msg, neend udi, rokiye"
}
