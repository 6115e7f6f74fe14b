package understand

// warmth reads how hot or cold the stick or the heap is.
func (r *reader) warmth(c *clause, i int, in scope) (code string, ok bool) {
	s := &c.signs[i]
	asked := r.asked
	here := in.here
	switch s.sense {
	case "stick=hot":
		if c.has("seen=ash") || !in.stick && !s.own {
			return "", true
		}
		switch {
		case s.neg && s.grade == strongly:
			return "stick=warm", true
		case s.neg && s.grade == notAtAll:
			return "stick=cold", true
		case s.neg:
			return notHot, true
		case s.grade == slightly:
			return "stick=warm", true
		}
		return "stick=hot", true
	case "stick=warm":
		if !in.stick && !s.own {
			return "", true
		}
		if s.neg {
			return "stick=cold", true
		}
		return "stick=warm", true
	case "stick=cold":
		if !in.stick && !s.own {
			return "", true
		}
		if s.neg {
			return notCold, true
		}
		return "stick=cold", true
	case "heat", "joto":
		if !in.stick || s.sense == "heat" && c.has("stick=cold", "stick=warm") {
			return "", true
		}
		switch {
		case s.hindi() && !s.neg && s.grade == plainly && c.figure():
			return "", true // "ताप 55": a figure, not a feel
		case (s.hindi() || s.tongue == sw) && !s.neg && c.has("finish"):
			return "stick=cold", true // "garmi bilkul khatam"
		case s.neg && s.grade == strongly:
			return "stick=warm", true
		case s.neg:
			return "stick=cold", true
		case s.grade == slightly:
			return "stick=warm", true
		case s.grade == strongly || s.grade == notAtAll:
			return "stick=hot", true
		case s.sense == "heat":
			return "stick=hot", true
		}
		return "", true
	case "moto": // Swahili: hot, and fire
		if c.has("seen=sunk") {
			return "", true // "moto umepungua": less than it was
		}
		if s.neg {
			if !in.stick {
				return "", true
			}
			switch s.grade {
			case strongly:
				return "stick=warm", true
			case notAtAll:
				return "stick=cold", true
			}
			return notHot, true
		}
		if i > 0 && c.signs[i-1].sense == "hold" && c.signs[i-1].tense&past != 0 {
			return "", true // limeshika moto: it caught fire
		}
		if c.has("give") || i > 0 && c.signs[i-1].sense == "have" {
			return "", true
		}
		if in.stick {
			if s.grade == slightly {
				return "stick=warm", true
			}
			return "stick=hot", true
		}
		return "", true
	case "poa":
		if s.tense != 0 || here.heap {
			if in.stick || here.heap {
				if s.neg {
					return notCold, true
				}
				return "stick=cold", true
			}
		}
		return "", true
	case "fireglyph":
		if asked == "stick" {
			return "stick=hot", true
		}
		return "", true
	case "hold":
		if (asked == "stick" || c.has("stick")) && (c.cant || c.has("couldnt")) {
			return "stick=hot", true // could not touch it
		}
		return "", true
	case "burn":
		if !s.neg && !s.self && !here.heap && (asked == "stick" || c.has("stick")) && !c.has("body", "me", "person") && s.tense&(present|ongoing|imperfect) != 0 {
			return "stick=hot", true // el palo quema, ça brûle
		}
		return "", true
	case "burning":
		if s.neg {
			return "", true
		}
		if in.stick && (asked == "stick" || c.has("stick")) {
			return "stick=hot", true
		}
		return "", true
	}
	return "", false
}
