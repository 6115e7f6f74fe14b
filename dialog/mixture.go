package dialog

import (
	"math"
	"slices"
	"strings"

	"warmstick/dialog/compost"
	"warmstick/dialog/phrases"
)

// The mixture: what the farmer's baskets come to, and what is missing, in whole
// local measures.

// portions is what lies ready for a heap, as the sums take it: what was told in
// several goes, in the same measure, together.
func portions(h Heap) []compost.Portion {
	var list []compost.Portion
	for _, g := range h.Have {
		i := slices.IndexFunc(list, func(p compost.Portion) bool { return p.Unit == g.Unit && p.Material == g.Material })
		if i < 0 {
			list = append(list, compost.Portion{N: g.N, Unit: g.Unit, Material: g.Material})
			continue
		}
		list[i].N += g.N
	}
	return list
}

// sums says how high a heap the stuff makes, how it is mixed, and what is
// still missing.
func (x *exchange) sums(h Heap) {
	have := portions(h)
	mix, ok := compost.Blend(have, x.s.Person.Measures)
	if !ok {
		x.say("cannot_weigh", nil)
		return
	}
	if h.Path == ColdPath {
		return
	}
	goal := compost.HeapGoal()
	switch heaps := mix.M3.Likely / compost.TradeHeap; {
	case heaps >= severalHeaps:
		x.say("heaps_so_far", phrases.Args{"N": int(heaps)}, classes(mix.Advice)...)
	case heaps >= longHeap: // what goes beyond 4 ft of height goes into the length
		x.say("length_so_far", phrases.Args{"Long": x.length(heaps * 6 * 0.3048)}, classes(mix.Advice)...)
	default:
		x.say("height_so_far", phrases.Args{"High": x.height(mix.M3.Likely)}, classes(mix.Advice)...)
	}
	full := mix.M3.Likely >= goal.M3[0] && mix.CN.Likely >= goal.CN[0] && mix.CN.Likely <= goal.CN[1]
	if full {
		x.say("mix_full", nil)
		x.water(mix.Water)
		x.doubt(mix)
		return
	}
	list, water, ok := compost.Shop(have, x.reachable(h), goal, x.s.Person.Measures)
	if !ok || len(list) == 0 {
		x.say("mix_"+mixKey(mix), nil)
		return
	}
	if less, spare := leaveOut(have, x.s.Person.Measures); spare {
		x.say("still_missing", phrases.Args{"List": listOf(bought(list))})
		x.say("or_less", phrases.Args{"One": amount(less)})
	} else if some, few, little, part := x.oneHeap(have, x.reachable(h), list); part {
		water = little
		if len(few) == 0 {
			x.say("one_heap_all", phrases.Args{"Use": listOf(some)})
		} else {
			x.say("one_heap", phrases.Args{"Use": listOf(some), "List": listOf(bought(few))})
		}
	} else {
		x.say("still_missing", phrases.Args{"List": listOf(bought(list))})
	}
	x.water(water)
	x.doubt(mix)
}

// Volumes, in heaps of 6 x 4 x 4 ft, from which stuff is told as one longer heap
// and as several (our choice).
const (
	longHeap     = 1.25
	severalHeaps = 2
)

func bought(list []compost.Buy) []Gathered {
	var buys []Gathered
	for _, b := range list {
		buys = append(buys, Gathered{N: float64(b.N), Unit: b.Unit, Material: b.Material})
	}
	return buys
}

// oneHeap finds, where the list would make several heaps, how much of what is at
// hand to use for one and what to bring to it: 30 baskets of hen dung are no reason
// to carry 300 of leaves.
func (x *exchange) oneHeap(have []compost.Portion, can []compost.Fetch, list []compost.Buy) (some []Gathered, buys []compost.Buy, water float64, ok bool) {
	volume := func(have []compost.Portion, list []compost.Buy) float64 {
		have = slices.Clip(have)
		for _, b := range list {
			have = append(have, compost.Portion{N: float64(b.N), Unit: b.Unit, Material: b.Material})
		}
		mix, _ := compost.Blend(have, x.s.Person.Measures)
		return mix.M3.Likely
	}
	most := severalHeaps * compost.TradeHeap
	all := volume(have, list)
	if all < most {
		return nil, nil, 0, false
	}
	for share := min(0.9, most/all); share > most/all/4; share *= 0.9 {
		var part []compost.Portion
		some = nil
		for _, p := range have {
			if p.N = math.Floor(p.N * share); p.N > 0 {
				part = append(part, p)
				some = append(some, Gathered{N: p.N, Unit: p.Unit, Material: p.Material})
			}
		}
		buys, water, ok = compost.Shop(part, can, compost.HeapGoal(), x.s.Person.Measures)
		if ok && len(part) > 0 && volume(part, buys) < most {
			some, buys = fromOwn(have, some, buys)
			return some, buys, water, true
		}
	}
	return nil, nil, 0, false
}

// fromOwn takes what a list says to bring out of the rest of what is at hand.
func fromOwn(have []compost.Portion, some []Gathered, buys []compost.Buy) ([]Gathered, []compost.Buy) {
	var bring []compost.Buy
	for _, b := range buys {
		for _, p := range have {
			if p.Unit != b.Unit || p.Material != b.Material {
				continue
			}
			i := slices.IndexFunc(some, func(g Gathered) bool { return g.Unit == b.Unit && g.Material == b.Material })
			if i < 0 {
				some = append(some, Gathered{Unit: b.Unit, Material: b.Material})
				i = len(some) - 1
			}
			n := min(b.N, int(p.N-some[i].N))
			some[i].N, b.N = some[i].N+float64(n), b.N-n
		}
		if b.N > 0 {
			bring = append(bring, b)
		}
	}
	return some, bring
}

// leaveOut finds how much of the wettest, richest stuff to use so that what is
// at hand makes a good heap without anything fetched. It looks at dung alone,
// which is what a farmer has too much of, and gives up when the heap would be
// too small to heat.
func leaveOut(have []compost.Portion, cal compost.Calibration) (Gathered, bool) {
	list := slices.Clone(have)
	for i := range list {
		m, ok := compost.Lookup(list[i].Material)
		if !ok || m.Class != "dung" {
			continue
		}
		for n := math.Ceil(list[i].N) - 1; n >= 1; n-- {
			list[i].N = n
			mix, ok := compost.Blend(list, cal)
			if !ok || mix.M3.Likely < 1 {
				break
			}
			if mix.CN.Likely >= 25 && mix.CN.Likely <= 35 && mix.Moisture.Likely <= 60 {
				return Gathered{N: n, Unit: list[i].Unit, Material: list[i].Material}, true
			}
		}
		break
	}
	return Gathered{}, false
}

func classes(list []compost.Class) []string {
	var s []string
	for _, c := range list {
		s = append(s, string(c))
	}
	return s
}

// mixKey is the word on the ratio alone; moisture is seen to by squeezing.
func mixKey(m compost.Mix) string {
	for _, c := range m.Advice {
		switch c {
		case compost.SlightlyGreen, compost.TooMuchGreen, compost.SlightlyBrown, compost.TooMuchBrown:
			return string(c)
		}
	}
	return "mix_ok"
}

// bucket is the litres of the water can a farmer carries (common practice).
const bucket = 20

func (x *exchange) water(litres float64) {
	if n := int(math.Round(litres / bucket)); n > 0 {
		x.say("water_cans", phrases.Args{"N": n})
	}
}

// doubt names the one measurement that would settle the advice.
func (x *exchange) doubt(m compost.Mix) {
	if m.Settled || !m.DoubtSettles {
		return
	}
	f := strings.Fields(m.Doubt)
	if len(f) == 3 && f[0] == "weigh" {
		x.say("weigh_one", phrases.Args{"One": amount(Gathered{N: 1, Unit: f[1], Material: f[2]})})
	}
}

// reachable is what a farmer may fetch: more of what they named, in the same
// measures, and the usual stuff of a kind they have none of.
func (x *exchange) reachable(h Heap) []compost.Fetch {
	var can []compost.Fetch
	kinds := map[string]bool{}
	seen := map[string]bool{}
	unit := "basket"
	for _, g := range h.Have {
		m, ok := compost.Lookup(g.Material)
		if !ok || m.Class == "additive" || seen[g.Material] || g.Material == "compost" {
			continue
		}
		seen[g.Material] = true
		kinds[m.Class] = true
		unit = g.Unit
		can = append(can, compost.Fetch{Unit: g.Unit, Material: g.Material, Effort: 1})
		if len(can) == 6 {
			break // enough to choose from; the list stays short
		}
	}
	for _, usual := range []struct{ class, material string }{{"dung", "cow_dung"}, {"green", "grass"}, {"brown", "dry_leaves"}} {
		if !kinds[usual.class] {
			can = append(can, compost.Fetch{Unit: unit, Material: usual.material, Effort: 1})
		}
	}
	return can
}

// height is how high the stuff stands on a base of 6 x 4 ft.
func (x *exchange) height(m3 float64) worded {
	feet := max(0.5, m3/compost.TradeHeap*4)
	return x.length(feet * 0.3048)
}

// units are the farmer's own, or those usual where their language is spoken.
func (x *exchange) units() string {
	switch {
	case x.s.Person.Units != "":
		return x.s.Person.Units
	case x.lang() == "es" || x.lang() == "fr":
		return "metres"
	}
	return "feet"
}

// length says metres in the farmer's own units.
func (x *exchange) length(m float64) worded {
	units := x.units()
	return func(lang string) string {
		if units == "metres" {
			return phrases.Text(lang, "in_metres", phrases.Args{"N": counted(math.Round(m*10) / 10)})
		}
		return phrases.Text(lang, "in_feet", phrases.Args{"N": counted(math.Round(m/0.3048*2) / 2)})
	}
}

// counted is a number as the plural rules take it: whole, or in digits.
func counted(v float64) any {
	if v == math.Trunc(v) {
		return int(v)
	}
	return trim(v)
}

// amount says one amount: "3 baskets of cow dung".
func amount(g Gathered) worded {
	return func(lang string) string {
		measure := phrases.Text(lang, "unit_"+g.Unit, phrases.Args{"N": counted(g.N)})
		if g.Material == "" {
			return measure
		}
		return phrases.Text(lang, "amount_of", phrases.Args{"Amount": measure, "Material": phrases.Text(lang, "material_"+g.Material, nil)})
	}
}

// listOf says several amounts, the first four of them.
func listOf(list []Gathered) worded {
	return func(lang string) string {
		var parts []string
		for _, g := range list[:min(len(list), 4)] {
			parts = append(parts, amount(g)(lang))
		}
		return strings.Join(parts, ", ")
	}
}
