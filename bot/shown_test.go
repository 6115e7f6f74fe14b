package bot

import (
	"net/http"
	"net/http/httptest"
	"testing"

	"github.com/stretchr/testify/require"

	"warmstick/dialog"
	"warmstick/store"
)

// A picture that is the same for everybody is uploaded once and sent by its id
// after that; an id that the platform does not take is replaced by an upload, and
// a picture of one heap's own numbers is always uploaded.
func TestAPictureIsUploadedOnce(t *testing.T) {
	var ways []string
	stale := false
	server := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		_, _, err := r.FormFile("photo")
		way := "by id " + r.FormValue("photo")
		if err == nil {
			way = "upload"
		}
		ways = append(ways, way)
		if stale && way != "upload" {
			w.WriteHeader(http.StatusBadRequest)
			w.Write([]byte(`{"ok":false,"error_code":400,"description":"Bad Request: wrong file identifier"}`))
			return
		}
		w.Write([]byte(`{"ok":true,"result":{"message_id":1,"photo":[{"file_id":"small"},{"file_id":"large"}]}}`))
	}))
	defer server.Close()
	line, err := NewLine("1:a", server.URL)
	require.NoError(t, err)
	draw := Draw{Picture: func(dialog.Picture) ([]byte, error) { return []byte("png"), nil }}
	send := func(p dialog.Picture) {
		require.NoError(t, line.post(t.Context(), draw, store.Letter{Chat: 7, Letter: dialog.Letter{Text: "look", Picture: &p}}))
	}
	send(dialog.Picture{Kind: "stick"})
	send(dialog.Picture{Kind: "stick"})
	send(dialog.Picture{Kind: "curve", Numbers: []float64{1}})
	send(dialog.Picture{Kind: "curve", Numbers: []float64{1}})
	stale = true
	send(dialog.Picture{Kind: "stick"})
	stale = false
	send(dialog.Picture{Kind: "stick"})
	require.Equal(t, []string{"upload", "by id large", "upload", "upload", "by id large", "upload", "by id large"}, ways)
}
