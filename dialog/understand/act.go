package understand

import (
	"slices"
	"strings"
)

// actOf is the code that "yes" or "done" means under a question.
func actOf(asked string) string {
	switch asked {
	case "shake":
		return "did=shook"
	case "turn":
		return "did=turned"
	case "layer":
		return "did=layered"
	case "sieve":
		return "did=sieved"
	case "feed":
		return "did=fed"
	}
	return ""
}

type outcome uint8

const (
	nothing outcome = iota
	done
	notDone
	planned  // will, is doing, tomorrow, later
	refused  // will not
	wished   // wants to, an order, an unclear form
	doubtful // "turned?"
)

// deed is one act found in a clause and how it stands.
type deed struct {
	code    string // did=..., or "" for a bare "did it"
	outcome outcome
	clause  int
	sign    int
}

// namesIt says whether a phrase for a deed names its thing; "चाय छान रही" has another before it.
func (r *reader) namesIt(c *clause) bool {
	for i := range c.signs {
		if s := &c.signs[i]; (s.hindi() || s.sense == "did=harvested") && s.to > s.from+1 && inDim(s.sense, "did") && !(i > 0 && c.signs[i-1].sense == "foreign") {
			return true
		}
	}
	return false
}

// deeds reads the acts of one clause. last is the tense of the act before, which
// a Swahili infinitive goes on with ("nimegeuza na kumwagia maji").
func (r *reader) deeds(c *clause, n int, last *tense, about topic) (out []deed) {
	if c.foreign {
		return nil
	}
	creature := c.has("animal") || c.hasDim("animal") && !c.has("dung") && !c.hasDim("material")
	main := c.beforeTime()
	own := c.has("heap", "stick", "worm", "bed", "bottle", "cap", "compost", "material=compost", "layer", "starter", "inside", "gas") ||
		r.namesIt(c) // "ढक्कन ढीला किया"
	off := !own && (creature || main.has("plant", "foreign"))
	for i := range c.signs {
		s := &c.signs[i]
		if s.hindi() && i+1 < len(c.signs) && c.signs[i+1].sense == "skip" && s.tense&bare != 0 {
			continue // "पलटाई छोड़ देते हैं"
		}
		if !act(s.sense) || s.tongue == es && oneOf(r.word(s.from-1), "hubiera", "hubiese", "hubieran", "hubieramos") {
			continue // "si la hubiera tapado": it was not
		}
		if (c.has("eye", "harm=eye")) && (s.sense == "did=watered" || s.sense == "put") || s.sense == "did=watered" && c.has("body") {
			continue // "it sprayed in my eye", "पानी पैर भिगो गया"
		}
		if s.sense == "did=turned" && i > 0 && oneOf(c.signs[i-1].sense, "unit=trailer", "unit=cart", "unit=barrow") {
			continue // "trali ulat gayi": it tipped over
		}
		if s.sense == "did=fed" && r.ate(c, i) {
			continue // "los pollos ya comieron": no worms
		}
		if creature && c.beastDid(i) {
			continue // "les chèvres ont renversé le tas"
		}
		if c.helped(i) {
			*last = past // "alinisaidia kugeuza": helped me turn
		}
		if s.unsure && !own && !r.nearWord(c, s) {
			continue // "nos robaron las gallinas" is no misspelt "regaron"
		}
		said := c
		if i < len(main.signs) {
			said = main
		}
		code, ok := r.meaning(said, i, about)
		if code == "did=gathered" && said.has("money") && !said.hasDim("material") {
			continue // "la iglesia está juntando dinero"
		}
		if !ok || code == "" && c.hasHarm() || off && code != "" && code != "did=gathered" && (code != actOf(r.asked) || s.tense&ongoing != 0 || code != s.sense && (c.odd > 0 || creature)) && !(code == "did=watered" && c.has("water") && !creature && !c.has("plant")) {
			continue // but not "arrosé avec l'eau du puits"
		}
		if off && code == "" && s.tense&past == 0 {
			continue // "anafanya mtihani": at something else
		}
		o := r.standing(c, i, *last)
		if o == done {
			*last = past
		} else if o == planned && s.tense&future != 0 {
			*last = future
		}
		out = append(out, deed{code, o, n, i})
	}
	for i := range c.signs {
		if s := &c.signs[i]; len(out) == 0 && s.tongue == sw && s.mine && s.tense&past != 0 && !s.neg && !act(s.sense) {
			*last = past // "nilikata majani | na kujenga lundo"
		}
	}
	if len(out) == 0 && c.has("layer") && c.ask == telling && !c.cond && !c.doubt {
		for i := range c.signs { // "two layers finished"
			s := &c.signs[i]
			if s.sense == "done" || s.sense == "finish" {
				o := done
				if s.neg || c.has("not", "notyet") {
					o = notDone
				}
				return append(out, deed{"did=layered", o, n, i})
			}
		}
	}
	return out
}

// beforeTime is a clause without the time it ends in: "I water | when the well is full".
func (c *clause) beforeTime() *clause {
	k := c.find("while")
	if k <= 0 || c.signs[k].hindi() {
		return c
	}
	return &clause{signs: c.signs[:k]}
}

// nearWord says whether a verb known only by its likeness stands among words that are
// all understood, or is the one asked about.
func (r *reader) nearWord(c *clause, s *sign) bool {
	return c.odd == 0 && !c.strange() || s.sense == actOf(r.asked)
}

// ate says whether a verb of eating has people or beasts for its subject, and not the worms.
func (r *reader) ate(c *clause, i int) bool {
	if c.has("worm") || !r.names(&c.signs[i], "eaten", "ate", "eat", "comieron", "comio", "comido", "mange", "manger", "wamekula", "amekula") {
		return false
	}
	k := c.back(i-1, "filler", "didaux", "done", "already", "mine", "me")
	return k >= 0 && (c.signs[k].sense == "person" || c.signs[k].beast())
}

// meaning says which act a verb is, given what else the clause names.
func (r *reader) meaning(c *clause, i int, about topic) (code string, ok bool) {
	s := &c.signs[i]
	water, layer, worm := c.has("water"), c.has("layer"), c.has("worm")
	bottle := c.has("bottle", "cap")
	stuff := c.has("food", "compost", "stuff") || c.hasDim("material") || c.hasDim("unit") || c.has("dung", "leaf", "peel", "huskw", "straws", "stalk")
	switch s.sense {
	case "do":
		if layer {
			return "did=layered", true
		}
		return "", true
	case "put", "fill":
		switch {
		case c.has("body") && !layer && !worm && !water && !stuff:
			return "", false // "elle a mis le doigt au fond du tas"
		case s.hindi() && i > 0 && c.signs[i-1].sense == "water" && c.has("sheet"):
			return "did=watered", true // "पानी डालकर बोरियों से ढक दिया"
		case worm && (stuff || r.asked == "feed") && !water:
			return "did=fed", true
		case layer && (!c.has("sheet") || s.hindi() && i > 0 && c.signs[i-1].sense == "layer"):
			return "did=layered", true
		case c.has("sheet"):
			return "did=covered", true
		case water && bottle && !c.has("heap", "bed"):
			return "", false // "nimekoroga chachu na maji nikaweka kwenye chupa"
		case water:
			return "did=watered", true
		case r.asked == "moisture" && c.has("unit=bucket", "unit=litre", "unit=tin") && !c.hasDim("material"):
			return "did=watered", true // "dry, so I poured a bucket on it"
		case r.asked == "feed" && c.hasDim("crop") && !water && !c.has("heap", "bottle"):
			return "did=fed", true // "threw in coffee grounds"
		case r.asked == "feed" && !water && !(c.hasDim("animal") && !c.has("dung")) && (stuff || s.hindi() && c.odd == 0 && !c.has("heap", "bottle", "cap", "stick")):
			return "did=fed", true
		case r.asked == "layer" && !bottle:
			return "did=layered", true
		}
		return "", false
	case "use":
		if layer && s.tense&(past|participle) != 0 {
			return "did=layered", true
		}
		return "did=watered", water && s.tense&(past|participle) != 0
	case "give":
		if s.hindi() && (c.has("body") || i > 0 && inDim(c.signs[i-1].sense, "harm") || c.hasBeast() && r.says(c, "ने", "ne") && !c.has("worm", "person", "me")) {
			return "", false // "डंक मार दिया", "गाय ने बछड़ा दिया": nothing was given
		}
		switch {
		case worm || c.has("food"):
			return "did=fed", true
		case water && (c.hasBeast() || c.has("plant")) && !c.has("heap", "bed", "layer"):
			return "", false // "gave water to the cows"
		case water:
			return "did=watered", true
		case r.asked == "feed" && !(s.hindi() && r.several && c.has("known")), r.asked == "worms" && stuff:
			return "did=fed", true
		}
		return "", false
	case "make":
		switch {
		case c.has("foreign") && !c.has("heap", "layer", "starter", "compost"):
			return "", false // "tunaandaa harusi"
		case layer:
			return "did=layered", true
		case c.has("starter", "bottle", "liquid"):
			return "did=mixed", true
		case c.has("heap", "compost") && !c.hasDim("seen") && !c.has("hole", "seen=steam"):
			return "did=built", true
		case r.says(c, "again", "dubara", "dobara", "दोबारा", "दुबारा", "nuevo", "nouveau", "upya", "tena") && c.odd == 0 && !c.has("food", "known", "foreign"):
			return "did=built", true // "dubara bana diya": the heap, what else
		case r.asked == "layer":
			return "did=layered", true
		}
		return "", false
	case "takeout":
		switch {
		case c.has("gas", "cap"), (r.asked == "bottle" || r.asked == "shake") && r.gassy() && !c.has("liquid", "water"):
			return "did=vented", true
		case c.has("compost", "material=compost"):
			return "did=harvested", true
		}
		return "", false
	case "open":
		if (c.has("body") || c.has("heap") && !c.has("bottle", "cap")) && !bottle && !c.has("gas") || r.opened(c, i) {
			return "", false // "la main ouverte"
		}
		if bottle || c.has("gas") || r.asked == "bottle" || r.asked == "shake" || about.bottle {
			return "did=vented", true
		}
		return "", false
	case "collect":
		if c.has("compost") && !c.hasDim("material") && !c.has("leaf", "dry_leaf", "dung") {
			return "did=harvested", true
		}
		if stuff || r.asked == "have" || c.has("dung", "leaf", "dry_leaf", "stem", "stalk", "grasses", "straws", "huskw", "animal") || c.hasDim("animal") {
			return "did=gathered", true
		}
		return "", false
	case "bring":
		if water && !c.hasDim("material") && c.has("heap", "bed", "layer") {
			return "did=watered", true
		}
		if stuff || r.asked == "have" || c.has("dung", "leaf", "dry_leaf", "stem", "stalk", "grasses", "straws", "huskw") {
			return "did=gathered", true
		}
		return "", false
	case "stir":
		switch {
		case c.has("person") && s.tongue != hi && s.tongue != hiLatn && !bottle && !water && !c.has("starter", "liquid", "dung", "heap", "compost") && c.find("person") > i:
			return "", false // "il a battu son frère"
		case c.has("starter", "liquid", "water", "dung") || c.hasAnimalDung():
			return "did=mixed", true
		case bottle && r.asked == "shake":
			return "did=shook", true
		case bottle:
			return "did=mixed", true
		case c.has("heap", "compost") || r.asked == "turn":
			return "did=turned", true
		case r.asked == "shake":
			return "did=shook", true
		case s.hindi() && c.hasDim("material"):
			return "", false // "सूखे पत्ते मिला दिए": into the heap, no starter
		}
		return "did=mixed", true
	case "did=turned":
		if (s.tongue == es && r.begins(s, "rev") || s.tongue == fr && r.begins(s, "remu", "brass")) && !c.has("heap", "compost") && (c.has("starter") || c.hasSweet()) {
			return "did=mixed", true // "revolví la melaza con el suero", "j'ai brassé le levain"
		}
		if r.asked == "shake" && !c.has("heap", "compost") && (s.tongue == fr || s.tongue == es) && r.begins(s, "remu", "remov", "brass", "revol") {
			return "did=shook", true // "je l'ai remuée", of the bottle
		}
		if s.tongue == en && r.asked != "turn" && s.to == s.from+1 && i+1 < len(c.signs) && c.signs[i+1].sense == "num" && c.signs[i+1].value > 10 && !c.has("heap", "compost") {
			return "", false // "I turned 40"
		}
		if r.knocks(s) && !c.has("heap", "compost") && (c.has("stick", "bottle", "liquid", "person", "animal") || c.hasDim("smell") || c.hasDim("animal")) {
			return "", false // the goat knocked the stick over
		}
	case "did=vented":
		if c.has("heap") && !bottle {
			return "", false // "destapé la pila"
		}
	case "did=shook":
		if c.has("body") && !bottle {
			return "", false // "shook his hand"
		}
	case "did=built":
		if s.tongue == sw && i+1 < len(c.signs) && c.signs[i+1].tense == bare && strings.Contains(s.text, "panga") {
			return "", false // "nilipanga kuwalisha": planned
		}
		if c.has("dust") {
			return "", false // "se levantó tanto polvo"
		}
		if s.tongue == es && r.begins(s, "levant") && c.hasDim("unit") && !c.has("heap", "compost") {
			return "", false // "levanté el costal"
		}
		if (layer || r.asked == "layer" && s.tongue == sw && strings.Contains(s.text, "pangwa")) && !c.has("heap", "compost") {
			return "did=layered", true // "nimepanga tabaka"
		}
		if (c.hasDim("seen") || c.has("money", "stick", "heat", "degree", "celsius")) && !c.has("heap", "compost") {
			return "", false // "le thermomètre est monté à 66", "une flamme est montée", "les prix ont monté"
		}
	case "did=sieved":
		if c.has("money") {
			return "", false // "चने का भाव"
		}
	case "did=gathered":
		if layer && s.hindi() {
			return "did=layered", true // "परत जमा दी"
		}
	case "did=fed":
		if s.tongue == en && !worm && r.names(s, "ate", "eat", "eats", "eaten") && (c.hasDim("crop") || c.has("foreign", "known", "")) {
			return "", false // "they ate all the cassava"
		}
		if s.hindi() && !worm && (i > 0 && oneOf(c.signs[i-1].sense, "known", "foreign") || c.hasBeast() && !c.has("dung")) {
			return "", false // "जलेबी खिलाई", "बकरी को चारा डाल दिया"
		}
		if (c.has("animal") || c.hasDim("animal") && !c.has("dung") || r.eats(c, i)) && !worm && (c.beastAfter(i) || s.to == s.from+1 && !r.feeder(c, i)) {
			return "", false
		}
	case "did=harvested":
		if !c.has("compost", "worm", "bed") && (c.hasDim("crop") || c.has("foreign", "plant", "fruit", "veg")) {
			return "", false
		}
	case "did=watered":
		if s.tongue == sw && s.whom && c.has("person") && !worm {
			return "", false // "maji yamemmwagikia shangazi": it was spilt on her
		}
		if c.has("weather") && !s.hindi() || s.tongue == es && r.word(s.from-1) == "se" {
			return "", false // "se mojó el mandil": it got wet
		}
		if about.eye && s.tense&ongoing != 0 && !water && !c.has("heap", "bed", "worm", "layer") {
			return "", false // "her eye is red and watering"
		}
		if s.hindi() && !water && !c.has("heap", "bed", "worm", "layer") && i > 0 && c.signs[i-1].sense == "known" {
			return "", false // "हल्दी छिड़क दी"
		}
		if about.bottle && !c.has("heap", "bed", "worm", "layer", "compost") && r.names(s, "spray", "sprayed", "spraying", "sprays") {
			return "", false // "opened it and it sprayed all over"
		}
		if water || c.has("heap", "bed", "worm", "layer", "compost") {
			return s.sense, true
		}
		if c.hasDim("crop") || c.hasDim("animal") || c.has("plant", "foreign", "animal", "veg", "fruit") {
			return "", false
		}
	}
	return s.sense, true
}

// feeder says whether the person of a clause is who fed, and not who was fed: "my girl
// fed them", when the worms were asked about.
func (r *reader) feeder(c *clause, i int) bool {
	s := &c.signs[i]
	who := c.find("person")
	return r.asked == "feed" && !c.has("animal") && !s.hindi() && who >= 0 && who < i && !oneOf(r.tokens[c.signs[0].from].text, "a", "al", "aux")
}

// beastAfter says whether an animal follows the act at sign i as the one it was done to:
// "les di de comer a las gallinas".
func (c *clause) beastAfter(i int) bool {
	return !c.signs[i].hindi() && (&clause{signs: c.signs[i+1:]}).hasBeast()
}

// beastDid says whether an animal stands before the act at sign i as the one who did it.
func (c *clause) beastDid(i int) bool {
	if t := c.signs[i].tongue; t != fr && t != sw && t != en || c.signs[i].mine || c.has("mine", "person", "neighbor", "dung", "food", "worm") || c.has("me") && !(t == en && oneOf(c.signs[0].text, "my", "our")) {
		return false
	}
	return (&clause{signs: c.signs[:i]}).hasBeast() && !slices.ContainsFunc(c.signs[:i], func(s sign) bool { return oneOf(s.text, "we", "i", "so", "then") })
}

func (c *clause) hasAnimalDung() bool {
	for at := range c.signs {
		s := &c.signs[at]
		if s.sense == "material=cow_dung" || s.sense == "material=jaggery" || s.sense == "material=curd" {
			return true
		}
	}
	return false
}

// hasSweet says whether a clause names what only the starter is made of.
func (c *clause) hasSweet() bool { return c.has("material=jaggery", "material=curd") }

// gassy says whether the message speaks of gas: "full of gas, I let it out".
func (r *reader) gassy() bool {
	for i := range r.signs {
		if r.signs[i].sense == "gas" || r.names(&r.signs[i], "gas", "gaz") {
			return true
		}
	}
	return false
}

// helped says whether a Swahili "helped" or "managed" stands before the infinitive at sign i.
func (c *clause) helped(i int) bool {
	for k := i - 1; k >= 0 && k >= i-3; k-- {
		if s := &c.signs[k]; s.tongue == sw && !s.neg && (s.sense == "help" && s.tense&past != 0 || s.sense == "able") {
			return true
		}
	}
	return false
}

// begins says whether a word of a sign begins in one of the ways.
func (r *reader) begins(s *sign, ways ...string) bool {
	return slices.ContainsFunc(r.tokens[s.from:s.to], func(t token) bool {
		return slices.ContainsFunc(ways, func(w string) bool { return strings.HasPrefix(t.text, w) })
	})
}

// knocks says whether a verb for turning is also one for knocking over and spilling.
func (r *reader) knocks(s *sign) bool {
	return strings.HasPrefix(s.text, "renvers") || strings.HasPrefix(s.text, "tumb")
}

// eats says whether a person of a clause is the one who is fed by the act at sign i. A Hindi one is marked:
// "बच्चे को खिलाया", but "बेटे ने खिलाया" fed.
func (r *reader) eats(c *clause, i int) bool {
	for k := range c.signs {
		s := &c.signs[k]
		if s.sense != "person" {
			continue
		}
		if s.hindi() && oneOf(r.word(s.to), "को", "ko") || !s.hindi() && (k > i || s.tongue == sw || oneOf(r.word(s.from-1), "a", "al", "au", "aux") || s.from > 1 && oneOf(r.word(s.from-2), "a", "au")) {
			return true
		}
	}
	return false
}
