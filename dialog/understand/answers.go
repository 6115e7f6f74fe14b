package understand

import (
	"slices"
	"strings"
)

// answers reads bare yes, no, done, OK, greetings and thanks.
func (r *reader) answers(cs []clause, f *finding) {
	yes, no, notyet, did, ok := false, false, false, false, false
	for k := range cs {
		c := &cs[k]
		for i := range c.signs {
			s := &c.signs[i]
			switch s.sense {
			case "correct":
				no = no || len(cs) == 1 && len(c.signs) == 1 && r.tokens[s.from].text == "no" // "no sorry"
			case "chat=hello":
				// "cómo está la familia" greets nobody about the heap
				f.hello = f.hello || greets(c.signs) || !c.has("maybe", "foreign", "person", "animal", "known", "money", "weather") && !c.hasDim("crop")
			case "chat=thanks":
				f.thanks = true
			case "yes", "si":
				if s.hindi() && c.has("ok") && c.core() == 2 {
					break // "जी ठीक": agreement
				}
				if s.sense == "yes" || !c.cond && c.odd == 0 {
					yes = yes || !c.doubt && c.ask == telling
				}
			case "no":
				if i > 0 && c.has("person") && oneOf(c.signs[i-1].text, "dit", "dice", "says", "said", "dijo", "anasema", "amesema", "bolti", "bolta", "बोलती", "बोलता", "कहती", "कहता") {
					break // "ma femme dit non"
				}
				no = no || c.core() == 1 || (i == 0 || i == len(c.signs)-1) && !c.hasTarget() || i == 0 && r.ticked(cs) || i == 0 && r.asked == "sieve" && c.hasDim("bottle") && !c.hasAct() // "non le tamis est troué"
			case "not":
				no = no || c.core() == 1 || len(c.signs) == 2 && c.has("is") && r.asked == "have" || i == 0 && s.hindi() && c.has("busy") && c.has("was") // "nahi, main aspatal me thi"
			case "atall":
				no = no || len(cs) == 1 && c.core() == 1 && actOf(r.asked) != "" // "pas du tout"
			case "nothing":
				no = no || actOf(r.asked) != "" && c.core() == 1 && len(cs) == 1 && (s.text == "hamna" || s.text == "hakuna")
			case "eat":
				did = did || r.asked == "feed" && s.tongue == sw && c.core() == 1 && s.tense&past != 0 && !s.neg && c.ask == telling && s.text[0] == 'w' // "wamekula"
				notyet = notyet || r.asked == "feed" && s.neg && s.tense&(past|yet) != 0                                                                 // "hawajala"
			case "nor", "tag":
				no = no || s.hindi() && c.core() == 1 && len(cs) == 1 && c.end != "?" // a bare "ना"
			case "notyet":
				notyet = notyet || c.ask == telling && !(c.has("money") && c.has("foreign"))
			case "ok":
				ok = ok || c.ask == telling
			case "ready":
				did = did || c.ask == telling && actOf(r.asked) != "" && !c.has("not", "notyet") && !c.doubt
			case "done", "finish":
				if r.asked == "have" && c.hasBeast() {
					break // "nothing, the goats finished it"
				}
				if r.awaits(c) || c.hasHarm() || len(cs) > 2 && (c.odd > 0 || c.has("foreign", "weather")) {
					break // "dès que le marché est fini"; what else was done
				}
				if i > 0 && (c.signs[i-1].sense == "start" || c.signs[i-1].sense == "stop" && s.hindi()) {
					break // "शुरू किया": begun; "बंद कर दिया": ended
				}
				if i > 0 && s.hindi() && (strings.HasPrefix(s.text, "हो") || strings.HasPrefix(s.text, "ho")) && (quality(c.signs[i-1].sense) || c.signs[i-1].sense == "known") {
					break // "खाँसी हो गई", "लाल हो गई": it became so
				}
				if !s.mine && i > 0 && (s.tongue == sw || s.hindi() && (s.sense == "finish" || c.signs[i-1].sense == "finish")) && c.ranOut(i) {
					break // "chakula kimeisha", "पुआल ख़त्म हो गया": there is none left
				}
				if s.sense == "done" || s.text == "done" || s.tense&(past|participle) != 0 {
					if c.has("partly") || c.has("only") && c.has("edge") {
						break // one side only
					}
					if c.has("not") || s.neg {
						notyet = true
					} else if c.ask == telling && !c.doubt && !c.cond {
						did = true
					}
				}
			}
		}
	}
	own := actOf(r.asked)
	did = did || own != "" && len(cs) == 1 && cs[0].ask == telling && !cs[0].doubt && cs[0].timesOnly()
	for _, d := range f.deeds {
		if d.code == "" {
			c := &cs[d.clause]
			if c.odd > 0 && !c.has("done") && !r.doneThen(cs) {
				continue
			}
			switch d.outcome {
			case done:
				did = true
			case notDone:
				if own != "" {
					notyet = true
				}
			}
		}
	}
	if !did && !no && !notyet && r.forgot(cs, f) && !f.tells(doubtful) {
		notyet = own != "" || r.asked == "have" || r.asked == "stick" || r.asked == "moisture"
	}
	if !did && r.unlooked(cs) && !f.tells(doubtful) {
		notyet = true
	}
	for k := range cs {
		did = did || r.asked == "feed" && r.gotFood(&cs[k])
	}
	for k := range cs { // "the worms got nothing to eat"
		if c := &cs[k]; r.asked == "feed" && !did && c.ask == telling && c.has("worm") && c.has("nothing") && c.has("eat", "food") {
			notyet = true
		}
	}
	for k := range cs { // "have not touched the heap"
		if c := &cs[k]; own != "" && !did && c.ask == telling && !c.doubt && !c.cond && !c.will && c.has("not", "nor") && c.has("hold") && (c.has("heap", "bottle", "worm", "layer", "bed") || c.has("nor")) && !c.hasQuality() && !c.hasAct() {
			notyet = true
		}
	}
	for k := range cs { // "they didn't get food": not done, whatever the verb
		if c := &cs[k]; own != "" && !did && c.ask == telling && !c.doubt && !c.cond && r.didNot(c) && !c.hasAct() && !c.hasQuality() && c.core() <= 4 {
			notyet = true
		}
	}
	if r.asked == "have" {
		for k := range cs {
			for _, s := range cs[k].signs {
				if s.sense == "nothing" || s.sense == "have" && s.neg {
					no = true
				}
				if (s.sense == "not" || s.sense == "no") && cs[k].has("have", "atall") && !cs[k].hasDim("material") && cs[k].odd == 0 {
					no = true
				}
			}
		}
	}
	for _, d := range f.deeds {
		if d.outcome == notDone && d.code != "" && (d.code == own || d.code == "did=gathered" && r.asked == "have") {
			notyet = true
		}
	}
	switch {
	case did && !notyet:
		f.answer = "done"
	case notyet:
		f.answer = "notyet"
	case no && !yes:
		f.answer = "no"
	case yes && !no:
		f.answer = "yes"
	case ok && !no:
		f.answer = "ok"
	}
}

// doneThen says whether a message begins with "done" and goes on with nothing but when or with
// whom, whose words need not be known: "did it before milking", "ho gaya dudh dohne se pehle".
func (r *reader) doneThen(cs []clause) bool {
	c := &cs[0]
	if len(cs) > 2 || c.ask != telling || c.doubt || c.cond || c.hasQuality() || c.hasDim("did") || c.has("not", "no", "notyet", "couldnt", "partly", "only", "will", "want", "must") {
		return false
	}
	k, done := 0, false
	for ; k < len(c.signs) && oneOf(c.signs[k].sense, "done", "finish", "do", "yes", "ok", "already", "me", "filler", "is", "chat=hello"); k++ {
		s := &c.signs[k]
		done = done || s.sense == "done" || oneOf(s.sense, "do", "finish") && (s.tense&(past|participle) != 0 || s.text == "done")
	}
	when := func(s *sign) bool { return oneOf(s.sense, "before", "after", "while", "earlier", "past") }
	switch {
	case !done:
		return false
	case k == len(c.signs):
		return len(cs) == 2 && len(cs[1].signs) > 0 && when(&cs[1].signs[0]) && cs[1].ask == telling && !cs[1].hasTarget() // "did it when I woke up"
	case len(cs) > 1:
		return false
	case c.signs[k].hindi():
		return when(&c.signs[k]) || c.has("before", "after")
	}
	return when(&c.signs[k]) || c.signs[k].sense == "person" && slices.ContainsFunc(c.signs[:k], func(s sign) bool { return r.names(&s, "with", "wit", "con", "avec") })
}

// core counts the signs that carry meaning.
func (c *clause) core() int {
	n := 0
	for at := range c.signs {
		s := &c.signs[at]
		switch s.sense {
		case "filler", "correct", "me", "soft", "chat=hello", "chat=thanks":
		default:
			n++
		}
	}
	return n
}

func (c *clause) hasTarget() bool {
	for at := range c.signs {
		s := &c.signs[at]
		if quality(s.sense) || act(s.sense) {
			return true
		}
	}
	return false
}

// gotFood: "they got their melon skins this morning".
func (r *reader) gotFood(c *clause) bool {
	if r.best != en || c.ask != telling || c.doubt || c.cond || c.foreign || c.hasQuality() || c.has("not", "notyet", "no", "nothing", "person", "neighbor", "me") || c.hasBeast() {
		return false
	}
	first := c.signs[0].from
	return oneOf(r.word(first), "they", "worms", "the") && (c.has("worm") || r.word(first) == "they") && r.says(c, "got") &&
		(c.hasDim("crop") || c.hasDim("material") || c.has("peel", "food", "dung", "leaf", "fruit", "veg"))
}

// short reads what is left when nothing was reported: yes, no, done, thanks.
func (r *reader) short(cs []clause, f *finding, unsettled bool) []string {
	if unsettled {
		return nil
	}
	if r.denies(cs, f) {
		return []string{"answer=no"}
	}
	own := actOf(r.asked)
	yesno := r.yesNo()
	odd := 0
	for k := range cs {
		if f.answer == "notyet" && len(cs) > 1 && !cs[k].has("no", "not", "notyet", "forgot", "couldnt", "nothing", "done", "finish", "do") {
			continue // the reason why not
		}
		odd += cs[k].odd
		if cs[k].foreign {
			return nil
		}
		if cs[k].has("foreign", "money") && !cs[k].has("notyet") || cs[k].hasDim("crop") || cs[k].has("weather") && f.answer != "notyet" {
			odd += 2
			if f.answer == "ok" {
				return nil // "the tomatoes are fine this year"
			}
		}
	}
	for k := range cs { // "mañana si Dios quiere" is no yes
		if (cs[k].tomorrow || cs[k].later && !(f.answer == "done" && r.noon(&cs[k]))) && !cs[k].has("past") && (f.answer == "yes" || f.answer == "done") {
			return nil
		}
	}
	if f.answer == "done" && own != "" && r.doneThen(cs) {
		return []string{own}
	}
	if odd <= 2 || r.ticked(cs) {
		switch f.answer {
		case "done":
			if own != "" && opensWithYa(cs) && slices.ContainsFunc(cs[1:], func(c clause) bool { return c.has("couldnt") }) {
				return []string{"answer=no"} // "ya pasó toda la semana y no pude"
			}
			if own != "" && (r.ticked(cs) || doneFirst(cs) && odd <= 3) {
				return []string{own} // "✅ jasho limetutoka"
			}
			if own != "" && odd == 0 && !(len(cs) == 1 && cs[0].strange()) {
				return []string{own}
			}
		case "yes":
			if own != "" {
				return []string{own}
			}
			if yesno {
				return []string{"answer=yes"}
			}
			if f.thanks || f.hello {
				return nil
			}
		case "ok":
			if yesno && !f.thanks && !f.hello && (len(cs) > 1 || cs[0].core() <= 3) {
				return []string{"answer=yes"}
			}
		case "no":
			if own != "" || yesno || r.asked == "have" {
				return []string{"answer=no"}
			}
		case "notyet":
			denied := false
			for _, d := range f.deeds {
				if d.code == own && d.outcome == notDone && own != "" {
					denied = false
					break
				}
				if d.code != "" && d.code != own && !(d.code == "did=gathered" && r.asked == "have") {
					denied = true
				}
			}
			if denied {
				return nil
			}
			switch r.asked {
			case "smell", "bottle", "worms":
				return nil
			}
			if (r.asked == "stick" || r.asked == "moisture") && !r.plainNotYet(cs) {
				return nil
			}
			return []string{"answer=no"}
		}
	}
	if f.answer != "" && f.answer != "ok" && f.answer != "yes" {
		return nil
	}
	var out []string
	if odd <= 1 || odd <= 3 && f.thanks {
		if f.hello {
			out = append(out, "chat=hello")
		}
		if f.thanks {
			out = append(out, "chat=thanks")
		}
	}
	for k := range cs {
		if cs[k].ask != telling && len(out) > 0 && !f.hello {
			return nil
		}
	}
	if len(f.guess) > 0 {
		return nil
	}
	return out
}

// denies says whether a clause of a longer message denies by itself what was asked, whatever
// the others tell: "I have not sieved anything", "right now I have nothing".
func (r *reader) denies(cs []clause, f *finding) bool {
	if r.asked == "have" && len(cs) == 2 && f.answer == "no" && len(f.haves) == 0 && cs[0].has("nothing") && cs[0].core() == 1 {
		return true // "nothing, the goats finished it"
	}
	if len(cs) < 3 || f.answer != "no" && f.answer != "notyet" || f.tells(doubtful) || f.tells(planned) {
		return false
	}
	plain := func(c *clause) bool { return c.ask == telling && !c.doubt && !c.cond && !c.will && !c.foreign }
	if r.asked == "have" {
		return slices.ContainsFunc(cs, func(c clause) bool {
			return plain(&c) && c.odd == 0 && c.has("nothing") && (c.has("have", "now", "body") || c.core() <= 2)
		})
	}
	own := actOf(r.asked)
	if own == "" {
		return false
	}
	for k := range cs {
		if c := &cs[k]; plain(c) && c.odd == 0 && c.has(own) && c.has("forgot", "couldnt") {
			return true
		}
	}
	return slices.ContainsFunc(f.deeds, func(d deed) bool { return d.code == own && d.outcome == notDone && plain(&cs[d.clause]) })
}

// passedThrough: "everything has gone through", "ya pasó todo", "tout est passé".
func (r *reader) passedThrough(cs []clause) bool {
	if slices.ContainsFunc(cs, func(c clause) bool { return c.has("couldnt", "notyet") }) {
		return false // "ya pasó toda la semana y no pude"
	}
	for k := range cs {
		c := &cs[k]
		if c.ask != telling || c.doubt || c.cond || c.will || c.has("not", "notyet", "partly", "dayword") {
			continue
		}
		if r.wentThrough(c) || r.says(c, "paso", "pasaron") && r.says(c, "todo", "todos") || r.says(c, "passe", "passee") && r.says(c, "tout", "toute") {
			return true
		}
	}
	return false
}

// wentThrough: "everything has gone through the mesh", and not a nail through a foot.
func (r *reader) wentThrough(c *clause) bool {
	return r.says(c, "everything", "all") && r.says(c, "through") && r.says(c, "gone", "went", "passed")
}

// opensWithYa: Spanish "ya" alone is done, before more it may be no more than already.
func opensWithYa(cs []clause) bool {
	return len(cs[0].signs) > 0 && cs[0].signs[0].text == "ya"
}

// ticked says whether a message begins with a tick or a cross.
func (r *reader) ticked(cs []clause) bool {
	return len(cs[0].signs) > 0 && r.tokens[cs[0].signs[0].from].kind == glyph && oneOf(cs[0].signs[0].sense, "done", "no")
}

// yesNo: questions to which yes and OK are answers.
func (r *reader) yesNo() bool {
	switch r.asked {
	case "stick", "moisture", "smell", "bottle", "shake", "turn", "layer", "sieve", "feed", "worms", "have":
		return false
	}
	return true
}

// timesOnly: "twice today", "yesterday" and nothing else.
func (c *clause) timesOnly() bool {
	times := false
	for i := range c.signs {
		switch s := &c.signs[i]; s.sense {
		case "times":
			times = true
		case "past":
			times = times || s.text != "passe" && !c.has("num") // but not "passé"
		case "num", "one", "already", "today", "filler", "yes", "dayword", "now", "rangeto", "me", "have":
		default:
			return false
		}
	}
	return times
}

// noon: "finished at noon", "did it after breakfast", "on l'a fait dimanche" is behind, though "at noon" alone lies ahead.
func (r *reader) noon(c *clause) bool {
	for i := range c.signs {
		if c.signs[i].sense == "later" && r.names(&c.signs[i], "noon", "midday", "sunrise", "dawn", "monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday", "mediodia", "midi", "after", "despues", "apres",
			"dimanche", "lundi", "mardi", "mercredi", "jeudi", "vendredi", "samedi", "soir",
			"jumapili", "jumatatu", "jumanne", "jumatano", "alhamisi", "ijumaa", "jumamosi", "jioni", "usiku", "mchana") && !c.will {
			return true
		}
	}
	return false
}

// strange says whether a clause names what is not of the heap: "bus kharab ho gayi".
func (c *clause) strange() bool {
	return c.has("known", "stinger", "pointed", "animal") || c.hasDim("animal") || c.hasDim("crop")
}

// ranOut says whether what stands before the "is finished" at sign i is a stuff that is used
// up, and no work.
func (c *clause) ranOut(i int) bool {
	if s := &c.signs[i]; s.tongue == sw && oneOf(s.text[:1], "n", "t") {
		return false // nimemaliza, tumemaliza
	}
	for k := 0; k < i; k++ {
		switch s := c.signs[k].sense; s {
		case "food", "water", "gas", "dung", "leaf", "dry_leaf", "straws", "huskw", "peel":
			return true
		default:
			if inDim(s, "material") {
				return true
			}
		}
	}
	return false
}
