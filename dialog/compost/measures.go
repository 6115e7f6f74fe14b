package compost

// A farmer's measures: baskets, basins, headloads. Sizes differ by place, so
// each has a range and may be replaced by what the group has weighed.

import (
	_ "embed"
	"math"
	"sync"
)

// Portion is an amount in a farmer's measure. Unit is one of Units; Material
// a row of the table or a reply code.
type Portion struct {
	N              float64
	Unit, Material string
	Trodden        bool // pressed into the measure with the feet
	Wilted         bool // green stuff that lay a day in the sun
}

// Calibration replaces default sizes of measures by weighed ones: the key
// "basket dry_leaves" holds kilos, the key "basket" holds litres. The first
// wins. Nil means the defaults.
type Calibration map[string]float64

//go:embed measures.csv
var measuresCSV []byte

type measure struct {
	weight   bool // size is in kg, else in litres
	size     Range
	down, up float64 // doubt of the mass, as a part of it
}

// sizes of one measure, by class of material; a size of zero is not known.
type sizes [4]measure

type measures struct {
	by    map[string]*sizes
	units []string
}

func classes() []string { return []string{"dung", "green", "brown", "additive"} }

var scale = sync.OnceValue(func() measures {
	s := measures{by: map[string]*sizes{}}
	for _, r := range table(measuresCSV) {
		u := r["unit"]
		if s.by[u] == nil {
			s.by[u] = new(sizes)
			s.units = append(s.units, u)
		}
		m := makeMeasure(r["in"] == "kg", Range{number(r["low"]), number(r["likely"]), number(r["high"])})
		for i, c := range classes() {
			if r["class"] == c || r["class"] == "any" && s.by[u][i].size.Likely == 0 {
				s.by[u][i] = m
			}
		}
	}
	return s
})

// makeMeasure: with litres, the size and how it is filled are separate doubts.
func makeMeasure(weight bool, size Range) measure {
	m := measure{weight: weight, size: size, down: 1 - size.Low/size.Likely, up: size.High/size.Likely - 1}
	if !weight {
		m.down, m.up = math.Hypot(m.down, densitySpread), math.Hypot(m.up, densitySpread)
	}
	return m
}

// Units gives the codes of the measures, in the order of the table.
func Units() []string { return append([]string(nil), scale().units...) }

const (
	// densitySpread: a measure filled by two people differs by this part
	// either way (memory: fill and chop; real mixes pack 10-30 % closer).
	densitySpread = 0.2
	// weighed: what is left in doubt of a measure after one was weighed (memory).
	weighed = 0.1
	// troddenBrown: brown trodden down goes to half its volume (practice);
	// other stuff gives way less (memory).
	troddenBrown, troddenOther = 2.0, 1.3
	// wiltLoss: part of its mass that green stuff loses in a day in the sun,
	// all of it water (memory; water hyacinth goes from 93 to 80-85 % in 2-4 days).
	wiltLoss = 0.4
)

// weight is a portion on the scale: what Weigh says and what a mix needs.
type weight struct {
	kg, m3   Range
	moisture float64 // % of wet mass after wilting
	mat      *Material
	measured bool // the doubt in kg would go if one measure were weighed
}

// Weigh gives the mass in kg and the loose volume in cubic metres of a portion.
// It says false for an unknown measure or material, for worms and curd, which
// are no heap materials, and for an amount that is not above zero.
func (c Calibration) Weigh(p Portion) (kg Range, m3 Range, ok bool) {
	var w weight
	if !c.weigh(&p, &w) {
		return Range{}, Range{}, false
	}
	return w.kg, w.m3, true
}

func (c Calibration) weigh(p *Portion, w *weight) bool {
	mat, unit := stock().by[p.Material], scale().by[p.Unit]
	if mat == nil || unit == nil || !(p.N > 0) || math.IsInf(p.N, 0) {
		return false
	}
	m := &unit[mat.kind]
	w.mat, w.moisture = mat, mat.Moisture
	if p.Wilted && mat.wilts() {
		w.moisture = 100 * (mat.Moisture/100 - wiltLoss) / (1 - wiltLoss)
	}
	density := mat.Density
	if p.Trodden {
		density *= mat.trodden()
	}
	w.measured = m.size.Low < m.size.High || !m.weight
	if c != nil && w.measured {
		if v, ok := c.known(p.Unit, p.Material, mat.ID); ok {
			w.measured = false
			w.byWeight(Range{v * (1 - weighed), v, v * (1 + weighed)}.Times(p.N), density)
			return true
		}
		if v, ok := c[p.Unit]; ok && v > 0 {
			own := makeMeasure(false, Range{v * (1 - weighed/2), v, v * (1 + weighed/2)})
			m = &own
		}
	}
	if m.weight {
		w.byWeight(m.size.Times(p.N), density)
		return true
	}
	w.m3 = m.size.Times(p.N / 1000)
	v := w.m3.Likely * density
	w.kg = Range{v * (1 - m.down), v, v * (1 + m.up)}
	return true
}

// byWeight sets a mass and, by density, the volume.
func (w *weight) byWeight(kg Range, density float64) {
	v := kg.Likely / density
	w.kg, w.m3 = kg, Range{v * (1 - densitySpread), v, v * (1 + densitySpread)}
}

// known finds what one measure of the material was found to weigh.
func (c Calibration) known(unit, material, row string) (kg float64, ok bool) {
	if v, ok := c[unit+" "+material]; ok && v > 0 {
		return v, true
	}
	v, ok := c[unit+" "+row]
	return v, ok && v > 0
}

// wilts is true of wet plants; dung and liquids do not wilt.
func (m *Material) wilts() bool {
	return m.Class != "dung" && m.Class != "additive" && !m.wet() && m.Moisture > 60
}

func (m *Material) trodden() float64 {
	if m.Class == "brown" {
		return troddenBrown
	}
	return troddenOther
}
