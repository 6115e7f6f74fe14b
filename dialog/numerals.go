package dialog

import (
	"regexp"
	"strings"
)

// Numerals: who writes १२ reads १२. A farmer who is answered in Devanagari letters
// gets the digits that they last used themselves; codes, which mix digits with
// letters, stay as they must be typed.

// westernZero and devanagariZero begin the ten digits of each script in Unicode.
const (
	westernZero    = '0'
	devanagariZero = '०'
)

func digitOf(r, zero rune) bool { return r >= zero && r < zero+10 }

// keepNumerals notes which digits the person writes, where they have the choice.
func (x *exchange) keepNumerals(line string) {
	if x.lang() != "hi" || x.tongue != "" {
		return
	}
	own := strings.ContainsFunc(line, func(r rune) bool { return digitOf(r, devanagariZero) })
	if western := strings.ContainsFunc(line, func(r rune) bool { return digitOf(r, westernZero) }); own == western {
		return
	}
	if own != x.s.Person.Nagari {
		x.remark(0, NumeralsSet{Nagari: own})
	}
}

// inNumerals puts a letter into the digits its reader uses, and French decimals behind a
// comma.
func inNumerals(l *Letter, to Person) {
	var write func(string) string
	switch {
	case to.Nagari && to.Lang == "hi":
		write = devanagari
	case to.Lang == "fr":
		write = func(s string) string { return decimalPoint.ReplaceAllString(s, "$1,$2") }
	default:
		return
	}
	l.Text = write(l.Text)
	for i := range l.Buttons {
		l.Buttons[i].Label = write(l.Buttons[i].Label)
	}
}

var decimalPoint = regexp.MustCompile(`(\d)\.(\d)`)

// devanagari changes the digits of a text, word by word; a word with Latin letters
// in it keeps its own.
func devanagari(s string) string {
	var b strings.Builder
	for len(s) > 0 {
		end := strings.IndexAny(s, " \n")
		if end < 0 {
			end = len(s)
		} else {
			end++
		}
		word := s[:end]
		s = s[end:]
		if strings.ContainsFunc(word, func(r rune) bool { return r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' }) {
			b.WriteString(word)
			continue
		}
		for _, r := range word {
			if digitOf(r, westernZero) {
				r += devanagariZero - westernZero
			}
			b.WriteRune(r)
		}
	}
	return b.String()
}
