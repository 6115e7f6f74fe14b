package dialog

import (
	"fmt"
	"hash/fnv"
	"reflect"
)

// planRules goes up by one when Plan or CardOf makes something else of the same
// state; the rows that a store keeps of them are then made anew at the next start.
const planRules = 1

// Edition is a print of the rules and shapes by which states, plans and cards are
// made of diaries. A store that was filled by another edition makes its rows anew.
func Edition() uint32 {
	h := fnv.New32a()
	fmt.Fprint(h, shape(), planRules)
	printShape(h, reflect.TypeFor[Card](), nil)
	printShape(h, reflect.TypeFor[Due](), nil)
	return h.Sum32()
}
