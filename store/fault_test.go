package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"warmstick/dialog"
)

// busyLife does everything that a file is asked to do, in stages. It gives the
// stage that failed, from which it may be taken up again: what was done before is
// not done twice.
func busyLife(db *DB, from int) (stage int, err error) {
	l := &life{db: db}
	stages := []func() error{
		l.tell(noon, 1, "agree", "invite", "break", "group", "odd", "worse"),
		func() error {
			p, err := db.PersonOf(ctx, 1)
			if err != nil {
				return err
			}
			code, err := db.Newest(ctx, p, noon)
			if err == nil && code != "abcdef" {
				err = fmt.Errorf("the newest invite is %q", code)
			}
			return err
		},
		l.tell(noon, 2, "agree", "abcdef", "heap", "build", "undo", "build", "ask", "look"),
		l.send(noon, ""),
		l.tell(noon, 1, "everybody", "end", "regret"),
		l.days,
		l.send(noon.Add(9*day), "blocked"),
		l.tell(noon, 2, "leave", "stop"),
		l.tell(noon, 3, "agree", "delete me"),
		l.send(noon.Add(9*day), ""),
		l.holds,
		func() error { return db.Set(ctx, "alive", "1") },
		func() error { return db.Rebuild(ctx) },
		func() error { _, err := db.Purge(ctx, noon.Add(30*day)); return err },
	}
	for stage, do := range stages[from:] {
		l.stage = from + stage
		if err := do(); err != nil {
			return l.stage, err
		}
	}
	return 0, nil
}

const day = 24 * time.Hour

var ctx = context.Background()

type life struct {
	db    *DB
	stage int
}

// tell lets a chat write lines, each as an update of its own.
func (l *life) tell(now time.Time, chat int64, texts ...string) func() error {
	return func() error {
		for i, text := range texts {
			id := int64(100*l.stage + i)
			if err := l.db.Receive(ctx, now, []Raw{{ID: id, Chat: chat, Body: []byte(text)}}, id+1); err != nil {
				return err
			}
			if err := l.answer(now); err != nil {
				return err
			}
		}
		return nil
	}
}

func (l *life) answer(now time.Time) error {
	w, err := l.db.Waiting(ctx, 10)
	if err != nil {
		return err
	}
	for _, row := range w {
		c := Call{Chat: row.Chat, Inbox: row.Seq, In: dialog.Message{Text: string(row.Body)}, Else: dialog.Message{Text: "sorry"}}
		switch string(row.Body) {
		case "group":
			c.In = nil
		case "odd":
			c.In, c.Spoilt = nil, "cannot be read"
		case "worse":
			if err := l.db.Spoil(ctx, now, row.Seq, "worse"); err != nil {
				return err
			}
			continue
		}
		if _, err := l.db.Converse(ctx, now, c); err != nil {
			return err
		}
	}
	return nil
}

// send settles every letter, then deletes who waited for that.
func (l *life) send(now time.Time, refuse string) func() error {
	return func() error {
		list, err := l.db.Letters(ctx, now, 100, anybody)
		if err != nil {
			return err
		}
		for _, letter := range list {
			if _, err := l.db.Settle(ctx, []Fate{{Letter: letter.ID, Person: letter.Letter.To, Refused: refuse}}); err != nil {
				return err
			}
		}
		leave, err := l.db.Leaving(ctx)
		if err != nil {
			return err
		}
		for _, p := range leave {
			if err := l.db.Forget(ctx, now, p); err != nil {
				return err
			}
		}
		return nil
	}
}

func (l *life) days() error {
	for d := range 8 {
		now := noon.Add(time.Duration(d) * day)
		people, err := l.db.NextDue(ctx, now, 10)
		if err != nil {
			return err
		}
		for _, p := range people {
			if _, err := l.db.Converse(ctx, now, Call{Person: p, In: dialog.Reminder{}}); err != nil {
				return err
			}
			if _, err := l.db.DueOf(ctx, p); err != nil {
				return err
			}
		}
		if _, err := l.db.NextMoment(ctx, now); err != nil {
			return err
		}
	}
	return nil
}

func (l *life) holds() error {
	for _, h := range []Hold{{Chat: 1, Until: noon, Tries: 2}, {Chat: 1}, {Chat: 2, Until: noon}} {
		if err := l.db.KeepHold(ctx, h); err != nil {
			return err
		}
	}
	holds, err := l.db.Holds(ctx)
	if err == nil && (len(holds) != 1 || !holds[0].Until.Equal(noon)) {
		err = errors.New("one hold was kept")
	}
	return err
}

// Any statement may fail, as it does on a full disk or a bad one: each is made to
// fail where it comes first, in the middle, and last. Each failure
// is an error to the caller, never a panic, and undoes its own transaction; when
// the file works again, everything ends as if nothing had happened.
func TestEveryStatementMayFail(t *testing.T) {
	errDisk := errors.New("database or disk is full")
	diaries := func(db *DB) (list [][]dialog.Event) {
		for p := dialog.PersonID(1); p <= dialog.PersonID(db.count.person); p++ {
			diary, err := db.DiaryOf(t.Context(), p)
			require.NoError(t, err)
			var events []dialog.Event
			for _, e := range diary {
				events = append(events, e.Event)
			}
			list = append(list, events)
		}
		return list
	}
	whole := open(t, Options{Loose: true, Step: wide, Pages: 2, Chance: fixed})
	places := map[string][]int{} // of each statement, in the order of life
	statements := 0
	whole.stmts.fault = func(text string) error {
		statements++
		places[text] = append(places[text], statements)
		return nil
	}
	_, err := busyLife(whole, 0)
	require.NoError(t, err)
	whole.stmts.fault = nil
	want := diaries(whole)
	require.Greater(t, len(places), 70)
	template := filepath.Join(t.TempDir(), "template.db")
	require.NoError(t, Backup(t.Context(), open(t, Options{}).Path(), template))
	empty, err := os.ReadFile(template)
	require.NoError(t, err)
	var failing []int
	for _, at := range places {
		failing = append(failing, at[0], at[len(at)/2], at[len(at)-1])
	}
	slices.Sort(failing)
	for _, at := range slices.Compact(failing) {
		path := filepath.Join(t.TempDir(), "w.db")
		require.NoError(t, os.WriteFile(path, empty, 0o600))
		db, err := Open(t.Context(), path, Options{Loose: true, Step: wide, Pages: 2, Chance: fixed})
		require.NoError(t, err)
		n := 0
		db.stmts.fault = func(string) error {
			if n++; n == at {
				return errDisk
			}
			return nil
		}
		// A failed rollback is the only failure that nobody needs to hear of.
		if stage, err := busyLife(db, 0); err != nil {
			require.ErrorIs(t, err, errDisk, "statement %d", at)
			db.stmts.fault = nil
			_, err := busyLife(db, stage)
			require.NoError(t, err, "statement %d", at)
		}
		db.stmts.fault = nil
		require.Equal(t, want, diaries(db), "statement %d", at)
		require.NoError(t, db.Close())
	}
}

func fixed(n int) string { return "abcdef"[:n] }

// wide is echo with the rest of what a conversation may ask for.
func wide(s dialog.State, in dialog.Input, now time.Time) dialog.Answer {
	m, ok := in.(dialog.Message)
	if !ok {
		return echo(s, in, now)
	}
	a := dialog.Answer{Talk: s.Talk}
	entry := func(to dialog.PersonID, e dialog.Event) {
		a.Entries = append(a.Entries, dialog.Entry{Person: to, At: now, Noted: now, By: s.Person.ID, Event: e})
	}
	switch m.Text {
	case "ask":
		s.Register.Diary(s.Person.ID)
		if officer, ok := s.Register.State(1); ok {
			a.Letters = []dialog.Letter{{To: officer.Person.ID, Kind: dialog.Relay, Text: "?", Opens: &dialog.Question{ID: "answer_text", Who: s.Person.ID}}}
		}
	case "look":
		s.Register.Sending("batch")
		s.Register.Group(99999)
		s.Register.State(99999)
		entry(dialog.PersonID(s.Register.NewID()), dialog.Named{Name: "Baraka"})
	case "everybody":
		a = echo(s, in, now)
		for i := range a.Letters {
			a.Letters[i].Batch, a.Letters[i].After = "batch", now.Add(20*time.Hour)
		}
	case "regret":
		entry(0, dialog.Struck{Told: 2}) // the group and its invite
	case "end":
		a.Halt = []string{"batch"}
		for _, i := range s.Person.Invites {
			entry(0, dialog.InviteEnded{Code: i.Code})
		}
	case "leave":
		for _, r := range s.Person.Roles {
			entry(0, dialog.GroupLeft{Group: r.Group})
		}
	default:
		return echo(s, in, now)
	}
	return a
}

// What a conversation wants to write and cannot be written undoes the call.
func TestWhatCannotBeWritten(t *testing.T) {
	type strange struct{ dialog.Event }
	for _, e := range []dialog.Event{strange{}, dialog.Yielded{Kg: nan()}} {
		db := open(t, Options{Step: func(s dialog.State, in dialog.Input, now time.Time) dialog.Answer {
			return dialog.Answer{Entries: []dialog.Entry{{Event: e}}}
		}})
		_, err := db.Converse(t.Context(), noon, Call{Chat: 1, In: dialog.Message{}})
		require.Error(t, err)
		id, err := db.PersonOf(t.Context(), 1)
		require.NoError(t, err)
		require.Zero(t, id)
	}
}

func nan() float64 { var zero float64; return zero / zero }

// A line of a newer program is an error that names the line, not its words.
func TestADiaryOfANewerProgram(t *testing.T) {
	db := open(t, Options{})
	tell(t, db, noon, 1, "agree")
	_, err := db.stmts.once(`UPDATE entry SET kind = 'Danced', body = '{"Who":"zanzibarine"}'`)
	require.NoError(t, err)
	_, err = db.stmts.once(`UPDATE person SET fold = NULL`)
	require.NoError(t, err)
	db.shelf.empty()
	_, err = db.Converse(t.Context(), noon, Call{Chat: 1, In: dialog.Message{Text: "x"}})
	require.ErrorContains(t, err, "line 1")
	require.NotContains(t, err.Error(), "zanzibarine")
	require.Error(t, db.Rebuild(t.Context()))
	_, err = Compare(t.Context(), db.Path())
	require.Error(t, err)
	require.Error(t, Verify(t.Context(), db.Path()))
	require.Error(t, Roll(t.Context(), db.Path(), func(Member) error { return nil }))
}

func TestAClosedFile(t *testing.T) {
	db := open(t, Options{})
	require.NoError(t, db.Close())
	require.NoError(t, db.Close(), "twice does no harm")
	_, err := busyLife(db, 0)
	require.Error(t, err)
	require.Error(t, db.Wipe(t.Context()))
	_, err = db.Setting(t.Context(), "x")
	require.Error(t, err)
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	require.ErrorIs(t, open(t, Options{}).Set(ctx, "x", "y"), context.Canceled)
}

// One answer does for a chat's backlog: plain replies to the earlier lines are
// held back, what they told is kept, and words of care go all the same.
func TestHushedRepliesAreHeldBack(t *testing.T) {
	db := open(t, Options{Step: func(s dialog.State, in dialog.Input, now time.Time) dialog.Answer {
		text := in.(dialog.Message).Text
		l := dialog.Letter{To: s.Person.ID, Kind: dialog.Reply, Text: text}
		if text == "burnt" {
			l.Advice = []string{"burn_care"}
		}
		return dialog.Answer{Letters: []dialog.Letter{l}, Entries: []dialog.Entry{{Event: dialog.Named{Name: text}}}}
	}})
	_, err := db.Converse(t.Context(), noon, Call{Chat: 1, Hushed: true, In: dialog.Message{Text: "one"}},
		Call{Chat: 1, Hushed: true, In: dialog.Message{Text: "burnt"}}, Call{Chat: 1, In: dialog.Message{Text: "three"}})
	require.NoError(t, err)
	require.Equal(t, []string{"burnt", "three"}, letters(t, db, noon))
	diary, err := db.DiaryOf(t.Context(), 1)
	require.NoError(t, err)
	require.Len(t, diary, 3)
}

func TestRollReadsEverybody(t *testing.T) {
	db := open(t, Options{})
	tell(t, db, noon, 1, "agree")
	p := tell(t, db, noon, 1, "invite").Person
	tell(t, db, noon, 2, "agree")
	code, err := db.Newest(t.Context(), p, noon)
	require.NoError(t, err)
	tell(t, db, noon, 2, code)
	var members []Member
	require.NoError(t, Roll(t.Context(), db.Path(), func(m Member) error { members = append(members, m); return nil }))
	require.Len(t, members, 2)
	require.EqualValues(t, 1, members[0].Chat)
	require.Len(t, members[0].Diary, 4)
	require.ErrorIs(t, Roll(t.Context(), db.Path(), func(Member) error { return errPower }), errPower)
	require.Error(t, Roll(t.Context(), db.Path()+"x", func(Member) error { return nil }))
	s, err := db.StateOf(t.Context(), p)
	require.NoError(t, err)
	g, cards, err := db.GroupCards(t.Context(), s.Person.Roles[0].Group)
	require.NoError(t, err)
	require.Equal(t, "Ngara Ridge", g.Name)
	require.Len(t, cards, 1)
	_, _, err = db.GroupCards(t.Context(), 99999)
	require.Error(t, err)
}

// What stands in the way of a backup or a clean-up is an error that says so.
func TestKeepingFails(t *testing.T) {
	db := open(t, Options{})
	tell(t, db, noon, 1, "agree")
	dir := t.TempDir()
	file := filepath.Join(dir, "file")
	require.NoError(t, os.WriteFile(file, []byte("once upon a time"), 0o600))
	require.Error(t, Backup(t.Context(), db.Path(), filepath.Join(dir, "no", "copy.db")))
	require.Error(t, Backup(t.Context(), file, filepath.Join(dir, "copy.db")))
	require.Error(t, Backup(t.Context(), db.Path(), dir), "a folder has the name")
	require.Error(t, place(filepath.Join(dir, "missing"), file))
	require.Error(t, Nightly(t.Context(), noon, db.Path(), file, 3))
	require.Error(t, Nightly(t.Context(), noon, file, filepath.Join(dir, "nights"), 3))
	_, err := backups(filepath.Join(dir, "missing"))
	require.Error(t, err)
	require.Error(t, ScrubBackups(t.Context(), noon, file, nil))
	require.NoError(t, os.WriteFile(filepath.Join(dir, "warmstick-2026-03-02.db"), []byte("once upon a time"), 0o600))
	require.Error(t, ScrubBackups(t.Context(), noon, dir, []dialog.PersonID{1}))
	_, err = LastNoted(t.Context(), file)
	require.Error(t, err)
	require.Error(t, Verify(t.Context(), filepath.Join(dir, "missing")))
	require.False(t, pragmas(t.Context(), file).Well())
	require.False(t, writable(filepath.Join(dir, "missing")).Well())

	other := filepath.Join(dir, "other.db")
	empty, err := Open(t.Context(), other, Options{})
	require.NoError(t, err)
	_, err = empty.stmts.once("PRAGMA user_version = 0")
	require.NoError(t, err)
	require.NoError(t, empty.Close())
	require.ErrorContains(t, Verify(t.Context(), other), "version 0")
	again, err := Open(t.Context(), other, Options{})
	require.NoError(t, err, "a start that was cut short is finished")
	_, err = again.stmts.once("DROP TABLE tombstone")
	require.NoError(t, err)
	require.ErrorContains(t, Verify(t.Context(), other), "not a warmstick database")
	require.Empty(t, tombstones(t.Context(), other))
	require.NoError(t, again.Close())
	strange, err := sql.Open("sqlite", address(filepath.Join(dir, "strange.db")))
	require.NoError(t, err)
	_, err = strange.Exec("CREATE TABLE cats (name TEXT)")
	require.NoError(t, err)
	require.NoError(t, strange.Close())
	_, err = Open(t.Context(), filepath.Join(dir, "strange.db"), Options{})
	require.ErrorContains(t, err, "belongs to another program")
}

// A program that stops between a deletion asked for and the last letter finds
// the person again when it starts.
func TestLeavingOutlivesARestart(t *testing.T) {
	db := open(t, Options{})
	p := tell(t, db, noon, 1, "delete me").Person
	again, err := Open(t.Context(), db.Path(), Options{Step: echo})
	require.NoError(t, err)
	defer again.Close()
	require.Equal(t, []dialog.PersonID{p}, settleAll(t, again, noon))
}
