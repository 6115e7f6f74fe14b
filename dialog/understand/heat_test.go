package understand

import (
	"slices"
	"testing"
)

// Heat that is denied or gone must never be read as heat; a plan never as a deed. Labels:
// the labelling rules the group agreed on ("common practice, no source").
func TestDeniedHeatAndPlans(t *testing.T) {
	for _, c := range []struct {
		text, lang, asked string
		want              []string
	}{
		{"garmi mehsoos nahi hui", "hi", "stick", []string{"stick=cold"}},
		{"joto halisikiki", "sw", "stick", []string{"stick=cold"}},
		{"joto halionekani kabisa", "sw", "stick", []string{"stick=cold"}},
		{"moto umeisha", "sw", "stick", []string{"stick=cold"}},
		{"dandi pakdi nahi jaa rahi", "hi", "stick", []string{"stick=hot"}},
		{"garam tha par ab nahi", "hi", "stick", nil},
		{"ilikuwa moto sasa hapana", "sw", "stick", nil},
		{"garam dher banana hai", "hi", "none", nil},
		{"dher banaya", "hi", "none", []string{"did=built"}},
		{"कल पलटना है", "hi", "turn", []string{"when=tomorrow"}},
		{"कल पलटना था", "hi", "turn", nil},
		{"matone hayatoki", "sw", "moisture", []string{"moisture=dry"}},
		{"maji hayadondoki", "sw", "moisture", []string{"moisture=dry"}},
	} {
		if m := Read(c.text, c.lang, c.asked); !slices.Equal(m.Codes, c.want) {
			t.Errorf("%q: %v, want %v", c.text, m.Codes, c.want)
		}
	}
}
