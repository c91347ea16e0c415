package starter

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"posset/beverage"
	"posset/beverage/quantity"
	"posset/beverage/spec"
)

// Unknown is the answer of somebody who does not know.
const Unknown = "unknown"

// Answers is what somebody said of a drink, by the names of the questions. What
// was not said takes what is usual of the kind.
type Answers struct {
	Kind Kind
	said map[string]string
}

// Of begins the answers for a kind.
func Of(k Kind) *Answers { return &Answers{Kind: k, said: map[string]string{}} }

// Question is something that the owner of a drink can say.
type Question struct {
	Name    string // also that of its flag
	Ask     string
	Help    string
	Unknown bool // whether "unknown" is an answer

	key   string                  // of the spec, which says what an answer may be
	of    func(k Kind) bool       // whether it is asked of a kind; nil: always
	usual func(a *Answers) string // what is usual; "" is unknown
}

// Questions returns all questions, in the order in which they are asked.
func Questions() []Question { return append([]Question(nil), questions...) }

var questions = []Question{
	{Name: "name", Ask: "What is the drink called?", Help: "Any name; it can be changed later.", key: "drink.name",
		usual: func(a *Answers) string { return a.Kind.drink.Name }},
	{Name: "serving", Ask: "How much is drunk at once?", Help: "A volume, such as 330 mL or 12 fl oz.", key: "drink.serving",
		usual: func(a *Answers) string { return volume(a.Kind.drink.ServingML.V) }},
	{Name: "protein", Ask: "How much protein shall a serving hold?", Help: "A mass, such as 20 g. The recipe is scaled to it.",
		of: func(k Kind) bool { return k.proteinG > 0 }, usual: usualProtein},
	{Name: "caffeine", Ask: "How much caffeine is added to a serving?", Help: "A mass, such as 80 mg; 0 mg for none. What coffee or tea bring is not counted.",
		of: func(k Kind) bool { return k.ID == "energy" || k.ID == "casein-coffee" }, usual: usualCaffeine},
	{Name: "volumes", Ask: "How lively shall it be, in volumes of CO2?", Help: "A number: about 2 is soft, 3.5 is lively. A co-packer can help: then it is unknown.", Unknown: true,
		key: "carbonation.volumes", of: Kind.gassed, usual: func(a *Answers) string { return quantity.Number(a.Kind.drink.Carbonation.Volumes.V, 0) }},
	{Name: "pack", Ask: "What is it packed in?", Help: "One of: " + packs() + ".", Unknown: true, key: "package.type",
		usual: func(a *Answers) string { return string(a.Kind.drink.Package.Type.V) }},
	{Name: "fill", Ask: "How much goes into a pack?", Help: "A volume, such as 330 mL.", Unknown: true, key: "package.fill", usual: usualFill},
	{Name: "distribution", Ask: "How is it kept and sold?", Help: "ambient (at room temperature), refrigerated (cold all the way) or frozen.", Unknown: true, key: "storage.distribution",
		usual: func(a *Answers) string { return string(a.Kind.drink.Storage.Distribution.V) }},
	{Name: "shelf-life", Ask: "How long shall it keep?", Help: "A time, such as 45 days or 9 months.", Unknown: true, key: "storage.shelf_life",
		usual: func(a *Answers) string {
			return quantity.Format(a.Kind.drink.Storage.ShelfLifeS.V, quantity.Duration, 3, quantity.Metric)
		}},
	{Name: "market", Ask: "Where is it sold?", Help: "One of US, CA, EU, UK, ANZ, Codex, or several with commas.", key: "market.jurisdiction",
		usual: func(*Answers) string { return string(beverage.US) }},
	{Name: "ph", Ask: "What pH was measured in the finished drink?", Help: "A number such as 3.2, read with a meter at least a day after mixing; unknown where nobody has.", Unknown: true,
		key: "measured.ph", usual: func(*Answers) string { return "" }},
	{Name: "route", Ask: "Which process makes it keep?", Help: "One of: " + routes() + "; unknown where nobody has said: posset routes then tells which are left.", Unknown: true,
		key: "process.route", usual: func(*Answers) string { return "" }},
}

func packs() string { return listed(beverage.PackTypes) }

func routes() string { return listed(beverage.Routes) }

func listed[W ~string](words []W) string {
	var b strings.Builder
	for i, w := range words {
		if i > 0 {
			b.WriteString(", ")
		}
		b.WriteString(string(w))
	}
	return b.String()
}

func volume(mL float64) string { return quantity.Number(mL, 4) + " mL" }

// usualProtein is the protein that the kind's own recipe brings to a serving of
// the size that was said.
func usualProtein(a *Answers) string {
	return quantity.Number(math.Round((a.Kind.proteinG+a.Kind.otherG)*a.servingML()/mLPerL), 0) + " g"
}

const mLPerL = 1000

func usualCaffeine(a *Answers) string {
	for _, i := range a.Kind.drink.Ingredients {
		if i.Name == caffeine {
			return quantity.Number(mgPerG*i.Amount.V.Value, 4) + " mg"
		}
	}
	return "0 mg"
}

const (
	caffeine = "caffeine"
	mgPerG   = 1000
)

// usualFill is a serving, unless a pack of this kind usually holds several.
func usualFill(a *Answers) string {
	if d := a.Kind.drink; d.Package.FillML.V != d.ServingML.V {
		return volume(d.Package.FillML.V)
	}
	return volume(a.servingML())
}

// servingML is the serving that was said, else the usual one.
func (a *Answers) servingML() float64 {
	if text, said := a.said["serving"]; said {
		if d, err := spec.ReadKey("drink.serving", text); err == nil {
			return d.ServingML.V
		}
	}
	return a.Kind.drink.ServingML.V
}

// Asked tells whether a question is asked of the kind.
func (a *Answers) Asked(q Question) bool { return q.of == nil || q.of(a.Kind) }

// Usual is what is usual for a question, given what was said so far; "unknown"
// where nothing is.
func (a *Answers) Usual(q Question) string {
	if usual := q.usual(a); usual != "" {
		return usual
	}
	return Unknown
}

// Current is what was said, else what is usual.
func (a *Answers) Current(q Question) string { return a.text(q.Name) }

// Keep leaves an answer as it is, if it still can be.
func (a *Answers) Keep(q Question) error {
	if s, said := a.said[q.Name]; said && s != Unknown {
		return q.holds(a, s)
	}
	return nil
}

// Say takes an answer; an empty one takes what is usual. The error says what was
// read and what would do.
func (a *Answers) Say(q Question, text string) error {
	text = strings.TrimSpace(text)
	switch {
	case !a.Asked(q):
		return fmt.Errorf("%s is not asked of a drink of kind %s", q.Name, a.Kind.ID)
	case text == "":
		delete(a.said, q.Name)
		return nil
	case strings.EqualFold(text, Unknown) && q.Unknown:
		a.said[q.Name] = Unknown
		return nil
	case strings.EqualFold(text, Unknown):
		return errors.New("a starter cannot be without it; take what is usual, " + a.Usual(q))
	}
	if err := q.holds(a, text); err != nil {
		return err
	}
	a.said[q.Name] = text
	return nil
}

// holds says what is wrong with an answer.
func (q Question) holds(a *Answers, text string) error {
	if q.key != "" {
		_, err := spec.ReadKey(q.key, text)
		return err
	}
	g, err := mass(text)
	if err != nil {
		return err
	}
	if q.Name == "protein" {
		_, err = a.proteinScale(g)
	}
	return err
}

func mass(text string) (g float64, err error) {
	q, err := quantity.ParseAs(text, quantity.Mass)
	return q.Value, err
}

// mostProteinGPerL is more protein than any liquid drink holds.
const mostProteinGPerL = 400

// proteinScale is what the protein ingredients of the kind are multiplied by.
func (a *Answers) proteinScale(g float64) (float64, error) {
	gPerL := g * mLPerL / a.servingML()
	switch {
	case gPerL > mostProteinGPerL:
		return 0, fmt.Errorf("%s in %s is more than a liquid drink holds; write %s at most", quantity.Number(g, 4)+" g", volume(a.servingML()), quantity.Number(mostProteinGPerL*a.servingML()/mLPerL, 3)+" g")
	case gPerL <= a.Kind.otherG:
		return 0, fmt.Errorf("%s in %s is less than the rest of the recipe brings; write more", quantity.Number(g, 4)+" g", volume(a.servingML()))
	}
	return (gPerL - a.Kind.otherG) / a.Kind.proteinG, nil
}

// text is the answer, else what is usual; "unknown" where neither is.
func (a *Answers) text(name string) string {
	if s, said := a.said[name]; said {
		return s
	}
	for _, q := range questions {
		if q.Name == name && a.Asked(q) {
			return a.Usual(q)
		}
	}
	return Unknown
}

// known is the answer, and whether there is one.
func (a *Answers) known(name string) (string, bool) {
	s := a.text(name)
	return s, s != Unknown
}

// Again holds every answer once more, for one may have been said before another
// that it hangs on.
func (a *Answers) Again() error {
	for _, q := range questions {
		if !a.Asked(q) {
			continue
		}
		if err := a.Keep(q); err != nil {
			return fmt.Errorf("%s: %w", q.Name, err)
		}
	}
	return nil
}

// Name is what the drink is called.
func (a *Answers) Name() string { return a.text("name") }
