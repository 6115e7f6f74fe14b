package understand

import (
	"strings"
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
func spelt(text string) []rune {
	text = norm.NFC.String(strings.ToValidUTF8(text, " "))
	out := make([]rune, 0, len(text))
	for _, r := range text {
		switch {
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
	return out
}

// plain drops accents from Latin letters and leaves every other script alone.
func plain(in []rune) []rune {
	ascii := true
	for _, r := range in {
		if r > 127 {
			ascii = false
			break
		}
	}
	if ascii {
		return in
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

// fold is the key under which a word is filed. On top of Normal it smooths what
// Devanagari writers use as they please: nukta, candrabindu or anusvara, a nasal
// letter or anusvara, ये or ए.
func fold(word string) string {
	deva := false
	for _, r := range word {
		if r >= 0x0900 && r <= 0x097f {
			deva = true
			break
		}
	}
	if !deva {
		return word
	}
	in := []rune(norm.NFD.String(word))
	out := make([]rune, 0, len(in))
	for i := 0; i < len(in); i++ {
		switch r := in[i]; {
		case r == '\u093c': // nukta
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
