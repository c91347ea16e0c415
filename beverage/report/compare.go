package report

import (
	"fmt"
	"strconv"

	"posset/beverage"
	"posset/beverage/assess"
)

// Compare is what differs between two drinks, and what that changed.
func Compare(c *assess.Comparison, _ Units) Doc {
	d := Doc{Title: titleOf(c.Before.Drink) + " -> " + titleOf(c.After.Drink), Headline: compareHeadline(c), Tool: c.Tool,
		Inputs: []beverage.Input{c.Before.Input, c.After.Input}, Cautions: c.Cautions}
	d.add("Keys", keyTable(c.Keys), nothingDiffers(len(c.Keys), "key"), listOf(c.Notes))
	d.add("What that changed in the assessment", answerTable("answer", c.Answers), figureChangeTable(c.Figures), nothingDiffers(len(c.Answers)+len(c.Figures), "answer"))
	d.add("Routes that stand otherwise", answerTable("route", c.Routes))
	d.add("Findings gained", allItems(c.Findings.Gained))
	d.add("Findings that say something else", findingChangeItems(c.Findings.Changed))
	d.add("Findings lost", allItems(c.Findings.Lost))
	d.Sheet = compareSheet(c)
	return d
}

func compareHeadline(c *assess.Comparison) string {
	return fmt.Sprintf("%s different; class %s -> %s, stops %d -> %d, reviews %d -> %d; %s", counted(len(c.Keys), "key"), c.Before.Class, c.After.Class,
		c.Before.Stops, c.After.Stops, c.Before.Reviews, c.After.Reviews, NotARelease)
}

func nothingDiffers(n int, thing string) Para {
	if n > 0 {
		return ""
	}
	return Para("No " + thing + " differs.")
}

func keyTable(keys []assess.KeyChange) Table {
	t := Table{Columns: columns("key", "of", "change", "before", "after")}
	for _, k := range keys {
		t.Rows = append(t.Rows, []string{k.Key, orDash(string(k.Item)), k.Change, orDash(string(k.Before)), orDash(string(k.After))})
	}
	return t
}

func answerTable(title string, list []assess.AnswerChange) Table {
	t := Table{Columns: columns(title, "before", "after")}
	for _, a := range list {
		t.Rows = append(t.Rows, []string{a.What, orDash(string(a.Before)), orDash(string(a.After))})
	}
	return t
}

func figureChangeTable(list []assess.FigureChange) Table {
	t := Table{Columns: numbers(columns("figure", "before", "after"), 1, 3)}
	for _, f := range list {
		t.Rows = append(t.Rows, []string{f.What, shortFigure(f.Before), shortFigure(f.After)})
	}
	return t
}

const shortDigits = 4

// shortFigure is a figure for a person, in the unit that its name ends in.
func shortFigure(v *float64) string {
	if v == nil {
		return "-"
	}
	return strconv.FormatFloat(*v, 'g', shortDigits, 64)
}

func allItems(fs []beverage.Finding) Items {
	var items Items
	for _, level := range []beverage.Level{beverage.Stop, beverage.Review, beverage.Note} {
		items = append(items, findingItems(fs, level)...)
	}
	return items
}

// findingChangeItems show the level as it is now, and both texts.
func findingChangeItems(list []assess.FindingChange) Items {
	items := make(Items, len(list))
	for i, f := range list {
		title := "level unchanged"
		if f.Before != f.After {
			title = f.Before.String() + " -> " + f.After.String()
		}
		items[i] = Item{Mark: f.After.String(), ID: f.ID, Title: title, Text: "before: " + f.Was, Foot: "now: " + f.Is}
	}
	return items
}

// compareSheet has one row a thing that differs.
func compareSheet(c *assess.Comparison) Table {
	t := Table{Columns: columns("before file", "after file", "part", "name", "of", "change", "before", "after")}
	put := func(part, name, of, change, before, after string) {
		t.Rows = append(t.Rows, []string{c.Before.Input.File, c.After.Input.File, part, name, of, change, before, after})
	}
	for _, k := range c.Keys {
		put("key", k.Key, string(k.Item), k.Change, string(k.Before), string(k.After))
	}
	for _, a := range c.Answers {
		put("answer", a.What, "", assess.KeyChanged, string(a.Before), string(a.After))
	}
	for _, f := range c.Figures {
		put("figure", f.What, "", assess.KeyChanged, numeral(f.Before), numeral(f.After))
	}
	for _, r := range c.Routes {
		put("route", r.What, "", assess.KeyChanged, string(r.Before), string(r.After))
	}
	for _, f := range c.Findings.Gained {
		put("finding", f.ID, f.Level.String(), "gained", "", f.Detail)
	}
	for _, f := range c.Findings.Lost {
		put("finding", f.ID, f.Level.String(), "lost", f.Detail, "")
	}
	for _, f := range c.Findings.Changed {
		put("finding", f.ID, f.Before.String()+" -> "+f.After.String(), assess.KeyChanged, f.Was, f.Is)
	}
	return t
}
