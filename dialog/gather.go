package dialog

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"warmstick/dialog/phrases"
	"warmstick/dialog/understand"
)

// Gathering: the farmer tells baskets and bags over days; each time the sums
// say what the heap would be like and what is missing, in whole local measures.

func gatherQuestions() map[string]question {
	return map[string]question{
		"have":  {asks: "have", topic: "have", task: TaskGather, raw: (*exchange).ownMeasure, answer: (*exchange).haveTold},
		"more":  {asks: "more", topic: "have", task: TaskGather, choices: choose("more=yes", "more=no"), raw: (*exchange).ownMeasure, answer: (*exchange).moreTold},
		"fresh": {asks: "more", topic: "have", task: TaskFresh, choices: choose("more=yes", "more=no"), answer: (*exchange).moreTold},
		"date":  {asks: "date", task: TaskGather, choices: choose("days=3", "days=7", "days=14", "days=25"), raw: (*exchange).dateTold},
		"site":  {asks: "site", task: TaskSite, choices: yesNo, answer: (*exchange).siteTold},
	}
}

// gatherNext is the next gap in the plan of a heap that is not built yet.
func (x *exchange) gatherNext(h Heap) string {
	if h.Built != 0 || h.Base || h.Path == OldManure || !h.Active() {
		return ""
	}
	p := x.s.Person
	switch {
	case len(h.Have) == 0 && !h.GatherDone:
		return "have"
	case !h.GatherDone:
		return "more"
	case h.Path == ColdPath:
		return x.coldNext(h)
	case h.Wished == 0:
		return "date"
	case h.Starter == "":
		return "starter"
	case h.Starter == Bottle && h.Bottle.Mixed == 0 && h.Acts[TaskMix].Until <= x.today:
		return "mixed"
	case p.Minute == 0:
		return "hour"
	case p.Units == "":
		return "units"
	case !h.Site && h.Acts[TaskSite].Until <= x.today:
		return "site"
	case h.Wished <= x.today && h.Acts[TaskBuild].Until <= x.today:
		return "build"
	}
	return ""
}

// coldNext is what dung left to rest still needs: a shaded place and a cover.
func (x *exchange) coldNext(h Heap) string {
	switch {
	case x.s.Person.Minute == 0:
		return "hour"
	case !h.Site && h.Built == 0 && h.Acts[TaskSite].Until <= x.today:
		return "site"
	case h.Built == 0 && h.Acts[TaskPile].Until <= x.today:
		return "pile"
	}
	return ""
}

func (x *exchange) haveTold(q Question, m meaning) bool {
	if m.no() {
		x.note(q.Heap, GatherDone{})
		x.say("have_nothing", nil)
		x.goOn()
		return true
	}
	if x.haveIn(q.Heap, m) {
		x.goOn()
		return true
	}
	return x.uncounted(q, m)
}

func (x *exchange) moreTold(q Question, m meaning) bool {
	switch {
	case m.value("have") != "":
		x.haveIn(q.Heap, m)
		x.goOn()
	case m.yes() || m.has("more=yes"):
		x.ask("have", q.Heap)
	case x.uncounted(q, m):
	case m.no() || m.has("more=no") || x.s.Talk.Misses >= 2: // more can be told any day
		x.note(q.Heap, GatherDone{})
		x.goOn()
	default:
		return false
	}
	return true
}

// gathered are the amounts of a message.
func gathered(m meaning) (told []Gathered) {
	for _, c := range m.codes {
		v, ok := strings.CutPrefix(c, "have=")
		if !ok {
			continue
		}
		if f := strings.Fields(v); len(f) == 3 {
			n, err := strconv.ParseFloat(f[0], 64)
			if err == nil && n > 0 && n < 10000 {
				told = append(told, Gathered{N: n, Unit: f[1], Material: f[2]})
			}
		}
	}
	return told
}

// haveIn writes down the amounts of a message and says what they come to.
func (x *exchange) haveIn(id HeapID, m meaning) bool {
	told := gathered(m)
	if len(told) == 0 {
		return false
	}
	for _, g := range told {
		x.noteOn(id, m.day, g)
	}
	x.say("written", phrases.Args{"List": listOf(told)})
	x.warnOf(told)
	h := x.Heap(id)
	if h.Path != OldManure {
		x.sums(h)
	}
	if list := understand.Uncounted(m.text, m.lang); !m.picked && len(list) > 0 {
		x.sayUncounted(list)
	}
	return true
}

// uncounted asks for the amounts of materials that a line only names: "dung, straw, 25
// grass". The question stays open.
func (x *exchange) uncounted(q Question, m meaning) bool {
	if m.picked || m.no() || m.value("ask") != "" || x.tellsFact(m) || questionMark(m.text) {
		return false
	}
	list := understand.Uncounted(m.text, m.lang)
	if len(list) == 0 {
		return false
	}
	x.sayUncounted(list)
	x.ask(q.ID, q.Heap)
	return true
}

// sayUncounted names what was told without an amount, and how to type it. Whatever part
// of the amount was told stands in the example.
func (x *exchange) sayUncounted(list []understand.Amount) {
	a := list[0]
	example := Gathered{N: cmp.Or(a.N, 3), Unit: cmp.Or(a.Unit, "basket"), Material: a.Material}
	names := worded(func(lang string) string {
		var all []string
		for _, a := range list {
			all = append(all, phrases.Text(lang, "material_"+a.Material, nil))
		}
		return strings.Join(slices.Compact(all), ", ")
	})
	x.say("have_uncounted", phrases.Args{"List": names, "Example": amount(example)})
}

// haveAny takes amounts told unasked. What comes after the building waits for
// the next heap; worms are counted for the bed.
func (x *exchange) haveAny(id HeapID, m meaning) {
	h := x.Heap(id)
	switch {
	case h.Built == 0 || h.Redo:
		x.haveIn(id, m)
	case !x.wormsEarly(h, m):
		x.say("have_late", nil)
	}
}

// warnOf says the caution that goes with a material.
func (x *exchange) warnOf(told []Gathered) {
	for _, g := range told {
		switch g.Material {
		case "pig_dung":
			x.say("care_pig", nil)
			return
		case "hen_dung":
			x.say("care_hen", nil)
			return
		case "ash":
			x.say("care_ash", nil)
			return
		}
	}
}

func (x *exchange) dateTold(q Question, m meaning) bool {
	if x.tellsFact(m) {
		return false // "turned it yesterday" names no building day
	}
	day, ok := x.dayAhead(m.text)
	if v := m.value("days"); v != "" {
		n, _ := strconv.Atoi(v)
		day, ok = x.today+Day(n), true
	} else if !ok && x.affirms(m.text, "words_said_build") {
		day, ok = x.today, true // "we start now"
	} else if !ok && x.s.Talk.Misses >= 2 {
		day, ok = x.today+dateGuess, true // without a day there is no plan
	}
	if !ok {
		return false
	}
	x.close()
	if !x.keepDay(q.Heap, day) {
		return true
	}
	if x.s.Talk.Misses >= 2 {
		x.say("date_change", nil)
	}
	x.goOn()
	return true
}

// dateGuess is the building day, in days from today, of a farmer who was asked three
// times and named none (our choice).
const dateGuess = 7

// dayAhead reads a day to come: "on Friday", "in 10 days", "10 days", "10".
func (x *exchange) dayAhead(said string) (Day, bool) {
	if d, ok := understand.WhenAhead(said, x.lang()); ok {
		return x.future(d), true
	}
	if n, ok := understand.Span(said, x.lang()); ok && n > 0 {
		return x.today + Day(n), true
	}
	n, ok := digits(said)
	return x.today + Day(n), ok && n > 0 && n <= 120
}

// keepDay writes the building day down; a day that does not work is asked for again.
func (x *exchange) keepDay(id HeapID, day Day) bool {
	if day < x.today || day > x.today+200 {
		x.say("date_odd", nil)
		x.ask("date", id)
		return false
	}
	x.note(id, DateWished{day})
	x.say("date_kept", phrases.Args{"Day": x.dayWord(day)})
	return true
}

// otherDay moves the building day: "other day Friday".
func (x *exchange) otherDay(line string) bool {
	rest, ok := x.ownWord(line, "date")
	h, some := x.inHand()
	if !ok || !some || !h.unbegun() || h.Wished == 0 {
		return false
	}
	x.close()
	if day, ok := x.dayAhead(rest); ok && day >= x.today {
		x.moveDay(h.ID, day)
		return true
	}
	x.ask("date", h.ID)
	return true
}

func (x *exchange) moveDay(id HeapID, day Day) {
	if x.keepDay(id, day) {
		x.tellNext()
	}
}

// future turns "on Friday", "in 10 days" or a date into a day ahead.
func (x *exchange) future(d understand.Day) Day {
	switch {
	case d.Date != 0:
		return x.dateAhead(d.Month, d.Date)
	case d.Weekday >= 0:
		return x.today + Day((d.Weekday-int(x.today.Weekday())+6)%7+1)
	}
	return x.today + Day(d.Offset)
}

func (x *exchange) siteTold(q Question, m meaning) bool {
	switch {
	case m.yes():
		x.note(q.Heap, SiteFound{})
		x.say("site_good", nil)
	case m.no():
		x.note(q.Heap, Snoozed{TaskSite, x.today + 2})
		x.say("site_later", nil)
	default:
		return false
	}
	x.goOn()
	return true
}
