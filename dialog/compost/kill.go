package compost

// Heat kill. A farmer's heap is nearest to a windrow, so three hot days are no
// proof, and a stick is never proof.

import "math"

// KillDays is the holding time in days at a steady temperature by the US
// sludge rule, D = 131,700,000 / 10^(0.14 t), at least 20 minutes (S26). False
// below 50 C, where the rule does not hold.
func KillDays(celsius float64) (float64, bool) {
	if !(celsius >= 50) {
		return 0, false
	}
	return max(131_700_000/math.Pow(10, 0.14*celsius), 20.0/1440), true
}

// PFRP is a heap's daily core temperatures held against the US rule (S24):
// windrow at least 55 C for 15 days with 5 turns while hot; static at least 55
// C for 3 days on end, which holds for aerated or closed systems only.
type PFRP struct {
	DaysAt55, TurnsWhileHot int
	Longest                 int // days on end at 55 C or more
	Windrow, Static         bool
	DaysNeeded, TurnsNeeded int  // still missing for the windrow rule
	LowerClass              bool // PSRP: at least 40 C for 5 days, with 55 C on one of them
}

// CheckPFRP counts. Day 1 is the first number. A turn counts as hot when the
// core was at 55 C that day or the day before; days outside the list are cold.
func CheckPFRP(daily []float64, turns []int) PFRP {
	var p PFRP
	run, mild, peak := 0, 0, 0.0
	hot := func(day int) bool { return day >= 1 && day <= len(daily) && daily[day-1] >= 55 }
	for i, t := range daily {
		if !hot(i + 1) {
			run = 0
		} else {
			p.DaysAt55++
			run++
		}
		p.Longest = max(p.Longest, run)
		if t >= 40 {
			mild++
			peak = max(peak, t)
		} else {
			mild, peak = 0, 0
		}
		p.LowerClass = p.LowerClass || mild >= 5 && peak >= 55
	}
	for _, d := range turns {
		if hot(d) || hot(d-1) {
			p.TurnsWhileHot++
		}
	}
	p.Static = p.Longest >= 3
	p.Windrow = p.DaysAt55 >= 15 && p.TurnsWhileHot >= 5
	p.DaysNeeded = max(0, 15-p.DaysAt55)
	p.TurnsNeeded = max(0, 5-p.TurnsWhileHot)
	return p
}

// Class is pfrp_windrow or not_pfrp_windrow.
func (p PFRP) Class() Class {
	if p.Windrow {
		return PFRPWindrow
	}
	return NotPFRPWindrow
}
