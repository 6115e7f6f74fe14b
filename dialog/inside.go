package dialog

import (
	"slices"
	"strings"
	"time"

	"warmstick/dialog/phrases"
	"warmstick/dialog/understand"
)

// A talk inside an officer's talk: on behalf of a farmer without a phone, whose
// diary it writes, or on a practice heap, which is nobody's. The same Step
// answers both, so the officer meets exactly what a farmer would.

// Inside is such a talk under way.
type Inside struct {
	Farmer PersonID  `json:",omitempty"` // on whose behalf; 0 = a lesson
	Lesson string    `json:",omitempty"`
	Done   int       `json:",omitempty"` // steps of the lesson that were shown
	Now    time.Time `json:",omitzero"`  // the lesson's own clock
	Lines  []Kept    `json:",omitempty"` // the lesson's own diary
	Talk   Talk
}

// Kept is a diary line of a lesson, as text.
type Kept struct {
	Heap  HeapID `json:",omitempty"`
	At    time.Time
	Day   Day
	Noted time.Time
	By    PersonID `json:",omitempty"`
	Told  int      `json:",omitempty"`
	Kind  string
	Body  string
}

func keptOf(e Entry) Kept {
	kind, body, err := Encode(e.Event)
	if err != nil {
		return Kept{} // every event of ours has a name
	}
	return Kept{e.Heap, e.At, e.Day, e.Noted, e.By, e.Told, kind, string(body)}
}

func (k Kept) entry() (Entry, bool) {
	e, err := Decode(k.Kind, []byte(k.Body))
	return Entry{Heap: k.Heap, At: k.At, Day: k.Day, Noted: k.Noted, By: k.By, Told: k.Told, Event: e}, err == nil
}

func proxyQuestions() map[string]question { return nil }

// insidePress marks a button of an inner talk.
const insidePress = "i"

// inside hands a line to the inner talk, if there is one. Words that work
// everywhere end it: menu, stop, and whatever asks for a person or for one's
// own data.
func (x *exchange) inside(m Message, c understand.Command, known bool) bool {
	in := x.s.Talk.Inside
	if in == nil {
		return false
	}
	if known {
		switch c.Name {
		case "delete_me", "my_data":
			if in.Farmer != 0 {
				break // the farmer may ask for it, through the keeper
			}
			fallthrough
		case "menu", "stop", "officer", "language", "settings", "start":
			x.s.Talk.Inside = nil
			return false
		}
	}
	x.insideHears(m)
	return true
}

func (x *exchange) insideHears(input Input) {
	in := *x.s.Talk.Inside
	x.s.Talk.Inside = &in
	if in.Farmer != 0 {
		x.onBehalf(&in, input)
		return
	}
	x.inLesson(&in, input)
}

// answerFor opens the talk on behalf of a farmer without a phone.
func (x *exchange) answerFor(c Card) {
	if c.Keeper == 0 || !x.mayKeep(c) {
		x.say("farmer_gone", nil)
		return
	}
	x.s.Talk.Inside = &Inside{Farmer: c.Person}
	x.letter(x.s, Reply, "answer_for", phrases.Args{"Name": nameOf(c, x.lang())})
	x.insideHears(Message{Kind: Text, Text: "next"})
}

// mayKeep says whether the farmer is in a group of this officer or lead farmer.
func (x *exchange) mayKeep(c Card) bool {
	_, ok := x.card(c.Person)
	return ok
}

// onBehalf lets the farmer's own conversation answer what the keeper types. All
// lines are marked with who told them; the letters go to the keeper.
func (x *exchange) onBehalf(in *Inside, input Input) {
	c, ok := x.card(in.Farmer)
	s, known := x.s.Register.State(in.Farmer)
	if !ok || !known || c.Keeper == 0 {
		x.s.Talk.Inside = nil
		x.say("farmer_gone", nil)
		return
	}
	s.Talk, s.Register = in.Talk, x.s.Register
	a := Step(s, input, x.now)
	in.Talk = a.Talk
	in.Talk.Inside = nil
	for _, e := range a.Entries {
		if e.Person == in.Farmer && e.By == in.Farmer {
			e.By = x.s.Person.ID
		}
		x.entries = append(x.entries, e)
	}
	x.talks = append(x.talks, a.Talks...)
	for _, id := range a.Forget {
		x.forget = append(x.forget, id)
		x.s.Talk.Inside = nil
	}
	x.innerLetters(a.Letters, in.Farmer, nameOf(c, x.lang()))
}

// innerLetters sends what the inner talk said to the officer, under a name that
// tells the two talks apart.
func (x *exchange) innerLetters(letters []Letter, whom PersonID, name string) {
	for _, l := range letters {
		if l.To != whom {
			x.letters = append(x.letters, l)
			continue
		}
		l.To = x.s.Person.ID
		l.Text = named(name, l.Text)
		l.Kind = Reply
		l.Buttons = slices.Clone(l.Buttons)
		for i := range l.Buttons {
			l.Buttons[i].Press = insidePress + l.Buttons[i].Press
		}
		x.letters = append(x.letters, l)
	}
}

// named puts a name before the words, on a line of its own.
func named(name, words string) string { return name + ":\n" + words }

// keeps sends the reminders of a farmer without a phone to the keeper. They open
// no question: the keeper answers when with the farmer.
func (x *exchange) keeps(letters []Letter) []Letter {
	p := x.s.Person
	if p.Keeper == 0 {
		return letters
	}
	keeper, ok := x.s.Register.State(p.Keeper)
	if !ok {
		return letters
	}
	for i := range letters {
		l := &letters[i]
		if l.To != p.ID || l.Kind != Remind {
			continue
		}
		l.To, l.Buttons, l.Asks, l.Opens = p.Keeper, nil, asksOf(keeper.Talk.Open), nil
		l.Text = named(p.Name, l.Text)
	}
	return letters
}

// staffPress takes the buttons that are not the open question's: those of an
// inner talk, and "seen" under an alert.
func (x *exchange) staffPress(button string) bool {
	if !x.s.Person.staff() {
		return false
	}
	if button == alertSeen {
		x.seenAll()
		return true
	}
	inner, ok := strings.CutPrefix(button, insidePress)
	if !ok {
		return false
	}
	if x.s.Talk.Inside == nil {
		x.say("old_button", nil)
		x.again()
		return true
	}
	x.insideHears(Press{inner})
	return true
}
