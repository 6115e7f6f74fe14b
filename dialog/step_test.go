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

// FuzzDecode: stored events of any bytes are read or refused, never a panic;
// what is read folds, and writes itself back.
func FuzzDecode(f *testing.F) {
	for _, e := range lifeOf300()[:40] {
		kind, body, err := Encode(e.Event)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(kind, body)
	}
	f.Fuzz(func(t *testing.T, kind string, body []byte) {
		e, err := Decode(kind, body)
		if err != nil {
			return
		}
		if _, _, err := Encode(e); err != nil {
			t.Fatalf("%s came in and cannot go out: %v", kind, err)
		}
		s := Fold(1, []Entry{{Person: 1, By: 1, Heap: 1, Noted: time.Unix(1e9, 0), Day: 11574, Event: e}})
		Plan(s)
		CardOf(s)
	})
}

// FuzzLine: any bytes typed under any question get an answer within the limits,
// an invite code among them.
func FuzzLine(f *testing.F) {
	for _, list := range sensible {
		for _, line := range list {
			f.Add(line, uint8(3))
		}
	}
	for i, line := range noise {
		f.Add(line, uint8(i))
	}
	f.Add("2w33hbsqef", uint8(5))
	f.Fuzz(func(t *testing.T, line string, steps uint8) {
		v := newVillage(t, "2026-03-02T07:00:00+03:00")
		v.check = house(v)
		path := []string{"hello", "English", "yes", "Amina", "Nakuru", "hot heap", "20 baskets cow dung, 40 bags dry leaves", "no", "today", "slurry", "6:30", "feet", "yes", "yes", "built"}
		for _, known := range path[:int(steps)%(len(path)+1)] {
			v.says(1, known)
		}
		n := len(v.heard[1])
		v.says(1, line)
		if len(v.heard[1]) == n {
			t.Fatalf("no answer to %q after %d steps", line, steps)
		}
	})
}
