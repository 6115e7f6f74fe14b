package dialog

import (
	"slices"
	"time"

	"warmstick/dialog/phrases"
	"warmstick/dialog/understand"
)

// The people of a group: farmers without a phone, written in by somebody who
// answers for them; the group's own measures; farmers who leave.

// addNamed begins to write in a farmer without a phone.
func (x *exchange) addNamed(q Question, m meaning) bool {
	name := tidyName(m.text)
	if name == "" {
		return false
	}
	x.close()
	if slices.ContainsFunc(x.s.Register.Members(q.Group), func(c Card) bool { return understand.Normal(c.Name) == understand.Normal(name) }) {
		x.say("add_twin", phrases.Args{"Name": name})
		x.put(Question{ID: "add_name", Group: q.Group})
		return true
	}
	x.put(Question{ID: "add_consent", Group: q.Group, Text: name})
	return true
}

// addTold writes them in: the consent was given by mouth, to the one who types.
func (x *exchange) addTold(q Question, m meaning) bool {
	switch {
	case m.no():
		x.say("add_refused", nil)
		return true
	case !m.yes():
		return false
	case !x.s.Person.Staff(q.Group, Lead):
		x.say("officers_only", nil)
		return true
	}
	id := PersonID(x.s.Register.NewID())
	zone := x.s.Person.Zone()
	for _, e := range []Event{Entered{}, Consented{consentVersion}, LanguageSet{x.lang()}, Named{q.Text}} {
		x.noteFor(id, zone, 0, e)
	}
	if p := x.s.Person; p.ZoneName != "" {
		x.noteFor(id, zone, 0, Placed{Area: p.Area, Zone: p.ZoneName, Town: p.Town})
	}
	x.noteFor(id, zone, 0, Joined{q.Group})
	x.say("added", phrases.Args{"Name": q.Text})
	return true
}

// leaveTold lets a farmer go: with all data, or with the numbers left behind
// under no name.
func (x *exchange) leaveTold(q Question, m meaning) bool {
	g, ok := x.s.Register.Group(q.Group)
	switch v := m.value("leave"); {
	case v == "stay" || m.no() || !ok:
		x.say("kept_all", nil)
		x.tellNext()
	case v == "take":
		x.note(0, GroupLeft{q.Group})
		x.say("left_group", phrases.Args{"Group": g.Name})
		x.tellNext()
	case v == "numbers":
		x.leaveNumbers(q.Group)
		x.note(0, GroupLeft{q.Group})
		x.say("left_numbers", phrases.Args{"Group": g.Name})
		x.tellNext()
	default:
		return false
	}
	return true
}

// leaveNumbers copies what was told of the heaps to a person without a name.
func (x *exchange) leaveNumbers(g GroupID) {
	id := PersonID(x.s.Register.NewID())
	zone := x.s.Person.Zone()
	x.clockFor(id, zone, LeftBehind{})
	x.clockFor(id, zone, Joined{g})
	for e := range standing(x.s.Register.Diary(x.s.Person.ID)) {
		if e.Heap != 0 {
			e.ID, e.Person, e.By, e.Told = 0, id, 0, 0
			x.entries = append(x.entries, e)
		}
	}
}

// clockFor writes a line in another diary that nobody told.
func (x *exchange) clockFor(who PersonID, zone *time.Location, e Event) {
	x.entries = append(x.entries, Entry{Person: who, At: x.now, Day: DayOf(x.now, zone), Noted: x.now, Event: e})
}
