// Command warmstick walks a smallholder through a hot heap before the worms, and
// shows an extension officer whose heap needs a visit.
package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"os/signal"
	"strings"
	"syscall"

	_ "time/tzdata" // a bare machine has no time zones
)

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	os.Exit(Main{Env: os.Getenv}.Run(ctx, os.Args[1:], os.Stdin, os.Stdout, os.Stderr))
}

// Main is the program with its surroundings passed in, so that tests can run it.
type Main struct {
	Env func(name string) string
}

// command is one word of the command line.
type command struct {
	name  string
	usage string // what follows the name
	does  string
	run   func(m Main, c *call) error
}

// call is one command being run.
type call struct {
	ctx  context.Context
	args []string
	in   io.Reader
	out  io.Writer
	err  io.Writer
	*flag.FlagSet
}

// errUsage says that the command line could not be read; it was explained.
var errUsage = errors.New("usage")

// errQuiet ends with exit 1 after everything was said.
var errQuiet = errors.New("said already")

func commands() []command {
	return []command{
		{"chat", "[--db FILE] [--at TIME] [--zone ZONE]", "talk to the assistant here, as one farmer; nothing else is needed", runChat},
		{"rehearse", "[--json] [--notes] [FILE]", "play a script of several people and a virtual clock", runRehearse},
		{"serve", "--db FILE [--backups FOLDER] [--listen ADDR --webhook URL]", "answer people over the chat HTTP Bot API until told to stop\nenvironment: TELEGRAM_BOT_TOKEN, TELEGRAM_API_URL, WARMSTICK_SEND_RATE, WARMSTICK_OFFICERS, WARMSTICK_WEBHOOK_SECRET", runServe},
		{"export", "--db FILE --out DIR [--names]", "write tables, a workbook and a page to print, also while serving", runExport},
		{"backup", "--db FILE --out FILE", "write a consistent copy, also while serving", runBackup},
		{"restore", "--db FILE --from BACKUP", "check a backup and put it in the place of a file", runRestore},
		{"doctor", "--db FILE [--rebuild] [--offline] [--chats]", "check everything and say what to do; exit 1 when there is something", runDoctor},
	}
}

// Run runs one command and gives the exit code: 0, 1 for a failure that was
// reported in a line, 2 for a command line that cannot be read.
func (m Main) Run(ctx context.Context, args []string, in io.Reader, out, errw io.Writer) int {
	if len(args) == 0 || args[0] == "help" || args[0] == "--help" || args[0] == "-h" || args[0] == "-help" {
		w := out
		if len(args) == 0 {
			w = errw
		}
		overview(w)
		if len(args) == 0 {
			return 2
		}
		return 0
	}
	switch args[0] {
	case "calc":
		return runCalc(args[1:], in, out, errw)
	case "understand":
		return runUnderstand(args[1:], in, out, errw)
	}
	for _, c := range commands() {
		if c.name == args[0] {
			return m.run(ctx, c, args[1:], in, out, errw)
		}
	}
	fmt.Fprintf(errw, "warmstick: %q is no command; warmstick --help lists them\n", args[0])
	return 2
}

func (m Main) run(ctx context.Context, c command, args []string, in io.Reader, out, errw io.Writer) int {
	f := flag.NewFlagSet(c.name, flag.ContinueOnError)
	f.SetOutput(io.Discard)
	f.Usage = func() {}
	err := c.run(m, &call{ctx: ctx, args: args, in: in, out: out, err: errw, FlagSet: f})
	switch {
	case err == nil:
		return 0
	case errors.Is(err, flag.ErrHelp):
		fmt.Fprintf(out, "warmstick %s %s\n%s\n\n", c.name, c.usage, c.does)
		f.SetOutput(out)
		f.PrintDefaults()
		return 0
	case errors.Is(err, errUsage):
		fmt.Fprintf(errw, "warmstick %s: %v\nusage: warmstick %s %s\n", c.name, errors.Unwrap(err), c.name, c.usage)
		return 2
	case errors.Is(err, errQuiet):
		return 1
	}
	fmt.Fprintf(errw, "warmstick %s: %v\n", c.name, err)
	return 1
}

// parse reads the flags, with at most so many words after them.
func (c *call) parse(most int) ([]string, error) {
	err := c.Parse(c.args)
	if errors.Is(err, flag.ErrHelp) {
		return nil, err
	}
	if err != nil {
		return nil, usage{err}
	}
	if c.NArg() > most {
		return nil, usage{fmt.Errorf("too much after the flags: %q", c.Arg(most))}
	}
	return c.FlagSet.Args(), nil
}

// usage is an error of the command line.
type usage struct{ error }

func (u usage) Unwrap() error        { return u.error }
func (u usage) Is(target error) bool { return target == errUsage }

func overview(w io.Writer) {
	fmt.Fprint(w, `warmstick walks a smallholder through a hot heap before the worms.

usage: warmstick COMMAND [flags]

`)
	for _, c := range commands() {
		first, _, _ := strings.Cut(c.does, "\n")
		fmt.Fprintf(w, "  %-10s  %s\n", c.name, first)
	}
	fmt.Fprint(w, `  calc        work out a mix, a heap, a starter; in words or JSON lines
  understand  read farmers' replies; JSON lines in and out

warmstick COMMAND --help tells more of one. The first to try: warmstick chat
`)
}
