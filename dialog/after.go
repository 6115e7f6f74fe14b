package dialog

import (
	"maps"
	"slices"
	"time"
)

// After: how one line of the diary changes a heap. Every change of a stage is here.

// own copies what take may write to.
func (h Heap) own() Heap {
	h.Have, h.Reads, h.Turns, h.Seen = slices.Clone(h.Have), slices.Clone(h.Reads), slices.Clone(h.Turns), slices.Clone(h.Seen)
	h.Acts = maps.Clone(h.Acts)
	return h
}

// take folds one line into a heap that nobody else holds. This is the only
// place where a stage changes.
func (h *Heap) take(e *Entry) {
	if !h.noteReminder(e) {
		h.Last = later(h.Last, e.Noted)
		h.LastDay = max(h.LastDay, e.Day)
		h.takeFact(e)
	}
	h.Stage = h.stage()
}

// noteReminder takes the lines that the clock writes, which tell nothing about
// the heap itself.
func (h *Heap) noteReminder(e *Entry) bool {
	switch ev := e.Event.(type) {
	case Reminded:
		a := h.Acts[ev.Task]
		a.Last, a.Asked = max(a.Last, ev.Day), e.Noted
		if !ev.Tell {
			a.Sent++
		}
		h.setAct(ev.Task, a)
	case Missed:
		a := h.Acts[ev.Task]
		a.Last = max(a.Last, ev.Day)
		h.setAct(ev.Task, a)
	default:
		return false
	}
	return true
}

func (h *Heap) setAct(t Task, a Act) {
	if h.Acts == nil {
		h.Acts = Acts{}
	}
	h.Acts[t] = a
}

func (h *Heap) clearAct(tasks ...Task) {
	for _, t := range tasks {
		delete(h.Acts, t)
	}
}

func later(a, b time.Time) time.Time {
	if a.After(b) {
		return a
	}
	return b
}

// takeFact folds one fact into the heap.
func (h *Heap) takeFact(e *Entry) {
	switch ev := e.Event.(type) {
	case Begun:
		h.Path, h.Begun = ev.Path, e.Day
	case PathChosen:
		h.Path = ev.Path
		if ev.Path == ColdPath {
			h.Redo, h.Acts = false, nil
			if h.Built != 0 {
				h.Built, h.BuiltAt = e.Day, e.At // its months begin now
			}
		}
	case Gathered:
		h.Have = append(h.Have, ev)
	case GatherDone:
		h.GatherDone = true
	case DateWished:
		h.Wished = ev.Day
	case StarterChosen:
		h.Starter = ev.Starter
	case SiteFound:
		h.Site = true
		h.clearAct(TaskSite)
	case Prepared:
		h.Prepared = true
	case BaseLaid:
		h.Base = true
	case LayerLaid:
		h.Layers++
		h.Base, h.Prepared = true, true
	case BottleMixed, BottleShaken, BottleFelt, BottleReady, BottleSpoiled:
		h.takeBottle(e)
	case Built, RedoOrdered, StickRead, Squeezed, Smelt, Saw, TurnedOver, Sank, Measured, Watered, Covered, FinishedEarly:
		h.takeHeat(e)
	case Opened, Cooled, Sieved, Passed, TrialSet, TrialDone, WormsHad, Fed, WormsSeen, Ripe, HarvestTaken, Yielded, UseChosen, Rated:
		h.takeWorms(e)
	case Finished:
		h.Over, h.Complete = e.Day, true
	case GivenUp:
		h.Over, h.Left = e.Day, h.Stage
	case HandedOver:
		h.Over, h.Left, h.Gone = e.Day, h.Stage, true
	case Received:
	case Advised:
		h.Advice = ev.What
	case Peril:
		h.Peril, h.PerilAt = ev.What, e.Noted
	case PerilSeen:
		h.Peril = ""
	case Paused:
		h.Pause = ev.Until
	case Snoozed:
		a := h.Acts[ev.Task]
		a.Sent, a.Until = 0, ev.Day
		h.setAct(ev.Task, a)
	case Skipped:
		a := h.Acts[ev.Task]
		a.Sent, a.Skipped = 0, true
		h.setAct(ev.Task, a)
	default:
		h.Odd++
	}
}

func (h *Heap) takeBottle(e *Entry) {
	b := &h.Bottle
	switch ev := e.Event.(type) {
	case BottleMixed:
		*b = Ferments{Mixed: e.Day}
		h.Starter = Bottle
	case BottleShaken:
		b.Shaken = max(b.Shaken, e.Day)
		b.Shakes++
		h.clearAct(TaskShake)
	case BottleFelt:
		b.State, b.Felt = ev.State, e.Day
		b.Gas = b.Gas || ev.State == "bloated"
		h.clearAct(TaskGas)
		if ev.State == "burst" && b.Working() {
			b.Spoiled, h.Starter = true, Slurry
		}
	case BottleReady:
		b.Ready = e.Day
		h.clearAct(TaskShake, TaskGas, TaskBottleSmell)
	case BottleSpoiled:
		b.Spoiled = true
		h.Starter = Slurry
		h.clearAct(TaskShake, TaskGas, TaskBottleSmell)
	}
}

// roundActs are the tasks whose reminders die with a round.
var roundActs = []Task{TaskStick, TaskTurn, TaskRest, TaskOpen, TaskSpread, TaskCool, TaskRebuild, TaskBuild}

func (h *Heap) takeHeat(e *Entry) {
	switch ev := e.Event.(type) {
	case Built:
		if h.Round == 0 {
			h.First = e.Day
		}
		h.Round++
		h.Built, h.BuiltAt = e.Day, e.At
		h.startRound()
		if h.Bottle.Working() {
			h.Bottle.Ready = e.Day // what it holds has gone on the heap
		}
	case RedoOrdered:
		h.ColdRuns++
		h.Redo, h.Layers = true, 0
		h.clearAct(roundActs...)
	case StickRead:
		h.Reads = append(h.Reads, Reading{Day: e.Day, At: e.At, Warmth: ev.Warmth, Celsius: ev.Celsius, Round: h.Round})
		if n := len(h.Reads); n > 1 && h.Reads[n-1].At.Before(h.Reads[n-2].At) { // told late
			slices.SortStableFunc(h.Reads, func(a, b Reading) int { return a.At.Compare(b.At) })
		}
		h.clearAct(TaskStick, TaskOpen)
		if h.Check == "" && h.Round == 1 && h.Built != 0 && e.Day-h.Built >= h.checkFrom() {
			h.Check = ev.Warmth
		}
		if h.Round == 1 && h.Opened == 0 {
			h.Heat = h.Heat.felt(int(e.Day-h.Built), ev.Warmth)
		}
		if h.HotIn == 0 && ev.Warmth == "hot" && h.Round > 0 && h.Opened == 0 {
			h.HotIn = h.Round
		}
	case Squeezed:
		h.Moisture, h.MoistDay = ev.Moisture, e.Day
		h.clearAct(TaskRest)
	case Smelt:
		h.Smell, h.SmellDay = ev.Smell, e.Day
		h.clearAct(TaskCool)
	case Saw:
		h.Seen = append(h.Seen, Sight{e.Day, ev.Sight})
		if ev.Sight == "sunk" && len(h.Turns) > 0 && h.SizeKept == 0 {
			h.SizeKept = shareKept("some")
		}
	case TurnedOver:
		if h.Built == 0 {
			h.Odd++
			return
		}
		h.Turns = append(h.Turns, e.Day)
		slices.Sort(h.Turns)
		h.clearAct(TaskTurn, TaskStick, TaskRest)
	case Sank:
		h.SizeKept = shareKept(ev.How)
	case Measured:
		if len(h.Turns) > 0 {
			h.SizeKept = -1
			if old := h.Volume(); old > 0 && ev.Length > 0 {
				h.SizeKept = ev.Length * ev.Width * ev.Height / old
			}
		}
		h.Size = [3]float64{ev.Length, ev.Width, ev.Height}
	case FinishedEarly:
		h.Early = e.Day
		h.clearAct(TaskStick, TaskTurn, TaskRest)
	}
}

// shareKept: a heap of 6 x 4 x 4 ft that sank as it should is restacked as
// about 4 x 4 x 4 ft, two thirds (common practice, no source).
func shareKept(how string) float64 {
	switch how {
	case "third":
		return 2.0 / 3
	case "little":
		return 0.85
	case "not":
		return 1
	}
	return -1
}

func (h *Heap) startRound() {
	h.Redo, h.Reads, h.Turns, h.Seen, h.SizeKept = false, nil, nil, nil, 0
	h.Moisture, h.Smell, h.Early = "", "", 0
	h.Opened, h.Cool, h.Layers = 0, false, max(h.Layers, 1)
	h.clearAct(roundActs...)
	h.clearAct(TaskSite, TaskGather, TaskShake, TaskGas, TaskBottleSmell)
}

func (h *Heap) takeWorms(e *Entry) {
	switch ev := e.Event.(type) {
	case Opened:
		h.Opened, h.Cool = e.Day, false
		if h.FirstOpen == 0 {
			h.FirstOpen = e.Day
		}
		h.clearAct(TaskSpread, TaskOpen)
	case Cooled:
		h.Cool = true
		if h.Opened == 0 {
			h.Opened = e.Day
		}
		h.clearAct(TaskCool)
	case Sieved:
		h.Sieved, h.Cool = e.Day, true
		h.clearAct(TaskSieve)
	case Passed:
		h.PassedKg = ev.Kg
	case TrialSet:
		h.Trial, h.TrialOK = e.Day, false
		h.clearAct(TaskTrial)
	case TrialDone:
		h.TrialOK = ev.Stayed
		if !ev.Stayed {
			h.Trial = 0
		}
		h.clearAct(TaskTrial, TaskTrialSet)
	case WormsHad:
		h.WormsKg = ev.Kg
	case Fed:
		if h.Fed == 0 {
			h.Fed = e.Day
			h.TrialOK = true
		}
		h.FedLast = max(h.FedLast, e.Day)
		h.clearAct(TaskFeed, TaskCare)
	case WormsSeen:
		h.Bed, h.BedDay = ev.Sight, e.Day
		h.clearAct(TaskCare)
	case Ripe:
		h.Ripe = e.Day
		h.clearAct(TaskRipe, TaskCare)
	case HarvestTaken:
		h.Taken = e.Day
		h.clearAct(TaskHarvest)
	case Yielded:
		h.YieldKg = ev.Kg
	case UseChosen:
		h.Use = ev.Use
		if ev.Crop != "" {
			h.Crop = ev.Crop
		}
	case Rated:
		h.Stars = ev.Stars
	}
}
