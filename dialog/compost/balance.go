package compost

// The mass balance of a mix on plain numbers, F2 to F11 of the handbook
// literature (S10 for moisture, S19 and R8 for C:N). Averaging ratios by
// buckets is not a mass balance and is not offered.

import "math"

// Stuff is a mass of one material with what is in it.
type Stuff struct {
	Kg       float64 // wet
	Moisture float64 // % of wet mass
	Carbon   float64 // % of dry mass
	Nitrogen float64 // % of dry mass
}

func (s Stuff) dry() float64 { return s.Kg * (100 - s.Moisture) / 100 }

// lack is the nitrogen above what a C:N of cn needs, less the carbon: zero
// when the stuff is at the goal, below zero when it is too brown.
func (s Stuff) lack(cn float64) float64 { return s.dry() * (cn*s.Nitrogen - s.Carbon) }

// CN is the ratio of a mix (F5). NaN when there is no nitrogen in it.
func CN(parts ...Stuff) float64 {
	var c, n float64
	for _, p := range parts {
		c += p.dry() * p.Carbon
		n += p.dry() * p.Nitrogen
	}
	if n == 0 {
		return math.NaN()
	}
	return c / n
}

// Moisture is that of a mix in % (F3). NaN when there is no mass.
func Moisture(parts ...Stuff) float64 {
	var q, w float64
	for _, p := range parts {
		q += p.Kg
		w += p.Kg * p.Moisture
	}
	if q == 0 {
		return math.NaN()
	}
	return w / q
}

// KgForMoisture is the mass of one more material of the given moisture that
// brings the parts to goal, all in % (F4, F8, F10). False when it cannot.
func KgForMoisture(goal, moisture float64, parts ...Stuff) (float64, bool) {
	var need float64
	for _, p := range parts {
		need += p.Kg * (goal - p.Moisture)
	}
	return share(need, moisture-goal)
}

// KgForCN is the mass of add (its Kg does not matter) that brings the parts to
// the ratio cn (F6, F7). False when it cannot.
func KgForCN(cn float64, add Stuff, parts ...Stuff) (float64, bool) {
	var need float64
	for _, p := range parts {
		need += p.lack(cn)
	}
	add.Kg = 1
	return share(need, -add.lack(cn))
}

// share divides what is needed by what a kilo brings. Nothing needed is nothing
// added; a negative answer means the material lies on the same side as the mix.
func share(need, brings float64) (float64, bool) {
	if math.Abs(need) < 1e-12 {
		return 0, true
	}
	kg := need / brings
	if math.IsNaN(kg) || math.IsInf(kg, 0) || kg < 0 {
		return 0, false
	}
	return kg, true
}

// KgForBoth is the masses of two more materials that bring the parts to a C:N
// and a moisture at once (F11). False when either would be negative.
func KgForBoth(cn, moisture float64, a, b Stuff, parts ...Stuff) (kgA, kgB float64, ok bool) {
	var needCN, needM float64
	for _, p := range parts {
		needCN += p.lack(cn)
		needM += p.Kg * (moisture - p.Moisture)
	}
	a.Kg, b.Kg = 1, 1
	a1, b1 := -a.lack(cn), -b.lack(cn)
	a2, b2 := a.Moisture-moisture, b.Moisture-moisture
	det := a1*b2 - b1*a2
	if math.Abs(det) < 1e-9 {
		return 0, 0, false
	}
	kgA = (needCN*b2 - b1*needM) / det
	kgB = (a1*needM - needCN*a2) / det
	if kgA < -1e-9 || kgB < -1e-9 {
		return 0, 0, false
	}
	return max(kgA, 0), max(kgB, 0), true
}

// WaterToAdd is the litres that bring kg of moisture % to goal %, never below
// zero (F9). Goal must lie below 100.
func WaterToAdd(kg, moisture, goal float64) float64 {
	return max(0, kg*(goal-moisture)/(100-goal))
}

// SampleMoisture is % of wet mass from weighing a sample before and after
// drying (F2). False when the dry mass is above the wet one or nothing was wet.
func SampleMoisture(wet, dry float64) (float64, bool) {
	if !(wet > 0) || dry < 0 || dry > wet {
		return 0, false
	}
	return 100 * (wet - dry) / wet, true
}

// CarbonFromRatio is % carbon from % nitrogen and C:N (F1, S20).
func CarbonFromRatio(nitrogen, cn float64) float64 { return nitrogen * cn }

// CarbonFromAsh is % carbon of dry mass from % ash, good to 2-10 % (F1b, S2).
func CarbonFromAsh(ash float64) float64 { return (100 - ash) / 1.8 }

// FreeAir is the part of the volume filled with air (F19), from bulk density in
// kg/m3 wet, moisture in % of wet and organic matter in % of dry mass. Particle
// densities 1600 and 2500 kg/m3 are R9, recalled.
func FreeAir(density, moisture, organic float64) float64 {
	m, om := moisture/100, organic/100
	return 1 - density*(m/1000+(1-m)*om/1600+(1-m)*(1-om)/2500)
}

// PoundsPerYard is 1 lb/yd3 in kg/m3, and FootCubed 1 ft3 in m3 (definitions).
const (
	PoundsPerYard = 0.593276
	Foot          = 0.3048
	FootCubed     = Foot * Foot * Foot
)
