package understand

import "slices"

// bind ties every "not" and every word of degree to what it is about.
func (r *reader) bind(c *clause) {
	for i := range c.signs {
		switch s := &c.signs[i]; s.sense {
		case "not", "nor", "no", "neither":
			if s.sense != "no" || len(c.signs) > 1 {
				r.deny(c, i)
			}
		case "num":
			if s.value == 0 {
				r.deny(c, i) // "zero smell"
			}
		case "notyet":
			r.denyNext(c, i)
		case "nothing":
			c.denySeen(i)
		}
	}
	for i := range c.signs { // "no huele mal": what is denied is how it smells
		s := &c.signs[i]
		if s.sense == "smell=none" && i+1 < len(c.signs) {
			if k := c.smelt(i); k != i {
				s.sense, c.signs[k].neg = "smell", true
			}
		}
	}
	for i := range c.signs {
		c.grade(i)
	}
}

// deniable says whether a "not" can be about a sign.
func deniable(s *sign) bool {
	if quality(s.sense) || act(s.sense) {
		return true
	}
	switch s.sense {
	case "gas", "smell", "drop", "burn", "cut", "bite", "drink", "breathe", "ready", "wrong", "want", "water", "nothing",
		"goout", "enough", "will", "did", "moving", "worry", "continue", "weather", "rainword":
		return true
	}
	return false
}

// deny ties the "not" at sign i.
func (r *reader) deny(c *clause, i int) {
	s := &c.signs[i]
	t := r.negated(c, i)
	if t < 0 {
		return
	}
	if s.tongue == sw && i == len(c.signs)-2 && c.signs[i+1].sense == "very" && t < i {
		c.signs[t].grade = slightly // "joto kidogo tu, si sana"
		c.signs[i+1].sense = "filler"
		return
	}
	if c.signs[t].to > c.signs[t].from+1 && c.signs[t].denies() {
		return // "no está ni seco ni mojado": the phrase denies already
	}
	if t > i && s.tongue == sw && s.text == "hapana" && r.lex.verbPrefix(r.word(c.signs[t].from)) > 2 {
		return // "hapana nimegongwa na nge": an answer, and then what happened
	}
	if s.tongue == en && c.signs[t].sense == "smell=none" {
		return // "I don't smell nothing"
	}
	if c.signs[t].sense == "smell" {
		t = c.smelt(t)
	}
	c.signs[t].neg = true
	for k := t - 1; k >= 0 && s.hindi() && inDim(c.signs[t].sense, "smell") && inDim(c.signs[k].sense, "smell"); k-- {
		c.signs[k].neg = true // "सड़ने की बदबू अब नहीं रही"
	}
	for k := t + 1; k+1 < len(c.signs); k++ { // "not hot or cold": what "or" joins shares the not
		if c.signs[k].sense == "or" && quality(c.signs[k+1].sense) {
			c.signs[k+1].neg = true
		}
	}
}

// negated is the sign that the "not" at sign i is about, or -1: in each tongue where its
// grammar puts it, else what follows, else what stands before.
func (r *reader) negated(c *clause, i int) int {
	s := &c.signs[i]
	if i == 1 && len(c.signs) == 2 && (s.tongue == sw && s.text == "hapana" && quality(c.signs[0].sense) || s.text == "non" && inDim(c.signs[0].sense, "did")) {
		return 0 // "moto hapana", "retourné non"
	}
	t := -1
	switch {
	case s.hindi() && s.sense != "nor":
		t = c.negatedBefore(i)
	case s.tongue == fr && s.text != "ne" && s.text != "n":
		t = c.negatedWithin(i)
	}
	if t < 0 {
		t = c.negatedAfter(i)
	}
	if t < 0 && (s.sense != "no" && s.sense != "num" || i > 0 && heat(&c.signs[i-1])) {
		t = r.negatedBehind(c, i) // an answering "no" denies nothing before it, but "heat no come", "chaleur zéro" do
	}
	return t
}

// negatedBefore: a Hindi "नहीं" follows what it denies; in "pani nahi dala" the verb is
// denied, not the water.
func (c *clause) negatedBefore(i int) int {
	for k := i - 1; k >= 0; k-- {
		s := &c.signs[k]
		if !deniable(s) {
			switch s.sense {
			case "filler", "is", "very", "atall", "bit", "too", "enough", "was", "now":
				continue
			}
			return -1
		}
		if s.sense == "water" || s.sense == "gas" {
			for v := i + 1; v < len(c.signs); v++ {
				if act(c.signs[v].sense) {
					return v
				}
			}
		}
		return k
	}
	return -1
}

// negatedWithin: French "ne ... pas" is one denial, of what stands between; but in "ne sent
// pas mauvais" the second word denies what follows.
func (c *clause) negatedWithin(i int) int {
	t := -1
	for j := i - 1; j >= 0 && j >= i-4 && t < 0; j-- {
		if c.signs[j].sense != "not" || c.signs[j].text != "ne" && c.signs[j].text != "n" {
			continue
		}
		for k := j + 1; k < i; k++ {
			if deniable(&c.signs[k]) && c.signs[k].tense&participle == 0 {
				t = k
			}
		}
	}
	if t >= 0 && !act(c.signs[t].sense) && c.signs[t].sense != "weather" && c.signs[t].sense != "rainword" {
		return -1
	}
	return t
}

// negatedAfter: "not hot", up to another "not".
func (c *clause) negatedAfter(i int) int {
	for k := i + 1; k < len(c.signs); k++ {
		s := &c.signs[k]
		if deniable(s) {
			return k
		}
		if s.sense == "nor" || s.sense == "not" && s.tongue != fr || s.sense == "hold" && c.has("couldnt") {
			return -1 // but not "no pude ni agarrarlo de lo que quemaba"
		}
	}
	return -1
}

// negatedBehind: for want of anything after it, what stands before.
func (r *reader) negatedBehind(c *clause, i int) int {
	for k := i - 1; k >= 0; k-- {
		s := &c.signs[k]
		switch {
		case c.signs[i].hindi() && inDim(s.sense, "smell") && k+1 < i && c.signs[k+1].sense == "": // "बदबू के मारे खड़ा नहीं रहा जाता": another verb is denied
			return -1
		case quality(s.sense) && oneOf(r.word(s.to), "que", "qu", "that"): // "si gonflée qu'elle ne tenait plus"
			return -1
		case c.signs[i].hindi() && s.sense == "look" && c.has("or"): // "सख्त है या नरम, देखा नहीं"
			return -1
		case s.sense == "body" && c.signs[i].tongue != en: // "itni garam ki haath nahi tikta"
			return -1
		case deniable(s):
			return k
		}
	}
	return -1
}

// denyNext: "todavía no calienta", "not yet hot".
func (r *reader) denyNext(c *clause, i int) {
	s := &c.signs[i]
	if r.names(s, "queda", "quedan") {
		return // "aún queda calor"
	}
	if k := c.back(i-1, "is", "filler", ""); k >= 0 && heat(&c.signs[k]) && s.tongue != sw && (s.hindi() && oneOf(c.signs[i-1].text, "hona", "honi", "होना", "होनी") || !s.hindi() && c.signs[k].sense == "heat") {
		c.signs[k].neg = true // "the heat is yet to come", "garam hona baki hai"
	}
	if s.tongue != es && s.tongue != en {
		return
	}
	for k := i + 1; k < len(c.signs); k++ {
		s := &c.signs[k]
		if quality(s.sense) {
			s.neg = true
			return
		}
		switch s.sense {
		case "", "hold", "filler", "is", "very", "bit", "too", "enough", "have":
		default:
			return
		}
	}
}

// denySeen: "dhuan kuch nahi dikha", with an echo of the word between them: "dhuan wuan".
func (c *clause) denySeen(i int) {
	for k := i - 1; c.signs[i].hindi() && k >= 0; k-- {
		s := &c.signs[k]
		if inDim(s.sense, "seen") {
			s.neg = true
		}
		if s.sense != "filler" && s.sense != "" && s.sense != "known" {
			return
		}
	}
}

// denies says whether a phrase holds its own denial.
func (s *sign) denies() bool {
	switch s.text {
	case "ni", "neither", "nor", "not", "no", "pas", "sin", "sans", "nada", "nadita", "plus", "aucun", "aucune", "cero", "zero", "rien", "ningun", "ninguna", "nunca", "jamas", "jamais", "never", "without", "none",
		"haina", "halina", "hakina", "hakuna", "hamna", "haijapata", "halijapata", "hakijapata", "haitoi", "halitoi", "bila":
		return true
	}
	return false
}

// grade ties the word of degree at sign i to the quality it grades.
func (c *clause) grade(i int) {
	s := &c.signs[i]
	var g grade
	denies := false
	switch s.sense {
	case "very", "too":
		if i > 0 && c.signs[i-1].sense == "squeeze" {
			return // "en pressant fort"
		}
		g = strongly
	case "bit":
		g = slightly
	case "atall":
		g = notAtAll
		denies = s.text == "ni" || s.text == "pas" || s.text == "meme" || s.text == "aucunement"
	default:
		return
	}
	t := c.graded(i)
	if t < 0 {
		return
	}
	q := &c.signs[t]
	if q.neg && s.text == "kabisa" {
		g = notAtAll // "haina moto kabisa"
	}
	if q.grade == plainly || g == notAtAll {
		q.grade = g
		q.neg = q.neg || denies // "ni tantito tibio"
	}
}

// graded is the quality within four signs of a word of degree, or -1: after it, and in
// Swahili before it, else on the other side.
func (c *clause) graded(i int) int {
	after := func() int {
		for k := i + 1; k < len(c.signs) && k <= i+4; k++ {
			if quality(c.signs[k].sense) {
				return k
			}
			if c.signs[k].sense == "inside" || c.signs[k].sense == "edge" {
				break
			}
		}
		return -1
	}
	before := func() int {
		for k := i - 1; k >= 0 && k >= i-4; k-- {
			if quality(c.signs[k].sense) {
				return k
			}
		}
		return -1
	}
	near, far := after, before
	if c.signs[i].tongue == sw {
		near, far = before, after
	}
	if k := near(); k >= 0 {
		return k
	}
	return far()
}

// smelt is the sign that says how it smells after sign i, past small words; i itself
// when none does.
func (c *clause) smelt(i int) int {
	for k := i + 1; k < len(c.signs); k++ {
		s := &c.signs[k]
		switch {
		case inDim(s.sense, "smell") && s.sense != "smell=none", s.sense == "bad", s.sense == "good", s.sense == "burnt":
			return k
		case s.sense == "filler", s.sense == "inside_of", s.sense == "rangeto", s.sense == "very", s.sense == "too", s.sense == "bit", s.sense == "one", s.sense == "have", s.sense == "smell", s.sense == "know":
		default:
			return i
		}
	}
	return i
}

// freed says whether a clause tells of a trouble that is not there, or no longer.
func (c *clause) freed() bool {
	return c.ask == telling && !c.doubt && !c.cond && slices.ContainsFunc(c.signs, func(s sign) bool {
		switch s.sense {
		case "seen=flies", "seen=maggots", "seen=ants", "seen=termites", "seen=rodents", "seen=mould", "seen=runoff", "seen=weeds", "smell=rotten", "smell=ammonia":
			return s.neg
		}
		return false
	})
}

// vanish takes back the smell or the sight that is gone, which stands before the word that says
// so or, in Spanish, behind it: "the flies are gone", "ya se fueron las moscas". Smoke and fire
// are told all the same.
func (c *clause) vanish() {
	i := c.find("vanished")
	if i < 0 {
		return
	}
	gone := func(s *sign) bool {
		return inDim(s.sense, "smell") || inDim(s.sense, "seen") && s.sense != "seen=smoke" && s.sense != "seen=fire"
	}
	before := false
	for k := 0; k < len(c.signs) && !(before && k > i); k++ {
		if gone(&c.signs[k]) {
			c.signs[k].neg, before = true, before || k < i
		}
	}
}

// heat says whether a sign tells of heat.
func heat(s *sign) bool { return oneOf(s.sense, "heat", "stick=hot", "joto", "moto") }
