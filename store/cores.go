package store

import (
	"runtime"
	"sync"
	"sync/atomic"
)

// onAllCores does a thing n times, for 0 to n-1 in no order, and is done when all are.
func onAllCores(n int, do func(i int)) {
	cores := min(runtime.GOMAXPROCS(0), n)
	if cores <= 1 {
		for i := range n {
			do(i)
		}
		return
	}
	var next atomic.Int64
	work := func() {
		for i := int(next.Add(1)) - 1; i < n; i = int(next.Add(1)) - 1 {
			do(i)
		}
	}
	var working sync.WaitGroup
	for range cores - 1 {
		working.Go(work)
	}
	work()
	working.Wait()
}
