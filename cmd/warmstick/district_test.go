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

// BenchmarkDistrict is a season of many farmers at once, through store, outbox
// and clock: how long a heap's whole life takes in company, and what a farmer's
// season leaves in the file after housekeeping of nothing.
func BenchmarkDistrict(b *testing.B) {
	const farmers = 100
	life, err := os.ReadFile("../../testdata/rehearsals/en/hot_heap.txt")
	require.NoError(b, err)
	script := inCompany(string(life), farmers)
	for b.Loop() {
		file := filepath.Join(b.TempDir(), "district.db")
		db, err := store.Open(b.Context(), file, store.Options{Loose: true, Chance: repeating()})
		require.NoError(b, err)
		require.NoError(b, bot.Rehearsal{DB: db, Tick: tickOf(db), Out: io.Discard, Err: os.Stderr}.Play(b.Context(), strings.NewReader(script)))
		require.NoError(b, db.Close())
		info, err := os.Stat(file)
		require.NoError(b, err)
		b.ReportMetric(float64(info.Size())/farmers, "bytes/farmer")
	}
	b.ReportMetric(float64(b.Elapsed().Milliseconds())/float64(b.N)/farmers, "ms/life")
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
