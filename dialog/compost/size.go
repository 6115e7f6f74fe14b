package compost

// The heap's size: is it big enough to keep its heat and small enough for a
// fork. Limits are practice (0.9 m = 3 ft; 1.5 m high in S48; 2 m in S46).

import "math"

const (
	// Smallest side or height; up to CoverBelow only with a thick cover.
	Smallest, CoverBelow = 0.9, 1.0
	// Highest and Widest by hand.
	Highest, Widest = 1.8, 2.5
	// KeptAtTurn: 6 x 4 x 4 ft stand as 4 x 4 x 4 ft after the first turn
	// (practice). A logged heap kept 0.80 after a hot week (S39).
	KeptAtTurn = 4.0 / 6
	// TradeHeap is the volume of 6 x 4 x 4 ft in m3.
	TradeHeap = 96 * FootCubed
)

// FinishedVolume is the part of the built volume left as finished compost (R1,
// R3, recalled).
func FinishedVolume() Range { return Range{0.4, 0.45, 0.5} }

// FinishedMass is the same by mass (R1, R3, recalled).
func FinishedMass() Range { return Range{0.4, 0.5, 0.6} }

// HeapDensity is the wet mass of a built heap in kg/m3 (practice).
func HeapDensity() Range { return Range{300, 375, 450} }

// Size gives the volume of a box of three sides in metres and the classes of
// its size; none when it is fit for hot work by hand.
func Size(length, width, height float64) (m3 float64, advice []Class) {
	return length * width * height, SizeClasses(length, width, height)
}

// SizeClasses judges the three sides of a heap in metres.
func SizeClasses(length, width, height float64) (advice []Class) {
	const hair = 1e-9
	if min(length, width, height) < Smallest-hair {
		advice = append(advice, HeapTooSmall)
	}
	if height > Highest+hair || width > Widest+hair {
		advice = append(advice, HeapTooBig)
	}
	return advice
}

// Frustum is the volume of a heap with sloping sides: base a x b, top c x d
// (F16, exact for any taper).
func Frustum(a, b, c, d, height float64) float64 {
	return height / 6 * (a*b + (a+c)*(b+d) + c*d)
}

// Windrow is the volume of a long heap of trapezoid section; top 0 makes it a
// triangle (F17).
func Windrow(length, height, base, top float64) float64 {
	return length * height * (base + top) / 2
}

// RoundWindrow is that of a long heap with a rounded back (F17, R1 recalled).
func RoundWindrow(length, height, base float64) float64 { return 2.0 / 3 * length * base * height }

// Cone is the volume of a round heap (F18).
func Cone(radius, height float64) float64 { return math.Pi * radius * radius * height / 3 }

// Day is the work and water of building a heap, so that a family can plan.
type Day struct {
	Kg      Range // wet mass
	Water   Range // litres held at 55 %; what is carried is less, see Mix.Water
	Hours   Range // of one person's work, chopping and carrying water apart
	Turn    Range // the same for one turn
	AfterM3 float64
	// StillTall is true when the heap can be restacked after the first turn to
	// at least 4 ft each way.
	StillTall bool
}

// Work plans the building of m3. A person forks 1 to 2.5 m3 of loose stuff an
// hour while turning, and builds with layers and wetting at a third of that
// (memory).
func Work(m3 float64) Day {
	kg := HeapDensity().Times(m3)
	after := m3 * KeptAtTurn
	return Day{
		Kg: kg, Water: kg.Times(GoalMoisture / 100.0),
		Hours:     Range{m3 / 0.8, m3 / 0.5, m3 / 0.3},
		Turn:      Range{m3 / 2.5, m3 / 1.6, m3 / 1.0},
		AfterM3:   after,
		StillTall: after >= 64*FootCubed-1e-6,
	}
}
