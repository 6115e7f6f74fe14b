package compost

// The feedstocks, one row a material, each value with where it comes from.

import (
	"bytes"
	_ "embed"
	"encoding/csv"
	"fmt"
	"slices"
	"sort"
	"strconv"
	"strings"
	"sync"
)

// Material is one feedstock as it comes to the heap.
type Material struct {
	ID    string // row of materials.csv
	Class string // dung, green, brown or additive: how it is handled, not a cut on C:N

	Carbon   float64 // % of dry mass; always Nitrogen x CN.Likely (S20)
	Nitrogen float64 // % of dry mass
	CN       Range   // C:N; low and high are working ranges
	Moisture float64 // % of wet mass
	Density  float64 // kg/m3, wet, loosely filled

	Source       string // codes of the documents
	Provenance   string // seen only when nitrogen and C:N both were
	NProv        string // provenance of Nitrogen, and so on
	CNProv       string
	MoistureProv string
	DensityProv  string
	Also         string // what other sources say

	kind int // place of Class in classes
}

// wet tells whether the material stands in the heap as a liquid; it cannot
// wilt and fills pores that are there already.
func (m *Material) wet() bool { return m.Density >= 1000 }

// counted tells whether the material takes part in the C:N sum. Ash is dusted
// on and jaggery goes to the bottle (practice).
func (m *Material) counted() bool { return m.ID != "wood_ash" && m.ID != "jaggery" }

//go:embed materials.csv
var materialsCSV []byte

//go:embed codes.csv
var codesCSV []byte

type shelf struct {
	rows []Material
	by   map[string]*Material // csv ids and reply codes
}

var stock = sync.OnceValue(func() shelf {
	var s shelf
	for _, r := range table(materialsCSV) {
		s.rows = append(s.rows, Material{
			ID: r["id"], Class: r["class"],
			Carbon: number(r["carbon_pct_dry"]), Nitrogen: number(r["nitrogen_pct_dry"]),
			CN:       Range{number(r["cn_low"]), number(r["cn_typical"]), number(r["cn_high"])},
			Moisture: number(r["moisture_pct_wet"]), Density: number(r["bulk_density_kg_m3"]),
			Source: r["source"], Provenance: r["provenance"],
			NProv: r["n_prov"], CNProv: r["cn_prov"],
			MoistureProv: r["moisture_prov"], DensityProv: r["density_prov"],
			Also: r["also"],
			kind: slices.Index(classes(), r["class"]),
		})
	}
	s.by = make(map[string]*Material, 2*len(s.rows))
	for i := range s.rows {
		s.by[s.rows[i].ID] = &s.rows[i]
	}
	for _, r := range table(codesCSV) {
		m := *s.by[r["row"]]
		for _, id := range strings.Fields(r["covers"]) {
			other := s.by[id]
			m.CN.Low = min(m.CN.Low, other.CN.Low)
			m.CN.High = max(m.CN.High, other.CN.High)
		}
		s.by[r["code"]] = &m
	}
	return s
})

// Materials gives all feedstocks in the order of the table.
func Materials() []Material { return append([]Material(nil), stock().rows...) }

// Lookup finds a material by the id of its row or by the code a reply is read
// to (cow_dung, straw, grass ...). A reply code takes in several rows: it has
// the values of the likeliest one and the range of C:N of them all.
// ID is then that row's.
func Lookup(id string) (Material, bool) {
	m, ok := stock().by[id]
	if !ok {
		return Material{}, false
	}
	return *m, true
}

// Near gives at most three known ids and codes that are spelt most like id,
// nearest first; none when nothing comes near.
func Near(id string) []string {
	id = strings.ToLower(strings.ReplaceAll(strings.TrimSpace(id), " ", "_"))
	type hit struct {
		id   string
		far  int
		part bool
	}
	var hits []hit
	for k := range stock().by {
		far := distance(id, k)
		part := len(id) >= 3 && (strings.Contains(k, id) || strings.Contains(id, k))
		if part || far <= 1+len(id)/4 {
			hits = append(hits, hit{k, far, part})
		}
	}
	sort.Slice(hits, func(i, j int) bool {
		if hits[i].far != hits[j].far {
			return hits[i].far < hits[j].far
		}
		return hits[i].id < hits[j].id
	})
	var near []string
	for _, h := range hits[:min(3, len(hits))] {
		near = append(near, h.id)
	}
	return near
}

// distance is the number of letters to add, drop or change (Levenshtein).
func distance(a, b string) int {
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := 1; i <= len(a); i++ {
		corner := row[0]
		row[0] = i
		for j := 1; j <= len(b); j++ {
			change := corner
			if a[i-1] != b[j-1] {
				change++
			}
			corner = row[j]
			row[j] = min(change, row[j]+1, row[j-1]+1)
		}
	}
	return row[len(b)]
}

// table reads an embedded csv file with a heading. The files are part of the
// program, so a broken one is a programmer's mistake.
func table(file []byte) []map[string]string {
	lines, err := csv.NewReader(bytes.NewReader(file)).ReadAll()
	if err != nil {
		panic(fmt.Sprintf("embedded table: %v", err))
	}
	rows := make([]map[string]string, 0, len(lines)-1)
	for _, line := range lines[1:] {
		row := make(map[string]string, len(line))
		for i, name := range lines[0] {
			row[name] = line[i]
		}
		rows = append(rows, row)
	}
	return rows
}

func number(s string) float64 {
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		panic(fmt.Sprintf("embedded table: %v", err))
	}
	return v
}
