package main

import (
	"bufio"
	"bytes"
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
	in := bufio.NewReaderSize(stdin, 1<<16)
	out := bufio.NewWriter(stdout)
	enc := json.NewEncoder(out)
	enc.SetEscapeHTML(false)
	code := 0
	for n := 1; ; n++ {
		line, err := in.ReadBytes('\n')
		if len(bytes.TrimSpace(line)) > 0 {
			id, m, bad := understandLine(line)
			var answer any = reading{ID: id, Means: append([]string{}, m.Codes...), Sure: m.Sure, Guess: m.Guess, Lang: m.Lang}
			if bad != nil {
				code = 1
				answer = misread{ID: id, Error: fmt.Sprintf("line %d: %v", n, bad)}
			}
			if werr := enc.Encode(answer); werr != nil {
				fmt.Fprintf(stderr, "warmstick understand: write answer: %v\n", werr)
				return 1
			}
		}
		if err == nil && in.Buffered() > 0 {
			continue
		}
		// nothing more waiting: let whoever drives us over a pipe have the answers
		if werr := out.Flush(); werr != nil {
			fmt.Fprintf(stderr, "warmstick understand: write answers: %v\n", werr)
			return 1
		}
		if errors.Is(err, io.EOF) {
			return code
		}
		if err != nil {
			fmt.Fprintf(stderr, "warmstick understand: read replies: %v\n", err)
			return 1
		}
	}
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
