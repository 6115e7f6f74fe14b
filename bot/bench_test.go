package bot

import (
	"context"
	"database/sql"
	"fmt"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"warmstick/dialog"
	"warmstick/store"
)

// BenchmarkDurable compares the real path of messages (inbox, conversation,
// diary, due rows, outbox, letters gone) with the same rows written by bare SQL,
// both at synchronous=FULL and in batches of the same size. The target is at
// least half of the bare SQL's speed.
func BenchmarkDurable(b *testing.B) {
	const batch, chats = 100, 1000
	var thought time.Duration // inside the conversation itself
	db, err := store.Open(context.Background(), filepath.Join(b.TempDir(), "w.db"), store.Options{
		Step: func(s dialog.State, in dialog.Input, now time.Time) dialog.Answer {
			began := time.Now()
			defer func() { thought += time.Since(began) }()
			return dialog.Step(s, in, now)
		}})
	require.NoError(b, err)
	b.Cleanup(func() { db.Close() })
	now := time.Date(2026, 3, 2, 6, 0, 0, 0, time.UTC)
	id := int64(0)
	d := newDesk(&Bot{Store: db, Now: func() time.Time { return now }})
	turn := func(text func(i int64) string) {
		raws := make([]store.Raw, batch)
		for i := range raws {
			id++
			chat := id%chats + 1
			body := fmt.Sprintf(`{"update_id":%d,"message":{"message_id":%d,"from":{"id":%d,"is_bot":false},"chat":{"id":%d,"type":"private"},"date":%d,"text":%q}}`,
				id, id, chat, chat, now.Unix(), text(id/chats))
			raw, err := envelope([]byte(body))
			require.NoError(b, err)
			raws[i] = raw
		}
		require.NoError(b, db.Receive(b.Context(), now, raws, id+1))
		rows, err := db.Waiting(b.Context(), batch)
		require.NoError(b, err)
		require.NoError(b, d.answer(b.Context(), rows))
		for {
			list, err := db.Letters(b.Context(), now, sendSlots, func(int64, int) bool { return true })
			require.NoError(b, err)
			if len(list) == 0 {
				break
			}
			fates := make([]store.Fate, len(list))
			for i, l := range list {
				fates[i] = store.Fate{Letter: l.ID, Person: l.Letter.To}
			}
			_, err = db.Settle(b.Context(), fates)
			require.NoError(b, err)
		}
		now = now.Add(time.Second)
	}
	enrol := []string{"hello", "1", "yes", "Amina", "Nairobi", "1", "3 baskets cow dung"}
	for range chats / batch * len(enrol) {
		turn(func(i int64) string { return enrol[min(int(i), len(enrol)-1)] })
	}
	words := []string{"5 baskets dry leaves", "2 bags maize stover", "1 basin green grass", "4 baskets cow dung"}
	b.Run("real", func(b *testing.B) {
		n := 0
		thought = 0
		for b.Loop() {
			turn(func(i int64) string { return words[i%int64(len(words))] })
			n += batch
		}
		b.ReportMetric(float64(n)/b.Elapsed().Seconds(), "messages/s")
		b.ReportMetric(float64(thought.Microseconds())/float64(n), "µs-conversation/message")
	})
	b.Run("bare", func(b *testing.B) { bare2(b, batch, chats) })
}

// bare2 writes the rows of a message by bare SQL, a person's, a diary line, a due
// row, a letter, and takes the letter away again.
func bare2(b *testing.B, batch, chats int64) {
	pool, err := sql.Open("sqlite", "file:"+filepath.Join(b.TempDir(), "bare.db")+"?_pragma=journal_mode(WAL)&_pragma=synchronous(FULL)&_pragma=secure_delete(1)&_txlock=immediate")
	require.NoError(b, err)
	b.Cleanup(func() { pool.Close() })
	pool.SetMaxOpenConns(1)
	for _, q := range []string{
		`CREATE TABLE inbox (seq INTEGER PRIMARY KEY, id INTEGER UNIQUE, chat INTEGER, got INTEGER, done INTEGER, raw BLOB)`,
		`CREATE INDEX inbox_waiting ON inbox (seq) WHERE done IS NULL`,
		`CREATE TABLE person (id INTEGER PRIMARY KEY, talk TEXT)`,
		`CREATE TABLE entry (person INTEGER, id INTEGER, body TEXT, PRIMARY KEY (person, id)) WITHOUT ROWID`,
		`CREATE TABLE due (person INTEGER, task TEXT, at INTEGER, PRIMARY KEY (person, task)) WITHOUT ROWID`,
		`CREATE INDEX due_at ON due (at, person)`,
		`CREATE TABLE letter (id INTEGER PRIMARY KEY, class INTEGER, after INTEGER, body TEXT)`,
		`CREATE INDEX letter_waiting ON letter (class, after, id)`,
	} {
		_, err := pool.Exec(q)
		require.NoError(b, err)
	}
	prepare := func(q string) *sql.Stmt {
		s, err := pool.Prepare(q)
		require.NoError(b, err)
		return s
	}
	inbox, done := prepare(`INSERT INTO inbox (id, chat, got, raw) VALUES (?, ?, ?, ?)`), prepare(`UPDATE inbox SET done = ? WHERE seq = ?`)
	person := prepare(`INSERT INTO person VALUES (?, ?) ON CONFLICT DO UPDATE SET talk = excluded.talk`)
	entry := prepare(`INSERT INTO entry VALUES (?, ?, ?)`)
	due := prepare(`INSERT INTO due VALUES (?, 'gather', ?) ON CONFLICT DO UPDATE SET at = excluded.at`)
	letter, gone := prepare(`INSERT INTO letter VALUES (?, 0, 0, ?)`), prepare(`DELETE FROM letter WHERE id = ?`)
	raw, talk := make([]byte, 220), string(make([]byte, 300))
	body, fact := string(make([]byte, 420)), string(make([]byte, 60))
	id, n := int64(0), 0
	in := func(do func(tx *sql.Tx, i int64)) {
		tx, err := pool.Begin()
		require.NoError(b, err)
		for i := id + 1; i <= id+batch; i++ {
			do(tx, i)
		}
		require.NoError(b, tx.Commit())
	}
	exec := func(tx *sql.Tx, s *sql.Stmt, args ...any) {
		if _, err := tx.Stmt(s).Exec(args...); err != nil {
			b.Fatal(err)
		}
	}
	for b.Loop() {
		in(func(tx *sql.Tx, i int64) { exec(tx, inbox, i, i%chats, i, raw) })
		in(func(tx *sql.Tx, i int64) {
			exec(tx, done, i, i)
			exec(tx, person, i%chats, talk)
			exec(tx, entry, i%chats, i, fact)
			exec(tx, due, i%chats, i)
			exec(tx, letter, i, body)
		})
		in(func(tx *sql.Tx, i int64) { exec(tx, gone, i) })
		id += batch
		n += int(batch)
	}
	b.ReportMetric(float64(n)/b.Elapsed().Seconds(), "messages/s")
}
