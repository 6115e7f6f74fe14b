package main

import (
	"bytes"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

var rewrite = flag.Bool("rewrite", false, "write the talks of testdata/rehearsals anew; read the diff as carefully as code")

// Every rehearsal of testdata plays with all its expectations met, and the talk
// it prints is the one kept beside it. Played twice it prints the same bytes.
func TestRehearsals(t *testing.T) {
	scripts, err := filepath.Glob("../../testdata/rehearsals/*/*.txt")
	require.NoError(t, err)
	require.NotEmpty(t, scripts)
	for _, script := range scripts {
		name := filepath.ToSlash(strings.TrimPrefix(script, "../../testdata/rehearsals/"))
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			talk := played(t, script)
			kept := strings.TrimSuffix(script, ".txt") + ".out"
			if *rewrite {
				require.NoError(t, os.WriteFile(kept, talk, 0o644))
				return
			}
			want, err := os.ReadFile(kept)
			require.NoError(t, err, "go test ./cmd/warmstick -run Rehearsals -rewrite makes it")
			require.Empty(t, firstChange(string(want), string(talk)), "the talk is not the one kept")
			require.Empty(t, firstChange(string(talk), string(played(t, script))), "the same script said something else the second time")
		})
	}
}

// firstChange shows where two talks part, for reading at a glance.
func firstChange(want, got string) string {
	a, b := strings.Split(want, "\n"), strings.Split(got, "\n")
	for i := range max(len(a), len(b)) {
		if i >= len(a) || i >= len(b) || a[i] != b[i] {
			from := max(0, i-3)
			return fmt.Sprintf("line %d\nkept:\n%s\nsaid:\n%s", i+1, strings.Join(a[min(from, len(a)):min(i+3, len(a))], "\n"), strings.Join(b[min(from, len(b)):min(i+3, len(b))], "\n"))
		}
	}
	return ""
}

func played(t *testing.T, script string) []byte {
	t.Helper()
	var out, complaints bytes.Buffer
	code := Main{}.Run(t.Context(), []string{"rehearse", script}, strings.NewReader(""), &out, &complaints)
	require.Zero(t, code, complaints.String())
	return out.Bytes()
}

// A hundred days of one heap, through store, outbox and clock.
func BenchmarkLife(b *testing.B) {
	for b.Loop() {
		var out, complaints bytes.Buffer
		if code := (Main{}).Run(b.Context(), []string{"rehearse", "../../testdata/rehearsals/en/hot_heap.txt"}, strings.NewReader(""), &out, &complaints); code != 0 {
			b.Fatal(complaints.String())
		}
	}
}
