package bot

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"io"
	"strings"
	"time"

	"warmstick/dialog"
	"warmstick/store"
)

// Rehearsal plays a script of several people under a clock that jumps.
type Rehearsal struct {
	DB   *store.DB // an empty one
	Tick Tick
	Out  io.Writer // the talk
	Err  io.Writer // failed expectations
	JSON bool      // one object a line, for another program to drive the play
	Show bool      // also what was written down and is now planned
}

// ErrUnmet says that at least one expectation failed; each was reported.
var ErrUnmet = errors.New("not everything was said as expected")

// play is a rehearsal going on.
type play struct {
	Rehearsal
	room
	zone   *time.Location
	chats  map[string]int64 // by the name in the script
	cast   map[int64]*role
	line   int
	failed bool
	print  printer
}

// role is what the play remembers of one person.
type role struct {
	name    string
	since   []dialog.Letter // since the person's last line or the last wait
	last    dialog.Letter   // with its question and stage
	buttons []dialog.Button // of the last letter that had any
	shown   dialog.EntryID  // the last diary line that was shown
}

// longestLine is the longest line of a script, far beyond any message.
const longestLine = 1 << 20

// Play reads acts from in and plays each as it comes.
func (r Rehearsal) Play(ctx context.Context, in io.Reader) error {
	p := &play{Rehearsal: r, chats: map[string]int64{}, cast: map[int64]*role{}}
	p.room = room{db: r.DB, tick: r.Tick, hear: p.heard}
	p.print = printer{w: bufio.NewWriter(r.Out), json: r.JSON}
	lines := bufio.NewReaderSize(in, 64<<10)
	for {
		line, err := lines.ReadString('\n')
		if err != nil && line == "" {
			break
		}
		p.line++
		if len(line) > longestLine {
			return fmt.Errorf("line %d: longer than %d bytes", p.line, longestLine)
		}
		if err := p.act(ctx, line); err != nil {
			return fmt.Errorf("line %d: %w", p.line, err)
		}
	}
	if p.failed {
		return ErrUnmet
	}
	return nil
}

func (p *play) act(ctx context.Context, line string) error {
	a, err := readAct(line)
	if err != nil {
		return err
	}
	if p.zone == nil && a.verb != "" && a.verb != "clock" {
		return errors.New("the first line sets the clock: clock 2026-03-02 06:00 Africa/Nairobi")
	}
	if a.verb != "" {
		p.print.act(p.now, p.zone, strings.TrimRight(line, "\r\n"), a.verb)
	}
	switch a.verb {
	case "clock":
		if p.zone != nil {
			return errors.New("the clock is set once, in the first line; use wait")
		}
		p.now, p.zone = a.at, a.at.Location()
		p.print.zone = p.zone
	case "officer":
		err = p.say(ctx, p.chat(a.who), dialog.OfficerMade{})
	case "say":
		err = p.speak(ctx, a.who, messageOf(a.kind, a.text, fmt.Sprintf("%s-%d", a.kind, p.line)))
	case "press":
		err = p.press(ctx, a.who, a.n)
	case "join":
		err = p.join(ctx, a.who, a.text)
	case "wait":
		for _, r := range p.cast {
			r.since = nil
		}
		until := p.now.Add(a.by)
		if a.till >= 0 {
			until = untilMinute(p.now, a.till, p.zone)
		}
		err = p.wait(ctx, until)
	case "expect":
		if unmet := p.unmet(a); unmet != "" {
			p.fail(unmet)
		}
	}
	if err != nil {
		return err
	}
	if p.Show && a.verb != "" && a.verb != "expect" {
		if err := p.show(ctx); err != nil {
			return err
		}
	}
	return p.print.done(p.line)
}

func (p *play) fail(what string) {
	p.failed = true
	fmt.Fprintf(p.Err, "line %d: %s\n", p.line, what)
}

// chat gives a person of the script a chat when they first appear.
func (p *play) chat(name string) int64 {
	if c, ok := p.chats[name]; ok {
		return c
	}
	c := int64(len(p.chats) + 1)
	p.chats[name] = c
	p.cast[c] = &role{name: name}
	return c
}

func (p *play) speak(ctx context.Context, who string, in dialog.Input) error {
	chat := p.chat(who)
	p.cast[chat].since = nil
	return p.say(ctx, chat, in)
}

func (p *play) press(ctx context.Context, who string, n int) error {
	buttons := p.cast[p.chat(who)].buttons
	if n < 1 || n > len(buttons) {
		p.fail(fmt.Sprintf("%s has no button %d; the last buttons were %s", who, n, labels(buttons)))
		return nil
	}
	return p.speak(ctx, who, dialog.Press{Button: buttons[n-1].Press})
}

// join sends the code of an officer's newest invite; without one the officer
// asks for it first.
func (p *play) join(ctx context.Context, who, officer string) error {
	code, err := p.newest(ctx, officer)
	if err != nil {
		return err
	}
	if code == "" {
		if err := p.speak(ctx, officer, messageOf(dialog.Text, "invite", "")); err != nil {
			return err
		}
		if code, err = p.newest(ctx, officer); err != nil {
			return err
		}
	}
	if code == "" {
		p.fail(fmt.Sprintf("%s has no invite to give", officer))
		return nil
	}
	return p.speak(ctx, who, dialog.Message{Kind: dialog.Text, Text: code, Code: code})
}

func (p *play) newest(ctx context.Context, officer string) (string, error) {
	id, err := p.db.PersonOf(ctx, p.chat(officer))
	if err != nil || id == 0 {
		return "", err
	}
	return p.db.Newest(ctx, id, p.now)
}

// heard takes one letter to one person.
func (p *play) heard(l store.Letter) error {
	r := p.cast[l.Chat]
	if r == nil {
		return nil
	}
	r.since = append(r.since, l.Letter)
	r.last = l.Letter
	if len(l.Letter.Buttons) > 0 {
		r.buttons = l.Letter.Buttons
	}
	return p.print.letter(p.now, r.name, l.Letter)
}

// messageOf makes the message of a typed line. A start link's code comes as
// "/start CODE".
func messageOf(kind dialog.Kind, text, file string) dialog.Message {
	m := dialog.Message{Kind: kind, Text: text}
	if kind != dialog.Text {
		m.File = file
		return m
	}
	m.Code = startCode(text)
	return m
}
