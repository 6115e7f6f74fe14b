package understand

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestNth(t *testing.T) {
	for _, c := range []struct {
		text, lang string
		want       int
	}{
		{"the first one", "en", 1}, {"The second.", "en", 2}, {"2nd", "en", 2}, {"number 3", "en", 3}, {"option two", "en", 2},
		{"two please", "en", 2}, {"(4)", "en", 4},
		{"la primera", "es", 1}, {"opción 2", "es", 2}, {"el tercero", "es", 3},
		{"le deuxième", "fr", 2}, {"numéro trois", "fr", 3}, {"n° 2", "fr", 2}, {"2ème", "fr", 2}, {"1ra", "es", 1}, {"premiere", "fr", 1},
		{"ya kwanza", "sw", 1}, {"namba mbili", "sw", 2}, {"la pili", "sw", 2},
		{"दूसरा वाला", "hi", 2}, {"नंबर तीन", "hi", 3}, {"pehla wala", "hi-Latn", 1}, {"number do", "hi-Latn", 2},
		{"", "en", 0}, {"no one", "en", 0}, {"first turn it", "en", 0}, {"one or two", "en", 0}, {"2.5", "en", 0}, {"1 2", "en", 0},
		{"two baskets", "en", 0}, {"second heap", "en", 0}, {"quiero una", "es", 0},
	} {
		got, ok := Nth(c.text, c.lang)
		assert.Equal(t, c.want, got, "%s: %q", c.lang, c.text)
		assert.Equal(t, c.want > 0, ok, "%s: %q", c.lang, c.text)
	}
}
