package store

import (
	"encoding/json"
	"fmt"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"warmstick/dialog"
)

// somebody is a conversation of random facts: what matters here is that the rows
// made from a diary always are those that the diary gives.
type somebody struct {
	t     *rapid.T
	told  int
	codes int // invites made; no code comes twice
}

var facts = []dialog.Event{
	dialog.Begun{Path: dialog.HotHeap}, dialog.Gathered{N: 2, Unit: "basket", Material: "dry_leaves"}, dialog.GatherDone{},
	dialog.StarterChosen{Starter: dialog.Bottle}, dialog.BottleMixed{}, dialog.BottleShaken{}, dialog.SiteFound{},
	dialog.Built{}, dialog.StickRead{Warmth: "cold"}, dialog.StickRead{Warmth: "hot"},
	dialog.RedoOrdered{Cause: "dry"}, dialog.TurnedOver{}, dialog.Opened{}, dialog.Cooled{}, dialog.Fed{}, dialog.Ripe{},
	dialog.Snoozed{Task: dialog.TaskStick, Day: 20600}, dialog.Skipped{Task: dialog.TaskTurn}, dialog.Peril{What: "smoke"},
}

var personal = []dialog.Event{
	dialog.Consented{Version: "1"}, dialog.Placed{Area: "ridge", Zone: "Africa/Nairobi"}, dialog.Placed{Zone: "America/Bogota"},
	dialog.HourSet{Minute: 7 * 60}, dialog.StopAsked{}, dialog.CameBack{}, dialog.BarSet{On: true}, dialog.BarSet{},
	dialog.Joined{Group: 900}, dialog.GroupLeft{Group: 900}, dialog.GroupMade{Group: 901, Name: "Ngara Ridge"}, dialog.RoleEnded{Group: 901},
	dialog.InviteMade{Code: "abc", Group: 901, Role: dialog.Farmer}, dialog.InviteEnded{Code: "abc"}, dialog.Named{Name: "Amina"},
}

func (w *somebody) step(s dialog.State, in dialog.Input, now time.Time) dialog.Answer {
	a := dialog.Answer{Talk: s.Talk}
	a.Talk.Seq++
	if r, ok := in.(dialog.Reminder); ok {
		for _, d := range r.Due {
			a.Entries = append(a.Entries, dialog.Entry{Heap: d.Heap, At: now, Day: d.Day, Noted: now, Event: dialog.Reminded{Task: d.Task, Day: d.Day}})
		}
		return a
	}
	w.told++
	for range rapid.IntRange(1, 3).Draw(w.t, "facts") {
		e := dialog.Entry{At: now, Noted: now, Told: w.told, By: s.Person.ID, Day: dialog.DayOf(now, s.Person.Zone())}
		e.Person = rapid.SampledFrom([]dialog.PersonID{0, 0, 0, 1, 2}).Draw(w.t, "whose")
		switch rapid.IntRange(0, 5).Draw(w.t, "sort") {
		case 0:
			e.Event = dialog.Struck{Told: rapid.IntRange(1, w.told).Draw(w.t, "struck")}
		case 1, 2:
			whose := e.Person
			if whose == 0 {
				whose = s.Person.ID
			}
			e.Event = w.ownedBy(whose, rapid.SampledFrom(personal).Draw(w.t, "personal"))
		default:
			e.Heap = dialog.HeapID(rapid.IntRange(1, 3).Draw(w.t, "heap"))
			e.Event = rapid.SampledFrom(facts).Draw(w.t, "fact")
		}
		a.Entries = append(a.Entries, e)
	}
	a.Letters = []dialog.Letter{{To: s.Person.ID, Kind: dialog.Reply, Text: "noted"}}
	return a
}

// ownedBy gives a person groups and invites that nobody else has.
func (w *somebody) ownedBy(p dialog.PersonID, e dialog.Event) dialog.Event {
	switch e := e.(type) {
	case dialog.GroupMade:
		e.Group += dialog.GroupID(p)
		return e
	case dialog.RoleEnded:
		e.Group += dialog.GroupID(p)
		return e
	case dialog.InviteMade:
		w.codes++
		e.Code += fmt.Sprint(w.codes)
		return e
	case dialog.InviteEnded:
		e.Code += fmt.Sprint(w.codes)
		return e
	}
	return e
}

// Whatever is told, struck, reminded and looked up from a small shelf or the
// file: the kept rows equal those that Compare makes from the diaries, before
// and after Rebuild, and a state at hand equals one folded anew.
func TestDerivedRowsFollowTheDiaries(t *testing.T) {
	dir, n := t.TempDir(), 0
	rapid.Check(t, func(rt *rapid.T) {
		n++
		w := &somebody{t: rt}
		db, err := Open(t.Context(), filepath.Join(dir, fmt.Sprintf("%d.db", n)), Options{Step: w.step, Pages: rapid.IntRange(1, 4).Draw(rt, "pages")})
		require.NoError(rt, err)
		defer db.Close()
		now := noon
		for range rapid.IntRange(1, 25).Draw(rt, "acts") {
			now = now.Add(time.Duration(rapid.IntRange(1, 50).Draw(rt, "hours")) * time.Hour)
			people, err := db.NextDue(t.Context(), now, 100)
			require.NoError(rt, err)
			for _, p := range people {
				_, err := db.Converse(t.Context(), now, Call{Person: p, In: dialog.Reminder{}})
				require.NoError(rt, err)
			}
			_, err = db.Converse(t.Context(), now, Call{Chat: int64(rapid.IntRange(1, 3).Draw(rt, "chat")), In: dialog.Message{Text: "x"}})
			require.NoError(rt, err)
		}
		same := func() {
			drifts, err := Compare(t.Context(), db.Path())
			require.NoError(rt, err)
			require.Empty(rt, drifts)
		}
		same()
		for id := dialog.PersonID(1); id <= dialog.PersonID(db.count.person); id++ {
			kept, err := db.StateOf(t.Context(), id)
			require.NoError(rt, err)
			diary, err := db.DiaryOf(t.Context(), id)
			require.NoError(rt, err)
			fresh := dialog.Fold(id, diary)
			fresh.Talk = kept.Talk
			require.Equal(rt, text(rt, fresh), text(rt, kept), "person %d", id)
		}
		before, err := db.StateOf(t.Context(), 1)
		require.NoError(rt, err)
		require.NoError(rt, db.Rebuild(t.Context()))
		same()
		after, err := db.StateOf(t.Context(), 1)
		require.NoError(rt, err)
		require.Equal(rt, text(rt, before), text(rt, after), "the talk is no derived thing and stays")
	})
}

func text(t *rapid.T, s dialog.State) string {
	b, err := json.Marshal(s)
	require.NoError(t, err)
	return string(b)
}

// A snapshot changes nothing but speed: a diary of many lines gives the same
// state with every snapshot deleted.
func TestSnapshotsAreOnlySpeed(t *testing.T) {
	db := open(t, Options{Pages: 1})
	for i := range 12 {
		word := []string{"heap", "build", "hello", "undo"}[i%4]
		if i == 0 {
			word = "agree"
		}
		tell(t, db, noon.Add(time.Duration(i)*time.Hour), 1, word)
		tell(t, db, noon, 2, "hello") // pushes the first off the shelf
	}
	var n int
	require.NoError(t, look(t, db).QueryRow("SELECT count(fold) FROM person").Scan(&n))
	require.NotZero(t, n)
	with, err := db.StateOf(t.Context(), 1)
	require.NoError(t, err)
	_, err = db.stmts.once("UPDATE person SET fold = NULL")
	require.NoError(t, err)
	db.shelf.empty()
	without, err := db.StateOf(t.Context(), 1)
	require.NoError(t, err)
	a, _ := json.Marshal(with)
	b, _ := json.Marshal(without)
	require.Equal(t, string(b), string(a))
}
