package dialog

import (
	"slices"
	"strings"

	"warmstick/dialog/phrases"
	"warmstick/dialog/understand"
)

// Officers and lead farmers: the words only they have, and whom they may ask
// about. Every look at a farmer goes through flock, so that another group's
// farmer is answered exactly like nobody.

func officerQuestions() map[string]question {
	set := map[string]question{}
	for _, part := range []map[string]question{
		boardQuestions(), drillQuestions(), visitQuestions(), relayQuestions(), announceQuestions(),
		groupQuestions(), digestQuestions(), proxyQuestions(), lessonQuestions(),
	} {
		for id, q := range part {
			set[id] = q
		}
	}
	return set
}

// staff says whether the person looks after anybody, or may begin to.
func (p Person) staff() bool {
	return p.Officer() || len(p.Groups(Lead)) > 0
}

// appoint makes the person an officer by the operator's word.
func (x *exchange) appoint() {
	if !x.s.Person.Appointed {
		x.remark(0, Appointed{})
	}
}

// bar notes that the person's phone refuses our letters; the board tells it.
func (x *exchange) bar(now bool) {
	if x.s.Person.Barred == now || x.s.Person.Consent == "" && !x.s.Person.Appointed {
		return
	}
	x.clock(0, BarSet{now})
}

// staffHears takes a line that only officers and lead farmers can say: the words
// of their trade, an answer to an alert, words for a farmer, and whatever is
// said on behalf of a farmer or in a lesson.
func (x *exchange) staffHears(line string, m Message) bool {
	if !x.s.Person.staff() {
		return false
	}
	if x.s.Person.Lang == "" && x.s.Talk.Lang == "" {
		x.s.Talk.Lang = x.read(line).lang // an officer is never asked for a language; "hola" tells it
	}
	c, known := understand.Parse(line, x.lang())
	if _, label := x.chosen(line); label {
		known = false // the label of a choice wins over a command of the same word
	}
	if known && x.officerWord(c, line) {
		x.s.Talk.Misses = 0
		return true
	}
	if x.inside(Message{Kind: m.Kind, Text: line, File: m.File}, c, known) {
		return true
	}
	if x.seenByWord(line) {
		return true
	}
	if x.verbs(line) {
		return true
	}
	if known && controls[c.Name] {
		return false
	}
	if x.open.ID == "answer_text" && line != "" {
		return x.answerLine(line)
	}
	return x.named(line) || x.wished(line) || x.greetOfficer(line)
}

// greetOfficer answers an officer's hello with who needs a visit; before there are
// farmers, with the words of the trade and what is missing of name and place.
func (x *exchange) greetOfficer(line string) bool {
	listed := x.open.ID == "board" || x.open.ID == "line" // yesterday's list is no answer to a greeting
	if x.open.ID != "" && x.open.ID != "menu" && !listed || !x.s.Person.Officer() || len(x.s.Active()) > 0 || !x.read(line).has("chat=hello") {
		return false
	}
	if len(x.charges()) > 0 && x.s.Person.Name != "" && x.s.Person.ZoneName != "" {
		x.close()
		x.say("hello_again", x.nameArgs())
		x.board(0)
		return true
	}
	x.say("officer_hello", nil)
	if !x.enrolNext() {
		x.menu()
	}
	return true
}

// controls are the words that work in every state and are never an answer to a
// farmer.
var controls = map[string]bool{
	"menu": true, "help": true, "undo": true, "stop": true, "officer": true, "status": true, "next": true,
	"delete_me": true, "my_data": true, "language": true, "settings": true, "start": true,
}

// officerWord obeys one of the officers' words; false leaves it to the words of
// everybody, which refuse it to those who may not.
func (x *exchange) officerWord(c understand.Command, line string) bool {
	officer := x.s.Person.Officer()
	switch c.Name {
	case "board":
		return officer && x.do(func() { x.board(0) })
	case "round":
		return officer && x.do(x.round)
	case "announce":
		return officer && x.do(func() { x.announce(c.Rest) })
	case "digest":
		return officer && x.do(x.digest)
	case "visited":
		return officer && x.do(func() { x.find("visited", c.Rest) })
	case "invite":
		return x.do(func() { x.invite(Farmer) })
	case "groups":
		return x.do(x.groups)
	case "heap":
		if _, own := digits(c.Rest); own || c.Rest == "" {
			return false
		}
		if len(x.s.Heaps) > 0 && len(namesakes(x.flock(), c.Rest)) == 0 {
			return false // a heap of the officer's own may have that name
		}
		return x.do(func() { x.find("heap", c.Rest) })
	}
	return false
}

// do runs an officer's word on a clean table: whatever was open is closed, and
// what went on inside a lesson or for a farmer ends.
func (x *exchange) do(f func()) bool {
	x.s.Talk.Inside = nil
	x.close()
	f()
	return true
}

// flock lists the farmers this person may look at, by id: all of a group for
// its officers, those without a phone for its lead farmers.
func (x *exchange) flock() []Card {
	var cards []Card
	for _, m := range x.s.Person.Roles {
		if m.Role == Farmer {
			continue
		}
		for _, c := range x.s.Register.Members(m.Group) {
			if c.Person == x.s.Person.ID || c.Nameless || m.Role == Lead && c.Keeper == 0 {
				continue
			}
			if !slices.ContainsFunc(cards, func(k Card) bool { return k.Person == c.Person }) {
				cards = append(cards, c)
			}
		}
	}
	return cards
}

// charges are the flock of an officer alone: whom a board, a round or an
// announcement may reach.
func (x *exchange) charges() []Card {
	lists := make([][]Card, 0, 1)
	n := 0
	for _, g := range x.s.Person.Groups(Officer) {
		cards := x.s.Register.Members(g)
		lists, n = append(lists, cards), n+len(cards)
	}
	all := make([]Card, 0, n)
	seen := make(map[PersonID]bool, n)
	for _, cards := range lists {
		for _, c := range cards {
			if !seen[c.Person] && !c.Nameless && c.Person != x.s.Person.ID {
				seen[c.Person] = true
				all = append(all, c)
			}
		}
	}
	return all
}

// card finds a farmer of the flock again by id; false for anybody else.
func (x *exchange) card(id PersonID) (Card, bool) {
	cards := x.flock()
	i := slices.IndexFunc(cards, func(c Card) bool { return c.Person == id })
	if i < 0 {
		return Card{}, false
	}
	return cards[i], true
}

// find looks a farmer up by name and goes on with what was wanted of them:
// heap, visited or write. Several of one name are asked apart.
func (x *exchange) find(want, name string) {
	if name = strings.TrimSpace(name); name == "" {
		x.say("which_farmer", nil)
		return
	}
	found := namesakes(x.flock(), name)
	if len(found) == 0 { // "visited Wanja, it was only steam"
		found = namesakes(x.flock(), x.farmerIn(spaced(name)))
	}
	switch len(found) {
	case 0:
		x.say("farmer_unknown", phrases.Args{"Name": shortName(name)})
	case 1:
		x.with(want, found[0].Person)
	default:
		q := Question{ID: "namesake", Text: want}
		for _, c := range found[:min(len(found), 9)] {
			q.Choices = append(q.Choices, Choice{Label: x.farmerLabel(c, found), Means: personMeans(c.Person)})
		}
		x.put(q)
	}
}

// with goes on with one farmer. The flock is asked anew each time: a role may
// have ended since the list was shown.
func (x *exchange) with(want string, id PersonID) {
	c, ok := x.card(id)
	if !ok {
		x.say("farmer_unknown", phrases.Args{"Name": "?"})
		return
	}
	switch want {
	case "visited":
		x.visited(c)
	case "write":
		x.put(Question{ID: "answer_text", Who: c.Person})
	default:
		x.drill(c)
	}
}

// namesakes finds farmers by name: the whole name first, then a part of it.
func namesakes(cards []Card, name string) []Card {
	want := understand.Normal(name)
	if want == "" {
		return nil
	}
	var whole, part []Card
	for _, c := range cards {
		have := understand.Normal(c.Name)
		switch {
		case have == "":
		case have == want:
			whole = append(whole, c)
		case strings.HasPrefix(have+" ", want+" ") || strings.Contains(" "+have+" ", " "+want+" ") || len(want) >= 3 && strings.HasPrefix(have, want):
			part = append(part, c)
		}
	}
	if len(whole) > 0 {
		return whole
	}
	return part
}

// shortName is a name as somebody typed it, cut to what a sentence bears.
func shortName(name string) string {
	if tidy := tidyName(name); tidy != "" {
		return tidy
	}
	return "?"
}

// farmerLabel names a farmer on a button, told apart from namesakes by place,
// and from a word of command by its number.
func (x *exchange) farmerLabel(c Card, among []Card) string {
	name := nameOf(c, x.lang())
	twins := 0
	for _, other := range among {
		if understand.Normal(other.Name) == understand.Normal(c.Name) {
			twins++
		}
	}
	if place := c.Place(); twins > 1 && place != "" {
		name += ", " + place
	}
	if _, word := understand.Parse(name, x.lang()); word {
		name = text(x.lang(), "farmer_named", phrases.Args{"Name": name})
	}
	return name
}

// nameOf is a farmer's name, or that they have not told it.
func nameOf(c Card, lang string) string {
	if c.Name == "" {
		return text(lang, "no_name", nil)
	}
	return c.Name
}

// called is how a person is spoken of: by name, or as a farmer where the name
// was not told yet.
func called(p Person) worded {
	return func(lang string) string { return nameOf(Card{Name: p.Name}, lang) }
}

// Place is where a farmer lives, as an officer looks for it: the town that was named,
// or the area.
func (c Card) Place() string { return placeLabel(c.Town, c.Area) }

// Place is the same of a person.
func (p Person) Place() string { return placeLabel(p.Town, p.Area) }

func placeLabel(town, area string) string {
	if town != "" {
		return town
	}
	if p, ok := placeByID(area); ok {
		return capital(p.label)
	}
	_, city, ok := strings.Cut(area, "/") // an IANA zone
	if !ok {
		return area
	}
	return strings.ReplaceAll(city, "_", " ")
}
