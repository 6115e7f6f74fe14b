package bot

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"log/slog"
	"math/rand/v2"
	"strconv"
	"strings"
	"time"

	tgbotapi "github.com/go-telegram-bot-api/telegram-bot-api/v5"

	"warmstick/store"
)

const (
	pollFor    = 50 * time.Second // how long the platform may wait for news
	pollGrace  = 10 * time.Second // and how long for it to say that there is none
	pollMost   = 100              // updates at once, the platform's limit
	wanted     = `["message","edited_message","callback_query","my_chat_member"]`
	emptyPause = 50 * time.Millisecond // after an empty answer that came at once
)

// poll asks for updates, keeps them, and only then asks for more: asking with a
// higher number is what tells the platform that the earlier ones are safe.
func (d *desk) poll(ctx context.Context) error {
	offset, err := d.Store.Offset(ctx, d.Now())
	if err != nil {
		return err
	}
	var b backoff
	heard := false
	for ctx.Err() == nil {
		began := time.Now()
		list, err := d.fetch(ctx, offset)
		if ctx.Err() != nil {
			break
		}
		if err != nil {
			if fatal := hopeless(err); fatal != nil && !heard {
				return fatal
			}
			d.pollFailed(ctx, err, b.next())
			continue
		}
		heard = true
		b.reset()
		if len(list) == 0 {
			d.catching.Store(false)
			if time.Since(began) < emptyPause {
				pause(ctx, emptyPause)
			}
			continue
		}
		raws, last := envelopes(list)
		if last >= 0 {
			offset = last + 1
		}
		for ctx.Err() == nil {
			if err = d.Store.Receive(ctx, d.Now(), raws, offset); err == nil {
				break
			}
			warn("updates could not be kept; the platform still has them", err)
			pause(ctx, b.next())
		}
		d.catching.Store(len(list) == pollMost)
		d.wake.give()
	}
	return ctx.Err()
}

func (d *desk) fetch(ctx context.Context, offset int64) ([]json.RawMessage, error) {
	ctx, cancel := context.WithTimeout(ctx, pollFor+pollGrace)
	defer cancel()
	params := tgbotapi.Params{"timeout": strconv.Itoa(int(pollFor.Seconds())), "limit": strconv.Itoa(pollMost), "allowed_updates": wanted}
	if offset != 0 {
		params["offset"] = strconv.FormatInt(offset, 10)
	}
	body, err := d.Line.call(ctx, "getUpdates", params)
	if err != nil {
		return nil, err
	}
	var list []json.RawMessage
	if err := json.Unmarshal(body, &list); err != nil {
		return nil, errors.New("getUpdates: the answer is no list of updates")
	}
	return list, nil
}

// envelopes makes rows of updates and gives the number of the last one, -1 when
// none has a number. It is the last received, not the highest: the platform's
// numbers start anew at random after a quiet week.
func envelopes(list []json.RawMessage) ([]store.Raw, int64) {
	raws, last := make([]store.Raw, 0, len(list)), int64(-1)
	for _, raw := range list {
		r, err := envelope(raw)
		if err != nil {
			warn("an update was left out", err)
			continue
		}
		raws = append(raws, r)
		last = r.ID
	}
	return raws, last
}

func (d *desk) pollFailed(ctx context.Context, err error, wait time.Duration) {
	refused, ok := errors.AsType[*Refusal](err)
	switch {
	case ok && refused.Code == 409 && strings.Contains(strings.ToLower(refused.Why), "webhook"):
		slog.Warn("a webhook is set for this bot; it is taken away so that updates can be asked for")
		if _, err := d.Line.call(ctx, "deleteWebhook", nil); err != nil {
			warn("the webhook could not be taken away", err)
		}
	case ok && refused.Code == 409:
		wait = max(wait, 3*time.Second)
		slog.Warn("another program asks for the updates of this bot; stop one of the two", "again_in", wait)
	default:
		if ok {
			wait = max(wait, refused.RetryAfter)
		}
		slog.Warn("no updates to be had", "cause", err.Error(), "again_in", wait)
	}
	pause(ctx, wait)
}

// hopeless tells an error that no waiting mends.
func hopeless(err error) error {
	if r, ok := errors.AsType[*Refusal](err); ok && (r.Code == 401 || r.Code == 404) {
		return fmt.Errorf("the platform does not know this token (code %d); check TELEGRAM_BOT_TOKEN and TELEGRAM_API_URL", r.Code)
	}
	return nil
}

// backoff is how long to wait after failures in a row: longer each time up to
// four seconds, with jitter so that many waiting do not come back together. A
// retry begins within five seconds.
type backoff int

const (
	firstWait   = 250 * time.Millisecond
	longestWait = 4 * time.Second
)

func (b *backoff) next() time.Duration {
	wait := min(firstWait<<min(*b, 6), longestWait)
	*b++
	return wait/2 + rand.N(wait/2+1)
}

func (b *backoff) reset() { *b = 0 }
