package understand

import (
	"slices"
	"sort"
)

// settle puts the findings together under the rules for what stands alone.
func (r *reader) settle(cs []clause, f *finding) Meaning {
	var codes []string
	codes = append(codes, unique(f.danger)...)
	unsettled := len(f.guess) > 0
	for _, x := range f.facts {
		if x.doubt {
			f.guess = append(f.guess, x.code)
			unsettled = true
			continue
		}
		codes = append(codes, x.code)
	}
	planned := f.when != ""
	for _, d := range f.deeds {
		if d.code == "" {
			continue
		}
		switch d.outcome {
		case done:
			codes = append(codes, d.code)
		case doubtful, wished:
			f.guess = append(f.guess, d.code)
		}
	}
	codes = append(codes, f.haves...)
	if f.undo {
		codes = append(codes, "ask=undo")
		planned = planned && f.when != "skip" // "forget my last answer"
	}
	if planned {
		codes = append(codes, "when="+f.when)
	}
	codes = append(codes, f.asks...)
	codes = r.consistent(unique(codes))
	if r.asked == "sieve" && !planned && !hasCode(codes, "did=sieved") && r.passedThrough(cs) {
		codes = append(codes, "did=sieved")
	}
	if len(codes) == 0 {
		codes = r.short(cs, f, unsettled)
	} else if doneFirst(cs) && actOf(r.asked) != "" && !hasCode(codes, actOf(r.asked)) && (hasDid(codes) || hasCode(codes, "ask=next")) && !planned {
		codes = append(codes, actOf(r.asked)) // "done, also loosened the lid", "done. When is the next?"
	} else if yesAnd(cs) && actOf(r.asked) != "" && !hasCode(codes, actOf(r.asked)) && hasDid(codes) {
		codes = append(codes, actOf(r.asked)) // "yes and we added water"
	} else if f.answer == "done" && actOf(r.asked) != "" && !planned && !hasDid(codes) && (len(f.asks) == 0 || doneFirst(cs)) {
		codes = append(codes, actOf(r.asked))
	} else if f.answer == "yes" && actOf(r.asked) != "" && !planned && !hasDid(codes) && !r.deniesOwn(f) && len(f.asks) == 0 && !f.undo {
		codes = append(codes, actOf(r.asked))
	}
	if len(cs) == 1 && (f.answer == "yes" || f.answer == "done") && (r.asked == "feed" || r.asked == "layer") && hasCode(codes, actOf(r.asked)) && cs[0].has("yes", "done") {
		codes = slices.DeleteFunc(codes, func(c string) bool { return inDim(c, "have") }) // "yes one basin of scraps": used up
	}
	sort.Strings(codes)
	if len(codes) == 0 {
		return Meaning{Guess: unique(f.guess)}
	}
	return Meaning{Codes: codes, Sure: true}
}

func (r *reader) deniesOwn(f *finding) bool {
	for _, d := range f.deeds {
		if d.code == actOf(r.asked) && d.outcome != done {
			return true
		}
	}
	return false
}

func yesAnd(cs []clause) bool {
	for k := range cs {
		if cs[k].end == "and" && cs[k].core() == 1 && cs[k].has("yes") {
			return true
		}
	}
	return false
}

// doneFirst: the message begins with nothing but "done", "yes it is done".
func doneFirst(cs []clause) bool {
	if len(cs) > 0 && greets(cs[0].signs) {
		cs = cs[1:]
	}
	return len(cs) > 1 && cs[0].onlyOf("done", "do", "finish", "yes", "ok", "is", "filler", "me", "already", "chat=hello") && cs[0].has("done", "do", "finish") && cs[0].ask == telling && !cs[0].doubt
}

func hasCode(codes []string, code string) bool {
	for _, c := range codes {
		if c == code {
			return true
		}
	}
	return false
}

func hasDid(codes []string) bool {
	for _, c := range codes {
		if inDim(c, "did") {
			return true
		}
	}
	return false
}

// consistent drops what another code already says better.
func (r *reader) consistent(codes []string) []string {
	has := func(c string) bool {
		for _, x := range codes {
			if x == c {
				return true
			}
		}
		return false
	}
	out := codes[:0]
	for _, c := range codes {
		switch {
		case inDim(c, "when") && has("ask=stop"):
			continue
		case c == "smell=none" && countDim(codes, "smell") > 1:
			continue
		case c == "seen=worms_well" && (has("seen=worms_dead") || has("seen=worms_escaping")):
			continue
		}
		out = append(out, c)
	}
	return out
}

func countDim(codes []string, dim string) int {
	n := 0
	for _, c := range codes {
		if inDim(c, dim) {
			n++
		}
	}
	return n
}

func unique(in []string) []string {
	out := in[:0:0]
	for i, c := range in {
		dup := false
		for _, d := range in[:i] {
			dup = dup || c == d
		}
		if !dup {
			out = append(out, c)
		}
	}
	return out
}
