package understand

import (
	"fmt"
	"io/fs"
	"iter"
	"path"
	"strings"
)

// row is one line of a table: where it stands and its columns, two at least.
type row struct {
	tongue tongue
	file   string
	line   int
	cols   []string
}

// fault names the table and line that err is about.
func (r row) fault(err error) error {
	return fmt.Errorf("lexicon %s/%s line %d: %w", folders[r.tongue], r.file, r.line, err)
}

// forms yields the words and phrases of a row's second column.
func (r row) forms() iter.Seq[string] {
	return func(yield func(string) bool) {
		for form := range strings.SplitSeq(r.cols[1], "|") {
			if form = strings.TrimSpace(form); form != "" && !yield(form) {
				return
			}
		}
	}
}

// rows yields the lines of one table that hold something. The error, if any, is
// the last thing yielded; a table that is not there is fs.ErrNotExist.
func rows(fsys fs.FS, t tongue, file string) iter.Seq2[row, error] {
	return func(yield func(row, error) bool) {
		b, err := fs.ReadFile(fsys, path.Join("lexicon", folders[t], file))
		if err != nil {
			yield(row{}, fmt.Errorf("read lexicon: %w", err))
			return
		}
		n := 0
		for line := range strings.SplitSeq(string(b), "\n") {
			n++
			line = strings.TrimRight(line, "\r\t ")
			if line == "" || line[0] == '#' {
				continue
			}
			r := row{tongue: t, file: file, line: n, cols: strings.Split(line, "\t")}
			if len(r.cols) < 2 {
				yield(r, r.fault(fmt.Errorf("need a sense, a tab and the forms")))
				return
			}
			if !yield(r, nil) {
				return
			}
		}
	}
}

// tableFiles lists the tables of a tongue's folder.
func tableFiles(fsys fs.FS, t tongue) (names []string, err error) {
	list, err := fs.ReadDir(fsys, path.Join("lexicon", folders[t]))
	if err != nil {
		return nil, fmt.Errorf("read lexicon %s: %w", folders[t], err)
	}
	for _, f := range list {
		if strings.HasSuffix(f.Name(), ".tsv") {
			names = append(names, f.Name())
		}
	}
	return names, nil
}
