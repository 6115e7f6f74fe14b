package main

import (
	"context"
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"time"

	"warmstick/bot"
	"warmstick/scheduler"
	"warmstick/store"
)

func runRehearse(m Main, c *call) error {
	asJSON := c.Bool("json", false, "print one JSON object a line, for another program to drive the play")
	notes := c.Bool("notes", false, "also print what was written in the diaries and what is now planned")
	args, err := c.parse(1)
	if err != nil {
		return err
	}
	in := c.in
	if len(args) == 1 && args[0] != "-" {
		f, err := os.Open(args[0])
		if err != nil {
			return err
		}
		defer f.Close()
		in = f
	}
	db, clean, err := scratch(c.ctx)
	if err != nil {
		return err
	}
	defer clean()
	return rehearsed(bot.Rehearsal{DB: db, Tick: tickOf(db), Out: c.out, Err: c.err, JSON: *asJSON, Show: *notes}.Play(c.ctx, in))
}

func rehearsed(err error) error {
	if errors.Is(err, bot.ErrUnmet) {
		return errQuiet
	}
	return err
}

// tickOf binds the scheduler's tick to a file.
func tickOf(db *store.DB) bot.Tick {
	return func(ctx context.Context, now time.Time) (int, error) { return scheduler.Tick(ctx, db, now) }
}

// scratch opens a database that is thrown away, with a chance that repeats: the
// same script prints the same bytes.
func scratch(ctx context.Context) (*store.DB, func(), error) {
	dir, err := os.MkdirTemp("", "warmstick-")
	if err != nil {
		return nil, nil, fmt.Errorf("make a folder for the rehearsal: %w", err)
	}
	db, err := store.Open(ctx, filepath.Join(dir, "rehearsal.db"), rehearsal())
	if err != nil {
		os.RemoveAll(dir)
		return nil, nil, err
	}
	return db, func() { db.Close(); os.RemoveAll(dir) }, nil
}

// rehearsal is how a rehearsal's file is opened: a district fits at hand.
func rehearsal() store.Options {
	return store.Options{Loose: true, Chance: repeating(), Pages: 4096}
}

// repeating is a chance that gives the same letters in the same order each time.
func repeating() func(n int) string {
	const letters = "abcdefghjkmnpqrstuvwxyz23456789"
	source := rand.New(rand.NewPCG(1, 2))
	return func(n int) string {
		code := make([]byte, n)
		for i := range code {
			code[i] = letters[source.IntN(len(letters))]
		}
		return string(code)
	}
}
