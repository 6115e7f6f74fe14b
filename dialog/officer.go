package dialog

import (
	"slices"
	"strings"
	"time"

	"warmstick/dialog/phrases"
	"warmstick/dialog/understand"
)

// Between farmer and officer: joining by code, asking for a person, words both
// ways.

func officerQuestions() map[string]question {
	return map[string]question{
		"officer_text": {asks: "text", raw: (*exchange).officerText},
		"answer_text":  {asks: "text", raw: (*exchange).answerText},
	}
}

// appoint makes the person an officer by the operator's word.
func (x *exchange) appoint() {
	if !x.s.Person.Appointed {
		x.remark(0, Appointed{})
	}
}

// bar notes that the person's phone refuses our letters, and tells the officer.
func (x *exchange) bar(now bool) {
	if x.s.Person.Barred == now || x.s.Person.Consent == "" {
		return
	}
	x.clock(0, BarSet{now})
	if now {
		x.tellOfficers("alert_barred", phrases.Args{}, "barred")
	}
}

// inviteLasts is how long a code lets people in (our choice).
const inviteLasts = 30 * 24 * time.Hour

// join takes a text that is an invite code.
func (x *exchange) join(line string) bool {
	code := strings.ToLower(strings.TrimSpace(line))
	if len(code) < 6 || len(code) > 64 || strings.ContainsAny(code, " \n") {
		return false
	}
	inv, ok := x.s.Register.Invite(code)
	if !ok {
		return false
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
		x.ask("language", 0)
		return true
	}
	x.joinQuietly(code)
	x.goOnFrom()
	return true
}

// goOnFrom puts the open question again, or leads on where none is open.
func (x *exchange) goOnFrom() {
	if x.open.ID != "" {
		x.again()
		return
	}
	x.goOn()
}

// joinQuietly joins without leading on.
func (x *exchange) joinQuietly(code string) {
	inv, ok := x.s.Register.Invite(code)
	if !ok || inv.Ended || x.now.After(inv.Expires) {
		x.say("invite_old", nil)
		return
	}
	g, _ := x.s.Register.Group(inv.Group)
	if slices.ContainsFunc(x.s.Person.Roles, func(m Membership) bool { return m.Group == inv.Group }) {
		x.say("joined_already", phrases.Args{"Group": g.Name})
		return
	}
	if inv.Role == Farmer {
		x.note(0, Joined{inv.Group})
	} else {
		x.note(0, RoleGiven{inv.Group, inv.Role})
	}
	x.say("joined", phrases.Args{"Group": g.Name})
}

// wantOfficer opens a thread with the officers of the farmer's groups.
func (x *exchange) wantOfficer() {
	if len(x.officers()) == 0 {
		x.say("officer_none", nil)
		x.again()
		return
	}
	x.ask("officer_text", x.heapNow())
}

// officerText passes the farmer's words on, with what the officer needs to
// understand them.
func (x *exchange) officerText(q Question, m meaning) bool {
	x.close()
	x.note(0, OfficerAsked{m.text})
	x.relayUp(m.text)
	x.say("relayed", nil, "officer_told")
	return true
}

func (x *exchange) relayUp(words string) {
	for _, id := range x.officers() {
		to, ok := x.s.Register.State(id)
		if !ok || id == x.s.Person.ID {
			continue
		}
		l := x.letter(to, Relay, "relay_up", phrases.Args{"Name": x.s.Person.Name, "Place": x.placeName(), "Text": words})
		l.Opens = &Question{ID: "answer_text", Who: x.s.Person.ID}
		l.Asks = "text"
	}
}

// answerText passes an officer's words to the farmer.
func (x *exchange) answerText(q Question, m meaning) bool {
	to, ok := x.s.Register.State(q.Who)
	if !ok {
		return false
	}
	x.close()
	x.letter(to, Relay, "relay_down", phrases.Args{"Name": x.s.Person.Name, "Text": m.text})
	x.noteFor(q.Who, to.Person.Zone(), 0, OfficerWrote{m.text})
	x.say("relayed_down", phrases.Args{"Name": to.Person.Name})
	return true
}

// officerWords obeys the words that only officers have.
func (x *exchange) officerWords(line string, m Message) bool {
	c, ok := understand.Parse(line, x.lang())
	if !ok {
		return false
	}
	switch c.Name {
	case "invite":
		x.invite()
	default:
		return false
	}
	return true
}

// invite makes a code for the officer's group, founding the group if need be.
func (x *exchange) invite() {
	groups := x.s.Person.Groups(Officer)
	if len(groups) == 0 {
		id := GroupID(x.s.Register.NewID())
		name := x.s.Person.Name
		if name == "" {
			name = text(x.lang(), "group_unnamed", nil)
		}
		x.remark(0, GroupMade{Group: id, Name: name})
		groups = []GroupID{id}
	}
	code := x.s.Register.Chance(10)
	x.remark(0, InviteMade{Code: code, Group: groups[0], Role: Farmer, Expires: x.now.Add(inviteLasts)})
	x.say("invite_made", phrases.Args{"Code": code, "Day": x.dayWord(x.today + 30)})
}

// hearOther answers what is not plain text: it says what was done with it.
func (x *exchange) hearOther(m Message, line string) bool {
	if m.Kind == Text {
		if x.s.Person.Consent == "" && !x.s.Person.Appointed {
			x.greetOrAgain()
			return true
		}
		x.say("empty", nil)
		x.goOnFrom()
		return true
	}
	if x.s.Person.Consent == "" && !x.s.Person.Appointed {
		if line != "" {
			return false // the caption is read as words
		}
		x.greetOrAgain()
		return true
	}
	switch m.Kind {
	case Photo, Voice:
		x.passOn(m, line)
	case Location:
		x.say("got_location", nil)
	case Sticker:
		x.say("got_sticker", nil)
	case Contact:
		x.say("got_contact", nil)
	default:
		x.say("got_other", nil)
	}
	if line != "" && m.Kind != Contact {
		return false
	}
	x.goOnFrom()
	return true
}

func (x *exchange) greetOrAgain() {
	if x.open.ID == "" {
		x.greet("")
		return
	}
	x.say("words_please", nil)
	x.again()
}

// passOn sends a photo or voice note to the officers by its reference.
func (x *exchange) passOn(m Message, line string) {
	passed := false
	for _, id := range x.officers() {
		to, ok := x.s.Register.State(id)
		if !ok || m.File == "" {
			continue
		}
		l := x.letter(to, Relay, "relay_"+string(m.Kind), phrases.Args{"Name": x.s.Person.Name, "Place": x.placeName()})
		l.File = &Enclosed{Kind: m.Kind, File: m.File}
		l.Opens = &Question{ID: "answer_text", Who: x.s.Person.ID}
		l.Asks = "text"
		passed = true
	}
	key := "got_" + string(m.Kind)
	if passed {
		key += "_passed"
	}
	x.say(key, nil)
}

// WithQuestion is a conversation in which another person's message put a question.
func WithQuestion(t Talk, q Question) Talk {
	t.Open, t.Misses = q, 0
	t.Seq++
	return t
}
