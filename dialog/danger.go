package dialog

import (
	"slices"
	"strings"
	"time"

	"warmstick/dialog/phrases"
)

// Danger: it stops everything else, in any state and any language. The safety
// words come first, an officer is told, and the open question stays open.

// carePhrase is the safety text of each harm, with its advice class.
var carePhrase = map[string]string{
	"burn": "burn_care", "breath": "breath_care", "swallowed": "poison_care",
	"cut": "cut_care", "bite": "bite_care", "eye": "eye_care",
}

// danger answers harm, smoke, fire and a burst bottle. It says true when the
// message held nothing else to go on with.
func (x *exchange) danger(m meaning) bool {
	var perils []string
	for _, c := range m.codes {
		if v, ok := strings.CutPrefix(c, "harm="); ok {
			perils = append(perils, v)
		}
		if c == "seen=fire" || c == "seen=smoke" {
			perils = append(perils, strings.TrimPrefix(c, "seen="))
		}
	}
	for _, h := range hazardsIn(m.text) {
		if !slices.Contains(perils, h) && len(perils) == 0 {
			perils = append(perils, h)
		}
	}
	if len(perils) == 0 {
		return false
	}
	x.s.Talk.Misses = 0
	id := x.perilHeap()
	for _, p := range perils {
		x.peril(id, p)
	}
	x.care = len(x.pieces)
	rest := facts(m.codes)
	rest = slices.DeleteFunc(rest, func(c string) bool { return c == "seen=fire" || c == "seen=smoke" })
	if len(rest) == 0 || x.s.Person.Consent == "" {
		x.open = x.was.Talk.Open // the question waits, its number still stands
		return true
	}
	m.codes = rest
	if x.was.Talk.Open.ID == "" || !x.answerTo(x.was.Talk.Open, m) {
		x.reports(m)
	}
	if !x.fresh && x.open.ID == "" {
		x.open = x.was.Talk.Open
		if q := x.open.Heap; q != 0 && x.answered(m) {
			x.open = Question{}
		}
	}
	return true
}

// answered says whether the facts answered the question that was open.
func (x *exchange) answered(m meaning) bool {
	topic := questions()[x.was.Talk.Open.ID].topic
	return slices.ContainsFunc(m.codes, func(c string) bool { return strings.HasPrefix(c, topic+"=") })
}

func (x *exchange) perilHeap() HeapID {
	if h := x.was.Talk.Open.Heap; h != 0 {
		return h
	}
	if active := x.s.Active(); len(active) == 1 {
		return active[0].ID
	}
	return 0
}

// peril says the safety words for one danger and tells the officers.
func (x *exchange) peril(id HeapID, what string) {
	switch {
	case what == "smoke" || what == "fire":
		x.say("smoke_emergency", nil, "smoke_emergency")
	case carePhrase[what] != "":
		x.say(carePhrase[what], nil, carePhrase[what])
	default:
		x.say("hazard_"+what, nil, hazardClass(what)...)
	}
	if x.s.Person.Consent == "" && !x.s.Person.Appointed {
		return
	}
	if seriousPeril(what) {
		x.alarm(id, what)
	}
}

// alarm writes a danger down and tells the officers of the person's groups, at
// any hour.
func (x *exchange) alarm(id HeapID, what string) {
	h := x.Heap(id)
	if h.Peril == what && x.now.Sub(h.PerilAt) < time.Hour {
		x.say("officer_told", nil) // told an hour ago; once is enough
		return
	}
	x.note(id, Peril{what})
	if x.alertOfficers(id, what) {
		x.advise("officer_told")
		x.say("officer_told", nil, "officer_told")
	}
}

// overLimit keeps "it is over" from being found in a long story of a new danger.
const overLimit = 8 // words, our choice

// perilOver hears that smoke or fire is over, soon after it was told: it can come
// back inside a heap, so the watch goes on, and the officer who was told hears of
// it. Only an officer's visit takes the danger off the board.
func (x *exchange) perilOver(line string) bool {
	burning := func(what string, at time.Time) bool {
		return (what == "smoke" || what == "fire") && x.now.Sub(at) < 3*24*time.Hour
	}
	if !x.toldOf(burning) || len(strings.Fields(line)) > overLimit || questionMark(line) ||
		!x.lineHolds(line, "words_peril_over") || x.lineHolds(line, "words_peril_again") {
		return false
	}
	x.s.Talk.Misses = 0
	x.say("peril_over", nil, "smoke_emergency")
	for _, to := range x.officerStates() {
		x.letter(to, Relay, "peril_over_told", phrases.Args{"Name": called(x.s.Person), "Text": cut(line, wordsLimit)}).byDay(x.now, to.Person)
	}
	x.again()
	return true
}

// hurtLately says whether somebody's hurt was told of since yesterday.
func (x *exchange) hurtLately() bool {
	hurt := func(what string, at time.Time) bool { return carePhrase[what] != "" && x.now.Sub(at) < 24*time.Hour }
	return x.toldOf(hurt)
}

// toldOf says whether the last danger told of the person or of an active heap is such a one.
func (x *exchange) toldOf(such func(what string, at time.Time) bool) bool {
	return such(x.s.Person.Peril, x.s.Person.PerilAt) || slices.ContainsFunc(x.s.Active(), func(h Heap) bool { return such(h.Peril, h.PerilAt) })
}

func perilWord(what string) worded {
	return func(lang string) string { return phrases.Text(lang, "peril_"+what, nil) }
}

// officers lists the officers of the person's groups, each once.
func (x *exchange) officers() []PersonID {
	var ids []PersonID
	for _, m := range x.s.Person.Roles {
		g, ok := x.s.Register.Group(m.Group)
		if !ok {
			continue
		}
		for _, s := range g.Staff {
			if s.Role == Officer && !slices.Contains(ids, s.Person) {
				ids = append(ids, s.Person)
			}
		}
	}
	return ids
}
