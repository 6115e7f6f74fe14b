package bot

import (
	"database/sql"
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"warmstick/dialog"
	"warmstick/store"
)

// batch is how many farmers live the life of the benchmark side by side, and so
// how many messages share a commit.
const batch = 100

// BenchmarkDurable compares the real path of messages (inbox, conversation,
// diary, due rows, outbox, letters gone) with as many rows in the same tables
// written by bare SQL, both at synchronous=FULL and in batches of the same size.
// The target is at least half of the bare SQL's speed. The messages are those of a
// heap's whole life, from hello to harvest, told by one village after the other;
// what the clock says between them is not timed.
func BenchmarkDurable(b *testing.B) {
	c := newCrowd(b, store.Options{})
	c.live()                   // reads the embedded tables, as the server does before its first poll
	var lines, letters float64 // a message
	b.Run("real", func(b *testing.B) {
		*c = crowd{t: b, db: c.db, desk: c.desk, acts: c.acts, now: c.now, first: c.first, update: c.update}
		for b.Loop() {
			c.live()
		}
		lines, letters = c.lines(), float64(c.letters)/float64(c.messages)
		b.ReportMetric(float64(c.messages)/c.took.Seconds(), "messages/s")
		b.ReportMetric(float64(c.thought.Load())/1e3/float64(c.messages), "µs-conversation/message")
		b.ReportMetric(lines, "lines/message")
		b.ReportMetric(letters, "letters/message")
	})
	b.Run("bare", func(b *testing.B) { bareSQL(b, int(lines*batch), int(letters*batch)) })
}

// crowd is a village after the other living the same life.
type crowd struct {
	t        testing.TB
	db       *store.DB
	desk     *desk
	acts     []act
	now      time.Time
	first    int // of the chats of the present village
	update   int
	thought  atomic.Int64 // nanoseconds in the conversation, on any core
	took     time.Duration
	messages int
	letters  int
}

func newCrowd(t testing.TB, o store.Options) *crowd {
	c := &crowd{t: t, now: time.Date(2026, 3, 2, 4, 0, 0, 0, time.UTC)}
	script, err := os.ReadFile("../testdata/rehearsals/en/hot_heap.txt")
	require.NoError(t, err)
	for line := range strings.Lines(string(script)) {
		a, err := readAct(line)
		require.NoError(t, err)
		if a.verb == "say" || a.verb == "wait" {
			c.acts = append(c.acts, a)
		}
	}
	o.Step = func(s dialog.State, in dialog.Input, now time.Time) dialog.Answer {
		if _, ok := in.(dialog.Message); !ok {
			return dialog.Step(s, in, now)
		}
		began := time.Now()
		a := dialog.Step(s, in, now)
		c.thought.Add(int64(time.Since(began)))
		return a
	}
	c.db, err = store.Open(t.Context(), filepath.Join(t.TempDir(), "w.db"), o)
	require.NoError(t, err)
	t.Cleanup(func() { c.db.Close() })
	c.desk = newDesk(&Bot{Store: c.db, Now: func() time.Time { return c.now }})
	return c
}

// live lets one more village live from hello to harvest.
func (c *crowd) live() {
	c.first += batch
	for _, a := range c.acts {
		if a.verb == "wait" {
			c.wait(a.by)
			continue
		}
		began := time.Now()
		c.say(a.text)
		c.took += time.Since(began)
	}
}

// say lets everybody say the same, from update to letters gone.
func (c *crowd) say(text string) {
	raws := make([]store.Raw, batch)
	for i := range raws {
		c.update++
		chat := c.first + i
		raw, err := envelope(fmt.Appendf(nil, `{"update_id":%d,"message":{"message_id":%d,"from":{"id":%d,"is_bot":false},"chat":{"id":%d,"type":"private"},"date":%d,"text":%q}}`,
			c.update, c.update, chat, chat, c.now.Unix(), text))
		require.NoError(c.t, err)
		raws[i] = raw
	}
	require.NoError(c.t, c.db.Receive(c.t.Context(), c.now, raws, int64(c.update)+1))
	rows, err := c.db.Waiting(c.t.Context(), batch)
	require.NoError(c.t, err)
	require.NoError(c.t, c.desk.answer(c.t.Context(), rows))
	c.letters += c.post()
	c.messages += batch
}

// post takes all letters away, as if they had gone.
func (c *crowd) post() (n int) {
	for {
		list, err := c.db.Letters(c.t.Context(), c.now, batch, func(int64, int) bool { return true })
		require.NoError(c.t, err)
		if len(list) == 0 {
			return n
		}
		fates := make([]store.Fate, len(list))
		for i, l := range list {
			fates[i] = store.Fate{Letter: l.ID, Person: l.Letter.To}
		}
		_, err = c.db.Settle(c.t.Context(), fates)
		require.NoError(c.t, err)
		n += len(list)
	}
}

// lines is how many lines of diary came of a message, on the average.
func (c *crowd) lines() float64 {
	id, err := c.db.PersonOf(c.t.Context(), int64(c.first))
	require.NoError(c.t, err)
	diary, err := c.db.DiaryOf(c.t.Context(), id)
	require.NoError(c.t, err)
	told, said := 0, 0
	for _, e := range diary {
		if e.By != 0 {
			told++
		}
	}
	for _, a := range c.acts {
		if a.verb == "say" {
			said++
		}
	}
	return float64(told) / float64(said)
}

// wait lets time pass, and the clock speak.
func (c *crowd) wait(by time.Duration) {
	for end := c.now.Add(by); ; {
		next, err := c.db.NextMoment(c.t.Context(), c.now)
		require.NoError(c.t, err)
		if next.IsZero() || next.After(end) {
			c.now = end
			return
		}
		if next.After(c.now) {
			c.now = next
		}
		people, err := c.db.NextDue(c.t.Context(), c.now, batch)
		require.NoError(c.t, err)
		calls := make([]store.Call, len(people))
		for i, p := range people {
			calls[i] = store.Call{Person: p, In: dialog.Reminder{}}
		}
		_, err = c.db.Converse(c.t.Context(), c.now, calls...)
		require.NoError(c.t, err)
		c.post()
	}
}

// A season after the other leaves nothing behind in memory: what is held after
// two hundred farmers' hundred days is held after one hundred's.
func TestMemoryStaysFlatOverSeasons(t *testing.T) {
	c := newCrowd(t, store.Options{Pages: 16, Loose: true})
	held := func() uint64 {
		c.live()
		runtime.GC() // twice: what the pools gave up goes in the second
		runtime.GC()
		var m runtime.MemStats
		runtime.ReadMemStats(&m)
		return m.HeapAlloc
	}
	first := held()
	require.InDelta(t, first, held(), 300<<10, "bytes, where one farmer more would be some thousand")
}

// bareSQL writes the rows of as many messages: for each an update, its mark, the
// person and a due row; for a batch so many lines of diary and letters; and takes
// the letters away again.
func bareSQL(b *testing.B, lines, letters int) {
	const people = 1000
	path := filepath.Join(b.TempDir(), "bare.db")
	made, err := store.Open(b.Context(), path, store.Options{})
	require.NoError(b, err)
	require.NoError(b, made.Close())
	pool, err := sql.Open("sqlite", "file:"+path+"?_pragma=journal_mode(WAL)&_pragma=synchronous(FULL)&_pragma=secure_delete(1)&_txlock=immediate")
	require.NoError(b, err)
	b.Cleanup(func() { pool.Close() })
	pool.SetMaxOpenConns(1)
	prepare := func(q string) *sql.Stmt {
		s, err := pool.Prepare(q)
		require.NoError(b, err)
		return s
	}
	inbox, done := prepare(`INSERT INTO inbox (id, chat, got, raw) VALUES (?, ?, ?, ?)`), prepare(`UPDATE inbox SET done = ? WHERE seq = ?`)
	person := prepare(`INSERT INTO person VALUES (?1, ?1, ?2, ?3) ON CONFLICT (id) DO UPDATE SET talk = ?2, fold = ?3`)
	entry := prepare(`INSERT INTO entry VALUES (?1, ?2, 1, ?3, 20000, ?3, ?1, 1, 'StickRead', ?4)`)
	due := prepare(`INSERT INTO due VALUES (?1, 1, 'stick', 20000, ?2, ?2) ON CONFLICT DO UPDATE SET at = ?2, look = ?2`)
	letter := prepare(`INSERT INTO letter VALUES (?1, ?2, ?2, 0, 0, 0, ?3, 1, 0, '', NULL, ?4)`)
	gone := prepare(`DELETE FROM letter WHERE id = ?`)
	raw, talk, fold, fact, words := make([]byte, 150), make([]byte, 825), make([]byte, 780), `{"Warmth":"hot"}`, string(make([]byte, 275)) // as the real ones, on the average
	in := func(do func(exec func(s *sql.Stmt, args ...any))) {
		tx, err := pool.Begin()
		require.NoError(b, err)
		do(func(s *sql.Stmt, args ...any) {
			if _, err := tx.Stmt(s).Exec(args...); err != nil {
				b.Fatal(err)
			}
		})
		require.NoError(b, tx.Commit())
	}
	now, message, line, post := int64(1.78e12), 0, 0, 0
	began := time.Now()
	for b.Loop() {
		first, oldest := message+1, post+1
		message += batch
		in(func(exec func(*sql.Stmt, ...any)) {
			for i := first; i <= message; i++ {
				exec(inbox, i, i%people, now, raw)
			}
		})
		in(func(exec func(*sql.Stmt, ...any)) {
			for i := first; i <= message; i++ {
				exec(done, now, i)
				exec(person, i%people+1, talk, fold)
				exec(due, i%people+1, now+int64(i))
			}
			for range lines {
				line++
				exec(entry, line%people+1, line, now, fact)
			}
			for range letters {
				post++
				exec(letter, post, post%people+1, now, words)
			}
		})
		in(func(exec func(*sql.Stmt, ...any)) {
			for i := oldest; i <= post; i++ {
				exec(gone, i)
			}
		})
	}
	b.ReportMetric(float64(message)/time.Since(began).Seconds(), "messages/s")
}
