package bot

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"net/http"
	"net/url"
	"regexp"
	"strings"
	"time"

	tgbotapi "github.com/go-telegram-bot-api/telegram-bot-api/v5"
)

// Line is the chat HTTP Bot API. Its errors never hold the token or what was
// sent: the address of a call has the token in it, so errors that quote the
// address are stripped.
type Line struct {
	api    tgbotapi.BotAPI
	client *http.Client
	shown  shown
}

var tokenShape = regexp.MustCompile(`^[A-Za-z0-9:_-]+$`)

// publicAPI is the platform's own address.
const publicAPI = "https://api.telegram.org"

// NewLine makes a line; it does not call anybody yet. base "" is the public
// address.
func NewLine(token, base string) (*Line, error) {
	if token == "" {
		return nil, errors.New("TELEGRAM_BOT_TOKEN is not set; the platform gives one to each bot")
	}
	if !tokenShape.MatchString(token) {
		return nil, errors.New("TELEGRAM_BOT_TOKEN is not a token: letters, digits, colon, dash and underscore")
	}
	if base == "" {
		base = publicAPI
	}
	if u, err := url.Parse(base); err != nil || u.Host == "" || u.Scheme != "http" && u.Scheme != "https" {
		return nil, errors.New("TELEGRAM_API_URL is not an address such as https://example.org")
	}
	l := &Line{client: &http.Client{
		Transport: &http.Transport{
			Proxy: http.ProxyFromEnvironment,
			// Every message of a busy morning is a call to one and the same host.
			MaxIdleConns: 2 * sendSlots, MaxIdleConnsPerHost: 2 * sendSlots, IdleConnTimeout: 90 * time.Second,
			TLSHandshakeTimeout: 10 * time.Second, ForceAttemptHTTP2: true,
		},
		CheckRedirect: func(*http.Request, []*http.Request) error { return http.ErrUseLastResponse },
	}}
	l.api.Token = token
	l.api.SetAPIEndpoint(strings.ReplaceAll(strings.TrimRight(base, "/"), "%", "%%") + "/bot%s/%s")
	return l, nil
}

// call makes one request and gives the result as the platform sent it.
func (l *Line) call(ctx context.Context, method string, params tgbotapi.Params) (json.RawMessage, error) {
	api := l.api
	api.Client = doer{ctx, l.client, nil}
	r, err := api.MakeRequest(method, params)
	return result(method, r, err)
}

// upload makes one request with a file in it and gives the result.
func (l *Line) upload(ctx context.Context, method string, params tgbotapi.Params, field, name string, file []byte) (json.RawMessage, error) {
	api := l.api
	api.Client = doer{ctx, l.client, nil}
	r, err := api.UploadFiles(method, params, []tgbotapi.RequestFile{{Name: field, Data: tgbotapi.FileBytes{Name: name, Bytes: file}}})
	return result(method, r, err)
}

// Known asks the platform whether it knows the token, and gives the hour there;
// zero when it does not tell.
func (l *Line) Known(ctx context.Context) (there time.Time, err error) {
	api := l.api
	api.Client = doer{ctx, l.client, func(h http.Header) { there, _ = http.ParseTime(h.Get("Date")) }}
	r, err := api.MakeRequest("getMe", nil)
	_, err = result("getMe", r, err)
	return there, err
}

// Username is the bot's own name on the platform, for links that open it.
func (l *Line) Username(ctx context.Context) (string, error) {
	raw, err := l.call(ctx, "getMe", nil)
	if err != nil {
		return "", err
	}
	var me struct {
		Username string `json:"username"`
	}
	if err := json.Unmarshal(raw, &me); err != nil {
		return "", fmt.Errorf("getMe: %w", err)
	}
	return me.Username, nil
}

func result(method string, r *tgbotapi.APIResponse, err error) (json.RawMessage, error) {
	if err == nil {
		return r.Result, nil
	}
	if refused, ok := errors.AsType[*tgbotapi.Error](err); ok {
		code := refused.Code
		if code == 0 && r != nil {
			code = r.ErrorCode // the library leaves it out after an upload
		}
		return nil, &Refusal{Method: method, Code: code, Why: refused.Message, RetryAfter: time.Duration(refused.RetryAfter) * time.Second}
	}
	return nil, fmt.Errorf("%s: %w", method, err)
}

// Refusal is a no from the platform.
type Refusal struct {
	Method     string
	Code       int
	Why        string // the platform's words; may name a chat, so it is not logged
	RetryAfter time.Duration
}

func (r *Refusal) Error() string { return fmt.Sprintf("%s: refused with code %d", r.Method, r.Code) }

// doer carries a context into a library that knows none, and reads answers as a
// whole so that the connection can be used again.
type doer struct {
	ctx    context.Context
	client *http.Client
	head   func(http.Header) // looks at the answer's head; may be nil
}

// longestAnswer is far beyond a hundred updates of the platform's largest size.
const longestAnswer = 64 << 20

func (d doer) Do(req *http.Request) (*http.Response, error) {
	resp, err := d.client.Do(req.WithContext(d.ctx))
	if err != nil {
		return nil, bare(err)
	}
	defer resp.Body.Close()
	if d.head != nil {
		d.head(resp.Header)
	}
	var body bytes.Buffer
	if n := resp.ContentLength; n > 0 && n < longestAnswer {
		body.Grow(int(n) + bytes.MinRead) // read without growing on the way
	}
	if _, err := body.ReadFrom(io.LimitReader(resp.Body, longestAnswer)); err != nil {
		return nil, bare(err)
	}
	if trimmed := bytes.TrimLeft(body.Bytes(), " \r\n\t"); len(trimmed) == 0 || trimmed[0] != '{' {
		return nil, fmt.Errorf("status %d with a body that is not JSON", resp.StatusCode)
	}
	resp.Body = io.NopCloser(&body)
	return resp, nil
}

// bare takes the address, which holds the token, off an error.
func bare(err error) error {
	if u, ok := errors.AsType[*url.Error](err); ok {
		return u.Err
	}
	return err
}
