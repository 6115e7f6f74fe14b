package understand

import "strings"

// Command is a word of control typed instead of an answer.
type Command struct {
	Name string // menu help undo stop officer status next why | board heap round announce invite digest groups visited | delete_me my_data language pictures start settings hour place skip later
	Rest string // what follows the word: a name, a text
}

// Parse reads a command. A leading slash is dropped, English words count in every
// language, and a word that needs no argument must stand alone (with "please" at
// most), so that "stop the water" is no command.
func Parse(text, lang string) (Command, bool) {
	trimmed := strings.TrimSpace(text)
	slash := strings.HasPrefix(trimmed, "/")
	body := strings.TrimLeft(trimmed, "/")
	ts := tokens(body)
	if slash && len(ts) > 0 {
		// /announce_all or /my_data: the underscore joins
		ts = tokens(strings.ReplaceAll(body, "_", " "))
	}
	ts = unhyphened(ts)
	for len(ts) > 0 && ts[len(ts)-1].kind == mark {
		ts = ts[:len(ts)-1]
	}
	if len(ts) == 0 {
		return Command{}, false
	}
	g, words := commandWords(), keysOf(ts)
	for _, of := range append([][]tongue{languages(lang)}, elsewhereOne()...) {
		first := g.at(words, 0, of...)
		name, ok := strings.CutPrefix(first.sense, "cmd=")
		if !ok {
			continue
		}
		rest := ""
		if first.to < len(ts) {
			rest = after(body, ts[first.to-1])
		}
		switch name {
		case "heap", "announce", "visited":
			if name == "heap" && rest == "" && !slash {
				continue
			}
			return Command{name, rest}, true
		}
		if rest == "" || slash {
			return Command{name, rest}, true
		}
	}
	return Command{}, false
}

func elsewhereOne() [][]tongue {
	return [][]tongue{{en}, {sw}, {hi}, {hiLatn}, {es}, {fr}}
}

// after returns what the text holds behind a token, as typed.
func after(body string, t token) string {
	fields := strings.Fields(body)
	want := fold(string(plain(spelt(t.raw))))
	for i, f := range fields {
		k := fold(string(plain(spelt(f))))
		if strings.HasSuffix(strings.Trim(k, ".,:;!?-_"), want) || strings.HasSuffix(strings.ReplaceAll(k, "'", ""), want) {
			return strings.TrimLeft(strings.Join(fields[i+1:], " "), ":- ")
		}
	}
	return ""
}
