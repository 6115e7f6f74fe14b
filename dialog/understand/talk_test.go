package understand

import (
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// Wanted values below are arithmetic or the labelling rules (units keep their
// names); the sentences are from memory.

func TestAmounts(t *testing.T) {
	for _, c := range []struct {
		text, lang string
		want       []Amount
	}{
		{"12 basins passed the sieve", "en", []Amount{{12, "basin", ""}}},
		{"4 kg", "en", []Amount{{4, "kg", ""}}},
		{"12", "en", []Amount{{12, "", ""}}},
		{"3 baskets of dung and 2 bags leaves", "en", []Amount{{3, "basket", "cow_dung"}, {2, "bag", "dry_leaves"}}},
		{"debe mbili na nusu za samadi", "sw", []Amount{{2.5, "tin", "cow_dung"}}},
		{"ढाई बोरी भूसा", "hi", []Amount{{2.5, "bag", "straw"}}},
		{"dhai bori bhusa", "hi", []Amount{{2.5, "bag", "straw"}}},
		{"dos cubetas y media de gallinaza", "es", []Amount{{2.5, "bucket", "hen_dung"}}},
		{"quatre-vingts kilos de foin", "fr", []Amount{{80, "kg", "hay"}}},
		{"quatre-vingt-dix kilos de foin", "fr", []Amount{{90, "kg", "hay"}}},
		{"2 à 3 paniers de foin", "fr", []Amount{{2.5, "basket", "hay"}}},
		{"put 2 basins on the layer", "en", []Amount{{2, "basin", ""}}},
		{"nothing", "en", nil},
	} {
		if got := Amounts(c.text, c.lang); !reflect.DeepEqual(got, c.want) {
			t.Errorf("%q: %+v, want %+v", c.text, got, c.want)
		}
	}
}

func TestLengths(t *testing.T) {
	for _, c := range []struct {
		text, lang string
		want       []Length
	}{
		{"6 x 4 x 4 ft", "en", []Length{{6, "ft"}, {4, "ft"}, {4, "ft"}}},
		{"6x4x4 feet", "en", []Length{{6, "ft"}, {4, "ft"}, {4, "ft"}}},
		{"2m by 1.2 by 1.2", "en", []Length{{2, "m"}, {1.2, "m"}, {1.2, "m"}}},
		{"6' 4' 4'", "en", []Length{{6, "ft"}, {4, "ft"}, {4, "ft"}}},
		{"six by four by four feet", "en", []Length{{6, "ft"}, {4, "ft"}, {4, "ft"}}},
		{"futi 6 kwa 4 kwa 4", "sw", []Length{{6, "ft"}, {4, "ft"}, {4, "ft"}}},
		{"mita mbili kwa moja na nusu", "sw", []Length{{2, "m"}, {1.5, "m"}}},
		{"६ फुट ४ फुट ४ फुट", "hi", []Length{{6, "ft"}, {4, "ft"}, {4, "ft"}}},
		{"chhe foot char foot", "hi", []Length{{6, "ft"}, {4, "ft"}}},
		{"2 metros por 1,5 por 1", "es", []Length{{2, "m"}, {1.5, "m"}, {1, "m"}}},
		{"2 mètres sur 1,2", "fr", []Length{{2, "m"}, {1.2, "m"}}},
		{"150 cm", "en", []Length{{150, "cm"}}},
		{"5 spans", "en", []Length{{5, "span"}}},
		{"6 4 4", "en", []Length{{6, ""}, {4, ""}, {4, ""}}},
		{"hello", "en", nil},
	} {
		if got := Lengths(c.text, c.lang); !reflect.DeepEqual(got, c.want) {
			t.Errorf("%q: %+v, want %+v", c.text, got, c.want)
		}
	}
}

func TestWhen(t *testing.T) {
	off := func(n int) Day { return Day{Offset: n, Weekday: -1, Past: n < 0} }
	for _, c := range []struct {
		text, lang string
		want       Day
	}{
		{"two days ago", "en", off(-2)}, {"yesterday", "en", off(-1)}, {"today", "en", off(0)}, {"tomorrow", "en", off(1)},
		{"in 3 days", "en", off(3)}, {"next week", "en", off(7)}, {"day before yesterday", "en", off(-2)}, {"a week ago", "en", off(-7)},
		{"on Sunday", "en", Day{Weekday: 0}}, {"last Sunday", "en", Day{Weekday: 0, Past: true}},
		{"12 March", "en", Day{Weekday: -1, Month: 3, Date: 12}}, {"March 12", "en", Day{Weekday: -1, Month: 3, Date: 12}},
		{"2026-03-12", "en", Day{Weekday: -1, Month: 3, Date: 12}}, {"12/3/2026", "en", Day{Weekday: -1, Month: 3, Date: 12}},
		{"siku mbili zilizopita", "sw", off(-2)}, {"jana", "sw", off(-1)}, {"kesho", "sw", off(1)}, {"kesho kutwa", "sw", off(2)},
		{"baada ya siku tatu", "sw", off(3)}, {"wiki ijayo", "sw", off(7)}, {"jumapili", "sw", Day{Weekday: 0}},
		{"hace dos días", "es", off(-2)}, {"hace dos dias", "es", off(-2)}, {"ayer", "es", off(-1)}, {"pasado mañana", "es", off(2)}, {"en tres días", "es", off(3)},
		{"el domingo", "es", Day{Weekday: 0}}, {"12 de marzo", "es", Day{Weekday: -1, Month: 3, Date: 12}},
		{"il y a 3 jours", "fr", off(-3)}, {"hier", "fr", off(-1)}, {"après-demain", "fr", off(2)}, {"dans deux jours", "fr", off(2)}, {"le 12 mars", "fr", Day{Weekday: -1, Month: 3, Date: 12}},
		{"do din pehle", "hi", off(-2)}, {"दो दिन पहले", "hi", off(-2)}, {"teen din baad", "hi", off(3)}, {"aaj", "hi", off(0)},
		{"kal palta tha", "hi", off(-1)}, {"kal palat dunga", "hi", off(1)}, {"परसों पलटूँगा", "hi", off(2)}, {"रविवार को", "hi", Day{Weekday: 0}},
	} {
		if got, ok := When(c.text, c.lang); !ok || got != c.want {
			t.Errorf("%q: %+v %v, want %+v", c.text, got, ok, c.want)
		}
	}
	for _, c := range [][2]string{{"kal", "hi"}, {"hot", "en"}, {"", "fr"}} {
		if got, ok := When(c[0], c[1]); ok {
			t.Errorf("%q names no day, got %+v", c[0], got)
		}
	}
}

func TestClock(t *testing.T) {
	for _, c := range []struct {
		text, lang string
		h, m       int
	}{
		{"6:30", "en", 6, 30}, {"18:05", "en", 18, 5}, {"half past six", "en", 6, 30}, {"7 in the morning", "en", 7, 0}, {"7 pm", "en", 19, 0},
		{"6.30 am", "en", 6, 30}, {"noon", "en", 12, 0}, {"quarter past 7", "en", 7, 15}, {"8", "en", 8, 0}, {"six thirty", "en", 6, 30}, {"6 30", "en", 6, 30},
		{"saa moja asubuhi", "sw", 7, 0}, {"saa kumi na mbili jioni", "sw", 18, 0}, {"saa mbili usiku", "sw", 20, 0}, {"saa moja na nusu asubuhi", "sw", 7, 30}, {"07:00", "sw", 7, 0},
		{"subah saat baje", "hi", 7, 0}, {"सुबह सात बजे", "hi", 7, 0}, {"shaam 6 baje", "hi", 18, 0}, {"sadhe saat baje subah", "hi", 7, 30},
		{"a las 7", "es", 7, 0}, {"a las 7 y media de la mañana", "es", 7, 30}, {"6 de la tarde", "es", 18, 0},
		{"7h30", "fr", 7, 30}, {"7 heures du matin", "fr", 7, 0}, {"6 heures du soir", "fr", 18, 0}, {"sept heures et demie", "fr", 7, 30}, {"midi", "fr", 12, 0},
	} {
		if h, m, ok := Clock(c.text, c.lang); !ok || h != c.h || m != c.m {
			t.Errorf("%q: %d:%02d %v, want %d:%02d", c.text, h, m, ok, c.h, c.m)
		}
	}
	if _, _, ok := Clock("hello", "en"); ok {
		t.Error("hello is no hour")
	}
}

func TestParse(t *testing.T) {
	for _, c := range []struct {
		text, lang string
		want       Command
	}{
		{"menu", "en", Command{"menu", ""}}, {"MENU!", "sw", Command{"menu", ""}}, {"/stop", "fr", Command{"stop", ""}}, {"help", "hi", Command{"help", ""}},
		{"heap Amina", "en", Command{"heap", "Amina"}}, {"Heap Amina Wanjiru", "en", Command{"heap", "Amina Wanjiru"}}, {"announce Meeting on Friday at 10", "en", Command{"announce", "Meeting on Friday at 10"}},
		{"visited Juma", "sw", Command{"visited", "Juma"}}, {"/start ABC-12_x", "en", Command{"start", "ABC-12_x"}}, {"delete me", "en", Command{"delete_me", ""}},
		{"my data", "en", Command{"my_data", ""}}, {"msaada", "sw", Command{"help", ""}}, {"afisa", "sw", Command{"officer", ""}}, {"मदद", "hi", Command{"help", ""}}, {"madad", "hi", Command{"help", ""}},
		{"ayuda", "es", Command{"help", ""}}, {"menú", "es", Command{"menu", ""}}, {"aide", "fr", Command{"help", ""}}, {"board", "fr", Command{"board", ""}}, {"later", "sw", Command{"later", ""}},
		{"tangaza Mkutano Ijumaa", "sw", Command{"announce", "Mkutano Ijumaa"}}, {"मुझे हटाओ", "hi", Command{"delete_me", ""}}, {"aidez-moi", "fr", Command{"help", ""}},
		{"undo", "es", Command{"undo", ""}}, {"arrêter", "fr", Command{"stop", ""}},
	} {
		if got, ok := Parse(c.text, c.lang); !ok || got != c.want {
			t.Errorf("%q: %+v %v, want %+v", c.text, got, ok, c.want)
		}
	}
	for _, c := range [][2]string{{"stop the water", "en"}, {"turned it", "en"}, {"", "en"}, {"help me my hand is burnt", "en"}, {"heap", "en"}, {"/", "en"}} {
		if got, ok := Parse(c[0], c[1]); ok {
			t.Errorf("%q is no command, got %+v", c[0], got)
		}
	}
}

// "10 March" is a day, whatever was asked; "55" under the stick is a reading.
func TestADateIsNoTemperature(t *testing.T) {
	for _, c := range []struct {
		text, lang string
		temp       bool
	}{
		{"on 10 March", "en", false}, {"turned it on 25 February", "en", false}, {"el 12 de marzo", "es", false}, {"le 12 mars", "fr", false},
		{"tarehe 12", "sw", false}, {"12 machi", "sw", false}, {"12 मार्च", "hi", false}, {"10 तारीख को", "hi", false}, {"10 tarikh ko", "hi", false},
		{"55", "en", true}, {"it is 55", "en", true}, {"५५", "hi", true}, {"son 55", "es", true}, {"ni 55", "sw", true},
	} {
		r := Read(c.text, c.lang, "stick")
		temp := slices.ContainsFunc(r.Codes, func(code string) bool { return strings.HasPrefix(code, "temp=") })
		require.Equal(t, c.temp, r.Sure && temp, "%s: %v", c.text, r.Codes)
	}
}

func TestSpan(t *testing.T) {
	for _, c := range []struct {
		text, lang string
		days       int
	}{
		{"5 days", "en", 5}, {"for ten days", "en", 10}, {"2 weeks", "en", 14}, {"a week", "en", 7}, {"a month", "en", 30},
		{"siku 5", "sw", 5}, {"wiki mbili", "sw", 14}, {"10 दिन", "hi", 10}, {"दो हफ्ते", "hi", 14}, {"10 din", "hi", 10},
		{"diez días", "es", 10}, {"una semana", "es", 7}, {"dix jours", "fr", 10}, {"2 semaines", "fr", 14},
		{"until Friday", "en", 0}, {"10 March", "en", 0}, {"", "en", 0},
	} {
		days, ok := Span(c.text, c.lang)
		require.Equal(t, c.days, days, c.text)
		require.Equal(t, c.days > 0, ok, c.text)
	}
}

// "It was hot but not now" says neither hot nor when.
func TestHotButNotNow(t *testing.T) {
	for text, lang := range map[string]string{
		"it was hot but not now": "en", "estaba caliente pero ahora no": "es", "c'était chaud mais plus maintenant": "fr",
		"ilikuwa moto lakini sasa hapana": "sw", "गरम था पर अब नहीं": "hi", "garam tha par ab nahi": "hi",
	} {
		r := Read(text, lang, "stick")
		require.False(t, r.Sure, "%s: %v", text, r.Codes)
	}
	require.Equal(t, []string{"when=later"}, Read("not now", "en", "stick").Codes)
}
