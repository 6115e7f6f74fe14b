package dialog

import (
	"maps"
	"slices"

	"warmstick/dialog/phrases"
)

// Handing over: a farmer moves away, sells, falls ill; the heap stays hot. The
// owner types "hand over" and gives the code to whoever goes on with it. With the
// code the heap and its diary move to that person, and its reminders with it.

// Handing is the role that a code for one heap gives; it belongs to no group.
const Handing Role = "handing"

func handoverQuestions() map[string]question {
	return map[string]question{"hand": {asks: "target", answer: (*exchange).handTold}}
}

// handWord obeys hand over.
func (x *exchange) handWord(line string) bool {
	if _, ok := x.ownWord(line, "handover"); !ok {
		return false
	}
	active := x.s.Active()
	if h, ok := x.s.Heap(x.namedHeap(line)); ok && h.Active() {
		active = []Heap{h}
	}
	switch {
	case x.by != x.s.Person.ID && x.s.Person.Keeper == 0:
		x.say("hand_owner_only", phrases.Args{"Name": called(x.s.Person)})
		x.goOnFrom()
	case len(active) == 0:
		x.say("nothing_running", nil)
	case len(active) == 1:
		x.handingCode(active[0])
	default:
		x.put(Question{ID: "hand", Choices: x.heapChoices()})
	}
	return true
}

func (x *exchange) handTold(_ Question, m meaning) bool {
	h, ok := x.chosenHeap(m)
	if !ok {
		return false
	}
	x.close()
	x.handingCode(h)
	return true
}

func (x *exchange) handingCode(h Heap) {
	code := x.s.Register.Chance(inviteLength)
	x.remark(0, InviteMade{Code: code, Role: Handing, Heap: h.ID, Expires: x.now.Add(shareLasts)})
	x.say("hand_code", phrases.Args{"Code": code, "Heap": int(h.ID)})
	x.goOnFrom()
}

// takeOver moves the heap of a code to this person.
func (x *exchange) takeOver(inv Invite) {
	owner, ok := x.s.Register.State(inv.By)
	i := slices.IndexFunc(owner.Person.Invites, func(o Invite) bool { return o.Code == inv.Code })
	if !ok || i < 0 {
		x.say("invite_old", nil)
		return
	}
	if inv.By == x.s.Person.ID {
		x.say("code_own", nil)
		return
	}
	theirs, ok := owner.Heap(owner.Person.Invites[i].Heap)
	if !ok || !theirs.Active() {
		x.say("invite_old", nil)
		return
	}
	if x.s.Person.Helps != 0 {
		x.stopHelping()
	}
	id := x.copyHeap(owner.Person, theirs.ID)
	zone := owner.Person.Zone()
	x.noteFor(inv.By, zone, 0, InviteEnded{inv.Code})
	x.noteFor(inv.By, zone, theirs.ID, HandedOver{x.s.Person.ID})
	x.talks = append(x.talks, TalkOf{inv.By, owner.Talk.forgetHeap(theirs.ID)})
	reader := owner
	if keeper, ok := x.s.Register.State(owner.Person.Keeper); ok && owner.Person.Keeper != 0 {
		reader = keeper // the owner has no phone
	}
	x.letter(reader, Reply, "hand_taken", phrases.Args{"Name": called(x.s.Person), "Heap": int(theirs.ID)}).Asks = ""
	x.say("hand_got", phrases.Args{"Name": called(owner.Person), "Heap": int(id)})
	x.stands(x.Heap(id))
	if x.open.ID == "path" {
		x.close() // there is a heap now
	}
}

// copyHeap writes another's diary of one heap into this person's own, as their
// next heap. Undo does not reach those lines, nor do they count as this person's
// answers. What the clock wrote stays behind: this person was not reminded.
func (x *exchange) copyHeap(owner Person, from HeapID) HeapID {
	theirs := maps.Clone(owner.Measures) // "3 of her baskets" must weigh the same here
	maps.DeleteFunc(theirs, func(key string, _ float64) bool {
		_, known := x.s.Person.Measures[key]
		return known
	})
	x.learnMeasures(theirs)
	id := HeapID(1)
	for _, h := range x.s.Heaps {
		id = max(id, h.ID+1)
	}
	for e := range standing(x.s.Register.Diary(owner.ID)) {
		switch e.Event.(type) {
		case Reminded, Missed:
			continue
		}
		if e.Heap == from {
			e.ID, e.Person, e.Heap, e.By, e.Told = 0, x.s.Person.ID, id, owner.ID, 0
			x.write(e)
		}
	}
	x.remark(id, Received{From: owner.ID, Heap: from})
	return id
}

// forgetHeap closes what a conversation still wants of a heap that moved on.
func (t Talk) forgetHeap(id HeapID) Talk {
	if t.Open.Heap == id {
		t.Open = Question{}
	}
	t.Past = slices.DeleteFunc(slices.Clone(t.Past), func(p Past) bool { return p.Open.Heap == id })
	return t
}
