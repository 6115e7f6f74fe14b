package compost

// The laws of core.go as tables of temperature and moisture, because the
// filter reads them a hundred thousand times for one diary.

import (
	"math"
	"sync"
)

// point is what the model needs to know at one temperature: parts rotting a
// day, J a kg of saturated air, what a degree more adds to each, and the parts
// of the killing time that one step is.
type point struct{ rot, rotSlope, air, airSlope, kill float64 }

// curve is a function of moisture in %, read off by the half per cent.
type curve [202]float64

func (c *curve) at(x float64) float64 {
	x = max(0, min(2*x, 200))
	i := int(x)
	return c[i] + (x-float64(i))*(c[i+1]-c[i])
}

type tables struct {
	by    [202]point // half degrees from 0
	moist curve
}

var laws = sync.OnceValue(func() *tables {
	t := new(tables)
	for i := range t.by {
		c := float64(i) / 2
		p := point{rot: rateBest * cardinal(c), air: saturated(c)}
		p.rotSlope = rateBest*cardinal(c+1) - p.rot
		p.airSlope = saturated(c+1) - p.air
		if d, ok := KillDays(c); ok {
			p.kill = step / (24 * d)
		}
		t.by[i] = p
		t.moist[i] = moist(c)
	}
	return t
})

// at gives the row for a temperature; rotting is read between rows.
func (t *tables) at(c float64) point {
	x := max(0, min(2*c, 200))
	i := int(x)
	p, up := t.by[i], x-float64(i)
	p.rot += up * (t.by[i+1].rot - p.rot)
	p.air += up * (t.by[i+1].air - p.air)
	return p
}

func (t *tables) rotAt(c float64) float64 { return t.by[int(max(0, min(2*c, 200)))].rot }

func (t *tables) killAt(c float64) float64 { return t.by[int(max(0, min(2*c, 200)))].kill }

// cardinal is the three-temperature growth law (Rosso and others 1993, memory):
// 0 at coldest and hottest, 1 at best.
func cardinal(t float64) float64 {
	if t <= coldest || t >= hottest {
		return 0
	}
	a := (t - hottest) * (t - coldest) * (t - coldest)
	b := (best - coldest) * ((best-coldest)*(t-best) - (best-hottest)*(best+coldest-2*t))
	return max(0, a/b)
}

// saturated is the heat in J of a kg of dry air with all the vapour it can
// hold (Magnus formula and textbook psychrometry, memory).
func saturated(t float64) float64 {
	p := min(610.94*math.Exp(17.625*t/(t+243.04)), 90_000)
	w := 0.622 * p / (101_325 - p)
	return 1006*t + w*(2.501e6+1860*t)
}

// moist is how water limits rotting, by its part of wet mass in %: the dry side
// is a printed logistic (memory: half speed at 40 %), the wet side says that
// over 65 % a heap packs and sours (practice).
func moist(pct float64) float64 {
	m := pct / 100
	return 1 / (1 + math.Exp(-17.684*m+7.0622)) / (1 + math.Exp((m-0.71)/0.02))
}
