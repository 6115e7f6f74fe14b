package understand

import "slices"

// relatives tells a joining word from a question word: Spanish "que" typed without
// its accent, "who" in "my neighbour who helped", "kama kilo 15". Such a word asks
// at the head of a clause or before a question mark.
func (r *reader) relatives() {
	head := true
	for i := range r.signs {
		s := &r.signs[i]
		first := head
		head = r.tokens[s.from].kind == mark || oneOf(s.sense, "and", "but", "chat=hello", "ok", "yes", "no")
		switch s.sense {
		case "atall":
			if s.text == "nada" && s.to == s.from+2 && i+1 < len(r.signs) && inDim(r.signs[i+1].sense, "stick") && (i == 0 || r.signs[i-1].sense != "not") {
				s.sense = "not" // "nada de frío, está hirviendo"
			}
			continue
		case "not":
			if s.text == "no" && s.tongue == es && i > 0 && quality(r.signs[i-1].sense) && r.word(s.to) == "mas" && (i+2 >= len(r.signs) || r.tokens[r.signs[i+2].from].kind == mark) {
				s.sense = "only" // "tibio no más"
			}
			continue
		case "ordinal":
			if s.text == "nd" && i > 0 && r.signs[i-1].sense != "num" {
				s.sense = "and" // "layer is down nd i poured water"
			}
			continue
		case "askif", "canq":
			if s.sense == "askif" && s.tongue == en && !first && i > 0 && !r.asks(i) && (oneOf(r.signs[i-1].sense, "heap", "stick", "bottle", "cap", "bed", "layer") || r.signs[i-1].text == "sieve") && s.to > s.from+1 {
				s.sense = "is" // "sieve is at the church"
				continue
			}
			if s.sense == "askif" && s.tongue == en && i > 0 && r.signs[i-1].sense == "will" {
				s.sense = "filler" // "gonna do the squeeze test"
				continue
			}
			if s.sense == "askif" && r.word(s.from) == "do" && i+2 == len(r.signs) && (r.signs[i+1].sense == "layer" || act(r.signs[i+1].sense)) {
				s.sense, r.signs[i+1].tense = "filler", order // "do the layer", "do the turning"
				continue
			}
			last := i+1 == len(r.signs) || r.tokens[r.signs[i+1].from].kind == mark && r.signs[i+1].sense != "?"
			if last && !first && s.tongue == en {
				s.sense = "is" // "the heat is there"
			}
			continue
		case "why":
			if (s.text == "para" || s.text == "pa") && s.to < len(r.tokens) && r.tokens[s.to].kind == word && !r.asks(i) {
				s.sense = "filler" // "para que saliera el gas": so that
			}
			continue
		case "what", "how", "whenq", "who", "which", "if":
			if s.text == "how" && !first && i > 0 && r.signs[i-1].sense == "is" && !r.asks(i) {
				s.sense = "filler" // "that is how it feels"
				continue
			}
			if s.sense == "who" && s.tongue == en && i > 0 && r.signs[i-1].sense == "person" && !r.asks(i) {
				s.sense = "filler" // "the man who does the turning"
				if i+1 < len(r.signs) && r.signs[i+1].sense == "askif" {
					r.signs[i+1].sense = "filler"
				}
				continue
			}
		case "while":
			if r.atEnd(i) && r.signs[i-1].sense != "filler" && oneOf(s.text, "when", "cuando") {
				s.sense = "whenq" // "ready when"
			}
			continue
		case "known":
			if first && s.text == "can" && (r.asks(i) || i+2 < len(r.signs) && (inDim(r.signs[i+1].sense, "material") || inDim(r.signs[i+1].sense, "crop") || inDim(r.signs[i+1].sense, "seen") || r.signs[i+1].sense == "worm")) {
				s.sense = "canq" // "can maize cobs go in?"
			}
			continue
		default:
			continue
		}
		if s.sense == "whenq" && first && !r.asks(i) && r.dated(i) {
			s.sense = "while" // "quand c'était sec j'ai retourné"
			continue
		}
		if s.sense == "whenq" && first && r.untilThen(i) {
			s.sense = "while" // "quand ça sera sec je tamise"
			continue
		}
		if i+1 < len(r.signs) && (s.text == "como" || s.text == "kama") {
			if n := r.signs[i+1]; n.sense == "num" || inDim(n.sense, "unit") || n.sense == "degree" {
				s.sense = "filler" // about so much
				continue
			}
		}
		if s.text == "como" && i+1 < len(r.signs) && !r.asks(i) && r.likened(i+1) {
			s.sense = "filler" // "como a cerveza": like beer
			continue
		}
		if s.sense == "whenq" && !first && slices.ContainsFunc(r.signs[:i], func(o sign) bool { return o.sense == "canq" }) &&
			slices.ContainsFunc(r.toMark(i+1), func(o sign) bool { return o.sense == "weather" || o.sense == "rainword" || quality(o.sense) }) {
			s.sense = "while" // "faut-il retourner quand il pleut ?"
			continue
		}
		if first || s.sense == "if" || r.asks(i) || s.sense == "whenq" && r.atEnd(i) {
			continue
		}
		switch s.text {
		case "que", "q", "ke", "como", "komo", "who", "which", "where", "quien", "qui", "donde", "ou":
			s.sense = "filler"
		case "cuando", "quand", "when", "wen", "whn":
			s.sense = "while"
		}
	}
}

// dated says whether "when" at sign i tells of what has been: a past state and an act
// done follow.
func (r *reader) dated(i int) bool {
	was := false
	for k, s := range r.toMark(i + 1) {
		was = was || s.sense == "was" || s.tongue == fr && k == 0 && (s.sense == "have" || s.sense == "didaux") // "quand j'ai tiré le bâton"
		if was && act(s.sense) && s.tense&(past|participle) != 0 {
			return true
		}
	}
	return false
}

// untilThen says whether "when" at sign i names the time of an act that follows its
// own clause, with no question mark: "when it is dry I sieve".
func (r *reader) untilThen(i int) bool {
	state := false
	for k := i + 1; k < len(r.signs) && !r.asks(i); k++ {
		s := &r.signs[k]
		if r.tokens[s.from].kind == mark && s.sense != "," {
			return false
		}
		if state && inDim(s.sense, "did") && s.tense&(present|future|bare) != 0 {
			return true
		}
		state = state || quality(s.sense) || s.sense == "weather" || s.sense == "rainword" || s.sense == "finish" || s.sense == "come"
	}
	return false
}

// likened says whether a thing to be compared with follows, past small words.
func (r *reader) likened(i int) bool {
	for ; i < len(r.signs); i++ {
		s := &r.signs[i]
		if s.sense == "" && i+1 < len(r.signs) && quality(r.signs[i+1].sense) {
			continue // "como refresco helado"
		}
		if s.sense == "rag" || s.sense == "cloth" {
			return true // "como un trapo recién exprimido"
		}
		if s.sense == "whenq" || s.sense == "while" {
			continue // "como cuando orinan las chivas"
		}
		if s.sense != "filler" && s.sense != "rangeto" && s.sense != "one" {
			return quality(s.sense) || inDim(s.sense, "material")
		}
	}
	return false
}

// atEnd says whether nothing follows sign i, and something stands before it.
func (r *reader) atEnd(i int) bool {
	return i > 0 && i+1 == len(r.signs)
}

// asks says whether the next full stop after sign i is a question mark.
func (r *reader) asks(i int) bool {
	for ; i < len(r.signs); i++ {
		switch r.signs[i].sense {
		case "?":
			return true
		case ".", "!", "\n":
			return false
		}
	}
	return false
}
