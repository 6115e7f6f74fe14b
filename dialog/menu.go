package dialog

import (
	"strings"

	"warmstick/dialog/phrases"
)

// The words that work in every state: menu, help, status, next, why, undo,
// stop, my data, delete me.

func menuQuestions() map[string]question {
	return map[string]question{
		"menu":      {asks: "menu", topic: "menu", choices: menuChoices, answer: (*exchange).menuTold},
		"more_menu": {asks: "menu", topic: "menu", choices: choose("word=language", "word=hour", "word=place", "word=my_data", "word=delete_me"), answer: (*exchange).menuTold},
		"delete":    {asks: "confirm", choices: choose("answer=no_keep", "answer=yes_delete"), answer: (*exchange).deleteTold},
		"target":    {asks: "target", answer: (*exchange).targetTold},
		"doubt":     {asks: "confirm", answer: (*exchange).doubtTold},
	}
}

func menuChoices(x *exchange, _ Question) []Choice {
	if x.s.Person.Officer() {
		return labelled(x.lang(), "word=board", "word=round", "word=groups", "word=digest", "word=settings")
	}
	return labelled(x.lang(), "word=status", "word=next", "word=new_heap", "word=officer", "word=settings")
}

func (x *exchange) menu() { x.ask("menu", 0) }

func (x *exchange) menuTold(_ Question, m meaning) bool {
	switch {
	case m.yes():
		x.next()
	case m.no():
		x.say("menu_closed", nil)
		x.tellNext()
	default:
		return false
	}
	return true
}

// help says how to answer what is open; the question stays open.
func (x *exchange) help() {
	x.say("help", nil)
	if x.open.ID != "" {
		if phrases.Has(phrases.Fallback, "hint_"+x.open.ID) {
			x.say("hint_"+x.open.ID, nil)
		}
		x.again()
		return
	}
	x.tellNext()
}

// why gives the reason of what is asked, or of what the heap is waiting for.
func (x *exchange) why() {
	key := "why_any"
	if t := x.open.Task; t != "" && phrases.Has(phrases.Fallback, "why_"+string(t)) {
		key = "why_" + string(t)
	} else if k := "why_" + x.open.ID; phrases.Has(phrases.Fallback, k) {
		key = k
	} else if h, ok := x.inHand(); ok {
		if w, _, _ := x.nextAct(h); w.Task != "" && phrases.Has(phrases.Fallback, "why_"+string(w.Task)) {
			key = "why_" + string(w.Task)
		}
	}
	x.say(key, nil)
	x.again()
}

// next says what to do now, or asks the question that is waiting.
func (x *exchange) next() {
	if x.open.ID != "" && x.open.ID != "menu" && x.open.ID != "more_menu" {
		x.say("next_is_this", nil)
		x.again()
		return
	}
	x.close()
	x.goOn()
}

// status tells where every heap stands, in a line each.
func (x *exchange) status() {
	active := x.s.Active()
	if len(active) == 0 {
		x.say("status_none", nil)
	}
	for i, h := range active {
		if i == 3 {
			x.say("status_more", phrases.Args{"N": len(active) - 3})
			break
		}
		x.heap = h.ID
		x.statusOf(h)
	}
	if x.open.ID != "" {
		x.again()
		return
	}
	if len(active) == 0 {
		x.goOn()
	}
}

func (x *exchange) statusOf(h Heap) {
	x.stands(h)
	if w, d, ok := x.nextAct(h); ok {
		x.say("next_short", phrases.Args{"Act": act(w.Task), "Day": x.dayWord(d.Day)})
	}
}

// stands says where a heap stands.
func (x *exchange) stands(h Heap) {
	day, of := x.progress(h)
	of = max(of, day)
	stage := h.Stage
	if stage == ColdDung && h.Built == 0 {
		stage = Planning
	}
	x.say("status_"+string(stage), x.which(h, phrases.Args{"Day": day, "Of": of, "Layers": h.Layers, "N": h.Round}))
	if day > 0 {
		x.say("bar", phrases.Args{"Bar": bar(day, of), "Day": day, "Of": of})
	}
	if r, ok := h.Read(); ok {
		x.say("status_read", phrases.Args{"Warmth": worded(func(lang string) string {
			return phrases.Text(lang, "pick_stick_"+r.Warmth, nil)
		}), "Day": x.dayWord(r.Day)})
	}
}

// progress is the day of the way and how many it usually takes.
func (x *exchange) progress(h Heap) (day, of int) {
	switch {
	case h.Fed != 0:
		return int(x.today - h.Fed), ripeFrom
	case h.Path == ColdPath && h.Built != 0:
		return int(x.today - h.Built), coldMonths
	case h.Built != 0:
		return int(x.today - h.Built), spanOf(h.Path)
	case h.Bottle.Working():
		return int(x.today - h.Bottle.Mixed), bottleGood
	}
	return 0, 0
}

// bar draws progress in ten signs that any phone has.
func bar(day, of int) string {
	n := min(10, max(0, day*10/max(of, 1)))
	return strings.Repeat("=", n) + strings.Repeat("-", 10-n)
}

// heapLabel names a heap on a button.
func (x *exchange) heapLabel(h Heap) string {
	day, _ := x.progress(h)
	if day <= 0 {
		return text(x.lang(), "heap_label_new", phrases.Args{"Heap": int(h.ID)})
	}
	return text(x.lang(), "heap_label", phrases.Args{"Heap": int(h.ID), "Day": day})
}

// heapWord answers "heap 2".
func (x *exchange) heapWord(rest string) bool {
	n, ok := digits(strings.TrimSpace(rest))
	if !ok && rest != "" {
		return false
	}
	if h, found := x.s.Heap(HeapID(n)); found {
		x.heap = h.ID
		x.statusOf(h)
		x.again()
		return true
	}
	if n > 0 {
		x.say("heap_no_such", phrases.Args{"Heap": n})
	}
	x.status()
	return true
}

// stop ends reminders, digests and announcements until the person writes again.
func (x *exchange) stop() {
	x.remark(0, StopAsked{})
	x.close()
	x.say("stopped", nil, "stopped")
}

// myData tells what is kept of the person.
func (x *exchange) myData() {
	p := x.s.Person
	x.say("my_data", phrases.Args{"Name": p.Name, "Place": p.Place(), "N": len(x.s.Heaps), "Lines": len(x.s.Register.Diary(p.ID))})
	x.say("my_data_more", nil)
	for _, g := range x.groupNames() {
		x.say("my_data_group", phrases.Args{"Group": g})
	}
	x.again()
}

func (x *exchange) groupNames() []string {
	var names []string
	for _, m := range x.s.Person.Roles {
		if g, ok := x.s.Register.Group(m.Group); ok {
			names = append(names, g.Name)
		}
	}
	return names
}

func (x *exchange) pictures() {
	off := !x.s.Person.NoPicture
	x.note(0, PicturesSet{Off: off})
	key := "pictures_on"
	if off {
		key = "pictures_off"
	}
	x.say(key, nil)
	x.again()
}

// deleteTold keeps everything unless the person plainly says to delete it.
func (x *exchange) deleteTold(_ Question, m meaning) bool {
	switch {
	case m.has("answer=yes_delete") || m.yes():
		x.say("forgotten", nil)
		x.close()
		x.forget = []PersonID{x.s.Person.ID}
	case m.has("answer=no_keep") || m.no():
		x.say("kept_all", nil)
		x.tellNext()
	default:
		return false
	}
	return true
}

// doubtTold takes the fact a farmer chose among what might have been meant.
func (x *exchange) doubtTold(_ Question, m meaning) bool {
	if m.no() {
		x.say("hint_free", nil)
		x.menu()
		return true
	}
	return x.reports(m)
}
