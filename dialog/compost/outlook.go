package compost

// What the weighed guesses say: the interval of each hour, hot days, the next
// turn, and how much of the outside had its time inside.

import "math"

// look writes the interval of hour h: the guesses' own spread and the stray,
// added as the sides of a right angle.
func (f *filter) look(e *HeatEstimate, h int) {
	var part [96]float64
	for i := range f.core {
		t := max(0, min(f.core[i].temp+f.stray[i], 94))
		part[int(t)] += f.weight[i]
	}
	low, mid, high := quantile(&part, 0.1), quantile(&part, 0.5), quantile(&part, 0.9)
	s := tenth * math.Sqrt(f.strayP)
	low, high = mid-math.Hypot(mid-low, s), max(mid, min(mid+math.Hypot(high-mid, s), 85))
	if float64(h) > f.probed+strayHours {
		low, high = byHand(low, mid, high)
	}
	if f.log.Air > 0 { // nothing is colder than a cold night
		low = max(low, min(mid, f.log.Air-5))
	}
	e.set(h, max(0, low), mid, high)
}

// byHand widens an interval that no thermometer stands behind: a stick cannot
// tell 50 from 65, nor 40 from 48.
func byHand(low, mid, high float64) (float64, float64) {
	switch {
	case mid >= hotFrom:
		return min(low, hotFrom), max(high, 65)
	case mid >= warmFrom:
		return min(low, 40), max(high, 48)
	}
	return low, high
}

// set writes an hour and draws straight lines from the step before, and on to
// the end when no step follows.
func (e *HeatEstimate) set(h int, low, likely, high float64) {
	from := max(0, h-step)
	for i := from + 1; i < h; i++ {
		up := float64(i-from) / float64(h-from)
		e.Low[i] = e.Low[from] + up*(low-e.Low[from])
		e.Likely[i] = e.Likely[from] + up*(likely-e.Likely[from])
		e.High[i] = e.High[from] + up*(high-e.High[from])
	}
	for i := h; i < min(h+step, len(e.Hours)); i++ {
		e.Low[i], e.Likely[i], e.High[i] = low, likely, high
	}
	for i := from; i < min(h+step, len(e.Hours)); i++ {
		e.Hours[i] = float64(i)
	}
}

// quantile reads the temperature below which the given part of weight lies.
func quantile(part *[96]float64, q float64) float64 {
	var below float64
	for i, p := range part {
		if below+p >= q && p > 0 {
			return float64(i) + (q-below)/p
		}
		below += p
	}
	return float64(len(part))
}

// count adds the step to the hot days and to the killing time of each guess.
func (f *filter) count() {
	sd := math.Sqrt(f.strayP)
	for i := range f.core {
		t := f.core[i].temp + f.stray[i]
		if t < 30 {
			continue
		}
		f.hot[i] += normal((t-55)/sd) * (step / 24.0)
		f.spell[i] += f.laws.killAt(t)
	}
}

// sum closes the account of hot days and treated outside.
func (f *filter) sum(e *HeatEstimate) {
	var mean, spread float64
	for i, w := range f.weight {
		mean += w * f.hot[i]
	}
	for i, w := range f.weight {
		d := f.hot[i] - mean
		spread += w * d * d
	}
	// A diary that ends within a step has not had all of it.
	top := float64(len(e.Hours)) / 24
	mean = min(mean, top)
	// The stray lasts two days or so: independent pieces of it add up.
	sd := math.Sqrt(spread + mean*strayHours/24*0.3)
	e.DaysAt55 = Range{max(0, mean-tenth*sd), mean, min(top, mean+tenth*sd)}

	// The first hot spell treats the first core. Each later one that lasted
	// long enough treats what its turn put inside: at worst as much of the rim
	// as chance gives, at best as much as the core holds; half way is taken.
	c := coreShare(f.dims)
	inside := (c + min(1, c/(1-c))) / 2
	for i, w := range f.weight {
		n := f.spells[i]
		if f.turn > 0 && f.spell[i] >= 1 {
			n++
		}
		e.OutsideTreated += w * (1 - math.Pow(1-inside, float64(n)))
	}
}

// nextTurn runs the guesses on for ten days and finds the first hour from now
// at which the core has likely had three days at 55 C since the last turn, or
// has begun to fall from its heat, or is too warm. A heap that is not likely
// to be hot is not turned.
func (f *filter) nextTurn(e *HeatEstimate, until int) float64 {
	const ahead, least = 240, 48 // not within two days of the last turn (practice: 3-4 days)
	last := 0.0
	if f.turn > 0 && f.log.Turns[f.turn-1] > 0 {
		last = f.log.Turns[f.turn-1]
	}
	hot, peak := 0, 0.0 // hours
	due := func(h int, likely float64) bool {
		if float64(h) < last {
			return false
		}
		peak = max(peak, likely)
		if likely >= 55 {
			hot += step
		}
		if float64(h) < last+least || h < until {
			return false
		}
		return likely >= 66 || peak >= 50 && (hot >= 72 && likely < 60 || likely < peak-5 && likely >= 40)
	}
	h := 0
	for ; h < until; h += step {
		due(h, e.Likely[h])
	}
	if due(until, e.Likely[until]) {
		return float64(until)
	}
	if h == until {
		h += step
	}
	for ; h <= until+ahead; h += step {
		var mean float64
		for i, w := range f.weight {
			mean += w * (f.core[i].temp + f.stray[i])
		}
		if due(h, mean) {
			return float64(h)
		}
		f.pass()
	}
	return 0
}
