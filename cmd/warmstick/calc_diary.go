package main

// More sums for a person: use on crops, money, heat, the tables.

import (
	"fmt"
	"sort"
	"strconv"
	"strings"

	"warmstick/dialog/compost"
)

func (w *words) use(say func(string, any, error) error) error {
	crop, _ := w.next()
	d, ok := compost.Rate(crop)
	if !ok {
		return fmt.Errorf("crop: %q is not known; accepted: %s", crop, strings.Join(compost.Crops(), ", "))
	}
	if w.peek() == "from" {
		w.next()
		kg, err := w.number("kg", kilos)
		if err != nil {
			return err
		}
		r, _ := compost.Serves(kg, crop)
		return say("reach", r, w.end())
	}
	n, err := w.number("amount", count)
	if err != nil {
		return err
	}
	unit, _ := w.next()
	dose, shown := d.PerM2.Times(n), "kg"
	switch strings.TrimSuffix(unit, "s") {
	case "m2":
	case "ha":
		dose = dose.Times(1e4)
	case "plant", "tree", "bush", "bushe", "mat", "hole":
		dose = d.PerPlant.Times(n)
	case "litre", "l":
		dose, shown = d.Part.Times(n), "L"
	default:
		return fmt.Errorf("unit: %q is not known; accepted: m2, ha, plants, litres", unit)
	}
	if dose.Likely == 0 {
		return fmt.Errorf("unit: no dose of %s by %s is known; try m2, plants or litres", crop, unit)
	}
	source := d.Source
	if d.PerPlant.Likely > 0 && strings.HasPrefix(unit, "plant") {
		source = d.PlantSource
	}
	return say("use", struct {
		compost.Range
		Unit, Source string
	}{dose, shown, source}, w.end())
}

func (w *words) money() (any, error) {
	var p compost.Purse
	into := map[string]*float64{
		"sold": &p.SoldKg, "price": &p.Price, "used": &p.UsedKg, "saved": &p.Saved,
		"costs": &p.Costs, "cost": &p.Costs, "days": &p.DaysOut, "wage": &p.Wage,
	}
	if len(w.rest) == 0 {
		return nil, fmt.Errorf("money: nothing to reckon; accepted: sold 120 price 10 costs 300 days 4")
	}
	for len(w.rest) > 0 {
		name, _ := w.next()
		to, ok := into[name]
		if !ok {
			return nil, fmt.Errorf("%q is not known; accepted: sold, price, used, saved, costs, days, wage", name)
		}
		v, err := w.number(name, coin)
		if err != nil {
			return nil, err
		}
		*to = v
	}
	return compost.Earn(p), nil
}

func (w *words) breakEven() (any, error) {
	price, err := w.number("price", coin)
	if err != nil {
		return nil, err
	}
	gain, err := w.number("gain a heap", coin)
	if err != nil {
		return nil, err
	}
	n, ok := compost.BreakEven(price, gain)
	return struct {
		Heaps int
		OK    bool
	}{n, ok}, w.end()
}

func (w *words) materials() []compost.Material {
	word, _ := w.next()
	var found []compost.Material
	for _, m := range compost.Materials() {
		if strings.Contains(m.ID, word) || m.Class == word {
			found = append(found, m)
		}
	}
	return found
}

type measured struct {
	Unit, Material string
	Kg             compost.Range
}

func (w *words) measures() (all []measured) {
	for _, u := range compost.Units() {
		for _, m := range []string{"cow_dung", "grass", "dry_leaves"} {
			if kg, _, ok := w.cal.Weigh(compost.Portion{N: 1, Unit: u, Material: m}); ok {
				all = append(all, measured{u, m, kg})
			}
		}
	}
	return all
}

// heat takes settings and DAY EVENT pairs.
func (w *words) heat() (any, error) {
	var log compost.HeatLog
	until := -1.0
	for len(w.rest) > 0 {
		word, _ := w.next()
		var err error
		switch word {
		case "air":
			log.Air, err = w.number("air", celsius)
		case "moisture":
			log.Moisture, err = w.number("moisture", percent)
		case "cn":
			log.CN, err = w.number("cn", ratio)
		case "size":
			log.Dims, err = w.lengths()
		case "until":
			until, err = w.number("until", dayNumber)
		default:
			err = w.event(&log, word)
		}
		if err != nil {
			return nil, err
		}
	}
	if until < 0 {
		return nil, fmt.Errorf("until: missing; accepted: the day of the heap that is now, such as until 12")
	}
	log.Until = 24 * until
	sort.SliceStable(log.Signs, func(i, j int) bool { return log.Signs[i].Hour < log.Signs[j].Hour })
	sort.Float64s(log.Turns)
	sort.Float64s(log.Waters)
	e := compost.Heat(log)
	n := len(e.Hours) - 1
	return struct {
		Now, Low, High, Turn, Treated float64
		E                             compost.HeatEstimate
	}{e.Likely[n], e.Low[n], e.High[n], e.NextTurn / 24, 100 * e.OutsideTreated, e}, nil
}

// event adds what happened on a day.
func (w *words) event(log *compost.HeatLog, day string) error {
	d, err := wordNumber("day", day, dayNumber.span())
	if err != nil {
		return fmt.Errorf("%w; or one of air, size, moisture, cn, until", err)
	}
	what, _ := w.next()
	switch what {
	case "hot", "warm", "cold":
		log.Signs = append(log.Signs, compost.Sign{Hour: 24 * d, Word: what})
	case "turn", "turned":
		log.Turns = append(log.Turns, 24*d)
	case "water", "watered":
		log.Waters = append(log.Waters, 24*d)
	default:
		c, err := strconv.ParseFloat(strings.TrimSuffix(what, "c"), 64)
		if err != nil || !celsius.span().has(c) {
			return fmt.Errorf("day %s: %q is not known; accepted: hot, warm, cold, turn, water, or a temperature such as 61C", day, what)
		}
		log.Signs = append(log.Signs, compost.Sign{Hour: 24 * d, Celsius: c})
	}
	return nil
}
