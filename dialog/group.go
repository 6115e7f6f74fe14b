package dialog

import (
	"slices"
	"strconv"

	"warmstick/dialog/phrases"
	"warmstick/dialog/understand"
)

// Groups: what there is to do in one, its name, its calendar of heaps, and how an
// officer leaves it or hands it over.

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
