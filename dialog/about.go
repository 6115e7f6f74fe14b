package dialog

import (
	"slices"
	"strconv"
	"strings"
	"unicode"

	"warmstick/dialog/phrases"
)

// About which heap: a fact goes to the one heap it can be about; where two fit,
// the farmer is asked.

// aboutHeap finds the one heap that the facts can be about.
func (x *exchange) aboutHeap(list []string) (HeapID, bool) {
	active := x.s.Active()
	if len(active) == 1 {
		return active[0].ID, true
	}
	var fit []HeapID
	for _, h := range active {
		if !slices.ContainsFunc(list, func(c string) bool { return !suits(h, c) }) {
			fit = append(fit, h.ID)
		}
	}
	if len(fit) == 1 {
		return fit[0], true
	}
	if asked := x.was.Talk.Open.Heap; asked != 0 && (len(fit) == 0 || slices.Contains(fit, asked)) {
		if h, ok := x.s.Heap(asked); ok && h.Active() {
			return asked, true
		}
	}
	return 0, false
}

// namedHeap reads "heap 2" inside a message; the phrase words_heap lists what a
// heap is called.
func (x *exchange) namedHeap(line string) HeapID {
	if !strings.ContainsFunc(line, unicode.IsDigit) {
		return 0
	}
	words := strings.Fields(bare(line))
	for i := range len(words) - 1 {
		n, ok := digits(words[i+1])
		if !ok || n == 0 {
			continue
		}
		for _, lang := range []string{x.lang(), phrases.Fallback} {
			if slices.Contains(bareWords(lang, "words_heap"), words[i]) {
				return HeapID(n)
			}
		}
	}
	return 0
}

// suits says whether a fact makes sense for a heap as it stands.
func suits(h Heap, code string) bool {
	kind, v, _ := strings.Cut(code, "=")
	inHeat := h.Built != 0 && h.Fed == 0
	switch kind {
	case "have":
		return h.Built == 0 || h.Redo
	case "stick", "temp":
		return inHeat
	case "bottle":
		return h.Bottle.Working()
	case "seen":
		if strings.HasPrefix(v, "worms_") {
			return h.Fed != 0 || h.Trial != 0
		}
	case "did":
		switch v {
		case "shook", "vented", "mixed":
			return h.Bottle.Working() || h.Starter == Bottle && h.Built == 0
		case "layered":
			return h.Stage == Building || h.Built == 0
		case "built":
			return h.Built == 0 || h.Redo
		case "turned":
			return inHeat
		case "sieved":
			return h.Opened != 0 || h.Cool || h.Taken != 0
		case "fed", "harvested":
			return h.Sieved != 0 || h.Fed != 0
		case "gathered":
			return h.Built == 0
		}
	}
	return true
}

func (x *exchange) whichHeap(m meaning) {
	x.put(Question{ID: "target", Text: keptFacts(m.codes, m), Choices: x.heapChoices()})
}

// heapChoices are the heaps in work, to choose one of.
func (x *exchange) heapChoices() []Choice {
	var list []Choice
	for _, h := range x.s.Active() {
		if len(list) < 5 {
			list = append(list, Choice{Label: x.heapLabel(h), Means: "heap=" + strconv.Itoa(int(h.ID))})
		}
	}
	return list
}

// chosenHeap is the heap in work that a choice names.
func (x *exchange) chosenHeap(m meaning) (Heap, bool) {
	n, err := strconv.Atoi(m.value("heap"))
	if err != nil {
		return Heap{}, false
	}
	h, ok := x.s.Heap(HeapID(n))
	return h, ok && h.Active()
}

// targetTold goes on with the facts that waited for a heap.
func (x *exchange) targetTold(q Question, m meaning) bool {
	h, ok := x.chosenHeap(m)
	if !ok {
		return false
	}
	kept := x.factsKept(q.Text)
	x.take(h.ID, facts(kept.codes), kept)
	x.goOn()
	return true
}
