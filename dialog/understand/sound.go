package understand

import (
	"cmp"
	"slices"
	"strings"
)

// sound gives the key under which words of a tongue that sound alike meet. It is
// tried only for a word that no table has as it stands.
func sound(t tongue, w string) string {
	if t == hi {
		return devaSound(w)
	}
	if len(w) < 3 || w[0] > 127 {
		return ""
	}
	switch t {
	case hiLatn:
		return hindiSound(w)
	case es:
		return rewrite(w, spanishSounds)
	case fr:
		k := rewrite(w, frenchSounds)
		for len(k) > 2 && strings.ContainsAny(k[len(k)-1:], "estdxz") {
			k = k[:len(k)-1]
		}
		return k
	case sw:
		return rewrite(w, swahiliSounds)
	}
	return ""
}

// Heard is a text in its normal form, each word as it sounds in a language ("kaldo" and
// "caldo" are one). English words stay as they are.
func Heard(text, lang string) string {
	t := languages(lang)[0]
	words := strings.Fields(Normal(text))
	for i, w := range words {
		words[i] = cmp.Or(sound(t, fold(string(plain([]rune(w))))), w)
	}
	return strings.Join(words, " ")
}

var (
	hindiSounds = newRules([]string{"chh", "ch", "aa", "a", "ee", "i", "ii", "i", "oo", "u", "uu", "u", "ou", "o", "w", "v", "z", "j",
		"ph", "f", "q", "k", "ck", "k", "x", "ks", "iy", "i", "ay", "ai", "ey", "e", "ei", "e", "y", "y", "sh", "s", "ae", "ai", "gy", "gai", "rh", "rah"})
	spanishSounds = newRules([]string{"qu", "k", "ch", "ch", "ce", "se", "ci", "si", "c", "k", "h", "", "v", "b", "z", "s", "ll", "y", "ge", "je", "gi", "ji",
		"rr", "r", "x", "s", "ñ", "n", "gue", "ge", "gui", "gi"})
	frenchSounds = newRules([]string{"eau", "o", "aux", "o", "au", "o", "ai", "e", "ei", "e", "er", "e", "ez", "e", "et", "e", "ph", "f", "qu", "k", "q", "k",
		"ss", "s", "ce", "se", "ci", "si", "ch", "sh", "c", "k", "th", "t", "y", "i", "oi", "oi", "wa", "oi", "ll", "l", "nn", "n", "mm", "m",
		"tt", "t", "rr", "r", "pp", "p", "ff", "f", "z", "s", "h", ""})
	swahiliSounds = newRules([]string{"ll", "l", "r", "l", "dh", "z", "th", "s", "gh", "g", "kh", "h", "aa", "a", "ee", "e", "ii", "i", "oo", "o", "uu", "u", "y", "y", "h", ""})
)

// rules are pairs of what is written and what is heard, filed by first letter, the
// longest first.
type rules [256][][2]string

func newRules(pairs []string) *rules {
	var r rules
	for p := 0; p < len(pairs); p += 2 {
		c := pairs[p][0]
		at := 0
		for at < len(r[c]) && len(r[c][at][0]) >= len(pairs[p]) {
			at++
		}
		r[c] = slices.Insert(r[c], at, [2]string{pairs[p], pairs[p+1]})
	}
	return &r
}

// rewrite replaces from left to right, the longest pair that fits first.
func rewrite(w string, r *rules) string {
	var buf [64]byte
	b := buf[:0]
	for i := 0; i < len(w); {
		fits := false
		for _, p := range r[w[i]] {
			if strings.HasPrefix(w[i:], p[0]) {
				b = append(b, p[1]...)
				i += len(p[0])
				fits = true
				break
			}
		}
		if !fits {
			b = append(b, w[i])
			i++
		}
	}
	return single(string(b))
}

// hindiSound: vowels by quality, not length; short a inside a word is not heard
// the same by all ("palatna", "paltna"), so it is left out. Between two like
// consonants it is heard: "banana", to make, is not "bana", made.
func hindiSound(w string) string {
	k := rewrite(w, hindiSounds)
	if len(k) > 3 && strings.HasSuffix(k, "n") && isVowel(k[len(k)-2]) {
		k = k[:len(k)-1] // nahin, nahi
	}
	if len(k) <= 3 {
		return k
	}
	var b strings.Builder
	for i := 0; i < len(k); i++ {
		if k[i] == 'a' && i > 0 && i < len(k)-1 && !isVowel(k[i-1]) && !isVowel(k[i+1]) && k[i-1] != k[i+1] {
			continue
		}
		b.WriteByte(k[i])
	}
	return single(b.String())
}

// devaSound is a Devanagari word without what is heard alike: long and short i and u,
// the signs for a nasal, a stop and an aspirated vowel, three letters for s, and the breath after t and d. "अभि" is
// "अभी", "केचुआ" is "केंचुआ".
func devaSound(w string) string {
	if w == "" || w[0] < 0xe0 {
		return ""
	}
	return devaSame.Replace(w)
}

var devaSame = strings.NewReplacer("ि", "ी", "ु", "ू", "ं", "", "\u0901", "", "\u0903", "", "\u094d", "", "\u093c", "",
	"श", "स", "ष", "स", "ण", "न", "ठ", "ट", "ढ", "ड", "इ", "ई", "उ", "ऊ", "व", "ब", "ये", "ए", "यी", "ई", "ै", "े", "ौ", "ो")

func isVowel(c byte) bool { return strings.IndexByte("aeiou", c) >= 0 }

// bones is the consonants of a romanised Hindi word, for the phone spelling that
// leaves every vowel out: "bhut grm h".
func bones(w string) string {
	var b strings.Builder
	for i := 0; i < len(w); i++ {
		if !isVowel(w[i]) && w[i] < 128 {
			b.WriteByte(w[i])
		}
	}
	return b.String()
}

// romanise writes a Devanagari word in Latin letters the way phones are typed in
// Hindi: पलटा palta, गरम garam, ठंडा thanda. Unwritten a is dropped at the end
// and between two open syllables.
func romanise(w string) string {
	type unit struct {
		c string
		v string
	}
	var us []unit
	nasal := func() {
		if n := len(us); n > 0 {
			us[n-1].v += "n"
		}
	}
	rs := []rune(w)
	for _, r := range rs {
		if c, ok := devaConsonant[r]; ok {
			us = append(us, unit{c, "@"})
			continue
		}
		if v, ok := devaVowel[r]; ok {
			us = append(us, unit{"", v})
			continue
		}
		if v, ok := devaSign[r]; ok && len(us) > 0 {
			us[len(us)-1].v = v
			continue
		}
		switch r {
		case '\u094d':
			if len(us) > 0 {
				us[len(us)-1].v = ""
			}
		case '\u0902', '\u0901':
			nasal()
		case '\u0903':
		default:
			us = append(us, unit{string(r), ""})
		}
	}
	if n := len(us); n > 1 && us[n-1].v == "@" {
		us[n-1].v = ""
	}
	for i := len(us) - 2; i > 0; i-- {
		next := us[i+1]
		if us[i].v == "@" && next.c != "" && next.v != "" && us[i-1].v != "" && !strings.HasSuffix(us[i-1].v, "n") {
			us[i].v = ""
		}
	}
	var b strings.Builder
	for _, u := range us {
		b.WriteString(u.c)
		b.WriteString(strings.ReplaceAll(u.v, "@", "a"))
	}
	return b.String()
}

var (
	devaConsonant = map[rune]string{'क': "k", 'ख': "kh", 'ग': "g", 'घ': "gh", 'ङ': "n", 'च': "ch", 'छ': "ch", 'ज': "j", 'झ': "jh", 'ञ': "n",
		'ट': "t", 'ठ': "th", 'ड': "d", 'ढ': "dh", 'ण': "n", 'त': "t", 'थ': "th", 'द': "d", 'ध': "dh", 'न': "n", 'प': "p", 'फ': "f", 'ब': "b",
		'भ': "bh", 'म': "m", 'य': "y", 'र': "r", 'ल': "l", 'व': "v", 'श': "sh", 'ष': "sh", 'स': "s", 'ह': "h", 'ळ': "l"}
	devaVowel = map[rune]string{'अ': "a", 'आ': "a", 'इ': "i", 'ई': "i", 'उ': "u", 'ऊ': "u", 'ए': "e", 'ऐ': "ai", 'ओ': "o", 'औ': "au", 'ऋ': "ri", 'ऑ': "o"}
	devaSign  = map[rune]string{'ा': "a", 'ि': "i", 'ी': "i", 'ु': "u", 'ू': "u", 'े': "e", 'ै': "ai", 'ो': "o", 'ौ': "au", 'ृ': "ri", 'ॉ': "o", 'ॅ': "e"}
)
