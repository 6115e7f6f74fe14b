package store

// pouch holds the letters that were written last, as they were before they were
// packed for the file: most are posted within moments, and reading one back cost
// an eighth of a message (BenchmarkDurable). The outbox itself is the file: a
// letter is only looked for here after the file has said that it waits, and one
// that is not here is read.
type pouch struct {
	held map[int64]Letter
	open []Letter // of the open transaction
}

// pouchSize is more letters than a batch of messages makes. Those of an
// announcement to thousands wait in the file, as do the oldest when more come:
// letters withdrawn before they went must not fill the pouch for ever.
const pouchSize = 256

func (p *pouch) lay(l Letter) {
	if len(p.open) < pouchSize {
		p.open = append(p.open, l)
	}
}

// keep holds on to the letters of a transaction that held.
func (p *pouch) keep() {
	if p.held == nil || len(p.held)+len(p.open) > pouchSize {
		p.held = map[int64]Letter{}
	}
	for _, l := range p.open {
		p.held[l.ID] = l
	}
	p.open = p.open[:0]
}

// forget drops the letters of a transaction that did not hold.
func (p *pouch) forget() { p.open = p.open[:0] }

// take gives a letter away; should its post fail, it is read from the file.
func (p *pouch) take(id int64) (Letter, bool) {
	l, ok := p.held[id]
	delete(p.held, id)
	return l, ok
}

// empty drops all, as when somebody is deleted whose words may be in one.
func (p *pouch) empty() { *p = pouch{} }
