package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"unicode/utf8"

	"warmstick/dialog/understand"
)

// reply is one line of `warmstick understand` in.
type reply struct {
	ID    json.RawMessage `json:"id"`
	Lang  string          `json:"lang"`
	Asked string          `json:"asked"`
	Text  *string         `json:"text"`
}

// reading is one line out. Means is never null; guess is there only when not sure.
type reading struct {
	ID    json.RawMessage `json:"id"`
	Means []string        `json:"means"`
	Sure  bool            `json:"sure"`
	Guess []string        `json:"guess,omitempty"`
	Lang  string          `json:"lang,omitempty"`
}

type misread struct {
	ID    json.RawMessage `json:"id,omitempty"`
	Error string          `json:"error"`
}

const understandHelp = `warmstick understand
reads farmers' replies and says what they mean

One JSON line in, one JSON line out:
  {"id":"1","lang":"en","asked":"stick","text":"cold"}
  {"id":"1","means":["stick=cold"],"sure":true,"lang":"en"}

lang   en, sw, hi, hi-Latn, es or fr; the text may be in another of them, or mixed
asked  the question it answers: stick, moisture, smell, bottle, shake, turn, layer,
       sieve, feed, worms, have, menu, none ("" counts as none)
sure   true: act on means; false: ask the farmer (guess holds what it may have meant)

A line that cannot be read is answered with {"error":"..."}; the rest go on, exit 1 at the end.
`

// runUnderstand answers JSON lines of replies with JSON lines of meanings.
func runUnderstand(args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	if len(args) > 0 {
		switch a := args[0]; a {
		case "-h", "--help", "-help", "help":
			fmt.Fprint(stdout, understandHelp)
			return 0
		default:
			fmt.Fprintf(stderr, "warmstick understand: %q is not an option; replies are read as JSON lines from standard input, see --help\n", a)
			return 2
		}
	}
	return eachLine("understand", stdin, stdout, stderr, func(n int, line []byte) (any, bool) {
		id, m, bad := understandLine(line)
		if bad != nil {
			return misread{ID: id, Error: fmt.Sprintf("line %d: %v", n, bad)}, false
		}
		return reading{ID: id, Means: append([]string{}, m.Codes...), Sure: m.Sure, Guess: m.Guess, Lang: m.Lang}, true
	})
}

func understandLine(line []byte) (json.RawMessage, understand.Meaning, error) {
	var r reply
	if !utf8.Valid(line) {
		return nil, understand.Meaning{}, errors.New("not UTF-8; save the file as UTF-8")
	}
	if err := json.Unmarshal(line, &r); err != nil {
		return nil, understand.Meaning{}, fmt.Errorf("not a JSON object like {\"id\":\"1\",\"lang\":\"en\",\"asked\":\"stick\",\"text\":\"cold\"}: %w", err)
	}
	switch {
	case len(r.ID) == 0:
		return nil, understand.Meaning{}, errors.New("no id; give each line one, to match the answer by")
	case r.Text == nil:
		return r.ID, understand.Meaning{}, errors.New("no text; give what the farmer wrote, or \"\"")
	}
	switch r.Lang {
	case "en", "sw", "hi", "hi-Latn", "es", "fr", "":
	default:
		return r.ID, understand.Meaning{}, fmt.Errorf("lang %q is none of en, sw, hi, hi-Latn, es, fr", r.Lang)
	}
	return r.ID, understand.Read(*r.Text, r.Lang, r.Asked), nil
}
