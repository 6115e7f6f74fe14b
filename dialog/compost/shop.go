package compost

// The shopping list: of all lists in whole local measures that bring what is
// at hand into the bands, the one of least effort. It is a small integer
// program and is solved exactly (integer.go).

import "math"

// Fetch is something the farmer could bring: one unit of it costs Effort; at
// most Max units (0 = no limit).
type Fetch struct {
	Unit, Material string
	Effort         float64
	Max            int
}

// Goal is the bands to reach. A band whose top is 0 has no top, and one of two
// zeros does not matter. M3 is the built volume (see Mix.M3).
type Goal struct{ CN, Moisture, M3 [2]float64 }

// HeapGoal is the trade's heap: good C:N and moisture, and at least 6 x 4 x 4
// ft. Its length may be any that is convenient, so the volume has no top.
func HeapGoal() Goal {
	return Goal{CN: [2]float64{25, 35}, Moisture: [2]float64{50, 60}, M3: [2]float64{TradeHeap, 0}}
}

// Buy is one line of the list.
type Buy struct {
	N              int
	Unit, Material string
}

// pantry limits a list: nobody carries more of one thing than this.
const pantry = 100_000

// Shop finds the list of least effort, judged on likely values, and the litres
// of water that then bring the moisture to the middle of its band (water is
// not effort, but a mix may not be wetter than the band). False when no list
// reaches the goal, or when an amount or effort is not a number from zero up.
func Shop(have []Portion, can []Fetch, goal Goal, cal Calibration) (list []Buy, water float64, ok bool) {
	var start need
	for i := range have {
		var w weight
		if cal.weigh(&have[i], &w) {
			start.add(&w, 1)
		}
	}
	kinds := make([]need, 0, len(can))
	from := make([]int, 0, len(can))
	p := program{}
	for i, f := range can {
		var w weight
		if !cal.weigh(&Portion{N: 1, Unit: f.Unit, Material: f.Material}, &w) {
			continue
		}
		if !(f.Effort >= 0) || math.IsInf(f.Effort, 0) || f.Max < 0 {
			return nil, 0, false
		}
		var n need
		n.add(&w, 1)
		kinds, from = append(kinds, n), append(from, i)
		top := float64(f.Max)
		if f.Max == 0 || f.Max > pantry {
			top = pantry
		}
		p.cost, p.top = append(p.cost, f.Effort), append(p.top, top)
	}
	goal.rows(&p, start, kinds)
	counts, ok := p.solve()
	if !ok {
		return nil, 0, false
	}
	total := start
	for j, n := range counts {
		if n > 0 {
			f := can[from[j]]
			list = append(list, Buy{n, f.Unit, f.Material})
			total.plus(kinds[j], float64(n))
		}
	}
	return list, goal.water(total), true
}

// need is what a portion brings to the sums.
type need struct{ kg, water, carbon, nitrogen, m3 float64 }

func (n *need) add(w *weight, times float64) {
	kg := w.kg.Likely * times
	dry := kg * (100 - w.moisture) / 100
	n.kg += kg
	n.water += kg - dry
	if w.mat.counted() {
		n.carbon += dry * w.mat.Carbon
		n.nitrogen += dry * w.mat.Carbon / w.mat.CN.Likely
	}
	n.m3 += w.m3.Likely * times * packing().Likely
}

func (n *need) plus(o need, times float64) {
	n.kg += o.kg * times
	n.water += o.water * times
	n.carbon += o.carbon * times
	n.nitrogen += o.nitrogen * times
	n.m3 += o.m3 * times
}

// rows writes the goal as linear limits: each says that a sum over the list is
// at least what the start lacks.
func (g Goal) rows(p *program, start need, kinds []need) {
	limit := func(of func(need) float64) {
		row := make([]float64, len(kinds))
		for j, k := range kinds {
			row[j] = of(k)
		}
		p.atLeast(row, -of(start))
	}
	if g.CN[0] > 0 {
		limit(func(n need) float64 { return n.carbon - g.CN[0]*n.nitrogen })
	}
	if g.CN[1] > 0 {
		limit(func(n need) float64 { return g.CN[1]*n.nitrogen - n.carbon })
	}
	if g.Moisture[1] > 0 {
		limit(func(n need) float64 { return n.kg*g.Moisture[1]/100 - n.water })
	}
	if g.M3[0] > 0 {
		row := make([]float64, len(kinds))
		for j, k := range kinds {
			row[j] = k.m3
		}
		p.atLeast(row, g.M3[0]-start.m3)
	}
	if g.M3[1] > 0 {
		row := make([]float64, len(kinds))
		for j, k := range kinds {
			row[j] = -k.m3
		}
		p.atLeast(row, start.m3-g.M3[1])
	}
}

// water is the litres from a total to the middle of the moisture band.
func (g Goal) water(n need) float64 {
	if n.kg == 0 || g.Moisture[0] <= 0 {
		return 0
	}
	middle := (g.Moisture[0] + g.Moisture[1]) / 2
	if g.Moisture[1] <= 0 {
		middle = g.Moisture[0]
	}
	return WaterToAdd(n.kg, 100*n.water/n.kg, middle)
}
