package dialog

import (
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"warmstick/dialog/phrases"
)

// keysInCode finds every literal key that the package says, asks or words.
func keysInCode(t *testing.T) map[string]string {
	keys := map[string]string{}
	files, err := filepath.Glob("*.go")
	require.NoError(t, err)
	for _, name := range files {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		src, err := os.ReadFile(name)
		require.NoError(t, err)
		file, err := parser.ParseFile(token.NewFileSet(), name, src, 0)
		require.NoError(t, err)
		ast.Inspect(file, func(n ast.Node) bool {
			call, ok := n.(*ast.CallExpr)
			if !ok {
				return true
			}
			fun := ""
			switch f := call.Fun.(type) {
			case *ast.SelectorExpr:
				fun = f.Sel.Name
			case *ast.Ident:
				fun = f.Name
			}
			at := map[string]int{"say": 0, "letter": 2, "text": 1, "Text": 1}
			i, ok := at[fun]
			if !ok || i >= len(call.Args) {
				return true
			}
			if lit, ok := call.Args[i].(*ast.BasicLit); ok && lit.Kind == token.STRING {
				key, _ := strconv.Unquote(lit.Value)
				keys[key] = name
			}
			return true
		})
	}
	return keys
}

func TestEveryKeyInTheCodeIsSaid(t *testing.T) {
	for key, file := range keysInCode(t) {
		if !phrases.Has("en", key) {
			t.Errorf("%s says %q, which no language file has", file, key)
		}
	}
}

func TestEveryQuestionHasItsWords(t *testing.T) {
	for id, q := range questions() {
		if q.phrase == nil && !phrases.Has("en", "ask_"+id) {
			t.Errorf("question %s has no ask_%s", id, id)
		}
		if !phrases.Has("en", "hint_"+id) {
			t.Errorf("question %s has no hint_%s", id, id)
		}
		if q.asks == "" {
			t.Errorf("question %s has no word of the contract", id)
		}
	}
}
