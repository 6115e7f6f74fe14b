package dialog

import (
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func cellsOf(tables []Table) string { return fmt.Sprint(tables) }

func TestNamesAreInTheReportOnlyOnRequest(t *testing.T) {
	v := ridge(t)
	v.built(11, "6")
	v.cold(11)
	v.says(11, "officer")
	v.says(11, "my secret words")
	cards := v.Members(v.states[1].Person.Made[0].ID)
	groups := map[GroupID]string{v.states[1].Person.Made[0].ID: "Ridge"}
	chat := func(PersonID) int64 { return 777000111 }
	for _, names := range []bool{false, true} {
		diary := DiaryTable(names)
		for _, id := range v.people() {
			DiaryRows(&diary, v.diaries[id], names)
		}
		tables := append(Tables(cards, groups, chat, names, v.now), diary, Dictionary(names))
		for _, t2 := range tables {
			for _, row := range t2.Rows {
				require.Len(t, row, len(t2.Columns), t2.Name)
			}
		}
		all := cellsOf(tables)
		for _, private := range []string{"Amina", "777000111", "my secret words"} {
			require.Equal(t, names, strings.Contains(all, private), "%s with names=%t", private, names)
		}
		require.NotContains(t, all, v.states[1].Person.Invites[0].Code, "codes stay at home")
	}
}

func TestEveryColumnIsInTheDictionary(t *testing.T) {
	v := ridge(t)
	v.built(11, "6")
	tables := append(Tables(v.Members(v.states[1].Person.Made[0].ID), nil, nil, true, v.now), DiaryTable(true))
	known := map[string]bool{}
	for _, row := range Dictionary(true).Rows {
		known[row[0].(string)+"."+row[1].(string)] = true
		require.NotEmpty(t, row[3], "%v has no meaning", row)
	}
	n := 0
	for _, table := range tables {
		for _, c := range table.Columns {
			require.True(t, known[table.Name+"."+c])
			n++
		}
	}
	require.Len(t, known, n)
}

// The interval of Wilson (1927) for 8 of 10 and for nought of ten, worked out by
// hand from the printed formula with z = 1.96.
func TestWilson(t *testing.T) {
	for _, c := range []struct {
		s         Share
		low, high float64
	}{
		{Share{Hit: 8, All: 10}, 0.4902, 0.9433},
		{Share{Hit: 0, All: 10}, 0, 0.2775},
		{Share{Hit: 10, All: 10}, 0.7225, 1},
		{Share{}, 0, 1},
	} {
		low, high := c.s.Wilson()
		require.InDelta(t, c.low, low, 0.0005, "%v", c.s)
		require.InDelta(t, c.high, high, 0.0005, "%v", c.s)
	}
	rapid.Check(t, func(t *rapid.T) {
		all := rapid.IntRange(1, 500).Draw(t, "all")
		s := Share{Hit: rapid.IntRange(0, all).Draw(t, "hit"), All: all}
		low, high := s.Wilson()
		if low < 0 || high > 1 || low > s.Part()+1e-12 || high < s.Part()-1e-12 || math.IsNaN(low+high) {
			t.Fatalf("%v: %v to %v", s, low, high)
		}
	})
}

func TestNoShareUnderFive(t *testing.T) {
	cards := []Card{}
	for i := range 4 {
		cards = append(cards, Card{Person: PersonID(i + 1), Tales: []Tale{{Heap: 1, Path: HotHeap, Stage: Heating, Built: 100, Check: "cold", Mix: "too_much_brown"}}})
	}
	for _, row := range figureTable(FiguresOf(cards, time.Time{})).Rows {
		require.Nil(t, row[4], "%v", row)
	}
	f := FiguresOf(cards, time.Time{})
	require.False(t, f.Hot.Enough())
	_, ok := f.Weakest(f.HotByMix)
	require.False(t, ok)
}

// What to teach is what is surely worse, not what happens to be lowest.
func TestTheDigestTeachesOnlyWhatTheNumbersShow(t *testing.T) {
	add := func(cards []Card, n int, mix, check string) []Card {
		for range n {
			cards = append(cards, Card{Person: PersonID(len(cards) + 1), Tales: []Tale{{Heap: 1, Path: HotHeap, Stage: Resting, Built: 100, Check: check, Mix: mix}}})
		}
		return cards
	}
	cards := add(nil, 20, "mix_ok", "hot")
	cards = add(cards, 8, "too_much_brown", "cold")
	cards = add(cards, 1, "too_much_brown", "hot")
	f := FiguresOf(cards, time.Time{})
	s, ok := f.Weakest(f.HotByMix)
	require.True(t, ok)
	require.Equal(t, "too_much_brown", s.Of)
	cards = add(add(nil, 20, "mix_ok", "hot"), 4, "too_much_brown", "hot")
	cards = add(cards, 1, "too_much_brown", "cold")
	f = FiguresOf(cards, time.Time{})
	_, ok = f.Weakest(f.HotByMix)
	require.False(t, ok, "4 of 5 is no lesson")
}

// Every kind of concern has its words.
func TestConcernsHaveWords(t *testing.T) {
	cards := district(600)
	kinds := map[string]bool{}
	for day := range 60 {
		for _, l := range Board(cards, time.Date(2026, 3, 2+day, 7, 0, 0, 0, time.UTC)) {
			for _, c := range l.Concerns {
				kinds[c.Kind] = true
				require.NotEmpty(t, reasonOf(c)("en"))
				takeOf(c)("en")
				require.GreaterOrEqual(t, c.Loss(), leastLoss)
			}
		}
	}
	t.Log(kinds)
	require.GreaterOrEqual(t, len(kinds), 5)
	for _, k := range []string{"cold1", "cold2", "cold3", "third_try", "bottle_hard", "bottle_flat", "ferment", "bed", "bed_dead", "silent", "late_turn", "late", "no_phone", "asks", "barred", "stopped", "peril_fire", "peril_burst", "peril_sick"} {
		require.NotEmpty(t, reasonOf(Concern{Kind: k, Task: TaskTurn})("en"))
	}
}

// A danger stands above everything that is only work.
func TestDangersComeFirst(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		cards := district(40)
		n := rapid.IntRange(0, 39).Draw(t, "who")
		now := time.Date(2026, 4, 1, 7, 0, 0, 0, time.UTC)
		cards[n].Peril, cards[n].PerilAt = rapid.SampledFrom([]string{"fire", "smoke", "burn", "burst", "cut"}).Draw(t, "what"), now
		board := Board(cards, now)
		if board[0].Card.Person != cards[n].Person {
			t.Fatal("a danger is not the first line")
		}
		for i := 2; i < len(board); i++ {
			if board[i-1].Loss() < board[i].Loss() {
				t.Fatal("not the most urgent first")
			}
		}
	})
}
