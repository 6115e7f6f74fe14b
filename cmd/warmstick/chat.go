package main

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"time"

	"golang.org/x/term"

	"warmstick/bot"
	"warmstick/store"
)

func runChat(m Main, c *call) error {
	file := c.String("db", "", "keep the talk in this file; without it, it is forgotten at the end")
	start := c.String("at", "", "begin the virtual clock at this moment, as 2026-03-02T06:00; without it, now")
	zone := c.String("zone", "UTC", "the zone of the clock on the screen, as Africa/Nairobi; the farmer's own is asked in the talk")
	if _, err := c.parse(0); err != nil {
		return err
	}
	place, err := time.LoadLocation(*zone)
	if err != nil || *zone == "Local" {
		return usage{fmt.Errorf("%q is no zone of the time zone database, as Africa/Nairobi is", *zone)}
	}
	now := time.Now().In(place)
	if *start != "" {
		if now, err = time.ParseInLocation("2006-01-02T15:04", *start, place); err != nil {
			return usage{fmt.Errorf("%q is no moment; write it as 2026-03-02T06:00", *start)}
		}
	}
	db, clean, err := talkFile(c, *file)
	if err != nil {
		return err
	}
	defer clean()
	line, out, bright, restore, err := keyboard(c)
	if err != nil {
		return err
	}
	defer restore()
	return bot.Terminal{DB: db, Tick: tickOf(db), Now: now, Zone: place, Line: line, Out: out, Bright: bright}.Talk(c.ctx)
}

// talkFile opens the file of a talk, or one that is thrown away.
func talkFile(c *call, file string) (*store.DB, func(), error) {
	if file != "" {
		db, err := store.Open(c.ctx, file, store.Options{})
		return db, func() { db.Close() }, err
	}
	dir, err := os.MkdirTemp("", "warmstick-")
	if err != nil {
		return nil, nil, fmt.Errorf("make a folder for the talk: %w", err)
	}
	db, err := store.Open(c.ctx, filepath.Join(dir, "chat.db"), store.Options{Loose: true})
	if err != nil {
		os.RemoveAll(dir)
		return nil, nil, err
	}
	return db, func() { db.Close(); os.RemoveAll(dir) }, nil
}

// keyboard gives lines from a person's terminal, with a history and colours, or
// from a pipe, plainly.
func keyboard(c *call) (line func() (string, error), out io.Writer, bright bool, restore func(), err error) {
	in, isFile := c.in.(*os.File)
	screen, isScreen := c.out.(*os.File)
	if !isFile || !isScreen || !term.IsTerminal(int(in.Fd())) || !term.IsTerminal(int(screen.Fd())) {
		lines := bufio.NewReader(c.in)
		return func() (string, error) {
			text, err := lines.ReadString('\n')
			if text != "" && errors.Is(err, io.EOF) {
				err = nil
			}
			return strings.TrimRight(text, "\r\n"), err
		}, c.out, false, func() {}, nil
	}
	was, err := term.MakeRaw(int(in.Fd()))
	if err != nil {
		return nil, nil, false, nil, fmt.Errorf("prepare the terminal: %w", err)
	}
	t := term.NewTerminal(struct {
		io.Reader
		io.Writer
	}{in, screen}, "> ")
	if w, h, err := term.GetSize(int(screen.Fd())); err == nil && w > 0 {
		t.SetSize(w, h)
	}
	return t.ReadLine, t, os.Getenv("NO_COLOR") == "", func() { term.Restore(int(in.Fd()), was) }, nil
}
