package dialog

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// Who builds without telling and then reports is asked once; who reports again
// is believed, and undo takes that back.
func TestAHeapBuiltWithoutAWord(t *testing.T) {
	v := newVillage(t, "2026-03-02T09:00:00+03:00")
	v.saysAll(1, append(start["ready"], "yes", "done", "right", "done", "done")...)
	day := DayOf(v.now, v.states[1].Person.Zone())
	v.wait(4 * 24 * time.Hour)
	v.says(1, "hot")
	require.Equal(t, "date", v.last(1).Asks, "a bare word, days after the last layer")
	v.says(1, "the stick is still hot")
	h, _ := v.states[1].Heap(1)
	require.Equal(t, day, h.Built)
	require.Len(t, h.Reads, 1)
	v.says(1, "undo")
	h, _ = v.states[1].Heap(1)
	require.Zero(t, h.Built)
	require.Equal(t, 3, h.Layers)

	v.saysAll(1, "stick hot", "turned it yesterday")
	h, _ = v.states[1].Heap(1)
	require.Equal(t, day, h.Built)
	require.Equal(t, []Day{day + 3}, h.Turns)
}
