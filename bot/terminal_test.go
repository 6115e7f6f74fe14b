package bot

import (
	"bytes"
	"io"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"warmstick/store"
)

// A talk at the terminal, plain and bright: the same words, and colours only
// when they can be seen.
func TestTerminal(t *testing.T) {
	talk := func(bright bool) string {
		db, err := store.Open(t.Context(), filepath.Join(t.TempDir(), "w.db"), store.Options{Step: parrot, Loose: true})
		require.NoError(t, err)
		defer db.Close()
		lines := strings.Split("hello\n/who\n/diary\n/plan\n/wait 3d\n/wait soon\n/wait until 07:00\n/photo my heap\n/undo\n/officer\n/help\n[7]\nbad \xff\n/quit\nnever", "\n")
		var out bytes.Buffer
		err = Terminal{DB: db, Tick: noTick, Now: time.Date(2026, 3, 2, 6, 0, 0, 0, time.UTC), Zone: time.UTC, Out: &out, Bright: bright,
			Line: func() (string, error) {
				if len(lines) == 0 {
					return "", io.EOF
				}
				line := lines[0]
				lines = lines[1:]
				return line, nil
			}}.Talk(t.Context())
		require.NoError(t, err)
		return out.String()
	}
	plain := talk(false)
	for _, want := range []string{"heard hello", "it is now Thursday 5 March 2026, 06:00", "it is now Thursday 5 March 2026, 07:00", "got photo", "heard undo",
		`"soon" is no time to /wait`, "nothing is planned", "OfficerAsked", "heard [7]", "heard bad \uFFFD"} {
		require.Contains(t, plain, want)
	}
	require.NotContains(t, plain, "never")
	require.NotContains(t, plain, "\x1b")
	bright := talk(true)
	require.Contains(t, bright, "\x1b[32mheard hello\x1b[0m")
	for _, colour := range []string{dim, bold, green, normal} {
		bright = strings.ReplaceAll(bright, colour, "")
	}
	require.Equal(t, plain, bright)
}
