package understand

import (
	"slices"
	"strings"
)

// anew says whether a new statement begins at sign i of a message typed or spoken without
// marks: "fed them | some are dead", "खिला दिया | कुछ मर गए". What stands before must
// state something, and so must what follows.
func (r *reader) anew(cur []sign, i int) bool {
	n := len(cur)
	if n == 0 {
		return false
	}
	s := &r.signs[i]
	w := r.word(s.from)
	told := clause{signs: cur}
	switch {
	case n == 1 && cur[0].sense == "no" && r.best == en:
		return w == "my" // "no my chest is tight"
	case s.sense == "canq" && s.tongue == en && s.to > s.from+1 && n > 2 && !tight(cur[n-1].sense) && !oneOf(cur[n-1].sense, "and", "but", "then") && !subordinates(r.word(s.from-1)) && !told.has("what", "how", "why", "which", "whenq", "howmany", "who", "ask=next", "if", "whatif"):
		return true // "lent the mesh to my cousin | can i use a net"
	case s.sense == "did=watered" && s.tongue == en && s.tense&past != 0 && cur[n-1].text == "down" && told.has("is"):
		return true // "green stuff is down | wetted it too"
	case s.sense == "chat=thanks":
		return greets(cur)
	case r.harmOpens(cur, i) || r.alarmOpens(cur, i):
		return true
	case s.sense == "today":
		return r.planThenDeed(cur, i)
	case s.sense == "mine" && s.hindi() && r.afterVerb(s) && slices.ContainsFunc(cur, func(o sign) bool { return o.sense == "neighbor" }):
		return true // "padosi ka thanda hai | mera garam"
	case s.hindi() && oneOf(w, "bas", "sirf", "बस", "सिर्फ", "केवल") && r.onlyThat(cur, i):
		return true
	case s.hindi() && oneOf(w, "aisa", "aise", "esa", "ऐसा", "ऐसे") && i+1 < len(r.signs) && oneOf(r.signs[i+1].sense, "why", "ask=why") && stated(cur):
		return true // "खट्टी है | ऐसा क्यों"
	case w == "will" && s.tongue == en && i+1 < len(r.signs) && act(r.signs[i+1].sense) && told.amounts():
		return true // "got 5 sacks of sawdust | will put them on tomorrow"
	case r.asksLeave(s) && stated(cur) && (!tight(cur[n-1].sense) || s.tongue == sw && oneOf(cur[n-1].sense, "very", "bit")) && !subordinates(r.word(s.from-1)) && r.asks(i):
		return true // "polvo puro | le echo agua?"
	case !r.mayOpen(s, w), tight(cur[n-1].sense) && !(s.hindi() && oneOf(cur[n-1].sense, "is", "very")), subordinates(r.word(s.from - 1)), !stated(cur):
		return false
	case r.sights(s) && s.tongue != sw:
		return (described(cur) || inDim(cur[n-1].sense, "did") && cur[n-1].tense&past != 0) && !ties(r.word(s.from-1)) && !oneOf(cur[n-1].sense, "filler", "didaux", "seen=worms_escaping", "goout")
	case s.hindi() && described(cur) && r.asksAhead(i):
		return true // "dabate hi pani behta hai | kya karu", "नरम है | गैस क्यों नहीं बनती"
	case s.hindi():
		// what else is told of a hurt belongs to it
		if last := &r.signs[len(r.signs)-1]; s.sense == "worm" && oneOf(last.sense, "good", "ok") && last.from > s.from {
			return true // "ghas ug aayi upar | kenchue bhi theek"
		}
		return r.statesAhead(i) && r.verbAfter(i) && (!told.hasHarm() || inDim(s.sense, "seen") || s.sense == "worm" || s.sense == "heap")
	case oneOf(s.sense, "is", "heap", "stick") && takenBack(cur):
		return r.statesAhead(i) // "apreté frío por error es caliente"
	case s.tongue == sw:
		return (oneOf(w, "wengine", "baadhi", "wachache") || inDim(s.sense, "seen") && (described(cur) || inDim(cur[n-1].sense, "did") && cur[n-1].tense&past != 0)) && r.statesAhead(i)
	}
	switch w {
	case "esta", "estan", "era":
		return i+1 < len(r.signs) && quality(r.signs[i+1].sense) && (r.signs[i+1].sense != "alive" || told.has("did=fed"))
	case "it", "its":
		if act(cur[n-1].sense) || oneOf(cur[n-1].sense, "now", "today") {
			return false // "shook it hard", "cold on monday now | its hot"
		}
	case "i", "my":
		if oneOf(cur[n-1].sense, "couldnt", "forgot") {
			return true // "could not I had fever"
		}
	}
	return w != "my" && r.opensStatement(w) && r.statesAhead(i)
}

// amounts says whether a clause tells how much there is of something.
func (c *clause) amounts() bool { return c.hasDim("material") && c.hasDim("unit") }

// asksLeave says whether a sign is an act of the farmer's own that may be asked about: "le echo
// agua?", "nifungue?", "can I ...".
func (r *reader) asksLeave(s *sign) bool {
	return s.tongue == sw && act(s.sense) && s.tense&order != 0 && s.tense&past == 0 ||
		s.tongue == es && act(s.sense) && s.tense&(present|order) != 0 && slices.ContainsFunc(r.tokens[s.from:s.to], func(t token) bool { return strings.HasSuffix(t.text, "o") }) ||
		s.sense == "canq" && s.to > s.from+1 && !s.hindi()
}

// harmOpens says whether sign i begins to tell of a harm, after something else was told:
// "they climb out | auntie's chest is tight", "sirke jaisi hai | naukar ne pi liya".
func (r *reader) harmOpens(cur []sign, i int) bool {
	s, last := &r.signs[i], &cur[len(cur)-1]
	switch {
	case s.hindi():
		if trails(s) && !r.sufferer(s) || !r.afterVerb(s) || oneOf(r.word(s.to), "में", "पर", "से", "me", "mein", "par", "pe", "se") && !oneOf(s.sense, "body", "eye", "dust") {
			return false
		}
	case !r.sufferer(s) && !(oneOf(s.sense, "filler", "one") && i+1 < len(r.signs) && r.sufferer(&r.signs[i+1])):
		return false
	}
	before := r.word(s.from - 1)
	if tight(last.sense) && last.sense != "is" || oneOf(last.sense, "and", "but", "because", "do") || crawling(last.sense) || last.beast() || subordinates(before) || ties(before) {
		return false
	}
	told := clause{signs: cur}
	told.sift()
	if !told.tells() || told.hasHarm() || told.has("body", "eye", "drink", "eat", "burn", "burning", "bite", "cut", "breathe", "stinger", "maul") {
		return false
	}
	return slices.ContainsFunc(r.toMark(i), func(o sign) bool {
		return hurts(o.sense) || o.sense == "maul" || oneOf(o.sense, "burn", "bite", "cut", "drink", "eat", "breathe") && o.tense&(past|participle|ongoing) != 0 && !o.neg
	})
}

// alarmOpens says whether a danger begins to be told at sign i, after the open question was answered:
// "bahut garam | upar se dhuan", "tamisé hier | ne m'envoyez plus rien".
func (r *reader) alarmOpens(cur []sign, i int) bool {
	at := i
	for at < len(r.signs) && at < i+4 && aside(r.signs[at].sense) {
		at++
	}
	if at == len(r.signs) || at == i+4 {
		return false
	}
	s := &r.signs[at]
	if s.neg || !oneOf(s.sense, "seen=smoke", "seen=fire", "seen=runoff", "ask=stop") && !(inDim(s.sense, "harm") && s.own) {
		return false
	}
	if w := r.word(s.from); oneOf(r.word(s.from-1), "a", "of", "de", "like", "comme", "como") || s.sense == "harm=eye" && (w == "into" || ties(w)) {
		return false // "hiede a humo", "dans mon oeil"
	}
	last := len(cur) - 1
	for last > 0 && oneOf(cur[last].sense, "is", "filler", "past", "water") {
		last--
	}
	end := &cur[last]
	told := clause{signs: cur}
	if end.neg || crawling(end.sense) && inDim(s.sense, "harm") || told.has("if", "whatif", "si", "or", "like", "maybe", "not", "no", "nor", "without", "why", "how", "what") || told.hasHarm() || inDim(s.sense, "harm") && told.has("body", "eye", "stinger") {
		return false
	}
	named := told.has("stick", "heap", "worm", "bottle", "is", "was", "very", "squeeze") || at > i
	switch {
	case inDim(end.sense, r.asked) && quality(end.sense):
		return named || inDim(s.sense, "harm") || s.sense == "ask=stop"
	case r.asked == "worms" && (inDim(end.sense, "seen") || oneOf(end.sense, "good", "alive")):
		return named || s.sense == "ask=stop"
	case r.asked != "none" && r.asked != "menu" && inDim(end.sense, "did") && (end.tense&(past|participle) != 0 || end.tongue == sw && end.tense&bare != 0):
		return true
	case actOf(r.asked) != "":
		return oneOf(end.sense, "tomorrow", "later") && inDim(s.sense, "harm") || end.tense&future != 0 && told.has("tomorrow", "later")
	}
	return false
}

// aside says whether a sense only says where, when or how much of what is told next.
func aside(sense string) bool {
	switch sense {
	case "filler", "edge", "inside", "heap", "rangeto", "bit", "maybe", "mine", "today", "now", "past", "one", "also":
		return true
	}
	return false
}

// tells says whether a clause answers something by itself: a state, an act done or not, a day,
// a figure, what is at hand.
func (c *clause) tells() bool {
	if c.has("if", "whatif", "si", "why", "how", "askif", "canq", "normal", "what", "howmany", "whenq", "which", "who", "while") {
		return false
	}
	return c.hasQuality() || c.has("good", "alive") || c.has("ok", "fine") && c.has("worm", "heap", "bottle") || c.has("tomorrow", "later", "degree", "celsius", "couldnt", "forgot", "done") || c.hasDim("material") && c.hasDim("unit") ||
		slices.ContainsFunc(c.signs, func(s sign) bool {
			return act(s.sense) && s.tense&(past|participle|future) != 0 || inDim(s.sense, "did") && c.has("not", "notyet")
		})
}

// sufferer says whether a sign may name who was hurt, or what hurt them, or begins with it: "wasp
// got me", "jicho langu jekundu", "nimechanika".
func (r *reader) sufferer(s *sign) bool {
	if hurts(s.sense) && s.to > s.from+1 {
		return r.lex.may(r.ids[s.from], func(e entry) bool { return r.home(e.tongue) && agent(e.sense()) })
	}
	return agent(s.sense) || s.beast() ||
		s.tongue == sw && s.tense&order == 0 && (hurts(s.sense) || oneOf(s.sense, "burn", "bite", "cut", "drink", "breathe") && s.tense&past != 0) && oneOf(s.text[:1], "n", "a", "t")
}

// agent says whether a sense is of somebody, a part of the body, or what does harm to one.
func agent(sense string) bool {
	switch sense {
	case "person", "neighbor", "me", "mine", "stinger", "pointed", "body", "eye", "dust", "seen=rodents", "seen=ants", "seen=ash":
		return true
	}
	return false
}

// ties says whether a word ties a name to what stands before it: "with my son".
func ties(w string) bool {
	switch w {
	case "on", "in", "with", "by", "for", "of", "to", "at", "from", "under", "over", "near", "my", "has", "have", "had",
		"a", "de", "en", "con", "por", "para", "al", "del", "entre", "mi", "mis", "la", "el", "los", "las", "un", "una",
		"au", "avec", "par", "pour", "dans", "sur", "du", "des", "chez", "mon", "ma", "mes", "le", "les", "une", "d", "l",
		"kwa", "na", "ya", "wa", "kwenye", "za", "cha", "katika":
		return true
	}
	return false
}

// mayOpen says whether a sign is of the kind that begins a clause: asked first, since few
// are.
func (r *reader) mayOpen(s *sign, w string) bool {
	switch {
	case s.hindi():
		return (!trails(s) || oneOf(w, "kuch", "कुछ")) && r.afterVerb(s) // "खिला दिया | कुछ मर गए"
	case s.sense == "is", s.sense == "heap", s.sense == "stick", r.sights(s):
		return true
	case s.tongue == sw:
		return oneOf(w, "wengine", "baadhi", "wachache")
	}
	return r.opensStatement(w)
}

// sights says whether a sign is a sight told in more words than one, "black water running out",
// in a language whose clauses do not end on a verb.
func (r *reader) sights(s *sign) bool {
	return inDim(s.sense, "seen") && s.to > s.from+1 && !s.hindi()
}

// opensStatement says whether a word is a subject or a helping verb that begins a clause.
func (r *reader) opensStatement(w string) bool {
	switch r.best {
	case en:
		return oneOf(w, "it", "its", "they", "theyre", "some", "most", "many", "mine", "i", "we", "my", "there", "theres", "will", "also")
	case es:
		return oneOf(w, "algunas", "algunos", "hay", "tambien", "esta", "estan", "era", "tengo", "quedan")
	case fr:
		return oneOf(w, "c", "il", "ils", "elle", "elles", "certains", "certaines", "j", "je", "on", "ya")
	}
	return false
}

// afterVerb says whether a finite Hindi verb stands before a sign, past "very" and "sir".
func (r *reader) afterVerb(s *sign) bool {
	last := s.from - 1
	for last > 0 && adverbial(r.word(last)) {
		last--
	}
	w := r.word(last)
	return endsStatement(w) && !oneOf(w, "हुआ", "हुई", "हुए", "hua", "hui", "hue")
}

// adverbial says whether a Hindi word may stand between two statements and be of either.
func adverbial(w string) bool {
	switch w {
	case "bahut", "bahot", "bhut", "kaafi", "ji", "sir", "bhai", "bhaiya", "sahab", "neeche", "niche", "upar", "andar", "se", "नीचे", "ऊपर", "अंदर", "से", "बहुत", "काफी", "जी", "सर", "भाई":
		return true
	}
	return false
}

// subordinates says whether a word ties what follows to what stands before.
func subordinates(w string) bool {
	switch w {
	case "that", "which", "who", "than", "until", "till", "since", "because", "when", "while", "before", "after", "as", "if", "so", "like", "where", "what", "how", "why", "km",
		"que", "como", "cuando", "porque", "si", "donde", "qu", "quand", "comme", "parce", "ou", "dont":
		return true
	}
	return false
}

// tight says whether a sense waits for more, so that no statement can end on it.
func tight(sense string) bool {
	switch sense {
	case "not", "no", "nor", "neither", "very", "too", "bit", "is", "was", "have", "will", "want", "must", "didaux", "before", "after", "while", "maybe", "soft", "rangeto", "me", "mine", "num", "one", "or", "like":
		return true
	}
	return false
}

// stated says whether signs state something, and neither ask nor suppose it.
func stated(cur []sign) bool {
	fact := false
	for k := range cur {
		switch s := &cur[k]; s.sense {
		case "if", "whatif", "si", "why", "how", "askif", "canq", "normal", "what", "howmany", "whenq", "which", "who", "while", "maybe", "not", "no", "nor", "neither":
			return false
		case "couldnt", "forgot", "skip", "ask=undo":
			fact = true
		case "ok", "fine":
			fact = fact || s.to > s.from+1 // "están bien | hay moscas"
		case "done":
			fact = fact || s.text != "ya" // which is already, too
		default:
			fact = fact || quality(s.sense) && s.sense != "ready" || act(s.sense) && s.tense&(past|participle) != 0
		}
	}
	return fact
}

// greets says whether signs hold nothing but a greeting.
func greets(cur []sign) bool {
	hello := false
	for k := range cur {
		switch cur[k].sense {
		case "chat=hello":
			hello = true
		case "filler", "ask=officer", "officer", "person", "me":
		default:
			return false
		}
	}
	return hello
}

// takenBack says whether signs name an earlier answer as wrong.
func takenBack(cur []sign) bool {
	return slices.ContainsFunc(cur, func(s sign) bool { return s.sense == "isaid" || s.sense == "ask=undo" })
}

// statesAhead says whether something is stated from sign i on, before the next mark.
func (r *reader) statesAhead(i int) bool {
	ahead := r.toMark(i)
	have := slices.ContainsFunc(ahead, func(s sign) bool { return s.sense == "have" })
	return slices.ContainsFunc(ahead, func(s sign) bool {
		return quality(s.sense) || act(s.sense) && s.tense&past != 0 || have && inDim(s.sense, "material") || inDim(s.sense, "did") || oneOf(s.sense, "burn", "bite", "cut", "eat", "worm", "moto", "degree", "celsius", "fahrenheit")
	})
}

// asksAhead says whether a why or a "what do I do" stands from sign i on, before the next mark.
func (r *reader) asksAhead(i int) bool {
	return slices.ContainsFunc(r.toMark(i), func(s sign) bool { return oneOf(s.sense, "why", "ask=why", "ask=next", "ask=help") })
}

// verbAfter says whether a finite Hindi verb stands at sign i or after it, before the next
// mark.
func (r *reader) verbAfter(i int) bool {
	return slices.ContainsFunc(r.toMark(i), func(s sign) bool { return endsStatement(r.word(s.to - 1)) })
}

// trails says whether a Hindi word still belongs to the verb before it.
func trails(s *sign) bool {
	switch s.sense {
	case "is", "was", "very", "bit", "filler", "not", "no", "nor", "tag", "what", "me", "person", "give", "go", "do", "stay", "prog", "will", "ok", "yes", "done", "now", "ask=officer", "while", "if", "maybe", "and", "but", "then", "or":
		return true
	}
	return false
}

// onlyThat says whether "only" at sign i begins to tell what was done, after what was not: "paltai
// nahi ki | bas paani diya".
func (r *reader) onlyThat(cur []sign, i int) bool {
	undone := func(s sign) bool { return oneOf(s.sense, "forgot", "notyet", "couldnt") || act(s.sense) && s.neg }
	deed := func(s sign) bool { return act(s.sense) && s.tense&past != 0 && !s.neg }
	return slices.ContainsFunc(cur, undone) && slices.ContainsFunc(r.toMark(i), deed)
}

// planThenDeed says whether "today" at sign i begins to tell what was done, after a plan for
// tomorrow: "kesho nitaweka tabaka | leo nimekusanya majani".
func (r *reader) planThenDeed(cur []sign, i int) bool {
	plan := func(s sign) bool { return act(s.sense) && s.tense&future != 0 }
	deed := func(s sign) bool {
		return act(s.sense) && s.tense&past != 0 && !s.neg || inDim(s.sense, "harm") && s.own
	}
	return slices.ContainsFunc(cur, func(s sign) bool { return oneOf(s.sense, "tomorrow", "kal") }) &&
		slices.ContainsFunc(cur, plan) && slices.ContainsFunc(r.toMark(i), deed)
}
