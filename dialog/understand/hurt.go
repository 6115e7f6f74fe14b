package understand

import (
	"slices"
	"strings"
)

// Words that name a harm outright, and those that mean something else of heap and bottle.

// otherwise reads words that mean something else of heap and bottle: "me lloran los ojos",
// "se me hinchó el ojo", "une épine s'est enfoncée dans mon pouce".
func (p *peril) otherwise(s *sign, i int) string {
	switch s.sense {
	case "smell=ammonia":
		if !s.own && p.r.asked != "smell" && !p.has("smell", "gas", "sharp") && p.r.names(s, "ojos", "ojo", "yeux", "eyes", "macho", "aankh", "ankh", "aankhon", "ankhon", "आँख", "आँखें", "आँखों", "आंख", "आंखें", "आंखों") {
			return "harm=eye"
		}
	case "bottle=bloated":
		switch {
		case p.has("bottle", "cap"):
		case p.has("eye"):
			return "harm=eye"
		case p.has("body") && p.about.sting && !p.hasHarm() && p.r.asked != "bottle":
			return "harm=bite" // "a scorpion was there, his hand is swollen"
		}
	case "seen=sunk":
		switch {
		case !p.has("body") || p.has("heap", "bottle"):
		case p.has("dust"):
			return "harm=breath" // "dust went down my throat"
		default:
			return "harm=cut"
		}
	case "open":
		if p.has("body") && !p.r.says(p.clause, mouths...) && s.tense&(past|participle) != 0 && s.tense&present == 0 && (!p.has("bottle", "cap", "heap", "gas") || p.r.opened(p.clause, i)) && !p.hasHarm() {
			return "harm=cut" // "un tesson m'a ouvert la paume"
		}
	case "bottle=burst":
		if !p.byBeast(i) && s.tense&(future|unless|order) == 0 && !p.hasHarm() && (p.r.opened(p.clause, i) || p.torn(i)) {
			return "harm=cut" // "wire tore my finger open", "se me reventó el dedo"
		}
	}
	return ""
}

// harm reads a word that names a hurt outright, by what did it and to whom.
func (p *peril) harm(i int) string {
	c, r, s := p.clause, p.r, &p.signs[i]
	switch s.sense {
	case "harm=cut":
		switch {
		case c.has("harm=breath", "harm=bite", "bite") && r.names(s, "blood", "sangre", "sang", "damu", "khoon", "khun", "खून", "ख़ून"):
			return "" // coughing blood, bitten until it bled
		case c.has("burn", "burnt", "harm=burn") && r.names(s, "wound", "wounds", "kidonda", "vidonda", "jeraha", "majeraha", "imechubuka"):
			return "" // burn wounds
		case !s.hindi() && p.has("stinger") && (p.find("stinger") < i || s.tongue == sw) && !p.has("pointed") && !r.says(c, "i"):
			return "harm=bite" // "a scorpion under the cover jabbed my wife"
		case p.about.sting && !p.has("pointed", "bottle", "known") && c.signs[0].sense == "filler" && oneOf(c.signs[0].text, "it", "ca", "cela", "eso") && c.has("body"):
			return "harm=bite" // "a scorpion was in there, it jabbed my thumb"
		case s.hindi() && c.has("harm=bite", "bite") && (strings.HasPrefix(s.text, "ka") || strings.HasPrefix(s.text, "क")):
			return ""
		case s.hindi() && p.about.sting && !p.has("pointed", "bottle") && r.names(s, "काट", "kaat", "kat"):
			return "harm=bite" // "चींटियाँ लगी हैं, मेरे हाथ भी काट खाए"
		case s.hindi() && (c.has("seen=ants", "stinger") || c.has("seen=rodents") && !c.has("bottle", "pointed")):
			return "harm=bite" // "haath pe kaat liya chintiyon ne"
		case strings.HasPrefix(s.text, "cortad") && !c.has("body", "person", "me") && i > 0 && (c.signs[i-1].sense == "" || c.signs[i-1].sense == "known" || inDim(c.signs[i-1].sense, "material")):
			return "" // "leña cortada"
		case s.hindi() && (c.hasDim("material") || r.several && r.asked == "have") && !c.has("body", "person", "me") && r.chopped(c):
			return "" // "दराँती से कटी हुई घास"
		case strings.HasPrefix(s.text, "clavad") && !c.has("body", "person", "me") && !r.says(c, "espina", "espinas", "clavo", "clavos", "vidrio", "vidrios", "alambre"):
			return "" // "lo dejé clavado": the stick
		case s.hindi() && c.hasDim("crop") && !c.has("body"):
			return "" // "गेहूँ कट गया"
		case oneOf(s.text, "कटा", "कटी", "कटे", "kata", "kati", "kate") && c.hasDim("unit") && !p.person:
			return "" // "तना कटा हुआ": chopped
		}
	case "harm=bite":
		switch {
		case (p.about.eye || c.has("eye", "harm=eye")) && !p.animal && !c.hasBeast() && !c.has("stinger", "seen=ants") && r.says(c, "sting", "stings", "stinging"):
			return "" // "it squirted in my eyes, they sting bad"
		case !s.hindi() && c.has("worm") && !p.person:
			return "" // "the hen pecked the worms"
		case s.text == "bit" && c.beastAfter(i) && slices.ContainsFunc(c.signs[:i], func(o sign) bool { return o.sense == "stinger" || o.beast() }):
			return "" // "a snake bit our goat"
		case p.pricked():
			return "harm=cut" // "un clou m'a piqué"
		case r.reaped(c, i):
			return ""
		}
	case "harm=eye":
		if r.stings(c, i) {
			return ""
		}
	case "harm=swallowed":
		if r.says(c, "throat") && c.has("harm=breath", "breathe") {
			return "harm=breath" // "very dusty, went down my throat, coughing since"
		}
		if p.about.beast && !p.person || p.byBeast(i) || !c.has("mistook") && (r.refreshed(c, i) || c.has("crop=coffee") && !c.has("liquid", "starter", "compost", "bottle")) {
			return "" // "deje que me tome mi café"
		}
	case "harm=burn":
		if s.tongue == sw && p.has("stinger", "seen=ants") {
			return "harm=bite" // kuchoma is to burn, to sting and to prick
		}
		if s.tongue == sw && p.has("pointed") {
			return "harm=cut"
		}
		if p.plant && !c.has("body") || c.has("weather") && !c.has("body", "person") && !r.says(c, "me", "us") || p.object(i) == "seen=weeds" || c.hasDim("material") && r.names(s, "quemaron") && !c.has("body", "person") {
			return "" // ammonia burnt my plants; "se me quemaron las matas"
		}
		if c.has("weather") && (inDim(p.object(i), "material") || inDim(p.object(i), "crop") || p.object(i) == "leaf") {
			return "" // "el sol me quemó las matas de tomate"
		}
	}
	switch {
	case !s.own && !p.person && s.tense == 0:
		return ""
	case s.sense == "harm=cut" && c.has("eye") && !c.has("body"):
		return "harm=eye" // a splinter in the eye
	case s.sense == "harm=swallowed" && c.has("dust", "seen=smoke") && !c.has("liquid", "starter", "compost"):
		return "harm=breath" // swallowed dust
	}
	return s.sense
}

// made: Swahili "limenifanya nikohoe", it made me cough.
func (c *clause) made(i int) bool {
	if i == 0 || c.signs[i].tongue != sw {
		return false
	}
	p := &c.signs[i-1]
	if p.sense == "person" && i > 1 {
		p = &c.signs[i-2] // "limemfanya bibi akohoe"
	}
	return p.sense == "do" && p.tense&(past|present|ongoing) != 0 && p.whom && !p.neg
}
