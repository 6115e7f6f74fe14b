package bot

import (
	"context"
	"crypto/sha256"
	"crypto/subtle"
	"errors"
	"fmt"
	"io"
	"log/slog"
	"net"
	"net/http"
	"time"

	tgbotapi "github.com/go-telegram-bot-api/telegram-bot-api/v5"

	"warmstick/store"
)

// Hook is where the platform brings updates by itself. TLS ends at a proxy in
// front: the platform calls Address, the proxy passes the call on to Listen.
type Hook struct {
	Listen  net.Listener
	Address string // what the platform is told to call, https://…
	Secret  string // 1 to 256 of A-Za-z0-9_-; comes back with each call
}

// longestUpdate is a cap on the body of one call, far beyond any update.
const longestUpdate = 1 << 20

// listen takes updates that the platform brings, and keeps each before it says
// so: the platform brings again what was not confirmed.
func (d *desk) listen(ctx context.Context) error {
	_, err := d.Line.call(ctx, "setWebhook", tgbotapi.Params{"url": d.Hook.Address, "secret_token": d.Hook.Secret, "allowed_updates": wanted})
	if err != nil {
		if fatal := hopeless(err); fatal != nil {
			return fatal
		}
		return fmt.Errorf("tell the platform where to call: %w", err)
	}
	mux := http.NewServeMux()
	mux.HandleFunc("POST /", d.hooked)
	server := &http.Server{Handler: mux, ReadHeaderTimeout: 5 * time.Second, ReadTimeout: 10 * time.Second, WriteTimeout: 10 * time.Second,
		IdleTimeout: 2 * time.Minute, MaxHeaderBytes: 16 << 10, ErrorLog: slog.NewLogLogger(slog.Default().Handler(), slog.LevelWarn)}
	go func() {
		<-ctx.Done()
		end, cancel := context.WithTimeout(context.WithoutCancel(ctx), 5*time.Second)
		defer cancel()
		server.Shutdown(end)
	}()
	if err := server.Serve(d.Hook.Listen); !errors.Is(err, http.ErrServerClosed) {
		return fmt.Errorf("wait for the platform's calls: %w", err)
	}
	return ctx.Err()
}

func (d *desk) hooked(w http.ResponseWriter, r *http.Request) {
	if !sameSecret(r.Header.Get("X-Telegram-Bot-Api-Secret-Token"), d.Hook.Secret) {
		http.Error(w, "not for you", http.StatusForbidden)
		return
	}
	body, err := io.ReadAll(http.MaxBytesReader(w, r.Body, longestUpdate))
	if err != nil {
		http.Error(w, "too long", http.StatusRequestEntityTooLarge)
		return
	}
	raw, err := envelope(body)
	if err != nil {
		http.Error(w, "no update", http.StatusBadRequest)
		return
	}
	if err := d.Store.Receive(r.Context(), d.Now(), []store.Raw{raw}, -1); err != nil {
		warn("an update could not be kept; the platform brings it again", err)
		http.Error(w, "not kept", http.StatusInternalServerError)
		return
	}
	d.wake.give()
	w.WriteHeader(http.StatusOK)
}

// sameSecret compares in constant time, of whatever lengths.
func sameSecret(got, want string) bool {
	a, b := sha256.Sum256([]byte(got)), sha256.Sum256([]byte(want))
	return subtle.ConstantTimeCompare(a[:], b[:]) == 1
}
