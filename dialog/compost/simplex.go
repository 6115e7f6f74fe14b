package compost

// The dual simplex method on a dictionary of few rows, for variables between 0
// and a top.

import "math"

// dictionary is: basic = beta + alpha . nonbasic, cost = z + d . nonbasic, with
// every nonbasic variable at zero. A variable that sits at its top is turned
// over: top minus it stands in its place.
type dictionary struct {
	m, n   int
	alpha  [][]float64
	beta   []float64
	d      []float64
	z      float64
	basic  []int // variable of each row; n and above are slacks
	column []int // variable of each column
	room   []float64
	turned []bool
}

func makeDictionary(m, n int) dictionary {
	t := dictionary{m: m, n: n,
		alpha: make([][]float64, m), beta: make([]float64, m), d: make([]float64, n),
		basic: make([]int, m), column: make([]int, n),
		room: make([]float64, n+m), turned: make([]bool, n+m),
	}
	for i := range t.alpha {
		t.alpha[i] = make([]float64, n)
	}
	return t
}

const tiny = 1e-11

// solve finds the least cost with low <= x <= top, and false when the limits
// cannot be kept. x receives the answer.
func (t *dictionary) solve(p *program, low, top, x []float64) (cost float64, ok bool) {
	t.begin(p, low, top)
	for range 50 * (t.m + t.n) {
		r := t.leaving()
		if r < 0 {
			t.answer(low, x)
			return t.z, true
		}
		if v := t.basic[r]; t.beta[r] > 0 {
			t.turnRow(r, v)
		}
		c := t.entering(r)
		if c < 0 {
			return 0, false
		}
		t.pivot(r, c)
	}
	// Not met in any test; the bound so far still is one.
	t.answer(low, x)
	return t.z, true
}

func (t *dictionary) begin(p *program, low, top []float64) {
	t.z = 0
	for j := range t.n {
		t.column[j], t.turned[j] = j, false
		t.room[j], t.d[j] = top[j]-low[j], p.cost[j]
		t.z += p.cost[j] * low[j]
	}
	for i := range t.m {
		t.basic[i], t.turned[t.n+i], t.room[t.n+i] = t.n+i, false, math.Inf(1)
		copy(t.alpha[i], p.row[i])
		t.beta[i] = -p.bound[i]
		for j, v := range p.row[i] {
			t.beta[i] += v * low[j]
		}
	}
}

// leaving is the row farthest outside 0 and its room, -1 when none is.
func (t *dictionary) leaving() int {
	at, worst := -1, slight/10
	for i, b := range t.beta {
		out := -b
		if over := b - t.room[t.basic[i]]; over > out {
			out = over
		}
		if out > worst {
			at, worst = i, out
		}
	}
	return at
}

// turnRow puts top minus the variable in its place.
func (t *dictionary) turnRow(r, v int) {
	t.beta[r] = t.room[v] - t.beta[r]
	for j := range t.alpha[r] {
		t.alpha[r][j] = -t.alpha[r][j]
	}
	t.turned[v] = !t.turned[v]
}

// entering keeps all costs from zero up; ties go to the larger pivot.
func (t *dictionary) entering(r int) int {
	at, least, size := -1, math.Inf(1), 0.0
	for j, a := range t.alpha[r] {
		if a <= tiny {
			continue
		}
		if q := t.d[j] / a; q < least-tiny || q <= least+tiny && a > size {
			at, least, size = j, q, a
		}
	}
	return at
}

func (t *dictionary) pivot(r, c int) {
	row := t.alpha[r]
	inv := 1 / row[c]
	for j := range row {
		row[j] *= -inv
	}
	row[c] = inv
	t.beta[r] *= -inv
	for i := range t.m {
		if i != r {
			t.beta[i] += combine(t.alpha[i], row, c) * t.beta[r]
		}
	}
	t.z += combine(t.d, row, c) * t.beta[r]
	t.basic[r], t.column[c] = t.column[c], t.basic[r]
}

// combine puts the new row of column c into another row and gives the factor.
func combine(into, row []float64, c int) float64 {
	f := into[c]
	into[c] = 0
	if f != 0 {
		for j, v := range row {
			into[j] += f * v
		}
	}
	return f
}

func (t *dictionary) answer(low, x []float64) {
	for j := range x {
		x[j] = 0
		if t.turned[j] {
			x[j] = t.room[j]
		}
	}
	for i, v := range t.basic {
		if v < t.n {
			if t.turned[v] {
				x[v] = t.room[v] - t.beta[i]
			} else {
				x[v] = t.beta[i]
			}
		}
	}
	for j := range x {
		x[j] += low[j]
	}
}
