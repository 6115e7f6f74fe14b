package understand

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// A common word that means nothing here is not taken for a mistyped one that does.
func TestCommonWords(t *testing.T) {
	for _, lang := range []string{"en", "sw", "es", "fr", "hi", "hi-Latn"} {
		text, err := os.ReadFile(filepath.Join("..", "..", "testdata", "words", lang+".txt"))
		if err != nil {
			t.Fatal(err)
		}
		for _, w := range strings.Fields(string(text)) {
			r := newReader(w, lang, "none")
			for _, s := range r.signs {
				heard := r.near[s.from]
				if strings.HasPrefix(lang, "hi") { // by ear as well
					id, ok := r.lex.id[fold(w)]
					heard = !ok || len(r.lex.senses[id]) == 0
				}
				if heard && s.sense != "" && s.sense != "known" && s.sense != "filler" {
					t.Errorf("%s: %q is taken for %q, %s", lang, w, s.text, s.sense)
				}
			}
			r.close()
		}
	}
}
