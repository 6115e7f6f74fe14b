package main

import (
	"os"
	"os/signal"
	"syscall"
	"testing"

	"context"

	"github.com/rogpeppe/go-internal/testscript"
)

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"warmstick": func() {
		ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
		defer stop()
		os.Exit(Main{Env: os.Getenv}.Run(ctx, os.Args[1:], os.Stdin, os.Stdout, os.Stderr))
	}})
}

// The scripts of testdata/cli: each is a session at a command line.
func TestCommandLine(t *testing.T) {
	testscript.Run(t, testscript.Params{Dir: "../../testdata/cli"})
}
