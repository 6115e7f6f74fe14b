package bot

import (
	"bufio"
	"context"
	"encoding/json"
	"fmt"
	"strings"
	"time"

	"warmstick/dialog"
)

// printer writes a rehearsal down, for people or for a program.
type printer struct {
	w    *bufio.Writer
	json bool
	zone *time.Location
	on   dialog.Day // the date printed last
}

// said is the contract's line for one letter; the order of its fields is fixed.
type said struct {
	At      string   `json:"at"`
	To      string   `json:"to"`
	Kind    string   `json:"kind"`
	Text    string   `json:"text"`
	Buttons []string `json:"buttons"`
	Asks    string   `json:"asks"`
	Heap    int      `json:"heap"`
	Stage   string   `json:"stage"`
	Advice  []string `json:"advice"`
	Picture bool     `json:"picture"`
}

func (p *printer) letter(now time.Time, to string, l dialog.Letter) error {
	if !p.json {
		p.date(now)
		text := strings.ReplaceAll(l.Text, "\n", "\n"+strings.Repeat(" ", 12))
		_, err := fmt.Fprintf(p.w, "    %-6s  %s%s\n", to, text, p.below(now, l))
		return err
	}
	s := said{At: now.In(p.zone).Format(time.RFC3339), To: to, Kind: string(l.Kind), Text: l.Text, Buttons: []string{}, Asks: l.Asks,
		Heap: int(l.Heap), Stage: stageOf(l), Advice: append([]string{}, l.Advice...), Picture: showsPicture(l)}
	for _, b := range l.Buttons {
		s.Buttons = append(s.Buttons, b.Label)
	}
	return p.object(s)
}

// showsPicture says whether a letter goes out as a picture with a caption.
func showsPicture(l dialog.Letter) bool {
	return l.Picture != nil || l.File != nil && l.File.Kind == dialog.Photo
}

// below is what stands under a letter's text: buttons, and what else it carries.
func (p *printer) below(now time.Time, l dialog.Letter) string {
	var b strings.Builder
	indent := "\n" + strings.Repeat(" ", 12)
	if showsPicture(l) {
		b.WriteString(indent + "(picture)")
	}
	if l.Paper != nil {
		b.WriteString(indent + "(paper: " + l.Paper.Name + ")")
	}
	if l.Kind != dialog.Reply {
		b.WriteString(indent + "(" + string(l.Kind) + " " + now.In(p.zone).Format("15:04") + ")")
	}
	if len(l.Buttons) > 0 {
		b.WriteString(indent)
		for i, button := range l.Buttons {
			if i > 0 {
				b.WriteString("  ")
			}
			fmt.Fprintf(&b, "[%d] %s", i+1, button.Label)
		}
	}
	return b.String()
}

func (p *printer) object(v any) error {
	e := json.NewEncoder(p.w)
	e.SetEscapeHTML(false)
	if err := e.Encode(v); err != nil {
		return err
	}
	return p.w.Flush() // whoever drives the play waits for it
}

// act repeats a line of the script in the talk.
func (p *printer) act(now time.Time, zone *time.Location, line, verb string) {
	if p.json || verb == "expect" || verb == "clock" || verb == "wait" {
		return
	}
	p.date(now)
	fmt.Fprintln(p.w, line)
}

// date heads each new day of the talk.
func (p *printer) date(now time.Time) {
	if day := dialog.DayOf(now, p.zone); day != p.on {
		p.on = day
		fmt.Fprintf(p.w, "\n%s\n", now.In(p.zone).Format("Monday 2 January 2006"))
	}
}

func (p *printer) done(line int) error {
	if p.json {
		fmt.Fprintf(p.w, "{\"done\":%d}\n", line)
	}
	return p.w.Flush()
}

// show prints the diary lines that are new and the due rows of all people.
func (p *play) show(ctx context.Context) error {
	if p.JSON {
		return nil
	}
	for chat := int64(1); chat <= int64(len(p.cast)); chat++ {
		r := p.cast[chat]
		id, err := p.db.PersonOf(ctx, chat)
		if err != nil || id == 0 {
			continue
		}
		diary, err := p.db.DiaryOf(ctx, id)
		if err != nil {
			return err
		}
		grown := false
		for _, e := range diary {
			if e.ID > r.shown {
				r.shown, grown = e.ID, true
				fmt.Fprintf(p.print.w, "      diary %s %s\n", r.name, line(e))
			}
		}
		if !grown {
			continue
		}
		due, err := p.db.DueOf(ctx, id)
		if err != nil {
			return err
		}
		for _, d := range due {
			fmt.Fprintf(p.print.w, "      due   %s heap %d %s %s\n", r.name, d.Heap, d.Task, d.At.In(p.zone).Format("2 January 15:04"))
		}
	}
	return nil
}

// line is one diary line on paper.
func line(e dialog.Entry) string {
	kind, body, err := dialog.Encode(e.Event)
	if err != nil {
		return err.Error()
	}
	y, m, d := e.Day.Date()
	return fmt.Sprintf("heap %d %d-%02d-%02d %s %s", e.Heap, y, m, d, kind, body)
}
