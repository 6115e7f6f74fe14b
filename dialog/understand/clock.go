package understand

import "strings"

// Clock reads an hour of the day: "6:30", "half past six", "7 in the morning",
// "saa moja asubuhi" (Swahili counts from dawn and dusk: 07:00), "subah saat baje",
// "a las 7", "7h30". ok is false when the text names none. An hour without any
// word beside it is taken as it stands on a 24-hour clock.
func Clock(text, lang string) (hour, minute int, ok bool) {
	g, words := calendarWords(), keysOf(unhyphened(tokens(text)))
	if h, m, ok := clock(g.read(words, languages(lang)...), lang); ok {
		return h, m, true
	}
	for _, t := range elsewhere(lang) {
		if !g.holds(words, t) {
			continue
		}
		if h, m, ok := clock(g.read(words, t), folders[t]); ok {
			return h, m, true
		}
	}
	return 0, 0, false
}

func clock(in []sign, lang string) (hour, minute int, ok bool) {
	part := ""
	swahili, half, quarter := false, false, 0
	toHour := false
	for _, s := range in {
		if p, has := strings.CutPrefix(s.sense, "part="); has && part == "" {
			part = p
		}
		switch s.sense {
		case "clock=oclock":
			swahili = swahili || s.tongue == sw
		case "clock=half":
			half = true
		case "plushalf":
			half = true
		case "clock=quarter":
			quarter = 15
		case "clock=to":
			toHour = true
		case "clock=am":
			part = "morning"
		case "clock=pm":
			part = "afternoon"
		}
	}
	for i, s := range in {
		if s.sense != "num" {
			continue
		}
		v := s.value
		if v < 0 || v > 24 {
			continue
		}
		h := int(v)
		m := 0
		if v != float64(h) {
			switch {
			case s.typed && strings.Contains(s.text, "."): // 6.30
				if f := strings.SplitN(s.text, ".", 2)[1]; len(f) == 2 {
					m = int(f[0]-'0')*10 + int(f[1]-'0')
				}
			default:
				m = int((v-float64(h))*60 + 0.5) // sadhe saat, and a half
			}
		}
		if i+2 < len(in) && (in[i+1].sense == ":" || in[i+1].sense == "clock=oclock") && in[i+2].sense == "num" && in[i+2].value < 60 {
			m = int(in[i+2].value)
		}
		if i+1 < len(in) && in[i+1].sense == "num" && in[i+1].value >= 10 && in[i+1].value < 60 && m == 0 {
			m = int(in[i+1].value) // "six thirty"
		}
		if half && m == 0 {
			m = 30
		}
		if quarter > 0 {
			m = quarter
			if toHour {
				m = 45
				h--
			}
		}
		if h > 24 || m > 59 {
			continue
		}
		if swahili && h >= 1 && h <= 12 && !(s.typed && part == "") {
			// saa moja asubuhi: the first hour of the day is seven
			h = (h + 6) % 24
			if part == "night" || part == "evening" {
				h = (h%12 + 12) % 24
				if h >= 12 && int(v) >= 6 && part == "night" {
					h -= 12 // saa nane usiku is two at night
				}
			} else if (part == "afternoon" || part == "noon") && h < 12 {
				h += 12
			} else if part == "morning" && h >= 12 {
				h -= 12
			}
			return h % 24, m, true
		}
		switch part {
		case "afternoon", "evening":
			if h < 12 {
				h += 12
			}
		case "night":
			if h >= 6 && h < 12 {
				h += 12
			} else if h == 12 {
				h = 0
			}
		case "noon":
			if h < 6 {
				h += 12
			}
		case "morning":
			if h == 12 {
				h = 0
			}
		}
		return h % 24, m, true
	}
	if part == "noon" {
		return 12, 0, true
	}
	return 0, 0, false
}
