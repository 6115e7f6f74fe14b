package phrases

import (
	"io/fs"
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"github.com/BurntSushi/toml"
	"github.com/stretchr/testify/require"
)

// raw reads a language's sentences as they stand in its files, by key; a
// counted sentence gives each of its forms.
func raw(t *testing.T, lang string) map[string]map[string]string {
	all := map[string]map[string]string{}
	names, err := fs.Glob(files, "say/"+lang+"/*.toml")
	require.NoError(t, err)
	require.NotEmpty(t, names, lang)
	for _, name := range names {
		body, err := files.ReadFile(name)
		require.NoError(t, err)
		var table map[string]any
		require.NoError(t, toml.Unmarshal(body, &table), name)
		for key, v := range table {
			require.NotContains(t, all, key, "%s stands twice", key)
			forms := map[string]string{}
			switch v := v.(type) {
			case string:
				forms["other"] = v
			case map[string]any:
				for form, s := range v {
					forms[form] = s.(string)
				}
			}
			all[key] = forms
		}
	}
	return all
}

var slot = regexp.MustCompile(`\{\{\.(\w+)\}\}`)

func slots(forms map[string]string) []string {
	var names []string
	for _, s := range forms {
		for _, m := range slot.FindAllStringSubmatch(s, -1) {
			if !slices.Contains(names, m[1]) && m[1] != "N" { // "one" may leave the number out
				names = append(names, m[1])
			}
		}
	}
	slices.Sort(names)
	return names
}

func TestEveryLanguageSaysEverything(t *testing.T) {
	english := raw(t, "en")
	for _, lang := range Languages() {
		table := raw(t, lang)
		for key, forms := range english {
			if strings.HasPrefix(key, "words_") {
				continue // a language lists more words only where it has them
			}
			there, ok := table[key]
			if !ok {
				t.Errorf("%s has no %s", lang, key)
				continue
			}
			if want, got := slots(forms), slots(there); !slices.Equal(want, got) {
				t.Errorf("%s %s has the slots %v, English has %v", lang, key, got, want)
			}
		}
		for key := range table {
			if _, ok := english[key]; !ok && !strings.HasPrefix(key, "words_") {
				t.Errorf("%s has %s, which English has not", lang, key)
			}
		}
	}
}

// limitOf is the room a sentence has before its slots are filled; contract,
// promise 4, less what names and lists take.
func limitOf(lang, key string) int {
	switch {
	case strings.HasSuffix(key, "_care") && !strings.HasPrefix(key, "built"), strings.HasPrefix(key, "hazard_"), key == "smoke_emergency":
		return 600
	case strings.HasPrefix(key, "remind_") && lang == "hi":
		return 134 // two joined messages of 67 in Devanagari
	case strings.HasPrefix(key, "remind_"):
		return 160 // one plain SMS
	}
	return 290
}

func TestSentencesFitTheirMessages(t *testing.T) {
	for _, lang := range Languages() {
		for key, forms := range raw(t, lang) {
			for _, s := range forms {
				bare := slot.ReplaceAllString(s, "12")
				if n := utf8.RuneCountInString(bare); n > limitOf(lang, key) && !strings.HasPrefix(key, "words_") {
					t.Errorf("%s %s is %d characters long, more than %d", lang, key, n, limitOf(lang, key))
				}
				if strings.Count(s, "?")+strings.Count(s, "？") > 1 {
					t.Errorf("%s %s asks two questions", lang, key)
				}
				if strings.HasPrefix(key, "pick_") && utf8.RuneCountInString(s) > 24 {
					t.Errorf("%s %s is too long for a button", lang, key)
				}
			}
		}
	}
}

// A slow reader: sentences of 15 words at the mean and 25 at the most.
func TestSentencesAreShort(t *testing.T) {
	ends := regexp.MustCompile(`[.?!।:]+(\s|$)`)
	for _, lang := range Languages() {
		words, sentences := 0, 0
		for key, forms := range raw(t, lang) {
			if strings.HasPrefix(key, "words_") {
				continue
			}
			for _, s := range forms {
				for _, part := range ends.Split(s, -1) {
					n := len(strings.FieldsFunc(part, func(r rune) bool { return unicode.IsSpace(r) }))
					if n == 0 {
						continue
					}
					if n > 25 {
						t.Errorf("%s %s: %d words: %s", lang, key, n, part)
					}
					if n > 2 { // labels are no sentences
						words, sentences = words+n, sentences+1
					}
				}
			}
		}
		mean := float64(words) / float64(sentences)
		t.Logf("%-8s %.1f words a sentence over %d sentences", lang, mean, sentences)
		require.LessOrEqual(t, mean, 15.0, lang)
	}
}

// One word for one thing: glossary.tsv names the rejected ones.
func TestTheGlossaryIsKept(t *testing.T) {
	for _, lang := range Languages() {
		body, err := fs.ReadFile(files, "say/"+lang+"/glossary.tsv")
		require.NoError(t, err)
		require.Contains(t, string(body), "native speaker", "the state of the language is said in its folder")
		table := raw(t, lang)
		rows := 0
		for line := range strings.Lines(string(body)) {
			cols := strings.Split(strings.TrimSpace(line), "\t")
			if strings.HasPrefix(line, "#") || cols[0] == "thing" || len(cols) < 2 {
				continue
			}
			rows++
			if len(cols) < 3 {
				continue
			}
			for rejected := range strings.SplitSeq(cols[2], ",") {
				for key, forms := range table {
					if strings.HasPrefix(key, "words_") || strings.HasPrefix(key, "hint_") {
						continue
					}
					for _, s := range forms {
						if hasWord(s, strings.TrimSpace(rejected)) {
							t.Errorf("%s %s says %q, the word is %q: %s", lang, key, rejected, cols[1], s)
						}
					}
				}
			}
		}
		require.GreaterOrEqual(t, rows, 10, lang)
	}
}

func hasWord(s, word string) bool {
	if word == "" {
		return false
	}
	fields := strings.FieldsFunc(strings.ToLower(s), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsMark(r) && r != '\'' })
	return strings.Contains(" "+strings.Join(fields, " ")+" ", " "+strings.ToLower(word)+" ")
}
