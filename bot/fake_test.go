package bot

import (
	"context"
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"net/http"
	"net/http/httptest"
	"strconv"
	"strings"
	"sync"
	"time"
)

// fakeAPI plays the platform on 127.0.0.1: updates are delivered again until a
// poll with a higher offset confirms them, and sends may fail before or after
// they were done.
type fakeAPI struct {
	*httptest.Server
	mu      sync.Mutex
	updates []fakeUpdate
	next    int64
	news    chan struct{}
	sent    []fakeSend
	calls   map[string]int
	polling bool
	lost    int // sends done whose answer was lost
	acked   map[int64]bool
	// trouble decides what goes wrong with a call: "" nothing, or a name below.
	trouble func(method string, n int) string
	refuse  map[int64]int // chats that answer with that code
	clock   func() time.Time
}

type fakeUpdate struct {
	id  int64
	raw string
}

type fakeSend struct {
	chat   int64
	method string
	text   string
	markup string
	at     time.Time
}

const fakeToken = "123:fake"

func newFake() *fakeAPI {
	f := &fakeAPI{next: 1000, news: make(chan struct{}), calls: map[string]int{}, acked: map[int64]bool{},
		trouble: func(string, int) string { return "" }, refuse: map[int64]int{}, clock: time.Now}
	f.Server = httptest.NewServer(http.HandlerFunc(f.serve))
	return f
}

// add makes an update of a format with one %d for its number.
func (f *fakeAPI) add(format string, args ...any) int64 {
	f.mu.Lock()
	defer f.mu.Unlock()
	id := f.next
	f.next++
	f.updates = append(f.updates, fakeUpdate{id, fmt.Sprintf(format, append([]any{id}, args...)...)})
	close(f.news)
	f.news = make(chan struct{})
	return id
}

// say adds a private text message.
func (f *fakeAPI) say(chat int64, text string) int64 {
	quoted, _ := json.Marshal(text)
	return f.add(`{"update_id":%d,"message":{"message_id":1,"from":{"id":%d,"is_bot":false},"chat":{"id":%d,"type":"private"},"date":%d,"text":%s}}`,
		chat, chat, time.Now().Unix(), quoted)
}

func (f *fakeAPI) serve(w http.ResponseWriter, r *http.Request) {
	token, method, ok := strings.Cut(strings.TrimPrefix(r.URL.Path, "/bot"), "/")
	if !ok || token != fakeToken {
		fail(w, 401, "Unauthorized", 0)
		return
	}
	r.ParseMultipartForm(1 << 20)
	f.mu.Lock()
	f.calls[method]++
	trouble := f.trouble(method, f.calls[method])
	f.mu.Unlock()
	switch trouble {
	case "reset":
		panic(http.ErrAbortHandler)
	case "500":
		http.Error(w, "<html>bad gateway</html>", 502)
		return
	case "429":
		fail(w, 429, "Too Many Requests: retry after 1", 1)
		return
	case "409":
		fail(w, 409, "Conflict: terminated by other getUpdates request", 0)
		return
	case "slow":
		time.Sleep(30 * time.Millisecond)
	}
	switch method {
	case "getUpdates":
		f.poll(w, r, trouble)
	case "sendMessage", "sendPhoto", "sendVoice", "sendDocument":
		f.send(w, r, method, trouble)
	default:
		fmt.Fprint(w, `{"ok":true,"result":true}`)
	}
}

func fail(w http.ResponseWriter, code int, why string, retry int) {
	w.WriteHeader(code)
	params := ""
	if retry > 0 {
		params = fmt.Sprintf(`,"parameters":{"retry_after":%d}`, retry)
	}
	fmt.Fprintf(w, `{"ok":false,"error_code":%d,"description":%q%s}`, code, why, params)
}

func (f *fakeAPI) poll(w http.ResponseWriter, r *http.Request, trouble string) {
	offset, _ := strconv.ParseInt(r.FormValue("offset"), 10, 64)
	limit, _ := strconv.Atoi(r.FormValue("limit"))
	end := time.After(2 * time.Second)
	for {
		f.mu.Lock()
		if offset != 0 {
			kept := f.updates[:0:0]
			confirmed := false
			for i := len(f.updates) - 1; i >= 0; i-- {
				confirmed = confirmed || f.updates[i].id == offset-1
				if confirmed {
					f.acked[f.updates[i].id] = true
				} else {
					kept = append([]fakeUpdate{f.updates[i]}, kept...)
				}
			}
			f.updates = kept
		}
		list := f.updates[:min(len(f.updates), max(1, limit))]
		news := f.news
		f.mu.Unlock()
		if len(list) > 0 {
			raws := make([]string, len(list))
			for i, u := range list {
				raws[i] = u.raw
			}
			body := `{"ok":true,"result":[` + strings.Join(raws, ",") + `]}`
			if trouble == "torn" {
				body = body[:len(body)/2]
			}
			fmt.Fprint(w, body)
			return
		}
		select {
		case <-news:
		case <-end:
			fmt.Fprint(w, `{"ok":true,"result":[]}`)
			return
		case <-r.Context().Done():
			return
		}
	}
}

func (f *fakeAPI) send(w http.ResponseWriter, r *http.Request, method, trouble string) {
	chat, _ := strconv.ParseInt(r.FormValue("chat_id"), 10, 64)
	text := r.FormValue("text")
	if text == "" {
		text = r.FormValue("caption")
	}
	f.mu.Lock()
	if code := f.refuse[chat]; code != 0 {
		f.mu.Unlock()
		fail(w, code, "Forbidden: bot was blocked by the user", 0)
		return
	}
	f.sent = append(f.sent, fakeSend{chat, method, text, r.FormValue("reply_markup"), f.clock()})
	n := len(f.sent)
	if trouble == "reset after" || trouble == "torn" {
		f.lost++
	}
	f.mu.Unlock()
	switch trouble {
	case "reset after":
		panic(http.ErrAbortHandler)
	case "torn":
		fmt.Fprint(w, `{"ok":true,"resu`)
	default:
		fmt.Fprintf(w, `{"ok":true,"result":{"message_id":%d}}`, n)
	}
}

// texts are what a chat was sent, in order.
func (f *fakeAPI) texts(chat int64) []string {
	f.mu.Lock()
	defer f.mu.Unlock()
	var texts []string
	for _, s := range f.sent {
		if s.chat == chat {
			texts = append(texts, s.text)
		}
	}
	return texts
}

// until waits for a condition, in real time, as a person would.
func until(ctx context.Context, what string, ok func() bool) error {
	for !ok() {
		select {
		case <-ctx.Done():
			return fmt.Errorf("never happened: %s", what)
		case <-time.After(2 * time.Millisecond):
		}
	}
	return nil
}

// plan draws troubles by a seed, so that a bad schedule can be played again.
func troubles(seed uint64, share float64) func(method string, n int) string {
	source := rand.New(rand.NewPCG(seed, 7))
	names := []string{"reset", "500", "429", "reset after", "torn", "409"}
	return func(method string, n int) string {
		if source.Float64() >= share {
			return ""
		}
		return names[source.IntN(len(names))]
	}
}
