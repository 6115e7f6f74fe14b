package dialog

import (
	"math"
	"slices"

	"warmstick/dialog/phrases"
)

// The week in numbers: what to teach next, told with the doubt that small counts
// leave, and papers for the officer's own office.

func digestQuestions() map[string]question {
	return map[string]question{
		"digest":       {asks: "menu", choices: choose("paper=workbook", "paper=page", "paper=names", "paper=none"), answer: (*exchange).paperTold},
		"digest_names": {asks: "confirm", choices: yesNo, answer: (*exchange).namesTold},
	}
}

// digest answers the officer's word.
func (x *exchange) digest() {
	cards := x.counted()
	if len(cards) == 0 {
		x.say("board_no_farmers", nil)
		return
	}
	x.tellFigures(cards)
	x.ask("digest", 0)
}

// counted are the cards of all the officer's groups, nameless ones too.
func (x *exchange) counted() []Card {
	var cards []Card
	seen := map[PersonID]bool{}
	for _, g := range x.s.Person.Groups(Officer) {
		for _, c := range x.s.Register.Members(g) {
			if !seen[c.Person] {
				seen[c.Person] = true
				cards = append(cards, c)
			}
		}
	}
	return cards
}

// digestDue is the weekly one; a group without a heap has nothing to tell.
func (x *exchange) digestDue() {
	cards := x.counted()
	if !slices.ContainsFunc(cards, func(c Card) bool { return len(c.Tales) > 0 }) {
		x.clock(0, Missed{TaskDigest, x.today, "nothing to say"})
		return
	}
	x.clock(0, Reminded{Task: TaskDigest, Day: x.today, Tell: true})
	x.tellFigures(cards)
	x.say("digest_type", nil)
}

func (x *exchange) tellFigures(cards []Card) {
	f := FiguresOf(cards, x.now)
	x.apart()
	x.say("digest_head", phrases.Args{"N": f.Farmers, "Phoneless": f.Phoneless, "Quiet": f.Quiet})
	for _, s := range f.ByStage {
		x.say("digest_stage", phrases.Args{"Stage": stageWord(Stage(s.Of)), "Heaps": s.Hit})
	}
	switch {
	case f.Hot.Enough():
		x.say("digest_hot", shareArgs(f.Hot))
	case f.Hot.All > 0:
		x.say("digest_few", phrases.Args{"All": f.Hot.All})
	}
	if s, ok := f.UsualHeat(); ok {
		args := shareArgs(s)
		args["Day"] = s.Of
		x.say("digest_heat", args)
	}
	for _, s := range f.HotByMix {
		if s.Enough() && s.Of != "unknown" {
			x.say("digest_mix", phrases.Args{"Mix": mixWord(s.Of), "Hit": s.Hit, "All": s.All})
		}
	}
	for _, s := range f.HotByStarter {
		if s.Enough() && s.Of != "unknown" {
			x.say("digest_starter", phrases.Args{"Starter": starterWord(s.Of), "Hit": s.Hit, "All": s.All})
		}
	}
	if days, ok := f.Median(); ok {
		x.say("digest_days", phrases.Args{"Days": days, "Plan": planDays})
	}
	if f.InKg > 0 || f.OutKg > 0 {
		x.say("digest_kilos", phrases.Args{"In": int(f.InKg), "Out": int(f.OutKg)})
	}
	for _, t := range f.Hours {
		if t.Asked >= leastCount && t.Answered > 0 {
			x.say("digest_hour", phrases.Args{"Hour": t.Hour, "Hit": t.Answered, "All": t.Asked, "Hours": max(1, t.Minutes/t.Answered/60)})
		}
	}
	x.teach(f)
}

// shareArgs are the counts of a share and its range, in percent.
func shareArgs(s Share) phrases.Args {
	low, high := s.Wilson()
	return phrases.Args{"Hit": s.Hit, "All": s.All, "Low": percent(low), "High": percent(high)}
}

func percent(p float64) int { return int(math.Round(100 * p)) }

func mixWord(class string) worded {
	return func(lang string) string { return phrases.Text(lang, "mixed_"+class, nil) }
}

func starterWord(s string) worded {
	return func(lang string) string { return phrases.Text(lang, "pick_pick_"+s, nil) }
}

// teach says what the numbers show most surely, or that they show nothing yet.
func (x *exchange) teach(f Figures) {
	told := false
	if s, ok := f.Weakest(f.HotByMix); ok {
		x.say("teach_mix", phrases.Args{"Mix": mixWord(s.Of)})
		told = true
	}
	if s, ok := f.Weakest(f.HotByStarter); ok {
		x.say("teach_starter", phrases.Args{"Starter": starterWord(s.Of)})
		told = true
	}
	if s, ok := f.Leak(); ok {
		x.say("teach_leak", phrases.Args{"Stage": stageWord(Stage(s.Of)), "Hit": s.Hit, "All": s.All})
		told = true
	}
	if !told {
		x.say("teach_none", nil)
	}
}

// paperTold sends the papers; names are asked for apart and noted.
func (x *exchange) paperTold(_ Question, m meaning) bool {
	switch m.value("paper") {
	case "workbook":
		x.papers("workbook", false)
	case "page":
		x.papers("page", false)
	case "names":
		x.ask("digest_names", 0)
	case "none":
		x.say("announce_fine", nil)
	default:
		return false
	}
	return true
}

func (x *exchange) namesTold(_ Question, m meaning) bool {
	switch {
	case m.yes():
		for _, g := range x.s.Person.Groups(Officer) {
			x.remark(0, NamesTaken{g})
		}
		x.papers("workbook", true)
	case m.no():
		x.papers("workbook", false)
	default:
		return false
	}
	return true
}

// papers sends one paper for each of the officer's groups, drawn when posted.
func (x *exchange) papers(kind string, names bool) {
	ends := map[string]string{"workbook": "xlsx", "page": "html"}
	groups := x.s.Person.Groups(Officer)
	if len(groups) == 0 {
		x.say("groups_none", nil)
		return
	}
	for _, g := range groups {
		known, ok := x.s.Register.Group(g)
		if !ok {
			continue
		}
		l := x.letter(x.s, Reply, "paper_"+kind, phrases.Args{"Group": known.Name})
		l.Asks = ""
		l.Paper = &Paper{Name: "heaps." + ends[kind], Kind: kind, Group: g, Names: names}
	}
}
