package understand

import "slices"

// inquiry reads what a message asks, clause by clause, beside what it reports.
type inquiry struct {
	r        *reader
	cs       []clause
	f        *finding
	reported bool // something is reported beside the question
	planned  bool // a deed is
	troubled bool // and it is a trouble, or an if stands before: "what do I do" asks for help
	supposed bool // a clause up to here tells what is only supposed
}

// questions reads ask= codes.
func (r *reader) questions(cs []clause, f *finding) {
	q := inquiry{r: r, cs: cs, f: f, reported: len(f.facts) > 0 || len(f.danger) > 0, troubled: f.troubled()}
	for _, d := range f.deeds {
		q.reported = q.reported || d.outcome == done && d.code != ""
		q.planned = q.planned || d.outcome == planned
	}
	cond := false
	for k := range cs {
		c := &cs[k]
		cond, q.troubled, q.supposed = cond || c.cond, q.troubled || c.cond, q.supposed || c.has("supposed")
		if q.named(k) || q.journey(c) {
			continue
		}
		if q.reported && (c.states == 0 || c.isItGood()) && r.aboutIt(c, slices.ContainsFunc(f.danger, func(code string) bool { return inDim(code, "harm") })) {
			q.add("ask=help")
			continue
		}
		if code := q.byMood(k); code != "" {
			q.add(code)
		}
	}
	// "what if it is cold?" and the question that follows are one
	if len(f.asks) > 1 && cond {
		for i, a := range f.asks {
			if a == "ask=next" {
				f.asks[i] = "ask=help"
			}
		}
		f.asks = unique(f.asks)
	}
}

// troubled says whether what is reported is a trouble, to be helped with.
func (f *finding) troubled() bool {
	return len(f.danger) > 0 || slices.ContainsFunc(f.facts, func(x fact) bool {
		switch x.code {
		case "stick=hot", "moisture=right", "smell=earthy", "smell=none", "seen=steam", "seen=sunk", "seen=worms_well":
			return false
		}
		return !x.doubt && x.dim != "temp"
	})
}

func (q *inquiry) add(code string) {
	if !slices.Contains(q.f.asks, code) {
		q.f.asks = append(q.f.asks, code)
	}
}

// addNext asks for the next step, or for help where there is trouble.
func (q *inquiry) addNext() {
	if q.troubled {
		q.add("ask=help")
		return
	}
	q.add("ask=next")
}

// named reads the words of clause k that name a question, and says whether there are any.
func (q *inquiry) named(k int) (named bool) {
	c := &q.cs[k]
	for i := range c.signs {
		s := &c.signs[i]
		if s.neg && s.sense != "ready" {
			continue
		}
		switch s.sense {
		case "ask=next":
			named = true
			q.next(k, i)
		case "whenq":
			named = q.when(c) || named
		case "ask=status":
			named = true
			switch {
			case c.has("did=turned") && q.r.names(s, "day", "jour"):
				q.addNext() // "what day do I turn"
			case !c.has("foreign", "weather"):
				q.add("ask=status")
			}
		case "ask=help":
			if q.beside(c, i) {
				continue
			}
			named = true
			if !q.told(c, i) {
				q.add("ask=help")
			}
		case "ask=officer":
			named = true
			if !((c.has("past") || c.hasPast()) && c.ask == telling) {
				q.add("ask=officer")
			}
		case "ready":
			if c.ask != telling && c.ask != askWhy {
				named = true
				if !c.has("foreign", "money", "weather") && !c.hasDim("crop") {
					q.add("ask=status")
				}
			}
		case "officer":
			if q.wantsOfficer(c, i) {
				named = true
				q.add("ask=officer")
			}
		}
	}
	return named
}

// next reads "what now" at sign i.
func (q *inquiry) next(k, i int) {
	c, r := &q.cs[k], q.r
	s := &c.signs[i]
	switch {
	case c.has("await") && c.ask == telling: // "waiting for the next step"
	case k > 0 && !q.reported && c.core() <= 1 && q.cs[k-1].ofElse(): // "my cow is sick, what do I do"
	case c.ask == telling && c.odd > 0 && !c.cond && !(len(q.f.danger) > 0 && s.to > s.from+1) && c.has("foreign", "weather", "money", "person", "animal"): // "fertiliser will be cheaper next season"
	case i > 0 && s.tongue == fr && s.to > s.from+1 && r.says(c, "en") && !slices.ContainsFunc(c.signs[:i], func(o sign) bool { return oneOf(o.sense, "and", "now", "ok", "then") }),
		s.tongue == fr && s.text == "on" && r.word(s.from+1) == "en": // "les gros bouts, on en fait quoi ?"
		q.add("ask=help")
	case s.hindi() && oneOf(r.word(s.from-1), "ka", "ke", "ki", "का", "के", "की"),
		r.names(s, "do", "hago", "hacemos", "hacer") && (c.has("worm", "weather", "rainword", "liquid", "bottle") || oneOf(r.word(s.to), "with", "about", "con", "avec")):
		q.add("ask=help") // "what do I do with the worms when it rains?"
	default:
		q.addNext()
	}
}

// when reads a "when": when it is compost, when to turn.
func (q *inquiry) when(c *clause) (named bool) {
	if c.has("compost", "material=compost") && !c.hasAct() && !c.has("sell", "foreign", "money") || c.has("use") && !c.hasDim("material") && !c.has("water") || q.r.says(c, "listo", "lista") && c.has("done") && !c.has("foreign", "money") {
		named = true
		q.add("ask=status")
	}
	if c.has("did=turned") {
		named = true
		q.addNext()
	}
	return named
}

// beside says whether the help at sign i is but a part of what else the clause says.
func (q *inquiry) beside(c *clause, i int) bool {
	r, s := q.r, &c.signs[i]
	if r.names(s, "stuck") && c.has("body", "eye") {
		return true // "chaff stuck in my eye"
	}
	if c.ask != telling {
		return false
	}
	switch {
	case len(q.f.danger) > 0 && (r.cries(s) || r.helper(c, i)), // a cry adds nothing to the danger, nor does who was helping
		len(q.f.danger) > 0 && c.core() == 1 && r.names(s, "help", "ayuda", "aide"),  // "the heap is on fire, help"
		c.has("or") && hasCode(q.f.danger, "seen=smoke"),                             // "steam or smoke, I do not understand which"
		c.has("chat=thanks") && s.to == s.from+1,                                     // "thanks for the help"
		oneOf(r.word(s.from-1), "con", "with", "avec") || r.word(s.from-2) == "avec", // "con ayuda de la burra"
		c.has("await"): // "waiting for instructions"
		return true
	}
	return false
}

// told says whether the help at sign i is told of, and not asked for.
func (q *inquiry) told(c *clause, i int) bool {
	if i+1 < len(c.signs) {
		if n := &c.signs[i+1]; (n.sense == "do" || n.sense == "stay") && n.tense&(past|ongoing) != 0 {
			return true // "madad kar raha tha": was helping
		}
	}
	if c.ask != telling {
		return false
	}
	return i > 0 && q.r.nobody(c) || // "no one to help me"
		len(q.cs) > 2 && (c.has("person", "known") || c.odd > 0) && !c.has("me", "mine", "must", "want", "heap", "bottle", "worm") // "the boys are stuck at their uncle"
}

// wantsOfficer says whether the officer named at sign i is wanted, and not greeted or told of.
func (q *inquiry) wantsOfficer(c *clause, i int) bool {
	f := q.f
	switch {
	case c.foreign, // "the whole village came, even the teacher"
		c.core() == 1 && len(q.cs) > 1 && (len(f.facts) > 0 || len(f.deeds) > 0 || len(f.danger) > 0),                                                                          // "it is cold, officer"
		i > 0 && i == len(c.signs)-1 && c.ask == telling && (c.tomorrow || c.later || c.hasQuality() || c.hasDeed()) && !c.has("want", "must", "come", "say", "give", "write"), // "mañana sin falta, inge"
		c.has("done", "finish", "notyet", "yes", "no", "ok") && c.core() == 2 && c.ask == telling,                                                                              // "done, teacher" without its comma
		c.has("chat=thanks", "chat=hello") && !c.has("want", "must", "come", "help", "ask=help", "say", "see", "canq", "whenq", "message"):                                     // "thank you officer"
		return false
	}
	return (!c.has("past") && !c.hasPast() || c.has("want", "must")) &&
		(c.core() <= 2 || c.has("want", "come", "help", "must", "ask=help", "say", "canq", "give", "message", "me", "whenq", "see", "write"))
}

// byMood is what clause k asks by its mood, when no word of it names a question; "" for nothing.
func (q *inquiry) byMood(k int) string {
	c, r := &q.cs[k], q.r
	switch {
	case c.foreign && c.ask == telling:
	case c.ask == askWhy:
		if (r.ours(c, true) || q.reported && c.odd <= 3 && !c.has("foreign", "money", "weather", "person", "neighbor") && !c.hasBeast()) && !(c.has("message") && hasCode(q.f.danger, "ask=stop")) {
			return "ask=why"
		}
	case q.wonders(k):
		return "ask=help"
	}
	return ""
}

// wonders says whether clause k asks for advice.
func (q *inquiry) wonders(k int) bool {
	c, r := &q.cs[k], q.r
	feeding := r.asked == "feed" || r.asked == "worms"
	switch c.ask {
	case askWh, askModal:
		if k > 0 && !q.reported && q.cs[k-1].ofElse() && c.onlyOf("normal", "which", "what", "how", "whenq", "known", "give", "do", "filler", "canq", "me", "is", "it") {
			return false // "le prix du ciment, c'est grave", "my chickens are sick, which medicine?"
		}
		if feeding && c.has("eat") && !c.has("money", "person", "heap") {
			return true // "pyaz lehsun khate hai kya"
		}
		if r.asked == "bottle" && c.ask == askModal && r.keptWhere(c) {
			return true // "do we keep it in the shade?"
		}
		exclaims := c.end != "?" && c.has("what") && c.has("heat", "weather", "stick=hot", "stick=cold") && c.onlyOf("what", "heat", "stick=hot", "stick=cold", "weather", "today", "filler", "very", "one", "dayword")
		return r.ours(c, false) && !exclaims // "what a hot day!"
	case askMark:
		n := len(c.signs)
		return n > 1 && oneOf(c.signs[n-1].text, "to", "तो") && c.signs[n-1].hindi() && c.has("worm", "heap", "bottle", "stick", "layer") || // "केंचुए मर जाएँ तो?"
			c.cond && (r.ours(c, false) || c.has("whatif") && c.has("person") && !c.has("foreign", "money", "weather") || c.rainsOn()) ||
			feeding && (c.hasDim("material") || c.has("food")) && c.core() <= 3 && c.ask == askMark && r.says(c, "aiment", "comen", "gustan", "like", "wanapenda", "pasand", "पसंद") ||
			feeding && c.has("alive") && c.hasDim("material") && !c.has("have", "num", "one") || // "wanakula maganda ya machungwa?"
			c.has("whatif") && c.core() <= 3 && !c.has("foreign", "money", "weather", "animal") ||
			c.has("eat") && feeding && !c.has("foreign", "money", "animal", "person") ||
			q.reported && (c.fears() || r.shallI(c)) || r.mayI(c) ||
			(c.hasDim("material") || c.has("dung")) && !c.has("num", "one", "have", "sell", "money", "foreign", "person", "neighbor") && !c.hasQuality() ||
			c.has("or") && (q.reported && c.hasAct() || r.asked == "bottle" && (c.has("skip", "put", "leave") || r.keptWhere(c))) ||
			c.will && c.hasDim("seen") || c.has("worm") && !c.describes() && n > 2 || c.has("or") && c.has("inside", "edge") ||
			c.has("worm") && (c.has("eat", "food", "drink") || c.has("alive") && (c.hasDim("crop") || c.hasDim("material") || c.has("foreign"))) ||
			c.judging() || c.has("must", "supposed") && r.ours(c, false)
	case telling:
		if r.shallI(c) && sentenceAsks(q.cs, k) && (q.reported || act(c.signs[0].sense)) {
			return true // "nigeuze na mvua hii inanyesha?"
		}
		return c.cond && !c.doubt && !q.supposed && q.f.when == "" && !q.planned &&
			(c.has("whatif") && c.has("me") && c.odd <= 1 && actOf(r.asked) != "" && !c.has("foreign", "money") ||
				(c.has("whatif") || oneOf(c.signs[len(c.signs)-1].text, "to", "तो", "je")) && c.rainsOn() ||
				r.ours(c, false) || c.has("whatif") && c.has("person") && !c.has("foreign", "money", "weather"))
	}
	return false
}

// keptWhere says whether a clause is about where a thing is kept.
func (r *reader) keptWhere(c *clause) bool {
	return r.says(c, "keep", "store", "guardo", "guardamos", "guardar", "guarda", "dejamos", "garde", "gardons", "garder", "conserve", "laisse", "laissons")
}
