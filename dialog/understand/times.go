package understand

import (
	"slices"
	"strings"
)

// ends says whether the last sign of a clause has a sense.
func (c *clause) ends(sense string) bool {
	return len(c.signs) > 0 && c.signs[len(c.signs)-1].sense == sense
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
	case "when", "wen", "as", "pasando", "cuando", "quand", "after", "despues", "apres", "once", "des", "let", "deje", "dejeme", "espero", "esperando", "waiting":
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
	joins := r.soonAs(first) || oneOf(r.word(first), "when", "once", "after", "until", "till", "cuando", "quand", "lorsque", "lorsqu", "apres", "despues") ||
		oneOf(r.word(first)+" "+r.word(first+1), "as soon", "hasta que", "une fois", "jusqu a", "aussitot que")
	return joins && !c.hasPast() && !(r.word(first) == "once" && c.onlyOf("filler", "one", "num", "dayword", "times", "known"))
}

// willWhen: English "I will" before or after what it waits for, the deed left unsaid.
func (r *reader) willWhen(c *clause) bool {
	n := len(c.signs)
	if c.ask != telling || n < 3 || c.hasAct() || c.hasQuality() {
		return false
	}
	s, when := &c.signs[n-1], &c.signs[0]
	if s.sense != "will" {
		s, when = &c.signs[0], &c.signs[1]
	}
	return s.sense == "will" && !s.neg && s.tongue == en && when.sense == "while"
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
