package understand

import (
	"math"
	"strconv"
	"strings"
)

// material names what sign i (with its neighbours) is, and how many signs that
// takes: "goat droppings", "samadi ya mbuzi", "tiges de maïs", "dry leaves".
func material(in []sign, i int) (name string, n int) {
	s := in[i]
	if m, ok := strings.CutPrefix(s.sense, "material="); ok {
		if m == "cow_dung" || m == "dung" {
			if a, k := near(in, i, "animal"); k > 0 {
				return a + "_dung", k
			}
		}
		if m == "husk" || m == "straw" {
			if c, k := near(in, i, "crop"); k > 0 && c == "coffee" && m == "husk" {
				return "coffee_husk", k
			} else if k > 0 {
				return m, k
			}
		}
		if m == "grass" && i+1 < len(in) && in[i+1].sense == "moisture=dry" {
			return "hay", 2
		}
		return m, 1
	}
	if a, ok := strings.CutPrefix(s.sense, "animal="); ok {
		for k := i + 1; k < len(in) && k <= i+3; k++ {
			switch in[k].sense {
			case "dung", "material=cow_dung":
				if a == "other" {
					a = "cow"
				}
				return a + "_dung", k - i + 1
			case "filler":
				continue
			}
			break
		}
		return "", 0
	}
	crop, isCrop := strings.CutPrefix(s.sense, "crop=")
	if isCrop {
		for k := i + 1; k < len(in) && k <= i+3; k++ {
			x := in[k].sense
			if m := ofCrop(crop, x); m != "" {
				return m, k - i + 1
			}
			if x != "filler" && x != "moisture=dry" && x != "green" {
				break
			}
		}
		return "", 0
	}
	switch s.sense {
	case "dung":
		if a, k := near(in, i, "animal"); k > 0 {
			if a == "other" {
				a = "cow"
			}
			return a + "_dung", k
		}
		return "cow_dung", 1
	case "stem", "stalk", "straws", "huskw", "peel", "pulp":
		if c, k := near(in, i, "crop"); k > 0 {
			if m := ofCrop(c, s.sense); m != "" {
				return m, k
			}
		}
		switch s.sense {
		case "stalk":
			return "stalks", 1
		case "straws":
			return "straw", 1
		case "huskw":
			return "husk", 1
		case "pulp":
			return "coffee_pulp", 1
		}
		return "", 0
	case "leaf":
		k := 1
		for k < 4 && i+k < len(in) {
			switch in[i+k].sense {
			case "moisture=dry", "old":
				return "dry_leaves", k + 1
			case "green":
				return "leaves_green", k + 1
			case "filler":
				k++
				continue
			}
			if strings.HasPrefix(in[i+k].sense, "crop=") {
				k++
				continue
			}
			break
		}
		return "dry_leaves", 1
	case "green", "moisture=dry", "old":
		for k := i + 1; k < len(in) && k <= i+2; k++ {
			switch in[k].sense {
			case "leaf":
				if s.sense == "green" {
					return "leaves_green", k - i + 1
				}
				return "dry_leaves", k - i + 1
			case "material=grass":
				if s.sense == "green" {
					return "grass", k - i + 1
				}
				return "hay", k - i + 1
			case "material=cow_dung", "dung", "material=straw", "material=maize_stover", "material=weeds", "seen=weeds", "material=compost", "stalk", "straws", "huskw", "material=husk":
				m, n := material(in, k)
				if m == "" && in[k].sense == "seen=weeds" {
					return "weeds", k - i + 1
				}
				return m, n + k - i
			case "crop=maize", "crop=banana", "crop=cereal", "crop=rice", "crop=stalky", "crop=cane":
				m, n := material(in, k)
				if m != "" {
					return m, n + k - i
				}
			}
			if in[k].sense != "filler" && !strings.HasPrefix(in[k].sense, "animal=") {
				break
			}
			if strings.HasPrefix(in[k].sense, "animal=") {
				m, n := material(in, k)
				if m != "" {
					return m, n + k - i
				}
			}
		}
		return "", 0
	case "worm":
		return "worms", 1
	case "compost":
		return "compost", 1
	case "seen=weeds":
		return "weeds", 1
	case "seen=ash":
		return "ash", 1
	}
	return "", 0
}

func ofCrop(crop, part string) string {
	switch part {
	case "stalk", "stem", "straws", "material=straw", "material=stalks":
		switch crop {
		case "maize":
			return "maize_stover"
		case "cereal", "rice":
			return "straw"
		case "banana":
			return "banana_stem"
		case "cane":
			return "cane_waste"
		case "stalky", "other":
			return "stalks"
		}
	case "huskw", "material=husk":
		if crop == "coffee" {
			return "coffee_husk"
		}
		return "husk"
	case "pulp":
		if crop == "coffee" {
			return "coffee_pulp"
		}
		if crop == "fruit" {
			return "fruit_waste"
		}
	case "peel":
		switch crop {
		case "fruit", "banana":
			return "fruit_waste"
		case "veg":
			return "veg_scraps"
		case "nut", "cereal", "rice", "maize":
			return "husk"
		case "cane":
			return "cane_waste"
		case "coffee":
			return "coffee_husk"
		}
	case "leaf", "material=dry_leaves":
		switch crop {
		case "maize":
			return "maize_stover"
		case "cane":
			return "cane_waste"
		}
		return "dry_leaves"
	}
	return ""
}

// near looks for a word of a class within two words after sign i (past "of",
// "de", "ya", "ki"), and says how many signs that spans.
func near(in []sign, i int, class string) (value string, n int) {
	for k := i + 1; k < len(in) && k <= i+3; k++ {
		if v, ok := strings.CutPrefix(in[k].sense, class+"="); ok {
			return v, k - i + 1
		}
		switch in[k].sense {
		case "filler", "moisture=dry", "green", "and", "old", "one":
			if in[k].sense == "and" && in[k].text != "na" {
				return "", 0
			}
			continue
		}
		return "", 0
	}
	return "", 0
}

// measure is one amount as found, with the clause-free position it stands at.
type measure struct {
	n        float64
	has      bool // a number was given
	unit     string
	material string
	from, to int // sign indexes
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
		case s.sense == "num":
			if i+1 < len(in) && (in[i+1].sense == "degree" || in[i+1].sense == "minute" || in[i+1].sense == "dayword" || in[i+1].sense == "money" || in[i+1].sense == "hour" || in[i+1].sense == "percent" || dimension(in[i+1].sense) == "len" || dimension(in[i+1].sense) == "per") {
				stop(i)
				i += 2
				continue
			}
			ps = append(ps, piece{'n', s.middle(), "", i, i + 1})
			i++
		case s.sense == "one":
			if i+1 < len(in) && dimension(in[i+1].sense) == "unit" || i > 0 && dimension(in[i-1].sense) == "unit" {
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
		case dimension(s.sense) == "unit":
			if len(ps) > 0 && ps[len(ps)-1].what == 'u' && ps[len(ps)-1].to == i && i > 0 && s.sense != "unit="+ps[len(ps)-1].s {
				// "donkey load", "20 kg bag": the second is the measure only when the first has no number
			}
			ps = append(ps, piece{'u', 0, strings.TrimPrefix(s.sense, "unit="), i, i + 1})
			i++
		case s.sense == "did=gathered" || s.sense == "have" || s.sense == "." || s.sense == "!" || s.sense == "\n":
			stop(i)
			i++
		case s.sense == "," || s.sense == "and" || s.sense == ";" || s.sense == "+":
			ps = append(ps, piece{what: ',', from: i, to: i})
			i++
		default:
			if m, n := material(in, i); n > 0 && m != "" {
				ps = append(ps, piece{'m', 0, m, i, i + n})
				i += n
				continue
			}
			i++
		}
	}
	// does the list put the material first?
	first := byte(0)
	for _, p := range ps {
		if p.what == 'm' || p.what == 'u' {
			first = p.what
			break
		}
	}
	var out []measure
	cur := measure{from: -1}
	flush := func() {
		if cur.from >= 0 && (cur.has || cur.unit != "" || cur.material != "") {
			out = append(out, cur)
		}
		cur = measure{from: -1}
	}
	add := func(p piece) {
		if cur.from < 0 {
			cur.from = p.from
		}
		cur.to = p.to
	}
	commas := 0
	for k, p := range ps {
		switch p.what {
		case '|':
			flush()
		case ',':
			commas++
			// a comma closes a full measure; "straw, 3 bags" goes on
			if cur.has && cur.unit != "" && cur.material != "" {
				flush()
			} else if cur.material != "" && !cur.has && cur.unit == "" && !(k+1 < len(ps) && (ps[k+1].what == 'n' || ps[k+1].what == 'u')) {
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
		case 'u':
			if cur.unit != "" {
				if cur.has && cur.material == "" && k > 0 && ps[k-1].what == 'u' {
					add(p) // "headload bundle": keep the first
					continue
				}
				flush()
			} else if cur.material != "" && cur.has && first != 'm' {
				flush()
			}
			add(p)
			cur.unit = p.s
		case 'm':
			if cur.material != "" {
				if k > 0 && ps[k-1].what == 'm' && ps[k-1].to == p.from && !(cur.has && cur.unit != "") {
					// two names in a row: the later one is the thing ("banana" "leaves")
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

// short writes a number as short as it goes: 3, 2.5, 0.25.
func short(v float64) string {
	return strconv.FormatFloat(math.Round(v*100)/100, 'f', -1, 64)
}

// haves turns measures into codes, unless what was measured is already used up.
func (r *reader) haves(cs []clause) (out []string) {
	for _, m := range r.measures() {
		if !m.has || m.unit == "" || m.material == "" || m.n <= 0 {
			continue
		}
		c := r.clauseAt(cs, m.from)
		if c != nil && (c.foreign || c.ask != telling || c.cond || r.used(cs, c) || c.want || c.will || c.tomorrow || c.later && !c.has("have") || r.absent(c)) {
			continue
		}
		out = append(out, "have="+short(m.n)+" "+m.unit+" "+m.material)
	}
	return out
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
			gather := false
			use := false
			for _, s := range cs[j].signs {
				switch s.sense {
				case "collect", "bring", "did=gathered", "have":
					gather = true
				case "put", "give", "fill", "make", "stir", "takeout", "use", "sell", "foreign", "eat", "drink", "money":
					use = true
				default:
					if dimension(s.sense) == "did" {
						use = true
					}
				}
			}
			if gather && !use {
				return false
			}
			if use {
				return true
			}
			if cs[j].end == "." {
				break
			}
		}
		// Hindi puts the verb last: "do tasla gobar, teen bori bhusa dala"
		for j := k + 1; j < len(cs) && cs[j-1].end != "." && cs[j-1].end != "?"; j++ {
			for _, s := range cs[j].signs {
				if (s.tongue == hi || s.tongue == hiLatn) && (s.sense == "put" || s.sense == "give" || dimension(s.sense) == "did" && s.sense != "did=gathered") && j == k+1 && dimension(cs[j].signs[0].sense) != "did" {
					return true
				}
			}
		}
	}
	return false
}

func (r *reader) absent(c *clause) bool {
	for i, s := range c.signs {
		if (s.sense == "not" || s.sense == "no") && (i > 0 || true) && !c.has("only") {
			for _, x := range c.signs {
				if x.sense == "want" || x.sense == "have" {
					return true
				}
			}
		}
	}
	return c.has("wish")
}
