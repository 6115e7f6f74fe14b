package understand

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
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

// Heat told as missing, gone, refused or awaited is never read as hot, and heat that does not go
// never as cold: asking again costs a message, a cold heap taken for a hot one a month.
func TestHeatIsNotTurnedRound(t *testing.T) {
	list, err := os.ReadFile(filepath.Join("..", "..", "testdata", "replies", "heat.tsv"))
	if err != nil {
		t.Fatal(err)
	}
	wrong := map[string]string{"none": "stick=hot", "hot": "stick=cold"}
	n := 0
	for line := range strings.Lines(string(list)) {
		f := strings.Split(strings.TrimSpace(line), "\t")
		if strings.HasPrefix(line, "#") {
			continue
		}
		if len(f) != 3 || wrong[f[1]] == "" {
			t.Fatalf("%q: language, none or hot, text", line)
		}
		n++
		if m := Read(f[2], f[0], "stick"); slices.Contains(m.Codes, wrong[f[1]]) {
			t.Errorf("%q: %v", f[2], m.Codes)
		}
	}
	if n < 300 {
		t.Fatalf("only %d lines", n)
	}
}
