package compost

import "testing"

func TestShowHeat(t *testing.T) {
	e := Heat(HeatLog{Air: 25, Until: 40 * 24, Turns: []float64{7 * 24, 14 * 24}})
	for d := 0; d <= 40; d++ {
		h := d * 24
		if h < len(e.Hours) {
			t.Logf("%2d %5.1f %5.1f %5.1f", d, e.Low[h], e.Likely[h], e.High[h])
		}
	}
	t.Log(e.DaysAt55, e.NextTurn, e.OutsideTreated)
	e = Heat(HeatLog{Air: 25, Until: 10 * 24, Signs: []Sign{{Hour: 72, Word: "hot"}, {Hour: 120, Word: "hot"}}})
	for d := 0; d <= 10; d++ {
		h := d * 24
		t.Logf("%2d %5.1f %5.1f %5.1f", d, e.Low[h], e.Likely[h], e.High[h])
	}
	t.Log(e.DaysAt55, e.NextTurn, e.OutsideTreated)
}

func BenchmarkHeat(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		Heat(HeatLog{Air: 25, Until: 60 * 24, Turns: []float64{7 * 24, 14 * 24}})
	}
}
func BenchmarkBlend(b *testing.B) {
	b.ReportAllocs()
	ms := []string{"cow_dung", "straw", "grass", "dry_leaves", "maize_stover", "weeds", "goat_dung", "hay", "husk", "banana_stem", "coffee_pulp", "leaves_green"}
	var ps []Portion
	for _, m := range ms {
		ps = append(ps, Portion{N: 3, Unit: "basket", Material: m})
	}
	for b.Loop() {
		Blend(ps, nil)
	}
}
func BenchmarkShop(b *testing.B) {
	b.ReportAllocs()
	ms := []string{"cow_dung", "straw", "grass", "dry_leaves", "maize_stover", "weeds", "goat_dung", "hay", "husk", "banana_stem"}
	var fs []Fetch
	for i, m := range ms {
		fs = append(fs, Fetch{"basket", m, float64(i%4 + 1), 0})
	}
	for b.Loop() {
		Shop([]Portion{{N: 5, Unit: "basin", Material: "cow_dung"}}, fs, HeapGoal(), nil)
	}
	list, w, ok := Shop([]Portion{{N: 5, Unit: "basin", Material: "cow_dung"}}, fs, HeapGoal(), nil)
	b.Log(list, w, ok)
}
