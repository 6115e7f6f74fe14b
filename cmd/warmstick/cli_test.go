package main

import (
	"os"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

// asProgram makes the test binary play the program, for tests that need a
// process to kill.
const asProgram = "WARMSTICK_AS_PROGRAM"

func TestMain(m *testing.M) {
	if os.Getenv(asProgram) != "" {
		main()
	}
	testscript.Main(m, map[string]func(){"warmstick": main})
}

// The scripts of testdata/cli: each is a session at a command line.
func TestCommandLine(t *testing.T) {
	testscript.Run(t, testscript.Params{Dir: "../../testdata/cli"})
}
