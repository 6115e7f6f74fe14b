// Package store keeps the inbox, the diaries, the due rows and the outbox in one
// SQLite file. All SQL is here. It does not know what a diary means: it hands the
// state to dialog's Step and writes down what comes back, all in one transaction.
package store

import (
	"context"
	"crypto/rand"
	"database/sql"
	"errors"
	"fmt"
	"os"
	"strings"
	"sync"
	"time"

	"warmstick/dialog"

	_ "modernc.org/sqlite" // the driver, pure Go
)

// Step is the conversation: dialog.Step, or a test's own.
type Step func(dialog.State, dialog.Input, time.Time) dialog.Answer

// Options say how a file is opened. The zero Options are those of a server.
type Options struct {
	Step   Step               // nil = dialog.Step
	Chance func(n int) string // nil = letters and digits nobody can guess
	// Loose is for rehearsals, whose file is thrown away: no commit survives a power
	// cut, and nobody else can look into the file. It halves their time.
	Loose bool
	// Pages is how many people's folded diaries are kept at hand; 0 = 256, which
	// is one megabyte. One more is read in 25 µs.
	Pages int
}

// DB is one open file. All methods may be called from several goroutines; writes
// wait for one another.
type DB struct {
	path   string
	step   Step
	chance func(n int) string
	loose  bool

	mu       sync.Mutex // guards everything below: one writer
	stmts    *statements
	count    counter
	shelf    shelf
	pouch    pouch
	paper    []thought                // for thinking ahead
	foreseen *foresight               // those who are due next; nil = nobody is
	unsaved  []*page                  // settled in the open transaction
	packing  int                      // how many of them have been given to be packed
	gone     map[dialog.PersonID]bool // people of the table leaving
	broken   func(point string) error // tests cut the power here; nil otherwise
}

// ErrHandled says that an inbox row or a due row has had its answer already.
var ErrHandled = errors.New("already handled")

// Open opens a file and makes it when it is not there. An older file is brought
// up to date. What cannot be opened is a plain error and stays as it was.
func Open(ctx context.Context, path string, o Options) (*DB, error) {
	if o.Step == nil {
		o.Step = dialog.Step
	}
	if o.Chance == nil {
		o.Chance = unguessable
	}
	if o.Pages == 0 {
		o.Pages = 256
	}
	db := &DB{path: path, step: o.Step, chance: o.Chance, loose: o.Loose, shelf: newShelf(o.Pages), gone: map[dialog.PersonID]bool{}}
	if err := db.open(ctx); err != nil {
		db.Close()
		return nil, fmt.Errorf("open %s: %w", path, plain(err))
	}
	return db, nil
}

func (db *DB) open(ctx context.Context) error {
	if err := looksRight(db.path); err != nil {
		return err
	}
	set := safe()
	if db.loose {
		set = swift()
	}
	if err := db.prepare(ctx, set); err != nil {
		return err
	}
	if err := db.count.load(db.stmts); err != nil {
		return err
	}
	return db.loadLeaving()
}

// prepare brings the file up to date and opens the one connection to it: all who
// read and write wait in line, which beats SQLITE_BUSY.
func (db *DB) prepare(ctx context.Context, set settings) error {
	pool, err := sql.Open("sqlite", set.dsn(db.path))
	if err != nil {
		return err
	}
	pool.SetMaxOpenConns(1)
	err = set.check(ctx, pool)
	if err == nil {
		err = migrate(ctx, pool)
	}
	if err = errors.Join(err, pool.Close()); err != nil {
		return err
	}
	db.stmts, err = prepare(pool.Driver(), set.dsn(db.path))
	return err
}

// Close lets the file go. Nothing is lost by not calling it.
func (db *DB) Close() error {
	db.mu.Lock()
	defer db.mu.Unlock()
	return db.stmts.close()
}

// Path is the file's own.
func (db *DB) Path() string { return db.path }

// looksRight tells a file that is no database before SQLite touches it.
func looksRight(path string) error {
	f, err := os.Open(path)
	if errors.Is(err, os.ErrNotExist) {
		return nil
	}
	if err != nil {
		return err
	}
	defer f.Close()
	head := make([]byte, 16)
	n, _ := f.Read(head)
	if n > 0 && string(head[:n]) != "SQLite format 3\x00" {
		return errors.New("this is not a warmstick database; give another name")
	}
	return nil
}

// plain puts the errors an operator will meet into words that say what to do.
func plain(err error) error {
	text := err.Error()
	for _, known := range []struct{ has, say string }{
		{"readonly", "the file cannot be written to; check its owner and rights"},
		{"unable to open", "the file cannot be opened or made; check the folder and its rights"},
		{"disk is full", "the disk is full; make room and try again"},
		{"malformed", "the file is damaged; put the newest good backup in its place with restore"},
		{"not a database", "this is not a warmstick database; give another name"},
		{"database is locked", "another program has the file; stop it first"},
	} {
		if strings.Contains(text, known.has) {
			return fmt.Errorf("%s (%w)", known.say, err)
		}
	}
	return err
}

// unguessable draws from letters and digits that are not mistaken for each other
// when read aloud.
func unguessable(n int) string {
	const letters = "abcdefghjkmnpqrstuvwxyz23456789"
	code := make([]byte, 0, n)
	var b [64]byte
	for len(code) < n {
		rand.Read(b[:])
		for _, x := range b {
			if limit := 256 - 256%len(letters); int(x) < limit && len(code) < n {
				code = append(code, letters[int(x)%len(letters)])
			}
		}
	}
	return string(code)
}

// ms is how moments are kept.
func ms(t time.Time) int64 {
	if t.IsZero() {
		return 0
	}
	return t.UnixMilli()
}

// at is ms undone, always in UTC, so that a state folded from the file equals
// the one that was folded in memory.
func at(n int64) time.Time {
	if n == 0 {
		return time.Time{}
	}
	return time.UnixMilli(n).UTC()
}
