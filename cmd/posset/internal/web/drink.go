package web

import (
	"bytes"
	"net/http"
	"net/url"
	"slices"
	"strings"
	"sync"

	"posset/beverage"
	"posset/beverage/assess"
	"posset/beverage/copacker"
	"posset/beverage/ingredient"
	"posset/beverage/report"
)

// drinkPage is the page for who describes a drink in plain words.
type drinkPage struct {
	Groups  []group
	Form    url.Values
	Rows    []ingredientRow
	Units   []string
	Names   []string // of the library, to choose from
	Result  *drinkResult
	Wrong   []string
	Example bool
}

// drinkResult is what the page answers.
type drinkResult struct {
	Head     string
	Class    beverage.AcidClass
	Left     []beverage.RouteResult
	Unknown  []beverage.RouteResult
	Out      []beverage.RouteResult
	Stops    report.Items
	Reviews  report.Items
	Notes    report.Items
	Missing  []beverage.Gap
	Cautions []string
	Spec     string
	Lines    *copacker.Result // nil: no lines were given
	Hash     string
}

// ingredientNames is read once: the library does not change while it runs.
var ingredientNames = sync.OnceValue(func() []string {
	var names []string
	for _, e := range ingredient.Default().All() {
		names = append(names, e.Name)
	}
	slices.Sort(names)
	return names
})

func (s *Site) describe(r *http.Request) (answer, error) {
	form := r.URL.Query()
	p := newDrinkPage(url.Values{})
	if form.Get("example") != "" {
		p = newDrinkPage(exampleForm())
		p.Example = true
	}
	return s.show("drink", page{Title: "Describe a drink", Content: p})
}

func newDrinkPage(form url.Values) *drinkPage {
	rows := rowsOf(form)
	spare := max(shownRows-len(rows), spareRows)
	for range spare {
		rows = append(rows, ingredientRow{Per: amountUnits[0]})
	}
	return &drinkPage{Groups: groups, Form: form, Rows: rows, Units: amountUnits, Names: ingredientNames()}
}

// exampleForm is an invented drink.
func exampleForm() url.Values {
	return url.Values{
		"drink.name": {"Quince clear protein water"}, "drink.serving": {"330"}, "drink.serving.unit": {"mL"}, "drink.base": {"water"},
		"ingredient": {"whey protein isolate, acidified", "citric acid", "sucralose"}, "amount": {"70", "1.2", "0.12"}, "per": {"g/L", "g/L", "g/L"},
		"measured.ph": {"3.15"}, "measured.ph_method": {"meter"}, "measured.ph_equilibrated": {"24"}, "measured.ph_equilibrated.unit": {"h"},
		"bubbles": {"still"}, "package.type": {"heat-set PET bottle"}, "package.fill": {"330"}, "package.fill.unit": {"mL"},
		"package.brimful": {"348"}, "package.brimful.unit": {"mL"}, "package.headspace_gas": {"air"}, "storage.distribution": {"ambient"},
		"storage.temperature": {"30"}, "storage.temperature.unit": {"C"}, "storage.shelf_life": {"9"}, "storage.shelf_life.unit": {"months"},
		"market.jurisdiction": {"US", "EU"},
	}
}

// drinkOf reads a posted form as a drink; wrong is what its user can mend.
func drinkOf(r *http.Request) (form url.Values, d *beverage.Drink, text string, wrong []string, err error) {
	if err := parseDrinkForm(r); err != nil {
		return nil, nil, "", nil, asRefusal(err)
	}
	text = specOf(r.PostForm)
	d, problem := readSpec(text)
	return r.PostForm, d, text, plainProblems(problem, func(key string, line int) string { return askedAs(text, key, line) }), nil
}

// askedAs is what the user of the form calls a place of the spec: the question,
// or the ingredient that stands above the line.
func askedAs(text, key string, line int) string {
	if !strings.HasPrefix(key, ingredientField) {
		return labelOf(key)
	}
	before := strings.Split(text, "\n")
	n := strings.Count(strings.Join(before[:min(max(line, 0), len(before))], "\n"), "[[ingredient]]")
	return "Ingredient " + itoa(n)
}

func (s *Site) describeAnswer(r *http.Request) (answer, error) {
	form, d, text, wrong, err := drinkOf(r)
	if err != nil {
		return answer{}, err
	}
	p := newDrinkPage(form)
	p.Wrong = wrong
	if d != nil {
		b, err := s.brief(r, d, "full")
		if err != nil {
			return answer{}, err
		}
		p.Result = resultOf(b.Assessment)
		p.Result.Missing, p.Result.Spec = b.Missing, text
		if p.Result.Lines, err = s.heldAgainstLines(r, d); err != nil {
			p.Wrong = problemLines(err)
		}
	}
	return s.show("drink", page{Title: "Describe a drink", Content: p})
}

// brief is made one at a gate: it holds the whole assessment.
func (s *Site) brief(r *http.Request, d *beverage.Drink, disclose string) (*beverage.Brief, error) {
	if err := s.assessing.enter(r.Context()); err != nil {
		return nil, err
	}
	defer s.assessing.leave()
	return assess.MakeBrief(r.Context(), d, disclose, s.options)
}

// resultOf sorts an assessment for a reader.
func resultOf(a *beverage.Assessment) *drinkResult {
	r := &drinkResult{Head: report.Assessment(a, report.Metric).Headline, Class: a.AcidClass, Cautions: a.Cautions, Hash: a.Input.SHA256}
	for _, x := range a.Routes {
		switch x.Outcome {
		case beverage.Fits:
			r.Left = append(r.Left, x)
		case beverage.DoesNotFit:
			r.Out = append(r.Out, x)
		default:
			r.Unknown = append(r.Unknown, x)
		}
	}
	for level, at := range map[beverage.Level]*report.Items{beverage.Stop: &r.Stops, beverage.Review: &r.Reviews, beverage.Note: &r.Notes} {
		*at = report.Findings(a.Findings, level)
	}
	return r
}

// PlainClass is the class in plain words.
func (r *drinkResult) PlainClass() string { return plainClasses[r.Class.Class] }

// disclosures are how much of the formula a brief may tell.
var disclosures = []string{"full", "classes", "none"}

func (s *Site) briefFile(r *http.Request) (answer, error) {
	form, d, _, wrong, err := drinkOf(r)
	if err != nil {
		return answer{}, err
	}
	if d == nil {
		return answer{}, &refusal{http.StatusUnprocessableEntity, "no brief yet: " + strings.Join(wrong, "; ")}
	}
	how := form.Get("disclose")
	if !slices.Contains(disclosures, how) {
		return answer{}, &refusal{http.StatusBadRequest, "how much of the formula the brief tells: full, classes or none"}
	}
	b, err := s.brief(r, d, how)
	if err != nil {
		return answer{}, err
	}
	var body bytes.Buffer
	err = report.HTML(&body, report.Brief(b, report.Metric))
	return answer{kind: "text/html; charset=utf-8", name: fileName(d.Name, "-brief.html"), body: body.Bytes()}, err
}

func (s *Site) specFile(r *http.Request) (answer, error) {
	form, _, text, _, err := drinkOf(r)
	if err != nil {
		return answer{}, err
	}
	return tomlFile(form.Get("drink.name"), text), nil
}

func tomlFile(name, text string) answer {
	return answer{kind: "application/toml; charset=utf-8", name: fileName(name, ".toml"), body: []byte(text)}
}

// ClassWords are the class with its pH.
func (r *drinkResult) ClassWords() string { return report.ClassWords(r.Class) }
