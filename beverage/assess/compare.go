package assess

import (
	"context"
	"math"
	"slices"
	"strconv"

	"posset/beverage"
	"posset/beverage/quantity"
	"posset/beverage/spec"
)

// CompareSchema names the form of a comparison.
const CompareSchema = "posset/compare/1"

// Side is a drink with the keys of its file as they were written.
type Side struct {
	Drink   *beverage.Drink
	Written []spec.Written
}

// Comparison is what differs between two drinks, and what that changed in the
// assessment. Only what differs is told.
type Comparison struct {
	Schema   string         `json:"schema"`
	Tool     beverage.Tool  `json:"tool"`
	Before   Compared       `json:"before"`
	After    Compared       `json:"after"`
	Keys     []KeyChange    `json:"keys"`
	Answers  []AnswerChange `json:"answers"`
	Figures  []FigureChange `json:"figures"`
	Routes   []AnswerChange `json:"routes"`
	Findings FindingChanges `json:"findings"`
	Notes    []string       `json:"notes"`
	Cautions []string       `json:"cautions"`
}

// Compared is one of the two drinks.
type Compared struct {
	Input   beverage.Input `json:"input"`
	Drink   string         `json:"drink"`
	Class   beverage.Class `json:"class"`
	Stops   int            `json:"stops"`
	Reviews int            `json:"reviews"`
	Status  int            `json:"exit_status"` // of posset check
}

// KeyChange is a key that was added, removed or changed. Before and After are as
// written; the empty one and its line 0 say that the key is not there.
type KeyChange struct {
	Key        string        `json:"key"`
	Item       beverage.Text `json:"item"`   // which ingredient, record, zone ...
	Change     string        `json:"change"` // added | removed | changed
	Before     beverage.Text `json:"before"`
	After      beverage.Text `json:"after"`
	BeforeLine int           `json:"before_line"`
	AfterLine  int           `json:"after_line"`
}

// AnswerChange is an answer in words that differs.
type AnswerChange struct {
	What   string        `json:"what"`
	Before beverage.Text `json:"before"`
	After  beverage.Text `json:"after"`
}

// FigureChange is a figure that differs; its name ends in its unit. Unknown is nil.
type FigureChange struct {
	What   string   `json:"what"`
	Before *float64 `json:"before"`
	After  *float64 `json:"after"`
}

// FindingChanges are the findings that the second drink has and the first has
// not, and the other way round, and those that say something else.
type FindingChanges struct {
	Gained  []beverage.Finding `json:"gained"`
	Lost    []beverage.Finding `json:"lost"`
	Changed []FindingChange    `json:"changed"`
}

// FindingChange is a finding of both drinks whose level or words differ.
type FindingChange struct {
	ID     string         `json:"id"`
	Before beverage.Level `json:"level_before"`
	After  beverage.Level `json:"level_after"`
	Was    string         `json:"detail_before"`
	Is     string         `json:"detail_after"`
}

// Compare assesses two drinks and tells what differs. It fails where a record
// that one of the specs names cannot be used.
func Compare(ctx context.Context, before, after Side, o Options) (*Comparison, error) {
	a, err := Drink(ctx, before.Drink, o)
	if err != nil {
		return nil, err
	}
	b, err := Drink(ctx, after.Drink, o)
	if err != nil {
		return nil, err
	}
	return &Comparison{
		Schema: CompareSchema, Tool: o.tool(), Before: compared(a), After: compared(b), Keys: keyChanges(before.Written, after.Written),
		Answers: answerChanges(answersOf(a), answersOf(b)), Figures: figureChanges(figuresOf(a), figuresOf(b)),
		Routes: answerChanges(routesOf(a), routesOf(b)), Findings: findingChanges(a.Findings, b.Findings), Notes: compareNotes(before, after), Cautions: a.Cautions,
	}, nil
}

func compared(a *beverage.Assessment) Compared {
	c := Compared{Input: a.Input, Drink: a.Drink.Name, Class: a.AcidClass.Class, Status: ExitStatus(a, false)}
	for _, f := range a.Findings {
		switch f.Level {
		case beverage.Stop:
			c.Stops++
		case beverage.Review:
			c.Reviews++
		}
	}
	return c
}

// What became of a key.
const (
	KeyAdded   = "added"
	KeyRemoved = "removed"
	KeyChanged = "changed"
)

type keyName struct{ key, item string }

// keyChanges holds the keys of two files against each other. A quantity in
// another unit, and a number with more zeros, is the same value.
func keyChanges(before, after []spec.Written) []KeyChange {
	list := []KeyChange{}
	now := map[keyName]spec.Written{}
	for _, w := range after {
		now[keyName{w.Key, w.Item}] = w
	}
	was := map[keyName]bool{}
	for _, w := range before {
		name := keyName{w.Key, w.Item}
		was[name] = true
		x, still := now[name]
		switch {
		case !still:
			list = append(list, KeyChange{Key: w.Key, Item: beverage.Text(w.Item), Change: KeyRemoved, Before: beverage.Text(w.Text), BeforeLine: w.Line})
		case !sameValue(w.Text, x.Text):
			list = append(list, KeyChange{Key: w.Key, Item: beverage.Text(w.Item), Change: KeyChanged, Before: beverage.Text(w.Text), After: beverage.Text(x.Text), BeforeLine: w.Line, AfterLine: x.Line})
		}
	}
	for _, w := range after {
		if !was[keyName{w.Key, w.Item}] {
			list = append(list, KeyChange{Key: w.Key, Item: beverage.Text(w.Item), Change: KeyAdded, After: beverage.Text(w.Text), AfterLine: w.Line})
		}
	}
	return list
}

// sameValue tells whether two texts say the same figure.
func sameValue(a, b string) bool {
	if a == b {
		return true
	}
	x, errX := strconv.ParseFloat(a, 64)
	y, errY := strconv.ParseFloat(b, 64)
	if errX == nil && errY == nil {
		return x == y
	}
	p, errP := quantity.Parse(a)
	q, errQ := quantity.Parse(b)
	return errP == nil && errQ == nil && p.Dim == q.Dim && p.As == q.As && p.Absolute == q.Absolute && math.Abs(p.Value-q.Value) <= conversionNoise*math.Abs(p.Value)
}

// conversionNoise is what turning one unit into another may leave, relative.
const conversionNoise = 1e-12

// findingChanges pairs the findings of two drinks by id, those that say the same
// first.
func findingChanges(before, after []beverage.Finding) FindingChanges {
	c := FindingChanges{Gained: []beverage.Finding{}, Lost: []beverage.Finding{}, Changed: []FindingChange{}}
	var left []beverage.Finding
	rest := slices.Clone(after)
	take := func(like func(beverage.Finding) bool) (beverage.Finding, bool) {
		i := slices.IndexFunc(rest, like)
		if i < 0 {
			return beverage.Finding{}, false
		}
		f := rest[i]
		rest = slices.Delete(rest, i, i+1)
		return f, true
	}
	for _, f := range before {
		if _, same := take(func(x beverage.Finding) bool { return x.ID == f.ID && x.Level == f.Level && x.Detail == f.Detail }); !same {
			left = append(left, f)
		}
	}
	for _, f := range left {
		x, ok := take(func(x beverage.Finding) bool { return x.ID == f.ID })
		if !ok {
			c.Lost = append(c.Lost, f)
			continue
		}
		c.Changed = append(c.Changed, FindingChange{ID: f.ID, Before: f.Level, After: x.Level, Was: f.Detail, Is: x.Detail})
	}
	c.Gained = append(c.Gained, rest...)
	return c
}

// compareNotes tells what the keys of the two files do not show.
func compareNotes(before, after Side) []string {
	notes := []string{}
	if len(before.Drink.Own) > 0 || len(after.Drink.Own) > 0 {
		notes = append(notes, "files of the user's own ingredients are compared by what they do to the assessment, not key by key")
	}
	return notes
}
