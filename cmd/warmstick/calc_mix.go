package main

// Sums of materials: moisture, carbon to nitrogen, water, missing masses.

import (
	"fmt"
	"strings"

	"warmstick/dialog/compost"
)

func (a *sumAnswer) advise(classes ...compost.Class) {
	for _, c := range classes {
		if c != "" {
			a.Advice = append(a.Advice, string(c))
		}
	}
}

func sampleMoisture(f fields, a *sumAnswer) {
	tare := f.opt(0, tareGrams, "tare_g", "container_g", "tare")
	var wet float64
	if f.has("wet_with_tare_g", "wet_gross_g") {
		wet = f.num(grams, "wet_with_tare_g", "wet_gross_g") - tare
	} else {
		wet = f.num(grams, "wet_sample_g", "wet_g", "wet_mass_g", "fresh_g", "wet_weight_g")
	}
	var dry float64
	if f.has("dry_sample_g", "dry_g", "dry_mass_g", "dry_weight_g") {
		dry = f.num(grams, "dry_sample_g", "dry_g", "dry_mass_g", "dry_weight_g")
	} else {
		dry = f.num(grams, "dry_with_tare_g", "dry_gross_g") - tare
	}
	pct, ok := compost.SampleMoisture(wet, dry)
	if !ok {
		f.fail("dry_with_tare_g", "the dry sample cannot weigh more than the wet one or less than its container; accepted: tare up to tare + wet sample")
		return
	}
	a.Outputs.put(pct, "moisture_pct")
	a.Outputs.put(100-pct, "dry_matter_pct")
}

func carbonFromN(f fields, a *sumAnswer) {
	c := compost.CarbonFromRatio(f.num(nitrogenPercent, "n_pct", "nitrogen_pct"), f.num(ratio, "cn", "c_n", "cn_ratio"))
	a.Outputs.put(c, "c_pct", "carbon_pct")
}

func carbonFromAsh(f fields, a *sumAnswer) {
	a.Outputs.put(compost.CarbonFromAsh(f.num(percent, "ash_pct", "ash")), "c_pct", "carbon_pct")
}

// need says what a sum asks of a material beside what the table may fill in.
type wanted struct{ mass, moisture, cn bool }

func massKeys() []string {
	return []string{"mass_kg", "kg", "quantity_kg", "wet_kg", "wet_mass_kg", "weight_kg", "q_kg", "amount_kg", "mass"}
}

// stuff reads one material, by id from the table or by its numbers; numbers
// given beside an id win.
func (f fields) stuff(w wanted) (s compost.Stuff, m compost.Material) {
	known := false
	if id := f.text("id", "material", "material_id", "code"); id != "" {
		if m, known = compost.Lookup(id); !known {
			f.unknown(id)
			return s, m
		}
		s.Moisture, s.Carbon, s.Nitrogen = m.Moisture, m.Carbon, m.Nitrogen
	}
	if w.mass {
		s.Kg = f.mass(m, known)
	}
	if w.moisture && !known || f.has("moisture_pct", "moisture", "m_pct", "water_pct") {
		s.Moisture = f.num(percent, "moisture_pct", "moisture", "m_pct", "water_pct")
	}
	if w.cn && !known || f.has("n_pct", "nitrogen_pct", "n") {
		s.Nitrogen = f.num(nitrogenPercent, "n_pct", "nitrogen_pct", "n")
	}
	switch {
	case f.has("c_pct", "carbon_pct", "c"):
		s.Carbon = f.num(percent, "c_pct", "carbon_pct", "c")
	case f.has("cn", "c_n", "cn_ratio"):
		s.Carbon = s.Nitrogen * f.num(ratio, "cn", "c_n", "cn_ratio")
	case known:
		s.Carbon = s.Nitrogen * m.CN.Likely
	case w.cn:
		f.num(percent, "c_pct", "carbon_pct", "c")
	}
	return s, m
}

// mass reads kilos, or litres by the density of the table or the line.
func (f fields) mass(m compost.Material, known bool) float64 {
	if f.has(massKeys()...) {
		return f.num(kilos, massKeys()...)
	}
	if f.has(volumeKeys()...) || f.has("volume_m3", "m3") {
		v := 0.0
		if f.has("volume_m3", "m3") {
			v = f.num(litres, "volume_m3", "m3")
		} else {
			v = f.num(litres, volumeKeys()...) / 1000
		}
		if known {
			return v * f.opt(m.Density, density, densityKeys()...)
		}
		return v * f.num(density, densityKeys()...)
	}
	return f.num(kilos, massKeys()...)
}

func volumeKeys() []string {
	return []string{"volume_l", "litres", "liters", "l", "volume_litres", "volume_liters", "vol_l", "litre", "amount_l"}
}

func densityKeys() []string {
	return []string{"bulk_density_kg_m3", "density_kg_m3", "bd_kg_m3", "bulk_density", "density"}
}

func (f fields) unknown(id string) {
	near := compost.Near(id)
	if len(near) == 0 {
		f.fail("id", "%q is not a known material; accepted: an id of the materials table, such as cow_dung_fresh, grass_fresh, maize_stover", id)
		return
	}
	f.fail("id", "%q is not a known material; did you mean %s?", id, strings.Join(near, ", "))
}

// each reads a list of materials.
func (f fields) each(w wanted) (all []compost.Stuff, rows []compost.Material) {
	list := f.list("materials", "parts", "ingredients", "mix")
	if list != nil && len(list) == 0 {
		f.fail("materials", "empty; accepted: one material or more")
	}
	for i, v := range list {
		at := fmt.Sprintf("materials[%d]", i)
		m, ok := v.(map[string]any)
		if !ok {
			f.fail(at, "not an object; accepted: {\"id\":...,\"mass_kg\":...}")
			return nil, nil
		}
		s, row := f.under(at, m).stuff(w)
		all, rows = append(all, s), append(rows, row)
	}
	return all, rows
}

func mixCN(f fields, a *sumAnswer) {
	asUsed := false
	switch b := f.text("basis"); b {
	case "", "dry", "dry_mass", "dry_matter":
	case "as_used", "as_is", "wet":
		asUsed = true
	default:
		f.fail("basis", "%q is not known; accepted: dry, as_used", b)
	}
	all, _ := f.each(wanted{mass: true, moisture: !asUsed, cn: true})
	if *f.bad != nil {
		return
	}
	moisture := compost.Moisture(all...)
	if asUsed { // percentages are of the mass as it is: no water is taken off
		for i := range all {
			all[i].Moisture = 0
		}
	}
	a.mix(all, moisture, asUsed)
}

// mix writes what a list of materials comes to.
func (a *sumAnswer) mix(all []compost.Stuff, moisture float64, asUsed bool) {
	cn := compost.CN(all...)
	var kg, dry, c, n float64
	for _, s := range all {
		d := s.Kg * (100 - s.Moisture) / 100
		kg, dry, c, n = kg+s.Kg, dry+d, c+d*s.Carbon/100, n+d*s.Nitrogen/100
	}
	o := a.Outputs
	o.put(cn, "cn", "cn_ratio")
	o.put(moisture, "moisture_pct")
	o.put(kg, "mass_kg", "total_kg", "total_mass_kg")
	o.put(dry, "dry_kg", "dry_mass_kg")
	o.put(c, "c_kg", "carbon_kg")
	o.put(n, "n_kg", "nitrogen_kg")
	switch {
	case cn != cn: // no nitrogen at all
		a.advise(compost.TooMuchBrown)
		if !asUsed {
			a.advise(compost.JudgeMoisture(moisture))
		}
	case asUsed:
		a.advise(compost.JudgeCN(cn))
	default:
		a.advise(compost.JudgeMix(cn, moisture)...)
	}
}

func goalKeys() []string {
	return []string{"goal_moisture_pct", "goal_pct", "target_moisture_pct", "target_pct", "moisture_goal_pct", "goal_moisture", "goal"}
}

func materialsMix(f fields, a *sumAnswer) {
	all, rows := f.each(wanted{mass: true, moisture: true, cn: true})
	goal := f.opt(compost.GoalMoisture, goalPercent, goalKeys()...)
	if *f.bad != nil {
		return
	}
	moisture := compost.Moisture(all...)
	a.mix(all, moisture, false)
	var kg, m3 float64
	masses := make([]any, len(all))
	for i, s := range all {
		kg += s.Kg
		m3 += s.Kg / rows[i].Density
		masses[i] = round(s.Kg)
	}
	o := a.Outputs
	water := compost.WaterToAdd(kg, moisture, goal)
	o.put(water, "water_l", "water_litres", "water_kg")
	o["masses_kg"] = masses
	o.put(m3, "volume_m3", "loose_volume_m3")
	o.put(1000*m3, "volume_l")
	o.put(kg/m3, "bulk_density_kg_m3", "density_kg_m3")
}

func waterToAdd(f fields, a *sumAnswer) {
	kg, m := f.num(kilos, massKeys()...), f.num(percent, "moisture_pct", "moisture", "m_pct")
	goal := f.opt(compost.GoalMoisture, goalPercent, goalKeys()...)
	w := compost.WaterToAdd(kg, m, goal)
	a.Outputs.put(w, "water_l", "water_litres", "water_kg")
	a.Outputs.put(kg+w, "new_mass_kg")
	a.advise(compost.JudgeMoisture(m))
}

// pile reads the materials there are and the one to add: numbered keys, or a
// list whose last is the one to add.
func (f fields) pile(w wanted) (have []compost.Stuff, add compost.Stuff) {
	w.mass = true
	if f.has("materials") {
		list := f.list("materials")
		if len(list) < 2 {
			f.fail("materials", "%d entries; accepted: two or more, the last is the one to add", len(list))
			return nil, add
		}
		for i, v := range list {
			m, ok := v.(map[string]any)
			if !ok {
				f.fail(fmt.Sprintf("materials[%d]", i), "not an object")
				return nil, add
			}
			w.mass = i < len(list)-1
			s, _ := f.under(fmt.Sprintf("materials[%d]", i), m).stuff(w)
			have = append(have, s)
		}
		return have[:len(have)-1], have[len(have)-1]
	}
	for n := 1; ; n++ {
		key, m, ok := f.material(n)
		_, _, more := f.material(n + 1)
		if !ok {
			f.fail(fmt.Sprintf("material_%d", n), "missing; accepted: an object with its numbers")
			return nil, add
		}
		w.mass = more || n == 1
		if n > 1 && !more {
			add, _ = f.under(key, m).stuff(w)
			return have, add
		}
		s, _ := f.under(key, m).stuff(w)
		have = append(have, s)
	}
}

func (f fields) material(n int) (string, map[string]any, bool) {
	words := []string{"", "first", "second", "third", "fourth"}
	keys := []string{fmt.Sprintf("material_%d", n), fmt.Sprintf("material%d", n), fmt.Sprintf("m%d", n)}
	if n < len(words) {
		keys = append(keys, words[n], words[n]+"_material")
	}
	for _, k := range keys {
		if m, ok := f.m[k].(map[string]any); ok {
			return k, m, true
		}
	}
	return "", nil, false
}

// missing writes the mass to add, or that this material cannot do it.
func (a *sumAnswer) missing(f fields, have []compost.Stuff, add compost.Stuff, kg float64, ok bool) {
	if *f.bad != nil {
		return
	}
	if !ok {
		a.Outputs.none("mass_kg", "kg")
		a.advise(compost.CannotFixWithThis)
		return
	}
	a.Outputs.put(kg, "mass_kg", "kg")
	add.Kg = kg
	all := append(have, add)
	a.Outputs.put(compost.Moisture(all...), "mix_moisture_pct")
	a.Outputs.put(compost.CN(all...), "mix_cn")
}

func massForMoisture(f fields, a *sumAnswer) {
	have, add := f.pile(wanted{moisture: true})
	goal := f.num(goalPercent, goalKeys()...)
	kg, ok := compost.KgForMoisture(goal, add.Moisture, have...)
	a.missing(f, have, add, kg, ok)
}

func massForCN(f fields, a *sumAnswer) {
	have, add := f.pile(wanted{moisture: true, cn: true})
	goal := f.num(ratio, "goal_cn", "target_cn", "cn_goal", "goal")
	kg, ok := compost.KgForCN(goal, add, have...)
	a.missing(f, have, add, kg, ok)
}

// massesForBoth: the last two of the list are to be added.
func massesForBoth(f fields, a *sumAnswer) {
	list := f.list("materials")
	cn := f.num(ratio, "goal_cn", "target_cn", "cn_goal")
	goal := f.num(goalPercent, goalKeys()...)
	if *f.bad == nil && len(list) < 3 {
		f.fail("materials", "%d entries; accepted: three or more, the last two are to be added", len(list))
	}
	var all []compost.Stuff
	for i, v := range list {
		m, _ := v.(map[string]any)
		s, _ := f.under(fmt.Sprintf("materials[%d]", i), m).stuff(wanted{mass: i < len(list)-2, moisture: true, cn: true})
		all = append(all, s)
	}
	if *f.bad != nil {
		return
	}
	n := len(all)
	x, y, ok := compost.KgForBoth(cn, goal, all[n-2], all[n-1], all[:n-2]...)
	if !ok {
		a.Outputs.none("mass_1_kg", "mass_2_kg")
		a.advise(compost.CannotFixWithThis)
		return
	}
	a.Outputs.put(x, "mass_1_kg")
	a.Outputs.put(y, "mass_2_kg")
}
