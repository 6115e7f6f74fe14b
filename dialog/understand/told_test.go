package understand

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// The words of a question or of a condition also tell ("quand", "सकता", "before"); the
// sentences are from memory.
func TestToldNotAsked(t *testing.T) {
	for _, c := range []struct {
		lang, asked, text string
		want              []string
	}{
		{"en", "feed", "before I left I fed the worms", []string{"did=fed"}},
		{"en", "layer", "before I ate I laid the layer", []string{"did=layered"}},
		{"fr", "stick", "quand j'ai retourné le tas le bâton était froid", []string{"stick=cold"}},
		{"fr", "stick", "quand j'ai sorti le bâton c'était chaud", []string{"stick=hot"}},
		{"fr", "turn", "quand on a retourné le tas de l'eau a coulé", []string{"moisture=wet"}},
		{"fr", "stick", "quand est-ce que je retourne ?", []string{"ask=next"}},
		{"hi", "layer", "मैं अभी परत नहीं बिछा सकता", []string{"when=later"}},
		{"hi", "turn", "अभी नहीं पलट सकती", []string{"answer=no"}},
		{"hi", "turn", "क्या मैं अभी पलट सकता हूँ?", []string{"ask=help"}},
	} {
		assert.Equal(t, c.want, Read(c.text, c.lang, c.asked).Codes, "%s: %q", c.lang, c.text)
	}
}
