package understand

import (
	"maps"
	"runtime"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"
)

func BenchmarkRead(b *testing.B) {
	tables()
	for _, c := range []struct{ name, text, lang, asked string }{
		{"en", "turned it, stick hot", "en", "turn"},
		{"sw", "nimegeuza lundo na kumwagia maji", "sw", "turn"},
		{"hi", "डंडी बहुत गरम थी", "hi", "stick"},
		{"hi-Latn", "bhut grm h", "hi", "stick"},
		{"es", "ya cerní y huele a tierra", "es", "sieve"},
		{"fr", "jai retourner le tas", "fr", "turn"},
		{"have", "3 baskets of goat droppings and 2 bags leaves", "en", "have"},
		{"typo", "shaked teh botle", "en", "shake"},
	} {
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				Read(c.text, c.lang, c.asked)
			}
		})
	}
}

// The tables alone, and with the second keys of every language, which are otherwise
// made for each language when its first unknown word comes.
func BenchmarkLoad(b *testing.B) {
	for _, ears := range []bool{false, true} {
		b.Run(map[bool]string{false: "tables", true: "ears"}[ears], func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				l, err := load(files)
				if err != nil {
					b.Fatal(err)
				}
				for t := range tongues {
					if ears {
						l.ear[t]()
					}
				}
			}
		})
	}
}

// The vocabulary stays small: under 20 MB (the project's bar).
func TestVocabularySize(t *testing.T) {
	var before, after runtime.MemStats
	runtime.GC()
	runtime.ReadMemStats(&before)
	l, err := load(files)
	if err != nil {
		t.Fatal(err)
	}
	for t := range tongues {
		l.ear[t]()
	}
	runtime.GC()
	runtime.ReadMemStats(&after)
	size := int64(after.HeapAlloc) - int64(before.HeapAlloc)
	t.Logf("%d words, %.1f MB", len(l.spelled), float64(size)/1e6)
	if size > 20e6 {
		t.Errorf("vocabulary takes %d bytes", size)
	}
	runtime.KeepAlive(l)
}

// A page of 4,000 characters, of replies in each language and of what no language is made
// of. The project's bar is a millisecond.
func BenchmarkPage(b *testing.B) {
	page := map[string]string{
		"slips": strings.Repeat("xqzvt jkwpl ", 334), "figures": strings.Repeat("1 ", 2000), "marks": strings.Repeat("?", 4000),
		"one letter": strings.Repeat("a", 4000), "one word": strings.Repeat("nimegeuzabc", 363), "consonants": strings.Repeat("bcdfg hjkmn ", 334),
		"one verb": strings.Repeat("nimegeuzaz ", 364), "one report": strings.Repeat("turned it and hot ", 223),
	}
	for _, name := range []string{"dev_d_w.jsonl", "dev_d_e.jsonl"} {
		for _, l := range corpus(b, name) {
			if utf8.RuneCountInString(page[l.Lang])+len(l.Text) < 4000 {
				page[l.Lang] += l.Text + ". "
			}
		}
	}
	for _, name := range slices.Sorted(maps.Keys(page)) {
		lang := name
		if len(name) > 2 {
			lang = "sw"
		}
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				Read(page[name], lang, "stick")
			}
		})
	}
}
