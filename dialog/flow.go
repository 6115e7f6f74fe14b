package dialog

import (
	"strings"
	"sync"

	"warmstick/dialog/phrases"
)

// table is the closed set of questions, put together once from the stage files.
var table struct {
	once sync.Once
	set  map[string]question
}

func questions() map[string]question {
	table.once.Do(func() {
		table.set = map[string]question{}
		for _, part := range []map[string]question{
			enrolQuestions(), pathQuestions(), gatherQuestions(), starterQuestions(), buildQuestions(),
			stickQuestions(), restQuestions(), wormQuestions(), menuQuestions(), handoverQuestions(), stoodQuestions(), officerQuestions(),
		} {
			for id, q := range part {
				table.set[id] = q
			}
		}
	})
	return table.set
}

// goOn leads on after an answer: what is missing of the person, then of the
// heap in hand, then what comes next and when.
func (x *exchange) goOn() {
	if x.fresh || x.led {
		return
	}
	if x.enrolNext() {
		return
	}
	h, ok := x.inHand()
	if !ok {
		if x.s.Person.Officer() {
			x.menu()
			return
		}
		x.ask("path", 0)
		return
	}
	x.goOnWith(h)
}

// inHand is the heap this exchange is about, or the one begun last.
func (x *exchange) inHand() (Heap, bool) {
	if h, ok := x.s.Heap(x.heap); ok && h.Active() {
		return h, true
	}
	active := x.s.Active()
	if len(active) == 0 {
		return Heap{}, false
	}
	return active[len(active)-1], true
}

// goOnWith asks the heap's next question if it can be answered now; otherwise
// it says what comes next and when.
func (x *exchange) goOnWith(h Heap) {
	if x.fresh || x.led {
		return
	}
	x.heap = h.ID
	if q := x.followUp(h); q != "" {
		x.ask(q, h.ID)
		return
	}
	if other, q := x.waiting(h); q != "" {
		x.ask(q, other)
		return
	}
	x.tellNext()
}

// followUp is the question that the heap's state calls for at once; each stage
// file answers for its own part. Empty when only time can go on.
func (x *exchange) followUp(h Heap) string {
	for _, part := range []func(*exchange, Heap) string{
		(*exchange).gatherNext, (*exchange).buildNext, (*exchange).heatNext, (*exchange).restNext, (*exchange).wormsNext,
	} {
		if q := part(x, h); q != "" {
			return q
		}
	}
	return ""
}

// waiting finds a question that a reminder of today put and nobody answered,
// of this heap or another.
func (x *exchange) waiting(h Heap) (HeapID, string) {
	for _, other := range append([]Heap{h}, x.s.Active()...) {
		for _, w := range other.Windows() {
			if a := other.Acts[w.Task]; a.Sent > 0 && a.Last == x.today && w.From <= x.today && !a.Skipped && a.Until <= x.today {
				if q := remindsBy(other, w.Task); q != "" {
					return other.ID, q
				}
			}
		}
	}
	return 0, ""
}

// tellNext says the next act and its day, and that we will write then.
func (x *exchange) tellNext() {
	if x.led {
		return
	}
	x.led = true
	h, ok := x.inHand()
	if !ok {
		x.say("nothing_running", nil)
		return
	}
	w, d, ok := x.nextAct(h)
	if !ok {
		x.say("next_ask", x.which(h, phrases.Args{"Act": act(w.Task)}))
		return
	}
	x.say("next_act", x.which(h, phrases.Args{"Act": act(w.Task), "Day": x.dayWord(d.Day)}))
}

// nextAct is the heap's next reminder.
func (x *exchange) nextAct(h Heap) (Window, Due, bool) {
	var best Window
	var due Due
	found := false
	for _, w := range h.Windows() {
		d, ok := h.due(x.s.Person, w)
		if ok && (!found || d.At.Before(due.At)) {
			best, due, found = w, d, true
		}
		if !found && best.Task == "" {
			best = w
		}
	}
	return best, due, found
}

// act is the name of a task as something to do: "turn the heap".
func act(t Task) worded {
	return func(lang string) string { return phrases.Text(lang, "act_"+string(t), nil) }
}

// which adds the heap's name to a sentence when there are several heaps.
func (x *exchange) which(h Heap, args phrases.Args) phrases.Args {
	if args == nil {
		args = phrases.Args{}
	}
	args["Heap"] = ""
	if len(x.s.Active()) > 1 {
		args["Heap"] = worded(func(lang string) string {
			return phrases.Text(lang, "heap_mark", phrases.Args{"Heap": int(h.ID)}) + " "
		})
	}
	return args
}

// dayWord is a day as people say it: today, tomorrow, "Friday, in 3 days".
func (x *exchange) dayWord(d Day) worded { return dayWord(x.today, d) }

func dayWord(today, d Day) worded {
	return func(lang string) string {
		n := int(d - today)
		weekday := phrases.Text(lang, "weekday_"+strings.ToLower(d.Weekday().String()[:3]), nil)
		switch {
		case n == 0:
			return phrases.Text(lang, "today", nil)
		case n == 1:
			return phrases.Text(lang, "tomorrow", nil)
		case n == -1:
			return phrases.Text(lang, "yesterday", nil)
		case n < 0:
			return phrases.Text(lang, "days_ago", phrases.Args{"N": -n})
		case n < 14:
			return phrases.Text(lang, "weekday_in_days", phrases.Args{"N": n, "Weekday": weekday})
		}
		_, month, date := d.Date()
		name := phrases.Text(lang, "month_"+strings.ToLower(month.String()[:3]), nil)
		return phrases.Text(lang, "date_in_days", phrases.Args{"N": n, "Date": date, "Month": name})
	}
}
