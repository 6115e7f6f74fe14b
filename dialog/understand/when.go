package understand

import (
	"cmp"
	"math"
	"strconv"
	"strings"
)

// Day is a day as a farmer names it. Exactly one of the ways is used: Offset days
// from today (-2 two days ago), Weekday (0 Sunday to 6, -1 none) or Month and Date
// (0 none). Past says that the day lies behind ("last Sunday", "two days ago").
type Day struct {
	Offset  int
	Weekday int
	Month   int
	Date    int
	Past    bool
}

// When finds the day a text names; ok is false when it names none. Hindi kal and
// parson are told apart by the verb beside them, and are no day without one.
func When(text, lang string) (Day, bool) { return when(text, lang, 0) }

// WhenAhead is When in answer to a question for a day to come: a bare kal is tomorrow.
func WhenAhead(text, lang string) (Day, bool) { return when(text, lang, future) }

// WhenBehind is When in answer to a question for a day gone by.
func WhenBehind(text, lang string) (Day, bool) { return when(text, lang, past) }

// when reads a day; lean is where a word that looks both ways looks without a verb.
func when(text, lang string, lean tense) (Day, bool) {
	if d, ok := isoDay(text); ok {
		return d, true
	}
	g, words := calendarWords(), keysOf(unhyphened(tokens(text)))
	if d, ok := day(g.read(words, languages(lang)...), text, lang, lean); ok {
		return d, true
	}
	for _, t := range elsewhere(lang) {
		if !g.holds(words, t) {
			continue
		}
		if d, ok := day(g.read(words, t), text, lang, lean); ok {
			return d, true
		}
	}
	return Day{Weekday: -1}, false
}

// Span reads a length of time, "ten days", "2 weeks", as days; ok is false when the
// text names none.
func Span(text, lang string) (days int, ok bool) {
	g, words := calendarWords(), keysOf(unhyphened(tokens(text)))
	for _, of := range [][]tongue{languages(lang), elsewhere(lang)} {
		in := g.read(words, of...)
		for i, s := range in {
			p, counted := strings.CutPrefix(s.sense, "per=")
			if !counted {
				continue
			}
			per, _ := strconv.Atoi(p)
			for _, k := range []int{i - 1, i + 1} {
				switch {
				case k < 0 || k >= len(in):
				case in[k].sense == "num":
					return int(math.Round(in[k].value * float64(per))), true
				case in[k].sense == "one":
					return per, true
				}
			}
		}
	}
	return 0, false
}

// isoDay reads 2026-03-12, 12/3/2026 and 12.3.2026 (day before month, as in all
// five languages outside North America; common practice).
func isoDay(text string) (Day, bool) {
	for _, f := range strings.Fields(Normal(text)) {
		f = strings.Trim(f, ".,;:!?()")
		for _, sep := range []string{"-", "/", "."} {
			p := strings.Split(f, sep)
			if len(p) != 3 && !(len(p) == 2 && sep == "/") {
				continue
			}
			var n [3]int
			good := true
			for i, s := range p {
				v, err := strconv.Atoi(s)
				good = good && err == nil
				n[i] = v
			}
			if !good {
				continue
			}
			m, d := n[1], n[0]
			if len(p) == 3 && len(p[0]) == 4 {
				d = n[2]
			}
			if m >= 1 && m <= 12 && d >= 1 && d <= 31 {
				return Day{Weekday: -1, Month: m, Date: d}, true
			}
		}
	}
	return Day{}, false
}

func day(in []sign, text, lang string, lean tense) (Day, bool) {
	none := Day{Weekday: -1}
	gone, coming := false, false
	for _, s := range in {
		gone = gone || s.sense == "ago" || s.sense == "last"
		coming = coming || s.sense == "in_days" || s.sense == "next"
	}
	for i, s := range in {
		switch dimension(s.sense) {
		case "off":
			n, _ := strconv.Atoi(strings.TrimPrefix(s.sense, "off="))
			return Day{Offset: n, Weekday: -1, Past: n < 0}, true
		case "mon":
			m, _ := strconv.Atoi(strings.TrimPrefix(s.sense, "mon="))
			for _, k := range []int{i - 1, i + 1, i - 2, i + 2} {
				if k >= 0 && k < len(in) && in[k].sense == "num" && in[k].value >= 1 && in[k].value <= 31 {
					return Day{Weekday: -1, Month: m, Date: int(in[k].value), Past: gone}, true
				}
			}
		case "per":
			p, _ := strconv.Atoi(strings.TrimPrefix(s.sense, "per="))
			n := 0
			for _, k := range []int{i - 1, i + 1, i - 2} {
				if k >= 0 && k < len(in) && in[k].sense == "num" {
					n = int(in[k].value)
					break
				}
				if k >= 0 && k < len(in) && in[k].sense == "one" {
					n = 1
					break
				}
			}
			switch {
			case n == 0 && gone:
				return Day{Offset: -p, Weekday: -1, Past: true}, true
			case n == 0 && coming && p > 1:
				return Day{Offset: p, Weekday: -1}, true
			case n > 0 && gone:
				return Day{Offset: -n * p, Weekday: -1, Past: true}, true
			case n > 0 && coming:
				return Day{Offset: n * p, Weekday: -1}, true
			}
		case "day":
			n, _ := strconv.Atoi(strings.TrimPrefix(s.sense, "day="))
			return Day{Weekday: n, Past: gone}, true
		}
		switch s.sense {
		case "kal", "parson":
			n := 1
			if s.sense == "parson" {
				n = 2
			}
			switch cmp.Or(direction(text, lang), lean) {
			case past:
				return Day{Offset: -n, Weekday: -1, Past: true}, true
			case future:
				return Day{Offset: n, Weekday: -1}, true
			}
		}
	}
	return none, false
}

// direction says whether the verbs of a text look back or forward.
func direction(text, lang string) tense {
	r := newReader(text, lang, "")
	defer r.close()
	r.hindiVerbs()
	for _, s := range r.signs {
		if s.tense&future != 0 || s.sense == "will" {
			return future
		}
	}
	for _, s := range r.signs {
		if s.tense&past != 0 || s.sense == "was" {
			return past
		}
	}
	return 0
}
