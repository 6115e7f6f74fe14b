package understand

import "strings"

// suffers says whether what was hurt at sign i is an animal: "a snake bit my goat", "mon
// chien a été piqué", "बकरी को मधुमक्खी ने काटा". It is not when a person is named at
// all, or may be meant: no danger is missed for an animal's sake.
func (r *reader) suffers(c *clause, i int) bool {
	if r.namesSomebody(c) || r.hurtsMe(c) {
		return false
	}
	s := &c.signs[i]
	if s.sense == "harm=swallowed" {
		return c.hasBeast() // who drinks is who suffers
	}
	passive := r.passive(s)
	if !s.hindi() && !passive && c.beside(i, 1) >= 0 {
		return true // "bit my goat"
	}
	if s.hindi() {
		for k := range c.signs {
			if !c.signs[k].beast() {
				continue
			}
			switch r.word(c.signs[k].to) {
			case "को", "ko":
				return true // "बकरी को"
			case "के", "ke", "का", "ka", "की", "ki":
				if k+1 == i || k+2 == i || k+2 < len(c.signs) && (c.signs[k+1].sense == "body" || c.signs[k+2].sense == "body") {
					return true // "गाय का पैर", but not "गाय का चारा"
				}
			}
		}
		k := c.beside(i, -1)
		return k >= 0 && !bites(s.sense) && !oneOf(r.word(c.signs[k].to), "ने", "ne")
	}
	k := c.beside(i, -1)
	if k < 0 {
		return false
	}
	// what stands before a bite did it, but for "was bitten" and "a mi perro lo picó"
	return !bites(s.sense) || passive || oneOf(r.word(c.signs[k].from-1), "al") || oneOf(r.word(c.signs[k].from-2), "a")
}

// namesSomebody says whether a clause names a person who may be the one hurt, and not only whose
// beast it was: "ndama wa jirani".
func (r *reader) namesSomebody(c *clause) bool {
	for k := range c.signs {
		s := &c.signs[k]
		if s.sense != "person" && s.sense != "neighbor" {
			continue
		}
		if of := c.back(k-1, "filler"); of < 0 || !c.signs[of].beast() || !oneOf(r.word(s.from-1), "wa", "ya", "de", "du", "del", "of") {
			return true
		}
	}
	return false
}

func bites(sense string) bool { return sense == "bite" || sense == "harm=bite" }

// beside finds the animal that stands next to sign i, small words aside; -1 for none.
func (c *clause) beside(i, step int) int {
	for k := i + step; k >= 0 && k < len(c.signs); k += step {
		switch c.signs[k].sense {
		case "filler", "one", "me", "mine", "rangeto", "while", "is", "was", "have", "didaux":
		default:
			if c.signs[k].beast() {
				return k
			}
			return -1
		}
	}
	return -1
}

func (s *sign) beast() bool { return s.sense == "animal" || inDim(s.sense, "animal") }

// hasBeast says whether a clause names an animal.
func (c *clause) hasBeast() bool {
	for i := range c.signs {
		if c.signs[i].beast() {
			return true
		}
	}
	return false
}

// passive: was bitten, a été piqué, fue mordido, ameumwa, amejikata.
func (r *reader) passive(s *sign) bool {
	if s.pass || s.self || r.names(s, "was", "were", "got", "been", "gets", "being", "fue", "fueron", "ete", "s", "se") {
		return true
	}
	for _, t := range r.tokens[s.from:s.to] {
		if s.tongue == sw && (strings.HasSuffix(t.text, "wa") || strings.HasPrefix(t.text, "ameji") || strings.HasPrefix(t.text, "wameji")) {
			return true
		}
	}
	return false
}

// hurtsMe says whether the speaker may be the one who was hurt. "My" alone does not: it
// may be my cow, but "my leg" is.
func (r *reader) hurtsMe(c *clause) bool {
	if r.says(c, "me") && r.best != hi && r.best != hiLatn || r.says(c, "i", "im", "ive", "us", "we", "myself", "yo", "nos", "m", "moi", "nous", "je", "j",
		"mujhe", "mujhko", "hame", "hamein", "main", "mai", "mere", "meri", "mera", "मुझे", "मुझको", "हमें", "मैं", "मेरे", "मेरी", "मेरा", "mimi", "sisi") && !c.ownBeast(r) {
		return true
	}
	for i := range c.signs {
		s := &c.signs[i]
		if s.mine {
			return true
		}
		if s.sense == "body" || s.sense == "eye" {
			if oneOf(r.word(s.from-1), "my", "mi", "mis", "mon", "ma", "mes") || oneOf(r.word(s.to), "wangu", "yangu", "langu", "changu", "zangu") {
				return true
			}
		}
		for _, t := range r.tokens[s.from:s.to] {
			if r.rank[sw] <= 1 && (strings.Contains(t.text, "meni") || strings.Contains(t.text, "lini") || strings.Contains(t.text, "metu") || strings.Contains(t.text, "litu")) {
				return true // "ameniuma": bit me
			}
		}
	}
	return false
}

// ownBeast says whether the only word for the speaker owns an animal: "मेरी बकरी".
func (c *clause) ownBeast(r *reader) bool {
	n := 0
	for i := range c.signs {
		s := &c.signs[i]
		if s.sense == "me" || s.sense == "mine" {
			if !s.hindi() || !oneOf(s.text, "mere", "meri", "mera", "मेरे", "मेरी", "मेरा") || i+1 == len(c.signs) || !c.signs[i+1].beast() {
				return false
			}
			n++
		}
	}
	return n > 0
}

// neighborBurns: "पड़ोसी जल गया ढेर से", and not the neighbour's heap.
func (r *reader) neighborBurns(c *clause, i int) bool {
	n := c.find("neighbor")
	return n >= 0 && c.signs[n].hindi() && n < i && !oneOf(r.word(c.signs[n].to), "का", "के", "की", "ka", "ke", "ki")
}

// strikes says whether a verb's object is a person: "cut the neighbour", "coupé mon
// fils", and not "cut the neighbour's grass".
func (r *reader) strikes(c *clause, i int) bool {
	for k := i + 1; k < len(c.signs); k++ {
		switch c.signs[k].sense {
		case "filler", "one", "me", "mine", "while":
		case "person", "neighbor":
			if k+1 == len(c.signs) {
				return true
			}
			next := c.signs[k+1].sense
			owner := c.signs[k].tongue == en && strings.HasSuffix(r.word(c.signs[k].to-1), "s")
			return !(next == "" && owner) && next != "known" && next != "plant" && next != "foreign" && !inDim(next, "material") && !inDim(next, "crop")
		default:
			return false
		}
	}
	return false
}
