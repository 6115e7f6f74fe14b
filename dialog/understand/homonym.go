package understand

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// homonym is a row of homonyms.tsv: a word that has one sense in the word tables takes
// another in some company. "bit" is little before a quality, "fine" is good of worms and
// OK of a plan.
type homonym struct {
	tongue tongue
	words  []string // as typed, without accents; "maar*" begins so; none: any word of the sense
	as     entry
	where  []company
}

// company is one condition of a row, on the clause the word stands in or on the open
// question.
type company struct {
	what string
	list []string // one of these; none for the conditions that stand alone
	not  bool
}

// companies are the conditions a row may name. What they mean is in lexicon/README.md.
var companies = []string{"asked", "with", "prev", "next", "next2", "left", "right", "says", "begins", "core", "ends",
	"first", "last", "only", "single", "follows"}

// homonym files a row: words parted by "|" or "*", the sense they have, the one they take,
// conditions parted by spaces.
func (l *filing) homonym(r row) error {
	if len(r.cols) < 3 {
		return fmt.Errorf("need words, the sense they have, the sense they take")
	}
	as, err := parseSense(r.tongue, r.cols[2])
	if err != nil {
		return err
	}
	h := homonym{tongue: r.tongue, as: as}
	if r.cols[0] != "*" {
		for w := range strings.SplitSeq(r.cols[0], "|") {
			h.words = append(h.words, string(plain([]rune(w))))
		}
	}
	if len(r.cols) > 3 {
		for term := range strings.FieldsSeq(r.cols[3]) {
			c := company{}
			term, c.not = strings.CutPrefix(term, "!")
			what, list, listed := strings.Cut(term, "=")
			if !slices.Contains(companies, what) {
				return fmt.Errorf("no such condition %q", term)
			}
			c.what = what
			if listed {
				c.list = strings.Split(list, "|")
			}
			if err := c.known(); err != nil {
				return err
			}
			h.where = append(h.where, c)
		}
	}
	for sense := range r.forms() {
		if _, ok := senseIDs()[sense]; !ok {
			return fmt.Errorf("no such sense %q", sense)
		}
		l.homonyms[sense] = append(l.homonyms[sense], h)
		l.ambiguous[jumble(sense)%uint(len(l.ambiguous))] = true
	}
	return nil
}

// known tells a condition on senses that names one which is none.
func (c *company) known() error {
	switch c.what {
	case "with", "prev", "next", "next2":
	default:
		return nil
	}
	for _, x := range c.list {
		_, sense := senseIDs()[x]
		_, dim := codeValues[strings.TrimSuffix(x, "=")]
		if !sense && !(dim && strings.HasSuffix(x, "=")) && x != "quality" && x != "act" && x != "name" {
			return fmt.Errorf("no such sense %q", x)
		}
	}
	return nil
}

// turn gives sign k of the n-th clause the sense it takes there.
func (r *reader) turn(c *clause, n, k int) {
	s := &c.signs[k]
	if !r.lex.ambiguous[jumble(s.sense)%uint(len(r.lex.ambiguous))] {
		return
	}
	senses := r.lex.homonyms[s.sense]
	for i := range senses {
		h := &senses[i]
		if !r.fits(h, c, n, k) {
			continue
		}
		s.sense, s.tense = h.as.sense(), h.as.tense
		if k > 0 && c.signs[k-1].sense == "not" && (act(s.sense) || quality(s.sense)) {
			s.neg = true // "did not feed them", once it is a verb
		}
		return
	}
}

func (r *reader) fits(h *homonym, c *clause, n, k int) bool {
	s := &c.signs[k]
	if h.tongue != s.tongue && h.tongue != everyone && !(s.hindi() && (h.tongue == hi || h.tongue == hiLatn)) {
		return false
	}
	if len(h.words) > 0 && !slices.ContainsFunc(h.words, func(w string) bool { return r.written(s, w) }) {
		return false
	}
	for i := range h.where {
		if w := &h.where[i]; r.keeps(w, c, n, k) == w.not {
			return false
		}
	}
	return true
}

// written says whether a sign is written with a word of a row.
func (r *reader) written(s *sign, w string) bool {
	if begin, open := strings.CutSuffix(w, "*"); open {
		return strings.HasPrefix(s.text, begin)
	}
	return r.names(s, w)
}

// keeps says whether sign k of the n-th clause stands in a company, its "!" aside.
func (r *reader) keeps(w *company, c *clause, n, k int) bool {
	s := &c.signs[k]
	at := func(k int) bool {
		return k >= 0 && k < len(c.signs) && slices.ContainsFunc(w.list, func(x string) bool { return r.like(&c.signs[k], x) })
	}
	switch w.what {
	case "asked":
		return slices.Contains(w.list, r.asked) || w.list[0] == "act" && actOf(r.asked) != ""
	case "with":
		return slices.ContainsFunc(c.signs, func(s sign) bool {
			return slices.ContainsFunc(w.list, func(x string) bool { return r.like(&s, x) })
		})
	case "prev":
		return at(k - 1)
	case "next":
		return at(k + 1)
	case "next2":
		return at(k + 2)
	case "left":
		return slices.Contains(w.list, r.word(s.from-1))
	case "right":
		return slices.Contains(w.list, r.word(s.to))
	case "says":
		return r.says(c, w.list...)
	case "begins":
		return slices.Contains(w.list, s.text)
	case "core":
		return w.list[0] == strconv.Itoa(c.core())
	case "ends":
		return slices.Contains(w.list, c.end)
	case "first":
		return k == 0
	case "last":
		return k == len(c.signs)-1
	case "only":
		return len(c.signs) == 1
	case "single":
		return s.to == s.from+1
	}
	return n > 0 // follows
}

// like says whether a sign has the sense x of a condition: a sense, "seen=" for any of its
// dimension, "quality", "act", or "name" for somebody's.
func (r *reader) like(s *sign, x string) bool {
	switch x {
	case "quality":
		return quality(s.sense)
	case "act":
		return act(s.sense)
	case "name":
		return s.sense == "" && r.named(s.from)
	}
	if dim, of := strings.CutSuffix(x, "="); of {
		return inDim(s.sense, dim)
	}
	return s.sense == x
}
