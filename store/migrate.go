package store

import (
	"context"
	"database/sql"
	"embed"
	"fmt"
	"io/fs"

	"github.com/pressly/goose/v3"
)

//go:embed migrations/*.sql
var migrations embed.FS

// schema is the newest version of the file that this program knows. What reads a
// file without changing it (backup, export, doctor) reads older ones too.
const schema = 2

// migrate brings a file up to date. A file of a newer program is refused: this
// one would not understand what it holds.
func migrate(ctx context.Context, pool *sql.DB) error {
	var version int
	if err := pool.QueryRowContext(ctx, "PRAGMA user_version").Scan(&version); err != nil {
		return err
	}
	if version == schema {
		return nil // spares the start what goose would look up
	}
	if version > schema {
		return fmt.Errorf("the file is of version %d and this program knows %d; use the newer program", version, schema)
	}
	var others int
	const strangers = `SELECT count(*) FROM sqlite_schema WHERE NOT EXISTS (SELECT 1 FROM sqlite_schema WHERE name = 'goose_db_version')`
	if err := pool.QueryRowContext(ctx, strangers).Scan(&others); err != nil {
		return err
	}
	if others > 0 {
		return fmt.Errorf("the file belongs to another program; give another name")
	}
	steps, err := fs.Sub(migrations, "migrations")
	if err != nil {
		return err
	}
	second := goose.NewGoMigration(2, &goose.GoFunc{RunTx: packTalks}, nil)
	p, err := goose.NewProvider(goose.DialectSQLite3, pool, steps, goose.WithGoMigrations(second))
	if err != nil {
		return err
	}
	if _, err := p.Up(ctx); err != nil {
		return err
	}
	_, err = pool.ExecContext(ctx, fmt.Sprintf("PRAGMA user_version = %d", schema))
	return err
}
