package dialog

import (
	"cmp"
	"maps"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"warmstick/dialog/phrases"
)

// Words to many: first who would get them and how they would look in each
// language, then a yes; nobody at night; a stop; and afterwards how many went.

func announceQuestions() map[string]question {
	return map[string]question{
		"announce_text": {asks: "text", raw: (*exchange).announceText},
		"announce":      {asks: "confirm", args: announceArgs, choices: choose("send=yes", "send=whom", "send=no"), answer: (*exchange).announceTold},
		"audience":      {asks: "target", answer: (*exchange).audienceTold},
		"sending":       {asks: "menu", choices: choose("send=stop", "send=fine"), answer: (*exchange).sendingTold},
	}
}

// announceLimit leaves room for the frame around the words in every language.
const announceLimit = 220

// announce begins: too long or empty words are said so, else the preview.
func (x *exchange) announce(words string) {
	words = strings.TrimSpace(words)
	if words == "" {
		x.ask("announce_text", 0)
		return
	}
	if n := utf8.RuneCountInString(words); n > announceLimit {
		x.say("announce_long", phrases.Args{"Is": n, "Most": announceLimit})
		x.ask("announce_text", 0)
		return
	}
	x.preview("all", words)
}

func (x *exchange) announceText(_ Question, m meaning) bool {
	if m.text == "" {
		return false
	}
	x.close()
	x.announce(m.text)
	return true
}

// An audience is "all", or one of group=…, stage=…, place=….
func (x *exchange) audience(whom string) []Card {
	kind, v, _ := strings.Cut(whom, "=")
	cards := x.charges()
	if kind == "group" {
		g, _ := strconv.ParseInt(v, 10, 64)
		if !x.s.Person.Staff(GroupID(g), Officer) {
			return nil
		}
		cards = x.s.Register.Members(GroupID(g))
	}
	return slices.DeleteFunc(slices.Clone(cards), func(c Card) bool {
		switch {
		case c.Stopped, c.Barred, c.Keeper != 0, c.Nameless, c.Person == x.s.Person.ID:
			return true
		case kind == "stage":
			return !slices.ContainsFunc(c.Heaps, func(h HeapCard) bool { return string(h.Stage) == v })
		case kind == "place":
			return c.Place() != v && c.Area != v
		}
		return false
	})
}

// preview shows the words as they would arrive, once for each language, with
// the count, and asks.
func (x *exchange) preview(whom, words string) {
	cards := x.audience(whom)
	if len(cards) == 0 {
		x.say("announce_nobody", nil)
		return
	}
	count := map[string]int{}
	for _, c := range cards {
		count[cmp.Or(c.Lang, phrases.Fallback)]++
	}
	for _, lang := range phrases.Languages() {
		if count[lang] > 0 {
			x.say("announce_preview", phrases.Args{"N": count[lang], "Lang": tongueLabel(lang), "Text": text(lang, x.signed("announcement"), phrases.Args{"Name": called(x.s.Person), "Text": words})})
		}
	}
	if night := x.sleeping(cards); night > 0 {
		x.say("announce_night", phrases.Args{"N": night})
	}
	x.put(Question{ID: "announce", Text: whom + "\n" + words})
}

func tongueLabel(tag string) string {
	for _, t := range tongues() {
		if t.tag == tag {
			return t.label
		}
	}
	return tag
}

// sleeping counts those for whom it is night.
func (x *exchange) sleeping(cards []Card) int {
	n := 0
	for _, c := range cards {
		if daytime(x.now, Zone(c.Zone)).After(x.now) {
			n++
		}
	}
	return n
}

func announceArgs(x *exchange, q Question) phrases.Args {
	whom, _, _ := strings.Cut(q.Text, "\n")
	return phrases.Args{"N": len(x.audience(whom))}
}

func (x *exchange) announceTold(q Question, m meaning) bool {
	whom, words, _ := strings.Cut(q.Text, "\n")
	switch {
	case m.has("send=yes") || m.yes():
		x.send(whom, words)
	case m.has("send=whom"):
		x.askAudience(words)
	case m.has("send=no") || m.no():
		x.say("announce_dropped", nil)
	default:
		return false
	}
	return true
}

// askAudience offers the groups, stages and places there are.
func (x *exchange) askAudience(words string) {
	q := Question{ID: "audience", Text: words}
	add := func(label, means string) {
		if len(q.Choices) < 9 {
			q.Choices = append(q.Choices, Choice{Label: label, Means: "whom=" + means})
		}
	}
	if groups := x.s.Person.Groups(Officer); len(groups) > 1 {
		for _, g := range groups {
			if known, ok := x.s.Register.Group(g); ok {
				add(known.Name, "group="+strconv.FormatInt(int64(g), 10))
			}
		}
	}
	stages, areas, towns := map[Stage]bool{}, map[string]bool{}, map[string]int{}
	for _, c := range x.audience("all") {
		if p := c.Place(); p != "" {
			areas[c.Area] = true
			towns[p]++
		}
		for _, h := range c.Heaps {
			stages[h.Stage] = true
		}
	}
	for _, s := range allStages {
		if stages[s] {
			add(stageWord(s)(x.lang()), "stage="+string(s))
		}
	}
	if len(areas) > 1 {
		for _, p := range places() {
			if areas[p.id] {
				add(capital(p.label), "place="+p.id)
			}
		}
	}
	if len(towns) > 1 {
		most := slices.SortedFunc(maps.Keys(towns), func(a, b string) int {
			return cmp.Or(cmp.Compare(towns[b], towns[a]), cmp.Compare(a, b))
		})
		for _, t := range most[:min(len(most), mostTowns)] {
			add(t, "place="+t)
		}
	}
	if len(q.Choices) == 0 {
		x.say("announce_one_kind", nil)
		x.preview("all", words)
		return
	}
	x.put(q)
}

// mostTowns is how many towns are offered, those with most farmers: a list longer than
// a screen is not read.
const mostTowns = 6

func (x *exchange) audienceTold(q Question, m meaning) bool {
	whom := m.value("whom")
	if whom == "" {
		return false
	}
	x.preview(whom, q.Text)
	return true
}

// send puts one letter for each farmer on its way and notes the batch.
func (x *exchange) send(whom, words string) {
	cards := x.audience(whom)
	if len(cards) == 0 {
		x.say("announce_nobody", nil)
		return
	}
	batch := x.s.Register.Chance(12)
	last := x.now
	for _, c := range cards {
		s, ok := x.s.Register.State(c.Person)
		if !ok {
			continue
		}
		first := len(x.letters)
		l := x.letter(s, Broadcast, x.signed("announcement"), phrases.Args{"Name": called(x.s.Person), "Text": words})
		for i := range x.letters[first:] {
			m := &x.letters[first+i]
			m.Batch = batch
			if at := daytime(x.now, s.Person.Zone()); at.After(x.now) {
				m.After = at
			}
		}
		last = later(last, l.After)
	}
	x.remark(0, Announced{Batch: batch, N: len(cards), Last: last})
	x.say("announce_sent", phrases.Args{"N": len(cards)})
	x.put(Question{ID: "sending", Text: batch})
}

// sendingTold stops an announcement under way: letters that have not gone stay.
func (x *exchange) sendingTold(q Question, m meaning) bool {
	switch {
	case m.has("send=stop"):
		x.stopSending(q.Text)
	case m.has("send=fine") || m.yes():
		x.say("announce_fine", nil)
	default:
		return false
	}
	return true
}

// stopSending takes back the letters of an announcement that have not gone. Only
// the officer who sent it has it in the diary.
func (x *exchange) stopSending(batch string) {
	if !slices.ContainsFunc(x.s.Person.Duty.Batches, func(b Batch) bool { return b.ID == batch }) {
		x.say("announce_gone", nil)
		return
	}
	waiting, _ := x.s.Register.Sending(batch)
	x.remark(0, BatchStopped{batch, waiting})
	x.halt = append(x.halt, batch)
	x.say("announce_stopped", phrases.Args{"N": waiting})
}

// countDue tells how many of an announcement went.
func (x *exchange) countDue() {
	for _, b := range x.s.Person.Duty.Batches {
		if b.Last.Add(countsAfter).After(x.now) {
			continue
		}
		waiting, refused := x.s.Register.Sending(b.ID)
		x.clock(0, Counted{b.ID})
		x.clock(0, Reminded{Task: TaskCount, Day: x.today, Tell: true})
		if b.N <= 0 {
			continue // all of it was taken back
		}
		x.apart()
		x.say("announce_count", phrases.Args{"Gone": max(0, b.N-waiting-refused), "All": b.N})
		if refused > 0 {
			x.say("announce_refused", phrases.Args{"N": refused})
		}
		if waiting > 0 {
			x.say("announce_waiting", phrases.Args{"N": waiting})
		}
	}
}

// allStages is the order in which stages are told.
var allStages = []Stage{Planning, Gathering, Ferment, Building, Heating, Turned, Resting, Opening, Cooling, Worms, Harvest, ColdDung, Done, Abandoned}
