package dialog

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strconv"
	"strings"
	"testing"
	"text/tabwriter"
	"time"
	"unicode/utf8"

	"github.com/stretchr/testify/require"

	"warmstick/dialog/phrases"
)

// typed is how a farmer of each language types what has no button. The words
// were written from memory and not yet read by native speakers.
var typed = map[string]map[string]string{
	"en":      {"language": "English", "name": "Amina", "place": "Nakuru", "have": "20 baskets cow dung, 40 bags dry leaves, 20 baskets grass", "passed": "20 basins", "worms_kg": "2 kg", "size": "6 x 4 x 4 ft", "text": "my heap looks strange"},
	"sw":      {"language": "Kiswahili", "name": "Amina", "place": "Nakuru", "have": "vikapu 20 vya samadi ya ngombe, gunia 40 za majani makavu, vikapu 20 vya nyasi", "passed": "beseni 20", "worms_kg": "kilo 2", "size": "futi 6 kwa 4 kwa 4", "text": "lundo langu linaonekana vibaya"},
	"hi":      {"language": "हिन्दी", "name": "अमीना", "place": "पटना", "have": "20 टोकरी गोबर, 40 बोरी सूखे पत्ते, 20 टोकरी घास", "passed": "20 तसला", "worms_kg": "2 किलो", "size": "6 x 4 x 4 फुट", "text": "मेरा ढेर अजीब दिखता है"},
	"hi-Latn": {"language": "hindi", "name": "Amina", "place": "Patna", "have": "20 tokri gobar, 40 bori sukhe patte, 20 tokri ghas", "passed": "20 tasla", "worms_kg": "2 kilo", "size": "6 x 4 x 4 foot", "text": "mera dher ajeeb dikhta hai"},
	"es":      {"language": "Español", "name": "Amina", "place": "Oaxaca", "have": "20 canastas de estiércol de vaca, 40 sacos de hojas secas, 20 canastas de pasto", "passed": "20 palanganas", "worms_kg": "2 kilos", "size": "6 x 4 x 4 pies", "text": "mi montón se ve raro"},
	"fr":      {"language": "Français", "name": "Amina", "place": "Bamako", "have": "20 paniers de bouse de vache, 40 sacs de feuilles sèches, 20 paniers d'herbe", "passed": "20 bassines", "worms_kg": "2 kilos", "size": "6 x 4 x 4 pieds", "text": "mon tas a l'air bizarre"},
}

// rubric collects what the checks over all talks say, one line a check and language.
type rubric struct {
	checks map[string]*verdict
	order  []string
}

type verdict struct {
	passes int
	first  string // the first failure
}

func (r *rubric) see(lang, check string, ok bool, what string) {
	key := check + "\t" + lang
	v := r.checks[key]
	if v == nil {
		v = &verdict{}
		r.checks[key] = v
		r.order = append(r.order, key)
	}
	if ok {
		v.passes++
	} else if v.first == "" {
		v.first = what
	}
}

// everyWord holds one letter to a farmer against the rubric.
func (r *rubric) letter(v *village, lang, before string, l Letter) {
	safety := slices.ContainsFunc(l.Advice, func(a string) bool { return strings.HasSuffix(a, "_care") || a == "smoke_emergency" })
	r.see(lang, "at most 300 characters, safety 600", utf8.RuneCountInString(l.Text) <= letterLimit || safety && utf8.RuneCountInString(l.Text) <= safetyLimit, l.Text)
	r.see(lang, "at most 8 lines", strings.Count(l.Text, "\n") < 8, l.Text)
	r.see(lang, "one question, at the end", strings.Count(l.Text, "?") <= 1, l.Text)
	r.see(lang, "at most five choices", len(l.Buttons) <= 5, l.Text)
	r.see(lang, "never the same twice running", l.Text != before, l.Text)
	r.see(lang, "no slot left open", !strings.Contains(l.Text, "{{") && !strings.Contains(l.Text, "<no value>"), l.Text)
	r.see(lang, "no sign needed to understand it", !strings.ContainsFunc(l.Text, func(c rune) bool { return c > 0x2000 && c != '\u200d' && c != '\u200c' && c != '’' }), l.Text)
	if l.Kind == Remind {
		local := v.now.In(v.states[1].Person.Zone())
		r.see(lang, "nothing unprompted at night", local.Hour() >= 6 && local.Hour() < 20, local.String())
	}
}

// Whole lives in every language: by number, by label and by typed words, with
// some noise; everything said is held against the rubric.
func TestRubric(t *testing.T) {
	r := &rubric{checks: map[string]*verdict{}}
	for _, lang := range phrases.Languages() {
		if !spoken(lang) {
			t.Logf("%s is not complete yet", lang)
			continue
		}
		for seed := range uint64(12) {
			r.live(t, lang, seed)
		}
	}
	var b strings.Builder
	w := tabwriter.NewWriter(&b, 0, 0, 2, ' ', 0)
	fmt.Fprintln(w, "check\tlanguage\tpasses\tfirst failure")
	slices.Sort(r.order)
	for _, key := range r.order {
		v := r.checks[key]
		fmt.Fprintf(w, "%s\t%d\t%s\n", key, v.passes, strings.ReplaceAll(v.first, "\n", " / "))
		if v.first != "" {
			t.Errorf("%s: %s", strings.ReplaceAll(key, "\t", ", "), v.first)
		}
	}
	w.Flush()
	t.Log("\n" + b.String())
}

func spoken(lang string) bool {
	for _, key := range phrases.Keys("en") {
		if !strings.HasPrefix(key, "words_") && !phrases.Has(lang, key) {
			return false
		}
	}
	return true
}

func (r *rubric) live(t *testing.T, lang string, seed uint64) {
	v := newVillage(t, "2026-03-02T09:00:00+03:00")
	dice := rand.New(rand.NewPCG(seed, 11))
	before := ""
	line := ""
	v.check = func(to PersonID, l Letter) {
		if to != 1 {
			return
		}
		was := before
		if line == "" || v.now.Sub(v.talks[1].SaidAt) > time.Hour {
			was = ""
		}
		r.letter(v, lang, was, l)
		before = l.Text
	}
	lastLine := ""
	say := func(s string) {
		line = s
		if s == lastLine {
			before = "" // the person's own line was the same
		}
		lastLine = s
		n := len(v.heard[1])
		v.says(1, s)
		line = ""
		r.see(lang, "every message is answered", len(v.heard[1]) > n, s)
	}
	say("hello")
	reached := map[Stage]bool{}
	for range 140 {
		for range 25 {
			q := v.talks[1].Open
			if q.ID == "" {
				break
			}
			say(r.choose(v, q, lang, dice))
			for _, h := range v.states[1].Heaps {
				reached[h.Stage] = true
			}
		}
		v.wait(20 * time.Hour)
		if dice.IntN(15) == 0 {
			say([]string{"help", "status", "menu", "why", "undo", "next"}[dice.IntN(6)])
		}
	}
	r.see(lang, "a heap is built", reached[Heating] || reached[ColdDung] || reached[Cooling], fmt.Sprint(reached))
}

// choose answers a question as this language's farmer: mostly sensible.
func (r *rubric) choose(v *village, q Question, lang string, dice *rand.Rand) string {
	if s, ok := typed[lang][q.ID]; ok && (len(q.Choices) == 0 || dice.IntN(2) == 0) {
		return s
	}
	if asks := asksOf(q); asks == "text" {
		return typed[lang]["text"]
	}
	if q.ID == "language" {
		return typed[lang]["language"]
	}
	if q.ID == "delete" {
		return "1"
	}
	if len(q.Choices) == 0 {
		return typed[lang]["name"]
	}
	i := 0
	if dice.IntN(4) == 0 {
		i = dice.IntN(len(q.Choices))
	}
	if strings.HasPrefix(q.Choices[i].Means, "word=delete") || strings.HasPrefix(q.Choices[i].Means, "word=language") {
		i = 0
	}
	if strings.HasPrefix(q.Choices[i].Means, "word=language") {
		return "status"
	}
	if dice.IntN(2) == 0 {
		return q.Choices[i].Label
	}
	if lang == "hi" {
		return string(rune('०' + i + 1))
	}
	return strconv.Itoa(i + 1)
}

// A label typed out is the same as its button, in every language.
func TestLabelsAreUnderstood(t *testing.T) {
	for _, lang := range phrases.Languages() {
		if !spoken(lang) {
			continue
		}
		v := newVillage(t, "2026-03-02T09:00:00+03:00")
		v.says(1, "hello")
		v.says(1, typed[lang]["language"])
		q := v.talks[1].Open
		require.Equal(t, "consent", asksOf(q), lang)
		v.says(1, q.Choices[0].Label)
		require.Equal(t, "name", asksOf(v.talks[1].Open), lang)
	}
}
