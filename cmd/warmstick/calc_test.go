package main

import (
	"bytes"
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// example is a worked sum of testdata/sums with its source.
type example struct {
	ID         string             `json:"id"`
	Kind       string             `json:"kind"`
	Inputs     json.RawMessage    `json:"inputs"`
	Expected   map[string]any     `json:"expected"`
	Tolerance  map[string]float64 `json:"tolerance"`
	Advice     []string           `json:"advice"`
	Source     string             `json:"source"`
	Provenance string             `json:"provenance"`
}

func TestWorkedExamples(t *testing.T) {
	for _, name := range []string{"worked_examples.json", "more_examples.json"} {
		file, err := os.ReadFile(filepath.Join("..", "..", "testdata", "sums", name))
		require.NoError(t, err)
		var all []example
		require.NoError(t, json.Unmarshal(file, &all))
		for _, e := range all {
			t.Run(e.ID+" "+e.Kind, func(t *testing.T) { e.check(t) })
		}
	}
}

func (e example) check(t *testing.T) {
	line, err := json.Marshal(map[string]any{"id": e.ID, "kind": e.Kind, "inputs": e.Inputs})
	require.NoError(t, err)
	var out, errs bytes.Buffer
	status := runCalc(nil, bytes.NewReader(line), &out, &errs)
	require.Zerof(t, status, "%s (%s, %s): %s%s", e.ID, e.Source, e.Provenance, &out, &errs)
	var got struct {
		Outputs map[string]any
		Advice  []string
	}
	require.NoError(t, json.Unmarshal(out.Bytes(), &got))
	for key, want := range e.Expected {
		have, there := got.Outputs[key]
		if !there {
			t.Errorf("%s: no %s in %s (source %s, provenance %s)", e.ID, key, &out, e.Source, e.Provenance)
			continue
		}
		w, isNum := want.(float64)
		h, isToo := have.(float64)
		if isNum && isToo {
			if !(math.Abs(w-h) <= e.Tolerance[key]+1e-9) {
				t.Errorf("%s: %s = %v, want %v ± %v (source %s, provenance %s)", e.ID, key, h, w, e.Tolerance[key], e.Source, e.Provenance)
			}
			continue
		}
		if !reflect.DeepEqual(want, have) {
			t.Errorf("%s: %s = %v, want %v (source %s, provenance %s)", e.ID, key, have, want, e.Source, e.Provenance)
		}
	}
	if e.Advice != nil && !reflect.DeepEqual(e.Advice, got.Advice) {
		t.Errorf("%s: advice %v, want %v (source %s, provenance %s)", e.ID, got.Advice, e.Advice, e.Source, e.Provenance)
	}
}

// calcOne runs one line and gives what came out.
func calcOne(t *testing.T, line string) (string, int) {
	t.Helper()
	var out, errs bytes.Buffer
	status := runCalc(nil, strings.NewReader(line), &out, &errs)
	require.Empty(t, errs.String())
	return strings.TrimSpace(out.String()), status
}
