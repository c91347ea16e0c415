package report

import (
	"strings"

	"posset/beverage"
)

// ExplainSchema and IngredientsSchema name the forms of what is looked up.
const (
	ExplainSchema     = "posset/explain/1"
	IngredientsSchema = "posset/ingredients/1"
)

// ExplainResult is what findings mean.
type ExplainResult struct {
	Schema   string        `json:"schema"`
	Tool     beverage.Tool `json:"tool"`
	Findings []Explanation `json:"findings"`
	Cautions []string      `json:"cautions"`
}

// Explanation is one finding: what it means, what clears it, what it rests on.
type Explanation struct {
	ID      string         `json:"id"`
	Level   beverage.Level `json:"level"`
	Title   string         `json:"title"`
	Means   string         `json:"means"`
	Clear   string         `json:"how_to_clear"`
	Sources []RuleSource   `json:"sources"`
	Cases   []RuleSource   `json:"cases"` // published outbreaks and recalls that it would have named
}

// RuleSource is one text that a finding rests on.
type RuleSource struct {
	ID        string            `json:"id"`
	Markets   []beverage.Market `json:"markets"` // empty: trade and science
	Source    string            `json:"source"`
	Statement string            `json:"statement"`
	Basis     beverage.Basis    `json:"basis"`
	Argued    string            `json:"argued"`
}

// Explain is one finding in full, or the list of all.
func Explain(r *ExplainResult, _ Units) Doc {
	d := Doc{Title: "Findings", Headline: counted(len(r.Findings), "finding"), Tool: r.Tool, Cautions: r.Cautions, Sheet: explainSheet(r.Findings)}
	if len(r.Findings) == 1 {
		d.explainOne(r.Findings[0])
		return d
	}
	for _, l := range []beverage.Level{beverage.Stop, beverage.Review, beverage.Note} {
		d.add(levelTitle(l), explainTable(r.Findings, l))
	}
	return d
}

func levelTitle(l beverage.Level) string {
	return strings.ToUpper(l.String()) + " by default: " + map[beverage.Level]string{
		beverage.Stop:   "do not make or ship as described",
		beverage.Review: "a qualified person must look",
		beverage.Note:   "worth knowing",
	}[l]
}

func explainTable(es []Explanation, l beverage.Level) Table {
	t := Table{Columns: columns("id", "title")}
	for _, e := range es {
		if e.Level == l {
			t.Rows = append(t.Rows, []string{e.ID, e.Title})
		}
	}
	return t
}

func (d *Doc) explainOne(e Explanation) {
	d.Title, d.Headline = e.ID, e.Title
	d.add("Level", Figures{{Name: e.Level.String(), Words: strings.TrimPrefix(levelTitle(e.Level), strings.ToUpper(e.Level.String())+" by default: "),
		Note: "a level may rise by market or circumstance"}})
	d.add("What it means", Para(e.Means))
	d.add("How to clear it", Para(e.Clear))
	d.add("What it rests on", sourceItems(e.Sources))
	d.add("Published cases that it would have named", caseItems(e.Cases))
}

func sourceItems(sources []RuleSource) Items {
	items := make(Items, len(sources))
	for i, s := range sources {
		items[i] = Item{ID: marketsOr(s.Markets, "trade and science"), Title: s.Source, Text: s.Statement,
			Foot: join(noteSeparator, doubt(s.Source, s.Basis), argued(s.Argued))}
	}
	return items
}

func caseItems(cases []RuleSource) Items {
	items := make(Items, len(cases))
	for i, c := range cases {
		items[i] = Item{ID: c.Source, Text: c.Statement, Foot: doubt(c.Source, c.Basis)}
	}
	return items
}

func marketsOr(ms []beverage.Market, none string) string {
	if len(ms) == 0 {
		return none
	}
	return listed(ms)
}

func argued(text string) string {
	if text == "" {
		return ""
	}
	return "argued: " + text
}

func explainSheet(es []Explanation) Table {
	t := Table{Columns: columns("id", "level", "title", "means", "how_to_clear", "sources")}
	for _, e := range es {
		cites := make([]string, len(e.Sources))
		for i, s := range e.Sources {
			cites[i] = s.Source
		}
		t.Rows = append(t.Rows, []string{e.ID, e.Level.String(), e.Title, e.Means, e.Clear, strings.Join(cites, "; ")})
	}
	return t
}
