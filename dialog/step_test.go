package dialog

import (
	"testing"
	"time"
)

// BenchmarkStep is one report of a farmer in the middle of a heap, from text to
// letters.
func BenchmarkStep(b *testing.B) {
	v := newVillage(b, "2026-03-02T07:00:00+03:00")
	for _, line := range []string{"hello", "English", "yes", "Amina", "Nakuru", "built today", "6 x 4 x 4 ft"} {
		v.says(1, line)
	}
	v.wait(4 * 24 * time.Hour)
	s := v.states[1]
	s.Talk, s.Register = v.talks[1], v
	now := v.now
	b.ReportAllocs()
	for b.Loop() {
		Step(s, Message{Kind: Text, Text: "stick hot, smells a bit of ammonia"}, now)
	}
}

func BenchmarkStepReminder(b *testing.B) {
	v := newVillage(b, "2026-03-02T07:00:00+03:00")
	for _, line := range []string{"hello", "English", "yes", "Amina", "Nakuru", "built today", "6 x 4 x 4 ft"} {
		v.says(1, line)
	}
	s := v.states[1]
	s.Talk, s.Register = v.talks[1], v
	due := Plan(s)
	now := due[0].At
	b.ReportAllocs()
	for b.Loop() {
		Step(s, Reminder{Due: due[:1]}, now)
	}
}
