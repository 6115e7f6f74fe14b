package dialog

import "time"

// dateAhead is the next day with that month and date; month 0 is any month.
func (x *exchange) dateAhead(month, date int) Day {
	for d := x.today; d < x.today+370; d++ {
		if _, m, dd := d.Date(); dd == date && (month == 0 || m == time.Month(month)) {
			return d
		}
	}
	return x.today
}

// dateNear is the last day, up to today, with that month and date; a date that
// was not in the last half year is meant ahead.
func (x *exchange) dateNear(month, date int) Day {
	for d := x.today; d > x.today-180; d-- {
		if _, m, dd := d.Date(); dd == date && (month == 0 || m == time.Month(month)) {
			return d
		}
	}
	return x.dateAhead(month, date)
}
