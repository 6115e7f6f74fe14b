package main

// Sums of starter, worms, crops and money.

import (
	"strings"

	"warmstick/dialog/compost"
)

func (f fields) feedRate() float64 {
	return f.opt(compost.FeedRate, partOfOne, "feed_rate", "rate", "kg_per_kg_day")
}

func wormSizing(f fields, a *sumAnswer) {
	worms := compost.WormsFor(f.num(kilos, "feed_kg_per_day", "feed_kg_day", "feed_per_day_kg", "feed_kg"), f.feedRate())
	d := f.opt(compost.BedDensity, count, "density_kg_m2", "density", "stocking_kg_m2", "worm_density_kg_m2")
	a.Outputs.put(worms, "worms_kg")
	a.Outputs.put(compost.BedFor(worms, d), "bed_m2", "area_m2")
}

func batchDays(f fields, a *sumAnswer) {
	batch := f.num(kilos, "batch_kg", "feed_kg", "mass_kg", "compost_kg")
	worms := f.num(kilos, "worms_kg", "worm_kg")
	a.Outputs.put(compost.DaysToEat(batch, worms, f.feedRate()), "days")
}

func vermicompostYield(f fields, a *sumAnswer) {
	feed := f.num(kilos, "feed_kg", "batch_kg", "mass_kg", "compost_kg")
	y := compost.Yield(feed)
	if f.has("fraction", "yield_fraction") {
		y = compost.Exactly(feed * f.num(partOfOne, "fraction", "yield_fraction"))
	}
	o := a.Outputs
	o.put(y.Low, "low_kg", "min_kg", "yield_low_kg", "yield_min_kg", "vermicompost_low_kg", "vermicompost_min_kg", "yield_kg_low", "vermicompost_kg_low")
	o.put(y.Likely, "kg", "yield_kg", "vermicompost_kg", "usual_kg", "likely_kg", "typical_kg", "mass_kg", "yield_usual_kg", "vermicompost_usual_kg", "yield_kg_usual", "vermicompost_kg_usual")
	o.put(y.High, "high_kg", "max_kg", "yield_high_kg", "yield_max_kg", "vermicompost_high_kg", "vermicompost_max_kg", "yield_kg_high", "vermicompost_kg_high")
}

func fermentScale(f fields, a *sumAnswer) {
	water := 0.0
	switch {
	case f.has("jaggery_g"):
		water = f.num(grams, "jaggery_g") / compost.Ferment(1).Jaggery
	case f.has("banana_g"):
		water = f.num(grams, "banana_g") / compost.Ferment(1).Banana
	default:
		water = f.num(litres, "water_l", "water_litres", "water", "litres")
	}
	r := compost.Ferment(water)
	o := a.Outputs
	o.put(r.Banana, "banana_g")
	o.put(r.Papaya, "papaya_g")
	o.put(r.Banana+r.Papaya, "fruit_g")
	o.put(r.Jaggery, "jaggery_g")
	o.put(r.Water, "water_l")
	o.put(r.Bottle, "bottle_l")
	o.put(r.GasLitres, "gas_l")
	o.put(r.Dilute.Low, "dilute_low_l")
	o.put(r.Dilute.High, "dilute_high_l")
	a.advise(compost.PressureWarning)
}

func fermentGas(f fields, a *sumAnswer) {
	part := f.opt(0.8, partOfOne, "sugar_fraction", "sugar_share", "sugar_part")
	if f.has("sugar_pct") {
		part = f.num(percent, "sugar_pct") / 100
	}
	mass := 0.0
	switch {
	case f.has("sugar_g", "sucrose_g"):
		mass, part = f.num(grams, "sugar_g", "sucrose_g"), 1
	case f.has("jaggery_kg"):
		mass = 1000 * f.num(kilos, "jaggery_kg")
	default:
		mass = f.num(grams, "jaggery_g", "jaggery")
	}
	t := 25.0
	if f.has("temp_c", "temp", "temp_f") {
		t = f.temperature("temp")
	}
	g := compost.Gas(mass, part, t)
	o := a.Outputs
	o.put(g.Sugar, "sugar_g")
	o.put(g.CO2, "co2_g", "gas_g")
	o.put(g.Litres, "gas_l", "co2_l", "volume_l", "gas_litres", "gas_volume_l", "litres")
	a.advise(compost.PressureWarning)
}

func application(f fields, a *sumAnswer) {
	o := a.Outputs
	if f.has(rateKeys()...) {
		kg := compost.FieldKg(f.num(tonsPerHa, rateKeys()...), f.area())
		o.put(kg, applicationKeys()...)
		o.put(kg/f.area(), "kg_per_m2")
		return
	}
	crop := f.crop()
	d, ok := compost.Rate(crop)
	if !ok {
		f.fail("crop", "%q is not known; accepted: rate_t_ha, or one of %s", crop, strings.Join(compost.Crops(), ", "))
		return
	}
	a.Source = d.Source
	switch {
	case f.has(plantKeys()...) && d.PerPlant.Likely > 0:
		o.dose(d.PerPlant.Times(f.num(count, plantKeys()...)))
	case f.hasArea() && d.PerM2.Likely > 0:
		o.dose(d.PerM2.Times(f.area()))
	case d.Part.Likely > 0:
		v := d.Part.Times(f.num(litres, "mix_l", "pot_mix_l", "volume_l", "litres"))
		o.span(v, "vermicompost", "_l")
		o.put(v.Low, "low_l")
		o.put(v.Likely, "likely_l")
		o.put(v.High, "high_l")
	case d.PerM2.Likely > 0:
		f.num(squareMetres, "area_m2")
	default:
		f.num(count, plantKeys()...)
	}
}

func applicationKeys() []string {
	return []string{"kg", "mass_kg", "vermicompost_kg", "compost_kg", "total_kg", "kg_total", "amount_kg", "kg_for_field", "needed_kg"}
}

func (o outputs) dose(r compost.Range) {
	o.put(r.Likely, applicationKeys()...)
	o.put(r.Likely, "likely_kg", "usual_kg")
	o.put(r.Low, "low_kg", "min_kg", "kg_low", "kg_min", "vermicompost_low_kg", "mass_low_kg")
	o.put(r.High, "high_kg", "max_kg", "kg_high", "kg_max", "vermicompost_high_kg", "mass_high_kg")
}

func rateKeys() []string {
	return []string{"rate_t_ha", "t_ha", "t_per_ha", "rate_t_per_ha", "rate", "tonnes_per_ha", "dose_t_ha"}
}

func plantKeys() []string {
	return []string{"plants", "trees", "bushes", "mats", "holes", "n_plants", "n_trees", "plant_count", "count", "number"}
}

func (f fields) crop() string {
	c := f.text("crop", "use")
	if _, ok := compost.Rate(c); ok {
		return c
	}
	switch c {
	case "tree", "trees", "fruit", "fruit_trees", "fruittree":
		return "fruit_tree"
	case "seedlings", "pot", "pots", "nursery", "seedlings_pots":
		return "seedling"
	case "plain_compost":
		return "compost"
	}
	return strings.TrimSuffix(c, "s")
}

func (f fields) hasArea() bool {
	return f.has("area_m2", "area", "m2", "area_ha", "ha", "area_acre", "acres", "area_ft2", "field_m2", "plot_m2")
}

// area in m2; an acre is 4046.8564224 m2 (definition).
func (f fields) area() float64 {
	switch {
	case f.has("area_ha", "ha"):
		return 1e4 * f.num(squareMetres, "area_ha", "ha")
	case f.has("area_acre", "acres"):
		return 4046.8564224 * f.num(squareMetres, "area_acre", "acres")
	case f.has("area_ft2"):
		return compost.Foot * compost.Foot * f.num(squareMetres, "area_ft2")
	}
	return f.num(squareMetres, "area_m2", "area", "m2", "field_m2", "plot_m2")
}

func wormGrowth(f fields, a *sumAnswer) {
	kg, m2 := f.num(kilos, "worms_kg", "worm_kg"), f.opt(0, tareGrams, "bed_m2", "area_m2")
	s := compost.Stock(kg, f.num(dayNumber, "days"), m2)
	a.Outputs.span(s, "worms", "_kg")
	if d, ok := compost.SplitAfter(kg, m2); ok {
		a.Outputs.span(d, "split_after", "_days")
	} else {
		a.Outputs.none("split_after_days")
	}
}

func money(f fields, a *sumAnswer) {
	c := func(keys ...string) float64 { return f.opt(0, coin, keys...) }
	e := compost.Earn(compost.Purse{
		Costs: c("costs", "cost"), DaysOut: c("days", "work_days"), Wage: c("wage", "wage_per_day"),
		SoldKg: c("sold_kg"), Price: c("price_per_kg", "price"), UsedKg: c("used_kg"), Saved: c("saved_per_kg", "saved"),
	})
	o := a.Outputs
	o.put(e.Income, "income")
	o.put(e.Costs, "costs")
	o.put(e.Left, "left", "profit")
	o.put(e.PerDay, "per_day")
	o.put(e.PerKg, "cost_per_kg")
}

func breakEven(f fields, a *sumAnswer) {
	n, ok := compost.BreakEven(f.num(coin, "price", "cost"), f.opt(0, coin, "gain_per_heap", "gain"))
	if !ok {
		a.Outputs.none("heaps")
		return
	}
	a.Outputs["heaps"] = n
}
