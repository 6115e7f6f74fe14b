package understand

import "slices"

// spilt: juice below a heap, or out of a bottle.
func (r *reader) spilt(c *clause, i int, in scope) string {
	s := &c.signs[i]
	if in.here.heap && !in.here.bottle && !s.neg && !c.hasAct() && !c.hasDim("seen") && (c.has("bottle=leaking", "edge", "goout", "come", "leave") || r.comesOut(c)) {
		return "seen=runoff" // juice seeps out below the heap
	}
	if in.bottle && !s.neg && !c.has("me") && (c.has("cap") && !c.hasAct() || c.has("goout", "come", "leave", "takeout") || r.comesOut(c)) {
		return "bottle=leaking"
	}
	return ""
}

// pressure: gas or none in a bottle.
func (r *reader) pressure(c *clause, i int, in scope) string {
	s := &c.signs[i]
	switch {
	case s.neg && (in.bottle || r.asked == "shake"), s.neg && !c.hasAct():
		return "bottle=flat"
	case !s.neg && in.here.bottle && !c.hasAct() && c.has("fill", "very"):
		return "bottle=bloated"
	}
	return ""
}

// flask: how a bottle is.
func (r *reader) flask(c *clause, i int, in scope) string {
	s := &c.signs[i]
	if s.sense == "bottle=leaking" && r.asked == "moisture" && c.hasDim("moisture") && s.tongue == sw {
		return "" // "tone moja limedondoka": the drop was counted
	}
	if s.sense == "bottle=leaking" && r.asked == "moisture" && !in.here.bottle {
		if s.neg {
			if s.hindi() && !c.has("very") {
				return "moisture=dry" // "टपक नहीं रहा"
			}
			return ""
		}
		return "moisture=wet"
	}
	if s.sense == "bottle=bloated" && r.names(s, "gas", "gaz") && slices.ContainsFunc(r.signs, func(o sign) bool { return o.sense == "cap" || o.sense == "did=vented" }) {
		return "" // "opened the lid and a lot of gas came out"
	}
	if s.sense == "bottle=burst" && s.hindi() && i > 0 && c.signs[i-1].sense == "" && !c.has("bottle", "cap") {
		return "" // "सीढ़ी टूटी है": something else
	}
	if c.has("cloth") && !c.has("bottle", "cap") && s.sense == "bottle=burst" {
		return "" // "le feu a troué ma chemise"
	}
	if c.hasHarm() && !c.has("bottle", "cap") && s.sense == "bottle=bloated" {
		return "" // "my chest is tight"
	}
	if s.neg || !in.bottle && !s.own && !(s.sense == "bottle=leaking" && (r.asked == "bottle" || r.asked == "shake") && !c.has("heap")) {
		return "" // but "it leaks from the bottom"
	}
	return s.sense
}

// comesOut says whether something comes out in a clause, by verbs that elsewhere are
// small words.
func (r *reader) comesOut(c *clause) bool {
	return r.says(c, "salio", "sale", "salen", "saliendo", "salieron", "sort", "sorti", "sortie", "sortait", "came", "comes", "dripped")
}
