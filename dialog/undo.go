package dialog

import (
	"slices"
	"strings"
)

// Undo: what was told is taken back, and told anew where the same message says
// what is right.

// kindOf is the kind of fact that a diary line holds, as codes name it; empty for
// lines that no report makes.
func kindOf(e Event) string {
	switch e.(type) {
	case StickRead:
		return "stick"
	case Squeezed:
		return "moisture"
	case Smelt:
		return "smell"
	case Saw, WormsSeen:
		return "seen"
	case BottleFelt:
		return "bottle"
	case Gathered:
		return "have"
	case BottleMixed, BottleShaken, Built, LayerLaid, TurnedOver, Watered, Covered, Sieved, Fed, HarvestTaken:
		return "did"
	}
	return ""
}

// mistaken is the place among the told messages of the one to take back: the
// last, or the last that told a fact of the kind that is now corrected; -1 when
// there is none.
func (x *exchange) mistaken(diary []Entry, m meaning) int {
	past := x.s.Talk.Past
	list := facts(m.codes)
	if len(list) == 0 {
		return len(past) - 1
	}
	kind, _, _ := strings.Cut(list[0], "=")
	if kind == "temp" {
		kind = "stick"
	}
	told := map[int]bool{}
	for e := range standing(diary) {
		told[e.Told] = told[e.Told] || kindOf(e.Event) == kind
	}
	for i := len(past) - 1; i >= 0; i-- {
		if told[past[i].Told] {
			return i
		}
	}
	return -1
}

// withoutAsks are the codes of a message that are no question.
func (m meaning) withoutAsks() []string {
	return slices.DeleteFunc(slices.Clone(m.codes), func(c string) bool { return strings.HasPrefix(c, "ask=") })
}

// undo takes the last told facts back and asks their question again. A
// correction in the same message is taken after it.
func (x *exchange) undo(m meaning) {
	past := x.s.Talk.Past
	diary := x.s.Register.Diary(x.s.Person.ID)
	i := x.mistaken(diary, m)
	if i < 0 && x.tellsFact(m) { // "I said hot but it was cold", and hot was never told
		m.codes = m.withoutAsks()
		x.reports(m)
		return
	}
	if i < 0 {
		x.say("undo_nothing", nil)
		if x.open.ID == "" {
			x.tellNext()
		}
		x.again()
		return
	}
	last := past[i]
	x.remark(0, Struck{Told: last.Told})
	folded := Fold(x.s.Person.ID, append(slices.Clone(diary), x.entries...))
	x.s.Person, x.s.Heaps = folded.Person, folded.Heaps
	x.s.Talk.Past = slices.Delete(slices.Clone(past), i, i+1)
	x.today = DayOf(x.now, x.s.Person.Zone())
	x.heap = 0
	x.say("undone", nil, "undone")
	x.open, x.was.Talk.Open = last.Open, last.Open
	if m.text != "" && !m.picked {
		m = x.read(m.text) // "I meant cold": cold is read as the answer it was
	}
	m.codes = m.withoutAsks()
	if x.tellsFact(m) {
		if (last.Open.ID == "" || !x.answerTo(last.Open, m)) && !x.reports(m) {
			x.again()
		}
		return
	}
	if last.Open.ID == "" {
		x.say("undone_tell", nil)
		return
	}
	x.again()
}

// amend takes an edited message as a correction of what it said before.
func (x *exchange) amend(m meaning) bool {
	if len(x.s.Talk.Past) == 0 || !x.tellsFact(m) {
		return false
	}
	x.undo(m)
	return true
}
