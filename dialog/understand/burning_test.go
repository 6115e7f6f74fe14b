package understand

import (
	"slices"
	"testing"
)

// A fire that only cooks is no danger; one that burns something, or spreads, always is, whatever
// is said of cooking beside it. The sentences are from memory.
func TestFireThatCooks(t *testing.T) {
	for _, c := range []struct {
		lang, text string
		fire       bool
	}{
		{"en", "am cooking supper on the fire", false}, {"en", "it's only the cooking fire", false},
		{"fr", "je cuis le riz au feu de bois", false}, {"es", "estoy cocinando en el fuego", false},
		{"en", "it is cooking on fire", true}, {"en", "the kitchen is on fire", true},
		{"en", "cooking over the fire and it caught the heap", true}, {"en", "i was cooking the fire reached the heap", true},
		{"es", "cocina en llamas, estaba cocinando", true}, {"es", "estaba cocinando y la casa en llamas", true},
	} {
		if m := Read(c.text, c.lang, "none"); slices.Contains(m.Codes, "seen=fire") != c.fire {
			t.Errorf("%q: %v", c.text, m.Codes)
		}
	}
}
