package dialog

import (
	"maps"
	"slices"
	"strconv"
	"strings"
	"time"

	"warmstick/dialog/phrases"
	"warmstick/dialog/understand"
)

// Groups: codes to join by, people without phones, the group's own measures,
// leaving and handing over.

func groupQuestions() map[string]question {
	return map[string]question{
		"groups":       {asks: "target", answer: (*exchange).groupTold},
		"crew":         {asks: "menu", args: crewArgs, choices: crewChoices, answer: (*exchange).crewTold},
		"crew_more":    {asks: "menu", args: crewArgs, choices: choose("crew=invite_lead", "crew=invite_officer", "crew=end_invites", "crew=rename", "crew=leave"), answer: (*exchange).crewTold},
		"invite_group": {asks: "invite", answer: (*exchange).inviteGroup},
		"crew_name":    {asks: "name", raw: (*exchange).crewNamed},
		"crew_leave":   {asks: "confirm", args: crewArgs, choices: yesNo, answer: (*exchange).crewLeft},
		"add_name":     {asks: "name", raw: (*exchange).addNamed},
		"add_consent":  {asks: "consent", args: textArgs, choices: yesNo, answer: (*exchange).addTold},
		"measure":      {asks: "text", raw: (*exchange).measureTold},
		"leave":        {asks: "confirm", args: crewArgs, choices: choose("leave=take", "leave=numbers", "leave=stay"), answer: (*exchange).leaveTold},
	}
}

func textArgs(_ *exchange, q Question) phrases.Args { return phrases.Args{"Name": q.Text} }

func crewArgs(x *exchange, q Question) phrases.Args {
	g, _ := x.s.Register.Group(q.Group)
	return phrases.Args{"Group": g.Name}
}

func groupMeans(g GroupID) string { return "group=" + strconv.FormatInt(int64(g), 10) }

func groupOf(m meaning) GroupID {
	n, err := strconv.ParseInt(m.value("group"), 10, 64)
	if err != nil {
		return 0
	}
	return GroupID(n)
}

// groupChoices lists the person's groups in which they have at least that role.
func (x *exchange) groupChoices(least Role) []Choice {
	var list []Choice
	for _, m := range x.s.Person.Roles {
		if least != Farmer && !x.s.Person.Staff(m.Group, least) {
			continue
		}
		if g, ok := x.s.Register.Group(m.Group); ok && len(list) < 9 {
			list = append(list, Choice{Label: g.Name, Means: groupMeans(g.ID)})
		}
	}
	return list
}

// groups tells the person's groups; one group alone is opened at once.
func (x *exchange) groups() {
	list := x.groupChoices(Farmer)
	switch len(list) {
	case 0:
		x.say("groups_none", nil)
		return
	case 1:
		x.openGroup(groupOf(meaning{codes: []string{list[0].Means}}))
		return
	}
	x.say("groups_head", phrases.Args{"N": len(list)})
	x.put(Question{ID: "groups", Choices: list})
}

func (x *exchange) groupTold(_ Question, m meaning) bool {
	g := groupOf(m)
	if g == 0 {
		return false
	}
	x.openGroup(g)
	return true
}

// openGroup shows what the person may do in one group.
func (x *exchange) openGroup(id GroupID) {
	g, ok := x.s.Register.Group(id)
	if !ok {
		x.say("groups_none", nil)
		return
	}
	if !x.s.Person.Staff(id, Lead) {
		x.put(Question{ID: "leave", Group: id})
		return
	}
	cards := x.members(id)
	phoneless := 0
	for _, c := range cards {
		if c.Keeper != 0 {
			phoneless++
		}
	}
	x.say("group_head", phrases.Args{"Group": g.Name, "N": len(cards), "Phoneless": phoneless, "Officers": officersOf(g)})
	x.put(Question{ID: "crew", Group: id})
}

// members are a group's farmers, without the numbers that some left behind.
func (x *exchange) members(id GroupID) []Card {
	return slices.DeleteFunc(x.s.Register.Members(id), func(c Card) bool { return c.Nameless })
}

func officersOf(g Group) int {
	n := 0
	for _, s := range g.Staff {
		if s.Role == Officer {
			n++
		}
	}
	return n
}

func crewChoices(x *exchange, q Question) []Choice {
	if x.s.Person.Staff(q.Group, Officer) {
		return labelled(x.lang(), "crew=invite", "crew=add", "crew=measure", "crew=calendar", "crew=practice", "crew=more")
	}
	return labelled(x.lang(), "crew=invite", "crew=add", "crew=leave")
}

// crewTold does one thing of a group's menu. The role is asked anew: the list
// may be older than it.
func (x *exchange) crewTold(q Question, m meaning) bool {
	v := m.value("crew")
	officer, lead := x.s.Person.Staff(q.Group, Officer), x.s.Person.Staff(q.Group, Lead)
	if v == "" {
		return false
	}
	if !lead || !officer && v != "invite" && v != "add" && v != "leave" {
		x.say("officers_only", nil)
		return true
	}
	switch v {
	case "invite":
		x.inviteTo(q.Group, Farmer)
	case "invite_lead":
		x.inviteTo(q.Group, Lead)
	case "invite_officer":
		x.inviteTo(q.Group, Officer)
	case "end_invites":
		x.endInvites(q.Group)
	case "add":
		x.put(Question{ID: "add_name", Group: q.Group})
	case "measure":
		x.put(Question{ID: "measure", Group: q.Group})
	case "calendar":
		x.calendar(q.Group)
	case "practice":
		x.put(Question{ID: "lesson"})
	case "rename":
		x.put(Question{ID: "crew_name", Group: q.Group})
	case "leave":
		x.put(Question{ID: "crew_leave", Group: q.Group})
	case "more":
		x.put(Question{ID: "crew_more", Group: q.Group})
	default:
		return false
	}
	return true
}

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

// join takes a text that is an invite code. Wrong codes are counted, so that
// nobody can try them out by the thousand.
func (x *exchange) join(line string) bool {
	code := strings.ToLower(strings.TrimSpace(line))
	if !looksLikeCode(code) {
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
		t.Guesses, t.GuessedAt = t.Guesses+1, x.now
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

// joinQuietly joins without leading on. A code for officers or lead farmers
// raises a farmer of the group; no code lowers anybody.
func (x *exchange) joinQuietly(code string) {
	inv, ok := x.s.Register.Invite(code)
	if !ok || inv.Ended || x.now.After(inv.Expires) {
		x.say("invite_old", nil)
		return
	}
	if inv.Role == Helping {
		x.helpOwner(inv)
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

// takeMeasures gives a newcomer what the group's own measures weigh.
func (x *exchange) takeMeasures(g Group) {
	for _, m := range g.Staff {
		s, ok := x.s.Register.State(m.Person)
		if !ok || m.Role != Officer {
			continue
		}
		for _, key := range slices.Sorted(maps.Keys(s.Person.Measures)) {
			unit, material, _ := strings.Cut(key, " ")
			x.remark(0, MeasureSet{Unit: unit, Material: material, Kg: s.Person.Measures[key]})
		}
		return
	}
}

func (x *exchange) crewNamed(q Question, m meaning) bool {
	name := tidyName(m.text)
	if name == "" || !x.s.Person.Staff(q.Group, Officer) {
		return false
	}
	if _, word := understand.Parse(name, x.lang()); word || m.has("chat=hello") || m.has("chat=thanks") {
		return false
	}
	x.close()
	founder := slices.ContainsFunc(x.s.Person.Made, func(g Group) bool { return g.ID == q.Group })
	if !founder {
		x.say("rename_founder", nil)
		return true
	}
	x.remark(0, GroupMade{Group: q.Group, Name: name})
	x.say("group_named", phrases.Args{"Group": name})
	return true
}

// crewLeft ends an officer's or lead farmer's role. The last officer stays until
// another has come: that is how a group is handed over.
func (x *exchange) crewLeft(q Question, m meaning) bool {
	if !m.yes() && !m.no() {
		return false
	}
	g, ok := x.s.Register.Group(q.Group)
	switch {
	case m.no() || !ok:
		x.say("kept_all", nil)
	case x.s.Person.Staff(q.Group, Officer) && officersOf(g) < 2:
		x.say("last_officer", nil)
	default:
		x.remark(0, RoleEnded{q.Group})
		x.say("role_ended", phrases.Args{"Group": g.Name})
	}
	return true
}

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
		x.noteFor(id, zone, 0, Placed{Area: p.Area, Zone: p.ZoneName})
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
	diary := x.s.Register.Diary(x.s.Person.ID)
	struck := map[int]bool{}
	for _, e := range diary {
		if k, ok := e.Event.(Struck); ok {
			struck[k.Told] = true
		}
	}
	for _, e := range diary {
		if e.Heap == 0 || e.Told != 0 && struck[e.Told] {
			continue
		}
		e.ID, e.Person, e.By, e.Told = 0, id, 0, 0
		x.entries = append(x.entries, e)
	}
}

// clockFor writes a line in another diary that nobody told.
func (x *exchange) clockFor(who PersonID, zone *time.Location, e Event) {
	x.entries = append(x.entries, Entry{Person: who, At: x.now, Day: DayOf(x.now, zone), Noted: x.now, Event: e})
}

// calendar shows how many heaps stand in which stage.
func (x *exchange) calendar(id GroupID) {
	counts := make([]float64, len(calendarStages))
	n := 0
	for _, c := range x.s.Register.Members(id) {
		for _, h := range c.Heaps {
			if i := slices.Index(calendarStages, h.Stage); i >= 0 {
				counts[i]++
				n++
			}
		}
	}
	if n == 0 {
		x.say("calendar_empty", nil)
		return
	}
	x.say("calendar_head", phrases.Args{"N": n})
	x.show(Picture{Kind: "calendar", Numbers: counts})
	for i, s := range calendarStages {
		if counts[i] > 0 {
			x.say("calendar_line", phrases.Args{"Row": i + 1, "Stage": stageWord(s), "Heaps": int(counts[i])})
		}
	}
}

// calendarStages are the rows of the calendar picture, from the first day on;
// the caption names them by their number.
var calendarStages = []Stage{Planning, Gathering, Ferment, Building, Heating, Turned, Resting, Opening, Cooling, Worms, Harvest, ColdDung}
