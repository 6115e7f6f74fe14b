package store

import (
	"context"
	"fmt"

	"warmstick/dialog"
)

// CatchUp makes everything that follows from the diaries anew when another edition
// of the program made it; say is told how many people that is, before it begins.
func (db *DB) CatchUp(ctx context.Context, say func(people int)) error {
	edition := fmt.Sprintf("%08x", dialog.Edition())
	was, err := db.Setting(ctx, "edition")
	if err != nil || was == edition {
		return err
	}
	db.mu.Lock()
	people, err := db.people()
	db.mu.Unlock()
	if err != nil {
		return fmt.Errorf("catch up: %w", plain(err))
	}
	if len(people) > 0 {
		say(len(people))
		if err := db.Rebuild(ctx); err != nil {
			return err
		}
	}
	return db.Set(ctx, "edition", edition)
}
