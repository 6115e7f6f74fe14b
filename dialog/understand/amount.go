package understand

// Amount is a measured amount; Unit and Material are those of the labelling rules
// ("basin", "cow_dung") or "" when the text does not say.
type Amount struct {
	N        float64
	Unit     string
	Material string
}

// Amounts lists every measured amount in a text, whatever is done with it: "12
// basins passed the sieve", "4 kg", a bare "12".
func Amounts(text, lang string) []Amount {
	var out []Amount
	for _, m := range measured(text, lang) {
		if m.has {
			out = append(out, Amount{m.n, m.unit, m.material})
		}
	}
	return out
}

// Uncounted lists the materials that a text names without saying how much: "25 grass" has
// no unit, "dung straw leaves" no number (N is 0). What it denies is left out.
func Uncounted(text, lang string) []Amount {
	var out []Amount
	for _, m := range measured(text, lang) {
		if m.material == "" || m.material == "water" || m.has && m.unit != "" {
			continue
		}
		if !m.has && m.unit == "" {
			for _, name := range m.before {
				out = append(out, Amount{Material: name})
			}
		}
		out = append(out, Amount{m.n, m.unit, m.material})
	}
	return out
}

// measured finds what a text says of numbers, units and materials, whole or in part.
func measured(text, lang string) []measure {
	r := newReader(text, lang, "have")
	defer r.close()
	r.hindiVerbs()
	return r.measures()
}
