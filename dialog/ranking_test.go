package dialog

import (
	"cmp"
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// A season of sixty farmers and one officer who makes three visits a day. What
// waiting costs is drawn anew for each seed, and not as the board guesses it:
// hazards are up to twice or half of ours, most of the silent are only busy.
// The same luck meets both ways of choosing whom to visit.
type simulated struct {
	seed    uint64
	now     time.Time
	farmers []*grower
	harsh   [5]float64 // true hazards a day: cold, cold twice, silence, bottle, bed
	lost    float64
	visits  int
}

type grower struct {
	s     State
	works bool // the heap gets hot
	bed   bool // worms are about to leave
	mute  int  // days of silence still to come
	gone  bool // silent because given up in mind
	dead  bool
}

const seasonDays, seasonFarmers, visitsADay = 80, 60, 3

func (w *simulated) luck(who, what int) float64 {
	day := int(DayOf(w.now, time.UTC))
	r := rand.New(rand.NewPCG(w.seed, uint64(who)<<32|uint64(day)<<8|uint64(what)))
	return r.Float64()
}

func newSimulated(seed uint64) *simulated {
	w := &simulated{seed: seed, now: time.Date(2026, 3, 2, 8, 0, 0, 0, time.UTC)}
	r := rand.New(rand.NewPCG(seed, 1))
	for i, ours := range []float64{0.02, 0.07, 0.025, 0.05, 0.03} {
		w.harsh[i] = ours * (0.5 + 1.5*r.Float64())
	}
	for i := range seasonFarmers {
		g := &grower{s: Fold(PersonID(i+1), nil)}
		w.farmers = append(w.farmers, g)
		for _, e := range []Event{Consented{"1"}, Named{fmt.Sprint("F", i)}, Placed{Zone: "UTC"}, HourSet{7 * 60}} {
			w.tell(g, 0, e)
		}
		w.tell(g, 1, Begun{HotHeap})
		if i%4 == 0 { // waiting for the bottle
			for _, e := range []Event{Gathered{30, "bag", "dry_leaves"}, GatherDone{}, DateWished{DayOf(w.now, time.UTC) + 26}, StarterChosen{Bottle}, SiteFound{}, Prepared{}, BottleMixed{}} {
				w.tell(g, 1, e)
			}
			continue
		}
		w.build(g, i)
	}
	return w
}

func (w *simulated) tell(g *grower, h HeapID, e Event) {
	g.s = g.s.After(Entry{Person: g.s.Person.ID, Heap: h, At: w.now, Day: DayOf(w.now, time.UTC), Noted: w.now, By: g.s.Person.ID, Event: e})
}

// build starts a round; whether it gets hot is luck, and better luck with a visit.
func (w *simulated) build(g *grower, who int) {
	w.tell(g, 1, Built{})
	g.works = w.luck(who, 1) < 0.6
}

// lose is what waiting cost: the days the heap had taken, or a fixed price.
func (w *simulated) lose(g *grower, days float64) {
	w.lost += days
	g.dead = true
	w.tell(g, 1, GivenUp{})
}

func (g *grower) heap() Heap { h, _ := g.s.Heap(1); return h }

func (g *grower) age(today Day) float64 {
	if h := g.heap(); h.First != 0 {
		return min(float64(today-h.First), 40) + 10
	}
	return 10
}

// live passes one day of all farmers.
func (w *simulated) live() {
	today := DayOf(w.now, time.UTC)
	for i, g := range w.farmers {
		if g.dead {
			continue
		}
		h := g.heap()
		if g.mute > 0 {
			g.mute--
		} else if !g.gone && w.luck(i, 2) < 0.02 {
			g.mute = 3 + int(12*w.luck(i, 3))
			g.gone = w.luck(i, 4) < 0.3
		}
		cold := (h.Redo || h.Stage == Heating && !g.works && today-h.Built > 6) && h.Fed == 0
		switch {
		case cold && h.Round >= 2 && w.luck(i, 5) < w.harsh[1]:
			w.lose(g, g.age(today))
		case cold && w.luck(i, 5) < w.harsh[0]:
			w.lose(g, g.age(today))
		case g.gone && w.luck(i, 6) < w.harsh[2]:
			w.lose(g, g.age(today))
		case h.Bottle.Working() && h.Built == 0 && today-h.Bottle.Mixed > 25 && w.luck(i, 7) < w.harsh[3]:
			w.lost += bottleDays
			w.tell(g, 1, BottleSpoiled{})
			w.build(g, i)
		case g.bed && w.luck(i, 8) < w.harsh[4]:
			w.lost += wormDays
			g.bed = false
			w.tell(g, 1, WormsSeen{"worms_well"})
		case h.Stage == Heating && g.works && h.Latest() != 0 && today > h.Latest():
			w.lost += 0.4 // the outside cools
		}
		if !g.dead {
			w.morning(g, i)
		}
	}
}

// Latest is the last good day of the heap's next act.
func (h Heap) Latest() Day {
	if w := h.Windows(); len(w) > 0 {
		return w[0].Latest
	}
	return 0
}

// morning lets the farmer answer what is due, or not.
func (w *simulated) morning(g *grower, who int) {
	today := DayOf(w.now, time.UTC)
	for n, d := range Plan(g.s) {
		if d.At.After(w.now) {
			continue
		}
		if g.mute > 0 || g.gone || w.luck(who, 20+n) < 0.1 {
			w.clock(g, Reminded{Task: d.Task, Day: today})
			continue
		}
		w.act(g, who, d.Task)
	}
}

func (w *simulated) clock(g *grower, e Event) {
	g.s = g.s.After(Entry{Person: g.s.Person.ID, Heap: 1, At: w.now, Day: DayOf(w.now, time.UTC), Noted: w.now, Event: e})
}

func (w *simulated) act(g *grower, who int, t Task) {
	h := g.heap()
	warmth := map[bool]string{true: "hot", false: "cold"}[g.works]
	for _, e := range map[Task][]Event{
		TaskTurn: {TurnedOver{}}, TaskRest: {Squeezed{"right"}}, TaskOpen: {StickRead{Warmth: "cold"}}, TaskSpread: {Opened{}},
		TaskCool: {Cooled{}}, TaskSieve: {Sieved{}}, TaskTrialSet: {TrialSet{}}, TaskTrial: {TrialDone{true}}, TaskFeed: {WormsHad{2}, Fed{}},
		TaskShake: {BottleShaken{}}, TaskGas: {BottleFelt{"bloated"}}, TaskSite: {SiteFound{}}, TaskPrepare: {Prepared{}},
	}[t] {
		w.tell(g, 1, e)
	}
	switch t {
	case TaskStick:
		w.tell(g, 1, StickRead{Warmth: warmth})
	case TaskRebuild:
		switch {
		case !h.Redo:
			w.tell(g, 1, RedoOrdered{Cause: "dry"})
		case w.luck(who, 40) < 0.25: // building anew is a day's hard work
			w.build(g, who)
		default:
			w.clock(g, Reminded{Task: t, Day: DayOf(w.now, time.UTC)})
		}
	case TaskBuild:
		w.build(g, who)
	case TaskBottleSmell:
		if w.luck(who, 41) < 0.3 {
			w.tell(g, 1, BottleReady{})
		}
	case TaskCare:
		g.bed = w.luck(who, 42) < 0.2
		w.tell(g, 1, WormsSeen{map[bool]string{true: "worms_escaping", false: "worms_well"}[g.bed]})
	}
}

// visit mends what can be mended in an hour.
func (w *simulated) visit(id PersonID) {
	g := w.farmers[id-1]
	w.visits++
	g.s = g.s.After(Entry{Person: id, At: w.now, Day: DayOf(w.now, time.UTC), Noted: w.now, By: 999, Event: Visited{}})
	g.mute, g.gone = 0, false
	h := g.heap()
	switch {
	case g.dead:
	case h.Redo || h.Stage == Heating && !g.works && DayOf(w.now, time.UTC)-h.Built > 5:
		if !h.Redo {
			w.tell(g, 1, RedoOrdered{Cause: "dry"})
		}
		w.tell(g, 1, Built{})
		g.works = w.luck(int(id), 50) < 0.9
	case g.bed:
		g.bed = false
		w.tell(g, 1, WormsSeen{"worms_well"})
	case h.Bottle.Working() && h.Built == 0 && DayOf(w.now, time.UTC)-h.Bottle.Mixed >= bottleReady:
		w.tell(g, 1, BottleReady{})
		w.build(g, int(id))
	case h.Stage == Heating && g.works && h.Latest() < DayOf(w.now, time.UTC):
		w.tell(g, 1, TurnedOver{})
	}
}

func (w *simulated) cards() []Card {
	var cards []Card
	for _, g := range w.farmers {
		if !g.dead {
			cards = append(cards, CardOf(g.s))
		}
	}
	return cards
}

// play passes a season under one way of choosing.
func play(seed uint64, choose func(*simulated) []PersonID) float64 {
	w := newSimulated(seed)
	for range seasonDays {
		w.live()
		for _, id := range choose(w) {
			w.visit(id)
		}
		w.now = w.now.Add(24 * time.Hour)
	}
	return w.lost
}

func byBoard(w *simulated) []PersonID {
	var ids []PersonID
	for _, l := range Board(w.cards(), w.now) {
		if len(ids) < visitsADay {
			ids = append(ids, l.Card.Person)
		}
	}
	return ids
}

func bySilence(w *simulated) []PersonID {
	cards := w.cards()
	slices.SortStableFunc(cards, func(a, b Card) int {
		last := func(c Card) Day { return max(lastDay(&c), dayOrNone(c.Seen, time.UTC)) }
		return cmp.Compare(last(a), last(b))
	})
	var ids []PersonID
	for _, c := range cards[:min(len(cards), visitsADay)] {
		ids = append(ids, c.Person)
	}
	return ids
}

func byChance(w *simulated) []PersonID {
	cards := w.cards()
	var ids []PersonID
	for i := range min(len(cards), visitsADay) {
		ids = append(ids, cards[int(w.luck(i, 90)*float64(len(cards)))].Person)
	}
	return ids
}

func TestTheBoardSavesHalfOfWhatSilenceWouldLose(t *testing.T) {
	t.Parallel()
	const seeds = 50
	var board, silence, chance, none float64
	worse := 0
	t.Log("days lost   seed   board   longest silent   by chance   no visits")
	for seed := range uint64(seeds) {
		b, s, c, n := play(seed, byBoard), play(seed, bySilence), play(seed, byChance), play(seed, func(*simulated) []PersonID { return nil })
		board, silence, chance, none = board+b, silence+s, chance+c, none+n
		if b > s {
			worse++
		}
		t.Logf("            %4d %7.0f %16.0f %11.0f %11.0f", seed, b, s, c, n)
	}
	t.Logf("mean             %7.0f %16.0f %11.0f %11.0f", board/seeds, silence/seeds, chance/seeds, none/seeds)
	t.Logf("seeds in which the board lost more: %d of %d", worse, seeds)
	require.LessOrEqual(t, board, silence/2)
}

// district makes a district of n heaps, each somewhere in its season.
func district(n int) []Card {
	w := newSimulated(7)
	var cards []Card
	for len(cards) < n {
		for _, g := range w.farmers {
			if g.dead {
				continue
			}
			c := CardOf(g.s)
			c.Person, c.Area = PersonID(len(cards)+1), places()[len(cards)%7].id
			c.Name = fmt.Sprint("Farmer ", len(cards)+1)
			c.Roles = []Membership{{Group: 1, Role: Farmer}}
			if cards = append(cards, c); len(cards) == n {
				break
			}
		}
		w.live()
		w.now = w.now.Add(24 * time.Hour)
	}
	return cards
}

// shelfOfCards is a register that decodes its cards for each look, as a store
// does.
type shelfOfCards struct {
	nobody
	rows [][]byte
}

func (s shelfOfCards) Members(GroupID) []Card {
	cards := make([]Card, len(s.rows))
	for i, r := range s.rows {
		if err := json.Unmarshal(r, &cards[i]); err != nil {
			panic(err)
		}
	}
	return cards
}

func (s shelfOfCards) Group(id GroupID) (Group, bool) { return Group{ID: id, Name: "Ridge"}, true }

func boardOf(b *testing.B, n int) (State, time.Time) {
	var r shelfOfCards
	for _, c := range district(n) {
		row, err := json.Marshal(c)
		require.NoError(b, err)
		r.rows = append(r.rows, row)
	}
	now := time.Date(2026, 4, 20, 7, 0, 0, 0, time.UTC)
	s := Fold(9999, []Entry{{Person: 9999, Noted: now, By: 9999, Event: Appointed{}}, {Person: 9999, Noted: now, By: 9999, Event: GroupMade{Group: 1, Name: "Ridge"}}})
	s.Register = r
	return s, now
}

func BenchmarkBoard(b *testing.B) {
	for _, n := range []int{200, 2000} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			s, now := boardOf(b, n)
			for b.Loop() {
				if a := Step(s, Message{Kind: Text, Text: "board"}, now); len(a.Letters) == 0 {
					b.Fatal("no board")
				}
			}
		})
	}
}

func BenchmarkDigest(b *testing.B) {
	s, now := boardOf(b, 2000)
	for b.Loop() {
		Step(s, Message{Kind: Text, Text: "digest"}, now)
	}
}

func BenchmarkCard(b *testing.B) {
	w := newSimulated(3)
	for range 40 {
		w.live()
		w.now = w.now.Add(24 * time.Hour)
	}
	for b.Loop() {
		CardOf(w.farmers[1].s)
	}
}

// A card made from a folded diary is the card that was kept along the way.
func TestTheSameBoardFromRebuiltCards(t *testing.T) {
	v := ridge(t)
	for i := range 12 {
		id := PersonID(40 + i)
		v.enrol(id, fmt.Sprint("Farmer", string(rune('A'+i))))
		v.says(1, "invite")
		v.join(1, id)
		v.built(id, fmt.Sprint(3+i))
		if i%2 == 0 {
			v.cold(id)
		}
	}
	v.wait(5 * 24 * time.Hour)
	var kept, again []Card
	for _, id := range v.people() {
		kept = append(kept, CardOf(v.states[id]))
		again = append(again, CardOf(Fold(id, v.diaries[id])))
	}
	require.Equal(t, Board(kept, v.now), Board(again, v.now))
	a, err := json.Marshal(kept)
	require.NoError(t, err)
	b, err := json.Marshal(again)
	require.NoError(t, err)
	require.JSONEq(t, string(a), string(b))
	require.NotEmpty(t, Board(again, v.now))
}
