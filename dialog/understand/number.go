package understand

import "math"

// numbers joins the figures and number words of the signs into amounts: "sixty
// two", "hamsini na tano", "cent vingt", "sadhe teen", "two and a half", "55-60".
func (r *reader) numbers() {
	in := r.signs
	has := false
	for i := range in {
		switch in[i].sense {
		case "num", "half", "plushalf", "dozen", "sadhe", "sava", "paune":
			has = true
		}
	}
	if !has {
		return
	}
	out := r.spare[:0]
	for i := 0; i < len(in); {
		s := in[i]
		var before *sign
		if i > 0 {
			before = &in[i-1]
		}
		v, n, ok := r.amount(before, in[i:])
		if !ok {
			out = append(out, s)
			i++
			continue
		}
		m := sign{sense: "num", value: v, high: v, typed: s.typed, from: s.from, to: in[i+n-1].to, text: s.text, tongue: s.tongue}
		i += n
		if i+1 < len(in) && oneOf(in[i].text, "point", "punto", "virgule", "coma", "nukta", "dashamlav", "दशमलव") && in[i+1].sense == "num" && in[i+1].value < 10 {
			v += in[i+1].value / 10 // "fifty nine point six"
			m.value, m.high, m.to = v, v, in[i+1].to
			i += 2
		}
		// a range: 55-60, 55 to 60, entre 55 y 60
		if i+1 < len(in) && ranges(in[i], len(out) > 0 && out[len(out)-1].sense == "between") {
			if w, k, ok := r.amount(nil, in[i+1:]); ok && w != v {
				m.high = w
				if w < v || r.rises() {
					m.value = w // "from 65 to 50", "rose from 50 to 64": what it is now
				}
				m.to = in[i+k].to
				i += k + 1
				if len(out) > 0 && out[len(out)-1].sense == "between" {
					out = out[:len(out)-1]
				}
			}
		}
		if i+2 == len(in) && in[i].sense == "," && in[i+1].sense == "num" && r.asked == "stick" && m.typed && in[i+1].typed && in[i+1].value > v && in[i+1].value <= v+5 {
			m.high, m.to = in[i+1].value, in[i+1].to // "dans les 51, 52"
			i += 2
		}
		if n := r.between(m, in, i); n > 0 { // "चालीस पैंतालीस के बीच"
			m.high, m.to = in[i].value, in[i+n-1].to
			i += n
		}
		// "saat aath tasla", "mbili tatu": neighbours said one after the other
		if m.high == v && i < len(in) && in[i].sense == "num" && (m.tongue == hi || m.tongue == hiLatn || m.tongue == sw) && r.asked == "have" {
			if w, k, ok := r.amount(nil, in[i:]); ok && w == v+1 && k == 1 && v < 20 {
				m.high = w
				m.to = in[i].to
				i++
			}
		}
		out = append(out, m)
	}
	r.signs, r.spare = out, in
}

// between says how many signs at i close a Hindi range begun by m: "पैंतालीस के बीच".
func (r *reader) between(m sign, in []sign, i int) int {
	if m.high != m.value || i >= len(in) || in[i].sense != "num" || in[i].value <= m.value || !m.hindi() {
		return 0
	}
	for k := i + 1; k < len(in) && k <= i+2; k++ {
		if in[k].sense == "between" {
			return k + 1 - i
		}
		if in[k].sense != "filler" {
			return 0
		}
	}
	return 0
}

// rises says whether a text tells of something that grew: then two figures are before
// and now, and no range.
func (r *reader) rises() bool {
	for i := range r.tokens {
		switch t := r.tokens[i].text; t {
		case "rose", "risen", "climbed", "went", "gone", "jumped", "increased", "moved",
			"subio", "subido", "paso", "pasado", "aumento", "aumentado", "brinco",
			"passe", "passee", "monte", "montee", "grimpe", "augmente",
			"imepanda", "limepanda", "kimepanda", "imetoka", "limetoka", "kimetoka", "imeongezeka", "limeongezeka",
			"बढ़कर", "बढकर", "बढ़", "बढ", "पहुँच", "पहुंच", "चढ़", "चढ", "badhkar", "badh", "bad", "pahunch", "pahuch", "chadh", "chad":
			return true
		}
	}
	return false
}

func ranges(s sign, between bool) bool {
	return s.sense == "-" || s.text == "a" || s.sense == "rangeto" || between && (s.sense == "and" || s.sense == "or")
}

// amount reads one amount at the head of the signs and says how many it took; before
// is the sign in front of them, nil at the start.
func (r *reader) amount(before *sign, in []sign) (v float64, n int, ok bool) {
	i := 0
	plus := 0.0
	switch in[0].sense {
	case "sadhe":
		plus, i = 0.5, 1
	case "sava":
		plus, i = 0.25, 1
	case "paune":
		plus, i = -0.25, 1
	case "half":
		if len(in) > 1 && in[1].sense == "dozen" {
			return 6, 2, true
		}
		if len(in) > 2 && in[1].sense == "-" && in[2].sense == "dozen" { // demi-douzaine
			return 6, 3, true
		}
		return 0.5, 1, true
	case "plushalf": // "grass and half a cart": the half stands by itself
		if before == nil || before.sense != "num" && before.sense != "dozen" {
			switch {
			case len(in) > 1 && inDim(in[1].sense, "unit"):
				return 0.5, 1, true
			case len(in) > 2 && in[1].sense == "one" && inDim(in[2].sense, "unit"):
				return 0.5, 2, true
			}
		}
		return 0, 0, false
	case "dozen":
		if len(in) > 1 && in[0].tongue == sw && in[1].sense == "num" && !in[1].typed && in[1].value < 10 {
			return dozens(in[1].value, in, 2) // "dazeni moja"
		}
		return dozens(1, in, 1)
	case "one":
		if len(in) > 1 && in[1].sense == "dozen" {
			return dozens(1, in, 2)
		}
		if len(in) > 1 && in[1].sense == "plushalf" {
			return 1.5, 2, true
		}
		return 0, 0, false
	}
	if i >= len(in) || in[i].sense != "num" {
		if i == 1 && in[0].sense == "sava" {
			return 1.25, 1, true
		}
		return 0, 0, false
	}
	total := in[i].value
	typed := in[i].typed
	part := total // the last piece that could still take smaller ones
	i++
	for !typed && i < len(in) {
		j := i
		if in[j].sense == "and" || in[j].sense == "-" {
			j++
		}
		if j == i+1 && j < len(in) && in[j].sense == "one" && in[j].tongue == fr && part >= 20 && part <= 60 && math.Mod(part, 10) == 0 {
			total, i = total+1, j+1 // soixante et un
			break
		}
		if j >= len(in) || in[j].sense != "num" || in[j].typed {
			break
		}
		w := in[j].value
		switch {
		case w >= 100 && w == math.Pow(10, math.Round(math.Log10(w))) && part < w && j == i:
			total = total - part + part*w
			part = total
		case part >= 100 && w < 100:
			total += w
			part = w
		case part >= 20 && part <= 90 && math.Mod(part, 10) == 0 && w < 10 && w >= 1:
			total += w
			part = w
		case part == 10 && w < 10 && w >= 1 && j > i && in[j].tongue == sw: // kumi na mawili
			total += w
			part = w
		case (part == 60 || part == 80) && w >= 10 && w < 20: // soixante-dix, quatre-vingt-onze
			total += w
			part = w
		case part == 4 && w == 20 && (j == i || in[i].sense == "-") && in[j].tongue == fr: // quatre-vingt
			total = total - 4 + 80
			part = 80
		case total == 1 && w >= 10 && w < 100 && j == i && in[0].tongue == en && in[j].tongue == en:
			total, part = 100+w, w // "one forty F"
		case part == 1 && w == 100 || w == 100 && part < 10 && j == i:
			total = total - part + part*100
			part = 100
		default:
			j = -1
		}
		if j < 0 {
			break
		}
		i = j + 1
	}
	if i < len(in) && in[i].sense == "plushalf" {
		total += 0.5
		i++
	} else if typed && i < len(in) && in[i].typed && in[i].value < 1 && in[i].sense == "num" {
		total += in[i].value // 2 1/2
		i++
	}
	if i < len(in) && in[i].sense == "dozen" {
		return dozens(total+plus, in, i+1)
	}
	return total + plus, i, true
}

// dozens counts n dozens, and the half dozen that may follow at sign i: "docena y media".
func dozens(n float64, in []sign, i int) (float64, int, bool) {
	if i < len(in) && in[i].sense == "plushalf" {
		return 12*n + 6, i + 1, true
	}
	return 12 * n, i, true
}

// middle is the middle of a range.
func (s sign) middle() float64 { return (s.value + s.high) / 2 }
