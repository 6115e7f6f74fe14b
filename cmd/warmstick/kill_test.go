package main

import (
	"cmp"
	"context"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"warmstick/bot/platform"
	"warmstick/dialog"
	"warmstick/store"
)

// serveOf starts the program as a process of its own: this test binary, or the one
// that WARMSTICK_PROGRAM names, whose memory is that of what is shipped.
func serveOf(t testing.TB, f *platform.API, file string) *exec.Cmd {
	t.Helper()
	c := exec.Command(cmp.Or(os.Getenv("WARMSTICK_PROGRAM"), os.Args[0]))
	c.Args = []string{"warmstick", "serve", "--db", file}
	c.Env = append(os.Environ(), asProgram+"=1", "TELEGRAM_BOT_TOKEN="+platform.Token, "TELEGRAM_API_URL="+f.URL, "WARMSTICK_SEND_RATE=0")
	log, err := os.OpenFile(file+".log", os.O_CREATE|os.O_APPEND|os.O_WRONLY, 0o600)
	require.NoError(t, err)
	c.Stderr = log
	require.NoError(t, c.Start())
	log.Close()
	return c
}

// stop asks the program to end, which it does well.
func stop(t testing.TB, p *exec.Cmd) {
	t.Helper()
	require.NoError(t, p.Process.Signal(os.Interrupt))
	require.NoError(t, p.Wait(), "asked to stop, it ends well")
}

// The program is killed again and again while people write. Every line that was
// acknowledged is in the diary, once and in order; each had its answer; and what
// came twice is no more than what was on its way when a kill came.
// WARMSTICK_KILLS=1000 makes a longer run.
func TestKills(t *testing.T) {
	kills := 12
	if n, err := strconv.Atoi(os.Getenv("WARMSTICK_KILLS")); err == nil {
		kills = n
	}
	f := platform.New(1)
	defer f.Close()
	file := filepath.Join(t.TempDir(), "w.db")
	const chats = 8
	said := map[int64]int{}
	for _, line := range []string{"hello", "1", "yes", "Amina", "Nairobi", "1"} {
		for chat := int64(1); chat <= chats; chat++ {
			f.Say(chat, line)
			said[chat]++
		}
	}
	told := 0 // lines of amounts a chat
	for i := range kills {
		p := serveOf(t, f, file)
		if i%2 == 0 {
			told++
			for chat := int64(1); chat <= chats; chat++ {
				f.Say(chat, fmt.Sprintf("%d baskets dry leaves", told%9+2))
				said[chat]++
			}
		}
		time.Sleep(time.Duration(rand.IntN(250)) * time.Millisecond)
		require.NoError(t, p.Process.Kill())
		p.Wait()
	}
	p := serveOf(t, f, file)
	ctx, cancel := context.WithTimeout(t.Context(), time.Minute)
	defer cancel()
	f.Say(chats+1, "hello")
	require.NoError(t, platform.Until(ctx, "the last answer", func() bool {
		for chat := range said {
			if len(f.Texts(chat)) < said[chat] {
				return false
			}
		}
		return len(f.Texts(chats+1)) > 0
	}))
	began := time.Now()
	stop(t, p)
	require.Less(t, time.Since(began), 10*time.Second)

	db, err := store.Open(t.Context(), file, store.Options{})
	require.NoError(t, err)
	defer db.Close()
	letters := len(f.Sent())
	for chat := range said {
		id, err := db.PersonOf(t.Context(), chat)
		require.NoError(t, err)
		diary, err := db.DiaryOf(t.Context(), id)
		require.NoError(t, err)
		var amounts []float64
		for _, e := range diary {
			if g, ok := e.Event.(dialog.Gathered); ok {
				amounts = append(amounts, g.N)
			}
		}
		require.Len(t, amounts, told, "chat %d", chat)
		for i, n := range amounts {
			require.EqualValues(t, (i+1)%9+2, n, "chat %d", chat)
		}
	}
	drifts, err := store.Compare(t.Context(), file)
	require.NoError(t, err)
	require.Empty(t, drifts)
	require.NoError(t, store.Verify(t.Context(), file))
	log, err := os.ReadFile(file + ".log")
	require.NoError(t, err)
	require.NotContains(t, string(log), "Amina")
	require.NotContains(t, string(log), platform.Token)
	t.Logf("%d kills, %d messages, %d letters", kills, (6+told)*chats+1, letters)
}

// A second program on the same file is refused in one line, and a token that
// nobody knows ends the first.
func TestServeRefusals(t *testing.T) {
	f := platform.New(1)
	defer f.Close()
	file := filepath.Join(t.TempDir(), "w.db")
	first := serveOf(t, f, file)
	f.Say(1, "hello")
	ctx, cancel := context.WithTimeout(t.Context(), 10*time.Second)
	defer cancel()
	require.NoError(t, platform.Until(ctx, "the first answer", func() bool { return len(f.Texts(1)) > 0 }))
	second := exec.Command(os.Args[0])
	second.Args = []string{"warmstick", "serve", "--db", file}
	second.Env = append(os.Environ(), asProgram+"=1", "TELEGRAM_BOT_TOKEN=5:other", "TELEGRAM_API_URL="+f.URL)
	out, err := second.CombinedOutput()
	require.Error(t, err)
	require.Equal(t, 1, second.ProcessState.ExitCode())
	require.Contains(t, string(out), "another warmstick is at work on this file")
	stop(t, first)
	third := exec.Command(os.Args[0])
	third.Args, third.Env = second.Args, second.Env
	out, err = third.CombinedOutput()
	require.Error(t, err)
	require.Equal(t, 1, third.ProcessState.ExitCode())
	require.Contains(t, string(out), "does not know this token")
	require.NotContains(t, string(out), "5:other")
}
