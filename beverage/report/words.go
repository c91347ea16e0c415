package report

import (
	"fmt"
	"strings"

	"posset/beverage"
)

// What must stand beside the words that could be taken for more than they say.
const (
	besideMeets = "the target you stated; whether it is adequate was not judged"
	besideFits  = `"fits" says only: not ruled out by what was given`
)

// Open counts what is open in findings.
type Open struct{ Stops, Reviews, Notes int }

// Count counts findings by level.
func Count(fs []beverage.Finding) Open {
	var o Open
	for _, f := range fs {
		switch f.Level {
		case beverage.Stop:
			o.Stops++
		case beverage.Review:
			o.Reviews++
		default:
			o.Notes++
		}
	}
	return o
}

// headline is the first line of everything that judges a drink.
func headline(fs []beverage.Finding) string {
	o := Count(fs)
	return fmt.Sprintf("%s and %s open; %s", counted(o.Stops, "stop"), counted(o.Reviews, "review"), NotARelease)
}

func counted(n int, thing string) string {
	if n == 1 {
		return "1 " + thing
	}
	return fmt.Sprintf("%d %ss", n, thing)
}

// Judged is an outcome with the words that must stand beside it.
func Judged(o beverage.Outcome) string { return judged(o) }

// judged is an outcome with the words that must stand beside it.
func judged(o beverage.Outcome) string {
	if o == beverage.Meets {
		return o.String() + " (" + besideMeets + ")"
	}
	return o.String()
}

// ClassWords are the class with its pH and the range of it, ends rounded outward.
func ClassWords(c beverage.AcidClass) string { return classFigure(c, Metric).answer() }

// CreditedWords are credited minutes, rounded down.
func CreditedWords(minutes *float64) string { return credited(minutes) }

// Findings are those of one level as a reader takes them, for a page around them.
func Findings(fs []beverage.Finding, level beverage.Level) Items { return findingItems(fs, level) }

// findingItems are the findings of one level, in the order given; those of one
// id and title stand together, under it.
func findingItems(fs []beverage.Finding, level beverage.Level) Items {
	var items Items
	at := map[[2]string]int{}
	for _, f := range fs {
		if f.Level != level {
			continue
		}
		head := [2]string{f.ID, f.Title}
		if i, told := at[head]; told {
			items[i].more(Part{f.Detail, foot(f)})
			continue
		}
		at[head] = len(items)
		items = append(items, Item{Mark: f.Level.String(), ID: f.ID, Title: f.Title, Text: f.Detail, Foot: foot(f)})
	}
	return items
}

// more adds something to say under the item's title.
func (it *Item) more(p Part) {
	if len(it.Parts) == 0 {
		it.Parts = []Part{{it.Text, it.Foot}}
		it.Text, it.Foot = "", ""
	}
	it.Parts = append(it.Parts, p)
}

func foot(f beverage.Finding) string {
	return join(noteSeparator, listed(f.Markets), f.Source, doubt(f.Source, f.Basis))
}

// doubt says that a rule stands on memory or custom, unless its source does.
func doubt(source string, b beverage.Basis) string {
	switch {
	case b == beverage.Memory && !strings.Contains(source, "recalled"):
		return "from memory, check the text"
	case b == beverage.CommonPractice && !strings.Contains(source, string(b)):
		return string(b)
	}
	return ""
}

// howToClear ends the findings.
const howToClear = Para("What each means, its source and how to clear it: posset explain ID")

// addFindings appends a section a level.
func (d *Doc) addFindings(fs []beverage.Finding) {
	if len(fs) == 0 {
		return
	}
	d.add("Stops: do not make or ship as described", findingItems(fs, beverage.Stop))
	d.add("Reviews: a qualified person must look", findingItems(fs, beverage.Review))
	d.add("Notes", findingItems(fs, beverage.Note))
	last := &d.Sections[len(d.Sections)-1]
	last.Blocks = append(last.Blocks, howToClear)
}

// ids are the distinct ids of findings at a level, in order.
func ids(fs []beverage.Finding, level beverage.Level) []string {
	var out []string
	seen := map[string]bool{}
	for _, f := range fs {
		if f.Level == level && !seen[f.ID] {
			seen[f.ID] = true
			out = append(out, f.ID)
		}
	}
	return out
}

func orNone(items []string, none string) string {
	if len(items) == 0 {
		return none
	}
	return strings.Join(items, ", ")
}
