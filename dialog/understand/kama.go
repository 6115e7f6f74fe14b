package understand

import "strings"

// swahiliTurns gives Swahili words that look both ways the sense their neighbours ask
// for, before the clauses are cut.
func (r *reader) swahiliTurns() {
	for i := range r.signs {
		s := &r.signs[i]
		if s.text == "humo" && s.tongue == es && r.rank[sw] == 0 && i > 0 && r.signs[i-1].sense == "" {
			s.sense = "inside" // "panya wamejichimbia humo": in there; Spanish smoke
			continue
		}
		if s.tongue != sw {
			continue
		}
		switch s.sense {
		case "and":
			if s.text == "tena" && i+1 < len(r.signs) && r.signs[i+1].sense == "whenq" {
				s.sense = "filler" // "nageuza tena lini": again
			}
		case "stick=hot":
			if s.text == "kama" && i > 0 && inDim(r.signs[i-1].sense, "seen") {
				s.sense = "filler" // "moshi kama jiko"
			}
		case "if":
			if s.text == "kama" && i > 0 && oneOf(r.signs[i-1].text, "naona", "ninaona", "tunaona", "naonaga", "nimeona", "niliona", "nahisi") {
				s.sense = "filler" // "naona kama moshi unatoka": as it were
			} else if s.text == "kama" && r.likeness(i) {
				s.sense = "filler"
				for k := i + 1; k < len(r.signs) && r.tokens[r.signs[k].from].kind != mark; k++ {
					if act(r.signs[k].sense) || r.signs[k].text == "mto" || r.signs[k].sense == "seen=smoke" && !r.smelt(i) {
						r.signs[k].sense = "filler" // "kama imemwagiwa ndoo", "kama pasi ya mkaa": nobody poured, nothing smokes
					}
				}
			}
		case "very":
			if s.text == "kabisa" && i > 0 && r.signs[i-1].sense == "not" && r.asked == "stick" {
				s.sense = "atall" // "joto halionekani kabisa"
			}
		case "no":
			if s.text == "la" && i > 0 && i+1 < len(r.signs) && r.tokens[r.signs[i-1].from].kind != mark {
				s.sense = "filler" // "tabaka la kwanza": of
				continue
			}
			r.hapana(i)
		case "notyet":
			if s.text == "bado" && s.to == s.from+1 && i+1 < len(r.signs) {
				if n := &r.signs[i+1]; n.tense&(ongoing|present) != 0 && !n.neg && (act(n.sense) || verbal(n.sense)) {
					s.sense = "now" // "bado inachekechwa": is still being sieved
				}
			}
		case "ask=help":
			if strings.HasPrefix(s.text, "sielew") || strings.HasPrefix(s.text, "sijaelew") {
				if r.stated(i) {
					s.sense = "maybe"
				}
			}
		case "green":
			if s.text == "mbichi" && r.asked == "moisture" {
				s.sense = "moisture=wet"
			}
		case "known", "edge", "smell=ammonia", "sharp":
			if (s.text == "kubwa" || s.text == "mkubwa" || s.text == "juu" || s.text == "kali" || s.text == "mkali") && r.heatBefore(i) {
				s.sense, s.tense = "very", 0 // "joto liko juu", "joto si kubwa"
			}
			if (s.text == "mdogo" || s.text == "dogo") && r.heatBefore(i) {
				s.sense = "bit"
			}
		}
	}
}

// likeness tells kama "like" from kama "if": what it is compared with is a thing and
// no verb, and nothing is asked.
func (r *reader) likeness(i int) bool {
	for k := range r.signs {
		switch r.signs[k].sense {
		case "?", "how", "what", "why", "whatif", "ask=next", "ask=help", "canq", "whenq", "howmany", "maybe":
			return false
		}
	}
	compared := false
	for k := i - 1; k >= 0 && r.tokens[r.signs[k].from].kind != mark; k-- {
		p := &r.signs[k]
		if p.tense&future != 0 || p.sense == "will" || p.sense == "tomorrow" || p.sense == "later" {
			return false
		}
		compared = compared || quality(p.sense) || p.sense == "smell" || p.sense == "sharp"
	}
	if i+1 >= len(r.signs) || r.tokens[r.signs[i+1].from].kind == mark {
		return compared
	}
	for k := i + 1; k < len(r.signs) && r.tokens[r.signs[k].from].kind != mark; k++ {
		n := &r.signs[k]
		if n.sense == "is" || n.sense == "was" || n.sense == "have" || n.sense == "not" || n.neg {
			return false
		}
		if n.tense&(future|unless) != 0 {
			return false
		}
		switch r.tokens[n.from].text {
		case "iko", "liko", "kiko", "ina", "lina", "kina", "ipo", "lipo", "imekuwa", "limekuwa", "kuna":
			return compared && quality(n.sense)
		}
		if act(n.sense) && n.tense != 0 && !compared {
			return false
		}
	}
	return true
}

// hapana: a no before another value of the same thing takes the first back: "baridi,
// hapana ni moto". Without "ni" it may also deny what follows, so it is a doubt.
func (r *reader) hapana(i int) {
	if i == 0 {
		return
	}
	k, linked := i+1, false
	for ; k < len(r.signs) && k <= i+3; k++ {
		n := &r.signs[k]
		if n.sense == "is" || n.sense == "now" || n.sense == "," {
			linked = true
			continue
		}
		if n.sense != "filler" && n.sense != "me" {
			break
		}
		linked = linked || n.text != "hata"
	}
	if k >= len(r.signs) || r.signs[k].neg {
		return
	}
	of := property(r.signs[k].sense)
	if of == "" {
		return
	}
	for p := i - 1; p >= 0 && p >= i-6; p-- {
		if property(r.signs[p].sense) != of {
			continue
		}
		switch {
		case r.signs[p].sense == r.signs[k].sense:
		case linked || r.signs[k].to > r.signs[k].from+1:
			r.signs[i].sense = "correct"
		default:
			r.signs[i].sense = "maybe"
		}
		return
	}
}

func (r *reader) heatBefore(i int) bool {
	for k := i - 1; k >= 0 && k >= i-5; k-- {
		switch r.signs[k].sense {
		case "joto", "moto", "heat":
			return true
		case "filler", "not", "is", "have", "stick", "heap", "inside", "mine":
		default:
			return false
		}
	}
	return false
}

// whileDoing: "nikishika ni moto", "kifua kinabana nikigeuza": when I hold it, with what
// is felt then, and no plan or question in the message.
func (r *reader) whileDoing(c *clause, k int) bool {
	s := &c.signs[k]
	first := strings.HasPrefix(s.text, "niki") || strings.HasPrefix(s.text, "nki") || strings.HasPrefix(s.text, "tuki") || strings.HasPrefix(s.text, "uki")
	before := false
	for i := 0; i < len(r.signs) && r.signs[i].from < s.from; i++ {
		n := &r.signs[i] // "amejikata na panga akikata majani"
		before = before || n.tense&past != 0 || inDim(n.sense, "harm")
	}
	first = first || before
	if !first {
		return false
	}
	felt := false
	for i := range r.signs {
		n := &r.signs[i]
		switch n.sense {
		case "?", "how", "what", "why", "whatif", "ask=next", "ask=help", "canq", "whenq", "howmany":
			return false
		}
		if n.tense&future != 0 {
			return false
		}
	}
	for i := range c.signs {
		n := &c.signs[i]
		hurt := n.sense == "bite" || n.sense == "burn" || n.sense == "cut" || n.sense == "eye"
		felt = felt || i != k && (quality(n.sense) || hurt) && n.tense&unless == 0
	}
	return felt || before
}

// smelt says whether a smell or smoke is spoken of before sign i.
func (r *reader) smelt(i int) bool {
	if r.asked == "smell" {
		return true
	}
	for k := i - 1; k >= 0 && r.tokens[r.signs[k].from].kind != mark; k-- {
		if d := r.signs[k].sense; d == "smell" || inDim(d, "smell") || d == "sharp" || d == "seen=smoke" {
			return true
		}
	}
	return !r.heatIn(i)
}

func (r *reader) heatIn(i int) bool {
	for k := i - 1; k >= 0; k-- {
		if s := &r.signs[k]; property(s.sense) == "stick" || s.sense == "burn" {
			return true
		}
	}
	return false
}
