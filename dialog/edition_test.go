package dialog

import (
	"encoding/json"
	"fmt"
	"hash/fnv"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// lives are diaries written by hand, by the day from the first line: what is said in
// words plays no part in them.
var lives = []map[int][]Event{
	{0: {Begun{HotHeap}, Gathered{20, "basket", "cow_dung"}, Gathered{40, "bag", "dry_leaves"}, GatherDone{}, DateWished{20540}, StarterChosen{Bottle}, BottleMixed{}},
		3: {BottleFelt{"bloated"}, BottleShaken{}}, 21: {BottleReady{}}, 24: {SiteFound{}, Prepared{}, BaseLaid{}, LayerLaid{}, Squeezed{"right"}, Built{}},
		28: {StickRead{Warmth: "hot"}}, 31: {TurnedOver{}, Sank{"third"}}, 34: {StickRead{Celsius: 58, Warmth: "hot"}}, 38: {TurnedOver{}}, 45: {Squeezed{"dry"}, Watered{}},
		56: {StickRead{Warmth: "cold"}, Opened{}}, 59: {Smelt{"earthy"}, Cooled{}, Sieved{}, Passed{200}, TrialSet{}}, 60: {TrialDone{true}, WormsHad{2}, Fed{}},
		70: {WormsSeen{"worms_well"}}, 110: {Ripe{}, HarvestTaken{}, Yielded{90}, UseChosen{"field", "vegetable"}, Rated{4}, Finished{}}},
	{0: {Begun{HotHeap}, Built{}, Measured{1.8, 1.2, 1.2}}, 3: {StickRead{Warmth: "warm"}}, 6: {StickRead{Warmth: "cold"}, Squeezed{"dry"}, Smelt{"none"}, RedoOrdered{"dry"}}, 7: {Built{}},
		11: {StickRead{Warmth: "hot"}, Saw{"flies"}}, 12: {TurnedOver{}, Saw{"sunk"}, Peril{"smoke"}}, 13: {PerilSeen{}, Paused{20560}}},
	{0: {Begun{ColdPath}, Gathered{30, "basket", "cow_dung"}, GatherDone{}, SiteFound{}, Built{}}, 30: {TurnedOver{}}, 95: {StickRead{Warmth: "cold"}, Smelt{"earthy"}}},
	{0: {Begun{OldManure}, Smelt{"earthy"}, StickRead{Warmth: "cold"}}, 2: {Sieved{}, Snoozed{TaskTrialSet, 20530}}, 9: {HandedOver{2}}},
}

// Whoever changes what a diary folds to, or what is planned from it, has to raise a
// number beside the change, unless the shape changed with it; otherwise a file of
// the program before would keep its old rows. One line of prints stands for the
// present edition.
func TestChangedRulesAreNumbered(t *testing.T) {
	folds, plans := fnv.New32a(), fnv.New32a()
	begin := time.Date(2026, 3, 2, 6, 0, 0, 0, time.UTC)
	for i, life := range lives {
		id := PersonID(i + 1)
		diary := []Entry{
			{Person: id, Noted: begin, By: id, Event: Named{"Amina"}},
			{Person: id, Noted: begin, By: id, Event: Placed{Area: "kenya", Zone: "Africa/Nairobi", Town: "Kitale"}},
			{Person: id, Noted: begin, By: id, Event: HourSet{390}},
			{Person: id, Noted: begin, By: id, Event: Joined{7}},
		}
		for n := range 120 {
			at := begin.AddDate(0, 0, n)
			for _, e := range life[n] {
				diary = append(diary, Entry{Person: id, Heap: 1, At: at, Day: DayOf(at, time.UTC), Noted: at, By: id, Told: n + 1, Event: e})
			}
			if len(life[n]) == 0 {
				continue
			}
			s := Fold(id, diary)
			state, err := json.Marshal(s)
			require.NoError(t, err)
			folds.Write(state)
			card, err := json.Marshal(CardOf(s))
			require.NoError(t, err)
			plans.Write(card)
			for _, d := range Plan(s) {
				fmt.Fprintln(plans, d.Heap, d.Task, d.Day, d.At.UTC())
			}
		}
	}
	known := map[uint32][2]uint32{ // edition: print of the folds, print of the plans
		0x960d7587: {0xb475c9c8, 0xd7bf6ad1},
	}
	print := [2]uint32{folds.Sum32(), plans.Sum32()}
	kept, ok := known[Edition()]
	require.True(t, ok, "a new edition; its line is %#x: {%#x, %#x}", Edition(), print[0], print[1])
	require.Equal(t, kept[0], print[0], "Fold makes another state in the same shape: raise foldRules")
	require.Equal(t, kept[1], print[1], "Plan or CardOf makes something else: raise planRules")
}
