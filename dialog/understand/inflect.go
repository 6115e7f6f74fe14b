package understand

import (
	"fmt"
	"strings"
)

// ending is one row of an endings table: what is hung on a stem of a class, and
// which tense that makes.
type ending struct {
	text  string
	tense tense
}

// endings reads "class<TAB>tense<TAB>é ó aron". A lone "-" is the naked stem.
func endings(into map[string][]ending, cols []string) error {
	if len(cols) < 3 {
		return fmt.Errorf("need class, tense and endings")
	}
	ten, ok := tenseNames[cols[1]]
	if !ok {
		return fmt.Errorf("no such tense %q", cols[1])
	}
	for _, e := range strings.Fields(cols[2]) {
		if e == "-" {
			e = ""
		}
		into[cols[0]] = append(into[cols[0]], ending{e, ten})
	}
	return nil
}

// verb files every form of a verb row: sense, class, stems parted by "|". Objects
// are read apart from verbs, so a stem is one word ("pour") or a verb and what
// always goes with it ("dry out").
func (l *filing) verb(r row, ends map[string][]ending) error {
	if len(r.cols) < 3 {
		return fmt.Errorf("need sense, class and stems")
	}
	e, err := parseSense(r.tongue, r.cols[0])
	if err != nil {
		return err
	}
	stems := strings.SplitSeq(r.cols[2], "|")
	if r.tongue == sw {
		for root := range stems {
			root = strings.TrimSpace(root)
			l.roots[root] = append(l.roots[root], e)
		}
		return nil
	}
	list, ok := ends[r.cols[1]]
	if !ok {
		return fmt.Errorf("no endings for class %q", r.cols[1])
	}
	for stem := range stems {
		stem = strings.TrimSpace(stem)
		if stem == "" {
			continue
		}
		first, rest, more := strings.Cut(stem, " ") // "dry out": endings hang on the first word
		for _, end := range list {
			f := e
			f.tense = end.tense
			form := first + end.text
			if more {
				form += " " + rest
			}
			l.file(f, form)
		}
	}
	return nil
}
