package compost

import (
	"encoding/csv"
	"math"
	"math/rand"
	"os"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"
)

// heapOfShells is a heap of another make than the filter's: eleven shells from
// the middle to the air, each with its own rotting, heat passing between them,
// another growth law, and a wandering draught. The filter must stand up to it.
type heapOfShells struct {
	temp, stuff                   [11]float64
	water                         float64
	awake, rate, air, draught, dx float64
	noise                         *rand.Rand
	wander                        float64
}

func (h *heapOfShells) begin(r *rand.Rand) {
	h.noise = r
	h.air = 15 + 12*r.Float64()
	h.rate = 0.14 * math.Exp(0.35*r.NormFloat64())
	if r.Float64() < 0.15 {
		h.rate *= 0.1 + 0.3*r.Float64()
	}
	stuff := 45 * math.Exp(0.25*r.NormFloat64())
	for i := range h.temp {
		h.temp[i], h.stuff[i] = h.air, stuff
	}
	h.awake = 0.08 * math.Exp(0.6*r.NormFloat64())
	h.draught = 11 * math.Exp(0.35*r.NormFloat64()) // W/m3 a K at 60 C
	h.dx = 0.6 / 11
}

// hour steps the shells; growth by two exponentials (memory: 1.066^(T-20) less
// 1.21^(T-56), scaled to 1 at 58 C).
func (h *heapOfShells) hour() {
	h.wander = 0.97*h.wander + 0.05*h.noise.NormFloat64()
	growth := func(t float64) float64 {
		g := func(t float64) float64 { return math.Pow(1.066, t-20) - math.Pow(1.21, t-56) }
		return math.Max(0, g(t)/g(58))
	}
	const lambda, holds, dt = 0.4, 1.15e6, 600.0 // ten minutes: the shells are thin
	for range 6 {
		old := h.temp
		for i := range h.temp {
			rot := h.rate / 144 * h.awake * growth(old[i]) * h.stuff[i]
			h.stuff[i] -= rot
			in, out := old[i], h.air
			if i > 0 {
				in = old[i-1]
			}
			if i < len(old)-1 {
				out = old[i+1]
			}
			// Three walls meet in a corner: three times the flow of a slab.
			flow := 3 * lambda * (in - 2*old[i] + out) / (h.dx * h.dx)
			draw := h.draught * math.Exp(h.wander) * math.Exp(0.045*(old[i]-60)) * (old[i] - h.air)
			h.temp[i] += (rot*19e6 + (flow-draw)*dt) / holds
		}
	}
	h.awake += h.awake * (1 - h.awake) * 0.1 * math.Min(1, growth(h.temp[0])*2.5)
}

// core is what a stick in the middle meets.
func (h *heapOfShells) core() float64 { return (h.temp[0] + h.temp[1] + h.temp[2]) / 3 }

func (h *heapOfShells) turn(first bool) {
	var t, s, v float64
	for i := range h.temp {
		w := float64(i + 1) // outer shells hold more
		t, s, v = t+w*h.temp[i], s+w*h.stuff[i], v+w
	}
	kept := 1.0
	if first {
		kept = 0.75
	}
	for i := range h.temp {
		h.temp[i] = h.air + 0.9*(t/v-h.air)
		h.stuff[i] = s / v / kept
	}
}

func word(t float64, r *rand.Rand) string {
	t += 3 * r.NormFloat64()
	switch {
	case t < 34:
		return "cold"
	case t < 50:
		return "warm"
	}
	return "hot"
}

// cover runs the filter over heaps of shells and counts how often the interval
// holds the truth, hour by hour from the first day on.
func cover(t *testing.T, heaps int, thermometer bool) (share, width, days float64) {
	var in, all, wide, daysIn float64
	for n := range heaps {
		r := rand.New(rand.NewSource(int64(n)))
		var h heapOfShells
		h.begin(r)
		log := HeatLog{Air: h.air + 1.5*r.NormFloat64(), Until: 30 * 24}
		truth := make([]float64, 30*24+1)
		hotDays := 0.0
		for hour := range truth {
			day, early := hour/24, hour%24 == 7
			if early && day >= 3 && day%3 == 0 {
				s := Sign{Hour: float64(hour), Word: word(h.core(), r)}
				if thermometer {
					s = Sign{Hour: float64(hour), Celsius: h.core() + 2*r.NormFloat64()}
				}
				log.Signs = append(log.Signs, s)
				if (day == 6 || day == 12) && (s.Word == "hot" || s.Celsius > 50) {
					log.Turns = append(log.Turns, float64(hour)+1)
				}
			}
			if k := len(log.Turns); k > 0 && log.Turns[k-1] == float64(hour) {
				h.turn(k == 1)
			}
			truth[hour] = h.core()
			if truth[hour] >= 55 {
				hotDays += 1.0 / 24
			}
			h.hour()
		}
		e := Heat(log)
		for hour := 24; hour < len(truth); hour++ {
			if truth[hour] >= e.Low[hour] && truth[hour] <= e.High[hour] {
				in++
			}
			all++
			wide += e.High[hour] - e.Low[hour]
		}
		if hotDays >= e.DaysAt55.Low-0.01 && hotDays <= e.DaysAt55.High+0.01 {
			daysIn++
		}
		if testing.Verbose() && n < 6 {
			for d := 1; d < 30; d += 2 {
				i := 24 * d
				t.Logf("heap %d day %2d truth %5.1f  %5.1f %5.1f %5.1f", n, d, truth[i], e.Low[i], e.Likely[i], e.High[i])
			}
			t.Logf("hot %.1f %v next %.0f treated %.2f", hotDays, e.DaysAt55, e.NextTurn/24, e.OutsideTreated)
		}
	}
	return in / all, wide / all, daysIn / float64(heaps)
}

func TestCover(t *testing.T) {
	s, w, d := cover(t, 60, false)
	t.Logf("stick: %.2f width %.1f days %.2f", s, w, d)
	s, w, d = cover(t, 60, true)
	t.Logf("thermo: %.2f width %.1f days %.2f", s, w, d)
}

type seriesPoint struct {
	day, temp float64
	event     string
}

func series(t *testing.T) map[string][]seriesPoint {
	f, err := os.Open("../../testdata/sums/temperature_series.csv")
	require.NoError(t, err)
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	require.NoError(t, err)
	all := map[string][]seriesPoint{}
	for _, r := range rows[1:] {
		day, _ := strconv.ParseFloat(r[1], 64)
		temp, err := strconv.ParseFloat(r[2], 64)
		if err != nil {
			temp = 0
		}
		all[r[0]] = append(all[r[0]], seriesPoint{day, temp, r[5]})
	}
	return all
}

func TestSeries(t *testing.T) {
	for name, s := range series(t) {
		log := HeatLog{Air: s[0].temp, Until: 24 * s[len(s)-1].day}
		if s[0].day != 0 {
			continue
		}
		switch name {
		case "practice_cold_heap":
			log.Moisture = 35
		case "practice_too_wet":
			log.Moisture = 70
		case "practice_too_green":
			log.CN = 18
		}
		for _, p := range s {
			if p.day >= 3 && int(p.day)%3 == 0 {
				w := "hot"
				if p.temp < 34 {
					w = "cold"
				} else if p.temp < 50 {
					w = "warm"
				}
				log.Signs = append(log.Signs, Sign{Hour: 24 * p.day, Word: w})
			}
			if p.event != "" && p.event != "built" && p.event != "opened" {
				log.Turns = append(log.Turns, 24*p.day+1)
			}
		}
		e := Heat(log)
		in := 0
		for _, p := range s {
			i := int(24 * p.day)
			ok := " "
			if p.temp >= e.Low[i] && p.temp <= e.High[i] {
				in++
				ok = "*"
			}
			t.Logf("%s day %4.1f %5.1f %s  %5.1f %5.1f %5.1f", name, p.day, p.temp, ok, e.Low[i], e.Likely[i], e.High[i])
		}
		t.Logf("%s %d of %d", name, in, len(s))
	}
}

func BenchmarkHeat(b *testing.B) {
	b.ReportAllocs()
	log := diary60()
	for b.Loop() {
		Heat(log)
	}
}

// diary60 is sixty days with a stick every third day, three turns and two waters.
func diary60() HeatLog {
	log := HeatLog{Air: 22, Until: 60 * 24, Turns: []float64{7 * 24, 14 * 24, 20 * 24}, Waters: []float64{7 * 24, 14 * 24}}
	for d := 3; d < 60; d += 3 {
		w := "hot"
		if d > 20 {
			w = "warm"
		}
		log.Signs = append(log.Signs, Sign{Hour: float64(24 * d), Word: w})
	}
	return log
}
