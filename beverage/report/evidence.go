package report

import (
	"bufio"
	"encoding/csv"
	"fmt"
	"io"
	"math"
	"strconv"

	"github.com/xuri/excelize/v2"

	"posset/beverage"
)

// EvidenceWriter takes the rows of one record as they come. Close ends the file
// with what the rows rest on; without it there is none.
type EvidenceWriter interface {
	Row(beverage.EvidenceRow) error
	Close(r *beverage.LethalityResult) error
}

var evidenceColumns = []string{"probe", "row", "time_s", "temperature_c", "lowered_c", "lethal_rate", "piece_minutes", "sum_minutes", "note"}

// exact prints a figure with all that was worked with, so that a colleague comes
// to the same sum.
func exact(v float64) string {
	if !isFinite(v) {
		return ""
	}
	return strconv.FormatFloat(v, 'g', -1, 64)
}

type evidenceCSV struct {
	buffer *bufio.Writer
	csv    *csv.Writer
}

// NewEvidenceCSV writes evidence as CSV, one row a reading.
func NewEvidenceCSV(w io.Writer) (EvidenceWriter, error) {
	b := bufio.NewWriter(w)
	e := &evidenceCSV{buffer: b, csv: csv.NewWriter(b)}
	return e, e.csv.Write(evidenceColumns)
}

func (e *evidenceCSV) Row(r beverage.EvidenceRow) error {
	return e.csv.Write(harmless(evidenceCells(r)))
}

func evidenceCells(r beverage.EvidenceRow) []string {
	return []string{r.Probe, strconv.Itoa(r.Row), exact(r.TimeS), exact(r.TempC), exact(r.LoweredC), exact(r.Rate), exact(r.PieceMin), exact(r.SumMin), r.Note}
}

func (e *evidenceCSV) Close(r *beverage.LethalityResult) error {
	e.csv.Flush()
	for _, line := range evidenceFoot(r) {
		fmt.Fprintf(e.buffer, "# %s\n", printable(line))
	}
	if err := e.csv.Error(); err != nil {
		return err
	}
	return e.buffer.Flush()
}

// evidenceFoot tells what the rows rest on.
func evidenceFoot(r *beverage.LethalityResult) []string {
	var lines []string
	for _, l := range r.Logs {
		lines = append(lines, l.File+", sha256 "+l.SHA256)
		for _, p := range l.Probes {
			for _, f := range p.Faults {
				lines = append(lines, fmt.Sprintf("fault: %s, %s, row %d, %s: %s", p.Name, f.Kind, f.Row, f.Time, f.Detail))
			}
		}
		if l.Evidence != nil {
			lines = append(lines, l.Evidence.Rule)
			for _, p := range l.Evidence.Probes {
				lines = append(lines, fmt.Sprintf("%s: the rows add up to %s min; credited %s min", p.Name, exact(p.SumMinutes), orDash(numeral(p.CreditedMinutes))))
			}
		}
		for _, x := range l.Turning {
			lines = append(lines, fmt.Sprintf("what would change the answer: %s: %s%s", x.What, x.Text, map[bool]string{true: " (turns it)"}[x.Turns]))
		}
	}
	lines = append(lines,
		fmt.Sprintf("reference %s C, z %s C, tolerance %s C", exact(r.TrefC), exact(r.ZC), exact(r.ToleranceC)),
		"rows are the sound readings; what a fault costs beyond them is in what is credited, not in the rows")
	return append(append(lines, r.Cautions...), toolLine(r.Tool.Name, r.Tool.Version))
}

type evidenceXLSX struct {
	to      io.Writer
	file    *excelize.File
	streams map[string]*evidenceSheet
}

type evidenceSheet struct {
	stream *excelize.StreamWriter
	row    int
}

// NewEvidenceXLSX writes evidence as a workbook, a sheet a probe. Words are
// stored as words: none of them is a formula.
func NewEvidenceXLSX(w io.Writer) EvidenceWriter {
	return &evidenceXLSX{to: w, file: excelize.NewFile(), streams: map[string]*evidenceSheet{}}
}

const firstSheet = "Sheet1" // that a new workbook has

func (e *evidenceXLSX) sheet(probe string) (*evidenceSheet, error) {
	if s, ok := e.streams[probe]; ok {
		return s, nil
	}
	// A sheet's name allows less than a heading does, so that it is numbered.
	name := "probe " + strconv.Itoa(len(e.streams)+1)
	if _, err := e.file.NewSheet(name); err != nil {
		return nil, err
	}
	stream, err := e.file.NewStreamWriter(name)
	if err != nil {
		return nil, err
	}
	s := &evidenceSheet{stream: stream}
	e.streams[probe] = s
	header := make([]any, len(evidenceColumns))
	for i, c := range evidenceColumns {
		header[i] = c
	}
	return s, s.put(header)
}

func (s *evidenceSheet) put(cells []any) error {
	if s.row++; s.row > excelize.TotalRows {
		return fmt.Errorf("more readings than the %d rows of a sheet; write --evidence to a .csv", excelize.TotalRows)
	}
	at, err := excelize.CoordinatesToCellName(1, s.row)
	if err != nil {
		return err
	}
	return s.stream.SetRow(at, cells)
}

func (e *evidenceXLSX) Row(r beverage.EvidenceRow) error {
	s, err := e.sheet(r.Probe)
	if err != nil {
		return err
	}
	return s.put([]any{printable(r.Probe), r.Row, cellOf(r.TimeS), cellOf(r.TempC), cellOf(r.LoweredC), cellOf(r.Rate), cellOf(r.PieceMin), cellOf(r.SumMin), r.Note})
}

func cellOf(v float64) any {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return nil
	}
	return v
}

func (e *evidenceXLSX) Close(r *beverage.LethalityResult) error {
	defer e.file.Close()
	for _, s := range e.streams {
		if err := s.stream.Flush(); err != nil {
			return err
		}
	}
	for i, line := range evidenceFoot(r) {
		if err := e.file.SetCellStr(firstSheet, "A"+strconv.Itoa(i+1), printable(line)); err != nil {
			return err
		}
	}
	if err := e.file.SetSheetName(firstSheet, "what it rests on"); err != nil {
		return err
	}
	return e.file.Write(e.to)
}

// addEvidence tells what the rows add up to.
func (d *Doc) addEvidence(logs []beverage.LogResult) {
	for _, l := range logs {
		if l.Evidence == nil {
			continue
		}
		t := Table{Columns: numbers(columns("probe", "readings", "rows add up to, min", "credited, min", "not counted, min"), 1, 5)}
		for _, p := range l.Evidence.Probes {
			t.Rows = append(t.Rows, []string{p.Name, strconv.Itoa(p.Readings), decimal(p.SumMinutes, minutes.metric.decimals), credited(p.CreditedMinutes), minuteOf(&p.UncountedS)})
		}
		d.add("Evidence", t, Para(fmt.Sprintf("%d rows in the file of --evidence: time, reading, lowered reading, lethal rate, piece, running sum", l.Evidence.Rows)))
	}
}
