package understand

// dying: worms dead, and not a father, a hen or a plant.
func (r *reader) dying(c *clause, i int, in scope) string {
	s := &c.signs[i]
	if s.neg || !in.worm && !s.own {
		return ""
	}
	if c.hasBeast() && !in.here.worm || c.has("plant") || !in.here.worm && c.kinBefore(i) {
		return ""
	}
	return "seen=worms_dead"
}

// leaving: worms that leave, and not steam, flies or hours.
func (r *reader) leaving(c *clause, i int, in scope) string {
	s := &c.signs[i]
	if c.has("before") && !in.here.worm {
		return "" // "avant de partir j'ai nourri les vers"
	}
	if c.has("hour", "dayword", "minute") && !in.here.worm {
		return "" // "दो घंटे निकल गए"
	}
	if s.sense == "goout" && c.nothingCame(r.asked, s) {
		return "moisture=dry"
	}
	if next := c.past(i+1, "filler"); s.tongue == es && next < len(c.signs) && crawling(c.signs[next].sense) {
		return "" // "les salieron moscas"
	}
	if s.hindi() && i > 0 && !in.here.worm && (inDim(c.signs[i-1].sense, "seen") || oneOf(c.signs[i-1].sense, "water", "liquid", "gas", "smell")) {
		return "" // "भाप निकल रही है": steam comes out, no worms
	}
	if s.neg || !in.worm && !s.own || s.sense == "goout" && !in.here.worm && r.asked != "worms" {
		return ""
	}
	return "seen=worms_escaping"
}

// living: worms alive and well, and not the ants or maggots on them.
func (r *reader) living(c *clause, i int, in scope) string {
	s := &c.signs[i]
	if r.names(s, "eat", "eating", "comiendo", "mangent", "come", "comen", "wanakula", "wamekula") && (c.has("seen=rodents", "seen=ants", "seen=termites", "animal") || c.hasDim("animal")) {
		return "" // a rat is eating them
	}
	if i > 0 && crawling(c.signs[i-1].sense) {
		return "" // "hormigas coloradas": a word of the ants
	}
	next := i + 1
	if next < len(c.signs) && c.signs[next].sense == "known" {
		next++ // "fat white maggots"
	}
	if next < len(c.signs) && (crawling(c.signs[next].sense) || c.signs[next].beast()) {
		return "" // "de gros asticots"
	}
	if s.neg || !in.worm && !s.own || c.has("body") {
		return ""
	}
	return "seen=worms_well"
}

// nothingCame: squeezed, "nothing that comes out".
func (c *clause) nothingCame(asked string, s *sign) bool {
	return asked == "moisture" && s.neg && !c.has("water", "worm") && !c.hasDim("moisture")
}

// kinBefore: a person stands right before sign i, small words aside: "mon père est mort",
// "baba amekufa".
func (c *clause) kinBefore(i int) bool {
	k := c.back(i-1, "is", "was", "didaux", "filler", "mine", "me")
	return k >= 0 && oneOf(c.signs[k].sense, "person", "neighbor") && (c.signs[k].tongue == fr || c.signs[k].tongue == sw)
}
