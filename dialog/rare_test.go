package dialog

import (
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// What is rare and must be right all the same: other kinds of messages, edited
// ones, odd lines in a file, a clock that jumps.

// Everything a platform can carry is answered, to strangers and to farmers.
func TestEveryKindOfMessage(t *testing.T) {
	for _, c := range []struct {
		where string
		m     Message
		words string
	}{
		{"stranger", Message{Kind: Photo, File: "f"}, "Which language"},
		{"stranger", Message{Kind: Photo, File: "f", Text: "hello"}, "Which language"},
		{"stranger", Message{Kind: Text}, "Which language"},
		{"asked", Message{Kind: Voice, File: "f"}, "May I keep this"},
		{"heap", Message{Kind: Text, Text: "   "}, "empty"},
		{"heap", Message{Kind: Photo, File: "f"}, "picture"},
		{"heap", Message{Kind: Photo}, "picture"},
		{"heap", Message{Kind: Photo, File: "f", Text: "stick hot"}, "Hot on day 7"},
		{"heap", Message{Kind: Voice, File: "f"}, "cannot hear"},
		{"heap", Message{Kind: Location}, "map point"},
		{"heap", Message{Kind: Sticker}, "words and numbers"},
		{"heap", Message{Kind: Contact, Text: "Juma 0712"}, "do not keep"},
		{"heap", Message{Kind: Other}, "cannot read"},
		{"heap", Message{Kind: Other, Text: "stick hot"}, "Hot on day 7"},
		{"heap", Message{Kind: Text, Text: strings.Repeat("wood ", 2000)}, "not understand"},
		{"heap", Message{Kind: Text, Text: "\xff\xfehot"}, "Hot on day 7"},
		{"heap", Message{Kind: Text, Text: "the flies are gone"}, "Good to hear"},
	} {
		v := newVillage(t, "2026-03-02T09:00:00+03:00")
		v.check = house(v)
		v.saysAll(1, start[c.where]...)
		n := len(v.heard[1])
		v.step(1, c.m)
		require.Contains(t, v.since(1, n), c.words, "%s: %+v", c.where, c.m)
	}
}

// An edited message corrects what it said before; an edit of small talk or of
// nothing is read as a message of its own.
func TestAnEditedMessage(t *testing.T) {
	v := newVillage(t, "2026-03-02T09:00:00+03:00")
	v.saysAll(1, append(start["heap"], "stick hot")...)
	v.step(1, Message{Kind: Text, Text: "stick cold", Amends: true})
	h, _ := v.states[1].Heap(1)
	require.Len(t, h.Reads, 1)
	require.Equal(t, "cold", h.Reads[0].Warmth)
	v.step(1, Message{Kind: Text, Text: "thanks", Amends: true})
	h, _ = v.states[1].Heap(1)
	require.Len(t, h.Reads, 1)
	// A stick that was told before the turn is corrected, and the turn stays.
	v = newVillage(t, "2026-03-02T09:00:00+03:00")
	v.saysAll(1, append(start["heap"], "stick hot", "turned it", "a third")...)
	v.step(1, Message{Kind: Text, Text: "stick warm", Amends: true})
	h, _ = v.states[1].Heap(1)
	require.Equal(t, "warm", h.Reads[0].Warmth)
	require.Len(t, h.Turns, 1)
}

// Each kind of fact corrects the last fact of its kind, whatever came between.
func TestACorrectionFindsItsFact(t *testing.T) {
	for _, c := range []struct {
		where, told, between, right string
		kind                        string
	}{
		{"heap", "stick hot", "flies on it", "stick warm", "stick"},
		{"heap", "the stick is 61 degrees", "flies on it", "the stick is 50 degrees", "stick"},
		{"heap", "the heap is dry", "stick hot", "the heap is wet", "moisture"},
		{"heap", "it smells rotten", "stick hot", "it smells of ammonia", "smell"},
		{"heap", "flies on it", "stick hot", "ants on it", "seen"},
		{"bottle", "the bottle is hard", "3 baskets straw", "the bottle is leaking", "bottle"},
		{"bottle", "3 baskets straw", "the bottle is hard", "5 baskets straw", "have"},
		{"heap", "watered it", "stick hot", "covered it", "did"},
	} {
		v := newVillage(t, "2026-03-02T09:00:00+03:00")
		v.saysAll(1, append(start[c.where], c.told)...)
		count := func() (n int) {
			for e := range standing(v.diaries[1]) {
				if e.By != 0 && e.Heap != 0 && kindOf(e.Event) == c.kind {
					n++
				}
			}
			return n
		}
		first := count()
		v.says(1, c.between)
		v.step(1, Message{Kind: Text, Text: c.right, Amends: true})
		require.Equal(t, first, count(), "%s, then %s: one stands in the place of the other", c.told, c.right)
	}
	require.Empty(t, kindOf(Named{}))
}

// Behind a word, a reminder says nothing of heaps, and a button does nothing.
func TestAHiddenHeapIsRemindedOfInOneWord(t *testing.T) {
	v := newVillage(t, "2026-03-02T09:00:00+03:00")
	v.saysAll(1, append(start["young"], "hide mango")...)
	n := len(v.heard[1])
	v.wait(5 * 24 * time.Hour)
	require.Greater(t, len(v.heard[1]), n)
	for _, l := range v.heard[1][n:] {
		require.NotContains(t, l.Text, "heap")
		require.Empty(t, l.Buttons)
	}
	v.step(1, Press{"a1.0"})
	require.Contains(t, v.last(1).Text, "hidden")
	v.saysAll(1, "mango", "stick hot")
	h, _ := v.states[1].Heap(1)
	require.Len(t, h.Reads, 1)
}

// The third cold round offers the cold way; no orders one more rebuilding.
func TestTheThirdRound(t *testing.T) {
	third := func() *village {
		v := newVillage(t, "2026-03-02T09:00:00+03:00")
		v.saysAll(1, start["young"]...)
		for range 2 {
			v.wait(8 * 24 * time.Hour)
			v.saysAll(1, "stick cold", "dry", "nothing", "yes", "built it again")
		}
		v.wait(8 * 24 * time.Hour)
		v.saysAll(1, "stick cold", "dry", "nothing")
		require.Equal(t, "third", v.talks[1].Open.ID)
		return v
	}
	v := third()
	v.says(1, "what?")
	require.Equal(t, "third", v.talks[1].Open.ID)
	v.says(1, "yes")
	h, _ := v.states[1].Heap(1)
	require.Equal(t, ColdPath, h.Path)
	require.Equal(t, ColdDung, h.Stage)
	require.False(t, h.Redo)
	require.Equal(t, coldMonths, spanOf(h.Path))
	require.Equal(t, DayOf(v.now, v.states[1].Person.Zone()), h.Built, "its months begin now")
	v = third()
	v.says(1, "no")
	h, _ = v.states[1].Heap(1)
	require.True(t, h.Redo)
	v = third()
	v.says(1, "later")
	require.Empty(t, v.talks[1].Open.ID)
	v.wait(2 * 24 * time.Hour)
	require.Equal(t, "third", v.talks[1].Open.ID, "the question comes back")
}

// Where the clock jumps, a reminder has its moment all the same: the first
// minute after a gap, the first of two. Zone rules from the time-zone database.
func TestOnWhereTheClockJumps(t *testing.T) {
	for _, c := range []struct{ zone, date, clock, want string }{
		{"Europe/Paris", "2026-03-29", "02:30", "2026-03-29T03:00:00+02:00"},
		{"Europe/Paris", "2026-10-25", "02:30", "2026-10-25T02:30:00+02:00"},
		{"America/Santiago", "2026-09-06", "00:15", "2026-09-06T01:00:00-03:00"},
		{"Australia/Lord_Howe", "2026-04-05", "01:45", "2026-04-05T01:45:00+11:00"},
		{"Australia/Lord_Howe", "2026-10-04", "02:10", "2026-10-04T02:30:00+11:00"},
		{"Pacific/Apia", "2011-12-30", "06:30", "2011-12-31T00:00:00+14:00"},
		{"Nowhere/Atlantis", "2026-03-29", "06:30", "2026-03-29T06:30:00Z"},
	} {
		date, err := time.Parse(time.DateOnly, c.date)
		require.NoError(t, err)
		at, err := time.Parse("15:04", c.clock)
		require.NoError(t, err)
		got := DayOf(date, time.UTC).On(at.Hour()*60+at.Minute(), Zone(c.zone))
		require.Equal(t, c.want, got.Format(time.RFC3339), "%s %s %s", c.zone, c.date, c.clock)
	}
}

type stray struct{}

func (stray) event() {}

func TestTheClosedSetOfEvents(t *testing.T) {
	_, _, err := Encode(stray{})
	require.ErrorContains(t, err, "not an event")
	_, err = Decode("Stray", nil)
	require.ErrorContains(t, err, "not known")
	_, err = Decode("Fed", []byte("{"))
	require.ErrorContains(t, err, "Fed")
}

// Without a register there is one person in the world; Step holds all the same.
func TestStepWithoutARegister(t *testing.T) {
	now := time.Date(2026, 3, 2, 9, 0, 0, 0, time.UTC)
	var s State
	for _, line := range append(start["heap"], "share", "hand over", "officer", "undo", "digest", "a1aaaaaaaa", "groups") {
		a := Step(s, Message{Kind: Text, Text: line}, now)
		require.NotEmpty(t, a.Letters, line)
		for _, e := range a.Entries {
			if e.Person == s.Person.ID {
				s = s.After(e)
			}
		}
		s.Talk, s.Register = a.Talk, nil
	}
	require.Empty(t, nobody{}.Members(1))
	_, found := nobody{}.Group(1)
	require.False(t, found)
	waiting, refused := nobody{}.Sending("")
	require.Zero(t, waiting+refused)
	require.Len(t, nobody{}.Chance(30), 16)
	require.NotZero(t, nobody{}.NewID())
}

// A text is cut at line ends, sentence ends, spaces, and only then anywhere.
func TestSplit(t *testing.T) {
	for _, c := range []struct {
		text string
		want []string
	}{
		{"", []string{""}},
		{"short", []string{"short"}},
		{"one line\nanother one", []string{"one line", "another one"}},
		{"One end. Another end", []string{"One end.", "Another end"}},
		{"no ends only spaces", []string{"no ends", "only spaces"}},
		{"nothingtocutatallhere", []string{"nothingtocut", "atallhere"}},
		{"एक वाक्य। दूसरा", []string{"एक वाक्य।", "दूसरा"}},
	} {
		require.Equal(t, c.want, split(c.text, 12), c.text)
	}
}

// The officer's rarer lists: namesakes, a board of more than ten, words to a
// group, to a place, to nobody.
func TestAnOfficersLongLists(t *testing.T) {
	v := ridge(t)
	for id := PersonID(21); id < 35; id++ {
		v.enrol(id, "Wanja "+string(rune('A'+id-21)))
		v.join(1, id)
		v.built(id, "7")
		v.cold(id)
	}
	board := v.answer(1, "board")
	require.Contains(t, board, "14")
	more := v.answer(1, "more")
	require.NotContains(t, more, v.firstName(board))
	require.Contains(t, more, "1 Wanja")
	require.Contains(t, v.answer(1, "round"), "1 Wanja")
	require.Contains(t, v.answer(1, "more"), "Wanja")
	require.Contains(t, v.answer(1, "heap wanja"), "Which")
	require.Contains(t, v.answer(1, "2"), "What about Wanja B")
	require.Contains(t, v.answer(1, "heap zzz"), "I know no")
	v.says(1, "visited wanja")
	require.Equal(t, "target", v.last(1).Asks)
	v.says(1, "xyzzy")
	require.Equal(t, "target", v.last(1).Asks)

	// A second group, and a place of its own.
	v.saysAll(5, "groups", "more", "2")
	code := v.codeOf(5)
	v.says(1, code)
	v.says(15, "place")
	v.says(15, "Kampala")
	v.built(15, "7")
	v.says(1, "announce Meeting on Friday")
	v.says(1, "only some")
	q := v.talks[1].Open
	labels := map[string]string{}
	for _, c := range q.Choices {
		labels[c.Label] = c.Means
	}
	require.Contains(t, labels, "Otieno growers")
	require.Contains(t, labels, "Uganda")
	n := len(v.heard[15])
	v.says(1, "Uganda")
	v.says(1, "yes")
	require.Contains(t, v.since(15, n), "Meeting on Friday")
	require.NotContains(t, v.last(21).Text, "Meeting")
	v.says(1, "menu")
	v.says(1, "announce Second meeting")
	v.says(1, "only some")
	v.says(1, "Otieno growers")
	v.says(15, "stop")
	require.Contains(t, v.answer(1, "yes"), "Nobody")
	v.says(5, "announce Third meeting")
	require.Contains(t, v.last(5).Text, "Nobody")
}

// Codes tried out from a member's phone are told to the officers, once a day.
func TestGuessingIsToldToTheOfficers(t *testing.T) {
	v := ridge(t)
	n, other := len(v.heard[1]), len(v.heard[5])
	for i := range 8 {
		v.says(11, "a"+strconv.Itoa(i)+"aaaaaaaa")
	}
	told := v.since(1, n)
	require.Equal(t, 1, strings.Count(told, "Amina: 5 wrong codes"))
	require.Len(t, v.heard[5], other, "another group's officer hears nothing")
	v.wait(25 * time.Hour)
	v.says(11, "b1bbbbbbbb")
	require.Contains(t, v.last(11).Text+v.heard[11][len(v.heard[11])-2].Text, "do not know that code")
}

// firstName is the name on the first line of a board.
func (v *village) firstName(board string) string {
	_, rest, _ := strings.Cut(board, "\n1 ")
	name, _, _ := strings.Cut(rest, " (")
	require.NotEmpty(v.t, name)
	return name
}

// What a season comes to, from beginning to end, in the figures and on paper.
func TestASeasonOnPaper(t *testing.T) {
	v := ridge(t)
	group := v.states[1].Person.Made[0].ID
	for id := PersonID(21); id < 33; id++ {
		v.enrol(id, "Farmer "+strconv.Itoa(int(id)))
		v.join(1, id)
		leaves, warmth, day := 60.0, "hot", 4
		if id%2 == 0 {
			leaves, warmth = 4, "cold" // far too rich
		}
		v.tells(id, 100, Begun{HotHeap}, Gathered{20, "basket", "cow_dung"}, Gathered{leaves, "bag", "dry_leaves"}, GatherDone{}, StarterChosen{Slurry}, Built{})
		if id == 21 {
			v.tells(id, 97, StickRead{Warmth: "warm"})
		}
		v.tells(id, 100-day, StickRead{Warmth: warmth})
		if warmth == "cold" {
			if id < 28 {
				v.tells(id, 90, GivenUp{})
			}
			continue
		}
		v.tells(id, 90, TurnedOver{})
		v.tells(id, 64, StickRead{Warmth: "cold"}, Opened{}, Cooled{}, Sieved{}, Passed{200}, Fed{})
		v.tells(id, 5, Ripe{}, HarvestTaken{}, Yielded{80}, UseChosen{Use: "field"}, Rated{4}, Finished{})
	}
	v.wait(0)
	week := v.answer(1, "digest")
	require.Contains(t, week, "Hot on the first check: 5 of 12")
	require.Contains(t, week, "36 days")
	require.Contains(t, week, "harvested 480 kg")
	require.Contains(t, week, "too rich")
	require.Contains(t, week, "lost")

	f := FiguresOf(v.Members(group), v.now)
	require.Equal(t, 6, f.Harvested)
	weakest, ok := f.Weakest(f.HotByMix)
	require.True(t, ok)
	require.Equal(t, "slightly_green", weakest.Of)
	leak, ok := f.Leak()
	require.True(t, ok)
	require.Equal(t, string(Heating), leak.Of)
	usual, ok := f.UsualHeat()
	require.True(t, ok)
	require.Equal(t, Share{Of: "4", Hit: 6, All: 6}, usual)
	days, ok := f.Median()
	require.True(t, ok)
	require.Equal(t, 36, days)
	require.Zero(t, Share{}.Part())

	tables := Tables(v.Members(group), map[GroupID]string{group: "Tarik growers"}, func(PersonID) int64 { return 0 }, true, v.now)
	var heaps, figures Table
	for _, table := range tables {
		switch table.Name {
		case "heaps":
			heaps = table
		case "figures":
			figures = table
		}
	}
	row := func(farmer int) map[string]any {
		for _, r := range heaps.Rows {
			cells := map[string]any{}
			for i, c := range heaps.Columns {
				cells[c] = r[i]
			}
			if cells["farmer"] == farmer {
				return cells
			}
		}
		return nil
	}
	felt := row(21)
	require.EqualValues(t, 4, felt["hot_by_day"])
	require.EqualValues(t, 3, felt["not_hot_on_day"])
	require.EqualValues(t, 36, felt["days_to_open"])
	require.EqualValues(t, 80, felt["out_kg"])
	require.EqualValues(t, 4, felt["stars"])
	require.NotEmpty(t, figures.Rows)
}
