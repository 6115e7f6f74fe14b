package understand

import (
	"maps"
	"slices"
	"strings"
)

// ear finds the words of one tongue when they are not typed as they are filed: by
// sound, by consonants (Hindi in Latin letters only), by nearness. It is made when
// the first such word comes.
type ear struct {
	sound  map[string][]int32
	bones  map[string][]int32
	near   nearest
	parts  nearest // words of phrases that have no sense of their own
	perils nearest // words that may tell of a danger, alone or in a phrase
	used   []bool  // by word: it is one of the tongue's, alone or in a phrase
}

func (l *lexicon) listen(t tongue) *ear {
	used := make([]bool, len(l.spelled)) // by the tongue, also inside phrases
	var alone, parts, perils []int32     // those with a sense of their own, the others, and of both those of dangers
	feared := make([]bool, len(l.spelled))
	for id, es := range l.senses {
		for _, e := range es {
			if e.tongue == t {
				used[id] = true
				alone = append(alone, int32(id))
				break
			}
		}
		if slices.ContainsFunc(es, func(e entry) bool { return e.tongue == t && fearful(e) }) {
			feared[id] = true
			perils = append(perils, int32(id))
		}
	}
	for _, p := range l.said {
		if p.entry.tongue != t {
			continue
		}
		for _, id := range l.of(&p) {
			if id != gap && !feared[id] && fearful(p.entry) {
				feared[id] = true
				perils = append(perils, id)
			}
			if id != gap && !used[id] {
				used[id] = true
				parts = append(parts, id)
			}
		}
	}
	e := ear{used: used}
	e.near = newNearest(l.spelled, alone)
	e.parts = newNearest(l.spelled, parts)
	e.perils = newNearest(l.spelled, perils)
	if t == en {
		return &e // no rules of sound
	}
	e.sound = l.keyed(used, func(w string) string { return sound(t, w) })
	if t == hiLatn {
		e.bones = l.keyed(used, func(w string) string {
			if k := bones(w); len(k) >= 2 {
				return k
			}
			return ""
		})
	}
	return &e
}

// keyed files the words in use under a second key; "" leaves a word out.
func (l *lexicon) keyed(used []bool, key func(w string) string) map[string][]int32 {
	m := map[string][]int32{}
	var room room[int32]
	for id, w := range l.spelled {
		if !used[id] {
			continue
		}
		k := key(w)
		if k == "" {
			continue
		}
		if ids, ok := m[k]; ok {
			m[k] = append(ids, int32(id))
			continue
		}
		m[k] = room.keep(int32(id))
	}
	return m
}

// likeliest keeps, of words equally many slips away from w, those that a finger makes of
// it most easily.
func (l *lexicon) likeliest(w string, ids []int32) []int32 {
	if len(ids) < 2 {
		return ids
	}
	typed := []rune(w)
	least := 99
	of := make([]int, len(ids))
	for i, id := range ids {
		of[i] = strain(typed, []rune(l.spelled[id]))
		least = min(least, of[i])
	}
	out := ids[:0]
	for i, id := range ids {
		if of[i] == least {
			out = append(out, id)
		}
	}
	return out
}

// slipped says whether a finger makes w of a word by a slip, and not by another letter.
func (l *lexicon) slipped(w string, id int32) bool {
	return strain([]rune(w), []rune(l.spelled[id])) < 3
}

// partly finds the word of a phrase that a mistyped word was meant to be, by a slip of the
// finger only: another letter makes another Swahili verb.
func (r *reader) partly(w string) []int32 {
	if len(w) < 5 {
		return nil
	}
	for _, t := range r.order[:everyone] {
		if r.home(t) {
			if ids, _ := r.lex.ear[t]().parts.find(w, 1, func(id int32) bool { return r.lex.slipped(w, id) }); len(ids) > 0 {
				return slices.Clone(r.lex.likeliest(w, ids))
			}
		}
	}
	return nil
}

// closest keeps a near word only when every equally near word of the same
// language says the same.
func (r *reader) closest(w string) []int32 {
	l := r.lex
	prefix := l.verbPrefix(w)
	var buf [16]int32
	ids, least := buf[:0], reach(w)
	for t := range everyone {
		if !r.home(t) {
			continue
		}
		found, d := l.ear[t]().near.find(w, least, func(id int32) bool {
			for _, e := range l.senses[id] {
				if inDim(e.sense(), "harm") && l.spelled[id][0] != w[0] {
					return false // "rounded" is no wound
				}
			}
			return t != sw || rootNear(w, l.spelled[id], prefix)
		})
		if len(found) > 0 && d < least {
			ids, least = ids[:0], d
		}
		for _, id := range found {
			if !slices.Contains(ids, id) {
				ids = append(ids, id)
			}
		}
	}
	return r.agreed(w, l.likeliest(w, ids))
}

// boned finds the words that lose all their inner vowels in a message: "trnd", "plngs";
// parts are those that stand in phrases only.
func (r *reader) boned(w string) (ids, parts []int32) {
	if len(w) < 4 || w[0] > 127 || strings.ContainsAny(w[1:len(w)-1], "aeiou") || len(bones(w)) < 3 {
		return nil, nil
	}
	for t := range everyone {
		if r.home(t) && t != hi && t != hiLatn {
			e := r.lex.ear[t]()
			ids, parts = append(ids, e.near.boned(w)...), append(parts, e.parts.boned(w)...)
		}
	}
	return r.agreed(w, ids), parts
}

// agreed keeps, of words equally likely to have been meant, those that say the same, or the
// one that answers the question.
func (r *reader) agreed(w string, ids []int32) []int32 {
	l := r.lex
	if len(ids) <= 1 {
		return ids // one word, however many senses it has
	}
	rank := int(tongues)
	for _, id := range ids {
		for _, e := range l.senses[id] {
			rank = min(rank, r.rank[e.tongue])
		}
	}
	slip := l.slipped(w, ids[0]) // then it was hardly a word that means nothing here
	said := map[string][]int32{}
	for _, id := range ids {
		for _, e := range l.senses[id] {
			if r.rank[e.tongue] == rank && e.sense() != "filler" && !(slip && e.sense() == "known") {
				said[e.sense()] = append(said[e.sense()], id)
			}
		}
	}
	var shared []int32
	senses := slices.Sorted(maps.Keys(said))
	for _, sense := range senses {
		out := said[sense]
		if len(said) == 1 || len(out) == len(ids) && len(shared) == 0 {
			shared = out // what all of them may mean
		}
	}
	if len(shared) > 0 {
		return shared
	}
	answers := slices.ContainsFunc(senses, func(sense string) bool { return dimension(sense) == r.asked })
	for _, sense := range senses {
		out := said[sense]
		if !answers && (hurts(sense) || sense == "seen=smoke" || sense == "seen=fire") && (l.slipped(w, out[0]) || bones(w) == w && bones(l.spelled[out[0]]) == w && !slices.ContainsFunc(senses, func(s string) bool { return inDim(s, "material") || inDim(s, "unit") })) {
			return out // a danger in doubt counts
		}
	}
	// several senses: the one that answers the question, if its opposite is not
	// among them
	var best []int32
	n := 0
	for _, sense := range senses {
		out := said[sense]
		if dimension(sense) != "" && (dimension(sense) == r.asked || sense == actOf(r.asked)) {
			best = out
			n++
		}
	}
	if n == 1 {
		return best
	}
	return nil
}
