package understand

import "strings"

// clitic takes the pronoun off a Spanish verb: voltearlo, echándole.
func (l *lexicon) clitic(w string) ([]int32, bool) {
	for n := 0; n < 2; n++ {
		cut := ""
		for _, c := range []string{"los", "las", "les", "nos", "lo", "la", "le", "me", "te", "se"} {
			if r, ok := strings.CutSuffix(w, c); ok && len(r) >= 4 {
				cut = r
				break
			}
		}
		if cut == "" {
			return nil, false
		}
		w = cut
		if id, ok := l.id[w]; ok {
			for _, e := range l.senses[id] {
				if e.tongue == es && (e.tense&(bare|ongoing|order) != 0 || strings.HasSuffix(w, "ndo")) {
					return []int32{id}, true
				}
			}
		}
	}
	return nil, false
}

// graded takes the endings of size and of feeling off a Spanish word: friísimo,
// mojadito, hinchadita.
func (l *lexicon) graded(w string) ([]int32, bool) {
	stem := ""
	for _, end := range []string{"isimo", "isima", "ecito", "ecita", "cito", "cita", "ito", "ita", "illo", "illa", "azo", "aza"} {
		if r, ok := strings.CutSuffix(strings.TrimSuffix(w, "s"), end); ok && len(r) >= 3 {
			stem = r
			break
		}
	}
	if stem == "" {
		return nil, false
	}
	hard := stem // poquito: poco
	if r, ok := strings.CutSuffix(stem, "qu"); ok {
		hard = r + "c"
	} else if r, ok := strings.CutSuffix(stem, "gu"); ok {
		hard = r + "g"
	}
	ends := []string{"o", "a", "e", ""}
	if strings.HasSuffix(strings.TrimSuffix(w, "s"), "a") {
		ends = []string{"a", "o", "e", ""}
	}
	for _, end := range ends {
		id, ok := l.id[hard+end]
		if !ok {
			continue
		}
		for _, e := range l.senses[id] {
			if e.tongue == es && (quality(e.sense()) || !act(e.sense()) && e.tense == 0 && !idle(e.sense())) {
				return []int32{id}, true
			}
		}
	}
	return nil, false
}

// reflexive tells "no se siente" (is not felt) from "no sé" typed without its accent.
func (r *reader) reflexive(s sign) bool {
	if s.tongue != es || s.to != s.from+2 || r.tokens[s.from].text != "no" || r.tokens[s.from+1].raw != "se" || s.to >= len(r.tokens) || r.tokens[s.to].kind != word {
		return false
	}
	switch r.tokens[s.to].text {
	case "si", "que", "q", "cual", "como", "bien", "decir", "decirle", "donde", "cuando", "cuanto", "y", "pero", "la", "el", "por", "porque", "mucho", "nada", "ni", "quien":
		return false
	}
	return true
}
