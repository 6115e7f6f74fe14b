// Package picture draws what is quicker seen than read: a heap in section, where
// the stick goes, the turn, the bottle's level, a heat curve, a calendar of
// heaps, a code to be scanned. It knows no rules beyond those of the sums and no
// words: only digits stand inside, and a caption alone answers.
//
// All is drawn in grey for the cheapest screen: 640 pixels wide, to be read at
// 320, dark on white with a contrast of digits to ground well above 4.5 to 1.
package picture

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"slices"
	"sync"

	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/font/liberation"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/vgimg"
)

// The sheet, in pixels.
const (
	width   = 640
	height  = 480 // at most
	rowHigh = 56  // of a calendar with few rows
)

// The four greys. Digits are ink, always on paper or light.
var (
	ink   = color.Gray{0x10}
	dark  = color.Gray{0x58}
	mid   = color.Gray{0x98}
	light = color.Gray{0xd8}
	paper = color.White
)

// kinds are the pictures there are; each takes the numbers its function names.
var kinds = map[string]func(*sheet, []float64) error{
	"section":  section,
	"stick":    stick,
	"turn":     turn,
	"bottle":   bottle,
	"curve":    curve,
	"calendar": calendar,
}

// Kinds lists the pictures, in order.
func Kinds() []string {
	list := []string{"qr"}
	for k := range kinds {
		list = append(list, k)
	}
	slices.Sort(list)
	return list
}

// still holds the pictures that are the same each time, when they have no numbers.
// A morning's reminders all carry one of them, and to draw it takes 30 ms and 4 MB
// (BenchmarkDraw): they are drawn once.
var still = func() map[string]func() ([]byte, error) {
	set := map[string]func() ([]byte, error){}
	for _, kind := range []string{"section", "stick", "turn", "bottle"} {
		set[kind] = sync.OnceValues(func() ([]byte, error) { return drawn(kind, nil) })
	}
	return set
}()

// Draw makes a PNG, which nobody may write to. What the numbers mean depends on
// the kind; text is only for a code to be scanned ("qr"). Too few numbers, or an
// unknown kind, is an error.
func Draw(kind string, numbers []float64, text string) ([]byte, error) {
	if kind == "qr" {
		return code(text)
	}
	if once, ok := still[kind]; ok && len(numbers) == 0 {
		return once()
	}
	return drawn(kind, numbers)
}

func drawn(kind string, numbers []float64) ([]byte, error) {
	by, ok := kinds[kind]
	if !ok {
		return nil, fmt.Errorf("picture %q: no such kind", kind)
	}
	high := height
	if kind == "calendar" {
		high = min(height, max(2, len(numbers))*rowHigh+30)
	}
	s := newSheet(high)
	if err := by(s, numbers); err != nil {
		return nil, fmt.Errorf("picture %s: %w", kind, err)
	}
	return s.png()
}

// sheet is a drawing under way; its origin is the lower left corner.
type sheet struct {
	c    *vgimg.Canvas
	high float64
}

func newSheet(high int) *sheet {
	return &sheet{vgimg.NewWith(vgimg.UseWH(width, vg.Length(high)), vgimg.UseDPI(72), vgimg.UseBackgroundColor(paper)), float64(high)}
}

// png encodes the sheet in 16 greys, which keeps it small.
func (s *sheet) png() ([]byte, error) {
	greys := make(color.Palette, 16)
	for i := range greys {
		greys[i] = color.Gray{uint8(i * 17)}
	}
	from := s.c.Image()
	to := image.NewPaletted(from.Bounds(), greys)
	draw.Draw(to, to.Bounds(), from, from.Bounds().Min, draw.Src)
	var b bytes.Buffer
	e := png.Encoder{CompressionLevel: png.BestCompression}
	err := e.Encode(&b, to)
	return b.Bytes(), err
}

type at struct{ x, y float64 }

func path(closed bool, points ...at) vg.Path {
	var p vg.Path
	for i, q := range points {
		v := vg.Point{X: vg.Length(q.x), Y: vg.Length(q.y)}
		if i == 0 {
			p.Move(v)
			continue
		}
		p.Line(v)
	}
	if closed {
		p.Close()
	}
	return p
}

func (s *sheet) fill(c color.Color, points ...at) {
	s.c.SetColor(c)
	s.c.Fill(path(true, points...))
}

func (s *sheet) line(c color.Color, thick float64, points ...at) {
	s.c.SetColor(c)
	s.c.SetLineWidth(vg.Length(thick))
	s.c.Stroke(path(false, points...))
}

func (s *sheet) outline(c color.Color, thick float64, points ...at) {
	s.c.SetColor(c)
	s.c.SetLineWidth(vg.Length(thick))
	s.c.Stroke(path(true, points...))
}

func circle(x, y, r float64) vg.Path {
	var p vg.Path
	p.Move(vg.Point{X: vg.Length(x + r), Y: vg.Length(y)})
	p.Arc(vg.Point{X: vg.Length(x), Y: vg.Length(y)}, vg.Length(r), 0, 2*3.14159265)
	p.Close()
	return p
}

func (s *sheet) disc(c color.Color, x, y, r float64) {
	s.c.SetColor(c)
	s.c.Fill(circle(x, y, r))
}

func (s *sheet) ring(c color.Color, thick, x, y, r float64) {
	s.c.SetColor(c)
	s.c.SetLineWidth(vg.Length(thick))
	s.c.Stroke(circle(x, y, r))
}

// arrow draws a line with a head at its end.
func (s *sheet) arrow(c color.Color, thick float64, points ...at) {
	s.line(c, thick, points...)
	a, b := points[len(points)-2], points[len(points)-1]
	dx, dy := unit(b.x-a.x, b.y-a.y)
	const long, half = 22, 13
	s.fill(c, at{b.x + dx*8, b.y + dy*8}, at{b.x - dx*long - dy*half, b.y - dy*long + dx*half}, at{b.x - dx*long + dy*half, b.y - dy*long - dx*half})
}

var faces = sync.OnceValue(func() *font.Cache { return font.NewCache(liberation.Collection()) })

// digits writes figures with their middle at a point.
func (s *sheet) digits(text string, size, x, y float64) {
	face := faces().Lookup(font.Font{Typeface: "Liberation", Variant: "Sans", Weight: 2}, vg.Length(size))
	s.c.SetColor(ink)
	s.c.FillString(face, vg.Point{X: vg.Length(x) - face.Width(text)/2, Y: vg.Length(y - size*0.36)}, text)
}
