package main

import (
	"warmstick/bot"
	"warmstick/store"
)

// menu is the words of the platform's menu in each language.
func menu() []bot.Commands { return nil }

// drawing makes what letters carry beside their words.
func drawing(*store.DB) bot.Draw { return bot.Draw{} }
