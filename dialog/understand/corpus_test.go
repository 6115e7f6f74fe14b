package understand

import (
	"bufio"
	"encoding/json"
	"os"
	"path/filepath"
	"slices"
	"sort"
	"strings"
	"testing"
)

// labelled is one line of testdata/replies.
type labelled struct {
	ID    string   `json:"id"`
	Lang  string   `json:"lang"`
	Asked string   `json:"asked"`
	Text  string   `json:"text"`
	Means []string `json:"means"`
	Sure  bool     `json:"sure"`
	Tag   string   `json:"tag"`
}

func corpus(tb testing.TB, name string) []labelled {
	tb.Helper()
	f, err := os.Open(filepath.Join("..", "..", "testdata", "replies", name))
	if err != nil {
		tb.Fatal(err)
	}
	defer f.Close()
	var out []labelled
	in := bufio.NewScanner(f)
	in.Buffer(nil, 1<<20)
	for in.Scan() {
		var l labelled
		if err := json.Unmarshal(in.Bytes(), &l); err != nil {
			tb.Fatalf("%s: %v", name, err)
		}
		out = append(out, l)
	}
	return out
}

func (l labelled) row() string {
	if l.Lang != "hi" {
		return l.Lang
	}
	for _, r := range l.Text {
		if r >= 0x0900 && r <= 0x097f {
			return "hi-Deva"
		}
	}
	return "hi-Latn"
}

// The bars are the project's own: right 95 %, wrong 2 %, no danger misread, every
// language row 92 %. All but dev_b were
// tuned on; dev_b was written first and is only scored.
func TestCorpora(t *testing.T) {
	for _, half := range []struct {
		name         string
		right, wrong float64
	}{{"dev_a.jsonl", 0.99, 0.01}, {"dev_b.jsonl", 0.95, 0.03}, {"dev_c_w.jsonl", 0.97, 0.02}, {"dev_d_w.jsonl", 0.98, 0.015}, {"dev_d_e.jsonl", 0.98, 0.01}} {
		t.Run(half.name, func(t *testing.T) {
			type count struct{ n, right, wrong int }
			rows := map[string]*count{}
			var all count
			for _, l := range corpus(t, half.name) {
				m := Read(l.Text, l.Lang, l.Asked)
				want := slices.Clone(l.Means)
				sort.Strings(want)
				if rows[l.row()] == nil {
					rows[l.row()] = &count{}
				}
				for _, c := range []*count{rows[l.row()], &all} {
					c.n++
					switch {
					case m.Sure == l.Sure && (!l.Sure || slices.Equal(m.Codes, want)):
						c.right++
					case m.Sure:
						c.wrong++
					}
				}
				if m.Sure && perilous(want, m.Codes) {
					t.Errorf("%s %q: danger misread: want %v, got %v", l.ID, l.Text, want, m.Codes)
				}
				if m.Sure && len(m.Codes) == 0 {
					t.Errorf("%s %q: sure of nothing", l.ID, l.Text)
				}
			}
			if float64(all.right) < half.right*float64(all.n) || float64(all.wrong) > half.wrong*float64(all.n) {
				t.Errorf("right %d, wrong %d of %d", all.right, all.wrong, all.n)
			}
			for row, c := range rows {
				if float64(c.right) < 0.92*float64(c.n) {
					t.Errorf("%s: right %d of %d", row, c.right, c.n)
				}
			}
			t.Logf("%s: right %.1f%%, wrong %.1f%%, n %d", half.name, 100*float64(all.right)/float64(all.n), 100*float64(all.wrong)/float64(all.n), all.n)
		})
	}
}

func perilous(want, got []string) bool {
	has := func(list []string, prefix ...string) bool {
		for _, c := range list {
			for _, p := range prefix {
				if strings.HasPrefix(c, p) {
					return true
				}
			}
		}
		return false
	}
	for _, d := range [][]string{{"harm="}, {"seen=fire", "seen=smoke"}, {"ask=stop"}} {
		if has(want, d...) && !has(got, d...) {
			return true
		}
	}
	return has(want, "stick=hot") && has(got, "stick=cold") && !has(got, "stick=hot") ||
		has(want, "stick=cold") && has(got, "stick=hot") && !has(got, "stick=cold")
}
