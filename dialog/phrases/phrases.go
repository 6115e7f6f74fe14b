// Package phrases holds every sentence warmstick says, one folder a language. It
// knows no rules of the trade: it is given a key and values and gives a text.
package phrases

import (
	"embed"
	"fmt"
	"io/fs"
	"iter"
	"maps"
	"slices"
	"strings"
	"sync"

	"github.com/BurntSushi/toml"
	"github.com/nicksnyder/go-i18n/v2/i18n"
	"golang.org/x/text/language"
)

//go:embed say/*/*.toml say/*/*.tsv
var files embed.FS

// Fallback is the language of a person who has not chosen one.
const Fallback = "en"

// Args are the values of a sentence's slots.
type Args = map[string]any

// voice is one language, loaded on first use: a village that speaks Swahili
// never pays for French.
type voice struct {
	plain     map[string]pieces // nearly all sentences
	other     map[string]bool   // the rest; true = they change with a number
	localizer *i18n.Localizer   // knows the rest
	words     map[string][]string
}

// voices holds one loader a language, by BCP 47 tag.
var voices = sync.OnceValue(func() map[string]func() voice {
	folders, err := fs.ReadDir(files, "say")
	if err != nil {
		panic(err) // the folder is embedded
	}
	set := map[string]func() voice{}
	for _, f := range folders {
		set[f.Name()] = sync.OnceValue(func() voice { return load(f.Name()) })
	}
	return set
})

// bodies are the files of a language. They are part of the program: what cannot
// be read there is a mistake of ours.
func bodies(tag string) iter.Seq2[string, []byte] {
	names, err := fs.Glob(files, "say/"+tag+"/*.toml")
	if err != nil {
		panic(err)
	}
	return func(yield func(string, []byte) bool) {
		for _, name := range names {
			body, err := files.ReadFile(name)
			if err != nil {
				panic(err)
			}
			if !yield(name, body) {
				return
			}
		}
	}
}

func load(tag string) voice {
	bundle := i18n.NewBundle(language.MustParse(tag))
	v := voice{plain: map[string]pieces{}, other: map[string]bool{}, localizer: i18n.NewLocalizer(bundle, tag), words: map[string][]string{}}
	for name, body := range bodies(tag) {
		file, err := i18n.ParseMessageFileBytes(body, tag+".toml", map[string]i18n.UnmarshalFunc{"toml": toml.Unmarshal})
		if err != nil {
			panic(fmt.Sprintf("phrases %s: %v", name, err))
		}
		for _, m := range file.Messages {
			if v.has(m.ID) {
				panic(fmt.Sprintf("phrases %s: %s stands twice", name, m.ID))
			}
			if strings.HasPrefix(m.ID, "words_") {
				v.words[m.ID] = list(m.Other)
			}
			counted := m.One != "" || m.Few != "" || m.Many != ""
			if s, ok := cut(m.Other); ok && !counted {
				v.plain[m.ID] = s
				continue
			}
			v.other[m.ID] = counted
			if err := bundle.AddMessages(file.Tag, m); err != nil {
				panic(fmt.Sprintf("phrases %s: %s: %v", name, m.ID, err))
			}
		}
	}
	return v
}

// Languages lists the tags of all embedded languages.
func Languages() []string { return []string{"en", "sw", "hi", "hi-Latn", "es", "fr"} }

// Has says whether a language has a sentence of its own under a key.
func Has(lang, key string) bool {
	v, ok := voices()[lang]
	return ok && v().has(key)
}

func (v voice) has(key string) bool {
	_, plain := v.plain[key]
	_, other := v.other[key]
	return plain || other
}

// Keys lists a language's keys in no order.
func Keys(lang string) []string {
	v, ok := voices()[lang]
	if !ok {
		return nil
	}
	said := v()
	return slices.AppendSeq(slices.Collect(maps.Keys(said.plain)), maps.Keys(said.other))
}

// Words are the words that may be typed for a choice or a command, listed under
// a key that begins with words_; nil where a language lists none.
func Words(lang, key string) []string {
	v, ok := voices()[lang]
	if !ok {
		return nil
	}
	return v().words[key]
}

func list(s string) []string {
	var words []string
	for w := range strings.SplitSeq(s, ",") {
		if w = strings.TrimSpace(w); w != "" {
			words = append(words, w)
		}
	}
	return words
}

// Few reads some plain sentences of a language without keeping the language at
// hand, for what is said once at the start.
func Few(lang string, keys ...string) map[string]string {
	said := map[string]string{}
	for name, body := range bodies(lang) {
		var table map[string]any
		if err := toml.Unmarshal(body, &table); err != nil {
			panic(fmt.Sprintf("phrases %s: %v", name, err))
		}
		for _, key := range keys {
			if s, ok := table[key].(string); ok {
				said[key] = s
			}
		}
	}
	return said
}

// Text is the sentence under a key with its slots filled. The value under "N",
// if there is one, chooses the plural form. A missing key or slot is a mistake
// of ours that the tests of this package find, so Text panics with its name.
func Text(lang, key string, args Args) string {
	v, ok := voices()[lang]
	if !ok {
		v = voices()[Fallback]
	}
	said := v()
	if s, ok := said.plain[key]; ok {
		text, _ := s.Execute(args)
		return text
	}
	config := &i18n.LocalizeConfig{MessageID: key, TemplateData: args, TemplateParser: cutter{}}
	if n, ok := args["N"]; ok && said.other[key] {
		config.PluralCount = n
	}
	text, err := said.localizer.Localize(config)
	if err != nil {
		panic(fmt.Sprintf("phrase %s in %s: %v", key, lang, err))
	}
	return text
}
