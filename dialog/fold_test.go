package dialog

import (
	"encoding/json"
	"reflect"
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// anyEvent draws an event of the closed set with fields of any value.
func anyEvent(t *rapid.T) Event {
	var kinds []string
	for k := range events {
		kinds = append(kinds, k)
	}
	slices.Sort(kinds)
	v := reflect.New(events[rapid.SampledFrom(kinds).Draw(t, "kind")]).Elem()
	for i := range v.NumField() {
		switch f := v.Field(i); f.Kind() {
		case reflect.String:
			f.SetString(rapid.SampledFrom([]string{"", "hot", "cold", "warm", "right", "ammonia", "bloated", "third", "Africa/Nairobi", "sw", "shake", "stick", string(ColdPath), string(HotHeap), "farmer", "x"}).Draw(t, "text"))
		case reflect.Int, reflect.Int64:
			f.SetInt(rapid.Int64Range(-3, 20600).Draw(t, "number"))
		case reflect.Float64:
			f.SetFloat(rapid.Float64Range(-1, 100).Draw(t, "measure"))
		case reflect.Bool:
			f.SetBool(rapid.Bool().Draw(t, "flag"))
		}
	}
	return v.Interface().(Event)
}

func anyDiary(t *rapid.T) []Entry {
	start := time.Date(2026, 3, 2, 6, 0, 0, 0, time.UTC)
	n := rapid.IntRange(0, 60).Draw(t, "lines")
	var diary []Entry
	for range n {
		start = start.Add(time.Duration(rapid.IntRange(0, 72).Draw(t, "hours")) * time.Hour)
		back := rapid.IntRange(0, 5).Draw(t, "late")
		diary = append(diary, Entry{
			Person: 1, By: rapid.SampledFrom([]PersonID{0, 1, 1, 2}).Draw(t, "by"),
			Heap:  HeapID(rapid.IntRange(0, 3).Draw(t, "heap")),
			Noted: start, At: start.AddDate(0, 0, -back), Day: DayOf(start, time.UTC) - Day(back),
			Told: rapid.IntRange(0, 20).Draw(t, "told"), Event: anyEvent(t),
		})
	}
	return diary
}

// Folding is total: any lines in any order give heaps with a stage of the
// contract, and an active heap has a next step.
func TestAnyDiaryFolds(t *testing.T) {
	stages := []Stage{Planning, Gathering, Ferment, Building, Heating, Turned, Resting, Opening, Cooling, Worms, Harvest, Done, ColdDung, Abandoned}
	rapid.Check(t, func(t *rapid.T) {
		s := Fold(1, anyDiary(t))
		for _, h := range s.Heaps {
			require.Contains(t, stages, h.Stage)
			if h.Active() {
				require.NotEmpty(t, h.Windows(), "a heap in %s with nothing to do: %+v", h.Stage, h)
			}
		}
		for _, d := range Plan(s) {
			if d.Heap == 0 {
				continue // an officer is told of a danger at any hour
			}
			local := d.At.In(s.Person.Zone())
			require.Equal(t, d.Day, DayOf(d.At, s.Person.Zone()))
			if m := s.Person.Minute; m >= dayBegins && m < dayEnds || m == 0 {
				require.True(t, local.Hour() >= 6 && local.Hour() < 20, local)
			}
		}
	})
}

// A line folded in one by one is the same as folding all, and the kept copies
// before it do not change.
func TestFoldStepByStep(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		diary := anyDiary(t)
		diary = slices.DeleteFunc(diary, func(e Entry) bool { _, ok := e.Event.(Struck); return ok })
		s := Fold(1, nil)
		var kept []State
		var prints []string
		for _, e := range diary {
			kept = append(kept, s)
			body, err := json.Marshal(s)
			require.NoError(t, err)
			prints = append(prints, string(body))
			s = s.After(e)
		}
		want, err := json.Marshal(Fold(1, diary))
		require.NoError(t, err)
		got, err := json.Marshal(s)
		require.NoError(t, err)
		require.Equal(t, string(want), string(got))
		for i := range kept {
			body, _ := json.Marshal(kept[i])
			require.Equal(t, prints[i], string(body), "a kept state changed")
		}
	})
}

// Taking a message back leaves the state as it was before it, byte for byte.
func TestStruckLinesLeaveNoTrace(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		diary := anyDiary(t)
		last := 99
		before := Fold(1, diary)
		more := slices.Clone(diary)
		for range rapid.IntRange(1, 4).Draw(t, "told") {
			e := Entry{Person: 1, By: 1, Heap: HeapID(rapid.IntRange(0, 3).Draw(t, "heap")), Noted: time.Date(2027, 1, 1, 0, 0, 0, 0, time.UTC), Told: last, Event: anyEvent(t)}
			if _, struck := e.Event.(Struck); struck {
				continue
			}
			more = append(more, e)
		}
		more = append(more, Entry{Person: 1, By: 1, Noted: time.Date(2027, 1, 1, 0, 0, 0, 0, time.UTC), Event: Struck{Told: last}})
		after := Fold(1, more)
		after.Person.Told, before.Person.Told = 0, 0
		after.Person.Since, before.Person.Since = time.Time{}, time.Time{}
		after.Person.Unheard, before.Person.Unheard = 0, 0
		a, _ := json.Marshal(after)
		b, _ := json.Marshal(before)
		require.Equal(t, string(b), string(a))
	})
}

// The diary's codec gives back what it was given.
func TestEventsComeBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		e := anyEvent(t)
		kind, body, err := Encode(e)
		require.NoError(t, err)
		back, err := Decode(kind, body)
		require.NoError(t, err)
		require.Equal(t, e, back)
	})
}

func BenchmarkFold300(b *testing.B) {
	diary := lifeOf300()
	b.ReportAllocs()
	for b.Loop() {
		Fold(1, diary)
	}
}

func BenchmarkPlan(b *testing.B) {
	s := Fold(1, lifeOf300())
	b.ReportAllocs()
	for b.Loop() {
		Plan(s)
	}
}

// lifeOf300 is a heap of 300 lines: a long bottle, layers, sticks and worms.
func lifeOf300() []Entry {
	at := time.Date(2026, 3, 2, 6, 0, 0, 0, time.UTC)
	var d []Entry
	add := func(h HeapID, ev Event) {
		at = at.Add(8 * time.Hour)
		d = append(d, Entry{Person: 1, By: 1, Heap: h, At: at, Noted: at, Day: DayOf(at, time.UTC), Told: len(d) + 1, Event: ev})
	}
	add(0, Consented{"1"})
	add(0, Placed{Area: "kenya", Zone: "Africa/Nairobi"})
	add(1, Begun{HotHeap})
	for range 20 {
		add(1, Gathered{3, "basket", "cow_dung"})
	}
	add(1, GatherDone{})
	add(1, StarterChosen{Bottle})
	add(1, BottleMixed{})
	for range 60 {
		add(1, BottleShaken{})
		add(1, Reminded{Task: TaskShake, Day: DayOf(at, time.UTC)})
	}
	for range 7 {
		add(1, LayerLaid{})
	}
	add(1, Built{})
	for len(d) < 300 {
		add(1, StickRead{Warmth: "warm"})
		add(1, Squeezed{"right"})
		add(1, Reminded{Task: TaskStick, Day: DayOf(at, time.UTC)})
	}
	return d
}
