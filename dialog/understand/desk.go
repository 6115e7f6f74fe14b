package understand

import "sync"

// desk is where a reader lays out a text, beside its tokens and signs. All of it is used
// again for the next text: a page takes up half a megabyte, and to clear that away
// would be a fifth of the work of reading it.
type desk struct {
	spelt   []rune
	words   words
	facts   []fact
	peril   peril  // of the clause in hand
	spare   []sign // the signs before amounts were joined
	parted  []sign // the signs of the clauses, end to end
	clauses []clause
	heard   [][]int32 // by token: words it may be heard for; they count in phrases only
	next    []int32   // see ahead
	some    []opening // see openings
	skips   []maybe   // by token: a filler, which may stand inside a phrase
}

var desks = sync.Pool{New: func() any { return new(reader) }}

// close gives the desk to the next text.
func (r *reader) close() {
	r.text = ""
	desks.Put(r)
}

// sized gives a cleared list of n, in the room of another where that is enough.
func sized[T any](room []T, n int) []T {
	if cap(room) < n {
		return make([]T, n)
	}
	room = room[:n]
	clear(room)
	return room
}
