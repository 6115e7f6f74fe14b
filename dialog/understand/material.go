package understand

import "strings"

// material names what sign i (with its neighbours) is, and how many signs that
// takes: "goat droppings", "samadi ya mbuzi", "tiges de maïs", "dry leaves".
func material(in []sign, i int) (name string, n int) {
	s := in[i]
	if m, ok := strings.CutPrefix(s.sense, "material="); ok {
		if strings.HasSuffix(m, "_dung") {
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
			case "dung", "material=cow_dung", "material=horse_dung", "material=hen_dung":
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
			if strings.HasPrefix(in[i+k].sense, "crop=") || in[i+k].sense == "material=banana_stem" {
				k++ // "majani ya migomba makavu"
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
	case "smell=rotten":
		if c, k := near(in, i, "crop"); k > 0 {
			if m := ofCrop(c, s.sense); m != "" {
				return m, k // "spoilt pawpaws"
			}
		}
		return "", 0
	case "worm":
		return "worms", 1
	case "compost":
		return "compost", 1
	case "heap":
		if in[i].tongue == es && oneOf(in[i].text, "composta", "compost") && i >= 2 && inDim(in[i-2].sense, "unit") {
			return "compost", 1 // "3 sacos de composta", though "la composta" is the heap
		}
	case "seen=weeds":
		return "weeds", 1
	case "seen=ash":
		return "ash", 1
	}
	return "", 0
}

func ofCrop(crop, part string) string {
	switch part {
	case "stalk", "stem", "straws", "material=straw", "material=stalks", "stick":
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
		switch crop {
		case "coffee":
			return "coffee_husk"
		case "fruit", "veg":
			return ofCrop(crop, "peel") // maganda, cáscaras: of a fruit they are peels
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
	case "smell=rotten", "old", "bad":
		switch crop {
		case "fruit", "banana":
			return "fruit_waste"
		case "veg":
			return "veg_scraps"
		}
		return ""
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

// onHead: "mizigo mitatu ya kichwa", with the number between a load and the head that
// carries it.
func onHead(in []sign, i int) bool {
	for k := i + 1; k < len(in) && k <= i+4; k++ {
		switch in[k].text {
		case "kichwa", "kichwani", "vichwa", "vichwani":
			return true
		}
		if in[k].sense != "num" && in[k].sense != "filler" && in[k].sense != "one" {
			return false
		}
	}
	return false
}
