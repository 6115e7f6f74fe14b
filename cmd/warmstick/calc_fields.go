package main

// Reading the inputs of a sum: forgiving about spelling, strict about numbers.
// The first complaint is kept and names the field and what is accepted.

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"warmstick/dialog/compost"
)

type fields struct {
	at  string
	m   map[string]any
	bad *error
}

func readFields(at string, m map[string]any) fields {
	return fields{at, tidy(m), new(error)}
}

// tidy makes keys lower case with _ between words.
func tidy(m map[string]any) map[string]any {
	t := make(map[string]any, len(m))
	for k, v := range m {
		t[strings.NewReplacer("-", "_", " ", "_").Replace(strings.ToLower(strings.TrimSpace(k)))] = v
	}
	return t
}

func (f fields) under(at string, m map[string]any) fields {
	return fields{f.at + "." + at, tidy(m), f.bad}
}

func (f fields) fail(key, format string, args ...any) {
	if *f.bad == nil {
		*f.bad = fmt.Errorf(f.at+"."+key+": "+format, args...)
	}
}

// span is what a number may be.
type span struct {
	low, high float64
	open      bool // low itself is not accepted
	unit      string
}

func (s span) String() string {
	text := fmt.Sprintf("%s to %s", plain(s.low), plain(s.high))
	if s.open {
		text = fmt.Sprintf("above %s, up to %s", plain(s.low), plain(s.high))
	}
	return strings.TrimSpace(text + " " + s.unit)
}

func plain(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

func (s span) has(v float64) bool {
	return v >= s.low && v <= s.high && !(s.open && v == s.low)
}

// quantity is a kind of number; each has its span. Ends are far outside any
// farm, to catch slips.
type quantity int

const (
	kilos quantity = iota
	grams
	litres
	percent
	goalPercent
	nitrogenPercent
	ratio
	lengthMetres
	celsius
	dayNumber
	squareMetres
	density
	tonsPerHa
	partOfOne
	count
	coin
	tareGrams
)

func (q quantity) span() span {
	return [...]span{
		kilos:           {0, 1e9, true, "kg"},
		grams:           {0, 1e9, true, "g"},
		litres:          {0, 1e9, true, "L"},
		percent:         {0, 100, false, "%"},
		goalPercent:     {0, 99.9, true, "%"},
		nitrogenPercent: {0, 100, false, "% of dry mass"},
		ratio:           {0, 10_000, true, ""},
		lengthMetres:    {0, 1000, true, "m"},
		celsius:         {-50, 150, false, "C"},
		dayNumber:       {0, 3650, false, "days"},
		squareMetres:    {0, 1e9, true, "m2"},
		density:         {0, 5000, true, "kg/m3"},
		tonsPerHa:       {0, 1000, true, "t/ha"},
		partOfOne:       {0, 1, true, "(a part of one)"},
		count:           {0, 1e9, true, ""},
		coin:            {0, 1e12, false, "in your own coin"},
		tareGrams:       {0, 1e9, false, "g"},
	}[q]
}

func (f fields) has(keys ...string) bool {
	for _, k := range keys {
		if v, ok := f.m[k]; ok && v != nil {
			return true
		}
	}
	return false
}

// find gives the first of the spellings that is there.
func (f fields) find(keys []string) (string, any, bool) {
	for _, k := range keys {
		if v, ok := f.m[k]; ok && v != nil {
			return k, v, true
		}
	}
	return keys[0], nil, false
}

// num reads a number that must be there, under any of the spellings.
func (f fields) num(q quantity, keys ...string) float64 {
	key, v, ok := f.find(keys)
	if !ok {
		f.fail(key, "missing; accepted: a number, %v", q.span())
		return math.NaN()
	}
	return f.value(q.span(), key, v)
}

// opt reads a number that may be left out.
func (f fields) opt(usual float64, q quantity, keys ...string) float64 {
	key, v, ok := f.find(keys)
	if !ok {
		return usual
	}
	return f.value(q.span(), key, v)
}

func (f fields) value(s span, key string, v any) float64 {
	x, ok := asNumber(v)
	if !ok {
		f.fail(key, "%v is not a number; accepted: %v", v, s)
		return math.NaN()
	}
	if !s.has(x) {
		f.fail(key, "%s is not accepted; accepted: %v", strconv.FormatFloat(x, 'g', -1, 64), s)
		return math.NaN()
	}
	return x
}

func asNumber(v any) (float64, bool) {
	switch v := v.(type) {
	case float64:
		return v, true
	case string:
		x, err := strconv.ParseFloat(strings.TrimSpace(v), 64)
		if err != nil || math.IsNaN(x) || math.IsInf(x, 0) {
			return 0, false
		}
		return x, true
	}
	return 0, false
}

func (f fields) text(keys ...string) string {
	key, v, ok := f.find(keys)
	if !ok {
		return ""
	}
	s, ok := v.(string)
	if !ok {
		f.fail(key, "%v is not a text", v)
	}
	return strings.NewReplacer("-", "_", " ", "_").Replace(strings.ToLower(strings.TrimSpace(s)))
}

func (f fields) yes(keys ...string) bool {
	key, v, ok := f.find(keys)
	if !ok {
		return false
	}
	b, ok := v.(bool)
	if !ok {
		f.fail(key, "%v is not accepted; accepted: true or false", v)
	}
	return b
}

func (f fields) list(keys ...string) []any {
	key, v, ok := f.find(keys)
	l, isList := v.([]any)
	if !ok || !isList {
		f.fail(key, "missing; accepted: a list")
		return nil
	}
	if len(l) > 10_000 {
		f.fail(key, "%d entries; accepted: at most 10000", len(l))
		return nil
	}
	return l
}

// length reads metres from name_m, name_ft, name_cm, name_in or a bare name,
// whose text may carry its unit.
func (f fields) length(names ...string) float64 {
	for _, n := range names {
		for _, u := range lengthUnits() {
			if v, ok := f.m[n+u.suffix]; ok && v != nil {
				return f.metres(n+u.suffix, v, u.metres)
			}
		}
	}
	f.fail(names[0]+"_m", "missing; accepted: a length, %v (or _ft, _cm, _in)", lengthMetres.span())
	return math.NaN()
}

func (f fields) hasLength(names ...string) bool {
	for _, n := range names {
		for _, u := range lengthUnits() {
			if f.has(n + u.suffix) {
				return true
			}
		}
	}
	return false
}

func (f fields) metres(key string, v any, unit float64) float64 {
	if s, ok := v.(string); ok {
		if m, err := parseLength(s, unit); err == nil {
			v = m / unit
		}
	}
	x := f.value(span{0, lengthMetres.span().high / unit, true, "(or with a unit: 4 ft, 48 in, 1.2 m)"}, key, v)
	return x * unit
}

type lengthUnit struct {
	suffix string
	metres float64
}

func lengthUnits() []lengthUnit {
	return []lengthUnit{{"_m", 1}, {"_ft", compost.Foot}, {"_cm", 0.01}, {"_in", compost.Foot / 12}, {"", 1}}
}

// sides reads three lengths from a list such as before_ft.
func (f fields) sides(names ...string) (d [3]float64, ok bool) {
	for _, n := range names {
		for _, u := range lengthUnits() {
			v, there := f.m[n+u.suffix]
			if !there || v == nil {
				continue
			}
			l, isList := v.([]any)
			if !isList {
				continue
			}
			if len(l) != 3 {
				f.fail(n+u.suffix, "%d numbers; accepted: length, width and height", len(l))
				return d, true
			}
			for i := range l {
				d[i] = f.metres(fmt.Sprintf("%s[%d]", n+u.suffix, i), l[i], u.metres)
			}
			return d, true
		}
	}
	return d, false
}
