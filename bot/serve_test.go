package bot

import (
	"context"
	"fmt"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"warmstick/bot/platform"
	"warmstick/dialog"
	"warmstick/store"
)

// parrot is a conversation that says back what it heard, so that the transport
// is tested without the trade. It keeps what it heard in the diary.
func parrot(s dialog.State, in dialog.Input, now time.Time) dialog.Answer {
	a := dialog.Answer{Talk: s.Talk}
	a.Talk.Seq++
	say := func(text string) {
		a.Letters = append(a.Letters, dialog.Letter{To: s.Person.ID, Kind: dialog.Reply, Text: text})
	}
	note := func(e dialog.Event) {
		a.Entries = append(a.Entries, dialog.Entry{At: now, Noted: now, By: s.Person.ID, Told: a.Talk.Seq, Event: e})
	}
	switch in := in.(type) {
	case dialog.Message:
		switch {
		case in.Text == "break":
			panic("in the middle of " + in.Text)
		case in.Text == "delete me":
			a.Forget = []dialog.PersonID{s.Person.ID}
			say("gone")
			return a
		case in.Kind == dialog.Text:
			note(dialog.Consented{Version: "1"})
			note(dialog.OfficerAsked{Text: in.Text})
			if in.Text == "build" {
				built := dialog.Entry{Heap: 1, At: now, Noted: now, Day: dialog.DayOf(now, time.UTC), By: s.Person.ID, Event: dialog.Built{}}
				a.Entries = append(a.Entries, built)
			}
			say("heard " + in.Text)
		default:
			say("got " + string(in.Kind))
		}
	case dialog.Press:
		say("pressed " + in.Button)
	case dialog.Barred:
		note(dialog.BarSet{On: in.Now})
	case dialog.Reminder:
		for _, d := range in.Due {
			a.Entries = append(a.Entries, dialog.Entry{Heap: d.Heap, At: now, Noted: now, Event: dialog.Reminded{Task: d.Task, Day: dialog.DayOf(now, time.UTC)}})
		}
		a.Letters = append(a.Letters, dialog.Letter{To: s.Person.ID, Kind: dialog.Remind, Text: "remember"})
	}
	return a
}

// running starts a bot against a fake platform; stop ends it and waits.
func running(t *testing.T, f *platform.API, change func(*Bot)) (db *store.DB, stop func() error) {
	t.Helper()
	db, err := store.Open(t.Context(), filepath.Join(t.TempDir(), "w.db"), store.Options{Step: parrot})
	require.NoError(t, err)
	t.Cleanup(func() { db.Close() })
	return db, serving(t, f, db, change)
}

func serving(t *testing.T, f *platform.API, db *store.DB, change func(*Bot)) (stop func() error) {
	t.Helper()
	line, err := NewLine(platform.Token, f.URL)
	require.NoError(t, err)
	b := &Bot{Store: db, Line: line, Now: time.Now}
	if change != nil {
		change(b)
	}
	ctx, cancel := context.WithCancel(context.Background())
	ended := make(chan error, 1)
	go func() { ended <- b.Run(ctx) }()
	stopped := false
	stop = func() error {
		if stopped {
			return nil
		}
		stopped = true
		cancel()
		select {
		case err := <-ended:
			return err
		case <-time.After(9 * time.Second):
			return fmt.Errorf("did not stop within nine seconds")
		}
	}
	t.Cleanup(func() { stop() })
	return stop
}

func soon(t *testing.T) context.Context {
	ctx, cancel := context.WithTimeout(t.Context(), 8*time.Second)
	t.Cleanup(cancel)
	return ctx
}

func TestEveryPrivateMessageHasAReply(t *testing.T) {
	f := platform.New(1000)
	defer f.Close()
	_, stop := running(t, f, nil)
	const head = `{"update_id":%d,"message":{"message_id":1,"from":{"id":%d},"chat":{"id":%d,"type":"private"},"date":1,`
	for i, body := range []string{
		`"text":"hello"}}`, `"voice":{"file_id":"v"}}}`, `"photo":[{"file_id":"s"},{"file_id":"l"}],"caption":"my heap"}}`,
		`"sticker":{"file_id":"x"}}}`, `"location":{"latitude":1,"longitude":2}}}`, `"contact":{"phone_number":"1"}}}`,
		`"poll":{"id":"1"}}}`, `"text":""}}`, `"dice":{"value":3}}}`, `"text":17}}`, `"photo":"no list"}}`, `"text":"break"}}`, `"video_note":null}}`,
	} {
		f.Add(head+body, i+1, i+1)
	}
	f.Add(`{"update_id":%d,"callback_query":{"id":"q","from":{"id":50},"message":{"chat":{"id":50,"type":"private"}},"data":"1:x"}}`)
	f.Add(`{"update_id":%d,"callback_query":{"id":"q","from":{"id":51},"data":"1:y"}}`)
	f.Add(`{"update_id":%d,"edited_message":{"from":{"id":52},"chat":{"id":52,"type":"private"},"date":1,"text":"better"}}`)
	quiet := []int64{-100, -200, 60, 61}
	f.Add(`{"update_id":%d,"message":{"from":{"id":1},"chat":{"id":-100,"type":"group"},"date":1,"text":"hi"}}`)
	f.Add(`{"update_id":%d,"channel_post":{"chat":{"id":-200,"type":"channel"},"date":1,"text":"hi"}}`)
	f.Add(`{"update_id":%d,"message":{"from":{"id":60,"is_bot":true},"chat":{"id":60,"type":"private"},"date":1,"text":"hi"}}`)
	f.Add(`{"update_id":%d,"my_chat_member":{"chat":{"id":61,"type":"private"},"new_chat_member":{"status":"kicked"}}}`)
	f.Add(`{"update_id":%d,"message":7}`)
	f.Say(99, "last")
	require.NoError(t, platform.Until(soon(t), "the last reply", func() bool { return len(f.Texts(99)) == 1 }))
	require.NoError(t, stop())
	for chat := int64(1); chat <= 13; chat++ {
		require.Len(t, f.Texts(chat), 1, "chat %d", chat)
	}
	require.Equal(t, []string{"got photo"}, f.Texts(3))
	require.Equal(t, []string{"got other"}, f.Texts(12), "after a conversation that broke off")
	require.Equal(t, []string{"pressed 1:x"}, f.Texts(50))
	require.Equal(t, []string{"pressed 1:y"}, f.Texts(51))
	require.Equal(t, []string{"heard better"}, f.Texts(52))
	for _, chat := range quiet {
		require.Empty(t, f.Texts(chat), "chat %d", chat)
	}
}

func TestTokenNobodyKnows(t *testing.T) {
	f := platform.New(1000)
	defer f.Close()
	db, err := store.Open(t.Context(), filepath.Join(t.TempDir(), "w.db"), store.Options{Step: parrot})
	require.NoError(t, err)
	defer db.Close()
	line, err := NewLine("9:wrong", f.URL)
	require.NoError(t, err)
	err = (&Bot{Store: db, Line: line, Now: time.Now}).Run(soon(t))
	require.ErrorContains(t, err, "does not know this token")
	require.NotContains(t, err.Error(), "9:wrong")
}

func TestTokenIsInNoError(t *testing.T) {
	line, err := NewLine("77:secret", "http://127.0.0.1:1")
	require.NoError(t, err)
	_, err = line.call(t.Context(), "getMe", nil)
	require.Error(t, err)
	require.NotContains(t, err.Error(), "secret")
	for _, token := range []string{"", "a b", "x/y", "%zz"} {
		_, err := NewLine(token, "")
		require.Error(t, err)
	}
}

func TestBlockedPhoneIsNoted(t *testing.T) {
	f := platform.New(1000)
	defer f.Close()
	f.Refuse[5] = 403
	f.Refuse[6] = 400
	db, stop := running(t, f, nil)
	f.Say(5, "hello")
	f.Say(6, "hello")
	f.Say(7, "hello")
	require.NoError(t, platform.Until(soon(t), "the note", func() bool {
		id, _ := db.PersonOf(t.Context(), 5)
		s, _ := db.StateOf(t.Context(), id)
		return s.Person.Barred && len(f.Texts(7)) == 1
	}))
	require.NoError(t, stop())
}

func TestRetryAfterOutlivesARestart(t *testing.T) {
	f := platform.New(1000)
	defer f.Close()
	first := true
	f.Trouble = func(method string, n int) string {
		if method == "sendMessage" && first {
			first = false
			return "429"
		}
		return ""
	}
	db, stop := running(t, f, nil)
	f.Say(5, "hello")
	var holds []store.Hold
	require.NoError(t, platform.Until(soon(t), "the hold", func() bool {
		holds, _ = db.Holds(t.Context())
		return len(holds) == 1
	}))
	require.NoError(t, stop())
	require.Empty(t, f.Texts(5))
	stop = serving(t, f, db, nil)
	require.NoError(t, platform.Until(soon(t), "the letter", func() bool { return len(f.Texts(5)) == 1 }))
	require.False(t, f.Sent()[0].At.Before(holds[0].Until), "not before the platform allows")
	require.NoError(t, stop())
	holds, err := db.Holds(t.Context())
	require.NoError(t, err)
	require.Empty(t, holds)
}

func TestNumbersThatStartAnew(t *testing.T) {
	f := platform.New(900_000)
	defer f.Close()
	_, stop := running(t, f, nil)
	f.Say(1, "before")
	require.NoError(t, platform.Until(soon(t), "the first reply", func() bool { return len(f.Texts(1)) == 1 }))
	f.StartAnew(17)
	f.Say(1, "after")
	f.Say(1, "still")
	require.NoError(t, platform.Until(soon(t), "the later replies", func() bool { return len(f.Texts(1)) >= 3 }))
	require.NoError(t, stop())
	require.Equal(t, []string{"heard before", "heard after", "heard still"}, f.Texts(1))
}

func TestDeleteMeLeavesNothing(t *testing.T) {
	f := platform.New(1000)
	defer f.Close()
	db, stop := running(t, f, nil)
	f.Say(424242424242, "my secret word is zanzibarine")
	f.Say(424242424242, "delete me")
	require.NoError(t, platform.Until(soon(t), "the person gone", func() bool {
		id, err := db.PersonOf(t.Context(), 424242424242)
		return err == nil && id == 0 && len(f.Texts(424242424242)) == 2
	}))
	require.NoError(t, stop())
	for _, end := range []string{"", "-wal"} {
		require.NotContains(t, fileText(t, db.Path()+end), "zanzibarine", end)
		require.NotContains(t, fileText(t, db.Path()+end), "424242424242", end)
		require.NotContains(t, fileText(t, db.Path()+end), string([]byte{0x00, 0x62, 0xc6, 0xd1, 0xa9, 0xb2}), "the number as the file would hold it")
	}
}

func TestPaceOfOneBot(t *testing.T) {
	f := platform.New(1000)
	defer f.Close()
	_, stop := running(t, f, func(b *Bot) { b.Rate = 50 })
	for chat := int64(1); chat <= 30; chat++ {
		f.Say(chat, "hello")
	}
	require.NoError(t, platform.Until(soon(t), "all letters", func() bool { return len(f.Sent()) == 30 }))
	require.NoError(t, stop())
	took := f.Sent()[29].At.Sub(f.Sent()[0].At)
	require.GreaterOrEqual(t, took, 29*time.Second/50-50*time.Millisecond, "a burst of one")
}

func TestKeyboardNumbersItsButtons(t *testing.T) {
	markup := keyboardOf([]dialog.Button{{Label: "Hot", Press: "1:a"}, {Label: "Warm", Press: "1:b"}})
	require.Equal(t, `{"inline_keyboard":[[{"text":"1 Hot","callback_data":"1:a"},{"text":"2 Warm","callback_data":"1:b"}]]}`, markup)
	require.Equal(t, 2, strings.Count(keyboardOf([]dialog.Button{{Label: "A long label", Press: "a"}, {Label: "B", Press: "b"}}), "text"))
}
