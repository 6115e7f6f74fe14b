package main

import (
	"bytes"
	"flag"
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
			require.Equal(t, string(want), string(talk))
			require.Equal(t, string(talk), string(played(t, script)), "the same script said something else the second time")
		})
	}
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
