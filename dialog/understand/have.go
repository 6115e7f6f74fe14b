package understand

import (
	"math"
	"slices"
	"strconv"
	"strings"
)

// measure is one amount as found, with the clause-free position it stands at.
type measure struct {
	n        float64
	has      bool // a number was given
	unit     string
	material string
	before   []string // materials named right before it, without a word between
	from, to int      // sign indexes
}

// measures finds every number, unit and material that belong together, whichever
// comes first: "3 baskets of dung", "debe mbili za samadi", "gobar teen tokri".
func (r *reader) measures() []measure {
	type piece struct {
		what     byte // n, u, m
		n        float64
		s        string
		from, to int
	}
	var ps []piece
	in := r.signs
	stop := func(i int) {
		if len(ps) > 0 && ps[len(ps)-1].what != '|' {
			ps = append(ps, piece{what: '|', from: i, to: i})
		}
	}
	for i := 0; i < len(in); {
		s := in[i]
		switch {
		case s.text == "one" && i > 0 && (inDim(in[i-1].sense, "material") || in[i-1].sense == "dung") && (i+1 == len(in) || !inDim(in[i+1].sense, "unit")):
			stop(i) // "the dung one is not down"
			i++
		case s.sense == "num":
			if i+1 < len(in) && (in[i+1].sense == "degree" || in[i+1].sense == "minute" || in[i+1].sense == "dayword" || in[i+1].sense == "money" || in[i+1].sense == "hour" || in[i+1].sense == "percent" || inDim(in[i+1].sense, "len") || inDim(in[i+1].sense, "per")) {
				stop(i)
				i += 2
				continue
			}
			if k := alternative(in, i); k > 0 {
				ps = append(ps, piece{'n', (s.middle() + in[k].middle()) / 2, "", i, k + 1})
				i = k + 1
				continue
			}
			if another(in, i) {
				ps = append(ps, piece{'n', s.middle(), "same", i, i + 1})
			} else {
				ps = append(ps, piece{'n', s.middle(), "", i, i + 1})
			}
			i++
		case s.sense == "one" && s.text == "a" && i > 1 && inDim(in[i-1].sense, "unit") && in[i-2].sense == "num":
			i++ // "three bag a bagasse": of
		case s.sense == "one":
			if another(in, i) {
				ps = append(ps, piece{'n', 1, "same", i, i + 1})
			} else if i+1 < len(in) && inDim(in[i+1].sense, "unit") || i > 0 && inDim(in[i-1].sense, "unit") {
				ps = append(ps, piece{'n', 1, "", i, i + 1})
			}
			i++
		case s.sense == "plushalf":
			// debe mbili na nusu was joined; "debe na nusu" is one and a half
			if len(ps) > 0 && ps[len(ps)-1].what == 'u' {
				if len(ps) > 1 && ps[len(ps)-2].what == 'n' {
					ps[len(ps)-2].n += 0.5
				} else {
					ps = append(ps, piece{'n', 1.5, "", i, i + 1})
				}
			}
			i++
		case s.sense == "unit=load" && onHead(in, i):
			ps = append(ps, piece{'u', 0, "headload", i, i + 1})
			i++
		case inDim(s.sense, "unit"):
			ps = append(ps, piece{'u', 0, strings.TrimPrefix(s.sense, "unit="), i, i + 1})
			i++
		case i > 0 && s.sense == "correct" || s.sense == "imeant" || r.loneNo(i):
			ps = append(ps, piece{what: '!', from: i, to: i})
			i++
		case (s.sense == "no" || s.sense == "not") && (s.tongue == en || s.tongue == es || s.tongue == fr || oneOf(s.text, "sina", "hatuna", "hakuna", "hamna")):
			stop(i)
			i = pastDenied(in, i)
		case s.sense == "did=gathered" && s.hindi() && len(ps) > 0 && ps[len(ps)-1].what == 'm' && (len(ps) == 1 || ps[len(ps)-2].what == '|' || ps[len(ps)-2].what == ','):
			i++ // "patte ikatthe kiye 5 bori": the amount comes last
		case s.sense == "did=gathered" || s.sense == "have" || s.sense == "but" || s.sense == "." || s.sense == "!" || s.sense == "\n":
			stop(i)
			i++
		case s.sense == "," || s.sense == "and" || s.sense == ";" || s.sense == "+":
			ps = append(ps, piece{what: ',', from: i, to: i})
			i++
		case s.sense == "water": // no material, but the amount beside it is its own
			ps = append(ps, piece{'m', 0, "water", i, i + 1})
			i++
		default:
			if m, n := material(in, i); n > 0 && m != "" {
				if s.hindi() && (lacks(in, i+n) || i+n+1 < len(in) && in[i+n].sense == "filler" && in[i+n+1].sense == "edge") { // "नीम के नीचे से"
					stop(i)
					i += n
					continue
				}
				ps = append(ps, piece{'m', 0, m, i, i + n})
				i += n
				continue
			}
			i++
		}
	}
	// does the list put the material first, from piece k on?
	leading := func(k int) byte {
		counted := false
		for ; k < len(ps); k++ {
			switch p := ps[k]; {
			case p.s == "same":
				return 'u' // "and one of husk"
			case p.what == 'n':
				counted = true
			case p.what == 'm' && counted && k+1 < len(ps) && ps[k+1].what != 'u' && ps[k+1].what != 'm':
				counted = false // "25 grass": its unit is missing, it tells nothing of the others
			case p.what == 'm' || p.what == 'u':
				return p.what
			}
		}
		return 0
	}
	first := leading(0)
	var out []measure
	cur := measure{from: -1}
	mends := false // what comes next corrects the amount before
	flush := func() {
		if cur.from >= 0 && (cur.has || cur.unit != "" || cur.material != "") {
			if mends && len(out) > 0 {
				out[len(out)-1].mend(cur)
				mends = false
			} else {
				out = append(out, cur)
			}
		}
		cur = measure{from: -1}
	}
	add := func(p piece) {
		if cur.from < 0 {
			cur.from = p.from
		}
		cur.to = p.to
	}
	// named says whether the amounts up to the next comma have a material of their own.
	named := func(k int) bool {
		for ; k < len(ps) && ps[k].what != ',' && ps[k].what != '|'; k++ {
			if ps[k].what == 'm' {
				return true
			}
		}
		return false
	}
	for k, p := range ps {
		switch p.what {
		case '|':
			flush()
			first = leading(k + 1)
		case '!':
			flush()
			mends = true
		case ',':
			// a comma closes a full measure; "straw, 3 bags" goes on
			if cur.has && cur.unit != "" && cur.material != "" {
				flush()
			}
			if cur.from < 0 && named(k+1) {
				first = leading(k + 1) // "two headloads of napier, and goat dung 3 bags"
			} else if cur.material != "" && !cur.has && cur.unit == "" && (!(k+1 < len(ps) && (ps[k+1].what == 'n' || ps[k+1].what == 'u')) || named(k+1)) {
				first = leading(k + 1) // "dry leaves, and one tin of dung"
				flush()
			} else if cur.has && cur.unit != "" && cur.material == "" && first != 'm' && k+1 < len(ps) && ps[k+1].what != 'm' {
				flush()
			}
		case 'n':
			if cur.has || first == 'u' && cur.unit != "" && cur.material != "" {
				flush()
			}
			add(p)
			cur.n, cur.has = p.n, true
			if n := len(out); p.s == "same" && n > 0 {
				cur.unit = out[n-1].unit
			}
		case 'u':
			if cur.unit != "" {
				if cur.has && cur.material == "" && k > 0 && ps[k-1].what == 'u' {
					add(p) // "headload bundle": keep the first
					continue
				}
				flush()
			} else if cur.material != "" && cur.has && (first != 'm' || in[p.from].tongue == sw && k+2 < len(ps) && ps[k+1].what == 'n' && ps[k+2].what == 'm') {
				flush() // "samadi 12, mifuko 2 za majani": Swahili puts the unit before its number
				first = 'u'
			}
			add(p)
			cur.unit = p.s
		case 'm':
			if cur.material != "" {
				if k > 0 && ps[k-1].what == 'm' && ps[k-1].to == p.from && !(cur.has && cur.unit != "") {
					// two names in a row: the later one is the thing ("banana" "leaves")
					cur.before = append(cur.before, cur.material)
					cur.material = p.s
					add(p)
					continue
				}
				if k > 0 && ps[k-1].what == 'm' && ps[k-1].to == p.from {
					continue
				}
				flush()
			} else if first == 'm' && cur.has && cur.unit != "" {
				flush()
			}
			add(p)
			cur.material = p.s
			if first != 'm' && cur.has && cur.unit != "" {
				flush()
			}
		}
	}
	flush()
	return out
}

// mend takes over what a correction names: "5 bags of straw, no, hay".
func (m *measure) mend(by measure) {
	if by.has {
		m.n, m.has = by.n, true
	}
	if by.unit != "" {
		m.unit = by.unit
	}
	if by.material != "" {
		m.material = by.material
	}
}

// loneNo says whether sign i is a "no" between marks, with more to come.
func (r *reader) loneNo(i int) bool {
	if s := r.signs[i].sense; s != "no" && s != "not" || i == 0 || i+1 == len(r.signs) {
		return false
	}
	return r.tokens[r.signs[i-1].from].kind == mark && r.signs[i+1].sense == ","
}

// pastDenied skips what "no" at sign i denies: "no dung but 3 bags of leaves".
func pastDenied(in []sign, i int) int {
	for k := i + 1; k < len(in) && k <= i+4; k++ {
		switch {
		case in[k].sense == "num" || inDim(in[k].sense, "unit") || in[k].sense == "," || in[k].sense == "but":
			return i + 1
		}
		if m, n := material(in, k); n > 0 && m != "" {
			return k + n
		}
	}
	return i + 1
}

// another says whether sign i stands for one more of the measure before: "two
// sacks of pulp and one of husk".
func another(in []sign, i int) bool {
	if in[i].sense == "num" && in[i].value != 1 {
		return false // "una docena de"
	}
	if i+1 >= len(in) || in[i+1].sense != "inside_of" && in[i+1].text != "de" && in[i+1].text != "d" {
		return false
	}
	switch in[i].text {
	case "one", "another", "uno", "una", "un", "une", "otro", "otra", "autre":
		return true
	}
	return false
}

// short writes a number as short as it goes: 3, 2.5, 0.25.
func short(v float64) string {
	return strconv.FormatFloat(math.Round(v*100)/100, 'f', -1, 64)
}

// haves turns measures into codes, unless what was measured is already used up.
func (r *reader) haves(cs []clause) (out []string) {
	if !slices.ContainsFunc(r.signs, func(s sign) bool { return inDim(s.sense, "unit") }) {
		return nil
	}
	for _, m := range r.measures() {
		if !m.has || m.unit == "" || m.material == "" || m.material == "water" || m.n <= 0 {
			continue
		}
		c := r.clauseAt(cs, m.from)
		if e := r.clauseAt(cs, m.to-1); e != nil && e != c && r.used(cs, e) {
			continue // "the worms are well I took two pans": not of worms
		}
		if c != nil && (c.foreign || c.ask != telling || c.cond || c.has("maybe") || r.used(cs, c) || c.want || c.will || c.has("canq") || c.tomorrow || c.later && !c.has("have", "didaux") && !r.deedBefore(c.signs) || r.absent(c) || r.theirsOrGone(c, m)) {
			continue
		}
		out = append(out, "have="+short(m.n)+" "+m.unit+" "+m.material)
	}
	return out
}

// theirsOrGone says whether what was measured is of kin or neighbours, or used up: "my cousin has 3
// carts", "the 4 bags are finished".
func (r *reader) theirsOrGone(c *clause, m measure) bool {
	from, to := r.signs[m.from].from, r.signs[m.to-1].to
	owner := false
	for k := range c.signs {
		s := &c.signs[k]
		switch {
		case s.from >= to:
			if s.sense == "usedup" || s.sense == "finish" {
				return true
			}
		case s.from >= from:
		case s.sense == "neighbor", s.sense == "person" && kin(r.tokens[s.to-1].text):
			owner = oneOf(r.word(s.to), "has", "had", "a", "tiene", "ana", "wana") ||
				oneOf(r.word(s.to), "के", "ke") && oneOf(r.word(s.to+1), "यहाँ", "यहां", "पास", "yahan", "yaha", "paas", "pass")
		case s.sense == "have" || s.sense == "me":
			owner = false // "... and me, I have"
		}
	}
	return owner
}

// clauseAt finds the clause that holds sign i of the whole text.
func (r *reader) clauseAt(cs []clause, i int) *clause {
	from := r.signs[i].from
	for k := range cs {
		n := len(cs[k].signs)
		if n > 0 && cs[k].signs[0].from <= from && from < cs[k].signs[n-1].to {
			return &cs[k]
		}
	}
	return nil
}

// used says whether the clause (or the one it continues) uses the amount up.
func (r *reader) used(cs []clause, c *clause) bool {
	for k := range cs {
		if &cs[k] != c {
			continue
		}
		for j := k; j >= 0 && cs[j].sentence == c.sentence; j-- {
			gather, use, far, counted := false, false, false, false
			for _, s := range cs[j].signs {
				if s.sense == "make" && s.hindi() && s.tense&past == 0 {
					continue // "तैयार कम्पोस्ट": ready, and nothing was made of it
				}
				switch s.sense {
				case "collect", "bring", "did=gathered", "have", "remain":
					gather = true
				case "give":
					if s.hindi() && r.says(&cs[j], "ने", "ne") && !cs[j].has("me") {
						gather = true // "मिल वाले ने दे दी": was given
					} else {
						use = true
					}
				case "put", "fill", "make", "stir", "takeout", "use", "sell", "eat", "drink":
					use = true
				case "foreign", "money":
					if oneOf(r.word(s.from-1), "en", "in", "at", "dans", "au", "la", "the", "el") && oneOf(r.word(s.from-2), "en", "in", "at", "dans", "y", "and", "", ",") {
						continue // "en la cocina dos baldes": where they are
					}
					if s.tongue == sw && strings.HasSuffix(r.tokens[s.from].text, "ni") {
						continue // "dukani nimepata": at the shop
					}
					far = far || !counted // "the school has 3 bags", but not "3 bags from the school"
				case "num", "one":
					counted = true
				default:
					if inDim(s.sense, "did") {
						use = true
					}
				}
			}
			gather = gather || j == k && r.says(&cs[j], "there", "theres", "shed", "store", "barn", "nina", "tuna")
			if gather && !use || j == k && !use && cs[j].has("only") {
				return false // "used up the straw, only 1 bag of husks left"
			}
			use = use || cs[j].has("layer") && cs[j].has("done", "finish") // "layer two is done: three basins of dung"
			if use || far {
				return true
			}
			if cs[j].end == "." {
				break
			}
		}
		// Hindi puts the verb last: "do tasla gobar, teen bori bhusa dala"
		for j := k + 1; j < len(cs) && cs[j-1].end != "." && cs[j-1].end != "?"; j++ {
			for _, s := range cs[j].signs {
				if (s.tongue == hi || s.tongue == hiLatn) && (s.sense == "put" || s.sense == "give" || inDim(s.sense, "did") && s.sense != "did=gathered") && j == k+1 && !inDim(cs[j].signs[0].sense, "did") {
					return true
				}
			}
		}
	}
	return false
}

func (r *reader) absent(c *clause) bool {
	for at := range c.signs {
		s := &c.signs[at]
		if (s.sense == "not" || s.sense == "no") && !c.has("only") {
			for _, x := range c.signs {
				if x.sense == "want" || x.sense == "have" {
					return true
				}
			}
		}
	}
	return false
}

// alternative finds the second of two numbers that stand before one unit: "two or three
// baskets", and in Hindi words without an or, "दस बारह पूला". 0 is none.
func alternative(in []sign, i int) int {
	spoken := func(s *sign) bool { return s.sense == "num" && !s.typed }
	switch {
	case i+3 < len(in) && in[i+1].sense == "or" && in[i+2].sense == "num" && inDim(in[i+3].sense, "unit"):
		return i + 2
	case i+2 < len(in) && in[i].hindi() && spoken(&in[i]) && spoken(&in[i+1]) && in[i].value > 0 && in[i].value < in[i+1].value && inDim(in[i+2].sense, "unit"):
		return i + 1
	}
	return 0
}

// lacks says whether a Hindi "is not" follows at sign i: "गोबर तो नहीं है".
func lacks(in []sign, i int) bool {
	for ; i < len(in); i++ {
		switch in[i].sense {
		case "filler", "only":
		case "not":
			return i+1 < len(in) && in[i+1].sense == "is"
		default:
			return false
		}
	}
	return false
}
