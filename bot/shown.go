package bot

import (
	"encoding/json"
	"errors"
	"net/http"
	"sync"

	"warmstick/dialog"
)

// shown remembers, as long as the program runs, under which id the platform keeps
// the pictures that are the same for everybody: they are uploaded once, and sent by
// their id from then on.
type shown struct{ ids sync.Map }

// plain is the key of a picture that is the same for everybody, "" for one with
// numbers or words of its own.
func plain(p dialog.Picture) string {
	if len(p.Numbers) > 0 || p.Text != "" {
		return ""
	}
	return p.Kind
}

// id is where the platform keeps a picture, "" when it is not known.
func (s *shown) id(p dialog.Picture) string {
	id, _ := s.ids.Load(plain(p))
	known, _ := id.(string)
	return known
}

// keep reads the id out of the platform's answer to an upload.
func (s *shown) keep(p dialog.Picture, answer json.RawMessage) {
	var sent message
	if plain(p) == "" || json.Unmarshal(answer, &sent) != nil || len(sent.Photo) == 0 {
		return
	}
	s.ids.Store(plain(p), sent.Photo[len(sent.Photo)-1].ID)
}

// forget drops an id that the platform would not take, and says whether the
// picture is to be uploaded anew.
func (s *shown) forget(p dialog.Picture, err error) bool {
	refused, ok := errors.AsType[*Refusal](err)
	if !ok || refused.Code != http.StatusBadRequest {
		return false
	}
	s.ids.Delete(plain(p))
	return true
}
