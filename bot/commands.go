package bot

import (
	"context"
	"encoding/json"

	tgbotapi "github.com/go-telegram-bot-api/telegram-bot-api/v5"
)

// tellCommands gives the platform the words of its menu, in each language. The
// bot works without; a failure is logged and the next start tries again.
func (b *Bot) tellCommands(ctx context.Context) {
	for _, c := range b.Commands {
		list, err := json.Marshal(c.List)
		if err != nil {
			warn("the menu could not be written", err)
			return
		}
		params := tgbotapi.Params{"commands": string(list)}
		if c.Lang != "" {
			params["language_code"] = c.Lang
		}
		if _, err := b.Line.call(ctx, "setMyCommands", params); err != nil {
			if ctx.Err() == nil {
				warn("the platform did not take the menu", err)
			}
			return
		}
	}
}
