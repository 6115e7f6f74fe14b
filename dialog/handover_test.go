package dialog

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// built brings a farmer to a heap that was built today.
var builtToday = []string{"hello", "English", "yes", "Amina", "Nakuru", "built today", "6 x 4 x 4 ft"}

func (v *village) saysAll(id PersonID, lines ...string) {
	for _, line := range lines {
		v.says(id, line)
	}
}

// named finds a person by name.
func (v *village) named(name string) PersonID {
	for id, s := range v.states {
		if s.Person.Name == name {
			return id
		}
	}
	v.t.Fatalf("nobody is called %s", name)
	return 0
}

// codeOf is the newest code that a person made.
func (v *village) codeOf(id PersonID) string {
	made := v.states[id].Person.Invites
	require.NotEmpty(v.t, made)
	return made[len(made)-1].Code
}

// A heap changes hands: its diary, its day and its reminders go with it, and the
// first owner hears no more of it.
func TestAHeapIsHandedOver(t *testing.T) {
	v := newVillage(t, "2026-03-02T07:00:00+03:00")
	v.saysAll(1, builtToday...)
	v.wait(5 * 24 * time.Hour)
	v.saysAll(1, "hot", "hand over")
	require.Contains(t, v.last(1).Text, v.codeOf(1))
	code := v.codeOf(1)
	v.says(1, code)
	require.Equal(t, code, v.codeOf(1), "an own code moves nothing")
	h, _ := v.states[1].Heap(1)
	require.True(t, h.Active())

	v.saysAll(2, "hello", "Kiswahili", code, "ndiyo", "Baraka", "Nakuru")
	mine, ok := v.states[2].Heap(1)
	require.True(t, ok)
	h, _ = v.states[1].Heap(1)
	require.False(t, h.Active())
	require.True(t, mine.Active())
	require.Equal(t, Heating, mine.Stage)
	require.Equal(t, h.Built, mine.Built)
	require.Equal(t, h.Reads, mine.Reads)
	require.Empty(t, CardOf(v.states[1]).Tales, "the figures count it once")
	require.Len(t, CardOf(v.states[2]).Tales, 1)
	require.Contains(t, v.last(1).Text, "A farmer goes on", "the name was not told yet")

	quiet := len(v.heard[1])
	before := len(v.heard[2])
	v.wait(4 * 24 * time.Hour)
	require.Len(t, v.heard[1], quiet, "the first owner is reminded of nothing")
	require.Greater(t, len(v.heard[2]), before, "the new one is")
	v.says(2, "nimegeuza")
	mine, _ = v.states[2].Heap(1)
	require.Len(t, mine.Turns, 1)

	v.says(3, "hello")
	v.saysAll(3, "English", "yes", "Chebet", "Nakuru", code)
	require.Empty(t, v.states[3].Heaps, "a code works once")
}

// What may be asked of handing over and what comes of it.
func TestHandingOverCorners(t *testing.T) {
	v := newVillage(t, "2026-03-02T07:00:00+03:00")
	v.saysAll(1, "hello", "English", "yes", "Amina", "Nakuru", "hand over")
	require.Empty(t, v.states[1].Person.Invites, "no heap, no code")
	v.saysAll(1, "built today", "6 x 4 x 4 ft", "new heap", "hot heap", "20 baskets cow dung", "no", "delete me")
	heard := v.heard[1]
	require.Contains(t, heard[len(heard)-1].Text+heard[len(heard)-2].Text, "hand over")
	v.saysAll(1, "no", "hand over")
	require.Equal(t, "target", v.last(1).Asks, "two heaps: which?")
	v.says(1, "blue")
	require.Empty(t, v.states[1].Person.Invites)
	v.says(1, "2")
	require.EqualValues(t, 2, v.states[1].Person.Invites[0].Heap)
	v.says(1, "hand over heap 1")
	first := v.codeOf(1)
	require.EqualValues(t, 1, v.states[1].Person.Invites[1].Heap)

	v.says(1, "share")
	family := v.codeOf(1)
	v.saysAll(2, "hello", "English", "yes", "Baraka", family)
	require.EqualValues(t, 1, v.states[2].Person.Helps)
	v.says(2, "hand over heap 1")
	require.Len(t, v.states[1].Person.Invites, 3, "a second phone gives nothing away")
	require.Contains(t, v.last(2).Text+v.heard[2][len(v.heard[2])-2].Text, "Amina")
	v.says(2, first)
	require.Zero(t, v.states[2].Person.Helps, "who takes a heap over speaks for it alone")
	require.Empty(t, v.states[1].Person.Helpers)
	h, ok := v.states[2].Heap(1)
	require.True(t, ok && h.Active())

	v.wait(8 * 24 * time.Hour)
	v.saysAll(4, "hello", "English", "yes", "Chebet", "Nakuru", v.states[1].Person.Invites[0].Code)
	require.Empty(t, v.states[4].Heaps, "the code has run out")
}

// A farmer without a phone gets one: the keeper hands the heap over to it.
func TestTheKeeperHandsAHeapOver(t *testing.T) {
	v := ridge(t)
	v.saysAll(3, "groups", "farmer without phone", "Mama Njeri", "yes", "heap njeri", "1", "built 4 days ago", "6 x 4 x 4 ft", "hand over")
	njeri := v.named("Mama Njeri")
	code := v.codeOf(njeri)
	require.Contains(t, v.last(3).Text+v.heard[3][len(v.heard[3])-2].Text, code)
	v.saysAll(70, "hello", "English", "yes", "Njeri", "Nakuru", code)
	h, ok := v.states[70].Heap(1)
	require.True(t, ok && h.Active() && h.Built != 0)
	require.Empty(t, v.states[njeri].Active())
	require.Contains(t, v.last(3).Text, "Njeri")
	require.Empty(t, v.heard[njeri])
}
