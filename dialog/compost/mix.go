package compost

// A mix of farmer's portions with its doubt. Each portion is uncertain in
// mass, C:N and moisture; each of these is moved to its ends on its own, and
// what that does to the mix is added as the sides of right angles, upwards and
// downwards apart (first-order propagation of independent errors).

import "math"

// Mix is what the portions come to when they are put together.
type Mix struct {
	Kg, M3, CN, Moisture Range   // M3 as built: loose volumes packed by packing
	Water                float64 // litres still needed to reach GoalMoisture
	Advice               []Class // judged on the likely values
	Settled              bool    // the advice holds over the likely range
	// Doubt is the one measurement that would narrow the range most:
	// "weigh basket dry_leaves", "squeeze", or "" when there is none or no need.
	Doubt string
	// DoubtSettles is true when that measurement alone would settle the advice.
	DoubtSettles bool
}

// packing: real mixes pack 10-30 % closer than their loose parts (memory).
func packing() Range { return Range{0.7, 0.8, 0.9} }

// moistureSpread is how far the moisture of a material strays from the table,
// in points (memory: dung and greens change by the day).
const moistureSpread = 5

// tally is the sums that make a mix. Carbon and nitrogen are kg x 100.
type tally struct{ kg, water, carbon, nitrogen float64 }

func (t *tally) cn() float64       { return t.carbon / t.nitrogen }
func (t *tally) moisture() float64 { return 100 * t.water / t.kg }

// put adds kg of stuff with carbon % c, ratio r and moisture % m.
func (t tally) put(kg, c, r, m float64) tally {
	t.kg += kg
	t.water += kg * m / 100
	if c > 0 {
		dry := kg * (100 - m) / 100
		t.carbon += dry * c
		t.nitrogen += dry * c / r
	}
	return t
}

// part is one portion's share of a tally, by its likely values.
type part struct {
	weight
	carbon, ratio float64
	low, high     float64 // ends of the ratio
	wet, dryEnd   float64 // ends of the moisture
}

func (p *part) likely(t tally, sign float64) tally {
	return t.put(sign*p.kg.Likely, p.carbon, p.ratio, p.moisture)
}

// Blend works out what the portions make. Portions that cannot be weighed are
// left out; false when none can. Without anything that counts for C:N the
// range CN is zero and only moisture is judged.
func Blend(parts []Portion, cal Calibration) (Mix, bool) {
	var few [16]part // most heaps: no allocation
	ps := few[:0]
	var all tally
	var m Mix
	for i := range parts {
		ps = append(ps, part{})
		p := &ps[len(ps)-1]
		if !cal.weigh(&parts[i], &p.weight) {
			ps = ps[:len(ps)-1]
			continue
		}
		p.fill()
		all = p.likely(all, 1)
		m.Kg, m.M3 = sum(m.Kg, p.kg), sum(m.M3, p.m3)
	}
	if len(ps) == 0 {
		return Mix{}, false
	}
	pack(&m.M3)
	spread(ps, all, &m)
	m.Water = WaterToAdd(all.kg, m.Moisture.Likely, GoalMoisture)
	m.judge(ps, parts, all, cal)
	return m, true
}

func (p *part) fill() {
	if p.mat.counted() {
		p.carbon, p.ratio = p.mat.Carbon, p.mat.CN.Likely
	}
	p.low, p.high = p.mat.CN.Low, p.mat.CN.High
	s := moistureSpread * math.Min(1, math.Min(p.moisture, 100-p.moisture)/10)
	p.dryEnd, p.wet = p.moisture-s, p.moisture+s
}

// pack turns loose volume into built volume, with the doubt of both.
func pack(v *Range) {
	p := packing()
	down := math.Hypot(1-v.Low/v.Likely, 1-p.Low/p.Likely)
	up := math.Hypot(v.High/v.Likely-1, p.High/p.Likely-1)
	l := v.Likely * p.Likely
	*v = Range{l * (1 - down), l, l * (1 + up)}
}

// spread gives the mix its ranges of C:N and moisture and returns, through
// ps, what each portion's mass has to do with them.
func spread(ps []part, all tally, m *Mix) {
	cn, mo := all.cn(), all.moisture()
	var c, w swing
	for i := range ps {
		p := &ps[i]
		rest := p.likely(all, -1)
		for _, kg := range [2]float64{p.kg.Low, p.kg.High} {
			t := rest.put(kg, p.carbon, p.ratio, p.moisture)
			c.add(t.cn()-cn, 1)
			w.add(t.moisture()-mo, 1)
		}
		for _, end := range [2]float64{p.dryEnd, p.wet} {
			t := rest.put(p.kg.Likely, p.carbon, p.ratio, end)
			c.add(t.cn()-cn, 1)
			w.add(t.moisture()-mo, 1)
		}
		if p.carbon > 0 {
			for _, r := range [2]float64{p.low, p.high} {
				t := rest.put(p.kg.Likely, p.carbon, r, p.moisture)
				c.add(t.cn()-cn, 1)
			}
		}
	}
	m.Moisture = w.around(mo)
	m.Moisture.Low, m.Moisture.High = math.Max(0, m.Moisture.Low), math.Min(100, m.Moisture.High)
	if all.nitrogen > 0 {
		m.CN = c.around(cn)
		within(&m.CN, ps)
	}
}

// within keeps the ends of a mix's ratio between those of its materials.
func within(r *Range, ps []part) {
	low, high := math.Inf(1), 0.0
	for i := range ps {
		if ps[i].carbon > 0 {
			low, high = math.Min(low, ps[i].low), math.Max(high, ps[i].high)
		}
	}
	r.Low, r.High = math.Max(r.Low, low), math.Min(r.High, high)
}

// swing gathers squared moves down and up.
type swing struct{ down, up float64 }

func (s *swing) add(move, sign float64) {
	if move > 0 {
		s.up += sign * move * move
		return
	}
	s.down += sign * move * move
}

func (s *swing) around(v float64) Range {
	return Range{v - math.Sqrt(math.Max(0, s.down)), v, v + math.Sqrt(math.Max(0, s.up))}
}
