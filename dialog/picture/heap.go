package picture

import (
	"fmt"
	"image/color"
	"math"
	"strconv"
)

// The heap and the bottle, as they are made. The shapes are the trade's: base
// of twigs, layers a hand high, sides that lean in, a loose cover, a stick into
// the core (common practice, no source).

func unit(x, y float64) (float64, float64) {
	n := math.Hypot(x, y)
	if n == 0 {
		return 0, 0
	}
	return x / n, y / n
}

// mound is the outline of a heap standing on the ground at y.
func mound(x, y, wide, high float64) []at {
	lean := wide * 0.12
	return []at{{x - wide/2, y}, {x + wide/2, y}, {x + wide/2 - lean, y + high*0.85}, {x + wide/2 - lean*2.2, y + high}, {x - wide/2 + lean*2.2, y + high}, {x - wide/2 + lean, y + high*0.85}}
}

func (s *sheet) ground(y float64) { s.line(ink, 5, at{20, y}, at{width - 20, y}) }

// section shows the layers from the twigs up, with the stick and the cover. The
// first number, if any, is how many layers lie (1 to 6); without it all do.
func section(s *sheet, n []float64) error {
	layers := 6
	if len(n) > 0 {
		layers = int(n[0])
	}
	if layers < 1 || layers > 12 {
		return fmt.Errorf("%d layers: 1 to 12 can be drawn", layers)
	}
	layers = min(layers, 6)
	const left, right, floor, step = 130.0, 560.0, 60.0, 52.0
	s.ground(floor)
	for x := left + 10; x < right-20; x += 34 { // twigs, crosswise
		s.line(dark, 5, at{x, floor + 4}, at{x + 30, floor + 40})
		s.line(dark, 5, at{x + 30, floor + 4}, at{x, floor + 40})
	}
	base := floor + 44
	for i := range layers {
		y := base + float64(i)*step
		in, up := float64(i)*9, float64(i+1)*9
		// dry, green, dung: the thicker the lighter
		part := []struct {
			c    color.Color
			from float64
			to   float64
		}{{light, 0, 0.5}, {mid, 0.5, 0.82}, {dark, 0.82, 1}}
		for _, p := range part {
			a, b := in+(up-in)*p.from, in+(up-in)*p.to
			s.fill(p.c, at{left + a, y + step*p.from}, at{right - a, y + step*p.from}, at{right - b, y + step*p.to}, at{left + b, y + step*p.to})
		}
		s.line(ink, 2.5, at{left + in, y}, at{right - in, y})
		s.digits(strconv.Itoa(i+1), 34, left-30, y+step/2)
	}
	top := base + float64(layers)*step
	in := float64(layers) * 9
	s.outline(ink, 4, at{left, base}, at{right, base}, at{right - in, top}, at{left + in, top})
	if layers == 6 { // a loose cover, open at the sides
		s.line(ink, 9, at{left + in - 26, top - 34}, at{left + in + 6, top + 16}, at{right - in - 6, top + 16}, at{right - in + 26, top - 34})
	}
	s.pole(345, base+float64(layers)*step*0.45, 470, top+70)
	return nil
}

// pole is a wooden stick.
func (s *sheet) pole(x1, y1, x2, y2 float64) {
	s.line(paper, 17, at{x1, y1}, at{x2, y2})
	s.line(ink, 11, at{x1, y1}, at{x2, y2})
}

// stick shows where it goes: into the middle, for 10 to 15 minutes.
func stick(s *sheet, _ []float64) error {
	const floor = 60
	s.ground(floor)
	shape := mound(260, floor, 440, 290)
	s.fill(light, shape...)
	s.outline(ink, 5, shape...)
	s.disc(mid, 260, floor+140, 82)
	s.disc(dark, 260, floor+140, 48)
	s.pole(260, floor+140, 430, floor+395)
	// a clock with its hand between 10 and 15 minutes
	s.disc(paper, 545, 330, 72)
	s.ring(ink, 6, 545, 330, 72)
	for i := range 12 {
		a := float64(i) * math.Pi / 6
		s.line(ink, 4, at{545 + 60*math.Sin(a), 330 + 60*math.Cos(a)}, at{545 + 68*math.Sin(a), 330 + 68*math.Cos(a)})
	}
	s.fill(mid, at{545, 330}, at{545 + 58*math.Sin(math.Pi/3), 330 + 58*math.Cos(math.Pi/3)}, at{545 + 58*math.Sin(math.Pi*5/12), 330 + 58*math.Cos(math.Pi*5/12)}, at{545 + 58, 330})
	s.line(ink, 5, at{545, 330}, at{545, 330 + 50})
	s.digits("10-15", 40, 545, 215)
	return nil
}

// turn shows the old heap and the new: the outside goes into the middle, the
// middle to the outside.
func turn(s *sheet, _ []float64) error {
	const floor = 70
	s.ground(floor)
	a, b := mound(165, floor, 270, 250), mound(480, floor, 250, 220)
	s.fill(light, a...)
	s.outline(ink, 5, a...)
	s.disc(dark, 165, floor+110, 68)
	s.fill(dark, b...)
	s.outline(ink, 5, b...)
	s.disc(light, 480, floor+96, 68)
	s.ring(ink, 3, 480, floor+96, 68)
	s.ring(ink, 3, 165, floor+110, 68)
	// outside to the middle, over the top
	s.arrow(ink, 8, at{165, floor + 232}, at{200, floor + 330}, at{320, floor + 372}, at{430, floor + 320}, at{476, floor + 130})
	// middle to the outside
	s.line(paper, 14, at{190, floor + 92}, at{345, floor + 40})
	s.arrow(ink, 8, at{190, floor + 92}, at{372, floor + 34})
	s.digits("1", 40, 60, floor+320)
	s.digits("2", 40, 590, floor+320)
	return nil
}

// bottle shows the level: the upper third stays empty for the gas. The first
// number, if any, is the part that is full (0 to 1).
func bottle(s *sheet, n []float64) error {
	full := 0.67
	if len(n) > 0 {
		full = n[0]
	}
	if !(full >= 0 && full <= 1) {
		return fmt.Errorf("a bottle %v full cannot be drawn", full)
	}
	const x, floor, wide, high = 280.0, 50.0, 200.0, 300.0
	level := floor + high*full
	s.fill(mid, at{x - wide/2, floor}, at{x + wide/2, floor}, at{x + wide/2, level}, at{x - wide/2, level})
	s.line(ink, 5, at{x - wide/2, level}, at{x + wide/2, level})
	for i := range 5 { // gas
		s.ring(ink, 3, x-60+float64(i)*30, floor+60+float64(i*37%90), 7)
	}
	s.outline(ink, 7, at{x - wide/2, floor}, at{x + wide/2, floor}, at{x + wide/2, floor + high}, at{x + 55, floor + high + 50}, at{x - 55, floor + high + 50}, at{x - wide/2, floor + high})
	// the cap lies loose, and the gas goes out
	s.fill(dark, at{x - 66, floor + high + 66}, at{x + 70, floor + high + 78}, at{x + 66, floor + high + 106}, at{x - 70, floor + high + 94})
	s.arrow(ink, 6, at{x + 82, floor + high + 60}, at{x + 150, floor + high + 92})
	// how much is full and how much empty
	mark := func(from, to float64, text string) {
		s.line(ink, 4, at{x + 130, from}, at{x + 160, from})
		s.line(ink, 4, at{x + 130, to}, at{x + 160, to})
		s.line(ink, 4, at{x + 145, from}, at{x + 145, to})
		s.digits(text, 44, x+215, (from+to)/2)
	}
	if len(n) == 0 {
		mark(floor, level, "2/3")
		mark(level, floor+high, "1/3")
		return nil
	}
	mark(floor, max(level, floor+1), strconv.Itoa(int(math.Round(full*100))))
	return nil
}
