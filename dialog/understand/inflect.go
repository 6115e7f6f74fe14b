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

// verb files every form of a verb row: sense, class, stems parted by "|". A stem
// may be followed by the words that belong to it ("pour water"): "mwag + maji"
// is not needed, since objects are read apart from verbs.
func (l *lexicon) verb(t tongue, cols []string, ends map[string][]ending) error {
	e, err := sense(t, cols[0])
	if err != nil {
		return err
	}
	if t == sw {
		for _, root := range strings.Split(cols[2], "|") {
			root = strings.TrimSpace(root)
			l.roots[root] = append(l.roots[root], e)
		}
		return nil
	}
	list, ok := ends[cols[1]]
	if !ok {
		return fmt.Errorf("no endings for class %q", cols[1])
	}
	for _, stem := range strings.Split(cols[2], "|") {
		stem = strings.TrimSpace(stem)
		if stem == "" {
			continue
		}
		first, rest, _ := strings.Cut(stem, " ") // "dry out": endings hang on the first word
		for _, end := range list {
			f := e
			f.tense = end.tense
			form := first + end.text
			if rest != "" {
				form += " " + rest
			}
			l.file(f, form)
		}
	}
	return nil
}
