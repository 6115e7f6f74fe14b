package store

import (
	"path"
	"strings"
)

// where reads from a stack in which line of which file a panic began: enough to
// mend it, and nothing that a person said, as a panic's own words might.
func where(stack []byte) string {
	lines := strings.Split(string(stack), "\n")
	found := "unknown place"
	for i, line := range lines {
		if strings.HasPrefix(line, "panic(") {
			found = "unknown place" // a panic that was passed on: look below the first
			continue
		}
		if found == "unknown place" && strings.HasPrefix(line, "warmstick/") && !strings.Contains(line, ".ask(") && i+1 < len(lines) {
			at, _, _ := strings.Cut(strings.TrimSpace(lines[i+1]), " ")
			found = path.Base(path.Dir(at)) + "/" + path.Base(at)
		}
	}
	return found
}
