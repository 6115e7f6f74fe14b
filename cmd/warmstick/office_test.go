package main

import (
	"database/sql"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"warmstick/bot/platform"
	"warmstick/dialog"
	"warmstick/store"
)

// The benchmarks of this file run the program as a process of its own, as an office
// does, against a platform on 127.0.0.1.

// BenchmarkReplies is how long a farmer waits for an answer while a hundred messages
// come each second: from the update on the platform to the letter that arrives there.
func BenchmarkReplies(b *testing.B) {
	const farmers, perSecond = 200, 100
	f := platform.New(1)
	defer f.Close()
	file := filepath.Join(b.TempDir(), "w.db")
	fill(b, file, farmers, 4, time.Now())
	p := serveOf(b, f, file)
	defer stop(b, p)
	sayAndWait(b, f, 1, "hello")
	var waits []time.Duration
	beat := time.NewTicker(time.Second / perSecond)
	defer beat.Stop()
	told := map[int64]time.Time{}
	before := len(f.Sent())
	chat := int64(1)
	for b.Loop() {
		<-beat.C
		chat = chat%farmers + 1
		told[chat] = time.Now()
		f.Say(chat, "what now")
		if chat == farmers { // everybody has said something: gather the answers
			time.Sleep(50 * time.Millisecond)
			before = answered(f, before, told, &waits)
		}
	}
	time.Sleep(50 * time.Millisecond)
	answered(f, before, told, &waits)
	require.NotEmpty(b, waits)
	slices.Sort(waits)
	b.ReportMetric(waits[len(waits)/2].Seconds()*1000, "ms-p50")
	b.ReportMetric(waits[len(waits)*99/100].Seconds()*1000, "ms-p99")
	b.ReportMetric(float64(len(waits)), "replies")
}

// answered pairs the letters that came since with what was told, and forgets both.
func answered(f *platform.API, since int, told map[int64]time.Time, waits *[]time.Duration) int {
	sent := f.Sent()
	for _, s := range sent[since:] {
		if at, ok := told[s.Chat]; ok {
			*waits = append(*waits, s.At.Sub(at))
			delete(told, s.Chat) // a second letter of the same answer
		}
	}
	return len(sent)
}

// BenchmarkStart is the time from the start of the process to its first poll, over a
// file with a million lines of diary.
func BenchmarkStart(b *testing.B) {
	for _, lines := range []int{10_000, 1_000_000} {
		b.Run(fmt.Sprintf("lines=%d", lines), func(b *testing.B) {
			file := filepath.Join(b.TempDir(), "w.db")
			fill(b, file, lines/10, 10, time.Now().AddDate(0, 0, -1))
			var took time.Duration
			for b.Loop() {
				f := platform.New(1)
				began := time.Now()
				p := serveOf(b, f, file)
				require.NoError(b, platform.Until(b.Context(), "the first poll", func() bool { return f.Calls("getUpdates") > 0 }))
				took += time.Since(began)
				stop(b, p)
				f.Close()
			}
			b.ReportMetric(took.Seconds()*1000/float64(b.N), "ms/start")
		})
	}
}

// BenchmarkPeak is a morning on which a hundred thousand farmers have the stick due at
// once: how long until all their letters are queued, and the memory at most.
func BenchmarkPeak(b *testing.B) {
	const farmers = 100_000
	for b.Loop() {
		f := platform.New(1)
		file := filepath.Join(b.TempDir(), "w.db")
		fill(b, file, farmers, 10, time.Now().AddDate(0, 0, -4))
		pool, err := sql.Open("sqlite", "file:"+file+"?mode=ro&_pragma=busy_timeout(5000)")
		require.NoError(b, err)
		waiting := func() (n int) {
			require.NoError(b, pool.QueryRow("SELECT count(*) FROM (SELECT 1 FROM due WHERE look <= ? LIMIT 1)", time.Now().UnixMilli()).Scan(&n))
			return n
		}
		require.Equal(b, 1, waiting(), "nothing is due")
		began := time.Now()
		p := serveOf(b, f, file)
		require.NoError(b, platform.Until(b.Context(), "all is queued", func() bool { return waiting() == 0 }))
		b.ReportMetric(time.Since(began).Seconds(), "s/peak")
		b.ReportMetric(peakMB(p), "MB")
		var queued int
		require.NoError(b, pool.QueryRow("SELECT count(*) FROM letter").Scan(&queued))
		require.Greater(b, queued+len(f.Sent()), farmers*9/10)
		require.NoError(b, pool.Close())
		stop(b, p)
		f.Close()
	}
}

// fill makes a file of farmers who began a heap at a moment, each with so many lines of
// diary. Their hour is that of the moment, wherever that is day.
func fill(b *testing.B, file string, farmers, lines int, began time.Time) {
	b.Helper()
	zone := fmt.Sprintf("Etc/GMT%+d", began.UTC().Hour()-10) // ten in the morning; POSIX signs: east is minus
	if h := began.UTC().Hour() - 10; h > 12 {
		zone = fmt.Sprintf("Etc/GMT%+d", h-24)
	}
	step := func(s dialog.State, in dialog.Input, now time.Time) dialog.Answer {
		facts := []dialog.Event{dialog.Consented{Version: "1"}, dialog.LanguageSet{Lang: "en"}, dialog.Named{Name: "Amina"},
			dialog.Placed{Zone: zone}, dialog.HourSet{Minute: 10 * 60}, dialog.Begun{Path: dialog.HotHeap}, dialog.Built{}}
		for len(facts) < lines {
			facts = append(facts, dialog.Watered{})
		}
		a := dialog.Answer{Talk: s.Talk}
		for i, e := range facts[:max(lines, 7)] {
			heap := dialog.HeapID(0)
			if i >= 5 {
				heap = 1
			}
			a.Entries = append(a.Entries, dialog.Entry{Heap: heap, At: now, Noted: now, Day: dialog.DayOf(now, dialog.Zone(zone)), By: s.Person.ID, Told: 1, Event: e})
		}
		return a
	}
	db, err := store.Open(b.Context(), file, store.Options{Loose: true, Pages: 1, Step: step})
	require.NoError(b, err)
	require.NoError(b, db.CatchUp(b.Context(), func(int) {}))
	calls := make([]store.Call, 0, 1000)
	for chat := 1; chat <= farmers; chat++ {
		calls = append(calls, store.Call{Chat: int64(chat), In: dialog.Message{Kind: dialog.Text, Text: "begin"}})
		if len(calls) == cap(calls) || chat == farmers {
			_, err := db.Converse(b.Context(), began, calls...)
			require.NoError(b, err)
			calls = calls[:0]
		}
	}
	require.NoError(b, db.Close())
}

func sayAndWait(b *testing.B, f *platform.API, chat int64, text string) {
	b.Helper()
	n := len(f.Sent())
	f.Say(chat, text)
	require.NoError(b, platform.Until(b.Context(), "an answer", func() bool { return len(f.Sent()) > n }))
}

// peakMB is the most memory a process has held, where the system tells.
func peakMB(p *exec.Cmd) float64 {
	status, _ := os.ReadFile(fmt.Sprintf("/proc/%d/status", p.Process.Pid))
	for line := range strings.Lines(string(status)) {
		if kb, ok := strings.CutPrefix(line, "VmHWM:"); ok {
			n, _ := strconv.Atoi(strings.Fields(kb)[0])
			return float64(n) / 1000
		}
	}
	return 0
}
