package bot

import (
	"bytes"
	"context"
	"encoding/json"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/require"

	"warmstick/dialog"
	"warmstick/store"
)

// Whatever arrives as an update is read without a panic; what counts as a
// private message has a chat and valid text.
func FuzzUpdate(f *testing.F) {
	seeds, err := filepath.Glob("../testdata/updates/*.json")
	if err != nil || len(seeds) == 0 {
		f.Fatal("no seeds", err)
	}
	for _, seed := range seeds {
		raw, err := os.ReadFile(seed)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(raw)
	}
	f.Fuzz(func(t *testing.T, raw []byte) {
		envelope(raw)
		h, err := read(raw)
		if err != nil || h.in == nil {
			return
		}
		if h.chat == 0 {
			t.Fatal("an input of nobody")
		}
		if m, ok := h.in.(dialog.Message); ok && !utf8.ValidString(m.Text) {
			t.Fatal("text that is not UTF-8")
		}
	})
}

// A line of a script is an act or an error that says what it should be.
func FuzzScript(f *testing.F) {
	for _, line := range []string{
		"clock 2026-03-02 06:00 Africa/Nairobi", "officer tarik", "amina> hello", "amina> [2]", "amina>", "amina> {photo} my heap",
		"amina> {join tarik}", "wait 3d", "wait 90m", "wait until 07:00", `expect amina ~ "turn"`, `expect amina !~ "worms"`,
		"expect amina asks=stick", "expect amina advice=cold_redo", "expect amina silent", "# a comment", "", "wait 1d12h", "wait 99999999d",
		"expect amina ~ \"\\\"", "amina> [0]", "amina> {dance}", "\xff\xfe", "clock 2026-03-29 02:30 Europe/Paris", "wait until 24:00",
	} {
		f.Add(line)
	}
	f.Fuzz(func(t *testing.T, line string) {
		a, err := readAct(line)
		if err != nil {
			if strings.TrimSpace(err.Error()) == "" {
				t.Fatal("an error without words")
			}
			return
		}
		switch a.verb {
		case "wait":
			if a.till < 0 && (a.by < 0 || a.by > longest) {
				t.Fatalf("waits %s", a.by)
			}
		case "say", "press", "join", "officer", "expect":
			if a.who == "" {
				t.Fatal("nobody acts")
			}
		}
	})
}

// Whatever a play holds, it ends, with or without an error.
func FuzzPlay(f *testing.F) {
	f.Add("clock 2026-03-02 06:00 Africa/Nairobi\namina> hello\nwait 2d\nexpect amina silent\n")
	f.Add("clock 2026-03-02 06:00 UTC\nofficer t\na> {join t}\na> [1]\n")
	path := filepath.Join(f.TempDir(), "w.db")
	db, err := store.Open(context.Background(), path, store.Options{Step: parrot, Loose: true})
	if err != nil {
		f.Fatal(err)
	}
	f.Fuzz(func(t *testing.T, script string) {
		if strings.Count(script, "\n") > 40 {
			t.Skip()
		}
		var out, errw bytes.Buffer
		r := Rehearsal{DB: db, Tick: noTick, Out: &out, Err: &errw, JSON: true}
		r.Play(t.Context(), strings.NewReader(script))
		if !utf8.Valid(out.Bytes()) {
			t.Fatal("prints what is not UTF-8")
		}
	})
}

// Callback data of any kind reaches the conversation as it is, or not at all.
func FuzzPress(f *testing.F) {
	f.Add("1:stick:hot", int64(5))
	f.Add("", int64(-1))
	f.Fuzz(func(t *testing.T, data string, chat int64) {
		quoted, err := json.Marshal(data)
		require.NoError(t, err)
		h, err := read([]byte(`{"update_id":1,"callback_query":{"id":"q","message":{"chat":{"id":` + strconv.FormatInt(chat, 10) + `,"type":"private"}},"data":` + string(quoted) + `}}`))
		require.NoError(t, err)
		if chat == 0 {
			require.Nil(t, h.in)
			return
		}
		require.Equal(t, chat, h.chat)
	})
}
