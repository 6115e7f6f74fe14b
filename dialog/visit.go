package dialog

import (
	"cmp"
	"slices"

	"warmstick/dialog/phrases"
)

// A visit: it clears the farmer's line, and three taps write down what was seen
// and advised, in the farmer's diary and so in the plan. The day's round groups
// visits by place.

func visitQuestions() map[string]question {
	return map[string]question{
		"visit_stick":    {asks: "stick", topic: "stick", args: answerArgs, choices: choose("stick=hot", "stick=warm", "stick=cold", "tap=skip"), answer: (*exchange).visitStick},
		"visit_moisture": {asks: "moisture", topic: "moisture", args: answerArgs, choices: choose("moisture=dry", "moisture=right", "moisture=wet", "tap=skip"), answer: (*exchange).visitMoisture},
		"visit_advice":   {asks: "menu", args: answerArgs, choices: choose("tap=water", "tap=dry_stuff", "tap=rich_stuff", "tap=again", "tap=well"), answer: (*exchange).visitAdvice},
	}
}

// visited writes a visit down and asks for the three taps.
func (x *exchange) visited(c Card) {
	zone := Zone(c.Zone)
	x.noteFor(c.Person, zone, 0, Visited{})
	if c.Peril != "" {
		x.noteFor(c.Person, zone, 0, PerilSeen{})
	}
	for _, h := range c.Heaps {
		if h.Peril != "" {
			x.noteFor(c.Person, zone, h.Heap, PerilSeen{})
		}
	}
	x.seen(c.Person)
	x.say("visit_kept", phrases.Args{"Name": nameOf(c, x.lang())})
	h, ok := heapToSee(c, DayOf(x.now, zone))
	switch {
	case !ok:
		return
	case h.Built != 0 && h.Fed == 0 && h.Stage != Cooling:
		x.put(Question{ID: "visit_stick", Who: c.Person, Heap: h.Heap})
	default:
		x.put(Question{ID: "visit_advice", Who: c.Person, Heap: h.Heap})
	}
}

// heapToSee is the heap of a farmer that a visit is most likely about.
func heapToSee(c Card, today Day) (HeapCard, bool) {
	if len(c.Heaps) == 0 {
		return HeapCard{}, false
	}
	return slices.MaxFunc(c.Heaps, func(a, b HeapCard) int {
		return cmp.Or(cmp.Compare(worstOf(a, c, today), worstOf(b, c, today)), cmp.Compare(a.Built, b.Built))
	}), true
}

func worstOf(h HeapCard, c Card, today Day) float64 {
	worst := 0.0
	for _, k := range heapConcerns(h, &c, today) {
		worst = max(worst, k.Loss())
	}
	return worst
}

// tap writes one seen thing into the farmer's diary; false when the farmer is
// not this officer's any more.
func (x *exchange) tap(q Question, e Event) bool {
	c, ok := x.card(q.Who)
	if !ok {
		x.say("farmer_gone", nil)
		return false
	}
	if e != nil {
		x.noteFor(c.Person, Zone(c.Zone), q.Heap, e)
	}
	return true
}

func (x *exchange) visitStick(q Question, m meaning) bool {
	v := m.value("stick")
	if v == "" && !m.has("tap=skip") {
		return false
	}
	var e Event
	if v != "" {
		e = StickRead{Warmth: v}
	}
	if x.tap(q, e) {
		x.put(Question{ID: "visit_moisture", Who: q.Who, Heap: q.Heap, Text: v})
	}
	return true
}

func (x *exchange) visitMoisture(q Question, m meaning) bool {
	v := m.value("moisture")
	if v == "" && !m.has("tap=skip") {
		return false
	}
	var e Event
	if v != "" {
		e = Squeezed{v}
	}
	if x.tap(q, e) {
		x.put(Question{ID: "visit_advice", Who: q.Who, Heap: q.Heap, Text: q.Text})
	}
	return true
}

// visitAdvice closes the visit. "Build it again" for a heap that is not hot puts
// the rebuilding into the farmer's plan.
func (x *exchange) visitAdvice(q Question, m meaning) bool {
	v := m.value("tap")
	if v == "" {
		return false
	}
	if !x.tap(q, Advised{v}) {
		return true
	}
	s, ok := x.s.Register.State(q.Who)
	if h, known := s.Heap(q.Heap); ok && known && v == "again" && h.Built != 0 && h.Stage == Heating && !h.Redo {
		x.noteFor(q.Who, s.Person.Zone(), q.Heap, RedoOrdered{Cause: "officer"})
	}
	if ok && s.Person.Keeper == 0 {
		x.letter(s, Relay, x.signed("visit_told"), phrases.Args{"Name": called(x.s.Person), "Advice": adviceWord(v)}).byDay(x.now, s.Person)
	}
	x.say("visit_written", nil)
	return true
}

func adviceWord(v string) worded {
	return func(lang string) string { return phrases.Text(lang, "advised_"+v, nil) }
}

// round is the day's visits, place by place, the neediest place first.
func (x *exchange) round() { x.roundFrom(0) }

func (x *exchange) roundFrom(from int) {
	lines := Round(Board(x.charges(), x.now))
	if len(lines) == 0 {
		x.say("round_empty", nil)
		return
	}
	if from >= len(lines) {
		from = 0
	}
	x.say("round_head", phrases.Args{"N": len(lines), "Places": placesOf(lines)})
	x.showLines(lines, from, "round")
}

// Round orders the lines of a board for one trip: farmers of one place follow
// each other, and the place with most to lose comes first. A danger makes its
// place the first.
func Round(board []Line) []Line {
	loss := map[string]float64{}
	for _, l := range board {
		loss[l.Card.Place()] += l.Loss()
		if l.Danger {
			loss[l.Card.Place()] += 1e6
		}
	}
	lines := slices.Clone(board)
	slices.SortStableFunc(lines, func(a, b Line) int {
		return cmp.Or(cmp.Compare(loss[b.Card.Place()], loss[a.Card.Place()]), cmp.Compare(a.Card.Place(), b.Card.Place()))
	})
	return lines
}

func placesOf(lines []Line) int {
	seen := map[string]bool{}
	for _, l := range lines {
		seen[l.Card.Place()] = true
	}
	return len(seen)
}
