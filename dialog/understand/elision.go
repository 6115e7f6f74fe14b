package understand

import (
	"slices"
	"strings"
	"unicode/utf8"
)

// unelided parts French words that phones run together: "jcomprends", "jmesui coupé",
// "leau". Only what has no sense as it stands is parted, and only into known words.
func (r *reader) unelided() {
	if r.lang != "fr" {
		return
	}
	for i := 0; i < len(r.tokens); i++ {
		t := r.tokens[i]
		parts := r.lex.runTogether(&t)
		if parts == nil {
			continue
		}
		cut := make([]token, len(parts))
		for k, p := range parts {
			cut[k] = t
			cut[k].raw, cut[k].text = p, p
			if k > 0 {
				cut[k].from = min(cut[k-1].from+utf8.RuneCountInString(parts[k-1]), t.to)
				cut[k].glued = false
			}
		}
		r.tokens = slices.Replace(r.tokens, i, i+1, cut...)
		i += len(parts) - 1
	}
}

// runTogether gives the words a token was made of, nil for one that stands by itself.
func (l *lexicon) runTogether(t *token) []string {
	switch {
	case t.kind != word:
		return nil
	case t.raw == "jé" || t.raw == "jè":
		return []string{"j", "ai"}
	case len(t.text) < 3 || len(t.text) > 20 || strings.IndexByte("jqldn", t.text[0]) < 0 || known(t.text) && (t.text[0] != 'j' || l.french(t.text)):
		return nil
	}
	return l.joinedFrench(t.text)
}

// joinedFrench gives the words that were run together, nil for none.
func (l *lexicon) joinedFrench(w string) []string {
	if rest, has := strings.CutPrefix(w, "j"); has {
		if verb := afterJe(rest); l.french(verb) {
			return []string{"je", verb}
		}
		for _, whom := range [...]string{"me", "te", "les", "leur", "lui", "le", "la", "l", "vous", "en", "y"} {
			if rest == whom {
				return []string{"je", whom}
			}
			if verb, has := strings.CutPrefix(rest, whom); has && l.french(afterJe(verb)) {
				return []string{"je", whom, afterJe(verb)}
			}
		}
		return nil
	}
	for _, short := range [...]string{"qu", "l", "d", "n"} {
		rest, has := strings.CutPrefix(w, short)
		if has && len(rest) > 3 && (isVowel(rest[0]) || rest[0] == 'h') && l.french(rest) {
			return []string{short, rest}
		}
	}
	return nil
}

// french says whether the French tables hold a word, alone or in a phrase after "je".
func (l *lexicon) french(w string) bool {
	id, ok := l.id[w]
	return ok && len(w) > 1 && (slices.ContainsFunc(l.senses[id], func(e entry) bool { return e.tongue == fr }) || oneOf(w, "suis", "peux", "ai", "fais", "comprends", "comprend"))
}

// afterJe writes out a verb as messages shorten it after "je".
func afterJe(verb string) string {
	switch verb {
	case "sui":
		return "suis"
	case "peu", "pe", "peut":
		return "peux"
	case "ve", "vai":
		return "vais"
	case "e", "a":
		return "ai"
	case "fe", "fai":
		return "fais"
	case "se", "sai":
		return "sais"
	case "voi":
		return "vois"
	case "doi":
		return "dois"
	}
	return verb
}
