package main

import (
	"golang.org/x/text/language"

	"warmstick/bot"
	"warmstick/dialog/phrases"
)

// menuWords are the words that work in every state, as the platform lists them.
var menuWords = []string{"menu", "next", "undo", "officer", "help", "stop"}

// menu is the words of the platform's menu in each language. The platform knows
// no scripts, so Hindi is told once; people without one of the languages see
// English.
func menu() []bot.Commands {
	var all []bot.Commands
	told := map[string]bool{}
	for _, lang := range phrases.Languages() {
		base, _ := language.MustParse(lang).Base()
		code := base.String()
		if told[code] {
			continue
		}
		told[code] = true
		list := bot.Commands{Lang: code}
		said := phrases.Few(lang, menuKeys()...)
		for _, w := range menuWords {
			list.List = append(list.List, bot.MenuWord{Command: w, Description: said["menu_"+w]})
		}
		if lang == phrases.Fallback {
			all = append(all, bot.Commands{List: list.List})
		}
		all = append(all, list)
	}
	return all
}

func menuKeys() []string {
	var keys []string
	for _, w := range menuWords {
		keys = append(keys, "menu_"+w)
	}
	return keys
}
