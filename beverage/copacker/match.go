package copacker

import (
	"cmp"
	"context"
	"slices"

	"posset/beverage"
	"posset/beverage/assess"
	"posset/beverage/facts"
	"posset/beverage/ingredient"
)

// Options says who asks, and what the spec has no key for.
type Options struct {
	assess.Options
	RunML     *float64 // the run that is planned; nil: not asked
	Allergens []string // of ingredients that the library does not know; "none" for none
}

// Match holds a drink against every line of a file. It fails only where a record
// that the spec names cannot be used.
func Match(ctx context.Context, d *beverage.Drink, file *File, o Options) (*Result, error) {
	a, err := assess.Drink(ctx, d, o.Options)
	if err != nil {
		return nil, err
	}
	f, err := facts.Of(ctx, d, ingredient.Default())
	if err != nil {
		return nil, err
	}
	r := &Result{
		Schema: Schema, Tool: a.Tool, Input: a.Input, LinesFile: beverage.Input{File: file.Name, SHA256: file.SHA256}, Drink: a.Drink.Name,
		Class: a.AcidClass, Stops: ids(a.Findings, beverage.Stop), Reviews: ids(a.Findings, beverage.Review), RunL: litres(o.RunML),
		Lines: []LineResult{}, Cautions: a.Cautions,
	}
	for i := range file.Lines {
		r.Lines = append(r.Lines, hold(f, &file.Lines[i], o))
	}
	slices.SortStableFunc(r.Lines, LineResult.before)
	return r, nil
}

const mLPerL = 1000

func litres(mL *float64) *float64 {
	if mL == nil {
		return nil
	}
	l := *mL / mLPerL
	return &l
}

func ids(list []beverage.Finding, level beverage.Level) []string {
	out := []string{}
	for _, x := range list {
		if x.Level == level && !slices.Contains(out, x.ID) {
			out = append(out, x.ID)
		}
	}
	return out
}

// before puts the lines that miss least first, those whose route is ruled out
// after the others, and those that tell of no process last: nothing that the
// drink needs of one was held against them.
func (r LineResult) before(s LineResult) int {
	if (r.By == "") != (s.By == "") {
		return map[bool]int{true: 1, false: -1}[r.By == ""]
	}
	return cmp.Or(cmp.Compare(ruledOut(r.Outcome), ruledOut(s.Outcome)), cmp.Compare(len(r.Missing), len(s.Missing)))
}

// hold holds a drink against a line by the process of it that misses least; the
// one that the spec states goes before others that miss as much.
func hold(f *facts.Facts, l *Line, o Options) LineResult {
	j := judge{f: f, o: o}
	j.plant(l)
	r := LineResult{
		Line: l.Name.V, Plant: l.Plant.V, At: placed(l.Place), Markets: l.Markets.V, Others: []ProcessResult{}, Notes: j.notes,
	}
	if l.MinimumRunML.Known {
		r.MinimumRunL = litres(&l.MinimumRunML.V)
	}
	tried := processes(f, l, o)
	if len(tried) == 0 {
		j.line("process", "line.process", beverage.Place{}, l.Place, "the line tells of no process")
	} else {
		j.missing = append(j.missing, tried[0].Missing...)
		r.By, r.Outcome, r.Others = tried[0].Route, tried[0].Outcome, tried[1:]
	}
	r.Missing = j.missing
	r.NothingMissing = len(r.Missing) == 0
	if r.Missing == nil {
		r.Missing = []Missing{}
	}
	if r.Notes == nil {
		r.Notes = []string{}
	}
	return r
}

// processes holds the drink against every process of the line, the one that
// misses least first, those on routes that are ruled out after the others.
func processes(f *facts.Facts, l *Line, o Options) []ProcessResult {
	var tried []ProcessResult
	for i := range l.Processes {
		p := &l.Processes[i]
		j := judge{f: f, o: o, missing: []Missing{}}
		fit := j.process(l, p)
		tried = append(tried, ProcessResult{Route: p.Route.V, Outcome: fit, At: placed(p.Place), Missing: j.missing})
	}
	stated := f.Process.Route
	slices.SortStableFunc(tried, func(a, b ProcessResult) int {
		return cmp.Or(cmp.Compare(ruledOut(a.Outcome), ruledOut(b.Outcome)), cmp.Compare(len(a.Missing), len(b.Missing)), cmp.Compare(asStated(a, stated), asStated(b, stated)))
	})
	return tried
}

func ruledOut(f beverage.Fit) int {
	if f == beverage.DoesNotFit {
		return 1
	}
	return 0
}

func asStated(p ProcessResult, stated beverage.Route) int {
	if p.Route == stated {
		return 0
	}
	return 1
}
