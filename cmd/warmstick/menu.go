package main

import (
	"warmstick/bot"
)

// menu is the words of the platform's menu in each language.
func menu() []bot.Commands { return nil }
