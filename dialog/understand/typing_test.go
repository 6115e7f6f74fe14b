package understand

import (
	"math/rand/v2"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// How a farmer's thumbs change a reply: one slip in one longer word, one space left out,
// no marks at all, one longer word without its inner vowels. Most replies keep their meaning, few are read as something else, and
// hot and cold change places in hardly any ("frío no, está caliente" without its comma is
// one). The replies were read right as they stand in the corpus; the changes are drawn
// with a fixed seed. Shares are our own bars.
func TestTyping(t *testing.T) {
	var all []labelled
	for _, name := range []string{"dev_a.jsonl", "dev_c_w.jsonl", "dev_d_e.jsonl", "dev_d_w.jsonl"} {
		for _, l := range corpus(t, name) {
			if m := Read(l.Text, l.Lang, l.Asked); l.Sure && m.Sure && sameCodes(m.Codes, l.Means) {
				all = append(all, l)
			}
		}
	}
	for _, way := range []struct {
		name          string
		change        func(string, *rand.Rand) string
		kept, changed int // in a hundred: at least kept the same, at most read as something else
	}{
		{"slip", slip, 90, 3},
		{"space left out", run, 88, 3},
		{"no marks", unmarked, 91, 4},
		{"inner vowels left out", devowel, 78, 5},
	} {
		t.Run(way.name, func(t *testing.T) {
			rng := rand.New(rand.NewPCG(1, 2))
			n, kept, changed, round, perils, lost := 0, 0, 0, 0, 0, 0
			for _, l := range all {
				text := way.change(l.Text, rng)
				if text == l.Text {
					continue
				}
				n++
				if perilous(l.Means, nil) {
					perils++
				}
				switch m := Read(text, l.Lang, l.Asked); {
				case sameCodes(m.Codes, l.Means):
					kept++
				case m.Sure:
					changed++
					if opposite(l.Means, m.Codes) {
						round++
						t.Logf("%s %q: %v", l.Lang, text, m.Codes)
					}
					if perilous(l.Means, m.Codes) {
						lost++
					}
				}
			}
			t.Logf("%d: %.1f %% kept, %.1f %% read as something else, %d turned round, %d of %d dangers read as something else", n, 100*float64(kept)/float64(n), 100*float64(changed)/float64(n), round, lost, perils)
			if kept*100 < way.kept*n || changed*100 > way.changed*n || round*400 > n || lost*100 > 3*perils {
				t.Fail()
			}
		})
	}
}

func sameCodes(a, b []string) bool {
	return slices.Equal(slices.Sorted(slices.Values(a)), slices.Sorted(slices.Values(b)))
}

// opposite says whether hot was read for cold or cold for hot.
func opposite(want, got []string) bool {
	return slices.Contains(want, "stick=hot") && slices.Contains(got, "stick=cold") || slices.Contains(want, "stick=cold") && slices.Contains(got, "stick=hot")
}

var longWord = regexp.MustCompile(`[\p{Latin}]{6,}`)

// anywhere puts change(part) for one part of a text that a pattern finds.
func anywhere(text string, part *regexp.Regexp, rng *rand.Rand, change func([]rune) []rune) string {
	at := part.FindAllStringIndex(text, -1)
	if len(at) == 0 {
		return text
	}
	w := at[rng.IntN(len(at))]
	return text[:w[0]] + string(change([]rune(text[w[0]:w[1]]))) + text[w[1]:]
}

// slip changes one longer word: a letter dropped, doubled, swapped with the next, or hit
// beside.
func slip(text string, rng *rand.Rand) string {
	return anywhere(text, longWord, rng, func(rs []rune) []rune {
		i := 1 + rng.IntN(len(rs)-2)
		switch rng.IntN(4) {
		case 0:
			rs = slices.Delete(rs, i, i+1)
		case 1:
			rs = slices.Insert(rs, i, rs[i])
		case 2:
			rs[i], rs[i+1] = rs[i+1], rs[i]
		default:
			if rs[i] >= 'a' && rs[i] <= 'z' {
				keys := []rune(beside[rs[i]-'a'])
				rs[i] = keys[rng.IntN(len(keys))]
			}
		}
		return rs
	})
}

// devowel leaves the inner vowels out of one longer word.
func devowel(text string, rng *rand.Rand) string {
	return anywhere(text, longWord, rng, func(rs []rune) []rune {
		last := len(rs) - 1
		inner := slices.DeleteFunc(slices.Clone(rs[1:last]), func(r rune) bool { return strings.ContainsRune("aeiouáéíóúàâèêîïôùûü", r) })
		return slices.Concat(rs[:1], inner, rs[last:])
	})
}

var spaces = regexp.MustCompile(`\p{Latin}{4,} \p{Latin}{4,}`)

// run leaves out the space between two longer words.
func run(text string, rng *rand.Rand) string {
	return anywhere(text, spaces, rng, func(rs []rune) []rune {
		return slices.DeleteFunc(rs, func(r rune) bool { return r == ' ' })
	})
}

var marks = regexp.MustCompile(`[.,;:!]+(\s|$)`)

// unmarked drops the marks between words; a question keeps its own.
func unmarked(text string, _ *rand.Rand) string {
	if strings.Contains(text, "?") {
		return text
	}
	return strings.TrimSpace(marks.ReplaceAllString(text, " "))
}
