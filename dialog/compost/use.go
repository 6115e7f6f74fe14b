package compost

// How much goes on which crop, and how far a harvest reaches.

import (
	_ "embed"
	"sync"
)

// Dose is how much a crop takes. One or both of PerM2 and PerPlant are set;
// seedlings take a part of the pot mix by volume instead.
type Dose struct {
	Crop            string
	PerM2, PerPlant Range // kg; per plant and year for trees, coffee, banana
	Part            Range // of the mix by volume, 0 to 1
	Source          string
	PlantSource     string
}

//go:embed crops.csv
var cropsCSV []byte

var crops = sync.OnceValue(func() map[string]Dose {
	all := map[string]Dose{}
	for _, r := range table(cropsCSV) {
		key := r["crop"]
		if r["stuff"] != "vermicompost" {
			key = r["stuff"]
		}
		d := all[key]
		d.Crop = key
		v := Range{number(r["low"]), number(r["likely"]), number(r["high"])}
		switch r["per"] {
		case "m2":
			d.PerM2, d.Source = v, r["source"]
		case "plant":
			d.PerPlant, d.PlantSource = v, r["source"]
		case "part":
			d.Part, d.Source = v, r["source"]
		}
		if d.Source == "" {
			d.Source = d.PlantSource
		}
		all[key] = d
	}
	return all
})

// Crops gives the crop codes, and "compost" for plain compost on any crop.
func Crops() []string {
	return []string{"cereal", "pulse", "vegetable", "fruit_tree", "coffee", "banana", "seedling", "compost"}
}

// Rate gives the dose of vermicompost for a crop code; "compost" gives that of
// plain compost on any field crop.
func Rate(crop string) (Dose, bool) {
	d, ok := crops()[crop]
	return d, ok
}

// FieldKg is the kg for an area in m2 at a rate in t/ha (F23).
func FieldKg(tonPerHa, m2 float64) float64 { return tonPerHa * m2 / 10 }

// Reach is how far kg of vermicompost go on a crop: square metres, plants, or
// litres of pot mix at 600 kg/m3 (density practice). The low end is at the
// high dose.
type Reach struct{ M2, Plants, PotLitres Range }

// Serves tells how far a harvest goes; false for an unknown crop.
func Serves(kg float64, crop string) (Reach, bool) {
	d, ok := Rate(crop)
	if !ok {
		return Reach{}, false
	}
	per := func(v float64, r Range) Range {
		if r.Likely == 0 {
			return Range{}
		}
		return Range{v / r.High, v / r.Likely, v / r.Low}
	}
	return Reach{per(kg, d.PerM2), per(kg, d.PerPlant), per(kg/0.6, d.Part)}, true
}

// WaitRaw is the days between compost that was never proven hot and a harvest
// eaten raw: 120 when the edible part touches soil (US organic rule for raw
// manure, as printed in a training text).
func WaitRaw(touchesSoil bool) int {
	if touchesSoil {
		return 120
	}
	return 90
}
