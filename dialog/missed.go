package dialog

import (
	"regexp"
	"slices"
	"strings"

	"warmstick/dialog/understand"
)

// Missed: what could not be understood gets the question again, then an example
// to type, then the officer; never a dead end.

// missed answers what could not be understood: first the question again, then
// an example to type, then the officer.
func (x *exchange) missed(m meaning) {
	if x.toldEarly(m) {
		x.s.Talk.Misses = 0
		return
	}
	x.s.Talk.Misses++
	q := x.open
	if key := smallTalk(m); key != "" {
		x.s.Talk.Misses = 0
		x.say(key, x.nameArgs())
		if q.ID != "" {
			x.again()
			return
		}
		x.tellNext()
		return
	}
	if q.ID == "doubt" {
		x.close() // who does not choose speaks of something else
		q = Question{}
	}
	if q.ID == "" {
		x.missedFree(m)
		return
	}
	if x.stoodMeanwhile(q, m) {
		return
	}
	if q.ID == "path" && x.s.Talk.Misses == 2 {
		x.say("choose_by_asking", nil)
		x.ask("choose_stuff", 0)
		return
	}
	switch {
	case len(m.guess) > 0 && x.s.Talk.Misses < 3:
		x.say("not_sure", nil)
	case x.s.Talk.Misses <= 1 && x.hurtLately():
		x.say("harm_watch", nil) // "he is fine now", most likely
	case x.s.Talk.Misses <= 1:
		x.say("not_clear", nil)
	case x.s.Talk.Misses == 2:
		x.say("hint_"+q.ID, nil)
	default:
		x.say("third_miss", nil)
		x.say("hint_"+q.ID, nil)
	}
	x.again()
}

// smallTalk names the answer to what asks and reports nothing; "" for all else.
func smallTalk(m meaning) string {
	switch {
	case m.has("chat=hello"):
		return "hello_again"
	case m.has("chat=thanks"):
		return "welcome"
	case m.gone:
		return "gone_good" // "the flies are gone"
	}
	return ""
}

// toldEarly takes what a line tells before or beside its question: the place is found,
// the stuff is cut and soaked, the worms of the trial stayed, so many bags came out.
func (x *exchange) toldEarly(m meaning) bool {
	h, ok := x.inHand()
	if !ok || questionMark(m.text) {
		return false
	}
	switch p := x.s.Person; {
	case p.Minute == 0 && x.open.ID != "hour" && clockFace.MatchString(m.text):
		return x.hourTold(x.open, meaning{text: m.text, day: x.today})
	case p.Units == "" && x.open.ID != "units" && len(strings.Fields(m.text)) == 1 && x.unitsIn(m.text) != "":
		return x.unitsTold(x.open, meaning{text: m.text, day: x.today})
	case h.Path == ColdPath && h.Built == 0 && x.open.ID != "pile" && x.affirms(m.text, "words_said_pile"):
		x.close()
		return x.pileTold(Question{ID: "pile", Heap: h.ID}, meaning{text: m.text, codes: []string{"answer=yes"}, day: x.today})
	case h.Trial != 0 && !h.TrialOK && h.Fed == 0 && x.open.ID == "" && x.affirms(m.text, "words_said_trial"):
		return x.trialTold(Question{ID: "trial", Heap: h.ID}, meaning{text: m.text, codes: []string{"answer=yes"}, day: x.today})
	case h.Ripe != 0 && h.YieldKg == 0 && x.open.ID == "" && x.countsCompost(m.text):
		x.harvestTold(h, m)
		x.goOn()
		return true
	case !h.unbegun():
		return false
	case h.Wished != 0 && h.Wished <= x.today && x.open.ID == "" && !m.has("when=tomorrow") && m.ahead <= x.today && x.affirms(m.text, "words_said_build"):
		return x.buildTold(Question{ID: "build", Heap: h.ID}, meaning{text: m.text, codes: []string{"answer=yes"}, day: x.today}) // before the hour at which it is asked
	case !h.Site && x.affirms(m.text, "words_said_site") && x.lineHolds(m.text, "words_place"):
		x.note(h.ID, SiteFound{})
		x.say("site_good", nil)
	case !h.Prepared && x.affirms(m.text, "words_said_prepared"):
		x.note(h.ID, Prepared{})
		x.say("prepared_good", nil)
	default:
		return false
	}
	if x.open.ID != "" {
		x.again()
	} else {
		x.goOn()
	}
	return true
}

// clockFace is an hour as a clock shows it, which can be nothing else: "6:30", "6h30".
var clockFace = regexp.MustCompile(`^\s*\d{1,2}\s*[:hH]\s*\d{2}\s*([ap]\.?m\.?)?\s*$`)

// bareGuess is what a bare "cold" or "dry" may mean while nothing is asked: the
// heap in hand tells which questions it could answer.
func (x *exchange) bareGuess(text string) []string {
	h, ok := x.inHand()
	if !ok || len(strings.Fields(text)) > 6 {
		return nil
	}
	var topics []string
	switch {
	case h.Built == 0 && h.Bottle.Working():
		topics = []string{"bottle", "smell"}
	case h.Fed != 0:
		topics = []string{"worms", "moisture", "smell"}
	case h.Built != 0:
		topics = []string{"stick", "moisture", "smell"}
	}
	var guess []string
	for _, topic := range topics {
		r := understand.Read(text, x.lang(), topic)
		if !r.Sure {
			continue
		}
		for _, c := range r.Codes {
			if isFact(c) && !strings.HasPrefix(c, "temp=") && !slices.Contains(guess, c) {
				guess = append(guess, c)
			}
		}
	}
	return guess
}

func (x *exchange) missedFree(m meaning) {
	if h, ok := x.inHand(); ok && h.unbegun() && h.Wished != 0 && m.ahead > x.today && m.value("when") == "later" {
		x.s.Talk.Misses = 0
		x.moveDay(h.ID, m.ahead) // "we build on Sunday"
		return
	}
	if h, ok := x.inHand(); ok && deedQuestion[m.underWay] != "" && suits(h, m.underWay) {
		x.s.Talk.Misses = 0
		x.underWay(Question{Heap: h.ID}, m.underWay)
		return
	}
	if m.value("when") != "" { // "tomorrow" after a job was set: the plan has its day
		x.s.Talk.Misses = 0
		x.say("later_fine", nil)
		x.tellNext()
		return
	}
	if h, ok := x.inHand(); ok && h.Fed != 0 && x.saysRipe(m) {
		x.s.Talk.Misses = 0
		x.ripe(h.ID, m.day)
		return
	}
	if len(m.guess) == 0 {
		m.guess = x.bareGuess(m.text)
	}
	if len(m.guess) > 0 {
		x.put(Question{ID: "doubt", Choices: append(labelled(x.lang(), m.guess[:min(len(m.guess), 4)]...), labelled(x.lang(), "answer=no")...)})
		return
	}
	if x.s.Talk.Misses > 2 {
		x.say("third_miss", nil)
	} else if x.s.Talk.Misses == 2 {
		x.say("hint_free", nil)
	} else if x.hurtLately() {
		x.say("harm_watch", nil)
	} else {
		x.say("not_clear_free", nil)
	}
	x.menu()
}
