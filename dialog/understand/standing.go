package understand

import (
	"slices"
	"strings"
)

// standing says whether the act of sign i is done, denied, planned, wished or asked.
func (r *reader) standing(c *clause, i int, last tense) outcome {
	s := &c.signs[i]
	t := s.tense
	switch c.ask {
	case askWhy, askWh, askModal:
		return nothing
	case askMark, askTag:
		if t&future != 0 || c.tomorrow {
			return nothing
		}
		return doubtful
	}
	if c.cond && !(t&future != 0) && !c.will && !c.tomorrow {
		return nothing
	}
	if t == 0 && inDim(s.sense, "did") || s.tongue == en && c.will && r.word(s.from) == "put" {
		t = bare // "we will put the layer down": one form for both
	}
	neg := s.neg || s.hindi() && i > 0 && c.signs[i-1].sense == "nothing" || c.has("nothing") && s.tongue != sw && s.tongue != hi && s.tongue != hiLatn // "rien donné"
	if c.halfway() && s.hindi() && t&past != 0 && !s.neg {
		return planned // "आधा पलट दिया आधा बाकी"
	}
	if (s.hindi() || c.has("forgot", "maybe")) && c.orNot() {
		return doubtful // "khilaya ya nahi", "याद नहीं हिलाई कि नहीं"
	}
	if s.tongue == fr && c.has("now") && t&past != 0 && r.says(c, "je") && !c.has("didaux", "have", "already") {
		return planned // "je pose la couche maintenant"
	}
	if c.has("notyet", "forgot", "couldnt") && t&future == 0 && !(c.doubt && c.has("forgot")) {
		return notDone
	}
	if c.has("today") && neg && t&(past|yet|participle) == 0 && !r.didNot(c) {
		return planned
	}
	if c.cant {
		if c.has("today", "now") || c.tomorrow || c.later {
			return planned
		}
		return notDone
	}
	next := ""
	if i+1 < len(c.signs) {
		next = c.signs[i+1].sense
	}
	before := func(senses ...string) bool {
		for k := i - 1; k >= 0 && k >= i-4; k-- {
			for _, x := range senses {
				if c.signs[k].sense == x {
					return true
				}
			}
			if act(c.signs[k].sense) {
				return false
			}
		}
		return false
	}
	after := func(sense string) bool { // Hindi: palatne ke baad, palatte samay
		if s.tongue != hi && s.tongue != hiLatn {
			return false
		}
		for k := i + 1; k < len(c.signs) && k <= i+2; k++ {
			if c.signs[k].sense == sense {
				return true
			}
			if c.signs[k].sense != "filler" {
				return false
			}
		}
		return false
	}
	if s.hindi() && t&bare != 0 && t&past == 0 && next == "was" {
		return nothing // "कल पलटना था": it was to be done
	}
	if s.hindi() && t&bare != 0 && t&past == 0 && next == "go" && (strings.HasSuffix(s.text, "ने") || strings.HasSuffix(s.text, "ne")) {
		return nothing // "परत लगाने गए": went to do it
	}
	if s.hindi() && t&bare != 0 && next == "stop" {
		return nothing // "पानी देना बंद कर दिया"
	}
	if after("while") && !c.jab() || after("before") {
		return nothing
	}
	if s.hindi() && t&bare != 0 && t&past == 0 && oneOf(r.word(s.to), "वाला", "वाली", "वाले", "wala", "wali", "wale") && !oneOf(r.word(s.to+1), "हूँ", "हूं", "हैं", "hu", "hun", "hain") {
		return nothing // "पुआल लाने वाला ठेला"
	}
	if after("after") && t&(bare|past) != 0 {
		return done
	}
	if before("before") && !s.hindi() && !c.meAgain(i) && !(s.tongue == sw && t&past != 0) || before("stop") && t&bare != 0 {
		return nothing // "ya dejé de echarle agua"
	}
	if r.awaited(c, s) && (t&(present|future) != 0 || s.tongue == fr) {
		return planned // "dès que je rentre je pose la couche"
	}
	if c.whenTo() && t&(present|future|bare) != 0 {
		return planned // "quand ça sera sec je tamise"
	}
	if s.tongue == fr && t&present != 0 && t&past == 0 && oneOf(r.word(s.from-1), "je", "j", "on") && oneOf(r.word(s.from-2), "que", "qu") {
		return nothing // "le jus que je prépare"
	}
	if s.tongue == fr && t&bare != 0 && oneOf(r.word(s.from-1), "venu", "venue", "venus", "venues") && !c.has("not") {
		return done // "mon oncle est venu retourner mon tas"
	}
	if before("while") && !(s.hindi() && !c.jab()) {
		return nothing
	}
	if c.doubt && !c.doubtsElse(i) {
		return doubtful
	}
	if c.halfway() && t&(past|participle|bare) != 0 && !c.hasDim("unit") {
		return planned // half done is still going on
	}
	if s.hindi() && neg && t&bare != 0 && c.declines(i) && (strings.HasSuffix(s.text, "ना") || strings.HasSuffix(s.text, "na")) {
		return refused // "मुझे नहीं पलटना", "रहने दो नहीं पलटना", "पलटना नहीं है"
	}
	switch {
	case t&unless != 0:
		return nothing
	case t&yet != 0:
		return notDone
	case t&future != 0 || (c.will && t&(bare|order|present) != 0):
		if neg || c.has("not") && before("will", "not") || willDenied(c) {
			if c.has("today", "now") || c.tomorrow || c.later {
				return planned
			}
			return refused
		}
		return planned
	case c.want:
		if c.has("not") {
			return refused
		}
		return wished
	case before("after"), before("helped") && t&(bare|order) != 0 && !neg,
		s.tongue == sw && t&bare != 0 && before("done") && !neg && !c.has("not", "notyet"): // "tumemaliza kuligeuza"
		return done
	case before("finish") || next == "finish":
		if neg || c.has("not") {
			return notDone
		}
		return done
	case before("start"), next == "start" && s.hindi():
		if t&order != 0 && t&past == 0 {
			return wished // "haan chalu karo"
		}
		return planned
	case t&ongoing != 0:
		switch {
		case c.has("finish", "done") && !neg && s.tongue == en && !c.has("not", "notyet", "will", "partly"):
			return done // "sieving is finished"
		case c.has("didaux") && !neg && (s.tongue == en || s.tongue == es):
			return done // "did the turning", "anduvimos juntando"
		case before("stop") || next == "stop" || c.has("stop"):
			return nothing
		case c.hasHarm(), s.tongue == es && c.meanwhile(i), c.has("was") && c.states > 0:
			return nothing // "I was shaking it, it burst"
		case neg:
			return notDone
		case next == "done" || before("done"):
			return done
		}
		return planned
	case t&(past|participle) != 0:
		if c.tomorrow && !c.has("past", "already", "didaux", "have") && s.tongue != sw {
			return planned
		}
		if t&present != 0 && (c.tomorrow || c.later) && !c.has("past", "already") && !(last == past && s.tongue == es && !c.tomorrow && r.says(c, "despues", "luego")) {
			return planned // but not "pusimos la capa, después la regamos"
		}
		if neg {
			return notDone
		}
		if t&present != 0 && s.tongue == fr && (c.has("now") || c.later || c.afterwards(i)) && !c.has("already", "didaux", "have", "past") {
			return planned // "je leur donne maintenant"
		}
		if t&(present|order) != 0 && t&bare == 0 && !c.has("already", "didaux", "have", "past", "person", "neighbor", "yes") && s.tongue == fr && !(r.several && s.sense == actOf(r.asked) && !c.has("me")) {
			return wished // "retourne" may be "retourné" without its accent
		}
		if t&present != 0 && s.tongue == es && s.endsInO() && (c.afterwards(i) || c.has("now") && !c.has("already", "didaux", "have", "past", "person", "neighbor")) {
			return planned // "ahorita lo volteo"
		}
		if t&present != 0 && s.tongue == es && s.endsInO() && !c.has("already", "didaux", "past", "person", "neighbor") {
			return wished
		}
		return done
	case t&(bare|order|present) != 0:
		switch {
		case s.tongue == en && t&bare != 0 && slices.ContainsFunc(c.signs[:i], func(u sign) bool { return u.sense == "give" && u.tense&past != 0 }) && !neg && !c.has("not"):
			return done // "gave the bottle a strong shake"
		case s.tongue == en && t&bare != 0 && r.word(s.from-1) == "to" && slices.ContainsFunc(c.signs[:i], func(u sign) bool { return u.sense == "use" && u.tense&past != 0 }):
			return done // "used a tray to sieve it"
		case s.tongue == fr && t&bare != 0 && i == len(c.signs)-1 && i > 0 && c.core() == 2 && oneOf(c.signs[i-1].sense, "layer", "heap", "bottle", "compost") && actOf(r.asked) != "":
			return done // "couche poser" for "couche posée"
		case c.has("didaux"), s.tongue == fr && i > 0 && c.signs[i-1].sense == "have" && t&bare != 0: // "on a retourner"
			if neg {
				return notDone
			}
			return done
		case c.has("prog", "partly"):
			return planned
		case t&bare != 0 && s.tongue == sw && last != 0 && !neg:
			if last == past {
				return done
			}
			return planned
		case c.tomorrow || c.later, t&present != 0 && c.afterwards(i):
			return planned
		case neg && t&present != 0 && s.real:
			return refused
		case neg && t&present != 0 && t&past == 0 && (s.tongue == fr || s.tongue == es) && r.asked != "none":
			return refused // "je ne le fais pas"
		case neg && t&(bare|present) != 0:
			if act := actOf(r.asked); act != "" && t&bare != 0 {
				return notDone
			}
			return wished
		case c.has("already", "past") && t&order == 0:
			return done
		case c.has("done") && t&bare != 0:
			return done
		case t&present != 0 && c.has("now"):
			return planned
		}
		return wished
	case t&imperfect != 0:
		if neg {
			return notDone
		}
		return wished
	}
	return wished
}

// doubtsElse says whether the doubt of a clause comes after its act and is about something
// else: "nimeweka tabaka, naona linatoa moshi labda", "recogí tres bultos y del otro no sé".
func (c *clause) doubtsElse(i int) bool {
	maybe := c.find("maybe")
	return maybe > i && slices.ContainsFunc(c.signs[i+1:maybe], func(s sign) bool {
		return s.sense == "and" || s.sense == "seen=smoke" || s.sense == "seen=fire" || hurts(s.sense)
	})
}

// endsInO: Spanish "volteo" may be "volteó" without its accent; "volteamos" is
// taken as done.
func (s *sign) endsInO() bool { return len(s.text) > 0 && s.text[len(s.text)-1] == 'o' }

// awaited says whether a clause begins with "as soon as" and its act s follows from that.
func (r *reader) awaited(c *clause, s *sign) bool {
	first := c.signs[0].from
	return first < s.from && (r.soonAs(first) || r.word(first) == "apenas") && !c.has("was", "past", "didaux")
}

// meanwhile says whether the gerund at sign i only tells when the verb before it was: "respiré
// polvo cerniendo".
func (c *clause) meanwhile(i int) bool {
	return !c.has("is", "prog", "will", "start", "continue", "didaux", "now", "finish") && (c.has("eye") ||
		slices.ContainsFunc(c.signs[:i], func(s sign) bool { return (verbal(s.sense) || s.sense == "breathe") && s.tense&past != 0 }))
}

// whenTo says whether a clause names the state that its act waits for: "when it is
// dry I sieve", not "when it was dry I sieved".
func (c *clause) whenTo() bool {
	if c.signs[0].sense != "while" || !c.hasQuality() || c.hasHarm() || c.has("was", "past", "didaux") {
		return false
	}
	for i := range c.signs {
		s := &c.signs[i]
		if act(s.sense) {
			if s.tongue == en && !slices.ContainsFunc(c.signs[:i], func(q sign) bool { return quality(q.sense) }) {
				return false // "when I open the top steam comes up": what is seen then
			}
			return (s.tense&(present|future) != 0 || s.tense&bare != 0 && s.tongue == en) && (s.tense&past == 0 || s.tongue == fr || s.endsInO())
		}
	}
	return false
}

// meAgain says whether the speaker is named anew between a "before" and the act at sign i:
// "before I left I gave it a shake".
func (c *clause) meAgain(i int) bool {
	n := 0
	for k := c.find("before") + 1; k < i; k++ {
		if c.signs[k].sense == "me" {
			n++
		}
	}
	return n > 1
}

// halfway: "half sieved", with no measure that the half could belong to.
func (c *clause) halfway() bool {
	for i, s := range c.signs {
		if s.sense == "num" && s.value == 0.5 && !s.typed && !(i+1 < len(c.signs) && inDim(c.signs[i+1].sense, "unit")) || s.sense == "partly" || s.half() {
			return true
		}
	}
	return false
}

// half: "nusu tu", "आधा ही" among the words for being at it.
func (s *sign) half() bool {
	switch s.text {
	case "nusu", "आधा", "आधी", "आधे", "adha", "aadha", "adhi", "aadhi":
		return s.sense == "prog"
	}
	return false
}

// orNot says whether a clause leaves open which of the two: "or not".
func (c *clause) orNot() bool {
	n := len(c.signs)
	return n > 2 && (c.signs[n-2].sense == "or" || oneOf(c.signs[n-2].text, "ki", "कि")) && (c.signs[n-1].sense == "not" || c.signs[n-1].sense == "no")
}

func willDenied(c *clause) bool {
	for at := range c.signs {
		s := &c.signs[at]
		if s.sense == "will" && s.neg {
			return true
		}
	}
	return false
}

func (c *clause) hasHarm() bool {
	return slices.ContainsFunc(c.signs, func(s sign) bool { return hurts(s.sense) })
}

// hurts says whether a sense is a harm, or a verb that does one.
func hurts(sense string) bool {
	return sense == "burn" || sense == "bite" || sense == "cut" || sense == "burnt" || inDim(sense, "harm")
}

// jab: Hindi "when" stands first; its other words for while follow their verb.
func (c *clause) jab() bool {
	for i := range c.signs {
		if c.signs[i].sense == "while" && (c.signs[i].text == "जब" || c.signs[i].text == "jab" || c.signs[i].text == "jb") {
			return true
		}
	}
	return false
}

// afterwards says whether a time to come is named after sign i: "la agito después de
// cenar", "avant de dormir".
func (c *clause) afterwards(i int) bool {
	for k := i + 1; k < len(c.signs); k++ {
		if c.signs[k].sense == "after" || c.signs[k].sense == "before" {
			return true
		}
	}
	return false
}
