package understand

import "sort"

// Meaning is what a reply says.
type Meaning struct {
	Codes []string // "stick=cold", "have=3 basket goat_dung"; empty when not Sure
	Sure  bool     // act on Codes; false: ask the farmer
	Guess []string // when not Sure, what it may have meant, to be offered as choices
	Lang  string   // the language the text seems to be in: en sw hi hi-Latn es fr, "" unknown
}

// Read says what text means. lang is the language of the chat (en sw hi hi-Latn
// es fr), asked the question last put to the farmer (stick, moisture, smell,
// bottle, shake, turn, layer, sieve, feed, worms, have, menu, none; any other
// counts as a yes-no question). asked settles short words and never overrules
// clear ones. Any bytes are accepted.
func Read(text, lang, asked string) Meaning {
	if asked == "squeeze" {
		asked = "moisture"
	}
	r := newReader(text, lang, asked)
	m := r.read()
	m.Lang = r.seems()
	return m
}

// seems is the language most words were found in.
func (r *reader) seems() string {
	var n [tongues]int
	for _, s := range r.signs {
		if s.sense != "" && s.from < len(r.tokens) && r.tokens[s.from].kind == word && s.tongue < everyone {
			n[s.tongue]++
		}
	}
	best, most := "", 0
	for _, t := range r.order {
		if t < everyone && n[t] > most {
			best, most = folders[t], n[t]
		}
	}
	return best
}

// finding gathers what the clauses said.
type finding struct {
	danger  []string
	facts   []fact
	deeds   []deed
	asks    []string
	haves   []string
	guess   []string
	when    string
	answer  string
	hello   bool
	thanks  bool
	undo    bool
	problem bool
	doubt   bool
}

func (r *reader) read() Meaning {
	r.hindiVerbs()
	r.relatives()
	cs := r.split()
	r.several = len(cs) > 1
	r.frame(cs)
	var f finding
	corrected := map[int]bool{}
	about := r.opening()
	var last tense
	for k := range cs {
		c := &cs[k]
		if c.has("correct") || c.has("imeant") || k > 0 && k+1 < len(cs) && onlyNo(c) {
			corrected[k] = true
		}
		found := r.dangers(c, about)
		f.danger = append(f.danger, found...)
		for _, s := range c.signs {
			if s.sense == "ask=stop" && !c.cond && c.ask != askModal {
				f.danger = append(f.danger, "ask=stop")
			}
		}
		if r.bareStop(c, cs) {
			f.danger = append(f.danger, "ask=stop")
		}
		st := r.states(c, k, &about)
		if c.foreign {
			st = nil
		}
		for i := range st {
			st[i].doubt = c.doubt || c.ask == askMark || c.ask == askTag || r.eitherOr(c, st)
		}
		hidden := c.ask == askWhy || c.ask == askWh || c.ask == askModal || c.cond
		if c.has("isaid") {
			hidden = true
		}
		if !hidden {
			f.facts = append(f.facts, st...)
		}
		c.states = len(st) + len(found)
		f.deeds = append(f.deeds, r.deeds(c, k, &last, about)...)
	}
	f.facts = append(f.facts, r.temps(cs)...)
	f.haves = r.haves(cs)
	r.undoes(cs, &f, corrected)
	keep, clash := resolve(f.facts, corrected)
	f.guess = append(f.guess, clash...)
	f.facts = keep
	r.times(cs, &f)
	r.questions(cs, &f)
	r.answers(cs, &f)
	return r.settle(cs, &f)
}

func onlyNo(c *clause) bool {
	return len(c.signs) == 1 && (c.signs[0].sense == "no" || c.signs[0].sense == "not" || c.signs[0].sense == "nor")
}

// eitherOr: "hot or warm" leaves both open.
func (r *reader) eitherOr(c *clause, st []fact) bool {
	if !c.has("or") {
		return false
	}
	n := 0
	for _, f := range st {
		if f.code != notHot && f.code != notCold && f.code != notDry && f.code != notWet {
			n++
		}
	}
	return n > 1
}

// undoes finds the correction of an earlier message.
func (r *reader) undoes(cs []clause, f *finding, corrected map[int]bool) {
	for k := range cs {
		c := &cs[k]
		if c.has("isaid", "ask=undo") && c.ask == telling {
			f.undo = true
		}
		if c.has("imeant") {
			earlier := false
			for _, x := range f.facts {
				earlier = earlier || x.clause < k
			}
			if !earlier {
				f.undo = true
			}
		}
	}
}

// bareStop: the word alone, or with nothing but messages and manners about it.
func (r *reader) bareStop(c *clause, cs []clause) bool {
	if !c.has("stop") || c.has("today", "tomorrow", "later", "now") || c.cond || c.ask == askModal {
		return false
	}
	if c.has("message") {
		for i := range c.signs {
			if c.signs[i].sense == "stop" && c.signs[i].tense&past != 0 && !c.has("must", "want") {
				return false
			}
		}
		return true
	}
	for i := range c.signs {
		s := &c.signs[i]
		switch s.sense {
		case "stop":
			if s.tense&past != 0 {
				return false
			}
		case "filler", "me", "chat=hello", "chat=thanks", "yes", "ok", "no", "want", "not", "very":
		default:
			return false
		}
	}
	return len(cs) == 1 || len(cs) == 2
}

// times reads when= out of clauses in which nothing was done.
func (r *reader) times(cs []clause, f *finding) {
	when := func(w string) {
		if f.when == "" || w == "tomorrow" || f.when == "skip" {
			f.when = w
		}
	}
	for k := range cs {
		c := &cs[k]
		if c.ask != telling || c.foreign || c.has("ask=status", "ask=next") {
			continue
		}
		looking := false
		for _, s := range c.signs {
			looking = looking || s.sense == "look" && (s.tense&future != 0 || s.tense&(bare|present|order) != 0 && (c.will || c.later || c.tomorrow))
		}
		acted, plan, refusal, wish := c.has("done") && !c.has("not", "will", "tomorrow"), false, false, false
		for _, d := range f.deeds {
			if d.clause != k {
				continue
			}
			switch d.outcome {
			case done:
				acted = true
			case planned:
				if d.code == "" && cs[k].states > 0 && cs[k].signs[d.sign].tense&ongoing != 0 {
					break // "they are doing well"
				}
				plan = true
			case refused:
				refusal = true
			case wished:
				wish = true
			}
		}
		plan = plan || looking
		stated := c.states > 0
		for _, x := range f.facts {
			stated = stated || x.clause == k
		}
		odd := 0
		for _, s := range c.signs {
			switch s.sense {
			case "", "known", "foreign", "money", "weather", "animal", "person", "ask=officer":
				if s.sense != "" || r.tokens[s.from].kind == word {
					odd++
				}
			}
		}
		switch {
		case acted || c.doubt:
		case c.has("prog") && !plan && !stated && odd == 0:
			when("later")
		case plan && c.tomorrow:
			when("tomorrow")
		case plan:
			w := "later"
			if k+1 < len(cs) && cs[k+1].tomorrow && onlyTime(&cs[k+1]) || k > 0 && cs[k-1].tomorrow && onlyTime(&cs[k-1]) {
				w = "tomorrow"
			}
			when(w)
		case refusal || c.has("skip") && !c.has("not") && odd == 0:
			when("skip")
		case c.has("busy") && !c.has("while") && (!c.has("person", "animal") || c.has("me")) && !c.hasDim("animal"):
			if c.tomorrow {
				when("tomorrow")
			} else {
				when("later")
			}
		case stated || wish:
		case c.cant && c.has("today", "now", "later") && !c.tomorrow:
			when("later")
		case odd > 0 || c.cond:
		case c.has("today") && c.has("not", "no"):
			when("later")
		case c.tomorrow:
			when("tomorrow")
		case c.later, c.has("late"), c.will && len(c.signs) <= 4:
			if !c.has("past") {
				when("later")
			}
		case c.has("stop", "enough") && c.has("today"):
			when("later")
		}
	}
}

func onlyTime(c *clause) bool {
	for _, s := range c.signs {
		switch s.sense {
		case "tomorrow", "later", "filler", "night", "soft":
		default:
			if dimension(s.sense) != "part" && dimension(s.sense) != "day" {
				return false
			}
		}
	}
	return true
}

// questions reads ask= codes.
func (r *reader) questions(cs []clause, f *finding) {
	problem := len(f.danger) > 0
	for _, x := range f.facts {
		if x.doubt {
			continue
		}
		switch x.code {
		case "stick=hot", "stick=warm", "moisture=right", "smell=earthy", "smell=none", "seen=steam", "seen=sunk", "seen=worms_well":
		default:
			problem = problem || x.dim != "temp"
		}
	}
	add := func(code string) {
		for _, a := range f.asks {
			if a == code {
				return
			}
		}
		f.asks = append(f.asks, code)
	}
	cond := false
	for k := range cs {
		c := &cs[k]
		cond = cond || c.cond
		named := false
		for i := range c.signs {
			s := &c.signs[i]
			if s.neg && s.sense != "ready" {
				continue
			}
			switch s.sense {
			case "ask=next":
				named = true
				if problem || cond {
					add("ask=help")
				} else {
					add("ask=next")
				}
			case "whenq":
				if c.has("compost") && !c.hasAct() && !c.has("sell") {
					named = true
					add("ask=status")
				}
				if c.has("did=turned") {
					named = true
					if problem || cond {
						add("ask=help")
					} else {
						add("ask=next")
					}
				}
			case "ask=status", "ask=help", "ask=officer":
				named = true
				if s.sense == "ask=officer" && (c.has("past") || c.hasPast()) && c.ask == telling {
					break
				}
				if s.sense == "ask=help" && i+1 < len(c.signs) && (c.signs[i+1].sense == "do" || c.signs[i+1].sense == "stay") && c.signs[i+1].tense&(past|ongoing) != 0 {
					break // "madad kar raha tha": was helping
				}
				if s.sense == "ask=status" && c.has("foreign", "weather") {
					break
				}
				add(s.sense)
			case "ready":
				if c.ask != telling && c.ask != askWhy {
					named = true
					if !c.has("foreign", "money", "weather") && !c.hasDim("crop") {
						add("ask=status")
					}
				}
			case "officer":
				if !c.has("past") && !c.hasPast() && (c.core() <= 2 || c.has("want", "come", "help", "must", "ask=help", "say", "canq", "give", "message", "me", "whenq", "see")) {
					named = true
					add("ask=officer")
				}
			}
		}
		if named {
			continue
		}
		if c.foreign && c.ask == telling {
			continue
		}
		plan := false
		for _, d := range f.deeds {
			plan = plan || d.outcome == planned
		}
		switch c.ask {
		case askWhy:
			if r.ours(c, true) {
				add("ask=why")
			}
		case askWh, askModal:
			if r.ours(c, false) {
				add("ask=help")
			}
		case askMark:
			if c.cond && r.ours(c, false) {
				add("ask=help")
			} else if r.mayI(c) {
				add("ask=help")
			} else if c.judging() || c.has("must") && r.ours(c, false) {
				add("ask=help")
			}
		case telling:
			if c.cond && f.when == "" && !plan && r.ours(c, false) {
				add("ask=help")
			}
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

// judging: "is ash good for the heap?", "did I do it well?"
func (c *clause) judging() bool {
	if !c.has("good", "bad", "ok", "fine", "normal") || c.has("smell", "tag") {
		return false
	}
	thing := c.has("heap", "worm", "bottle", "compost", "do", "done", "starter")
	for _, s := range c.signs {
		thing = thing || dimension(s.sense) == "material"
	}
	return thing
}

// hasDeed is hasAct without the verbs that mean nothing alone.
func (c *clause) hasDeed() bool {
	for _, s := range c.signs {
		if act(s.sense) && s.sense != "do" && s.sense != "make" {
			return true
		}
	}
	return false
}

func (c *clause) hasPast() bool {
	for _, s := range c.signs {
		if s.tense&past != 0 && s.tense&(present|order) == 0 && s.sense != "is" {
			return true
		}
	}
	return false
}

// mayI: a question mark after "nigeuze", "palat dun", "je retourne", "lo volteo".
func (r *reader) mayI(c *clause) bool {
	for _, s := range c.signs {
		if act(s.sense) && s.tense&(order|present|bare|future) != 0 && !(s.tense&past != 0 && s.tense&(order|present) == 0) {
			if s.tongue == en && s.tense&bare != 0 && !c.has("me", "now", "heap", "water") {
				continue
			}
			return true
		}
	}
	return c.has("enough") && r.ours(c, false) || c.has("whenq", "normal")
}

// ours says whether a question is about the heap at all, and not about prices,
// football or the neighbour's cow.
func (r *reader) ours(c *clause, why bool) bool {
	if c.has("money") {
		return false
	}
	if c.has("weather", "foreign") && !c.hasDeed() && !c.has("heap", "worm", "bottle", "compost", "stick", "layer", "starter", "cap", "sheet", "bed") {
		return false
	}
	known, odd := 0, 0
	for _, s := range c.signs {
		switch s.sense {
		case "stick", "heap", "inside", "edge", "bottle", "cap", "worm", "bed", "starter", "smell", "gas", "water", "drop", "layer", "compost", "heat", "joto", "damp",
			"size", "sheet", "use", "wrong", "help", "burn", "ready", "dung", "leaf", "straws", "food", "enough", "liquid", "dry_leaf", "stalk", "huskw", "sell", "continue", "stop", "moto", "good", "bad", "nothing", "die", "leave", "goout", "hold", "worry", "bite", "cut", "drink", "eat", "eye", "body":
			known++
		case "animal", "person", "money", "weather", "plant", "medicine":
			odd++
		case "":
			if r.tokens[s.from].kind == word {
				odd++
			}
		case "known", "foreign":
			odd++
		default:
			if quality(s.sense) || act(s.sense) {
				known += 2
			} else if d := dimension(s.sense); d == "material" || d == "unit" {
				known++
			}
		}
	}
	if known == 0 {
		return odd == 0 && (why || c.has("canq", "must") || len(c.signs) > 0 && !c.has("who") && !(len(c.signs) > 2 && c.has("whenq", "howmany", "which")))
	}
	return known >= odd || known >= 2 && odd <= 3
}

// answers reads bare yes, no, done, OK, greetings and thanks.
func (r *reader) answers(cs []clause, f *finding) {
	yes, no, notyet, did, ok := false, false, false, false, false
	for k := range cs {
		c := &cs[k]
		for i := range c.signs {
			s := &c.signs[i]
			switch s.sense {
			case "chat=hello":
				// "cómo está la familia" greets nobody about the heap
				f.hello = f.hello || !c.has("foreign", "person", "animal", "known", "money", "weather") && !c.hasDim("crop")
			case "chat=thanks":
				f.thanks = true
			case "yes", "si":
				if s.sense == "yes" || !c.cond {
					yes = yes || !c.doubt && c.ask == telling
				}
			case "no":
				no = no || c.core() == 1 || i == 0 && !c.hasTarget()
			case "not":
				no = no || c.core() == 1 || len(c.signs) == 2 && c.has("is") && r.asked == "have"
			case "notyet":
				notyet = notyet || c.ask == telling
			case "ok":
				ok = ok || c.ask == telling
			case "ready":
				did = did || c.ask == telling && actOf(r.asked) != "" && !c.has("not", "notyet") && !c.doubt
			case "done", "finish":
				if s.sense == "done" || s.tense&(past|participle) != 0 {
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
	for _, d := range f.deeds {
		if d.code == "" {
			c := &cs[d.clause]
			if c.odd > 0 && !c.has("done") {
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
	if !did && !no && !notyet && r.forgot(cs, f) {
		notyet = own != "" || r.asked == "have"
	}
	if r.asked == "have" {
		for k := range cs {
			for _, s := range cs[k].signs {
				if s.sense == "nothing" || s.sense == "have" && s.neg {
					no = true
				}
				if (s.sense == "not" || s.sense == "no") && cs[k].has("have") && !cs[k].hasDim("material") && cs[k].odd == 0 {
					no = true
				}
			}
		}
	}
	for _, d := range f.deeds {
		if d.outcome == notDone && d.code != "" && d.code == own {
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

// core counts the signs that carry meaning.
func (c *clause) core() int {
	n := 0
	for _, s := range c.signs {
		switch s.sense {
		case "filler", "correct", "me", "soft", "chat=hello", "chat=thanks":
		default:
			n++
		}
	}
	return n
}

func (c *clause) hasTarget() bool {
	for _, s := range c.signs {
		if quality(s.sense) || act(s.sense) {
			return true
		}
	}
	return false
}

func (r *reader) forgot(cs []clause, f *finding) bool {
	for k := range cs {
		c := &cs[k]
		if c.ask != telling || c.doubt {
			continue
		}
		if c.has("forgot") || c.cant && !c.tomorrow && !c.later && !c.has("today", "now") && c.odd == 0 {
			for _, d := range f.deeds {
				if d.clause == k && d.code != "" && d.code != actOf(r.asked) {
					return false
				}
			}
			return true
		}
	}
	return false
}

// settle puts the findings together under the rules for what stands alone.
func (r *reader) settle(cs []clause, f *finding) Meaning {
	var codes []string
	codes = append(codes, unique(f.danger)...)
	unsettled := len(f.guess) > 0
	for _, x := range f.facts {
		if x.doubt {
			f.guess = append(f.guess, x.code)
			unsettled = true
			continue
		}
		codes = append(codes, x.code)
	}
	planned := f.when != ""
	for _, d := range f.deeds {
		if d.code == "" {
			continue
		}
		switch d.outcome {
		case done:
			codes = append(codes, d.code)
		case doubtful, wished:
			f.guess = append(f.guess, d.code)
		}
	}
	codes = append(codes, f.haves...)
	if f.undo {
		codes = append(codes, "ask=undo")
	}
	if planned {
		codes = append(codes, "when="+f.when)
	}
	codes = append(codes, f.asks...)
	codes = r.consistent(unique(codes))
	if len(codes) == 0 {
		codes = r.short(cs, f, unsettled)
	} else if yesAnd(cs) && actOf(r.asked) != "" && !hasCode(codes, actOf(r.asked)) && hasDid(codes) {
		codes = append(codes, actOf(r.asked)) // "yes and we added water"
	} else if f.answer == "done" && actOf(r.asked) != "" && !planned && !hasDid(codes) && len(f.asks) == 0 {
		codes = append(codes, actOf(r.asked))
	} else if f.answer == "yes" && actOf(r.asked) != "" && !planned && !hasDid(codes) && !r.deniesOwn(f) && len(f.asks) == 0 && !f.undo {
		codes = append(codes, actOf(r.asked))
	}
	sort.Strings(codes)
	if len(codes) == 0 {
		return Meaning{Guess: unique(f.guess)}
	}
	return Meaning{Codes: codes, Sure: true}
}

func (r *reader) deniesOwn(f *finding) bool {
	for _, d := range f.deeds {
		if d.code == actOf(r.asked) && d.outcome != done {
			return true
		}
	}
	return false
}

func yesAnd(cs []clause) bool {
	for k := range cs {
		if cs[k].end == "and" && cs[k].core() == 1 && cs[k].has("yes") {
			return true
		}
	}
	return false
}

func hasCode(codes []string, code string) bool {
	for _, c := range codes {
		if c == code {
			return true
		}
	}
	return false
}

func hasDid(codes []string) bool {
	for _, c := range codes {
		if dimension(c) == "did" {
			return true
		}
	}
	return false
}

// short reads what is left when nothing was reported: yes, no, done, thanks.
func (r *reader) short(cs []clause, f *finding, unsettled bool) []string {
	if unsettled {
		return nil
	}
	own := actOf(r.asked)
	yesno := r.yesNo()
	odd := 0
	for k := range cs {
		odd += cs[k].odd
		if cs[k].foreign {
			return nil
		}
		if cs[k].has("foreign", "money", "weather") {
			odd += 2
		}
	}
	for k := range cs { // "mañana si Dios quiere" is no yes
		if (cs[k].tomorrow || cs[k].later) && !cs[k].has("past") && (f.answer == "yes" || f.answer == "done") {
			return nil
		}
	}
	if odd <= 2 {
		switch f.answer {
		case "done":
			if own != "" {
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
			if yesno && !f.thanks && !f.hello {
				return []string{"answer=yes"}
			}
		case "no":
			if own != "" || yesno || r.asked == "have" {
				return []string{"answer=no"}
			}
		case "notyet":
			denied := false
			for _, d := range f.deeds {
				if d.code != "" && d.code != own {
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

func (r *reader) plainNotYet(cs []clause) bool {
	for k := range cs {
		if cs[k].has("notyet") {
			return true
		}
	}
	return false
}

// yesNo: questions to which yes and OK are answers.
func (r *reader) yesNo() bool {
	switch r.asked {
	case "stick", "moisture", "smell", "bottle", "shake", "turn", "layer", "sieve", "feed", "worms", "have":
		return false
	}
	return true
}

// consistent drops what another code already says better.
func (r *reader) consistent(codes []string) []string {
	has := func(c string) bool {
		for _, x := range codes {
			if x == c {
				return true
			}
		}
		return false
	}
	out := codes[:0]
	for _, c := range codes {
		switch {
		case c == "seen=smoke" && has("seen=fire") && false:
			continue
		case c == "moisture=wet" && has("seen=runoff"):
			continue
		case c == "smell=none" && countDim(codes, "smell") > 1:
			continue
		case c == "seen=worms_well" && (has("seen=worms_dead") || has("seen=worms_escaping")):
			continue
		case c == "ask=help" && (has("ask=why") || has("ask=status") || has("ask=officer")) && false:
			continue
		}
		out = append(out, c)
	}
	return out
}

func countDim(codes []string, dim string) int {
	n := 0
	for _, c := range codes {
		if dimension(c) == dim {
			n++
		}
	}
	return n
}

func unique(in []string) []string {
	out := in[:0:0]
	for i, c := range in {
		dup := false
		for _, d := range in[:i] {
			dup = dup || c == d
		}
		if !dup {
			out = append(out, c)
		}
	}
	return out
}
