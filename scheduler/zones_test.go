package scheduler

import (
	"archive/zip"
	"fmt"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"warmstick/dialog"
)

// In every zone of the time zone database, on the days around each change of its
// clocks in the next three years, a farmer who shakes a bottle every morning
// hears of it exactly once a date of their calendar, at their hour.
func TestOneReminderADateInEveryZone(t *testing.T) {
	from := time.Date(2026, 3, 1, 0, 0, 0, 0, time.UTC)
	zones := zoneNames(t)
	require.Greater(t, len(zones), 400)
	changes := 0
	for _, name := range zones {
		zone, err := time.LoadLocation(name)
		require.NoError(t, err, name)
		days := []time.Time{from.AddDate(0, 1, 0)} // a quiet stretch for all
		for day := from; day.Before(from.AddDate(3, 0, 0)); day = day.AddDate(0, 0, 1) {
			_, before := day.In(zone).Zone()
			if _, after := day.AddDate(0, 0, 1).In(zone).Zone(); before != after {
				days = append(days, day)
				changes++
			}
		}
		for _, day := range days {
			mornings(t, name, zone, day)
		}
	}
	require.Greater(t, changes, 300)
}

// mornings lives through the eight days around one.
func mornings(t *testing.T, name string, zone *time.Location, day time.Time) {
	t.Helper()
	start := day.AddDate(0, 0, -4)
	var told int
	entry := func(now time.Time, heap dialog.HeapID, e dialog.Event) dialog.Entry {
		told++
		return dialog.Entry{Person: 1, Heap: heap, At: now, Noted: now, Day: dialog.DayOf(now, zone), By: 1, Told: told, Event: e}
	}
	s := dialog.Fold(1, []dialog.Entry{
		entry(start, 0, dialog.Consented{Version: "1"}), entry(start, 0, dialog.LanguageSet{Lang: "en"}), entry(start, 0, dialog.Placed{Zone: name}),
		entry(start, 1, dialog.Begun{Path: dialog.HotHeap}), entry(start, 1, dialog.StarterChosen{Starter: dialog.Bottle}), entry(start, 1, dialog.BottleMixed{}),
	})
	heard := map[dialog.Day]int{}
	now := start
	for range 60 {
		plan := dialog.Plan(s)
		if len(plan) == 0 {
			break
		}
		next := plan[0].At
		for _, d := range plan {
			if d.At.Before(next) {
				next = d.At
			}
		}
		if next.After(start.AddDate(0, 0, 8)) {
			break
		}
		require.True(t, next.After(now) || next.Equal(now), "%s goes back in time", name)
		now = next
		var due []dialog.Due
		for _, d := range plan {
			if !d.At.After(now) {
				due = append(due, d)
			}
		}
		a := dialog.Step(s, dialog.Reminder{Due: due}, now)
		require.NotEmpty(t, a.Entries, "%s: a reminder without a trace comes for ever", name)
		shaken := false
		for _, e := range a.Entries {
			e.Person = 1
			s = s.After(e)
			if r, ok := e.Event.(dialog.Reminded); ok && r.Task == dialog.TaskShake {
				heard[dialog.DayOf(now, zone)]++
				shaken = true
				local := now.In(zone)
				require.Equal(t, dialog.DefaultMinute, local.Hour()*60+local.Minute(), "%s at %s", name, local)
			}
		}
		if shaken {
			s = s.After(entry(now.Add(10*time.Minute), 1, dialog.BottleShaken{}))
		}
	}
	first, last := dialog.DayOf(start, zone)+1, dialog.DayOf(start.AddDate(0, 0, 7), zone)
	for d := first; d <= last; d++ {
		y, m, dd := d.Date()
		require.Equal(t, 1, heard[d], "%s on %s", name, fmt.Sprintf("%d-%02d-%02d", y, m, dd))
	}
}

// zoneNames lists the zones that come with Go.
func zoneNames(t *testing.T) []string {
	t.Helper()
	root, err := exec.Command("go", "env", "GOROOT").Output()
	require.NoError(t, err)
	z, err := zip.OpenReader(filepath.Join(strings.TrimSpace(string(root)), "lib", "time", "zoneinfo.zip"))
	require.NoError(t, err)
	defer z.Close()
	var names []string
	for _, f := range z.File {
		if !strings.HasSuffix(f.Name, "/") && f.Name != "Factory" {
			names = append(names, f.Name)
		}
	}
	return names
}
