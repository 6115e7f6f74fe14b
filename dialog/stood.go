package dialog

import (
	"slices"
	"strconv"
	"strings"

	"warmstick/dialog/phrases"
	"warmstick/dialog/understand"
)

// Stood: a farmer reports a hot stick of a heap that, for all we know, is not
// built. People build without telling; then one question, when, brings the plan
// to where the heap is, and what was told is taken after it.

func stoodQuestions() map[string]question {
	return map[string]question{"stood": {asks: "date", choices: stoodChoices, raw: (*exchange).stoodTold}}
}

// ofStanding are the reports that only a built heap can give.
func ofStanding(codes []string) bool {
	return slices.ContainsFunc(codes, func(c string) bool {
		return strings.HasPrefix(c, "stick=") || strings.HasPrefix(c, "temp=") || c == "did=turned"
	})
}

// stoodMeanwhile hears a bare "hot" under the question for the next layer, days
// after the last one: the heap was finished without a word.
func (x *exchange) stoodMeanwhile(q Question, m meaning) bool {
	h := x.Heap(q.Heap)
	if q.ID != "layer" && q.ID != "squeeze" || h.Built != 0 || h.Layers < 1 || x.today-h.LastDay < 2 {
		return false
	}
	r := understand.Read(m.text, x.lang(), "stick")
	if !r.Sure || !ofStanding(r.Codes) {
		return false
	}
	x.s.Talk.Misses = 0
	x.close()
	m.codes = r.Codes
	x.whenStood(h, m, facts(r.Codes))
	return true
}

// whenStood asks when the heap was finished and keeps the facts until then. Who
// was asked that and tells of the heap once more is taken to have finished it with
// the last layer we know of.
func (x *exchange) whenStood(h Heap, m meaning, list []string) {
	if q := x.was.Talk.Open; q.ID == "stood" && q.Heap == h.ID && h.Layers >= 2 {
		x.close()
		x.say("stood_taken", phrases.Args{"Day": x.dayWord(h.LastDay)})
		x.noteOn(h.ID, h.LastDay, Built{})
		x.take(h.ID, list, m)
		return
	}
	x.put(Question{ID: "stood", Heap: h.ID, Text: keptFacts(list, m)})
}

// stoodChoices offers the day of the last layer, if there is one, and some others.
func stoodChoices(x *exchange, q Question) []Choice {
	ago := []int{1, 3, 5, 7}
	if h := x.Heap(q.Heap); h.Layers > 0 {
		if last := int(x.today - h.LastDay); last > 0 && !slices.Contains(ago, last) {
			ago = append([]int{last}, ago[:3]...)
			slices.Sort(ago)
		}
	}
	var list []Choice
	for _, n := range ago {
		list = append(list, Choice{Label: x.dayWord(x.today - Day(n))(x.lang()), Means: "ago=" + strconv.Itoa(n)})
	}
	return append(list, labelled(x.lang(), "ago=not")...)
}

func (x *exchange) stoodTold(q Question, m meaning) bool {
	h := x.Heap(q.Heap)
	var day Day
	switch v := m.value("ago"); {
	case v == "not" || m.no():
		x.close()
		x.say("stick_no_heap", nil)
		x.goOn()
		return true
	case v != "":
		n, _ := strconv.Atoi(v)
		day = x.today - Day(n)
	case len(facts(m.codes)) > 0 || x.feltAgain(m) != "":
		return false // "turned it yesterday" names no building day, nor does "now it is hot"
	default:
		if n, ok := understand.Span(m.text, x.lang()); ok {
			day = x.today - Day(n)
		} else if d, ok := understand.WhenBehind(m.text, x.lang()); ok {
			day, _ = x.past(d)
		}
	}
	if day == 0 || day > x.today || day < x.today-longestPause || h.Built != 0 {
		return false
	}
	x.close()
	x.noteOn(h.ID, day, Built{})
	kept := x.factsKept(q.Text)
	if kept.day < day {
		kept.day = day
	}
	x.take(h.ID, facts(kept.codes), kept)
	x.goOn()
	return true
}

// keptFacts writes facts and their day down for a question's text; factsKept reads
// them back.
func keptFacts(list []string, m meaning) string {
	text := strings.Join(list, "\n")
	if m.dated {
		text += "\nday=" + strconv.Itoa(int(m.day))
	}
	return text
}

func (x *exchange) factsKept(text string) meaning {
	kept := meaning{codes: strings.Split(text, "\n"), day: x.today}
	if d, err := strconv.Atoi(kept.value("day")); err == nil {
		kept.day, kept.dated = Day(d), true
	}
	return kept
}
