package dialog

import (
	"math"
	"slices"
	"strconv"

	"warmstick/dialog/compost"
	"warmstick/dialog/phrases"
	"warmstick/dialog/understand"
)

// Harvest: ripe, taken, weighed, used or sold; the round closes with its days and
// kilos, and the next heap is offered.

func stars(*exchange, Question) []Choice {
	var list []Choice
	for n := 1; n <= 5; n++ {
		list = append(list, Choice{Label: strconv.Itoa(n), Means: "stars=" + strconv.Itoa(n)})
	}
	return list
}

func (x *exchange) ripeTold(q Question, m meaning) bool {
	m = x.orMeasured(m, "did=harvested")
	switch {
	case m.has("did=harvested"):
		return x.harvestAnswer(q, m)
	case m.yes():
		x.ripe(q.Heap, m.day)
	case m.no():
		x.note(q.Heap, Snoozed{TaskRipe, x.today + 10})
		x.say("not_ripe", nil)
		x.tellNext()
	default:
		return false
	}
	return true
}

func (x *exchange) ripe(id HeapID, day Day) {
	x.noteOn(id, day, Ripe{})
	x.say("ripe", nil)
	x.tellNext()
}

func (x *exchange) harvestAnswer(q Question, m meaning) bool {
	m = x.orMeasured(m, "did=harvested")
	return x.doneOrLater(q, m.asYes("did=harvested"), func() { x.harvestTold(x.Heap(q.Heap), m) })
}

func (x *exchange) harvestTold(h Heap, m meaning) {
	if h.Fed == 0 {
		x.say("harvest_unknown", nil)
		return
	}
	x.noteOn(h.ID, m.day, HarvestTaken{})
	x.say("harvested", nil)
	if kg := x.kgIn(m.text); kg > 0 && !m.picked { // "harvested 6 bags"
		x.note(h.ID, Yielded{kg})
		x.say("yielded", phrases.Args{"Kg": int(kg)})
	}
}

func (x *exchange) yieldTold(q Question, m meaning) bool {
	return x.kilosTold(q, m, func(kg float64) Event { return Yielded{kg} }, func(kg float64) {
		if kg > 0 {
			x.say("yielded", phrases.Args{"Kg": int(kg)})
		}
	})
}

func (x *exchange) useTold(q Question, m meaning) bool {
	use := m.value("use")
	if use == "" { // "for my maize" names the field and what stands on it
		crops := Question{Choices: questions()["crop"].choices(x, q)}
		c, ok := wordPick(x.lang(), crops, m.text)
		if !ok {
			return false
		}
		x.note(q.Heap, UseChosen{Use: "field"})
		m.codes = append(slices.Clip(m.codes), c.Means)
		return x.cropTold(q, m)
	}
	x.note(q.Heap, UseChosen{Use: use})
	if use != "field" {
		x.say("sale_how", nil)
	}
	x.goOn()
	return true
}

func (x *exchange) cropTold(q Question, m meaning) bool {
	crop := m.value("crop")
	if crop == "" {
		return false
	}
	h := x.Heap(q.Heap)
	x.note(q.Heap, UseChosen{Use: h.Use, Crop: crop})
	if d, ok := compost.Rate(crop); ok {
		args := phrases.Args{"Low": trim(d.PerM2.Low), "High": trim(d.PerM2.High)}
		key := "dose_area"
		if d.PerM2.Low == d.PerM2.High {
			key = "dose_area_one"
		}
		if d.PerPlant.Likely > 0 && d.PerM2.Likely == 0 {
			key = "dose_plant"
			args = phrases.Args{"Low": trim(d.PerPlant.Low), "High": trim(d.PerPlant.High)}
		}
		x.say(key, args)
		if reach, ok := compost.Serves(h.YieldKg, crop); ok && h.YieldKg > 0 {
			if key != "dose_plant" {
				x.say("reach_area", phrases.Args{"N": roundTo(reach.M2.Likely, 10)})
			} else {
				x.say("reach_plants", phrases.Args{"N": int(reach.Plants.Likely)})
			}
		}
	}
	x.say("care_raw", phrases.Args{"Short": compost.WaitRaw(false), "Long": compost.WaitRaw(true)}, "not_proof")
	x.goOn()
	return true
}

func (x *exchange) rated(q Question, m meaning) bool {
	n, err := strconv.Atoi(m.value("stars"))
	if err != nil {
		if n = x.starsIn(m.text); n == 0 {
			if !m.has("when=skip") && !m.no() && x.s.Talk.Misses < 2 {
				return false
			}
			n = -1
		}
	}
	x.close()
	x.note(q.Heap, Rated{n})
	x.note(q.Heap, Finished{})
	x.finished(x.Heap(q.Heap))
	return true
}

// starsIn reads one to five, in figures or words: "4", "four stars"; 0 = neither.
func (x *exchange) starsIn(said string) int {
	list := understand.Amounts(said, x.lang())
	if len(list) == 1 && list[0].N >= 1 && list[0].N <= 5 && list[0].N == math.Trunc(list[0].N) {
		return int(list[0].N)
	}
	return 0
}

// finished closes a round with its days and kilos, and offers the next heap.
func (x *exchange) finished(h Heap) {
	x.say("done", phrases.Args{"N": int(h.Over - h.Begun), "Heap": int(h.ID)})
	if h.YieldKg > 0 {
		x.say("done_kg", phrases.Args{"Kg": int(h.YieldKg)})
	}
	x.ask("again", 0)
}

func (x *exchange) againTold(q Question, m meaning) bool {
	switch {
	case m.yes():
		x.ask("path", 0)
	case m.no():
		x.say("rest_now", nil)
	default:
		return false
	}
	return true
}
