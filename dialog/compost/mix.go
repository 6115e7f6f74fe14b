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

// part is one portion and its share of the tally by its likely values.
type part struct {
	weight
	tally
	source *Portion
}

// fill reckons the share. Ash and jaggery bring no carbon that counts.
func (p *part) fill() {
	kg := p.weight.kg.Likely
	dry := kg * (100 - p.weight.moisture) / 100
	p.tally = tally{kg: kg, water: kg - dry}
	if p.mat.counted() {
		p.carbon = dry * p.mat.Carbon
		p.nitrogen = p.carbon / p.mat.CN.Likely
	}
}

// Blend works out what the portions make. Portions that cannot be weighed are
// left out; false when none can. Without anything that counts for C:N the
// range CN is zero and only moisture is judged.
func Blend(parts []Portion, cal Calibration) (Mix, bool) {
	var few [16]part // most heaps: no allocation
	ps := few[:0]
	var all tally
	var m Mix
	var kg, m3 swing
	for i := range parts {
		ps = append(ps, part{source: &parts[i]})
		p := &ps[len(ps)-1]
		if !cal.weigh(&parts[i], &p.weight) {
			ps = ps[:len(ps)-1]
			continue
		}
		p.fill()
		all.kg += p.tally.kg
		all.water += p.water
		all.carbon += p.carbon
		all.nitrogen += p.nitrogen
		m.M3.Likely += p.m3.Likely
		kg.ends(p.weight.kg)
		m3.ends(p.m3)
	}
	if len(ps) == 0 {
		return Mix{}, false
	}
	m.Kg, m.M3 = kg.around(all.kg), m3.around(m.M3.Likely)
	pack(&m.M3)
	m.CN, m.Moisture = spread(ps, &all)
	m.Water = WaterToAdd(all.kg, m.Moisture.Likely, GoalMoisture)
	m.judge(ps, &all)
	return m, true
}

// pack turns loose volume into built volume, with the doubt of both.
func pack(v *Range) {
	p := packing()
	down := math.Hypot(1-v.Low/v.Likely, 1-p.Low/p.Likely)
	up := math.Hypot(v.High/v.Likely-1, p.High/p.Likely-1)
	l := v.Likely * p.Likely
	*v = Range{l * (1 - down), l, l * (1 + up)}
}

// spread gives the ranges of C:N and moisture of a mix.
func spread(ps []part, all *tally) (cn, moisture Range) {
	r, mo := all.cn(), all.moisture()
	if all.nitrogen == 0 {
		r = 0
	}
	var c, w swing
	low, high := math.Inf(1), 0.0
	for i := range ps {
		p := &ps[i]
		counts := p.carbon > 0
		for _, end := range [2]float64{p.weight.kg.Low, p.weight.kg.High} {
			s := end/p.tally.kg - 1
			w.add(100*(all.water+s*p.water)/(all.kg+s*p.tally.kg) - mo)
			if counts {
				c.add((all.carbon+s*p.carbon)/(all.nitrogen+s*p.nitrogen) - r)
			}
		}
		m := p.weight.moisture
		points := moistureSpread * min(1, min(m, 100-m)/10)
		for _, off := range [2]float64{-points, points} {
			w.add(off * p.tally.kg / all.kg)
			if counts {
				s := -off / (100 - m)
				c.add((all.carbon+s*p.carbon)/(all.nitrogen+s*p.nitrogen) - r)
			}
		}
		if counts {
			for _, end := range [2]float64{p.mat.CN.Low, p.mat.CN.High} {
				c.add(all.carbon/(all.nitrogen+p.carbon/end-p.nitrogen) - r)
			}
			low, high = min(low, p.mat.CN.Low), max(high, p.mat.CN.High)
		}
	}
	moisture = w.around(mo)
	moisture.Low, moisture.High = max(0, moisture.Low), min(100, moisture.High)
	if r > 0 { // the ends of a mix's ratio lie between those of its materials
		cn = c.around(r)
		cn.Low, cn.High = max(cn.Low, low), min(cn.High, high)
	}
	return cn, moisture
}

// swing gathers squared moves down and up.
type swing struct{ down, up float64 }

func (s *swing) add(move float64) {
	if move > 0 {
		s.up += move * move
		return
	}
	s.down += move * move
}

func (s *swing) ends(r Range) {
	s.add(r.Low - r.Likely)
	s.add(r.High - r.Likely)
}

func (s *swing) around(v float64) Range {
	return Range{v - math.Sqrt(s.down), v, v + math.Sqrt(s.up)}
}
