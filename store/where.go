package store

import (
	"bytes"
	"path"
)

// where reads from a stack in which line of which file a panic began: enough to
// mend it, and nothing that a person said, as a panic's own words might.
func where(stack []byte) string {
	lines := bytes.Split(stack, []byte("\n"))
	for i, line := range lines {
		if !bytes.HasPrefix(line, []byte("panic(")) {
			continue
		}
		for _, at := range lines[i+1:] {
			at, isFile := bytes.CutPrefix(at, []byte("\t"))
			at, _, _ = bytes.Cut(at, []byte(" "))
			if isFile && !bytes.Contains(at, []byte("/runtime/")) {
				return path.Base(string(at))
			}
		}
	}
	return "unknown place"
}
