package dialog

import (
	"cmp"
	"slices"
	"strings"
	"time"
	"unicode"

	"warmstick/dialog/phrases"
	"warmstick/dialog/understand"
)

// Enrolment asks only what is needed now: the language, whether we may keep
// anything, a name, the place. Hour and units are asked once there is a plan.

// consentVersion names the wording of what is kept; a new wording gets a new one.
const consentVersion = "2026-1"

func enrolQuestions() map[string]question {
	return map[string]question{
		"language": {asks: "language", choices: tongueChoices, raw: (*exchange).languageTold},
		"consent":  {asks: "consent", choices: yesNo, answer: (*exchange).consentTold},
		"name":     {asks: "name", raw: (*exchange).nameTold},
		"place":    {asks: "place", choices: placeChoices, raw: (*exchange).placeTold},
		"hour":     {asks: "hour", choices: choose("say=6:00", "say=6:30", "say=7:00", "say=18:00"), raw: (*exchange).hourTold},
		"units":    {asks: "units", choices: choose("pick=feet", "pick=metres"), raw: (*exchange).unitsTold},
	}
}

// stranger leads a person who has not agreed to anything yet. Nothing but the
// language is remembered of them.
func (x *exchange) stranger(line string, m meaning) bool {
	if x.s.Person.Consent != "" || x.s.Person.Appointed {
		return false
	}
	if c, ok := understand.Parse(line, x.lang()); ok && x.strangerWord(c.Name) {
		return true
	}
	if m.has("ask=stop") && x.strangerWord("stop") {
		return true
	}
	if m.choice.Means != "" && x.open.ID != "" {
		return x.strangerPick(m.choice)
	}
	if x.join(line) {
		return true
	}
	switch x.open.ID {
	case "language":
		if x.languageTold(x.open, m) {
			return true
		}
		x.s.Talk.Misses++
		if x.s.Talk.Misses > 1 {
			x.say("hint_language", nil)
		}
		x.again()
	case "consent":
		if tag, ok := findTongue(line); ok {
			x.s.Talk.Lang = tag
			x.say("what_kept", nil)
			x.ask("consent", 0)
			return true
		}
		if !x.consentTold(x.open, m) {
			x.say("consent_first", nil)
			x.again()
		}
	default:
		x.greet(m.lang)
	}
	return true
}

// greet is the very first word; the language is guessed from the hello.
func (x *exchange) greet(lang string) {
	if lang != "" && x.s.Talk.Lang == "" {
		x.s.Talk.Lang = lang
	}
	x.say("hello", nil)
	x.ask("language", 0)
}

func (x *exchange) strangerPick(c Choice) bool {
	if x.s.Person.Consent != "" || x.s.Person.Appointed {
		return false
	}
	m := meaning{text: strings.TrimPrefix(c.Means, "say="), codes: []string{c.Means}, picked: true, day: x.today}
	if x.open.ID == "language" {
		return x.languageTold(x.open, m)
	}
	return x.consentTold(x.open, m)
}

// strangerWord answers the words that work everywhere, before consent.
func (x *exchange) strangerWord(name string) bool {
	switch name {
	case "help", "menu", "why", "next", "status", "my_data", "settings":
		x.say("help_stranger", nil)
	case "officer":
		x.say("officer_none", nil)
	case "undo":
		x.say("undo_nothing", nil)
	case "delete_me":
		x.say("forgotten", nil)
		x.close()
		x.forget = []PersonID{x.s.Person.ID}
		return true
	case "stop":
		x.say("stopped", nil, "stopped")
		x.close()
		return true
	default:
		return false
	}
	if x.open.ID == "" {
		x.ask("language", 0)
	} else {
		x.again()
	}
	return true
}

func tongueChoices(*exchange, Question) []Choice {
	var list []Choice
	for _, t := range tongues()[:5] {
		list = append(list, Choice{Label: t.label, Means: "say=" + t.tag})
	}
	return list
}

func (x *exchange) languageTold(_ Question, m meaning) bool {
	tag, ok := findTongue(m.text)
	if !ok && m.picked {
		tag, ok = findTongue("say=" + m.value("say"))
	}
	if !ok && x.open.ID == "language" {
		tag, ok = misspeltTongue(m.text)
	}
	if !ok && x.s.Talk.Misses >= 2 && x.open.ID == "language" && x.s.Person.Consent == "" {
		tag, ok = cmp.Or(m.lang, phrases.Fallback), true // the language they write in; they can name another any time
	}
	if !ok {
		return false
	}
	x.s.Talk.Misses = 0
	if x.s.Person.Consent == "" && !x.s.Person.Appointed {
		x.s.Talk.Lang = tag
		x.say("what_kept", nil)
		if tag == "hi" {
			x.say("abc_offer", nil)
		}
		x.ask("consent", 0)
		return true
	}
	x.close()
	x.note(0, LanguageSet{tag})
	x.say("language_set", nil)
	x.goOn()
	return true
}

func (x *exchange) consentTold(_ Question, m meaning) bool {
	switch {
	case m.yes():
		code := x.s.Talk.Code
		x.remark(0, Consented{consentVersion})
		x.remark(0, LanguageSet{x.lang()})
		x.s.Talk.Code, x.s.Talk.Misses = "", 0
		x.say("consented", nil)
		if code != "" {
			x.joinQuietly(code)
		}
		x.ask("name", 0)
		return true
	case m.no():
		x.say("refused", nil)
		x.close()
		return true
	}
	return false
}

// nameArgs gives the name to greet with.
func (x *exchange) nameArgs() phrases.Args { return phrases.Args{"Name": called(x.s.Person)} }

func (x *exchange) nameTold(_ Question, m meaning) bool {
	if tag, ok := findTongue(m.text); ok && len(strings.Fields(m.text)) == 1 { // "español", to who was never asked for a language
		x.note(0, LanguageSet{tag})
		x.close()
		x.ask("name", 0)
		return true
	}
	name := tidyName(x.bareName(m.text))
	if name == "" || m.picked {
		return false
	}
	x.close()
	x.note(0, Named{name})
	x.say("name_kept", x.nameArgs())
	x.goOn()
	return true
}

// bareName takes "my name is" and the like off a name; words_name_lead and
// words_name_tail list what people put before and behind it.
func (x *exchange) bareName(said string) string {
	words := strings.Fields(strings.Trim(strings.TrimSpace(said), ".!,।"))
	listed := func(key string, part []string) bool {
		phrase := bare(strings.Join(part, " "))
		return slices.Contains(bareWords(x.lang(), key), phrase) || slices.Contains(bareWords(phrases.Fallback, key), phrase)
	}
	from, to := 0, len(words)
	for n := 1; n < len(words); n++ {
		if listed("words_name_lead", words[:n]) {
			from = n
		}
	}
	for n := len(words) - 1; n > from; n-- {
		if listed("words_name_tail", words[n:]) {
			to = n
		}
	}
	return strings.Join(words[from:to], " ")
}

// tidyName keeps letters, marks, digits and a few joining signs, at most 30.
func tidyName(s string) string {
	var b strings.Builder
	n := 0
	for _, r := range s {
		if n >= 30 {
			break
		}
		switch {
		case unicode.IsLetter(r) || unicode.IsMark(r) || unicode.IsDigit(r) || strings.ContainsRune("'’-.", r):
			b.WriteRune(r)
			n++
		case unicode.IsSpace(r):
			b.WriteRune(' ')
			n++
		}
	}
	name := strings.Trim(strings.Join(strings.Fields(b.String()), " "), "'-. ")
	if !strings.ContainsFunc(name, unicode.IsLetter) {
		return ""
	}
	return name
}

func placeChoices(x *exchange, _ Question) []Choice {
	var list []Choice
	for _, p := range places() {
		for _, l := range p.offered {
			if l == x.lang() && len(list) < 5 {
				list = append(list, Choice{Label: p.in(l), Means: "place=" + p.id})
			}
		}
	}
	return list
}

func capital(s string) string {
	r := []rune(s)
	if len(r) > 0 {
		r[0] = unicode.ToUpper(r[0])
	}
	return string(r)
}

func (x *exchange) placeTold(_ Question, m meaning) bool {
	p, ok := placeByID(m.value("place"))
	town := ""
	if !ok {
		p, ok = findPlace(m.text)
		town = p.townIn(m.text)
	}
	if !ok && x.s.Talk.Misses >= 2 {
		p, ok = x.likelyPlace(), true
		if len(strings.Fields(m.text)) <= 3 && len(m.codes) == 0 && !questionMark(m.text) {
			town = tidyName(m.text) // no list has every village
		}
	}
	if !ok {
		return false
	}
	x.close()
	x.placed(p, town)
	x.goOn()
	return true
}

// likelyPlace is the guess when a place cannot be found out: a further try would
// lose the farmer. The language tells the likeliest zone, and the place can be
// set again by word.
func (x *exchange) likelyPlace() place {
	p, ok := placeByID(map[string]string{"hi": "india", "hi-Latn": "india", "es": "mexico", "fr": "senegal"}[x.lang()])
	if !ok {
		p, _ = placeByID("kenya")
	}
	x.say("place_guessed", phrases.Args{"Place": capital(p.label)})
	return p
}

func (x *exchange) placed(p place, town string) {
	x.note(0, Placed{Area: p.id, Zone: p.zone, Town: town})
	x.today = DayOf(x.now, x.s.Person.Zone())
	x.say("place_kept", phrases.Args{"Time": clockText(x.now.In(x.s.Person.Zone()))})
}

// passedOver is how often a farmer may speak of other things before a question
// that can be guessed is not put any more (our choice).
const passedOver = 2

func clockText(t time.Time) string { return t.Format("15:04") }

// Reminders go out between these minutes of the farmer's day; contract, promise 5.
const (
	dayBegins = 6 * 60
	dayEnds   = 20 * 60
)

func (x *exchange) hourTold(_ Question, m meaning) bool {
	said := m.text
	if v := m.value("say"); v != "" {
		said = v
	}
	minute := -1
	if x.tellsFact(m) || x.countsCompost(m.text) {
		return false // "20 baskets" names no hour
	}
	if m.no() {
		minute = DefaultMinute
	} else if h, min, ok := understand.Clock(said, x.lang()); ok {
		minute = h*60 + min
	} else if n, ok := digits(said); ok && n < 24 {
		minute = n * 60
	} else if m.has("when=skip") || m.has("when=later") || x.s.Talk.Misses >= 2 {
		minute = DefaultMinute
	}
	if minute < 0 {
		return false
	}
	x.close()
	if minute < dayBegins || minute >= dayEnds {
		x.say("hour_night", nil)
		x.ask("hour", 0)
		return true
	}
	x.note(0, HourSet{minute})
	x.say("hour_kept", phrases.Args{"Time": clockText(time.Date(2000, 1, 1, minute/60, minute%60, 0, 0, time.UTC))})
	x.goOn()
	return true
}

// unitsIn reads the name of a measure of length as the system it belongs to.
func (x *exchange) unitsIn(said string) (units string) {
	for _, l := range understand.Lengths("1 "+said, x.lang()) {
		units = map[string]string{"ft": "feet", "in": "feet", "m": "metres", "cm": "metres"}[l.Unit]
	}
	return units
}

func (x *exchange) unitsTold(_ Question, m meaning) bool {
	units := m.value("pick")
	if units == "" {
		units = x.unitsIn(m.text)
	}
	if units == "" && x.s.Talk.Misses >= 2 {
		units = x.units()
	}
	if units == "" {
		return false
	}
	x.close()
	x.note(0, UnitsSet{units})
	x.say("units_kept", nil)
	x.goOn()
	return true
}

// enrolNext asks what is still missing before a heap can be planned.
func (x *exchange) enrolNext() bool {
	p := x.s.Person
	switch {
	case p.Name == "":
		x.ask("name", 0)
	case p.ZoneName == "" && x.was.Talk.Open.ID == "place" && x.was.Talk.Passed >= passedOver:
		x.placed(x.likelyPlace(), "")
		return false
	case p.ZoneName == "":
		x.ask("place", 0)
	default:
		return false
	}
	return true
}
