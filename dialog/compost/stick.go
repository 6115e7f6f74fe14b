package compost

// What a stick or a thermometer says, by the day of the heap. D 0 is the day
// the heap was built. All days are common practice, no source; temperatures
// are S13, S22, S24 and S28.

// Phase is how far the heap's turning has come.
type Phase string

// The phases the stick is judged by.
const (
	BeforeTurn1 Phase = "before_turn_1"
	AfterTurn1  Phase = "after_turn_1"
	AfterTurn2  Phase = "after_turn_2"
	Resting     Phase = "resting"
)

// RestOver is the day from which a cold stick means ready, not failed.
const RestOver = 25

// checks are the days on which a cold stick is looked into but not yet redone:
// D 3-5, in cold highlands D 4-7.
func checks(highland bool) (first, last int) {
	if highland {
		return 4, 7
	}
	return 3, 5
}

// Judge gives the class of a stick's answer: hot, warm or cold, and beside
// them smoke, wet (with or without cold) and dry. Phase "" is before the first
// turn. Any other answer, or a day below 0, has no class: "".
func Judge(day int, phase Phase, answer string, highland bool) Class {
	if answer == "smoke" {
		return SmokeEmergency
	}
	if day < 0 {
		return ""
	}
	turned := phase != BeforeTurn1 && phase != ""
	first, last := checks(highland)
	switch answer {
	case "hot":
		if day >= RestOver {
			return WaitDoNotOpen
		}
		return HotOK
	case "warm":
		switch {
		case !turned:
			return WarmWait
		case day >= RestOver:
			return WaitDoNotOpen // cooling: open when it is cold right through
		}
		return HotOK // after a turn warm is as good as hot: carry on
	case "cold":
		switch {
		case turned && day >= RestOver:
			return ReadyToOpen
		case turned:
			return ColdCheck // water and slurry, turn again; never a new round
		case day < first:
			return ColdTooEarly
		case day <= last:
			return ColdCheck
		}
		return ColdRedo
	case "wet", "cold_wet", "wet_cold", "wet+cold", "cold+wet":
		if !turned && day < first {
			return ColdTooEarly
		}
		return TooWet
	case "dry":
		if !turned && day > last {
			return ColdRedo
		}
		return TooDry
	}
	return ""
}

// JudgeTemp gives the class of a thermometer in the core. Once the rest is
// over (day 25) a cool core is ready to open and a hot one is not.
func JudgeTemp(day int, celsius float64) Class {
	if day >= RestOver && celsius < 66 {
		if celsius < 40 {
			return ReadyToOpen
		}
		return WaitDoNotOpen
	}
	return TempClass(day, celsius)
}

// TempClass is the class of a temperature before the rest is over. A lower
// bound belongs to its class, an upper one does not.
func TempClass(day int, celsius float64) Class {
	switch {
	case celsius >= 85: // act at once above 185 F: S28
		return SmokeEmergency
	case celsius >= 71: // S28, practice
		return TooHot
	case celsius >= 66: // S13, S22
		return TooWarmTurn
	case celsius >= 55: // S13, S22, S24
		return HotOK
	case celsius >= 40: // S24, S13
		return WarmWait
	case day < 3:
		return ColdTooEarly
	case day <= 5:
		return ColdCheck
	}
	return ColdRedo
}
