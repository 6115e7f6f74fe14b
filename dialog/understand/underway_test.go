package understand

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// A deed in hand is told apart from one put off; the sentences are from memory.
func TestUnderWay(t *testing.T) {
	for _, c := range []struct{ lang, asked, text, want string }{
		{"en", "turn", "turning it now", "did=turned"}, {"en", "none", "we are sieving", "did=sieved"}, {"en", "turn", "half done", "did=turned"},
		{"en", "turn", "turning it tomorrow", ""}, {"en", "turn", "later", ""}, {"en", "turn", "busy", ""}, {"en", "turn", "turned it", ""},
		{"sw", "turn", "ninageuza sasa", "did=turned"}, {"sw", "turn", "bado naendelea", "did=turned"}, {"sw", "turn", "nitageuza", ""},
		{"hi", "turn", "पलट रहा हूँ", "did=turned"}, {"hi-Latn", "turn", "aadha ho gaya", "did=turned"}, {"hi", "turn", "शाम को", ""},
		{"es", "turn", "lo estoy volteando", "did=turned"}, {"es", "turn", "más tarde", ""},
		{"fr", "turn", "je suis en train de retourner", "did=turned"}, {"fr", "turn", "ce soir", ""},
	} {
		assert.Equal(t, c.want, Read(c.text, c.lang, c.asked).UnderWay, "%s: %q", c.lang, c.text)
	}
}

// A trouble told to be gone, or not there, is no report, and is told apart from what is not
// understood. The sentences are from memory.
func TestGone(t *testing.T) {
	for _, c := range []struct {
		lang, text string
		gone       bool
	}{
		{"en", "the flies are gone", true}, {"en", "no more bad smell", true}, {"en", "flies", false}, {"en", "the bus is gone", false},
		{"sw", "nzi wameisha", true}, {"hi", "मक्खियाँ चली गईं", true}, {"hi-Latn", "makkhi nahi hai", true},
		{"es", "ya se fueron las moscas", true}, {"fr", "plus de mouches", true}, {"fr", "les mouches sont parties ?", false},
	} {
		m := Read(c.text, c.lang, "none")
		assert.Equal(t, c.gone, m.Gone, "%s: %q %v", c.lang, c.text, m.Codes)
	}
}
