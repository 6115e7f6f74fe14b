package picture

import (
	"errors"
	"math"
	"strconv"

	qrcode "github.com/skip2/go-qrcode"

	"warmstick/dialog/compost"
)

// Charts: the heat of a heap with its doubt, and the heaps of a group by stage.

// frame is the part of the sheet a chart is drawn in.
type frame struct {
	left, right, bottom, top float64 // pixels
	x0, x1, y0, y1           float64 // values
}

func (f frame) x(v float64) float64 { return f.left + (v-f.x0)/(f.x1-f.x0)*(f.right-f.left) }
func (f frame) y(v float64) float64 { return f.bottom + (v-f.y0)/(f.y1-f.y0)*(f.top-f.bottom) }
func (f frame) p(x, y float64) at   { return at{f.x(x), f.y(max(f.y0, min(y, f.y1)))} }

// Hot is from 55 C on, drawn as a dashed line (S13, S24).
const hot = 55

// curve shows the estimate of the core by day: the band that holds in 80 of 100,
// the likeliest line, each stick (hot a triangle up, warm a ring, cold a triangle
// down), each thermometer (a square at its degrees) and each turn (an upright
// line). The numbers are: the hour of now; length, width and height in metres (0
// = not known); how many signs, each as hour, word (cold 1, warm 2, hot 3, none
// 0) and degrees (0 = none); how many turns, each as its hour; how many
// waterings, each as its hour.
func curve(s *sheet, n []float64) error {
	log, err := unpack(n)
	if err != nil {
		return err
	}
	e := compost.Heat(log)
	if len(e.Hours) == 0 {
		return errors.New("no hour to draw")
	}
	days := math.Max(4, math.Ceil(log.Until/24))
	f := frame{left: 82, right: width - 24, bottom: 70, top: height - 24, x1: days, y0: 0, y1: 80}
	f.band(s, e)
	f.axes(s, days)
	f.likely(s, e)
	f.marks(s, log, e)
	return nil
}

func (f frame) band(s *sheet, e compost.HeatEstimate) {
	var points []at
	for i := 0; i < len(e.Hours); i += 3 {
		points = append(points, f.p(e.Hours[i]/24, e.High[i]))
	}
	for i := (len(e.Hours) - 1) / 3 * 3; i >= 0; i -= 3 {
		points = append(points, f.p(e.Hours[i]/24, e.Low[i]))
	}
	if len(points) > 2 {
		s.fill(light, points...)
	}
}

func (f frame) axes(s *sheet, days float64) {
	for y := f.y0; y <= f.y1; y += 20 {
		s.line(mid, 1.5, f.p(0, y), f.p(days, y))
		s.digits(strconv.Itoa(int(y)), 30, f.left-38, f.y(y))
	}
	for x := f.left; x < f.right; x += 22 { // dashes at hot
		s.line(ink, 3, at{x, f.y(hot)}, at{min(x+12, f.right), f.y(hot)})
	}
	step := 1.0
	for days/step > 8 {
		step = map[float64]float64{1: 2, 2: 5, 5: 10, 10: 20, 20: 40, 40: 1000}[step]
	}
	for x := 0.0; x <= days; x += step {
		s.line(ink, 3, at{f.x(x), f.bottom - 8}, at{f.x(x), f.bottom})
		s.digits(strconv.Itoa(int(x)), 30, f.x(x), f.bottom-34)
	}
	s.line(ink, 4, at{f.left, f.top}, at{f.left, f.bottom}, at{f.right, f.bottom})
}

func (f frame) likely(s *sheet, e compost.HeatEstimate) {
	var points []at
	for i := 0; i < len(e.Hours); i += 3 {
		points = append(points, f.p(e.Hours[i]/24, e.Likely[i]))
	}
	if len(points) > 1 {
		s.line(ink, 5, points...)
	}
}

func (f frame) marks(s *sheet, log compost.HeatLog, e compost.HeatEstimate) {
	for _, t := range log.Turns {
		s.line(dark, 5, f.p(t/24, 2), f.p(t/24, f.y1-6))
		s.ring(dark, 5, f.x(t/24), f.y(f.y1-3), 9)
	}
	for _, w := range log.Waters {
		s.disc(dark, f.x(w/24), f.y(4), 7)
	}
	for _, g := range log.Signs {
		i := min(max(int(g.Hour), 0), len(e.Likely)-1)
		at := f.p(g.Hour/24, e.Likely[i])
		if g.Celsius > 0 {
			at = f.p(g.Hour/24, g.Celsius)
			s.square(at, 11)
			continue
		}
		s.sign(at, g.Word)
	}
}

func (s *sheet) square(p at, r float64) {
	s.fill(paper, at{p.x - r - 3, p.y - r - 3}, at{p.x + r + 3, p.y - r - 3}, at{p.x + r + 3, p.y + r + 3}, at{p.x - r - 3, p.y + r + 3})
	s.fill(ink, at{p.x - r, p.y - r}, at{p.x + r, p.y - r}, at{p.x + r, p.y + r}, at{p.x - r, p.y + r})
}

// sign is one stick: it points up for hot and down for cold.
func (s *sheet) sign(p at, word string) {
	s.disc(paper, p.x, p.y, 19)
	switch word {
	case "hot":
		s.fill(ink, at{p.x - 15, p.y - 11}, at{p.x + 15, p.y - 11}, at{p.x, p.y + 15})
	case "cold":
		s.fill(ink, at{p.x - 15, p.y + 11}, at{p.x + 15, p.y + 11}, at{p.x, p.y - 15})
	default:
		s.ring(ink, 6, p.x, p.y, 12)
	}
}

// unpack reads the numbers of a curve.
func unpack(n []float64) (compost.HeatLog, error) {
	short := errors.New("too few numbers for a heat log")
	take := func(k int) ([]float64, error) {
		if k < 0 || k > len(n) {
			return nil, short
		}
		head := n[:k]
		n = n[k:]
		return head, nil
	}
	head, err := take(5)
	if err != nil {
		return compost.HeatLog{}, err
	}
	log := compost.HeatLog{Until: head[0], Dims: [3]float64{head[1], head[2], head[3]}}
	if !(log.Until >= 0 && log.Until <= 24*400) || !(head[4] >= 0 && head[4] <= 1000) {
		return log, errors.New("the hour of now or the count of signs makes no sense")
	}
	words := []string{"", "cold", "warm", "hot"}
	for range int(head[4]) {
		g, err := take(3)
		if err != nil || g[1] < 0 || g[1] > 3 {
			return log, short
		}
		log.Signs = append(log.Signs, compost.Sign{Hour: g[0], Word: words[int(g[1])], Celsius: g[2]})
	}
	for _, list := range []*[]float64{&log.Turns, &log.Waters} {
		k, err := take(1)
		if err != nil || !(k[0] >= 0 && k[0] <= 1000) {
			return log, short
		}
		if *list, err = take(int(k[0])); err != nil {
			return log, err
		}
	}
	return log, nil
}

// calendar shows how many heaps stand in each stage: a row a stage, numbered
// from 1 at the top, its bar as long as the count, the count at its end. The
// numbers are the counts, 1 to 14 of them.
func calendar(s *sheet, n []float64) error {
	if len(n) == 0 || len(n) > 14 {
		return errors.New("a calendar has 1 to 14 rows")
	}
	most := 1.0
	for _, v := range n {
		if !(v >= 0) {
			return errors.New("a count below nought")
		}
		most = max(most, v)
	}
	step := min((s.high-30)/float64(len(n)), rowHigh)
	size := min(30, step*0.85)
	for i, v := range n {
		y := s.high - 15 - (float64(i)+0.5)*step
		s.digits(strconv.Itoa(i+1), size, 40, y)
		s.line(mid, 2, at{78, y - step/2}, at{78, y + step/2})
		long := (width - 190) * v / most
		if v > 0 {
			long = max(long, 8)
			s.fill(dark, at{84, y - step*0.32}, at{84 + long, y - step*0.32}, at{84 + long, y + step*0.32}, at{84, y + step*0.32})
			s.digits(strconv.Itoa(int(v)), size, 84+long+42, y)
		}
	}
	return nil
}

// code is a QR code, with the room around it that a camera needs.
func code(text string) ([]byte, error) {
	if text == "" {
		return nil, errors.New("picture qr: nothing to encode")
	}
	return qrcode.Encode(text, qrcode.Medium, 480)
}
