package main

// The calc command: sums as JSON lines for a program, or in words for a person.

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"strings"
)

// runCalc answers JSON lines from stdin when there are no words, and a person's
// words else. It returns the exit status: 1 when any line or word was bad.
func runCalc(args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	if len(args) > 0 {
		if err := calcWords(args, stdout); err != nil {
			fmt.Fprintf(stderr, "calc: %v\n", err)
			return 1
		}
		return 0
	}
	return calcLines(stdin, stdout, stderr)
}

// A sum is one line in.
type sumLine struct {
	ID     json.RawMessage `json:"id"`
	Kind   string          `json:"kind"`
	Inputs map[string]any  `json:"inputs"`
}

// sumAnswer is one line out.
type sumAnswer struct {
	ID      json.RawMessage `json:"id"`
	Kind    string          `json:"kind"`
	Outputs outputs         `json:"outputs"`
	Advice  []string        `json:"advice"`
	Source  string          `json:"source"`
}

type sumError struct {
	ID    json.RawMessage `json:"id"`
	Error string          `json:"error"`
}

func calcLines(stdin io.Reader, stdout, stderr io.Writer) int {
	return eachLine("calc", stdin, stdout, stderr, func(n int, line []byte) (any, bool) {
		id, answer, bad := calcLine(line)
		if bad != nil {
			return sumError{orLine(id, n), bad.Error()}, false
		}
		return answer, true
	})
}

// orLine names a line that gave no id of its own.
func orLine(id json.RawMessage, n int) json.RawMessage {
	if len(id) > 0 {
		return id
	}
	return json.RawMessage(fmt.Sprintf(`"line %d"`, n))
}

func calcLine(line []byte) (json.RawMessage, *sumAnswer, error) {
	var s sumLine
	line = quoteNonNumbers(bytes.TrimPrefix(line, []byte("\ufeff")))
	if err := json.Unmarshal(line, &s); err != nil {
		var some struct {
			ID json.RawMessage `json:"id"`
		}
		if json.Unmarshal(line, &some) != nil {
			return nil, nil, fmt.Errorf(`not a line of JSON like {"id":"1","kind":"kill_time","inputs":{"temp_c":55}}: %w`, err)
		}
		return some.ID, nil, fmt.Errorf("kind must be a text and inputs an object: %w", err)
	}
	k, ok := kinds()[s.Kind]
	if !ok {
		return s.ID, nil, fmt.Errorf("kind: %q is not known; accepted: %s", s.Kind, strings.Join(kindNames(), ", "))
	}
	if s.Inputs == nil {
		return s.ID, nil, errors.New("inputs: missing; accepted: an object of named numbers")
	}
	f := readFields("inputs", s.Inputs)
	a := &sumAnswer{ID: s.ID, Kind: s.Kind, Outputs: outputs{}, Advice: []string{}, Source: k.source}
	if len(a.ID) == 0 {
		a.ID = json.RawMessage("null")
	}
	k.do(f, a)
	if *f.bad != nil {
		return s.ID, nil, *f.bad
	}
	return s.ID, a, nil
}

// quoteNonNumbers puts bare NaN and Infinity, which are not JSON, between
// quotes, so that the complaint can name their field.
func quoteNonNumbers(line []byte) []byte {
	var out []byte
	inText := false
	for i := 0; i < len(line); i++ {
		c := line[i]
		switch {
		case inText && c == '\\' && i+1 < len(line):
			out = append(out, c)
			i++
			c = line[i]
		case c == '"':
			inText = !inText
		case !inText:
			if word := nonNumber(line[i:]); word > 0 {
				out = append(out, '"')
				out = append(out, line[i:i+word]...)
				out = append(out, '"')
				i += word - 1
				continue
			}
		}
		out = append(out, c)
	}
	return out
}

func nonNumber(at []byte) int {
	for _, w := range []string{"NaN", "nan", "Infinity", "-Infinity", "+Infinity", "-NaN", "inf", "-inf", "Inf", "-Inf"} {
		if bytes.HasPrefix(at, []byte(w)) && !(len(at) > len(w) && isLetter(at[len(w)])) {
			return len(w)
		}
	}
	return 0
}

func isLetter(c byte) bool { return c|0x20 >= 'a' && c|0x20 <= 'z' }
