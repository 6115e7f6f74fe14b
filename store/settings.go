package store

import (
	"context"
	"database/sql"
	"fmt"
	"net/url"
)

// settings are SQLite's pragmas: set on a connection, and read back, since a misspelt one is ignored
// without a word. The defaults will not do: no write-ahead log, no waiting for a
// lock, foreign keys unchecked, deleted words left in the file.
type settings [][2]string

// safe are those of a file that counts. WAL with synchronous NORMAL (1) can
// lose the last commits when the power goes; FULL is 2.
func safe() settings {
	return settings{{"busy_timeout", "5000"}, {"journal_mode", "wal"}, {"synchronous", "2"}, {"foreign_keys", "1"}, {"secure_delete", "1"}}
}

// swift are those of a file that is thrown away: nothing is synced, no lock is
// given back, and a season of a district fits into the cache (64 MB).
func swift() settings {
	return settings{{"busy_timeout", "5000"}, {"locking_mode", "exclusive"}, {"journal_mode", "memory"}, {"synchronous", "0"},
		{"foreign_keys", "1"}, {"secure_delete", "0"}, {"cache_size", "-65536"}}
}

// dsn puts the pragmas where they reach every connection of a pool.
func (set settings) dsn(path string) string {
	dsn := address(path) + "?_txlock=immediate"
	for _, p := range set {
		dsn += "&_pragma=" + p[0] + "(" + p[1] + ")"
	}
	return dsn
}

func (set settings) check(ctx context.Context, pool *sql.DB) error {
	for _, p := range set {
		var got string
		if err := pool.QueryRowContext(ctx, "PRAGMA "+p[0]).Scan(&got); err != nil {
			return err
		}
		if got != p[1] {
			return fmt.Errorf("pragma %s is %s, not %s", p[0], got, p[1])
		}
	}
	return nil
}

// address names a file to the driver, whatever letters its name has.
func address(path string) string {
	return (&url.URL{Scheme: "file", Opaque: (&url.URL{Path: path}).EscapedPath()}).String()
}
