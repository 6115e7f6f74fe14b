package dialog

import (
	"slices"
	"strings"

	"warmstick/dialog/compost"
)

// Rest, opening and cooling, up to the coarse sieve; also what a handful, a
// smell or a sight means along the way.

func restQuestions() map[string]question {
	return map[string]question{
		"rest":         {asks: "moisture", topic: "moisture", task: TaskRest, choices: choose("moisture=dry", "moisture=right", "moisture=wet"), answer: (*exchange).factsOrLater},
		"open":         {asks: "stick", topic: "stick", task: TaskOpen, choices: choose("stick=hot", "stick=warm", "stick=cold"), answer: (*exchange).factsOrLater},
		"spread":       {asks: "ready", task: TaskSpread, choices: yesNo, answer: (*exchange).spreadTold},
		"cool":         {asks: "smell", topic: "smell", also: "stick", task: TaskCool, choices: choose("smell=earthy", "smell=ammonia", "smell=rotten", "stick=warm"), answer: (*exchange).coolTold},
		"sieve":        {asks: "sieve", topic: "sieve", task: TaskSieve, choices: choose("did=sieved", "when=tomorrow"), answer: (*exchange).sieveAnswer},
		"manure_smell": {asks: "smell", topic: "smell", task: TaskManure, choices: choose("smell=earthy", "smell=ammonia", "smell=rotten", "smell=none"), answer: (*exchange).factsOrLater},
		"manure_stick": {asks: "stick", topic: "stick", task: TaskManure, choices: choose("stick=hot", "stick=warm", "stick=cold"), answer: (*exchange).factsOrLater},
	}
}

func (x *exchange) restNext(h Heap) string {
	r, read := h.Read()
	switch {
	case h.Path == OldManure && h.Sieved == 0 && !h.Cool:
		return x.manureNext(h, r, read)
	case h.Stage == Opening && h.Acts[TaskSpread].Until <= x.today:
		return "spread"
	case h.Path == ColdPath && h.Built != 0 && read && r.Warmth == "cold" && r.Day >= h.Built+coldMonths && !h.Cool && (h.SmellDay < r.Day):
		return "cool"
	case h.Stage == Cooling && !h.Cool && h.Opened != 0 && read && r.Warmth == "cold" && r.Day > h.Opened && h.SmellDay < r.Day:
		return "cool"
	case h.Cool && h.Sieved == 0 && h.Acts[TaskSieve].Until <= x.today:
		return "sieve"
	}
	return ""
}

func (x *exchange) manureNext(h Heap, r Reading, read bool) string {
	switch {
	case x.s.Person.Minute == 0:
		return "hour"
	case h.Acts[TaskManure].Until > x.today:
		return ""
	case h.SmellDay < x.today:
		return "manure_smell"
	case !read || r.Day < x.today:
		return "manure_stick"
	}
	return ""
}

// stickLate is the stick where cold is what we wait for: old manure, cold
// dung, a heap laid open.
func (x *exchange) stickLate(h Heap, warmth string) {
	switch {
	case warmth != "cold" && h.Path == OldManure:
		x.note(h.ID, Snoozed{TaskManure, x.today + 14})
		x.say("manure_warm", nil)
	case warmth != "cold":
		x.say("still_warm", nil, string(compost.WaitDoNotOpen), "too_hot_for_worms")
	case h.Path == OldManure:
		x.note(h.ID, Cooled{})
		x.say("manure_good", nil, "worm_trial", "not_proof")
	case h.Path == ColdPath && x.today-h.Built < coldMonths:
		x.say("cold_path_early", nil)
	default:
		x.say("cold_at_last", nil)
	}
}

func (x *exchange) spreadTold(q Question, m meaning) bool {
	return x.doneOrLater(q, m.asYes("did=layered"), func() { // "étalé": laid out, as a layer is
		x.noteOn(q.Heap, m.day, Opened{})
		x.say("opened", nil)
	})
}

// doneOrLater serves the questions whether an act is done: yes writes it down,
// no puts it off to tomorrow, and any report is taken for what it is.
func (x *exchange) doneOrLater(q Question, m meaning, done func()) bool {
	switch {
	case m.yes():
		done()
		x.alsoTold(q.Heap, m)
		x.goOn()
	case m.no():
		return x.notYet(q)
	case len(facts(m.codes)) > 0:
		return x.factsOrLater(q, m)
	default:
		return false
	}
	return true
}

// asYes reads a deed that was asked about as a yes to the question.
func (m meaning) asYes(deeds ...string) meaning {
	codes := slices.Clone(m.codes)
	for i, c := range codes {
		if slices.Contains(deeds, c) {
			codes[i] = "answer=yes"
		}
	}
	m.codes = codes
	return m
}

func (x *exchange) coolTold(q Question, m meaning) bool {
	if len(facts(m.codes)) == 0 && m.yes() {
		m.codes = append(m.codes, "smell=earthy")
	}
	return x.factsOrLater(q, m)
}

// moistureTold says what a squeezed handful means where the heap stands.
func (x *exchange) moistureTold(h Heap, v string, day Day) {
	x.noteOn(h.ID, day, Squeezed{v})
	class := moistureClass(v)
	key := "moist_" + v
	switch {
	case h.Stage == Building:
		key = "squeeze_" + v
	case h.Fed != 0:
		key = "bed_" + v
	case h.Stage == Resting || h.Stage == ColdDung:
		key = "rest_" + v
	}
	x.say(key, nil, class...)
}

// smellTold says what a smell means where the heap stands.
func (x *exchange) smellTold(h Heap, v string, day Day) {
	good := v == "alcohol" || v == "earthy" || v == "sour"
	if h.Bottle.Working() && h.Built == 0 && (good || x.was.Talk.Open.ID == "bottle_smell") { // nothing else there ferments
		x.bottleSmells(h, v, day)
		return
	}
	if h.Bottle.Mixed != 0 && h.Built == 0 && !h.Base && v == "rotten" {
		x.ask("bottle_smell", h.ID) // there is no heap; before three weeks' work is thrown away, it is asked
		return
	}
	x.noteOn(h.ID, day, Smelt{v})
	late := h.Stage == Cooling || h.Path == OldManure || h.Path == ColdPath && x.today-h.Built >= coldMonths
	switch {
	case late && (v == "earthy" || v == "none"):
		x.smellsGood(x.Heap(h.ID))
	case late:
		x.smellsBad(h, v)
	case h.Fed != 0 && v != "earthy" && v != "none":
		x.say("bed_smell", nil)
	default:
		x.say("smell_"+v, nil)
	}
}

func (x *exchange) smellsGood(h Heap) {
	if h.Path == OldManure {
		x.say("smell_earthy", nil)
		return
	}
	r, ok := h.Read()
	asked := x.was.Talk.Open.ID == "cool" && r.Day < x.today // "cool and of earth" was the question
	if ok && r.Warmth != "cold" && r.Day > h.Opened && !asked {
		x.say("still_warm", nil, "too_hot_for_worms")
		return
	}
	if h.Path == ColdPath {
		if r, ok := h.Read(); !ok || r.Warmth != "cold" {
			x.say("smell_earthy", nil)
			return
		}
	}
	x.note(h.ID, Cooled{})
	x.say("cool_good", nil, "not_proof")
}

func (x *exchange) smellsBad(h Heap, v string) {
	if h.Path == OldManure {
		x.note(h.ID, Snoozed{TaskManure, x.today + 14})
	} else {
		x.note(h.ID, Snoozed{TaskCool, x.today + ammoniaRest})
	}
	if v == "ammonia" {
		x.say("late_ammonia", nil)
		return
	}
	x.say("late_rotten", nil)
}

// saw answers a sight.
func (x *exchange) saw(h Heap, v string, m meaning) {
	switch v {
	case "smoke", "fire":
		return // the danger was answered first
	case "worms_well", "worms_dead", "worms_escaping":
		x.wormsAre(h, v, m.day)
		return
	}
	x.noteOn(h.ID, m.day, Saw{v})
	if v == "mould" && h.Bottle.Working() && h.Built == 0 {
		x.say("bottle_film", nil)
		return
	}
	if strings.HasPrefix(v, "ants") && h.Fed != 0 {
		x.say("bed_ants", nil)
		return
	}
	x.say("seen_"+v, nil)
}
