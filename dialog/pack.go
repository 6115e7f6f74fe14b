package dialog

import (
	"encoding/binary"
	"errors"
	"fmt"
	"hash/fnv"
	"io"
	"reflect"
	"slices"
	"sync"
	"time"

	"github.com/fxamacker/cbor/v2"
)

// Pack: how a talk and a folded state are written for the store, as CBOR (RFC
// 8949) under the names that they have in JSON. Reading them back costs a third
// of what JSON costs (BenchmarkPack); that is most of a cold morning's work, when
// nobody who has something due is at hand. The diary itself stays JSON: it is
// what counts, and has to be read without this program.

// packing writes maps in one order, so that the same state gives the same bytes,
// and times with their zone.
var packing = sync.OnceValue(func() cbor.EncMode {
	mode, err := cbor.EncOptions{Sort: cbor.SortBytewiseLexical, Time: cbor.TimeRFC3339Nano}.EncMode()
	if err != nil {
		panic(err) // the options are ours
	}
	return mode
})

// snapshot is what of a state is kept beside the diary.
type snapshot struct {
	Person Person
	Heaps  []Heap
}

// foldRules goes up by one when Fold makes another state of the same diary in the
// same shape; kept snapshots are then no more of use.
const foldRules = 3

// shape is a print of all that a snapshot may hold. A field added, renamed or
// taken away changes it: a snapshot of another shape is not used, since it
// cannot know what a new field would have been.
var shape = sync.OnceValue(func() uint32 {
	h := fnv.New32a()
	fmt.Fprint(h, foldRules)
	printShape(h, reflect.TypeFor[snapshot](), nil)
	return h.Sum32()
})

func printShape(h io.Writer, t reflect.Type, above []reflect.Type) {
	fmt.Fprint(h, "(", t.String())
	if t == reflect.TypeFor[time.Time]() || slices.Contains(above, t) {
		return
	}
	above = append(above, t)
	switch t.Kind() {
	case reflect.Struct:
		for f := range t.Fields() {
			fmt.Fprint(h, " ", f.Name, f.Tag)
			printShape(h, f.Type, above)
		}
	case reflect.Map:
		printShape(h, t.Key(), above)
		printShape(h, t.Elem(), above)
	case reflect.Slice, reflect.Array, reflect.Pointer:
		printShape(h, t.Elem(), above)
	}
	fmt.Fprint(h, ")")
}

// PackState writes a snapshot of what the diary gave: person and heaps.
func PackState(s State) ([]byte, error) {
	body, err := packing().Marshal(snapshot{s.Person, s.Heaps})
	if err != nil {
		return nil, fmt.Errorf("snapshot: %w", err)
	}
	return append(binary.BigEndian.AppendUint32(make([]byte, 0, 4+len(body)), shape()), body...), nil
}

// ErrOtherShape says that a snapshot is of a program that folded otherwise. The
// diary is what counts.
var ErrOtherShape = errors.New("a snapshot of another shape")

// UnpackState is PackState undone.
func UnpackState(b []byte) (State, error) {
	if len(b) < 4 || binary.BigEndian.Uint32(b) != shape() {
		return State{}, ErrOtherShape
	}
	var kept snapshot
	if err := cbor.Unmarshal(b[4:], &kept); err != nil {
		return State{}, fmt.Errorf("snapshot: %w", err)
	}
	return State{Person: kept.Person, Heaps: kept.Heaps}, nil
}

// PackTalk writes a talk; the zero Talk is empty. Unlike a snapshot it cannot be
// made anew, so fields may be added and are read as zero from older talks.
func PackTalk(t Talk) ([]byte, error) { return packing().Marshal(t) }

// UnpackTalk is PackTalk undone.
func UnpackTalk(b []byte) (t Talk, err error) {
	if len(b) == 0 {
		return Talk{}, nil
	}
	return t, cbor.Unmarshal(b, &t)
}

// AskedAbout is what stands in a packed talk that has a question about a person,
// for a store that looks for it without unpacking.
func AskedAbout(id PersonID) ([]byte, error) {
	b, err := packing().Marshal(map[string]PersonID{"Who": id})
	return b[1:], err // without the head of the map
}
