package understand

import "strings"

// verb is an act in its clause, before it is known which deed it is.
type verb struct {
	*reader
	*clause
	i                                 int
	s                                 *sign
	about                             topic
	water, layer, worm, bottle, stuff bool // what the clause names
}

// meaning says which act a verb is, given what else the clause names.
func (r *reader) meaning(c *clause, i int, about topic) (code string, ok bool) {
	v := verb{
		reader: r, clause: c, i: i, s: &c.signs[i], about: about,
		water: c.has("water"), layer: c.has("layer"), worm: c.has("worm"), bottle: c.has("bottle", "cap"),
		stuff: c.has("food", "compost", "stuff", "dung", "leaf", "peel", "huskw", "straws", "stalk") || c.hasDim("material") || c.hasDim("unit"),
	}
	switch v.s.sense {
	case "do":
		if v.layer {
			return "did=layered", true
		}
		return "", true
	case "put", "fill":
		return v.put()
	case "use":
		if v.layer && v.s.tense&(past|participle) != 0 {
			return "did=layered", true
		}
		return "did=watered", v.water && v.s.tense&(past|participle) != 0
	case "give":
		return v.give()
	case "make":
		return v.make()
	case "takeout":
		return v.takeout()
	case "open":
		return v.open()
	case "collect":
		return v.collect()
	case "bring":
		return v.bring()
	case "stir":
		return v.stir()
	case "did=turned":
		return v.turned()
	case "did=vented":
		if v.has("heap") && !v.bottle {
			return "", false // "destapé la pila"
		}
	case "did=shook":
		if v.has("body") && !v.bottle {
			return "", false // "shook his hand"
		}
	case "did=built":
		return v.built()
	case "did=sieved":
		if v.has("money") {
			return "", false // "चने का भाव"
		}
	case "did=gathered":
		if v.layer && v.s.hindi() {
			return "did=layered", true // "परत जमा दी"
		}
	case "did=fed":
		return v.fed()
	case "did=harvested":
		if !v.has("compost", "worm", "bed") && (v.hasDim("crop") || v.has("foreign", "plant", "fruit", "veg")) {
			return "", false
		}
	case "did=watered":
		return v.watered()
	}
	return v.s.sense, true
}

// put: "put" and "fill": food to the worms, a layer, a cover, water.
func (v *verb) put() (code string, ok bool) {
	switch {
	case v.has("body") && !v.layer && !v.worm && !v.water && !v.stuff:
		return "", false // "elle a mis le doigt au fond du tas"
	case v.s.hindi() && v.i > 0 && v.clause.signs[v.i-1].sense == "water" && v.has("sheet"):
		return "did=watered", true // "पानी डालकर बोरियों से ढक दिया"
	case v.worm && (v.stuff || v.asked == "feed") && !v.water:
		return "did=fed", true
	case v.layer && (!v.has("sheet") || v.s.hindi() && v.i > 0 && v.clause.signs[v.i-1].sense == "layer"):
		return "did=layered", true
	case v.has("sheet"):
		return "did=covered", true
	case v.water && v.bottle && !v.has("heap", "bed"):
		return "", false // "nimekoroga chachu na maji nikaweka kwenye chupa"
	case v.water:
		return "did=watered", true
	case v.asked == "moisture" && v.has("unit=bucket", "unit=litre", "unit=tin") && !v.hasDim("material"):
		return "did=watered", true // "dry, so I poured a bucket on it"
	case v.asked == "feed" && v.hasDim("crop") && !v.water && !v.has("heap", "bottle"):
		return "did=fed", true // "threw in coffee grounds"
	case v.asked == "feed" && !v.water && !(v.hasDim("animal") && !v.has("dung")) && (v.stuff || v.s.hindi() && v.odd == 0 && !v.has("heap", "bottle", "cap", "stick")):
		return "did=fed", true
	case v.asked == "layer" && !v.bottle:
		return "did=layered", true
	}
	return "", false
}

// give: "gave": food, water.
func (v *verb) give() (code string, ok bool) {
	if v.s.hindi() && (v.has("body") || v.i > 0 && inDim(v.clause.signs[v.i-1].sense, "harm") || v.hasBeast() && v.says(v.clause, "ने", "ne") && !v.has("worm", "person", "me")) {
		return "", false // "डंक मार दिया", "गाय ने बछड़ा दिया": nothing was given
	}
	switch {
	case v.worm || v.has("food"):
		return "did=fed", true
	case v.water && (v.hasBeast() || v.has("plant")) && !v.has("heap", "bed", "layer"):
		return "", false // "gave water to the cows"
	case v.water:
		return "did=watered", true
	case v.asked == "feed" && !(v.s.hindi() && v.several && v.has("known")), v.asked == "worms" && v.stuff:
		return "did=fed", true
	}
	return "", false
}

// make: "made": a layer, a starter, a heap.
func (v *verb) make() (code string, ok bool) {
	switch {
	case v.has("foreign") && !v.has("heap", "layer", "starter", "compost"):
		return "", false // "tunaandaa harusi"
	case v.layer:
		return "did=layered", true
	case v.has("starter", "bottle", "liquid"):
		return "did=mixed", true
	case v.has("heap", "compost") && !v.hasDim("seen") && !v.has("hole", "seen=steam"):
		return "did=built", true
	case v.says(v.clause, "again", "dubara", "dobara", "दोबारा", "दुबारा", "nuevo", "nouveau", "upya", "tena") && v.odd == 0 && !v.has("food", "known", "foreign"):
		return "did=built", true // "dubara bana diya": the heap, what else
	case v.asked == "layer":
		return "did=layered", true
	}
	return "", false
}

// takeout: "took out": gas, compost.
func (v *verb) takeout() (code string, ok bool) {
	switch {
	case v.has("gas", "cap"), (v.asked == "bottle" || v.asked == "shake") && v.gassy() && !v.has("liquid", "water"):
		return "did=vented", true
	case v.has("compost", "material=compost"):
		return "did=harvested", true
	}
	return "", false
}

// open: "opened": a bottle.
func (v *verb) open() (code string, ok bool) {
	if v.has("body", "heap") && !v.bottle && !v.has("gas") || v.opened(v.clause, v.i) {
		return "", false // "la main ouverte"
	}
	if v.bottle || v.has("gas") || v.asked == "bottle" || v.asked == "shake" || v.about.bottle {
		return "did=vented", true
	}
	return "", false
}

// collect: "collected": compost, or what a heap is made of.
func (v *verb) collect() (code string, ok bool) {
	if v.has("compost") && !v.hasDim("material") && !v.has("leaf", "dry_leaf", "dung") {
		return "did=harvested", true
	}
	if v.stuff || v.asked == "have" || v.has("dry_leaf", "stem", "grasses", "animal") || v.hasDim("animal") {
		return "did=gathered", true
	}
	return "", false
}

// bring: "brought": water to the heap, or what it is made of.
func (v *verb) bring() (code string, ok bool) {
	if v.water && !v.hasDim("material") && v.has("heap", "bed", "layer") {
		return "did=watered", true
	}
	if v.stuff || v.asked == "have" || v.has("dry_leaf", "stem", "grasses") {
		return "did=gathered", true
	}
	return "", false
}

// stir: "stirred": the starter, the bottle, the heap.
func (v *verb) stir() (code string, ok bool) {
	switch {
	case v.has("person") && !v.s.hindi() && !v.bottle && !v.water && !v.has("starter", "liquid", "dung", "heap", "compost") && v.find("person") > v.i:
		return "", false // "il a battu son frère"
	case v.has("starter", "liquid", "water", "dung") || v.hasAnimalDung():
		return "did=mixed", true
	case v.bottle && v.asked == "shake":
		return "did=shook", true
	case v.bottle:
		return "did=mixed", true
	case v.has("heap", "compost") || v.asked == "turn":
		return "did=turned", true
	case v.asked == "shake":
		return "did=shook", true
	case v.s.hindi() && v.hasDim("material"):
		return "", false // "सूखे पत्ते मिला दिए": into the heap, no starter
	}
	return "did=mixed", true
}

// turned: a turning is of the heap; of the starter it is a stirring, of the bottle a shake.
func (v *verb) turned() (code string, ok bool) {
	if (v.s.tongue == es && v.begins(v.s, "rev") || v.s.tongue == fr && v.begins(v.s, "remu", "brass")) && !v.has("heap", "compost") && (v.has("starter") || v.hasSweet()) {
		return "did=mixed", true // "revolví la melaza con el suero", "j'ai brassé le levain"
	}
	if v.asked == "shake" && !v.has("heap", "compost") && (v.s.tongue == fr || v.s.tongue == es) && v.begins(v.s, "remu", "remov", "brass", "revol") {
		return "did=shook", true // "je l'ai remuée", of the bottle
	}
	if v.s.tongue == en && v.asked != "turn" && v.s.to == v.s.from+1 && v.i+1 < len(v.clause.signs) && v.clause.signs[v.i+1].sense == "num" && v.clause.signs[v.i+1].value > 10 && !v.has("heap", "compost") {
		return "", false // "I turned 40"
	}
	if v.knocks(v.s) && !v.has("heap", "compost") && (v.has("stick", "bottle", "liquid", "person", "animal") || v.hasDim("smell") || v.hasDim("animal")) {
		return "", false // the goat knocked the stick over
	}
	return v.s.sense, true
}

// built: "raised" and "put up" are of the heap, and not of dust, a flame or a price.
func (v *verb) built() (code string, ok bool) {
	if v.s.tongue == sw && v.i+1 < len(v.clause.signs) && v.clause.signs[v.i+1].tense == bare && strings.Contains(v.s.text, "panga") {
		return "", false // "nilipanga kuwalisha": planned
	}
	if v.has("dust") {
		return "", false // "se levantó tanto polvo"
	}
	if v.s.tongue == es && v.begins(v.s, "levant") && v.hasDim("unit") && !v.has("heap", "compost") {
		return "", false // "levanté el costal"
	}
	if (v.layer || v.asked == "layer" && v.s.tongue == sw && strings.Contains(v.s.text, "pangwa")) && !v.has("heap", "compost") {
		return "did=layered", true // "nimepanga tabaka"
	}
	if (v.hasDim("seen") || v.has("money", "stick", "heat", "degree", "celsius")) && !v.has("heap", "compost") {
		return "", false // "le thermomètre est monté à 66", "une flamme est montée", "les prix ont monté"
	}
	return v.s.sense, true
}

// fed: worms are fed, and not goats or guests.
func (v *verb) fed() (code string, ok bool) {
	if v.s.tongue == en && !v.worm && v.names(v.s, "ate", "eat", "eats", "eaten") && (v.hasDim("crop") || v.has("foreign", "known", "")) {
		return "", false // "they ate all the cassava"
	}
	if v.s.hindi() && !v.worm && (v.i > 0 && oneOf(v.clause.signs[v.i-1].sense, "known", "foreign") || v.hasBeast() && !v.has("dung")) {
		return "", false // "जलेबी खिलाई", "बकरी को चारा डाल दिया"
	}
	if (v.has("animal") || v.hasDim("animal") && !v.has("dung") || v.eats(v.clause, v.i)) && !v.worm && (v.beastAfter(v.i) || v.s.to == v.s.from+1 && !v.feeder(v.clause, v.i)) {
		return "", false
	}
	return v.s.sense, true
}

// watered: the heap is watered, and not an apron, a cow or an eye.
func (v *verb) watered() (code string, ok bool) {
	if v.s.tongue == sw && v.s.whom && v.has("person") && !v.worm {
		return "", false // "maji yamemmwagikia shangazi": it was spilt on her
	}
	if v.has("weather") && !v.s.hindi() || v.s.tongue == es && v.word(v.s.from-1) == "se" {
		return "", false // "se mojó el mandil": it got wet
	}
	if v.about.eye && v.s.tense&ongoing != 0 && !v.water && !v.has("heap", "bed", "worm", "layer") {
		return "", false // "her eye is red and watering"
	}
	if v.s.hindi() && !v.water && !v.has("heap", "bed", "worm", "layer") && v.i > 0 && v.clause.signs[v.i-1].sense == "known" {
		return "", false // "हल्दी छिड़क दी"
	}
	if v.about.bottle && !v.has("heap", "bed", "worm", "layer", "compost") && v.names(v.s, "spray", "sprayed", "spraying", "sprays") {
		return "", false // "opened it and it sprayed all over"
	}
	if v.water || v.has("heap", "bed", "worm", "layer", "compost") {
		return v.s.sense, true
	}
	if v.hasDim("crop") || v.hasDim("animal") || v.has("plant", "foreign", "animal", "veg", "fruit") {
		return "", false
	}
	return v.s.sense, true
}
