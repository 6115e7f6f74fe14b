package main

import (
	"context"
	"crypto/rand"
	"errors"
	"fmt"
	"log/slog"
	"net"
	"runtime/debug"
	"strconv"
	"strings"
	"time"

	"golang.org/x/sync/errgroup"

	"warmstick/bot"
	"warmstick/dialog"
	"warmstick/scheduler"
	"warmstick/store"
)

// serving is what the flags and the environment say.
type serving struct {
	file     string
	backups  string
	keep     int
	nightly  string
	listen   string
	address  string
	token    string
	base     string
	secret   string
	rate     float64
	officers []int64
}

func runServe(m Main, c *call) error {
	var s serving
	c.StringVar(&s.file, "db", "", "the database file; it is made when it is not there")
	c.StringVar(&s.backups, "backups", "", "a folder for nightly backups; without it there are none")
	c.IntVar(&s.keep, "keep", 14, "how many nightly backups to keep")
	c.StringVar(&s.nightly, "nightly", "30 2 * * *", "when to do the housekeeping, as cron writes it")
	c.StringVar(&s.listen, "listen", "", "take updates from a webhook on this address, as 127.0.0.1:8080, behind a proxy that does TLS; without it they are asked for")
	c.StringVar(&s.address, "webhook", "", "the https address that the platform is to call; goes with --listen")
	if _, err := c.parse(0); err != nil {
		return err
	}
	if s.file == "" {
		return usage{errors.New("--db FILE is needed")}
	}
	if (s.listen == "") != (s.address == "") {
		return usage{errors.New("--listen and --webhook go together")}
	}
	if err := s.environment(m.Env); err != nil {
		return err
	}
	slog.SetDefault(slog.New(slog.NewTextHandler(c.err, nil)))
	return s.run(c.ctx)
}

func (s *serving) environment(env func(string) string) error {
	s.token, s.base, s.secret = env("TELEGRAM_BOT_TOKEN"), env("TELEGRAM_API_URL"), env("WARMSTICK_WEBHOOK_SECRET")
	s.rate = 25
	if text := env("WARMSTICK_SEND_RATE"); text != "" {
		rate, err := strconv.ParseFloat(text, 64)
		if err != nil || rate < 0 || rate > 1e6 {
			return fmt.Errorf("WARMSTICK_SEND_RATE is %q; it is letters a second, as 25, or 0 for no limit", text)
		}
		s.rate = rate
	}
	for word := range strings.FieldsFuncSeq(env("WARMSTICK_OFFICERS"), func(r rune) bool { return r == ',' || r == ' ' || r == ';' }) {
		chat, err := strconv.ParseInt(word, 10, 64)
		if err != nil || chat <= 0 {
			return errors.New("WARMSTICK_OFFICERS is not a list of chat ids, as 1001,1002")
		}
		s.officers = append(s.officers, chat)
	}
	return nil
}

// memory is what the collector is asked to stay under; the target is 60 MB for
// the whole process, of which the program itself takes about 20 and SQLite 3. Of
// the rest the word lists take 14.
const memory = 33 << 20

func (s *serving) run(ctx context.Context) error {
	debug.SetMemoryLimit(memory)
	line, err := bot.NewLine(s.token, s.base)
	if err != nil {
		return err
	}
	unlock, err := store.Lock(ctx, s.file)
	if err != nil {
		return err
	}
	defer unlock()
	db, err := store.Open(ctx, s.file, store.Options{})
	if err != nil {
		return err
	}
	defer db.Close()
	err = db.CatchUp(ctx, func(people int) {
		slog.Info("the program was updated; plans and boards are made anew before it answers", "people", people)
	})
	if err != nil {
		return err
	}
	away, err := awaySince(ctx, db, time.Now())
	if err != nil {
		return err
	}
	started := make(chan func(), 1)
	b := &bot.Bot{Store: db, Line: line, Now: time.Now, Rate: s.rate, Officers: s.officers, AwaySince: away,
		Started: func(wake func()) { started <- wake }, Left: s.left, Commands: menu(), Draw: drawing(db, startLinks(ctx, line))}
	if s.listen != "" {
		if b.Hook, err = s.hook(); err != nil {
			return err
		}
	}
	g, working := errgroup.WithContext(ctx)
	g.Go(func() error { return b.Run(working) })
	g.Go(func() error {
		// Reads the embedded tables, so that the first to write need not wait for it.
		dialog.Step(dialog.State{}, dialog.Message{Kind: dialog.Text, Text: "hello"}, time.Now())
		debug.FreeOSMemory() // reading them left as much behind as they hold
		return nil
	})
	g.Go(func() error {
		select {
		case wake := <-started:
			return scheduler.Run(working, db, time.Now, wake)
		case <-working.Done():
			return working.Err()
		}
	})
	g.Go(func() error { return scheduler.Housekeeping(working, s.jobs(db)...) })
	// Work ends by itself only with an error, or after ctx.
	if err := g.Wait(); err != nil && !errors.Is(err, context.Canceled) {
		return err
	}
	return nil
}

func (s *serving) hook() (*bot.Hook, error) {
	if s.secret == "" {
		s.secret = rand.Text()
	}
	l, err := net.Listen("tcp", s.listen)
	if err != nil {
		return nil, fmt.Errorf("wait for the platform on %s: %w", s.listen, err)
	}
	return &bot.Hook{Listen: l, Address: s.address, Secret: s.secret}, nil
}

// jobs are the night's work, and each minute's note that the program was alive.
func (s *serving) jobs(db *store.DB) []scheduler.Job {
	jobs := []scheduler.Job{
		{Name: "alive", When: "* * * * *", Do: func(ctx context.Context) error {
			return db.Set(ctx, alive, strconv.FormatInt(time.Now().Unix(), 10))
		}},
		{Name: "purge", When: s.nightly, Do: func(ctx context.Context) error {
			rows, err := db.Purge(ctx, time.Now())
			slog.Info("old updates and refused letters taken away", "rows", rows)
			return err
		}},
		{Name: "deletions", When: "*/10 * * * *", Do: func(ctx context.Context) error { return s.finishDeletions(ctx, db) }},
	}
	if s.backups != "" {
		jobs = append(jobs, scheduler.Job{Name: "backup", When: s.nightly, Do: func(ctx context.Context) error {
			return store.Nightly(ctx, time.Now(), s.file, s.backups, s.keep)
		}})
	}
	return jobs
}

// finishDeletions deletes people whose deletion was cut short.
func (s *serving) finishDeletions(ctx context.Context, db *store.DB) error {
	people, err := db.Leaving(ctx)
	if err != nil {
		return err
	}
	for _, p := range people {
		if err := db.Forget(ctx, time.Now(), p); err != nil {
			return err
		}
	}
	if len(people) > 0 {
		s.left(ctx, people)
	}
	return nil
}

// left clears the nightly backups of people who were deleted.
func (s *serving) left(ctx context.Context, people []dialog.PersonID) {
	if s.backups == "" {
		return
	}
	if err := store.ScrubBackups(ctx, time.Now(), s.backups, people); err != nil {
		slog.Error("a backup could not be cleared of people who were deleted", "cause", err.Error())
	}
}

// alive is the setting that holds when the program last ran.
const alive = "alive"

// longAway is from when on a time off is worth one answer to all that was sent.
const longAway = 15 * time.Minute

// awaySince is when the program last ran, if that is long ago; zero otherwise.
func awaySince(ctx context.Context, db *store.DB, now time.Time) (time.Time, error) {
	text, err := db.Setting(ctx, alive)
	if err != nil || text == "" {
		return time.Time{}, err
	}
	seconds, err := strconv.ParseInt(text, 10, 64)
	if err != nil {
		return time.Time{}, fmt.Errorf("setting %s: %w", alive, err)
	}
	if last := time.Unix(seconds, 0); now.Sub(last) > longAway {
		return last, nil
	}
	return time.Time{}, nil
}
