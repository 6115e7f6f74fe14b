package understand

import (
	"slices"
	"strings"
)

// mention is one act as its clause tells it.
type mention struct {
	*reader
	c    *clause
	i    int // its sign in the clause
	s    *sign
	form tense // of its verb
	last tense // of the act before
	neg  bool
	next string // the sense after it
}

// standing says whether the act of sign i is done, denied, planned, wished or asked.
// last is the tense of the act before.
func (r *reader) standing(c *clause, i int, last tense) outcome {
	s := &c.signs[i]
	d := mention{reader: r, c: c, i: i, s: s, form: s.tense, last: last}
	if d.form == 0 && inDim(s.sense, "did") || s.tongue == en && c.will && r.word(s.from) == "put" {
		d.form = bare // "we will put the layer down": one form for both
	}
	d.neg = s.neg || s.hindi() && i > 0 && c.signs[i-1].sense == "nothing" || c.has("nothing") && s.tongue != sw && !s.hindi() // "rien donné"
	if i+1 < len(c.signs) {
		d.next = c.signs[i+1].sense
	}
	for _, settles := range rulings {
		if o, ok := settles(&d); ok {
			return o
		}
	}
	return d.byTense()
}

// rulings settle how an act stands before the tense of its verb is looked at; the first
// that speaks holds.
var rulings = [...]func(*mention) (outcome, bool){
	(*mention).questioned,
	(*mention).unfinished,
	(*mention).verbalNoun,
	(*mention).beside,
	(*mention).doubted,
}

// questioned: a question about an act, or an act under an "if".
func (d *mention) questioned() (outcome, bool) {
	c := d.c
	switch c.ask {
	case askWhy, askWh, askModal:
		return nothing, true
	case askMark, askTag:
		if d.form&future != 0 || c.tomorrow {
			return nothing, true
		}
		return doubtful, true
	}
	if c.cond && !(d.form&future != 0) && !c.will && !c.tomorrow {
		return nothing, true
	}
	return nothing, false
}

// unfinished: begun, put off, forgotten, or not possible.
func (d *mention) unfinished() (outcome, bool) {
	c, s := d.c, d.s
	if c.halfway() && s.hindi() && d.form&past != 0 && !s.neg {
		return planned, true // "आधा पलट दिया आधा बाकी"
	}
	if (s.hindi() || c.has("forgot", "maybe")) && c.orNot() {
		return doubtful, true // "khilaya ya nahi", "याद नहीं हिलाई कि नहीं"
	}
	if s.tongue == fr && c.has("now") && d.form&past != 0 && d.says(c, "je") && !c.has("didaux", "have", "already") {
		return planned, true // "je pose la couche maintenant"
	}
	if c.has("notyet", "forgot", "couldnt") && d.form&future == 0 && !(c.doubt && c.has("forgot")) {
		return notDone, true
	}
	if c.has("today") && d.neg && d.form&(past|yet|participle) == 0 && !d.didNot(c) {
		return planned, true
	}
	if c.cant {
		if c.has("today", "now") || c.tomorrow || c.later {
			return planned, true
		}
		return notDone, true
	}
	return nothing, false
}

// verbalNoun: a Hindi act that is only named: "पलटना था", "परत लगाने गए".
func (d *mention) verbalNoun() (outcome, bool) {
	s := d.s
	if !s.hindi() || d.form&bare == 0 {
		return nothing, false
	}
	if d.form&past == 0 && d.next == "was" {
		return nothing, true // "कल पलटना था": it was to be done
	}
	if d.form&past == 0 && d.next == "go" && (strings.HasSuffix(s.text, "ने") || strings.HasSuffix(s.text, "ne")) {
		return nothing, true // "परत लगाने गए": went to do it
	}
	if d.next == "stop" {
		return nothing, true // "पानी देना बंद कर दिया"
	}
	if d.form&past == 0 && oneOf(d.word(s.to), "वाला", "वाली", "वाले", "wala", "wali", "wale") && !oneOf(d.word(s.to+1), "हूँ", "हूं", "हैं", "hu", "hun", "hain") {
		return nothing, true // "पुआल लाने वाला ठेला"
	}
	return nothing, false
}

// beside: an act that only tells when another was done, or that waits for it.
func (d *mention) beside() (outcome, bool) {
	c, s := d.c, d.s
	if d.after("while") && !c.jab() || d.after("before") {
		return nothing, true
	}
	if d.after("after") && d.form&(bare|past) != 0 {
		return done, true
	}
	if d.before("before") && !s.hindi() && !c.meAgain(d.i) && !(s.tongue == sw && d.form&past != 0) || d.before("stop") && d.form&bare != 0 {
		return nothing, true // "ya dejé de echarle agua"
	}
	if d.awaited(c, s) && (d.form&(present|future) != 0 || s.tongue == fr) {
		return planned, true // "dès que je rentre je pose la couche"
	}
	if c.whenTo() && d.form&(present|future|bare) != 0 {
		return planned, true // "quand ça sera sec je tamise"
	}
	if s.tongue == fr && d.form&present != 0 && d.form&past == 0 && oneOf(d.word(s.from-1), "je", "j", "on") && oneOf(d.word(s.from-2), "que", "qu") {
		return nothing, true // "le jus que je prépare"
	}
	if s.tongue == fr && d.form&bare != 0 && oneOf(d.word(s.from-1), "venu", "venue", "venus", "venues") && !c.has("not") {
		return done, true // "mon oncle est venu retourner mon tas"
	}
	if d.before("while") && !(s.hindi() && !c.jab()) {
		return nothing, true
	}
	return nothing, false
}

// doubted: "turned it I think", half done, not to be done.
func (d *mention) doubted() (outcome, bool) {
	c, s := d.c, d.s
	if c.doubt && !c.doubtsElse(d.i) {
		return doubtful, true
	}
	if c.halfway() && d.form&(past|participle|bare) != 0 && !c.hasDim("unit") {
		return planned, true // half done is still going on
	}
	if s.hindi() && d.neg && d.form&bare != 0 && c.declines(d.i) && (strings.HasSuffix(s.text, "ना") || strings.HasSuffix(s.text, "na")) {
		return refused, true // "मुझे नहीं पलटना", "रहने दो नहीं पलटना", "पलटना नहीं है"
	}
	return nothing, false
}

// before says whether one of the senses stands close before the act, with no other act between.
func (d *mention) before(senses ...string) bool {
	for k := d.i - 1; k >= 0 && k >= d.i-4; k-- {
		sense := d.c.signs[k].sense
		if slices.Contains(senses, sense) {
			return true
		}
		if act(sense) {
			return false
		}
	}
	return false
}

// after: Hindi "palatne ke baad", "palatte samay".
func (d *mention) after(sense string) bool {
	if !d.s.hindi() {
		return false
	}
	for k := d.i + 1; k < len(d.c.signs) && k <= d.i+2; k++ {
		switch d.c.signs[k].sense {
		case sense:
			return true
		case "filler":
		default:
			return false
		}
	}
	return false
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
