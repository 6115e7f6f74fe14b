// Package platform plays the chat platform on 127.0.0.1, for tests: updates are
// delivered again until a poll with a higher offset confirms them, and calls may
// fail before or after they were done. It is no part of the program.
package platform

import (
	"context"
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"net/http"
	"net/http/httptest"
	"slices"
	"strconv"
	"strings"
	"sync"
	"time"
)

// API is one platform. Trouble and Refuse are set before the first call.
type API struct {
	*httptest.Server
	// Trouble decides what goes wrong with the n-th call of a method: "" nothing,
	// or one of Troubles.
	Trouble func(method string, n int) string
	Refuse  map[int64]int // chats whose letters are refused, with that code

	mu      sync.Mutex
	next    int64
	updates []update
	news    chan struct{}
	sent    []Sent
	calls   map[string]int
	lost    int
	acked   map[int64]bool
}

type update struct {
	id  int64
	raw string
}

// Sent is one letter that arrived.
type Sent struct {
	Chat   int64
	Method string
	Text   string
	Markup string
	At     time.Time
}

// Token is the only one that the platform knows.
const Token = "123:fake"

// New starts a platform whose first update has that number.
func New(first int64) *API {
	f := &API{next: first, news: make(chan struct{}), calls: map[string]int{}, acked: map[int64]bool{},
		Trouble: func(string, int) string { return "" }, Refuse: map[int64]int{}}
	f.Server = httptest.NewServer(http.HandlerFunc(f.serve))
	return f
}

// Add makes an update of a format with one %d for its number.
func (f *API) Add(format string, args ...any) int64 {
	f.mu.Lock()
	defer f.mu.Unlock()
	id := f.next
	f.next++
	f.updates = append(f.updates, update{id, fmt.Sprintf(format, append([]any{id}, args...)...)})
	close(f.news)
	f.news = make(chan struct{})
	return id
}

// Say adds a private text message.
func (f *API) Say(chat int64, text string) int64 {
	quoted, _ := json.Marshal(text)
	return f.Add(`{"update_id":%d,"message":{"message_id":1,"from":{"id":%d,"is_bot":false},"chat":{"id":%d,"type":"private"},"date":%d,"text":%s}}`,
		chat, chat, time.Now().Unix(), quoted)
}

func (f *API) serve(w http.ResponseWriter, r *http.Request) {
	token, method, ok := strings.Cut(strings.TrimPrefix(r.URL.Path, "/bot"), "/")
	if !ok || token != Token {
		fail(w, 401, "Unauthorized", 0)
		return
	}
	r.ParseMultipartForm(1 << 20)
	f.mu.Lock()
	f.calls[method]++
	trouble := f.Trouble(method, f.calls[method])
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
	case "409 webhook":
		fail(w, 409, "Conflict: can't use getUpdates method while webhook is active", 0)
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

func (f *API) poll(w http.ResponseWriter, r *http.Request, trouble string) {
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
					kept = append([]update{f.updates[i]}, kept...)
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

func (f *API) send(w http.ResponseWriter, r *http.Request, method, trouble string) {
	chat, _ := strconv.ParseInt(r.FormValue("chat_id"), 10, 64)
	text := r.FormValue("text")
	if text == "" {
		text = r.FormValue("caption")
	}
	f.mu.Lock()
	if code := f.Refuse[chat]; code != 0 {
		f.mu.Unlock()
		fail(w, code, "Forbidden: bot was blocked by the user", 0)
		return
	}
	f.sent = append(f.sent, Sent{chat, method, text, r.FormValue("reply_markup"), time.Now()})
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

// Texts are what a chat was sent, in order.
func (f *API) Texts(chat int64) []string {
	var texts []string
	for _, s := range f.Sent() {
		if s.Chat == chat {
			texts = append(texts, s.Text)
		}
	}
	return texts
}

// Sent lists every letter that arrived, in order.
func (f *API) Sent() []Sent {
	f.mu.Lock()
	defer f.mu.Unlock()
	return slices.Clone(f.sent)
}

// Lost counts letters that arrived and whose sender was not told so.
func (f *API) Lost() int {
	f.mu.Lock()
	defer f.mu.Unlock()
	return f.lost
}

// Calls counts how often a method was called.
func (f *API) Calls(method string) int {
	f.mu.Lock()
	defer f.mu.Unlock()
	return f.calls[method]
}

// Acked says whether an update was confirmed by a later poll.
func (f *API) Acked(id int64) bool {
	f.mu.Lock()
	defer f.mu.Unlock()
	return f.acked[id]
}

// StartAnew lets the numbers of updates start anew, as after a quiet week.
func (f *API) StartAnew(at int64) {
	f.mu.Lock()
	defer f.mu.Unlock()
	f.next = at
}

// Until waits for a condition, in real time, as a person would.
func Until(ctx context.Context, what string, ok func() bool) error {
	for !ok() {
		select {
		case <-ctx.Done():
			return fmt.Errorf("never happened: %s", what)
		case <-time.After(2 * time.Millisecond):
		}
	}
	return nil
}

// Troubles are the things that may go wrong with a call.
var Troubles = [...]string{"reset", "500", "429", "reset after", "torn", "409"}

// Schedule draws troubles for a share of the calls by a seed, so that a bad
// schedule can be played again.
func Schedule(seed uint64, share float64) func(method string, n int) string {
	source := rand.New(rand.NewPCG(seed, 7))
	return func(string, int) string {
		if source.Float64() >= share {
			return ""
		}
		return Troubles[source.IntN(len(Troubles))]
	}
}
