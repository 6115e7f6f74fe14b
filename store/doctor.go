package store

import (
	"context"
	"errors"
	"fmt"
	"os"
	"time"
)

// Finding is one thing that a check looked at. Do says what to do when it is not
// well, and is empty when it is.
type Finding struct {
	What  string
	Found string
	Do    string
}

// Well says whether there is nothing to do.
func (f Finding) Well() bool { return f.Do == "" }

// Examine checks a file that may be in use, changing nothing.
func Examine(ctx context.Context, now time.Time, path string) []Finding {
	if _, err := os.Stat(path); err != nil {
		return []Finding{{"database", "not there", "give the right --db, or let serve make it"}}
	}
	if err := Verify(ctx, path); err != nil {
		return []Finding{{"database", err.Error(), "put the newest good backup in its place with restore"}}
	}
	conn, done, err := readOnly(ctx, path)
	if err != nil {
		return []Finding{{"database", err.Error(), "see the error"}}
	}
	defer done()
	number := func(query string, args ...any) (n int64) {
		if e := conn.QueryRowContext(ctx, query, args...).Scan(&n); e != nil {
			err = errors.Join(err, e)
		}
		return n
	}
	list := []Finding{
		{What: "database", Found: fmt.Sprintf("whole; version %d; %d people, %d diary lines", schema,
			number(`SELECT count(*) FROM person`), number(`SELECT count(*) FROM entry`))},
		pragmas(ctx, path),
		writable(path),
	}
	age := func(n int64) time.Duration { return now.Sub(at(n)).Round(time.Second) }

	f := Finding{What: "oldest due", Found: "nothing is overdue"}
	if n := number(`SELECT coalesce(min(look), 0) FROM due WHERE look <= ?`, ms(now)); n != 0 {
		f.Found = fmt.Sprintf("overdue for %s", age(n))
		if age(n) > late {
			f.Do = "see that serve runs and its clock is right"
		}
	}
	list = append(list, f)

	f = Finding{What: "looked at in vain", Found: "none"}
	if n := number(`SELECT count(*) FROM due WHERE look > at`); n != 0 {
		f.Found, f.Do = fmt.Sprintf("%d due acts came to nothing", n), "tell the makers; each is tried again within the hour"
	}
	list = append(list, f)

	f = Finding{What: "oldest unsent", Found: "nothing waits"}
	if n := number(`SELECT coalesce(min(max(made, after)), 0) FROM letter WHERE refused IS NULL AND after <= ?`, ms(now)); n != 0 {
		waiting := number(`SELECT count(*) FROM letter WHERE refused IS NULL AND after <= ?`, ms(now))
		f.Found = fmt.Sprintf("%d letters wait, the oldest for %s", waiting, age(n))
		if age(n) > late {
			f.Do = "see that serve runs and reaches the platform"
		}
	}
	list = append(list, f)

	f = Finding{What: "oldest unanswered", Found: "nothing waits"}
	if n := number(`SELECT coalesce(min(got), 0) FROM inbox WHERE done IS NULL`); n != 0 {
		f.Found = fmt.Sprintf("a message waits for %s", age(n))
		if age(n) > late {
			f.Do = "see that serve runs; its log says why messages are not answered"
		}
	}
	list = append(list, f)

	f = Finding{What: "put aside", Found: "none"}
	spoiled, refused := number(`SELECT count(*) FROM inbox WHERE spoiled IS NOT NULL`), number(`SELECT count(*) FROM letter WHERE refused IS NOT NULL`)
	if spoiled+refused > 0 {
		f.Found = fmt.Sprintf("%d updates that could not be read or answered, %d letters that could not go, in the last week", spoiled, refused)
	}
	list = append(list, f)

	drifts, e := Compare(ctx, path)
	err = errors.Join(err, e)
	f = Finding{What: "plan", Found: "the kept rows equal those made anew from the diaries"}
	for _, d := range drifts {
		f.Found, f.Do = d.String(), "stop serve and run doctor with --rebuild"
	}
	list = append(list, f, peak(number))
	if err != nil {
		list = append(list, Finding{"database", err.Error(), "see the error"})
	}
	return list
}

// late is when waiting is too long to be a busy morning's.
const late = 2 * time.Hour

// pragmas opens the file as a server would and reads the settings back.
func pragmas(ctx context.Context, path string) Finding {
	f := Finding{What: "pragmas"}
	db, err := Open(ctx, path, Options{Pages: 1})
	if err != nil {
		f.Found, f.Do = err.Error(), "see the error"
		return f
	}
	defer db.Close()
	f.Found = "write-ahead log, full sync, deleted words are overwritten"
	return f
}

func writable(path string) Finding {
	f, err := os.OpenFile(path, os.O_RDWR, 0)
	if err != nil {
		return Finding{"rights", "the file cannot be written to", "check its owner and rights"}
	}
	f.Close()
	return Finding{What: "rights", Found: "the file can be written to"}
}

// platformPace is how many letters a second the platform takes from one bot
// (seen, telegra.ph/Hitting-limits-bot-FAQ).
const platformPace = 30

// peak works out the busiest hour and how long its letters take to go out.
func peak(number func(string, ...any) int64) Finding {
	n := number(`SELECT coalesce(max(n), 0) FROM (SELECT count(DISTINCT person) AS n FROM due GROUP BY at / 3600000)`)
	seconds := (n + platformPace - 1) / platformPace
	f := Finding{What: "busiest hour", Found: fmt.Sprintf("%d people have something due in it; at the platform's limit of about %d letters a second the last hears %s after the first",
		n, platformPace, time.Duration(seconds)*time.Second)}
	if seconds > 3600 {
		bots := (seconds + 3599) / 3600
		f.Do = fmt.Sprintf("split the groups among %d bots: a token, a process and a file each", bots)
	}
	return f
}

// LastNoted is when the newest diary line was noted.
func LastNoted(ctx context.Context, path string) (time.Time, error) {
	conn, done, err := readOnly(ctx, path)
	if err != nil {
		return time.Time{}, err
	}
	defer done()
	var n int64
	err = conn.QueryRowContext(ctx, `SELECT coalesce(max(noted), 0) FROM entry`).Scan(&n)
	return at(n), err
}

// Caller is a chat that wrote, and when it last did.
type Caller struct {
	Chat int64
	Last time.Time
}

// NewestCallers lists the chats that wrote last, at most n, newest first. An
// operator who sets the program up finds the officers' chat ids in it.
func NewestCallers(ctx context.Context, path string, n int) ([]Caller, error) {
	conn, done, err := readOnly(ctx, path)
	if err != nil {
		return nil, err
	}
	defer done()
	var list []Caller
	err = scanned(ctx, conn, `SELECT chat, max(got) FROM inbox WHERE chat > 0 GROUP BY chat ORDER BY 2 DESC LIMIT ?`, 2, func(r row) error {
		list = append(list, Caller{Chat: r.int(0), Last: at(r.int(1))})
		return nil
	}, n)
	if err != nil {
		return nil, fmt.Errorf("list the newest chats: %w", plain(err))
	}
	return list, nil
}
