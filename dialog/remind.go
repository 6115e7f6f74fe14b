package dialog

import (
	"cmp"
	"slices"

	"warmstick/dialog/phrases"
)

// Reminders: whatever is due for a person is joined into one letter with one
// question; the others are named in it. What the farmer has told meanwhile is
// not due any more.

// urgency orders tasks by what a day's delay costs; earlier asks first.
var urgency = []Task{
	TaskRebuild, TaskStick, TaskTurn, TaskOpen, TaskSpread, TaskGas, TaskBottleSmell, TaskTrial, TaskHarvest,
	TaskBuild, TaskPrepare, TaskFresh, TaskSite, TaskMix, TaskCool, TaskSieve, TaskTrialSet, TaskFeed, TaskRipe,
	TaskCare, TaskRest, TaskFinish, TaskPile, TaskManure, TaskGather, TaskShake,
}

// remindsBy is the question that a task's reminder opens.
func remindsBy(h Heap, t Task) string {
	switch t {
	case TaskGather:
		switch {
		case len(h.Have) == 0 && !h.GatherDone:
			return "have"
		case !h.GatherDone:
			return "more"
		case h.Wished == 0:
			return "date"
		}
		return "starter"
	case TaskFresh:
		return "fresh"
	case TaskMix:
		return "mixed"
	case TaskPrepare:
		return "prepared"
	case TaskBuild:
		if h.Stage == Building {
			return "layer"
		}
		return "build"
	case TaskRebuild:
		switch {
		case h.Redo:
			return "rebuilt"
		case h.Round >= mostRounds:
			return "third"
		}
		return "redo"
	case TaskCare:
		return "worms"
	case TaskFinish:
		switch {
		case h.YieldKg == 0:
			return "yield"
		case h.Use == "":
			return "sell"
		case h.Use != "sale" && h.Crop == "":
			return "crop"
		}
		return "rating"
	case TaskTrialSet:
		if h.PassedKg == 0 {
			return "passed"
		}
	case TaskFeed:
		if h.WormsKg == 0 {
			return "worms_kg"
		}
	case TaskManure:
		return "manure_smell"
	}
	return string(t)
}

// remind says what is due. Lines that are not in the plan any more are left
// out; at night, or a day late before the farmer's hour, they are marked missed.
func (x *exchange) remind(due []Due) {
	x.kind = Remind
	if due = x.onDuty(due); len(due) == 0 {
		return
	}
	plan := Plan(x.s)
	due = slices.DeleteFunc(slices.Clone(due), func(d Due) bool { return !slices.Contains(plan, d) || d.At.After(x.now) })
	slices.SortStableFunc(due, func(a, b Due) int {
		return cmp.Or(cmp.Compare(slices.Index(urgency, a.Task), slices.Index(urgency, b.Task)), cmp.Compare(a.Heap, b.Heap))
	})
	local := x.now.In(x.s.Person.Zone())
	minute := local.Hour()*60 + local.Minute()
	night := minute < dayBegins || minute >= dayEnds
	var now []Due
	for _, d := range due {
		switch {
		case night && minute >= dayEnds:
			x.clock(d.Heap, Missed{d.Task, x.today, "night"})
		case d.Day < x.today && minute < x.s.Person.Hour():
			x.clock(d.Heap, Missed{d.Task, x.today - 1, "off"})
		case night:
			x.clock(d.Heap, Missed{d.Task, x.today, "night"})
		default:
			if d.Day < x.today {
				x.clock(d.Heap, Missed{d.Task, d.Day, "off"})
			}
			now = append(now, d)
		}
	}
	if len(now) == 0 {
		return
	}
	x.sayDue(now)
}

// sayDue writes the one letter of this morning.
func (x *exchange) sayDue(due []Due) {
	first := due[0]
	h := x.Heap(first.Heap)
	if x.s.Person.Hidden != 0 {
		for _, d := range due {
			x.clock(d.Heap, Reminded{Task: d.Task, Day: x.today})
		}
		x.say("remind_hidden", nil)
		return
	}
	x.heap = h.ID
	tell := first.Task == TaskShake && !asksShake(h, x.today)
	args := x.which(h, phrases.Args{"N": int(x.today - h.Built), "Layer": h.Layers + 1})
	if h.Acts[first.Task].Sent == len(patience) && first.Task != TaskShake {
		x.say("last_ask", nil)
	}
	for _, d := range due[1:min(len(due), 3)] {
		if d.Task == TaskPrepare && first.Task == TaskBuild {
			continue // too late to ask for, and the building asks it anyway
		}
		x.say("also_due", x.which(x.Heap(d.Heap), phrases.Args{"Act": act(d.Task)}))
	}
	for _, d := range due {
		x.clock(d.Heap, Reminded{Task: d.Task, Day: x.today, Tell: d.Task == TaskShake && !asksShake(x.Heap(d.Heap), x.today)})
	}
	x.heap = h.ID
	if tell {
		x.say("remind_shake_tell", args, "pressure_warning")
		return
	}
	q := Question{ID: remindsBy(h, first.Task), Heap: h.ID, Task: first.Task}
	x.put(q)
	if key := "remind_" + q.ID; phrases.Has(phrases.Fallback, key) && x.asking(q).key == "ask_"+q.ID {
		x.asked = &piece{key: key, args: args, advice: reminderAdvice(first.Task)}
	}
	if x.asked != nil && first.Task == TaskStick {
		x.asked.pic = x.picture(Picture{Kind: "stick"})
	}
}

func (x *exchange) picture(p Picture) *Picture {
	if x.s.Person.NoPicture {
		return nil
	}
	return &p
}

// reminderAdvice is the caution class that a reminder's words carry.
func reminderAdvice(t Task) []string {
	switch t {
	case TaskShake, TaskGas, TaskBottleSmell:
		return []string{"pressure_warning"}
	case TaskTrialSet, TaskTrial:
		return []string{"worm_trial"}
	}
	return nil
}

// asksShake: an answer is wanted on the first three mornings, then on every
// third; the other mornings only say it (common practice, no source).
func asksShake(h Heap, today Day) bool {
	n := today - h.Bottle.Mixed
	return n <= 3 || n%3 == 0
}

// deedQuestion is the question that a bare "done" answers after a deed was told as in hand.
var deedQuestion = map[string]string{"did=shook": "shake", "did=turned": "turn", "did=sieved": "sieve", "did=fed": "feed", "did=harvested": "harvest"}

// underWay waits for a farmer who is at it, whatever was asked: the question for the deed
// stays open, unsaid. Without a word the plan asks again tomorrow.
func (x *exchange) underWay(q Question, deed string) {
	if q.Task != "" {
		x.note(q.Heap, Snoozed{q.Task, x.today + 1})
	}
	x.say("under_way", nil)
	if id, ok := deedQuestion[deed]; ok && id != q.ID && suits(x.Heap(q.Heap), deed) {
		x.ask(id, q.Heap)
	} else {
		x.put(q)
	}
	x.fresh = false
}

// putOff snoozes the open question's act, or skips it where it may be skipped.
func (x *exchange) putOff(q Question, when string, ahead Day) {
	if q.Heap == 0 || q.Task == "" {
		x.say("later_fine", nil)
		if len(x.s.Active()) > 0 {
			x.tellNext()
		}
		return
	}
	if when == "skip" {
		switch q.Task {
		case TaskTurn:
			if len(x.Heap(q.Heap).Turns) == 0 {
				x.note(q.Heap, Snoozed{q.Task, x.today + 1})
				x.say("turn_needed", nil)
				return
			}
			x.note(q.Heap, Skipped{q.Task})
			x.say("skipped", nil)
			x.tellNext()
			return
		case TaskRest, TaskCare, TaskGas, TaskFresh, TaskShake, TaskFinish:
			x.note(q.Heap, Snoozed{q.Task, x.today + restEvery})
			x.say("skipped", nil)
			x.tellNext()
			return
		}
	}
	if when == "later" && ahead > x.today+1 && ahead < x.today+60 {
		x.note(q.Heap, Snoozed{q.Task, ahead})
		x.say("asked_then", phrases.Args{"Day": x.dayWord(ahead)})
		return
	}
	x.note(q.Heap, Snoozed{q.Task, x.today + 1})
	x.say("asked_tomorrow", nil)
	x.tellNext()
}
