package dialog

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"
	"text/tabwriter"
	"time"

	"github.com/stretchr/testify/require"
)

// habit is how one kind of farmer answers.
type habit struct {
	name    string
	skip    float64 // share of days on which nothing is answered
	slip    float64 // share of answers that are something else first
	wrap    string  // what stands round an answer; %s is the answer
	foreign float64 // share of answers in another language
	probes  []string
}

var habitsOfFarmers = []habit{
	{name: "brief", wrap: "%s"},
	{name: "wordy", wrap: "good morning my friend, %s, thank you very much", slip: 0.1},
	{name: "late", wrap: "%s", skip: 0.5},
	{name: "mixes languages", wrap: "%s", foreign: 0.3},
	{name: "mistrustful", wrap: "%s", slip: 0.15, probes: []string{"why", "help", "my data", "what if it is cold?"}},
	{name: "impatient", wrap: "%s!!", slip: 0.2, probes: []string{"next", "what now", "is it ready"}},
	{name: "shares a phone", wrap: "%s", skip: 0.3, slip: 0.2, probes: []string{"who won the match?", "hello", "my cow is ill"}},
}

var abroad = map[string]string{"hot": "moto sana", "cold": "baridi", "yes": "ndiyo", "no": "hapana", "turned": "nimegeuza", "done": "tayari", "right": "sawa tu, matone mawili"}

// tally is what a season of one habit came to.
type tally struct {
	farmers, finished, built int
	toBuilt, messages        int
	missed, twice            int
}

// Sixty farmers of seven habits over a season: what it costs them, and whether
// they reach worms. The figures are printed; the bounds are the promises.
func TestASeasonOfHabits(t *testing.T) {
	all := map[string]*tally{}
	for i := range 63 {
		h := habitsOfFarmers[i%len(habitsOfFarmers)]
		sum := all[h.name]
		if sum == nil {
			sum = &tally{}
			all[h.name] = sum
		}
		season(t, h, uint64(i), sum)
	}
	var b strings.Builder
	w := tabwriter.NewWriter(&b, 0, 0, 2, ' ', 0)
	fmt.Fprintln(w, "habit\tfarmers\tmessages to built\tmessages in all\tnot understood\tasked twice\tfinished")
	for _, h := range habitsOfFarmers {
		s := all[h.name]
		fmt.Fprintf(w, "%s\t%d\t%.1f\t%.0f\t%.1f %%\t%.1f\t%d\n", h.name, s.farmers, float64(s.toBuilt)/float64(max(s.built, 1)),
			float64(s.messages)/float64(s.farmers), 100*float64(s.missed)/float64(s.messages), float64(s.twice)/float64(s.farmers), s.finished)
	}
	w.Flush()
	t.Log("\n" + b.String())
	brief := all["brief"]
	require.Less(t, float64(brief.toBuilt)/float64(brief.built), 25.0, "from hello to built")
	require.Equal(t, brief.farmers, brief.finished)
	for _, h := range habitsOfFarmers {
		s := all[h.name]
		require.GreaterOrEqual(t, s.finished*10, s.farmers*7, "%s: most reach the end", h.name)
	}
}

func season(t *testing.T, h habit, seed uint64, sum *tally) {
	dice := rand.New(rand.NewPCG(seed, 3))
	v := newVillage(t, "2026-03-02T07:00:00+03:00")
	sum.farmers++
	built := false
	say := func(line string) {
		before := v.talks[1].Misses
		asked := v.talks[1].Open.ID
		v.says(1, line)
		sum.messages++
		if v.talks[1].Misses > before {
			sum.missed++
		}
		if after := v.talks[1].Open.ID; after != "" && after == asked && asked != "layer" {
			sum.twice++
		}
		if heap, ok := v.states[1].Heap(1); !built {
			sum.toBuilt++
			if ok && heap.Built != 0 {
				built = true
				sum.built++
			}
		}
	}
	say("hello")
	for day := 0; day < 220; day++ {
		quiet := dice.Float64() < h.skip
		for n := 0; n < 40 && !quiet; n++ {
			q := v.talks[1].Open
			heap, _ := v.states[1].Heap(1)
			if q.ID == "" || heap.Stage == Done {
				break
			}
			if len(h.probes) > 0 && dice.Float64() < h.slip {
				say(h.probes[dice.IntN(len(h.probes))])
				continue
			}
			line := sensibly(v, q, heap)
			if f, ok := abroad[line]; ok && dice.Float64() < h.foreign {
				line = f
			}
			if questions()[q.ID].raw == nil {
				line = fmt.Sprintf(h.wrap, line)
			}
			say(line)
		}
		if heap, _ := v.states[1].Heap(1); heap.Stage == Done {
			sum.finished++
			return
		}
		v.wait(24 * time.Hour)
	}
	if heap, _ := v.states[1].Heap(1); heap.Fed != 0 {
		sum.finished++ // worms have it
	}
}

// sensibly is a good answer in few words.
func sensibly(v *village, q Question, h Heap) string {
	switch q.ID {
	case "passed", "yield":
		return "20 basins"
	case "worms_kg":
		return "2 kg"
	case "menu", "more_menu":
		return "next"
	case "open":
		return "cold"
	case "crumbly", "redo":
		return "yes"
	case "worms":
		return "the worms are fine"
	}
	asks := asksOf(q)
	if asks == "stick" && h.Built != 0 && int(DayOf(v.now, v.states[1].Person.Zone())-h.Built) > openFrom {
		return "cold"
	}
	return brief[asks]
}
