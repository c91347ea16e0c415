package web

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"html/template"
	"net/http"
	"net/url"
	"os"
	"regexp"
	"strings"

	"posset/beverage"
	"posset/beverage/assess"
	"posset/beverage/quantity"
	"posset/beverage/report"
	"posset/beverage/spec"
	"posset/thermal"
)

// usualToleranceC is the accuracy that 21 CFR 113.40 asks of a retort's
// thermometer, 1 °F, as 0.5 C°.
const usualToleranceC = 0.5

// recordsPage is the page for who reads records.
type recordsPage struct {
	Form   url.Values
	Roles  []choice
	Answer *recordsAnswer
}

// recordsAnswer is what is said of the records.
type recordsAnswer struct {
	Wrong    string
	Head     string
	Target   string
	Logs     []shownLog
	Roles    []choice
	Cautions []string
	result   *beverage.LethalityResult
}

// shownLog is one record.
type shownLog struct {
	beverage.LogResult
	Picture template.HTML // "" where nothing can be drawn
	Faults  []placedFault
	More    int // faults that are not shown
}

// placedFault is one fault with the probe it is of.
type placedFault struct {
	Probe string
	beverage.FaultResult
}

var roleChoices = []choice{{"product", "product: the drink"}, {"retort", "retort: what heats it"}, {"reference", "reference thermometer"}, {"other", "another temperature"}, {"ignore", "leave it out"}}

func (s *Site) records(*http.Request) (answer, error) {
	return s.show("records", page{Title: "Read records", Content: recordsPage{Form: url.Values{"target": {"F0 6 min"}}, Roles: roleChoices}})
}

// readRecords reads what a form brought, and forgets it.
func (s *Site) readRecords(r *http.Request) (*recordsAnswer, url.Values, error) {
	if err := s.reading.enter(r.Context()); err != nil {
		return nil, nil, err
	}
	defer s.reading.leave()
	folder, err := os.MkdirTemp(s.scratch, "upload-*")
	if err != nil {
		return nil, nil, err
	}
	defer os.RemoveAll(folder)
	u, err := receive(r, folder)
	if err != nil {
		return nil, nil, err
	}
	a, err := s.answerOf(r.Context(), u)
	return a, u.fields, err
}

func (s *Site) answerOf(ctx context.Context, u *upload) (*recordsAnswer, error) {
	want, err := s.logOptions(u.fields)
	if err != nil {
		return &recordsAnswer{Wrong: err.Error()}, nil
	}
	reader, err := assess.NewLogReader(want)
	if err != nil {
		return &recordsAnswer{Wrong: err.Error()}, nil
	}
	if len(u.files) == 0 {
		return &recordsAnswer{Wrong: "no record was chosen; drop a file, or choose one"}, nil
	}
	a := &recordsAnswer{Roles: roleChoices, Target: u.fields.Get("target")}
	var logs []beverage.LogResult
	for _, f := range u.files {
		l, err := readRecord(ctx, f, want, u.fields, "curve"+itoa(len(a.Logs)))
		if err != nil {
			return nil, err
		}
		a.Logs, logs = append(a.Logs, l), append(logs, l.LogResult)
	}
	a.result = reader.Result(logs)
	a.Cautions, a.Head = a.result.Cautions, report.Lethality(a.result, report.Metric).Headline
	return a, nil
}

// logOptions are what the form asks for.
func (s *Site) logOptions(form url.Values) (assess.LogOptions, error) {
	want := assess.LogOptions{Options: s.options, TrefC: thermal.F0.TrefC, ZC: thermal.F0.ZC, ToleranceC: usualToleranceC,
		Unit: form.Get("unit"), Dates: form.Get("dates"), Sheet: strings.TrimSpace(form.Get("sheet"))}
	if text := strings.TrimSpace(form.Get("tolerance")); text != "" {
		t, err := quantity.ParseTemperatureDifference(text + " C")
		if err != nil {
			return want, fmt.Errorf("tolerance: %w", err)
		}
		want.ToleranceC = t
	}
	text := strings.TrimSpace(form.Get("target"))
	if text == "" {
		return want, nil
	}
	t, err := spec.ParseTarget(text)
	if err != nil {
		return want, fmt.Errorf("target: %w", err)
	}
	want.Target = &t
	return want, nil
}

// readRecord reads one file. A file that is no record is told, not an error: the
// others are read.
func readRecord(ctx context.Context, f uploaded, want assess.LogOptions, form url.Values, id string) (shownLog, error) {
	want.Pictures, want.Roles = true, rolesFor(f.name, form)
	reader, err := assess.NewLogReader(want)
	if err != nil {
		return shownLog{}, err
	}
	in, err := os.Open(f.path)
	if err != nil {
		return shownLog{}, err
	}
	defer in.Close()
	l, err := reader.ReadFrom(ctx, in, f.name)
	if ctx.Err() != nil {
		return shownLog{}, ctx.Err()
	}
	if err != nil {
		return shownLog{LogResult: assess.Failed(f.name, errors.New(byTheForm(err.Error())))}, nil
	}
	shown := shownLog{LogResult: l}
	shown.Faults, shown.More = faultsOf(l)
	if p, ok := report.RecordPicture(l, report.Metric); ok {
		shown.Picture, err = p.HTML(id)
	}
	return shown, err
}

// flagWords are the flags of the command in the words of this form.
var flagWords = regexp.MustCompile(`with --(unit|dates|sheet|role)\b.*$`)

// byTheForm sends a reader to a field of the form instead of a flag.
func byTheForm(problem string) string {
	names := map[string]string{"unit": "Unit", "dates": "Order of dates", "sheet": "Sheet of a workbook", "role": "the table's roles"}
	return flagWords.ReplaceAllStringFunc(problem, func(s string) string { return "under " + names[flagWords.FindStringSubmatch(s)[1]] })
}

// rolesFor are the roles that were chosen for the columns of one file.
func rolesFor(file string, form url.Values) map[string]string {
	roles := map[string]string{}
	for i, of := range form["of"] {
		heading, role := at(form["heading"], i), at(form["role"], i)
		if of == file && heading != "" && role != "" {
			roles[heading] = role
		}
	}
	return roles
}

const shownFaults = 200

func faultsOf(l beverage.LogResult) (list []placedFault, more int) {
	for _, p := range l.Probes {
		for _, f := range p.Faults {
			if len(list) == shownFaults {
				more++
				continue
			}
			list = append(list, placedFault{p.Name, f})
		}
	}
	return list, more
}

func (s *Site) recordsShown(r *http.Request) (answer, error) {
	a, form, err := s.readRecords(r)
	if err != nil {
		return answer{}, err
	}
	if r.URL.Query().Get("part") != "" {
		body, err := s.render("records-answer", a)
		return answer{kind: "text/html; charset=utf-8", body: body}, err
	}
	return s.show("records", page{Title: "Read records", Content: recordsPage{Form: form, Roles: roleChoices, Answer: a}})
}

// recordsFile is the result as a file.
func (s *Site) recordsFile(r *http.Request) (answer, error) {
	as := r.URL.Query().Get("as")
	a, _, err := s.readRecords(r)
	if err != nil {
		return answer{}, err
	}
	if a.Wrong != "" {
		return answer{}, &refusal{http.StatusUnprocessableEntity, a.Wrong}
	}
	var body bytes.Buffer
	doc := report.Lethality(a.result, report.Metric)
	switch as {
	case "csv":
		err = report.CSV(&body, doc)
		return answer{"text/csv; charset=utf-8", "records.csv", body.Bytes()}, err
	case "xlsx":
		err = report.XLSX(&body, doc)
		return answer{"application/vnd.openxmlformats-officedocument.spreadsheetml.sheet", "records.xlsx", body.Bytes()}, err
	case "json":
		err = report.JSON(&body, a.result)
		return answer{"application/json", "records.json", body.Bytes()}, err
	case "html":
		err = report.HTML(&body, doc)
		return answer{"text/html; charset=utf-8", "records.html", body.Bytes()}, err
	}
	return answer{}, &refusal{http.StatusBadRequest, "records are saved as csv, xlsx, json or html"}
}

// Needed is the target as the figure that the credited value is held against;
// "" for an unbroken stay.
func (a *recordsAnswer) Needed() string {
	r := a.result
	if r.TargetMinutes == nil {
		return ""
	}
	return fmt.Sprintf("%.2f min at %.1f °C, z %.1f C°", *r.TargetMinutes, r.TrefC, r.ZC)
}

// Minutes shows a lethality; what is unknown is a dash.
func (*recordsAnswer) Minutes(v *float64) string { return shownFigure(v, "%.2f") }

// Judged is an outcome with what must stand beside it.
func (*recordsAnswer) Judged(o *beverage.Outcome) string { return report.Judged(*o) }

// Credited shows a credit, which is never rounded up.
func (*recordsAnswer) Credited(v *float64) string { return report.CreditedWords(v) }

// Degrees shows a temperature.
func (*recordsAnswer) Degrees(v *float64) string { return shownFigure(v, "%.1f") }

func shownFigure(v *float64, format string) string {
	if v == nil {
		return "-"
	}
	return fmt.Sprintf(format, *v)
}
