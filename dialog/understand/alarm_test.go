package understand

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// A danger is told with one letter wrong, in a short word too; an everyday word a letter away
// from one is none. The sentences are from memory.
func TestAlarm(t *testing.T) {
	for _, c := range []struct{ lang, text, want string }{
		{"en", "hsrd to breathe near the heap", "harm=breath"},
		{"en", "please stpo the messages", "ask=stop"},
		{"en", "do not semd me anything again", "ask=stop"},
		{"en", "the heap is on fure", "seen=fire"},
		{"es", "creo que veo huno", "seen=smoke"},
		{"es", "un alacrán me pixó en el pie", "harm=bite"},
		{"es", "hay ceniza en meio", "seen=smoke"},
		{"fr", "le tas fune", "seen=smoke"},
		{"fr", "j'ai des cliques à la main", "harm=burn"},
		{"fr", "je toisse beaucoup", "harm=breath"},
		{"sw", "moto unawaja lundoni", "seen=fire"},
		{"sw", "lundo limeqaka moto usiku", "seen=fire"},
		{"hi", "ढेर से धूआ उठ रहा", "seen=smoke"},
		{"hi", "ढेर सुग रहा है", "seen=smoke"},
		{"hi", "dher se dhia aa raha hai", "seen=smoke"},
	} {
		assert.Contains(t, Read(c.text, c.lang, "none").Codes, c.want, "%s: %q", c.lang, c.text)
	}
	for _, c := range []struct{ lang, text string }{
		{"en", "found a nail in the heap"},
		{"en", "the boy has a needle in his hand"},
		{"en", "I opened my mouth in surprise"},
		{"en", "I opened the bottle with my hand"},
		{"en", "I burned the stove wood"},
		{"en", "the hen pecked the worms"},
		{"en", "we saw a scorpion under the stones"},
		{"es", "quemé el rastrojo del potrero"},
		{"es", "abrió la tapa con la mano"},
		{"es", "partí la leña"},
		{"fr", "le chien a attaqué la poule"},
		{"fr", "les termites attaquent le tas"},
		{"fr", "le feu de la cuisine"},
		{"sw", "kibanzi cha mbao kwenye lundo"},
		{"sw", "nimefungua chupa kwa mkono"},
		{"hi", "डंठल छोटे-छोटे काट लिए"},
		{"hi", "भैंस के खुर में कील चुभ गई"},
		{"hi", "चूल्हा जला लिया"},
		{"hi", "चूहे ने बोरी काट दी"},
		{"hi", "ek tataiya dikha ped pe"},
		{"en", "will sieve after maize planting"},
		{"es", "prefiero que venga una persona"},
		{"fr", "2 3 goutes cest tou"},
		{"fr", "l'eau coule entre mes doigts"},
		{"sw", "kikapu kilichojaa"},
		{"sw", "sikuweza, mgongo umechoka"},
		{"sw", "nimeamka late juu ya mechi ya jana"},
		{"hi", "रात को सोने से पहले हिलाऊँगा"},
		{"hi", "shaadi me jaane ki jaldi thi"},
	} {
		for _, code := range Read(c.text, c.lang, "none").Codes {
			assert.False(t, dangerous(code), "%s %q: %s", c.lang, c.text, code)
		}
	}
}
