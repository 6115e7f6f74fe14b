package scheduler

import (
	"context"
	"fmt"
	"log/slog"

	"github.com/robfig/cron/v3"
)

// Job is a piece of housekeeping and when it is done, as cron writes it: "30 2 *
// * *" is half past two at night of the machine's zone. Unlike a reminder, a job
// that fell due while the program was off is not made up for.
type Job struct {
	Name string
	When string
	Do   func(context.Context) error
}

// Housekeeping does jobs at their times until ctx ends, and waits for the one at
// work. A job that fails or panics is logged and done again the next time.
func Housekeeping(ctx context.Context, jobs ...Job) error {
	// The order matters: Recover outside of SkipIfStillRunning would keep a job
	// that panicked once from ever running again.
	c := cron.New(cron.WithChain(cron.SkipIfStillRunning(quiet{}), cron.Recover(quiet{})))
	for _, j := range jobs {
		if _, err := c.AddFunc(j.When, func() { j.run(ctx) }); err != nil {
			return fmt.Errorf("housekeeping %s at %q: %w", j.Name, j.When, err)
		}
	}
	c.Start()
	<-ctx.Done()
	<-c.Stop().Done()
	return ctx.Err()
}

func (j Job) run(ctx context.Context) {
	if err := j.Do(ctx); err != nil && ctx.Err() == nil {
		slog.Error("housekeeping failed", "job", j.Name, "cause", err.Error())
		return
	}
	slog.Info("housekeeping done", "job", j.Name)
}

// quiet is cron's log: only what went wrong, and of a panic only that there was
// one, as its words might quote a person.
type quiet struct{}

func (quiet) Info(string, ...any)         {}
func (quiet) Error(error, string, ...any) { slog.Error("a piece of housekeeping broke off") }
