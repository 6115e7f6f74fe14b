package dialog

import (
	"slices"

	"warmstick/dialog/phrases"
	"warmstick/dialog/understand"
)

// Alerts: a danger at a farmer's reaches one officer at once, by night too where
// life or the heap burns, and is said again until somebody has seen it. After an
// hour a second officer is told as well.

// byDayOnly are alarms that can wait for the morning.
var byDayOnly = map[string]bool{"third_cold": true, "worms_dead": true}

// alertSeen is the press of the button below an alert. It names nobody: what it
// means lies in the officer's own diary.
const alertSeen = "seen"

// alertOfficers tells the first officer who can be reached of a danger.
func (x *exchange) alertOfficers(id HeapID, what string) bool {
	staff := x.officerStates()
	if len(staff) == 0 {
		return false
	}
	x.alertTo(staff[0], x.s.Person.ID, id, what, phrases.Args{"Name": called(x.s.Person), "Place": x.s.Person.Place(), "Text": x.ownWords()})
	return true
}

// ownWords are what the farmer just wrote, for the officer to judge by.
func (x *exchange) ownWords() string { return cut(x.line, 120) }

// alertTo writes one alert and notes it in the officer's diary, from where it is
// said again.
func (x *exchange) alertTo(to State, farmer PersonID, heap HeapID, what string, args phrases.Args) {
	args["What"] = perilWord(what)
	l := x.letter(to, Alert, "alert_peril", args, "officer_told")
	l.Buttons = []Button{{Label: text(langOf(to), "pick_seen", nil), Press: alertSeen}}
	from := x.now
	if byDayOnly[what] && to.Person.ZoneName != "" {
		if from = daytime(x.now, to.Person.Zone()); from.After(x.now) {
			l.After = from
		}
	}
	x.noteFor(to.Person.ID, to.Person.Zone(), 0, AlertGot{Farmer: farmer, Heap: heap, What: what, From: from})
}

// alertAgain says the alerts whose time has come once more, and tells a second
// officer of those that were said twice in vain.
func (x *exchange) alertAgain() {
	var due []Alarm
	for _, a := range x.s.Person.Duty.Alarms {
		if at := a.next(); !at.IsZero() && !at.After(x.now) {
			due = append(due, a)
		}
	}
	x.clock(0, Reminded{Task: TaskAlert, Day: x.today, Tell: true})
	for _, a := range due {
		s, ok := x.s.Register.State(a.Farmer)
		if _, mine := x.card(a.Farmer); !ok || !mine {
			x.clock(0, AlertSeen{a.Farmer}) // left the group, or was deleted
			continue
		}
		args := phrases.Args{"Name": called(s.Person), "Place": s.Person.Place(), "What": perilWord(a.What), "Since": clockText(a.First.In(x.s.Person.Zone()))}
		l := x.letter(x.s, Alert, "alert_again", args, "officer_told")
		l.Buttons = []Button{{Label: text(x.lang(), "pick_seen", nil), Press: alertSeen}}
		if a.Sent+1 > passAfter && !a.Passed {
			x.passAlert(s, a)
		}
	}
}

// passAlert tells the next officer of the farmer's groups who was not told yet.
func (x *exchange) passAlert(farmer State, a Alarm) {
	y := &exchange{s: farmer, now: x.now}
	y.s.Register = x.s.Register
	for _, to := range y.officerStates() {
		told := slices.ContainsFunc(to.Person.Duty.Alarms, func(b Alarm) bool { return b.Farmer == a.Farmer && b.What == a.What })
		if to.Person.ID == x.s.Person.ID || told || to.Person.Barred {
			continue
		}
		x.alertTo(to, a.Farmer, a.Heap, a.What, phrases.Args{"Name": called(farmer.Person), "Place": farmer.Person.Place(),
			"Text": text(langOf(to), "alert_passed", phrases.Args{"Name": x.ownName()(langOf(to))})})
		x.clock(0, AlertPassed{Farmer: a.Farmer, To: to.Person.ID})
		return
	}
}

// seen ends a farmer's alerts with every officer who has them, and tells the
// others who has it in hand.
func (x *exchange) seen(farmer PersonID) {
	mine := slices.ContainsFunc(x.s.Person.Duty.Alarms, func(a Alarm) bool { return a.Farmer == farmer })
	if mine {
		x.remark(0, AlertSeen{farmer})
	}
	s, ok := x.s.Register.State(farmer)
	if !ok {
		return
	}
	y := &exchange{s: s, now: x.now}
	y.s.Register = x.s.Register
	for _, to := range y.officerStates() {
		has := slices.ContainsFunc(to.Person.Duty.Alarms, func(a Alarm) bool { return a.Farmer == farmer })
		if !has || to.Person.ID == x.s.Person.ID {
			continue
		}
		x.noteFor(to.Person.ID, to.Person.Zone(), 0, AlertSeen{farmer})
		x.letter(to, Relay, "alert_taken", phrases.Args{"Name": x.ownName(), "Farmer": called(s.Person)}).byDay(x.now, to.Person)
	}
}

// seenAll answers the button and the word: everything this officer was told of
// is in hand.
func (x *exchange) seenAll() {
	alarms := x.s.Person.Duty.Alarms
	if len(alarms) == 0 {
		x.say("alert_none", nil)
		x.again()
		return
	}
	var names []string
	for _, a := range alarms {
		if c, ok := x.card(a.Farmer); ok && !slices.Contains(names, nameOf(c, x.lang())) {
			names = append(names, nameOf(c, x.lang()))
		}
	}
	for _, a := range alarms {
		x.seen(a.Farmer)
	}
	x.say("alert_seen", phrases.Args{"Names": joined(names)})
	x.again()
}

// seenByWord takes "seen", or its number while nothing else is asked.
func (x *exchange) seenByWord(line string) bool {
	n, number := digits(line)
	alarms := len(x.s.Person.Duty.Alarms) > 0
	word := understand.Normal(line) == understand.Normal(text(x.lang(), "pick_seen", nil))
	if !(word && (alarms || x.open.ID == "")) && !(alarms && number && n == 1 && x.open.ID == "") {
		return false
	}
	x.seenAll()
	return true
}

func joined(names []string) string {
	s := ""
	for i, n := range names {
		if i > 0 {
			s += ", "
		}
		s += n
	}
	return s
}

// onDuty lets the clock speak to an officer. It gives back the due lines that
// are the person's own as a farmer.
func (x *exchange) onDuty(due []Due) []Due {
	plan := dutiesOf(x.s.Person)
	var rest []Due
	var mine []Task
	for _, d := range due {
		if !slices.Contains(duties, d.Task) {
			rest = append(rest, d)
			continue
		}
		if slices.Contains(plan, d) && !d.At.After(x.now) && (d.Task == TaskAlert || !x.late(d)) {
			mine = append(mine, d.Task)
		}
	}
	if len(rest) == 0 {
		x.kind = Digest
	}
	for _, t := range duties {
		if !slices.Contains(mine, t) {
			continue
		}
		switch t {
		case TaskAlert:
			x.alertAgain()
		case TaskBoard:
			x.boardDue()
		case TaskDigest:
			x.digestDue()
		case TaskCount:
			x.countDue()
		}
	}
	return rest
}

// late marks what should have been said on another day, or at night, as missed.
func (x *exchange) late(d Due) bool {
	local := x.now.In(x.s.Person.Zone())
	minute := local.Hour()*60 + local.Minute()
	switch {
	case minute >= dayEnds:
		x.clock(0, Missed{d.Task, x.today, "night"})
	case minute < dayBegins:
		x.clock(0, Missed{d.Task, x.today - 1, "night"})
	case d.Day < x.today && minute < x.s.Person.Hour() && d.Task == TaskBoard:
		x.clock(0, Missed{d.Task, x.today - 1, "off"})
	default:
		return false
	}
	return true
}

// lendZone gives officers who have not told their place the farmer's clock, so
// that nobody's morning is guessed.
func (x *exchange) lendZone() {
	p := x.s.Person
	if p.ZoneName == "" || len(p.Roles) == 0 || !slices.ContainsFunc(x.entries, func(e Entry) bool {
		switch e.Event.(type) {
		case Placed, Joined:
			return e.Person == p.ID
		}
		return false
	}) {
		return
	}
	for _, to := range x.officerStates() {
		if to.Person.ZoneName == "" {
			x.noteFor(to.Person.ID, p.Zone(), 0, Placed{Zone: p.ZoneName})
		}
	}
}
