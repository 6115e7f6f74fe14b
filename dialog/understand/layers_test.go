package understand

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestLayers(t *testing.T) {
	for _, c := range []struct {
		text, lang string
		n          int
		nth        bool
	}{
		{"3 layers done", "en", 3, false}, {"put down two more layers", "en", 2, false}, {"third layer is down", "en", 3, true},
		{"layer 4 down", "en", 4, true}, {"layer number 2 done", "en", 2, true}, {"layer done", "en", 0, false}, {"done", "en", 0, false},
		{"3 baskets on the layer", "en", 0, false},
		{"tabaka tatu tayari", "sw", 3, false}, {"tabaka la tatu tayari", "sw", 3, true}, {"tabaka la pili limekwisha", "sw", 2, true},
		{"तीन परत हो गई", "hi", 3, false}, {"तीसरी परत बिछ गई", "hi", 3, true}, {"do parat ho gayi", "hi-Latn", 2, false},
		{"ya van tres capas", "es", 3, false}, {"la segunda capa ya está", "es", 2, true},
		{"trois couches posées", "fr", 3, false}, {"la deuxième couche est posée", "fr", 2, true},
	} {
		n, nth, ok := Layers(c.text, c.lang)
		assert.Equal(t, c.n, n, "%s: %q", c.lang, c.text)
		assert.Equal(t, c.nth, nth, "%s: %q", c.lang, c.text)
		assert.Equal(t, c.n > 0, ok, "%s: %q", c.lang, c.text)
	}
}
