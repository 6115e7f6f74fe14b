package dialog

import (
	"hash/fnv"
	"slices"
	"strconv"
	"strings"
	"time"
	"unicode/utf8"

	"warmstick/dialog/phrases"
)

// Limits on one letter, in characters; contract, promise 4.
const (
	letterLimit = 300
	safetyLimit = 600
	mostLines   = 8 // what a small screen shows without scrolling
)

// worded is a slot value that each language says in its own way.
type worded func(lang string) string

// text renders a key, letting worded slots speak the language.
func text(lang, key string, args phrases.Args) string {
	said := make(phrases.Args, len(args))
	for k, v := range args {
		if w, ok := v.(worded); ok {
			v = w(lang)
		}
		said[k] = v
	}
	return strings.TrimSpace(phrases.Text(lang, key, said))
}

// answer closes the exchange: the lines to write, the letters to send and where
// the conversation stands.
func (x *exchange) answer() Answer {
	t := x.s.Talk
	t.Open = x.open
	if x.fresh {
		t.Seq++
		t.Passed++
		if x.was.Talk.Open.ID != x.open.ID {
			t.Passed = 0
		}
		p := x.asking(x.open)
		if x.asked != nil {
			p = *x.asked
		} else if x.open.Heap != 0 && len(x.s.Active()) > 1 {
			x.say("heap_mark", phrases.Args{"Heap": int(x.open.Heap)})
		}
		x.pieces = append(x.pieces, p)
	}
	if x.told != 0 {
		t.Past = append(slices.Clip(t.Past), Past{Told: x.told, Open: x.was.Talk.Open})
		if n := len(t.Past); n > 5 {
			t.Past = slices.Clone(t.Past[n-5:])
		}
	}
	letters := x.render(&t)
	if x.kind == Remind {
		letters = append(letters, x.copyToHelpers(t)...)
	}
	if x.line != "" {
		t.Line = imprint(x.line)
	}
	if x.s.Person.Consent == "" && !x.s.Person.Appointed {
		t.Line, t.Lines, t.Past = 0, nil, nil
	}
	x.lendZone()
	return Answer{Entries: x.entries, Talk: t, Letters: x.keeps(append(letters, x.letters...)), Forget: x.forget, Halt: x.halt, Talks: x.talks}
}

// render makes the pieces into as few letters as their limits allow. Buttons
// stand under the last one, where the question is.
func (x *exchange) render(t *Talk) []Letter {
	lang, kind := x.lang(), x.kind
	if kind == "" {
		kind = Reply
	}
	var letters []Letter
	for i, p := range x.pieces {
		limit := letterLimit
		if i < x.care {
			limit = safetyLimit
		}
		for _, body := range split(text(lang, p.key, p.args), limit) {
			n := len(letters)
			if n > 0 && i != x.care && letters[n-1].Picture == nil && !p.apart && p.pic == nil && p.file == nil &&
				utf8.RuneCountInString(letters[n-1].Text)+1+utf8.RuneCountInString(body) <= limit &&
				strings.Count(letters[n-1].Text, "\n")+strings.Count(body, "\n") < mostLines-1 {
				letters[n-1].Text += "\n" + body
				letters[n-1].Advice = addNew(letters[n-1].Advice, p.advice)
				continue
			}
			letters = append(letters, Letter{Text: body, Advice: addNew([]string{}, p.advice), Picture: p.pic, File: p.file})
		}
	}
	if len(letters) == 0 {
		return nil
	}
	x.vary(letters, t, lang)
	stage := x.stageNow()
	for i := range letters {
		l := &letters[i]
		l.To, l.Kind, l.Asks, l.Heap, l.Stage = x.s.Person.ID, kind, asksOf(t.Open), x.heapNow(), stage
	}
	last := &letters[len(letters)-1]
	if x.fresh {
		for i, c := range t.Open.Choices {
			last.Buttons = append(last.Buttons, Button{Label: c.Label, Press: "a" + strconv.Itoa(t.Seq) + "." + strconv.Itoa(i)})
		}
	}
	t.Said, t.SaidAt = imprint(last.Text), x.now
	for i := range letters {
		inNumerals(&letters[i], x.s.Person)
	}
	return letters
}

// vary keeps a text from going out twice running within an hour, unless the
// person's own line was the same.
func (x *exchange) vary(letters []Letter, t *Talk, lang string) {
	if x.line != "" && t.Line == imprint(x.line) && t.Line != 0 {
		return
	}
	before, since := t.Said, t.SaidAt
	for i := range letters {
		if now := imprint(letters[i].Text); now == before && x.now.Sub(since) < time.Hour {
			again := text(lang, "once_more", nil) + " " + letters[i].Text
			if utf8.RuneCountInString(again) <= letterLimit {
				letters[i].Text = again
			} else if cut := split(letters[i].Text, letterLimit/2); len(cut) > 1 {
				letters[i].Text = strings.Join(cut, "\n") // the same words, laid out anew
			}
		}
		before, since = imprint(letters[i].Text), x.now
	}
}

// imprint is a short print of a text, enough to see that it is the same again.
func imprint(s string) uint64 {
	h := fnv.New64a()
	h.Write([]byte(s))
	return h.Sum64()
}

func addNew(to, more []string) []string {
	for _, m := range more {
		if !slices.Contains(to, m) {
			to = append(to, m)
		}
	}
	return to
}

// split cuts a text at line ends, sentence ends or spaces into parts of at most
// limit characters. Most texts are one part.
func split(s string, limit int) []string {
	var parts []string
	for utf8.RuneCountInString(s) > limit {
		runes := []rune(s)
		cut := 0
		for _, ends := range []string{"\n", ".?!।", " "} {
			for i := limit - 1; i > limit/3; i-- {
				if strings.ContainsRune(ends, runes[i]) && (ends == "\n" || ends == " " || i+1 < len(runes) && (runes[i+1] == ' ' || runes[i+1] == '\n')) {
					cut = i + 1
					break
				}
			}
			if cut > 0 {
				break
			}
		}
		if cut == 0 {
			cut = limit
		}
		parts = append(parts, strings.TrimSpace(string(runes[:cut])))
		s = strings.TrimSpace(string(runes[cut:]))
	}
	if s != "" || len(parts) == 0 {
		parts = append(parts, s)
	}
	return parts
}

// heapNow is the heap this exchange was about, or the only one there is.
func (x *exchange) heapNow() HeapID {
	if x.heap != 0 {
		return x.heap
	}
	if x.open.Heap != 0 {
		return x.open.Heap
	}
	if active := x.s.Active(); len(active) > 0 {
		return active[len(active)-1].ID
	}
	if n := len(x.s.Heaps); n > 0 {
		return x.s.Heaps[n-1].ID
	}
	return 0
}

func (x *exchange) stageNow() Stage {
	h := x.Heap(x.heapNow())
	if h.Stage == "" {
		return NoStage
	}
	return h.Stage
}

// letter writes to somebody else, in their language. It joins no other letter.
func (x *exchange) letter(to State, kind LetterKind, key string, args phrases.Args, advice ...string) *Letter {
	lang := langOf(to)
	for _, body := range split(text(lang, key, args), letterLimit) {
		l := Letter{To: to.Person.ID, Kind: kind, Text: body, Asks: asksOf(to.Talk.Open), Stage: NoStage, Advice: addNew([]string{}, advice)}
		inNumerals(&l, to.Person)
		x.letters = append(x.letters, l)
	}
	return &x.letters[len(x.letters)-1]
}
