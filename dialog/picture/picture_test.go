package picture

import (
	"bytes"
	"image"
	"image/color"
	"image/png"
	"math"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// samples draw each kind with numbers as a heap of two weeks would give them.
var samples = map[string][]float64{
	"section":  {6},
	"stick":    nil,
	"turn":     nil,
	"bottle":   nil,
	"curve":    {336, 1.8, 1.2, 1.2, 4, 72, 1, 0, 120, 2, 0, 168, 3, 0, 264, 3, 62, 1, 192, 1, 190},
	"calendar": {1, 3, 2, 1, 12, 8, 6, 2, 1, 4, 0, 1},
}

func TestPicturesAreSmallGreyAndWideEnough(t *testing.T) {
	for kind, numbers := range samples {
		body, err := Draw(kind, numbers, "")
		require.NoError(t, err, kind)
		require.Less(t, len(body), 40<<10, kind)
		m, err := png.Decode(bytes.NewReader(body))
		require.NoError(t, err, kind)
		require.Equal(t, image.Rect(0, 0, width, height), m.Bounds(), kind)
		shades := map[uint8]int{}
		for y := range height {
			for x := range width {
				r, g, b, a := m.At(x, y).RGBA()
				require.True(t, r == g && g == b && a == 0xffff, "%s has a colour at %d %d", kind, x, y)
				shades[uint8(r>>8)]++
			}
		}
		require.GreaterOrEqual(t, len(shades), 3, "%s shows nothing", kind)
		require.Greater(t, shades[0xff], width*height/4, "%s leaves no ground", kind)
		t.Logf("%-9s %5d bytes", kind, len(body))
		if to := os.Getenv("PICTURES"); to != "" { // to look at them
			require.NoError(t, os.WriteFile(filepath.Join(to, kind+".png"), body, 0o600))
		}
	}
	body, err := Draw("qr", nil, "https://example.org/bot?start=abcdefghij")
	require.NoError(t, err)
	require.Less(t, len(body), 40<<10)
}

// The contrast rule of WCAG 2: (L1 + 0.05) / (L2 + 0.05), with the linear light
// of grey. Digits stand on paper alone, or on light where a band passes below.
func TestDigitsStandOut(t *testing.T) {
	light8 := func(c color.Color) float64 {
		r, _, _, _ := c.RGBA()
		v := float64(r) / 0xffff
		if v <= 0.04045 {
			return v / 12.92
		}
		return math.Pow((v+0.055)/1.055, 2.4)
	}
	for _, ground := range []color.Color{paper, light} {
		ratio := (light8(ground) + 0.05) / (light8(ink) + 0.05)
		require.GreaterOrEqual(t, ratio, 4.5)
		t.Logf("digits on %v: %.1f to 1", ground, ratio)
	}
}

func TestTheSameNumbersGiveTheSameBytes(t *testing.T) {
	for kind, numbers := range samples {
		a, err := Draw(kind, numbers, "")
		require.NoError(t, err)
		b, err := Draw(kind, numbers, "")
		require.NoError(t, err)
		require.True(t, bytes.Equal(a, b), kind)
	}
}

// Whatever numbers a letter carries, there is a picture or an error.
func TestNoNumbersBreakAPicture(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		kind := rapid.SampledFrom([]string{"section", "bottle", "curve", "calendar", "none"}).Draw(t, "kind")
		numbers := rapid.SliceOfN(rapid.OneOf(rapid.Float64Range(-5, 400), rapid.SampledFrom([]float64{0, 1, 2, 3})), 0, 12).Draw(t, "numbers")
		body, err := Draw(kind, numbers, "")
		if (err == nil) == (len(body) == 0) {
			t.Fatalf("%d bytes and %v", len(body), err)
		}
	})
	_, err := Draw("qr", nil, "")
	require.Error(t, err)
}

// A picture without numbers is drawn once; one with numbers each time.
func BenchmarkDraw(b *testing.B) {
	for _, c := range []struct {
		name    string
		numbers []float64
	}{{"stick", nil}, {"curve", samples["curve"]}} {
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				Draw(c.name, c.numbers, "")
			}
		})
	}
}
