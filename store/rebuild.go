package store

import (
	"context"
	"database/sql"
	"encoding/json"
	"errors"
	"fmt"
	"slices"
	"strings"

	"warmstick/dialog"
)

// made lists the tables that can be made anew from the diaries, with what a
// comparison reads of them. Where a due row was pushed to is no fact.
var made = []struct{ table, columns string }{
	{"due", "person, heap, task, day, at"},
	{"card", "person, body"},
	{"membership", "crew, person, role"},
	{"crew", "id, name, founder"},
	{"invite", "code, crew, role, by, expires, ended"},
}

// Rebuild throws away everything that is made from the diaries and makes it
// anew, in one transaction.
func (db *DB) Rebuild(ctx context.Context) error {
	err := db.write(ctx, "rebuild", func() error {
		db.shelf.empty()
		for _, m := range made {
			if _, err := db.stmts.once("DELETE FROM " + m.table); err != nil {
				return err
			}
		}
		people, err := db.people()
		if err != nil {
			return err
		}
		for some := range slices.Chunk(people, atOnce) {
			if err := db.remake(some); err != nil {
				return err
			}
		}
		return nil
	})
	if err != nil {
		return fmt.Errorf("rebuild: %w", plain(err))
	}
	return nil
}

// atOnce is how many people are folded side by side; their diaries are in memory.
const atOnce = 100

// remake folds people's diaries, on all cores, and writes down what follows.
func (db *DB) remake(people []dialog.PersonID) error {
	pages, errs := make([]*page, len(people)), make([]error, len(people))
	persons, diaries := make([]row, len(people)), make([][]row, len(people))
	for i, id := range people {
		var err error
		if persons[i], err = db.stmts.first(personByID, int64(id)); err != nil {
			return err
		}
		err = db.stmts.rows(entryList, func(r row) error {
			diaries[i] = append(diaries[i], slices.Clone(r))
			return nil
		}, int64(id))
		if err != nil {
			return err
		}
	}
	onAllCores(len(people), func(i int) {
		pages[i], errs[i] = folded(persons[i], diaries[i])
	})
	if err := errors.Join(errs...); err != nil {
		return err
	}
	for _, p := range pages {
		p.grown = true
		if err := db.settle(p); err != nil {
			return err
		}
	}
	return db.save()
}

// folded makes a page of a person's row and diary, with nothing derived from it yet.
func folded(person row, lines []row) (p *page, err error) {
	id := dialog.PersonID(person.int(0))
	diary := make([]dialog.Entry, len(lines))
	for i, r := range lines {
		if diary[i], err = entryOf(r, id); err != nil {
			return nil, err
		}
	}
	if p, err = talking(person); err != nil {
		return nil, err
	}
	p.refold(id, diary)
	return p, nil
}

func (db *DB) people() (people []dialog.PersonID, err error) {
	err = db.stmts.rowsOnce("SELECT id FROM person ORDER BY id", func(r row) error {
		people = append(people, dialog.PersonID(r.int(0)))
		return nil
	})
	return people, err
}

// Drift is where the kept rows differ from those that the diaries give.
type Drift struct {
	Table string
	Kept  int // rows that the diaries do not give
	Lost  int // rows that should be there
}

// Compare makes every derived row anew beside the kept ones and says where they
// differ; nothing is changed. It reads one moment of the file.
func Compare(ctx context.Context, path string) ([]Drift, error) {
	conn, done, err := readOnly(ctx, path)
	if err != nil {
		return nil, err
	}
	defer done()
	if _, err := conn.ExecContext(ctx, "BEGIN"); err != nil {
		return nil, err
	}
	defer conn.ExecContext(ctx, "ROLLBACK")
	want, err := derived(ctx, conn)
	if err != nil {
		return nil, fmt.Errorf("compare: %w", err)
	}
	var drifts []Drift
	for _, m := range made {
		d := Drift{Table: m.table}
		err := scanned(ctx, conn, "SELECT "+m.columns+" FROM "+m.table, strings.Count(m.columns, ",")+1, func(r row) error {
			key := m.table + "\x00" + join(r)
			if _, ok := want[key]; !ok {
				d.Kept++
			}
			delete(want, key)
			return nil
		})
		if err != nil {
			return nil, fmt.Errorf("compare %s: %w", m.table, err)
		}
		for key := range want {
			if strings.HasPrefix(key, m.table+"\x00") {
				d.Lost++
			}
		}
		if d.Kept+d.Lost > 0 {
			drifts = append(drifts, d)
		}
	}
	return drifts, nil
}

// derived folds every diary and gives the rows that follow from it.
func derived(ctx context.Context, conn *sql.Conn) (map[string]struct{}, error) {
	want := map[string]struct{}{}
	add := func(table string, columns ...any) {
		want[table+"\x00"+join(columns)] = struct{}{}
	}
	return want, eachDiary(ctx, conn, func(id dialog.PersonID, diary []dialog.Entry) error {
		s := dialog.Fold(id, diary)
		for _, d := range dialog.Plan(s) {
			add("due", int64(id), int64(d.Heap), string(d.Task), int64(d.Day), ms(d.At))
		}
		if len(s.Person.Roles) > 0 {
			card, err := json.Marshal(dialog.CardOf(s))
			if err != nil {
				return err
			}
			add("card", int64(id), string(card))
		}
		for _, m := range s.Person.Roles {
			add("membership", int64(m.Group), int64(id), string(m.Role))
		}
		for _, g := range s.Person.Made {
			add("crew", int64(g.ID), g.Name, int64(id))
		}
		for _, i := range s.Person.Invites {
			ended := int64(0)
			if i.Ended {
				ended = 1
			}
			add("invite", i.Code, int64(i.Group), string(i.Role), int64(id), ms(i.Expires), ended)
		}
		return nil
	})
}

func join[V any](columns []V) string {
	parts := make([]string, len(columns))
	for i, c := range columns {
		parts[i] = fmt.Sprint(c)
	}
	return strings.Join(parts, "\x01")
}

// eachDiary reads all diaries, one person after the other.
func eachDiary(ctx context.Context, conn *sql.Conn, do func(dialog.PersonID, []dialog.Entry) error) error {
	var of dialog.PersonID
	var diary []dialog.Entry
	err := scanned(ctx, conn, "SELECT id, heap, at, day, noted, by, told, kind, body, person FROM entry ORDER BY person, id", 10, func(r row) error {
		id := dialog.PersonID(r.int(9))
		if id != of && len(diary) > 0 {
			if err := do(of, diary); err != nil {
				return err
			}
			diary = diary[:0]
		}
		of = id
		e, err := entryOf(r, id)
		diary = append(diary, e)
		return err
	})
	if err != nil || len(diary) == 0 {
		return err
	}
	return do(of, diary)
}

// String is a drift in words for the operator.
func (d Drift) String() string {
	return fmt.Sprintf("%s: %d rows that the diaries do not give, %d that are missing", d.Table, d.Kept, d.Lost)
}
