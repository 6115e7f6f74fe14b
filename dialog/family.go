package dialog

import (
	"slices"
	"time"

	"warmstick/dialog/phrases"
	"warmstick/dialog/understand"
)

// Family: a second phone on the same heaps. The owner types "share" and gives
// the code to a wife, a son, a neighbour; what they say then counts for the
// owner's heaps, marked with who said it. "Leave" ends it on the second phone.

// Helping is the role that an owner's code gives; it belongs to no group.
const Helping Role = "helping"

// shareLasts is how long a family's code lets somebody in (our choice).
const shareLasts = 7 * 24 * time.Hour

// familyWord obeys share, and leave on a second phone.
func (x *exchange) familyWord(line string) bool {
	if _, ok := x.ownWord(line, "share"); ok {
		code := x.s.Register.Chance(inviteLength)
		x.remark(0, InviteMade{Code: code, Role: Helping, Expires: x.now.Add(shareLasts)})
		x.say("share_code", phrases.Args{"Code": code})
		x.goOnFrom()
		return true
	}
	return false
}

// helpOwner joins this person to another's heaps.
func (x *exchange) helpOwner(inv Invite) {
	owner, ok := x.s.Register.State(inv.By)
	if !ok || inv.By == x.s.Person.ID || owner.Person.Helps != 0 {
		x.say("code_own", nil)
		return
	}
	x.remark(0, Helps{inv.By})
	x.noteFor(inv.By, owner.Person.Zone(), 0, HelperJoined{x.s.Person.ID})
	x.say("helping", phrases.Args{"Name": called(owner.Person)})
	x.letter(owner, Reply, "helper_came", phrases.Args{"Name": called(x.s.Person)})
}

// forOwner lets a second phone speak for the owner of its heaps. It says false
// for what stays the second phone's own: stop, leave, language, my data.
func forOwner(s State, in Input, now time.Time) (Answer, bool) {
	var line string
	switch in := in.(type) {
	case Message:
		line = clean(in.Text)
	case Press:
	default:
		return Answer{}, false
	}
	own := begin(s, now)
	if c, ok := understand.Parse(line, own.lang()); ok && slices.Contains([]string{"stop", "delete_me", "language", "my_data"}, c.Name) {
		return Answer{}, false
	}
	if code := codeIn(line); code != "" {
		if inv, ok := s.Register.Invite(code); ok && inv.Role == Handing {
			return Answer{}, false // a heap for this phone itself
		}
	}
	if _, ok := own.ownWord(line, "leave"); ok {
		own.stopHelping()
		own.line = line
		own.close()
		own.say("helping_over", nil)
		return own.answer(), true
	}
	owner, ok := s.Register.State(s.Person.Helps)
	if !ok || s.Person.Stopped || owner.Person.Consent == "" || !slices.Contains(owner.Person.Helpers, s.Person.ID) {
		return Answer{}, false
	}
	owner.Register = s.Register
	x := begin(owner, now)
	x.by, x.tongue = s.Person.ID, own.lang()
	x.meet(in)
	a := x.answer()
	for i := range a.Letters {
		if a.Letters[i].To == owner.Person.ID {
			a.Letters[i].To = s.Person.ID
		}
	}
	a.Talks = append(a.Talks, TalkOf{owner.Person.ID, a.Talk})
	a.Talk = s.Talk
	return a, true
}

// stopHelping ends this second phone's part in another's heaps.
func (x *exchange) stopHelping() {
	id := x.s.Person.Helps
	x.remark(0, Helps{})
	if owner, ok := x.s.Register.State(id); ok {
		x.noteFor(id, owner.Person.Zone(), 0, HelperLeft{x.s.Person.ID})
	}
}

// copyToHelpers says what the clock says to the second phones as well, each in
// its own language.
func (x *exchange) copyToHelpers(t Talk) []Letter {
	var copies []Letter
	for _, id := range x.s.Person.Helpers {
		helper, ok := x.s.Register.State(id)
		if !ok || helper.Person.Helps != x.s.Person.ID || helper.Person.Stopped || helper.Person.Barred {
			continue
		}
		theirs := *x
		theirs.tongue = langOf(helper)
		talk := t
		talk.Said = 0
		if list := questions()[t.Open.ID].choices; list != nil {
			if labels := list(&theirs, t.Open); len(labels) == len(t.Open.Choices) {
				talk.Open.Choices = labels
			}
		}
		for _, l := range theirs.render(&talk) {
			l.To = id
			copies = append(copies, l)
		}
	}
	return copies
}
