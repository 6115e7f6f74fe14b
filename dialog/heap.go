package dialog

import (
	"maps"
	"slices"
	"time"
)

// Stage is where a heap stands; the words are the contract's.
type Stage string

const (
	NoStage   Stage = "none"
	Planning  Stage = "planning"
	Gathering Stage = "gathering"
	Ferment   Stage = "ferment"
	Building  Stage = "building"
	Heating   Stage = "heating"
	Turned    Stage = "turned"
	Resting   Stage = "resting"
	Opening   Stage = "opening"
	Cooling   Stage = "cooling"
	Worms     Stage = "worms"
	Harvest   Stage = "harvest"
	Done      Stage = "done"
	ColdDung  Stage = "cold_dung"
	Abandoned Stage = "abandoned"
)

// Path is one of the three ways to material that worms can live in.
type Path string

const (
	HotHeap   Path = "hot_heap"
	OldManure Path = "old_manure" // farmyard manure that has lost its heat
	ColdPath  Path = "cold_dung"  // dung left three to six months
)

// Starter is what is sprinkled on each layer.
type Starter string

const (
	Slurry Starter = "slurry"
	Curd   Starter = "curd"
	Bottle Starter = "bottle" // fruit and jaggery, 20-25 days
)

// Heap is one heap as its diary tells it. The zero Heap is not begun.
// Everything that belongs to one round of heating starts anew with a redo.
type Heap struct {
	ID    HeapID
	Path  Path  `json:",omitempty"`
	Stage Stage `json:",omitempty"`
	Begun Day   `json:",omitempty"`
	Round int   `json:",omitempty"` // 1 from the first building; a redo adds one

	Have       []Gathered `json:",omitempty"`
	GatherDone bool       `json:",omitempty"`
	Wished     Day        `json:",omitempty"` // the wished building day
	Starter    Starter    `json:",omitempty"`
	Bottle     Ferments   `json:",omitzero"`
	Site       bool       `json:",omitempty"`
	Prepared   bool       `json:",omitempty"`
	Base       bool       `json:",omitempty"`
	Layers     int        `json:",omitempty"`

	Built    Day        `json:",omitempty"` // day 0 of this round
	BuiltAt  time.Time  `json:",omitzero"`
	High     bool       `json:",omitempty"` // built in cold highlands: first heat a day later
	Pause    Day        `json:",omitempty"` // the plan rests until then
	First    Day        `json:",omitempty"` // day 0 of the first round
	Size     [3]float64 `json:",omitzero"`  // metres, as last told
	SizeKept float64    `json:",omitempty"` // share of the volume after the turn; 0 = not asked, -1 = not known
	Reads    []Reading  `json:",omitempty"` // the stick, this round
	ColdRuns int        `json:",omitempty"` // rounds that ended cold
	Moisture string     `json:",omitempty"` // last squeeze
	MoistDay Day        `json:",omitempty"`
	Smell    string     `json:",omitempty"`
	SmellDay Day        `json:",omitempty"`
	Redo     bool       `json:",omitempty"` // rebuilding was ordered and not yet told
	Turns    []Day      `json:",omitempty"` // this round
	Early    bool       `json:",omitempty"` // cold, dark and crumbly before its time

	Opened   Day     `json:",omitempty"`
	Cool     bool    `json:",omitempty"`
	Sieved   Day     `json:",omitempty"`
	PassedKg float64 `json:",omitempty"`
	Trial    Day     `json:",omitempty"` // worms put in for a day
	TrialOK  bool    `json:",omitempty"`
	WormsKg  float64 `json:",omitempty"`
	Fed      Day     `json:",omitempty"`
	FedLast  Day     `json:",omitempty"`
	Bed      string  `json:",omitempty"` // last word on the worms
	BedDay   Day     `json:",omitempty"`
	Ripe     Day     `json:",omitempty"`
	Taken    Day     `json:",omitempty"`
	YieldKg  float64 `json:",omitempty"`
	Use      string  `json:",omitempty"`
	Crop     string  `json:",omitempty"`
	Stars    int     `json:",omitempty"`
	Over     Day     `json:",omitempty"`

	Peril     string    `json:",omitempty"` // a danger not yet seen to
	PerilAt   time.Time `json:",omitzero"`
	Seen      []Sight   `json:",omitempty"` // flies, ants …, this round, newest last
	Last      time.Time `json:",omitzero"`  // when anything was last noted of it
	LastDay   Day       `json:",omitempty"` // latest day anything happened
	Acts      Acts      `json:",omitempty"` // what became of reminders
	Odd       int       `json:",omitempty"` // lines that fitted nothing
	Complete  bool      `json:",omitempty"` // reached its end, not given up
	Check     string    `json:",omitempty"` // the first stick of the first round from day 3 on
	HotIn     int       `json:",omitempty"` // the first round in which it was hot
	Left      Stage     `json:",omitempty"` // where it stood when it was given up
	FirstOpen Day       `json:",omitempty"` // first opened, whatever came after
	Advice    string    `json:",omitempty"` // what an officer advised on the spot
}

// Ferments is the starter bottle of a heap.
type Ferments struct {
	Mixed   Day    `json:",omitempty"`
	Shaken  Day    `json:",omitempty"`
	Shakes  int    `json:",omitempty"`
	State   string `json:",omitempty"` // bloated, flat, burst, leaking
	Felt    Day    `json:",omitempty"`
	Gas     bool   `json:",omitempty"` // gas was felt once
	Ready   Day    `json:",omitempty"`
	Spoiled bool   `json:",omitempty"`
}

// Working says whether a bottle stands that still wants its mornings.
func (b Ferments) Working() bool { return b.Mixed != 0 && b.Ready == 0 && !b.Spoiled }

// Reading is one report of the stick or a thermometer.
type Reading struct {
	Day     Day
	At      time.Time
	Warmth  string  `json:",omitempty"`
	Celsius float64 `json:",omitempty"`
	Round   int
}

// Sight is something seen on the heap.
type Sight struct {
	Day  Day
	What string
}

// Acts remembers, for each task, what its reminders came to.
type Acts map[Task]Act

// Act is the record of one task of a heap in its present round.
type Act struct {
	Sent    int       `json:",omitempty"` // reminders without an answer
	Last    Day       `json:",omitempty"` // date of the last reminder or missed one
	Until   Day       `json:",omitempty"` // snoozed: not before that day
	Skipped bool      `json:",omitempty"`
	Asked   time.Time `json:",omitzero"` // when the last reminder went out
}

// Active says whether the heap still wants something from the farmer.
func (h Heap) Active() bool { return h.ID != 0 && h.Stage != Done && h.Stage != Abandoned }

// Read is the last stick reading of this round, if any.
func (h Heap) Read() (Reading, bool) {
	if len(h.Reads) == 0 {
		return Reading{}, false
	}
	return h.Reads[len(h.Reads)-1], true
}

// LastTurn is the day of the last turn of this round, 0 if none.
func (h Heap) LastTurn() Day {
	if len(h.Turns) == 0 {
		return 0
	}
	return h.Turns[len(h.Turns)-1]
}

// After is the heap with one more line of its diary; the heap it is called on
// stays as it was. It is total: a line that does not fit is counted in Odd and
// changes nothing else.
func (h Heap) After(e Entry) Heap {
	h = h.own()
	h.take(e)
	return h
}

// own copies what take may write to.
func (h Heap) own() Heap {
	h.Have, h.Reads, h.Turns, h.Seen = slices.Clone(h.Have), slices.Clone(h.Reads), slices.Clone(h.Turns), slices.Clone(h.Seen)
	h.Acts = maps.Clone(h.Acts)
	return h
}

// take folds one line into a heap that nobody else holds. This is the only
// place where a stage changes.
func (h *Heap) take(e Entry) {
	if !h.noteReminder(e) {
		h.Last = later(h.Last, e.Noted)
		h.LastDay = max(h.LastDay, e.Day)
		h.takeFact(e)
	}
	h.Stage = h.stage()
}

// noteReminder takes the lines that the clock writes, which tell nothing about
// the heap itself.
func (h *Heap) noteReminder(e Entry) bool {
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
func (h *Heap) takeFact(e Entry) {
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

func (h *Heap) takeBottle(e Entry) {
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

func (h *Heap) takeHeat(e Entry) {
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
			h.SizeKept = shareKept("third")
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
		h.Early = true
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

// Volume in cubic metres as last told; 0 when it is not known.
func (h Heap) Volume() float64 {
	if h.Size[0] <= 0 {
		return 0
	}
	return h.Size[0] * h.Size[1] * h.Size[2]
}

func (h *Heap) startRound() {
	h.Redo, h.Reads, h.Turns, h.Seen, h.SizeKept = false, nil, nil, nil, 0
	h.Moisture, h.Smell, h.Early = "", "", false
	h.Opened, h.Cool, h.Layers = 0, false, max(h.Layers, 1)
	h.clearAct(roundActs...)
	h.clearAct(TaskSite, TaskGather, TaskShake, TaskGas, TaskBottleSmell)
}

func (h *Heap) takeWorms(e Entry) {
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

// stage says where the heap stands, from what is known of it.
func (h *Heap) stage() Stage {
	switch {
	case h.Over != 0 && h.Complete:
		return Done
	case h.Over != 0:
		return Abandoned
	case h.Ripe != 0 || h.Taken != 0:
		return Harvest
	case h.Fed != 0:
		return Worms
	case h.Opened != 0 || h.Sieved != 0 || h.Cool:
		return Cooling
	case h.Path == ColdPath && !h.Begun.none():
		return ColdDung
	case h.Path == OldManure:
		return Planning
	case h.Redo || h.Built == 0 && (h.Base || h.Layers > 0):
		return Building
	case h.Built != 0:
		return h.heatStage()
	case h.Bottle.Working() && h.GatherDone:
		return Ferment
	case len(h.Have) > 0 || h.GatherDone:
		return Gathering
	case h.Bottle.Working():
		return Ferment
	}
	return Planning
}

func (d Day) none() bool { return d == 0 }

// restFrom: after the second turn, or when it is given up, the heap rests.
func (h *Heap) heatStage() Stage {
	if h.readyToOpen() {
		return Opening
	}
	switch {
	case h.Early || len(h.Turns) >= 2 || len(h.Turns) == 1 && h.Acts[TaskTurn].Skipped:
		return Resting
	case len(h.Turns) == 1:
		return Turned
	}
	return Heating
}

// openFrom is the first day on which a cold core means "finished", not
// "failed": day 25 after building (common practice, no source).
const openFrom = 25

// readyToOpen: the stick was cold at the end of the rest, or the heap finished
// early and was felt cold.
func (h *Heap) readyToOpen() bool {
	r, ok := h.Read()
	return ok && r.Warmth == "cold" && h.Built != 0 && (int(r.Day-h.Built) >= openFrom || h.Early && r.Day-h.LastTurn() >= 1)
}
