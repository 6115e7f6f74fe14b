package compost

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/optimize/convex/lp"
	"pgregory.net/rapid"
)

func anyProgram(t *rapid.T, kinds, most int) *program {
	p := &program{}
	n := rapid.IntRange(1, kinds).Draw(t, "kinds")
	for range n {
		p.cost = append(p.cost, float64(rapid.IntRange(0, 40).Draw(t, "cost"))/4)
		p.top = append(p.top, float64(rapid.IntRange(0, most).Draw(t, "top")))
	}
	for range rapid.IntRange(1, 5).Draw(t, "limits") {
		row := make([]float64, n)
		for j := range row {
			row[j] = float64(rapid.IntRange(-500, 500).Draw(t, "number")) / 97
		}
		// Whole eighths: a bound of 1e-10 is met by nothing here and missed there.
		p.atLeast(row, float64(rapid.IntRange(-80, 80).Draw(t, "bound"))/8)
	}
	return p
}

// brute tries every list there is.
func brute(p *program) (least float64) {
	least = math.Inf(1)
	x := make([]float64, len(p.cost))
	for {
		if p.meets(x) {
			cost := 0.0
			for j, v := range x {
				cost += v * p.cost[j]
			}
			least = math.Min(least, cost)
		}
		j := 0
		for ; j < len(x); j++ {
			if x[j]++; x[j] <= p.top[j] {
				break
			}
			x[j] = 0
		}
		if j == len(x) {
			return least
		}
	}
}

func TestShoppingAgainstBruteForce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := anyProgram(t, 4, 7)
		counts, ok := p.solve()
		least := brute(p)
		if ok != !math.IsInf(least, 1) {
			t.Fatalf("found %v, brute force %v", ok, least)
		}
		if !ok {
			return
		}
		cost := 0.0
		x := make([]float64, len(counts))
		for j, n := range counts {
			x[j] = float64(n)
			cost += x[j] * p.cost[j]
		}
		if !p.meets(x) {
			t.Fatalf("%v breaks a limit", counts)
		}
		if math.Abs(cost-least) > 1e-9 {
			t.Fatalf("cost %v, brute force %v", cost, least)
		}
	})
}

// The bound of each node against gonum's simplex.
func TestBoundAgainstASimplex(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := anyProgram(t, 6, 20)
		m, n := len(p.row), len(p.cost)
		// Standard form: a slack for each limit and for each top.
		a := mat.NewDense(m+n, n+m+n, nil)
		b := make([]float64, m+n)
		c := make([]float64, n+m+n)
		copy(c, p.cost)
		for i, row := range p.row {
			for j, v := range row {
				a.Set(i, j, v)
			}
			a.Set(i, n+i, -1)
			b[i] = p.bound[i]
		}
		for j := range n {
			a.Set(m+j, j, 1)
			a.Set(m+j, n+m+j, 1)
			b[m+j] = p.top[j]
		}
		want, _, err := lp.Simplex(c, a, b, 0, nil)
		if err != nil && err != lp.ErrInfeasible {
			t.Skip("the reference gave up: ", err)
		}
		x := make([]float64, n)
		d := makeDictionary(m, n)
		got, ok := d.solve(p, make([]float64, n), p.top, x)
		if ok != (err == nil) {
			t.Fatalf("feasible %v, reference %v", ok, err)
		}
		if ok {
			require.InDelta(t, want, got, 1e-6*(1+math.Abs(want)))
		}
	})
}

func TestShopReachesTheGoal(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		have := []Portion{{N: float64(rapid.IntRange(1, 20).Draw(t, "dung")), Unit: "basin", Material: "cow_dung"}}
		var can []Fetch
		for _, m := range rapid.SliceOfNDistinct(rapid.SampledFrom([]string{"grass", "straw", "maize_stover", "dry_leaves", "weeds", "goat_dung", "husk", "hay"}), 2, 6, rapid.ID).Draw(t, "can") {
			can = append(can, Fetch{"basket", m, float64(rapid.IntRange(1, 5).Draw(t, "effort")), rapid.SampledFrom([]int{0, 30, 100}).Draw(t, "max")})
		}
		goal := HeapGoal()
		list, water, ok := Shop(have, can, goal, nil)
		if !ok {
			t.Skip("no list")
		}
		all := have
		for _, b := range list {
			all = append(all, Portion{N: float64(b.N), Unit: b.Unit, Material: b.Material})
		}
		m, _ := Blend(all, nil)
		within := func(v float64, band [2]float64) bool {
			return v >= band[0]-1e-4 && (band[1] == 0 || v <= band[1]+1e-4)
		}
		if !within(m.CN.Likely, goal.CN) || !within(m.M3.Likely, goal.M3) || m.Moisture.Likely > 60+1e-4 {
			t.Fatalf("%v gives %+v", list, m)
		}
		require.InDelta(t, m.Water, water, 1e-6*(1+water))
		if m.Moisture.Likely < 50 && water == 0 {
			t.Fatal("dry, and no water asked for")
		}
	})
}

func TestShopRefusesNonsense(t *testing.T) {
	can := []Fetch{{"basket", "straw", 1, 0}, {"basket", "grass", 1, 0}}
	for _, bad := range []Fetch{{"basket", "hay", -1, 0}, {"basket", "hay", math.NaN(), 0}, {"basket", "hay", 1, -2}} {
		_, _, ok := Shop(nil, append(can, bad), HeapGoal(), nil)
		require.False(t, ok)
	}
	_, _, ok := Shop(nil, nil, HeapGoal(), nil)
	require.False(t, ok)
	list, _, ok := Shop(nil, nil, Goal{}, nil)
	require.True(t, ok, "a goal of nothing is reached")
	require.Empty(t, list)
	_, _, ok = Shop(nil, []Fetch{{"basket", "straw", 1, 0}}, HeapGoal(), nil)
	require.False(t, ok, "straw alone never comes down to 35")
}

// hard is ten materials with uneven efforts and the narrow bands of the trade.
func hard() []Fetch {
	var can []Fetch
	for i, m := range []string{"cow_dung", "straw", "grass", "dry_leaves", "maize_stover", "weeds", "goat_dung", "hay", "husk", "banana_stem"} {
		can = append(can, Fetch{[]string{"basket", "bag", "barrow"}[i%3], m, 1 + 0.37*float64(i%4), 25})
	}
	return can
}

func BenchmarkShop10(b *testing.B) {
	b.ReportAllocs()
	have := []Portion{{N: 5, Unit: "basin", Material: "cow_dung"}}
	goal := HeapGoal()
	goal.CN, goal.M3 = [2]float64{29, 30}, [2]float64{2.718, 2.8}
	for b.Loop() {
		Shop(have, hard(), goal, nil)
	}
}
