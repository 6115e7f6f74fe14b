package understand

import (
	"slices"
	"strings"
)

// Swahili verbs as they are mistyped: prefixes and root are one long word, so a slip in
// it is looked for by taking it apart again.

// rejoin puts a Swahili verb together that is typed with a hyphen: "nime-sieve".
func (r *reader) rejoin() {
	for i := 0; i+2 < len(r.tokens); i++ {
		a, dash, b := &r.tokens[i], &r.tokens[i+1], &r.tokens[i+2]
		if dash.text != "-" || !dash.glued || !b.glued || a.kind != word || b.kind != word || len(a.text) < 3 {
			continue
		}
		if w := a.text + b.text; r.lex.verbPrefix(w) >= len(a.text) {
			if _, ok := r.lex.swahiliVerb(w); ok {
				a.raw, a.text, a.to = w, w, b.to
				r.tokens = slices.Delete(r.tokens, i+1, i+3)
			}
		}
	}
}

// rejoinTense puts a Swahili verb together whose "already" is typed as a word of its own: "nilisha
// weka", nilishaweka.
func (r *reader) rejoinTense() {
	for i := 0; i+1 < len(r.tokens); i++ {
		a, b := &r.tokens[i], &r.tokens[i+1]
		if a.kind != word || b.kind != word || len(a.text) < 6 || !strings.HasSuffix(a.text, "lisha") && !strings.HasSuffix(a.text, "mesha") || a.text[0] == 'l' {
			continue
		}
		w := a.text + b.text
		if v, ok := r.lex.swahiliVerb(w); ok && v.tense == past {
			a.raw, a.text, a.to = w, w, b.to
			r.tokens = slices.Delete(r.tokens, i+1, i+2)
		}
	}
}

// swahiliSlip allows one letter wrong in a longer Swahili verb.
func (l *lexicon) swahiliSlip(w string) (swVerb, bool) {
	if len(w) < 7 {
		return swVerb{}, false
	}
	if v, ok := l.swahiliVerb(w + "a"); ok && !isVowel(w[len(w)-1]) {
		return v, true // "nimegeuz": the last letter left out
	}
	try := make([]byte, 0, len(w)+1)
	for i := 2; i < len(w); i++ { // a letter too many
		try = append(append(try[:0], w[:i]...), w[i+1:]...)
		if v, ok := l.swahiliVerb(string(try)); ok {
			return v, true
		}
	}
	for i := 2; i < len(w)-1; i++ { // two swapped
		try = append(try[:0], w...)
		try[i], try[i+1] = try[i+1], try[i]
		if v, ok := l.swahiliVerb(string(try)); ok {
			return v, true
		}
	}
	for i := 3; i < len(w); i++ { // a vowel left out, where Swahili has no two consonants
		if !crowded(w[i-1], w[i]) {
			continue
		}
		for _, vowel := range []byte("aeiou") {
			try = append(append(append(try[:0], w[:i]...), vowel), w[i:]...)
			if v, ok := l.swahiliVerb(string(try)); ok {
				return v, true
			}
		}
	}
	return swVerb{}, false
}

// textSwahili writes out what is shortened in messages: x for s or z ("nimetikixa",
// "nimegeuxa"), and the vowel of the subject left out ("lmekauka", "nmegeuza").
func textSwahili(w, x string) string {
	w = strings.ReplaceAll(w, "x", x)
	if rest, c := strings.CutPrefix(w, "c"); c && !strings.HasPrefix(rest, "h") {
		w = "si" + rest // "cjaona"
	}
	if len(w) > 5 && (w[1:3] == "me" || w[1:3] == "li" || w[1:3] == "ta" || w[1:3] == "na") {
		for _, subject := range [...]string{"ni", "li", "tu", "wa", "zi", "ki", "vi", "ya"} {
			if subject[0] == w[0] {
				return subject + w[1:]
			}
		}
	}
	return w
}

// crowded says whether two consonants never stand side by side in a Swahili word.
func crowded(a, b byte) bool {
	if isVowel(a) || isVowel(b) {
		return false
	}
	switch b {
	case 'w', 'y', 'h':
		return false
	}
	return a != 'm' && a != 'n'
}

// bonePrefixes are the beginnings of Swahili verbs as they are typed without their vowels.
var bonePrefixes = [...][2]string{{"nm", "nime"}, {"tm", "tume"}, {"wm", "wame"}, {"nl", "nili"}, {"tl", "tuli"}, {"lm", "lime"}, {"km", "kime"},
	{"zm", "zime"}, {"nt", "nita"}, {"tt", "tuta"}, {"sj", "sija"}, {"hj", "haja"}, {"am", "ame"}, {"al", "ali"}, {"im", "ime"}}

// swahiliBones finds the verb that was typed without its inner vowels: "nmgza", nimegeuza. Its
// root is an act, and no other act has the same consonants.
func (l *lexicon) swahiliBones(w string) (v swVerb, ok bool) {
	if len(w) < 5 || w[len(w)-1] != 'a' {
		return v, false
	}
	typed := w[:len(w)-1]
	w = bones(typed) + "a" // "nmetksa": a vowel may have stayed before the root
	if len(w) < 5 {
		return v, false
	}
	for _, p := range bonePrefixes {
		rest, has := strings.CutPrefix(w, p[0])
		if !has || len(rest) < 3 {
			continue
		}
		bone := rest[:len(rest)-1]
		if !strings.HasSuffix(typed, bone) || len(bone) < 3 && typed+"a" != w {
			continue
		}
		for root, es := range l.roots {
			if !act(es[0].sense()) || bones(root) != bone {
				continue
			}
			found, good := l.swahiliVerb(p[1] + root + "a")
			switch {
			case !good:
			case ok && found.entries[0].sense() != v.entries[0].sense():
				return swVerb{}, false
			default:
				v, ok = found, true
			}
		}
	}
	return v, ok
}
