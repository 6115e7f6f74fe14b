package dialog

import (
	"slices"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"github.com/stretchr/testify/require"

	"warmstick/dialog/phrases"
)

// Every kind of line a diary can hold is shown to an officer in words, in every
// language, within the limits.
func TestEveryDiaryLineIsShown(t *testing.T) {
	var kinds []string
	for k := range events {
		kinds = append(kinds, k)
	}
	slices.Sort(kinds)
	for _, lang := range phrases.Languages() {
		v := ridge(t)
		v.built(11, "9")
		v.keep(v.entry(1, LanguageSet{lang}))
		for _, kind := range kinds {
			body := `{"Warmth":"hot","Moisture":"dry","Smell":"rotten","Sight":"flies","State":"bloated","N":3,"Unit":"basket","Material":"straw","Text":"hello","Name":"Amina","Kg":5,"Task":"stick","What":"smoke","Cause":"dry","Lang":"en","Zone":"Africa/Nairobi","Area":"kenya","How":"third"}`
			switch kind {
			case "Advised":
				body = `{"What":"water"}`
			case "WormsSeen":
				body = `{"Sight":"worms_dead"}`
			}
			e, err := Decode(kind, []byte(body))
			require.NoError(t, err)
			switch e.(type) {
			case Struck, Named, GroupLeft, RoleEnded, Finished, GivenUp, Helps, Hidden, LeftBehind, BarSet, StopAsked:
				continue // these would take the heap or the name from the officer's sight
			}
			v.now = v.now.Add(time.Minute)
			line := v.entry(11, e)
			line.Heap, line.By = 1, 11
			v.keep(line)
			n := len(v.heard[1])
			v.says(1, "heap Amina")
			require.Greater(t, len(v.heard[1]), n, kind)
			for _, l := range v.heard[1][n:] {
				require.LessOrEqual(t, utf8.RuneCountInString(l.Text), letterLimit, "%s in %s: %s", kind, lang, l.Text)
				require.NotContains(t, l.Text, "{{")
			}
		}
	}
}

// A week with enough heaps to count: shares with their doubt, what to teach, and
// the same figures on paper.
func TestAWeekWithEnoughHeaps(t *testing.T) {
	v := newVillage(t, "2026-03-02T07:00:00+03:00")
	v.officer(1, "Tarik")
	for id := PersonID(21); id < 41; id++ {
		v.enrol(id, "Farmer"+strings.Repeat("a", int(id-20)))
		v.join(1, id)
		starter := []Starter{Slurry, Curd, Bottle}[id%3]
		warmth := []string{"hot", "hot", "cold"}[id%3]
		v.tells(id, 12, Begun{HotHeap}, Gathered{20, "basket", "cow_dung"}, Gathered{float64(10 * (id%4 + 1)), "bag", "dry_leaves"}, GatherDone{}, StarterChosen{starter}, Built{})
		v.tells(id, 8, StickRead{Warmth: warmth})
		if warmth == "hot" {
			v.tells(id, 5, TurnedOver{})
		}
	}
	week := v.answer(1, "digest")
	require.Contains(t, week, "20 farmers")
	require.Regexp(t, `\d+ (of|to|in) `, week)
	for _, choice := range []string{"1", "digest", "2", "digest", "3", "4", "groups", "4"} {
		require.NotEmpty(t, v.answer(1, choice), choice)
	}
	board := v.answer(1, "board")
	require.Contains(t, board, "1 ")
	for _, line := range []string{"more", "why", "1", "board", "done 1", "board", "not today 2", "round"} {
		require.NotEmpty(t, v.answer(1, line), line)
	}
}

// An announcement may go to some, be stopped, and be asked about once it went.
func TestAnnouncementsToSome(t *testing.T) {
	v := ridge(t)
	v.built(11, "9")
	for _, lines := range [][]string{
		{"announce Meeting on Sunday", "2", "1", "1"}, {"announce Meeting on Monday", "2", "2", "1", "1"},
		{"announce Meeting on Friday", "2", "3", "1", "1"}, {"announce", "Bring sticks", "1", "1"},
		{"announce Come early", "3"}, {"announce " + strings.Repeat("long words ", 400), "no"},
	} {
		for _, line := range lines {
			require.NotEmpty(t, v.answer(1, line), line)
		}
		v.says(1, "menu")
	}
}
