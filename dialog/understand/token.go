package understand

import (
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

type kind uint8

const (
	word kind = iota
	number
	mark  // , . ! ? ; : newline and the like
	glyph // emoji
)

// token is one piece of the text. raw keeps accents, text does not.
type token struct {
	kind   kind
	glued  bool // no space before it
	number bool // typed as digits
	raw    string
	text   string
	value  float64
	from   int // rune offsets in the spelt text
	to     int
}

// longest is how many runes of a message are read: a reply is short, and what
// comes after is somebody's forwarded news. Common practice, no source.
const longest = 4000

// mostTokens is as many as 4,000 letters of words make.
const mostTokens = 700

func tokens(text string) []token { return cut(nil, spelt(text), new(words)) }

// cut appends the tokens of a spelt text.
func cut(out []token, in []rune, text *words) []token {
	in = in[:min(len(in), longest)]
	out = slices.Grow(out, len(in)/4+2)
	text.set(in)
	for i := 0; i < len(in) && len(out) < mostTokens; {
		r := in[i]
		start := i
		switch {
		case r == ' ':
			i++
			continue
		case r >= '0' && r <= '9':
			i = digits(in, i)
			t := token{kind: number, number: true, raw: text.of(start, i), from: start, to: i}
			t.text = t.raw
			t.value = figure(t.raw)
			// "2main" and "h0t" are words; "140f", "3kg", "7h30" are not.
			if w := leetEnd(in, start); w > i && asWord(string(plain(in[start:w]))) {
				t = token{kind: word, raw: string(in[start:w]), from: start, to: w}
				t.text = string(plain(in[start:w]))
				i = w
			}
			out = append(out, t)
		case r == '½' || r == '¼' || r == '¾':
			v := map[rune]float64{'½': 0.5, '¼': 0.25, '¾': 0.75}[r]
			i++
			if n := len(out); n > 0 && out[n-1].number && out[n-1].to == start {
				out[n-1].value += v
				out[n-1].to = i
				continue
			}
			out = append(out, token{kind: number, number: true, raw: string(r), text: string(r), value: v, from: start, to: i})
		case letter(r):
			for i < len(in) && letter(in[i]) {
				i++
			}
			leet := false
			if j := leetEnd(in, i); j > i && (known(string(plain(in[start:j]))) || !(known(string(plain(in[start:i]))) && digits(in, i) >= j)) {
				i, leet = j, true // "day5" is two tokens, "fri0" one
			}
			if i+1 < len(in) && in[i] == '\'' && letter(in[i+1]) && !elided(string(in[start:i])) {
				// didn't, it's, ng'ombe: one word without the apostrophe
				rest := i + 1
				for rest < len(in) && letter(in[rest]) {
					rest++
				}
				joined := append(append([]rune{}, in[start:i]...), in[i+1:rest]...)
				i = rest
				w := string(joined)
				if w == "were" {
					w = "we" // "we're turning it" asks nothing
				}
				out = append(out, token{kind: word, raw: w, text: string(plain([]rune(w))), from: start, to: i})
				continue
			}
			t := token{kind: word, raw: text.of(start, i), from: start, to: i}
			t.text = t.raw
			if accented(in[start:i]) {
				t.text = string(plain(in[start:i]))
			}
			if leet && !known(t.text) {
				t.raw = unleet(t.text)
				t.text = t.raw
			}
			out = append(out, t)
		case r == '\'' || r == '"' || r == '*' || r == '_':
			i++
			continue
		default:
			i++
			k := mark
			if r > 0x2000 && r != '€' || r == '°' {
				k = glyph
			}
			if r == '°' || r == '€' || r == '$' || r == '₹' || r == '%' {
				k = word
			}
			one := text.of(start, i)
			out = append(out, token{kind: k, raw: one, text: one, from: start, to: i})
		}
		if n := len(out); n > 1 {
			out[n-1].glued = out[n-1].from == out[n-2].to
		}
	}
	return out
}

// words cuts pieces out of a text by the places of their runes.
type words struct {
	text string
	at   []int32 // where each rune begins, in bytes, and the end
	room []byte
}

func (w *words) set(in []rune) {
	w.at, w.room = slices.Grow(w.at[:0], len(in)+1), slices.Grow(w.room[:0], 3*len(in))
	for _, r := range in {
		w.at = append(w.at, int32(len(w.room)))
		w.room = utf8.AppendRune(w.room, r)
	}
	w.at = append(w.at, int32(len(w.room)))
	w.text = string(w.room)
}

func (w *words) of(from, to int) string { return w.text[w.at[from]:w.at[to]] }

// elided says whether the letters before an apostrophe are a French word cut
// short: j'ai, l'eau, qu'il.
func elided(s string) bool {
	switch s {
	case "j", "l", "d", "n", "c", "s", "m", "t", "qu", "jusqu", "lorsqu", "puisqu", "quelqu":
		return true
	}
	return false
}

func letter(r rune) bool {
	if r < 0x80 {
		return r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z'
	}
	if r >= 0x0900 && r < 0x0964 {
		return true // the letters and signs of Devanagari
	}
	return unicode.IsLetter(r) || unicode.Is(unicode.Mn, r) || unicode.Is(unicode.Mc, r)
}

// digits returns the end of a figure: 12, 2.5, 2,5, 1,000, 1/2.
func digits(in []rune, i int) int {
	for i < len(in) {
		r := in[i]
		if r >= '0' && r <= '9' {
			i++
			continue
		}
		if (r == '.' || r == ',' || r == '/') && i+1 < len(in) && in[i+1] >= '0' && in[i+1] <= '9' {
			i++
			continue
		}
		break
	}
	return i
}

func figure(s string) float64 {
	if a, b, ok := strings.Cut(s, "/"); ok {
		x, y := figure(a), figure(b)
		if y != 0 && !strings.Contains(b, "/") {
			return x / y
		}
		return x
	}
	if i := strings.LastIndexByte(s, ','); i >= 0 {
		if len(s)-i-1 == 3 && !strings.Contains(s, ".") {
			s = strings.ReplaceAll(s, ",", "")
		} else {
			s = strings.ReplaceAll(s, ",", ".")
		}
	}
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		return 0
	}
	return v
}

func leetEnd(in []rune, i int) int {
	for i < len(in) && (letter(in[i]) || in[i] >= '0' && in[i] <= '9') {
		i++
	}
	return i
}

func known(s string) bool {
	_, ok := tables().id[fold(s)]
	return ok
}

// asWord says whether a token that begins with a digit is filed as a word ("2main").
func asWord(s string) bool {
	return strings.ContainsAny(s, "0123456789") && known(s)
}

// unleet reads digits typed for letters inside a word: fri0, h0t, c4liente.
func unleet(s string) string {
	return strings.Map(func(r rune) rune {
		switch r {
		case '0':
			return 'o'
		case '1':
			return 'i'
		case '3':
			return 'e'
		case '4':
			return 'a'
		case '5':
			return 's'
		case '7':
			return 't'
		}
		return r
	}, s)
}
