// Package compost knows the trade of the hot heap: materials, mixes, size,
// starter, stick, heat, kill, worms, use and money. It has no words of any
// language: it takes codes and numbers and gives codes and numbers.
//
// Units unless a name says otherwise: kg, litres, cubic metres, metres,
// degrees Celsius, hours since the heap was built. Moisture is % of wet mass;
// carbon and nitrogen are % of dry mass. Provenance is written S10 (a document
// that was read), R1 (recalled, not seen), practice (common practice, no
// source) or calc (worked out from the others).
package compost

// Range is a likely value with its low and high end (about 80 % of cases).
type Range struct{ Low, Likely, High float64 }

// Exactly is the range of a value in which there is no doubt.
func Exactly(v float64) Range { return Range{v, v, v} }

// Times multiplies all three ends by f, which must not be negative.
func (r Range) Times(f float64) Range { return Range{r.Low * f, r.Likely * f, r.High * f} }

// tenth is the distance of the 10 % and 90 % points of the normal law from its
// middle, in standard deviations: a Range reaches 1.2816 of them either way.
const tenth = 1.2815515655446004

// Class is a piece of advice by its code.
type Class string

// The advice classes this package gives.
const (
	MixOK             Class = "mix_ok"
	SlightlyGreen     Class = "slightly_green"
	TooMuchGreen      Class = "too_much_green"
	SlightlyBrown     Class = "slightly_brown"
	TooMuchBrown      Class = "too_much_brown"
	SlightlyDry       Class = "slightly_dry"
	TooDry            Class = "too_dry"
	SlightlyWet       Class = "slightly_wet"
	TooWet            Class = "too_wet"
	CannotFixWithThis Class = "cannot_fix_with_this"

	HeapTooSmall Class = "heap_too_small"
	HeapTooBig   Class = "heap_too_big"

	ColdTooEarly   Class = "cold_too_early"
	ColdCheck      Class = "cold_check"
	ColdRedo       Class = "cold_redo"
	WarmWait       Class = "warm_wait"
	HotOK          Class = "hot_ok"
	TooWarmTurn    Class = "too_warm_turn"
	TooHot         Class = "too_hot"
	SmokeEmergency Class = "smoke_emergency"
	ReadyToOpen    Class = "ready_to_open"
	WaitDoNotOpen  Class = "wait_do_not_open"

	PFRPWindrow     Class = "pfrp_windrow"
	NotPFRPWindrow  Class = "not_pfrp_windrow"
	PressureWarning Class = "pressure_warning"

	TooHotForWorms Class = "too_hot_for_worms"
	NotProof       Class = "not_proof"
)
