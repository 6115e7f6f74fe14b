package picture

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"strconv"
	"strings"
	"time"

	"github.com/xuri/excelize/v2"
)

// Table is one sheet: columns with their units and meanings, and rows of
// string, int, float64, time.Time (midnight UTC is a date) or nil.
type Table struct {
	Name                  string
	Columns, Units, Means []string
	Rows                  [][]any
}

func isDate(t time.Time) bool {
	h, m, s := t.Clock()
	return h == 0 && m == 0 && s == 0 && t.Nanosecond() == 0
}

// CSV writes a table as RFC 4180 says, dates as ISO 8601. A text that a
// spreadsheet would take for a formula is set apart by an apostrophe.
func CSV(t Table) ([]byte, error) {
	var b bytes.Buffer
	w := csv.NewWriter(&b)
	if err := w.Write(t.Columns); err != nil {
		return nil, err
	}
	for _, row := range t.Rows {
		cells := make([]string, len(row))
		for i, v := range row {
			cells[i] = text(v)
		}
		if err := w.Write(cells); err != nil {
			return nil, err
		}
	}
	w.Flush()
	return b.Bytes(), w.Error()
}

// text is a cell as plain text.
func text(v any) string {
	switch v := v.(type) {
	case nil:
		return ""
	case string:
		return inert(v)
	case int:
		return strconv.Itoa(v)
	case float64:
		return strconv.FormatFloat(v, 'f', -1, 64)
	case time.Time:
		if isDate(v) {
			return v.Format(time.DateOnly)
		}
		return v.Format(time.RFC3339)
	}
	return inert(fmt.Sprint(v))
}

// inert keeps a text from being run: a leading sign of a formula, or a control
// character that hides one, gets an apostrophe before it.
func inert(s string) string {
	if s != "" && strings.ContainsAny(s[:1], "=+-@\t\r\n|") {
		return "'" + s
	}
	return s
}

// Workbook writes tables as one file for a spreadsheet: a sheet each, real dates
// and numbers, texts that stay texts, the header row held in place.
func Workbook(tables []Table) ([]byte, error) {
	f := excelize.NewFile()
	defer f.Close()
	bold, err := f.NewStyle(&excelize.Style{Font: &excelize.Font{Bold: true}})
	if err != nil {
		return nil, fmt.Errorf("workbook: %w", err)
	}
	iso, clock := "yyyy-mm-dd", "yyyy-mm-dd hh:mm"
	date, err := f.NewStyle(&excelize.Style{CustomNumFmt: &iso})
	if err != nil {
		return nil, fmt.Errorf("workbook: %w", err)
	}
	moment, err := f.NewStyle(&excelize.Style{CustomNumFmt: &clock})
	if err != nil {
		return nil, fmt.Errorf("workbook: %w", err)
	}
	for i, t := range tables {
		if i == 0 {
			err = f.SetSheetName(f.GetSheetName(0), t.Name)
		} else {
			_, err = f.NewSheet(t.Name)
		}
		if err == nil {
			err = sheetOf(f, t, bold, date, moment)
		}
		if err != nil {
			return nil, fmt.Errorf("workbook, sheet %s: %w", t.Name, err)
		}
	}
	b, err := f.WriteToBuffer()
	if err != nil {
		return nil, fmt.Errorf("workbook: %w", err)
	}
	return b.Bytes(), nil
}

func sheetOf(f *excelize.File, t Table, bold, date, moment int) error {
	w, err := f.NewStreamWriter(t.Name)
	if err != nil {
		return err
	}
	if err := w.SetColWidth(1, max(1, len(t.Columns)), 16); err != nil {
		return err
	}
	if err := w.SetPanes(&excelize.Panes{Freeze: true, YSplit: 1, TopLeftCell: "A2", ActivePane: "bottomLeft"}); err != nil {
		return err
	}
	head := make([]any, len(t.Columns))
	for i, c := range t.Columns {
		head[i] = excelize.Cell{StyleID: bold, Value: c}
	}
	if err := w.SetRow("A1", head); err != nil {
		return err
	}
	for n, row := range t.Rows {
		cells := make([]any, len(row))
		for i, v := range row {
			cells[i] = cellOf(v, date, moment)
		}
		at, err := excelize.CoordinatesToCellName(1, n+2)
		if err != nil {
			return err
		}
		if err := w.SetRow(at, cells); err != nil {
			return err
		}
	}
	return w.Flush()
}

// cellOf gives a cell its kind. A string is written as a string, never as a
// formula, whatever it begins with.
func cellOf(v any, date, moment int) any {
	t, ok := v.(time.Time)
	switch {
	case !ok:
		return v
	case isDate(t):
		return excelize.Cell{StyleID: date, Value: t}
	}
	return excelize.Cell{StyleID: moment, Value: t}
}
