package compost

// Money in the farmer's own coin. No currency is named or converted.

import "math"

// Purse is one heap's costs and income.
type Purse struct {
	Costs   float64 // bought stuff, transport, tools used up
	DaysOut float64 // days of work
	Wage    float64 // of one day, when hired; 0 for own work
	SoldKg  float64
	Price   float64 // a kg
	UsedKg  float64 // on own field
	Saved   float64 // a kg used: bought fertiliser or manure not needed
}

// Earned is what a heap leaves.
type Earned struct {
	Income, Costs, Left float64
	PerDay              float64 // Left and wages paid to oneself, a day of work; 0 without days
	PerKg               float64 // what a kg cost to make; 0 without kg
}

// Earn reckons one heap.
func Earn(p Purse) Earned {
	e := Earned{Income: p.SoldKg*p.Price + p.UsedKg*p.Saved, Costs: p.Costs + p.DaysOut*p.Wage}
	e.Left = e.Income - e.Costs
	if p.DaysOut > 0 {
		e.PerDay = (e.Income - p.Costs) / p.DaysOut
	}
	if kg := p.SoldKg + p.UsedKg; kg > 0 {
		e.PerKg = e.Costs / kg
	}
	return e
}

// BreakEven is how many heaps pay for a purchase that brings gain more (or
// saves gain) each heap, rounded up; false when it never does.
func BreakEven(price, gain float64) (heaps int, ok bool) {
	if price <= 0 {
		return 0, true
	}
	n := math.Ceil(price/gain - 1e-9)
	if !(gain > 0) || n > 1e6 {
		return 0, false
	}
	return int(n), true
}
