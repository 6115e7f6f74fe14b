package dialog

import "warmstick/dialog/phrases"

// What is not plain text: it is answered with what was done with it.

// hearOther takes a photo, voice note, sticker, point on the map or contact. It
// says false when the words beside it are to be read as well.
func (x *exchange) hearOther(m Message, line string) bool {
	known := x.s.Person.Consent != "" || x.s.Person.Appointed
	if m.Kind == Text {
		if !known {
			x.greetOrAgain()
			return true
		}
		x.say("empty", nil)
		x.goOnFrom()
		return true
	}
	if !known {
		if line != "" {
			return false // the caption is read as words
		}
		x.greetOrAgain()
		return true
	}
	switch m.Kind {
	case Photo, Voice:
		x.passOn(m)
		if x.open.ID == "answer_text" {
			x.again()
			return true
		}
	case Location:
		x.say("got_location", nil)
	case Sticker:
		x.say("got_sticker", nil)
	case Contact:
		x.say("got_contact", nil)
	default:
		x.say("got_other", nil)
	}
	if line != "" && m.Kind != Contact {
		return false
	}
	x.goOnFrom()
	return true
}

func (x *exchange) greetOrAgain() {
	if x.open.ID == "" {
		x.greet("")
		return
	}
	x.say("please_words", nil)
	x.again()
}

// passOn sends a photo or voice note on by its reference: a farmer's to the
// officers, an officer's to the farmer whose answer is open.
func (x *exchange) passOn(m Message) {
	key := "got_" + string(m.Kind)
	if m.File == "" {
		x.say(key, nil)
		return
	}
	if x.open.ID == "answer_text" {
		if to, ok := x.reach(x.open.Who); ok {
			l := x.letter(to, Relay, x.signed("relay_down_"+string(m.Kind)), phrases.Args{"Name": called(x.s.Person)})
			l.File = &Enclosed{Kind: m.Kind, File: m.File}
			x.say("relayed_down", phrases.Args{"Name": called(to.Person)})
			return
		}
	}
	passed := false
	for _, to := range x.officerStates() {
		l := x.letter(to, Relay, "relay_"+string(m.Kind), phrases.Args{"Name": called(x.s.Person), "Place": x.s.Person.Place()})
		l.File = &Enclosed{Kind: m.Kind, File: m.File}
		x.opens(l, to)
		passed = true
	}
	if passed {
		key += "_passed"
	}
	x.say(key, nil)
}
