package understand

import (
	"slices"
	"strings"
)

// hindiVerbs gives a bare stem the tense of the verb that carries it: palat diya,
// palat dunga, turn kar diya, palat raha hun; and "hice el volteo".
func (r *reader) hindiVerbs() {
	out := r.signs[:0]
	for i := range r.signs {
		s := r.signs[i]
		if n := len(out); n > 0 {
			k := n - 1
			for k > 0 && k > n-3 && (out[k].sense == "filler" || out[k].sense == "not" || out[k].sense == "no" || out[k].sense == "very" || out[k].sense == "now") {
				k--
			}
			p := &out[k]
			hindi := s.tongue == hi || s.tongue == hiLatn
			verb := act(p.sense) || verbal(p.sense) || quality(p.sense) && p.tense != 0
			carried := p.tense&(bare|order|participle|past|present) != 0 && verb
			if hindi && (s.text == "ke" || s.text == "k" || s.text == "के" || s.text == "कर" || s.text == "kar" || s.text == "kr") && p.tense&bare != 0 && act(p.sense) && p.sense != "do" && !strings.HasSuffix(p.text, "ne") && !strings.HasSuffix(p.text, "ने") && r.verbAhead(i+1) {
				p.tense = past // "pani dal ke dhak diya": having put, covered
				p.to = s.to
				continue
			}
			if hindi && (s.text == "ki" || s.text == "की" || s.text == "का" || s.text == "ka") && (strings.HasSuffix(p.text, "ne") || strings.HasSuffix(p.text, "ने")) && p.to == s.from && s.to == s.from+1 {
				s.sense, s.tense = "filler", 0 // "palatne ki": of turning
			}
			if hindi && carried {
				switch s.sense {
				case "put":
					if p.tense&bare == 0 || !act(p.sense) && !verbal(p.sense) {
						break
					}
					p.tense, p.neg, p.to = s.tense, p.neg || s.neg, s.to
					continue
				case "give", "take", "go", "stay", "do":
					if p.tense&past != 0 && p.tense&bare == 0 && s.tense&past != 0 && s.sense != "go" {
						break
					}
					if p.sense == "do" && s.sense == "do" || s.sense == "go" && s.tense&past != 0 && p.to == s.from && p.tense&past == 0 && (strings.HasSuffix(p.text, "ने") || strings.HasSuffix(p.text, "ne")) {
						break // "parat lagane gaye": went to lay it
					}
					if s.sense == "do" && p.tongue != en && !inDim(p.sense, "did") && p.sense != "collect" && p.sense != "make" && p.sense != "stir" && p.sense != "open" && (!verbal(p.sense) || oneOf(p.sense, "eat", "drink", "come", "leave", "goout", "die")) {
						break
					}
					p.tense = s.tense
					if s.sense == "go" && s.tense&past != 0 {
						p.pass = true
					}
					p.neg = p.neg || s.neg
					p.to = s.to
					continue
				}
			}
			if hindi && verb && p.tense&bare != 0 && act(p.sense) && p.to == s.from && managed(s.text) {
				p.tense, p.to = past, s.to // "पलट पाया", "palat saka"
				continue
			}
			if hindi && verb && act(p.sense) && p.tense&past != 0 && p.to == s.from && oneOf(s.text, "होगा", "होगी", "होंगे", "hoga", "hogi", "honge") {
				s.sense = "maybe" // "पलट दिया होगा": must have
			}
			if hindi && (s.text == "hi" || s.text == "ही") && p.to == s.from && p.tense&present != 0 && act(p.sense) && (strings.HasSuffix(p.text, "te") || strings.HasSuffix(p.text, "ते")) {
				p.tense, p.to = past, s.to // "kholte hi": as soon as it was opened
				continue
			}
			if hindi && s.sense == "prog" && verb {
				p.tense = ongoing
				p.to = s.to
				continue
			}
		}
		out = append(out, s)
	}
	r.signs = out
	for i := range r.signs { // "school ki fees": of, not did
		if s := &r.signs[i]; s.sense == "do" && (s.text == "ki" || s.text == "की") && s.to == s.from+1 {
			s.sense, s.tense = "filler", 0
		}
	}
	for i := range r.signs { // "I did the turning"
		s := &r.signs[i]
		if s.sense == "do" && s.tongue == fr && s.text == "fait" && i > 0 && act(r.signs[i-1].sense) && r.signs[i-1].tense == bare {
			r.signs[i-1].tense = past // "tamisage fait"
		}
		if s.sense != "do" || s.tense&(past|participle|future) == 0 || s.tongue == hi || s.tongue == hiLatn {
			continue
		}
		for k := i + 1; k < len(r.signs) && k <= i+3; k++ {
			n := &r.signs[k]
			if inDim(n.sense, "did") && n.tense&(bare|ongoing) != 0 || n.sense == "collect" && n.tense&bare != 0 {
				n.tense, n.neg = s.tense, n.neg || s.neg
				s.sense = "filler"
				break
			}
			if n.sense != "filler" && n.sense != "not" {
				break
			}
		}
	}
}

// verbAhead says whether a finished act follows before the next mark.
func (r *reader) verbAhead(i int) bool {
	return slices.ContainsFunc(r.toMark(i), func(s sign) bool { return act(s.sense) && s.sense != "do" })
}

func verbal(sense string) bool {
	switch sense {
	case "look", "burn", "cut", "bite", "maul", "drink", "eat", "die", "leave", "goout", "come", "hold", "breathe", "use", "sell", "give", "finish", "start":
		return true
	}
	return false
}

// kals reads Hindi kal and parson by the verb: behind with a past, ahead with a
// future; without a verb they stay open.
func (r *reader) kals(cs []clause) {
	for i := range cs {
		c := &cs[i]
		k := c.find("kal")
		p := c.find("parson")
		if k < 0 && p < 0 {
			continue
		}
		var t tense
		for at := range c.signs {
			s := &c.signs[at]
			if act(s.sense) || verbal(s.sense) || s.sense == "give" || s.sense == "go" || s.sense == "take" || s.sense == "will" || s.sense == "" {
				t |= s.tense
			}
			if s.sense == "will" {
				t |= future
			}
			if s.sense == "was" || s.sense == "done" {
				t |= past
			}
		}
		for j := i + 1; t == 0 && j < len(cs) && cs[j-1].end != "." && cs[j-1].end != "?"; j++ {
			for _, s := range cs[j].signs {
				if act(s.sense) {
					t |= s.tense
				}
			}
		}
		if t == 0 && c.has("if", "whatif") && c.has("weather", "rainword") {
			t = future // "बारिश न हुई तो कल"
		}
		at, sense := k, "tomorrow"
		if k < 0 {
			at, sense = p, "later"
		}
		if t&(past|future) == 0 && c.isToBe() {
			t = future // "कल पलटना है"
		}
		if t&(past|future) == 0 && t&present != 0 && c.ask == telling && !c.has("was") {
			t = future // "कल करते हैं": let us do it tomorrow
		}
		switch {
		case t&future != 0 || c.cant:
			c.signs[at].sense = sense
			c.tomorrow = c.tomorrow || sense == "tomorrow"
			c.later = c.later || sense == "later"
		case t&past != 0:
			c.signs[at].sense = "past"
		}
	}
}

// managed: Hindi "could", done unless a not stands by it.
func managed(w string) bool {
	switch w {
	case "पाया", "पाई", "पाए", "पाये", "सका", "सकी", "सके", "paya", "payi", "paye", "saka", "saki", "sake",
		"आया", "आई", "आए", "आये", "आयी", "aaya", "aya", "aayi", "ayi", "aai", "aaye", "aae", "aye": // went and did
		return true
	}
	return false
}

// isToBe: a Hindi infinitive before "is", "पलटना है": it is to be done.
func (c *clause) isToBe() bool {
	for i := 1; i < len(c.signs); i++ {
		if p := &c.signs[i-1]; c.signs[i].sense == "is" && act(p.sense) && p.hindi() && p.tense&bare != 0 {
			return c.ask == telling
		}
	}
	return false
}
