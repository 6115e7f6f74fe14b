package understand

import "slices"

// resolve leaves one value a dimension: a correction beats what it corrects, the
// middle beats the edge, now beats then; two that still disagree are both dropped.
func resolve(fs []fact, corrected map[int]bool) (keep []fact, clash []string) {
	var dims []string
	for i := range fs {
		if !slices.Contains(dims, fs[i].dim) {
			dims = append(dims, fs[i].dim)
		}
	}
	var g []fact
	for _, d := range dims {
		g = g[:0]
		for _, f := range fs {
			if f.dim == d {
				g = append(g, f)
			}
		}
		if d == "seen" {
			if some(g, func(f fact) bool { return f.code == "seen=worms_well" }) {
				g = filter(g, func(f fact) bool { return f.code != "seen=worms_dead" || !f.was }) // "mar rahe the, ab theek hain"
			}
			keep = append(keep, g...)
			continue
		}
		last := -1
		for k := range corrected {
			for _, f := range g {
				if f.clause >= k && k > last {
					last = k
				}
			}
		}
		if last >= 0 {
			g = filter(g, func(f fact) bool { return f.clause >= last })
		}
		if (d == "smell" || d == "bottle") && some(g, func(f fact) bool { return f.was }) {
			if now := filter(g, func(f fact) bool { return !f.was }); len(now) > 0 {
				g = now // "it stank before, now it smells of earth"
			}
		}
		if d == "bottle" {
			hard := some(g, func(f fact) bool { return f.code == "bottle=bloated" })
			soft := some(g, func(f fact) bool { return f.code == "bottle=flat" })
			if hard && soft && last < 0 {
				clash = append(clash, "bottle=bloated", "bottle=flat")
				continue
			}
		}
		if d == "smell" || d == "bottle" {
			keep = append(keep, g...)
			continue
		}
		if some(g, func(f fact) bool { return f.place == 1 }) {
			g = filter(g, func(f fact) bool {
				return f.place == 1 || f.place == 0 && !some(g, func(e fact) bool { return e.place == 2 })
			})
		}
		if n := len(g); n == 2 && g[0].place == 0 && g[1].place == 2 && g[0].clause < g[1].clause {
			g = g[:1] // "hot, but the edges are cold"
		}
		if d == "stick" && len(g) > 0 && !some(g, func(f fact) bool { return f.place != 2 }) {
			clash = append(clash, g[0].code)
			continue
		}
		if n := len(g); n > 1 && g[0].denial && !g[n-1].denial && g[0].clause < g[n-1].clause {
			g = filter(g, func(f fact) bool { return !f.denial }) // "not warm, very hot"
		}
		if some(g, func(f fact) bool { return !f.half() }) { // "it was not cold, it was warm"
			g = filter(g, func(f fact) bool {
				return !f.half() || some(g, func(e fact) bool { return !e.half() && f.denies(e) })
			})
		}
		if some(g, func(f fact) bool { return f.was }) && some(g, func(f fact) bool { return !f.was }) {
			g = filter(g, func(f fact) bool { return !f.was })
		}
		if some(g, func(f fact) bool { return f.now }) {
			g = filter(g, func(f fact) bool { return f.now }) // "it rose to 68, now 60"
		}
		if n := len(g); n > 1 && !some(g, func(f fact) bool { return !f.was }) {
			g = filter(g, func(f fact) bool { return f.clause == g[n-1].clause }) // told in the order of time
		}
		v, ok := agree(d, g)
		if !ok {
			for _, f := range g {
				clash = append(clash, f.code)
			}
			continue
		}
		f := g[0]
		f.code = v
		f.doubt = true
		for _, e := range g {
			if !e.doubt {
				f.doubt = false
			}
		}
		keep = append(keep, f)
	}
	return keep, clash
}

// agree joins the values of one dimension, halves of denials among them.
func agree(dim string, g []fact) (string, bool) {
	has := map[string]bool{}
	for _, f := range g {
		has[f.code] = true
	}
	half := func(a, b, ab string) bool {
		if has[a] && has[b] && len(has) == 2 {
			delete(has, a)
			delete(has, b)
			has[ab] = true
		}
		return len(has) == 1 && has[ab]
	}
	if dim == "stick" {
		if half(notHot, notCold, "stick=warm") {
			return "stick=warm", true
		}
		if has[notHot] && !has["stick=hot"] && len(has) > 1 {
			delete(has, notHot)
		}
		if has[notCold] && !has["stick=cold"] && len(has) > 1 {
			delete(has, notCold)
		}
	}
	if dim == "moisture" {
		if half(notDry, notWet, "moisture=right") {
			return "moisture=right", true
		}
		if has[notDry] && !has["moisture=dry"] && len(has) > 1 {
			delete(has, notDry)
		}
		if has[notWet] && !has["moisture=wet"] && len(has) > 1 {
			delete(has, notWet)
		}
	}
	if len(has) != 1 {
		return "", false
	}
	for k := range has {
		if k == notHot || k == notCold || k == notDry || k == notWet {
			return k, false
		}
		return k, true
	}
	return "", false
}

func some(g []fact, ok func(fact) bool) bool {
	for _, f := range g {
		if ok(f) {
			return true
		}
	}
	return false
}

func filter(g []fact, ok func(fact) bool) []fact {
	for i := range g {
		if ok(g[i]) {
			continue
		}
		out := append(make([]fact, 0, len(g)-1), g[:i]...)
		for _, f := range g[i+1:] {
			if ok(f) {
				out = append(out, f)
			}
		}
		return out
	}
	return g
}

// half says whether a fact is only a denial: "not hot" leaves the rest open.
func (f fact) half() bool {
	switch f.code {
	case notHot, notCold, notDry, notWet:
		return true
	}
	return false
}

// denies says whether a denial contradicts a plain value.
func (f fact) denies(e fact) bool {
	return f.code == notHot && e.code == "stick=hot" || f.code == notCold && e.code == "stick=cold" ||
		f.code == notDry && e.code == "moisture=dry" || f.code == notWet && e.code == "moisture=wet"
}
