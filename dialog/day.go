package dialog

import (
	"sync"
	"time"
)

// zones remembers loaded zones; loading one reads the whole zone table.
var zones sync.Map

// Day is a date of somebody's calendar, counted from 1 January 1970. The zero
// Day means "no day".
type Day int

// DayOf is the date that a moment has in a zone.
func DayOf(t time.Time, zone *time.Location) Day {
	y, m, d := t.In(zone).Date()
	return Day(time.Date(y, m, d, 0, 0, 0, 0, time.UTC).Unix() / 86400)
}

// Date gives the year, month and day of the month.
func (d Day) Date() (int, time.Month, int) {
	return time.Unix(int64(d)*86400, 0).UTC().Date()
}

// Weekday gives the day of the week.
func (d Day) Weekday() time.Weekday { return time.Unix(int64(d)*86400, 0).UTC().Weekday() }

// Zone loads a zone by its IANA name; an unknown name gives UTC, so that a
// diary written with a newer zone table can still be folded.
func Zone(name string) *time.Location {
	if zone, ok := zones.Load(name); ok {
		return zone.(*time.Location)
	}
	zone, err := time.LoadLocation(name)
	if err != nil || name == "Local" {
		zone = time.UTC
	}
	zones.Store(name, zone)
	return zone
}

// On is the moment a minute of the day comes on a date in a zone. Where the
// clock jumps over that minute it is the first moment after the gap; where it
// comes twice it is the first.
func (d Day) On(minute int, zone *time.Location) time.Time {
	y, m, day := d.Date()
	t := time.Date(y, m, day, minute/60, minute%60, 0, 0, zone)
	if h, mm, _ := t.Clock(); h*60+mm == minute && DayOf(t, zone) == d {
		if earlier := t.Add(-time.Hour); sameClock(earlier, t, zone) {
			return earlier
		}
		if earlier := t.Add(-30 * time.Minute); sameClock(earlier, t, zone) {
			return earlier
		}
		return t
	}
	// time.Date picks either side of a gap; walk to the first minute after it.
	at := time.Date(y, m, day, minute/60, minute%60, 0, 0, time.UTC)
	for at = at.Add(-15 * time.Hour); ; at = at.Add(time.Minute) {
		h, mm, _ := at.In(zone).Clock()
		now := DayOf(at, zone)
		if now > d || now == d && h*60+mm >= minute {
			return at.In(zone)
		}
	}
}

func sameClock(a, b time.Time, zone *time.Location) bool {
	ah, am, _ := a.In(zone).Clock()
	bh, bm, _ := b.In(zone).Clock()
	return ah == bh && am == bm && DayOf(a, zone) == DayOf(b, zone)
}
