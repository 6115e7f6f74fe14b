package dialog

import (
	"strconv"

	"warmstick/dialog/phrases"
	"warmstick/dialog/understand"
)

// Local measures differ: one weighing replaces the usual size, for the farmer
// who weighed or, told by the officer, for the whole group.

// weighed reads "1 basket of dry leaves weighs 3 kg".
func (x *exchange) weighed(line string) (MeasureSet, bool) {
	var local understand.Amount
	kg := 0.0
	for _, a := range understand.Amounts(line, x.lang()) {
		switch {
		case a.Unit == "kg":
			kg = a.N
		case a.Unit == "g":
			kg = a.N / 1000
		case a.Unit != "":
			local = a
		}
		if local.Material == "" && a.Material != "" {
			local.Material = a.Material
		}
	}
	if local.N == 0 {
		local.N = 1
	}
	each := kg / local.N
	if local.Unit == "" || local.Material == "" || each <= 0 || each > 2000 {
		return MeasureSet{}, false
	}
	return MeasureSet{Unit: local.Unit, Material: local.Material, Kg: each}, true
}

// what is the one measure that was weighed: "1 basket of dry leaves".
func (m MeasureSet) what() worded {
	return amount(Gathered{N: 1, Unit: m.Unit, Material: m.Material})
}

// ownMeasure takes a farmer's weighing while the heap is being gathered.
func (x *exchange) ownMeasure(q Question, m meaning) bool {
	if m.picked {
		return false
	}
	set, ok := x.weighed(m.text)
	if !ok || len(understand.Amounts(m.text, x.lang())) != 2 {
		return false
	}
	x.note(0, set)
	x.say("measure_own", phrases.Args{"What": set.what(), "Kg": trimmed(set.Kg)})
	if h := x.Heap(q.Heap); len(h.Have) > 0 {
		x.sums(h)
	}
	x.again()
	return true
}

// measureTold takes a weighing for the whole group.
func (x *exchange) measureTold(q Question, m meaning) bool {
	set, ok := x.weighed(m.text)
	if !ok {
		return false
	}
	x.close()
	if !x.s.Person.Staff(q.Group, Officer) {
		x.say("officers_only", nil)
		return true
	}
	x.remark(0, set)
	cards := x.s.Register.Members(q.Group)
	for _, c := range cards {
		x.noteFor(c.Person, Zone(c.Zone), 0, set)
	}
	x.say("measure_kept", phrases.Args{"N": len(cards), "What": set.what(), "Kg": trimmed(set.Kg)})
	return true
}

// trimmed writes a number with one decimal where it needs one.
func trimmed(v float64) string { return strconv.FormatFloat(float64(int(v*10+0.5))/10, 'f', -1, 64) }
