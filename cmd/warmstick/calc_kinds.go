package main

// The kinds of sums as JSON lines, one function each. Sources are the codes of
// the tables in testdata/sums.

import (
	"encoding/json"
	"math"
	"slices"
	"strconv"
	"sync"
)

// outputs are the answers by name; nil is a question without an answer.
type outputs map[string]any

// put stores a number under all its names; NaN and infinity become null.
func (o outputs) put(v float64, names ...string) {
	for _, n := range names {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			o[n] = nil
			continue
		}
		o[n] = round(v)
	}
}

// none stores null under all names.
func (o outputs) none(names ...string) { o.put(math.NaN(), names...) }

// round keeps ten figures, so that 0.1 + 0.2 prints as 0.3.
func round(v float64) json.Number {
	r, err := strconv.ParseFloat(strconv.FormatFloat(v, 'g', 10, 64), 64)
	if err != nil || r == 0 {
		return "0"
	}
	if a := math.Abs(r); a < 1e-6 || a >= 1e15 {
		return json.Number(strconv.FormatFloat(r, 'g', -1, 64))
	}
	return json.Number(strconv.FormatFloat(r, 'f', -1, 64))
}

type kind struct {
	do     func(fields, *sumAnswer)
	source string
}

// kinds are all sums. The first block is the contract's, the second ours.
var kinds = sync.OnceValue(func() map[string]kind {
	return map[string]kind{
		"sample_moisture":         {sampleMoisture, "F2; S10"},
		"carbon_from_n_cn":        {carbonFromN, "F1; S20"},
		"mix_cn":                  {mixCN, "F3, F5; S10, S19"},
		"materials_mix":           {materialsMix, "F3, F5, F9; materials table"},
		"materials_mix_by_volume": {materialsMix, "F3, F5, F9, F12; materials table"},
		"mass_for_moisture":       {massForMoisture, "F4; S10"},
		"mass_for_cn":             {massForCN, "F6; R8"},
		"third_mass_for_cn":       {massForCN, "F7; R8"},
		"third_mass_for_moisture": {massForMoisture, "F8; R8"},
		"water_to_add":            {waterToAdd, "F9"},
		"volume_box_ft":           {volumeBox, "F15; size limits practice"},
		"volume_frustum":          {volumeFrustum, "F16"},
		"volume_windrow":          {volumeWindrow, "F17"},
		"heap_size":               {volumeBox, "F15; size limits practice"},
		"turn_shrink":             {turnShrink, "practice; F15"},
		"pfrp_check":              {pfrpCheck, "S24"},
		"kill_time":               {killTime, "S26"},
		"temp_class":              {tempClass, "S13, S22, S24, S28, practice"},
		"stick_answer":            {stickAnswer, "practice"},
		"worm_sizing":             {wormSizing, "F20, F21; R7"},
		"batch_days":              {batchDays, "F22; R7"},
		"vermicompost_yield":      {vermicompostYield, "practice; R7"},
		"ferment_scale":           {fermentScale, "practice"},
		"ferment_gas":             {fermentGas, "stoichiometry; sugar share memory"},
		"application":             {application, "F23; R4, practice"},

		"volume_box":      {volumeBox, "F15; size limits practice"},
		"volume_cone":     {volumeCone, "F18"},
		"carbon_from_ash": {carbonFromAsh, "F1b; S2"},
		"free_air_space":  {freeAir, "F19; R9, S38"},
		"bulk_density":    {bulkDensity, "F13"},
		"masses_for_both": {massesForBoth, "F11"},
		"farmer_mix":      {farmerMix, "F3, F5, F9; materials and measures tables"},
		"shopping_list":   {shoppingList, "F3, F5, F9; exact integer program"},
		"heat":            {heatEstimate, "heat model of dialog/compost; constants from memory, bands practice"},
		"worm_growth":     {wormGrowth, "R7"},
		"money":           {money, "own prices"},
		"break_even":      {breakEven, "own prices"},
	}
})

func kindNames() []string {
	names := make([]string, 0, len(kinds()))
	for n := range kinds() {
		names = append(names, n)
	}
	slices.Sort(names)
	return names
}
