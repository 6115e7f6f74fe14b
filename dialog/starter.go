package dialog

import (
	"math"
	"slices"

	"warmstick/dialog/compost"
	"warmstick/dialog/phrases"
)

// The starter: dung slurry the same day, curd soured for some days, or a
// bottle of fruit and jaggery that wants three weeks and every morning.

func starterQuestions() map[string]question {
	return map[string]question{
		"starter":      {asks: "starter", task: TaskGather, choices: choose("pick=slurry", "pick=curd", "pick=bottle"), answer: (*exchange).starterTold},
		"later_build":  {asks: "confirm", choices: yesNo, args: laterArgs, answer: (*exchange).laterBuild},
		"mixed":        {asks: "ready", task: TaskMix, choices: yesNo, args: recipeArgs, answer: (*exchange).mixedTold},
		"shake":        {asks: "shake", topic: "shake", also: "bottle", task: TaskShake, choices: choose("did=shook", "bottle=bloated", "when=later"), answer: (*exchange).shakeTold},
		"gas":          {asks: "bottle", topic: "bottle", task: TaskGas, choices: choose("bottle=bloated", "bottle=flat", "bottle=leaking"), answer: (*exchange).gasTold},
		"bottle_smell": {asks: "smell", topic: "smell", task: TaskBottleSmell, choices: choose("smell=alcohol", "smell=sour", "smell=rotten", "smell=none"), answer: (*exchange).bottleSmelt},
	}
}

// curdLead and bottleLead are the days a starter needs before the build:
// 4-5 days for sour curd, 20-25 for the bottle (common practice, no source).
const (
	curdLead   = 4
	bottleLead = 20
	bottleGood = 22
)

func (x *exchange) starterTold(q Question, m meaning) bool {
	h := x.Heap(q.Heap)
	days := int(h.Wished - x.today)
	pick := m.value("pick")
	if pick == "" && (m.no() || x.s.Talk.Misses >= 2) {
		pick = "slurry" // nothing to buy, nothing to wait for
	}
	switch pick {
	case "slurry":
		x.note(h.ID, StarterChosen{Slurry})
		x.say("starter_slurry", nil)
	case "curd":
		if days < curdLead && h.Wished != 0 {
			x.say("curd_short", nil)
			x.put(Question{ID: "starter", Heap: h.ID, Task: TaskGather, Choices: labelled(x.lang(), "pick=slurry", "pick=curd_fresh")})
			return true
		}
		x.note(h.ID, StarterChosen{Curd})
		x.say("starter_curd", phrases.Args{"Day": x.dayWord(h.Wished - curdLead - 1)})
	case "curd_fresh":
		x.note(h.ID, StarterChosen{Curd})
		x.say("starter_curd_thin", nil)
	case "bottle":
		if days < bottleLead && h.Wished != 0 {
			x.say("bottle_short", nil)
			x.ask("later_build", h.ID)
			return true
		}
		x.note(h.ID, StarterChosen{Bottle})
	default:
		return false
	}
	x.goOn()
	return true
}

func laterArgs(x *exchange, _ Question) phrases.Args {
	return phrases.Args{"Day": x.dayWord(x.today + bottleGood)}
}

func (x *exchange) laterBuild(q Question, m meaning) bool {
	switch {
	case m.yes():
		x.note(q.Heap, DateWished{x.today + bottleGood})
		x.note(q.Heap, StarterChosen{Bottle})
		x.goOn()
	case m.no():
		x.put(Question{ID: "starter", Heap: q.Heap, Task: TaskGather, Choices: labelled(x.lang(), "pick=slurry", "pick=curd")})
	default:
		return false
	}
	return true
}

// recipeArgs scales the recipe to the heap: 2 litres for 6 x 4 x 4 ft.
func recipeArgs(x *exchange, q Question) phrases.Args {
	m3 := compost.TradeHeap
	if mix, ok := compost.Blend(portions(x.Heap(q.Heap)), x.s.Person.Measures); ok && mix.M3.Likely > compost.TradeHeap {
		m3 = mix.M3.Likely
	}
	litres := math.Ceil(2*compost.FermentFor(m3).Water) / 2
	r := compost.Ferment(litres)
	return phrases.Args{"Fruit": int(math.Round(r.Banana + r.Papaya)), "Jaggery": int(math.Round(r.Jaggery)),
		"Water": trim(litres), "Size": int(math.Ceil(r.Bottle))}
}

func (x *exchange) mixedTold(q Question, m meaning) bool {
	standing := slices.ContainsFunc(x.s.Active(), func(h Heap) bool { return h.Built != 0 })
	switch {
	case m.yes() || m.has("did=mixed") || m.has("did=turned") && !standing: // "mixed it all" turns a heap only where one stands
		x.noteOn(q.Heap, m.day, BottleMixed{})
		x.say("bottle_started", nil, "pressure_warning", "no_glass")
		x.show(Picture{Kind: "bottle"})
	case m.no():
		x.note(q.Heap, Snoozed{TaskMix, x.today + 1})
		x.say("bottle_wait", nil)
	default:
		return false
	}
	x.goOn()
	return true
}

func (x *exchange) shakeTold(q Question, m meaning) bool {
	h := x.Heap(q.Heap)
	switch {
	case m.value("bottle") != "":
		x.bottleIs(h, m.value("bottle"), m.day)
	case m.has("did=shook") || m.has("did=vented"):
		x.noteOn(h.ID, m.day, BottleShaken{})
		x.say("shaken", phrases.Args{"N": int(x.today - h.Bottle.Mixed)})
	case m.no():
		x.note(h.ID, Snoozed{TaskShake, x.today + 1})
		x.say("shake_forgot", nil, "pressure_warning")
	default:
		return false
	}
	x.goOn()
	return true
}

func (x *exchange) gasTold(q Question, m meaning) bool {
	state := m.value("bottle")
	if m.has("did=vented") {
		state = "bloated"
	}
	if state == "" {
		return false
	}
	x.bottleIs(x.Heap(q.Heap), state, m.day)
	x.goOn()
	return true
}

// bottleIs answers how the bottle feels.
func (x *exchange) bottleIs(h Heap, state string, day Day) {
	age := int(x.today - h.Bottle.Mixed)
	x.noteOn(h.ID, day, BottleFelt{state})
	switch state {
	case "bloated":
		x.noteOn(h.ID, day, BottleShaken{})
		x.say("bottle_bloated", nil, "pressure_warning")
	case "leaking":
		x.say("bottle_leaking", nil, "pressure_warning")
	case "burst":
		x.say("bottle_burst", nil, "pressure_warning", "no_glass")
		x.note(h.ID, StarterChosen{Slurry})
		x.alarm(h.ID, "burst")
	case "flat":
		switch {
		case age >= gasUntil && !h.Bottle.Gas:
			x.note(h.ID, BottleSpoiled{})
			x.say("bottle_dead", nil)
		case age >= gasFrom:
			x.say("bottle_flat", nil)
		default:
			x.say("bottle_flat_early", nil)
		}
	}
}

func (x *exchange) bottleSmelt(q Question, m meaning) bool {
	smell := m.value("smell")
	if smell == "" {
		if v := m.value("bottle"); v != "" {
			x.bottleIs(x.Heap(q.Heap), v, m.day)
			x.goOn()
			return true
		}
		return false
	}
	x.bottleSmells(x.Heap(q.Heap), smell, m.day)
	x.goOn()
	return true
}

func (x *exchange) bottleSmells(h Heap, smell string, day Day) {
	age := day - h.Bottle.Mixed
	switch smell {
	case "alcohol", "earthy", "sour":
		if age < bottleFrom {
			x.noteOn(h.ID, day, Smelt{smell})
			x.say("bottle_working", phrases.Args{"Day": x.dayWord(h.Bottle.Mixed + bottleReady)})
			return
		}
	}
	switch smell {
	case "alcohol", "earthy":
		x.noteOn(h.ID, day, BottleReady{})
		x.say("bottle_ready", nil, "pressure_warning")
	case "sour":
		x.noteOn(h.ID, day, BottleReady{})
		x.say("bottle_vinegar", nil)
	case "none":
		x.note(h.ID, Snoozed{TaskBottleSmell, x.today + 3})
		x.say("bottle_nosmell", nil)
	default:
		x.noteOn(h.ID, day, BottleSpoiled{})
		x.say("bottle_rotten", nil)
	}
}
