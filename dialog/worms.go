package dialog

import (
	"cmp"
	"math"
	"strconv"
	"strings"
	"unicode"

	"warmstick/dialog/compost"
	"warmstick/dialog/phrases"
	"warmstick/dialog/understand"
)

// Worms: the trial, the bed, feeding and care by answer, harvest, use or sale,
// and the end of the round.

func wormQuestions() map[string]question {
	return map[string]question{
		"passed":    {asks: "have", task: TaskTrialSet, choices: basins, raw: (*exchange).passedTold},
		"trial_set": {asks: "ready", task: TaskTrialSet, choices: yesNo, answer: (*exchange).trialSet},
		"trial":     {asks: "trial", also: "worms", task: TaskTrial, choices: yesNo, answer: (*exchange).trialTold},
		"worms_kg":  {asks: "have", task: TaskFeed, choices: kilos, raw: (*exchange).wormsKg},
		"feed":      {asks: "feed", topic: "feed", task: TaskFeed, choices: choose("did=fed", "when=tomorrow"), answer: (*exchange).feedTold},
		"worms":     {asks: "worms", topic: "worms", task: TaskCare, choices: bedLooks, answer: (*exchange).wormsTold},
		"ripe":      {asks: "harvest", task: TaskRipe, choices: yesNo, answer: (*exchange).ripeTold},
		"harvest":   {asks: "harvest", task: TaskHarvest, choices: choose("did=harvested", "when=tomorrow"), answer: (*exchange).harvestAnswer},
		"yield":     {asks: "have", task: TaskFinish, choices: basins, raw: (*exchange).yieldTold},
		"sell":      {asks: "sell", task: TaskFinish, choices: choose("use=field", "use=sale", "use=both"), answer: (*exchange).useTold},
		"crop":      {asks: "target", task: TaskFinish, choices: choose("crop=cereal", "crop=vegetable", "crop=coffee", "crop=fruit_tree"), answer: (*exchange).cropTold},
		"rating":    {asks: "rating", task: TaskFinish, choices: stars, raw: (*exchange).rated},
		"again":     {asks: "confirm", choices: yesNo, answer: (*exchange).againTold},
		"no_worms":  {asks: "confirm", task: TaskFeed, choices: yesNo, answer: (*exchange).noWorms},
	}
}

func (x *exchange) wormsNext(h Heap) string {
	switch {
	case h.Sieved == 0 && h.Fed == 0 && h.Taken == 0:
		return ""
	case h.Fed == 0 && h.PassedKg == 0 && h.Trial == 0 && !h.TrialOK:
		return "passed"
	case h.Fed == 0 && !h.TrialOK && h.Trial == 0 && h.Acts[TaskTrialSet].Until <= x.today:
		return "trial_set"
	case h.Fed == 0 && h.TrialOK && h.WormsKg == 0:
		return "worms_kg"
	case h.Fed == 0 && h.TrialOK && h.Acts[TaskFeed].Until <= x.today:
		return "feed"
	case h.Taken != 0 && h.YieldKg == 0:
		return "yield"
	case h.Taken != 0 && h.Use == "":
		return "sell"
	case h.Taken != 0 && h.Use != "sale" && h.Crop == "":
		return "crop"
	case h.Taken != 0 && h.Stars == 0:
		return "rating"
	}
	return ""
}

// wormsTold takes how the bed looks; "like tea leaves" says that it is ripe.
func (x *exchange) wormsTold(q Question, m meaning) bool {
	if x.saysRipe(m) {
		x.ripe(q.Heap, m.day)
		return true
	}
	return x.factsOrLater(q, m)
}

func (x *exchange) saysRipe(m meaning) bool {
	return len(facts(m.codes)) == 0 && x.affirms(m.text, "words_said_ripe")
}

// bedLooks are the usual sights of a bed; "dry" is said of the bed here, not of
// a squeezed handful.
func bedLooks(x *exchange, _ Question) []Choice {
	list := labelled(x.lang(), "seen=worms_well", "seen=worms_escaping", "seen=worms_dead")
	return append(list, Choice{Label: text(x.lang(), "pick_bed_dry", nil), Means: "moisture=dry"})
}

func basins(x *exchange, _ Question) []Choice {
	var list []Choice
	for _, n := range []float64{10, 20, 40} {
		list = append(list, Choice{Label: amount(Gathered{N: n, Unit: "basin"})(x.lang()), Means: "kg=" + trim(n*kgOf("basin"))})
	}
	return append(list, labelled(x.lang(), "kg=unknown")...)
}

func kilos(x *exchange, _ Question) []Choice {
	var list []Choice
	for _, n := range []float64{0.5, 1, 2} {
		list = append(list, Choice{Label: amount(Gathered{N: n, Unit: "kg"})(x.lang()), Means: "kg=" + trim(n)})
	}
	return append(list, labelled(x.lang(), "kg=unknown", "kg=none")...)
}

// kgOf is what one measure of sieved compost weighs.
func kgOf(unit string) float64 {
	kg, _, ok := compost.Calibration(nil).Weigh(compost.Portion{N: 1, Unit: unit, Material: "compost"})
	if !ok {
		return 0
	}
	return kg.Likely
}

// kgTold takes a picked amount, or else the kilos that the text comes to; -1 = the
// farmer cannot say.
func (x *exchange) kgTold(m meaning, kg float64) (float64, bool) {
	switch v := m.value("kg"); v {
	case "":
	case "unknown":
		return -1, true
	default:
		kg, err := strconv.ParseFloat(v, 64)
		return kg, err == nil
	}
	if kg > 0 {
		return kg, true
	}
	if m.no() || m.has("when=skip") || x.s.Talk.Misses >= 2 {
		return -1, true
	}
	return 0, false
}

// kgIn is what the amounts of a text weigh as compost, in whole kilos; a bare number
// counts basins.
func (x *exchange) kgIn(said string) float64 {
	return math.Round(x.weightIn(said, "basin"))
}

// weightIn is what the measured amounts of a text weigh as compost; 0 when it names
// none. A bare number counts so many of the unit bare. "A tin" in a longer sentence
// is a thing, not an amount.
func (x *exchange) weightIn(said, bare string) float64 {
	counted := strings.ContainsFunc(said, unicode.IsDigit) || len(strings.Fields(said)) <= 3
	sum := 0.0
	for _, a := range understand.Amounts(said, x.lang()) {
		switch unit := cmp.Or(a.Unit, bare); {
		case a.N <= 0 || a.N > 1e6 || a.N == 1 && !counted:
		case unit == "kg":
			sum += a.N
		default:
			kg, _, _ := x.s.Person.Measures.Weigh(compost.Portion{N: a.N, Unit: unit, Material: "compost"})
			sum += kg.Likely
		}
	}
	return sum
}

// kilosTold notes an amount that was asked for in any measure, says what follows
// from it, and leads on.
func (x *exchange) kilosTold(q Question, m meaning, told func(kg float64) Event, then func(kg float64)) bool {
	kg, ok := x.kgTold(m, x.kgIn(m.text))
	if !ok {
		return false
	}
	x.close()
	x.note(q.Heap, told(kg))
	then(kg)
	x.goOn()
	return true
}

// countsCompost says whether a text measures compost, or nothing it names: "5 bags
// came out".
func (x *exchange) countsCompost(said string) bool {
	list := understand.Amounts(said, x.lang())
	return len(list) == 1 && list[0].Unit != "" && (list[0].Material == "" || list[0].Material == "compost")
}

// orMeasured reads a line that only says how much came of it as the deed asked for: "5
// bags came out".
func (x *exchange) orMeasured(m meaning, deed string) meaning {
	if len(m.codes) == 0 && x.countsCompost(m.text) {
		m.codes = []string{deed}
	}
	return m
}

func (x *exchange) sieveAnswer(q Question, m meaning) bool {
	return x.factsOrLater(q, x.orMeasured(m, "did=sieved"))
}

func (x *exchange) sieveTold(h Heap, m meaning) {
	if h.Taken != 0 || h.Fed != 0 {
		x.say("noted", nil)
		return
	}
	if h.Path == HotHeap && (h.Stage == Heating || h.Stage == Turned || h.Stage == Resting) {
		x.say("sieve_early", nil)
		return
	}
	x.noteOn(h.ID, m.day, Sieved{})
	x.say("sieved", nil)
	if kg := x.kgIn(m.text); kg > 0 && !m.picked { // "sieved, 18 buckets"
		x.note(h.ID, Passed{kg})
		x.tellPassed(kg)
	}
}

// tellPassed says what the sieved compost asks of worms and bed, and how to try it.
func (x *exchange) tellPassed(kg float64) {
	if kg > 0 {
		plan := compost.Bed(kg, 0)
		x.say("bed_size", phrases.Args{"Kg": int(kg), "Worms": trim(math.Round(plan.Worms.Likely*2) / 2), "Area": trim(math.Ceil(plan.Area.Likely*2) / 2)})
	}
	x.say("trial_how", nil, "worm_trial")
}

func (x *exchange) passedTold(q Question, m meaning) bool {
	return x.kilosTold(q, m, func(kg float64) Event { return Passed{kg} }, x.tellPassed)
}

func (x *exchange) trialSet(q Question, m meaning) bool {
	if m.has("seen=worms_well") || x.affirms(m.text, "words_said_trial") { // set up and seen, all in one
		x.noteOn(q.Heap, m.day, TrialSet{})
		return x.trialTold(q, m)
	}
	return x.doneOrLater(q, m, func() {
		x.noteOn(q.Heap, m.day, TrialSet{})
		x.say("trial_started", nil, "worm_trial")
	})
}

func (x *exchange) trialTold(q Question, m meaning) bool {
	switch {
	case m.yes() || m.has("seen=worms_well") || x.affirms(m.text, "words_said_trial"):
		x.trialPassed(q.Heap, m.day)
	case m.no() || m.has("seen=worms_dead") || m.has("seen=worms_escaping"):
		x.trialFailed(q.Heap, m.day)
	default:
		return false
	}
	x.goOn()
	return true
}

func (x *exchange) trialPassed(id HeapID, day Day) {
	x.noteOn(id, day, TrialDone{Stayed: true})
	x.say("trial_good", nil)
	if h := x.Heap(id); h.WormsKg > 0 {
		x.bedFor(h) // they were told before
	}
}

func (x *exchange) trialFailed(id HeapID, day Day) {
	x.noteOn(id, day, TrialDone{})
	x.note(id, Snoozed{TaskTrialSet, x.today + 5})
	x.say("trial_bad", nil, "worm_trial")
}

// mostWorms is more kilos of worms than a smallholder has (our choice).
const mostWorms = 50

func (x *exchange) wormsKg(q Question, m meaning) bool {
	if m.value("kg") == "none" || m.no() {
		x.close()
		x.ask("no_worms", q.Heap)
		return true
	}
	kg, ok := x.kgTold(m, math.Round(x.weightIn(m.text, "kg")*10)/10)
	if !ok || kg > mostWorms {
		return false // three bags that came out are compost
	}
	x.close()
	x.note(q.Heap, WormsHad{kg})
	x.bedFor(x.Heap(q.Heap))
	x.goOn()
	return true
}

// bedFor says how long the worms there are will eat, and how their bed is made.
func (x *exchange) bedFor(h Heap) {
	if h.WormsKg > 0 && h.PassedKg > 0 {
		plan := compost.Bed(h.PassedKg, h.WormsKg)
		x.say("worms_eat", phrases.Args{"Kg": trim(h.WormsKg), "Ration": trim(math.Round(plan.Ration.Likely*10) / 10), "N": int(math.Round(plan.Days.Likely))})
		if plan.Days.Likely > 120 {
			x.say("worms_few", nil)
		}
	}
	x.say("bed_how", nil)
}

// wormsEarly takes the kilos of worms that are told before they are asked for; others
// measure them in what has no weight here.
func (x *exchange) wormsEarly(h Heap, m meaning) bool {
	told := gathered(m)
	if h.Built == 0 || h.Fed != 0 || len(told) != 1 || told[0].Material != "worms" || told[0].Unit != "kg" || told[0].N > mostWorms {
		return false
	}
	x.note(h.ID, WormsHad{told[0].N})
	if h.TrialOK {
		x.bedFor(x.Heap(h.ID))
		return true
	}
	x.say("worms_early", phrases.Args{"List": listOf(told)})
	return true
}

func (x *exchange) noWorms(q Question, m meaning) bool {
	switch {
	case m.yes():
		x.note(q.Heap, Finished{})
		x.say("used_without", nil, "not_proof")
		x.finished(x.Heap(q.Heap))
	case m.no():
		x.note(q.Heap, Snoozed{TaskFeed, x.today + 7})
		x.say("worms_seek", nil)
		x.tellNext()
	default:
		return false
	}
	return true
}

func (x *exchange) feedTold(q Question, m meaning) bool {
	if m.no() {
		return x.notYet(q)
	}
	if m.yes() {
		m.codes = append(m.codes, "did=fed")
	}
	return x.factsOrLater(q, m)
}

// fedTold: compost was given to the worms. A heap that is still hot is no feed.
func (x *exchange) fedTold(h Heap, m meaning) {
	r, read := h.Read()
	if h.Fed == 0 && !h.Cool && !h.TrialOK && h.Path == HotHeap && (h.Built != 0 && h.Opened == 0 || read && r.Warmth != "cold") {
		x.say("fed_hot", nil, "too_hot_for_worms", "worm_trial")
		return
	}
	if h.Built == 0 && !h.Cool && !h.TrialOK {
		x.say("fed_unknown", nil, "worm_trial")
	}
	first := h.Fed == 0
	trial := h.TrialOK
	x.noteOn(h.ID, m.day, Fed{})
	if !first {
		x.say("fed_again", nil)
		return
	}
	if !trial {
		x.say("fed_untried", nil, "worm_trial")
	}
	x.say("fed", nil)
}

// wormsAre answers the look of the bed.
func (x *exchange) wormsAre(h Heap, v string, day Day) {
	if h.Fed == 0 && h.Trial != 0 && !h.TrialOK {
		if v == "worms_well" {
			x.trialPassed(h.ID, day)
			return
		}
		x.trialFailed(h.ID, day)
		return
	}
	if h.Fed == 0 && h.Built != 0 && v != "worms_well" {
		x.say("worms_wild", nil, "too_hot_for_worms")
		return
	}
	x.noteOn(h.ID, day, WormsSeen{v})
	x.say(v, nil)
	if v == "worms_dead" {
		x.alarm(h.ID, "worms_dead")
	}
}
