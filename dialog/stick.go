package dialog

import (
	"warmstick/dialog/compost"
	"warmstick/dialog/phrases"
	"warmstick/dialog/understand"
)

// The heat check: what the stick says is judged by the day it was felt. A cold
// heap gets two or three questions, one cause and one repair.

func stickQuestions() map[string]question {
	return map[string]question{
		"stick":           {asks: "stick", topic: "stick", task: TaskStick, choices: choose("stick=hot", "stick=warm", "stick=cold"), answer: (*exchange).factsOrLater},
		"moisture":        {asks: "moisture", topic: "moisture", choices: choose("moisture=dry", "moisture=right", "moisture=wet"), answer: (*exchange).factsOrLater},
		"smell":           {asks: "smell", topic: "smell", choices: choose("smell=earthy", "smell=rotten", "smell=ammonia", "smell=sour", "smell=none"), answer: (*exchange).factsOrLater},
		"redo":            {asks: "confirm", task: TaskRebuild, choices: yesNo, phrase: redoPhrase, answer: (*exchange).redoTold},
		"third":           {asks: "confirm", task: TaskRebuild, choices: yesNo, answer: (*exchange).thirdTold},
		"turn":            {asks: "turn", topic: "turn", task: TaskTurn, choices: turnChoices, phrase: turnPhrase, answer: (*exchange).turnAnswer},
		"crumbly":         {asks: "confirm", task: TaskTurn, choices: yesNo, answer: (*exchange).crumblyTold},
		"rebuilt_unasked": {asks: "confirm", choices: yesNo, answer: (*exchange).rebuiltSure},
	}
}

// TaskCrumbly marks that a farmer was asked whether a heap gone cold is done.
const TaskCrumbly Task = "crumbly"

// mostRounds: the third cold round goes to the officer or the cold path.
const mostRounds = 3

// heatNext is the question that the core's state calls for now.
func (x *exchange) heatNext(h Heap) string {
	r, read := h.Read()
	turned := h.LastTurn()
	switch {
	case h.Built == 0 || h.Path == ColdPath || h.Redo || h.Opened != 0 || h.Sieved != 0:
		return ""
	case turned != 0 && len(h.Turns) == 1 && h.SizeKept == 0 && (!read || r.Day <= turned):
		return "size"
	case !read && turned == 0 && x.today-h.Built >= h.checkFrom() && h.Acts[TaskStick].Until <= x.today:
		return "stick"
	case !read:
		return ""
	case turned == 0 && r.Warmth == "cold" && !h.readyToOpen() && x.redoDue(h, r):
		return x.diagnose(h, r)
	case turned == 0 && r.Warmth != "hot" && !h.readyToOpen() && r.Day == x.today && h.MoistDay < r.Day && r.Day-h.Built >= h.checkFrom():
		return "moisture"
	case turned != 0 && r.Day > turned && r.Warmth == "cold" && !h.readyToOpen() && h.Early == 0 && !h.Acts[TaskCrumbly].Skipped:
		return "crumbly"
	}
	return ""
}

func (x *exchange) redoDue(h Heap, r Reading) bool {
	return compost.Judge(int(r.Day-h.Built), compost.BeforeTurn1, "cold", h.High) == compost.ColdRedo
}

// diagnose asks for what is not known about a cold heap: a handful, a smell;
// then whether to build anew.
func (x *exchange) diagnose(h Heap, r Reading) string {
	switch {
	case h.MoistDay < r.Day:
		return "moisture"
	case h.SmellDay < r.Day:
		return "smell"
	case h.Acts[TaskRebuild].Until > x.today:
		return ""
	case h.Round >= mostRounds:
		return "third"
	}
	return "redo"
}

// factsOrLater serves the questions whose every answer is a fact.
func (x *exchange) factsOrLater(q Question, m meaning) bool {
	if list := facts(m.codes); len(list) > 0 {
		x.take(q.Heap, list, m)
		x.goOn()
		return true
	}
	if m.no() {
		return x.notYet(q)
	}
	return false
}

// notYet puts a question off to tomorrow.
func (x *exchange) notYet(q Question) bool {
	if q.Task == "" {
		x.say("asked_tomorrow", nil)
		x.tellNext()
		return true
	}
	x.note(q.Heap, Snoozed{q.Task, x.today + 1})
	x.say("asked_tomorrow", nil)
	x.tellNext()
	return true
}

// stickTold judges a reading.
func (x *exchange) stickTold(h Heap, warmth string, celsius float64, day Day) {
	if h.Built == 0 && h.Path != OldManure && h.Opened == 0 {
		x.say("stick_no_heap", nil)
		return
	}
	if h.Built != 0 && day < h.Built && h.Path == HotHeap {
		x.say("stick_before", nil)
		return
	}
	x.noteOn(h.ID, day, StickRead{Warmth: warmth, Celsius: celsius})
	now := x.Heap(h.ID)
	if h.Path == OldManure || h.Path == ColdPath || h.Opened != 0 || h.Sieved != 0 {
		x.stickLate(now, warmth)
		return
	}
	if last, _ := now.Read(); last.Day > day {
		x.say("stick_older", nil)
		return
	}
	n := int(day - h.Built)
	phase := compost.BeforeTurn1
	if len(h.Turns) > 0 {
		phase = compost.AfterTurn1
	}
	class := compost.Judge(n, phase, warmth, h.High)
	if n >= openFrom && warmth == "cold" {
		class = compost.ReadyToOpen
	}
	if celsius > 0 {
		if by := compost.JudgeTemp(n, celsius); by == compost.TooHot || by == compost.TooWarmTurn || by == compost.SmokeEmergency {
			class = by
		}
	}
	x.verdict(now, class, warmth, n)
}

// verdict says what a reading means and what to do.
func (x *exchange) verdict(h Heap, class compost.Class, warmth string, n int) {
	args := phrases.Args{"N": n}
	turned := len(h.Turns) > 0
	switch class {
	case compost.SmokeEmergency:
		x.peril(h.ID, "smoke")
	case compost.TooHot, compost.TooWarmTurn:
		x.say("stick_"+string(class), args, string(class))
	case compost.HotOK:
		key := "stick_hot"
		switch {
		case turned && warmth == "warm":
			key = "stick_warm_turned"
		case turned:
			key = "stick_hot_turned"
		case n >= turnFrom:
			key = "stick_hot_turn"
		case x.hotBefore(h) > 0:
			x.say("stick_hot_again", phrases.Args{"N": x.hotBefore(h) + 1})
		}
		x.say(key, args, string(class), "not_proof")
		if !turned && n >= turnFrom {
			x.say("care_turn", nil)
		}
	case compost.WarmWait:
		x.say("stick_warm", args, string(class))
	case compost.ColdCheck:
		if turned {
			x.say("stick_cold_turned", args, string(class))
			return
		}
		args["By"] = int(h.checkUntil()) + 1
		x.say("stick_cold_check", args, string(class))
	case compost.ReadyToOpen:
		x.say("stick_ready", args, string(class))
	case compost.WaitDoNotOpen:
		x.say("stick_wait", args, string(class))
	case compost.ColdRedo:
		x.say("stick_cold_redo", args, string(class))
		if h.Round >= mostRounds {
			x.alarm(h.ID, "third_cold")
		}
	default:
		x.say("stick_"+string(class), args, string(class))
	}
}

// hotBefore counts the farmer's earlier heaps that got hot.
func (x *exchange) hotBefore(h Heap) int {
	n := 0
	for _, other := range x.s.Heaps {
		if other.ID != h.ID && other.Complete && other.Path == HotHeap {
			n++
		}
	}
	return n
}

// cause is the likeliest reason of a cold heap, from what was told.
func (x *exchange) cause(h Heap) string {
	mix, known := compost.Blend(portions(h), x.s.Person.Measures)
	switch {
	case h.Moisture == "dry":
		return "dry"
	case h.Moisture == "wet" || h.Smell == "rotten":
		return "wet"
	case h.Size[0] > 0 && min(h.Size[0], h.Size[1], h.Size[2]) < compost.Smallest:
		return "small"
	case known && mix.CN.Likely > 35:
		return "brown"
	case h.Smell == "ammonia" || known && mix.CN.Likely < 20:
		return "green"
	}
	return "loose"
}

func redoPhrase(x *exchange, q Question) string { return "ask_redo_" + x.cause(x.Heap(q.Heap)) }

func (x *exchange) redoTold(q Question, m meaning) bool {
	h := x.Heap(q.Heap)
	switch v := x.feltAgain(m); v {
	case "":
	case "cold":
		m.codes = []string{"answer=yes"}
	default:
		x.stickTold(h, v, 0, m.day)
		x.goOn()
		return true
	}
	switch {
	case m.has("did=built"):
		x.noteOn(h.ID, m.day, RedoOrdered{Cause: x.cause(h)})
		x.built(x.Heap(h.ID), m.day)
	case m.yes():
		cause := x.cause(h)
		x.note(h.ID, RedoOrdered{Cause: cause})
		x.say("redo_ordered", nil, string(compost.ColdRedo))
		x.say("repair_"+cause, nil)
		x.tellNext()
	case m.no():
		x.note(h.ID, Snoozed{TaskRebuild, x.today + 1})
		x.say("redo_wait", nil)
		x.tellNext()
	default:
		return false
	}
	return true
}

// feltAgain is what the stick said, in an answer to "still cold?": "yes, still cold"
// and "bado baridi" confirm, whatever else their words may mean.
func (x *exchange) feltAgain(m meaning) string {
	if m.picked || m.has("did=built") {
		return ""
	}
	told := meaning{codes: understand.Read(m.text, x.lang(), "stick").Codes}
	return told.value("stick")
}

func (x *exchange) thirdTold(q Question, m meaning) bool {
	h := x.Heap(q.Heap)
	switch {
	case m.yes():
		x.changeWay(h.ID, ColdPath)
	case m.no():
		x.note(h.ID, RedoOrdered{Cause: x.cause(h)})
		x.say("repair_"+x.cause(h), nil, string(compost.ColdRedo))
		x.tellNext()
	default:
		return false
	}
	return true
}

func turnChoices(x *exchange, q Question) []Choice {
	if len(x.Heap(q.Heap).Turns) > 0 {
		return labelled(x.lang(), "did=turned", "when=tomorrow", "when=skip")
	}
	return labelled(x.lang(), "did=turned", "when=tomorrow")
}

func turnPhrase(x *exchange, q Question) string {
	h := x.Heap(q.Heap)
	if h.Path == ColdPath {
		return "ask_turn_cold"
	}
	if len(h.Turns) > 0 {
		return "ask_turn_second"
	}
	return "ask_turn"
}

func (x *exchange) turnAnswer(q Question, m meaning) bool {
	if m.has("did=turned") || len(facts(m.codes)) > 0 {
		return x.factsOrLater(q, m)
	}
	if m.no() {
		return x.notYet(q)
	}
	return false
}

// turnTold writes a turn down and says what it sets off.
func (x *exchange) turnTold(h Heap, m meaning) {
	if h.Redo {
		x.built(h, m.day) // opening and restacking a cold heap is its rebuilding
		return
	}
	if h.Built == 0 {
		x.say("turn_no_heap", nil)
		return
	}
	r, read := h.Read()
	x.noteOn(h.ID, m.day, TurnedOver{})
	switch {
	case h.Path == ColdPath:
		x.say("turned_cold_path", nil)
	case h.Opened != 0:
		x.say("noted", nil)
	case len(h.Turns) == 0 && read && r.Warmth == "cold" && r.Day-h.Built > h.checkUntil():
		x.say("turned_cold_heap", nil)
	case len(h.Turns) == 0:
		x.say("turned_first", nil)
		x.show(Picture{Kind: "turn"})
	default:
		x.say("turned_again", nil)
	}
}

func (x *exchange) crumblyTold(q Question, m meaning) bool {
	switch {
	case m.yes():
		x.note(q.Heap, FinishedEarly{})
		x.say("early_good", nil)
	case m.no():
		x.note(q.Heap, Skipped{TaskCrumbly})
		x.say("cold_coarse", nil)
	default:
		return false
	}
	x.goOn()
	return true
}
