package report

import (
	"fmt"
	"strings"

	"posset/beverage"
)

// behaviourItems tell of each protein ingredient what it consists of and where it
// stands in what is published.
func behaviourItems(all []beverage.ProteinBehaviour) Items {
	var items Items
	for _, b := range all {
		it := Item{Title: join(": ", b.Name, b.Kind)}
		if b.Kind == "" {
			it.Text = "What its protein is of is not known, so nothing of it can be told."
			items = append(items, it)
			continue
		}
		it.Parts = append(it.Parts, Part{hydrolysisWords(b) + sharesWords(b.Proteins) + ".", join(noteSeparator, b.KindSource, doubt(b.KindSource, b.KindBasis))})
		it.Parts = append(it.Parts, isoelectricPart(b), acidPart(b))
		if b.SolubleLow != nil && b.SolubleHigh != nil {
			it.Parts = append(it.Parts, Part{fmt.Sprintf("Dissolved or dispersed before heating: %s to %s %%, in little salt; a map from reviews, no specification.", decimal(*b.SolubleLow, 0), decimal(*b.SolubleHigh, 0)), join(noteSeparator, b.SolubleSource, doubt(b.SolubleSource, b.SolubleBasis))})
		}
		it.Parts = append(it.Parts, looksPart(b))
		items = append(items, it)
	}
	return items
}

func hydrolysisWords(b beverage.ProteinBehaviour) string {
	if b.HydrolysisLow == nil || b.HydrolysisHigh == nil {
		return ""
	}
	return "Cut to a degree of hydrolysis of " + reach(*b.HydrolysisLow, *b.HydrolysisHigh, 0) + " %. "
}

func sharesWords(all []beverage.ProteinShare) string {
	words := each(all, func(s beverage.ProteinShare) string {
		return fmt.Sprintf("%s %s %%", s.Name, reach(s.PercentLow, s.PercentHigh, 0))
	})
	return "Consists of " + strings.Join(words, ", ")
}

func isoelectricPart(b beverage.ProteinBehaviour) Part {
	if b.IsoelectricLow == nil || b.IsoelectricHigh == nil {
		return Part{Text: "No isoelectric pH is published for it."}
	}
	text := "Isoelectric at pH " + reach(*b.IsoelectricLow, *b.IsoelectricHigh, 1)
	if b.Dispute != "" {
		text += "; disputed: " + b.Dispute
	}
	return Part{text + ".", join(noteSeparator, b.IsoelectricSource, doubt(b.IsoelectricSource, b.IsoelectricBasis))}
}

func acidPart(b beverage.ProteinBehaviour) Part {
	text := ""
	switch {
	case b.AcidHeld != nil && *b.AcidHeld >= 0:
		text = "At the drink's pH a gram holds " + decimal(*b.AcidHeld, 2) + " mmol of acid. "
	case b.AcidHeld != nil:
		text = "At the drink's pH a gram holds " + decimal(-*b.AcidHeld, 2) + " mmol of base. "
	}
	if b.AcidBinding != nil {
		text += "It takes up " + decimal(*b.AcidBinding, 2) + " mmol/g of acid from pH 7 to pH 3"
	}
	return Part{text + ".", "computed from its groups; ions that bind, and the calcium phosphate of micelles, are left out"}
}

func looksPart(b beverage.ProteinBehaviour) Part {
	text := "Looks after heating, by itself: " + b.Looks
	if b.LooksWhy != "" {
		text += "; " + b.LooksWhy
	}
	return Part{strings.TrimRight(text, ".") + ".", join(noteSeparator, b.LooksSource, doubt(b.LooksSource, b.LooksBasis))}
}

// unfoldedTable is how much of each heat-labile protein unfolds.
func unfoldedTable(all []beverage.ProteinBehaviour) Table {
	t := Table{Columns: numbers(columns("protein", "net charge", "isoelectric pH", "unfolded, %"), 1, 4)}
	for _, b := range all {
		for _, s := range b.Proteins {
			row := []string{s.Name, "-", "-", "-"}
			if s.NetCharge != nil {
				row[1] = decimal(*s.NetCharge, 1)
			}
			if s.IsoelectricLow != nil && s.IsoelectricHigh != nil {
				row[2] = reach(*s.IsoelectricLow, *s.IsoelectricHigh, 1)
			}
			if s.Denatured != nil && s.DenaturedLow != nil && s.DenaturedHigh != nil {
				row[3] = shareCell(beverage.Interval{Low: *s.DenaturedLow, Mid: *s.Denatured, High: *s.DenaturedHigh, Basis: beverage.Predicted})
			}
			t.Rows = append(t.Rows, row)
		}
	}
	return t
}

// nutritionItems tell what a serving is held against.
func nutritionItems(n *beverage.ProteinNutrition) Items {
	if n == nil {
		return nil
	}
	var items Items
	for _, d := range n.Daily {
		items = append(items, Item{Title: dailyWords(d), Foot: join(noteSeparator, d.Source, doubt(d.Source, d.Basis))})
	}
	for _, f := range n.NitrogenFactors {
		items = append(items, Item{Title: fmt.Sprintf("%s: protein is nitrogen times %s (%s)", f.Name, decimal(f.Factor, 2), f.Use), Foot: join(noteSeparator, f.Source, doubt(f.Source, f.Basis))})
	}
	items = append(items, aminoItems(n)...)
	for _, c := range n.Comparisons {
		items = append(items, comparisonItem(c))
	}
	for _, c := range n.Caffeine {
		items = append(items, Item{Title: c})
	}
	return items
}

func dailyWords(d beverage.DailyShare) string {
	of := fmt.Sprintf("of the daily %s %s of %s", decimal(d.Value, 0), d.Unit, d.Nutrient)
	if d.Percent == nil {
		return fmt.Sprintf("%s: what share %s a serving holds is not known", d.Market, of)
	}
	return join(", ", fmt.Sprintf("%s: %s %% %s", d.Market, fixed(*d.Percent, 0), of), d.Note)
}

func aminoItems(n *beverage.ProteinNutrition) Items {
	a := n.AminoAcids
	if a == nil {
		return Items{{Title: "Amino acids are not known: too much of the protein was never analysed"}}
	}
	text := fmt.Sprintf("Amino acids, as analyses and sequences spread: leucine %s, branched-chain %s, essential %s g",
		spread(a.LeucineLow, a.LeucineHigh), spread(a.BranchedLow, a.BranchedHigh), spread(a.EssentialLow, a.EssentialHigh))
	if len(n.LeftOut) > 0 {
		text += "; without " + strings.Join(n.LeftOut, ", ") + ", whose protein nobody analysed"
	}
	items := Items{{Title: text, Foot: join(noteSeparator, a.Source, doubt(a.Source, a.Basis))}}
	if a.Score == nil {
		return append(items, Item{Title: "Amino-acid score: not known, since an amino acid of the pattern was not analysed"})
	}
	return append(items, Item{Title: fmt.Sprintf("Amino-acid score %s (%s to %s), the scarcest %s; not corrected for digestibility", decimal(*a.Score, 2), decimal(*a.ScoreLow, 2), decimal(*a.ScoreHigh, 2), a.Limiting), Foot: a.Pattern})
}

func spread(low, high *float64) string {
	if low == nil || high == nil {
		return "not known"
	}
	return reach(*low, *high, 2)
}

func comparisonItem(c beverage.AminoComparison) Item {
	text := fmt.Sprintf("%s, against %s: leucine %s, essential %s, branched-chain %s", c.Name, c.Than, moreWords(c.Leucine), moreWords(c.Essential), moreWords(c.Branched))
	if len(c.Without) > 0 {
		text += "; without " + strings.Join(c.Without, ", ") + ", which that analysis lacks"
	}
	return Item{Title: text}
}

func moreWords(v *float64) string {
	if v == nil {
		return "not known"
	}
	return fmt.Sprintf("%+.0f %%", *v)
}

// heatTable are holds worth the same lethality, with what each unfolds.
func heatTable(h beverage.HeatPairs, u Units) Table {
	t := temperature.in(u)
	data := Table{Columns: numbers(columns("hold at, "+t.unit, "for", "unfolded, %"), 0, 3)}
	for _, p := range h.Pairs {
		cell := "-"
		if p.Denatured != nil && p.DenaturedLow != nil && p.DenaturedHigh != nil {
			cell = shareCell(beverage.Interval{Low: *p.DenaturedLow, Mid: *p.Denatured, High: *p.DenaturedHigh, Basis: beverage.Predicted})
		}
		data.Rows = append(data.Rows, []string{u.cell(temperature, &p.TempC), durationWords(p.HoldS), cell})
	}
	return data
}

func heatLead(h beverage.HeatPairs, u Units) Para {
	if h.Why == "" && h.LethalityMin == nil {
		return ""
	}
	if h.Why != "" || h.TrefC == nil || h.ZC == nil {
		return Para(sentences([]string{"Cannot tell: " + h.Why}))
	}
	return Para(fmt.Sprintf("Each hold is worth %s %s (%s); warming up and cooling down, which cost protein too, are left out. %s",
		decimal(*h.LethalityMin, 2), u.basis(*h.TrefC, *h.ZC), h.Of, sentences(append([]string{h.Source}, h.Notes...))))
}
