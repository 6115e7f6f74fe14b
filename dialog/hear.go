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
	if x.perilOver(line) {
		return
	}
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
	x.keepNumerals(line)
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
	if !r.Sure && kind.also != "" {
		if second := understand.Read(line, x.lang(), kind.also); second.Sure {
			r = second
		}
	}
	m := meaning{text: line, guess: r.Guess, lang: r.Lang, day: x.today, underWay: r.UnderWay, gone: r.Gone}
	m.choice, _ = x.chosen(line)
	if r.Sure {
		m.codes = r.Codes
	}
	if m.has("ask=undo") && x.deedTold(x.open, line) { // the deed asked for, told in words that could take one back
		m.codes = slices.DeleteFunc(slices.Clone(m.codes), func(c string) bool { return c == "ask=undo" })
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
	if x.open.ID == "name" && len(strings.Fields(x.bareName(line))) < len(strings.Fields(line)) {
		return false // "call me Juma" calls no officer
	}
	if m.choice.Means != "" {
		return false // the label of a choice wins over a command of the same word
	}
	if x.seasonWord(line) || x.hideWord(line) || x.familyWord(line) || x.handWord(line) || x.otherDay(line) {
		return true
	}
	if len(strings.Fields(line)) < 4 && m.value("did") == "" { // "another one down" is a layer
		if _, ok := wordPick(x.lang(), Question{Choices: []Choice{{Means: "word=new_heap"}}}, line); ok {
			x.ask("path", 0)
			return true
		}
	}
	if x.anotherWay(line, m) {
		return true
	}
	if x.wantsHeap(line, m) {
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
		if len(x.s.Active()) > 0 {
			x.say("delete_hand", nil)
		}
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
