package bot

import (
	"encoding/json"
	"errors"
	"fmt"
	"strings"
	"time"

	"warmstick/dialog"
	"warmstick/store"
)

// update is what the bot reads of a platform update; all else is left alone, so
// that a strange field elsewhere does not spoil it.
type update struct {
	ID      int64    `json:"update_id"`
	Message *message `json:"message"`
	Edited  *message `json:"edited_message"`
	Press   *struct {
		ID      string   `json:"id"`
		From    *account `json:"from"`
		Message *message `json:"message"`
		Data    string   `json:"data"`
	} `json:"callback_query"`
	Standing *struct {
		Chat chat `json:"chat"`
		New  struct {
			Status string `json:"status"`
		} `json:"new_chat_member"`
	} `json:"my_chat_member"`
}

type chat struct {
	ID   int64  `json:"id"`
	Type string `json:"type"`
}

type account struct {
	ID    int64 `json:"id"`
	IsBot bool  `json:"is_bot"`
}

type file struct {
	ID string `json:"file_id"`
}

type message struct {
	From     *account         `json:"from"`
	Chat     chat             `json:"chat"`
	Date     int64            `json:"date"`
	Text     string           `json:"text"`
	Caption  string           `json:"caption"`
	Photo    []file           `json:"photo"` // one picture in several sizes, the largest last
	Voice    *file            `json:"voice"`
	Sticker  *json.RawMessage `json:"sticker"`
	Location *json.RawMessage `json:"location"`
	Venue    *json.RawMessage `json:"venue"`
	Contact  *json.RawMessage `json:"contact"`
}

// heardOf is an update in the conversation's terms.
type heardOf struct {
	chat int64
	in   dialog.Input // nil: not for us
	at   time.Time    // when the person sent it; zero when the platform does not say
	ask  string       // a pressed button that wants to know it was felt
}

// envelope reads the two things that are needed to keep an update: its number
// and whose it is, as tolerantly as can be; 0 = unknown. What is in it may still
// be unreadable.
func envelope(raw json.RawMessage) (store.Raw, error) {
	type place struct {
		Chat struct {
			ID json.Number `json:"id"`
		} `json:"chat"`
	}
	var u struct {
		ID       *int64 `json:"update_id"`
		Message  place  `json:"message"`
		Edited   place  `json:"edited_message"`
		Standing place  `json:"my_chat_member"`
		Press    struct {
			From struct {
				ID json.Number `json:"id"`
			} `json:"from"`
			Message place `json:"message"`
		} `json:"callback_query"`
	}
	json.Unmarshal(raw, &u) // a field of a wrong type is passed over, and the rest is enough
	if u.ID == nil {
		return store.Raw{}, errors.New("an update without a number")
	}
	r := store.Raw{ID: *u.ID, Body: raw}
	for _, n := range []json.Number{u.Message.Chat.ID, u.Edited.Chat.ID, u.Press.Message.Chat.ID, u.Press.From.ID, u.Standing.Chat.ID} {
		if id, err := n.Int64(); err == nil && id != 0 {
			r.Chat = id
			break
		}
	}
	return r, nil
}

// read turns a raw update into the conversation's terms. An update with a field
// of the wrong type is a message that cannot be read yet, if it is a private
// message at all; an error means that not even that is known.
func read(raw []byte) (heardOf, error) {
	var u update
	if err := json.Unmarshal(raw, &u); err != nil {
		return readRest(raw)
	}
	switch {
	case u.Message != nil:
		return readMessage(u.Message, false), nil
	case u.Edited != nil:
		return readMessage(u.Edited, true), nil
	case u.Press != nil:
		h := heardOf{ask: u.Press.ID}
		if u.Press.Message != nil {
			h.chat = u.Press.Message.Chat.ID
			if !private(u.Press.Message.Chat) {
				return h, nil
			}
		} else if u.Press.From != nil {
			h.chat = u.Press.From.ID // a message too old for the platform to show
		}
		if h.chat != 0 {
			h.in = dialog.Press{Button: u.Press.Data}
		}
		return h, nil
	case u.Standing != nil:
		h := heardOf{chat: u.Standing.Chat.ID}
		if private(u.Standing.Chat) {
			h.in = dialog.Barred{Now: u.Standing.New.Status == "kicked"}
		}
		return h, nil
	}
	return heardOf{}, nil
}

// readRest reads an update with a field of the wrong type.
func readRest(raw []byte) (heardOf, error) {
	type shell struct {
		Chat chat `json:"chat"`
	}
	var u struct {
		Message *shell `json:"message"`
		Edited  *shell `json:"edited_message"`
	}
	json.Unmarshal(raw, &u) // what could be read is enough
	m := u.Message
	if m == nil {
		m = u.Edited
	}
	if m == nil || m.Chat.ID == 0 {
		return heardOf{}, fmt.Errorf("an update that cannot be read")
	}
	h := heardOf{chat: m.Chat.ID}
	if private(m.Chat) {
		h.in = dialog.Message{Kind: dialog.Other}
	}
	return h, nil
}

func private(c chat) bool { return c.ID != 0 && (c.Type == "private" || c.Type == "" && c.ID > 0) }

func readMessage(m *message, edited bool) heardOf {
	h := heardOf{chat: m.Chat.ID}
	if m.Date > 0 {
		h.at = time.Unix(m.Date, 0)
	}
	if !private(m.Chat) || m.From != nil && m.From.IsBot {
		return h
	}
	in := dialog.Message{Kind: dialog.Other, Text: m.Text, Amends: edited}
	switch {
	case m.Text != "":
		in.Kind = dialog.Text
		in.Code = startCode(m.Text)
	case len(m.Photo) > 0:
		in.Kind, in.File = dialog.Photo, m.Photo[len(m.Photo)-1].ID
	case m.Voice != nil:
		in.Kind, in.File = dialog.Voice, m.Voice.ID
	case m.Sticker != nil:
		in.Kind = dialog.Sticker
	case m.Location != nil || m.Venue != nil:
		in.Kind = dialog.Location
	case m.Contact != nil:
		in.Kind = dialog.Contact
	}
	if in.Text == "" {
		in.Text = m.Caption
	}
	in.Text = strings.ToValidUTF8(in.Text, "\uFFFD")
	h.in = in
	return h
}

// startCode is the code of a start link, which arrives as "/start CODE".
func startCode(text string) string {
	code, ok := strings.CutPrefix(text, "/start ")
	if !ok {
		return ""
	}
	return strings.TrimSpace(code)
}
