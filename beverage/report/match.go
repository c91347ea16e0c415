package report

import (
	"fmt"
	"strconv"
	"strings"

	"posset/beverage/copacker"
)

// What must stand beside "nothing missing on paper".
const onPaper = `"nothing missing on paper" says only that what was asked stands in the line's own description. Whether the line can make the drink is for its owner and a process authority to say; the process of this drink is still to be set, tried and, where the market asks, filed`

// Match is a drink held against the lines of co-packers.
func Match(r *copacker.Result, u Units) Doc {
	d := newDoc(r.Drink, matchHeadline(r), r.Tool, r.Input, r.Cautions)
	d.Inputs = append(d.Inputs, r.LinesFile)
	d.add("Lines", lineTable(r.Lines), Para(sentence(onPaper)))
	d.add("Open of the drink itself, whatever the line", Figures{
		{Name: "Stops", Words: orNone(r.Stops, "nothing at level stop in what was given")},
		{Name: "Reviews", Words: orNone(r.Reviews, "none")},
		classFigure(r.Class, u),
	})
	for _, l := range r.Lines {
		d.add(join(", ", l.Line, l.Plant)+": "+lineOutcome(l), byRoute(l), missingItems(l.Missing), listOf(l.Notes), otherItems(l.Others))
	}
	d.Sheet = matchSheet(r)
	return d
}

func matchHeadline(r *copacker.Result) string {
	whole := 0
	for _, l := range r.Lines {
		if l.NothingMissing {
			whole++
		}
	}
	return fmt.Sprintf("%s: nothing missing on paper on %d; %s and %s of the drink open; %s", counted(len(r.Lines), "line"), whole,
		counted(len(r.Stops), "stop"), counted(len(r.Reviews), "review"), NotARelease)
}

func lineOutcome(l copacker.LineResult) string {
	if l.NothingMissing {
		return copacker.NothingMissing
	}
	return fmt.Sprintf("%d missing", len(l.Missing))
}

func lineTable(lines []copacker.LineResult) Table {
	t := Table{Columns: columns("line", "plant", "by", "route", "on paper")}
	for _, l := range lines {
		t.Rows = append(t.Rows, []string{l.Line, l.Plant, orDash(string(l.By)), routeWord(l), lineOutcome(l)})
	}
	return t
}

// routeWord says how the route of a line stands, where it has one.
func routeWord(l copacker.LineResult) string {
	if l.By == "" {
		return "-"
	}
	return l.Outcome.String()
}

func byRoute(l copacker.LineResult) Figures {
	by := Figure{Name: "By", Words: "no process is told"}
	if l.By != "" {
		by.Words, by.Note = string(l.By), l.Outcome.String()
	}
	return Figures{
		by,
		{Name: "Packs for", Words: orUnknown(listed(l.Markets))},
		{Name: "Told at", Words: l.At},
	}
}

func missingItems(list []copacker.Missing) Items {
	items := make(Items, len(list))
	for i, m := range list {
		items[i] = Item{Title: m.What + ": " + m.Text, Foot: decidedBy(m)}
	}
	return items
}

func decidedBy(m copacker.Missing) string {
	at := ""
	if m.At != "" {
		at = " at " + string(m.At)
	}
	return join(noteSeparator, "decided by "+m.Key+at, string(m.Finding))
}

// otherItems tell in a line each what a line's further processes lack.
func otherItems(list []copacker.ProcessResult) Items {
	items := make(Items, len(list))
	for i, p := range list {
		items[i] = Item{Title: fmt.Sprintf("or by %s, %s: %d missing of that process", p.Route, p.Outcome, len(p.Missing)), Text: whats(p.Missing)}
	}
	return items
}

func whats(list []copacker.Missing) string {
	var words []string
	for _, m := range list {
		words = append(words, m.What+" ("+m.Key+")")
	}
	return strings.Join(words, ", ")
}

// matchSheet has one row a thing that is missing, and one for a line that lacks
// nothing.
func matchSheet(r *copacker.Result) Table {
	t := Table{Columns: columns("file", "drink", "line", "plant", "route", "route outcome", "missing", "what", "text", "decides", "key", "at", "finding")}
	for _, l := range r.Lines {
		head := []string{r.Input.File, r.Drink, l.Line, l.Plant, string(l.By), routeWord(l), strconv.Itoa(len(l.Missing))}
		if l.NothingMissing {
			t.Rows = append(t.Rows, append(head, "", copacker.NothingMissing, "", "", l.At, ""))
		}
		for _, m := range l.Missing {
			t.Rows = append(t.Rows, append(head[:len(head):len(head)], m.What, m.Text, string(m.Side), m.Key, string(m.At), string(m.Finding)))
		}
	}
	return t
}
