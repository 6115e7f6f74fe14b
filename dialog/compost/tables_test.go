package compost

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// Every row says where each of its values comes from, and its carbon is its
// nitrogen times its ratio (S20).
func TestMaterialsKeepTheirProvenance(t *testing.T) {
	rows := Materials()
	require.Len(t, rows, 80)
	seen := map[string]bool{}
	for _, m := range rows {
		require.False(t, seen[m.ID], "%s twice", m.ID)
		seen[m.ID] = true
		require.Contains(t, classes(), m.Class, m.ID)
		for _, p := range []string{m.Source, m.Provenance, m.NProv, m.CNProv, m.MoistureProv, m.DensityProv} {
			require.NotEmpty(t, p, "%s has a value of no known source", m.ID)
		}
		for _, p := range []string{m.NProv, m.CNProv, m.MoistureProv, m.DensityProv} {
			kind, _, _ := strings.Cut(p, ":")
			require.Contains(t, []string{"seen", "memory", "practice", "chosen", "calc"}, kind, m.ID)
		}
		require.InDelta(t, m.Carbon, m.Nitrogen*m.CN.Likely, 0.051+0.005*m.Carbon, m.ID)
		require.LessOrEqual(t, m.CN.Low, m.CN.Likely, m.ID)
		require.LessOrEqual(t, m.CN.Likely, m.CN.High, m.ID)
		require.Greater(t, m.Density, 0.0, m.ID)
		require.True(t, m.Moisture > 0 && m.Moisture < 100, m.ID)
		got, ok := Lookup(m.ID)
		require.True(t, ok)
		require.Equal(t, m, got)
	}
}

// All codes a reply may be read to; worms and curd are no heap materials.
func TestReplyCodesAreKnown(t *testing.T) {
	codes := strings.Fields(`cow_dung buffalo_dung goat_dung sheep_dung horse_dung donkey_dung pig_dung rabbit_dung hen_dung
		grass weeds leaves_green dry_leaves banana_stem water_hyacinth fruit_waste veg_scraps coffee_pulp coffee_husk straw
		maize_stover stalks cane_waste husk sawdust hay cardboard ash jaggery compost`)
	for _, c := range codes {
		m, ok := Lookup(c)
		require.True(t, ok, c)
		for _, u := range strings.Fields("kg quintal ton litre bag basin basket bucket tin cart barrow trailer headload load bundle armful handful") {
			kg, m3, ok := Calibration(nil).Weigh(Portion{N: 1, Unit: u, Material: c})
			require.True(t, ok, "%s %s", u, c)
			require.Greater(t, kg.Likely, 0.0)
			require.InDelta(t, m.Density, kg.Likely/m3.Likely, 1e-6, "%s %s: mass and volume convert both ways", u, c)
		}
	}
	for _, c := range []string{"worms", "curd", "", "cow"} {
		_, ok := Lookup(c)
		require.False(t, ok, c)
	}
	straw, _ := Lookup("straw")
	wheat, _ := Lookup("wheat_straw")
	require.GreaterOrEqual(t, straw.CN.High, wheat.CN.High, "a reply code takes in the doubt of all it covers")
}

func TestTablesHaveReasons(t *testing.T) {
	for _, r := range table(codesCSV) {
		require.NotEmpty(t, r["reason"], r["code"])
		for _, id := range append(strings.Fields(r["covers"]), r["row"]) {
			m, ok := Lookup(id)
			require.True(t, ok, id)
			require.Equal(t, id, m.ID)
		}
	}
	for _, r := range append(table(measuresCSV), table(cropsCSV)...) {
		require.NotEmpty(t, r["source"], r)
		require.LessOrEqual(t, number(r["low"]), number(r["likely"]), r)
		require.LessOrEqual(t, number(r["likely"]), number(r["high"]), r)
	}
}

func TestNearSpellings(t *testing.T) {
	for typed, want := range map[string]string{
		"cow_dun": "cow_dung", "ricestraw": "rice_straw", "maize stover": "maize_stover", "Grass_Fresh": "grass_fresh", "sawdist": "sawdust",
	} {
		require.Contains(t, Near(typed), want, typed)
	}
	require.Empty(t, Near("qqqqqqqq"))
	require.Empty(t, Near(""))
}
