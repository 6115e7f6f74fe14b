package understand

import (
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// larder is how a language lists what lies ready: words from memory, no native speaker has
// read them.
type larder struct {
	lang, of, and string
	numbers       map[string]float64
	units         map[string]string
	materials     map[string]string
	unitFirst     bool // "magunia matatu": the thing before its number
}

var larders = []larder{
	{"en", " of ", " and ", map[string]float64{"two": 2, "a dozen": 12, "4-5": 4.5, "about six": 6, "one and a half": 1.5, "20": 20},
		map[string]string{"bags": "bag", "buckets": "bucket", "wheelbarrows": "barrow", "headloads": "headload", "debes": "tin"},
		map[string]string{"cow dung": "cow_dung", "dry leaves": "dry_leaves", "rice husks": "husk", "maize stalks": "maize_stover", "kitchen scraps": "veg_scraps", "wood ash": "ash"}, false},
	{"es", " de ", " y ", map[string]float64{"dos": 2, "una docena de": 12, "4 o 5": 4.5, "unos seis": 6, "veinte": 20},
		map[string]string{"costales": "bag", "baldes": "bucket", "carretillas": "barrow", "manojos": "bundle", "latas": "tin"},
		map[string]string{"estiércol de vaca": "cow_dung", "hojas secas": "dry_leaves", "cascarilla": "husk", "rastrojo": "maize_stover", "panela": "jaggery", "ceniza": "ash"}, false},
	{"fr", " de ", " et ", map[string]float64{"deux": 2, "une douzaine de": 12, "4 ou 5": 4.5, "environ six": 6, "vingt": 20},
		map[string]string{"sacs": "bag", "seaux": "bucket", "brouettes": "barrow", "fagots": "headload", "bidons": "tin"},
		map[string]string{"bouse": "cow_dung", "feuilles mortes": "dry_leaves", "balle de riz": "husk", "tiges de maïs": "maize_stover", "mélasse": "jaggery", "cendre": "ash"}, false},
	{"sw", " za ", " na ", map[string]float64{"mbili": 2, "tano": 5, "kumi": 10, "ishirini": 20, "12": 12},
		map[string]string{"gunia": "bag", "ndoo": "bucket", "toroli": "barrow", "karai": "basin", "debe": "tin"},
		map[string]string{"samadi": "cow_dung", "majani makavu": "dry_leaves", "pumba": "husk", "mabua ya mahindi": "maize_stover", "sukari guru": "jaggery", "majivu": "ash"}, true},
	{"hi", " ", " aur ", map[string]float64{"do": 2, "dedh": 1.5, "dhai": 2.5, "lagbhag chhe": 6, "ek darjan": 12, "20": 20},
		map[string]string{"bori": "bag", "balti": "bucket", "thela": "barrow", "tasla": "basin", "kanastar": "tin"},
		map[string]string{"gobar": "cow_dung", "sukhe patte": "dry_leaves", "bhusi": "husk", "makka ke danthal": "maize_stover", "gud": "jaggery", "rakh": "ash"}, false},
}

// Lists of one to three amounts are read as they stand, in every order of their parts.
func TestLists(t *testing.T) {
	for _, l := range larders {
		t.Run(l.lang, func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				chosen := rapid.Permutation(keysIn(l.materials)).Draw(t, "materials")[:rapid.IntRange(1, 3).Draw(t, "n")]
				materialFirst := rapid.Bool().Draw(t, "material first")
				var said, want []string
				for _, m := range chosen {
					n := rapid.SampledFrom(keysIn(l.numbers)).Draw(t, "number")
					u := rapid.SampledFrom(keysIn(l.units)).Draw(t, "unit")
					amount := n + " " + u
					if l.unitFirst {
						amount = u + " " + n
					}
					if materialFirst {
						said = append(said, m+" "+amount)
					} else {
						said = append(said, amount+l.of+m)
					}
					want = append(want, fmt.Sprintf("have=%s %s %s", strconv.FormatFloat(l.numbers[n], 'f', -1, 64), l.units[u], l.materials[m]))
				}
				text := strings.Join(said, rapid.SampledFrom([]string{l.and, ", "}).Draw(t, "joined by"))
				if got := Read(text, l.lang, "have"); !sameCodes(got.Codes, want) {
					t.Fatalf("%q: %v, want %v", text, got.Codes, want)
				}
			})
		})
	}
}

// Where a unit or a number is missing, that amount alone is left out, and it is told apart
// from the rest so that it can be asked for.
func TestListsWithGaps(t *testing.T) {
	for _, l := range larders {
		t.Run(l.lang, func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				var said, want, gaps []string
				for _, m := range rapid.Permutation(keysIn(l.materials)).Draw(t, "materials")[:rapid.IntRange(2, 3).Draw(t, "n")] {
					n := rapid.SampledFrom(keysIn(l.numbers)).Draw(t, "number")
					u := rapid.SampledFrom(keysIn(l.units)).Draw(t, "unit")
					missing := rapid.SampledFrom([]string{"nothing", "unit", "number and unit"}).Draw(t, "missing")
					switch {
					case missing == "number and unit":
						said = append(said, m)
					case missing == "unit" && l.unitFirst:
						said = append(said, m+" "+n)
					case missing == "unit":
						said = append(said, n+" "+m)
					case l.unitFirst:
						said = append(said, u+" "+n+l.of+m)
					default:
						said = append(said, n+" "+u+l.of+m)
					}
					if missing == "nothing" {
						want = append(want, fmt.Sprintf("have=%s %s %s", strconv.FormatFloat(l.numbers[n], 'f', -1, 64), l.units[u], l.materials[m]))
					} else {
						gaps = append(gaps, l.materials[m])
					}
				}
				text := strings.Join(said, rapid.SampledFrom([]string{l.and, ", "}).Draw(t, "joined by"))
				if got := Read(text, l.lang, "have"); !sameCodes(got.Codes, want) {
					t.Fatalf("%q: %v, want %v", text, got.Codes, want)
				}
				var uncounted []string
				for _, a := range Uncounted(text, l.lang) {
					uncounted = append(uncounted, a.Material)
				}
				if !slices.Equal(uncounted, gaps) {
					t.Fatalf("%q: %v are not counted, want %v", text, uncounted, gaps)
				}
			})
		})
	}
}

func keysIn[V any](m map[string]V) []string { return slices.Sorted(maps.Keys(m)) }
