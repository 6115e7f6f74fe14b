package store

import (
	"encoding/json"

	"warmstick/dialog"
)

// script is an answer together with its text as it goes into the file. Whoever
// thinks of the answer also writes the text, so that the writer need not.
type script struct {
	dialog.Answer
	lines  []line   // of Entries
	bodies []string // of Letters
	err    error    // what could not be written, and then nothing is kept
}

// line is an event as the diary keeps it.
type line struct{ kind, body string }

func scriptOf(a dialog.Answer) script {
	s := script{Answer: a, lines: make([]line, len(a.Entries)), bodies: make([]string, len(a.Letters))}
	for i, e := range a.Entries {
		kind, body, err := dialog.Encode(e.Event)
		if err != nil {
			s.err = err
			return s
		}
		s.lines[i] = line{kind, string(body)}
	}
	for i, l := range a.Letters {
		l.Opens = nil // goes into the reader's talk
		body, err := json.Marshal(l)
		if err != nil {
			s.err = err
			return s
		}
		s.bodies[i] = string(body)
	}
	return s
}
