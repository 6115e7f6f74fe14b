package understand

import (
	"slices"
	"strings"
)

// times reads when= out of clauses in which nothing was done.
func (r *reader) times(cs []clause, f *finding) {
	d := delay{r: r, cs: cs, f: f, tale: len(cs) > 2 && (len(f.facts) > 0 || len(f.haves) > 0 || len(f.danger) > 0 || f.tells(done) || f.tells(notDone))}
	for k := range cs {
		c := &cs[k]
		if c.ask != telling || c.foreign || c.has("ask=status", "ask=next", "ask=help", "ask=officer") {
			continue
		}
		o := d.outlook(k)
		if when := d.until(k, &o); when != "" {
			d.put(k, &o, when)
		}
	}
}

// delay reads what a message puts off, clause by clause.
type delay struct {
	r    *reader
	cs   []clause
	f    *finding
	tale bool // a story: the side of it puts nothing off
}

// outlook is what a clause tells of deeds done and to come.
type outlook struct {
	acted, plan, refusal, wish, stated bool
	odd                                int // signs of other things than the heap
}

// put notes when a deed will be done, unless an earlier clause has said it better.
func (d *delay) put(k int, o *outlook, when string) {
	c, f := &d.cs[k], d.f
	meant := o.plan || o.refusal || c.notToday() || c.will || onlyTime(c) && (k == 0 || k == len(d.cs)-1) || c.cant && c.has("today", "now", "later") // a deed to come is spoken of, or nothing but the time
	if d.tale && !meant && (when == "later" || when == "skip" && c.core() > 1) {
		return // "it began at six", "my uncle is away"
	}
	// "skip it, I won't turn this week" puts nothing off
	if f.when == "" || when == "tomorrow" || when == "skip" && f.when == "later" && c.has("skip") && c.hasDim("did") || when == "skip" && f.when == "later" && k > 0 && d.cs[k-1].has("not") && d.cs[k-1].hasDim("did") || f.when == "skip" && !c.has("skip", "not") ||
		when == "skip" && c.onlyOf("skip", "filler", "now") && k > 0 && d.cs[k-1].has("busy") { // "tired. skip it"
		f.when = when
	}
}

// outlook gathers what clause k tells of deeds.
func (d *delay) outlook(k int) (o outlook) {
	c, f, r := &d.cs[k], d.f, d.r
	o.acted = c.has("done") && !r.awaits(c) && !c.has("partly") && !(c.has("only") && c.has("edge")) && !c.has("start") && !c.has("not", "will", "tomorrow")
	for n := range f.deeds {
		x := &f.deeds[n]
		if x.clause != k {
			continue
		}
		switch x.outcome {
		case done:
			o.acted = true
		case planned:
			if (r.asked == "none" && x.code != "" || x.code == "" && d.tale) && c.hasDim("crop") && !c.has("heap", "worm", "compost") {
				break // "tunachuma maharage": picking beans
			}
			if x.code == "" && c.states > 0 && c.signs[x.sign].tense&ongoing != 0 {
				break // "they are doing well"
			}
			o.plan = true
		case refused:
			o.refusal = true
		case wished:
			o.wish = true
		}
	}
	o.plan = o.plan || r.willLook(c)
	o.stated = c.states > 0
	for n := range f.facts {
		o.stated = o.stated || f.facts[n].clause == k
	}
	o.odd = r.elsewhere(c)
	return o
}

// willLook says whether a clause puts off the looking that is asked for: pulling the stick,
// squeezing a handful.
func (r *reader) willLook(c *clause) bool {
	for at := range c.signs {
		s := &c.signs[at]
		looks := s.sense == "look" || (s.sense == "takeout" || s.sense == "hold") && r.asked == "stick" || s.sense == "squeeze" && r.asked == "moisture"
		if !looks || s.neg || c.has("not") || c.hasBeast() {
			continue // "rehne do nahi dekhunga"; the monkeys looked on
		}
		if s.tense&ongoing != 0 && !c.hasQuality() && !c.has("was", "past") || s.tense&future != 0 || s.tense&(bare|present|order) != 0 && (c.will || c.later || c.tomorrow || c.has("now", "after") && !c.hasQuality()) {
			return true
		}
	}
	return false
}

// elsewhere counts the signs of a clause that speak of other things, up to what only says until
// when.
func (r *reader) elsewhere(c *clause) (odd int) {
	for n := range c.signs {
		s := &c.signs[n]
		if n > 0 && c.signs[n-1].sense == "later" && opens(c.signs[n-1].text) {
			break // "when I get to the house", "let me finish my tea", "nikifika nyumbani"
		}
		if n > 0 && c.signs[n-1].sense == "later" && oneOf(r.word(c.signs[n-1].to-1), "viene", "vengan", "vienen") {
			break // "el otro sábado que viene mi hijo"
		}
		if n > 0 && (s.sense == "after" || s.sense == "before") && (c.later || c.tomorrow) {
			break // "sunday after church", "tomorrow before school"
		}
		if n > 0 && s.sense == "while" && (c.tomorrow || c.signs[n-1].sense == "later" && !c.hasPast()) {
			break // "tomorrow when there is light", "next week when the workers come"
		}
		switch s.sense {
		case "person":
			if n > 0 && oneOf(r.word(c.signs[n-1].from), "with", "avec", "con") || n > 1 && oneOf(r.word(c.signs[n-2].from), "with", "avec", "con") {
				continue // "demain avec mes garçons"
			}
			odd++
		case "known", "stinger", "pointed", "foreign", "money", "weather", "animal", "ask=officer":
			odd++
		case "":
			if r.tokens[s.from].kind == word {
				odd++
			}
		default:
			if inDim(s.sense, "animal") || inDim(s.sense, "crop") {
				odd++
			}
		}
	}
	return odd
}

// dayNamed is tomorrow where a clause names it, else later.
func (c *clause) dayNamed() string {
	if c.tomorrow {
		return "tomorrow"
	}
	return "later"
}

// until gives when= of clause k, "" for none.
func (d *delay) until(k int, o *outlook) string {
	c, r, f := &d.cs[k], d.r, d.f
	job := actOf(r.asked) != "" // the open question is about a deed
	switch {
	case job && c.wont() && !o.acted && !o.stated:
		return "skip" // "not going to", "won't"
	case c.has("start") && !(c.core() == 1 && len(d.cs) == 1 && r.asked == "menu") && !c.has("not", "yes") && !sentenceAsks(d.cs, k) && !o.acted && !f.tells(done) && !c.hasDeed() && !o.stated && o.odd == 0:
		return c.dayNamed() // begun, not ended
	case o.acted || c.doubt || c.hasStopped():
	case c.has("only") && c.has("edge") && c.has("done", "do", "finish") && job:
		return "later" // "we have only done one side"
	case c.has("stop") && c.has("partly", "inside", "num") && !o.stated && job:
		return "later" // "stopped midway"
	case c.has("only") && c.halfway() && c.core() <= 3 && !o.stated && job:
		return "later" // "only half"
	case c.has("prog", "partly") && !o.plan && !o.stated && o.odd == 0 && !c.has("good", "fine", "alive") && !(c.has("dayword") && c.has("num")):
		return "later"
	case o.plan && c.skips() && job:
		return "skip" // "this time I will skip the turning"
	case o.plan && c.signs[0].sense == "skip" && job:
		return "skip" // "rehne do is baar nahi paltunga"
	case o.plan:
		if k+1 < len(d.cs) && d.cs[k+1].tomorrow && onlyTime(&d.cs[k+1]) || k > 0 && d.cs[k-1].tomorrow && onlyTime(&d.cs[k-1]) {
			return "tomorrow"
		}
		return c.dayNamed()
	case c.has("skip") && c.later && r.says(c, "pal", "para", "pour") && !o.stated:
		return "later" // "lo dejo pal otro sábado"
	case c.has("skip") && c.tomorrow && !c.has("not") && !o.stated:
		return "tomorrow" // "mañana lo paso"
	case o.refusal || c.has("skip") && !c.has("not") && !o.stated && (o.odd == 0 || o.odd == 1 && job && c.core() <= 4):
		return "skip"
	case c.has("busy") && k > 0 && d.cs[k-1].has("couldnt") && r.says(c, "tired", "cansado", "cansada", "fatigue", "fatiguee", "nimechoka", "thak", "thaka", "थक", "थका", "sick", "ill", "unwell", "malade", "enfermo", "enferma", "mgonjwa", "bimar", "बीमार"): // why it was not done
	case c.has("busy") && k > 0 && d.cs[k-1].doubt && d.cs[k-1].hasAct(): // "ma femme l'a ptet fait, je suis en ville"
	case c.has("busy") && slices.ContainsFunc(d.cs, func(x clause) bool { return x.has("worm") && x.has("nothing") }): // why the worms got nothing
	case c.has("busy") && (r.asked == "none" || r.asked == "menu") && (c.hasDim("crop") || c.has("person") && !c.has("while")): // "we are planting maize", to nobody's question
	case c.has("busy") && !(c.find("busy") > 0 && c.signs[c.find("busy")-1].sense == "not") && !f.tells(done) && !slices.ContainsFunc(d.cs, func(x clause) bool { return x.has("forgot") && !x.has("busy") }) && !(f.tells(notDone) && r.didNot(&d.cs[0])) && !c.has("while", "was", "before", "didaux", "forgot", "couldnt") && (!c.has("foreign") || c.later) && !c.has("money") && (!c.has("person", "animal") || c.has("me") || c.signs[0].sense == "busy") && !c.hasDim("animal"):
		if c.tomorrow || f.when != "skip" { // "I won't, too tired"
			return c.dayNamed()
		}
	case c.notToday() && job && !f.tells(notDone):
		return "later" // "pas aujourd'hui, il pleut trop"
	case o.stated || o.wish:
	case c.cant && !c.tomorrow && (c.has("today", "now", "later") || k > 0 && d.cs[k-1].has("today") && d.cs[k-1].states == 0 && !d.cs[k-1].hasAct()):
		return "later"
	case c.has("after", "while") && c.weathered():
		return "later" // "when it stops raining"
	case c.cond && c.tomorrow && (c.has("weather", "rainword") || c.will && job && c.end != "?") && o.odd <= 1:
		return "tomorrow" // "बारिश न हुई तो कल"
	case (c.will || c.othersTurn()) && (c.later || c.tomorrow) && o.odd <= 2 && r.asked != "none" && r.asked != "menu" && !c.has("foreign", "money", "weather", "animal", "person"):
		return c.dayNamed() // "will go at dusk"
	case job && (r.timeIf(c) && o.odd <= 3 && c.end != "?" || !c.cond && c.makesUp()):
		return c.dayNamed()
	case c.untilThen() && job:
		return "later"
	case job && r.willWhen(c):
		return "later" // "when the kids are home I will"
	case len(d.cs) == 1 && job && r.awaits(c):
		return "later" // "once the kids are back from school"
	case job && oneOf(c.signs[0].text, "jab", "जब") && act(c.signs[len(c.signs)-1].sense) && c.signs[len(c.signs)-1].tense&future != 0:
		return "later" // "jab trali aayegi tab lagaunga"
	case job && c.later && o.odd <= 3 && c.ends("later") && r.says(c, "बाद", "baad"):
		return "later" // "छलनी का जाल टूटा है, बाद में"
	case o.odd > 0 || c.cond:
	case c.has("today") && c.has("not", "no") && !f.tells(notDone) && !c.hasQuality() && !r.didNot(c) && !c.has("was"):
		return "later"
	case c.tomorrow:
		return "tomorrow"
	case len(d.cs) == 1 && c.core() == 1 && job && (c.has("after") || c.has("earlier") && r.tokens[c.signs[0].from].text == "tout"):
		return "later" // "après", "tout à l'heure"
	case len(d.cs) == 1 && c.core() == 2 && c.has("hour") && c.has("num") && c.signs[0].tongue == sw && job:
		return "later" // "saa kumi"
	case c.later && strings.HasPrefix(c.signs[0].text, "niki") && k+1 < len(d.cs) && d.cs[k+1].states > 0: // "nikisogea karibu, kuna harufu": whenever
	case c.later, c.has("late"), c.will && len(c.signs) <= 4:
		if !c.has("past", "was", "earlier") && !c.freed() && !(c.has("have") && c.has("nothing")) {
			return "later"
		}
	case c.has("stop", "enough") && c.has("today"):
		return "later"
	}
	return ""
}
