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
	r := newReader(text, lang, "have")
	defer r.close()
	r.hindiVerbs()
	var out []Amount
	for _, m := range r.measures() {
		if !m.has {
			continue
		}
		out = append(out, Amount{m.n, m.unit, m.material})
	}
	return out
}
