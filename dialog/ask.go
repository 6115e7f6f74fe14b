package dialog

import (
	"slices"
	"strconv"
	"strings"
	"sync"
	"unicode"

	"warmstick/dialog/phrases"
	"warmstick/dialog/understand"
)

// question is one thing we may ask: how it is put, how a short answer to it is
// read, and what an answer does. Its text is the phrase ask_<id>, an example of
// an answer is hint_<id>.
type question struct {
	asks  string // the contract's word for it
	topic string // how package understand reads short answers to it
	also  string // a second way to read an answer, where the first is not sure
	task  Task   // the act it belongs to, for "later" and "not yet"
	// choices are shown as numbered buttons; a number, a button and the words
	// mean the same.
	choices func(*exchange, Question) []Choice
	args    func(*exchange, Question) phrases.Args
	// raw answers are data (a name, a date) and are tried before any other reading.
	raw func(*exchange, Question, meaning) bool
	// answer takes what was meant; false means "that was no answer to this".
	answer func(*exchange, Question, meaning) bool
	// phrase overrides ask_<id> where one question is put in several ways.
	phrase func(*exchange, Question) string
}

// asksOf is the contract's word for an open question; empty when none is.
func asksOf(q Question) string {
	if q.ID == "" {
		return ""
	}
	return questions()[q.ID].asks
}

// ask opens a question; it is put at the end of the reply.
func (x *exchange) ask(id string, h HeapID) {
	x.put(Question{ID: id, Heap: h, Task: questions()[id].task})
}

func (x *exchange) put(q Question) {
	if len(q.Choices) == 0 {
		if list := questions()[q.ID].choices; list != nil {
			q.Choices = list(x, q)
		}
	}
	x.open, x.fresh = q, true
	if q.Heap != 0 {
		x.heap = q.Heap
	}
}

// close leaves no question open.
func (x *exchange) close() { x.open, x.fresh = Question{}, false }

// asking is the sentence that puts a question.
func (x *exchange) asking(q Question) piece {
	kind := questions()[q.ID]
	p := piece{key: "ask_" + q.ID}
	if kind.phrase != nil {
		p.key = kind.phrase(x, q)
	}
	if kind.args != nil {
		p.args = kind.args(x, q)
	}
	return p
}

// again puts the open question once more, as it stood.
func (x *exchange) again() {
	if x.open.ID != "" {
		x.fresh = true
	}
}

// meaning is what one message says, as far as it could be understood.
type meaning struct {
	text   string   // as written, trimmed
	codes  []string // reports and answers that are sure
	guess  []string // what an unsure message may mean
	picked bool     // it came by number, button or label
	day    Day      // when the things reported happened
	dated  bool     // the message named that day
	ahead  Day      // the day that the message names, read as one to come
	named  HeapID   // the heap that the message names, as in "heap 2"
	lang   string   // the language the text seems to be in

	choice   Choice // of the open question, if the message names one by number, label or place
	underWay string // with when=later: the deed in hand
	gone     bool   // a trouble is told of as not there any more
}

func (m meaning) has(code string) bool { return slices.Contains(m.codes, code) }

// value is the value of the first code of a kind: value("stick") is "hot".
func (m meaning) value(kind string) string {
	for _, c := range m.codes {
		if v, ok := strings.CutPrefix(c, kind+"="); ok {
			return v
		}
	}
	return ""
}

func (m meaning) yes() bool { return m.has("answer=yes") }
func (m meaning) no() bool  { return m.has("answer=no") }

// choose builds choices: each is a meaning, whose label is the phrase
// pick_<meaning> with = and spaces as underscores.
func choose(means ...string) func(*exchange, Question) []Choice {
	return func(x *exchange, _ Question) []Choice { return labelled(x.lang(), means...) }
}

func labelled(lang string, means ...string) []Choice {
	var list []Choice
	for _, m := range means {
		list = append(list, Choice{Label: text(lang, labelKey(m), nil), Means: m})
	}
	return list
}

func labelKey(means string) string {
	return "pick_" + keyOf(means)
}

// keyOf turns a meaning into the tail of a phrase key.
func keyOf(means string) string {
	return strings.Map(func(r rune) rune {
		if strings.ContainsRune("= :", r) {
			return '_'
		}
		return r
	}, means)
}

var yesNo = choose("answer=yes", "answer=no")

// pickOf finds the choice a text means: its number in either script, or its label.
func pickOf(q Question, line string) (Choice, bool) {
	if n, ok := digits(line); ok && n >= 1 && n <= len(q.Choices) {
		return q.Choices[n-1], true
	}
	for _, c := range q.Choices {
		if strings.EqualFold(plain(c.Label), plain(line)) {
			return c, true
		}
	}
	return Choice{}, false
}

// chosen finds the choice of the open question that a line means: as pickOf, or by its
// place in words, "the second one".
func (x *exchange) chosen(line string) (Choice, bool) {
	if c, ok := pickOf(x.open, line); ok || len(x.open.Choices) < 2 {
		return c, ok
	}
	n, ok := understand.Nth(line, x.lang())
	if !ok || n > len(x.open.Choices) {
		return Choice{}, false
	}
	return x.open.Choices[n-1], true
}

// wordPick finds the one choice whose listed words a text holds: the phrase
// words_<meaning> lists them, where a language needs it.
func wordPick(lang string, q Question, line string) (Choice, bool) {
	return pickByWords(lang, q, line, false)
}

// pickByWords is wordPick; firm asks for two words at least, or the whole text,
// where one word alone may mean something else. What is listed nowhere is tried by ear:
// "kaldo" for "caldo".
func pickByWords(lang string, q Question, line string, firm bool) (Choice, bool) {
	said := spaced(line)
	c, ok := pickByWordsAs(lang, q, said, firm, bareWords)
	if ok || lang == "en" { // English is heard as it is written
		return c, ok
	}
	byEar := func(l, key string) []string { return heardWords(lang, l, key) }
	return pickByWordsAs(lang, q, " "+understand.Heard(said, lang)+" ", firm, byEar)
}

// pickByWordsAs finds the choice by the longest of its listed words that a spaced text
// holds, both written in one way.
func pickByWordsAs(lang string, q Question, said string, firm bool, listed func(lang, key string) []string) (Choice, bool) {
	var found []Choice
	longest := 0
	for _, c := range q.Choices {
		key := "words_" + keyOf(c.Means)
		for _, l := range []string{lang, phrases.Fallback} {
			for _, w := range listed(l, key) {
				whole := strings.HasPrefix(c.Means, "answer=") // "done" is yes, "not done" is not
				if w == "" || !strings.Contains(said, " "+w+" ") || (whole || firm && !strings.Contains(w, " ")) && strings.TrimSpace(said) != w {
					continue
				}
				if len(w) > longest {
					found, longest = nil, len(w)
				}
				if len(w) == longest && !slices.Contains(found, c) {
					found = append(found, c)
				}
			}
		}
	}
	if len(found) != 1 {
		return Choice{}, false
	}
	return found[0], true
}

// gapMark parts a bare phrase where other words may stand.
const gapMark = " … "

// wordLists keeps the word lists in the forms in which lines are searched for them.
var wordLists sync.Map

// bareWords are the words a language lists under a key, with nothing but words in them.
func bareWords(lang, key string) []string {
	return written("", lang, key, phrases.Words(lang, key), func(w string) string {
		if before, after, gap := strings.Cut(w, "…"); gap {
			return bare(before) + gapMark + bare(after)
		}
		return bare(w)
	})
}

// heardWords are the bareWords of a list as a speaker of the language ear hears them.
func heardWords(ear, lang, key string) []string {
	return written(ear, lang, key, bareWords(lang, key), func(w string) string { return understand.Heard(w, ear) })
}

// written is a list of words as an ear writes them down, made once; "" is the form in
// which they are listed.
func written(ear, lang, key string, list []string, as func(string) string) []string {
	id := [3]string{ear, lang, key}
	if words, ok := wordLists.Load(id); ok {
		return words.([]string)
	}
	words := make([]string, len(list))
	for i, w := range list {
		words[i] = as(w)
	}
	wordLists.Store(id, words)
	return words
}

// bare is a text in its normal form with nothing but words in it.
func bare(s string) string {
	return strings.Join(strings.FieldsFunc(understand.Normal(s), func(r rune) bool {
		return !unicode.IsLetter(r) && !unicode.IsMark(r) && !unicode.IsDigit(r)
	}), " ")
}

// spaced is a bare text with a space on either side, as words are looked for in it.
func spaced(s string) string { return " " + bare(s) + " " }

// questionMark says whether a line asks by its mark, and so reports nothing.
func questionMark(line string) bool { return strings.ContainsAny(line, "?？") }

// plain drops what does not matter when a label is typed.
func plain(s string) string { return strings.Trim(strings.TrimSpace(s), ".!,।) ") }

func isNumber(s string) bool {
	_, ok := digits(s)
	return ok
}

// digits reads a bare number in Western or Devanagari digits.
func digits(s string) (int, bool) {
	s = strings.Trim(plain(s), "([")
	if s == "" || len(s) > 12 {
		return 0, false
	}
	out := make([]rune, 0, len(s))
	for _, r := range s {
		if r >= '०' && r <= '९' {
			r = r - '०' + '0'
		}
		out = append(out, r)
	}
	n, err := strconv.Atoi(string(out))
	return n, err == nil && n >= 0
}
