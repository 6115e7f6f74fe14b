package main

// The sums a person may ask for, each from its words to what the answer shows.

import (
	"errors"
	"fmt"
	"strings"

	"warmstick/dialog/compost"
)

// portion takes AMOUNT MEASURE MATERIAL and the words trodden and wilted on
// either side of the material.
func (w *words) portion() (p compost.Portion, err error) {
	if p.N, err = w.number("amount", count); err != nil {
		return p, err
	}
	if p.Unit, p.Material, err = w.measure(&p); err != nil {
		return p, err
	}
	return p, nil
}

func (w *words) measure(p *compost.Portion) (unit, material string, err error) {
	how := func() {
		for {
			switch w.peek() {
			case "trodden":
				p.Trodden = true
			case "wilted":
				p.Wilted = true
			case "loose", "fresh", "of":
			default:
				return
			}
			w.next()
		}
	}
	how()
	unit, _ = w.next()
	if unit = unitCode(unit); unit == "" {
		return "", "", fmt.Errorf("measure: not known; accepted: %s", strings.Join(compost.Units(), ", "))
	}
	how()
	material, ok := w.next()
	if _, known := compost.Lookup(material); !ok || !known {
		near := "see warmstick calc materials"
		if n := compost.Near(material); len(n) > 0 {
			near = "did you mean " + strings.Join(n, ", ") + "?"
		}
		return "", "", fmt.Errorf("material: %q is not known; %s", material, near)
	}
	how()
	if _, _, ok := w.cal.Weigh(compost.Portion{N: 1, Unit: unit, Material: material}); !ok {
		return "", "", fmt.Errorf("measure: %q is no measure of %s", unit, material)
	}
	return unit, material, nil
}

// unitCode takes plurals.
func unitCode(s string) string {
	for _, u := range compost.Units() {
		if s == u || s == u+"s" || s == u+"es" || u == "kg" && (s == "kilo" || s == "kilos" || s == "kgs") || u == "litre" && (s == "l" || s == "liter" || s == "liters") {
			return u
		}
	}
	return ""
}

func (w *words) mix() (any, error) {
	var ps []compost.Portion
	for len(w.rest) > 0 {
		p, err := w.portion()
		if err != nil {
			return nil, err
		}
		ps = append(ps, p)
	}
	m, ok := compost.Blend(ps, w.cal)
	if !ok {
		return nil, errors.New("mix: nothing in it; accepted: AMOUNT MEASURE MATERIAL, such as 3 basin cow_dung")
	}
	return struct {
		Mix     compost.Mix
		Unknown []string
	}{m, nil}, nil
}

func (w *words) shop() (any, error) {
	var have []compost.Portion
	var can []compost.Fetch
	if w.peek() == "have" {
		w.next()
		for len(w.rest) > 0 && w.peek() != "can" {
			p, err := w.portion()
			if err != nil {
				return nil, err
			}
			have = append(have, p)
		}
	}
	if word, _ := w.next(); word != "can" {
		return nil, errors.New("shop: nothing to fetch; accepted: can MEASURE MATERIAL EFFORT [max N]")
	}
	effort := map[string]float64{}
	for len(w.rest) > 0 {
		f, err := w.fetch()
		if err != nil {
			return nil, err
		}
		can = append(can, f)
		effort[f.Unit+" "+f.Material] = f.Effort
	}
	list, water, ok := compost.Shop(have, can, compost.HeapGoal(), w.cal)
	total := 0.0
	for _, b := range list {
		total += float64(b.N) * effort[b.Unit+" "+b.Material]
	}
	return struct {
		List   []compost.Buy
		Water  float64
		Effort string
		OK     bool
	}{list, water, plain(total), ok}, nil
}

func (w *words) fetch() (f compost.Fetch, err error) {
	var p compost.Portion
	if f.Unit, f.Material, err = w.measure(&p); err != nil {
		return f, err
	}
	if f.Effort, err = w.number("effort", coin); err != nil {
		return f, err
	}
	if w.peek() == "max" {
		w.next()
		n, err := w.number("max", count)
		if err != nil {
			return f, err
		}
		f.Max = int(n)
	}
	return f, nil
}

func (w *words) size() (any, error) {
	d, err := w.lengths()
	if err != nil {
		return nil, err
	}
	m3, advice := compost.Size(d[0], d[1], d[2])
	return struct {
		M3, Ft3 float64
		Day     compost.Day
		Advice  []compost.Class
	}{m3, m3 / compost.FootCubed, compost.Work(m3), advice}, w.end()
}

// end says that nothing may follow.
func (w *words) end() error {
	if len(w.rest) > 0 {
		return fmt.Errorf("%q: one word too many; see warmstick calc --help", w.rest[0])
	}
	return nil
}

func (w *words) starter() (any, error) {
	if w.peek() == "heap" {
		w.next()
		d, err := w.lengths()
		if err != nil {
			return nil, err
		}
		return compost.FermentFor(d[0] * d[1] * d[2]), w.end()
	}
	l, err := w.number("litres", litres)
	if err != nil {
		return nil, err
	}
	if w.peek() == "litres" || w.peek() == "l" {
		w.next()
	}
	return compost.Ferment(l), w.end()
}

func (w *words) kill() (any, error) {
	t, err := w.number("temperature", celsius)
	if err != nil {
		return nil, err
	}
	d, ok := compost.KillDays(t)
	return struct {
		C, Days, Hours, Minutes float64
		OK                      bool
	}{t, d, 24 * d, 1440 * d, ok}, w.end()
}

func (w *words) worms() (any, error) {
	feed, err := w.number("feed in kg", kilos)
	if err != nil {
		return nil, err
	}
	worms := 0.0
	if len(w.rest) > 0 {
		if worms, err = w.number("worms in kg", kilos); err != nil {
			return nil, err
		}
	}
	return struct {
		compost.BedPlan
		Yield compost.Range
	}{compost.Bed(feed, worms), compost.Yield(feed)}, w.end()
}

func (w *words) grow() (any, error) {
	kg, err := w.number("worms in kg", kilos)
	if err != nil {
		return nil, err
	}
	days, err := w.number("days", dayNumber)
	if err != nil {
		return nil, err
	}
	m2 := 0.0
	if len(w.rest) > 0 {
		if m2, err = w.number("bed in m2", squareMetres); err != nil {
			return nil, err
		}
	}
	split, ok := compost.SplitAfter(kg, m2)
	return struct {
		Stock, Split compost.Range
		Splits       bool
	}{compost.Stock(kg, days, m2), split, ok}, w.end()
}
