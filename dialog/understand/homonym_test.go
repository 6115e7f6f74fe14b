package understand

import (
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
)

// Every row of homonyms.tsv is about a sense its words have, alone or in a phrase of the
// language.
func TestHomonymsHaveTheSense(t *testing.T) {
	l := tables()
	for sense, hs := range l.homonyms {
		for _, h := range hs {
			of := func(e entry) bool {
				return e.sense() == sense && (e.tongue == h.tongue || e.hindi() && (h.tongue == hi || h.tongue == hiLatn))
			}
			for _, w := range h.words {
				begin, open := strings.CutSuffix(w, "*")
				if open {
					continue // the beginning of a verb, which no table has
				}
				id, known := l.id[fold(begin)]
				has := known && slices.ContainsFunc(l.senses[id], of)
				for i := range l.said {
					p := &l.said[i]
					has = has || known && of(p.entry) && slices.Contains(l.of(p), id)
				}
				assert.True(t, has, "%s: %q has no sense %s", folders[h.tongue], w, sense)
			}
		}
	}
}

// A row that cannot be meant is told with its table and line.
func TestHomonymFaults(t *testing.T) {
	for row, want := range map[string]string{
		"bit\tbite":                      "need words",
		"bit\tbitten\tbit":               `no such sense "bitten"`,
		"bit\tbite\tlittle":              "little",
		"bit\tbite\tbit\tnear=quality":   `no such condition "near=quality"`,
		"bit\tbite\tbit\tnext=qualities": `no such sense "qualities"`,
	} {
		files := fstest.MapFS{}
		for t := range tongues {
			files["lexicon/"+folders[t]+"/words.tsv"] = &fstest.MapFile{Data: []byte("yes\tyes\n")}
		}
		files["lexicon/en/homonyms.tsv"] = &fstest.MapFile{Data: []byte("# a table\n" + row + "\n")}
		_, err := load(files)
		if assert.Error(t, err, row) {
			assert.Contains(t, err.Error(), "en/homonyms.tsv line 2")
			assert.Contains(t, err.Error(), want)
		}
	}
}
