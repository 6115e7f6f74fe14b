package main

// Sums of the heap: volume, size, shrink, kill, stick and thermometer.

import (
	"fmt"
	"math"

	"warmstick/dialog/compost"
)

// heapSides reads length, width and height by name or as a list.
func (f fields) heapSides() [3]float64 {
	if d, ok := f.sides("size", "dims", "dimensions", "heap", "sides"); ok {
		return d
	}
	return [3]float64{
		f.length("length", "l"),
		f.length("width", "w", "base"),
		f.length("height", "h"),
	}
}

func (o outputs) volume(m3 float64) {
	o.put(m3, "volume_m3")
	o.put(m3/compost.FootCubed, "volume_ft3")
	o.put(m3*1000, "volume_l")
}

func volumeBox(f fields, a *sumAnswer) {
	d := f.heapSides()
	m3, advice := compost.Size(d[0], d[1], d[2])
	// From 0.9 to 1.0 m it takes a thick cover; a line may say there is none.
	if f.has("thick_cover") && !f.yes("thick_cover") && min(d[0], d[1], d[2]) < compost.CoverBelow && len(advice) == 0 {
		advice = append(advice, compost.HeapTooSmall)
	}
	a.Outputs.volume(m3)
	class := "ok"
	if len(advice) > 0 {
		class = string(advice[0])
	}
	a.Outputs["class"], a.Outputs["size_class"] = class, class
	w := compost.Work(m3)
	a.Outputs.span(w.Kg, "mass", "_kg")
	a.Outputs.put(w.AfterM3, "after_turn_m3")
	a.advise(advice...)
}

// span writes a range as name_low_unit, name_unit and name_high_unit.
func (o outputs) span(r compost.Range, name, unit string) {
	o.put(r.Low, name+"_low"+unit)
	o.put(r.Likely, name+unit)
	o.put(r.High, name+"_high"+unit)
}

func volumeFrustum(f fields, a *sumAnswer) {
	base, okB := f.pair("base")
	top, okT := f.pair("top")
	if !okB {
		base = [2]float64{f.length("base_length", "bottom_length"), f.length("base_width", "bottom_width")}
	}
	if !okT {
		top = [2]float64{f.length("top_length"), f.length("top_width")}
	}
	h := f.length("height", "h")
	a.Outputs.volume(compost.Frustum(base[0], base[1], top[0], top[1], h))
	a.advise(compost.SizeClasses(math.Max(base[0], base[1]), math.Min(base[0], base[1]), h)...)
}

// pair reads two lengths from a list such as base_m; a top may be 0.
func (f fields) pair(name string) (p [2]float64, ok bool) {
	for _, u := range lengthUnits() {
		v, there := f.m[name+u.suffix]
		l, isList := v.([]any)
		if !there || !isList {
			continue
		}
		if len(l) != 2 {
			f.fail(name+u.suffix, "%d numbers; accepted: length and width", len(l))
			return p, true
		}
		for i := range l {
			if x, isNum := asNumber(l[i]); isNum && x == 0 && name == "top" {
				continue
			}
			p[i] = f.metres(fmt.Sprintf("%s[%d]", name+u.suffix, i), l[i], u.metres)
		}
		return p, true
	}
	return p, false
}

func volumeWindrow(f fields, a *sumAnswer) {
	l, h := f.length("length", "l"), f.length("height", "h")
	base := f.length("base", "base_width", "bottom", "bottom_width", "width", "w")
	top := 0.0
	if f.hasLength("top", "top_width") {
		top = f.topWidth()
	}
	var v float64
	switch shape := f.text("shape", "section", "cross_section", "profile", "form"); shape {
	case "", "trapezoid", "trapezium", "trapezoidal":
		v = compost.Windrow(l, h, base, top)
	case "triangle", "triangular":
		v = compost.Windrow(l, h, base, 0)
	case "round", "rounded", "parabola", "parabolic":
		v = compost.RoundWindrow(l, h, base)
	case "box", "rectangle", "rectangular":
		v = l * h * base
	default:
		f.fail("shape", "%q is not known; accepted: trapezoid, triangle, rounded", shape)
	}
	a.Outputs.volume(v)
	a.advise(compost.SizeClasses(l, base, h)...)
}

// topWidth may be 0: the windrow is then a triangle.
func (f fields) topWidth() float64 {
	for _, n := range []string{"top", "top_width"} {
		for _, u := range lengthUnits() {
			if v, ok := asNumber(f.m[n+u.suffix]); ok && v == 0 {
				return 0
			}
		}
	}
	return f.length("top", "top_width")
}

func volumeCone(f fields, a *sumAnswer) {
	h := f.length("height", "h")
	r := 0.0
	if f.hasLength("diameter", "width") {
		r = f.length("diameter", "width") / 2
	} else {
		r = f.length("radius", "r")
	}
	a.Outputs.volume(compost.Cone(r, h))
	a.advise(compost.SizeClasses(2*r, 2*r, h)...)
}

func turnShrink(f fields, a *sumAnswer) {
	volume := func(name string) (float64, [3]float64) {
		if d, ok := f.sides(name, name+"_size", name+"_dims"); ok {
			return d[0] * d[1] * d[2], d
		}
		return f.num(litres, name+"_m3", name+"_volume_m3"), [3]float64{}
	}
	before, _ := volume("before")
	after, d := volume("after")
	o := a.Outputs
	o.put(before, "before_m3")
	o.put(after, "after_m3")
	o.put(before/compost.FootCubed, "before_ft3")
	o.put(after/compost.FootCubed, "after_ft3")
	o.put(after/before, "kept_fraction")
	o.put(1-after/before, "lost_fraction", "shrink_fraction")
	if d[0] > 0 {
		a.advise(compost.SizeClasses(d[0], d[1], d[2])...)
	}
}

func freeAir(f fields, a *sumAnswer) {
	fas := compost.FreeAir(f.num(density, densityKeys()...), f.num(percent, "moisture_pct", "moisture"), f.opt(85, percent, "organic_pct", "om_pct", "organic_matter_pct"))
	a.Outputs.put(fas, "free_air_fraction", "fas")
	a.Outputs.put(100*fas, "free_air_pct", "fas_pct")
}

func bulkDensity(f fields, a *sumAnswer) {
	kg := f.num(kilos, massKeys()...) - f.opt(0, tareGrams, "tare_kg", "bucket_kg")
	bd := kg / (f.num(litres, volumeKeys()...) / 1000)
	if *f.bad == nil && kg <= 0 {
		f.fail("tare_kg", "the bucket weighs as much as bucket and stuff together")
	}
	a.Outputs.put(bd, "bulk_density_kg_m3", "density_kg_m3")
	a.Outputs.put(bd/compost.PoundsPerYard, "bulk_density_lb_yd3")
}

// temperature reads Celsius, or Fahrenheit where that is what there is.
func (f fields) temperature(names ...string) float64 {
	var c, fahrenheit []string
	for _, n := range names {
		c, fahrenheit = append(c, n+"_c", n), append(fahrenheit, n+"_f")
	}
	if key, v, ok := f.find(fahrenheit); ok {
		return (f.value(span{-58, 302, false, "F"}, key, v) - 32) / 1.8
	}
	return f.num(celsius, c...)
}

func pfrpCheck(f fields, a *sumAnswer) {
	daily := f.list("daily_core_c", "daily_c", "core_c", "temps_c", "daily_temps_c")
	if *f.bad == nil && len(daily) == 0 {
		f.fail("daily_core_c", "empty; accepted: one temperature a day")
	}
	core := make([]float64, len(daily))
	for i, v := range daily {
		if core[i] = -50; v != nil { // a day not measured counts as cold
			core[i] = f.value(celsius.span(), fmt.Sprintf("daily_core_c[%d]", i), v)
		}
	}
	var turns []int
	if f.has("turn_days", "turns") {
		for i, v := range f.list("turn_days", "turns") {
			d := f.value(span{1, 3650, false, "(day 1 is the first temperature)"}, fmt.Sprintf("turn_days[%d]", i), v)
			turns = append(turns, int(d))
		}
	}
	if *f.bad != nil {
		return
	}
	p := compost.CheckPFRP(core, turns)
	a.Outputs["days_at_55"], a.Outputs["turns_while_hot"] = p.DaysAt55, p.TurnsWhileHot
	a.Outputs["windrow_pass"], a.Outputs["static_pass"] = p.Windrow, p.Static
	a.Outputs["longest_run_days"], a.Outputs["psrp_pass"] = p.Longest, p.LowerClass
	a.Outputs["days_needed"], a.Outputs["turns_needed"] = p.DaysNeeded, p.TurnsNeeded
	a.advise(p.Class())
}

func killTime(f fields, a *sumAnswer) {
	d, ok := compost.KillDays(f.temperature("temp", "temperature", "celsius"))
	if !ok {
		a.Outputs.none("days", "hours", "minutes")
		return
	}
	a.Outputs.put(d, "days")
	a.Outputs.put(24*d, "hours")
	a.Outputs.put(1440*d, "minutes")
}

func (a *sumAnswer) class(c compost.Class) {
	if c == "" {
		a.Outputs["class"] = nil
		return
	}
	a.Outputs["class"] = string(c)
	a.advise(c)
}

// day reads a whole day of the heap.
func (f fields) day() int { return int(math.Floor(f.num(dayNumber, "day", "day_number", "heap_day"))) }

func tempClass(f fields, a *sumAnswer) {
	day, t := f.day(), f.temperature("temp", "temperature", "core", "core_temp")
	if *f.bad != nil {
		return
	}
	switch {
	case f.yes("smoke"):
		a.class(compost.SmokeEmergency)
	case f.phase() == compost.BeforeTurn1:
		a.class(compost.TempClass(day, t))
	default:
		a.class(compost.JudgeTemp(day, t))
	}
}

func (f fields) phase() compost.Phase {
	switch p := f.text("stage", "phase"); p {
	case "", "before_turn_1", "before_first_turn", "before_turn", "heating":
		return compost.BeforeTurn1
	case "after_turn_1", "after_first_turn", "after_turn", "turned":
		return compost.AfterTurn1
	case "after_turn_2", "after_turn_3", "after_turn_4", "after_turn_5", "after_second_turn":
		return compost.AfterTurn2
	case "rest", "resting", "after_rest", "after_the_rest", "opening", "after_day_25", "after_d25":
		return compost.Resting
	default:
		f.fail("stage", "%q is not known; accepted: before_turn_1, after_turn_1, after_turn_2, resting", p)
		return ""
	}
}

func stickAnswer(f fields, a *sumAnswer) {
	day, phase := f.day(), f.phase()
	answer := f.text("answer", "stick", "word")
	switch answer {
	case "hot", "warm", "cold", "smoke", "wet", "dry", "cold_wet", "wet_cold", "wet+cold", "cold+wet", "wet_+_cold":
	default:
		f.fail("answer", "%q is not accepted; accepted: hot, warm, cold, smoke, wet, dry", answer)
	}
	if *f.bad != nil {
		return
	}
	a.class(compost.Judge(day, phase, answer, f.yes("highland", "cold_highland", "cold")))
}
