package store

import (
	"context"
	"database/sql"
	"encoding/json"
	"io/fs"
	"path/filepath"
	"testing"

	"github.com/pressly/goose/v3"
	"github.com/stretchr/testify/require"

	"warmstick/dialog"
)

func TestTheSchemaIsTheNewestMigration(t *testing.T) {
	require.Equal(t, schema, count(t, open(t, Options{}), "SELECT max(version_id) FROM goose_db_version"))
}

// oldFile is a file of version 1, with one person asked about another in JSON.
func oldFile(t *testing.T, talk string) string {
	path := filepath.Join(t.TempDir(), "old.db")
	pool, err := sql.Open("sqlite", safe().dsn(path))
	require.NoError(t, err)
	defer pool.Close()
	steps, err := fs.Sub(migrations, "migrations")
	require.NoError(t, err)
	p, err := goose.NewProvider(goose.DialectSQLite3, pool, steps)
	require.NoError(t, err)
	_, err = p.UpTo(t.Context(), 1)
	require.NoError(t, err)
	for _, q := range []string{
		`INSERT INTO entry VALUES (1, 1, 0, 0, 0, 1000, 1, 1, 'Named', '{"Name":"Amina"}'), (2, 2, 0, 0, 0, 1000, 2, 1, 'Named', '{"Name":"Tarik"}')`,
		`INSERT INTO person VALUES (1, 11, '{}', 1, 1, '{"Person":{"ID":1,"Name":"Somebody else"}}')`,
		`INSERT INTO tombstone VALUES (3, 1000)`,
		`UPDATE counter SET person = 3, entry = 2`,
		`PRAGMA user_version = 1`,
	} {
		_, err := pool.ExecContext(t.Context(), q)
		require.NoError(t, err)
	}
	_, err = pool.ExecContext(t.Context(), `INSERT INTO person VALUES (2, NULL, ?, 2, 0, NULL)`, talk)
	require.NoError(t, err)
	return path
}

// A file of version 1 is brought up to date with all that cannot be made anew: its
// talks. Its snapshots are let go.
func TestAFileOfVersionOneIsBroughtUpToDate(t *testing.T) {
	want := dialog.Talk{Lang: "sw", Seq: 7, Open: dialog.Question{ID: "stick", Who: 1, Choices: []dialog.Choice{{Label: "Moto", Means: "stick=hot"}}},
		Said: 1 << 63, SaidAt: noon, Lines: []string{"habari"}}
	body, err := json.Marshal(want)
	require.NoError(t, err)
	path := oldFile(t, string(body))
	require.NoError(t, Verify(t.Context(), path), "an older file can be read and backed up as it is")
	require.Equal(t, []dialog.PersonID{3}, tombstones(t.Context(), path))
	db, err := Open(t.Context(), path, Options{Step: echo})
	require.NoError(t, err)
	defer db.Close()
	for id, name := range map[dialog.PersonID]string{1: "Amina", 2: "Tarik"} {
		s, err := db.StateOf(t.Context(), id)
		require.NoError(t, err)
		require.Equal(t, name, s.Person.Name, "from the diary, not from the old snapshot")
	}
	s, err := db.StateOf(t.Context(), 2)
	require.NoError(t, err)
	require.Equal(t, want, s.Talk)
	require.NoError(t, db.Forget(t.Context(), noon, 1))
	s, err = db.StateOf(t.Context(), 2)
	require.NoError(t, err)
	require.Zero(t, s.Talk.Open, "the question about somebody who is gone is closed")
	require.NoError(t, Backup(t.Context(), path, filepath.Join(t.TempDir(), "copy.db")))
}

// A talk that cannot be read leaves the old file as it was.
func TestAnUpdateThatFailsChangesNothing(t *testing.T) {
	path := oldFile(t, "{")
	_, err := Open(t.Context(), path, Options{})
	require.ErrorContains(t, err, "talk of person 2")
	conn, done, err := readOnly(context.Background(), path)
	require.NoError(t, err)
	defer done()
	var talk string
	require.NoError(t, conn.QueryRowContext(t.Context(), "SELECT talk FROM person WHERE id = 2").Scan(&talk))
	require.Equal(t, "{", talk)
}

// Asking about a person is told from asking about another whose number begins
// alike, and names nobody by chance.
func TestQuestionsAboutAnotherStay(t *testing.T) {
	db := open(t, Options{})
	for _, id := range []dialog.PersonID{1, 12, 23, 24, 255, 256, 1 << 40} {
		talk, err := dialog.PackTalk(dialog.Talk{Open: dialog.Question{Who: id}})
		require.NoError(t, err)
		for _, other := range []dialog.PersonID{1, 12, 23, 24, 255, 256, 1 << 40} {
			about, err := dialog.AskedAbout(other)
			require.NoError(t, err)
			var at int
			require.NoError(t, look(t, db).QueryRow("SELECT instr(?, ?)", talk, about).Scan(&at))
			require.Equal(t, id == other, at > 0, "%d in a talk about %d", other, id)
		}
	}
}
