package understand

import (
	"slices"
	"strings"
	"testing"
)

// A danger is found whoever it befell, by name, by kinship or as "him", and whatever was
// asked. $ stands for the victim. The sentences are from memory; no native speaker has read
// them.
var befell = []struct {
	lang    string
	victims []string
	told    map[string][]string // by the harm
}{
	{"en", []string{"Peter", "my son", "him", "Aunt Rose", "our neighbour"}, map[string][]string{
		"harm=bite": {"a snake bit $", "a scorpion stung $ at the heap", "a snake came from the straw and bit $ on the ankle"},
		"harm=burn": {"the steam burnt $"},
	}},
	{"en", []string{"Peter", "my son", "Rekha", "the girl", "our neighbour"}, map[string][]string{
		"harm=cut": {"$ cut a hand with the fork", "$ stepped on a nail"}, "harm=burn": {"$ burnt both hands"}, "harm=eye": {"$ got dust in the eye"},
		"harm=swallowed": {"$ drank from the bottle", "$ swallowed some of the starter"}, "harm=breath": {"$ is coughing badly from the dust"},
	}},
	{"es", []string{"a Pedro", "a mi hijo", "a la vecina", "a Rosa"}, map[string][]string{
		"harm=bite": {"una culebra mordió $", "un alacrán picó $"}, "harm=burn": {"el vapor quemó $"},
	}},
	{"es", []string{"Pedro", "mi hijo", "la vecina", "el niño"}, map[string][]string{
		"harm=cut": {"$ se cortó la mano con la pala", "$ pisó un clavo"}, "harm=burn": {"$ se quemó los dedos"},
		"harm=swallowed": {"$ tomó de la botella", "$ se tragó el fermento"}, "harm=breath": {"$ tiene mucha tos por el polvo"},
	}},
	{"fr", []string{"Paul", "mon fils", "la voisine", "l'enfant"}, map[string][]string{
		"harm=bite": {"un serpent a mordu $", "un scorpion a piqué $"}, "harm=burn": {"la vapeur a brûlé $", "$ s'est brûlé les doigts"},
		"harm=cut": {"$ s'est coupé la main avec la fourche", "$ a marché sur un clou"}, "harm=eye": {"$ a reçu de la poussière dans l'oeil"},
		"harm=swallowed": {"$ a bu à la bouteille", "$ a avalé du levain"}, "harm=breath": {"$ tousse beaucoup à cause de la poussière"},
	}},
	{"sw", []string{"Petro", "mtoto", "jirani", "mwanangu"}, map[string][]string{
		"harm=bite": {"nyoka amemuuma $", "nyuki wamemuuma $", "$ ameumwa na nyoka"}, "harm=burn": {"mvuke umemchoma $", "$ ameungua vidole"},
		"harm=cut": {"$ amejikata mkono kwa uma", "$ amekanyaga msumari"}, "harm=eye": {"$ ameingiwa na vumbi jichoni"},
		"harm=swallowed": {"$ amekunywa maji ya chupa"}, "harm=breath": {"$ anakohoa sana kwa vumbi"},
	}},
	{"hi", []string{"पीटर", "बेटे", "रेखा", "बच्चे"}, map[string][]string{
		"harm=bite": {"साँप ने $ को काट लिया", "$ को मधुमक्खी ने काटा"}, "harm=burn": {"भाप से $ का हाथ जल गया", "$ की उँगलियाँ जल गईं"},
		"harm=cut": {"$ का हाथ कट गया", "$ के पैर में कील घुस गई"}, "harm=eye": {"$ की आँख में धूल चली गई"},
		"harm=swallowed": {"$ ने बोतल का घोल पी लिया"}, "harm=breath": {"$ को धूल से खाँसी हो रही है"},
	}},
	{"hi-Latn", []string{"Ramu", "bete", "Rekha", "bachche"}, map[string][]string{
		"harm=bite": {"saanp ne $ ko kaat liya", "$ ko madhumakkhi ne kata"}, "harm=burn": {"bhaap se $ ka haath jal gaya"},
		"harm=cut": {"$ ka haath kat gaya", "$ ke pair me keel ghus gayi"}, "harm=eye": {"$ ki aankh me dhool chali gayi"},
		"harm=swallowed": {"$ ne botal ka ghol pi liya"}, "harm=breath": {"$ ko dhool se khansi ho rahi hai"},
	}},
}

func TestVictims(t *testing.T) {
	for _, b := range befell {
		for harm, frames := range b.told {
			for _, frame := range frames {
				for _, victim := range b.victims {
					text := strings.ReplaceAll(frame, "$", victim)
					for _, asked := range []string{"none", "turn", "bottle", "stick", "moisture"} {
						if got := Read(text, b.lang, asked).Codes; !slices.Contains(got, harm) {
							t.Errorf("%s under %s: %q: %v, want %s", b.lang, asked, text, got, harm)
						}
					}
				}
			}
		}
	}
}

// Whoever wants no more messages is heard, in any wording. From memory.
var enough = map[string][]string{
	"en": {"stop messaging me", "dont send me messages again", "I dont want these messages", "please no more sms", "stop writing to me", "remove my number", "leave me alone with these texts", "enough messages", "take me off your list", "I am tired of your messages, stop", "do not text me anymore", "cancel the messages", "stop disturbing me with messages", "quit messaging", "unsubscribe me"},
	"es": {"ya no me escriban", "no quiero más mensajes", "dejen de mandarme mensajes", "pare de escribirme", "borre mi número", "no me molesten más con mensajes", "basta de mensajes", "quiten mi número de la lista", "no me manden nada más", "cancele los mensajes", "ya paren con los mensajes", "deje de enviarme mensajes por favor", "estoy harto de los mensajes"},
	"fr": {"arrêtez de m'écrire", "je ne veux plus de messages", "plus de messages svp", "ne m'envoyez plus rien", "stop les messages", "enlevez mon numéro", "arrêtez les sms", "cessez de m'envoyer des messages", "laissez-moi tranquille avec vos messages", "ne m'écrivez plus", "supprimez mon numéro", "je suis fatigué de vos messages, arrêtez"},
	"sw": {"acha kunitumia meseji", "sitaki meseji zenu tena", "usinitumie ujumbe tena", "acheni kuniandikia", "ondoa namba yangu", "msinitumie tena sms", "nimechoka na meseji zenu", "futa namba yangu", "naomba msiniandikie tena", "simamisha ujumbe", "sitaki tena jumbe hizi", "tafadhali acheni kunitumia ujumbe"},
	"hi": {"मैसेज भेजना बंद करो", "मुझे और मैसेज मत भेजो", "मैसेज नहीं चाहिए", "मेरा नंबर हटा दो", "मैसेज बंद कर दीजिए", "अब मैसेज मत करना", "ये मैसेज रोक दो", "message mat bhejo", "message band karo", "mera number hata do", "mujhe message nahi chahiye", "ab message mat karna", "message bhejna rok do", "sms band kar dijiye", "pareshan mat karo message se"},
}

func TestNoMoreMessages(t *testing.T) {
	for lang, texts := range enough {
		for _, text := range texts {
			for _, asked := range []string{"none", "turn", "stick", "menu"} {
				if got := Read(text, lang, asked).Codes; !slices.Contains(got, "ask=stop") {
					t.Errorf("%s under %s: %q: %v", lang, asked, text, got)
				}
			}
		}
	}
}
