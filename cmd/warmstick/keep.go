package main

import (
	"context"
	"errors"
	"fmt"
	"time"

	"warmstick/bot"
	"warmstick/store"
)

func runBackup(m Main, c *call) error {
	file := c.String("db", "", "the database file; it may be in use")
	out := c.String("out", "", "where the copy goes")
	if _, err := c.parse(0); err != nil {
		return err
	}
	if *file == "" || *out == "" {
		return usage{errors.New("--db FILE and --out FILE are needed")}
	}
	if err := store.Backup(c.ctx, *file, *out); err != nil {
		return err
	}
	fmt.Fprintf(c.out, "%s is a whole and checked copy\n", *out)
	return nil
}

func runRestore(m Main, c *call) error {
	file := c.String("db", "", "the database file to replace; nobody may be at work on it")
	from := c.String("from", "", "the backup to put in its place")
	if _, err := c.parse(0); err != nil {
		return err
	}
	if *file == "" || *from == "" {
		return usage{errors.New("--db FILE and --from BACKUP are needed")}
	}
	if err := store.Restore(c.ctx, time.Now(), *from, *file); err != nil {
		return err
	}
	fmt.Fprintf(c.out, "%s was checked and now stands as %s; what was there is kept as %s.before-restore\n", *from, *file, *file)
	return nil
}

func runDoctor(m Main, c *call) error {
	file := c.String("db", "", "the database file; it may be in use")
	rebuild := c.Bool("rebuild", false, "also make the plan and the other derived rows anew; stop serve first")
	offline := c.Bool("offline", false, "do not ask the platform about the token and the hour")
	chats := c.Bool("chats", false, "only list the ids of the chats that wrote last, for WARMSTICK_OFFICERS")
	if _, err := c.parse(0); err != nil {
		return err
	}
	if *file == "" {
		return usage{errors.New("--db FILE is needed")}
	}
	if *chats {
		return callers(c, *file)
	}
	if *rebuild {
		if err := rebuilt(c.ctx, *file); err != nil {
			return err
		}
		fmt.Fprintln(c.out, "everything that follows from the diaries was made anew")
	}
	now := time.Now()
	list := store.Examine(c.ctx, now, *file)
	list = append(list, zones(), clock(c.ctx, now, *file))
	if !*offline {
		list = append(list, token(c.ctx, m, now)...)
	}
	ill := 0
	for _, f := range list {
		mark := "well"
		if !f.Well() {
			mark = "ill "
			ill++
		}
		fmt.Fprintf(c.out, "%s  %-18s %s\n", mark, f.What, f.Found)
		if !f.Well() {
			fmt.Fprintf(c.out, "      to do: %s\n", f.Do)
		}
	}
	if ill > 0 {
		return errQuiet
	}
	return nil
}

// callers prints chat ids for the operator's eyes; no log ever holds one.
func callers(c *call, file string) error {
	list, err := store.NewestCallers(c.ctx, file, 10)
	if err != nil {
		return err
	}
	if len(list) == 0 {
		return errors.New("nobody has written in the last week; let the officer write hello to the bot while serve runs")
	}
	for _, who := range list {
		fmt.Fprintf(c.out, "%d  last wrote %s ago\n", who.Chat, time.Since(who.Last).Round(time.Second))
	}
	return nil
}

func rebuilt(ctx context.Context, file string) error {
	unlock, err := store.Lock(ctx, file)
	if err != nil {
		return err
	}
	defer unlock()
	db, err := store.Open(ctx, file, store.Options{})
	if err != nil {
		return err
	}
	defer db.Close()
	return db.Rebuild(ctx)
}

// zones looks for a few zones from all over the table.
func zones() store.Finding {
	for _, name := range []string{"Africa/Nairobi", "Asia/Kolkata", "America/Bogota", "Pacific/Chatham"} {
		if _, err := time.LoadLocation(name); err != nil {
			return store.Finding{What: "time zones", Found: name + " is unknown", Do: "build the program anew; the zones are part of it"}
		}
	}
	return store.Finding{What: "time zones", Found: "there"}
}

// clock finds a clock that stands before something that was already written.
func clock(ctx context.Context, now time.Time, file string) store.Finding {
	last, err := store.LastNoted(ctx, file)
	switch {
	case err != nil:
		return store.Finding{What: "clock", Found: "nothing to compare it with"}
	case last.After(now.Add(time.Minute)):
		return store.Finding{What: "clock", Found: fmt.Sprintf("it stands %s before the newest diary line", last.Sub(now).Round(time.Second)), Do: "set the machine's clock"}
	}
	return store.Finding{What: "clock", Found: now.UTC().Format("2006-01-02 15:04:05 MST")}
}

// token asks the platform whose token it is, and compares clocks.
func token(ctx context.Context, m Main, now time.Time) []store.Finding {
	line, err := bot.NewLine(m.Env("TELEGRAM_BOT_TOKEN"), m.Env("TELEGRAM_API_URL"))
	if err != nil {
		return []store.Finding{{What: "token", Found: err.Error(), Do: "set TELEGRAM_BOT_TOKEN, or ask with --offline"}}
	}
	ctx, cancel := context.WithTimeout(ctx, 10*time.Second)
	defer cancel()
	far, err := line.Known(ctx)
	if err != nil {
		return []store.Finding{{What: "token", Found: err.Error(), Do: "check TELEGRAM_BOT_TOKEN, TELEGRAM_API_URL and the network"}}
	}
	list := []store.Finding{{What: "token", Found: "the platform knows it"}}
	if off := time.Until(far); !far.IsZero() && off.Abs() > time.Minute {
		list = append(list, store.Finding{What: "clock", Found: fmt.Sprintf("it is off by %s from the platform's", off.Round(time.Second)), Do: "set the machine's clock"})
	}
	return list
}
