package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"strings"
	"time"
)

// ErrTaken says that another program works on the same file.
var ErrTaken = errors.New("another warmstick is at work on this file; stop it first")

// Lock keeps a second server off a file until the returned function is called or
// the program ends in whatever way. The lock is SQLite's own, on a small file
// beside the database, so that backups and checks may still read.
func Lock(ctx context.Context, path string) (unlock func(), err error) {
	pool, err := sql.Open("sqlite", address(path+".lock")+"?_pragma=busy_timeout(1000)")
	if err != nil {
		return nil, err
	}
	pool.SetMaxOpenConns(1)
	// A program that was just killed may take a moment to let go.
	ctx, cancel := context.WithTimeout(ctx, 1500*time.Millisecond)
	defer cancel()
	conn, err := pool.Conn(ctx)
	if err == nil {
		_, err = conn.ExecContext(ctx, "BEGIN EXCLUSIVE")
	}
	if err == nil {
		return func() { conn.Close(); pool.Close() }, nil
	}
	pool.Close()
	if errors.Is(err, context.DeadlineExceeded) || strings.Contains(err.Error(), "database is locked") {
		return nil, fmt.Errorf("%s: %w", path, ErrTaken)
	}
	return nil, fmt.Errorf("lock %s: %w", path, plain(err))
}
