package dialog

import (
	_ "embed"
	"strconv"
	"strings"
	"sync"
	"time"
)

// The report for the officer's office: tables of farmers, heaps, figures and
// diary lines, each column with its unit and meaning. Names and what people
// wrote are in it only on request.

// Table is one sheet of the report. Cells are string, int, float64, time.Time
// (a date at midnight UTC, or a moment) or nil for "not known".
type Table struct {
	Name                  string
	Columns, Units, Means []string
	Rows                  [][]any
}

//go:embed report.tsv
var reportRows string

type reportColumn struct {
	table, name, unit, means string
	secret                   bool
}

var reportColumns = sync.OnceValue(func() []reportColumn {
	var list []reportColumn
	for _, r := range rows(reportRows) {
		list = append(list, reportColumn{r[0], r[1], r[2], r[4], r[3] == "names"})
	}
	return list
})

// blank makes an empty table from the dictionary.
func blank(name string, names bool) Table {
	t := Table{Name: name}
	for _, c := range reportColumns() {
		if c.table == name && (names || !c.secret) {
			t.Columns = append(t.Columns, c.name)
			t.Units = append(t.Units, c.unit)
			t.Means = append(t.Means, c.means)
		}
	}
	return t
}

// add appends a row, cells by column name; what the dictionary leaves out is
// dropped.
func (t *Table) add(cells map[string]any) {
	row := make([]any, len(t.Columns))
	for i, c := range t.Columns {
		row[i] = cells[c]
	}
	t.Rows = append(t.Rows, row)
}

// Dictionary is the data dictionary itself.
func Dictionary(names bool) Table {
	t := Table{Name: "dictionary", Columns: []string{"table", "column", "unit", "meaning"}, Units: make([]string, 4), Means: make([]string, 4)}
	for _, c := range reportColumns() {
		if names || !c.secret {
			t.Rows = append(t.Rows, []any{c.table, c.name, c.unit, c.means})
		}
	}
	return t
}

// Tables are the farmers, heaps and figures of some cards. groups names each
// group; chat is nil where chat ids are not at hand.
func Tables(cards []Card, groups map[GroupID]string, chat func(PersonID) int64, names bool, now time.Time) []Table {
	farmers, heaps := blank("farmers", names), blank("heaps", names)
	for _, c := range cards {
		zone := Zone(c.Zone)
		var in []string
		for _, m := range c.Roles {
			in = append(in, groups[m.Group])
		}
		cells := map[string]any{"farmer": int(c.Person), "groups": strings.Join(in, ", "), "language": c.Lang, "area": c.Area,
			"phone": yesOrNo(c.Keeper == 0), "left": yesOrNo(c.Nameless), "since": dateCell(dayOrNone(c.Since, zone)),
			"visited": dateCell(dayOrNone(c.Seen, zone)), "stopped": yesOrNo(c.Stopped), "heaps": len(c.Tales)}
		if names {
			cells["name"], cells["town"] = c.Name, c.Town
			if chat != nil {
				cells["chat"] = strconv.FormatInt(chat(c.Person), 10)
			}
		}
		farmers.add(cells)
		for _, t := range c.Tales {
			heaps.add(heapCells(c, t))
		}
	}
	return []Table{farmers, heaps, figureTable(FiguresOf(cards, now))}
}

func heapCells(c Card, t Tale) map[string]any {
	cells := map[string]any{"farmer": int(c.Person), "heap": int(t.Heap), "path": string(t.Path), "stage": string(t.Stage),
		"given_up_at": string(t.Left), "mix": t.Mix, "starter": string(t.Starter), "begun": dateCell(t.Begun), "built": dateCell(t.Built),
		"first_check": t.Check, "rounds": t.Rounds, "turns": t.Turns, "opened": dateCell(t.Opened), "silent": yesOrNo(t.Silent),
		"last_day": dateCell(t.LastDay)}
	if t.HotIn > 0 {
		cells["hot_in_round"] = t.HotIn
	}
	if t.Heat.By > 0 {
		cells["hot_by_day"] = t.Heat.By
	}
	if t.Heat.Until > 0 {
		cells["not_hot_on_day"] = t.Heat.Until
	}
	if t.Opened != 0 && t.Built != 0 {
		cells["days_to_open"] = int(t.Opened - t.Built)
	}
	for name, kg := range map[string]float64{"in_kg": t.InKg, "feed_kg": t.FeedKg, "out_kg": t.OutKg} {
		if kg > 0 {
			cells[name] = kg
		}
	}
	if t.Stars > 0 {
		cells["stars"] = t.Stars
	}
	return cells
}

func figureTable(f Figures) Table {
	t := blank("figures", true)
	add := func(figure string, s Share) {
		cells := map[string]any{"figure": figure, "class": s.Of, "hits": s.Hit, "all": s.All}
		if s.Enough() {
			low, high := s.Wilson()
			cells["share"], cells["low"], cells["high"] = s.Part(), low, high
		}
		t.add(cells)
	}
	add("hot_on_first_check", f.Hot)
	for _, s := range f.HotByMix {
		add("hot_by_mix", s)
	}
	for _, s := range f.HotByStarter {
		add("hot_by_starter", s)
	}
	for _, s := range f.HotIn {
		add("hot_in_round", s)
	}
	for _, s := range f.HotBy {
		add("hot_by_day", s)
	}
	for _, s := range f.Dropped {
		add("lost_at_stage", s)
	}
	for _, h := range f.Hours {
		add("answered_by_hour", Share{strconv.Itoa(h.Hour), h.Answered, h.Asked})
	}
	for _, s := range f.ByStage {
		t.add(map[string]any{"figure": "heaps_in_stage", "class": s.Of, "hits": s.Hit})
	}
	t.add(map[string]any{"figure": "farmers", "hits": f.Farmers})
	if days, ok := f.Median(); ok {
		t.add(map[string]any{"figure": "median_days_to_open", "hits": days, "all": len(f.OpenDays)})
	}
	return t
}

// DiaryTable begins the table of diary lines; DiaryRows fills it.
func DiaryTable(names bool) Table { return blank("diary", names) }

// DiaryRows adds one person's lines. Codes of invites, prints of secret words and
// who was told of what stay out of it; words that people wrote are in it only
// with names.
func DiaryRows(t *Table, diary []Entry, names bool) {
	struck := struckIn(diary)
	for _, e := range diary {
		if !names && wordy(e.Event) || secret(e.Event) {
			continue
		}
		kind, body, err := Encode(e.Event)
		if err != nil {
			continue
		}
		by := "other"
		switch e.By {
		case 0:
			by = "clock"
		case e.Person:
			by = "farmer"
		}
		t.add(map[string]any{"farmer": int(e.Person), "heap": int(e.Heap), "day": dateCell(e.Day), "noted": e.Noted.UTC(), "told_by": by,
			"event": kind, "value": string(body), "struck": yesOrNo(struck[e.Told])})
	}
}

// wordy events hold what people called themselves or wrote.
func wordy(e Event) bool {
	switch e.(type) {
	case Named, OfficerAsked, OfficerWrote, GroupMade:
		return true
	}
	return false
}

// secret events hold codes or speak of third persons.
func secret(e Event) bool {
	switch e.(type) {
	case InviteMade, InviteEnded, Hidden, AlertGot, AlertSeen, AlertPassed, Announced, BatchStopped, Counted, NamesTaken:
		return true
	}
	return false
}

func yesOrNo(b bool) string {
	if b {
		return "yes"
	}
	return "no"
}

func dayOrNone(t time.Time, zone *time.Location) Day {
	if t.IsZero() {
		return 0
	}
	return DayOf(t, zone)
}

func dateCell(d Day) any {
	if d == 0 {
		return nil
	}
	y, m, day := d.Date()
	return time.Date(y, m, day, 0, 0, 0, 0, time.UTC)
}
