package dialog

import (
	"slices"
	"time"

	"warmstick/dialog/compost"
)

// Person is one person as their diary tells it. The zero Person is a stranger.
type Person struct {
	ID        PersonID
	Lang      string              `json:",omitempty"` // en sw hi hi-Latn es fr
	Consent   string              `json:",omitempty"` // version agreed to, "" = not asked or refused
	Consented time.Time           `json:",omitzero"`
	Name      string              `json:",omitempty"`
	Area      string              `json:",omitempty"`
	Town      string              `json:",omitempty"` // in the person's words
	ZoneName  string              `json:",omitempty"`
	Minute    int                 `json:",omitempty"` // of the day, for reminders; 0 = not told
	Units     string              `json:",omitempty"` // feet or metres
	NoPicture bool                `json:",omitempty"`
	Nagari    bool                `json:",omitempty"` // reads १२, not 12
	Measures  compost.Calibration `json:",omitempty"`
	Helps     PersonID            `json:",omitempty"` // whose heaps this phone speaks for
	Helpers   []PersonID          `json:",omitempty"` // second phones
	Hidden    uint64              `json:",omitempty"` // print of the word that shows the heaps
	Stopped   bool                `json:",omitempty"`
	Barred    bool                `json:",omitempty"`
	Appointed bool                `json:",omitempty"` // officer by the operator's word
	Roles     []Membership        `json:",omitempty"`
	Made      []Group             `json:",omitempty"` // groups this person founded
	Invites   []Invite            `json:",omitempty"` // newest last
	Unheard   int                 `json:",omitempty"` // reminders since the person last wrote
	Asking    time.Time           `json:",omitzero"`  // asked for the officer, not yet answered
	PutOff    Day                 `json:",omitempty"` // the officer does not want this line before
	Seen      time.Time           `json:",omitzero"`  // last visit of an officer
	Keeper    PersonID            `json:",omitempty"` // who answers for a farmer without a phone
	Nameless  bool                `json:",omitempty"` // numbers that a farmer left behind
	Peril     string              `json:",omitempty"` // a danger at no heap in particular, not yet seen to
	PerilAt   time.Time           `json:",omitzero"`
	Habit     Habit               `json:",omitzero"`  // how reminders are answered
	Duty      Duty                `json:",omitzero"`  // as an officer
	Since     time.Time           `json:",omitzero"`  // first line of the diary
	Moved     time.Time           `json:",omitzero"`  // when hour, zone or reachability last changed
	Told      int                 `json:",omitempty"` // highest number of a told message
}

// DefaultMinute is half past six, inside the local morning in which reminders
// usually go out (common practice, no source).
const DefaultMinute = 6*60 + 30

// Zone is where the person's days are counted.
func (p Person) Zone() *time.Location { return Zone(p.ZoneName) }

// Hour is the minute of the day for this person's reminders.
func (p Person) Hour() int {
	if p.Minute <= 0 || p.Minute >= 24*60 { // not told, or no minute of a day
		return DefaultMinute
	}
	return p.Minute
}

// Officer says whether the person looks after anyone.
func (p Person) Officer() bool {
	return p.Appointed || slices.ContainsFunc(p.Roles, func(m Membership) bool { return m.Role == Officer })
}

// Staff says whether the person looks after this group in that or a higher role.
func (p Person) Staff(g GroupID, least Role) bool {
	return slices.ContainsFunc(p.Roles, func(m Membership) bool {
		return m.Group == g && (m.Role == Officer || m.Role == least && least != Officer)
	})
}

// Groups lists the groups in which the person has that role.
func (p Person) Groups(r Role) []GroupID {
	var ids []GroupID
	for _, m := range p.Roles {
		if m.Role == r {
			ids = append(ids, m.Group)
		}
	}
	return ids
}

// take folds one line of the diary in. Lists are replaced, never written to, so
// that a kept copy of the person stays as it was; the hours of the habit alone
// are counted in place, and State.After copies them.
func (p *Person) take(e *Entry) {
	if p.Since.IsZero() {
		p.Since = e.Noted
	}
	p.Told = max(p.Told, e.Told)
	switch ev := e.Event.(type) {
	case Reminded:
		p.Unheard++
		p.Habit.asked(ev, e.Noted, p.Hour())
		p.Duty.after(e)
		return
	case Missed:
		p.Duty.after(e)
		return
	}
	if e.By == e.Person {
		p.Habit.answered(e.Noted)
	}
	if e.By == e.Person || e.By != 0 && e.Heap != 0 {
		p.Unheard = 0
	}
	switch ev := e.Event.(type) {
	case Consented:
		p.Consent, p.Consented = ev.Version, e.Noted
	case LanguageSet:
		p.Lang = ev.Lang
	case Named:
		p.Name = ev.Name
	case Placed:
		p.Area, p.Town, p.ZoneName, p.Moved = ev.Area, ev.Town, ev.Zone, e.Noted
	case HourSet:
		p.Minute, p.Moved = ev.Minute, e.Noted
	case UnitsSet:
		p.Units = ev.Units
	case PicturesSet:
		p.NoPicture = ev.Off
	case NumeralsSet:
		p.Nagari = ev.Nagari
	case MeasureSet:
		p.Measures = withMeasure(p.Measures, ev)
	case Helps:
		p.Helps = ev.Person
	case HelperJoined:
		if !slices.Contains(p.Helpers, ev.Person) {
			p.Helpers = append(slices.Clip(p.Helpers), ev.Person)
		}
	case HelperLeft:
		p.Helpers = slices.DeleteFunc(slices.Clone(p.Helpers), func(id PersonID) bool { return id == ev.Person })
	case Hidden:
		p.Hidden = ev.Print
	case StopAsked:
		p.Stopped = true
	case CameBack:
		p.Stopped, p.Moved = false, e.Noted
	case BarSet:
		p.Barred, p.Moved = ev.On, e.Noted
	case Appointed:
		p.Appointed = true
	case Joined:
		p.Roles = withRole(p.Roles, ev.Group, Farmer)
	case RoleGiven:
		p.Roles = withRole(p.Roles, ev.Group, ev.Role)
	case GroupLeft:
		p.Roles = withRole(p.Roles, ev.Group, "")
	case RoleEnded:
		p.Roles = withRole(p.Roles, ev.Group, "")
	case GroupMade:
		if i := slices.IndexFunc(p.Made, func(g Group) bool { return g.ID == ev.Group }); i >= 0 {
			p.Made = slices.Clone(p.Made)
			p.Made[i].Name = ev.Name
			break
		}
		p.Made = append(slices.Clip(p.Made), Group{ID: ev.Group, Name: ev.Name})
		p.Roles = withRole(p.Roles, ev.Group, Officer)
	case InviteMade:
		p.Invites = append(slices.Clip(p.Invites), Invite{Code: ev.Code, Group: ev.Group, Role: ev.Role, Heap: ev.Heap, By: p.ID, Expires: ev.Expires})
	case InviteEnded:
		p.Invites = slices.Clone(p.Invites)
		for i := range p.Invites {
			p.Invites[i].Ended = p.Invites[i].Ended || p.Invites[i].Code == ev.Code
		}
	case OfficerAsked:
		p.Asking = e.Noted
	case OfficerWrote:
		p.Asking = time.Time{}
	case Visited:
		p.Seen, p.Asking = e.Noted, time.Time{}
	case PutOff:
		p.PutOff = ev.Until
	case Entered:
		p.Keeper = e.By
	case LeftBehind:
		p.Nameless = true
	case Peril:
		if e.Heap == 0 {
			p.Peril, p.PerilAt = ev.What, e.Noted
		}
	case PerilSeen:
		if e.Heap == 0 {
			p.Peril = ""
		}
	}
	p.Duty.after(e)
}

// withRole sets a role in a group; the empty role ends it.
func withRole(roles []Membership, g GroupID, r Role) []Membership {
	kept := slices.DeleteFunc(slices.Clone(roles), func(m Membership) bool { return m.Group == g })
	if r == "" {
		return kept
	}
	return append(kept, Membership{Group: g, Role: r})
}

// withMeasure sets what one local measure weighs; the key is compost's.
func withMeasure(c compost.Calibration, m MeasureSet) compost.Calibration {
	set := make(compost.Calibration, len(c)+1)
	for k, v := range c {
		set[k] = v
	}
	key := m.Unit
	if m.Material != "" {
		key += " " + m.Material
	}
	set[key] = m.Kg
	return set
}
