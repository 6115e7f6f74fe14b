package store

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// After an update the rows that another edition made are made anew, once.
func TestCatchUp(t *testing.T) {
	db := open(t, Options{})
	told := []int{}
	catchUp := func() {
		require.NoError(t, db.CatchUp(t.Context(), func(n int) { told = append(told, n) }))
	}
	catchUp()
	require.Empty(t, told, "an empty file has nothing to make anew")
	tell(t, db, noon, 1, "agree")
	tell(t, db, noon, 1, "build")
	edition, err := db.Setting(t.Context(), "edition")
	require.NoError(t, err)
	catchUp()
	require.Empty(t, told)
	_, err = db.stmts.once("UPDATE due SET task = 'dance'")
	require.NoError(t, err)
	require.NoError(t, db.Set(t.Context(), "edition", "of yesterday"))
	catchUp()
	require.Equal(t, []int{1}, told)
	drift, err := Compare(t.Context(), db.Path())
	require.NoError(t, err)
	require.Empty(t, drift)
	now, err := db.Setting(t.Context(), "edition")
	require.NoError(t, err)
	require.Equal(t, edition, now)
}

// A file that is closed under the program is said so by every call, and nothing
// is made worse.
func TestAClosedFileIsSaid(t *testing.T) {
	db := open(t, Options{})
	tell(t, db, noon, 1, "agree")
	path := db.Path()
	require.NoError(t, db.Close())
	require.Error(t, db.CatchUp(t.Context(), func(int) {}))
	_, err := db.Offset(t.Context(), noon)
	require.Error(t, err)
	_, err = db.Waiting(t.Context(), 5)
	require.Error(t, err)
	_, err = db.NextDue(t.Context(), noon, 5)
	require.Error(t, err)
	_, err = db.PersonOf(t.Context(), 1)
	require.Error(t, err)
	require.Error(t, db.Wipe(t.Context()))
	require.Error(t, db.Rebuild(t.Context()))
	_, err = Compare(t.Context(), path+".nowhere")
	require.Error(t, err)
	require.NoError(t, Verify(t.Context(), path))
}
