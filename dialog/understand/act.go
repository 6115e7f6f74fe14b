package understand

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

// deeds reads the acts of one clause. last is the tense of the act before, which
// a Swahili infinitive goes on with ("nimegeuza na kumwagia maji").
func (r *reader) deeds(c *clause, n int, last *tense, about topic) (out []deed) {
	own := c.has("heap", "stick", "worm", "bed", "bottle", "cap", "compost", "layer", "starter", "inside", "gas")
	if c.foreign {
		return nil
	}
	off := !own && c.has("animal", "plant", "foreign")
	for i := range c.signs {
		s := &c.signs[i]
		if !act(s.sense) {
			continue
		}
		if (c.has("eye", "harm=eye")) && (s.sense == "did=watered" || s.sense == "put") {
			continue // "it sprayed in my eye"
		}
		code, ok := r.meaning(c, i, about)
		if !ok || off && code != "" && code != "did=gathered" {
			continue
		}
		o := r.standing(c, i, *last)
		if o == done {
			*last = past
		} else if o == planned && s.tense&future != 0 {
			*last = future
		}
		out = append(out, deed{code, o, n, i})
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
		case worm && (stuff || r.asked == "feed") && !water:
			return "did=fed", true
		case layer && !c.has("sheet"):
			return "did=layered", true
		case c.has("sheet"):
			return "did=covered", true
		case water:
			return "did=watered", true
		case r.asked == "feed" && !water && (stuff || c.has("food")):
			return "did=fed", true
		case r.asked == "layer" && !bottle:
			return "did=layered", true
		}
		return "", false
	case "give":
		switch {
		case worm || c.has("food"):
			return "did=fed", true
		case water:
			return "did=watered", true
		case r.asked == "feed":
			return "did=fed", true
		}
		return "", false
	case "make":
		switch {
		case layer:
			return "did=layered", true
		case c.has("starter", "bottle", "liquid"):
			return "did=mixed", true
		case c.has("heap", "compost"):
			return "did=built", true
		case r.asked == "layer":
			return "did=layered", true
		}
		return "", false
	case "takeout":
		switch {
		case c.has("gas", "cap"):
			return "did=vented", true
		case c.has("compost"):
			return "did=harvested", true
		}
		return "", false
	case "open":
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
		if stuff || r.asked == "have" || c.has("dung", "leaf", "dry_leaf", "stem", "stalk", "grasses", "straws", "huskw") {
			return "did=gathered", true
		}
		return "", false
	case "stir":
		switch {
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
		}
		return "did=mixed", true
	case "did=fed":
		if c.has("animal", "person") && !worm {
			return "", false
		}
	case "did=harvested":
		if !c.has("compost", "worm", "bed") && (c.hasDim("crop") || c.has("foreign", "plant", "fruit", "veg")) {
			return "", false
		}
	case "did=watered":
		if c.has("weather") {
			return "", false
		}
		if water || c.has("heap", "bed", "worm", "layer", "compost") {
			return s.sense, true
		}
		if c.hasDim("crop") || c.has("plant", "foreign", "animal", "veg", "fruit") {
			return "", false
		}
	}
	return s.sense, true
}

func (c *clause) hasAnimalDung() bool {
	for _, s := range c.signs {
		if s.sense == "material=cow_dung" || s.sense == "material=jaggery" || s.sense == "material=curd" {
			return true
		}
	}
	return false
}

// standing says whether the act of sign i is done, denied, planned, wished or asked.
func (r *reader) standing(c *clause, i int, last tense) outcome {
	s := &c.signs[i]
	t := s.tense
	switch c.ask {
	case askWhy, askWh, askModal:
		return nothing
	case askMark, askTag:
		if t&future != 0 || c.tomorrow {
			return nothing
		}
		return doubtful
	}
	if c.cond && !(t&future != 0) && !c.will && !c.tomorrow {
		return nothing
	}
	if t == 0 && dimension(s.sense) == "did" {
		t = bare
	}
	neg := s.neg
	if c.has("notyet", "forgot") && t&future == 0 {
		return notDone
	}
	if c.has("today") && neg && t&past == 0 {
		return planned
	}
	if c.cant {
		if c.has("today", "now") || c.tomorrow || c.later {
			return planned
		}
		return notDone
	}
	next := ""
	if i+1 < len(c.signs) {
		next = c.signs[i+1].sense
	}
	before := func(senses ...string) bool {
		for k := i - 1; k >= 0 && k >= i-4; k-- {
			for _, x := range senses {
				if c.signs[k].sense == x {
					return true
				}
			}
			if act(c.signs[k].sense) {
				return false
			}
		}
		return false
	}
	after := func(sense string) bool { // Hindi: palatne ke baad, palatte samay
		if s.tongue != hi && s.tongue != hiLatn {
			return false
		}
		for k := i + 1; k < len(c.signs) && k <= i+2; k++ {
			if c.signs[k].sense == sense {
				return true
			}
			if c.signs[k].sense != "filler" {
				return false
			}
		}
		return false
	}
	if after("while") || after("before") {
		return nothing
	}
	if after("after") && t&(bare|past) != 0 {
		return done
	}
	if before("before") {
		return nothing
	}
	if before("while") {
		return nothing
	}
	if c.doubt {
		return doubtful
	}
	if c.halfway() && t&(past|participle|bare) != 0 && !c.hasDim("unit") {
		return planned // half done is still going on
	}
	switch {
	case t&unless != 0:
		return nothing
	case t&yet != 0:
		return notDone
	case t&future != 0 || (c.will && t&(bare|order|present) != 0):
		if neg || c.has("not") && before("will", "not") || willDenied(c) {
			if c.has("today", "now") || c.tomorrow || c.later {
				return planned
			}
			return refused
		}
		return planned
	case c.want:
		if c.has("not") {
			return refused
		}
		return wished
	case before("after"):
		return done
	case before("finish") || next == "finish":
		if neg || c.has("not") {
			return notDone
		}
		return done
	case before("start"):
		return planned
	case t&ongoing != 0:
		switch {
		case c.has("didaux") && !neg && s.tongue == en:
			return done // "did the turning"
		case before("stop") || next == "stop" || c.has("stop"):
			return nothing
		case c.hasHarm():
			return nothing
		case neg:
			return notDone
		case next == "done" || before("done"):
			return done
		}
		return planned
	case t&(past|participle) != 0:
		if c.tomorrow && !c.has("past", "already", "didaux", "have") && s.tongue != sw {
			return planned
		}
		if t&present != 0 && (c.tomorrow || c.later) && !c.has("past", "already") {
			return planned
		}
		if neg {
			return notDone
		}
		if t&(present|order) != 0 && t&bare == 0 && !c.has("already", "didaux", "have", "past", "person", "neighbor", "yes") && s.tongue == fr && !(r.several && s.sense == actOf(r.asked) && !c.has("me")) {
			return wished // "retourne" may be "retourné" without its accent
		}
		if t&present != 0 && s.tongue == es && s.endsInO() && !c.has("already", "didaux", "past", "person", "neighbor") {
			return wished
		}
		return done
	case t&(bare|order|present) != 0:
		switch {
		case c.has("didaux"):
			if neg {
				return notDone
			}
			return done
		case c.has("prog"):
			return planned
		case t&bare != 0 && s.tongue == sw && last != 0 && !neg:
			if last == past {
				return done
			}
			return planned
		case c.tomorrow || c.later:
			return planned
		case neg && t&present != 0 && s.real:
			return refused
		case neg && t&(bare|present) != 0:
			if act := actOf(r.asked); act != "" && t&bare != 0 {
				return notDone
			}
			return wished
		case c.has("already", "past") && t&order == 0:
			return done
		case c.has("done") && t&bare != 0:
			return done
		case t&present != 0 && c.has("now"):
			return planned
		}
		return wished
	case t&imperfect != 0:
		if neg {
			return notDone
		}
		return wished
	}
	return wished
}

// endsInO: Spanish "volteo" may be "volteó" without its accent; "volteamos" is
// taken as done.
func (s *sign) endsInO() bool { return len(s.text) > 0 && s.text[len(s.text)-1] == 'o' }

// halfway: "half sieved", with no measure that the half could belong to.
func (c *clause) halfway() bool {
	for _, s := range c.signs {
		if s.sense == "num" && s.value == 0.5 && !s.typed {
			return true
		}
	}
	return false
}

func willDenied(c *clause) bool {
	for _, s := range c.signs {
		if s.sense == "will" && s.neg {
			return true
		}
	}
	return false
}

func (c *clause) hasHarm() bool {
	for _, s := range c.signs {
		switch s.sense {
		case "burn", "bite", "cut", "burnt":
			return true
		}
		if dimension(s.sense) == "harm" {
			return true
		}
	}
	return false
}
