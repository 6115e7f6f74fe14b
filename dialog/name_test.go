package dialog

import (
	"testing"

	"github.com/stretchr/testify/require"
)

func TestTheNameWithoutItsFrame(t *testing.T) {
	for _, c := range []struct{ lang, said, name string }{
		{"English", "Amina", "Amina"}, {"English", "My name is Amina Wanjiru.", "Amina Wanjiru"}, {"English", "I'm Juma", "Juma"}, {"English", "call me Mama Kip thanks", "Mama Kip"},
		{"English", "Im", "Im"}, {"English", "Soy", "Soy"},
		{"Kiswahili", "Jina langu ni Baraka", "Baraka"}, {"Kiswahili", "naitwa Mzee Otieno", "Mzee Otieno"},
		{"हिन्दी", "मेरा नाम आशा है", "आशा"}, {"हिन्दी", "mera naam Ramesh hai", "Ramesh"}, {"हिन्दी", "आशा देवी", "आशा देवी"},
		{"Español", "me llamo Rosa", "Rosa"}, {"Español", "Soy don Julián", "don Julián"},
		{"Français", "Je m'appelle Awa Diop", "Awa Diop"}, {"Français", "moi c'est Ibra", "Ibra"},
	} {
		v := newVillage(t, "2026-03-02T09:00:00+03:00")
		v.saysAll(1, "hello", c.lang, "1", c.said)
		require.Equal(t, c.name, v.states[1].Person.Name, c.said)
	}
}
