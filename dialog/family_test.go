package dialog

import (
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// A second phone sees the same question, answers it for the owner's heap, and
// leaves again.
func TestASecondPhoneOnOneHeap(t *testing.T) {
	v := newVillage(t, "2026-03-02T07:00:00+03:00")
	for _, line := range []string{"hello", "English", "yes", "Amina", "Nakuru", "built today", "6 x 4 x 4 ft", "share"} {
		v.says(1, line)
	}
	code := v.states[1].Person.Invites[0].Code
	for _, line := range []string{"hello", "Kiswahili", "ndiyo"} {
		v.says(2, line)
	}
	v.says(2, code)
	require.Equal(t, PersonID(1), v.states[2].Person.Helps)
	v.wait(4 * 24 * time.Hour)
	require.Equal(t, "stick", v.last(2).Asks, "the reminder reaches both phones")
	v.says(2, "kijiti ni moto")
	require.Equal(t, PersonID(2), v.last(2).To)
	h, _ := v.states[1].Heap(1)
	r, ok := h.Read()
	require.True(t, ok)
	require.Equal(t, "hot", r.Warmth)
	diary := v.diaries[1]
	told := false
	for _, e := range diary {
		if _, ok := e.Event.(StickRead); ok {
			require.Equal(t, PersonID(2), e.By, "marked with who said it")
			told = true
		}
	}
	require.True(t, told)
	require.Empty(t, v.states[2].Heaps)
	v.says(2, "leave")
	require.Zero(t, v.states[2].Person.Helps)
	v.says(2, "kijiti ni baridi")
	h, _ = v.states[1].Heap(1)
	require.Len(t, h.Reads, 1, "a phone that left changes nothing")
	require.False(t, strings.Contains(v.last(2).Text, "Amina"))
}
