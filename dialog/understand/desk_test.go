package understand

import (
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
)

// What one text leaves on a desk is not read into the next, however long either is and
// however many are read at once.
func TestDesksAreClean(t *testing.T) {
	texts := []string{"turned it, stick hot", "3 baskets of goat dung and 2 bags of straw", "ok", "", "डंडी गरम थी",
		strings.Repeat("nimegeuza lundo, kijiti ni moto. ", 80), strings.Repeat("1 ", 900)}
	alone := make([]Meaning, len(texts))
	for i, text := range texts {
		alone[i] = Read(text, "en", "stick")
	}
	var all sync.WaitGroup
	for from := range texts {
		all.Go(func() {
			for n := range 50 {
				i := (from*n + n) % len(texts)
				assert.Equal(t, alone[i], Read(texts[i], "en", "stick"), texts[i])
			}
		})
	}
	all.Wait()
}
