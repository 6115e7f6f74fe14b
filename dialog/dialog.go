// Package dialog decides what to answer a farmer or an officer and what to
// write in the diary. It is pure: the same state, input and clock give the same
// answer. It knows nothing of networks, databases or the wall clock; the store
// runs Step inside one transaction and keeps what it returns.
package dialog

import "time"

// PersonID names one person in the store; it is never a chat id.
type PersonID int64

// HeapID counts one person's heaps from 1; 0 means "no heap".
type HeapID int

// GroupID names a growers' group.
type GroupID int64

// EntryID is the place of an entry among all diaries, set by the store.
type EntryID int64

// State is all that Step may know about the person who speaks. The zero State
// is a stranger.
type State struct {
	Person Person
	Heaps  []Heap
	Talk   Talk
	// Register answers questions about others: groups, members, invites, and
	// the person's own diary line by line. Nil stands for an empty register.
	Register Register `json:"-"`
}

// Register is what a conversation may look up beyond its own person. The store
// answers it inside the transaction of the message, so an answer never mixes
// two moments. Lists come in a fixed order (by id) so that replays agree.
type Register interface {
	// Diary is everything noted for a person, oldest first, struck lines included.
	Diary(PersonID) []Entry
	// State is another person's folded state, without its Register.
	State(PersonID) (State, bool)
	// Group gives a group with its officers and lead farmers.
	Group(GroupID) (Group, bool)
	// Members lists the cards of the farmers of a group, its lead farmers among
	// them, and of the numbers that farmers without a name left behind.
	Members(GroupID) []Card
	// Invite finds an invite by its code, expired or withdrawn ones included.
	Invite(code string) (Invite, bool)
	// Sending counts the letters of an announcement that have not gone yet, and
	// those that were refused.
	Sending(batch string) (waiting, refused int)
	// NewID gives an id that no person or group has had.
	NewID() int64
	// Chance gives n letters and digits that nobody can guess; a rehearsal
	// passes a source that repeats.
	Chance(n int) string
}

// Group is a growers' group with the people who look after it.
type Group struct {
	ID    GroupID
	Name  string
	Staff []Membership // officers and lead farmers
}

// Membership ties a person to a group.
type Membership struct {
	Person PersonID `json:",omitempty"`
	Group  GroupID
	Role   Role
}

// Role is what a person may do in a group.
type Role string

const (
	Farmer  Role = "farmer"  // own heaps only
	Lead    Role = "lead"    // a lead farmer: enters and answers for farmers without a phone
	Officer Role = "officer" // sees the group's heaps, advises, announces, invites
)

// Invite lets whoever sends its code into a group, until it expires.
type Invite struct {
	Code    string
	Group   GroupID
	Heap    HeapID `json:",omitempty"` // the heap that a Handing code gives; known to the owner's state alone
	Role    Role
	By      PersonID
	Expires time.Time
	Ended   bool
}

// Entry is one line of a diary. At is when it happened, Noted when we were
// told: "turned it yesterday" is common. At is never after Noted, except for an
// announced day, which the event itself carries.
type Entry struct {
	ID     EntryID   // 0 until the store has kept it
	Person PersonID  // whose diary; 0 = the person who speaks
	Heap   HeapID    // 0 = about the person, not a heap
	At     time.Time // when it happened
	Day    Day       // the same as a date of the person's own calendar
	Noted  time.Time // when we were told
	By     PersonID  // who told; 0 = the clock
	Told   int       // all lines of one message share it; undo strikes them together
	Event  Event
}

// Input is one thing that reaches the conversation.
type Input interface{ input() }

// Kind is what sort of message arrived.
type Kind string

const (
	Text     Kind = "text"
	Photo    Kind = "photo"
	Voice    Kind = "voice"
	Sticker  Kind = "sticker"
	Location Kind = "location"
	Contact  Kind = "contact"
	Other    Kind = "other" // anything else the platform may carry
)

// Message is what a person wrote or sent. File is the platform's own reference
// to a photo or voice note; it is passed on, never fetched or kept.
type Message struct {
	Kind   Kind
	Text   string // the caption, for a photo
	File   string
	Code   string // an invite code that came with the start link
	Amends bool   // an edit of an earlier message
}

// Press is a button of one of our letters, named by Button.Press.
type Press struct{ Button string }

// Reminder is the clock speaking: these acts of one person are due.
type Reminder struct{ Due []Due }

// OfficerMade makes the person an officer; only the operator can say so.
type OfficerMade struct{}

// Barred says that the person's phone refuses our letters (or does so no more).
type Barred struct{ Now bool }

func (Message) input()     {}
func (Press) input()       {}
func (Reminder) input()    {}
func (OfficerMade) input() {}
func (Barred) input()      {}

// Answer is all that follows from one input. The store keeps it in one
// transaction; the letters leave later.
type Answer struct {
	Entries []Entry    // in order; each goes to its person's diary
	Talk    Talk       // where the conversation now stands
	Talks   []TalkOf   // where conversations of others now stand
	Letters []Letter   // in order
	Forget  []PersonID // erase these people after the letters to them are gone
	Halt    []string   // announcements whose letters are not to go any more
}

// TalkOf is somebody else's conversation, as another phone of theirs left it.
type TalkOf struct {
	Person PersonID
	Talk   Talk
}

// LetterKind is why a letter goes out; the sender lets replies overtake the rest.
type LetterKind string

const (
	Reply     LetterKind = "reply"
	Remind    LetterKind = "reminder"
	Alert     LetterKind = "alert"
	Digest    LetterKind = "digest"
	Relay     LetterKind = "relay"
	Broadcast LetterKind = "broadcast"
)

// Letter is one message to one person, already in their language.
type Letter struct {
	To      PersonID
	Kind    LetterKind
	Text    string
	Buttons []Button
	Asks    string // the question open after this letter, a word of the contract
	Heap    HeapID
	Stage   Stage
	Advice  []string
	Picture *Picture  `json:",omitempty"`
	File    *Enclosed `json:",omitempty"`
	Paper   *Paper    `json:",omitempty"`
	// Opens is the question that this letter puts to somebody who did not just
	// write; the store opens it in their conversation.
	Opens *Question `json:",omitempty"`
	// After holds a letter back until that moment (an announcement in quiet hours).
	After time.Time `json:",omitzero"`
	// Batch names the announcement a letter belongs to, so that it can be stopped.
	Batch string `json:",omitempty"`
}

// Button is one choice. Press comes back when it is pressed: at most 64 bytes.
type Button struct{ Label, Press string }

// Enclosed is a photo or voice note passed on by the platform's reference.
type Enclosed struct {
	Kind Kind
	File string
}

// Paper is a document drawn when the letter is posted (a workbook, a page).
type Paper struct {
	Name  string
	Kind  string
	Group GroupID
	Names bool
}

// Picture says what to draw when the letter is posted. Numbers are defined by
// the kind; a picture is never needed to go on.
type Picture struct {
	Kind    string
	Numbers []float64 `json:",omitempty"`
	Text    string    `json:",omitempty"` // only for a code to be scanned
}

// Due is one line of the plan written down: this person should hear about this
// act of this heap at this moment. Person, Heap, Task and Day name it.
type Due struct {
	Person PersonID
	Heap   HeapID
	Task   Task
	Day    Day       // the local date of the reminder
	At     time.Time // the farmer's hour on that date
}
