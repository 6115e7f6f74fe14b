package dialog

import (
	"encoding/json"
	"fmt"
	"reflect"
	"time"
)

// Event is one fact of a diary. The set is closed: every event is listed in
// events below, under the name it is stored by. Fields may be added with a
// useful zero value; names and meanings never change.
type Event interface{ event() }

// About the person.
type (
	// Consented: the person agreed to this version of what is kept.
	Consented struct{ Version string }
	// LanguageSet holds a language code: en, sw, hi, hi-Latn, es or fr.
	LanguageSet struct{ Lang string }
	Named       struct{ Name string }
	// Placed: an area of the list of places (or none), its IANA zone, and the town or
	// village that was named.
	Placed struct {
		Area, Zone string
		Town       string `json:",omitempty"`
	}
	HourSet struct{ Minute int } // reminders come at this minute of the day
	// UnitsSet: "feet" or "metres".
	UnitsSet    struct{ Units string }
	PicturesSet struct{ Off bool }
	// NumeralsSet: the digits that the person writes and reads.
	NumeralsSet struct{ Nagari bool }
	// MeasureSet: one Unit of Material (or of anything) weighs Kg here.
	MeasureSet struct {
		Unit, Material string
		Kg             float64
	}
	// Helps: this phone speaks for that person's heaps; 0 ends it. HelperJoined
	// and HelperLeft are the owner's side of it.
	Helps        struct{ Person PersonID }
	HelperJoined struct{ Person PersonID }
	HelperLeft   struct{ Person PersonID }
	// Hidden: heaps are shown only after a word, of which a print is kept; 0 ends it.
	Hidden    struct{ Print uint64 }
	StopAsked struct{}
	CameBack  struct{}
	// Heard: the person wrote while reminders were waiting for an answer.
	Heard  struct{}
	BarSet struct{ On bool } // the phone refuses our letters
	// Appointed: the operator made this person an officer.
	Appointed struct{}
	Joined    struct{ Group GroupID }
	GroupLeft struct{ Group GroupID }
	// GroupMade, RoleGiven, RoleEnded: who looks after which group.
	GroupMade struct {
		Group GroupID
		Name  string
	}
	RoleGiven struct {
		Group GroupID
		Role  Role
	}
	RoleEnded  struct{ Group GroupID }
	InviteMade struct {
		Code    string
		Group   GroupID
		Role    Role
		Heap    HeapID `json:",omitempty"` // handed over with the code
		Expires time.Time
	}
	InviteEnded struct{ Code string }
	// OfficerAsked: the farmer asked for a person.
	OfficerAsked struct{ Text string }
	// OfficerWrote: an officer's or lead farmer's words to the farmer.
	OfficerWrote struct{ Text string }
	// Visited: an officer was there, which clears the line from the board.
	Visited struct{}
	// PutOff: an officer does not want to see this line before that day.
	PutOff struct{ Until Day }
	// Entered: a farmer without a phone, written in by an officer or lead farmer
	// who answers for them.
	Entered struct{}
	// LeftBehind: the numbers of a farmer who left, without a name.
	LeftBehind struct{}
	// AlertGot: this officer was told of a danger at a farmer's. From is not
	// before Noted; it is later when the word waits for the morning.
	AlertGot struct {
		Farmer PersonID
		Heap   HeapID `json:",omitempty"`
		What   string
		From   time.Time
	}
	// AlertSeen: an officer has it in hand; AlertPassed: another was told too.
	AlertSeen   struct{ Farmer PersonID }
	AlertPassed struct{ Farmer, To PersonID }
	// Announced: words to many, as letters of one batch. BatchStopped: those of
	// them that had not gone were taken back. Counted: the officer knows how many went.
	Announced struct {
		Batch string
		N     int
		Last  time.Time // when the last of them may go
	}
	BatchStopped struct {
		Batch string
		N     int
	}
	Counted struct{ Batch string }
	// NamesTaken: a paper with names was asked for.
	NamesTaken struct{ Group GroupID }
	// Struck takes back every line told together under that number.
	Struck struct{ Told int }
)

// About a heap.
type (
	// Begun: a heap, or a lot of dung or manure, is being planned.
	Begun      struct{ Path Path }
	PathChosen struct{ Path Path }
	// Gathered: an amount in a farmer's own measure is at hand.
	Gathered struct {
		N              float64
		Unit, Material string
	}
	GatherDone    struct{}
	DateWished    struct{ Day Day }
	StarterChosen struct{ Starter Starter }
	BottleMixed   struct{}
	BottleShaken  struct{}
	// BottleFelt: bloated, flat, burst or leaking.
	BottleFelt    struct{ State string }
	BottleReady   struct{}
	BottleSpoiled struct{}
	SiteFound     struct{}
	Prepared      struct{}
	BaseLaid      struct{}
	LayerLaid     struct{}
	// Squeezed: a handful is dry, right or wet.
	Squeezed struct{ Moisture string }
	// Built: the heap stands, made or made anew.
	Built struct{}
	// StickRead: hot, warm or cold; Celsius when a thermometer told it.
	StickRead struct {
		Warmth  string  `json:",omitempty"`
		Celsius float64 `json:",omitempty"`
	}
	Smelt       struct{ Smell string }
	Saw         struct{ Sight string }
	RedoOrdered struct{ Cause string }
	TurnedOver  struct{}
	// Sank: how far the heap went down since it was built: "third", "little", "not" or "some" (nobody measured it).
	Sank struct{ How string }
	// Measured: the sides in metres; all below 0 = the farmer cannot say.
	Measured      struct{ Length, Width, Height float64 }
	Watered       struct{}
	Covered       struct{}
	FinishedEarly struct{}
	Opened        struct{}
	Cooled        struct{}
	Sieved        struct{}
	// Passed: how much went through the coarse sieve.
	Passed    struct{ Kg float64 }
	TrialSet  struct{}
	TrialDone struct{ Stayed bool }
	WormsHad  struct{ Kg float64 }
	Fed       struct{}
	// WormsSeen: worms_well, worms_escaping, worms_dead.
	WormsSeen    struct{ Sight string }
	Ripe         struct{} // grainy like tea leaves all through
	HarvestTaken struct{}
	Yielded      struct{ Kg float64 }
	// UseChosen: field, sale or both, and a crop code of compost.Rate.
	UseChosen struct{ Use, Crop string }
	Rated     struct{ Stars int }
	Finished  struct{}
	GivenUp   struct{}
	// HandedOver: another person goes on with the heap. Received is their side of
	// it, after a copy of the heap's diary.
	HandedOver struct{ To PersonID }
	Received   struct {
		From PersonID
		Heap HeapID
	}
	// Advised: what an officer advised on the spot: water, dry_stuff, rich_stuff,
	// again or well.
	Advised struct{ What string }
	// Peril: a danger was reported (harm=…, smoke, fire, burst …).
	Peril struct{ What string }
	// PerilSeen: an officer has seen it, or the farmer says it is over.
	PerilSeen struct{}
	// Paused: rain, a feast or planting time; the plan rests until that day.
	Paused struct{ Until Day }
	// Snoozed: not before that day. Skipped: not at all in this round.
	Snoozed struct {
		Task Task
		Day  Day
	}
	Skipped struct{ Task Task }
	// Reminded and Missed: what became of a due line.
	Reminded struct {
		Task Task
		Day  Day
		Tell bool `json:",omitempty"` // said without asking for an answer
	}
	Missed struct {
		Task Task
		Day  Day
		Why  string
	}
)

// events is the closed set, by stored name.
var events = func() map[string]reflect.Type {
	set := map[string]reflect.Type{}
	for _, e := range []Event{
		Consented{}, LanguageSet{}, Named{}, Placed{}, HourSet{}, UnitsSet{}, PicturesSet{}, NumeralsSet{},
		MeasureSet{}, Helps{}, HelperJoined{}, HelperLeft{}, Hidden{}, StopAsked{}, CameBack{}, Heard{}, BarSet{}, Appointed{}, Joined{}, GroupLeft{},
		GroupMade{}, RoleGiven{}, RoleEnded{}, InviteMade{}, InviteEnded{}, OfficerAsked{},
		OfficerWrote{}, Visited{}, PutOff{}, Struck{},
		Entered{}, LeftBehind{}, AlertGot{}, AlertSeen{}, AlertPassed{}, Announced{}, BatchStopped{}, Counted{}, NamesTaken{},
		Begun{}, PathChosen{}, Gathered{}, GatherDone{}, DateWished{}, StarterChosen{}, BottleMixed{},
		BottleShaken{}, BottleFelt{}, BottleReady{}, BottleSpoiled{}, SiteFound{}, Prepared{}, BaseLaid{},
		LayerLaid{}, Squeezed{}, Built{}, StickRead{}, Smelt{}, Saw{}, RedoOrdered{}, TurnedOver{}, Sank{}, Measured{},
		Watered{}, Covered{}, FinishedEarly{}, Opened{}, Cooled{}, Sieved{}, Passed{}, TrialSet{}, TrialDone{},
		WormsHad{}, Fed{}, WormsSeen{}, Ripe{}, HarvestTaken{}, Yielded{}, UseChosen{}, Rated{}, Finished{},
		GivenUp{}, HandedOver{}, Received{}, Advised{}, Peril{}, PerilSeen{}, Paused{}, Snoozed{}, Skipped{}, Reminded{}, Missed{},
	} {
		set[reflect.TypeOf(e).Name()] = reflect.TypeOf(e)
	}
	return set
}()

// nothingMore is the body of an event that says all by its name, as a third of a diary's
// do; it is neither written nor read as JSON.
const nothingMore = "{}"

// Encode gives an event's stored name and body.
func Encode(e Event) (kind string, body []byte, err error) {
	t := reflect.TypeOf(e)
	kind = t.Name()
	if events[kind] == nil {
		return "", nil, fmt.Errorf("encode %s: not an event of the diary", kind)
	}
	if t.NumField() == 0 {
		return kind, []byte(nothingMore), nil
	}
	body, err = json.Marshal(e)
	return kind, body, err
}

// Decode is Encode undone. An unknown name is an error: a newer program wrote it.
func Decode(kind string, body []byte) (Event, error) {
	t := events[kind]
	if t == nil {
		return nil, fmt.Errorf("diary entry %q: not known to this version", kind)
	}
	v := reflect.New(t)
	if string(body) == nothingMore {
		return v.Elem().Interface().(Event), nil
	}
	if err := json.Unmarshal(body, v.Interface()); err != nil {
		return nil, fmt.Errorf("diary entry %q: %w", kind, err)
	}
	return v.Elem().Interface().(Event), nil
}

func (Consented) event()     {}
func (LanguageSet) event()   {}
func (Named) event()         {}
func (Placed) event()        {}
func (HourSet) event()       {}
func (UnitsSet) event()      {}
func (PicturesSet) event()   {}
func (NumeralsSet) event()   {}
func (MeasureSet) event()    {}
func (Helps) event()         {}
func (HelperJoined) event()  {}
func (HelperLeft) event()    {}
func (Hidden) event()        {}
func (StopAsked) event()     {}
func (CameBack) event()      {}
func (Heard) event()         {}
func (BarSet) event()        {}
func (Appointed) event()     {}
func (Joined) event()        {}
func (GroupLeft) event()     {}
func (GroupMade) event()     {}
func (RoleGiven) event()     {}
func (RoleEnded) event()     {}
func (InviteMade) event()    {}
func (InviteEnded) event()   {}
func (OfficerAsked) event()  {}
func (OfficerWrote) event()  {}
func (Visited) event()       {}
func (PutOff) event()        {}
func (Struck) event()        {}
func (Begun) event()         {}
func (PathChosen) event()    {}
func (Gathered) event()      {}
func (GatherDone) event()    {}
func (DateWished) event()    {}
func (StarterChosen) event() {}
func (BottleMixed) event()   {}
func (BottleShaken) event()  {}
func (BottleFelt) event()    {}
func (BottleReady) event()   {}
func (BottleSpoiled) event() {}
func (SiteFound) event()     {}
func (Prepared) event()      {}
func (BaseLaid) event()      {}
func (LayerLaid) event()     {}
func (Squeezed) event()      {}
func (Built) event()         {}
func (StickRead) event()     {}
func (Smelt) event()         {}
func (Saw) event()           {}
func (RedoOrdered) event()   {}
func (TurnedOver) event()    {}
func (Measured) event()      {}
func (Sank) event()          {}
func (Watered) event()       {}
func (Covered) event()       {}
func (FinishedEarly) event() {}
func (Opened) event()        {}
func (Cooled) event()        {}
func (Sieved) event()        {}
func (Passed) event()        {}
func (TrialSet) event()      {}
func (TrialDone) event()     {}
func (WormsHad) event()      {}
func (Fed) event()           {}
func (WormsSeen) event()     {}
func (Ripe) event()          {}
func (HarvestTaken) event()  {}
func (Yielded) event()       {}
func (UseChosen) event()     {}
func (Rated) event()         {}
func (Finished) event()      {}
func (GivenUp) event()       {}
func (HandedOver) event()    {}
func (Received) event()      {}
func (Peril) event()         {}
func (PerilSeen) event()     {}
func (Paused) event()        {}
func (Snoozed) event()       {}
func (Skipped) event()       {}
func (Reminded) event()      {}
func (Missed) event()        {}
func (Entered) event()       {}
func (LeftBehind) event()    {}
func (AlertGot) event()      {}
func (AlertSeen) event()     {}
func (AlertPassed) event()   {}
func (Announced) event()     {}
func (BatchStopped) event()  {}
func (Counted) event()       {}
func (NamesTaken) event()    {}
func (Advised) event()       {}
