package compost

// Which one measurement would settle the advice on a mix.

// judge fills in the advice, whether it holds, and what would settle it.
func (m *Mix) judge(ps []part, parts []Portion, all tally, cal Calibration) {
	if all.nitrogen > 0 {
		m.Advice = judgeMix(make([]Class, 0, 2), m.CN.Likely, m.Moisture.Likely)
	} else if c := JudgeMoisture(m.Moisture.Likely); c != "" {
		m.Advice = []Class{c}
	}
	cnHolds := all.nitrogen == 0 || cnBand().holds(m.CN)
	moistHolds := moistureBand().holds(m.Moisture)
	m.Settled = cnHolds && moistHolds
	if m.Settled {
		return
	}
	if !moistHolds {
		// A squeezed handful tells dry, right or wet: it settles moisture.
		m.Doubt, m.DoubtSettles = "squeeze", cnHolds
	}
	if cnHolds {
		return
	}
	width := m.CN.High - m.CN.Low
	best, cut := -1, 0.05*width // less than a twentieth is not worth a walk to the scale
	var bestMix Mix
	for i := range ps {
		if !ps[i].measured {
			continue
		}
		kg := ps[i].kg
		ps[i].kg = Range{kg.Likely * (1 - weighed), kg.Likely, kg.Likely * (1 + weighed)}
		var after Mix
		spread(ps, all, &after)
		ps[i].kg = kg
		if gain := width - (after.CN.High - after.CN.Low); gain > cut {
			best, cut, bestMix = i, gain, after
		}
	}
	if best < 0 {
		return
	}
	p := origin(parts, best, cal)
	m.Doubt = "weigh " + p.Unit + " " + p.Material
	m.DoubtSettles = cnBand().holds(bestMix.CN) && moistureBand().holds(bestMix.Moisture)
}

// origin finds the portion from which the n-th weighable part was made.
func origin(parts []Portion, n int, cal Calibration) Portion {
	for _, p := range parts {
		if _, _, ok := cal.Weigh(p); !ok {
			continue
		}
		if n--; n < 0 {
			return p
		}
	}
	return Portion{}
}
