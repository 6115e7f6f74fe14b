package main

// Sums in a farmer's own measures, and the heat of a diary.

import (
	"fmt"
	"strings"

	"warmstick/dialog/compost"
)

// portions reads a list of {"n":3,"unit":"basin","material":"cow_dung"}.
func (f fields) portions(key string) (ps []compost.Portion) {
	for i, v := range f.list(key) {
		at := fmt.Sprintf("%s[%d]", key, i)
		m, ok := v.(map[string]any)
		if !ok {
			f.fail(at, "not an object; accepted: {\"n\":3,\"unit\":\"basin\",\"material\":\"cow_dung\"}")
			return nil
		}
		g := f.under(at, m)
		unit, material := g.measure()
		ps = append(ps, compost.Portion{
			N: g.num(count, "n", "number", "amount"), Unit: unit, Material: material,
			Trodden: g.yes("trodden"), Wilted: g.yes("wilted"),
		})
	}
	return ps
}

func (f fields) measure() (unit, material string) {
	unit, material = f.text("unit", "measure"), f.text("material", "id")
	if _, ok := compost.Lookup(material); !ok {
		f.unknown(material)
		return unit, material
	}
	if _, _, ok := compost.Calibration(nil).Weigh(compost.Portion{N: 1, Unit: unit, Material: material}); !ok {
		f.fail("unit", "%q is no measure of %s; accepted: %s", unit, material, strings.Join(compost.Units(), ", "))
	}
	return unit, material
}

// calibration reads {"basket dry_leaves": 3, "bucket": 18}.
func (f fields) calibration() compost.Calibration {
	m, ok := f.m["calibration"].(map[string]any)
	if !ok {
		return nil
	}
	c := compost.Calibration{}
	for k, v := range m {
		c[k] = f.value(span{0, 1e6, true, "kg of a measure of a material, or litres of a measure"}, "calibration", v)
	}
	return c
}

func farmerMix(f fields, a *sumAnswer) {
	ps, cal := f.portions("portions"), f.calibration()
	if *f.bad != nil {
		return
	}
	m, ok := compost.Blend(ps, cal)
	if !ok {
		f.fail("portions", "empty; accepted: one portion or more")
		return
	}
	o := a.Outputs
	o.span(m.CN, "cn", "")
	o.span(m.Moisture, "moisture", "_pct")
	o.span(m.Kg, "mass", "_kg")
	o.span(m.M3, "volume", "_m3")
	o.put(m.Water, "water_l")
	o["settled"], o["doubt"] = m.Settled, m.Doubt
	a.advise(m.Advice...)
}

func shoppingList(f fields, a *sumAnswer) {
	var have []compost.Portion
	if f.has("have") {
		have = f.portions("have")
	}
	var can []compost.Fetch
	for i, v := range f.list("can") {
		m, _ := v.(map[string]any)
		g := f.under(fmt.Sprintf("can[%d]", i), m)
		unit, material := g.measure()
		can = append(can, compost.Fetch{Unit: unit, Material: material,
			Effort: g.opt(1, coin, "effort"), Max: int(g.opt(0, coin, "max"))})
	}
	goal, cal := compost.HeapGoal(), f.calibration()
	goal.CN = f.band(goal.CN, "goal_cn")
	goal.Moisture = f.band(goal.Moisture, "goal_moisture_pct")
	goal.M3 = f.band(goal.M3, "goal_m3")
	if *f.bad != nil {
		return
	}
	list, water, ok := compost.Shop(have, can, goal, cal)
	if !ok {
		a.Outputs.none("list", "water_l")
		a.advise(compost.CannotFixWithThis)
		return
	}
	lines := []string{}
	for _, b := range list {
		lines = append(lines, fmt.Sprintf("%d %s %s", b.N, b.Unit, b.Material))
	}
	a.Outputs["list"] = lines
	a.Outputs.put(water, "water_l")
}

// band reads [low, high].
func (f fields) band(usual [2]float64, key string) [2]float64 {
	if !f.has(key) {
		return usual
	}
	l := f.list(key)
	if len(l) != 2 {
		f.fail(key, "%d numbers; accepted: lowest and highest, 0 for no highest", len(l))
		return usual
	}
	s := span{0, 10_000, false, ""}
	return [2]float64{f.value(s, key, l[0]), f.value(s, key, l[1])}
}

// heatEstimate reads days: signs [{"day":3,"word":"hot"}], turns [7, 14].
func heatEstimate(f fields, a *sumAnswer) {
	log := compost.HeatLog{
		Moisture: f.opt(0, percent, "moisture_pct"), CN: f.opt(0, ratio, "cn"), Air: f.opt(0, celsius, "air_c"),
		Until: 24 * f.num(dayNumber, "until_day", "day"),
	}
	if d, ok := f.sides("size", "dims"); ok {
		log.Dims = d
	}
	if f.has("signs") {
		for i, v := range f.list("signs") {
			m, _ := v.(map[string]any)
			g := f.under(fmt.Sprintf("signs[%d]", i), m)
			s := compost.Sign{Hour: 24 * g.num(dayNumber, "day"), Word: g.text("word", "stick"), Celsius: g.opt(0, celsius, "temp_c")}
			if s.Word != "" && s.Word != "hot" && s.Word != "warm" && s.Word != "cold" {
				g.fail("word", "%q is not accepted; accepted: hot, warm, cold", s.Word)
			}
			log.Signs = append(log.Signs, s)
		}
	}
	log.Turns, log.Waters = f.days("turns"), f.days("waters")
	if *f.bad != nil {
		return
	}
	e := compost.Heat(log)
	n := len(e.Hours) - 1
	o := a.Outputs
	o.put(e.Likely[n], "temp_c")
	o.put(e.Low[n], "temp_low_c")
	o.put(e.High[n], "temp_high_c")
	o.span(e.DaysAt55, "days_at_55", "")
	o.put(e.OutsideTreated, "outside_treated")
	if e.NextTurn > 0 {
		o.put(e.NextTurn/24, "next_turn_day")
	} else {
		o.none("next_turn_day")
	}
	a.advise(compost.NotProof)
}

func (f fields) days(key string) (hours []float64) {
	if !f.has(key) {
		return nil
	}
	for _, v := range f.list(key) {
		hours = append(hours, 24*f.value(dayNumber.span(), key, v))
	}
	return hours
}
