package bot

import (
	"errors"
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"time"
	"unicode/utf8"

	"warmstick/dialog"
)

// act is one line of a rehearsal script.
type act struct {
	verb string // clock, officer, say, press, join, wait, expect; "" = nothing to do
	who  string // the person, where there is one
	text string // what is said; the text expected
	kind dialog.Kind
	n    int           // the button pressed
	by   time.Duration // how long to wait
	till int           // or until this minute of the day; -1 = none
	at   time.Time     // the clock's start
	want string        // what an expectation compares: ~ !~ asks advice stage silent
}

var (
	speech = regexp.MustCompile(`^([\p{L}\p{N}_.-]+)>(?: (.*))?$`)
	button = regexp.MustCompile(`^\[(\d{1,3})\]$`)
	braced = regexp.MustCompile(`^\{(\w+)(?: ([^}]*))?\} ?(.*)$`)
	expect = regexp.MustCompile(`^(\S+) (?:(~|!~) (".*")|(asks|advice|stage)=(\S*)|(silent))$`)
	hhmm   = regexp.MustCompile(`^([01]?\d|2[0-3]):([0-5]\d)$`)
)

// readAct reads one line of a script. Its errors say what the line should be.
func readAct(line string) (act, error) {
	line = strings.TrimRight(line, "\r\n")
	switch {
	case !utf8.ValidString(line):
		return act{}, fmt.Errorf("not UTF-8 text; save the script as UTF-8")
	case strings.HasPrefix(line, "#"), strings.TrimSpace(line) == "":
		return act{}, nil
	}
	if m := speech.FindStringSubmatch(line); m != nil {
		return readSpeech(m[1], m[2])
	}
	word, rest, _ := strings.Cut(strings.TrimSpace(line), " ")
	rest = strings.TrimSpace(rest)
	switch word {
	case "clock":
		return readClock(rest)
	case "officer":
		if rest == "" || strings.ContainsAny(rest, " >") {
			return act{}, fmt.Errorf("an officer line names one person: officer tarik")
		}
		return act{verb: "officer", who: rest}, nil
	case "wait":
		return readWait(rest)
	case "expect":
		return readExpect(rest)
	}
	return act{}, fmt.Errorf("%q begins nothing known: clock, officer, NAME>, wait, expect or #", word)
}

func readSpeech(who, text string) (act, error) {
	if m := button.FindStringSubmatch(strings.TrimSpace(text)); m != nil {
		n, _ := strconv.Atoi(m[1])
		return act{verb: "press", who: who, n: n}, nil
	}
	m := braced.FindStringSubmatch(text)
	if m == nil {
		return act{verb: "say", who: who, kind: dialog.Text, text: text}, nil
	}
	switch k := dialog.Kind(m[1]); k {
	case dialog.Photo, dialog.Voice, dialog.Sticker, dialog.Location, dialog.Contact:
		return act{verb: "say", who: who, kind: k, text: m[3]}, nil
	case "join":
		if m[2] == "" {
			return act{}, fmt.Errorf("join names an officer: {join tarik}")
		}
		return act{verb: "join", who: who, text: m[2]}, nil
	}
	return act{verb: "say", who: who, kind: dialog.Text, text: text}, nil
}

func readClock(rest string) (act, error) {
	const shape = "a clock line is: clock 2026-03-02 06:00 Africa/Nairobi"
	f := strings.Fields(rest)
	if len(f) != 3 {
		return act{}, errors.New(shape)
	}
	zone, err := time.LoadLocation(f[2])
	if err != nil || f[2] == "Local" {
		return act{}, fmt.Errorf("%q is no zone of the time zone database; %s", f[2], shape)
	}
	at, err := time.ParseInLocation("2006-01-02 15:04", f[0]+" "+f[1], zone)
	if err != nil {
		return act{}, fmt.Errorf("%q is no date and hour; %s", f[0]+" "+f[1], shape)
	}
	return act{verb: "clock", at: at}, nil
}

// longest is the longest wait of one line, ten years: beyond it is a slip.
const longest = 3660 * 24 * time.Hour

func readWait(rest string) (act, error) {
	if hour, ok := strings.CutPrefix(rest, "until "); ok {
		m := hhmm.FindStringSubmatch(strings.TrimSpace(hour))
		if m == nil {
			return act{}, fmt.Errorf("%q is no hour of the day; write: wait until 07:00", hour)
		}
		h, _ := strconv.Atoi(m[1])
		minute, _ := strconv.Atoi(m[2])
		return act{verb: "wait", till: h*60 + minute}, nil
	}
	by, ok := readSpan(rest)
	if !ok {
		return act{}, fmt.Errorf("%q is no time to wait; write: wait 3d, wait 90m, wait until 07:00", rest)
	}
	if by > longest {
		return act{}, fmt.Errorf("%q is more than ten years; wait in smaller steps", rest)
	}
	return act{verb: "wait", by: by, till: -1}, nil
}

// readSpan reads 3d, 90m, 2h, 1w, 45s and their sums, 1d12h.
func readSpan(text string) (time.Duration, bool) {
	units := map[byte]time.Duration{'s': time.Second, 'm': time.Minute, 'h': time.Hour, 'd': 24 * time.Hour, 'w': 7 * 24 * time.Hour}
	var sum time.Duration
	for rest := text; rest != ""; {
		digits := 0
		for digits < len(rest) && rest[digits] >= '0' && rest[digits] <= '9' {
			digits++
		}
		if digits == 0 || digits > 7 || digits == len(rest) || units[rest[digits]] == 0 {
			return 0, false
		}
		n, _ := strconv.Atoi(rest[:digits])
		sum += time.Duration(n) * units[rest[digits]]
		rest = rest[digits+1:]
	}
	return sum, text != ""
}

func readExpect(rest string) (act, error) {
	m := expect.FindStringSubmatch(rest)
	if m == nil {
		return act{}, fmt.Errorf(`an expect line is: expect NAME ~ "text", !~ "text", asks=…, advice=…, stage=… or silent`)
	}
	a := act{verb: "expect", who: m[1]}
	switch {
	case m[2] != "":
		text, err := strconv.Unquote(m[3])
		if err != nil {
			text = m[3][1 : len(m[3])-1] // a quote or a backslash that stands for itself
		}
		a.want, a.text = m[2], text
	case m[4] != "":
		a.want, a.text = m[4], m[5]
	default:
		a.want = "silent"
	}
	return a, nil
}
