package report

import (
	"strings"
	"testing"

	"posset/beverage"
	"posset/beverage/assess"
)

func someComparison() *assess.Comparison {
	fs := quince().Findings
	return &assess.Comparison{Schema: assess.CompareSchema, Tool: tool, Cautions: testCautions, Notes: []string{"files of the user's own ingredients are compared by what they do"},
		Before: assess.Compared{Input: input("old.toml"), Drink: "Quince water", Class: beverage.Acidified, Stops: 1, Reviews: 2, Status: 1},
		After:  assess.Compared{Input: input("new.toml"), Drink: "Quince water", Class: beverage.LowAcid, Stops: 2, Reviews: 1, Status: 1},
		Keys: []assess.KeyChange{{Key: "measured.ph", Change: assess.KeyChanged, Before: "3.2", After: "6.8", BeforeLine: 12, AfterLine: 12},
			{Key: "ingredient.amount", Item: "citric acid", Change: assess.KeyRemoved, Before: "1 g/L", BeforeLine: 9}},
		Answers:  []assess.AnswerChange{{What: "class", Before: "acidified", After: "low-acid"}, {What: "target", After: "F0 6 min"}},
		Figures:  []assess.FigureChange{{What: "ph", Before: known(3.2), After: known(6.8)}, {What: "net_charge", Before: known(17.234567)}},
		Routes:   []assess.AnswerChange{{What: "hot fill", Before: "fits", After: "does not fit"}},
		Findings: assess.FindingChanges{Gained: fs[:1], Lost: fs[2:], Changed: []assess.FindingChange{{ID: "log-fault", Before: beverage.Review, After: beverage.Stop, Was: "A gap of 40 s.", Is: "A gap of 90 s."}}}}
}

func TestCompareGoldens(t *testing.T) {
	golden(t, "compare.txt", text(t, Style{}, Compare(someComparison(), Metric)))
	golden(t, "compare.csv", sheet(t, Compare(someComparison(), Metric)))
	golden(t, "compare.json", jsonText(t, someComparison()))
}

func TestCompareInEveryForm(t *testing.T) {
	everyForm(t, someComparison(), Compare(someComparison(), US))
}

func TestNothingDiffers(t *testing.T) {
	s := text(t, Style{}, Compare(&assess.Comparison{Tool: tool, Cautions: testCautions}, Metric))
	for _, want := range []string{"No key differs.", "No answer differs."} {
		if !strings.Contains(s, want) {
			t.Errorf("lacks %q in %s", want, s)
		}
	}
}
