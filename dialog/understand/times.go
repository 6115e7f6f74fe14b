package understand

import (
	"slices"
	"strings"
)

// times reads when= out of clauses in which nothing was done.
func (r *reader) times(cs []clause, f *finding) {
	tale := len(cs) > 2 && (len(f.facts) > 0 || len(f.haves) > 0 || len(f.danger) > 0 || f.tells(done) || f.tells(notDone))
	for k := range cs {
		c := &cs[k]
		meant := false // a deed to come is spoken of, or nothing but the time
		when := func(w string) {
			if tale && !meant && (w == "later" || w == "skip" && c.core() > 1) {
				return // "it began at six", "my uncle is away": the side of a story puts nothing off
			}
			// "skip it, I won't turn this week" puts nothing off
			if f.when == "" || w == "tomorrow" || w == "skip" && f.when == "later" && c.has("skip") && c.hasDim("did") || w == "skip" && f.when == "later" && k > 0 && cs[k-1].has("not") && cs[k-1].hasDim("did") || f.when == "skip" && !c.has("skip", "not") ||
				w == "skip" && c.onlyOf("skip", "filler", "now") && k > 0 && cs[k-1].has("busy") { // "tired. skip it"
				f.when = w
			}
		}
		if c.ask != telling || c.foreign || c.has("ask=status", "ask=next", "ask=help", "ask=officer") {
			continue
		}
		looking := false
		for at := range c.signs {
			s := &c.signs[at]
			looks := s.sense == "look" || (s.sense == "takeout" || s.sense == "hold") && r.asked == "stick" || s.sense == "squeeze" && r.asked == "moisture"
			if !looks || s.neg || c.has("not") || c.hasBeast() {
				continue // "rehne do nahi dekhunga"; the monkeys looked on
			}
			looking = looking || s.tense&ongoing != 0 && !c.hasQuality() && !c.has("was", "past") || (s.tense&future != 0 || s.tense&(bare|present|order) != 0 && (c.will || c.later || c.tomorrow || c.has("now", "after") && !c.hasQuality()))
		}
		acted, plan, refusal, wish := c.has("done") && !r.awaits(c) && !c.has("partly") && !(c.has("only") && c.has("edge")) && !c.has("start") && !c.has("not", "will", "tomorrow"), false, false, false
		for n := range f.deeds {
			d := &f.deeds[n]
			if d.clause != k {
				continue
			}
			switch d.outcome {
			case done:
				acted = true
			case planned:
				if (r.asked == "none" && d.code != "" || d.code == "" && tale) && c.hasDim("crop") && !c.has("heap", "worm", "compost") {
					break // "tunachuma maharage": picking beans
				}
				if d.code == "" && cs[k].states > 0 && cs[k].signs[d.sign].tense&ongoing != 0 {
					break // "they are doing well"
				}
				plan = true
			case refused:
				refusal = true
			case wished:
				wish = true
			}
		}
		plan = plan || looking
		meant = plan || refusal || c.notToday() || c.will || onlyTime(c) && k == len(cs)-1 || c.cant && c.has("today", "now", "later")
		stated := c.states > 0
		for n := range f.facts {
			stated = stated || f.facts[n].clause == k
		}
		odd := 0
		for n, s := range c.signs {
			if n > 0 && c.signs[n-1].sense == "later" && opens(c.signs[n-1].text) {
				break // "when I get to the house", "let me finish my tea", "nikifika nyumbani"
			}
			if n > 0 && (s.sense == "after" || s.sense == "before") && (c.later || c.tomorrow) {
				break // "sunday after church", "tomorrow before school"
			}
			if n > 0 && s.sense == "while" && (c.tomorrow || c.signs[n-1].sense == "later" && !c.hasPast()) {
				break // "tomorrow when there is light", "next week when the workers come"
			}
			if s.sense == "person" && n > 0 && oneOf(r.word(c.signs[n-1].from), "with", "avec", "con") || s.sense == "person" && n > 1 && oneOf(r.word(c.signs[n-2].from), "with", "avec", "con") {
				continue // "demain avec mes garçons"
			}
			switch s.sense {
			case "", "known", "stinger", "pointed", "foreign", "money", "weather", "animal", "person", "ask=officer":
				if s.sense != "" || r.tokens[s.from].kind == word {
					odd++
				}
			default:
				if inDim(s.sense, "animal") || inDim(s.sense, "crop") {
					odd++
				}
			}
		}
		switch {
		case actOf(r.asked) != "" && c.wont() && !acted && !stated:
			when("skip") // "not going to", "won't"
		case c.has("start") && !(c.core() == 1 && len(cs) == 1 && r.asked == "menu") && !c.has("not", "yes") && !sentenceAsks(cs, k) && !acted && !f.tells(done) && !c.hasDeed() && !stated && odd == 0:
			if c.tomorrow {
				when("tomorrow")
				break
			}
			when("later") // begun, not ended
		case acted || c.doubt || c.hasStopped():
		case c.has("only") && c.has("edge") && c.has("done", "do", "finish") && actOf(r.asked) != "":
			when("later") // "we have only done one side"
		case c.has("stop") && c.has("partly", "inside", "num") && !stated && actOf(r.asked) != "":
			when("later") // "stopped midway"
		case c.has("only") && c.halfway() && c.core() <= 3 && !stated && actOf(r.asked) != "":
			when("later") // "only half"
		case c.has("prog", "partly") && !plan && !stated && odd == 0 && !c.has("good", "fine", "alive") && !(c.has("dayword") && c.has("num")):
			when("later")
		case plan && c.skips() && actOf(r.asked) != "":
			when("skip") // "this time I will skip the turning"
		case plan && c.signs[0].sense == "skip" && actOf(r.asked) != "":
			when("skip") // "rehne do is baar nahi paltunga"
		case plan && c.tomorrow:
			when("tomorrow")
		case plan:
			w := "later"
			if k+1 < len(cs) && cs[k+1].tomorrow && onlyTime(&cs[k+1]) || k > 0 && cs[k-1].tomorrow && onlyTime(&cs[k-1]) {
				w = "tomorrow"
			}
			when(w)
		case c.has("skip") && c.later && r.says(c, "pal", "para", "pour") && !stated:
			when("later") // "lo dejo pal otro sábado"
		case c.has("skip") && c.tomorrow && !c.has("not") && !stated:
			when("tomorrow") // "mañana lo paso"
		case refusal || c.has("skip") && !c.has("not") && !stated && (odd == 0 || odd == 1 && actOf(r.asked) != "" && c.core() <= 4):
			when("skip")
		case c.has("busy") && k > 0 && cs[k-1].has("couldnt") && r.says(c, "sick", "ill", "unwell", "malade", "enfermo", "enferma", "mgonjwa", "bimar", "बीमार"): // why it was not done
		case c.has("busy") && slices.ContainsFunc(cs, func(x clause) bool { return x.has("worm") && x.has("nothing") }): // why the worms got nothing
		case c.has("busy") && (r.asked == "none" || r.asked == "menu") && (c.hasDim("crop") || c.has("person") && !c.has("while")): // "we are planting maize", to nobody's question
		case c.has("busy") && !(c.find("busy") > 0 && c.signs[c.find("busy")-1].sense == "not") && !f.tells(done) && !slices.ContainsFunc(cs, func(x clause) bool { return x.has("forgot") && !x.has("busy") }) && !(f.tells(notDone) && r.didNot(&cs[0])) && !c.has("while", "was", "before", "didaux", "forgot", "couldnt") && (!c.has("foreign") || c.later) && !c.has("money") && (!c.has("person", "animal") || c.has("me")) && !c.hasDim("animal"):
			if c.tomorrow {
				when("tomorrow")
			} else if f.when != "skip" { // "I won't, too tired"
				when("later")
			}
		case c.notToday() && actOf(r.asked) != "" && !f.tells(notDone):
			when("later") // "pas aujourd'hui, il pleut trop"
		case stated || wish:
		case c.cant && !c.tomorrow && (c.has("today", "now", "later") || k > 0 && cs[k-1].has("today") && cs[k-1].states == 0 && !cs[k-1].hasAct()):
			when("later")
		case c.has("after", "while") && c.weathered():
			when("later") // "when it stops raining"
		case c.cond && c.tomorrow && (c.has("weather", "rainword") || c.will && actOf(r.asked) != "" && c.end != "?") && odd <= 1:
			when("tomorrow") // "बारिश न हुई तो कल"
		case (c.will || c.othersTurn()) && (c.later || c.tomorrow) && odd <= 2 && r.asked != "none" && r.asked != "menu" && !c.has("foreign", "money", "weather", "animal", "person"):
			when(map[bool]string{true: "tomorrow", false: "later"}[c.tomorrow]) // "will go at dusk"
		case actOf(r.asked) != "" && (r.timeIf(c) && odd <= 3 && c.end != "?" || !c.cond && c.makesUp()):
			when(map[bool]string{true: "tomorrow", false: "later"}[c.tomorrow])
		case c.untilThen() && actOf(r.asked) != "":
			when("later")
		case len(cs) == 1 && actOf(r.asked) != "" && r.awaits(c):
			when("later") // "once the kids are back from school"
		case odd > 0 || c.cond:
		case c.has("today") && c.has("not", "no") && !f.tells(notDone) && !c.hasQuality() && !r.didNot(c) && !c.has("was"):
			when("later")
		case c.tomorrow:
			when("tomorrow")
		case len(cs) == 1 && c.core() == 1 && actOf(r.asked) != "" && (c.has("after") || c.has("earlier") && r.tokens[c.signs[0].from].text == "tout"):
			when("later") // "après", "tout à l'heure"
		case len(cs) == 1 && c.core() == 2 && c.has("hour") && c.has("num") && c.signs[0].tongue == sw && actOf(r.asked) != "":
			when("later") // "saa kumi"
		case c.later, c.has("late"), c.will && len(c.signs) <= 4:
			if !c.has("past", "was", "earlier") && !(c.has("have") && c.has("nothing")) {
				when("later")
			}
		case c.has("stop", "enough") && c.has("today"):
			when("later")
		}
	}
}

// hasStopped says whether a clause tells what is done no longer: "dejé de regar el lunes".
func (c *clause) hasStopped() bool {
	k := c.find("stop")
	return k >= 0 && c.signs[k].tense&past != 0 && c.has("did=watered", "did=turned", "did=fed", "did=shook", "did=covered", "did=sieved")
}

// notToday says whether a clause begins with "not today", whatever the reason that follows.
func (c *clause) notToday() bool {
	if c.ask != telling || len(c.signs) < 2 {
		return false
	}
	first := &c.signs[0]
	return (first.sense == "not" && c.signs[1].sense == "today" || first.sense == "later" && first.text == "not") && !c.hasQuality() && !c.has("was")
}

// skips says whether a clause leaves an act out: the act follows the word.
func (c *clause) skips() bool {
	k := c.find("skip")
	if k < 0 || c.has("not") || c.signs[k].hindi() {
		return false
	}
	for _, s := range c.signs[k+1:] {
		if s.sense != "filler" {
			return inDim(s.sense, "did")
		}
	}
	return false
}

// opens says whether a word for a time to come goes on with what must happen first.
func opens(word string) bool {
	switch word {
	case "when", "wen", "as", "cuando", "quand", "after", "despues", "apres", "once", "des", "let", "deje", "dejeme", "espero", "esperando", "waiting":
		return true
	}
	return strings.HasPrefix(word, "niki") || strings.HasPrefix(word, "tuki")
}

// untilThen: "ikikauka", "quand ce sera sec": when it is dry, and no more said.
func (c *clause) untilThen() bool {
	if !c.cond || c.ask != telling {
		return false
	}
	s := &c.signs[0]
	return s.tongue == fr && s.sense == "while" ||
		s.tongue == sw && s.tense&unless != 0 && c.core() == 1 && c.end == "" && (strings.HasPrefix(s.text, "iki") || strings.HasPrefix(s.text, "liki"))
}

// awaits says whether a clause tells nothing but what is to come first: "once the market
// is over", "cuando se llene el pozo", "watoto wakitoka shule".
func (r *reader) awaits(c *clause) bool {
	if c.ask != telling || c.doubt || c.core() < 2 || c.has("was", "past", "didaux", "whenq", "ready", "not", "will", "want", "money", "hold", "squeeze", "look") || c.hasDim("did") {
		return false
	}
	first, last := c.signs[0].from, &c.signs[len(c.signs)-1]
	switch c.signs[0].tongue {
	case sw:
		return slices.ContainsFunc(c.signs, func(s sign) bool { return s.tense&unless != 0 && !s.neg })
	case hi, hiLatn:
		return last.sense == "after" || oneOf(last.text, "तब", "tab")
	}
	joins := r.soonAs(first) || oneOf(r.word(first), "when", "once", "after", "until", "till", "cuando", "quand", "lorsque", "lorsqu") ||
		oneOf(r.word(first)+" "+r.word(first+1), "as soon", "hasta que", "une fois", "jusqu a", "aussitot que")
	return joins && !c.hasPast() && !(r.word(first) == "once" && c.onlyOf("filler", "one", "num", "dayword", "times", "known"))
}

// soonAs says whether "en cuanto", "dès que" stands at a token.
func (r *reader) soonAs(at int) bool {
	return oneOf(r.word(at)+" "+r.word(at+1), "des que", "des qu", "en cuanto", "tan pronto")
}

// timeIf: a time and what it hangs on, the deed left unsaid: "tomorrow if it is dry".
func (r *reader) timeIf(c *clause) bool {
	if !c.cond || !c.tomorrow && !c.later || c.has("whatif") {
		return false
	}
	timed := false
	for i := range c.signs {
		switch c.signs[i].sense {
		case "tomorrow", "later":
			timed = true
		case "if", "si":
			return timed
		case "filler", "yes", "me", "ok":
		default:
			return timed && c.signs[i].tense&unless != 0 // "kesho nikipata majani"
		}
	}
	return false
}

// wont: a bare refusal, the deed left unsaid.
func (c *clause) wont() bool {
	refused := false
	for i := range c.signs {
		switch s := &c.signs[i]; s.sense {
		case "will":
			refused = refused || s.neg || c.has("not")
		case "not":
			refused = refused || s.text == "wont"
		case "filler", "me", "no", "chat=thanks", "chat=hello":
		default:
			return false
		}
	}
	return refused
}

func onlyTime(c *clause) bool {
	for at := range c.signs {
		s := &c.signs[at]
		switch s.sense {
		case "tomorrow", "later", "filler", "night", "soft":
		default:
			if !inDim(s.sense, "part") && !inDim(s.sense, "day") {
				return false
			}
		}
	}
	return true
}

// weathered says whether a clause speaks of nothing but weather that is to pass.
func (c *clause) weathered() bool {
	weather := false
	for at := range c.signs {
		s := &c.signs[at]
		switch s.sense {
		case "weather", "rainword":
			weather = true
		case "after", "while", "filler", "stop", "finish", "later", "now", "already", "not", "one", "is", "dayword", "me", "will":
		default:
			return false
		}
	}
	return weather
}

// tells says whether anything in the message stands as o: done, not done, in doubt.
func (f *finding) tells(o outcome) bool {
	return slices.ContainsFunc(f.deeds, func(d deed) bool { return d.outcome == o && d.code != "" })
}

// makesUp says whether a clause that tells of a deed left undone ends with the day it will be done,
// without a mark between the two: "pas encore je le fais demain avec le tamis", "se me olvidó por
// andar en el pueblo mañana sin falta".
func (c *clause) makesUp() bool {
	undone := slices.IndexFunc(c.signs, func(s sign) bool {
		return oneOf(s.sense, "forgot", "notyet") && s.tongue != hi && s.tongue != hiLatn || inDim(s.sense, "did") && s.neg && s.tense&(past|yet) != 0
	})
	if undone < 0 {
		return false
	}
	for k := undone + 1; k < len(c.signs); k++ {
		s, last := &c.signs[k], &c.signs[k-1]
		if s.sense == "tomorrow" || s.sense == "later" && last.sense == "do" && last.tense&(present|future|bare) != 0 {
			return true
		}
	}
	return false
}
