package understand

import "slices"

// account is a message taken clause by clause: what was found so far, and what "it" stands for.
// A clause adds to it, and may change what the one before it stated.
type account struct {
	r *reader
	finding
	cs        []clause
	about     topic
	corrected map[int]bool // clauses that correct what stands before them
	last      tense        // of the last deed, which an infinitive goes on with
}

// take adds clause k.
func (a *account) take(k int) {
	c := &a.cs[k]
	a.corrects(k)
	found := a.perils(c)
	st := a.r.states(c, k, &a.about)
	a.about.limb, a.about.who = c.has("body"), c.has("person")
	a.about.caught = a.about.who && c.has("worm") && !c.hasAct() && !c.has("food", "eat")
	st = a.told(k, st, found)
	a.revises(k, found)
	a.doubts(k, st, found)
	if !a.unreported(k) {
		a.facts = append(a.facts, st...)
	}
	c.states = len(st) + len(found)
	a.deedsOf(k)
}

// before gives the last fact, if the clause before k stated it.
func (a *account) before(k int) *fact {
	if n := len(a.facts); n > 0 && a.facts[n-1].clause == k-1 {
		return &a.facts[n-1]
	}
	return nil
}

// drop takes the last fact back.
func (a *account) drop() { a.facts = a.facts[:len(a.facts)-1] }

// corrects notes whether clause k, or the next, puts right what was said.
func (a *account) corrects(k int) {
	c, more := &a.cs[k], k+1 < len(a.cs)
	if c.has("correct") || c.has("imeant") || k > 0 && more && onlyNo(c) {
		a.corrected[k] = true
	}
	if n := len(c.signs); n > 1 && more && c.signs[n-1].sense == "no" && !c.signs[n-1].hindi() && c.end == "," && sameDim(c, &a.cs[k+1]) {
		a.corrected[k+1] = true // "cold no, it's hot"
	}
}

// perils reads the dangers of a clause, and a stop.
func (a *account) perils(c *clause) []string {
	if who := c.has("person", "me", "neighbor", "body"); who || c.hasBeast() {
		a.about.beast = !who
	}
	a.about.sting = a.about.sting || c.hasBeast() || c.has("stinger", "seen=ants", "seen=rodents")
	found := a.r.dangers(c, a.about)
	a.danger = append(a.danger, found...)
	a.about.eye = a.about.eye || hasCode(found, "harm=eye")
	a.about.bite = a.about.bite || hasCode(found, "harm=bite")
	if c.has("ask=stop") && !c.cond && c.ask != askModal || a.r.bareStop(c, a.cs) {
		a.danger = append(a.danger, "ask=stop")
	}
	return found
}

// told leaves out of what clause k states what is not the farmer's, what is but another side of a
// danger, and what the clause takes back itself.
func (a *account) told(k int, st []fact, found []string) []fact {
	c := &a.cs[k]
	switch {
	case c.foreign,
		k > 0 && a.cs[k-1].has("was") && c.notNow(), // "it was hot but not now"
		c.noMore(), // "garam tha par ab nahi": what it is now is not said
		k > 0 && a.cs[k-1].end == "because" && len(a.danger) > 0 && c.core() <= 2 && len(found) == 0: // "blisters, because of the steam": a doer
		return nil
	}
	if slices.ContainsFunc(st, func(f fact) bool { return f.code == "seen=runoff" }) {
		st = filter(st, func(f fact) bool { return f.code != "moisture=wet" }) // the same running water
	}
	return slices.DeleteFunc(st, func(x fact) bool { return a.r.ofDanger(c, x, found) || a.r.ofTold(c, x, a.danger, a.about.told) })
}

// revises changes what the clause before k stated by what clause k says of it.
func (a *account) revises(k int, found []string) {
	c := &a.cs[k]
	if k == 0 {
		return
	}
	prev, was := &a.cs[k-1], a.before(k)
	if prev.has("was") && c.notNow() {
		c.later = false
		if was != nil {
			a.drop()
			was = nil
		}
	}
	if was != nil && prev.end == "but" && c.onlyOf("no", "not", "nothing", "notyet", "filler", "is", "atall") {
		a.guess = append(a.guess, was.code) // "expected it hot but no"
		a.drop()
		was = nil
	}
	if was != nil && c.noMore() && !c.hasQuality() && prev.has("was") {
		a.drop()
	}
	if hasCode(found, "harm=burn") && (prev.end == "and" || prev.has("body", "maul") || a.r.runsOn(c)) {
		a.facts = slices.DeleteFunc(a.facts, func(x fact) bool { return x.clause == k-1 && x.code == "seen=steam" }) // "the steam rushed out and burned my face"
	}
	if was = a.before(k); was != nil && was.code == "stick=hot" && c.faintly() {
		was.code = "stick=warm" // "hot, but only a little"
	}
}

// doubts marks what clause k leaves open, and what it opens of the clause before.
func (a *account) doubts(k int, st []fact, found []string) {
	c := &a.cs[k]
	doubt := func(list []fact) {
		for i := range list {
			list[i].doubt = true
		}
	}
	if c.doubt || c.ask == askMark || c.ask == askTag || a.r.eitherOr(c, st) {
		doubt(st)
	}
	if k == 0 || len(c.signs) == 0 || c.signs[0].sense != "or" {
		return
	}
	if hasCode(a.danger, "seen=smoke") || hasCode(a.danger, "seen=fire") { // "smoke, or is it steam"
		doubt(st)
		for i := range a.facts {
			a.facts[i].doubt = a.facts[i].doubt || a.facts[i].clause == k-1 && len(found) > 0
		}
	}
	if was := a.before(k); was != nil && len(c.signs) > 1 && slices.ContainsFunc(st, func(x fact) bool { return x.dim == was.dim && x.code != was.code }) {
		was.doubt = true // "maybe ammonia, or else vinegar"
		doubt(st)
	}
}

// unreported says whether what clause k states is asked, supposed, or an earlier answer.
func (a *account) unreported(k int) bool {
	c, more := &a.cs[k], k+1 < len(a.cs)
	switch {
	case c.ask == askWhy, c.ask == askWh, c.ask == askModal, c.cond, c.has("supposed", "isaid"), a.r.contrary(c):
		return true
	case k > 0 && a.cs[k-1].onlyOf("supposed") && a.cs[k-1].end == "and": // "kingekuwa na moto"
		return true
	case c.has("ask=help") && a.r.meansWhat(c): // "qué quiere decir tibio"
		return true
	case len(c.signs) > 0 && c.whenTo():
		return true
	case more && c.has("ask=undo") && sameDim(c, &a.cs[k+1]):
		return true
	}
	// "wrote cold, that was wrong, it is hot"
	return k+2 < len(a.cs) && a.cs[k+1].has("ask=undo") && a.cs[k+1].core() <= 2 &&
		slices.ContainsFunc(a.cs[k+2:], func(later clause) bool { return sameDim(c, &later) })
}

// deedsOf adds the deeds of clause k, and revises the one before it.
func (a *account) deedsOf(k int) {
	c := &a.cs[k]
	lately := func() *deed {
		if n := len(a.deeds); n > 0 && a.deeds[n-1].clause == k-1 && a.deeds[n-1].outcome == done {
			return &a.deeds[n-1]
		}
		return nil
	}
	if d := lately(); d != nil && c.onlyHalf() {
		d.outcome = planned // "palta, lekin adha hi"
	}
	a.deeds = append(a.deeds, a.r.deeds(c, k, &a.last, a.about)...)
	if d := lately(); k > 0 && d != nil && a.cs[k-1].end == "and" && d.code == "did=layered" && c.justWater() {
		a.deeds = append(a.deeds, deed{"did=watered", done, k, 0}) // "put the layer down and some water on top"
	}
}

// tidy leaves out what the whole message makes superfluous.
func (a *account) tidy() {
	if hasCode(a.danger, "seen=fire") && !slices.ContainsFunc(a.cs, func(c clause) bool { return c.has("seen=smoke", "seen=ash", "smell") || c.hasDim("smell") }) {
		a.danger = slices.DeleteFunc(a.danger, func(code string) bool { return code == "seen=smoke" }) // "it is burning, one sees the flames"
	}
	if leaks := slices.ContainsFunc(a.facts, func(f fact) bool { return f.code == "bottle=leaking" }); leaks && (a.r.asked == "bottle" || a.r.asked == "shake") && !slices.ContainsFunc(a.cs, func(c clause) bool { return c.has("heap", "inside") }) {
		a.facts = slices.DeleteFunc(a.facts, func(f fact) bool { return f.code == "seen=runoff" }) // "sticky juice oozing down the side of it"
	}
	if hasCode(a.danger, "harm=breath") && a.r.asked != "moisture" {
		a.facts = slices.DeleteFunc(a.facts, func(f fact) bool { // the dust that choked somebody
			return f.code == "moisture=dry" && a.r.says(&a.cs[f.clause], "धूल", "dhool", "dhul", "vumbi", "polvo", "poussiere", "dust")
		})
	}
	if hasCode(a.danger, "harm=swallowed") {
		a.deeds = slices.DeleteFunc(a.deeds, func(d deed) bool {
			return d.code == "did=mixed" && a.r.names(&a.cs[d.clause].signs[d.sign], "वाला", "वाली", "wala", "wali") // "gobar wala ghol": the slurry
		})
	}
}
