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
	weight bool // size is in kg, else in litres
	size   Range
}

type measures struct {
	by    map[string]map[string]measure // unit, then class or "any"
	units []string
}

var scale = sync.OnceValue(func() measures {
	s := measures{by: map[string]map[string]measure{}}
	for _, r := range table(measuresCSV) {
		u := r["unit"]
		if s.by[u] == nil {
			s.by[u] = map[string]measure{}
			s.units = append(s.units, u)
		}
		s.by[u][r["class"]] = measure{r["in"] == "kg", Range{number(r["low"]), number(r["likely"]), number(r["high"])}}
	}
	return s
})

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
	mat := stock().by[p.Material]
	unit := scale().by[p.Unit]
	if mat == nil || unit == nil || !(p.N > 0) || math.IsInf(p.N, 0) {
		return false
	}
	m, ok := unit[mat.Class]
	if !ok {
		if m, ok = unit["any"]; !ok {
			return false
		}
	}
	w.mat = mat
	w.moisture = mat.Moisture
	if p.Wilted && mat.wilts() {
		w.moisture = 100 * (mat.Moisture/100 - wiltLoss) / (1 - wiltLoss)
	}
	density := mat.Density
	if p.Trodden {
		density *= mat.trodden()
	}
	w.measured = p.Unit != "kg" && p.Unit != "quintal" && p.Unit != "ton"
	if c != nil {
		if v, ok := c.known(p.Unit, p.Material, mat.ID); ok {
			w.measured = false
			w.kg = Range{v * (1 - weighed), v, v * (1 + weighed)}.Times(p.N)
			w.m3 = Range{w.kg.Likely / density * (1 - densitySpread), w.kg.Likely / density, w.kg.Likely / density * (1 + densitySpread)}
			return true
		}
		if v, ok := c[p.Unit]; ok && v > 0 && w.measured {
			m = measure{false, Range{v * (1 - weighed/2), v, v * (1 + weighed/2)}}
		}
	}
	if m.weight {
		w.kg = m.size.Times(p.N)
		w.m3 = Range{w.kg.Likely / density * (1 - densitySpread), w.kg.Likely / density, w.kg.Likely / density * (1 + densitySpread)}
		return true
	}
	w.m3 = m.size.Times(p.N / 1000)
	// Size of the measure and how it is filled are separate doubts.
	v := w.m3.Likely * density
	down := math.Hypot(1-m.size.Low/m.size.Likely, densitySpread)
	up := math.Hypot(m.size.High/m.size.Likely-1, densitySpread)
	w.kg = Range{v * (1 - down), v, v * (1 + up)}
	return true
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
