package dialog

import (
	"math"
	"strconv"
	"strings"

	"warmstick/dialog/phrases"
)

// The board: who needs me today, the most urgent first, ten lines at a time.
// Each line begins with its number and the farmer's name.

func boardQuestions() map[string]question {
	return map[string]question{
		"board": {asks: "target", answer: (*exchange).boardTold},
		"line":  {asks: "target", args: answerArgs, choices: lineChoices, answer: (*exchange).lineTold},
	}
}

const boardLines = 10

func lineChoices(x *exchange, _ Question) []Choice {
	return labelled(x.lang(), "line=done", "line=not_today", "line=why", "line=heap", "line=write")
}

// board shows the lines from one on, in answer to the officer.
func (x *exchange) board(from int) {
	flock := x.charges()
	if len(flock) == 0 {
		x.say("board_no_farmers", nil)
		return
	}
	lines := Board(flock, x.now)
	if from >= len(lines) {
		from = 0
	}
	if len(lines) == 0 {
		x.say("board_empty", phrases.Args{"N": len(flock)})
		return
	}
	head := "board_head"
	if from > 0 {
		head = "board_more"
	}
	x.say(head, phrases.Args{"N": len(lines)})
	x.showLines(lines, from, "board")
}

// showLines writes up to ten lines and lets one be chosen by number.
func (x *exchange) showLines(lines []Line, from int, list string) {
	shown := lines[from:min(from+boardLines, len(lines))]
	q := Question{ID: "board", Text: list + " " + strconv.Itoa(from)}
	cards := make([]Card, len(shown))
	for i, l := range shown {
		cards[i] = l.Card
	}
	for i, l := range shown {
		x.say("board_line", x.lineArgs(i+1, l))
		q.Choices = append(q.Choices, Choice{Label: x.farmerLabel(l.Card, cards), Means: personMeans(l.Card.Person)})
	}
	if from+boardLines < len(lines) {
		q.Choices = append(q.Choices, labelled(x.lang(), "board=more")...)
	}
	if x.open.ID == "" {
		x.put(q)
	}
}

// lineArgs are the words of one line: who, where, why, since when, what to take.
func (x *exchange) lineArgs(no int, l Line) phrases.Args {
	worst := l.Concerns[0]
	place := ""
	if p := l.Card.Place(); p != "" {
		place = " (" + p + ")"
	}
	return phrases.Args{"No": no, "Name": nameOf(l.Card, x.lang()), "Place": place, "Why": reasonOf(worst),
		"Since": dayWord(l.Today, worst.Since), "Take": takeOf(worst)}
}

// reasonOf is a concern in a few words.
func reasonOf(c Concern) worded {
	return func(lang string) string {
		if what, ok := strings.CutPrefix(c.Kind, "peril_"); ok {
			return phrases.Text(lang, "concern_peril", phrases.Args{"What": perilWord(what)(lang)})
		}
		args := phrases.Args{}
		if c.Task != "" {
			args["Act"] = act(c.Task)(lang)
		}
		return phrases.Text(lang, "concern_"+c.Kind, args)
	}
}

// takeOf is what to take along; empty when words are enough.
func takeOf(c Concern) worded {
	return func(lang string) string {
		if key := "take_" + c.Kind; phrases.Has(phrases.Fallback, key) {
			return " " + phrases.Text(lang, key, nil)
		}
		return ""
	}
}

// verbs reads what an officer types about a line: "2 done", "why 3", and under
// one farmer "not today" alone. A number means a line of the list last shown.
func (x *exchange) verbs(line string) bool {
	q := x.open
	if q.ID != "board" && q.ID != "line" && q.ID != "drill" {
		return false
	}
	number := 0
	var words []string
	for _, w := range strings.Fields(line) {
		if n, ok := digits(w); ok && number == 0 {
			number = n
			continue
		}
		words = append(words, w)
	}
	if len(words) == 0 {
		return false // a bare number is a choice
	}
	verb := Question{Choices: lineChoices(x, q)}
	said := strings.Join(words, " ")
	c, ok := pickOf(verb, said)
	if !ok {
		c, ok = wordPick(x.lang(), verb, said)
	}
	if !ok {
		return false
	}
	who, list := q.Who, strings.Fields(q.Text)
	if q.ID == "board" {
		who, list = 0, listed(q.Choices)
	}
	if number > 0 {
		who = 0
		if number <= len(list) {
			who = personOf(meaning{codes: []string{list[number-1]}})
		}
	}
	if who == 0 {
		return false
	}
	x.close()
	return x.lineTold(Question{ID: "line", Who: who, Text: strings.Join(list, " ")}, meaning{codes: []string{c.Means}})
}

// listed are the farmers of a board's choices, in order.
func listed(choices []Choice) []string {
	var list []string
	for _, c := range choices {
		if strings.HasPrefix(c.Means, "person=") {
			list = append(list, c.Means)
		}
	}
	return list
}

func (x *exchange) boardTold(q Question, m meaning) bool {
	if m.has("board=more") {
		list, at, _ := strings.Cut(q.Text, " ")
		from, _ := strconv.Atoi(at)
		if list == "round" {
			x.roundFrom(from + boardLines)
		} else {
			x.board(from + boardLines)
		}
		return true
	}
	id := personOf(m)
	if id == 0 {
		return false
	}
	c, ok := x.card(id)
	if !ok {
		x.say("farmer_gone", nil)
		return true
	}
	x.seen(c.Person)
	if l, ok := lineOf(&c, x.now); ok {
		x.say("line_head", phrases.Args{"Name": nameOf(c, x.lang()), "Why": reasonOf(l.Concerns[0]), "Since": dayWord(l.Today, l.Concerns[0].Since)})
	}
	x.put(Question{ID: "line", Who: c.Person, Text: strings.Join(listed(q.Choices), " ")})
	return true
}

// lineTold does what was chosen for one farmer of the board.
func (x *exchange) lineTold(q Question, m meaning) bool {
	c, ok := x.card(q.Who)
	if !ok {
		x.say("farmer_gone", nil)
		return true
	}
	switch m.value("line") {
	case "done":
		x.visited(c)
	case "not_today":
		x.noteFor(c.Person, Zone(c.Zone), 0, PutOff{DayOf(x.now, Zone(c.Zone)) + 1})
		x.seen(c.Person)
		x.say("put_off", phrases.Args{"Name": nameOf(c, x.lang())})
	case "why":
		x.because(c)
		x.put(Question{ID: "line", Who: c.Person, Text: q.Text})
	case "heap":
		x.drill(c)
	case "write":
		x.with("write", c.Person)
	case "answer_for":
		x.answerFor(c)
	default:
		return false
	}
	return true
}

// because tells the parts of the expected loss.
func (x *exchange) because(c Card) {
	l, ok := lineOf(&c, x.now)
	if !ok {
		x.say("because_nothing", phrases.Args{"Name": nameOf(c, x.lang())})
		return
	}
	for _, k := range l.Concerns[:min(3, len(l.Concerns))] {
		if strings.HasPrefix(k.Kind, "peril_") {
			x.say("because_peril", phrases.Args{"Why": reasonOf(k)})
			continue
		}
		x.say("because_part", phrases.Args{"Why": reasonOf(k), "Since": dayWord(l.Today, k.Since),
			"Chance": int(math.Round(k.Chance * 100)), "Days": int(math.Round(k.Days)), "Loss": int(math.Ceil(k.Loss()))})
	}
	x.say("because_guess", nil)
}

// keepsOpen are the questions that the morning's board does not push aside: words
// for a farmer, and what an officer is in the midst of writing down.
var keepsOpen = map[string]bool{"answer_text": true, "announce": true, "announce_text": true, "audience": true,
	"visit_stick": true, "visit_moisture": true, "visit_advice": true, "add_name": true, "add_consent": true}

// boardDue is the morning's board, sent only when it has something to say.
func (x *exchange) boardDue() {
	lines := Board(x.charges(), x.now)
	if len(lines) == 0 {
		x.clock(0, Missed{TaskBoard, x.today, "nothing to say"})
		return
	}
	x.clock(0, Reminded{Task: TaskBoard, Day: x.today, Tell: true})
	if !keepsOpen[x.open.ID] {
		x.close()
	}
	x.say("board_morning", phrases.Args{"N": len(lines)})
	x.showLines(lines, 0, "board")
	if x.open.ID != "board" {
		x.say("board_type", nil)
	}
}
