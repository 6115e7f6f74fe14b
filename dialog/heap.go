package dialog

import (
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
	Early    Day        `json:",omitempty"` // found cold, dark and crumbly before its time

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
	Heat      FirstHeat `json:",omitzero"`  // when the first round grew hot, as far as it is known
	Gone      bool      `json:",omitempty"` // another person goes on with it
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

// unbegun says whether a hot heap is still being planned and gathered for.
func (h Heap) unbegun() bool { return h.Path == HotHeap && h.Built == 0 && !h.Base }

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

// Volume in cubic metres as last told; 0 when it is not known.
func (h Heap) Volume() float64 {
	if h.Size[0] <= 0 {
		return 0
	}
	return h.Size[0] * h.Size[1] * h.Size[2]
}
