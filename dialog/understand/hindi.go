package understand

import (
	"slices"
	"strings"
)

// endsInfinitive says whether a Hindi word has the ending of an infinitive.
func endsInfinitive(w string) bool {
	return strings.HasSuffix(w, "ना") || strings.HasSuffix(w, "नी") || strings.HasSuffix(w, "ने") || len(w) > 5 && (strings.HasSuffix(w, "na") || strings.HasSuffix(w, "ni"))
}

// likens says whether a Hindi word makes a likeness of the one before it.
func likens(w string) bool {
	switch w {
	case "jaisi", "jaise", "jaisa", "जैसी", "जैसे", "जैसा":
		return true
	}
	return false
}

// whether says whether "not" at sign i ends a question about what is to be done: an infinitive, "is"
// and "or" stand before it.
func (r *reader) whether(i int) bool {
	if i < 3 || i+1 < len(r.signs) && r.tokens[r.signs[i+1].from].kind != mark || !oneOf(r.signs[i-1].text, "ki", "कि", "ya", "या") {
		return false
	}
	verb := &r.signs[i-3]
	return r.signs[i-2].sense == "is" && act(verb.sense) && verb.tense == bare
}

func (s *sign) hindi() bool { return s.tongue == hi || s.tongue == hiLatn }

func (e entry) hindi() bool { return e.tongue == hi || e.tongue == hiLatn }

// property is what a quality is a value of; heat by any name is the stick's.
func property(sense string) string {
	switch sense {
	case "heat", "joto", "moto", "poa":
		return "stick"
	}
	if quality(sense) {
		return dimension(sense)
	}
	return ""
}

// hindiTurns gives Hindi words that look both ways the sense their neighbours ask for,
// before the clauses are cut.
func (r *reader) hindiTurns() {
	for i := range r.signs {
		s := &r.signs[i]
		if !s.hindi() {
			continue
		}
		if likens(r.word(s.to)) && (oneOf(s.sense, "bottle", "worm", "heap", "stick", "bed") || s.sense == "seen=rodents" && r.asked == "smell") {
			s.sense = "known" // "fridge wali bottle jaisi thandi", "mari hui chuhiya jaisi"
			continue
		}
		switch s.sense {
		case "between":
			if (i == 0 || r.signs[i-1].sense != "num") && (i < 2 || r.signs[i-2].sense != "num") && (i+1 == len(r.signs) || r.signs[i+1].sense != "num") {
				s.sense = "inside" // "बीच की गरम"
			}
		case "weather":
			if (r.asked == "moisture" || i > 0 && oneOf(r.signs[i-1].sense, "heap", "inside", "layer", "bed", "compost")) && (strings.HasPrefix(s.text, "सूखा") || strings.HasPrefix(s.text, "सुखा") || strings.HasPrefix(s.text, "sukha") || strings.HasPrefix(s.text, "sookha")) {
				s.sense = "moisture=dry" // a drought, unless the handful is asked about
			}
		case "whatif":
			if i+1 < len(r.signs) && !r.asks(i) && !r.wonders() && r.valueAfter(i+1) > 0 {
				s.sense = "filler" // "निकाली तो गरम थी": when I took it out
			}
		case "moisture=dry":
			r.notPoured(i)
		case "stick=hot":
			if r.uncaught(i) {
				s.sense, s.own = "not", false
			}
		case "must":
			if i+1 < len(r.signs) && r.signs[i+1].sense == "was" {
				s.sense = "supposed" // "garam ho jani chahiye thi"
			}
		case "forgot":
			if r.notFelt(i) {
				s.sense = "not" // "garmi mehsoos nahi hui"
			}
		case "yes":
			if i > 0 && (s.text == "जी" || s.text == "ji") && r.tokens[s.from-1].kind != mark {
				s.sense = "filler" // "धन्यवाद जी": manners
			}
		case "not", "no":
			if i > 0 && oneOf(r.word(s.from-1), "ne", "ने") && slices.ContainsFunc(r.toMark(i+1), func(o sign) bool { return oneOf(r.word(o.to-1), "ne", "ने") || oneOf(r.word(o.to), "ne", "ने") }) {
				s.sense = "filler" // "bakri ne nahi mere bhai ne"
				for k := i - 1; k >= 0 && k >= i-2; k-- {
					if r.signs[k].beast() || r.signs[k].sense == "person" || r.signs[k].sense == "neighbor" {
						r.signs[k].sense = "known"
					}
				}
				continue
			}
			if r.whether(i) {
				s.sense = "canq" // "pani dalna hai ki nahi"
				continue
			}
			r.nahin(i)
		case "tag":
			j := i + 1
			for j < len(r.signs) && (r.signs[j].sense == "very" || r.signs[j].sense == "bit" || r.signs[j].sense == "too") {
				j++
			}
			if j < len(r.signs) && property(r.signs[j].sense) != "" {
				s.sense = "nor" // "न सूखा है न गीला", "न ज़्यादा सूखा है न ज़्यादा गीला"
			}
		case "seen=fire":
			if likens(r.word(s.to)) && oneOf(r.word(s.to+1), "गर्मी", "गरमी", "गरम", "garmi", "garam") {
				s.sense = "stick=hot" // "आग जैसी गर्मी"
			}
		case "or", "filler", "do":
			if s.sense == "or" && i > 1 && r.signs[i-1].sense == "is" && !quality(r.signs[i-2].sense) && endsInfinitive(r.word(r.signs[i-2].to-1)) {
				s.sense = "canq" // "दबानी है या हल्के से"
				continue
			}
			if (s.text == "कि" || s.text == "ki") && i > 0 && (quality(r.signs[i-1].sense) || r.signs[i-1].sense == "is" || r.signs[i-1].sense == "was") && r.soMuch(i) {
				s.sense, s.tense = "then", 0 // "इतनी गरम कि": so hot that
			}
			if oneOf(s.text, "ki", "कि") && i > 1 && i+1 < len(r.signs) && r.signs[i-1].sense == "is" && r.signs[i-2].sense == "alive" && quality(r.signs[i+1].sense) {
				s.sense = "or" // "zinda hai ki mara"
			}
			if i > 0 && oneOf(s.text, "फिर", "phir", "fir") && s.to == s.from+1 && i+1 < len(r.signs) && endsStatement(r.tokens[s.from-1].text) {
				s.sense = "and" // "पलट दिया फिर पानी डाला"
			}
			if i > 0 && oneOf(s.text, "पर", "par") && s.to == s.from+1 && (endsStatement(r.tokens[s.from-1].text) || oneOf(r.word(s.from-1), "नहीं", "nahi", "होगा", "होगी", "होंगे", "hoga", "hogi", "honge")) {
				s.sense = "but" // "ठीक हैं पर कुछ भाग रहे"; after a noun it is "on"
			}
		case "ask=help":
			if w := r.word(s.from + min(1, s.to-s.from-1)); strings.HasPrefix(s.text, "समझ") || strings.HasPrefix(s.text, "sam") || strings.HasPrefix(s.text, "smj") ||
				oneOf(s.text, "kuch", "कुछ") && (strings.HasPrefix(w, "समझ") || strings.HasPrefix(w, "sam")) {
				if r.stated(i) {
					s.sense = "maybe" // "wet or dry, I cannot tell"
				}
			}
		case "normal":
			// "normal si garmahat": middling, not "is it normal"
			if s.to == s.from+1 && !r.asks(i) {
				if j := r.valueAfter(i + 1); j > 0 && property(r.signs[j].sense) == "stick" {
					s.sense = "bit"
				}
			}
		case "stick=cold":
			if oneOf(s.text, "ठंड", "ठंढ", "thand") && r.holds("today") && !r.holds("stick", "heap", "inside", "past") {
				s.sense = "weather" // "आज ठंड बहुत है"
			}
		case "busy":
			if i > 0 && s.text == "kam" {
				switch p := r.signs[i-1].sense; {
				case inDim(p, "material") || property(p) != "" || oneOf(p, "dung", "leaf", "water", "gas", "compost"):
					s.sense = "bit" // "gobar kam hai": little; "kaam hai" is work to do
				}
			}
		case "ok":
			of := i - 1
			for of > 0 && oneOf(r.signs[of].sense, "filler", "very", "now") {
				of--
			}
			if s.to > s.from+1 && oneOf(r.tokens[s.to-1].text, "हैं", "hain") || of >= 0 && r.signs[of].sense == "worm" {
				s.sense = "good" // "theek hain", "kenchue theek": they are fine; "theek hai" agrees
			}
		case "chat=hello":
			if i > 0 && s.text == "hi" && r.tokens[s.from-1].kind == word {
				s.sense = "filler" // "aadhi hi": only
			}
		case "fill":
			if i > 0 && inDim(r.signs[i-1].sense, "unit") {
				s.sense = "filler" // "एक बैलगाड़ी भर पत्ते"
			}
		case "did=sieved":
			if oneOf(s.text, "channi", "chhanni", "chhalni", "chalni", "छन्नी", "छलनी", "चलनी") && oneOf(r.word(s.to), "ki", "ka", "ke", "se", "me", "mein", "की", "का", "के", "से", "में") {
				s.sense, s.tense = "known", 0 // the sieve, a thing; told here, before "ki" is taken for its verb
			}
			if r.asked != "sieve" && s.to == s.from+1 && strings.HasPrefix(s.text, "chal") {
				s.sense, s.tense = "known", 0 // "khoob chal rahe": chaal is to sieve, chal to go
			}
		case "seen=ash":
			if s.text == "rakh" && i+1 < len(r.signs) && oneOf(r.signs[i+1].sense, "give", "take", "do") {
				s.sense, s.tense = "put", bare // "rakh li": kept; ash is raakh
			}
		case "starter":
			// "जामन पानी में घोल दिया": dissolved, not a solution given
			if (s.text == "घोल" || s.text == "ghol") && i > 0 && i+1 < len(r.signs) && (r.signs[i+1].sense == "give" || r.signs[i+1].sense == "take") && r.stirrable(i) {
				s.sense, s.tense = "stir", bare
			}
		case "":
			if t := r.futureForm(s); t {
				s.tense = future
				if firstPerson(s.text) {
					s.sense = "will"
				}
			}
		}
	}
}

// nahin tells a correcting no from a denial. Hindi denies what stands before: "गरम
// नहीं है". After a mark, before another value of the same thing and its "is", it takes
// the first value back: "ठंडी, नहीं गरम है". Without the "is" it may be either, so it
// is a doubt. Two together, at the head, are neither-nor: "nahi garam nahi thandi".
func (r *reader) nahin(i int) {
	s := &r.signs[i]
	head := i == 0 || r.tokens[r.signs[i-1].from].kind == mark
	twice := s.sense == "no" && s.to > s.from+1
	if !head && !twice {
		return
	}
	if i+1 < len(r.signs) && r.signs[i+1].sense == "only" {
		s.sense = "filler" // "nahi sirf pani diya": no, only that
		return
	}
	j := r.valueAfter(i + 1)
	if j < 0 {
		return
	}
	of := property(r.signs[j].sense)
	before := ""
	for k := i - 1; k >= 0 && k >= i-8; k-- {
		if property(r.signs[k].sense) == of {
			before = r.signs[k].sense
			break
		}
	}
	rest := ""
	for k := j + 1; k < len(r.signs); k++ {
		if rest = r.signs[k].sense; rest != "filler" && rest != "now" && rest != "very" {
			break
		}
		rest = ""
	}
	switch {
	case before == "" && twice && rest != "not":
		s.sense = "filler" // "नहीं नहीं, ठंडी है", to something said before
	case before == "" && (rest == "not" || rest == "nor") && s.sense == "not":
		if n := r.valueAfter(j + 2); n > 0 && property(r.signs[n].sense) == of && (n+1 == len(r.signs) || r.signs[n+1].sense != "not") {
			s.sense = "nor"
			for k := j + 1; k < n; k++ {
				if r.signs[k].sense == "not" {
					r.signs[k].sense = "nor"
				}
			}
		}
	case before == "" || before == r.signs[j].sense || rest == "not":
	case twice || j > i+1 && r.tokens[r.signs[i+1].from].kind == mark:
		s.sense = "correct"
	case rest == "is" || rest == "was" || rest == "go" || rest == "stay":
		s.sense = "correct"
	case rest == "" || r.tokens[r.signs[j].to-1].kind == mark || len([]rune(rest)) == 1:
		s.sense = "maybe"
	}
}

// valueAfter is the first quality at sign i or a few small words later, past a comma; -1
// when other words come first.
func (r *reader) valueAfter(i int) int {
	for k := i; k < len(r.signs) && k <= i+4; k++ {
		switch r.signs[k].sense {
		case "filler", "very", "bit", "too", "now", "is", "me", "stick", "heap", "not", "nor", "correct", ",", "inside":
			continue
		}
		if property(r.signs[k].sense) != "" {
			return k
		}
		return -1
	}
	return -1
}

// soMuch says whether "so" stands before sign i in its stretch, with a quality.
func (r *reader) soMuch(i int) bool {
	so, value := false, false
	for k := i - 1; k >= 0 && r.tokens[r.signs[k].from].kind != mark; k-- {
		so = so || r.signs[k].sense == "very"
		value = value || quality(r.signs[k].sense)
	}
	return so && value
}

// stated says whether the stretch of sign i, up to marks, describes anything.
func (r *reader) stated(i int) bool {
	for k := i - 1; k >= 0 && r.signs[k].sense != "." && r.signs[k].sense != "?"; k-- {
		if quality(r.signs[k].sense) || r.signs[k].sense == "or" {
			return true
		}
	}
	return false
}

func (r *reader) stirrable(i int) bool {
	for k := i - 1; k >= 0 && r.tokens[r.signs[k].from].kind != mark; k-- {
		switch r.signs[k].sense {
		case "starter", "bottle", "water", "liquid", "dung":
			return true
		case "worm":
			return false
		}
		if inDim(r.signs[k].sense, "material") {
			return true
		}
	}
	return false
}

// futureForm says whether an unknown word has the ending of a Hindi future.
func (r *reader) futureForm(s *sign) bool {
	if r.rank[hi] > 1 && r.rank[hiLatn] > 1 || len(s.text) < 5 {
		return false
	}
	w := fold(s.text)
	for _, e := range [...]string{"ूंगा", "ूंगी", "ऊंगा", "ऊंगी", "ेंगे", "ेंगी", "एंगे", "एंगी", "ेगा", "ेगी", "एगा", "एगी", "ओगे",
		"unga", "ungi", "oonga", "oongi", "enge", "engi", "ega", "egi"} {
		if strings.HasSuffix(w, e) {
			return true
		}
	}
	return false
}

func firstPerson(w string) bool {
	w = fold(w)
	for _, e := range [...]string{"ूंगा", "ूंगी", "ऊंगा", "ऊंगी", "unga", "ungi", "oonga", "oongi"} {
		if strings.HasSuffix(w, e) {
			return true
		}
	}
	return false
}

// notPoured: "पानी नहीं" is dry where it ends; before "डाला" the pouring is denied.
func (r *reader) notPoured(i int) {
	s := &r.signs[i]
	if s.to != s.from+2 || i+1 >= len(r.signs) || s.text != "पानी" && s.text != "pani" && s.text != "paani" {
		return
	}
	switch n := r.signs[i+1]; n.sense {
	case "put", "give", "fill", "did=watered":
		s.sense = "filler"
		r.signs[i+1].neg, r.signs[i+1].sense = true, "did=watered"
	}
}

// wonders says whether the message holds a question word or an "if".
func (r *reader) wonders() bool {
	for i := range r.signs {
		switch r.signs[i].sense {
		case "if", "how", "what", "why", "ask=next", "ask=help", "ask=why", "canq", "whenq", "howmany", "which", "?":
			return true
		}
	}
	return false
}

// eitherAct: "कुदाल से पलटूँ या फावड़े से", shall I do it this way or that.
func (c *clause) eitherAct() bool {
	if !c.has("or") {
		return false
	}
	for i := range c.signs {
		s := &c.signs[i]
		if s.hindi() && act(s.sense) && c.orPlace(i+1) && (strings.HasSuffix(s.text, "e") || strings.HasSuffix(s.text, "ें")) {
			return true // "upar dale ya neeche"
		}
		if !s.hindi() || !act(s.sense) || s.tense&order == 0 || s.tense&(past|future) != 0 {
			continue
		}
		for _, e := range [...]string{"ूँ", "ूं", "ऊँ", "ऊं", "u", "un", "oon"} {
			if strings.HasSuffix(s.text, e) {
				return true
			}
		}
	}
	return false
}

// orPlace says whether "or" and another place follow at sign i.
func (c *clause) orPlace(i int) bool {
	return i+1 < len(c.signs) && c.signs[i].sense == "or" && oneOf(c.signs[i+1].sense, "edge", "inside")
}

// holds says whether any sign of the message has one of the senses.
func (r *reader) holds(senses ...string) bool {
	for i := range r.signs {
		if oneOf(r.signs[i].sense, senses...) {
			return true
		}
	}
	return false
}

// endsStatement says whether a word is a finite Hindi verb, after which "par" is but.
func endsStatement(w string) bool {
	switch w {
	case "है", "हैं", "था", "थी", "थे", "दिया", "दी", "दिए", "लिया", "ली", "लिए", "गया", "गई", "गए", "हुआ", "हुई", "हुए", "किया", "आया", "आई", "आए",
		"निकला", "निकली", "निकले", "लगा", "लगी", "लगे", "रहा", "रही", "रहे", "hai", "hain", "h", "tha", "thi", "the", "diya", "di", "diye", "liya", "li", "liye",
		"gaya", "gayi", "gai", "gaye", "gya", "gyi", "gye", "hua", "hui", "hue", "kiya", "aaya", "aayi", "aaye", "nikla", "nikli", "nikle", "laga", "lagi", "lage", "raha", "rahi", "rahe":
		return true
	}
	return false
}

func described(cur []sign) bool {
	for i := range cur {
		if property(cur[i].sense) != "" {
			return true
		}
	}
	return false
}

// declines says whether a denied infinitive at sign i is the farmer's own no: "me" or
// "let it be" beside it, or "is" as its only verb.
func (c *clause) declines(i int) bool {
	is := false
	for k := i + 1; k < len(c.signs); k++ {
		switch c.signs[k].sense {
		case "is":
			is = true
		case "not", "filler", "skip", "me", "chat=thanks":
		default:
			return false
		}
	}
	return is || c.has("me", "skip")
}
