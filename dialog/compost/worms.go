package compost

// Worms: how many, how much bed, how long, how fast they multiply.

import "math"

const (
	FeedRate   = 0.5 // kg of half-rotted feed a kg of worms eats a day (R7, recalled; 0.25-1.0)
	BedDensity = 2.5 // kg of worms a square metre at the start (R7, recalled; 2-2.5)
	BedFull    = 5.0 // kg/m2 of an established bed: split it (R7, recalled)
	BedDeepest = 0.6 // m: 45-60 cm (S36)
	// feedDensity of opened, sieved compost in kg/m3 (practice).
	feedDensity = 500
)

func feedRate() Range   { return Range{0.25, FeedRate, 1.0} }
func bedDensity() Range { return Range{2, BedDensity, 3} }

// WormsFor is the kg of worms that eat feed kg a day (F20).
func WormsFor(feedPerDay, rate float64) float64 { return feedPerDay / rate }

// BedFor is the square metres of bed for kg of worms (F21).
func BedFor(wormsKg, density float64) float64 { return wormsKg / density }

// DaysToEat a batch in the first round, before the worms multiply (F22).
func DaysToEat(batchKg, wormsKg, rate float64) float64 { return batchKg / (wormsKg * rate) }

// BedPlan is what a batch of feed asks of worms and bed.
type BedPlan struct {
	Worms    Range   // kg that would eat the feed in EatIn days
	Area     Range   // m2 for the worms there are, or for Worms when there are none
	Days     Range   // to eat the feed with the worms there are; 0 when there are none
	Growing  Range   // the same when the stock doubles meanwhile
	Rounds   int     // batches the feed has to be given in, so that the bed is not deeper than 60 cm
	Ration   Range   // kg a day that the worms there are can take
	PerLayer float64 // kg that one layer of 7.5 cm on that area holds
}

// EatIn is the days a batch should last: the usual first harvest (S35, practice).
const EatIn = 50

// Bed plans for feedKg of opened compost and wormsKg of worms (0: none yet).
func Bed(feedKg, wormsKg float64) BedPlan {
	r := feedRate()
	var p BedPlan
	p.Worms = Range{feedKg / EatIn / r.High, feedKg / EatIn / r.Likely, feedKg / EatIn / r.Low}
	worms := Exactly(wormsKg)
	if wormsKg <= 0 {
		worms = p.Worms
	}
	d := bedDensity()
	p.Area = Range{worms.Low / d.High, worms.Likely / d.Likely, worms.High / d.Low}
	if wormsKg > 0 {
		p.Ration = r.Times(wormsKg)
		p.Days = Range{DaysToEat(feedKg, wormsKg, r.High), DaysToEat(feedKg, wormsKg, r.Likely), DaysToEat(feedKg, wormsKg, r.Low)}
		g := Doubling()
		p.Growing = Range{growing(p.Days.Low, g.Low), growing(p.Days.Likely, g.Likely), growing(p.Days.High, g.High)}
	}
	p.PerLayer = p.Area.Likely * 0.075 * feedDensity // layers of 5-10 cm (practice)
	if p.Area.Likely > 0 {
		p.Rounds = int(math.Ceil(feedKg/(p.Area.Likely*BedDeepest*feedDensity) - 1e-9))
	}
	return p
}

// growing shortens the days of a steady stock to those of one that doubles:
// the integral of 2^(t/T) up to the answer equals the days of the steady one.
func growing(days, doubling float64) float64 {
	return doubling * math.Log2(1+days*math.Ln2/doubling)
}

// Doubling is the days in which the stock doubles in a good bed (R7, recalled;
// the high end is for beds that are only fair, memory).
func Doubling() Range { return Range{60, 75, 120} }

// Stock is the kg of worms after days, from kg at the start, on a bed of m2
// (0: no limit). Growth is logistic: free doubling while there is room, none at
// BedFull. Nothing is said of deaths: a bed that is too hot or dry loses all.
func Stock(kg, days, m2 float64) Range {
	d := Doubling()
	at := func(doubling float64) float64 {
		free := math.Exp2(days / doubling)
		if m2 <= 0 {
			return kg * free
		}
		room := BedFull * m2
		if kg >= room {
			return kg
		}
		return room / (1 + (room/kg-1)/free)
	}
	return Range{at(d.High), at(d.Likely), at(d.Low)}
}

// SplitAfter is the days until a bed of m2 that began with kg of worms reaches
// nine tenths of BedFull, so that it can be split in two (practice: split when
// crowded). False when there are no worms or no bed.
func SplitAfter(kg, m2 float64) (Range, bool) {
	goal := 0.9 * BedFull * m2
	room := BedFull * m2
	if !(kg > 0) || !(m2 > 0) {
		return Range{}, false
	}
	if kg >= goal {
		return Range{}, true
	}
	times := math.Log2((room/kg - 1) / (room/goal - 1))
	return Doubling().Times(times), true
}

// Yield is the kg of vermicompost from kg of feed (practice; R7, recalled).
func Yield(feedKg float64) Range { return Range{0.4, 0.5, 0.6}.Times(feedKg) }

// HarvestDays is when the bed is ready after feeding starts: first and later
// rounds (practice; 6-7 weeks S35).
func HarvestDays(first bool) Range {
	if first {
		return Range{45, 52, 60}
	}
	return Range{30, 38, 45}
}

// Species is what a kind of worm stands.
type Species struct {
	Code                  string
	Best                  [2]float64 // C
	Lives                 [2]float64 // C
	Source                string
	SmallestKg, LargestKg float64 // worms in a kg, from and to
}

// AllSpecies gives the composting worms in use.
func AllSpecies() []Species {
	return []Species{
		{"eisenia", [2]float64{20, 29}, [2]float64{0, 35}, "S32; survival from memory", 1000, 2000},
		{"eudrilus", [2]float64{22, 28}, [2]float64{9, 30}, "S34 best 25; its width from memory", 500, 800},
		{"perionyx", [2]float64{22, 28}, [2]float64{9, 30}, "S34 best 25; its width from memory", 500, 1000},
	}
}

// BedSign judges a worm bed by its temperature: too_hot_for_worms above 30 C
// (a warning) and danger above 35 C for all kinds (S33, S34).
func BedSign(celsius float64) (advice Class, danger bool) {
	if celsius > 30 {
		return TooHotForWorms, celsius > 35
	}
	return "", celsius <= 0
}

// BedMoisture tells whether a bed's moisture in % is fit for worms (70-90,
// S32, S33): -1 too dry, 0 fit, 1 too wet.
func BedMoisture(pct float64) int {
	switch {
	case pct < 70:
		return -1
	case pct > 90:
		return 1
	}
	return 0
}
