package store

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"warmstick/dialog"
)

// keepRaw is how long raw updates stay after they were handled, and refused
// letters after they were made.
const keepRaw = 7 * 24 * time.Hour

// Purge takes away what has been kept long enough, a thousand rows a commit so
// that no message waits long behind it, and says how many rows that were.
func (db *DB) Purge(ctx context.Context, now time.Time) (rows int64, err error) {
	before := ms(now.Add(-keepRaw))
	for _, q := range []string{
		`DELETE FROM inbox WHERE seq IN (SELECT seq FROM inbox WHERE seq < (SELECT coalesce(min(seq), 1 << 62) FROM inbox WHERE got >= ?1) AND done IS NOT NULL LIMIT 1000)`,
		`DELETE FROM letter WHERE id IN (SELECT id FROM letter WHERE refused IS NOT NULL AND made < ?1 LIMIT 1000)`,
		`DELETE FROM hold WHERE until < ?1`,
	} {
		for {
			var n int64
			err := db.write(ctx, "purge", func() (err error) {
				n, err = db.stmts.once(q, before)
				return err
			})
			if err != nil {
				return rows, fmt.Errorf("purge: %w", plain(err))
			}
			rows += n
			if n < 1000 {
				break
			}
		}
	}
	return rows, nil
}

// Leaving lists people who asked to be deleted and have no letter waiting: a
// deletion that was cut short.
func (db *DB) Leaving(ctx context.Context) ([]dialog.PersonID, error) {
	db.mu.Lock()
	defer db.mu.Unlock()
	var people []dialog.PersonID
	err := db.stmts.rowsOnce(`SELECT person FROM leaving WHERE NOT EXISTS
		(SELECT 1 FROM letter WHERE letter.person = leaving.person AND refused IS NULL) ORDER BY person`, func(r row) error {
		people = append(people, dialog.PersonID(r.int(0)))
		return nil
	})
	if err != nil {
		return nil, fmt.Errorf("list who leaves: %w", err)
	}
	return people, nil
}

// A night's backup is FOLDER/warmstick-2026-03-02.db.
const (
	backupName = "warmstick-"
	backupDay  = "2006-01-02"
)

// Nightly writes the night's backup into a folder and takes the oldest away, so
// that keep are left.
func Nightly(ctx context.Context, now time.Time, path, folder string, keep int) error {
	if err := os.MkdirAll(folder, 0o700); err != nil {
		return fmt.Errorf("nightly backup: %w", err)
	}
	if err := Backup(ctx, path, filepath.Join(folder, backupName+now.Format(backupDay)+".db")); err != nil {
		return err
	}
	old, err := backups(folder)
	if err != nil {
		return err
	}
	for _, name := range old[:max(0, len(old)-keep)] {
		if err := os.Remove(name); err != nil {
			return fmt.Errorf("nightly backup: %w", err)
		}
	}
	return nil
}

// backups lists a folder's backups, oldest first. Other files are not touched.
func backups(folder string) ([]string, error) {
	entries, err := os.ReadDir(folder)
	if err != nil {
		return nil, fmt.Errorf("list backups: %w", err)
	}
	var names []string
	for _, e := range entries {
		day, ok := strings.CutPrefix(strings.TrimSuffix(e.Name(), ".db"), backupName)
		if _, err := time.Parse(backupDay, day); ok && err == nil {
			names = append(names, filepath.Join(folder, e.Name()))
		}
	}
	slices.Sort(names)
	return names, nil
}

// ScrubBackups deletes people from the backups of a folder.
func ScrubBackups(ctx context.Context, now time.Time, folder string, people []dialog.PersonID) error {
	if _, err := os.Stat(folder); err != nil {
		return nil // no backup yet
	}
	names, err := backups(folder)
	if err != nil {
		return err
	}
	for _, name := range names {
		if err := Scrub(ctx, now, name, people); err != nil {
			return fmt.Errorf("delete from backup %s: %w", filepath.Base(name), err)
		}
	}
	return nil
}
