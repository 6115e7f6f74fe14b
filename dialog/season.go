package dialog

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"warmstick/dialog/phrases"
	"warmstick/dialog/understand"
)

// Seasons: rain, drought, a feast, planting time. "pause 5 days" moves the plan;
// the heap itself works on.

// pauseUsual is how many days a pause takes when none is named (our choice).
const pauseUsual = 7

// longestPause keeps a slip of the finger from ending the reminders for good.
const longestPause = 120

// ownWord finds one of our own command words, which stands first in the line;
// the phrase words_cmd_<name> lists them.
func (x *exchange) ownWord(line, name string) (rest string, ok bool) {
	low := strings.ToLower(strings.TrimLeft(line, "/"))
	for _, lang := range []string{x.lang(), phrases.Fallback} {
		for _, w := range phrases.Words(lang, "words_cmd_"+name) {
			rest, found := strings.CutPrefix(low, w)
			if next, _ := utf8.DecodeRuneInString(rest); found && !unicode.IsLetter(next) && !unicode.IsMark(next) {
				return strings.TrimSpace(rest), true
			}
		}
	}
	return "", false
}

// seasonWord obeys pause and go on.
func (x *exchange) seasonWord(line string) bool {
	if _, ok := x.ownWord(line, "resume"); ok && x.paused() {
		x.pauseUntil(x.today)
		x.say("resumed", nil)
		x.goOnFrom()
		return true
	}
	rest, ok := x.ownWord(line, "pause")
	if !ok {
		return false
	}
	if len(x.s.Active()) == 0 {
		x.say("nothing_running", nil)
		return true
	}
	until := x.today + pauseUsual
	if n, ok := digits(rest); ok && n > 0 {
		until = x.today + Day(n) // "pause 5"
	} else if n, ok := understand.Span(rest, x.lang()); ok && n > 0 {
		until = x.today + Day(n)
	} else if d, ok := understand.When(rest, x.lang()); ok {
		until = x.future(d)
	}
	until = min(max(until, x.today+1), x.today+longestPause)
	x.pauseUntil(until)
	x.close()
	x.say("paused", phrases.Args{"Day": x.dayWord(until)})
	return true
}

func (x *exchange) pauseUntil(day Day) {
	for _, h := range x.s.Active() {
		x.note(h.ID, Paused{day})
	}
}

func (x *exchange) paused() bool {
	for _, h := range x.s.Active() {
		if h.Pause > x.today {
			return true
		}
	}
	return false
}
