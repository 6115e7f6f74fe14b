package dialog

import (
	"maps"
	"slices"
	"strings"
	"time"

	"warmstick/dialog/compost"
	"warmstick/dialog/phrases"
)

// Codes: who holds one may join a group until it expires or is withdrawn. A code
// for officers or lead farmers lives only a few days.

// inviteLasts is how long a code lets people in; a code that makes officers or
// lead farmers dies sooner (our choice).
const (
	inviteLasts = 30 * 24 * time.Hour
	staffLasts  = 3 * 24 * time.Hour
)

// invite makes a code; an officer's first one founds the group.
func (x *exchange) invite(r Role) {
	list := x.groupChoices(Lead)
	switch {
	case len(list) > 1:
		x.put(Question{ID: "invite_group", Choices: list})
		return
	case len(list) == 1:
		x.inviteTo(groupOf(meaning{codes: []string{list[0].Means}}), r)
		return
	case !x.s.Person.Officer():
		x.say("invite_farmer", nil)
		return
	}
	id := GroupID(x.s.Register.NewID())
	name := x.s.Person.Name
	if name == "" {
		name = text(x.lang(), "group_unnamed", nil)
	}
	x.remark(0, GroupMade{Group: id, Name: name})
	x.inviteTo(id, r)
	x.put(Question{ID: "crew_name", Group: id})
}

func (x *exchange) inviteGroup(_ Question, m meaning) bool {
	g := groupOf(m)
	if g == 0 {
		return false
	}
	if !x.s.Person.Staff(g, Lead) {
		x.say("officers_only", nil)
		return true
	}
	x.inviteTo(g, Farmer)
	return true
}

func (x *exchange) inviteTo(g GroupID, r Role) {
	lasts := inviteLasts
	if r != Farmer {
		lasts = staffLasts
	}
	code := strings.ToLower(x.s.Register.Chance(inviteLength))
	expires := x.now.Add(lasts)
	x.remark(0, InviteMade{Code: code, Group: g, Role: r, Expires: expires})
	args := phrases.Args{"Code": code, "Day": x.dayWord(DayOf(expires, x.s.Person.Zone()))}
	if r == Farmer {
		x.say("invite_made", args)
	} else {
		x.say("invite_"+string(r), args)
	}
	x.show(Picture{Kind: "qr", Text: code})
}

// endInvites withdraws every code of a group, whoever made it.
func (x *exchange) endInvites(id GroupID) {
	g, ok := x.s.Register.Group(id)
	if !ok {
		return
	}
	n := 0
	for _, m := range g.Staff {
		p := x.s.Person
		if m.Person != p.ID {
			s, ok := x.s.Register.State(m.Person)
			if !ok {
				continue
			}
			p = s.Person
		}
		for _, inv := range p.Invites {
			if inv.Group != id || inv.Ended || x.now.After(inv.Expires) {
				continue
			}
			n++
			if p.ID == x.s.Person.ID {
				x.remark(0, InviteEnded{inv.Code})
				continue
			}
			x.noteFor(p.ID, p.Zone(), 0, InviteEnded{inv.Code})
		}
	}
	x.say("invites_ended", phrases.Args{"N": n})
}

// inviteLength is how many letters and digits a code has.
const inviteLength = 10

// mostGuesses wrong codes in a day are looked up; after them a phone waits.
const mostGuesses = 5

// looksLikeCode says whether a line has the form of an invite code.
func looksLikeCode(line string) bool {
	return len(line) == inviteLength && strings.ContainsAny(line, "0123456789") &&
		strings.Trim(strings.ToLower(line), "abcdefghijklmnopqrstuvwxyz0123456789") == ""
}

// codeIn finds an invite code in a line: people pass on the whole message, with
// the full stop behind the code.
func codeIn(line string) string {
	for word := range strings.FieldsSeq(line) {
		word = strings.ToLower(strings.Trim(word, ".,:;।!?()[]\"'"))
		if looksLikeCode(word) {
			return word
		}
	}
	return ""
}

// join takes a text that is an invite code. Wrong codes are counted, so that
// nobody can try them out by the thousand.
func (x *exchange) join(line string) bool {
	code := codeIn(line)
	if code == "" {
		return false
	}
	t := &x.s.Talk
	if x.now.Sub(t.GuessedAt) > 24*time.Hour {
		t.Guesses = 0
	}
	if t.Guesses >= mostGuesses {
		x.say("invite_slow", nil)
		x.goOnFrom()
		return true
	}
	inv, ok := x.s.Register.Invite(code)
	if !ok {
		if t.Guesses, t.GuessedAt = t.Guesses+1, x.now; t.Guesses == mostGuesses {
			x.tellOfGuesses()
		}
		x.say("invite_unknown", nil)
		x.goOnFrom()
		return true
	}
	x.s.Talk.Misses = 0
	if inv.Ended || x.now.After(inv.Expires) {
		x.say("invite_old", nil)
		x.goOnFrom()
		return true
	}
	if x.s.Person.Consent == "" && !x.s.Person.Appointed {
		x.s.Talk.Code = code
		x.say("invite_later", nil)
		if x.open.ID == "" {
			x.ask("language", 0)
		}
		x.again()
		return true
	}
	x.joinQuietly(code)
	if x.s.Person.Helps != 0 {
		x.close() // the owner's questions are theirs now
		return true
	}
	x.goOnFrom()
	return true
}

// tellOfGuesses lets the officers of a member know that codes are being tried out
// from that phone. A stranger has no officer yet; their phone only waits.
func (x *exchange) tellOfGuesses() {
	for _, to := range x.officerStates() {
		x.letter(to, Relay, "guesses_told", phrases.Args{"Name": called(x.s.Person), "N": mostGuesses})
	}
}

// goOnFrom puts the open question again, or leads on where none is open.
func (x *exchange) goOnFrom() {
	if x.open.ID != "" {
		x.again()
		return
	}
	x.goOn()
}

// joinQuietly joins without leading on. A code for officers or lead farmers
// raises a farmer of the group; no code lowers anybody.
func (x *exchange) joinQuietly(code string) {
	inv, ok := x.s.Register.Invite(code)
	if !ok || inv.Ended || x.now.After(inv.Expires) {
		x.say("invite_old", nil)
		return
	}
	switch inv.Role {
	case Helping:
		x.helpOwner(inv)
		return
	case Handing:
		x.takeOver(inv)
		return
	}
	g, known := x.s.Register.Group(inv.Group)
	if !known {
		x.say("invite_old", nil)
		return
	}
	rank := map[Role]int{Farmer: 1, Lead: 2, Officer: 3}
	if slices.ContainsFunc(x.s.Person.Roles, func(m Membership) bool { return m.Group == inv.Group && rank[m.Role] >= rank[inv.Role] }) {
		x.say("joined_already", phrases.Args{"Group": g.Name})
		return
	}
	if inv.Role != Farmer {
		x.remark(0, RoleGiven{inv.Group, inv.Role})
		x.say("joined_"+string(inv.Role), phrases.Args{"Group": g.Name})
		return
	}
	x.note(0, Joined{inv.Group})
	x.say("joined", phrases.Args{"Group": g.Name})
	x.takeMeasures(g)
}

// measureOf is the line for one of compost's keys: "basket cow_dung".
func measureOf(key string, kg float64) MeasureSet {
	unit, material, _ := strings.Cut(key, " ")
	return MeasureSet{Unit: unit, Material: material, Kg: kg}
}

// takeMeasures gives a newcomer what the group's own measures weigh.
func (x *exchange) takeMeasures(g Group) {
	for _, m := range g.Staff {
		s, ok := x.s.Register.State(m.Person)
		if !ok || m.Role != Officer {
			continue
		}
		x.learnMeasures(s.Person.Measures)
		return
	}
}

// learnMeasures notes what another's measures weigh, always in the same order.
func (x *exchange) learnMeasures(cal compost.Calibration) {
	for _, key := range slices.Sorted(maps.Keys(cal)) {
		x.remark(0, measureOf(key, cal[key]))
	}
}
