package understand

import (
	"strings"
	"testing"
)

// paradigm is how a language tells of a deed: done, not done, to come, going on, wished,
// asked. Frames hold the forms of an act by their place in its row, as $1, $2 ...; all
// sentences are from memory, no native speaker has read them.
type paradigm struct {
	lang   string
	frames map[string][]string // by what is meant
	acts   []string            // the code, then the forms, apart by "|"
}

var paradigms = []paradigm{
	// past | bare | -ing | participle
	{"en", map[string][]string{
		"done":     {"I $1", "we $1", "my son $1", "$1 yesterday"},
		"not":      {"I did not $2", "we didn't $2", "did not $2", "I have not $4", "haven't $4 yet", "forgot to $2"},
		"tomorrow": {"I will $2 tomorrow", "we will $2 tomorrow morning"},
		"later":    {"I will $2", "we're $3", "I am $3 now", "I cannot $2 today"},
		"wished":   {"I want to $2"},
		"asked":    {"should I $2?", "can we $2?"},
	}, []string{
		"turned|turned the heap|turn the heap|turning the heap|turned the heap", "shook|shook the bottle|shake the bottle|shaking the bottle|shaken the bottle",
		"vented|opened the cap|open the cap|opening the cap|opened the cap", "built|built the heap|build the heap|building the heap|built the heap",
		"layered|laid the layer|lay the layer|laying the layer|laid the layer", "layered|put the layer down|put the layer down|putting the layer down|put the layer down",
		"watered|watered the heap|water the heap|watering the heap|watered the heap", "covered|covered the heap|cover the heap|covering the heap|covered the heap",
		"sieved|sieved the compost|sieve the compost|sieving the compost|sieved the compost", "fed|fed the worms|feed the worms|feeding the worms|fed the worms",
		"harvested|harvested the compost|harvest the compost|harvesting the compost|harvested the compost", "mixed|mixed the starter|mix the starter|mixing the starter|mixed the starter",
	}},
	// root | subjunctive | object
	{"sw", map[string][]string{
		"done":     {"nime$1 $3", "tume$1 $3", "nili$1 $3 jana", "mwanangu ame$1 $3"},
		"not":      {"siku$1 $3", "hatuku$1 $3", "sija$1 $3", "hatuja$1 $3 bado", "nimesahau ku$1 $3"},
		"tomorrow": {"nita$1 $3 kesho", "kesho tuta$1 $3"},
		"later":    {"nita$1 $3", "nina$1 $3 sasa", "tuna$1 $3", "siwezi ku$1 $3 leo", "tayari nina$1 $3"},
		"wished":   {"nataka ku$1 $3"},
		"asked":    {"ni$2 $3?", "je tu$2 $3?"},
	}, []string{
		"turned|geuza|geuze|lundo", "turned|pindua|pindue|lundo", "shook|tikisa|tikise|chupa", "vented|fungua|fungue|kifuniko", "built|jenga|jenge|lundo",
		"layered|weka|weke|tabaka", "watered|mwagilia|mwagilie|lundo", "covered|funika|funike|lundo", "sieved|chekecha|chekeche|mboji", "fed|lisha|lishe|minyoo",
		"harvested|vuna|vune|mboji", "gathered|kusanya|kusanye|majani", "mixed|koroga|koroge|kianzio",
	}},
	// object | stem | light verb | past | infinitive | future | subjunctive
	{"hi", map[string][]string{
		"done":     {"$1 $2 $3", "बेटे ने $1 $2 $3", "कल $1 $2 $3 था"},
		"not":      {"$1 नहीं $4", "$1 अभी नहीं $4", "$1 $2 नहीं पाया", "$1 $5 भूल गया"},
		"tomorrow": {"कल $1 $6"},
		"later":    {"$1 $6", "$1 $2 रहा हूँ", "अभी $1 $2 रहे हैं"},
		"wished":   {"$1 $5 चाहता हूँ"},
		"asked":    {"$1 $7?", "क्या $1 $5 चाहिए?"},
	}, []string{
		"turned|ढेर|पलट|दिया|पलटा|पलटना|पलटूँगा|पलटूँ", "shook|बोतल|हिला|दी|हिलाई|हिलाना|हिलाऊँगा|हिलाऊँ", "vented|ढक्कन|खोल|दिया|खोला|खोलना|खोलूँगा|खोलूँ",
		"built|ढेर|बना|दिया|बनाया|बनाना|बनाऊँगा|बनाऊँ", "layered|परत|बिछा|दी|बिछाई|बिछाना|बिछाऊँगा|बिछाऊँ", "covered|ढेर|ढक|दिया|ढका|ढकना|ढकूँगा|ढकूँ",
		"sieved|खाद|छान|दी|छानी|छानना|छानूँगा|छानूँ", "harvested|खाद|निकाल|दी|निकाली|निकालना|निकालूँगा|निकालूँ",
	}},
	{"hi-Latn", map[string][]string{
		"done":     {"$1 $2 $3", "bete ne $1 $2 $3", "kal $1 $2 $3 tha"},
		"not":      {"$1 nahi $4", "$1 abhi nahi $4", "$1 $2 nahi paya", "$1 $5 bhool gaya"},
		"tomorrow": {"kal $1 $6"},
		"later":    {"$1 $6", "$1 $2 raha hu", "abhi $1 $2 rahe hain"},
		"wished":   {"$1 $5 chahta hu"},
		"asked":    {"$1 $7?", "kya $1 $5 chahiye?"},
	}, []string{
		"turned|dher|palat|diya|palta|palatna|palatunga|palatu", "shook|botal|hila|di|hilayi|hilana|hilaunga|hilau", "vented|dhakkan|khol|diya|khola|kholna|kholunga|kholu",
		"built|dher|bana|diya|banaya|banana|banaunga|banau", "layered|parat|bichha|di|bichhayi|bichhana|bichhaunga|bichhau", "covered|dher|dhak|diya|dhaka|dhakna|dhakunga|dhaku",
		"sieved|khad|chhan|di|chhani|chhanna|chhanunga|chhanu",
	}},
	// object | I | we | infinitive | future | gerund | participle
	{"es", map[string][]string{
		"done":     {"$2 $1", "ya $3 $1", "ya he $7 $1", "ayer $2 $1"},
		"not":      {"no $2 $1", "no $3 $1", "todavía no he $7 $1", "se me olvidó $4 $1", "no pude $4 $1"},
		"tomorrow": {"mañana voy a $4 $1", "$5 $1 mañana"},
		"later":    {"voy a $4 $1", "estoy $6 $1", "ya estamos $6 $1", "hoy no puedo $4 $1"},
		"wished":   {"quiero $4 $1"},
		"asked":    {"¿debo $4 $1?", "¿puedo $4 $1?"},
	}, []string{
		"turned|el montón|volteé|volteamos|voltear|voltearé|volteando|volteado", "shook|la botella|agité|agitamos|agitar|agitaré|agitando|agitado", "vented|la tapa|abrí|abrimos|abrir|abriré|abriendo|abierto",
		"built|el montón|armé|armamos|armar|armaré|armando|armado", "layered|la capa|puse|pusimos|poner|pondré|poniendo|puesto", "watered|el montón|regué|regamos|regar|regaré|regando|regado",
		"covered|el montón|tapé|tapamos|tapar|taparé|tapando|tapado", "sieved|el abono|cerní|cernimos|cernir|cerniré|cerniendo|cernido", "fed|a las lombrices|alimenté|alimentamos|alimentar|alimentaré|alimentando|alimentado",
		"harvested|el abono|coseché|cosechamos|cosechar|cosecharé|cosechando|cosechado", "mixed|el fermento|mezclé|mezclamos|mezclar|mezclaré|mezclando|mezclado",
	}},
	// object | participle | infinitive | future
	{"fr", map[string][]string{
		"done":     {"j'ai $2 $1", "on a $2 $1", "mon fils a $2 $1", "hier on a $2 $1"},
		"not":      {"je n'ai pas $2 $1", "on a pas $2 $1", "je n'ai pas encore $2 $1", "j'ai oublié de $3 $1"},
		"tomorrow": {"je vais $3 $1 demain", "demain je $4 $1"},
		"later":    {"je vais $3 $1", "je suis en train de $3 $1", "je ne peux pas $3 $1 aujourd'hui"},
		"wished":   {"je veux $3 $1"},
		"asked":    {"je dois $3 $1 ?", "faut-il $3 $1 ?"},
	}, []string{
		"turned|le tas|retourné|retourner|retournerai", "shook|la bouteille|secoué|secouer|secouerai", "vented|le bouchon|ouvert|ouvrir|ouvrirai", "built|le tas|monté|monter|monterai",
		"layered|la couche|posé|poser|poserai", "watered|le tas|arrosé|arroser|arroserai", "covered|le tas|couvert|couvrir|couvrirai", "sieved|le compost|tamisé|tamiser|tamiserai",
		"fed|les vers|nourri|nourrir|nourrirai", "harvested|le compost|récolté|récolter|récolterai", "mixed|le levain|mélangé|mélanger|mélangerai",
	}},
}

// Every deed in every mood, under the question for it and under others, by the labelling
// rules: a deed denied is a no under its own question alone.
func TestParadigms(t *testing.T) {
	for _, p := range paradigms {
		for _, row := range p.acts {
			act := strings.Split(row, "|")
			for mood, frames := range p.frames {
				for _, frame := range frames {
					text := frame
					for i := len(act) - 1; i > 0; i-- {
						text = strings.ReplaceAll(text, "$"+string(rune('0'+i)), act[i])
					}
					for _, asked := range []string{"none", "stick", "turn", "shake", "layer", "sieve", "feed"} {
						want := map[string][]string{"done": {"did=" + act[0]}, "tomorrow": {"when=tomorrow"}, "later": {"when=later"}, "asked": {"ask=help"}}[mood]
						if mood == "not" && actOf(asked) == "did="+act[0] {
							want = []string{"answer=no"}
						}
						if got := Read(text, p.lang, asked); !sameCodes(got.Codes, want) {
							t.Errorf("%s under %s: %q: %v, want %v", p.lang, asked, text, got.Codes, want)
						}
					}
				}
			}
		}
	}
}
