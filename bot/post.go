package bot

import (
	"context"
	"encoding/json"
	"log/slog"
	"strconv"
	"unicode/utf8"

	tgbotapi "github.com/go-telegram-bot-api/telegram-bot-api/v5"

	"warmstick/dialog"
	"warmstick/store"
)

// Draw makes what a letter carries beside its words, at the moment of posting.
// A nil function, or an error, sends the words alone.
type Draw struct {
	Picture func(dialog.Picture) (png []byte, err error)
	Paper   func(context.Context, dialog.Paper) (file []byte, err error)
}

// longestCaption is the platform's limit under a picture.
const longestCaption = 1024

// post sends one letter over the line.
func (l *Line) post(ctx context.Context, d Draw, letter store.Letter) error {
	w := letter.Letter
	to := strconv.FormatInt(letter.Chat, 10)
	markup := keyboardOf(w.Buttons)
	with := func(field string) tgbotapi.Params {
		p := tgbotapi.Params{"chat_id": to}
		if w.Text != "" {
			p[field] = w.Text
		}
		if markup != "" {
			p["reply_markup"] = markup
		}
		return p
	}
	short := utf8.RuneCountInString(w.Text) <= longestCaption
	switch {
	case w.File != nil && short:
		if method, field := enclosed(w.File.Kind); method != "" {
			p := with("caption")
			p[field] = w.File.File
			_, err := l.call(ctx, method, p)
			return err
		}
	case w.Picture != nil && short && d.Picture != nil:
		if id := l.shown.id(*w.Picture); id != "" {
			p := with("caption")
			p["photo"] = id
			if _, err := l.call(ctx, "sendPhoto", p); !l.shown.forget(*w.Picture, err) {
				return err
			}
		}
		png, err := d.Picture(*w.Picture)
		if err == nil {
			answer, err := l.upload(ctx, "sendPhoto", with("caption"), "photo", "heap.png", png)
			l.shown.keep(*w.Picture, answer)
			return err
		}
		slog.Error("a picture could not be drawn; the words go alone", "kind", w.Picture.Kind, "cause", err.Error())
	case w.Paper != nil && short && d.Paper != nil:
		paper, err := d.Paper(ctx, *w.Paper)
		if err == nil {
			_, err := l.upload(ctx, "sendDocument", with("caption"), "document", w.Paper.Name, paper)
			return err
		}
		slog.Error("a paper could not be drawn; the words go alone", "kind", w.Paper.Kind, "cause", err.Error())
	}
	_, err := l.call(ctx, "sendMessage", with("text"))
	return err
}

// enclosed is how a file of the platform's own is passed on.
func enclosed(k dialog.Kind) (method, field string) {
	switch k {
	case dialog.Photo:
		return "sendPhoto", "photo"
	case dialog.Voice:
		return "sendVoice", "voice"
	}
	return "", ""
}

// wideLabel is how many letters three buttons in a row leave to each on a narrow
// screen (common practice, no source).
const wideLabel = 9

// keyboardOf writes the buttons below a letter, numbered as they may be typed.
func keyboardOf(buttons []dialog.Button) string {
	if len(buttons) == 0 {
		return ""
	}
	type key struct {
		Text string `json:"text"`
		Data string `json:"callback_data"`
	}
	perRow := 3
	for _, b := range buttons {
		if utf8.RuneCountInString(b.Label) > wideLabel {
			perRow = 1
		}
	}
	var rows [][]key
	for i, b := range buttons {
		if i%perRow == 0 {
			rows = append(rows, nil)
		}
		k := key{strconv.Itoa(i+1) + " " + b.Label, b.Press}
		rows[len(rows)-1] = append(rows[len(rows)-1], k)
	}
	text, err := json.Marshal(map[string][][]key{"inline_keyboard": rows})
	if err != nil {
		return "" // strings always marshal
	}
	return string(text)
}
