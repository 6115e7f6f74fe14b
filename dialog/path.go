package dialog

import "strings"

// Which way: a hot heap, old manure that has lost its heat, or cold dung. Three
// short questions decide for a farmer who does not know.

func pathQuestions() map[string]question {
	return map[string]question{
		"path":         {asks: "path", choices: choose("pick=hot_heap", "pick=old_manure", "pick=cold_dung", "pick=help_choose"), answer: (*exchange).pathTold},
		"choose_stuff": {asks: "confirm", choices: yesNo, answer: (*exchange).chooseStuff},
		"choose_turn":  {asks: "confirm", choices: yesNo, answer: (*exchange).chooseTurn},
		"choose_soon":  {asks: "confirm", choices: yesNo, answer: (*exchange).chooseSoon},
		"path_cold":    {asks: "confirm", choices: yesNo, answer: (*exchange).pathCold},
	}
}

func (x *exchange) pathTold(q Question, m meaning) bool {
	switch m.value("pick") {
	case "hot_heap":
		x.begin(HotHeap)
	case "old_manure":
		x.begin(OldManure)
	case "cold_dung":
		x.begin(ColdPath)
	case "help_choose":
		x.ask("choose_stuff", 0)
	default:
		if m.has("ask=help") {
			x.ask("choose_stuff", 0)
			return true
		}
		return false
	}
	return true
}

// begin opens a new heap on one of the ways and says what it can and cannot do.
func (x *exchange) begin(p Path) {
	x.note(x.newHeap(), Begun{Path: p})
	x.tellWay(p)
}

// wantsHeap says that a farmer without a heap speaks of making one: "start a heap",
// "how do I make compost?". The way is asked first, whatever the grammar of the wish.
func (x *exchange) wantsHeap(line string, m meaning) bool {
	free := x.open.ID == "" || x.open.ID == "menu"
	return free && len(x.s.Active()) == 0 && !x.tellsFact(m) && !m.no() && m.value("ask") != "undo" && x.lineHolds(line, "words_begin")
}

// anotherWay changes the way of a heap on which nothing was done yet, when another
// is named in a few words.
func (x *exchange) anotherWay(line string, m meaning) bool {
	h, ok := x.inHand()
	if !ok || x.open.ID == "path" || h.Built != 0 || h.Layers > 0 || len(h.Reads) > 0 || h.Sieved != 0 || h.Bottle.Mixed != 0 ||
		m.value("have") != "" || m.value("ask") != "" || len(strings.Fields(line)) > 4 {
		return false
	}
	ways := Question{Choices: labelled(x.lang(), "pick=hot_heap", "pick=old_manure", "pick=cold_dung")}
	c, ok := pickOf(ways, line)
	if !ok {
		c, ok = pickByWords(x.lang(), ways, line, true)
	}
	p := Path(strings.TrimPrefix(c.Means, "pick="))
	if !ok || p == "" || len(strings.Fields(line)) < 2 {
		return false
	}
	switch {
	case p != h.Path:
		x.changeWay(h.ID, p)
	case x.open.ID == "have": // said once more
		x.again()
	default:
		return false
	}
	return true
}

// changeWay puts a heap on another way and goes on with it.
func (x *exchange) changeWay(id HeapID, p Path) {
	x.note(id, PathChosen{p})
	x.close()
	x.tellWay(p)
}

// tellWay says what a way can and cannot do, and goes on with it.
func (x *exchange) tellWay(p Path) {
	switch p {
	case HotHeap:
		x.say("path_hot", nil)
		x.show(Picture{Kind: "section"})
	case OldManure:
		x.say("path_manure", nil, "not_proof")
	case ColdPath:
		x.say("path_cold", nil, "not_proof")
	}
	x.goOn()
}

func (x *exchange) chooseStuff(_ Question, m meaning) bool {
	switch {
	case m.yes():
		x.ask("choose_turn", 0)
	case m.no():
		x.say("choose_small", nil)
		x.ask("path_cold", 0)
	default:
		return false
	}
	return true
}

func (x *exchange) chooseTurn(_ Question, m meaning) bool {
	switch {
	case m.yes():
		x.ask("choose_soon", 0)
	case m.no():
		x.say("choose_noturn", nil)
		x.ask("path_cold", 0)
	default:
		return false
	}
	return true
}

func (x *exchange) chooseSoon(_ Question, m meaning) bool {
	switch {
	case m.yes():
		x.say("choose_hot", nil)
		x.begin(HotHeap)
	case m.no():
		x.say("choose_either", nil)
		x.ask("path", 0)
	default:
		return false
	}
	return true
}

func (x *exchange) pathCold(q Question, m meaning) bool {
	switch {
	case m.yes():
		if h, ok := x.s.Heap(q.Heap); ok && h.Active() {
			x.changeWay(h.ID, ColdPath)
			return true
		}
		x.begin(ColdPath)
	case m.no():
		if q.Heap == 0 {
			x.ask("path", 0)
			return true
		}
		x.goOn()
	default:
		return false
	}
	return true
}

// spanOf is how many days a way usually takes from its start to worms that can
// be fed: 35-42 and a month or two for cold dung (common practice, no source).
func spanOf(p Path) int {
	switch p {
	case ColdPath:
		return coldMonths
	case OldManure:
		return 7
	}
	return 35
}
