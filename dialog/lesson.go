package dialog

import (
	_ "embed"
	"strconv"
	"strings"
	"sync"
	"time"

	"warmstick/dialog/understand"
)

// Lessons: a practice heap that goes wrong in a chosen way. The officer reads
// out what is seen, the group says what to type, and the same conversation that
// farmers have answers. Nothing of it reaches any diary.

//go:embed lessons.tsv
var lessonRows string

// course is one lesson: a diary to begin with and the days between its steps.
type course struct {
	id    string
	begin []string // event:day
	jumps []int
}

var courses = sync.OnceValue(func() []course {
	var list []course
	for _, r := range rows(lessonRows) {
		c := course{id: r[0], begin: strings.Fields(r[1])}
		for n := range strings.SplitSeq(r[2], ",") {
			days, err := strconv.Atoi(n)
			if err != nil {
				panic("lessons.tsv: " + err.Error()) // the table is embedded; a test plays every lesson
			}
			c.jumps = append(c.jumps, days)
		}
		list = append(list, c)
	}
	return list
})

func lessonQuestions() map[string]question {
	return map[string]question{
		"lesson": {asks: "menu", choices: choose("lesson=dry", "lesson=wet", "lesson=hot", "lesson=worms"), answer: (*exchange).lessonTold},
	}
}

func (x *exchange) lessonTold(_ Question, m meaning) bool {
	id := m.value("lesson")
	for _, c := range courses() {
		if c.id == id {
			x.beginLesson(c)
			return true
		}
	}
	return false
}

// practiser is the one who owns a practice heap. No person has this number, and
// nothing of it leaves the officer's own talk.
const practiser PersonID = -1

// virtual is the register of a lesson: one person with the lesson's diary.
type virtual struct {
	nobody
	diary []Entry
}

func (v virtual) Diary(PersonID) []Entry { return v.diary }

func (in *Inside) diary() []Entry {
	var list []Entry
	for i, k := range in.Lines {
		if e, ok := k.entry(); ok {
			e.ID, e.Person = EntryID(i+1), practiser
			list = append(list, e)
		}
	}
	return list
}

func (x *exchange) beginLesson(c course) {
	in := &Inside{Lesson: c.id, Now: DayOf(x.now, x.s.Person.Zone()).On(DefaultMinute, x.s.Person.Zone())}
	in.Now = in.Now.Add(time.Hour)
	zone := x.s.Person.Zone()
	note := func(heap HeapID, back int, e Event) {
		at := in.Now.AddDate(0, 0, back)
		in.Lines = append(in.Lines, keptOf(Entry{Heap: heap, At: at, Day: DayOf(at, zone), Noted: at, By: practiser, Event: e}))
	}
	first := -60
	note(0, first, Consented{consentVersion})
	note(0, first, LanguageSet{x.lang()})
	note(0, first, Named{text(x.lang(), "practice_name", nil)})
	note(0, first, Placed{Zone: zone.String()})
	note(0, first, HourSet{DefaultMinute})
	note(0, first, UnitsSet{"feet"})
	note(1, first, Begun{HotHeap})
	for _, b := range c.begin {
		kind, back, _ := strings.Cut(b, ":")
		n, _ := strconv.Atoi(back)
		for _, e := range beginnings[kind] {
			note(1, n, e)
		}
	}
	x.s.Talk.Inside = in
	x.letter(x.s, Reply, "lesson_begins", nil)
	x.lessonStep(in)
}

// beginnings are the lines that a word of lessons.tsv stands for.
var beginnings = map[string][]Event{
	"built":  {Built{}, Measured{1.8, 1.2, 1.2}},
	"turned": {TurnedOver{}, Sank{"third"}},
	"opened": {StickRead{Warmth: "cold"}, Opened{}, Cooled{}},
	"sieved": {Sieved{}, Passed{200}},
	"fed":    {TrialSet{}, TrialDone{true}, WormsHad{2}, Fed{}},
}

// lessonStep lets the days of the next step pass, shows what is seen, and lets
// the practice heap's own plan ask.
func (x *exchange) lessonStep(in *Inside) {
	var c course
	for _, k := range courses() {
		if k.id == in.Lesson {
			c = k
		}
	}
	if in.Done >= len(c.jumps) {
		x.s.Talk.Inside = nil
		x.letter(x.s, Reply, "lesson_end_"+c.id, nil)
		return
	}
	in.Now = in.Now.AddDate(0, 0, c.jumps[in.Done])
	in.Done++
	x.letter(x.s, Reply, "clue_"+c.id+"_"+strconv.Itoa(in.Done), nil)
	s := in.state()
	var due []Due
	for _, d := range Plan(s) {
		if !d.At.After(in.Now) {
			due = append(due, d)
		}
	}
	if len(due) > 0 {
		x.lessonHears(in, Reminder{due})
		return
	}
	x.lessonHears(in, Message{Kind: Text, Text: "next"})
}

func (in *Inside) state() State {
	diary := in.diary()
	s := Fold(practiser, diary)
	s.Talk, s.Register = in.Talk, virtual{diary: diary}
	return s
}

// inLesson answers one line of the group. "Go on" lets time pass; so does an
// answer after which nothing is open.
func (x *exchange) inLesson(in *Inside, input Input) {
	if m, ok := input.(Message); ok {
		if understand.Normal(m.Text) == understand.Normal(text(x.lang(), "lesson_go_on", nil)) {
			x.lessonStep(in)
			return
		}
	}
	x.lessonHears(in, input)
	if in.Talk.Open.ID == "" {
		x.lessonStep(in)
	}
}

func (x *exchange) lessonHears(in *Inside, input Input) {
	a := Step(in.state(), input, in.Now)
	in.Talk = a.Talk
	in.Talk.Inside = nil
	for _, e := range a.Entries {
		in.Lines = append(in.Lines, keptOf(e))
	}
	if len(a.Forget) > 0 {
		x.s.Talk.Inside = nil
	}
	x.innerLetters(a.Letters, practiser, text(x.lang(), "practice_name", nil))
}
