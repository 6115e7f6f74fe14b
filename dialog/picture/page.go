package picture

import (
	"bytes"
	_ "embed"
	"encoding/base64"
	"fmt"
	"html/template"
	"strconv"
	"strings"
	"sync"
	"time"
)

// page.html is one page for a printer or a phone, with nothing to fetch.
//
//go:embed page.html
var pageText string

var pageForm = sync.OnceValue(func() *template.Template { return template.Must(template.New("page").Parse(pageText)) })

// Row is one row of a page's calendar: a stage and how many heaps stand in it.
type Row struct {
	Stage string
	Heaps int
}

type pageCell struct {
	Text   string
	Number bool
}

type pageTable struct {
	Name    string
	Columns [][]string // parts of the name, where it may be broken
	Rows    [][]pageCell
}

// Page writes a title, a calendar of heaps by stage (where there are any) and
// tables as one self-contained HTML page. Everything in it is escaped.
func Page(title string, day time.Time, stages []Row, tables []Table) ([]byte, error) {
	fill := struct {
		Title, Day string
		Calendar   any
		Tables     []pageTable
	}{Title: title, Day: day.Format(time.DateOnly)}
	if len(stages) > 0 {
		var counts []float64
		var list []string
		for _, r := range stages {
			counts = append(counts, float64(r.Heaps))
			list = append(list, r.Stage+": "+strconv.Itoa(r.Heaps))
		}
		image, err := Draw("calendar", counts, "")
		if err != nil {
			return nil, err
		}
		fill.Calendar = struct {
			Image template.URL
			Rows  []string
		}{template.URL("data:image/png;base64," + base64.StdEncoding.EncodeToString(image)), list}
	}
	for _, t := range tables {
		p := pageTable{Name: t.Name}
		for _, c := range t.Columns {
			p.Columns = append(p.Columns, strings.Split(c, "_"))
		}
		for _, row := range t.Rows {
			cells := make([]pageCell, len(row))
			for i, v := range row {
				cells[i] = cellText(v)
			}
			p.Rows = append(p.Rows, cells)
		}
		fill.Tables = append(fill.Tables, p)
	}
	var b bytes.Buffer
	if err := pageForm().Execute(&b, fill); err != nil {
		return nil, fmt.Errorf("page: %w", err)
	}
	return b.Bytes(), nil
}

func cellText(v any) pageCell {
	switch v := v.(type) {
	case nil:
		return pageCell{}
	case int:
		return pageCell{strconv.Itoa(v), true}
	case float64:
		return pageCell{strconv.FormatFloat(v, 'f', min(2, decimals(v)), 64), true}
	case string:
		return pageCell{v, false}
	}
	return pageCell{text(v), false}
}

func decimals(v float64) int {
	if v == float64(int64(v)) {
		return 0
	}
	return 2
}
