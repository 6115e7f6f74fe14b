package store

import (
	"context"
	"errors"
	"os"
	"path/filepath"
	"testing"
	"time"
	_ "time/tzdata"

	"github.com/stretchr/testify/require"

	"warmstick/dialog"
)

var noon = time.Date(2026, 3, 2, 9, 0, 0, 0, time.UTC)

func open(t testing.TB, o Options) *DB {
	t.Helper()
	if o.Step == nil {
		o.Step = echo
	}
	db, err := Open(context.Background(), filepath.Join(t.TempDir(), "w.db"), o)
	require.NoError(t, err)
	t.Cleanup(func() { db.Close() })
	return db
}

// echo is a conversation that keeps and says back what it hears. A few words
// have an effect of their own.
func echo(s dialog.State, in dialog.Input, now time.Time) dialog.Answer {
	a := dialog.Answer{Talk: s.Talk}
	a.Talk.Seq++
	note := func(heap dialog.HeapID, events ...dialog.Event) {
		for _, e := range events {
			a.Entries = append(a.Entries, dialog.Entry{Heap: heap, At: now, Day: dialog.DayOf(now, s.Person.Zone()), Noted: now,
				By: s.Person.ID, Told: s.Person.Told + 1, Event: e})
		}
	}
	say := func(to dialog.PersonID, kind dialog.LetterKind, text string) {
		a.Letters = append(a.Letters, dialog.Letter{To: to, Kind: kind, Text: text, Heap: 1})
	}
	switch in := in.(type) {
	case dialog.Message:
		switch in.Text {
		case "agree":
			note(0, dialog.Consented{Version: "1"}, dialog.Placed{Zone: "Africa/Nairobi"})
		case "heap":
			note(1, dialog.Begun{Path: dialog.HotHeap}, dialog.Gathered{N: 1, Unit: "basket", Material: "cow_dung"})
		case "build":
			note(1, dialog.Built{})
		case "undo":
			note(0, dialog.Struck{Told: s.Person.Told})
		case "break":
			panic("as asked")
		case "stop":
			note(0, dialog.StopAsked{})
		case "delete me":
			a.Forget = []dialog.PersonID{s.Person.ID}
		case "invite":
			g := dialog.GroupID(s.Register.NewID())
			note(0, dialog.GroupMade{Group: g, Name: "Ngara Ridge"}, dialog.InviteMade{Code: s.Register.Chance(6), Group: g, Role: dialog.Farmer, Expires: now.Add(time.Hour)})
		case "everybody":
			for _, c := range s.Register.Members(s.Person.Roles[0].Group) {
				say(c.Person, dialog.Broadcast, "to all")
			}
		default:
			if i, ok := s.Register.Invite(in.Text); ok && !i.Ended {
				note(0, dialog.Joined{Group: i.Group})
				g, _ := s.Register.Group(i.Group)
				for _, m := range g.Staff {
					say(m.Person, dialog.Alert, "one more")
				}
			} else {
				note(0, dialog.Heard{})
			}
		}
		say(s.Person.ID, dialog.Reply, "heard "+in.Text)
	case dialog.Reminder:
		for _, d := range in.Due {
			a.Entries = append(a.Entries, dialog.Entry{Heap: d.Heap, At: now, Day: d.Day, Noted: now,
				Event: dialog.Reminded{Task: d.Task, Day: dialog.DayOf(now, s.Person.Zone())}})
		}
		say(s.Person.ID, dialog.Remind, "time for "+string(in.Due[0].Task))
	}
	return a
}

func tell(t testing.TB, db *DB, now time.Time, chat int64, text string) Outcome {
	t.Helper()
	o, err := db.Converse(t.Context(), now, Call{Chat: chat, In: dialog.Message{Kind: dialog.Text, Text: text}})
	require.NoError(t, err)
	return o[0]
}

func anybody(int64, int) bool { return true }

func letters(t testing.TB, db *DB, now time.Time) (texts []string) {
	t.Helper()
	list, err := db.Letters(t.Context(), now, 1000, anybody)
	require.NoError(t, err)
	for _, l := range list {
		texts = append(texts, l.Letter.Text)
	}
	return texts
}

func settleAll(t testing.TB, db *DB, now time.Time) []dialog.PersonID {
	t.Helper()
	list, err := db.Letters(t.Context(), now, 1000, anybody)
	require.NoError(t, err)
	var fates []Fate
	for _, l := range list {
		fates = append(fates, Fate{Letter: l.ID, Person: l.Letter.To})
	}
	leave, err := db.Settle(t.Context(), fates)
	require.NoError(t, err)
	return leave
}

func TestOneTransactionHoldsAll(t *testing.T) {
	db := open(t, Options{})
	require.NoError(t, db.Receive(t.Context(), noon, []Raw{{ID: 7, Chat: 1, Body: []byte("{}")}}, 8))
	w, err := db.Waiting(t.Context(), 10)
	require.NoError(t, err)
	require.Len(t, w, 1)
	call := Call{Chat: 1, Inbox: w[0].Seq, In: dialog.Message{Text: "agree"}}
	o, err := db.Converse(t.Context(), noon, call, Call{Chat: 1, In: dialog.Message{Text: "build"}})
	require.NoError(t, err)
	require.NoError(t, o[0].Err)
	require.Equal(t, 1, o[0].Letters)
	due, err := db.DueOf(t.Context(), o[0].Person)
	require.NoError(t, err)
	require.NotEmpty(t, due, "a heap that stands wants the stick")
	require.Equal(t, []string{"heard agree", "heard build"}, letters(t, db, noon))

	o, err = db.Converse(t.Context(), noon, call)
	require.NoError(t, err)
	require.ErrorIs(t, o[0].Err, ErrHandled)
	require.Len(t, letters(t, db, noon), 2, "an update handled twice says nothing twice")
}

func TestAnUpdateIsKeptOnce(t *testing.T) {
	db := open(t, Options{})
	count := func() int {
		w, err := db.Waiting(t.Context(), 10)
		require.NoError(t, err)
		return len(w)
	}
	raw := []Raw{{ID: 7, Chat: 1, Body: []byte("{}")}}
	require.NoError(t, db.Receive(t.Context(), noon, raw, 8))
	require.NoError(t, db.Receive(t.Context(), noon.Add(time.Hour), raw, 8))
	require.Equal(t, 1, count())
	require.NoError(t, db.Receive(t.Context(), noon.Add(48*time.Hour), raw, 8))
	require.Equal(t, 1, count(), "the number came again after the platform forgot it: another update in its place")

	offset, err := db.Offset(t.Context(), noon.Add(49*time.Hour))
	require.NoError(t, err)
	require.EqualValues(t, 8, offset)
	offset, err = db.Offset(t.Context(), noon.Add(9*24*time.Hour))
	require.NoError(t, err)
	require.Zero(t, offset, "after a quiet week the numbers may have started anew")
	require.NoError(t, db.Receive(t.Context(), noon, []Raw{{ID: 9, Chat: 1, Body: []byte("{}")}}, -1))
	text, err := db.Setting(t.Context(), "offset")
	require.NoError(t, err)
	require.Equal(t, "8", text, "a webhook has no offset")
}

func TestAStrangerLeavesNothingButTheChat(t *testing.T) {
	db := open(t, Options{Step: func(s dialog.State, in dialog.Input, now time.Time) dialog.Answer {
		return dialog.Answer{Letters: []dialog.Letter{{To: s.Person.ID, Text: "do you agree?"}}}
	}})
	require.NoError(t, db.Receive(t.Context(), noon, []Raw{{ID: 1, Chat: 5, Body: []byte(`{"secret":"zanzibarine"}`)}}, 2))
	w, err := db.Waiting(t.Context(), 1)
	require.NoError(t, err)
	_, err = db.Converse(t.Context(), noon, Call{Chat: 5, Inbox: w[0].Seq, In: dialog.Message{Text: "zanzibarine"}})
	require.NoError(t, err)
	require.NoError(t, db.Wipe(t.Context()))
	require.NotContains(t, fileText(t, db.Path()), "zanzibarine")
}

func fileText(t *testing.T, path string) string {
	t.Helper()
	data, err := os.ReadFile(path)
	if errors.Is(err, os.ErrNotExist) {
		return ""
	}
	require.NoError(t, err)
	return string(data)
}

func TestABrokenConversationIsPutAside(t *testing.T) {
	db := open(t, Options{})
	require.NoError(t, db.Receive(t.Context(), noon, []Raw{{ID: 1, Chat: 1, Body: []byte("{}")}, {ID: 2, Chat: 1, Body: []byte("{}")}, {ID: 3, Chat: 9, Body: []byte("{}")}}, 4))
	o, err := db.Converse(t.Context(), noon,
		Call{Chat: 1, Inbox: 1, In: dialog.Message{Text: "break"}, Else: dialog.Message{Text: "sorry"}},
		Call{Chat: 1, Inbox: 2, In: dialog.Message{Text: "agree"}},
		Call{Chat: 9, Inbox: 3, Spoilt: "cannot be read"})
	require.NoError(t, err)
	broken, ok := errors.AsType[*Broken](o[0].Err)
	require.True(t, ok)
	require.Contains(t, broken.Where, "store_test.go")
	require.NotContains(t, broken.Error(), "as asked", "a panic's own words may quote a person")
	require.NoError(t, o[1].Err)
	require.Equal(t, []string{"heard sorry", "heard agree"}, letters(t, db, noon))
	w, err := db.Waiting(t.Context(), 10)
	require.NoError(t, err)
	require.Empty(t, w)
	var spoiled int
	require.NoError(t, look(t, db).QueryRow("SELECT count(*) FROM inbox WHERE spoiled IS NOT NULL").Scan(&spoiled))
	require.Equal(t, 2, spoiled)
}

func TestARemindersDueRowsMoveOn(t *testing.T) {
	db := open(t, Options{})
	tell(t, db, noon, 1, "agree")
	p := tell(t, db, noon, 1, "build").Person
	due, err := db.DueOf(t.Context(), p)
	require.NoError(t, err)
	at := due[0].At
	next, err := db.NextMoment(t.Context(), noon)
	require.NoError(t, err)
	require.Equal(t, at, next)
	people, err := db.NextDue(t.Context(), at.Add(-time.Second), 10)
	require.NoError(t, err)
	require.Empty(t, people)
	people, err = db.NextDue(t.Context(), at, 10)
	require.NoError(t, err)
	require.Equal(t, []dialog.PersonID{p}, people)
	o, err := db.Converse(t.Context(), at, Call{Person: p, In: dialog.Reminder{}}, Call{Person: p, In: dialog.Reminder{}})
	require.NoError(t, err)
	require.NoError(t, o[0].Err)
	require.ErrorIs(t, o[1].Err, ErrHandled, "once is enough")
	people, err = db.NextDue(t.Context(), at, 10)
	require.NoError(t, err)
	require.Empty(t, people)
}

func TestADueRowThatNothingComesOfRests(t *testing.T) {
	silent := false
	db := open(t, Options{Step: func(s dialog.State, in dialog.Input, now time.Time) dialog.Answer {
		if _, ok := in.(dialog.Reminder); ok && silent {
			return dialog.Answer{Talk: s.Talk}
		}
		return echo(s, in, now)
	}})
	tell(t, db, noon, 1, "agree")
	p := tell(t, db, noon, 1, "build").Person
	due, err := db.DueOf(t.Context(), p)
	require.NoError(t, err)
	at := due[0].At
	silent = true
	_, err = db.Converse(t.Context(), at, Call{Person: p, In: dialog.Reminder{}})
	require.NoError(t, err)
	people, err := db.NextDue(t.Context(), at.Add(59*time.Minute), 10)
	require.NoError(t, err)
	require.Empty(t, people)
	people, err = db.NextDue(t.Context(), at.Add(time.Hour), 10)
	require.NoError(t, err)
	require.Equal(t, []dialog.PersonID{p}, people)
	drifts, err := Compare(t.Context(), db.Path())
	require.NoError(t, err)
	require.Empty(t, drifts, "a rest is no drift")
	silent = false
	o, err := db.Converse(t.Context(), at.Add(time.Hour), Call{Person: p, In: dialog.Reminder{}})
	require.NoError(t, err)
	require.NoError(t, o[0].Err)
}

// Rows of a plan that this program does not make any more, as after an upgrade,
// are replaced when they fall due, and do not come back.
func TestStrayDueRowsAreMended(t *testing.T) {
	db := open(t, Options{})
	tell(t, db, noon, 1, "agree")
	p := tell(t, db, noon, 1, "build").Person
	want, err := db.DueOf(t.Context(), p)
	require.NoError(t, err)
	_, err = db.stmts.once("UPDATE due SET task = 'dance', at = ?1, look = ?1", ms(noon))
	require.NoError(t, err)
	people, err := db.NextDue(t.Context(), noon, 10)
	require.NoError(t, err)
	require.Len(t, people, 1)
	o, err := db.Converse(t.Context(), noon, Call{Person: p, In: dialog.Reminder{}})
	require.NoError(t, err)
	require.ErrorIs(t, o[0].Err, ErrHandled)
	got, err := db.DueOf(t.Context(), p)
	require.NoError(t, err)
	require.Equal(t, want, got)
}

func TestLettersGoByUrgencyAndKeepTheirOrder(t *testing.T) {
	db := open(t, Options{})
	tell(t, db, noon, 1, "agree")
	code := tell(t, db, noon, 1, "invite")
	invite, err := db.Newest(t.Context(), code.Person, noon)
	require.NoError(t, err)
	require.Len(t, invite, 6)
	tell(t, db, noon, 2, invite)
	settleAll(t, db, noon)
	tell(t, db, noon, 1, "everybody")
	tell(t, db, noon, 2, "agree")
	tell(t, db, noon, 2, "build")
	require.Equal(t, []string{"heard everybody", "heard agree", "heard build", "to all"}, letters(t, db, noon))
	require.NotContains(t, letters(t, db, noon.Add(-6*time.Hour)), "to all", "a clock that jumps back lets nothing out at night")
	list, err := db.Letters(t.Context(), noon, 2, func(chat int64, class int) bool { return chat == 2 })
	require.NoError(t, err)
	require.Len(t, list, 2)
	require.EqualValues(t, 2, list[0].Chat)
	tell(t, db, noon, 2, "stop")
	require.NotContains(t, letters(t, db, noon), "to all", "stop holds for what was on its way")
}

func TestAnInviteThatEndedOrWentOffIsNotNewest(t *testing.T) {
	db := open(t, Options{})
	p := tell(t, db, noon, 1, "invite").Person
	code, err := db.Newest(t.Context(), p, noon.Add(2*time.Hour))
	require.NoError(t, err)
	require.Empty(t, code)
	code, err = db.Newest(t.Context(), 99, noon)
	require.NoError(t, err)
	require.Empty(t, code)
}

func TestForget(t *testing.T) {
	db := open(t, Options{})
	tell(t, db, noon, 77, "agree")
	tell(t, db, noon, 77, "heap")
	tell(t, db, noon, 77, "delete me")
	require.NoError(t, db.Receive(t.Context(), noon, []Raw{{ID: 1, Chat: 77, Body: []byte("zanzibarine")}}, 2))
	leave := settleAll(t, db, noon)
	require.Len(t, leave, 1)
	again, err := db.Leaving(t.Context())
	require.NoError(t, err)
	require.Equal(t, leave, again, "what a crash leaves undone can be found")
	require.NoError(t, db.Forget(t.Context(), noon, leave[0]))
	for _, table := range []string{"person", "entry", "due", "letter", "inbox", "leaving"} {
		var n int
		require.NoError(t, look(t, db).QueryRow("SELECT count(*) FROM "+table).Scan(&n))
		require.Zero(t, n, table)
	}
	require.NotContains(t, fileText(t, db.Path()), "zanzibarine")
	require.NotContains(t, fileText(t, db.Path()+"-wal"), "zanzibarine")
	shut, err := db.Converse(t.Context(), noon, Call{Chat: 77, In: dialog.Barred{Now: true}})
	require.NoError(t, err)
	require.ErrorIs(t, shut[0].Err, ErrHandled)
	id, err := db.PersonOf(t.Context(), 77)
	require.NoError(t, err)
	require.Zero(t, id, "whoever blocks us after leaving is not written down again")
	o := tell(t, db, noon, 77, "agree")
	require.Greater(t, o.Person, leave[0], "whoever comes back is somebody new")
}

// Nothing of a person stays with others: no letter that waits, no open question,
// no words in their diaries.
func TestForgetWhatOthersHold(t *testing.T) {
	farmer, officer := dialog.PersonID(1), dialog.PersonID(2)
	db := open(t, Options{Step: func(s dialog.State, in dialog.Input, now time.Time) dialog.Answer {
		a := dialog.Answer{Talk: s.Talk}
		switch in.(dialog.Message).Text {
		case "relay":
			a.Letters = []dialog.Letter{{To: officer, Kind: dialog.Relay, Text: "zanzibarine", Opens: &dialog.Question{ID: "answer_text", Who: farmer}}}
		case "advise":
			a.Entries = []dialog.Entry{{Person: farmer, At: now, Noted: now, By: officer, Event: dialog.OfficerWrote{Text: "madagascarine"}}}
		}
		return a
	}})
	tell(t, db, noon, 1, "hello")
	tell(t, db, noon, 2, "hello")
	tell(t, db, noon, 1, "relay")
	tell(t, db, noon, 2, "advise")
	s, err := db.StateOf(t.Context(), officer)
	require.NoError(t, err)
	require.Equal(t, farmer, s.Talk.Open.Who)
	tell(t, db, noon, 1, "relay")
	s, err = db.StateOf(t.Context(), officer)
	require.NoError(t, err)
	require.Equal(t, farmer, s.Talk.Open.Who)
	require.NoError(t, db.Forget(t.Context(), noon, farmer))
	s, err = db.StateOf(t.Context(), officer)
	require.NoError(t, err)
	require.Equal(t, dialog.Question{}, s.Talk.Open)
	require.Empty(t, letters(t, db, noon))
	tell(t, db, noon, 3, "hello")
	farmer = 3
	tell(t, db, noon, 2, "advise")
	require.NoError(t, db.Forget(t.Context(), noon, officer))
	for _, end := range []string{"", "-wal"} {
		require.NotContains(t, fileText(t, db.Path()+end), "zanzibarine")
		require.NotContains(t, fileText(t, db.Path()+end), "madagascarine")
	}
}

func TestOpensAFileOnlyWhenItIsOurs(t *testing.T) {
	dir := t.TempDir()
	write := func(name, text string) string {
		path := filepath.Join(dir, name)
		require.NoError(t, os.WriteFile(path, []byte(text), 0o600))
		return path
	}
	for _, path := range []string{write("text", "once upon a time"), write("half", "SQLite format 3\x00 and no more"), filepath.Join(dir, "no", "folder", "w.db"), dir} {
		_, err := Open(t.Context(), path, Options{})
		require.Error(t, err, path)
		require.NotContains(t, err.Error(), "\n")
	}
	require.Equal(t, "once upon a time", fileText(t, filepath.Join(dir, "text")), "what is not ours stays as it was")

	odd := filepath.Join(dir, "a b%3f#?.db")
	db, err := Open(t.Context(), odd, Options{})
	require.NoError(t, err)
	require.NoError(t, db.Close())
	require.FileExists(t, odd)
	db, err = Open(t.Context(), odd, Options{})
	require.NoError(t, err)
	_, err = db.stmts.once("PRAGMA user_version = 99")
	require.NoError(t, err)
	require.NoError(t, db.Close())
	_, err = Open(t.Context(), odd, Options{})
	require.ErrorContains(t, err, "newer program")
}

func TestLockKeepsASecondServerOff(t *testing.T) {
	path := filepath.Join(t.TempDir(), "w.db")
	unlock, err := Lock(t.Context(), path)
	require.NoError(t, err)
	_, err = Lock(t.Context(), path)
	require.ErrorIs(t, err, ErrTaken)
	unlock()
	unlock, err = Lock(t.Context(), path)
	require.NoError(t, err)
	unlock()
	_, err = Lock(t.Context(), filepath.Join(path, "below", "w.db"))
	require.Error(t, err)
}
