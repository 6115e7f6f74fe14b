package dialog

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// brief answers each question well and in few words.
var brief = map[string]string{
	"language": "English", "consent": "yes", "name": "Amina", "place": "Nakuru", "hour": "6:30", "units": "feet",
	"path": "hot heap", "have": "20 baskets cow dung, 40 bags dry leaves, 20 baskets grass", "more": "no", "date": "in 3 days",
	"starter": "slurry", "site": "yes", "ready": "yes", "layer": "done", "squeeze": "right", "size": "6 x 4 x 4 ft",
	"stick": "hot", "moisture": "right", "smell": "earth", "turn": "turned", "sieve": "done", "trial": "yes", "feed": "yes",
	"worms": "the worms are fine", "harvest": "yes", "sell": "field", "target": "maize", "rating": "5", "confirm": "no", "bottle": "hard", "shake": "yes",
}

// live plays one brief farmer from hello until a heap is done or days run out.
func live(t testing.TB, days int, change map[string]string) (v *village, told int) {
	v = newVillage(t, "2026-03-02T07:00:00+03:00")
	v.check = house(v)
	say := func(line string) {
		if testing.Verbose() {
			fmt.Printf("%s amina> %s\n", v.now.Format("Jan 2 15:04"), line)
		}
		n := len(v.heard[1])
		v.says(1, line)
		told++
		if testing.Verbose() {
			show(v.heard[1][n:])
		}
	}
	say("hello")
	for range days {
		for range 40 {
			if told > 200 {
				t.Fatalf("no end: %s", v.last(1).Text)
			}
			asks := asksOf(v.talks[1].Open)
			h, _ := v.states[1].Heap(1)
			if h.Stage == Done {
				return v, told
			}
			line := brief[asks]
			if c, ok := change[asks]; ok {
				line = c
			}
			if asks == "stick" && h.Built != 0 && int(DayOf(v.now, v.states[1].Person.Zone())-h.Built) > 25 {
				line = "cold"
			}
			if asks == "have" && h.Sieved != 0 {
				line = "20 basins"
				if h.TrialOK && h.Fed == 0 {
					line = "2 kg"
				}
			}
			if asks == "" {
				break
			}
			say(line)
		}
		n := len(v.heard[1])
		v.wait(24 * time.Hour)
		if testing.Verbose() {
			show(v.heard[1][n:])
		}
	}
	return v, told
}

func show(list []Letter) {
	for _, l := range list {
		fmt.Printf("    %s: %s", l.Kind, strings.ReplaceAll(l.Text, "\n", "\n       "))
		for i, b := range l.Buttons {
			fmt.Printf(" [%d %s]", i+1, b.Label)
		}
		fmt.Printf("  {%s %s %v}\n", l.Asks, l.Stage, l.Advice)
	}
}

func TestABriefFarmerReachesTheHarvest(t *testing.T) {
	v, told := live(t, 160, nil)
	h, _ := v.states[1].Heap(1)
	require.Equal(t, Done, h.Stage)
	require.True(t, h.Complete)
	require.Less(t, told, 70)
	t.Logf("%d messages, %d days", told, h.Over-h.Begun)
}

// A farmer's own basket, weighed once, replaces the usual one in the sums.
func TestAWeighedBasketChangesTheSums(t *testing.T) {
	v := newVillage(t, "2026-03-02T07:00:00+03:00")
	for _, line := range []string{"hello", "English", "yes", "Amina", "Nakuru", "hot heap", "20 baskets cow dung, 20 baskets dry leaves"} {
		v.says(1, line)
	}
	before := v.last(1).Text
	v.says(1, "1 basket of dry leaves weighs 12 kg")
	require.InDelta(t, 12, v.states[1].Person.Measures["basket dry_leaves"], 1e-9)
	h, _ := v.states[1].Heap(1)
	require.Len(t, h.Have, 2, "a weighing is not a gathering")
	require.NotEqual(t, before, v.last(1).Text)
	require.Equal(t, "more", v.last(1).Asks)
}
