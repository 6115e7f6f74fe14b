package picture

import (
	"bytes"
	"encoding/csv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"
)

// hostile is a table as a farmer might wish it: formulas and markup for names.
var hostile = Table{Name: "farmers", Columns: []string{"name", "kilos", "built", "noted", "left"},
	Rows: [][]any{
		{"=HYPERLINK(\"http://x\",\"y\")", 3.5, time.Date(2026, 3, 2, 0, 0, 0, 0, time.UTC), time.Date(2026, 3, 2, 7, 30, 0, 0, time.UTC), nil},
		{"+1+1", 4, nil, nil, "no"},
		{"@SUM(A1)", -2, nil, nil, "<script>alert(1)</script>"},
		{"-3", 0.25, nil, nil, "a,b\n\"c\""},
	}}

func TestNoNameRunsInAWorkbook(t *testing.T) {
	body, err := Workbook([]Table{hostile, {Name: "empty"}})
	require.NoError(t, err)
	f, err := excelize.OpenReader(bytes.NewReader(body))
	require.NoError(t, err)
	defer f.Close()
	for n, row := range hostile.Rows {
		at, _ := excelize.CoordinatesToCellName(1, n+2)
		formula, err := f.GetCellFormula("farmers", at)
		require.NoError(t, err)
		require.Empty(t, formula)
		kind, err := f.GetCellType("farmers", at)
		require.NoError(t, err)
		require.Contains(t, []excelize.CellType{excelize.CellTypeInlineString, excelize.CellTypeSharedString}, kind)
		said, err := f.GetCellValue("farmers", at)
		require.NoError(t, err)
		require.Equal(t, row[0], said)
	}
	// Real dates and numbers, not texts that look like them.
	raw, err := f.GetCellValue("farmers", "C2", excelize.Options{RawCellValue: true})
	require.NoError(t, err)
	require.Equal(t, "46083", raw, "2 March 2026 as days of the spreadsheet's calendar")
	said, err := f.GetCellValue("farmers", "C2")
	require.NoError(t, err)
	require.Equal(t, "2026-03-02", said)
	raw, err = f.GetCellValue("farmers", "B2", excelize.Options{RawCellValue: true})
	require.NoError(t, err)
	require.Equal(t, "3.5", raw)
}

func TestNoNameRunsFromCSV(t *testing.T) {
	body, err := CSV(hostile)
	require.NoError(t, err)
	rows, err := csv.NewReader(bytes.NewReader(body)).ReadAll()
	require.NoError(t, err)
	require.Equal(t, hostile.Columns, rows[0])
	for _, row := range rows[1:] {
		require.NotContains(t, "=+-@", row[0][:1], row[0])
	}
	require.Equal(t, "2026-03-02", rows[1][2])
	require.Equal(t, "2026-03-02T07:30:00Z", rows[1][3])
	require.Equal(t, "-2", rows[3][1], "a number below nought stays a number")
	require.Equal(t, "a,b\n\"c\"", rows[4][4])
}

func TestThePageIsWholeAndHarmless(t *testing.T) {
	body, err := Page("Ridge <i>growers</i>", time.Date(2026, 3, 2, 0, 0, 0, 0, time.UTC), []Row{{"heating", 3}, {"worms", 1}}, []Table{hostile})
	require.NoError(t, err)
	page := string(body)
	require.NotContains(t, page, "<script>")
	require.NotContains(t, page, "<i>growers")
	require.Contains(t, page, "&lt;script&gt;")
	require.Contains(t, page, `src="data:image/png;base64,`)
	for _, net := range []string{`src="http`, `href="http`, "@import", "url("} {
		require.NotContains(t, page, net, "nothing is fetched")
	}
	require.Equal(t, 1, strings.Count(page, "<h1>"))
	require.Contains(t, page, "<li>heating: 3</li>")
}
