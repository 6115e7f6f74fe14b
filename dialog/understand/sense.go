package understand

import (
	"maps"
	"slices"
	"strings"
	"sync"
)

// Senses a table row may name, beside the codes themselves (stick=hot, did=turned,
// seen=flies ...), num=N, unit=U, material=M, animal=A and crop=C.
//
// Words of grammar, words of the heap, and verbs that need an object to mean a code.
var senseNames = func() map[string]bool {
	m := map[string]bool{}
	for _, s := range strings.Fields(`
		filler known
		yes no not neither nor notyet ok done and but or then because
		if whatif si maybe soft tag was is now earlier correct isaid mistake
		very bit atall too enough only get fine medium size look endless rainword andnow
		why how what whenq which who howmany askif canq normal avoid
		tomorrow later today past kal parson busy skip cant night
		will want must supposed forgot finish start prog after while before have late
		me mine person neighbor animal stinger pointed foreign weather
		stick heap inside edge bottle cap worm bed starter smell gas water drop squeeze body eye plant cloth
		layer food sheet compost message officer medicine dust damp liquid
		heat joto poa moto good bad burning burnt nothing sharp able
		fireglyph
		do put give make takeout open collect bring stir burn cut bite maul drink eat mistook breathe swelling usedup vanished fails lacks tread ember scalding fedup hold die leave goout come use sell wrong
		fill dark crawl
		dung dry_leaf leaf stem stalk grasses peel straws huskw pulp coffee fruit veg kitchen banana green old
		num half plushalf sadhe paune sava dozen one rangeto between degree celsius fahrenheit and_half
		dayword ordinal minute hour money percent length ago inside_of unitper
		ft m cm inch span by
		weekday month hourword morning noon evening quarter past_hour to_hour
		nth choice sabbath next last in_days days weeks
		lentil
		stop continue ready status
		couldnt hole partly helped await rag times write step remain progress take go stay already didaux imeant stuff alive empty moving on_it wash worry help see say hear know_not
	`) {
		m[s] = true
	}
	return m
}()

var codeValues = map[string]string{
	"stick": "hot warm cold", "moisture": "dry right wet",
	"smell":  "earthy rotten ammonia sour alcohol none",
	"seen":   "steam flies maggots ants termites rodents mould smoke fire runoff sunk weeds worms_dead worms_escaping worms_well ash",
	"bottle": "bloated flat burst leaking",
	"did":    "gathered mixed shook vented built layered turned watered covered sieved fed harvested",
	"answer": "yes no", "when": "later tomorrow skip",
	"ask": "next status why help officer stop undo", "harm": "burn breath swallowed cut bite eye", "chat": "hello thanks",
	"unit":     "kg quintal ton litre bag basin basket bucket tin cart barrow trailer headload load bundle armful handful",
	"animal":   "cow buffalo goat sheep horse donkey pig rabbit hen other",
	"crop":     "maize cereal stalky rice cane coffee banana fruit veg other nut",
	"material": "cow_dung buffalo_dung goat_dung sheep_dung horse_dung donkey_dung pig_dung rabbit_dung hen_dung grass weeds leaves_green dry_leaves banana_stem water_hyacinth fruit_waste veg_scraps coffee_pulp coffee_husk straw maize_stover stalks cane_waste husk sawdust hay cardboard ash jaggery curd compost worms",
	"day":      "0 1 2 3 4 5 6",
	"mon":      "1 2 3 4 5 6 7 8 9 10 11 12",
	"off":      "-3 -2 -1 0 1 2 3 7 -7 14 -14 30",
	"per":      "1 7 30",
	"part":     "morning noon afternoon evening night",
	"cmd":      "menu help undo stop officer status next why board heap round announce invite digest groups visited delete_me my_data language pictures start settings hour place skip later",
	"clock":    "half quarter to past oclock am pm",
	"len":      "ft m cm in span",
}

// senseID is the place of a sense in senseList. The tables hold it for the name: they
// are large, and what holds no pointer the garbage collector passes over.
type senseID uint16

var senseList = func() []string {
	list := slices.Collect(maps.Keys(senseNames))
	for k, vs := range codeValues {
		for _, v := range strings.Fields(vs) {
			list = append(list, k+"="+v)
		}
	}
	return list
}()

// senseIDs is every sense a table may name.
var senseIDs = sync.OnceValue(func() map[string]senseID {
	m := make(map[string]senseID, 512)
	for id, s := range senseList {
		m[s] = senseID(id)
	}
	return m
})
