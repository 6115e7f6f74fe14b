package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"time"

	"warmstick/dialog"
	"warmstick/dialog/picture"
	"warmstick/store"
)

func runExport(_ Main, c *call) error {
	file := c.String("db", "", "the database file; it may be in use")
	out := c.String("out", "", "the folder for the files; it is made when it is not there")
	names := c.Bool("names", false, "with names, chat ids and what people wrote; for your office only")
	if _, err := c.parse(0); err != nil {
		return err
	}
	if *file == "" || *out == "" {
		return usage{errors.New("--db FILE and --out DIR are needed")}
	}
	now := time.Now()
	var cards []dialog.Card
	chats := map[dialog.PersonID]int64{}
	groups := map[dialog.GroupID]string{}
	diary := dialog.DiaryTable(*names)
	err := store.Roll(c.ctx, *file, func(m store.Member) error {
		s := dialog.Fold(m.Person, m.Diary)
		for _, g := range s.Person.Made {
			groups[g.ID] = g.Name
		}
		dialog.DiaryRows(&diary, m.Diary, *names)
		staffOnly := s.Person.Officer() && len(s.Heaps) == 0
		if (s.Person.Consent != "" || s.Person.Nameless) && !staffOnly {
			cards = append(cards, dialog.CardOf(s))
			chats[m.Person] = m.Chat
		}
		return nil
	})
	if err != nil {
		return err
	}
	tables := dialog.Tables(cards, groups, func(id dialog.PersonID) int64 { return chats[id] }, *names, now)
	tables = append(tables, diary, dialog.Dictionary(*names))
	if err := os.MkdirAll(*out, 0o700); err != nil {
		return fmt.Errorf("make the folder: %w", err)
	}
	written, err := writeTables(*out, tables, cards, now)
	if err != nil {
		return err
	}
	fmt.Fprintf(c.out, "%d farmers, %d diary lines, in %s: %v\n", len(cards), len(diary.Rows), *out, written)
	if *names {
		fmt.Fprintf(c.err, "the files in %s hold names, chat ids and people's words; keep them apart\n", *out)
	}
	return nil
}

// writeTables writes a CSV for each table, one workbook and one page.
func writeTables(dir string, list []dialog.Table, cards []dialog.Card, now time.Time) ([]string, error) {
	tables := sheets(list)
	files := map[string][]byte{}
	var names []string
	add := func(name string, body []byte, err error) error {
		files[name] = body
		names = append(names, name)
		return err
	}
	for _, t := range tables {
		body, err := picture.CSV(t)
		if err := add(t.Name+".csv", body, err); err != nil {
			return nil, fmt.Errorf("write %s.csv: %w", t.Name, err)
		}
	}
	body, err := picture.Workbook(tables)
	if err := add("heaps.xlsx", body, err); err != nil {
		return nil, err
	}
	body, err = page("All groups", tables, cards, now)
	if err := add("heaps.html", body, err); err != nil {
		return nil, err
	}
	for _, name := range names {
		// What people told is for nobody else on this machine.
		if err := os.WriteFile(filepath.Join(dir, name), files[name], 0o600); err != nil {
			return nil, fmt.Errorf("write %s: %w", name, err)
		}
	}
	return names, nil
}

func sheets(list []dialog.Table) []picture.Table {
	var tables []picture.Table
	for _, t := range list {
		tables = append(tables, picture.Table(t))
	}
	return tables
}

// page is the printable one: all but the diary lines, which are too many to read.
func page(title string, tables []picture.Table, cards []dialog.Card, now time.Time) ([]byte, error) {
	tables = slices.DeleteFunc(slices.Clone(tables), func(t picture.Table) bool { return t.Name == "diary" || t.Name == "dictionary" })
	slices.SortStableFunc(tables, func(a, b picture.Table) int { // figures first
		return map[bool]int{true: -1, false: 0}[a.Name == "figures"] - map[bool]int{true: -1, false: 0}[b.Name == "figures"]
	})
	var stages []picture.Row
	for _, s := range dialog.FiguresOf(cards, now).ByStage {
		stages = append(stages, picture.Row{Stage: s.Of, Heaps: s.Hit})
	}
	return picture.Page(title, now, stages, tables)
}
