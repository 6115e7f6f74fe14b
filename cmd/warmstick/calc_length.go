package main

// Lengths as people type them.

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"warmstick/dialog/compost"
)

// One number with its unit; inch marks come as ", ”, “, ″, ”, ’’, ′′, in, inch,
// inches, and foot marks as ', ’, ′, ft, foot, feet.
var onLength = regexp.MustCompile(`^([0-9]+(?:[.,][0-9]+)?)\s*(mm|cm|metres|meters|metre|meter|m|inches|inch|in\.?|feet|foot|ft\.?|["”“″]|['’′´]{2}|['’′´])?\s*`)

// parseLength gives metres. A number without a unit is in bare (1 = metres).
// Feet and inches may stand together: 5'6", 5 ft 6 in.
func parseLength(s string, bare float64) (float64, error) {
	rest := strings.ToLower(strings.TrimSpace(s))
	var total float64
	for n := 0; rest != "" || n == 0; n++ {
		m := onLength.FindStringSubmatch(rest)
		if m == nil || n == 2 {
			return 0, fmt.Errorf(`length %q is not known; accepted: 1.2 m, 120 cm, 4 ft, 4', 48 in, 48"`, s)
		}
		v, err := strconv.ParseFloat(strings.Replace(m[1], ",", ".", 1), 64)
		if err != nil {
			return 0, fmt.Errorf("length %q: %w", s, err)
		}
		unit := unitOfLength(m[2], bare)
		if n == 1 && m[2] == "" {
			unit = compost.Foot / 12 // 5' 6
		}
		total += v * unit
		rest = rest[len(m[0]):]
	}
	if !lengthMetres.span().has(total) {
		return 0, fmt.Errorf("length %q is not accepted; accepted: %v", s, lengthMetres.span())
	}
	return total, nil
}

func unitOfLength(u string, bare float64) float64 {
	switch {
	case u == "":
		return bare
	case u == "mm":
		return 0.001
	case u == "cm":
		return 0.01
	case strings.HasPrefix(u, "m"):
		return 1
	case strings.HasPrefix(u, "f"), len([]rune(u)) == 1 && strings.ContainsAny(u, "'’′´"):
		return compost.Foot
	}
	return compost.Foot / 12
}
