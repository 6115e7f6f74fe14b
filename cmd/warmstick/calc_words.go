package main

// Sums for a person at a terminal: words in, a few lines out. What is said
// lies in the files of calc.

import (
	"embed"
	"fmt"
	"io"
	"math"
	"strings"
	"sync"
	"text/template"

	"warmstick/dialog/compost"
)

//go:embed calc
var calcFiles embed.FS

func calcFile(name string) string {
	b, err := calcFiles.ReadFile("calc/" + name)
	if err != nil {
		panic(err) // the file is part of the program
	}
	return string(b)
}

var adviceWords = sync.OnceValue(func() map[string]string {
	words := map[string]string{}
	for line := range strings.Lines(calcFile("advice.tsv")) {
		if code, text, ok := strings.Cut(strings.TrimSpace(line), "\t"); ok {
			words[code] = text
		}
	}
	return words
})

var answers = sync.OnceValue(func() *template.Template {
	format := func(places string) func(float64) string {
		return func(v float64) string { return fmt.Sprintf(places, v+0) }
	}
	return template.Must(template.New("").Funcs(template.FuncMap{
		"say":     func(c compost.Class) string { return adviceWords()[string(c)] },
		"whole":   func(v float64) string { return fmt.Sprintf("%.0f", math.Round(v)) },
		"one":     format("%.1f"),
		"two":     format("%.2f"),
		"round2":  roundTwo,
		"buckets": buckets,
	}).Parse(calcFile("answers.tmpl")))
})

// roundTwo keeps two figures: more would be more than is known.
func roundTwo(v float64) string {
	if v == 0 || math.Abs(v) < 1 {
		return fmt.Sprintf("%.2g", v)
	}
	unit := math.Pow(10, math.Floor(math.Log10(math.Abs(v)))-1)
	return plain(math.Round(math.Round(v/unit)*unit*10) / 10)
}

// buckets turns litres into pails of the usual size.
func buckets(litres float64) string {
	n := math.Ceil(litres / pail)
	if n == 1 {
		return "1 bucket of 15 L"
	}
	return fmt.Sprintf("%.0f buckets of 15 L", n)
}

const pail = 15 // L, as in the table of measures

// words is what is left of a person's line.
type words struct {
	rest []string
	cal  compost.Calibration
}

func calcWords(args []string, out io.Writer) error {
	if what := strings.TrimLeft(args[0], "-"); what == "help" || what == "h" {
		_, err := io.WriteString(out, calcFile("help.txt"))
		return err
	}
	w := words{rest: args[1:], cal: compost.Calibration{}}
	if err := w.takeWeighs(); err != nil {
		return err
	}
	if len(w.rest) > 0 && (w.rest[0] == "--help" || w.rest[0] == "-h") {
		_, err := io.WriteString(out, calcFile("help.txt"))
		return err
	}
	say := func(name string, data any, err error) error {
		if err != nil {
			return err
		}
		return answers().ExecuteTemplate(out, name, data)
	}
	switch strings.ToLower(args[0]) {
	case "mix":
		data, err := w.mix()
		return say("mix", data, err)
	case "shop":
		data, err := w.shop()
		return say("shop", data, err)
	case "size":
		data, err := w.size()
		return say("size", data, err)
	case "starter":
		data, err := w.starter()
		return say("starter", data, err)
	case "heat":
		data, err := w.heat()
		return say("heat", data, err)
	case "kill":
		data, err := w.kill()
		return say("kill", data, err)
	case "worms":
		data, err := w.worms()
		return say("worms", data, err)
	case "grow":
		data, err := w.grow()
		return say("grow", data, err)
	case "use":
		return w.use(say)
	case "money":
		data, err := w.money()
		return say("money", data, err)
	case "breakeven", "break-even":
		data, err := w.breakEven()
		return say("breakeven", data, err)
	case "materials":
		return say("materials", w.materials(), nil)
	case "measures":
		return say("measures", w.measures(), nil)
	}
	return fmt.Errorf("%q is no sum; accepted: mix, shop, size, starter, heat, kill, worms, grow, use, money, breakeven, materials, measures; see warmstick calc --help", args[0])
}

// takeWeighs takes the --weighs flags out of the line.
func (w *words) takeWeighs() error {
	var rest []string
	for i := 0; i < len(w.rest); i++ {
		name, value, hasValue := strings.Cut(w.rest[i], "=")
		if name != "--weighs" && name != "-weighs" {
			rest = append(rest, w.rest[i])
			continue
		}
		if !hasValue {
			if i++; i == len(w.rest) {
				return fmt.Errorf(`--weighs: nothing after it; accepted: "basket dry_leaves=3"`)
			}
			value = w.rest[i]
		}
		key, size, ok := strings.Cut(value, "=")
		v, err := wordNumber("--weighs", size, span{0, 1e6, true, ""})
		if !ok || err != nil {
			return fmt.Errorf(`--weighs %q is not known; accepted: "basket dry_leaves=3" or "bucket=18"`, value)
		}
		w.cal[strings.Join(strings.Fields(key), " ")] = v
	}
	w.rest = rest
	return nil
}

func (w *words) next() (string, bool) {
	if len(w.rest) == 0 {
		return "", false
	}
	first := w.rest[0]
	w.rest = w.rest[1:]
	return strings.ToLower(first), true
}

func (w *words) peek() string {
	if len(w.rest) == 0 {
		return ""
	}
	return strings.ToLower(w.rest[0])
}

// number takes the next word as a number.
func (w *words) number(name string, q quantity) (float64, error) {
	s, ok := w.next()
	if !ok {
		return 0, fmt.Errorf("%s: missing; accepted: a number, %v", name, q.span())
	}
	return wordNumber(name, s, q.span())
}

func wordNumber(name, s string, accepted span) (float64, error) {
	v, ok := asNumber(s)
	if !ok || !accepted.has(v) {
		return 0, fmt.Errorf("%s: %q is not accepted; accepted: %v", name, s, accepted)
	}
	return v, nil
}

// lengths takes three lengths; "6x4x4ft" and "6' x 4' x 4'" are read as well.
func (w *words) lengths() (d [3]float64, err error) {
	var parts []string
	for len(parts) < 3 && len(w.rest) > 0 {
		s, _ := w.next()
		for _, p := range strings.FieldsFunc(s, func(r rune) bool { return r == 'x' || r == '×' || r == '*' }) {
			if len(parts) > 0 && !startsWithDigit(p) {
				parts[len(parts)-1] += p // the unit of the number before
				continue
			}
			parts = append(parts, p)
		}
	}
	if len(w.rest) > 0 && isLengthUnit(w.peek()) {
		unit, _ := w.next()
		parts[len(parts)-1] += unit
	}
	if len(parts) != 3 {
		return d, fmt.Errorf("size: %d lengths; accepted: length, width and height, such as 6ft 4ft 4ft", len(parts))
	}
	bare := 1.0
	if startsBare(parts[0]) && startsBare(parts[1]) && !startsBare(parts[2]) { // 6x4x4ft
		if m, err := parseLength("1"+strings.TrimLeft(parts[2], "0123456789.,"), 1); err == nil {
			bare = m
		}
	}
	for i, p := range parts {
		if d[i], err = parseLength(p, bare); err != nil {
			return d, err
		}
	}
	return d, nil
}

func startsWithDigit(s string) bool { return s != "" && s[0] >= '0' && s[0] <= '9' }

func startsBare(s string) bool { return strings.Trim(s, "0123456789.,") == "" }

func isLengthUnit(s string) bool {
	_, err := parseLength("1"+s, 1)
	return err == nil && s != "" && !startsWithDigit(s)
}
