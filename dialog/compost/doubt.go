package compost

// Which one measurement would settle the advice on a mix.

// judge fills in the advice, whether it holds, and what would settle it.
func (m *Mix) judge(ps []part, all *tally) {
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
	best, cut := -1, 0.01*width // less than a hundredth is not worth a walk to the scale
	for i := range ps {
		if !ps[i].measured {
			continue
		}
		kg := ps[i].weight.kg
		ps[i].weight.kg = Range{kg.Likely * (1 - weighed), kg.Likely, kg.Likely * (1 + weighed)}
		cn, moisture := spread(ps, all)
		ps[i].weight.kg = kg
		if gain := width - (cn.High - cn.Low); gain > cut {
			best, cut = i, gain
			m.DoubtSettles = cnBand().holds(cn) && moistureBand().holds(moisture)
		}
	}
	if best >= 0 {
		m.Doubt = "weigh " + ps[best].source.Unit + " " + ps[best].source.Material
	}
}
