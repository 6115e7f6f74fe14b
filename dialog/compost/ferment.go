package compost

// The fruit-and-jaggery starter. Recipe and days are the trade's practice; gas
// is reckoned from the chemistry of full fermentation and is an upper bound.

// Recipe is what goes into one bottle.
type Recipe struct {
	Banana, Papaya, Jaggery float64 // g
	Water                   float64 // L, clean and unchlorinated
	Bottle                  float64 // L at least, so that a third stays empty
	GasLitres               float64 // at most, over the whole ferment
	Dilute                  Range   // litres of wetting water for this much ferment
}

const (
	fruitPerLitre   = 62.5 // g of each fruit: 125 g to 2 L (practice)
	jaggeryPerLitre = 125  // g: 250 g to 2 L (practice)
	// fruitVolume: litres that the solids of one litre of water take up: 250 g
	// at about 1 kg/L of fruit and sugar at 1.6 kg/L once dissolved (memory).
	fruitVolume = 0.125/1.0 + 0.125/1.6
	emptyPart   = 1.0 / 3 // leave a quarter to a third empty (practice)

	sugarInJaggery = 0.8 // memory
	// C12H22O11 + H2O -> 4 C2H5OH + 4 CO2, by whole-number molar masses.
	gasPerSugar = 4 * 44.0 / 342
	gasConstant = 0.082057 // L atm / (mol K)
	roomCelsius = 25

	// fermentPerHeap: about 2 L for one heap of the trade (practice).
	fermentPerHeap = 2.0
)

// GasDays is when gas is plainly felt in the bottle, ReadyDays when it is done
// (practice).
func GasDays() Range { return Range{4, 9, 14} }

// ReadyDays is when the bottle is done.
func ReadyDays() Range { return Range{18, 22, 35} }

// Ferment scales the recipe to litres of water.
func Ferment(waterL float64) Recipe {
	jaggery := jaggeryPerLitre * waterL
	return Recipe{
		Banana: fruitPerLitre * waterL, Papaya: fruitPerLitre * waterL, Jaggery: jaggery,
		Water:     waterL,
		Bottle:    waterL * (1 + fruitVolume) / (1 - emptyPart),
		GasLitres: Gas(jaggery, sugarInJaggery, roomCelsius).Litres,
		Dilute:    Range{10 * waterL, 15 * waterL, 20 * waterL},
	}
}

// FermentFor scales the recipe to a heap of m3: 2 L of water for 6 x 4 x 4 ft.
func FermentFor(m3 float64) Recipe { return Ferment(fermentPerHeap * m3 / TradeHeap) }

// FermentGas is what full fermentation gives off.
type FermentGas struct{ Sugar, CO2, Litres float64 } // g, g, L at 1 atm

// Gas is the upper bound of gas from grams of jaggery with the given part of
// sugar (0 to 1), measured at celsius.
func Gas(jaggery, sugar, celsius float64) FermentGas {
	s := jaggery * sugar
	g := s * gasPerSugar
	return FermentGas{s, g, g / 44 * gasConstant * (celsius + 273.15)}
}

// StartBefore gives how many days before the build each starter is begun
// (early, usual, late): fruit ferment, sour curd, dung slurry (practice).
func StartBefore(starter string) (Range, bool) {
	switch starter {
	case "ferment":
		return Range{20, 22, 25}, true
	case "curd":
		return Range{4, 4.5, 5}, true
	case "slurry":
		return Range{0, 0, 1}, true
	}
	return Range{}, false
}
