package dialog

import (
	"slices"
	"time"
)

// What an officer owes and is owed: alerts until they are seen, a board each
// morning, a digest each week, and the count of an announcement. Like a
// farmer's plan it follows from the person's own diary alone.

const (
	TaskAlert  Task = "alert"  // a danger nobody has seen yet
	TaskBoard  Task = "board"  // who needs me, in the morning
	TaskDigest Task = "digest" // the week in numbers
	TaskCount  Task = "count"  // how many got the announcement
)

// duties lists the tasks of an officer, in the order in which they are spoken of.
var duties = []Task{TaskAlert, TaskBoard, TaskDigest, TaskCount}

// digestDay is the weekday of the digest, before the week's visits (our choice).
const digestDay = time.Monday

// Duty is an officer's side of a person. The zero Duty has nothing to do.
type Duty struct {
	From    Day     `json:",omitempty"` // since when a group is looked after
	Board   Day     `json:",omitempty"` // the last morning that is dealt with
	Digest  Day     `json:",omitempty"`
	Alarms  []Alarm `json:",omitempty"` // not seen by anybody yet
	Batches []Batch `json:",omitempty"` // announcements not yet counted
}

// Alarm is one danger an officer was told of.
type Alarm struct {
	Farmer PersonID
	Heap   HeapID `json:",omitempty"`
	What   string
	First  time.Time // when the officer was told
	Last   time.Time // when it was said last
	Sent   int       // how often it was said
	Passed bool      `json:",omitempty"` // another officer was told too
}

// Batch is one announcement on its way.
type Batch struct {
	ID   string
	N    int
	Last time.Time // when the last letters may go
}

// An alert is said again after a quarter of an hour, an hour, then every four
// hours for three days; at the second time another officer is told too. After
// that it stands on top of every morning's board. All are our choice.
var alarmPauses = [...]time.Duration{15 * time.Minute, 45 * time.Minute, 4 * time.Hour}

const (
	alarmLasts  = 3 * 24 * time.Hour
	passAfter   = 2 // times said
	countsAfter = 30 * time.Minute
)

// next is when an alarm is said again; zero when it is said no more.
func (a Alarm) next() time.Time {
	at := a.Last.Add(alarmPauses[min(a.Sent-1, len(alarmPauses)-1)])
	if at.Sub(a.First) > alarmLasts {
		return time.Time{}
	}
	return at
}

// after takes one more line of the officer's diary.
func (d *Duty) after(e *Entry) {
	switch ev := e.Event.(type) {
	case GroupMade, RoleGiven, Appointed:
		if d.From == 0 {
			d.From = e.Day
		}
	case AlertGot:
		from := later(e.Noted, ev.From)
		d.Alarms = append(d.without(ev.Farmer, ev.What), Alarm{Farmer: ev.Farmer, Heap: ev.Heap, What: ev.What, First: from, Last: from, Sent: 1})
	case AlertSeen:
		d.Alarms = d.without(ev.Farmer, "")
	case AlertPassed:
		d.Alarms = slices.Clone(d.Alarms)
		for i := range d.Alarms {
			d.Alarms[i].Passed = d.Alarms[i].Passed || d.Alarms[i].Farmer == ev.Farmer
		}
	case Announced:
		d.Batches = append(slices.Clip(d.Batches), Batch{ev.Batch, ev.N, ev.Last})
	case BatchStopped:
		d.Batches = slices.Clone(d.Batches)
		for i := range d.Batches {
			if d.Batches[i].ID == ev.Batch {
				d.Batches[i].N -= ev.N
			}
		}
	case Counted:
		d.Batches = slices.DeleteFunc(slices.Clone(d.Batches), func(b Batch) bool { return b.ID == ev.Batch })
	case Reminded:
		d.said(ev.Task, ev.Day, e)
	case Missed:
		d.said(ev.Task, ev.Day, e)
		if ev.Task == TaskCount { // it was night: counted from now, in the morning
			d.Batches = slices.Clone(d.Batches)
			for i := range d.Batches {
				d.Batches[i].Last = later(d.Batches[i].Last, e.Noted)
			}
		}
	}
}

// said takes what became of a due line.
func (d *Duty) said(t Task, day Day, e *Entry) {
	switch t {
	case TaskBoard:
		d.Board = max(d.Board, day)
	case TaskDigest:
		d.Digest = max(d.Digest, day)
	case TaskAlert:
		d.Alarms = slices.Clone(d.Alarms)
		for i, a := range d.Alarms {
			if at := a.next(); !at.IsZero() && !at.After(e.Noted) {
				d.Alarms[i].Sent++
				d.Alarms[i].Last = e.Noted
			}
		}
	}
}

// without drops a farmer's alarms, or only those of one sort.
func (d Duty) without(farmer PersonID, what string) []Alarm {
	return slices.DeleteFunc(slices.Clone(d.Alarms), func(a Alarm) bool {
		return a.Farmer == farmer && (what == "" || a.What == what)
	})
}

// dutiesOf is the officer's part of the plan.
func dutiesOf(p Person) []Due {
	if len(p.Groups(Officer)) == 0 || p.Barred {
		return nil
	}
	zone := p.Zone()
	var plan []Due
	add := func(t Task, day Day, at time.Time) {
		plan = append(plan, Due{Person: p.ID, Task: t, Day: day, At: at.UTC()})
	}
	var soonest time.Time
	for _, a := range p.Duty.Alarms {
		if at := a.next(); !at.IsZero() && (soonest.IsZero() || at.Before(soonest)) {
			soonest = at
		}
	}
	if !soonest.IsZero() {
		add(TaskAlert, DayOf(soonest, zone), soonest)
	}
	if p.Stopped || p.ZoneName == "" { // without a zone nobody knows when it is night
		return plan
	}
	board := max(p.Duty.Board, p.Duty.From) + 1
	add(TaskBoard, board, board.On(p.Hour(), zone))
	digest := max(p.Duty.Digest, p.Duty.From) + 1
	digest += Day((int(digestDay) - int(digest.Weekday()) + 7) % 7)
	add(TaskDigest, digest, digest.On(p.Hour(), zone))
	if len(p.Duty.Batches) > 0 {
		at := daytime(p.Duty.Batches[0].Last.Add(countsAfter), zone)
		add(TaskCount, DayOf(at, zone), at)
	}
	return plan
}

// daytime is the moment itself, or the next morning where it falls into the
// quiet hours; contract, promise 5.
func daytime(at time.Time, zone *time.Location) time.Time {
	local := at.In(zone)
	minute := local.Hour()*60 + local.Minute()
	day := DayOf(at, zone)
	switch {
	case minute >= dayEnds:
		return (day + 1).On(dayBegins, zone)
	case minute < dayBegins:
		return day.On(dayBegins, zone)
	}
	return at
}

// byDay holds a letter back until its reader's morning, when their place is known.
func (l *Letter) byDay(now time.Time, to Person) {
	if at := daytime(now, to.Zone()); to.ZoneName != "" && at.After(now) {
		l.After = at
	}
}

// Habit is how a person answers reminders: by the hour they came, how many were
// answered and how long that took.
type Habit struct {
	Hours []HourTally `json:",omitempty"` // in order of the hour
	Asked time.Time   `json:",omitzero"`  // the last one, not yet answered
	At    int         `json:",omitempty"` // its hour
}

// HourTally counts the reminders of one hour of the day.
type HourTally struct{ Hour, Asked, Answered, Minutes int }

// asked counts a reminder that wanted an answer. Two of one moment are one letter.
func (h *Habit) asked(ev Reminded, at time.Time, minute int) {
	if ev.Tell || slices.Contains(duties, ev.Task) || h.Asked.Equal(at) {
		return
	}
	h.Asked, h.At = at, minute/60
	h.tally(func(t *HourTally) { t.Asked++ })
}

// answered counts the first word after a reminder.
func (h *Habit) answered(at time.Time) {
	if h.Asked.IsZero() {
		return
	}
	took := int(at.Sub(h.Asked).Minutes())
	h.Asked = time.Time{}
	h.tally(func(t *HourTally) { t.Answered++; t.Minutes += took })
}

func (h *Habit) tally(count func(*HourTally)) {
	i, found := slices.BinarySearchFunc(h.Hours, h.At, func(t HourTally, hour int) int { return t.Hour - hour })
	if !found {
		h.Hours = slices.Insert(h.Hours, i, HourTally{Hour: h.At})
	}
	count(&h.Hours[i])
}
