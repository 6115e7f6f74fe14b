package compost

// A small exact integer program: least cost in whole numbers under a handful
// of linear limits. Branch and bound in depth, each node bounded by the dual
// simplex method in a dictionary whose columns are turned over when a variable
// sits at its top. Costs are never negative, so the slack dictionary is dual
// feasible from the start and no first phase is needed.
//
// Textbook methods (Chvátal, Linear Programming, 1983, from memory); proven
// against brute force in a property test.

import "math"

type program struct {
	cost  []float64 // a unit, never below 0
	top   []float64 // most units, whole
	row   [][]float64
	bound []float64 // row . x >= bound
}

// slight is how far a limit may be missed, as a part of its largest number.
const slight = 1e-9

// atLeast adds a limit, scaled so that its largest number is 1.
func (p *program) atLeast(row []float64, bound float64) {
	most := math.Abs(bound)
	for _, v := range row {
		most = max(most, math.Abs(v))
	}
	if most > 0 {
		for j := range row {
			row[j] /= most
		}
		bound /= most
	}
	p.row, p.bound = append(p.row, row), append(p.bound, bound)
}

// meets tells whether whole numbers x keep all limits.
func (p *program) meets(x []float64) bool {
	for i, row := range p.row {
		got := 0.0
		for j, v := range row {
			got += v * x[j]
		}
		if got < p.bound[i]-slight {
			return false
		}
	}
	return true
}

// quantum is a step of which all costs are whole multiples, or 0 when none of
// the usual ones is. A better list is then better by a step at least.
func (p *program) quantum() float64 {
	for _, q := range []float64{1, 0.5, 0.25, 0.1, 0.05, 0.01} {
		fits := true
		for _, c := range p.cost {
			fits = fits && math.Abs(c/q-math.Round(c/q)) < 1e-9
		}
		if fits {
			return q
		}
	}
	return 0
}

type search struct {
	*program
	dict     dictionary
	low, top []float64
	x        []float64
	best     []float64
	least    float64
	quantum  float64
	nodes    int
}

// patience is the most nodes looked at, a second or so of work. Ordinary goals
// take tens to thousands. Bands a hair wide over odd efforts may need more;
// then the best list so far stands, so that one question cannot hold up a desk.
const patience = 300_000

// solve gives the least costly whole numbers that keep the limits, and false
// when none do.
func (p *program) solve() ([]int, bool) {
	n := len(p.cost)
	s := search{
		program: p, dict: makeDictionary(len(p.row), n),
		low: make([]float64, n), top: append([]float64(nil), p.top...),
		x: make([]float64, n), best: make([]float64, n),
		least: math.Inf(1), quantum: p.quantum(),
	}
	s.node()
	if math.IsInf(s.least, 1) {
		return nil, false
	}
	counts := make([]int, n)
	for j, v := range s.best {
		counts[j] = int(v)
	}
	return counts, true
}

// node explores all whole numbers between low and top.
func (s *search) node() {
	if s.nodes++; s.nodes > patience {
		return
	}
	cost, ok := s.dict.solve(s.program, s.low, s.top, s.x)
	if !ok || s.hopeless(cost) {
		return
	}
	j := s.fractional()
	if j < 0 {
		if !s.keep() {
			s.around()
		}
		return
	}
	down, low, top := math.Floor(s.x[j]), s.low[j], s.top[j]
	up := s.x[j]-down > 0.5
	for range 2 {
		if up {
			s.low[j] = down + 1
		} else {
			s.top[j] = down
		}
		s.node()
		s.low[j], s.top[j] = low, top
		up = !up
	}
}

// hopeless tells whether a bound leaves no room below the best list so far.
func (s *search) hopeless(bound float64) bool {
	if math.IsInf(s.least, 1) {
		return false
	}
	if s.quantum > 0 {
		return bound > s.least-s.quantum+1e-6*s.quantum
	}
	return bound >= s.least-1e-9*(1+s.least)
}

// fractional is the variable farthest from whole, -1 when all are.
func (s *search) fractional() int {
	at, far := -1, 1e-7
	for j, v := range s.x {
		if d := math.Abs(v - math.Round(v)); d > far {
			at, far = j, d
		}
	}
	return at
}

// keep takes a whole answer when it is cheaper. False when rounding took it
// out of the limits.
func (s *search) keep() bool {
	cost := 0.0
	for j := range s.x {
		s.x[j] = math.Round(s.x[j])
		cost += s.cost[j] * s.x[j]
	}
	if !s.meets(s.x) {
		return false
	}
	if cost < s.least {
		copy(s.best, s.x)
		s.least = cost
	}
	return true
}

// around explores a node whose answer is whole but a hair outside the limits:
// below, above and at its first value that is still open.
func (s *search) around() {
	for j := range s.x {
		low, top, at := s.low[j], s.top[j], s.x[j]
		if low == top {
			continue
		}
		for _, part := range [3][2]float64{{low, at - 1}, {at, at}, {at + 1, top}} {
			if s.low[j], s.top[j] = part[0], part[1]; part[0] <= part[1] {
				s.node()
			}
		}
		s.low[j], s.top[j] = low, top
		return
	}
}
