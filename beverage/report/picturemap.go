package report

import (
	"posset/beverage"
	"posset/beverage/report/chart"
)

// mapPicture is the map as cells over both axes, with the drink in it.
func mapPicture(m *beverage.ProteinMap, y rows) Picture {
	half := m.Y.Step / 2
	low, high := m.Y.Values[0]-half, m.Y.Values[len(m.Y.Values)-1]+half
	panel := chart.Panel{Y: chart.Axis{Title: y.title, Low: y.of(low), High: y.of(high)}, Height: cellHigh * float64(len(m.Y.Values)), Field: mapField(m, y)}
	panel.Curves, panel.Marks = drinkPlace(m, y)
	return Picture{Data: mapTable(m, y), Told: true, Chart: chart.Chart{Title: "Protein findings over pH and " + m.Y.Name,
		About:  mapAbout(m) + " Letters, marks and hatching tell what the colours tell.",
		X:      chart.Axis{Title: "pH", Low: m.X.Values[0] - m.X.Step/2, High: m.X.Values[len(m.X.Values)-1] + m.X.Step/2},
		Panels: []chart.Panel{panel, looksPanel(m)}}}
}

// cellHigh is the height of a cell, for a mark over two rows of letters.
const cellHigh = 36.0

func mapField(m *beverage.ProteinMap, y rows) *chart.Field {
	f := &chart.Field{XStep: m.X.Step, YStep: y.of(m.Y.Step) - y.of(0), Tones: toneNames, Hatched: untoldName}
	for _, c := range m.Cells {
		cell := chart.Cell{X: c.X, Y: y.of(c.Y), Hatched: len(c.CannotTell) > 0}
		if c.Level != nil {
			cell.Tone = levelTones[*c.Level]
			grave, rest := cellLetters(m, c)
			cell.Mark, cell.Letters = cellMark(c), grave+rest
		}
		f.Cells = append(f.Cells, cell)
	}
	for _, s := range m.Signs {
		f.Signs = append(f.Signs, chart.Mark{Letter: s.Letter, Name: s.ID + ": " + s.Title})
	}
	return f
}

// drinkPlace is the pH of the drink, end to end, with its middle marked.
func drinkPlace(m *beverage.ProteinMap, y rows) ([]chart.Curve, []chart.Mark) {
	p := m.Drink
	if p.X == nil || p.XLow == nil || p.XHigh == nil || p.Y == nil {
		return nil, nil
	}
	at := y.of(*p.Y)
	span := chart.Curve{Name: "the drink, its pH from " + decimal(down(*p.XLow, 2), 2) + " to " + decimal(up(*p.XHigh, 2), 2), Style: plainStyle,
		Points: []chart.Point{{X: *p.XLow, Y: at}, {X: *p.XHigh, Y: at}}}
	return []chart.Curve{span}, []chart.Mark{{Letter: "drink", X: *p.X, Y: at}}
}

// looksPanel is how the main protein alone looks along pH, in runs.
func looksPanel(m *beverage.ProteinMap) chart.Panel {
	wide := len(m.X.Values)
	row := m.Cells[max(0, nearest(m))/wide*wide:][:wide]
	lane := chart.Lane{Label: "looks"}
	for i := 0; i < wide; {
		j := i
		for j < wide && row[j].Looks == row[i].Looks {
			j++
		}
		from, to := row[i].X-m.X.Step/2, row[j-1].X+m.X.Step/2
		if hatch, told := looksHatches[row[i].Looks]; told {
			lane.Spans = append(lane.Spans, chart.Span{Name: "looks: " + row[i].Looks, Hatch: hatch, From: from, To: to})
		}
		if j-i >= leastRun {
			lane.Marks = append(lane.Marks, chart.Mark{Letter: row[i].Looks, X: (from + to) / 2})
		}
		i = j
	}
	return chart.Panel{Y: chart.Axis{Title: "after heating, by what is published of the main protein alone"}, Lanes: []chart.Lane{lane}}
}

// leastRun is how many cells have room for a word.
const leastRun = 4

var looksHatches = map[string]int{"clear": 0, "depends": 1, "cloudy": 2, "never clear": 2}
