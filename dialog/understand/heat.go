package understand

import (
	"math"
	"strconv"
)

// temps reads temperatures: a figure with a degree word, with C or F, or bare
// under the stick question. Without a unit 10-80 is Celsius and 100-180
// Fahrenheit (labelling rule); C = (F-32)/1.8, rounded, halves up.
func (r *reader) temps(cs []clause) (out []fact) {
	for k := range cs {
		c := &cs[k]
		if c.foreign || c.cond || c.ask == askWh || c.ask == askModal || c.ask == askWhy || c.ask == askMark {
			continue
		}
		was, now := false, false
		for i := range c.signs {
			s := &c.signs[i]
			switch s.sense {
			case "was", "earlier", "past", "before":
				was = !r.thisMorning(s)
			case "now", "today":
				was, now = false, true
			}
			if s.sense != "num" {
				continue
			}
			unit := ""
			next := func(d int) string {
				if i+d < len(c.signs) && i+d >= 0 {
					return c.signs[i+d].sense
				}
				return ""
			}
			switch {
			case next(1) == "celsius" || next(1) == "degree" && next(2) == "celsius":
				unit = "C"
			case next(1) == "fahrenheit" || next(1) == "degree" && next(2) == "fahrenheit":
				unit = "F"
			case next(1) == "degree" || next(-1) == "degree":
				unit = "?"
				if next(1) == "celsius" || next(2) == "celsius" {
					unit = "C"
				}
				if next(1) == "fahrenheit" || next(2) == "fahrenheit" {
					unit = "F"
				}
			case c.has("degree") && r.bareFigure(c, i):
				unit = "?"
			case r.asked == "stick" && r.bareFigure(c, i):
				unit = "?"
			default:
				continue
			}
			v := s.middle()
			switch {
			case unit == "F" || unit == "?" && v >= 100 && v <= 180:
				v = (v - 32) / 1.8
			case unit == "?" && (v < 10 || v >= 80.5):
				continue
			}
			if v <= hottestDay && (c.has("weather") || r.outdoors(c)) && !c.has("heap", "stick", "inside") {
				continue
			}
			w := was && !now
			if i+1 < len(c.signs) && !now {
				for d := 1; d <= 3; d++ {
					if x := next(d); x == "was" || x == "earlier" || x == "past" {
						w = true
					}
				}
			}
			out = append(out, fact{code: "temp=" + strconv.Itoa(int(math.Floor(v+0.5))), dim: "temp", clause: k, place: c.placed(i), was: w, now: now, doubt: c.doubt})
		}
	}
	return out
}

// hottestDay is as warm as the weather gets where people farm, in whole degrees Celsius. Common
// practice, no source.
const hottestDay = 50

// outdoors says whether a clause speaks of the open air, the village or the town, or says what the
// radio says: its heat is the weather's.
func (r *reader) outdoors(c *clause) bool {
	for i := range c.signs {
		if at := c.signs[i].from; r.word(at) == "fait" && oneOf(r.word(at-1), "il", "y") {
			return true // "il fait 38 degrés"
		}
	}
	return r.says(c, "radio", "redio", "रेडियो", "forecast", "meteo", "pronostico", "outside", "afuera", "dehors", "village", "town", "city", "kijijini", "kijiji", "mjini", "mji", "गाँव", "गांव", "शहर", "gaon", "gaanv", "shahar", "shehar", "pueblo", "ciudad", "ville")
}

// bareFigure says whether a figure without unit can be a stick's reading: it does
// not count days, minutes, money or baskets, and no second figure competes.
func (r *reader) bareFigure(c *clause, i int) bool {
	if c.odd > 2 || r.counts(c, i) || !c.signs[i].typed && !r.home(c.signs[i].tongue) {
		return false
	}
	for k, s := range c.signs {
		switch s.sense {
		case "foreign", "weather", "animal", "message":
			if !c.has("inside", "heap") {
				return false // "the school's thermometer read 63 in the heap"
			}
		}
		switch dimension(s.sense) {
		case "unit", "material", "mon", "len", "crop":
			return false
		}
		if k != i && s.sense == "num" && !r.counts(c, k) && !c.has("was", "now", "today", "past", "earlier") && c.placed(i) == c.placed(k) {
			return false
		}
	}
	return !r.ofDate(&c.signs[i])
}

// placed says where a figure was read in a clause that names places: 1 the middle, 2 the
// edge, 0 nowhere. Either the places lead, "katikati 59 pembeni 41", or the figures do.
func (c *clause) placed(i int) int {
	place := func(k int) int {
		switch c.signs[k].sense {
		case "inside":
			return 1
		case "edge":
			return 2
		}
		return 0
	}
	step := 1
	for k := range c.signs {
		if place(k) != 0 {
			step = -1
		}
		if place(k) != 0 || c.signs[k].sense == "num" {
			break
		}
	}
	for k := i + step; k >= 0 && k < len(c.signs) && c.signs[k].sense != "num"; k += step {
		if p := place(k); p != 0 {
			return p
		}
	}
	return 0
}

// ofDate says whether a figure stands beside the name of a month: "10 March" is a
// day, whatever was asked.
func (r *reader) ofDate(s *sign) bool {
	for _, t := range r.tokens[max(0, s.from-2):min(len(r.tokens), s.to+2)] {
		if t.kind == word && calendarWords().is(t.text, "mon", r.order[:]) {
			return true
		}
	}
	return false
}

// timed says whether a word is a stretch of time.
func (r *reader) timed(at int) bool {
	return r.lex.may(r.ids[at], func(e entry) bool {
		return r.home(e.tongue) && (e.sense() == "minute" || e.sense() == "hour" || e.sense() == "dayword")
	})
}

// counts says whether figure i counts something named beside it.
func (r *reader) counts(c *clause, i int) bool {
	for _, at := range [...]int{c.signs[i].from - 1, c.signs[i].to} { // also inside a phrase, "baada ya dakika kumi"
		if at >= 0 && at < len(r.tokens) && r.timed(at) {
			return true
		}
	}
	for _, step := range []int{1, -1} {
		for k := i + step; k >= 0 && k < len(c.signs) && k >= i-2 && k <= i+2; k += step {
			switch c.signs[k].sense {
			case "dayword", "minute", "hour", "money", "percent", "ordinal", "month", "person":
				return true
			case "filler":
				continue
			}
			break
		}
	}
	return false
}
