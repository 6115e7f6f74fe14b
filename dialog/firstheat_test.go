package dialog

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestFirstHeatBounds(t *testing.T) {
	for _, c := range []struct {
		days   []int
		warmth []string
		want   FirstHeat
	}{
		{nil, nil, FirstHeat{}},
		{[]int{0}, []string{"hot"}, FirstHeat{}},
		{[]int{3}, []string{"hot"}, FirstHeat{By: 3}},
		{[]int{3, 4}, []string{"cold", "hot"}, FirstHeat{Until: 3, By: 4}},
		{[]int{3, 5, 6}, []string{"warm", "warm", "cold"}, FirstHeat{Until: 6}},
		{[]int{4, 9}, []string{"hot", "cold"}, FirstHeat{Until: 3, By: 4}},
		{[]int{5, 3}, []string{"hot", "hot"}, FirstHeat{By: 3}}, // told late
	} {
		var f FirstHeat
		for i, day := range c.days {
			f = f.felt(day, c.warmth[i])
		}
		require.Equal(t, c.want, f, "%v %v", c.days, c.warmth)
	}
}

// A heap that grew hot on some day and was felt on some days is never counted
// against the truth, and once known as hot it stays so.
func TestFirstHeatNeverContradictsTheHeap(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		truth := rapid.IntRange(1, 9).Draw(t, "grew hot on day")
		var f FirstHeat
		for _, day := range rapid.SliceOf(rapid.IntRange(1, 9)).Draw(t, "felt on days") {
			warmth := "cold"
			if day >= truth {
				warmth = "hot"
			}
			f = f.felt(day, warmth)
		}
		was := false
		for day := 1; day <= 9; day++ {
			hot, known := f.on(day)
			if known {
				require.Equal(t, day >= truth, hot)
			}
			require.False(t, was && !hot)
			was = hot
		}
	})
}

// Ten heaps: hot by day 3 in four, by day 4 in ten of ten. Day 3 is no sure
// majority, day 4 is; of four heaps nothing is told.
func TestUsualHeat(t *testing.T) {
	var heats []FirstHeat
	for i := range 10 {
		if i < 4 {
			heats = append(heats, FirstHeat{By: 3})
			continue
		}
		heats = append(heats, FirstHeat{Until: 3, By: 4})
	}
	f := Figures{HotBy: hotBy(heats)}
	require.Equal(t, Share{Of: "3", Hit: 4, All: 10}, f.HotBy[2])
	s, ok := f.UsualHeat()
	require.True(t, ok)
	require.Equal(t, Share{Of: "4", Hit: 10, All: 10}, s)
	_, ok = Figures{HotBy: hotBy(heats[6:])}.UsualHeat()
	require.False(t, ok)
	_, ok = Figures{HotBy: hotBy(append(append(heats, make([]FirstHeat, 50)...), FirstHeat{Until: 6}))}.UsualHeat()
	require.True(t, ok, "heaps that nobody felt, or that stayed cold, neither help nor harm")
}
