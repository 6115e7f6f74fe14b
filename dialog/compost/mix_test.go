package compost

import (
	"math"
	"math/rand"
	"sort"
	"testing"

	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat"
	"pgregory.net/rapid"
)

// anyStuff draws a material as a handbook might print it.
func anyStuff(t *rapid.T, name string) Stuff {
	n := rapid.Float64Range(0.1, 8).Draw(t, name+" n")
	return Stuff{
		Kg:       rapid.Float64Range(0.1, 2000).Draw(t, name+" kg"),
		Moisture: rapid.Float64Range(2, 95).Draw(t, name+" moisture"),
		Nitrogen: n,
		Carbon:   math.Min(60, n*rapid.Float64Range(3, 200).Draw(t, name+" cn")),
	}
}

func someStuff(t *rapid.T) []Stuff {
	all := make([]Stuff, rapid.IntRange(1, 12).Draw(t, "kinds"))
	for i := range all {
		all[i] = anyStuff(t, "part")
	}
	return all
}

func TestRatioOfAMixLiesBetweenItsMaterials(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		all := someStuff(t)
		low, high, wet, dry := math.Inf(1), 0.0, 0.0, 100.0
		for _, s := range all {
			low, high = math.Min(low, s.Carbon/s.Nitrogen), math.Max(high, s.Carbon/s.Nitrogen)
			dry, wet = math.Min(dry, s.Moisture), math.Max(wet, s.Moisture)
		}
		if r := CN(all...); r < low-1e-9*low || r > high+1e-9*high {
			t.Fatalf("C:N %v outside %v to %v", r, low, high)
		}
		if m := Moisture(all...); m < dry-1e-9 || m > wet+1e-9 {
			t.Fatalf("moisture %v outside %v to %v", m, dry, wet)
		}
	})
}

func TestDoublingAllChangesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		all := someStuff(t)
		double := append([]Stuff(nil), all...)
		for i := range double {
			double[i].Kg *= 2
		}
		require.InEpsilon(t, CN(all...), CN(double...), 1e-12)
		require.InEpsilon(t, Moisture(all...), Moisture(double...), 1e-12)
	})
}

func TestMoreBrownNeverLowersTheRatio(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		all := someStuff(t)
		before := CN(all...)
		brown := anyStuff(t, "brown")
		brown.Carbon = brown.Nitrogen * before * rapid.Float64Range(1, 20).Draw(t, "browner")
		if after := CN(append(all, brown)...); after < before*(1-1e-12) {
			t.Fatalf("C:N fell from %v to %v", before, after)
		}
	})
}

// The often printed shortcut (20 + 20 + 60) / 3 = 33 (S18) is right only when
// every bucket holds the same nitrogen. Two buckets of grass and one of leaves,
// with the values of S10 and R8, do not.
func TestAveragingRatiosIsWrong(t *testing.T) {
	grass := Stuff{Kg: 10, Moisture: 77, Carbon: 45, Nitrogen: 2.4}
	leaves := Stuff{Kg: 10, Moisture: 35, Carbon: 50, Nitrogen: 0.75}
	averaged := (2*45/2.4 + 50/0.75) / 3
	balance := CN(grass, grass, leaves)
	// By hand: carbon 2 x 2.3 x 45 + 6.5 x 50, nitrogen 2 x 2.3 x 2.4 + 6.5 x 0.75.
	require.InDelta(t, (2*2.3*45+6.5*50)/(2*2.3*2.4+6.5*0.75), balance, 1e-9)
	require.Greater(t, math.Abs(balance-averaged), 1.0)

	// And the one case in which it is right.
	same := []Stuff{{Kg: 1, Carbon: 20, Nitrogen: 1}, {Kg: 1, Carbon: 20, Nitrogen: 1}, {Kg: 1, Carbon: 60, Nitrogen: 1}}
	require.InDelta(t, 100.0/3, CN(same...), 1e-9)
}

// F4, F6 to F8 and F10 are checked by putting the answer back into F3 and F5.
func TestMissingMassReachesTheGoal(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		all, add := someStuff(t), anyStuff(t, "add")
		goal := rapid.Float64Range(10, 90).Draw(t, "goal")
		if kg, ok := KgForMoisture(goal, add.Moisture, all...); ok {
			with := add
			with.Kg = kg
			require.InDelta(t, goal, Moisture(append(all, with)...), 1e-6)
		} else if (Moisture(all...)-goal)*(add.Moisture-goal) < -1e-6 {
			t.Fatal("the goal lies between the two and still it cannot be reached")
		}
		cn := rapid.Float64Range(10, 90).Draw(t, "goal cn")
		if kg, ok := KgForCN(cn, add, all...); ok {
			with := add
			with.Kg = kg
			require.InEpsilon(t, cn, CN(append(all, with)...), 1e-6)
		} else if (CN(all...)-cn)*(add.Carbon/add.Nitrogen-cn) < -1e-6 {
			t.Fatal("the goal lies between the two and still it cannot be reached")
		}
	})
}

// F11 against a general linear solver (gonum).
func TestBothGoalsAgainstALinearSolver(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		all, a, b := someStuff(t), anyStuff(t, "a"), anyStuff(t, "b")
		const cn, goal = 30.0, 57.0
		row := func(s Stuff) (float64, float64) {
			return (100 - s.Moisture) * (s.Carbon - cn*s.Nitrogen), s.Moisture - goal
		}
		a1, a2 := row(a)
		b1, b2 := row(b)
		var r1, r2 float64
		for _, s := range all {
			x, y := row(s)
			r1, r2 = r1-s.Kg*x, r2-s.Kg*y
		}
		m := mat.NewDense(2, 2, []float64{a1, b1, a2, b2})
		if math.Abs(mat.Det(m)) < 1 {
			t.Skip("nearly the same material twice")
		}
		var x mat.VecDense
		require.NoError(t, x.SolveVec(m, mat.NewVecDense(2, []float64{r1, r2})))
		p, q, ok := KgForBoth(cn, goal, a, b, all...)
		if ok != (x.AtVec(0) >= -1e-9 && x.AtVec(1) >= -1e-9) {
			t.Fatalf("ok %v, but the solver has %v", ok, x.RawVector().Data)
		}
		if ok {
			require.InDelta(t, x.AtVec(0), p, 1e-6*(1+p))
			require.InDelta(t, x.AtVec(1), q, 1e-6*(1+q))
		}
	})
}

// F2 and F4: grass 77 %, leaves 35 %, goal 60 %, 6.8 kg (printed in S10).
// F5: 34.7 to 1 (printed in S16). F6: 3.5 kg (R8, from memory, not seen).
// F1: cow dung 2.4 % N at 19 (S1, S20). F1b: 10 % ash is 50 % carbon (S2).
func TestPrintedExamples(t *testing.T) {
	wet, ok := SampleMoisture(10, 6.3-4)
	require.True(t, ok)
	require.InDelta(t, 77, wet, 0.05)

	grass := Stuff{Kg: 10, Moisture: 77, Carbon: 45, Nitrogen: 2.4}
	kg, ok := KgForMoisture(60, 35, grass)
	require.True(t, ok)
	require.InDelta(t, 6.8, kg, 0.05)

	require.InDelta(t, 34.7, CN(Stuff{Kg: 50, Carbon: 40, Nitrogen: 1}, Stuff{Kg: 10, Carbon: 10, Nitrogen: 1}, Stuff{Kg: 2, Carbon: 25, Nitrogen: 1}), 0.05)

	kg, ok = KgForCN(30, Stuff{Moisture: 35, Carbon: 50, Nitrogen: 0.75}, grass)
	require.True(t, ok)
	require.InDelta(t, 3.5, kg, 0.05)

	require.InDelta(t, 45.6, CarbonFromRatio(2.4, 19), 0.05)
	require.InDelta(t, 50, CarbonFromAsh(10), 1e-9)

	// F9: what F4 gives for a material of 100 % moisture.
	kg, _ = KgForMoisture(55, 100, Stuff{Kg: 300, Moisture: 40})
	require.InDelta(t, kg, WaterToAdd(300, 40, 55), 1e-9)
	require.Zero(t, WaterToAdd(300, 60, 55))

	// F19: air is what water, organic and mineral volume leave; stuff of nothing
	// but water at 1000 kg/m3 leaves none. Particle densities are R9, from memory.
	require.InDelta(t, 0, FreeAir(1000, 100, 85), 1e-12)
	require.InDelta(t, 0, FreeAir(1600, 0, 100), 1e-12)
	require.InDelta(t, 1, FreeAir(0, 55, 85), 1e-12)
}

func anyPortions(t *rapid.T) []Portion {
	rows := Materials()
	ps := make([]Portion, rapid.IntRange(1, 20).Draw(t, "portions"))
	for i := range ps {
		ps[i] = Portion{
			N:        rapid.Float64Range(0.25, 40).Draw(t, "n"),
			Unit:     rapid.SampledFrom(Units()).Draw(t, "unit"),
			Material: rapid.SampledFrom(rows).Draw(t, "material").ID,
			Trodden:  rapid.Bool().Draw(t, "trodden"),
			Wilted:   rapid.Bool().Draw(t, "wilted"),
		}
	}
	return ps
}

// Blend against a plain twin: weigh each, then the balance of balance.go.
func TestBlendAgainstItsPlainTwin(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		ps := anyPortions(t)
		m, ok := Blend(ps, nil)
		require.True(t, ok)
		var all, counted []Stuff
		low, high := math.Inf(1), 0.0
		for _, p := range ps {
			kg, m3, ok := Calibration(nil).Weigh(p)
			require.True(t, ok)
			ordered(t, kg)
			ordered(t, m3)
			mat, _ := Lookup(p.Material)
			s := Stuff{kg.Likely, mat.Moisture, mat.Carbon, mat.Nitrogen}
			if p.Wilted && mat.wilts() { // water only goes: the dry mass of a kilo rises
				s.Moisture = 100 - (100-s.Moisture)/0.6
			}
			all = append(all, s)
			if mat.ID != "wood_ash" && mat.ID != "jaggery" {
				counted = append(counted, s)
				low, high = math.Min(low, mat.CN.Low), math.Max(high, mat.CN.High)
			}
		}
		require.InEpsilon(t, Moisture(all...), m.Moisture.Likely, 1e-9)
		ordered(t, m.Moisture)
		ordered(t, m.Kg)
		ordered(t, m.M3)
		if len(counted) > 0 {
			require.InEpsilon(t, CN(counted...), m.CN.Likely, 0.02) // table carbon is rounded
			ordered(t, m.CN)
			if m.CN.Low < low-1e-9 || m.CN.High > high+1e-9 {
				t.Fatalf("%v outside its materials' %v to %v", m.CN, low, high)
			}
			require.Equal(t, JudgeMix(m.CN.Likely, m.Moisture.Likely), m.Advice)
		}
		if m.Settled && m.Doubt != "" {
			t.Fatal("settled, and still in doubt")
		}
	})
}

func ordered(t *rapid.T, r Range) {
	if !(r.Low <= r.Likely+1e-9 && r.Likely <= r.High+1e-9) || r.Low < 0 {
		t.Fatalf("ends of %v are out of order", r)
	}
}

func TestBlendDoubledIsTheSameMix(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		ps := anyPortions(t)
		one, _ := Blend(ps, nil)
		for i := range ps {
			ps[i].N *= 2
		}
		two, _ := Blend(ps, nil)
		require.InDelta(t, one.CN.Likely, two.CN.Likely, 1e-6)
		require.InDelta(t, one.CN.High, two.CN.High, 1e-6)
		require.InDelta(t, 2*one.Kg.High, two.Kg.High, 1e-6*two.Kg.High)
		require.Equal(t, one.Advice, two.Advice)
		require.Equal(t, one.Doubt, two.Doubt)
	})
}

// The ranges against chance: 20,000 draws of the same doubts, their 10 % and
// 90 % points read by gonum/stat. First-order spread may be off by a tenth of
// its width or so; more would be wrong.
func TestRangesAgainstDraws(t *testing.T) {
	ps := []Portion{
		{N: 12, Unit: "basin", Material: "cow_dung_fresh"},
		{N: 20, Unit: "basket", Material: "grass_fresh"},
		{N: 25, Unit: "basket", Material: "maize_stover"},
		{N: 8, Unit: "basket", Material: "dry_leaves"},
	}
	m, ok := Blend(ps, nil)
	require.True(t, ok)
	r := rand.New(rand.NewSource(1))
	between := func(v Range) float64 { // a split normal law with those 80 % ends
		z := r.NormFloat64()
		if z < 0 {
			return math.Max(v.Likely/20, v.Likely+z*(v.Likely-v.Low)/tenth)
		}
		return v.Likely + z*(v.High-v.Likely)/tenth
	}
	var cns, wets, kgs []float64
	for range 20_000 {
		var all []Stuff
		var total float64
		for _, p := range ps {
			kg, _, _ := Calibration(nil).Weigh(p)
			mat, _ := Lookup(p.Material)
			s := Stuff{Kg: between(kg), Carbon: mat.Carbon, Nitrogen: mat.Carbon / between(mat.CN)}
			s.Moisture = between(Range{mat.Moisture - 5, mat.Moisture, mat.Moisture + 5})
			s.Moisture = math.Min(99, math.Max(1, s.Moisture))
			all = append(all, s)
			total += s.Kg
		}
		cns, wets, kgs = append(cns, CN(all...)), append(wets, Moisture(all...)), append(kgs, total)
	}
	for _, c := range []struct {
		name  string
		drawn []float64
		got   Range
	}{{"C:N", cns, m.CN}, {"moisture", wets, m.Moisture}, {"kg", kgs, m.Kg}} {
		sort.Float64s(c.drawn)
		low, high := stat.Quantile(0.1, stat.Empirical, c.drawn, nil), stat.Quantile(0.9, stat.Empirical, c.drawn, nil)
		wide := high - low
		require.InDelta(t, low, c.got.Low, 0.2*wide, "%s low: drawn %v, got %v", c.name, low, c.got)
		require.InDelta(t, high, c.got.High, 0.2*wide, "%s high: drawn %v, got %v", c.name, high, c.got)
	}
}

func TestCalibrationReplacesTheMeasure(t *testing.T) {
	p := Portion{N: 2, Unit: "tin", Material: "dry_leaves"}
	usual, _, _ := Calibration(nil).Weigh(p)
	own, _, _ := Calibration{"tin dry_leaves": 3}.Weigh(p)
	require.InDelta(t, 6, own.Likely, 1e-9)
	require.Less(t, own.High-own.Low, own.Likely*0.21)
	require.Greater(t, (usual.High-usual.Low)/usual.Likely, (own.High-own.Low)/own.Likely)

	litres, m3, _ := Calibration{"tin": 10}.Weigh(p)
	require.InDelta(t, 0.02, m3.Likely, 1e-9)
	require.InDelta(t, 0.02*70, litres.Likely, 1e-9)

	// A reply code finds what was weighed under its row, and the other way round.
	own, _, _ = Calibration{"basin cow_dung_fresh": 15}.Weigh(Portion{N: 1, Unit: "basin", Material: "cow_dung"})
	require.InDelta(t, 15, own.Likely, 1e-9)
	// A kilo is a kilo, whatever was set.
	own, _, _ = Calibration{"kg": 5}.Weigh(Portion{N: 1, Unit: "kg", Material: "cow_dung"})
	require.Equal(t, Exactly(1), own)
}

// Trodden brown holds twice as much (practice); wilting takes water only.
func TestTroddenAndWilted(t *testing.T) {
	loose, _, _ := Calibration(nil).Weigh(Portion{N: 1, Unit: "basket", Material: "maize_stover"})
	trodden, _, _ := Calibration(nil).Weigh(Portion{N: 1, Unit: "basket", Material: "maize_stover", Trodden: true})
	require.InDelta(t, 2*loose.Likely, trodden.Likely, 1e-9)

	fresh, _ := Blend([]Portion{{N: 100, Unit: "kg", Material: "grass_fresh"}}, nil)
	wilted, _ := Blend([]Portion{{N: 100, Unit: "kg", Material: "grass_fresh", Wilted: true}}, nil)
	require.InDelta(t, fresh.CN.Likely, wilted.CN.Likely, 1e-9)
	require.Less(t, wilted.Moisture.Likely, fresh.Moisture.Likely-10)
	dung, _ := Blend([]Portion{{N: 100, Unit: "kg", Material: "cow_dung", Wilted: true}}, nil)
	require.InDelta(t, 81, dung.Moisture.Likely, 1e-9, "dung does not wilt")
}

func TestNothingToWeigh(t *testing.T) {
	for _, p := range []Portion{
		{}, {N: 1, Unit: "basket", Material: "worms"}, {N: 1, Unit: "litre", Material: "curd"}, {N: 1, Unit: "acre", Material: "cow_dung"},
		{N: 0, Unit: "kg", Material: "cow_dung"}, {N: -1, Unit: "kg", Material: "cow_dung"}, {N: math.NaN(), Unit: "kg", Material: "cow_dung"}, {N: math.Inf(1), Unit: "kg", Material: "cow_dung"},
	} {
		_, ok := Blend([]Portion{p}, nil)
		require.False(t, ok, "%+v", p)
	}
	m, ok := Blend([]Portion{{N: 1, Unit: "basket", Material: "worms"}, {N: 1, Unit: "kg", Material: "wood_ash"}}, nil)
	require.True(t, ok)
	require.Zero(t, m.CN)
	require.Equal(t, []Class{TooDry}, m.Advice)
}

// The doubt names what to do about it, and weighing that one basket narrows it.
func TestDoubtNamesOneMeasurement(t *testing.T) {
	ps := []Portion{{N: 6, Unit: "basin", Material: "cow_dung"}, {N: 4, Unit: "basket", Material: "dry_leaves"}}
	m, _ := Blend(ps, nil)
	require.False(t, m.Settled)
	require.Contains(t, []string{"weigh basin cow_dung", "weigh basket dry_leaves", "squeeze"}, m.Doubt)

	exact, _ := Blend([]Portion{{N: 65, Unit: "kg", Material: "leaves_damp"}, {N: 35, Unit: "kg", Material: "grass_fresh"}}, nil)
	require.NotContains(t, exact.Doubt, "weigh", "kilos need no scale")
}

func BenchmarkBlend12(b *testing.B) {
	var ps []Portion
	for _, m := range []string{"cow_dung", "straw", "grass", "dry_leaves", "maize_stover", "weeds", "goat_dung", "hay", "husk", "banana_stem", "coffee_pulp", "leaves_green"} {
		ps = append(ps, Portion{N: 3, Unit: "basket", Material: m})
	}
	b.ReportAllocs()
	for b.Loop() {
		Blend(ps, nil)
	}
}
