package store

import (
	"context"
	"database/sql/driver"
	"errors"
	"fmt"
	"io"
)

// query names one statement of the writer. All are prepared once, on its one
// connection; the plans of those on the hot path are asserted in a test.
type query int

const (
	begin query = iota
	commit
	rollback

	counterGet
	counterSet
	settingGet
	settingSet

	inboxAdd
	inboxStale
	inboxDone
	inboxWipe
	inboxSpoil
	inboxList

	personByChat
	personByID
	personAdd
	personSet
	personFold

	entryAdd
	entryList

	dueList
	dueAdd
	dueCut
	dueCutAll
	dueMove
	duePush
	dueNext
	dueMin

	cardSet
	cardCut
	memberSet
	memberCut
	crewSet
	crewCut
	crewGet
	crewStaff
	crewCards
	inviteSet
	inviteCut
	inviteGet

	letterAdd
	letterCut
	letterRefuse
	letterDrop
	letterStale
	letterLeft
	letterBatch
	letterHalt
	letterOne
	letterAfter
	letterQueue

	holdSet
	holdCut
	holdList

	leavingAdd
	leavingList

	queries
)

var sqlOf = [queries]string{
	begin:    `BEGIN IMMEDIATE`,
	commit:   `COMMIT`,
	rollback: `ROLLBACK`,

	counterGet: `SELECT person, entry, letter FROM counter`,
	counterSet: `UPDATE counter SET person = ?, entry = ?, letter = ?`,
	settingGet: `SELECT value FROM setting WHERE name = ?`,
	settingSet: `INSERT INTO setting VALUES (?, ?) ON CONFLICT (name) DO UPDATE SET value = excluded.value`,

	inboxAdd:   `INSERT INTO inbox (id, chat, got, raw) VALUES (?, ?, ?, ?) ON CONFLICT (id) DO NOTHING`,
	inboxStale: `DELETE FROM inbox WHERE id = ? AND got < ?`,
	inboxDone:  `UPDATE inbox SET done = ? WHERE seq = ? AND done IS NULL`,
	inboxWipe:  `UPDATE inbox SET raw = x'' WHERE seq = ?`,
	inboxSpoil: `UPDATE inbox SET done = ?, spoiled = ? WHERE seq = ?`,
	inboxList:  `SELECT seq, chat, got, raw FROM inbox WHERE done IS NULL ORDER BY seq LIMIT ?`,

	personByChat: `SELECT id, chat, talk, last, upto, fold FROM person WHERE chat = ?`,
	personByID:   `SELECT id, coalesce(chat, 0), talk, last, upto, fold FROM person WHERE id = ?`,
	personAdd:    `INSERT INTO person (id, chat, talk, last, upto) VALUES (?, nullif(?, 0), '{}', 0, 0)`,
	personSet:    `UPDATE person SET talk = ?, last = ? WHERE id = ?`,
	personFold:   `UPDATE person SET talk = ?1, last = ?2, upto = ?2, fold = ?3 WHERE id = ?4`,

	entryAdd:  `INSERT INTO entry (person, id, heap, at, day, noted, by, told, kind, body) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
	entryList: `SELECT id, heap, at, day, noted, by, told, kind, body FROM entry WHERE person = ? AND id > ? ORDER BY id`,

	dueList:   `SELECT heap, task, day, at FROM due WHERE person = ? ORDER BY heap, task, day`,
	dueAdd:    `INSERT INTO due (person, heap, task, day, at, look) VALUES (?, ?, ?, ?, ?, ?) ON CONFLICT DO NOTHING`,
	dueCut:    `DELETE FROM due WHERE person = ? AND heap = ? AND task = ? AND day = ?`,
	dueCutAll: `DELETE FROM due WHERE person = ?`,
	dueMove:   `UPDATE due SET day = ?1, at = ?2, look = ?2 WHERE person = ?3 AND heap = ?4 AND task = ?5 AND day = ?6`,
	duePush:   `UPDATE due SET look = ? WHERE person = ? AND look <= ?`,
	dueNext:   `SELECT person FROM due WHERE look <= ? ORDER BY look, person LIMIT ?`,
	dueMin:    `SELECT coalesce(min(look), 0) FROM due`,

	cardSet:   `INSERT INTO card VALUES (?, ?) ON CONFLICT (person) DO UPDATE SET body = excluded.body`,
	cardCut:   `DELETE FROM card WHERE person = ?`,
	memberSet: `INSERT INTO membership VALUES (?, ?, ?) ON CONFLICT (crew, person) DO UPDATE SET role = excluded.role`,
	memberCut: `DELETE FROM membership WHERE crew = ? AND person = ?`,
	crewSet:   `INSERT INTO crew VALUES (?, ?, ?) ON CONFLICT (id) DO UPDATE SET name = excluded.name`,
	crewCut:   `DELETE FROM crew WHERE id = ?`,
	crewGet:   `SELECT name FROM crew WHERE id = ?`,
	crewStaff: `SELECT person, role FROM membership WHERE crew = ? AND role <> 'farmer' ORDER BY person`,
	crewCards: `SELECT c.body FROM membership m JOIN card c ON c.person = m.person WHERE m.crew = ? AND m.role <> 'officer' ORDER BY m.person`,
	inviteSet: `INSERT INTO invite VALUES (?, ?, ?, ?, ?, ?) ON CONFLICT (code) DO UPDATE SET ended = excluded.ended`,
	inviteCut: `DELETE FROM invite WHERE code = ?`,
	inviteGet: `SELECT crew, role, by, expires, ended FROM invite WHERE code = ?`,

	letterAdd:    `INSERT INTO letter (id, person, chat, class, after, until, made, heap, batch, body) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
	letterCut:    `DELETE FROM letter WHERE id = ?`,
	letterRefuse: `UPDATE letter SET refused = ?, body = '' WHERE id = ? AND refused IS NULL`,
	letterDrop:   `UPDATE letter SET refused = ?, body = '' WHERE person = ? AND class > 0 AND refused IS NULL`,
	letterStale:  `UPDATE letter SET refused = ?, body = '' WHERE person = ? AND class = 1 AND heap = ? AND refused IS NULL`,
	letterLeft:   `SELECT count(*) FROM letter WHERE person = ? AND refused IS NULL`,
	letterBatch:  `SELECT count(*) FILTER (WHERE refused IS NULL), count(*) FILTER (WHERE refused IS NOT NULL) FROM letter WHERE batch = ? AND batch <> ''`,
	letterHalt:   `DELETE FROM letter WHERE batch = ? AND batch <> '' AND refused IS NULL`,
	letterOne:    `SELECT person, chat, class, until, body FROM letter WHERE id = ? AND refused IS NULL`,
	letterAfter:  `SELECT coalesce(min(after), 0) FROM letter WHERE class = ? AND after > ? AND refused IS NULL`,
	letterQueue:  `SELECT id, chat FROM letter WHERE class = ? AND after <= ? AND refused IS NULL ORDER BY after, id`,

	holdSet:  `INSERT INTO hold VALUES (?, ?, ?) ON CONFLICT (chat) DO UPDATE SET until = excluded.until, tries = excluded.tries`,
	holdCut:  `DELETE FROM hold WHERE chat = ?`,
	holdList: `SELECT chat, until, tries FROM hold`,

	leavingAdd:  `INSERT INTO leaving VALUES (?) ON CONFLICT DO NOTHING`,
	leavingList: `SELECT person FROM leaving`,
}

// statements are prepared on one connection and used by one goroutine at a time.
// They speak to the driver without database/sql between: a message takes a dozen
// of them, and pooling, locking and converting took a third of their time.
type statements struct {
	conn driver.Conn
	list [queries]driver.Stmt
	args []driver.NamedValue
}

// prepare opens a connection and prepares them all.
func prepare(d driver.Driver, dsn string) (*statements, error) {
	conn, err := d.Open(dsn)
	if err != nil {
		return nil, err
	}
	s := &statements{conn: conn, args: make([]driver.NamedValue, 16)}
	for i := range s.args {
		s.args[i].Ordinal = i + 1
	}
	for q, text := range sqlOf {
		if s.list[q], err = conn.Prepare(text); err != nil {
			s.close()
			return nil, fmt.Errorf("prepare %q: %w", text, err)
		}
	}
	return s, nil
}

func (s *statements) close() error {
	if s == nil || s.conn == nil {
		return nil
	}
	var errs []error
	for _, stmt := range s.list {
		if stmt != nil {
			errs = append(errs, stmt.Close())
		}
	}
	err := errors.Join(append(errs, s.conn.Close())...)
	s.conn = nil
	return err
}

// errClosed is what every use gives after close.
var errClosed = errors.New("the file was closed")

// values puts arguments into the form that drivers take: int64, string, []byte.
func (s *statements) values(args []any) []driver.NamedValue {
	for i, a := range args {
		if n, ok := a.(int); ok {
			a = int64(n)
		}
		s.args[i].Value = a
	}
	return s.args[:len(args)]
}

// The writer's statements run without a deadline: a write that has begun is
// finished, and a context that can end would cost a goroutine for each.

func (s *statements) exec(q query, args ...any) (changed int64, err error) {
	if s.conn == nil {
		return 0, errClosed
	}
	return execute(s.list[q], s.values(args))
}

func execute(stmt driver.Stmt, args []driver.NamedValue) (changed int64, err error) {
	r, err := stmt.(driver.StmtExecContext).ExecContext(context.Background(), args)
	if err != nil {
		return 0, err
	}
	return r.RowsAffected()
}

// once runs a statement that is not worth keeping.
func (s *statements) once(text string, args ...any) (changed int64, err error) {
	if s.conn == nil {
		return 0, errClosed
	}
	stmt, err := s.conn.Prepare(text)
	if err != nil {
		return 0, err
	}
	defer stmt.Close()
	return execute(stmt, s.values(args))
}

// row is one row of an answer.
type row []driver.Value

func (r row) int(i int) int64 {
	n, _ := r[i].(int64) // null is 0
	return n
}

func (r row) text(i int) string {
	switch v := r[i].(type) {
	case string:
		return v
	case []byte:
		return string(v)
	}
	return ""
}

func (r row) bytes(i int) []byte {
	switch v := r[i].(type) {
	case []byte:
		return v
	case string:
		return []byte(v)
	}
	return nil
}

// rows calls each for every row of the answer; errEnough ends the walk early.
func (s *statements) rows(q query, each func(row) error, args ...any) error {
	if s.conn == nil {
		return errClosed
	}
	return walk(s.list[q], each, s.values(args))
}

// rowsOnce is rows for a statement that is not worth keeping.
func (s *statements) rowsOnce(text string, each func(row) error, args ...any) error {
	if s.conn == nil {
		return errClosed
	}
	stmt, err := s.conn.Prepare(text)
	if err != nil {
		return err
	}
	defer stmt.Close()
	return walk(stmt, each, s.values(args))
}

func walk(stmt driver.Stmt, each func(row) error, args []driver.NamedValue) (err error) {
	rows, err := stmt.(driver.StmtQueryContext).QueryContext(context.Background(), args)
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, rows.Close()) }()
	r := make(row, len(rows.Columns()))
	for {
		switch err := rows.Next(r); {
		case errors.Is(err, io.EOF):
			return nil
		case err != nil:
			return err
		}
		if err := each(r); err != nil {
			if errors.Is(err, errEnough) {
				return nil
			}
			return err
		}
	}
}

// first gives the first row of an answer; nil when there is none.
func (s *statements) first(q query, args ...any) (first row, err error) {
	err = s.rows(q, func(r row) error {
		first = r
		return errEnough
	}, args...)
	return first, err
}

// number gives the number that an answer begins with; 0 when there is none.
func (s *statements) number(q query, args ...any) (int64, error) {
	r, err := s.first(q, args...)
	if r == nil {
		return 0, err
	}
	return r.int(0), err
}

// errEnough ends a walk over rows early.
var errEnough = errors.New("enough")
