package main

import (
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"warmstick/bot"
	"warmstick/store"
)

// BenchmarkDistrict is a season of a hundred days of many farmers at once, through
// store, outbox and clock, as rehearse plays it: how long it takes, and what a
// farmer's season leaves in the file. A whole district has two thousand.
func BenchmarkDistrict(b *testing.B) {
	for _, farmers := range []int{100, 2000} {
		b.Run(fmt.Sprintf("farmers=%d", farmers), func(b *testing.B) {
			script := district(b, farmers)
			for b.Loop() {
				file := filepath.Join(b.TempDir(), "district.db")
				db, err := store.Open(b.Context(), file, rehearsal())
				require.NoError(b, err)
				require.NoError(b, bot.Rehearsal{DB: db, Tick: tickOf(db), Out: io.Discard, Err: os.Stderr}.Play(b.Context(), strings.NewReader(script)))
				require.NoError(b, db.Close())
				info, err := os.Stat(file)
				require.NoError(b, err)
				b.ReportMetric(float64(info.Size())/float64(farmers), "bytes/farmer")
			}
			b.ReportMetric(b.Elapsed().Seconds()/float64(b.N), "s/season")
		})
	}
}

// WARMSTICK_DISTRICT=FILE writes the district's script, so that the program of
// before a change and that of after it can play it and the talks be compared.
func TestWritesADistrict(t *testing.T) {
	file := os.Getenv("WARMSTICK_DISTRICT")
	if file == "" {
		file = filepath.Join(t.TempDir(), "district.txt")
	}
	script := district(t, 2000)
	require.NoError(t, os.WriteFile(file, []byte(script), 0o600))
	require.Equal(t, 50*2000, strings.Count(script, "> "), "each line of the life, by everybody")
}

// district is the whole life of a heap, lived by many side by side.
func district(t testing.TB, farmers int) string {
	life, err := os.ReadFile("../../testdata/rehearsals/en/hot_heap.txt")
	require.NoError(t, err)
	return inCompany(string(life), farmers)
}

// inCompany lets many farmers live one farmer's script side by side.
func inCompany(script string, farmers int) string {
	var all strings.Builder
	for line := range strings.Lines(script) {
		who, said, speaks := strings.Cut(line, "> ")
		switch {
		case strings.HasPrefix(line, "expect"), strings.HasPrefix(line, "#"):
		case speaks:
			for i := range farmers {
				fmt.Fprintf(&all, "%s%d> %s", who, i, said)
			}
		default:
			all.WriteString(line)
		}
	}
	return all.String()
}
