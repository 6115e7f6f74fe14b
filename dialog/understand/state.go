package understand

import "slices"

// fact is one thing a clause states about heap, bottle or worms.
type fact struct {
	code   string
	dim    string
	clause int
	place  int  // 1 the middle, 2 the edge
	was    bool // earlier than now
	now    bool
	doubt  bool
	denial bool // said by denying another: "not warm"
}

// halves of a denial: "not hot" leaves warm and cold open.
const (
	notHot  = "stick!hot"
	notCold = "stick!cold"
	notDry  = "moisture!dry"
	notWet  = "moisture!wet"
)

// topic is what "it" stands for: the last thing named, or the thing asked about.
type topic struct {
	heap, bottle, worm, smell, stick bool
	told
}

// told is what a message has told of harm so far, whatever "it" stands for: an eye, a part of the
// body or a person in the clause before, a bite, beasts and nobody else, something that stings, a
// worm that somebody took.
type told struct{ eye, limb, who, bite, beast, sting, caught bool }

func (r *reader) opening() topic {
	switch r.asked {
	case "moisture":
		return topic{heap: true}
	case "bottle", "shake":
		return topic{bottle: true}
	case "worms":
		return topic{worm: true}
	case "feed":
		return topic{worm: r.several} // "oui, ils mangent bien"
	case "smell":
		return topic{smell: true}
	}
	return topic{}
}

// states reads the qualities of one clause into facts.
func (r *reader) states(c *clause, n int, about *topic) (out []fact) {
	here := topic{
		heap:   c.has("heap", "stick", "inside", "squeeze", "layer", "compost", "bed") || c.has("edge") && !about.bottle && !about.worm || r.aboutHeap(c),
		bottle: c.has("bottle", "cap"),
		worm:   c.has("worm"),
		smell:  c.has("smell") || c.ownSharp() || c.has("smell=rotten") && c.sharperSmell(), // "apesta a orines"
	}
	defer func() {
		if here.heap || here.bottle || here.worm {
			here.told = about.told
			*about = here
		} else if here.smell {
			about.smell = true
		}
		for at := range c.signs {
			s := &c.signs[at]
			switch s.sense {
			case "did=turned", "did=built", "did=layered":
				about.heap = true
			case "put":
				about.heap = about.heap || r.asked == "layer"
			case "did=shook", "did=vented":
				about.bottle = true
			case "did=fed":
				about.worm = true
			}
		}
	}()
	weather := (c.has("weather") && !r.sinceWeather(c) && r.asked != "smell" || c.has("money") && (r.asked == "none" || r.asked == "menu")) && !here.heap && !here.bottle && !here.worm && !c.has("edge") && !(r.asked == "moisture" && c.hasDim("moisture"))
	harm := c.hasHarm() && !c.gnawed(c.find("cut"))
	place, was, now := 0, false, false
	lead := r.leads(c)
	for i := range c.signs {
		s := &c.signs[i]
		switch s.sense {
		case "inside":
			if lead {
				place = 1
			}
		case "edge":
			if lead {
				place = 2
			}
		case "was", "earlier", "past", "before":
			was, now = !r.thisMorning(s), false
		case "now", "today":
			was, now = false, true
		}
		code := r.value(c, i, here, *about)
		if code == "" || weather || inDim(code, "stick") && c.figure() && c.has("degree", "celsius", "fahrenheit") && r.names(s, "heat", "warmth", "calor", "chaleur") {
			continue // "the heat came down to 50 degrees": a figure, not a feel
		}
		if code == "smell=rotten" && s.sense == "bad" && c.has("weather") && !c.has("smell") {
			continue // "mausam kharab hai"
		}
		if code == "seen=worms_escaping" && c.has("seen=smoke", "seen=steam", "seen=fire") {
			continue // "sube humo negro"
		}
		if code == "seen=weeds" && c.has("did=gathered", "collect") {
			continue // "on a ramassé les herbes"
		}
		if code == "smell=rotten" && s.own && c.sharperSmell() {
			continue // "stinks of vinegar": vinegar
		}
		if c.ofMeal(r, i) || !here.heap && !here.bottle && !here.worm && !here.smell && r.ofOther(c, i) {
			continue // "daraja limevunjika", "le pont s'est effondré"
		}
		if harm && inDim(code, "stick") && r.attributed(c, i) {
			continue // "burnt by the hot compost"
		}
		if inDim(code, "stick") && (c.want || c.will || c.hindiMust()) && c.besideHeap(i) {
			continue // "I want to make a hot heap"
		}
		if inDim(code, "seen") && c.has("body") && !here.heap && crawling(code) {
			continue // ants on my legs
		}
		if crawling(code) && (c.has("foreign", "cloth") || r.cropThere(c)) && !here.heap && !here.worm && !here.bottle && !c.has("bed", "food", "smell") && (r.asked == "none" || r.asked == "menu") {
			continue // flies in the kitchen, rats in the maize
		}
		if harm && code == "bottle=burst" && r.names(s, "broken", "cassee", "cassees", "quebrada", "rota") && !c.has("is", "was", "didaux") {
			continue // stepped on a broken bottle
		}
		if code == "seen=steam" && c.has("plant") && (c.has("burn", "burnt") || harm) {
			continue // "the steam burnt my plants": a doer
		}
		if harm && inDim(code, "seen") {
			continue // "ants bit me": a doer, not a sight
		}
		if s.tense&(future|order|unless) != 0 && s.tense&(past|present|participle) == 0 {
			continue
		}
		if s.tense == bare && (c.will || c.later || c.tomorrow || c.want) && verbalState(s.sense) {
			continue
		}
		p := place
		if !lead {
			for k := i + 1; k < len(c.signs); k++ {
				if c.signs[k].sense == "inside" {
					p = 1
				}
				if c.signs[k].sense == "edge" {
					p = 2
				}
				if p != 0 || quality(c.signs[k].sense) || act(c.signs[k].sense) {
					break // "kilikuwa cha moto mpaka akakitupa chini": where it was thrown
				}
			}
			if p == 0 {
				for k := i - 1; k >= 0 && !quality(c.signs[k].sense); k-- {
					if c.signs[k].sense == "inside" {
						p = 1
					}
					if c.signs[k].sense == "edge" {
						p = 2
					}
				}
			}
		}
		w := was
		if !now && i+1 < len(c.signs) && (c.signs[i+1].sense == "was" || c.signs[i+1].sense == "earlier" || c.signs[i+1].sense == "past") {
			w = true
		}
		if i+2 < len(c.signs) && (c.signs[i+1].sense == "rangeto" || c.signs[i+1].text == "a") && dimension(c.signs[i+2].sense) == dimension(s.sense) {
			w = true // "gone from hot to cold"
		}
		if i >= 2 && c.signs[i-1].sense == "rangeto" && dimension(c.signs[i-2].sense) == dimension(s.sense) {
			w = false
		}
		about.stick = about.stick || inDim(code, "stick")
		out = append(out, fact{code: code, dim: dimension2(code), clause: n, place: p, was: w, now: now, denial: s.to > s.from+1 && denial(r.tokens[s.from].text)})
	}
	return out
}

func denial(w string) bool {
	switch w {
	case "not", "isnt", "pas", "no", "ni", "si", "sio", "siyo", "nahi", "nahin", "नहीं":
		return true
	}
	return false
}

// sinceWeather says whether the weather of a clause only tells from when on: "depuis l'orage
// il est froid".
func (r *reader) sinceWeather(c *clause) bool {
	k := c.find("weather")
	if k < 0 || !c.hasDim("stick") && !c.hasDim("moisture") {
		return false
	}
	for _, back := range [...]int{1, 2} {
		if oneOf(r.word(c.signs[k].from-back), "since", "after", "depuis", "apres", "desde", "tras", "tangu", "baada") {
			return true
		}
	}
	return false
}

// thisMorning says whether a time gone by is still today's, as far as what was seen goes.
func (r *reader) thisMorning(s *sign) bool {
	return s.sense == "past" && oneOf(r.tokens[s.from].text, "leo", "this", "aaj", "आज", "ce", "esta", "hoy")
}

// verbalState: a quality that is a verb ("dry" the straw) counts only as state.
func verbalState(s string) bool { return inDim(s, "moisture") || s == "leave" || s == "die" }

func dimension2(code string) string {
	for i := 0; i < len(code); i++ {
		if code[i] == '=' || code[i] == '!' {
			return code[:i]
		}
	}
	return code
}

// leads says whether places come before what they hold: "in the middle hot, at
// the edge cold" and not "hot in the middle".
func (r *reader) leads(c *clause) bool {
	for at := range c.signs {
		s := &c.signs[at]
		if s.sense == "inside" || s.sense == "edge" {
			return true
		}
		if quality(s.sense) {
			return false
		}
	}
	return true
}

func (r *reader) aboutHeap(c *clause) bool {
	for at := range c.signs {
		s := &c.signs[at]
		switch s.sense {
		case "did=turned", "did=built", "did=layered":
			return true
		}
	}
	return false
}

func (c *clause) hasAct() bool {
	for at := range c.signs {
		s := &c.signs[at]
		if act(s.sense) {
			return true
		}
	}
	return false
}

// sharperSmell: the clause names what it stinks of.
func (c *clause) sharperSmell() bool {
	return c.has("smell=ammonia", "smell=sour", "smell=alcohol")
}

// names says whether one of words is among the tokens of a sign.
func (r *reader) names(s *sign, words ...string) bool {
	for _, t := range r.tokens[s.from:s.to] {
		for _, w := range words {
			if t.text == w {
				return true
			}
		}
	}
	return false
}

// word is the text of a token; "" beyond the ends.
func (r *reader) word(at int) string {
	if at < 0 || at >= len(r.tokens) {
		return ""
	}
	return r.tokens[at].text
}

// says says whether one of words is among the tokens of a clause.
func (r *reader) says(c *clause, words ...string) bool {
	for i := range c.signs {
		if r.names(&c.signs[i], words...) {
			return true
		}
	}
	return false
}

// attributed says whether the quality at sign i only describes a noun beside it, with
// no verb and no degree: "the hot compost"; or names the hot thing that did it: "with the kettle".
func (r *reader) attributed(c *clause, i int) bool {
	before := c.signs[i].from - 1
	if oneOf(r.word(before), "the", "a", "la", "el", "le", "un", "una", "une") {
		before--
	}
	if oneOf(r.word(before), "with", "on", "by", "off", "con", "en", "avec", "sur", "par", "contre") {
		return true
	}
	return c.signs[i].grade == plainly && !c.has("is", "was") && c.besideHeap(i)
}

// hindiMust: an infinitive before "is" says what is to be done: "बनाना है".
func (c *clause) hindiMust() bool {
	for i := 1; i < len(c.signs); i++ {
		if s := &c.signs[i-1]; s.hindi() && s.tense == bare && (s.sense == "make" || inDim(s.sense, "did")) && c.signs[i].sense == "is" {
			return true
		}
	}
	return false
}

// besideHeap says whether the quality at sign i stands beside the heap it belongs to.
func (c *clause) besideHeap(i int) bool {
	for _, k := range [...]int{i - 1, i + 1} {
		if k >= 0 && k < len(c.signs) {
			switch c.signs[k].sense {
			case "heap", "compost":
				return true
			}
		}
	}
	return false
}

// cropThere says whether a clause speaks of a crop, and not of its likeness: "gusanos
// blancos como arroz", "चावल जैसे कीड़े".
func (r *reader) cropThere(c *clause) bool {
	return slices.ContainsFunc(c.signs, func(s sign) bool {
		return inDim(s.sense, "crop") && !oneOf(r.word(s.from-1), "como", "comme", "like", "kama") && !oneOf(r.word(s.to), "जैसे", "जैसी", "जैसा", "jaise", "jaisi", "jaisa")
	})
}

func crawling(code string) bool {
	switch code {
	case "seen=ants", "seen=termites", "seen=rodents", "seen=flies", "seen=maggots":
		return true
	}
	return false
}

// ownSharp says whether a strong smell is named as a smell: "tez gandh".
func (c *clause) ownSharp() bool {
	k := c.find("sharp")
	return k >= 0 && c.signs[k].own
}

// ofMeal says whether the warmth at sign i is that of what people eat and drink, which stands
// beside it: "cold beer", "चाय ठंडी हो गई".
func (c *clause) ofMeal(r *reader, i int) bool {
	s := &c.signs[i]
	if !inDim(s.sense, "stick") && s.sense != "poa" && s.sense != "heat" || c.has("heap", "inside", "stick") ||
		r.says(c, "like", "como", "comme", "kama", "jaisa", "jaise", "jaisi", "jaisaa", "जैसा", "जैसी", "जैसे", "तरह", "tarah") {
		return false
	}
	meal := func(k int) bool {
		return k >= 0 && k < len(c.signs) && (c.signs[k].sense == "foreign" || c.signs[k].sense == "crop=coffee" || c.signs[k].sense == "smell=alcohol" && r.asked == "stick")
	}
	if meal(i+1) && (s.tongue == en || s.hindi()) {
		return true
	}
	k := c.back(i-1, "filler", "mine", "me", "very", "is", "was")
	return meal(k) && !(s.hindi() && oneOf(r.word(c.signs[k].to), "में", "पर", "me", "mein", "par", "pe"))
}

// ofOther says whether the quality at sign i is of something that is no part of the
// work: a bridge, a radio, a goat stands before it as its subject, not as its likeness.
func (r *reader) ofOther(c *clause, i int) bool {
	if s := &c.signs[i]; s.tongue == es || s.hindi() && !inDim(s.sense, "moisture") || c.has("dung", "leaf", "stalk", "peel", "huskw", "stem", "straws", "squeeze", "damp", "dust") || c.hasDim("material") || r.says(c, "comme", "kama", "sent", "like") {
		return false
	}
	if r.several && r.asked != "moisture" && c.signs[i].sense == "moisture=wet" && c.signs[i].hindi() && (c.odd > 0 || c.has("known")) {
		return true // "रसोई का फर्श चिपचिपा हो गया"
	}
	return slices.ContainsFunc(c.signs[:i], func(s sign) bool {
		return s.beast() || s.sense == "foreign" || s.sense == "plant" && s.tongue == fr || inDim(s.sense, "crop")
	})
}
