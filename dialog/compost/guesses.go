package compost

// The guesses at a heap before anything is heard of it: an even spread over
// what is not known.

import (
	"math"
	"sync"
)

// lattice is guesses x dims points spread evenly over (0,1): a Kronecker
// sequence on the roots of x^(d+1) = x + 1, the generalised golden ratio.
const dims = 9

var lattice = sync.OnceValue(func() *[guesses][dims]float64 {
	root := 2.0
	for range 40 {
		root = math.Pow(1+root, 1.0/(dims+1))
	}
	var l [guesses][dims]float64
	for j := range dims {
		step := math.Pow(root, -float64(j+1))
		for i := range l {
			_, l[i][j] = math.Modf(0.5 + float64(i+1)*step)
		}
	}
	return &l
})

// imagine spreads the guesses. Spreads are from memory; one heap in six has
// something wrong with it that nobody told (practice: cold redos are common).
func (f *filter) imagine() {
	for i, u := range lattice() {
		z := func(j int) float64 { return math.Sqrt2 * math.Erfinv(2*u[j]-1) }
		g := guess{
			rate:    math.Exp(0.35 * z(0)),
			rots:    rotsFast * math.Exp(0.25*z(1)),
			loss:    sideLoss * math.Exp(0.3*z(2)),
			draught: draught * math.Exp(0.4*z(3)),
			asleep:  0.08 * math.Exp(0.7*z(4)),
			mixes:   0.35 + 0.35*u[5],
			fails:   1,
		}
		if u[6] < 1.0/6 {
			g.fails = 0.03 + 3*u[6]
		}
		g.moisture = known(f.log.Moisture, 55, 4, 7, z(7), 15, 85)
		g.air = known(f.log.Air, 22, 2, 5, z(8), -5, 42)
		// C:N shares the last axis of chance with the rate: both only slow or speed.
		g.cn = known(f.log.CN, 30, 4, 7, -z(0), 8, 120)
		g.airHeat = f.laws.at(g.air).air
		f.guess[i] = g
	}
}

// known spreads a value that was told by sd, and one that was not by wide about
// usual.
func known(told, usual, sd, wide, z, low, high float64) float64 {
	if !(told > 0) || math.IsInf(told, 0) {
		told, sd = usual, wide
	}
	return max(low, min(told+sd*z, high))
}
