package main

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"
)

func TestUnderstandLines(t *testing.T) {
	in := `{"id":"1","lang":"en","asked":"stick","text":"cold"}
{"id":2,"lang":"sw","asked":"turn","text":"nimegeuza"}

not json
{"id":"4","lang":"xx","asked":"none","text":"hi"}
{"id":"5","lang":"en","asked":"stick"}
{"lang":"en","asked":"stick","text":"cold"}
{"id":"7","lang":"en","asked":"stick","text":"not hot"}
` + "{\"id\":\"8\",\"lang\":\"en\",\"text\":\"\xff\"}\n" +
		`{"id":"9","lang":"fr","asked":"moisture","text":""}`
	var out, errs bytes.Buffer
	if code := runUnderstand(nil, strings.NewReader(in), &out, &errs); code != 1 {
		t.Errorf("exit %d, want 1 after bad lines", code)
	}
	lines := strings.Split(strings.TrimSpace(out.String()), "\n")
	if len(lines) != 9 {
		t.Fatalf("%d lines:\n%s", len(lines), out.String())
	}
	want := []string{`"means":["stick=cold"],"sure":true`, `"id":2,"means":["did=turned"],"sure":true`, `"error":"line 4: not a JSON object`, `"error":"line 5: lang \"xx\"`,
		`"error":"line 6: no text`, `"error":"line 7: no id`, `"means":[],"sure":false`, `"error":"line 9: not UTF-8`, `"means":[],"sure":false`}
	for i, w := range want {
		if !strings.Contains(lines[i], w) {
			t.Errorf("line %d: %s\nwant %s", i+1, lines[i], w)
		}
		if !json.Valid([]byte(lines[i])) {
			t.Errorf("line %d is not JSON: %s", i+1, lines[i])
		}
	}
}

func TestUnderstandHelpAndOptions(t *testing.T) {
	var out, errs bytes.Buffer
	if code := runUnderstand([]string{"--help"}, strings.NewReader(""), &out, &errs); code != 0 || !strings.Contains(out.String(), "JSON line") {
		t.Errorf("help: exit %d, %q", code, out.String())
	}
	if code := runUnderstand([]string{"--nonsense"}, strings.NewReader(""), &out, &errs); code != 2 || !strings.Contains(errs.String(), "--help") {
		t.Errorf("option: exit %d, %q", code, errs.String())
	}
	if code := runUnderstand(nil, strings.NewReader(`{"id":"1","lang":"en","asked":"stick","text":"cold"}`), &out, &errs); code != 0 {
		t.Errorf("clean run: exit %d", code)
	}
}
