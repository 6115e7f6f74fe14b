package store

import (
	"context"
	"database/sql/driver"
	"errors"
	"fmt"
	"io"
)

// statements are prepared on one connection and used by one goroutine at a time.
// They speak to the driver without database/sql between: a message takes a dozen
// of them, and pooling, locking and converting took a third of their time.
type statements struct {
	conn driver.Conn
	list [queries]driver.Stmt
	args []driver.NamedValue
	// fault, when a test sets it, may let a statement fail.
	fault func(text string) error
}

// prepare opens a connection and prepares them all.
func prepare(d driver.Driver, dsn string) (*statements, error) {
	conn, err := d.Open(dsn)
	if err != nil {
		return nil, err
	}
	s := &statements{conn: conn, args: make([]driver.NamedValue, 16)}
	for i := range s.args {
		s.args[i].Ordinal = i + 1
	}
	for q, text := range sqlOf {
		stmt, err := conn.Prepare(text)
		if err != nil {
			s.close()
			return nil, fmt.Errorf("prepare %q: %w", text, err)
		}
		s.list[q] = stmt
	}
	return s, nil
}

func (s *statements) close() error {
	if s == nil || s.conn == nil {
		return nil
	}
	var errs []error
	for _, stmt := range s.list {
		if stmt != nil {
			errs = append(errs, stmt.Close())
		}
	}
	err := errors.Join(append(errs, s.conn.Close())...)
	s.conn = nil
	return err
}

// errClosed is what every use gives after close.
var errClosed = errors.New("the file was closed")

func (s *statements) ready(text string) error {
	switch {
	case s.conn == nil:
		return errClosed
	case s.fault != nil:
		return s.fault(text)
	}
	return nil
}

// values puts arguments into the form that drivers take: int64, string, []byte.
func (s *statements) values(args []any) []driver.NamedValue {
	for i, a := range args {
		if n, ok := a.(int); ok {
			a = int64(n)
		}
		s.args[i].Value = a
	}
	return s.args[:len(args)]
}

// The writer's statements run without a deadline: a write that has begun is
// finished, and a context that can end would cost a goroutine for each.

func (s *statements) exec(q query, args ...any) (changed int64, err error) {
	if err := s.ready(sqlOf[q]); err != nil {
		return 0, err
	}
	return execute(s.list[q], s.values(args))
}

func execute(stmt driver.Stmt, args []driver.NamedValue) (changed int64, err error) {
	r, err := stmt.(driver.StmtExecContext).ExecContext(context.Background(), args)
	if err != nil {
		return 0, err
	}
	return r.RowsAffected()
}

// once runs a statement that is not worth keeping.
func (s *statements) once(text string, args ...any) (changed int64, err error) {
	if err := s.ready(text); err != nil {
		return 0, err
	}
	stmt, err := s.conn.Prepare(text)
	if err != nil {
		return 0, err
	}
	defer stmt.Close()
	return execute(stmt, s.values(args))
}

// row is one row of an answer.
type row []driver.Value

func (r row) int(i int) int64 {
	n, _ := r[i].(int64) // null is 0
	return n
}

func (r row) text(i int) string {
	switch v := r[i].(type) {
	case string:
		return v
	case []byte:
		return string(v)
	}
	return ""
}

func (r row) bytes(i int) []byte {
	switch v := r[i].(type) {
	case []byte:
		return v
	case string:
		return []byte(v)
	}
	return nil
}

// rows calls each for every row of the answer; errEnough ends the walk early.
func (s *statements) rows(q query, each func(row) error, args ...any) error {
	if err := s.ready(sqlOf[q]); err != nil {
		return err
	}
	return walk(s.list[q], each, s.values(args))
}

// rowsOnce is rows for a statement that is not worth keeping.
func (s *statements) rowsOnce(text string, each func(row) error, args ...any) error {
	if err := s.ready(text); err != nil {
		return err
	}
	stmt, err := s.conn.Prepare(text)
	if err != nil {
		return err
	}
	defer stmt.Close()
	return walk(stmt, each, s.values(args))
}

func walk(stmt driver.Stmt, each func(row) error, args []driver.NamedValue) (err error) {
	rows, err := stmt.(driver.StmtQueryContext).QueryContext(context.Background(), args)
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, rows.Close()) }()
	r := make(row, len(rows.Columns()))
	for {
		switch err := rows.Next(r); {
		case errors.Is(err, io.EOF):
			return nil
		case err != nil:
			return err
		}
		if err := each(r); err != nil {
			if errors.Is(err, errEnough) {
				return nil
			}
			return err
		}
	}
}

// first gives the first row of an answer; nil when there is none.
func (s *statements) first(q query, args ...any) (first row, err error) {
	err = s.rows(q, func(r row) error {
		first = r
		return errEnough
	}, args...)
	return first, err
}

// number gives the number that an answer begins with; 0 when there is none.
func (s *statements) number(q query, args ...any) (int64, error) {
	r, err := s.first(q, args...)
	if r == nil {
		return 0, err
	}
	return r.int(0), err
}

// errEnough ends a walk over rows early.
var errEnough = errors.New("enough")
