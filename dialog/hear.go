package dialog

import (
	"slices"
	"strings"
	"unicode/utf8"

	"warmstick/dialog/understand"
)

// longest is the most of one message that is read; a farmer's report is short.
const longest = 4000

// hear takes a message through the order of the house: a danger first, then the
// words that work anywhere, then an answer to the open question, then a report
// of anything else, and at last "not understood".
func (x *exchange) hear(m Message) {
	line := clean(m.Text)
	x.line = line
	if line == "" {
		x.line = string(m.Kind)
	}
	x.comeBack(line)
	if m.Code != "" {
		if !x.join(m.Code) {
			x.say("invite_unknown", nil)
			x.goOnFrom()
		}
		return
	}
	if line == "" || m.Kind != Text {
		if x.hearOther(m, line) {
			return
		}
	}
	if x.staffHears(line, m) {
		return
	}
	said := x.read(line)
	if x.danger(said) {
		return
	}
	if x.stranger(line, said) {
		return
	}
	if x.behindWord(line) {
		return
	}
	x.keepLine(line)
	if x.command(line, said) {
		return
	}
	if x.join(line) {
		return
	}
	if m.Amends && x.amend(said) {
		return
	}
	if x.reply(line, said) {
		return
	}
	if x.reports(said) {
		return
	}
	x.missed(said)
}

// clean makes any bytes into readable text.
func clean(s string) string {
	s = strings.ToValidUTF8(s, "")
	if utf8.RuneCountInString(s) > longest {
		s = string([]rune(s)[:longest])
	}
	return strings.TrimSpace(s)
}

// comeBack ends a stop: the person writes again.
func (x *exchange) comeBack(line string) {
	if x.s.Person.Unheard > 0 {
		x.remark(0, Heard{})
	}
	if !x.s.Person.Stopped {
		return
	}
	if c, ok := understand.Parse(line, x.lang()); ok && c.Name == "stop" {
		return
	}
	x.remark(0, CameBack{})
}

// read makes the meaning of a line under the open question.
func (x *exchange) read(line string) meaning {
	kind := questions()[x.open.ID]
	topic := kind.topic
	if topic == "" {
		topic = "none"
	}
	r := understand.Read(line, x.lang(), topic)
	if !r.Sure && kind.also != "" {
		if second := understand.Read(line, x.lang(), kind.also); second.Sure {
			r = second
		}
	}
	if !r.Sure && kind.asks == "ready" {
		// "Done" alone is a report only where a deed was asked about; here it is a
		// yes. Under the shaking question it would read as shaken.
		switch second := understand.Read(line, x.lang(), "shake"); {
		case second.Sure && slices.Equal(second.Codes, []string{"did=shook"}):
			r.Codes, r.Sure = []string{"answer=yes"}, true
		case second.Sure && slices.Equal(second.Codes, []string{"answer=no"}):
			r = second
		}
	}
	m := meaning{text: line, guess: r.Guess, lang: r.Lang, day: x.today}
	if r.Sure {
		m.codes = r.Codes
	}
	m.named = x.namedHeap(line)
	if len(m.codes) == 0 || !strings.ContainsAny(line, " \n") {
		return m // no report, or none that could name a day
	}
	if d, ok := understand.When(line, x.lang()); ok {
		m.day, m.dated = x.past(d)
		m.ahead = x.future(d)
	}
	return m
}

// past turns "two days ago" or "on Sunday" into a day that is over, when the
// message speaks of one.
func (x *exchange) past(d understand.Day) (Day, bool) {
	switch {
	case d.Date != 0:
		day := x.dateNear(d.Month, d.Date)
		if day > x.today {
			return x.today, false
		}
		return day, true
	case d.Weekday >= 0:
		back := (int(x.today.Weekday()) - d.Weekday + 7) % 7
		return x.today - Day(back), true
	case d.Offset < 0:
		return x.today + Day(d.Offset), true
	}
	return x.today, d.Offset == 0
}

// command obeys the words that work in every state.
func (x *exchange) command(line string, m meaning) bool {
	if x.open.ID == "officer_text" { // free words: only the bare words of command count
		_, word := understand.Parse(line, x.lang())
		if !word && !(m.has("ask=stop") && len(strings.Fields(line)) <= 3) {
			return false
		}
	}
	if _, ok := pickOf(x.open, line); ok {
		return false // the label of a choice wins over a command of the same word
	}
	if x.seasonWord(line) || x.hideWord(line) || x.familyWord(line) {
		return true
	}
	if c, ok := wordPick(x.lang(), Question{Choices: []Choice{{Means: "word=new_heap"}}}, line); ok && len(strings.Fields(line)) < 4 && c.Means != "" {
		x.ask("path", 0)
		return true
	}
	name := ""
	if c, ok := understand.Parse(line, x.lang()); ok && c.Name != "announce" {
		name = c.Name
		if name == "heap" {
			return x.heapWord(c.Rest)
		}
	}
	if name == "" && m.has("ask=undo") {
		x.undo(m)
		return true
	}
	if name == "" {
		if a := m.value("ask"); a != "" && len(m.codes) == 1 {
			name = a
		}
	}
	return x.obey(name, m)
}

func (x *exchange) obey(name string, m meaning) bool {
	switch name {
	case "menu", "start":
		x.menu()
	case "help":
		x.help()
	case "undo":
		x.undo(m)
	case "stop":
		x.stop()
	case "officer":
		x.wantOfficer()
	case "status":
		x.status()
	case "next":
		x.next()
	case "why":
		x.why()
	case "delete_me":
		x.ask("delete", 0)
	case "my_data":
		x.myData()
	case "language":
		x.ask("language", 0)
	case "settings":
		x.ask("more_menu", 0)
	case "pictures":
		x.pictures()
	case "new_heap":
		x.ask("path", 0)
	case "hour", "place":
		x.ask(name, 0)
	case "invite":
		x.say("invite_farmer", nil)
		x.again()
	case "groups":
		if len(x.s.Person.Roles) > 0 {
			x.groups()
			return true
		}
		x.say("groups_none", nil)
		x.again()
	case "board", "round", "digest", "announce", "visited":
		if questions()[x.open.ID].raw != nil {
			return false // "today" is a date before it is an officer's word
		}
		x.say("officers_only", nil)
		x.again()
	default:
		return false
	}
	return true
}

// reply takes the line as an answer to the open question.
func (x *exchange) reply(line string, m meaning) bool {
	q := x.open
	if q.ID == "" {
		return false
	}
	if c, ok := pickOf(q, line); ok {
		x.pick(q, c)
		return true
	}
	fact := x.tellsFact(m)
	if c, ok := pickByWords(x.lang(), q, line, fact); ok && !m.no() && m.value("when") == "" && m.value("ask") == "" &&
		(!fact || aside(q) && (len(strings.Fields(line)) <= 3 || x.outOfPlace(m))) {
		x.pick(q, c)
		return true
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
		x.putOff(q, w, m.ahead)
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

// missed answers what could not be understood: first the question again, then
// an example to type, then the officer.
func (x *exchange) missed(m meaning) {
	x.s.Talk.Misses++
	q := x.open
	if m.has("chat=hello") || m.has("chat=thanks") {
		x.s.Talk.Misses = 0
		key := "hello_again"
		if !m.has("chat=hello") {
			key = "welcome"
		}
		x.say(key, x.nameArgs())
		if q.ID != "" {
			x.again()
			return
		}
		x.tellNext()
		return
	}
	if q.ID == "" {
		x.missedFree(m)
		return
	}
	switch {
	case len(m.guess) > 0 && x.s.Talk.Misses < 3:
		x.say("not_sure", nil)
	case x.s.Talk.Misses <= 1:
		x.say("not_clear", nil)
	case x.s.Talk.Misses == 2:
		x.say("hint_"+q.ID, nil)
	default:
		x.say("third_miss", nil)
		x.say("hint_"+q.ID, nil)
	}
	x.again()
}

func (x *exchange) missedFree(m meaning) {
	if len(m.guess) > 0 {
		x.put(Question{ID: "doubt", Choices: append(labelled(x.lang(), m.guess[:min(len(m.guess), 4)]...), labelled(x.lang(), "answer=no")...)})
		return
	}
	if x.s.Talk.Misses > 2 {
		x.say("third_miss", nil)
	} else if x.s.Talk.Misses == 2 {
		x.say("hint_free", nil)
	} else {
		x.say("not_clear_free", nil)
	}
	x.menuQuietly()
}

// keepLine remembers the last few lines for an officer who is asked for.
func (x *exchange) keepLine(line string) {
	if x.s.Person.Consent == "" {
		return
	}
	r := []rune(line)
	lines := append(slices.Clone(x.s.Talk.Lines), string(r[:min(len(r), 80)]))
	if n := len(lines); n > 5 {
		lines = lines[n-5:]
	}
	x.s.Talk.Lines = lines
}
