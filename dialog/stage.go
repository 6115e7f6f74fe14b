package dialog

// The stage: where a heap stands, from what is known of it.

// stage says where the heap stands, from what is known of it.
func (h *Heap) stage() Stage {
	switch {
	case h.Over != 0 && h.Complete:
		return Done
	case h.Over != 0:
		return Abandoned
	case h.Ripe != 0 || h.Taken != 0:
		return Harvest
	case h.Fed != 0:
		return Worms
	case h.Opened != 0 || h.Sieved != 0 || h.Cool:
		return Cooling
	case h.Path == ColdPath && !h.Begun.none():
		return ColdDung
	case h.Path == OldManure:
		return Planning
	case h.Redo || h.Built == 0 && (h.Base || h.Layers > 0):
		return Building
	case h.Built != 0:
		return h.heatStage()
	case h.Bottle.Working() && h.GatherDone:
		return Ferment
	case len(h.Have) > 0 || h.GatherDone:
		return Gathering
	case h.Bottle.Working():
		return Ferment
	}
	return Planning
}

func (d Day) none() bool { return d == 0 }

// restFrom: after the second turn, or when it is given up, the heap rests.
func (h *Heap) heatStage() Stage {
	if h.readyToOpen() {
		return Opening
	}
	switch {
	case h.Early != 0 || len(h.Turns) >= 2 || len(h.Turns) == 1 && h.Acts[TaskTurn].Skipped:
		return Resting
	case len(h.Turns) == 1:
		return Turned
	}
	return Heating
}

// openFrom is the first day on which a cold core means "finished", not
// "failed": day 25 after building (common practice, no source).
const openFrom = 25

// readyToOpen: the stick was cold at the end of the rest, or the heap finished
// early and was felt cold.
func (h *Heap) readyToOpen() bool {
	if len(h.Reads) == 0 {
		return false
	}
	r := h.Reads[len(h.Reads)-1]
	return r.Warmth == "cold" && h.Built != 0 && (int(r.Day-h.Built) >= openFrom || h.Early != 0 && r.Day > h.Early)
}
