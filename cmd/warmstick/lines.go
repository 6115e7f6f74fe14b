package main

import (
	"bufio"
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
)

// eachLine answers JSON lines from stdin with JSON lines, for the commands that
// other programs drive. answer gets the number of the line and its bytes, and says
// whether it was good. The exit status is 1 when any line was not, or when reading
// or writing failed.
func eachLine(command string, stdin io.Reader, stdout, stderr io.Writer, answer func(n int, line []byte) (out any, good bool)) int {
	in := bufio.NewReaderSize(stdin, 1<<16)
	out := bufio.NewWriter(stdout)
	enc := json.NewEncoder(out)
	enc.SetEscapeHTML(false)
	failed := func(doing string, err error) int {
		fmt.Fprintf(stderr, "warmstick %s: %s: %v\n", command, doing, err)
		return 1
	}
	status := 0
	for n := 1; ; n++ {
		line, err := in.ReadBytes('\n')
		if len(bytes.TrimSpace(line)) > 0 {
			said, good := answer(n, line)
			if !good {
				status = 1
			}
			if err := enc.Encode(said); err != nil {
				return failed("write answer", err)
			}
		}
		if err == nil && in.Buffered() > 0 {
			continue
		}
		// nothing more waiting: let whoever drives us over a pipe have the answers
		if err := out.Flush(); err != nil {
			return failed("write answers", err)
		}
		switch {
		case errors.Is(err, io.EOF):
			return status
		case err != nil:
			return failed(fmt.Sprintf("read line %d", n), err)
		}
	}
}
