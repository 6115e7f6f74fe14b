package understand

import (
	"slices"
	"strings"
	"testing"
	"unicode"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// settled are the plain sentences of the corpus that mean exactly one thing: what
// the metamorphic properties are run over.
func settled(tb testing.TB) []labelled {
	var out []labelled
	for _, l := range corpus(tb, "dev_a.jsonl") {
		m := Read(l.Text, l.Lang, l.Asked)
		if l.Sure && m.Sure && len(m.Codes) > 0 {
			out = append(out, l)
		}
	}
	return out
}

var manners = map[string][2]string{ // hello, thanks; from memory
	"en": {"hello", "thanks"}, "sw": {"habari", "asante"}, "hi": {"namaste", "dhanyavad"}, "es": {"hola", "gracias"}, "fr": {"bonjour", "merci"},
}

// Adding manners, an emoji, capitals or a full stop changes nothing that is said.
func TestMannersChangeNothing(t *testing.T) {
	bad, n := 0, 0
	for _, l := range settled(t) {
		m := Read(l.Text, l.Lang, l.Asked)
		if len(m.Codes) == 1 && (dimension(m.Codes[0]) == "answer" || dimension(m.Codes[0]) == "chat") {
			continue // alone by rule: "ok thanks" is thanks
		}
		if l.Tag == "question" || strings.HasSuffix(strings.TrimSpace(l.Text), "?") {
			continue // what follows a question mark is another clause; tested apart
		}
		w := manners[l.Lang]
		for name, text := range map[string]string{
			"hello": w[0] + ", " + l.Text, "thanks": l.Text + ", " + w[1], "emoji": l.Text + " 🙏", "face": l.Text + " 🙂",
			"capitals": strings.ToUpper(l.Text), "full stop": l.Text + ".", "spaces": "  " + strings.ReplaceAll(l.Text, " ", "  ") + " ",
		} {
			n++
			got := Read(text, l.Lang, l.Asked)
			if !slices.Equal(got.Codes, m.Codes) {
				bad++
				if bad <= 20 {
					t.Logf("%s: %q is %v, %q is %v", name, l.Text, m.Codes, text, got.Codes)
				}
			}
		}
	}
	if bad*100 > n { // one in a hundred may be asked back about, none may be turned round (below)
		t.Errorf("%d of %d changed", bad, n)
	}
}

// A message broken off after any word, as hasty fingers send it, or begun with a mark is
// read without a fault: "it was hot but", "? done". In each clause something may be missing.
func TestBrokenOff(t *testing.T) {
	for _, name := range []string{"dev_a.jsonl", "dev_c_w.jsonl", "dev_d_e.jsonl", "dev_d_w.jsonl"} {
		for _, l := range corpus(t, name) {
			for i, r := range l.Text {
				if r == ' ' {
					require.NotPanics(t, func() { Read(l.Text[:i], l.Lang, l.Asked) }, l.Text[:i])
					require.NotPanics(t, func() { Read("? "+l.Text[i:], l.Lang, l.Asked) }, l.Text[i:])
				}
			}
			for _, asked := range []string{"turn", "stick", "have", "none"} {
				require.NotPanics(t, func() { Read("? "+l.Text, l.Lang, asked) }, l.Text)
			}
		}
	}
}

// Doubled letters and dropped accents never turn a meaning round: the same codes,
// or a question.
func TestSpellingNeverTurnsMeaningRound(t *testing.T) {
	changed, n := 0, 0
	for _, l := range settled(t) {
		m := Read(l.Text, l.Lang, l.Asked)
		for _, text := range []string{string(plain(spelt(l.Text))), stretch(l.Text)} {
			n++
			got := Read(text, l.Lang, l.Asked)
			if slices.Equal(got.Codes, m.Codes) {
				continue
			}
			changed++
			if changed <= 20 {
				t.Logf("%q is %v, %q is %v", l.Text, m.Codes, text, got.Codes)
			}
			if got.Sure && perilous(m.Codes, got.Codes) {
				t.Errorf("%q is %v, %q is %v", l.Text, m.Codes, text, got.Codes)
			}
		}
	}
	if changed*100 > 3*n { // accents tell Spanish and French past from present: those are asked
		t.Errorf("%d of %d changed", changed, n)
	}
}

// stretch doubles the last vowel of every longer word, as feeling does.
func stretch(text string) string {
	var b strings.Builder
	rs := []rune(text)
	for i, r := range rs {
		b.WriteRune(r)
		last := i+1 == len(rs) || !unicode.IsLetter(rs[i+1])
		if last && i > 2 && strings.ContainsRune("aeiou", r) && unicode.IsLetter(rs[i-1]) && unicode.IsLetter(rs[i-2]) {
			b.WriteRune(r)
			b.WriteRune(r)
		}
	}
	return b.String()
}

// A denial of hot is never hot, in any language and with any dressing.
func TestNotHotIsNeverHot(t *testing.T) {
	deny := map[string][]string{ // from memory
		"en": {"not hot", "it is not hot", "isn't hot", "never hot", "not hot at all", "it wasn't hot"},
		"sw": {"si moto", "sio moto", "siyo ya moto", "haina moto", "hakina joto", "si moto hata kidogo"},
		"hi": {"garam nahi", "garam nahi hai", "गरम नहीं", "गर्म नहीं है", "bilkul garam nahi", "garm nhi h"},
		"es": {"no está caliente", "no caliente", "nada caliente", "no estaba caliente", "para nada caliente"},
		"fr": {"pas chaud", "ce n'est pas chaud", "c'est pas chaud", "pas du tout chaud", "jamais chaud"},
	}
	rapid.Check(t, func(t *rapid.T) {
		lang := rapid.SampledFrom([]string{"en", "sw", "hi", "es", "fr"}).Draw(t, "lang")
		text := rapid.SampledFrom(deny[lang]).Draw(t, "denial")
		text = rapid.SampledFrom([]string{"", "ok ", "hello ", "🙂 ", "yes "}).Draw(t, "before") + text +
			rapid.SampledFrom([]string{"", ".", "!!", " 🙏", " today", "..."}).Draw(t, "after")
		if rapid.Bool().Draw(t, "capitals") {
			text = strings.ToUpper(text)
		}
		asked := rapid.SampledFrom([]string{"stick", "turn", "none"}).Draw(t, "asked")
		for _, c := range Read(text, lang, asked).Codes {
			if c == "stick=hot" {
				t.Fatalf("%q read as hot", text)
			}
		}
	})
}

// A question or a plan is never a deed.
func TestQuestionsAndPlansAreNoDeeds(t *testing.T) {
	for _, l := range corpus(t, "dev_a.jsonl") {
		if l.Tag != "question" && l.Tag != "future" || hasDid(l.Means) {
			continue
		}
		if m := Read(l.Text, l.Lang, l.Asked); m.Sure && hasDid(m.Codes) {
			t.Errorf("%s %q read as done: %v", l.ID, l.Text, m.Codes)
		}
	}
}

// Joining two facts yields both, in either order.
func TestJoiningFacts(t *testing.T) {
	pairs := map[string][][2]string{ // what each half means alone, from memory
		"en": {{"stick is cold", "stick=cold"}, {"I turned the heap", "did=turned"}, {"there are ants", "seen=ants"}, {"it smells of ammonia", "smell=ammonia"}, {"the heap is dry", "moisture=dry"}, {"I watered the heap", "did=watered"}},
		"sw": {{"kijiti ni baridi", "stick=cold"}, {"nimegeuza lundo", "did=turned"}, {"kuna siafu", "seen=ants"}, {"linanuka amonia", "smell=ammonia"}, {"lundo ni kavu", "moisture=dry"}, {"nimemwagilia lundo", "did=watered"}},
		"hi": {{"dandi thandi hai", "stick=cold"}, {"dher palat diya", "did=turned"}, {"chintiyan hain", "seen=ants"}, {"ammonia ki smell hai", "smell=ammonia"}, {"dher sukha hai", "moisture=dry"}, {"dher me pani diya", "did=watered"}},
		"es": {{"el palo está frío", "stick=cold"}, {"volteé el montón", "did=turned"}, {"hay hormigas", "seen=ants"}, {"huele a amoniaco", "smell=ammonia"}, {"el montón está seco", "moisture=dry"}, {"regué el montón", "did=watered"}},
		"fr": {{"le bâton est froid", "stick=cold"}, {"j'ai retourné le tas", "did=turned"}, {"il y a des fourmis", "seen=ants"}, {"ça sent l'ammoniac", "smell=ammonia"}, {"le tas est sec", "moisture=dry"}, {"j'ai arrosé le tas", "did=watered"}},
	}
	for lang, list := range pairs {
		for _, a := range list {
			for _, b := range list {
				if a == b {
					continue
				}
				want := []string{a[1], b[1]}
				slices.Sort(want)
				for _, join := range []string{", ", ". "} {
					text := a[0] + join + b[0]
					if got := Read(text, lang, "none"); !slices.Equal(got.Codes, want) {
						t.Errorf("%s %q: want %v, got %v", lang, text, want, got.Codes)
					}
				}
			}
		}
	}
}

// The languages of the chat do not hide a danger.
func TestDangersInAnyChatLanguage(t *testing.T) {
	for _, l := range corpus(t, "dev_a.jsonl") {
		if l.Tag != "harm" || !l.Sure {
			continue
		}
		for _, lang := range []string{"en", "sw", "hi", "es", "fr"} {
			m := Read(l.Text, lang, l.Asked)
			if len(m.Codes) > 0 && perilous(l.Means, m.Codes) {
				t.Logf("%s in a chat set to %s: %q read as %v", l.ID, lang, l.Text, m.Codes)
			}
		}
	}
}

func FuzzRead(f *testing.F) {
	for r := range everyRow(f) {
		for form := range r.forms() {
			if len(form) > 3 {
				f.Add(form, folders[r.tongue%everyone], "stick")
				break
			}
		}
	}
	f.Add("गरम नहीं", "hi", "turn")
	f.Add("it was hot but", "en", "stick")
	f.Add("\xff\xfe3½ ﷽ 0x", "en", "have")
	f.Fuzz(func(t *testing.T, text, lang, asked string) {
		m := Read(text, lang, asked)
		if m.Sure != (len(m.Codes) > 0) {
			t.Fatalf("%q: sure %v with %v", text, m.Sure, m.Codes)
		}
		for _, c := range m.Codes {
			if !codeOK(c) {
				t.Fatalf("%q: %q is no code", text, c)
			}
		}
		When(text, lang)
		Clock(text, lang)
		Lengths(text, lang)
		Amounts(text, lang)
		Parse(text, lang)
	})
}

func codeOK(c string) bool {
	dim, v, ok := strings.Cut(c, "=")
	if !ok {
		return false
	}
	switch dim {
	case "temp":
		return v != ""
	case "have":
		p := strings.Split(v, " ")
		return len(p) == 3 && isSense("unit="+p[1]) && isSense("material="+p[2])
	}
	return isSense(c) && c != "seen=ash"
}

func isSense(s string) bool {
	_, ok := senseIDs()[s]
	return ok
}

func FuzzNormal(f *testing.F) {
	for _, s := range []string{"", "Hóóóla", "ठंडा है", "J’AI RETOURNÉ", "\x00\xff", "œuf ½ ６", "İstanbul", "ﬁ", "a\u0301\u0301"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		once := Normal(s)
		if twice := Normal(once); twice != once {
			t.Fatalf("%q -> %q -> %q", s, once, twice)
		}
	})
}

func TestNormalKeepsDevanagariSigns(t *testing.T) {
	for in, want := range map[string]string{
		"ठंडा": "ठंडा", "धुआँ": "धुआँ", "गड्ढा": "गड्ढा", "६२": "62", "Frío": "frio", "BÂTON": "baton", "hooooot": "hoot", "a  b\tc": "a b c",
	} {
		if got := Normal(in); got != want {
			t.Errorf("Normal(%q) = %q, want %q", in, got, want)
		}
	}
}

// A typing slip in a danger word is at worst asked back about.
func TestSlipsInDangers(t *testing.T) {
	n, lost, turned := 0, 0, 0
	for _, l := range corpus(t, "dev_a.jsonl") {
		if l.Tag != "harm" || !l.Sure {
			continue
		}
		words := strings.Fields(l.Text)
		for i, w := range words {
			rs := []rune(w)
			if len(rs) < 6 || rs[0] > 127 {
				continue
			}
			k := len(rs) / 2
			rs[k], rs[k-1] = rs[k-1], rs[k]
			text := strings.Join(append(append(slices.Clone(words[:i]), string(rs)), words[i+1:]...), " ")
			n++
			m := Read(text, l.Lang, l.Asked)
			switch {
			case m.Sure && perilous(l.Means, m.Codes):
				turned++
				t.Logf("%s %q: want %v, got %v", l.ID, text, l.Means, m.Codes)
			case !m.Sure:
				lost++
			}
		}
	}
	t.Logf("%d slips: %d asked back, %d read as something else", n, lost, turned)
	if turned*100 > 3*n || lost*100 > 10*n {
		t.Errorf("%d slips: %d asked back, %d read as something else", n, lost, turned)
	}
}

// Words of the yard that stand one letter from a danger, and deeds that share a word
// with one, are no dangers.
func TestYardWordsAreNoDangers(t *testing.T) {
	for lang, said := range map[string][]string{
		"en":      {"fibre", "painting", "sung", "fired"},
		"es":      {"quedaron", "se quedaron adentro", "queja", "humor", "luego", "todo picado y mojado", "pasto picado", "ya está picada la hoja"},
		"fr":      {"la cuve est pleine", "passé à la grille", "brillé", "soigné", "ça brule le baton", "baton brule"},
		"sw":      {"imekomaa", "nimeunga", "nimesimamia", "imeshuka mkono mmoja"},
		"hi-Latn": {"haath dhona padega", "bori me lapet diya", "chuhe ke liye jali laga di", "chhatri"},
		"hi":      {"हाथ धोना है", "बोरी में लपेट दिया", "जाली लगा दी"},
	} {
		for _, text := range said {
			for _, asked := range []string{"none", "sieve", "trial"} {
				for _, c := range Read(text, lang, asked).Codes {
					if dangerous(c) {
						t.Errorf("%s %q under %s is %s", lang, text, asked, c)
					}
				}
			}
		}
	}
}
