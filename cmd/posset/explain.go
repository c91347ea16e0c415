package main

import (
	"errors"

	"github.com/spf13/cobra"

	"posset/beverage/law"
	"posset/beverage/quantity"
	"posset/beverage/report"
	"posset/beverage/rule"
	"posset/cmd/posset/internal/console"
)

func explainCommand(con *console.Console) *cobra.Command {
	return &cobra.Command{
		Use:     "explain [ID]",
		Short:   "What a finding means, what it rests on, how to clear it",
		Long:    "What a finding means, its rule, its published source, and how to clear it.\nWithout an id it lists every finding with its level.",
		Example: "  posset explain\n  posset explain ph-above-limit",
		Args:    atMostOne("finding id"),
		RunE: func(_ *cobra.Command, ids []string) error {
			rules := rule.All()
			if len(ids) == 1 {
				r, ok := rule.Find(ids[0])
				if !ok {
					return noFinding(ids[0], rules)
				}
				rules = []*rule.Rule{r}
			}
			result := explained(rules)
			return con.Emit(false, console.Result{Value: result, Doc: func(u report.Units) report.Doc { return report.Explain(result, u) }})
		},
	}
}

func noFinding(id string, rules []*rule.Rule) error {
	known := make([]string, len(rules))
	for i, r := range rules {
		known[i] = r.ID
	}
	return errors.New("posset explain: " + quantity.Quote(id) + " is no finding" + offer(quantity.Nearest(id, known)) + "; posset explain lists them all")
}

func explained(rules []*rule.Rule) *report.ExplainResult {
	result := &report.ExplainResult{Schema: report.ExplainSchema, Tool: tool(), Cautions: []string{explainCaution}}
	for _, r := range rules {
		result.Findings = append(result.Findings, explanationOf(r))
	}
	return result
}

const explainCaution = "A finding is no substitute for the text that it cites; a process authority decides."

func explanationOf(r *rule.Rule) report.Explanation {
	e := report.Explanation{ID: r.ID, Level: r.Level, Title: r.Title, Means: r.Means, Clear: r.Clear, Cases: []report.RuleSource{}}
	for _, id := range r.Law {
		e.Sources = append(e.Sources, sourceOf(law.MustGet(id)))
	}
	for _, row := range law.Cases(r.ID) {
		e.Cases = append(e.Cases, sourceOf(row))
	}
	return e
}

func sourceOf(row law.Row) report.RuleSource {
	return report.RuleSource{ID: row.ID, Markets: row.Markets, Source: row.Cite(), Statement: row.Statement, Basis: row.Basis, Argued: row.Argued}
}
