package compost

// The core of a heap as a small physical model: one guess at it, stepped by
// three hours. All per cubic metre of heap.
//
//	heat made    = stuff that rots x rate(temperature, moisture, C:N, waking) x heat of it
//	heat lost    = through the sides (a rim of some 30 cm and the wind on it)
//	             + with the warm wet air that rises out of it, which also dries it
//	a turn       = core and rim are mixed, the heap is smaller afterwards
//
// What is left out: a rim of its own temperature, wind, rain, the hour of day.
// They are in the stray of heat.go.

import "math"

const (
	heatOfRot = 19e6 // J/kg of stuff rotted (memory: textbook range 17.8-24.7 MJ/kg)
	organic   = 0.85 // of dry mass (memory)
	// rots: part of the organic matter that rots within weeks (memory).
	rotsFast = 0.35
	// rateBest is the part of it that rots in a day at the best temperature
	// when nothing is lacking (memory: 0.1 to 0.2 in well-made heaps).
	rateBest = 0.14
	// Cardinal temperatures of rotting. Best 58-60 C and floor 5 C are from
	// memory of oxygen-uptake studies, which put the ceiling near 72 C; cores
	// of 73 C are met with in practice, so it is set higher here.
	coldest, best, hottest = 5.0, 58.0, 78.0

	waterHeat, dryHeat = 4180.0, 1400.0 // J/(kg K): water known, dry plant matter memory
	// sideLoss is W/(m2 K) through 0.3 m of rim at 0.35 W/(m K) and the air
	// film outside at 10 W/(m2 K) (memory; conductivities of 0.2-0.5 are printed).
	sideLoss = 1 / (0.3/0.35 + 1.0/10)
	// draught is kg of dry air a second through a m3 that is 40 K above the air
	// (memory: some three times what rotting needs).
	draught = 0.0012
	// returned: part of the vapour that drips back from the cover (memory).
	returned  = 0.3
	vapour    = 2.4e6  // J/kg of water near 50 C (steam tables, memory)
	rimWarmth = 0.35   // of the core's warmth above the air (memory)
	rimDeep   = 0.2    // m that stays too cool to count: 15-30 cm (practice)
	laterKept = 0.9    // of the volume at the second turn and after (memory)
	hour      = 3600.0 // s
	step      = 3      // hours
)

// guess is one set of what is not known about a heap.
type guess struct {
	rate, rots, loss, draught, asleep, mixes float64
	moisture, cn, air                        float64
	fails                                    float64 // what is wrong that nobody told; 1 = nothing
	airHeat                                  float64 // J/kg of the air outside, saturated
}

// core is the state of one guess.
type core struct {
	temp   float64
	stuff  float64 // kg/m3 that still rots, in the core
	rim    float64 // the same in the rim
	inert  float64 // kg/m3 dry that does not
	water  float64 // kg/m3
	awake  float64 // 0 to 1: the germs' number
	sides  float64 // m2 of side per m3
	factor float64 // of the rate that does not change
	middle float64 // part of the volume that counts as core
}

func (g *guess) begin(dims [3]float64) core {
	wet := HeapDensity().Likely
	dry := wet * (1 - g.moisture/100)
	stuff := dry * organic * g.rots
	c := core{
		temp: g.air, stuff: stuff, rim: stuff, inert: dry - stuff,
		water: wet * g.moisture / 100, awake: g.asleep,
		factor: g.rate * g.fails * ratioLimit(g.cn),
	}
	c.shape(dims)
	return c
}

// shape sets what depends on the heap's measures: top and sides lose heat, the
// ground half as much (memory).
func (c *core) shape(d [3]float64) {
	l, w, h := d[0], d[1], d[2]
	c.sides = (2*(l+w)*h + 1.5*l*w) / (l * w * h)
	c.middle = coreShare(d)
}

// coreShare is the part of a heap that lies deeper than the cool rim.
func coreShare(d [3]float64) float64 {
	in := func(v float64) float64 { return max(0.1, 1-2*rimDeep/v) }
	return in(d[0]) * in(d[1]) * in(d[2])
}

// pass moves the core on by one step. What would slow it down as it warms is
// taken at the end of the step (a linear implicit scheme), so that long steps
// stay calm.
func (c *core) pass(g *guess, t *tables) {
	const time = step * hour
	dry := c.stuff + c.inert
	warm := t.at(c.temp)
	speed := c.factor * t.moist.at(100*c.water/(c.water+dry)) * c.awake * (step / 24.0)
	rot := c.stuff * speed * warm.rot // kg/m3 in the step
	over := c.temp - g.air
	c.rim -= c.rim * speed * t.rotAt(g.air+rimWarmth*over)
	c.stuff -= rot

	air := max(0, g.draught*over/40)
	rich := warm.air - g.airHeat
	steam := air * rich
	side := g.loss * c.sides
	holds := c.water*waterHeat + dry*dryHeat
	damp := side + air*warm.airSlope + g.draught/40*rich
	slowing := max(0, -c.stuff*speed*warm.rotSlope*heatOfRot)
	c.temp += (rot*heatOfRot - (side*over+steam)*time) / (holds + damp*time + slowing)
	c.temp = max(g.air-5, min(c.temp, 90))
	c.water = max(1, c.water-0.85*steam*time/vapour*(1-returned))
	// Germs double in some hours where it is warm (memory: lag of a day or two
	// from cold stuff); none die off for want of heat.
	grow := 1 + step*0.085*min(1, 2.5*warm.rot/rateBest)
	c.awake = c.awake * grow / (1 + c.awake*(grow-1))
}

// turn mixes core and rim; n counts from 1.
func (c *core) turn(g *guess, n int) {
	kept := KeptAtTurn
	if n > 1 {
		kept = laterKept
	}
	c.temp = g.air + g.mixes*(c.temp-g.air)
	all := c.middle*c.stuff + (1-c.middle)*c.rim
	c.stuff, c.rim = all/kept, all/kept
	c.inert /= kept
	c.water /= kept
	c.sides /= math.Cbrt(kept)
	c.awake *= 0.9
}

// wet brings the water up to the goal and cools the core a little.
func (c *core) wet(g *guess) {
	want := (c.stuff + c.inert) * 1.3 // 56.5 % of the whole
	if c.water < want {
		add := want - c.water
		c.temp -= (c.temp - g.air) * add / (want + 0.33*(c.stuff+c.inert))
		c.water = want
	}
}

// ratioLimit slows rotting in brown heaps (practice: over 40 a heap stays cool).
func ratioLimit(cn float64) float64 {
	if cn <= 30 {
		return 1
	}
	return math.Pow(30/cn, 1.3)
}
