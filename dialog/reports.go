package dialog

import (
	"slices"
	"strconv"
	"strings"
)

// Reports: a farmer tells what was done or found, asked or not, about this heap
// or another. Each fact goes to the one heap it can be about; where two fit,
// the farmer is asked which.

// factOrder is the order in which the facts of one message are taken: what was
// done comes before what was found after it.
var factOrder = []string{"have", "did", "bottle", "seen", "moisture", "smell", "temp", "stick"}

// partOfBuilding are the deeds that building a heap takes in: "turned it, wetted
// it and built it again" is one new round, not a round and its first turn.
var partOfBuilding = []string{"did=turned", "did=layered", "did=watered"}

func facts(codes []string) []string {
	var list []string
	built := slices.Contains(codes, "did=built")
	for _, kind := range factOrder {
		for _, c := range codes {
			if strings.HasPrefix(c, kind+"=") && !(built && slices.Contains(partOfBuilding, c)) {
				list = append(list, c)
			}
		}
	}
	return list
}

// reports takes every fact of a message.
func (x *exchange) reports(m meaning) bool {
	list := facts(m.codes)
	if len(list) == 0 {
		return false
	}
	x.s.Talk.Misses = 0
	if x.open.ID != "" && !x.fresh {
		x.close()
	}
	if len(x.s.Active()) == 0 {
		return x.reportWithoutHeap(list, m)
	}
	id, sure := x.aboutHeap(list)
	if h, ok := x.s.Heap(m.named); ok && h.Active() {
		id, sure = h.ID, true
	}
	if !sure {
		x.whichHeap(m)
		return true
	}
	x.take(id, list, m)
	x.goOn()
	return true
}

// take writes the facts down for one heap, have codes together.
func (x *exchange) take(id HeapID, list []string, m meaning) {
	m.codes = list
	if h := x.Heap(id); h.Path == HotHeap && h.Built == 0 && ofStanding(list) && !slices.Contains(list, "did=built") {
		x.whenStood(h, m, list)
		return
	}
	if slices.ContainsFunc(list, func(c string) bool { return strings.HasPrefix(c, "have=") }) {
		x.haveAny(id, m)
	}
	for _, c := range list {
		kind, v, _ := strings.Cut(c, "=")
		h := x.Heap(id)
		switch kind {
		case "did":
			x.did(h, v, m)
		case "bottle":
			x.bottleTold(h, v, m)
		case "seen":
			x.saw(h, v, m)
		case "moisture":
			x.moistureTold(h, v, m.day)
		case "smell":
			x.smellTold(h, v, m.day)
		case "temp":
			t, _ := strconv.ParseFloat(v, 64)
			x.stickTold(h, warmthOf(t), t, m.day)
		case "stick":
			if m.value("temp") == "" {
				x.stickTold(h, v, 0, m.day)
			}
		}
	}
}

// warmthOf puts a thermometer's degrees into the stick's words: hot from 55 C,
// cold below 40 C (bands of S13, S24).
func warmthOf(c float64) string {
	switch {
	case c >= 55:
		return "hot"
	case c >= 40:
		return "warm"
	}
	return "cold"
}

// alsoTold takes the facts of a message that its question did not ask for.
func (x *exchange) alsoTold(id HeapID, m meaning, but ...string) {
	var rest []string
	for _, c := range facts(m.codes) {
		kind, _, _ := strings.Cut(c, "=")
		if !slices.Contains(but, kind) && !slices.Contains(but, c) {
			rest = append(rest, c)
		}
	}
	if len(rest) > 0 {
		x.take(id, rest, m)
	}
}

// did takes one deed.
func (x *exchange) did(h Heap, deed string, m meaning) {
	switch deed {
	case "gathered":
		if m.value("have") == "" && h.Built == 0 {
			x.ask("have", h.ID)
		}
	case "mixed":
		x.mixedDeed(h, m.day)
	case "shook", "vented":
		if !h.Bottle.Working() {
			x.say("bottle_none", nil)
			return
		}
		if deed == "shook" || m.value("did") == "vented" {
			x.noteOn(h.ID, m.day, BottleShaken{})
			x.say("shaken", map[string]any{"N": int(x.today - h.Bottle.Mixed)})
		}
	case "layered":
		if h.Built != 0 && !h.Redo {
			x.say("layer_late", nil)
			return
		}
		x.layered(h, m)
	case "built":
		if h.Built != 0 && !h.Redo {
			if h.Path == ColdPath || h.Opened != 0 || h.Sieved != 0 {
				x.say("noted", nil)
				return
			}
			x.rebuiltUnasked(h, m)
			return
		}
		x.built(h, m.day)
	case "turned":
		x.turnTold(h, m)
	case "watered":
		x.noteOn(h.ID, m.day, Watered{})
		x.say("watered", nil)
	case "covered":
		if h.Path == ColdPath && h.Built == 0 {
			x.noteOn(h.ID, m.day, Built{}) // dung that is covered is piled
			x.say("piled", nil)
			return
		}
		x.noteOn(h.ID, m.day, Covered{})
		x.say("covered", nil)
	case "sieved":
		x.sieveTold(h, m)
	case "fed":
		x.fedTold(h, m)
	case "harvested":
		x.harvestTold(h, m)
	}
}

func (x *exchange) mixedDeed(h Heap, day Day) {
	if h.Built != 0 {
		x.say("noted", nil)
		return
	}
	if h.Starter == Bottle && h.Bottle.Mixed == 0 {
		x.noteOn(h.ID, day, BottleMixed{})
		x.say("bottle_started", nil, "pressure_warning", "no_glass")
		x.show(Picture{Kind: "bottle"})
		return
	}
	x.say("slurry_mixed", nil)
}

// rebuiltUnasked: a heap that stands was made anew without our asking. That
// starts its days again, so it is asked about once.
func (x *exchange) rebuiltUnasked(h Heap, m meaning) {
	x.put(Question{ID: "rebuilt_unasked", Heap: h.ID, Text: strconv.Itoa(int(m.day))})
}

func (x *exchange) rebuiltSure(q Question, m meaning) bool {
	switch {
	case m.yes() || m.has("did=built"):
		day, err := strconv.Atoi(q.Text)
		if err != nil {
			day = int(x.today)
		}
		x.noteOn(q.Heap, Day(day), RedoOrdered{Cause: "own"})
		x.built(x.Heap(q.Heap), Day(day))
	case m.no():
		x.say("kept_as_was", nil)
		x.goOn()
	default:
		return false
	}
	return true
}

func (x *exchange) bottleTold(h Heap, state string, m meaning) {
	if !h.Bottle.Working() {
		if state == "burst" {
			x.say("bottle_burst", nil, "pressure_warning", "no_glass")
			x.alarm(h.ID, "burst")
			return
		}
		x.say("bottle_none", nil, "pressure_warning")
		return
	}
	x.bottleIs(h, state, m.day)
}

// reportWithoutHeap: somebody reports on a heap we know nothing of.
func (x *exchange) reportWithoutHeap(list []string, m meaning) bool {
	switch {
	case slices.Contains(list, "did=built"), slices.Contains(list, "did=layered"):
		x.note(x.newHeap(), Begun{Path: HotHeap})
		x.take(x.heap, list, m)
	case m.value("have") != "":
		x.note(x.newHeap(), Begun{Path: HotHeap})
		x.take(x.heap, list, m)
	default:
		x.say("heap_unknown", nil)
		if !x.enrolNext() {
			x.ask("path", 0)
		}
		return true
	}
	x.goOn()
	return true
}

func (x *exchange) newHeap() HeapID {
	id := HeapID(1)
	for _, h := range x.s.Heaps {
		id = max(id, h.ID+1)
	}
	return id
}
