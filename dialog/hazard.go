package dialog

import (
	_ "embed"
	"slices"
	"strings"
	"sync"
)

// hazards.tsv lists words, in any language, that stop normal talk though no
// report code exists for them: illness, dead animals, human waste, needles, a
// mercury thermometer, a glass bottle.
//
//go:embed hazards.tsv
var hazardRows string

type hazard struct {
	what   string
	grave  bool
	advice []string
	words  []string
}

var hazards = sync.OnceValue(func() []hazard {
	var list []hazard
	for _, r := range rows(hazardRows) {
		h := hazard{what: r[0], grave: r[1] == "yes", advice: strings.Fields(strings.Trim(r[2], "-"))}
		for w := range strings.SplitSeq(r[3], ",") {
			h.words = append(h.words, spaced(w))
		}
		list = append(list, h)
	}
	return list
})

// hazardsIn finds the hazards that a text names.
func hazardsIn(line string) []string {
	said := spaced(line)
	var found []string
	for _, h := range hazards() {
		if slices.ContainsFunc(h.words, func(w string) bool { return strings.Contains(said, w) }) {
			found = append(found, h.what)
		}
	}
	return found
}

func hazardClass(what string) []string {
	for _, h := range hazards() {
		if h.what == what {
			return h.advice
		}
	}
	return nil
}

// seriousPeril says whether an officer has to know at once.
func seriousPeril(what string) bool {
	for _, h := range hazards() {
		if h.what == what {
			return h.grave
		}
	}
	return true
}
