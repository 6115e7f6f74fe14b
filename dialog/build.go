package dialog

import (
	"math"
	"strconv"
	"strings"

	"warmstick/dialog/compost"
	"warmstick/dialog/phrases"
	"warmstick/dialog/understand"
)

// Building: twigs and a barrier of leaves, then layer by layer, starter on
// each, never pressed, a loose cover. Too little stuff is said before the work.

func buildQuestions() map[string]question {
	return map[string]question{
		"prepared": {asks: "ready", task: TaskPrepare, choices: yesNo, answer: (*exchange).preparedTold},
		"build":    {asks: "ready", also: "layer", task: TaskBuild, choices: choose("answer=yes", "when=tomorrow"), answer: (*exchange).buildTold},
		"small":    {asks: "confirm", task: TaskBuild, choices: choose("pick=wait", "pick=anyway", "pick=cold_dung"), answer: (*exchange).smallTold},
		"layer":    {asks: "layer", topic: "layer", task: TaskBuild, choices: layerChoices, args: layerArgs, answer: (*exchange).layerTold},
		"squeeze":  {asks: "squeeze", topic: "moisture", choices: choose("moisture=dry", "moisture=right", "moisture=wet"), answer: (*exchange).squeezeTold},
		"size":     {asks: "size", also: "stick", choices: sizeChoices, phrase: sizePhrase, raw: (*exchange).sizeTold},
		"rebuilt":  {asks: "ready", task: TaskRebuild, choices: choose("did=built", "when=tomorrow"), answer: (*exchange).rebuiltTold},
		"pile":     {asks: "ready", task: TaskPile, choices: yesNo, answer: (*exchange).pileTold},
	}
}

const (
	fewestLayers = 6 // 6 or 7 additions (common practice, no source)
	mostLayers   = 7
)

func (x *exchange) buildNext(h Heap) string {
	switch {
	case h.Stage == Building && h.Redo:
		return ""
	case h.Stage == Building && ((h.Layers == 1 || h.Layers == 4) && h.MoistDay != x.today || h.Layers > 1 && h.MoistDay == 0):
		return "squeeze"
	case h.Stage == Building:
		return "layer"
	case h.Path == HotHeap && h.Built != 0 && h.Size[0] == 0 && h.Round == 1 && len(h.Turns) == 0 && len(h.Reads) == 0:
		return "size"
	}
	return ""
}

func (x *exchange) preparedTold(q Question, m meaning) bool {
	switch {
	case m.yes():
		x.note(q.Heap, Prepared{})
		x.say("prepared_good", nil)
	case m.no():
		h := x.Heap(q.Heap)
		x.note(q.Heap, DateWished{max(h.Wished, x.today) + 1})
		x.say("prepared_not", nil)
	default:
		return false
	}
	x.goOn()
	return true
}

func (x *exchange) buildTold(q Question, m meaning) bool {
	switch {
	case m.yes():
		x.startBuilding(x.Heap(q.Heap))
	case m.no():
		x.note(q.Heap, Snoozed{TaskBuild, x.today + 1})
		x.say("asked_tomorrow", nil)
		x.tellNext()
	case m.has("did=layered") || m.has("did=built"):
		return x.layerTold(q, m)
	default:
		return false
	}
	return true
}

// startBuilding checks that the stuff is enough before anyone sweats.
func (x *exchange) startBuilding(h Heap) {
	x.heap = h.ID
	if mix, ok := compost.Blend(portions(h), x.s.Person.Measures); ok && mix.M3.High < smallestHeap {
		x.say("small_before", phrases.Args{"High": x.height(mix.M3.Likely)}, string(compost.HeapTooSmall))
		x.ask("small", h.ID)
		return
	}
	x.base(h)
}

// smallestHeap is a cube of 0.9 m, the least that keeps its heat (practice).
const smallestHeap = 0.9 * 0.9 * 0.9

func (x *exchange) smallTold(q Question, m meaning) bool {
	pick := m.value("pick")
	switch {
	case pick == "wait" || m.no():
		x.note(q.Heap, Snoozed{TaskBuild, x.today + 7})
		x.say("small_wait", nil)
		x.tellNext()
	case pick == "anyway" || m.yes():
		x.base(x.Heap(q.Heap))
		x.say("small_cover", nil)
	case pick == "cold_dung":
		x.changeWay(q.Heap, ColdPath)
	default:
		return false
	}
	return true
}

func (x *exchange) base(h Heap) {
	x.note(h.ID, BaseLaid{})
	x.say("care_build", nil)
	x.say("base", nil)
	if h.Starter != "" {
		x.say("layer_how_"+string(h.Starter), nil)
	} else {
		x.say("layer_how_slurry", nil)
	}
	x.ask("layer", h.ID)
}

func layerArgs(x *exchange, q Question) phrases.Args {
	return phrases.Args{"Layer": x.Heap(q.Heap).Layers + 1}
}

func layerChoices(x *exchange, q Question) []Choice {
	if x.Heap(q.Heap).Layers+1 >= fewestLayers {
		return labelled(x.lang(), "did=layered", "did=built", "when=tomorrow")
	}
	return labelled(x.lang(), "did=layered", "when=tomorrow")
}

// wholeFrom is how many layers there are at least when "all finished" means the
// heap and not the layer (our choice).
const wholeFrom = 3

func (x *exchange) layerTold(q Question, m meaning) bool {
	h := x.Heap(q.Heap)
	whole := !m.picked && !questionMark(m.text) &&
		(h.Layers >= wholeFrom && x.affirms(m.text, "words_said_whole") || x.affirms(m.text, "words_said_layers"))
	_, sides := x.sides(m)
	switch {
	case m.has("did=built") || whole:
		x.built(h, m.day)
	case sides && h.Layers >= wholeFrom && m.value("have") == "": // who gives the sides of the heap has built it
		x.noteOn(h.ID, m.day, Built{})
		x.say("built", nil)
		x.say("built_cover", nil)
		return x.sizeTold(Question{ID: "size", Heap: h.ID}, m)
	case m.has("did=layered") || m.yes() || x.countsLayers(m):
		x.layered(h, m)
	case m.no():
		x.say("layer_wait", nil)
		x.ask("layer", q.Heap)
	default:
		return false
	}
	return true
}

// layered writes down the layers of a report, one if it has no number.
func (x *exchange) layered(h Heap, m meaning) {
	for upTo := x.layersTold(h, m); h.Layers < upTo; h = x.Heap(h.ID) {
		x.noteOn(h.ID, m.day, LayerLaid{})
	}
	if h.Layers >= mostLayers {
		x.built(h, m.day)
		return
	}
	if h.Layers == fewestLayers {
		x.say("layers_enough", nil)
	}
	x.goOnWith(h)
}

// countsLayers takes a bare number of layers for a report, where the next one is asked for:
// "two more layers".
func (x *exchange) countsLayers(m meaning) bool {
	_, _, ok := understand.Layers(m.text, x.lang())
	if !ok || len(m.codes) > 0 || questionMark(m.text) {
		return false
	}
	said := spaced(m.text)
	if more := x.wordIn(said, "words_more"); more != "" {
		said = strings.ReplaceAll(said, " "+more+" ", " ") // "encore" is more here, and not yet elsewhere
	}
	return x.wordIn(said, "words_denied") == ""
}

// layersTold is how many layers the heap has by a report of some: "layer 4" and "4
// layers" are four of them, unless so many were told before; "2 more layers" come on top.
func (x *exchange) layersTold(h Heap, m meaning) int {
	n, nth, ok := understand.Layers(m.text, x.lang())
	switch {
	case !ok || m.picked:
		n = h.Layers + 1
	case nth && n <= h.Layers: // told once more
		n = h.Layers
	case !nth && (n <= h.Layers || x.lineHolds(m.text, "words_more")):
		n += h.Layers
	}
	return min(n, mostLayers)
}

// built closes the building: the days are counted from here.
func (x *exchange) built(h Heap, day Day) {
	again := h.Redo
	x.noteOn(h.ID, day, Built{})
	h = x.Heap(h.ID)
	if n := int(x.today - h.Built); n > 0 {
		x.say("built_ago", phrases.Args{"N": n})
	} else {
		x.say("built", nil)
		x.say("built_cover", nil)
		x.show(Picture{Kind: "section"})
	}
	if again {
		x.say("round_new", phrases.Args{"Round": h.Round})
	}
	x.goOnWith(h)
}

func (x *exchange) squeezeTold(q Question, m meaning) bool {
	v := m.value("moisture")
	if v == "" {
		return x.layerMeanwhile(q, m)
	}
	x.noteOn(q.Heap, m.day, Squeezed{v})
	x.say("squeeze_"+v, nil, moistureClass(v)...)
	x.alsoTold(q.Heap, m, "moisture")
	x.goOn()
	return true
}

// layerMeanwhile takes a report of the next layer, or of the whole heap, instead of a
// squeezed handful. A bare "done" may be the squeezing.
func (x *exchange) layerMeanwhile(q Question, m meaning) bool {
	if len(m.codes) == 0 && strings.Contains(m.text, " ") {
		m.codes = understand.Read(m.text, x.lang(), "layer").Codes
	}
	if !m.has("did=layered") && !m.has("did=built") && !x.affirms(m.text, "words_said_layers") && !x.countsLayers(m) || !x.layerTold(q, m) {
		return false
	}
	if h := x.Heap(q.Heap); h.Built == 0 {
		x.say("layer_kept", phrases.Args{"Layer": h.Layers})
	}
	return true
}

func moistureClass(v string) []string {
	switch v {
	case "dry":
		return []string{string(compost.TooDry)}
	case "wet":
		return []string{string(compost.TooWet)}
	}
	return nil
}

func sizePhrase(x *exchange, q Question) string {
	if len(x.Heap(q.Heap).Turns) > 0 {
		return "ask_size_turned"
	}
	return "ask_size"
}

func sizeChoices(x *exchange, q Question) []Choice {
	if len(x.Heap(q.Heap).Turns) > 0 {
		return labelled(x.lang(), "sank=third", "sank=little", "sank=not")
	}
	if x.units() == "metres" {
		return append([]Choice{{"1.8 x 1.2 x 1.2 m", "size=1.8,1.2,1.2"}, {"1.5 x 1.2 x 1.2 m", "size=1.5,1.2,1.2"}, {"1.2 x 1.2 x 1.2 m", "size=1.2,1.2,1.2"}},
			labelled(x.lang(), "size=unknown")...)
	}
	return append([]Choice{{"6 x 4 x 4 ft", "size=1.83,1.22,1.22"}, {"5 x 4 x 4 ft", "size=1.52,1.22,1.22"}, {"4 x 4 x 4 ft", "size=1.22,1.22,1.22"}},
		labelled(x.lang(), "size=unknown")...)
}

func (x *exchange) sizeTold(q Question, m meaning) bool {
	if how := x.sank(q, m); how != "" {
		x.close()
		x.note(q.Heap, Sank{how})
		x.say("sank_"+how, nil)
		x.goOn()
		return true
	}
	if m.value("have") != "" {
		return false // baskets are no sides
	}
	dims, ok := x.sides(m)
	unknown := m.value("size") == "unknown" || m.has("when=skip") || m.no() && !ok || !ok && x.s.Talk.Misses >= 2 && !x.tellsFact(m)
	if !ok && !unknown {
		if len(x.Heap(q.Heap).Turns) == 0 && len(understand.Lengths(m.text, x.lang())) == 2 {
			x.say("hint_size", nil) // "6 by 4": one side is missing
			x.again()
			return true
		}
		return false
	}
	x.close()
	if unknown {
		x.note(q.Heap, Measured{-1, -1, -1})
		x.say("size_unknown", nil)
		x.goOn()
		return true
	}
	x.note(q.Heap, Measured{dims[0], dims[1], dims[2]})
	m3, advice := compost.Size(dims[0], dims[1], dims[2])
	if h := x.Heap(q.Heap); len(h.Turns) > 0 {
		x.say("sank_"+sankBy(h.SizeKept), nil)
		x.goOn()
		return true
	}
	x.say("size_kept", phrases.Args{"Volume": x.volume(m3), "Kg": roundTo(m3*compost.HeapDensity().Likely, 50)}, classes(advice)...)
	for _, c := range advice {
		x.say("size_"+string(c), nil)
	}
	if len(advice) == 0 && m3*compost.KeptAtTurn < 64*compost.FootCubed-0.2 {
		x.say("size_short", nil)
	}
	x.goOn()
	return true
}

// sank reads how far the heap went down, after a turn: by a word, or by the
// height alone.
func (x *exchange) sank(q Question, m meaning) string {
	h := x.Heap(q.Heap)
	if len(h.Turns) == 0 {
		return ""
	}
	if v := m.value("sank"); v != "" {
		return v
	}
	if c, ok := wordPick(x.lang(), q, m.text); ok {
		return strings.TrimPrefix(c.Means, "sank=")
	}
	if list := understand.Lengths(m.text, x.lang()); len(list) == 1 && h.Size[2] > 0 && (list[0].Unit != "" || isNumber(m.text)) {
		kept := x.metres(list[0]) / h.Size[2]
		if kept < leastKept {
			kept = 1 - kept // "30 cm" of 120 is what it lost, "90 cm" what is left
		}
		if kept > 0 && kept < 2 {
			return sankBy(kept)
		}
	}
	if m.has("seen=sunk") || m.yes() {
		return "some"
	}
	return ""
}

// leastKept is the least share of its height that a heap has after its first days; it
// tells a height that is left from one that is lost (common practice, no source).
const leastKept = 0.5

// sankBy puts the share of its size that a heap kept into words: two thirds is
// as it should be (common practice, no source).
func sankBy(kept float64) string {
	switch {
	case kept < 0:
		return "little"
	case kept < 0.75:
		return "third"
	case kept < 0.95:
		return "little"
	}
	return "not"
}

// sides reads length, width and height in metres.
func (x *exchange) sides(m meaning) ([3]float64, bool) {
	if v := m.value("size"); strings.Contains(v, ",") {
		var d [3]float64
		for i, part := range strings.SplitN(v, ",", 3) {
			d[i], _ = strconv.ParseFloat(part, 64)
		}
		return d, true
	}
	list := understand.Lengths(m.text, x.lang())
	if len(list) != 3 {
		return [3]float64{}, false
	}
	var d [3]float64
	unit := ""
	for i := 2; i >= 0; i-- {
		if list[i].Unit != "" {
			unit = list[i].Unit
		}
		if list[i].Unit == "" {
			list[i].Unit = unit
		}
		d[i] = x.metres(list[i])
		if d[i] < 0.1 || d[i] > 100 {
			return d, false
		}
	}
	return d, true
}

// metres turns a told length into metres; without a unit it is in the units
// the person chose. A span is taken as 0.2 m (common practice, no source).
func (x *exchange) metres(l understand.Length) float64 {
	unit := l.Unit
	if unit == "" {
		unit = "ft"
		if x.units() == "metres" {
			unit = "m"
		}
	}
	return l.N * map[string]float64{"ft": 0.3048, "in": 0.0254, "m": 1, "cm": 0.01, "span": 0.2}[unit]
}

func (x *exchange) volume(m3 float64) worded {
	units := x.units()
	return func(lang string) string {
		if units == "metres" {
			return phrases.Text(lang, "cubic_metres", phrases.Args{"N": counted(math.Round(m3*10) / 10)})
		}
		return phrases.Text(lang, "cubic_feet", phrases.Args{"Much": roundTo(m3/compost.FootCubed, 1)})
	}
}

func trim(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

func roundTo(v, step float64) int { return int(math.Round(v/step) * step) }

func (x *exchange) rebuiltTold(q Question, m meaning) bool {
	// Opening and restacking a cold heap is its rebuilding.
	return x.doneOrLater(q, m.asYes("did=turned", "did=built"), func() { x.built(x.Heap(q.Heap), m.day) })
}

func (x *exchange) pileTold(q Question, m meaning) bool {
	return x.doneOrLater(q, m.asYes("did=built", "did=covered"), func() {
		x.noteOn(q.Heap, m.day, Built{})
		x.say("piled", nil)
	})
}
