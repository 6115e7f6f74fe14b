package understand

import (
	"regexp"
	"strings"
)

var (
	joined      = regexp.MustCompile(`(\d)\s*[xX×]\s*`)                 // 6x4x4
	mixedMetres = regexp.MustCompile(`\b(\d)\s?m\s?(\d\d)(?:\s?cm)?\b`) // 1m80, as French writes it
)

// Length is one measured length; Unit is ft, m, cm, in, span, or "" when the text
// gives none.
type Length struct {
	N    float64
	Unit string
}

// Lengths lists the lengths of a text in order: "6 x 4 x 4 ft", "2m by 1.2 by 1.2",
// 6' 4' 4', "futi 6 kwa 4 kwa 4". A unit given once counts for the lengths
// before or after it that have none.
func Lengths(text, lang string) []Length {
	text = mixedMetres.ReplaceAllString(joined.ReplaceAllString(text, "$1 x "), "$1.$2 m")
	text = strings.NewReplacer("′", " ft ", "″", " in ", "''", " in ", "\"", " in ", "×", " x ").Replace(text)
	// a foot mark stands right after a digit
	var b strings.Builder
	var last rune
	for _, r := range text {
		if (r == '\'' || r == '’') && (last >= '0' && last <= '9') {
			b.WriteString(" ft ")
		} else {
			b.WriteRune(r)
		}
		last = r
	}
	g, words := lengthWords(), keysOf(tokens(b.String()))
	out := lengths(g.read(words, languages(lang)...))
	if len(out) == 0 {
		for _, t := range elsewhere(lang) {
			if out = lengths(g.read(words, t)); len(out) > 0 {
				break
			}
		}
	}
	return out
}

func lengths(in []sign) []Length {
	var out []Length
	first := ""
	for i, s := range in {
		if s.sense != "num" {
			continue
		}
		l := Length{N: s.middle()}
		if i+1 < len(in) {
			l.Unit, _ = strings.CutPrefix(in[i+1].sense, "len=")
			if !strings.HasPrefix(in[i+1].sense, "len=") {
				l.Unit = ""
			}
		}
		if l.Unit == "" && i > 0 && strings.HasPrefix(in[i-1].sense, "len=") && (i < 2 || in[i-2].sense != "num") {
			l.Unit = strings.TrimPrefix(in[i-1].sense, "len=")
		}
		if l.Unit != "" && first == "" {
			first = l.Unit
		}
		out = append(out, l)
	}
	unit := ""
	for i := range out {
		if out[i].Unit != "" {
			unit = out[i].Unit
		} else if unit != "" {
			out[i].Unit = unit
		} else {
			out[i].Unit = first
		}
	}
	return out
}
