package bot

import (
	"context"
	"fmt"
	"io"
	"strconv"
	"strings"
	"time"

	"warmstick/dialog"
	"warmstick/store"
)

// Terminal is a talk with one farmer at a keyboard, under a clock of its own.
type Terminal struct {
	DB   *store.DB
	Tick Tick
	Now  time.Time
	Zone *time.Location
	// Line reads one line without its end; io.EOF ends the talk.
	Line func() (string, error)
	Out  io.Writer
	// Bright says whether the far end shows colours.
	Bright bool
}

// here is the chat of the person at the keyboard.
const here = 1

// seat is a talk at the terminal going on.
type seat struct {
	Terminal
	room
	last dialog.Letter
}

// Talk goes on until the input ends or the person says /quit.
func (t Terminal) Talk(ctx context.Context) error {
	s := &seat{Terminal: t}
	s.room = room{db: t.DB, tick: t.Tick, now: t.Now, hear: s.heard}
	s.note("type a message; /help lists what else there is")
	if err := s.say(ctx, here, messageOf(dialog.Text, "/start", "")); err != nil {
		return err
	}
	for ctx.Err() == nil {
		line, err := t.Line()
		if err == io.EOF {
			return nil
		}
		if err != nil {
			return fmt.Errorf("read the keyboard: %w", err)
		}
		word, rest, _ := strings.Cut(strings.TrimSpace(line), " ")
		rest = strings.TrimSpace(rest)
		if word == "/quit" {
			return nil
		}
		if err := s.line(ctx, line, word, rest); err != nil {
			return err
		}
	}
	return nil
}

func (s *seat) line(ctx context.Context, line, word, rest string) error {
	switch word {
	case "/help":
		s.help()
	case "/wait":
		return s.pass(ctx, rest)
	case "/who":
		return s.who(ctx)
	case "/diary":
		return s.diary(ctx)
	case "/plan":
		return s.plan(ctx)
	case "/undo":
		return s.say(ctx, here, messageOf(dialog.Text, "undo", ""))
	case "/officer":
		return s.say(ctx, here, dialog.OfficerMade{})
	case "/photo", "/voice", "/sticker", "/location", "/contact":
		kind := dialog.Kind(word[1:])
		return s.say(ctx, here, messageOf(kind, rest, word[1:]))
	default:
		a, err := readSpeech("me", strings.ToValidUTF8(line, "\uFFFD"))
		if err == nil && a.verb == "press" && a.n >= 1 && a.n <= len(s.last.Buttons) {
			return s.say(ctx, here, dialog.Press{Button: s.last.Buttons[a.n-1].Press})
		}
		return s.say(ctx, here, messageOf(dialog.Text, strings.ToValidUTF8(line, "\uFFFD"), ""))
	}
	return nil
}

func (s *seat) help() {
	s.note(`/wait 3d            let time pass: 90m, 2h, 3d, 1w
/wait until 07:00   let time pass until an hour of the day
/who                who the assistant thinks you are
/diary              what was written down
/plan               what you will be reminded of, and when
/undo               take the last fact back
/photo /voice /sticker /location /contact   send one, with a caption if you like
/officer            become an extension officer, to see that side
/quit               leave; also the end of input`)
}

// pass lets virtual time go by.
func (s *seat) pass(ctx context.Context, rest string) error {
	a, err := readWait(rest)
	if err != nil {
		s.note(strings.Replace(err.Error(), "wait", "/wait", 1))
		return nil
	}
	until := s.now.Add(a.by)
	if a.till >= 0 {
		until = untilMinute(s.now, a.till, s.Zone)
	}
	if err := s.wait(ctx, until); err != nil {
		return err
	}
	s.note(s.now.In(s.Zone).Format("it is now Monday 2 January 2006, 15:04"))
	return nil
}

func (s *seat) who(ctx context.Context) error {
	st, err := s.state(ctx)
	if err != nil {
		return err
	}
	p := st.Person
	s.note(fmt.Sprintf("name %q, language %q, area %q, zone %q, agreed to version %q, officer %v", p.Name, p.Lang, p.Area, p.ZoneName, p.Consent, p.Officer()))
	for _, h := range st.Heaps {
		s.note(fmt.Sprintf("heap %d: %s, round %d", h.ID, h.Stage, h.Round))
	}
	s.note(s.now.In(s.Zone).Format("it is Monday 2 January 2006, 15:04 (MST)"))
	return nil
}

func (s *seat) state(ctx context.Context) (dialog.State, error) {
	id, err := s.db.PersonOf(ctx, here)
	if err != nil {
		return dialog.State{}, err
	}
	return s.db.StateOf(ctx, id)
}

func (s *seat) diary(ctx context.Context) error {
	id, err := s.db.PersonOf(ctx, here)
	if err != nil {
		return err
	}
	diary, err := s.db.DiaryOf(ctx, id)
	if err != nil {
		return err
	}
	for _, e := range diary {
		s.note(line(e))
	}
	if len(diary) == 0 {
		s.note("nothing is written down yet")
	}
	return nil
}

func (s *seat) plan(ctx context.Context) error {
	id, err := s.db.PersonOf(ctx, here)
	if err != nil {
		return err
	}
	due, err := s.db.DueOf(ctx, id)
	if err != nil {
		return err
	}
	for _, d := range due {
		s.note(fmt.Sprintf("heap %d %s: %s", d.Heap, d.Task, d.At.In(s.Zone).Format("Monday 2 January, 15:04")))
	}
	if len(due) == 0 {
		s.note("nothing is planned")
	}
	return nil
}

// The colours are the plain ones that every terminal has.
const (
	dim    = "\x1b[2m"
	bold   = "\x1b[1m"
	green  = "\x1b[32m"
	normal = "\x1b[0m"
)

func (s *seat) paint(colour, text string) string {
	if !s.Bright {
		return text
	}
	return colour + text + normal
}

// note says something that is not the assistant's.
func (s *seat) note(text string) {
	for l := range strings.SplitSeq(text, "\n") {
		fmt.Fprintln(s.Out, s.paint(dim, "  "+l))
	}
}

// heard shows one letter.
func (s *seat) heard(l store.Letter) error {
	if l.Chat != here {
		return nil
	}
	s.last = l.Letter
	if l.Letter.Kind != dialog.Reply {
		s.note(s.now.In(s.Zone).Format("Monday 2 January, 15:04"))
	}
	fmt.Fprintln(s.Out, s.paint(green, l.Letter.Text))
	if showsPicture(l.Letter) {
		s.note("(a picture comes with it on a phone)")
	}
	for i, b := range l.Letter.Buttons {
		fmt.Fprintln(s.Out, s.paint(bold, "  "+strconv.Itoa(i+1)+" "+b.Label))
	}
	return nil
}
