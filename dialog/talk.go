package dialog

import "time"

// Talk is where a conversation stands: the question open, and what is needed to
// take the last fact back. It is kept beside the diary, not in it.
type Talk struct {
	Lang      string    `json:",omitempty"` // before consent, the only thing known
	Code      string    `json:",omitempty"` // an invite waiting for consent
	Guesses   int       `json:",omitempty"` // wrong invite codes of late
	GuessedAt time.Time `json:",omitzero"`
	Open      Question  `json:",omitzero"`
	Seq       int       `json:",omitempty"` // of the last question; a button of an older one is stale
	Misses    int       `json:",omitempty"` // answers in a row that were not understood
	Passed    int       `json:",omitempty"` // times in a row that the open question was put and something else was said
	Past      []Past    `json:",omitempty"` // what undo can reach, newest last
	Said      uint64    `json:",omitempty"` // print of our last letter, to avoid saying it twice
	SaidAt    time.Time `json:",omitzero"`
	Line      uint64    `json:",omitempty"` // print of the person's last line
	Shown     time.Time `json:",omitzero"`  // when the hiding word was last given
	Lines     []string  `json:",omitempty"` // the last few lines, for an officer who is asked for
	// Later are answers that an officer owes to others than the one now open.
	Later []Question `json:",omitempty"`
	// Inside is a talk on behalf of a farmer without a phone, or a lesson.
	Inside *Inside `json:",omitempty"`
}

// Past is one told message that can be taken back, with the question it answered.
type Past struct {
	Told int
	Open Question
}

// Question is one question put to a person.
type Question struct {
	ID      string    `json:",omitempty"` // key of questions
	Heap    HeapID    `json:",omitempty"`
	Task    Task      `json:",omitempty"`
	Choices []Choice  `json:",omitempty"`
	Who     PersonID  `json:",omitempty"` // the farmer an officer answers or visits
	Text    string    `json:",omitempty"` // what waits for a yes: an announcement, a doubtful fact
	Group   GroupID   `json:",omitempty"` // the group an officer is busy with
	From    time.Time `json:",omitzero"`  // not before then: its letter waits for the morning
}

// Choice is one numbered answer: what is shown and what it means.
type Choice struct {
	Label string
	Means string
}
