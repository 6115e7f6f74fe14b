package bot

import (
	"context"
	"io"
	"net"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"warmstick/bot/platform"
	"warmstick/dialog"
	"warmstick/store"
)

func noTick(context.Context, time.Time) (int, error) { return 0, nil }

// How each kind of update is read; nil is what is not for us.
func TestUpdatesAreRead(t *testing.T) {
	for name, want := range map[string]dialog.Input{
		"text":       dialog.Message{Kind: dialog.Text, Text: "hello"},
		"start_code": dialog.Message{Kind: dialog.Text, Text: "/start 2w33hbsqef", Code: "2w33hbsqef"},
		"photo":      dialog.Message{Kind: dialog.Photo, Text: "my heap", File: "large"},
		"voice":      dialog.Message{Kind: dialog.Voice, File: "v"},
		"sticker":    dialog.Message{Kind: dialog.Sticker},
		"location":   dialog.Message{Kind: dialog.Location},
		"contact":    dialog.Message{Kind: dialog.Contact},
		"edited":     dialog.Message{Kind: dialog.Text, Text: "I meant cold", Amends: true},
		"press":      dialog.Press{Button: "1:hot"},
		"press_old":  dialog.Press{Button: "1:hot"},
		"blocked":    dialog.Barred{Now: true},
		"group":      nil,
		"wrong_type": dialog.Message{Kind: dialog.Other},
		"no_message": nil,
	} {
		raw, err := os.ReadFile(filepath.Join("../testdata/updates", name+".json"))
		require.NoError(t, err)
		h, err := read(raw)
		require.NoError(t, err, name)
		require.Equal(t, want, h.in, name)
		if want != nil {
			require.EqualValues(t, 5, h.chat, name)
			e, err := envelope(raw)
			require.NoError(t, err)
			require.EqualValues(t, 5, e.Chat, name)
		}
	}
	_, err := read([]byte(`{"update_id":1,"message":7}`))
	require.Error(t, err)
	_, err = envelope([]byte(`[]`))
	require.Error(t, err)
}

// The webhook keeps an update before it says so, and takes none without the
// secret, none too long, none that is no update.
func TestHook(t *testing.T) {
	f := platform.New(1)
	defer f.Close()
	l, err := net.Listen("tcp", "127.0.0.1:0")
	require.NoError(t, err)
	db, stop := running(t, f, func(b *Bot) { b.Hook = &Hook{Listen: l, Address: "https://example.org/x", Secret: "s3cret"} })
	bring := func(secret, body string) int {
		req, err := http.NewRequestWithContext(soon(t), http.MethodPost, "http://"+l.Addr().String()+"/", strings.NewReader(body))
		require.NoError(t, err)
		req.Header.Set("X-Telegram-Bot-Api-Secret-Token", secret)
		resp, err := http.DefaultClient.Do(req)
		require.NoError(t, err)
		io.Copy(io.Discard, resp.Body)
		resp.Body.Close()
		return resp.StatusCode
	}
	hello := `{"update_id":1,"message":{"chat":{"id":5,"type":"private"},"text":"hello"}}`
	require.Equal(t, 403, bring("guess", hello))
	require.Equal(t, 403, bring("", hello))
	require.Equal(t, 400, bring("s3cret", "no update"))
	require.Equal(t, 413, bring("s3cret", strings.Repeat("x", longestUpdate+1)))
	require.Equal(t, 200, bring("s3cret", hello))
	require.Equal(t, 200, bring("s3cret", hello), "brought twice")
	require.NoError(t, platform.Until(soon(t), "the reply", func() bool { return len(f.Texts(5)) > 0 }))
	require.NoError(t, db.Close())
	require.Equal(t, 500, bring("s3cret", strings.Replace(hello, `:1,`, `:2,`, 1)), "not kept, so it comes again")
	require.NoError(t, stop())
	require.Equal(t, []string{"heard hello"}, f.Texts(5))
}

// Another poller is told of and waited for; a webhook that is still set is taken
// away.
func TestOthersAtTheSameToken(t *testing.T) {
	f := platform.New(1)
	defer f.Close()
	f.Trouble = func(method string, n int) string {
		if method == "getUpdates" && n == 1 {
			return "409 webhook"
		}
		return ""
	}
	_, stop := running(t, f, nil)
	f.Say(5, "hello")
	require.NoError(t, platform.Until(soon(t), "the reply", func() bool { return len(f.Texts(5)) == 1 }))
	require.NoError(t, stop())
	require.Equal(t, 1, f.Calls("deleteWebhook"))
}

// Pictures, papers and passed-on files go with their words; what cannot be drawn
// leaves the words.
func TestWhatLettersCarry(t *testing.T) {
	f := platform.New(1)
	defer f.Close()
	letters := []dialog.Letter{
		{Text: "chart", Picture: &dialog.Picture{Kind: "good"}},
		{Text: "no chart", Picture: &dialog.Picture{Kind: "bad"}},
		{Text: "photo", File: &dialog.Enclosed{Kind: dialog.Photo, File: "id"}},
		{Text: "voice", File: &dialog.Enclosed{Kind: dialog.Voice, File: "id"}},
		{Text: "paper", Paper: &dialog.Paper{Name: "round.xlsx", Kind: "good"}},
		{Text: "no paper", Paper: &dialog.Paper{Name: "round.xlsx", Kind: "bad"}},
	}
	line, err := NewLine(platform.Token, f.URL)
	require.NoError(t, err)
	draw := Draw{
		Picture: func(p dialog.Picture) ([]byte, error) {
			if p.Kind == "bad" {
				return nil, io.ErrUnexpectedEOF
			}
			return []byte("png"), nil
		},
		Paper: func(_ context.Context, p dialog.Paper) ([]byte, error) {
			if p.Kind == "bad" {
				return nil, io.ErrUnexpectedEOF
			}
			return []byte("xlsx"), nil
		},
	}
	for _, l := range letters {
		require.NoError(t, line.post(t.Context(), draw, store.Letter{Chat: 5, Letter: l}))
	}
	var methods []string
	for _, s := range f.Sent() {
		methods = append(methods, s.Method+" "+s.Text)
	}
	require.Equal(t, []string{"sendPhoto chart", "sendMessage no chart", "sendPhoto photo", "sendVoice voice", "sendDocument paper", "sendMessage no paper"}, methods)
	f.Refuse[5] = 403
	err = line.post(t.Context(), draw, store.Letter{Chat: 5, Letter: letters[0]})
	require.ErrorContains(t, err, "code 403", "the library leaves the code of an upload's refusal out")
}
