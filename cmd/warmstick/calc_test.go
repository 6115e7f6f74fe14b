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

	"warmstick/dialog/compost"
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

// Bad input names the field and what is accepted, the rest go on, exit 1.
func TestBadSums(t *testing.T) {
	for _, c := range []struct{ line, says, accepts string }{
		{`{"id":"1","kind":"water_to_add","inputs":{"mass_kg":-5,"moisture_pct":40,"goal_pct":55}}`, "mass_kg", "above 0"},
		{`{"id":"1","kind":"water_to_add","inputs":{"mass_kg":0,"moisture_pct":40,"goal_pct":55}}`, "mass_kg", "above 0"},
		{`{"id":"1","kind":"water_to_add","inputs":{"mass_kg":1e300,"moisture_pct":40,"goal_pct":55}}`, "mass_kg", "up to"},
		{`{"id":"1","kind":"water_to_add","inputs":{"mass_kg":1e999,"moisture_pct":40,"goal_pct":55}}`, "1e999", ""},
		{`{"id":"1","kind":"water_to_add","inputs":{"mass_kg":NaN,"moisture_pct":40,"goal_pct":55}}`, "mass_kg", "not a number"},
		{`{"id":"1","kind":"water_to_add","inputs":{"mass_kg":-Infinity,"moisture_pct":40,"goal_pct":55}}`, "mass_kg", "not a number"},
		{`{"id":"1","kind":"water_to_add","inputs":{"mass_kg":"NaN","moisture_pct":40,"goal_pct":55}}`, "mass_kg", "not a number"},
		{`{"id":"1","kind":"water_to_add","inputs":{"mass_kg":10,"moisture_pct":140,"goal_pct":55}}`, "moisture_pct", "0 to 100"},
		{`{"id":"1","kind":"water_to_add","inputs":{"mass_kg":10,"moisture_pct":40,"goal_pct":100}}`, "goal_pct", "up to 99.9"},
		{`{"id":"1","kind":"water_to_add","inputs":{"moisture_pct":40}}`, "mass_kg", "missing"},
		{`{"id":"1","kind":"water_to_add","inputs":{"mass_kg":true,"moisture_pct":40}}`, "mass_kg", "not a number"},
		{`{"id":"1","kind":"materials_mix","inputs":{"materials":[{"id":"cow_dun","mass_kg":3}]}}`, "materials[0].id", "cow_dung"},
		{`{"id":"1","kind":"materials_mix","inputs":{"materials":[]}}`, "materials", "one material or more"},
		{`{"id":"1","kind":"materials_mix","inputs":{"materials":[7]}}`, "materials[0]", "not an object"},
		{`{"id":"1","kind":"mix_cn","inputs":{"materials":[{"mass_kg":1,"moisture_pct":10,"c_pct":40}]}}`, "n_pct", "missing"},
		{`{"id":"1","kind":"mix_cn","inputs":{"basis":"guess","materials":[{"mass_kg":1,"moisture_pct":10,"c_pct":40,"n_pct":1}]}}`, "basis", "as_used"},
		{`{"id":"1","kind":"mass_for_cn","inputs":{"material_1":{"mass_kg":1,"moisture_pct":10,"c_pct":40,"n_pct":1},"goal_cn":30}}`, "material_2", "missing"},
		{`{"id":"1","kind":"volume_box_ft","inputs":{"length_ft":6,"width_ft":4}}`, "height", "missing"},
		{`{"id":"1","kind":"volume_box_ft","inputs":{"length_ft":6,"width_ft":4,"height_ft":-4}}`, "height_ft", "above 0"},
		{`{"id":"1","kind":"turn_shrink","inputs":{"before_ft":[6,4],"after_ft":[4,4,4]}}`, "before_ft", "length, width and height"},
		{`{"id":"1","kind":"pfrp_check","inputs":{"daily_core_c":[],"turn_days":[]}}`, "daily_core_c", "one temperature a day"},
		{`{"id":"1","kind":"pfrp_check","inputs":{"daily_core_c":[55,999],"turn_days":[]}}`, "daily_core_c[1]", "-50 to 150"},
		{`{"id":"1","kind":"stick_answer","inputs":{"day":7,"answer":"tepid"}}`, "answer", "hot, warm, cold"},
		{`{"id":"1","kind":"stick_answer","inputs":{"day":7,"stage":"later","answer":"hot"}}`, "stage", "before_turn_1"},
		{`{"id":"1","kind":"stick_answer","inputs":{"day":-7,"answer":"hot"}}`, "day", "0 to"},
		{`{"id":"1","kind":"worm_sizing","inputs":{"feed_kg_per_day":1,"feed_rate":0}}`, "feed_rate", "above 0"},
		{`{"id":"1","kind":"application","inputs":{"crop":"roses","area_m2":3}}`, "crop", "vegetable"},
		{`{"id":"1","kind":"sample_moisture","inputs":{"tare_g":4,"wet_sample_g":10,"dry_with_tare_g":20}}`, "dry_with_tare_g", "cannot weigh more"},
		{`{"id":"1","kind":"volume_bx","inputs":{}}`, "kind", "volume_box_ft"},
		{`{"id":"1","kind":"kill_time"}`, "inputs", "missing"},
		{`{"id":"1","kind":"kill_time","inputs":[1]}`, "inputs", "object"},
		{`garbage`, "JSON", ""},
		{`[]`, "JSON", ""},
	} {
		out, status := calcOne(t, c.line+"\n"+`{"id":"next","kind":"kill_time","inputs":{"temp_c":55}}`)
		lines := strings.Split(out, "\n")
		require.Equal(t, 1, status, c.line)
		require.Len(t, lines, 2, c.line)
		var e struct {
			ID    json.RawMessage
			Error string
		}
		require.NoError(t, json.Unmarshal([]byte(lines[0]), &e), lines[0])
		require.Contains(t, e.Error, c.says, c.line)
		require.Contains(t, e.Error, c.accepts, c.line)
		require.Contains(t, lines[1], `"days":2.627`, "the rest go on")
	}
}

func TestIdsComeBackAsTheyWere(t *testing.T) {
	for _, id := range []string{`"a b"`, `7`, `null`, `"é"`} {
		out, status := calcOne(t, `{"id":`+id+`,"kind":"kill_time","inputs":{"temp_c":55}}`)
		require.Zero(t, status)
		require.Contains(t, out, `"id":`+id)
	}
	out, _ := calcOne(t, `{"kind":"kill_time","inputs":{"temp_c":NaN,"note":"NaN \" NaN"}}`)
	require.Contains(t, out, `"line 1"`)
	out, status := calcOne(t, "\n\n")
	require.Empty(t, out)
	require.Zero(t, status)
}

// Feet and inches as people type them; all are 4 ft but the last ones.
func TestLengths(t *testing.T) {
	for _, s := range []string{`48"`, `48''`, `48”`, `48″`, `48 in`, `48 inches`, `48in.`, `48“`, `4'`, `4′`, `4’`, `4 ft`, `4ft.`, `4 feet`, `3'12"`, `3 ft 12 in`, `3' 12`, `121.92 cm`, `1.2192 m`, `1,2192m`, `1.2192`} {
		m, err := parseLength(s, 1)
		require.NoError(t, err, s)
		require.InDelta(t, 1.2192, m, 1e-9, s)
	}
	for _, s := range []string{"", "ft", "4 yards", "-4 ft", "0", "1e300", "NaN", "4 ft 3 in 2 mm", "4 ft or so"} {
		_, err := parseLength(s, 1)
		require.ErrorContains(t, err, "accepted", s)
	}
	out, status := calcOne(t, `{"id":1,"kind":"heap_size","inputs":{"length":"6'","width":"48\"","height":"48''"}}`)
	require.Zero(t, status)
	require.Contains(t, out, `"volume_ft3":96`)
}

// In words, for a person.
func TestWords(t *testing.T) {
	for _, c := range []struct {
		args string
		says []string
	}{
		{"mix 3 basin cow_dung 5 basket dry_leaves 2 bag maize_stover", []string{"C:N", "slightly_brown", "weigh"}},
		{"mix 3 basins of cow_dung 5 baskets trodden dry_leaves 2 bags wilted grass", []string{"C:N", "moisture"}},
		{"mix --weighs basket_x=3 3 kg cow_dung", []string{"C:N"}},
		{"size 6x4x4ft", []string{"2.72 m3", "4 x 4 x 4 ft"}},
		{"size 2 ft 2 ft 2 ft", []string{"heap_too_small"}},
		{"starter 2", []string{"125 g", "250 g", "never glass"}},
		{"starter heap 6ft 4ft 4ft", []string{"125 g"}},
		{"heat air 18 3 warm 5 hot 7 turn 10 61C until 12", []string{"core now", "no proof"}},
		{"kill 55", []string{"2.6 days", "no proof"}},
		{"kill 45", []string{"no time"}},
		{"worms 600 2", []string{"600 days", "300 kg"}},
		{"grow 2 180 1", []string{"split"}},
		{"use vegetable 200 m2", []string{"100 kg", "90 days"}},
		{"use coffee from 120", []string{"48"}},
		{"use seedling 50 litres", []string{"10 L"}},
		{"money sold 120 price 10 costs 300 days 4", []string{"900.00", "225.00"}},
		{"breakeven 1500 400", []string{"4 heaps"}},
		{"shop have 8 basin cow_dung can basket grass 1 basket maize_stover 2 max 90", []string{"basket grass", "effort, 164"}},
		{"materials dung", []string{"cow_dung_fresh"}},
		{"measures", []string{"basket"}},
		{"--help", []string{"usage"}},
	} {
		var out, errs bytes.Buffer
		status := runCalc(strings.Fields(c.args), strings.NewReader(""), &out, &errs)
		require.Zero(t, status, "%s: %s", c.args, &errs)
		for _, s := range c.says {
			require.Contains(t, out.String(), s, c.args)
		}
	}
	for args, says := range map[string]string{
		"mix 3 basin cow_dun":        "cow_dung",
		"mix -3 basin cow_dung":      "amount",
		"mix NaN basin cow_dung":     "amount",
		"mix 3 acre cow_dung":        "measure",
		"mix 3 basin":                "material",
		"mix":                        "nothing in it",
		"size 6 4":                   "2 lengths",
		"size 6ft 4ft 4ft 4ft":       "one word too many",
		"kill hot":                   "temperature",
		"dance":                      "accepted: mix",
		"heat 3 hot":                 "until",
		"heat 3 tepid until 4":       "accepted: hot",
		"use roses 3 m2":             "crop",
		"use coffee 3 m2":            "no dose",
		"money price":                "missing",
		"shop have 1 basin cow_dung": "nothing to fetch",
		"mix --weighs":               "--weighs",
	} {
		var out, errs bytes.Buffer
		require.Equal(t, 1, runCalc(strings.Fields(args), strings.NewReader(""), &out, &errs), args)
		require.Contains(t, errs.String(), says, args)
		require.Empty(t, out.String(), args)
	}
}

// Every class that may be said has its words.
func TestAdviceHasWords(t *testing.T) {
	for _, c := range []compost.Class{compost.MixOK, compost.SlightlyGreen, compost.TooMuchGreen, compost.SlightlyBrown, compost.TooMuchBrown,
		compost.SlightlyDry, compost.TooDry, compost.SlightlyWet, compost.TooWet, compost.HeapTooSmall, compost.HeapTooBig} {
		require.NotEmpty(t, adviceWords()[string(c)], c)
	}
}

// Anything at all is answered with one line of JSON.
func FuzzCalcLine(f *testing.F) {
	for _, name := range []string{"worked_examples.json", "more_examples.json"} {
		file, err := os.ReadFile(filepath.Join("..", "..", "testdata", "sums", name))
		require.NoError(f, err)
		var all []example
		require.NoError(f, json.Unmarshal(file, &all))
		for _, e := range all {
			line, _ := json.Marshal(map[string]any{"id": e.ID, "kind": e.Kind, "inputs": e.Inputs})
			f.Add(string(line))
		}
	}
	f.Fuzz(func(t *testing.T, line string) {
		if strings.TrimSpace(line) == "" || strings.ContainsAny(line, "\n") {
			return
		}
		var out, errs bytes.Buffer
		status := runCalc(nil, strings.NewReader(line), &out, &errs)
		if !json.Valid(out.Bytes()) || bytes.Count(out.Bytes(), []byte("\n")) != 1 {
			t.Fatalf("%q gave %q", line, &out)
		}
		if (status == 1) != bytes.Contains(out.Bytes(), []byte(`"error":`)) {
			t.Fatalf("%q gave exit %d and %q", line, status, &out)
		}
	})
}
