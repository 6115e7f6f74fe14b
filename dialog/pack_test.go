package dialog

import (
	"bytes"
	"encoding/json"
	"reflect"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// packed packs a state and its talk and reads both back.
func packed(t testing.TB, s State) State {
	body, err := PackState(s)
	require.NoError(t, err)
	again, err := PackState(s)
	require.NoError(t, err)
	require.Equal(t, body, again, "the same state gives the same bytes")
	back, err := UnpackState(body)
	require.NoError(t, err)
	talk, err := PackTalk(s.Talk)
	require.NoError(t, err)
	back.Talk, err = UnpackTalk(talk)
	require.NoError(t, err)
	return back
}

// Whatever a state and a talk hold comes back: a whole life, and one of
// everything there is a field for.
func TestPackedAndReadBack(t *testing.T) {
	life := Fold(1, lifeOf300())
	require.Equal(t, asJSON(t, life), asJSON(t, packed(t, life)))
	require.Equal(t, asJSON(t, State{}), asJSON(t, packed(t, State{})))
	var full State
	fill(reflect.ValueOf(&full).Elem(), 3)
	full.Register = nil
	require.Equal(t, asJSON(t, full), asJSON(t, packed(t, full)))
	v := newVillage(t, "2026-03-02T07:00:00+03:00")
	for _, line := range []string{"hello", "English", "yes", "Amina", "Nakuru", "hot heap", "20 baskets cow dung, 40 bags dry leaves", "no", "today", "built"} {
		v.says(1, line)
		s := v.states[1]
		s.Talk = v.talks[1]
		require.Equal(t, asJSON(t, s), asJSON(t, packed(t, s)), line)
	}
}

func asJSON(t testing.TB, s State) string {
	b, err := json.Marshal(s)
	require.NoError(t, err)
	return string(b)
}

// fill puts something into every field.
func fill(v reflect.Value, depth int) {
	switch {
	case v.Type() == reflect.TypeFor[time.Time]():
		v.Set(reflect.ValueOf(time.Date(2026, 3, 2, 4, 5, 6, 7e6, time.UTC)))
		return
	case depth < 0:
		return
	}
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			fill(v.Field(i), depth)
		}
	case reflect.Slice:
		v.Set(reflect.MakeSlice(v.Type(), 2, 2))
		fill(v.Index(1), depth-1)
	case reflect.Array:
		for i := range v.Len() {
			fill(v.Index(i), depth)
		}
	case reflect.Map:
		v.Set(reflect.MakeMap(v.Type()))
		key, value := reflect.New(v.Type().Key()).Elem(), reflect.New(v.Type().Elem()).Elem()
		fill(key, depth)
		fill(value, depth-1)
		v.SetMapIndex(key, value)
	case reflect.Pointer:
		v.Set(reflect.New(v.Type().Elem()))
		fill(v.Elem(), depth-1)
	case reflect.String:
		v.SetString("ठंडा \x00 \"'")
	case reflect.Bool:
		v.SetBool(true)
	case reflect.Int, reflect.Int64:
		v.SetInt(-1 << 40)
	case reflect.Uint64:
		v.SetUint(1<<64 - 1)
	case reflect.Float64:
		v.SetFloat(-2.0 / 3)
	}
}

// A snapshot of a program that folds otherwise is told from one of ours.
func TestASnapshotOfAnotherShape(t *testing.T) {
	body, err := PackState(Fold(1, lifeOf300()))
	require.NoError(t, err)
	for _, strange := range [][]byte{nil, {}, []byte("{"), body[1:], append([]byte{^body[0]}, body[1:]...)} {
		_, err := UnpackState(strange)
		require.ErrorIs(t, err, ErrOtherShape)
	}
	_, err = UnpackState(body[:len(body)-1])
	require.Error(t, err)
	shapeOf := func(v any) string {
		var b bytes.Buffer
		printShape(&b, reflect.TypeOf(v), nil)
		return b.String()
	}
	type a struct{ N, M int }
	type b struct{ M, N int }
	type c struct {
		N int `json:",omitempty"`
		M int
	}
	require.NotEqual(t, shapeOf([]a{}), shapeOf([]b{}))
	require.NotEqual(t, shapeOf(a{}), shapeOf(c{}))
	require.Contains(t, shapeOf(snapshot{}), "Celsius", "down to the last reading")
}

// FuzzUnpack: any bytes are read or refused, never a panic; what is read can be
// packed again.
func FuzzUnpack(f *testing.F) {
	life := Fold(1, lifeOf300())
	body, err := PackState(life)
	require.NoError(f, err)
	f.Add(body[4:])
	talk, err := PackTalk(Talk{Lang: "en", Open: Question{ID: "stick", Choices: []Choice{{"Hot", "stick=hot"}}}})
	require.NoError(f, err)
	f.Add(talk)
	f.Fuzz(func(t *testing.T, b []byte) {
		if s, err := UnpackState(append(bytes.Clone(body[:4]), b...)); err == nil {
			_, err := PackState(s)
			require.NoError(t, err)
		}
		if talk, err := UnpackTalk(b); err == nil {
			_, err := PackTalk(talk)
			require.NoError(t, err)
		}
	})
}

// BenchmarkPack compares the packed form with JSON, on a heap in its second week.
func BenchmarkPack(b *testing.B) {
	v := newVillage(b, "2026-03-02T07:00:00+03:00")
	for _, line := range []string{"hello", "English", "yes", "Amina", "Nakuru", "hot heap", "20 baskets cow dung, 40 bags dry leaves", "no", "today", "slurry", "6:30", "feet", "yes", "yes", "built", "6 x 4 x 4 ft"} {
		v.says(1, line)
	}
	v.wait(8 * 24 * time.Hour)
	s := v.states[1]
	s.Talk = v.talks[1]
	text := []byte(asJSON(b, s))
	state, _ := PackState(s)
	talk, _ := PackTalk(s.Talk)
	b.Logf("%d bytes of JSON, %d packed", len(text), len(state)+len(talk))
	b.Run("pack", func(b *testing.B) {
		for b.Loop() {
			PackState(s)
			PackTalk(s.Talk)
		}
	})
	b.Run("pack/json", func(b *testing.B) {
		for b.Loop() {
			json.Marshal(s)
		}
	})
	b.Run("unpack", func(b *testing.B) {
		for b.Loop() {
			UnpackState(state)
			UnpackTalk(talk)
		}
	})
	b.Run("unpack/json", func(b *testing.B) {
		for b.Loop() {
			var s State
			json.Unmarshal(text, &s)
		}
	})
}
