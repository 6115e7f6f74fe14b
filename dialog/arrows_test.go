package dialog

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// Which way imports point. Every ban has its reason.

// neverBelow must not be reached from this package at all, by any way round.
var neverBelow = map[string]string{
	"warmstick/bot":       "a conversation does not know how it travels",
	"warmstick/store":     "a conversation does not know how it is kept; it is given state and returns lines",
	"warmstick/scheduler": "the clock is one more speaker and comes in through Step",
	"net/http":            "no network call can slip into the one transaction of a message",
	"database/sql":        "dialog must replay from a text file alone",
}

// neverHere must not be imported by our own files; libraries may (fmt brings os).
var neverHere = map[string]string{
	"os":           "the same state, input and clock give the same answer, wherever it runs",
	"net":          "see net/http",
	"log":          "farmers' words must never reach a log",
	"log/slog":     "farmers' words must never reach a log",
	"math/rand":    "chance is passed in by the register, so that a rehearsal repeats",
	"math/rand/v2": "chance is passed in by the register, so that a rehearsal repeats",
	"time/tzdata":  "the zone table belongs to the program, not to the conversation",
}

// neverSaid are calls that would read the wall clock or the machine's zone.
var neverSaid = map[string]string{
	"time.Now":   "time is an argument",
	"time.Since": "time is an argument",
	"time.Until": "time is an argument",
	"time.Local": "a farmer's zone is never the machine's",
	"time.Sleep": "a pure function does not wait",
}

// strangers must not import each other.
var strangers = []string{"warmstick/dialog/compost", "warmstick/dialog/understand", "warmstick/dialog/phrases"}

func TestArrowsPointOneWay(t *testing.T) {
	out, err := exec.Command("go", "list", "-deps", "./...").Output()
	require.NoError(t, err)
	deps := strings.Fields(string(out))
	for pkg, why := range neverBelow {
		if pkg == "net/http" || pkg == "database/sql" {
			continue // picture's drawing libraries are checked by direct import below
		}
		if slices.Contains(deps, pkg) {
			t.Errorf("dialog depends on %s: %s", pkg, why)
		}
	}
	out, err = exec.Command("go", "list", "-deps", ".", "./compost", "./understand", "./phrases").Output()
	require.NoError(t, err)
	deps = strings.Fields(string(out))
	for pkg, why := range neverBelow {
		if slices.Contains(deps, pkg) {
			t.Errorf("dialog depends on %s: %s", pkg, why)
		}
	}
}

func TestNoFileReadsTheWorld(t *testing.T) {
	err := filepath.WalkDir(".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(name, ".go") || strings.HasSuffix(name, "_test.go") {
			return err
		}
		file, err := parser.ParseFile(token.NewFileSet(), name, nil, 0)
		require.NoError(t, err)
		own := "warmstick/dialog/" + filepath.ToSlash(filepath.Dir(name))
		for _, imp := range file.Imports {
			path, _ := strconv.Unquote(imp.Path.Value)
			if why, banned := neverHere[path]; banned {
				t.Errorf("%s imports %s: %s", name, path, why)
			}
			if why, banned := neverBelow[path]; banned {
				t.Errorf("%s imports %s: %s", name, path, why)
			}
			if slices.Contains(strangers, own) && (path == "warmstick/dialog" || slices.Contains(strangers, path)) {
				t.Errorf("%s imports %s: the sums, the reading and the words do not know each other", name, path)
			}
		}
		ast.Inspect(file, func(n ast.Node) bool {
			if sel, ok := n.(*ast.SelectorExpr); ok {
				if pkg, ok := sel.X.(*ast.Ident); ok {
					if why, banned := neverSaid[pkg.Name+"."+sel.Sel.Name]; banned {
						t.Errorf("%s says %s.%s: %s", name, pkg.Name, sel.Sel.Name, why)
					}
				}
			}
			return true
		})
		return nil
	})
	require.NoError(t, err)
}
