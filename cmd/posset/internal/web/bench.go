package web

import (
	"bytes"
	"encoding/json"
	"errors"
	"io"
	"net/http"
	"strings"

	"posset/beverage"
	"posset/beverage/assess"
	"posset/beverage/report"
	"posset/cmd/posset/internal/web/tomltext"
)

// mostSpecBytes is the largest spec: the form that carries one is larger.
const mostSpecBytes = 1 << 20

// specPage is the page for who works on a spec.
type specPage struct {
	Text   string
	Groups []keyGroup
	Rows   []rowFields
	Units  []string
	Names  []string
	Answer *specAnswer
}

// specAnswer is what is said of one state of the text.
type specAnswer struct {
	Wrong  []string
	Result *drinkResult
	Change string
}

// starter is what the page begins with: an invented drink.
func starter() string { return specOf(exampleForm()) }

func (s *Site) work(*http.Request) (answer, error) {
	return s.showSpec(starter(), nil)
}

// showSpec shows the page with a text; answered may be nil.
func (s *Site) showSpec(text string, answered *specAnswer) (answer, error) {
	read, _ := tomltext.Read(text)
	return s.show("spec", page{Title: "Work on a spec", Content: specPage{
		Text: text, Groups: keyGroups(read), Rows: recipeFields(read), Names: ingredientNames(), Answer: answered,
	}})
}

// workAnswer serves who runs no script, and who comes with a text.
func (s *Site) workAnswer(r *http.Request) (answer, error) {
	text, err := postedText(r)
	if err != nil {
		return answer{}, err
	}
	answered, _, err := s.assessText(r, text, false)
	if err != nil {
		return answer{}, err
	}
	return s.showSpec(text, answered)
}

func postedText(r *http.Request) (string, error) {
	if err := r.ParseForm(); err != nil {
		return "", asRefusal(err)
	}
	return fitting(strings.ReplaceAll(r.PostForm.Get("text"), "\r\n", "\n"))
}

func fitting(text string) (string, error) {
	if len(text) > mostSpecBytes {
		return "", &http.MaxBytesError{Limit: mostSpecBytes}
	}
	return text, nil
}

func (s *Site) saveText(r *http.Request) (answer, error) {
	text, err := postedText(r)
	if err != nil {
		return answer{}, err
	}
	read, _ := tomltext.Read(text)
	name, _ := read.Get("drink.name")
	return tomlFile(name, text), nil
}

// saveReport is the report of the text as it stands.
func (s *Site) saveReport(r *http.Request) (answer, error) {
	text, err := postedText(r)
	if err != nil {
		return answer{}, err
	}
	_, a, err := s.assessText(r, text, true)
	if err != nil {
		return answer{}, err
	}
	if a == nil {
		return answer{}, &refusal{http.StatusUnprocessableEntity, "the spec cannot be read yet; the page says which line"}
	}
	var body bytes.Buffer
	err = report.HTML(&body, report.Assessment(a, report.Metric))
	return answer{kind: "text/html; charset=utf-8", name: fileName(a.Drink.Name, ".html"), body: body.Bytes()}, err
}

// assessText assesses a text, for a report with pictures. What is wrong with it
// is part of the answer.
func (s *Site) assessText(r *http.Request, text string, pictured bool) (*specAnswer, *beverage.Assessment, error) {
	d, problem := readSpec(text)
	if problem != nil {
		return &specAnswer{Wrong: problemLines(problem)}, nil, nil
	}
	if err := s.assessing.enter(r.Context()); err != nil {
		return nil, nil, err
	}
	defer s.assessing.leave()
	o := s.options
	o.Pictures = pictured
	a, err := assess.Drink(r.Context(), d, o)
	if err != nil {
		return nil, nil, err
	}
	return &specAnswer{Result: resultOf(a)}, a, nil
}

// edit is what the script sends: the text, at most one change of it by the
// form, and what was said last time.
type edit struct {
	Text   string   `json:"text"`
	Set    *setting `json:"set"`
	Add    string   `json:"add"`
	Before *state   `json:"before"`
}

// setting is one key with what was typed; an empty value takes the key out.
type setting struct{ Key, Value string }

// edited is what the script gets back.
type edited struct {
	Text   string            `json:"text"`
	Fields map[string]string `json:"fields"`
	Recipe string            `json:"recipe"` // HTML
	Rows   int               `json:"rows"`
	Answer string            `json:"answer"` // HTML
	Said   string            `json:"said"`
	State  *state            `json:"state"`
}

func (s *Site) edit(r *http.Request) (answer, error) {
	e, err := readEdit(r)
	if err != nil {
		return answer{}, err
	}
	text, wrong := e.apply()
	answered, a, err := s.assessText(r, text, false)
	if err != nil {
		return answer{}, err
	}
	if wrong != nil {
		answered.Wrong = append([]string{wrong.Error()}, answered.Wrong...)
	}
	out := edited{Text: text, State: e.Before, Said: plural(len(answered.Wrong), "problem") + " in the text; nothing is assessed until that is mended"}
	if a != nil {
		out.State = stateOf(a)
		answered.Change = changeSince(e.Before, out.State)
		out.Said = answered.Change
	}
	if wrong != nil {
		out.Said = wrong.Error()
	}
	return s.editedAnswer(out, answered)
}

func readEdit(r *http.Request) (*edit, error) {
	if r.Header.Get("Content-Type") != "application/json" {
		return nil, &refusal{http.StatusUnsupportedMediaType, "this address takes application/json"}
	}
	data, err := io.ReadAll(r.Body)
	if err != nil {
		return nil, err
	}
	var e edit
	if err := json.Unmarshal(data, &e); err != nil {
		return nil, &refusal{http.StatusBadRequest, "what was sent is no JSON of this page"}
	}
	_, err = fitting(e.Text)
	return &e, err
}

// apply makes the change that the form asks for. A change that cannot be made
// leaves the text as it is.
func (e *edit) apply() (text string, wrong error) {
	if e.Set == nil && e.Add == "" {
		return e.Text, nil
	}
	read, err := tomltext.Read(e.Text)
	if err != nil {
		return e.Text, err
	}
	text, err = e.change(read)
	if err != nil {
		return e.Text, err
	}
	return text, nil
}

func (e *edit) change(read *tomltext.Text) (string, error) {
	if e.Add != "" {
		if e.Add != ingredientField {
			return "", errors.New("that cannot be added here")
		}
		return read.AddTable(ingredientField, "name = \"\"\namount = \"1 g/L\"\n"), nil
	}
	doc, ok := keyDoc(e.Set.Key)
	if !ok {
		return "", errors.New("the form has no such key")
	}
	value := strings.TrimSpace(e.Set.Value)
	if value == "" {
		return read.Remove(e.Set.Key)
	}
	return read.Set(e.Set.Key, writtenAs(doc.Form, value))
}

func (s *Site) editedAnswer(out edited, answered *specAnswer) (answer, error) {
	read, _ := tomltext.Read(out.Text)
	rows := recipeFields(read)
	out.Rows, out.Fields = len(rows), map[string]string{}
	for _, v := range read.Values() {
		out.Fields[v.Path] = v.Text
	}
	recipe, err := s.render("recipe", rows)
	if err != nil {
		return answer{}, err
	}
	shown, err := s.render("spec-answer", answered)
	if err != nil {
		return answer{}, err
	}
	out.Recipe, out.Answer = string(recipe), string(shown)
	body, err := json.Marshal(out)
	return answer{kind: "application/json", body: body}, err
}
