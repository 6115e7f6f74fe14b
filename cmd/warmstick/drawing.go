package main

import (
	"context"
	"fmt"
	"sync"
	"time"

	"warmstick/bot"
	"warmstick/dialog"
	"warmstick/dialog/picture"
	"warmstick/store"
)

// drawing makes what letters carry beside their words, at the moment of posting.
// link makes a start link of an invite's code; nil leaves the bare code.
func drawing(db *store.DB, link func(code string) string) bot.Draw {
	var one sync.Mutex // a picture under way takes 4 MB, and letters go by the dozen
	return bot.Draw{
		Picture: func(p dialog.Picture) ([]byte, error) {
			text := p.Text
			if p.Kind == "qr" && link != nil {
				text = link(text)
			}
			one.Lock()
			defer one.Unlock()
			return picture.Draw(p.Kind, p.Numbers, text)
		},
		Paper: func(ctx context.Context, p dialog.Paper) ([]byte, error) { return paper(ctx, db, p) },
	}
}

// startLinks makes links that open the bot with a code. The bot's name is asked
// for when the first code is drawn; while the platform does not tell it the code
// stands alone, which farmers can type as well.
func startLinks(ctx context.Context, line *bot.Line) func(code string) string {
	var mu sync.Mutex
	name := ""
	return func(code string) string {
		mu.Lock()
		defer mu.Unlock()
		if name == "" {
			asked, err := line.Username(ctx)
			if err != nil || asked == "" {
				return code
			}
			name = asked
		}
		return "https://t.me/" + name + "?start=" + code
	}
}

// paper draws an officer's workbook or page of one group.
func paper(ctx context.Context, db *store.DB, p dialog.Paper) ([]byte, error) {
	g, cards, err := db.GroupCards(ctx, p.Group)
	if err != nil {
		return nil, err
	}
	now := time.Now()
	list := append(dialog.Tables(cards, map[dialog.GroupID]string{g.ID: g.Name}, nil, p.Names, now), dialog.Dictionary(p.Names))
	switch p.Kind {
	case "workbook":
		return picture.Workbook(sheets(list))
	case "page":
		return page(g.Name, sheets(list), cards, now)
	}
	return nil, fmt.Errorf("paper %q: no such kind", p.Kind)
}
