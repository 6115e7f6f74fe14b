package dialog

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// Who writes १२ reads १२, until they write 12 again; an officer's letter to them
// follows their digits too, and a code stays as it must be typed.
func TestNumeralsAsTheFarmerWrites(t *testing.T) {
	v := newVillage(t, "2026-03-02T07:00:00+05:30")
	v.saysAll(1, "नमस्ते", "हिन्दी", "हाँ", "आशा", "भोपाल", "ढेर 4 दिन पहले बना लिया")
	require.Regexp(t, `4`, v.last(1).Text+v.heard[1][len(v.heard[1])-2].Text)
	v.saysAll(1, "undo", "ढेर ४ दिन पहले बना लिया")
	require.True(t, v.states[1].Person.Nagari)
	last := v.last(1)
	require.Regexp(t, `[०-९]`, last.Buttons[0].Label)
	require.NotRegexp(t, `[0-9]`, last.Text+last.Buttons[0].Label)
	v.says(1, "६ x ४ x ४ फुट")
	h, _ := v.states[1].Heap(1)
	require.Greater(t, h.Volume(), 2.0)
	n := len(v.heard[1])
	v.wait(3 * 24 * time.Hour)
	require.NotRegexp(t, `[0-9]`, v.since(1, n), "reminders too")
	v.says(1, "share")
	require.Contains(t, v.last(1).Text+v.heard[1][len(v.heard[1])-2].Text, v.codeOf(1))
	v.says(1, "डंडा गरम 61 डिग्री")
	require.False(t, v.states[1].Person.Nagari)
	v.says(1, "status")
	require.Regexp(t, `[0-9]`, v.last(1).Text)
}

func TestDevanagariDigits(t *testing.T) {
	for in, out := range map[string]string{
		"":                  "",
		"दिन 4 of 35":       "दिन ४ of ३५",
		"कोड code1xx 7 दिन": "कोड code1xx ७ दिन",
		"06:30\nठीक 6x4 6 x 4 फुट।": "०६:३०\nठीक 6x4 ६ x ४ फुट।",
	} {
		require.Equal(t, out, devanagari(in))
	}
}

func TestFrenchDecimals(t *testing.T) {
	l := Letter{Text: "haut d'environ 1.2 mètre, à 6:30.", Buttons: []Button{{Label: "1.8 x 1.2 m"}}}
	inNumerals(&l, Person{Lang: "fr"})
	require.Equal(t, "haut d'environ 1,2 mètre, à 6:30.", l.Text)
	require.Equal(t, "1,8 x 1,2 m", l.Buttons[0].Label)
}
