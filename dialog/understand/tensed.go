package understand

import "slices"

// byTense says how an act stands by the tense of its verb and the words that carry one: will,
// want, finish, begin.
func (d *mention) byTense() outcome {
	c, s := d.c, d.s
	switch {
	case d.form&unless != 0:
		return nothing
	case d.form&yet != 0:
		return notDone
	case d.form&future != 0, c.will && d.form&(bare|order|present) != 0:
		return d.toCome()
	case c.want:
		if c.has("not") {
			return refused
		}
		return wished
	case d.before("after"), d.before("helped") && d.form&(bare|order) != 0 && !d.neg,
		s.tongue == sw && d.form&bare != 0 && d.before("done") && !d.neg && !c.has("not", "notyet"): // "tumemaliza kuligeuza"
		return done
	case d.before("finish"), d.next == "finish":
		if d.neg || c.has("not") {
			return notDone
		}
		return done
	case d.before("start"), d.next == "start" && s.hindi():
		if d.form&order != 0 && d.form&past == 0 {
			return wished // "haan chalu karo"
		}
		return planned
	case d.form&ongoing != 0:
		return d.goingOn()
	case d.form&(past|participle) != 0:
		return d.goneBy()
	case d.form&(bare|order|present) != 0:
		return d.named()
	case d.form&imperfect != 0 && d.neg:
		return notDone
	}
	return wished
}

// toCome: "will turn".
func (d *mention) toCome() outcome {
	c := d.c
	if d.neg || c.has("not") && d.before("will", "not") || willDenied(c) {
		if c.has("today", "now") || c.tomorrow || c.later {
			return planned
		}
		return refused
	}
	return planned
}

// goingOn: "turning".
func (d *mention) goingOn() outcome {
	c, s := d.c, d.s
	switch {
	case c.has("finish", "done") && !d.neg && s.tongue == en && !c.has("not", "notyet", "will", "partly"):
		return done // "sieving is finished"
	case c.has("didaux") && !d.neg && (s.tongue == en || s.tongue == es):
		return done // "did the turning", "anduvimos juntando"
	case d.before("stop") || d.next == "stop" || c.has("stop"):
		return nothing
	case c.hasHarm(), s.tongue == es && c.meanwhile(d.i), c.has("was") && c.states > 0:
		return nothing // "I was shaking it, it burst"
	case d.neg:
		return notDone
	case d.next == "done" || d.before("done"):
		return done
	}
	return planned
}

// goneBy: "turned", and the Spanish and French forms that an accent left out makes one with it.
func (d *mention) goneBy() outcome {
	c, s := d.c, d.s
	if c.tomorrow && !c.has("past", "already", "didaux", "have") && s.tongue != sw {
		return planned
	}
	if d.form&present != 0 && (c.tomorrow || c.later) && !c.has("past", "already") && !(d.last == past && s.tongue == es && !c.tomorrow && d.says(c, "despues", "luego")) {
		return planned // but not "pusimos la capa, después la regamos"
	}
	if d.neg {
		return notDone
	}
	if d.form&present != 0 && s.tongue == fr && (c.has("now") || c.later || c.afterwards(d.i)) && !c.has("already", "didaux", "have", "past") {
		return planned // "je leur donne maintenant"
	}
	if d.form&(present|order) != 0 && d.form&bare == 0 && !c.has("already", "didaux", "have", "past", "person", "neighbor", "yes") && s.tongue == fr && !(d.several && s.sense == actOf(d.asked) && !c.has("me")) {
		return wished // "retourne" may be "retourné" without its accent
	}
	if d.form&present != 0 && s.tongue == es && s.endsInO() && (c.afterwards(d.i) || c.has("now") && !c.has("already", "didaux", "have", "past", "person", "neighbor")) {
		return planned // "ahorita lo volteo"
	}
	if d.form&present != 0 && s.tongue == es && s.endsInO() && !c.has("already", "didaux", "past", "person", "neighbor") {
		return wished
	}
	return done
}

// named: "turn", in a form that tells no time; the words about it do.
func (d *mention) named() outcome {
	c, s := d.c, d.s
	switch {
	case s.tongue == en && d.form&bare != 0 && slices.ContainsFunc(c.signs[:d.i], func(u sign) bool { return u.sense == "give" && u.tense&past != 0 }) && !d.neg && !c.has("not"):
		return done // "gave the bottle a strong shake"
	case s.tongue == en && d.form&bare != 0 && d.word(s.from-1) == "to" && slices.ContainsFunc(c.signs[:d.i], func(u sign) bool { return u.sense == "use" && u.tense&past != 0 }):
		return done // "used a tray to sieve it"
	case s.tongue == fr && d.form&bare != 0 && d.i == len(c.signs)-1 && d.i > 0 && c.core() == 2 && oneOf(c.signs[d.i-1].sense, "layer", "heap", "bottle", "compost") && actOf(d.asked) != "":
		return done // "couche poser" for "couche posée"
	case c.has("didaux"), s.tongue == fr && d.i > 0 && c.signs[d.i-1].sense == "have" && d.form&bare != 0: // "on a retourner"
		if d.neg {
			return notDone
		}
		return done
	case c.has("prog", "partly"):
		return planned
	case d.form&bare != 0 && s.tongue == sw && d.last != 0 && !d.neg:
		if d.last == past {
			return done
		}
		return planned
	case c.tomorrow || c.later, d.form&present != 0 && c.afterwards(d.i):
		return planned
	case d.neg && d.form&present != 0 && s.real:
		return refused
	case d.neg && d.form&present != 0 && d.form&past == 0 && (s.tongue == fr || s.tongue == es) && d.asked != "none":
		return refused // "je ne le fais pas"
	case d.neg && d.form&(bare|present) != 0:
		if act := actOf(d.asked); act != "" && d.form&bare != 0 {
			return notDone
		}
		return wished
	case c.has("already", "past") && d.form&order == 0:
		return done
	case c.has("done") && d.form&bare != 0:
		return done
	case d.form&present != 0 && c.has("now"):
		return planned
	}
	return wished
}
