package understand

import "strings"

// tally puts the pieces of a list together into amounts.
type tally struct {
	in     []sign
	pieces []piece
	out    []measure
	cur    measure
	first  part // what the list puts first, unit or stuff
	mends  bool // what comes next corrects the amount before
}

// piece is a number, a unit or a material of a list, or what parts two of them.
type piece struct {
	what     part
	n        float64
	s        string // the unit or the material; "same" for a number of the unit before
	from, to int
}

type part uint8

const (
	parting part = iota + 1 // a new list begins
	comma
	mending // "no, ..."
	count
	unit
	stuff
)

// measures finds every number, unit and material that belong together, whichever
// comes first: "3 baskets of dung", "debe mbili za samadi", "gobar teen tokri".
func (r *reader) measures() []measure {
	t := tally{in: r.signs, pieces: r.pieces(), cur: measure{from: -1}}
	t.first = t.leading(0)
	for k := range t.pieces {
		switch t.pieces[k].what {
		case parting:
			t.flush()
			t.first = t.leading(k + 1)
		case mending:
			t.flush()
			t.mends = true
		case comma:
			t.comma(k)
		case count:
			t.count(k)
		case unit:
			t.unit(k)
		case stuff:
			t.stuff(k)
		}
	}
	t.flush()
	return t.out
}

// pieces cuts a message into the pieces of a list.
func (r *reader) pieces() []piece {
	var ps []piece
	in := r.signs
	stop := func(i int) {
		if len(ps) > 0 && ps[len(ps)-1].what != parting {
			ps = append(ps, piece{what: parting, from: i, to: i})
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
				ps = append(ps, piece{count, (s.middle() + in[k].middle()) / 2, "", i, k + 1})
				i = k + 1
				continue
			}
			if another(in, i) {
				ps = append(ps, piece{count, s.middle(), "same", i, i + 1})
			} else {
				ps = append(ps, piece{count, s.middle(), "", i, i + 1})
			}
			i++
		case s.sense == "one" && s.text == "a" && i > 1 && inDim(in[i-1].sense, "unit") && in[i-2].sense == "num":
			i++ // "three bag a bagasse": of
		case s.sense == "one":
			if another(in, i) {
				ps = append(ps, piece{count, 1, "same", i, i + 1})
			} else if i+1 < len(in) && inDim(in[i+1].sense, "unit") || i > 0 && inDim(in[i-1].sense, "unit") {
				ps = append(ps, piece{count, 1, "", i, i + 1})
			}
			i++
		case s.sense == "plushalf":
			// debe mbili na nusu was joined; "debe na nusu" is one and a half
			if len(ps) > 0 && ps[len(ps)-1].what == unit {
				if len(ps) > 1 && ps[len(ps)-2].what == count {
					ps[len(ps)-2].n += 0.5
				} else {
					ps = append(ps, piece{count, 1.5, "", i, i + 1})
				}
			}
			i++
		case s.sense == "unit=load" && onHead(in, i):
			ps = append(ps, piece{unit, 0, "headload", i, i + 1})
			i++
		case inDim(s.sense, "unit"):
			ps = append(ps, piece{unit, 0, strings.TrimPrefix(s.sense, "unit="), i, i + 1})
			i++
		case i > 0 && s.sense == "correct" || s.sense == "imeant" || r.loneNo(i):
			ps = append(ps, piece{what: mending, from: i, to: i})
			i++
		case (s.sense == "no" || s.sense == "not") && (s.tongue == en || s.tongue == es || s.tongue == fr || oneOf(s.text, "sina", "hatuna", "hakuna", "hamna")):
			stop(i)
			i = pastDenied(in, i)
		case s.sense == "did=gathered" && s.hindi() && len(ps) > 0 && ps[len(ps)-1].what == stuff && (len(ps) == 1 || ps[len(ps)-2].what == parting || ps[len(ps)-2].what == comma):
			i++ // "patte ikatthe kiye 5 bori": the amount comes last
		case s.sense == "did=gathered" || s.sense == "have" || s.sense == "but" || s.sense == "." || s.sense == "!" || s.sense == "\n":
			stop(i)
			i++
		case s.sense == "," || s.sense == "and" || s.sense == ";" || s.sense == "+":
			ps = append(ps, piece{what: comma, from: i, to: i})
			i++
		case s.sense == "water": // no material, but the amount beside it is its own
			ps = append(ps, piece{stuff, 0, "water", i, i + 1})
			i++
		default:
			if m, n := material(in, i); n > 0 && m != "" {
				if s.hindi() && (lacks(in, i+n) || i+n+1 < len(in) && in[i+n].sense == "filler" && in[i+n+1].sense == "edge") { // "नीम के नीचे से"
					stop(i)
					i += n
					continue
				}
				ps = append(ps, piece{stuff, 0, m, i, i + n})
				i += n
				continue
			}
			i++
		}
	}
	return ps
}

// leading says what the list puts first from piece k on: the unit or the material; 0 for neither.
func (t *tally) leading(k int) part {
	counted := false
	for ; k < len(t.pieces); k++ {
		switch p := t.pieces[k]; {
		case p.s == "same":
			return unit // "and one of husk"
		case p.what == count:
			counted = true
		case p.what == stuff && counted && k+1 < len(t.pieces) && t.pieces[k+1].what != unit && t.pieces[k+1].what != stuff:
			counted = false // "25 grass": its unit is missing, it tells nothing of the others
		case p.what == stuff || p.what == unit:
			return p.what
		}
	}
	return 0
}

// flush closes an amount.
func (t *tally) flush() {
	if t.cur.from >= 0 && (t.cur.has || t.cur.unit != "" || t.cur.material != "") {
		if t.mends && len(t.out) > 0 {
			t.out[len(t.out)-1].mend(t.cur)
			t.mends = false
		} else {
			t.out = append(t.out, t.cur)
		}
	}
	t.cur = measure{from: -1}
}

// add stretches the amount over a piece.
func (t *tally) add(p piece) {
	if t.cur.from < 0 {
		t.cur.from = p.from
	}
	t.cur.to = p.to
}

// named says whether the amounts up to the next comma have a material of their own.
func (t *tally) named(k int) bool {
	for ; k < len(t.pieces) && t.pieces[k].what != comma && t.pieces[k].what != parting; k++ {
		if t.pieces[k].what == stuff {
			return true
		}
	}
	return false
}

// comma closes a full measure; "straw, 3 bags" goes on.
func (t *tally) comma(k int) {
	if t.cur.has && t.cur.unit != "" && t.cur.material != "" {
		t.flush()
	}
	if t.cur.from < 0 && t.named(k+1) {
		t.first = t.leading(k + 1) // "two headloads of napier, and goat dung 3 bags"
	} else if t.cur.material != "" && !t.cur.has && t.cur.unit == "" && (!(k+1 < len(t.pieces) && (t.pieces[k+1].what == count || t.pieces[k+1].what == unit)) || t.named(k+1)) {
		t.first = t.leading(k + 1) // "dry leaves, and one tin of dung"
		t.flush()
	} else if t.cur.has && t.cur.unit != "" && t.cur.material == "" && t.first != stuff && k+1 < len(t.pieces) && t.pieces[k+1].what != stuff {
		t.flush()
	}
}

// count takes a number.
func (t *tally) count(k int) {
	p := t.pieces[k]
	if t.cur.has || t.first == unit && t.cur.unit != "" && t.cur.material != "" {
		t.flush()
	}
	t.add(p)
	t.cur.n, t.cur.has = p.n, true
	if n := len(t.out); p.s == "same" && n > 0 {
		t.cur.unit = t.out[n-1].unit
	}
}

// unit takes a unit.
func (t *tally) unit(k int) {
	p := t.pieces[k]
	if t.cur.unit != "" {
		if t.cur.has && t.cur.material == "" && k > 0 && t.pieces[k-1].what == unit {
			t.add(p) // "headload bundle": keep the first
			return
		}
		t.flush()
	} else if t.cur.material != "" && t.cur.has && (t.first != stuff || t.in[p.from].tongue == sw && k+2 < len(t.pieces) && t.pieces[k+1].what == count && t.pieces[k+2].what == stuff) {
		t.flush() // "samadi 12, mifuko 2 za majani": Swahili puts the unit before its number
		t.first = unit
	}
	t.add(p)
	t.cur.unit = p.s
}

// stuff takes a material.
func (t *tally) stuff(k int) {
	p := t.pieces[k]
	if t.cur.material != "" {
		if k > 0 && t.pieces[k-1].what == stuff && t.pieces[k-1].to == p.from && !(t.cur.has && t.cur.unit != "") {
			// two names in a row: the later one is the thing ("banana" "leaves")
			t.cur.before = append(t.cur.before, t.cur.material)
			t.cur.material = p.s
			t.add(p)
			return
		}
		if k > 0 && t.pieces[k-1].what == stuff && t.pieces[k-1].to == p.from {
			return
		}
		t.flush()
	} else if t.first == stuff && t.cur.has && t.cur.unit != "" {
		t.flush()
	}
	t.add(p)
	t.cur.material = p.s
	if t.first != stuff && t.cur.has && t.cur.unit != "" {
		t.flush()
	}
}
