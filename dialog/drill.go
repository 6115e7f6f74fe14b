package dialog

import (
	"cmp"
	"math"
	"slices"

	"warmstick/dialog/compost"
	"warmstick/dialog/phrases"
)

// One farmer looked at closely: where each heap stands, the last lines of the
// diary, and the core's likely heat as a picture.

func drillQuestions() map[string]question {
	return map[string]question{
		"drill": {asks: "target", args: answerArgs, choices: drillChoices, answer: (*exchange).lineTold},
	}
}

func drillChoices(x *exchange, q Question) []Choice {
	c, ok := x.card(q.Who)
	if ok && c.Keeper != 0 {
		return labelled(x.lang(), "line=answer_for", "line=done", "line=why")
	}
	return labelled(x.lang(), "line=write", "line=done", "line=why")
}

const (
	diaryLines = 6
	mostHeaps  = 3
)

// drill tells one farmer's heaps.
func (x *exchange) drill(c Card) {
	s, ok := x.s.Register.State(c.Person)
	if !ok {
		x.say("farmer_gone", nil)
		return
	}
	x.seen(c.Person)
	lang := x.lang()
	name := nameOf(c, lang)
	x.say("drill_head", phrases.Args{"Name": name, "Place": c.Place(), "N": len(s.Heaps)})
	if c.Keeper != 0 {
		x.say("drill_phoneless", nil)
	}
	today := DayOf(x.now, s.Person.Zone())
	active := s.Active()
	if len(active) == 0 {
		x.say("drill_no_heap", nil)
	}
	for _, h := range active[:min(len(active), mostHeaps)] {
		// The farmer's own status, said to the officer.
		y := &exchange{was: s, s: s, now: x.now, today: today, heap: h.ID}
		y.statusOf(h)
		x.pieces = append(x.pieces, y.pieces...)
		if h.Round > 1 {
			x.say("drill_round", phrases.Args{"Round": h.Round})
		}
		x.curve(h)
	}
	x.recent(s, today)
	if x.s.Person.Officer() {
		x.put(Question{ID: "drill", Who: c.Person})
	} else if c.Keeper != 0 {
		x.put(Question{ID: "drill", Who: c.Person, Choices: labelled(lang, "line=answer_for")})
	}
}

// recent lists the last things that were told of the heaps.
func (x *exchange) recent(s State, today Day) {
	var lines []Entry
	for e := range standing(x.s.Register.Diary(s.Person.ID)) {
		if e.Heap != 0 && e.By != 0 && diaryKey(e.Event) != "" {
			lines = append(lines, e)
		}
	}
	if len(lines) == 0 {
		return
	}
	slices.SortStableFunc(lines, func(a, b Entry) int { return cmp.Compare(a.Day, b.Day) })
	x.say("drill_diary", nil)
	for _, e := range lines[max(0, len(lines)-diaryLines):] {
		key := "diary_line"
		if e.By != s.Person.ID {
			key = "diary_line_by" // an officer or keeper told it
		}
		x.say(key, phrases.Args{"Day": dayWord(today, e.Day), "What": eventWord(e.Event)})
	}
}

// diaryKey is the tail of the phrase that tells an event; empty for those that
// say nothing to an officer.
func diaryKey(e Event) string {
	switch ev := e.(type) {
	case StickRead:
		return "stick_" + ev.Warmth
	case Squeezed:
		return "moisture_" + ev.Moisture
	case Smelt:
		return "smell_" + ev.Smell
	case BottleFelt:
		return "bottle_" + ev.State
	case WormsSeen:
		return ev.Sight
	case Begun:
		return "begun"
	case Gathered:
		return "gathered"
	case BottleMixed:
		return "mixed"
	case BottleReady:
		return "bottle_ready"
	case BottleSpoiled:
		return "bottle_spoiled"
	case LayerLaid:
		return "layer"
	case Built:
		return "built"
	case RedoOrdered:
		return "redo"
	case TurnedOver:
		return "turned"
	case Watered:
		return "watered"
	case Opened:
		return "opened"
	case Sieved:
		return "sieved"
	case TrialDone:
		if ev.Stayed {
			return "trial_good"
		}
		return "trial_bad"
	case Fed:
		return "fed"
	case HarvestTaken:
		return "harvested"
	case Finished:
		return "finished"
	case GivenUp:
		return "given_up"
	case Peril:
		return "peril"
	case Advised:
		return "advised"
	case Saw:
		return "saw"
	}
	return ""
}

// eventWord tells one event in a few words.
func eventWord(e Event) worded {
	return func(lang string) string {
		key := diaryKey(e)
		switch ev := e.(type) {
		case StickRead:
			if ev.Celsius > 0 {
				return phrases.Text(lang, "diary_celsius", phrases.Args{"C": int(math.Round(ev.Celsius))})
			}
			return phrases.Text(lang, "diary_stick", phrases.Args{"Is": phrases.Text(lang, "pick_"+key, nil)})
		case Squeezed:
			return phrases.Text(lang, "diary_moisture", phrases.Args{"Is": phrases.Text(lang, "pick_"+key, nil)})
		case Smelt:
			return phrases.Text(lang, "diary_smell", phrases.Args{"Is": phrases.Text(lang, "pick_"+key, nil)})
		case BottleFelt:
			if phrases.Has(phrases.Fallback, "pick_"+key) {
				return phrases.Text(lang, "diary_bottle", phrases.Args{"Is": phrases.Text(lang, "pick_"+key, nil)})
			}
			return phrases.Text(lang, "peril_burst", nil)
		case Peril:
			return phrases.Text(lang, "concern_peril", phrases.Args{"What": perilWord(ev.What)(lang)})
		case Advised:
			return phrases.Text(lang, "diary_advised", phrases.Args{"What": adviceWord(ev.What)(lang)})
		case Gathered:
			return phrases.Text(lang, "diary_gathered", phrases.Args{"What": amount(ev)(lang)})
		}
		return phrases.Text(lang, "diary_"+key, nil)
	}
}

// curve shows a built heap's likely heat with its doubt. The caption alone
// answers; the picture is never needed.
func (x *exchange) curve(h Heap) {
	if h.Built == 0 || h.Redo || h.Path == ColdPath || h.Fed != 0 {
		return
	}
	log := heatLog(h, x.now.Sub(h.BuiltAt).Hours())
	if log.Until < 1 {
		return
	}
	e := compost.Heat(log)
	if len(e.Likely) == 0 {
		return
	}
	last := len(e.Likely) - 1
	x.say("curve", phrases.Args{"Likely": int(math.Round(e.Likely[last])), "Low": int(math.Round(e.Low[last])), "High": int(math.Round(e.High[last])),
		"N": len(log.Signs)})
	x.show(Picture{Kind: "curve", Numbers: curveNumbers(log)})
}

// heatLog is what a heap's round tells of its heat, in hours since it was built.
func heatLog(h Heap, until float64) compost.HeatLog {
	log := compost.HeatLog{Dims: h.Size, Until: max(0, until)}
	if h.Size[0] <= 0 {
		log.Dims = [3]float64{}
	}
	hour := func(d Day) float64 { return max(0, float64(d-h.Built)*24) }
	for _, r := range h.Reads {
		if r.Day < h.Built {
			continue
		}
		at := r.At.Sub(h.BuiltAt).Hours()
		if at < 0 || math.Abs(at-hour(r.Day)) > 48 { // told late; the day counts
			at = hour(r.Day)
		}
		log.Signs = append(log.Signs, compost.Sign{Hour: at, Word: r.Warmth, Celsius: r.Celsius})
	}
	slices.SortFunc(log.Signs, func(a, b compost.Sign) int { return cmp.Compare(a.Hour, b.Hour) })
	for _, d := range h.Turns {
		log.Turns = append(log.Turns, hour(d))
	}
	return log
}

// warmthCodes are the stick's words as numbers of a picture; 0 = a thermometer.
var warmthCodes = map[string]float64{"cold": 1, "warm": 2, "hot": 3}

// curveNumbers packs a heat log for package picture, in this order: the hour of
// now; length, width and height in metres, 0 = not known; how many signs, each
// as hour, word (cold 1, warm 2, hot 3, none 0) and degrees (0 = none); how many
// turns, each as its hour; how many waterings, each as its hour.
func curveNumbers(log compost.HeatLog) []float64 {
	n := []float64{math.Round(log.Until), log.Dims[0], log.Dims[1], log.Dims[2], float64(len(log.Signs))}
	for _, s := range log.Signs {
		n = append(n, s.Hour, warmthCodes[s.Word], s.Celsius)
	}
	n = append(n, float64(len(log.Turns)))
	n = append(n, log.Turns...)
	n = append(n, float64(len(log.Waters)))
	return append(n, log.Waters...)
}
