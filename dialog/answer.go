package dialog

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"warmstick/dialog/phrases"
	"warmstick/dialog/understand"
)

// Answers: a line or a button taken as an answer to the open question.

// reply takes the line as an answer to the open question.
func (x *exchange) reply(line string, m meaning) bool {
	q := x.open
	if q.ID == "" {
		return false
	}
	if m.choice.Means != "" {
		x.pick(q, m.choice)
		return true
	}
	fact := x.tellsFact(m)
	if c, ok := pickByWords(x.lang(), q, line, fact); ok && !m.no() && (m.value("when") == "" || x.choosesWay(q, m)) && m.value("ask") == "" &&
		(!fact || aside(q) && (len(strings.Fields(line)) <= 3 || x.outOfPlace(m) || x.choosesWay(q, m))) {
		x.pick(q, c)
		return true
	}
	underWay := q.ID == "build" && m.has("when=later") && !m.dated // "we are starting" is a yes to "do you build today?"
	if x.deedTold(q, line) && !fact && (m.value("when") == "" || underWay) && m.value("ask") == "" && !m.no() {
		m.codes = []string{"answer=yes"}
	}
	if a := x.headWord(q, line); a != "" && len(m.codes) == 0 {
		m.codes = []string{a}
	}
	if list, ok := x.guessed(q, m); ok {
		m = list
	}
	return x.answerTo(q, m)
}

// aside says that a question's choices are none of the reports, so that their
// words ("hot heap") win over a report they resemble.
func aside(q Question) bool {
	return !slices.ContainsFunc(q.Choices, func(c Choice) bool { return isFact(c.Means) })
}

// choosesWay says that a line under the question of the way speaks of no heap that
// stands: "I want to make a hot heap" reports no hot stick.
func (x *exchange) choosesWay(q Question, m meaning) bool {
	return q.ID == "path" && len(x.s.Active()) == 0 && m.value("did") == "" && m.value("have") == ""
}

// outOfPlace says that the reports of a message fit no heap there is.
func (x *exchange) outOfPlace(m meaning) bool {
	for _, c := range facts(m.codes) {
		if c == "did=built" || c == "did=layered" || strings.HasPrefix(c, "have=") {
			return false
		}
		if slices.ContainsFunc(x.s.Active(), func(h Heap) bool { return suits(h, c) }) {
			return false
		}
	}
	return true
}

// deedTold reads a yes that is told as the deed: "chose a place under the mango" to
// "have you chosen?". The phrase words_said_<question> lists such words where the report
// codes have none for the deed; words of denial and doubt speak against it.
func (x *exchange) deedTold(q Question, line string) bool {
	return x.affirms(line, "words_said_"+q.ID) && !questionMark(line)
}

// headWord reads the yes or no that begins a longer answer to a yes-or-no question:
// "no, we brought nothing else". A yes that is taken back after it counts for
// nothing, nor does "no problem".
func (x *exchange) headWord(q Question, line string) string {
	if !slices.ContainsFunc(q.Choices, func(c Choice) bool {
		return strings.HasPrefix(c.Means, "answer=") || strings.HasPrefix(c.Means, "more=")
	}) {
		return ""
	}
	words := strings.FieldsFunc(line, func(r rune) bool { return unicode.IsSpace(r) || strings.ContainsRune(",.;:!।", r) })
	if len(words) < 2 || questionMark(line) {
		return ""
	}
	head := understand.Read(words[0], x.lang(), "none")
	switch {
	case !head.Sure || len(head.Codes) != 1:
		return ""
	case head.Codes[0] == "answer=no" && !x.lineHolds(line, "words_no_trouble"):
		return "answer=no"
	case head.Codes[0] == "answer=yes" && !x.lineHolds(line, "words_denied"):
		return "answer=yes"
	}
	return ""
}

// affirms says whether a line holds one of the words listed under a key and
// denies nothing beside them.
func (x *exchange) affirms(line, key string) bool {
	said := spaced(line)
	w := x.wordIn(said, key)
	return w != "" && x.wordIn(strings.ReplaceAll(said, " "+w+" ", " "), "words_denied") == ""
}

// lineHolds says whether a line holds one of the words listed under a key.
func (x *exchange) lineHolds(line, key string) bool { return x.wordIn(spaced(line), key) != "" }

// wordIn is the longest of the words listed under a key that a spaced text holds; "" if
// none.
func (x *exchange) wordIn(said, key string) (longest string) {
	for _, lang := range []string{x.lang(), phrases.Fallback} {
		for _, w := range bareWords(lang, key) {
			if len(w) > len(longest) && inOrder(said, w) {
				longest = w
			}
		}
	}
	return longest
}

// inOrder says whether a text holds a phrase as it stands, or its parts in their order
// where the phrase has a gap: "put … worms". At most three words fill a gap.
func inOrder(said, phrase string) bool {
	before, after, gap := strings.Cut(phrase, gapMark)
	if !gap {
		return strings.Contains(said, " "+phrase+" ")
	}
	_, rest, ok := strings.Cut(said, " "+before+" ")
	if !ok {
		return false
	}
	words := strings.Fields(rest)
	end := strings.Fields(after)
	for i := 0; i <= 3 && i+len(end) <= len(words); i++ {
		if slices.Equal(words[i:i+len(end)], end) {
			return true
		}
	}
	return false
}

// guessed reads a bare word as the first word of a choice shown: "well" under a
// button that says "Well, inside".
func (x *exchange) guessed(q Question, m meaning) (meaning, bool) {
	if len(m.codes) > 0 {
		return m, false
	}
	word := strings.ToLower(plain(m.text))
	var fit []string
	for _, c := range q.Choices {
		first, _, _ := strings.Cut(strings.ToLower(c.Label), " ")
		if utf8.RuneCountInString(word) >= 3 && plain(first) == word {
			fit = append(fit, c.Means)
		}
	}
	if len(fit) == 1 {
		m.codes, m.picked = fit, true
		return m, true
	}
	return m, false
}

// pick takes one of the numbered choices.
func (x *exchange) pick(q Question, c Choice) {
	x.s.Talk.Misses = 0
	m := meaning{text: c.Label, codes: []string{c.Means}, picked: true, day: x.today}
	if name, ok := strings.CutPrefix(c.Means, "word="); ok {
		x.close()
		if x.s.Person.staff() && x.officerWord(understand.Command{Name: name}, "") {
			return
		}
		x.obey(name, m)
		return
	}
	if x.answerTo(q, m) {
		return
	}
	if !x.reports(m) {
		x.missed(m)
	}
}

// answerTo lets the open question take an answer, or the day it is put off to.
func (x *exchange) answerTo(q Question, m meaning) bool {
	kind := questions()[q.ID]
	if kind.raw != nil && kind.raw(x, q, m) {
		x.s.Talk.Misses = 0
		return true
	}
	x.close()
	if w := m.value("when"); w != "" && !x.tellsFact(m) {
		if m.underWay != "" && q.Heap != 0 {
			x.underWay(q, m.underWay)
		} else {
			x.putOff(q, w, m.ahead)
		}
		x.s.Talk.Misses = 0
		return true
	}
	if kind.answer != nil && kind.answer(x, q, m) {
		x.s.Talk.Misses = 0
		return true
	}
	x.open = q
	return false
}

// tellsFact says whether a meaning holds a report beside its small talk.
func (x *exchange) tellsFact(m meaning) bool {
	return slices.ContainsFunc(m.codes, isFact)
}

func isFact(code string) bool {
	kind, _, _ := strings.Cut(code, "=")
	switch kind {
	case "stick", "temp", "moisture", "smell", "seen", "bottle", "did", "have":
		return true
	}
	return false
}

// press takes a button of one of our letters. A button of an older question is
// told so, and the present question is put again.
func (x *exchange) press(button string) {
	x.line = ""
	x.comeBack(button)
	if x.locked() {
		x.say("hide_locked", nil)
		return
	}
	if x.staffPress(button) {
		return
	}
	seq, index, ok := strings.Cut(strings.TrimPrefix(button, "a"), ".")
	n, good := digits(seq)
	i, fine := digits(index)
	if !ok || !good || !fine || n != x.s.Talk.Seq || i >= len(x.open.Choices) {
		x.say("old_button", nil)
		if x.open.ID != "" {
			x.again()
			return
		}
		x.tellNext()
		return
	}
	c := x.open.Choices[i]
	x.line = c.Label
	x.keepLine(c.Label)
	if x.strangerPick(c) {
		return
	}
	x.pick(x.open, c)
}
