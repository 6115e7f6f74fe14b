package dialog

import (
	"slices"
	"strconv"
	"strings"
	"time"
	"unicode/utf8"

	"warmstick/dialog/phrases"
	"warmstick/dialog/understand"
)

// Words both ways: a farmer asks for a person, the officer's next text goes
// back. Photos and voice notes pass by the platform's reference and are never
// kept.

func relayQuestions() map[string]question {
	return map[string]question{
		"officer_text": {asks: "text", raw: (*exchange).officerText},
		"answer_text":  {asks: "text", args: answerArgs, raw: (*exchange).answerText},
		"namesake":     {asks: "target", answer: (*exchange).namesakeTold},
	}
}

// Words of a farmer or an officer are cut to what a letter holds beside its frame.
const (
	wordsLimit   = 200
	contextLimit = 250
)

func cut(s string, n int) string {
	if r := []rune(s); len(r) > n {
		return string(r[:n-1]) + "…"
	}
	return s
}

func personMeans(id PersonID) string { return "person=" + strconv.FormatInt(int64(id), 10) }

func personOf(m meaning) PersonID {
	n, err := strconv.ParseInt(m.value("person"), 10, 64)
	if err != nil {
		return 0
	}
	return PersonID(n)
}

func (x *exchange) namesakeTold(q Question, m meaning) bool {
	id := personOf(m)
	if id == 0 {
		return false
	}
	x.with(q.Text, id)
	return true
}

// wantOfficer opens a thread with the officers of the farmer's groups.
func (x *exchange) wantOfficer() {
	if len(x.officers()) == 0 {
		x.say("officer_none", nil)
		x.again()
		return
	}
	x.ask("officer_text", x.heapNow())
}

// officerText passes the farmer's words on, with what the officer needs to
// understand them.
func (x *exchange) officerText(_ Question, m meaning) bool {
	if m.text == "" {
		return false
	}
	x.close()
	x.note(0, OfficerAsked{cut(m.text, wordsLimit)})
	x.relayUp(m.text)
	x.say("relayed", nil, "officer_told")
	return true
}

// relayUp writes to the officers: the words, where the heap stands, and the last
// lines said before.
func (x *exchange) relayUp(words string) {
	lines := slices.Clone(x.was.Talk.Lines)
	lines = slices.DeleteFunc(lines, func(l string) bool {
		c, ok := understand.Parse(l, x.lang())
		return l == words || ok && c.Name == "officer"
	})
	for _, to := range x.officerStates() {
		args := phrases.Args{"Name": called(x.s.Person), "Place": x.s.Person.Place(), "Text": cut(words, wordsLimit)}
		l := x.letter(to, Relay, "relay_up", args)
		context := ""
		if h, ok := x.inHand(); ok {
			day, of := x.progress(h)
			context = text(langOf(to), "relay_heap", phrases.Args{"Stage": stageWord(h.Stage), "Day": day, "Of": of})
		}
		if len(lines) > 0 {
			said := make([]string, len(lines))
			for i, line := range lines {
				said[i] = "- " + cut(line, 60)
			}
			context += "\n" + text(langOf(to), "relay_before", nil) + "\n" + strings.Join(said, "\n")
		}
		if context = strings.TrimSpace(context); context != "" {
			if context = cut(context, contextLimit); utf8.RuneCountInString(l.Text+"\n"+context) <= letterLimit {
				l.Text += "\n" + context
			} else {
				l = x.letter(to, Relay, "relay_context", phrases.Args{"Text": context})
			}
		}
		x.opens(l, to)
	}
}

// opens puts the open answer to an officer at the end of a letter. A letter that
// waits for the morning opens it then.
func (x *exchange) opens(l *Letter, to State) {
	ask := text(langOf(to), "ask_answer_text", phrases.Args{"Name": called(x.s.Person)})
	if utf8.RuneCountInString(l.Text)+1+utf8.RuneCountInString(ask) > letterLimit {
		l = x.letter(to, Relay, "ask_answer_text", phrases.Args{"Name": called(x.s.Person)})
	} else {
		l.Text += "\n" + ask
	}
	l.Opens = &Question{ID: "answer_text", Who: x.s.Person.ID}
	l.Asks = "text"
	if at := daytime(x.now, to.Person.Zone()); to.Person.ZoneName != "" && at.After(x.now) {
		l.Opens.From = at
		for i := range x.letters {
			if m := &x.letters[i]; m.To == to.Person.ID && m.Kind == Relay {
				m.After = at
			}
		}
	}
}

// arrived opens the answers whose letters have come meanwhile.
func (x *exchange) arrived() {
	for i, q := range x.s.Talk.Later {
		if q.From.IsZero() || q.From.After(x.now) {
			continue
		}
		later := slices.Delete(slices.Clone(x.s.Talk.Later), i, i+1)
		if x.open.ID == "answer_text" {
			later = append(later, x.open)
		}
		q.From = time.Time{}
		x.s.Talk.Later, x.open = later, q
		x.s.Talk.Seq++
		return
	}
}

// officerStates are the officers of the farmer's groups, those first who can be
// reached.
func (x *exchange) officerStates() []State {
	var reached, others []State
	for _, id := range x.officers() {
		to, ok := x.s.Register.State(id)
		if !ok || id == x.s.Person.ID {
			continue
		}
		if to.Person.Stopped || to.Person.Barred {
			others = append(others, to)
		} else {
			reached = append(reached, to)
		}
	}
	return append(reached, others...)
}

func answerArgs(x *exchange, q Question) phrases.Args {
	c, _ := x.card(q.Who)
	return phrases.Args{"Name": nameOf(c, x.lang())}
}

// answerLine is an officer's text under an open answer. Words of danger in it
// bring their care words, and it is passed on all the same.
func (x *exchange) answerLine(line string) bool {
	m := x.read(line)
	for _, c := range m.codes {
		if v, ok := strings.CutPrefix(c, "harm="); ok && carePhrase[v] != "" {
			x.say(carePhrase[v], nil, carePhrase[v])
			x.care = len(x.pieces)
		}
	}
	return x.answerText(x.open, m)
}

// answerText passes an officer's words to the farmer.
func (x *exchange) answerText(q Question, m meaning) bool {
	to, ok := x.reach(q.Who)
	if !ok {
		x.close()
		x.say("farmer_gone", nil)
		return true
	}
	if m.text == "" {
		return false
	}
	x.close()
	l := x.letter(to, Relay, x.signed("relay_down"), phrases.Args{"Name": called(x.s.Person), "Text": cut(m.text, wordsLimit)})
	night := false
	if to.Person.Asking.IsZero() { // not asked for: not at night
		l.After = daytime(x.now, to.Person.Zone())
		if night = l.After.After(x.now); !night {
			l.After = time.Time{}
		}
	}
	x.noteFor(q.Who, to.Person.Zone(), 0, OfficerWrote{cut(m.text, wordsLimit)})
	x.seen(q.Who)
	x.say("relayed_down", phrases.Args{"Name": called(to.Person)})
	if len([]rune(m.text)) > wordsLimit {
		x.say("relayed_cut", phrases.Args{"N": wordsLimit})
	}
	if night {
		x.say("relayed_morning", nil)
	}
	x.nextAnswer()
	return true
}

// reach gives the state of a farmer this person may write to and who can be
// written to.
func (x *exchange) reach(id PersonID) (State, bool) {
	c, ok := x.card(id)
	if !ok || c.Keeper != 0 {
		return State{}, false
	}
	return x.s.Register.State(id)
}

// nextAnswer opens the answer to whoever else is waiting for one.
func (x *exchange) nextAnswer() {
	for len(x.s.Talk.Later) > 0 {
		q := x.s.Talk.Later[0]
		x.s.Talk.Later = slices.Clone(x.s.Talk.Later[1:])
		if c, ok := x.card(q.Who); ok && !c.Asking.IsZero() {
			x.put(q)
			return
		}
	}
}

// signed is the key of a letter to a farmer, which has another wording for an
// officer whose name we do not know.
func (x *exchange) signed(key string) string {
	if x.s.Person.Name == "" {
		return key + "_nameless"
	}
	return key
}

// ownName is how the officer is called in letters to other officers.
func (x *exchange) ownName() worded {
	return func(lang string) string {
		if x.s.Person.Name != "" {
			return x.s.Person.Name
		}
		return phrases.Text(lang, "an_officer", nil)
	}
}

// named is "amina: water it today", words for a farmer by name.
func (x *exchange) named(line string) bool {
	name, words, ok := strings.Cut(line, ":")
	if !ok || strings.TrimSpace(words) == "" || len([]rune(name)) > 30 || !x.s.Person.Officer() {
		return false
	}
	found := namesakes(x.flock(), name)
	if len(found) != 1 || understand.Normal(found[0].Name) != understand.Normal(name) {
		return false
	}
	return x.answerText(Question{ID: "answer_text", Who: found[0].Person}, meaning{text: strings.TrimSpace(words)})
}

// WithQuestion is a conversation in which another person's message put a
// question. An answer that was open to somebody else waits behind it.
func WithQuestion(t Talk, q Question) Talk {
	if !q.From.IsZero() {
		t.Later = append(slices.Clip(t.Later), q)
		return t
	}
	if t.Open.ID == "answer_text" && t.Open.Who != q.Who {
		t.Later = append(slices.Clip(t.Later), t.Open)
	}
	t.Open, t.Misses = q, 0
	t.Seq++
	return t
}

// stageWord names a stage in a sentence.
func stageWord(s Stage) worded {
	return func(lang string) string { return phrases.Text(lang, "stage_"+string(s), nil) }
}
