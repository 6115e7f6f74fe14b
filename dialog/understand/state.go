package understand

// fact is one thing a clause states about heap, bottle or worms.
type fact struct {
	code   string
	dim    string
	clause int
	place  int  // 1 the middle, 2 the edge
	was    bool // earlier than now
	now    bool
	doubt  bool
	void   bool
}

// halves of a denial: "not hot" leaves warm and cold open.
const (
	notHot  = "stick!hot"
	notCold = "stick!cold"
	notDry  = "moisture!dry"
	notWet  = "moisture!wet"
)

// topic is what "it" stands for: the last thing named, or the thing asked about.
type topic struct{ heap, bottle, worm, smell, stick bool }

func (r *reader) opening() topic {
	switch r.asked {
	case "moisture":
		return topic{heap: true}
	case "bottle", "shake":
		return topic{bottle: true}
	case "worms":
		return topic{worm: true}
	case "smell":
		return topic{smell: true}
	}
	return topic{}
}

// states reads the qualities of one clause into facts.
func (r *reader) states(c *clause, n int, about *topic) (out []fact) {
	here := topic{
		heap:   c.has("heap", "stick", "inside", "edge", "squeeze", "layer", "compost", "bed") || r.aboutHeap(c),
		bottle: c.has("bottle", "cap"),
		worm:   c.has("worm"),
		smell:  c.has("smell"),
	}
	defer func() {
		if here.heap || here.bottle || here.worm {
			*about = here
		} else if here.smell {
			about.smell = true
		}
		for _, s := range c.signs {
			switch s.sense {
			case "did=turned", "did=built", "did=layered":
				about.heap = true
			case "did=shook", "did=vented":
				about.bottle = true
			case "did=fed":
				about.worm = true
			}
		}
	}()
	weather := c.has("weather") && !here.heap
	harm := c.hasHarm()
	place, was, now := 0, false, false
	lead := r.leads(c)
	for i := range c.signs {
		s := &c.signs[i]
		switch s.sense {
		case "inside":
			if lead {
				place = 1
			}
		case "edge":
			if lead {
				place = 2
			}
		case "was", "earlier", "past", "before":
			was, now = true, false
		case "now", "today":
			was, now = false, true
		}
		code := r.value(c, i, here, *about)
		if code == "" || weather {
			continue
		}
		if harm && dimension(code) == "seen" {
			continue // "ants bit me": a doer, not a sight
		}
		if s.tense&(future|order|unless) != 0 && s.tense&(past|present|participle) == 0 {
			continue
		}
		if s.tense == bare && (c.will || c.later || c.tomorrow || c.want) && verbalState(s.sense) {
			continue
		}
		p := place
		if !lead {
			for k := i + 1; k < len(c.signs); k++ {
				if c.signs[k].sense == "inside" {
					p = 1
				}
				if c.signs[k].sense == "edge" {
					p = 2
				}
				if p != 0 || quality(c.signs[k].sense) {
					break
				}
			}
			if p == 0 {
				for k := i - 1; k >= 0 && !quality(c.signs[k].sense); k-- {
					if c.signs[k].sense == "inside" {
						p = 1
					}
					if c.signs[k].sense == "edge" {
						p = 2
					}
				}
			}
		}
		w := was
		if !now && i+1 < len(c.signs) && (c.signs[i+1].sense == "was" || c.signs[i+1].sense == "earlier" || c.signs[i+1].sense == "past") {
			w = true
		}
		about.stick = about.stick || dimension(code) == "stick"
		out = append(out, fact{code: code, dim: dimension2(code), clause: n, place: p, was: w, now: now})
	}
	return out
}

// verbalState: a quality that is a verb ("dry" the straw) counts only as state.
func verbalState(s string) bool { return dimension(s) == "moisture" || s == "leave" || s == "die" }

func dimension2(code string) string {
	for i := 0; i < len(code); i++ {
		if code[i] == '=' || code[i] == '!' {
			return code[:i]
		}
	}
	return code
}

// leads says whether places come before what they hold: "in the middle hot, at
// the edge cold" and not "hot in the middle".
func (r *reader) leads(c *clause) bool {
	for _, s := range c.signs {
		if s.sense == "inside" || s.sense == "edge" {
			return true
		}
		if quality(s.sense) {
			return false
		}
	}
	return true
}

func (r *reader) aboutHeap(c *clause) bool {
	for _, s := range c.signs {
		switch s.sense {
		case "did=turned", "did=built", "did=layered":
			return true
		}
	}
	return false
}

// value is the code that sign i states, or "" when it states nothing by itself.
func (r *reader) value(c *clause, i int, here, about topic) string {
	s := &c.signs[i]
	asked := r.asked
	heap := here.heap || asked == "stick" || asked == "moisture" || about.heap && !here.bottle && !here.worm
	smell := here.smell || asked == "smell" || about.smell && !here.bottle && !here.worm && !here.heap
	bottle := here.bottle || asked == "bottle" || about.bottle && !here.heap && !here.worm
	worm := here.worm || asked == "worms" || about.worm && !here.heap && !here.bottle
	stick := here.heap || asked == "stick" || about.heap && !here.bottle && !here.worm
	wet := here.heap || asked == "moisture" || asked == "stick" && (c.hasDim("stick") || about.stick) || c.has("damp", "bed") || about.heap && !here.bottle || here.worm || asked == "worms" && c.has("inside")
	switch s.sense {
	case "stick=hot":
		if !stick && !s.own {
			return ""
		}
		switch {
		case s.neg && s.grade == strongly:
			return "stick=warm"
		case s.neg && s.grade == notAtAll:
			return "stick=cold"
		case s.neg:
			return notHot
		case s.grade == slightly:
			return "stick=warm"
		}
		return "stick=hot"
	case "stick=warm":
		if !stick && !s.own {
			return ""
		}
		if s.neg {
			return "stick=cold"
		}
		return "stick=warm"
	case "stick=cold":
		if !stick && !s.own {
			return ""
		}
		if s.neg {
			return notCold
		}
		return "stick=cold"
	case "heat", "joto":
		if !stick {
			return ""
		}
		switch {
		case s.neg && s.grade == strongly:
			return "stick=warm"
		case s.neg:
			return "stick=cold"
		case s.grade == slightly:
			return "stick=warm"
		case s.grade == strongly || s.grade == notAtAll:
			return "stick=hot"
		case s.sense == "heat":
			return "stick=hot"
		}
		return ""
	case "moto": // Swahili: hot, and fire
		if s.neg {
			if !stick {
				return ""
			}
			switch s.grade {
			case strongly:
				return "stick=warm"
			case notAtAll:
				return "stick=cold"
			}
			return notHot
		}
		if i > 0 && c.signs[i-1].sense == "hold" && c.signs[i-1].tense&past != 0 {
			return "" // limeshika moto: it caught fire
		}
		if c.has("give") || i > 0 && c.signs[i-1].sense == "have" {
			return ""
		}
		if stick {
			if s.grade == slightly {
				return "stick=warm"
			}
			return "stick=hot"
		}
		return ""
	case "poa":
		if s.tense != 0 || here.heap {
			if stick || here.heap {
				if s.neg {
					return notCold
				}
				return "stick=cold"
			}
		}
		return ""
	case "fireglyph":
		if asked == "stick" {
			return "stick=hot"
		}
		return ""
	case "burn":
		if !s.neg && !s.self && !here.heap && (asked == "stick" || c.has("stick")) && !c.has("body", "me", "person") && s.tense&(present|ongoing|imperfect) != 0 {
			return "stick=hot" // el palo quema, ça brûle
		}
		return ""
	case "burning":
		if s.neg {
			return ""
		}
		if stick && (asked == "stick" || c.has("stick")) {
			return "stick=hot"
		}
		return ""
	case "moisture=dry":
		if !wet && !s.own {
			return ""
		}
		if s.neg {
			return notDry
		}
		return s.sense
	case "moisture=wet":
		if !wet && !s.own {
			return ""
		}
		if s.neg {
			return notWet
		}
		return s.sense
	case "moisture=right":
		if !wet && !s.own {
			return ""
		}
		if s.neg {
			return ""
		}
		if s.grade == strongly {
			return "moisture=wet"
		}
		return s.sense
	case "damp":
		switch {
		case s.neg || s.grade == notAtAll:
			return "moisture=dry"
		case s.grade == strongly:
			return "moisture=wet"
		case c.has("good", "enough"):
			return "moisture=right"
		}
		return ""
	case "good":
		if s.neg {
			return ""
		}
		switch {
		case here.smell || asked == "smell" && !here.heap && !here.worm && !here.bottle:
			if c.hasDim("smell") {
				return ""
			}
			return "smell=earthy"
		case c.has("damp"):
			return ""
		case here.worm || asked == "worms" && !here.heap && !here.bottle && !here.smell:
			if c.hasDim("seen") {
				return ""
			}
			return "seen=worms_well"
		case asked == "moisture" && !here.bottle && !here.worm && !c.hasDim("moisture"):
			return "moisture=right"
		}
		return ""
	case "bad":
		if s.neg || !smell {
			return ""
		}
		return "smell=rotten"
	case "smell=none":
		if s.neg || !smell && !s.own {
			return ""
		}
		return s.sense
	case "smell":
		if s.neg && !c.hasDim("smell") && !c.has("bad", "good", "burnt") {
			return "smell=none"
		}
		return ""
	case "nothing":
		switch {
		case here.smell || asked == "smell" && len(c.signs) <= 4:
			if c.hasDim("smell") {
				return ""
			}
			return "smell=none"
		case asked == "moisture" && !here.bottle && !c.hasDim("moisture"):
			return "moisture=dry" // squeezed, and nothing came
		case asked == "bottle" && len(c.signs) <= 4:
			return "bottle=flat"
		case here.bottle:
			return "bottle=flat"
		}
		return ""
	case "drop":
		if !wet {
			return ""
		}
		switch {
		case s.neg || i > 0 && c.signs[i-1].sense == "num" && c.signs[i-1].value == 0:
			return "moisture=dry"
		case i > 0 && c.signs[i-1].sense == "num" && c.signs[i-1].high <= 6, i+1 < len(c.signs) && c.signs[i+1].sense == "num" && c.signs[i+1].high <= 6:
			return "moisture=right"
		}
		return ""
	case "gas":
		switch {
		case s.neg && (bottle || asked == "shake"), s.neg && !c.hasAct():
			return "bottle=flat"
		case !s.neg && here.bottle && !c.hasAct() && c.has("fill", "very"):
			return "bottle=bloated"
		}
		return ""
	case "seen=worms_dead", "die":
		if s.neg || !worm && !s.own {
			return ""
		}
		if c.has("animal") && !here.worm || c.has("plant") {
			return ""
		}
		return "seen=worms_dead"
	case "leave", "seen=worms_escaping", "goout":
		if s.neg || !worm && !s.own || s.sense == "goout" && !here.worm && asked != "worms" {
			return ""
		}
		return "seen=worms_escaping"
	case "alive", "seen=worms_well":
		if s.neg || !worm && !s.own {
			return ""
		}
		return "seen=worms_well"
	}
	if s.sense == "did=watered" && c.has("weather") && here.heap && !s.neg {
		return "moisture=wet" // the rain watered it
	}
	switch dimension(s.sense) {
	case "smell":
		if s.neg || !smell && !s.own {
			return ""
		}
		return s.sense
	case "seen":
		if s.neg {
			return ""
		}
		switch s.sense {
		case "seen=smoke", "seen=fire", "seen=ash":
			return "" // read with the dangers
		case "seen=weeds":
			if !s.own && r.counted(c, i) {
				return ""
			}
		case "seen=sunk":
			if !s.own && !heap && asked != "none" && asked != "menu" && asked != "turn" || c.has("heat", "joto", "degree") || c.figure() {
				return ""
			}
		}
		return s.sense
	case "bottle":
		if s.neg || !bottle && !s.own {
			return ""
		}
		if s.sense == "bottle=leaking" && asked == "moisture" && !here.bottle {
			return "moisture=wet"
		}
		return s.sense
	}
	return ""
}

func (c *clause) hasDim(dim string) bool {
	for _, s := range c.signs {
		if dimension(s.sense) == dim && s.sense != "seen=steam" {
			return true
		}
	}
	return false
}

func (c *clause) hasAct() bool {
	for _, s := range c.signs {
		if act(s.sense) {
			return true
		}
	}
	return false
}

// counted says whether sign i is counted: "two bags of weeds".
func (r *reader) counted(c *clause, i int) bool {
	for _, s := range c.signs {
		if dimension(s.sense) == "unit" || s.sense == "num" {
			return true
		}
	}
	return false
}

// resolve leaves one value a dimension: a correction beats what it corrects, the
// middle beats the edge, now beats then; two that still disagree are both dropped.
func resolve(fs []fact, corrected map[int]bool) (keep []fact, clash []string) {
	byDim := map[string][]fact{}
	var dims []string
	for _, f := range fs {
		if _, ok := byDim[f.dim]; !ok {
			dims = append(dims, f.dim)
		}
		byDim[f.dim] = append(byDim[f.dim], f)
	}
	for _, d := range dims {
		g := byDim[d]
		if d == "seen" {
			keep = append(keep, g...)
			continue
		}
		last := -1
		for _, f := range g {
			for k := range corrected {
				if f.clause >= k && k > last {
					last = k
				}
			}
		}
		if last >= 0 {
			g = filter(g, func(f fact) bool { return f.clause >= last })
		}
		if d == "bottle" {
			hard := some(g, func(f fact) bool { return f.code == "bottle=bloated" })
			soft := some(g, func(f fact) bool { return f.code == "bottle=flat" })
			if hard && soft && last < 0 {
				clash = append(clash, "bottle=bloated", "bottle=flat")
				continue
			}
		}
		if d == "smell" || d == "bottle" {
			keep = append(keep, g...)
			continue
		}
		if some(g, func(f fact) bool { return f.place == 1 }) {
			g = filter(g, func(f fact) bool {
				return f.place == 1 || f.place == 0 && some(g, func(e fact) bool { return e.place == 2 }) == false
			})
		}
		if d == "stick" && len(g) > 0 && !some(g, func(f fact) bool { return f.place != 2 }) {
			clash = append(clash, g[0].code)
			continue
		}
		if some(g, func(f fact) bool { return f.was }) && some(g, func(f fact) bool { return !f.was }) {
			g = filter(g, func(f fact) bool { return !f.was })
		}
		v, ok := agree(d, g)
		if !ok {
			for _, f := range g {
				clash = append(clash, f.code)
			}
			continue
		}
		f := g[0]
		f.code = v
		f.doubt = true
		for _, e := range g {
			if !e.doubt {
				f.doubt = false
			}
		}
		keep = append(keep, f)
	}
	return keep, clash
}

// agree joins the values of one dimension, halves of denials among them.
func agree(dim string, g []fact) (string, bool) {
	has := map[string]bool{}
	for _, f := range g {
		has[f.code] = true
	}
	half := func(a, b, ab string) bool {
		if has[a] && has[b] && len(has) == 2 {
			delete(has, a)
			delete(has, b)
			has[ab] = true
		}
		return len(has) == 1 && has[ab]
	}
	if dim == "stick" {
		if half(notHot, notCold, "stick=warm") {
			return "stick=warm", true
		}
		if has[notHot] && !has["stick=hot"] && len(has) > 1 {
			delete(has, notHot)
		}
		if has[notCold] && !has["stick=cold"] && len(has) > 1 {
			delete(has, notCold)
		}
	}
	if dim == "moisture" {
		if half(notDry, notWet, "moisture=right") {
			return "moisture=right", true
		}
		if has[notDry] && !has["moisture=dry"] && len(has) > 1 {
			delete(has, notDry)
		}
		if has[notWet] && !has["moisture=wet"] && len(has) > 1 {
			delete(has, notWet)
		}
	}
	if len(has) != 1 {
		return "", false
	}
	for k := range has {
		if k == notHot || k == notCold || k == notDry || k == notWet {
			return k, false
		}
		return k, true
	}
	return "", false
}

func some(g []fact, ok func(fact) bool) bool {
	for _, f := range g {
		if ok(f) {
			return true
		}
	}
	return false
}

func filter(g []fact, ok func(fact) bool) []fact {
	out := make([]fact, 0, len(g))
	for _, f := range g {
		if ok(f) {
			out = append(out, f)
		}
	}
	return out
}

// figure says whether a clause holds a number that could be a temperature.
func (c *clause) figure() bool {
	for _, s := range c.signs {
		if s.sense == "num" && s.high >= 10 {
			return true
		}
	}
	return false
}
