package compost

// Target bands: where a number stops being good and what it is called then.
// C:N 25-35 good and 20-40 workable (S13, S27; aim 30 S20); moisture 50-60
// good and 40-65 workable (S11, S13, S21). A bound belongs to the class nearer
// to good.

// GoalMoisture is the moisture water is added up to, in % (the middle of 50-60).
const GoalMoisture = 55

// JudgeCN gives the class of a C:N at the start, and "" when it is good.
func JudgeCN(cn float64) Class { return cnBand().class(cn) }

// JudgeMoisture gives the class of a moisture in % at the start, and "" when
// it is good.
func JudgeMoisture(pct float64) Class { return moistureBand().class(pct) }

// JudgeMix judges C:N and moisture separately and gives both classes, or
// mix_ok alone when both are good.
func JudgeMix(cn, moisture float64) []Class {
	return judgeMix(nil, cn, moisture)
}

func judgeMix(to []Class, cn, moisture float64) []Class {
	c, m := JudgeCN(cn), JudgeMoisture(moisture)
	if c == "" && m == "" {
		return append(to, MixOK)
	}
	if c != "" {
		to = append(to, c)
	}
	if m != "" {
		to = append(to, m)
	}
	return to
}

type band struct {
	bounds  [4]float64
	classes [5]Class
}

func cnBand() band {
	return band{[4]float64{20, 25, 35, 40}, [5]Class{TooMuchGreen, SlightlyGreen, "", SlightlyBrown, TooMuchBrown}}
}

func moistureBand() band {
	return band{[4]float64{40, 50, 60, 65}, [5]Class{TooDry, SlightlyDry, "", SlightlyWet, TooWet}}
}

func (b band) class(v float64) Class { return b.classes[b.step(v)+2] }

// step places v on the ladder of a band: 0 good, 1 and -1 workable, 2 and -2
// beyond.
func (b band) step(v float64) int {
	switch {
	case v < b.bounds[0]:
		return -2
	case v < b.bounds[1]:
		return -1
	case v <= b.bounds[2]:
		return 0
	case v <= b.bounds[3]:
		return 1
	}
	return 2
}

// holds tells whether the advice on the likely value holds over the range:
// neither end may lie more than one class away, because neighbours ask for the
// same act or a milder one.
func (b band) holds(r Range) bool {
	at := b.step(r.Likely)
	return at-b.step(r.Low) <= 1 && b.step(r.High)-at <= 1
}
