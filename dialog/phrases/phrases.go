// Package phrases holds every sentence warmstick says, one folder a language. It
// knows no rules of the trade: it is given a key and values and gives a text.
package phrases

import (
	"embed"
	"fmt"
	"io/fs"
	"iter"
	"path"
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
	localizer *i18n.Localizer
	keys      map[string]bool
	plain     map[string]pieces // those that neither change with a number nor hold a condition
	counted   map[string]bool   // those that change with a number
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
	bundle.RegisterUnmarshalFunc("toml", toml.Unmarshal)
	v := voice{localizer: i18n.NewLocalizer(bundle, tag), keys: map[string]bool{}, plain: map[string]pieces{}, counted: map[string]bool{}, words: map[string][]string{}}
	for name, body := range bodies(tag) {
		file, err := bundle.ParseMessageFileBytes(body, path.Base(path.Dir(name))+"."+tag+".toml")
		if err != nil {
			panic(fmt.Sprintf("phrases %s: %v", name, err))
		}
		for _, m := range file.Messages {
			if v.keys[m.ID] {
				panic(fmt.Sprintf("phrases %s: %s stands twice", name, m.ID))
			}
			v.keys[m.ID] = true
			if strings.HasPrefix(m.ID, "words_") {
				v.words[m.ID] = list(m.Other)
			}
			v.counted[m.ID] = m.One != "" || m.Few != "" || m.Many != ""
			if s, ok := cut(m.Other); ok && !v.counted[m.ID] {
				v.plain[m.ID] = s
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
	return ok && v().keys[key]
}

// Keys lists a language's keys in no order.
func Keys(lang string) []string {
	v, ok := voices()[lang]
	if !ok {
		return nil
	}
	var keys []string
	for k := range v().keys {
		keys = append(keys, k)
	}
	return keys
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
	if n, ok := args["N"]; ok && said.counted[key] {
		config.PluralCount = n
	}
	text, err := said.localizer.Localize(config)
	if err != nil {
		panic(fmt.Sprintf("phrase %s in %s: %v", key, lang, err))
	}
	return text
}
