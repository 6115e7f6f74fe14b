package understand

import (
	"slices"
	"strings"
	"sync"
	"unicode"

	"golang.org/x/text/unicode/norm"
)

// Normal folds a text to the form in which it is compared: canonical Unicode,
// lower case, Latin accents dropped, digits of both scripts as 0-9, letters
// stretched for feeling ("hoooot") cut to two, one space between words.
// Devanagari signs are kept: without its vowel signs ठंडा is another word.
// Normal(Normal(x)) == Normal(x) for any bytes.
func Normal(text string) string {
	return string(plain(spelt(text)))
}

// spelt is the first half of Normal: everything but the accents.
func spelt(text string) []rune { return spell(make([]rune, 0, len(text)), text) }

// spell is spelt into a buffer. The slower normalising is spared where a text is surely valid
// and composed.
func spell(out []rune, text string) []rune {
	if spelt, sure := letterByLetter(out, text, true); sure {
		return spelt
	}
	spelt, _ := letterByLetter(out, norm.NFC.String(strings.ToValidUTF8(text, " ")), false)
	return spelt
}

// letterByLetter spells a text; where it is to be sure, it stops at the first letter that may not
// be composed.
func letterByLetter(out []rune, text string, sure bool) ([]rune, bool) {
	before := rune(0)
	for _, r := range text {
		if sure && !composed(before, r) {
			return out[:0], false
		}
		before = r
		switch {
		case r >= 'a' && r <= 'z', r == ' ':
		case r >= 0x0958 && r <= 0x095f:
			out = append(out, nuktaBases[r-0x0958])
			r = 0x093c // as canonical composition has it
		case r >= 0x0900 && r < 0x0964:
		case r >= '०' && r <= '९':
			r = '0' + (r - '०')
		case r == '\u200b' || r == '\u200c' || r == '\u200d' || r == '\ufeff' || r == '\u00ad' || r == '\ufe0f' || (r >= 0x1f3fb && r <= 0x1f3ff):
			continue // joiners, variation and skin-tone marks carry no meaning here
		case r == '\n':
			// a new line is a new sentence
		case unicode.IsSpace(r) || unicode.IsControl(r):
			r = ' '
		case r == '’' || r == '‘' || r == '`' || r == '´' || r == 'ʼ':
			r = '\''
		case r == '“' || r == '”' || r == '«' || r == '»':
			r = '"'
		case r == '–' || r == '—' || r == '−':
			r = '-'
		case r == '।' || r == '॥' || r == '…':
			r = '.'
		case r == '？':
			r = '?'
		case r == '！':
			r = '!'
		case r == '，':
			r = ','
		default:
			r = unicode.ToLower(r)
		}
		if r == ' ' && (len(out) == 0 || out[len(out)-1] == ' ') {
			continue
		}
		if n := len(out); n >= 2 && r == out[n-1] && r == out[n-2] && unicode.IsLetter(r) {
			continue
		}
		out = append(out, r)
	}
	for len(out) > 0 && out[len(out)-1] == ' ' {
		out = out[:len(out)-1]
	}
	return out, true
}

// nuktaBases are the letters that क़ ख़ ग़ ज़ ड़ ढ़ फ़ य़ carry their nukta on.
var nuktaBases = [8]rune{'क', 'ख', 'ग', 'ज', 'ड', 'ढ', 'फ', 'य'}

// plain drops accents from Latin letters and leaves every other script alone.
func plain(in []rune) []rune {
	if !accented(in) {
		return in
	}
	if bases := latinBases(); everyRune(in, func(r rune) bool { return r < 0x180 || r >= 0x0900 && r <= 0x097f || r > 0x2000 }) {
		out := make([]rune, 0, len(in)+1)
		for _, r := range in {
			if r < 0x180 {
				b := bases[r]
				if b[1] != 0 {
					out = push(out, rune(b[0]))
					r = rune(b[1])
				} else if b[0] != 0 {
					r = rune(b[0])
				}
			}
			out = push(out, r)
		}
		return out
	}
	var out []rune
	latin := false
	for _, r := range norm.NFD.String(string(in)) {
		if unicode.Is(unicode.Mn, r) && latin {
			continue
		}
		switch r {
		case 'œ':
			out = append(out, 'o')
			r = 'e'
		case 'æ':
			out = append(out, 'a')
			r = 'e'
		case 'ı':
			r = 'i'
		}
		latin = unicode.Is(unicode.Latin, r)
		if latin {
			r = unicode.ToLower(r)
		}
		// dropping an accent may leave three letters in a row
		if n := len(out); n >= 2 && r == out[n-1] && r == out[n-2] && unicode.IsLetter(r) {
			continue
		}
		out = append(out, r)
	}
	return []rune(norm.NFC.String(string(out)))
}

// accented says whether plain may change a text: some of it is neither ASCII nor Devanagari.
func accented(in []rune) bool {
	return slices.ContainsFunc(in, func(r rune) bool { return r > 127 && (r < 0x0900 || r > 0x097f) })
}

// push appends a rune unless it would be the third alike in a row.
func push(out []rune, r rune) []rune {
	if n := len(out); n >= 2 && r == out[n-1] && r == out[n-2] && unicode.IsLetter(r) {
		return out
	}
	return append(out, r)
}

func everyRune(in []rune, ok func(rune) bool) bool {
	for _, r := range in {
		if !ok(r) {
			return false
		}
	}
	return true
}

// composed says whether a letter after another is surely valid and in canonical composed form:
// ASCII, the accented letters of the five languages, Devanagari with a nukta only where no letter
// of its own is made of it, and emoji.
func composed(before, r rune) bool {
	switch {
	case r < 0x80:
		return true
	case r == 0x093c:
		return before >= 0x0915 && before <= 0x0939 && before != 'न' && before != 'र' && before != 'ळ'
	}
	return r >= 0x0900 && r <= 0x097f || r >= 0xa0 && r < 0x180 || r >= 0x200b && r <= 0x200d || r >= 0x2010 && r <= 0x2027 ||
		r >= 0x2600 && r <= 0x27bf || r == 0xfe0f || r >= 0x1f300 && r <= 0x1faff
}

// latinBases gives every letter below U+0180 without its accent; œ and æ are two.
var latinBases = sync.OnceValue(func() *[0x180][2]uint16 {
	var t [0x180][2]uint16
	for r := rune(0xa0); r < 0x180; r++ {
		if !unicode.IsLetter(r) {
			continue
		}
		switch r {
		case 'œ', 'Œ':
			t[r] = [2]uint16{'o', 'e'}
		case 'æ', 'Æ':
			t[r] = [2]uint16{'a', 'e'}
		case 'ı':
			t[r][0] = 'i'
		default:
			base := []rune(norm.NFD.String(string(r)))[0]
			t[r][0] = uint16(unicode.ToLower(base))
		}
	}
	return &t
})

// smooth says whether fold leaves a Devanagari word as it is; it may be wrong only in saying
// no, which costs time and nothing else. Every letter of Devanagari is three bytes, the first
// of them the same.
func smooth(word string) bool {
	if len(word)%3 != 0 {
		return false
	}
	var before rune
	for i := 0; i < len(word); i += 3 {
		if word[i] != 0xe0 {
			return false
		}
		r := rune(word[i+1]&0x3f)<<6 | rune(word[i+2]&0x3f)
		switch r {
		case '\u093c', '\u0901', 'ऩ', 'ऱ', 'ऴ':
			return false
		case '\u094d':
			switch before {
			case 'ण', 'न', 'म', 'ङ', 'ञ':
				return false
			}
		case '\u0940', '\u0947':
			if before == 'य' {
				return false
			}
		}
		before = r
	}
	return true
}

// fold is the key under which a word is filed. On top of Normal it smooths what
// Devanagari writers use as they please: nukta, candrabindu or anusvara, a nasal
// letter or anusvara, ये or ए.
func fold(word string) string {
	if word == "" || word[0] < 0xe0 || smooth(word) {
		return word // no Devanagari, or nothing to be smoothed in it
	}
	in := []rune(word)
	out := make([]rune, 0, len(in))
	for i := 0; i < len(in); i++ {
		switch r := in[i]; {
		case r == '\u093c': // nukta
		case r == 'ऩ':
			out = append(out, 'न')
		case r == 'ऱ':
			out = append(out, 'र')
		case r == 'ऴ':
			out = append(out, 'ळ')
		case r == '\u0901': // candrabindu
			out = append(out, '\u0902')
		case (r == 'ण' || r == 'न' || r == 'म' || r == 'ङ' || r == 'ञ') && i+2 < len(in) && in[i+1] == '\u094d' && in[i+2] != r && in[i+2] != 'य' && in[i+2] != 'ह':
			out = append(out, '\u0902')
			i++
		case r == 'य' && i+1 < len(in) && in[i+1] == '\u0940':
			out = append(out, 'ई')
			i++
		case r == 'य' && i+1 < len(in) && in[i+1] == '\u0947':
			out = append(out, 'ए')
			i++
		default:
			out = append(out, r)
		}
	}
	return string(out)
}

// single squeezes every doubled letter to one ("hott" is "hot"). It is a second
// key only: "feed" and "fed", "gaddi" and "gadi" are told apart by the first.
func single(word string) string {
	double := false
	var last rune
	for _, r := range word {
		if r == last {
			double = true
			break
		}
		last = r
	}
	if !double {
		return word
	}
	var b strings.Builder
	last = 0
	for _, r := range word {
		if r != last {
			b.WriteRune(r)
		}
		last = r
	}
	return b.String()
}
