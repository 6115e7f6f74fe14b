package dialog

import (
	"strconv"
	"strings"
	"time"

	"warmstick/dialog/understand"
)

// Hiding: on a shared phone a farmer may put the heaps behind a word. Dangers,
// stop, help and the officer are answered all the same; nothing of a heap is
// shown or changed until the word is given.

// shownFor is how long the word opens the heaps (our choice).
const shownFor = 15 * time.Minute

// print of a hiding word; the word itself is not kept.
func (x *exchange) wordPrint(word string) uint64 {
	return imprint(strconv.FormatInt(int64(x.s.Person.ID), 10) + " " + understand.Normal(word))
}

// hideWord obeys "hide mango" and "hide off".
func (x *exchange) hideWord(line string) bool {
	rest, ok := x.ownWord(line, "hide")
	if !ok {
		return false
	}
	if off, ok := x.ownWord(rest, "off"); ok && off == "" {
		x.remark(0, Hidden{})
		x.say("hide_off", nil)
		x.goOnFrom()
		return true
	}
	if rest == "" || len(strings.Fields(rest)) > 2 {
		x.say("hide_how", nil)
		x.goOnFrom()
		return true
	}
	x.remark(0, Hidden{x.wordPrint(rest)})
	x.s.Talk.Shown = time.Time{}
	x.close()
	x.say("hide_on", nil)
	return true
}

// locked says whether the heaps are behind a word just now.
func (x *exchange) locked() bool {
	return x.s.Person.Hidden != 0 && (x.s.Talk.Shown.IsZero() || x.now.Sub(x.s.Talk.Shown) > shownFor)
}

// behindWord answers a line while the heaps are hidden.
func (x *exchange) behindWord(line string) bool {
	if !x.locked() {
		return false
	}
	if x.wordPrint(line) == x.s.Person.Hidden {
		x.s.Talk.Shown, x.s.Talk.Line = x.now, 0
		x.line = ""
		x.say("hide_shown", nil)
		x.goOnFrom()
		return true
	}
	if c, ok := understand.Parse(line, x.lang()); ok {
		switch c.Name {
		case "stop":
			x.stop()
			return true
		case "officer":
			x.wantOfficer()
			return true
		}
	}
	x.say("hide_locked", nil)
	return true
}
