package dialog

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
	x.say("words_please", nil)
	x.again()
}
