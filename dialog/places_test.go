package dialog

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// Every zone of the table is one of the IANA time zone database, and no name leads
// to two clocks.
func TestPlacesLeadToOneClock(t *testing.T) {
	whose := map[string]string{}
	for _, p := range places() {
		_, err := time.LoadLocation(p.zone)
		require.NoError(t, err, p.id)
		require.NotEmpty(t, p.words, p.id)
		for _, w := range p.words {
			require.NotEmpty(t, w, p.id)
			require.Contains(t, []string{"", p.id}, whose[w], "%s is in %s and in %s", w, whose[w], p.id)
			whose[w] = p.id
		}
	}
}

func TestFindPlace(t *testing.T) {
	for said, id := range map[string]string{
		"Nakuru": "kenya", "I live near nyeri town": "kenya", "BOGOTA": "colombia", "Bogotá, Colombia": "colombia", "Fès": "morocco", "fes": "morocco",
		"भोपाल के पास": "india", "bhopal ke paas gaon": "india", "Ségou": "mali", "segou": "mali", "Asia/Tashkent": "Asia/Tashkent",
		"San José, Costa Rica": "costa_rica", "santiago de cuba": "cuba", "santiago": "chile", "benin city": "nigeria", "Niger State": "nigeria",
	} {
		p, ok := findPlace(said)
		require.True(t, ok, said)
		require.Equal(t, id, p.id, said)
	}
	for said, town := range map[string]string{"Nakuru": "Nakuru", "I live near nyeri town": "Nyeri", "kenya": "", "BOGOTA": "Bogota", "benin city": "Benin City", "भोपाल के पास": "भोपाल"} {
		p, _ := findPlace(said)
		require.Equal(t, town, p.townIn(said), said)
	}
	for _, said := range []string{"", "my farm", "Narnia", "stick hot", "Atlantis/Center"} {
		_, ok := findPlace(said)
		require.False(t, ok, said)
	}
}

// The name of a language may be misspelt by who was asked for one.
func TestMisspeltTongue(t *testing.T) {
	for said, tag := range map[string]string{"kiswahil": "sw", "Kiswahilli": "sw", "englsh": "en", "engilsh": "en", "españl": "es", "francai": "fr", "hindii": "hi-Latn"} {
		got, ok := misspeltTongue(said)
		require.True(t, ok, said)
		require.Equal(t, tag, got, said)
	}
	for _, said := range []string{"", "ok", "yes", "ndio", "english please", "stick hot", "हाँ"} {
		_, ok := misspeltTongue(said)
		require.False(t, ok, said)
	}
}
