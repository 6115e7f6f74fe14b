package store

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"warmstick/dialog"
)

// A letter from the pouch is the letter of the file; the outbox is the file's.
func TestThePouchSaysWhatTheFileSays(t *testing.T) {
	db := open(t, Options{Step: func(s dialog.State, in dialog.Input, now time.Time) dialog.Answer {
		to := s.Person.ID
		return dialog.Answer{Letters: []dialog.Letter{
			{To: to, Kind: dialog.Reply, Text: "plain"},
			{To: to, Kind: dialog.Broadcast, Text: "much", Buttons: []dialog.Button{{Label: "Hot", Press: "a1.0"}}, Asks: "stick", Heap: 2,
				Stage: dialog.Heating, Advice: []string{"burn_care"}, Picture: &dialog.Picture{Kind: "curve", Numbers: []float64{1, 2.5}},
				File: &dialog.Enclosed{Kind: dialog.Photo, File: "x"}, Paper: &dialog.Paper{Name: "week.xlsx", Group: 3},
				Opens: &dialog.Question{ID: "stick"}, After: now.Add(-time.Hour), Batch: "b"},
			{To: to, Kind: dialog.Remind, Text: "none", Buttons: []dialog.Button{}, Advice: []string{}},
		}}
	}})
	tell(t, db, noon, 1, "x")
	with, err := db.Letters(t.Context(), noon, 10, anybody)
	require.NoError(t, err)
	require.Len(t, with, 3)
	require.Empty(t, db.pouch.held, "each was taken")
	without, err := db.Letters(t.Context(), noon, 10, anybody)
	require.NoError(t, err)
	require.Equal(t, without, with)
}

// Letters of a transaction that did not hold are not in the pouch, whose numbers
// are given to others.
func TestThePouchForgetsWhatDidNotHold(t *testing.T) {
	db := open(t, Options{})
	db.broken = func(point string) error {
		if point == "converse before commit" {
			return errPower
		}
		return nil
	}
	_, err := db.Converse(t.Context(), noon, Call{Chat: 1, In: dialog.Message{Text: "lost"}})
	require.ErrorIs(t, err, errPower)
	db.broken = nil
	tell(t, db, noon, 1, "kept")
	require.Equal(t, []string{"heard kept"}, letters(t, db, noon))
}

func TestThePouchNeverGrows(t *testing.T) {
	var p pouch
	for id := range int64(1000) {
		p.lay(Letter{ID: id})
		if id%3 == 0 {
			p.keep()
		}
		require.LessOrEqual(t, len(p.held)+len(p.open), pouchSize+3)
	}
	for id := range int64(1000) {
		p.lay(Letter{ID: id})
	}
	p.keep()
	require.Len(t, p.held, pouchSize)
	_, ok := p.take(7)
	require.True(t, ok)
	_, ok = p.take(7)
	require.False(t, ok)
	p.empty()
	require.Empty(t, p.held)
}
