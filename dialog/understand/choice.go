package understand

import "math"

// Nth reads a text that names one of the choices shown by its place in the list and says
// nothing else: "the second one", "number 3", "option two", "la primera", "दूसरा वाला",
// "namba mbili". The place counts from 1; ok is false when the text names none.
func Nth(text, lang string) (n int, ok bool) {
	for _, s := range choiceWords().read(keysOf(tokens(text)), languages(lang)...) {
		switch {
		case s.sense == "choice", oneOf(s.text, ".", ",", ")", "(", "#", "°", "º"):
		case oneOf(s.sense, "nth", "num") && n == 0 && s.high == s.value && s.value == math.Trunc(s.value):
			n = int(s.value)
		default:
			return 0, false
		}
	}
	return n, n > 0
}
