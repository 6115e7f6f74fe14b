package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"time"

	"warmstick/dialog"
)

// readOnly opens one connection that changes nothing.
func readOnly(ctx context.Context, path string) (*sql.Conn, func(), error) {
	return reader(ctx, path, "query_only(1)")
}

// reader opens one connection to a file that is already there.
func reader(ctx context.Context, path, pragma string) (*sql.Conn, func(), error) {
	if err := looksRight(path); err != nil {
		return nil, nil, fmt.Errorf("open %s: %w", path, err)
	}
	if _, err := os.Stat(path); err != nil {
		return nil, nil, err
	}
	pool, err := sql.Open("sqlite", address(path)+"?_pragma=busy_timeout(5000)&_pragma="+pragma)
	if err != nil {
		return nil, nil, err
	}
	conn, err := pool.Conn(ctx)
	if err == nil {
		var version int
		if err = conn.QueryRowContext(ctx, "PRAGMA user_version").Scan(&version); err == nil && (version < 1 || version > schema) {
			err = fmt.Errorf("the file is of version %d and this program reads 1 to %d", version, schema)
		}
	}
	if err != nil {
		pool.Close()
		return nil, nil, fmt.Errorf("open %s: %w", path, plain(err))
	}
	return conn, func() { conn.Close(); pool.Close() }, nil
}

// Backup writes a consistent copy of a file that may be in use. The copy appears
// under its name only when it is whole and was checked.
func Backup(ctx context.Context, path, out string) error {
	// query_only would forbid the vacuum, which writes only the copy.
	conn, done, err := reader(ctx, path, "query_only(0)")
	if err != nil {
		return fmt.Errorf("back up: %w", err)
	}
	defer done()
	temp, err := os.CreateTemp(filepath.Dir(out), filepath.Base(out)+".part-")
	if err != nil {
		return fmt.Errorf("back up: %w", err)
	}
	temp.Close()
	defer os.Remove(temp.Name())
	// VACUUM INTO takes an empty file or none; a plain copy would miss the log.
	if _, err := conn.ExecContext(ctx, "VACUUM INTO ?", temp.Name()); err != nil {
		return fmt.Errorf("back up %s: %w", path, plain(err))
	}
	if err := Verify(ctx, temp.Name()); err != nil {
		return fmt.Errorf("back up %s: the copy is not good: %w", path, err)
	}
	return place(temp.Name(), out)
}

// place syncs a file and gives it its name, whatever had it before.
func place(temp, name string) error {
	f, err := os.OpenFile(temp, os.O_RDWR, 0)
	if err != nil {
		return err
	}
	err = errors.Join(f.Sync(), f.Close())
	if err != nil {
		return err
	}
	if err := os.Rename(temp, name); err != nil {
		return err
	}
	dir, err := os.Open(filepath.Dir(name))
	if err != nil {
		return err
	}
	defer dir.Close()
	return dir.Sync()
}

// Verify checks a whole file: that it is one of ours, that no page is damaged,
// that no row hangs in the air, and that every diary line can be read.
func Verify(ctx context.Context, path string) error {
	conn, done, err := readOnly(ctx, path)
	if err != nil {
		return err
	}
	defer done()
	var word string
	if err := conn.QueryRowContext(ctx, "PRAGMA integrity_check(1)").Scan(&word); err != nil {
		return plain(err)
	}
	if word != "ok" {
		return fmt.Errorf("the file is damaged: %s", strings.Join(strings.Fields(word), " "))
	}
	for _, table := range []string{"counter", "inbox", "person", "entry", "letter", "tombstone"} {
		if err := conn.QueryRowContext(ctx, "SELECT count(*) FROM "+table).Scan(new(int)); err != nil {
			return fmt.Errorf("this is not a warmstick database: %w", err)
		}
	}
	return eachDiary(ctx, conn, func(dialog.PersonID, []dialog.Entry) error { return nil })
}

// Restore puts a backup in the place of a file, after checking it. People who
// were deleted since the backup stay deleted. What was there is kept beside it
// as FILE.before-restore. Nobody may be at work on the file.
func Restore(ctx context.Context, now time.Time, backup, path string) error {
	unlock, err := Lock(ctx, path)
	if err != nil {
		return err
	}
	defer unlock()
	if err := Verify(ctx, backup); err != nil {
		return fmt.Errorf("restore: nothing was changed: %s: %w", backup, err)
	}
	gone := tombstones(ctx, path)
	temp := path + ".restoring"
	os.Remove(temp)
	defer os.Remove(temp)
	if err := Backup(ctx, backup, temp); err != nil {
		return err
	}
	if err := Scrub(ctx, now, temp, gone); err != nil {
		return fmt.Errorf("restore: nothing was changed: %w", err)
	}
	if _, err := os.Stat(path); err == nil {
		if err := setAside(ctx, path); err != nil {
			return fmt.Errorf("restore: nothing was changed: %w", err)
		}
	}
	return place(temp, path)
}

// setAside keeps what was there, whole, and takes its log away: the log of one
// file would ruin another.
func setAside(ctx context.Context, path string) error {
	aside := path + ".before-restore"
	if err := Backup(ctx, path, aside); err != nil {
		// Damaged, perhaps: that is why there is a restore. Keep the bytes.
		for _, end := range []string{"", "-wal"} {
			if data, err := os.ReadFile(path + end); err == nil {
				if err := os.WriteFile(aside+end, data, 0o600); err != nil {
					return err
				}
			}
		}
	}
	for _, end := range []string{"-wal", "-shm"} {
		if err := os.Remove(path + end); err != nil && !errors.Is(err, os.ErrNotExist) {
			return err
		}
	}
	return nil
}

// tombstones reads who was deleted from a file; a file that is not there, or
// cannot be read any more, has none to tell.
func tombstones(ctx context.Context, path string) []dialog.PersonID {
	conn, done, err := readOnly(ctx, path)
	if err != nil {
		return nil
	}
	defer done()
	var gone []dialog.PersonID
	err = scanned(ctx, conn, "SELECT person FROM tombstone", 1, func(r row) error {
		gone = append(gone, dialog.PersonID(r.int(0)))
		return nil
	})
	if err != nil {
		return nil
	}
	return gone
}

// Scrub deletes people from a file that nobody works on, a backup for one.
func Scrub(ctx context.Context, now time.Time, path string, people []dialog.PersonID) error {
	db, err := Open(ctx, path, Options{})
	if err != nil {
		return err
	}
	defer db.Close()
	for _, id := range people {
		if err := db.Forget(ctx, now, id); err != nil {
			return err
		}
	}
	// One file alone: the log is folded in and taken away.
	if err := db.stmts.rowsOnce("PRAGMA journal_mode(DELETE)", func(row) error { return nil }); err != nil {
		return fmt.Errorf("scrub %s: %w", path, plain(err))
	}
	return nil
}
