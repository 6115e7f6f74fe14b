package bot

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"warmstick/dialog"
)

// unmet compares an expectation with what was said; "" when it is met.
func (p *play) unmet(a act) string {
	r := p.cast[p.chat(a.who)]
	said := func(test func(dialog.Letter) bool) bool { return slices.ContainsFunc(r.since, test) }
	met := false
	switch a.want {
	case "~", "!~":
		has := said(func(l dialog.Letter) bool { return contains(l.Text, a.text) })
		met = has == (a.want == "~")
	case "advice":
		met = said(func(l dialog.Letter) bool { return slices.Contains(l.Advice, a.text) })
	case "asks":
		met = r.last.Asks == a.text
	case "stage":
		met = stageOf(r.last) == a.text
	case "silent":
		met = len(r.since) == 0
	}
	if met {
		return ""
	}
	return fmt.Sprintf("expected %s; %s", wish(a), r.instead())
}

func contains(text, part string) bool {
	return strings.Contains(strings.ToLower(text), strings.ToLower(part))
}

func wish(a act) string {
	switch a.want {
	case "~", "!~":
		return fmt.Sprintf("%s %s %q", a.who, a.want, a.text)
	case "silent":
		return a.who + " silent"
	}
	return fmt.Sprintf("%s %s=%s", a.who, a.want, a.text)
}

// instead tells what was said to a person.
func (r *role) instead() string {
	if len(r.since) == 0 {
		return fmt.Sprintf("nothing was said to %s (asks=%s stage=%s)", r.name, r.last.Asks, stageOf(r.last))
	}
	var b strings.Builder
	fmt.Fprintf(&b, "%s was told:", r.name)
	for _, l := range r.since {
		fmt.Fprintf(&b, "\n    %s (asks=%s stage=%s advice=%s)", strconv.Quote(l.Text), l.Asks, stageOf(l), strings.Join(l.Advice, ","))
	}
	return b.String()
}

func stageOf(l dialog.Letter) string {
	if l.Stage == "" {
		return string(dialog.NoStage)
	}
	return string(l.Stage)
}

func labels(buttons []dialog.Button) string {
	if len(buttons) == 0 {
		return "none"
	}
	names := make([]string, len(buttons))
	for i, b := range buttons {
		names[i] = fmt.Sprintf("%d %s", i+1, b.Label)
	}
	return strings.Join(names, ", ")
}
