package understand

import "math"

// Layers reads how far a report of layers goes: "3 layers done", "two more layers" count
// (nth is false), "the third layer", "layer 3", "tabaka la tatu" name the last one (nth is
// true). ok is false when the text has no number beside the word.
func Layers(text, lang string) (n int, nth, ok bool) {
	in := choiceWords().read(keysOf(tokens(text)), languages(lang)...)
	layer := func(i int) bool { return i >= 0 && i < len(in) && in[i].sense == "layer" }
	for i, s := range in {
		if s.sense != "num" && s.sense != "nth" || s.value < 1 || s.high != s.value || s.value != math.Trunc(s.value) {
			continue
		}
		n, before, behind := int(s.value), layer(i-1), layer(i+1) || layer(i+2)
		switch {
		case layer(i-2) && in[i-1].sense == "choice": // "layer number 3", "tabaka la tatu"
			return n, true, true
		case s.sense == "nth" && (before || behind):
			return n, true, true
		case behind: // "3 layers", "3 more layers"
			return n, false, true
		case before: // "layer 3"; in Swahili the number follows what it counts
			return n, lang != "sw", true
		}
	}
	return 0, false, false
}
