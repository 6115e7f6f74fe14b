package compost

// The likely temperature of the core, from the model of core.go and what stick
// and thermometer said. Many guesses at the heap are run side by side and
// weighed by how well they foretold each sign. Each also carries a stray, the
// distance of the real core from the model: it wanders and is pulled back (an
// Ornstein-Uhlenbeck law), is known better for a while after a thermometer,
// and is never learnt from a stick. The guesses are spread evenly, not drawn
// by chance, so the same diary always gives the same estimate.

import "math"

// Sign is one look at the core.
type Sign struct {
	Hour    float64 // since the heap was built
	Word    string  // hot, warm or cold; "" when there was only a thermometer
	Celsius float64 // 0 = none
}

// HeatLog is a heap's diary as far as heat goes. Hours run from the build and
// each list is in order. A zero means not known: Dims the trade's heap,
// Moisture, CN and Air a wide guess.
type HeatLog struct {
	Dims              [3]float64 // m, as built
	Moisture, CN, Air float64    // %, ratio, C
	Signs             []Sign
	Turns, Waters     []float64 // hours
	Until             float64   // the hour of now; at most maxUntil is looked at
}

// HeatEstimate is what is likely, hour by hour, up to Until. A stick is no
// proof, and neither is this.
type HeatEstimate struct {
	Hours             []float64
	Low, Likely, High []float64 // C, 80 %
	DaysAt55          Range     // days with the core at 55 C or more so far
	NextTurn          float64   // best hour for the next turn; 0 = none while the heap is cold
	OutsideTreated    float64   // probability that a bit of the outside has had its time in the core
}

const (
	guesses  = 96
	maxUntil = 24 * 120
	// stray of the real core from the model, C, and the hours it lasts; chosen
	// so that the 80 % interval holds 70-90 % on heaps of another make (test).
	straySD, strayHours = 5.0, 48.0
	// probeSD: a thermometer here and there in one core differs by so much (memory).
	probeSD = 3.0
	// Where a hand says warm and hot begins, and how sharply: the hand hurts
	// near 44-48 C (memory), hot is matched to 55 C and more, warm to 35-50 C
	// (practice). Above its edge hot is hot: a stick cannot tell 50 from 65.
	warmFrom, hotFrom, handSD = 34.0, 50.0, 3.5
	slip                      = 0.04 // answers that are simply wrong (memory)
)

type filter struct {
	log    *HeatLog
	laws   *tables
	dims   [3]float64
	guess  [guesses]guess
	core   [guesses]core
	stray  [guesses]float64 // mean of the stray
	strayP float64          // its variance, the same for all
	logw   [guesses]float64
	weight [guesses]float64
	hot    [guesses]float64 // days at 55 C so far
	spell  [guesses]float64 // parts of the killing time since the last turn
	spells [guesses]int     // hot spells that were long enough, after the first turn
	sign   int
	turn   int
	water  int
	probed float64 // hour of the last thermometer
}

// Heat estimates the core over a diary. Times that are not numbers count as 0.
func Heat(log HeatLog) HeatEstimate {
	f := filter{log: &log, dims: log.Dims}
	for i, usual := range [3]float64{6 * Foot, 4 * Foot, 4 * Foot} {
		if !(f.dims[i] > 0) {
			f.dims[i] = usual
		}
		f.dims[i] = max(0.2, min(f.dims[i], 50)) // beyond that it is no heap
	}
	until := 0
	if log.Until > 0 {
		until = int(min(log.Until, maxUntil))
	}
	f.laws = laws()
	f.imagine()

	f.begin()
	for h := 0; h <= until && f.sign < len(log.Signs); h += step { // first round: weigh the guesses
		f.events(float64(h), true)
		f.pass()
	}
	f.settle()

	e := makeEstimate(until + 1)
	f.begin()
	for h := 0; h <= until; h += step { // second round: look at each step
		f.events(float64(h), false)
		f.look(&e, h)
		f.count()
		f.pass()
	}
	f.sum(&e)
	e.NextTurn = f.nextTurn(&e, until)
	return e
}

func makeEstimate(n int) HeatEstimate {
	all := make([]float64, 4*n)
	return HeatEstimate{Hours: all[:n:n], Low: all[n : 2*n : 2*n], Likely: all[2*n : 3*n : 3*n], High: all[3*n:]}
}

// begin sets all guesses to the hour of the build.
func (f *filter) begin() {
	for i := range f.guess {
		f.core[i] = f.guess[i].begin(f.dims)
		f.stray[i], f.hot[i], f.spell[i], f.spells[i] = 0, 0, 0, 0
	}
	f.sign, f.turn, f.water, f.probed = 0, 0, 0, math.Inf(-1)
	f.strayP = straySD * straySD / 4 // at the build it is the air's temperature
}

// events does what the diary says of the hour up to h: signs first, because
// one feels the stick before one turns.
func (f *filter) events(h float64, weigh bool) {
	for ; f.sign < len(f.log.Signs) && !(f.log.Signs[f.sign].Hour > h); f.sign++ {
		f.read(f.log.Signs[f.sign], weigh)
	}
	for ; f.turn < len(f.log.Turns) && !(f.log.Turns[f.turn] > h); f.turn++ {
		for i := range f.core {
			f.core[i].turn(&f.guess[i], f.turn+1)
			if f.spell[i] >= 1 && f.turn > 0 {
				f.spells[i]++
			}
			f.spell[i] = 0
			f.stray[i] *= f.guess[i].mixes
		}
	}
	for ; f.water < len(f.log.Waters) && !(f.log.Waters[f.water] > h); f.water++ {
		for i := range f.core {
			f.core[i].wet(&f.guess[i])
		}
	}
}

// pass lets a step go by.
func (f *filter) pass() {
	fade := math.Exp(-step / strayHours)
	for i := range f.core {
		f.core[i].pass(&f.guess[i], f.laws)
		f.stray[i] *= fade
	}
	f.strayP = fade*fade*f.strayP + (1-fade*fade)*straySD*straySD
}

// read weighs the guesses by one sign, and learns the stray from a thermometer.
func (f *filter) read(s Sign, weigh bool) {
	if s.Celsius > 0 && s.Celsius < 100 {
		v := f.strayP + probeSD*probeSD
		gain := f.strayP / v
		for i := range f.core {
			miss := s.Celsius - f.core[i].temp - f.stray[i]
			if weigh {
				// A Student law of four degrees: one odd reading does not decide.
				f.logw[i] -= 2.5 * math.Log1p(miss*miss/(4*v))
			}
			f.stray[i] += gain * miss
		}
		f.strayP *= 1 - gain
		f.probed = s.Hour
	}
	if s.Word == "" || !weigh {
		return
	}
	sd := math.Sqrt(f.strayP + handSD*handSD)
	for i := range f.core {
		t := f.core[i].temp + f.stray[i]
		notCold, hot := normal((t-warmFrom)/sd), normal((t-hotFrom)/sd)
		p := 1.0
		switch s.Word {
		case "hot":
			p = hot
		case "warm":
			p = max(0, notCold-hot)
		case "cold":
			p = 1 - notCold
		}
		f.logw[i] += math.Log(slip + (1-slip)*p)
	}
}

// settle turns what was gathered into weights that sum to 1. When a long diary
// leaves fewer than a twelfth of the guesses alive, the evidence is taken less
// at its word until that many are: thin is shown as wide.
func (f *filter) settle() {
	most := math.Inf(-1)
	for _, w := range f.logw {
		most = max(most, w)
	}
	for trust := 1.0; ; trust *= 0.8 {
		var total, squares float64
		for i, w := range f.logw {
			f.weight[i] = math.Exp(trust * (w - most))
			total += f.weight[i]
			squares += f.weight[i] * f.weight[i]
		}
		for i := range f.weight {
			f.weight[i] /= total
		}
		if total*total/squares >= guesses/12 || trust < 0.01 {
			return
		}
	}
}

// normal is the part of the normal law below z (a logistic near enough: within
// 0.01 of it).
func normal(z float64) float64 { return 1 / (1 + math.Exp(-1.702*z)) }
