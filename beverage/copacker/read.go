package copacker

import (
	"io"
	"slices"
	"strconv"

	"posset/beverage"
	"posset/beverage/quantity"
	"posset/beverage/spec"
)

// Read reads a file of lines; "-" reads stdin. The error is a *spec.Problems with
// every problem of the file.
func Read(path string, stdin io.Reader) (*File, error) {
	var in lineFile
	sha, err := spec.ReadTable(path, stdin, fileTable, &in)
	if err != nil {
		return nil, err
	}
	return fileOf(path, sha, in)
}

// Parse reads lines from a file's bytes; name is how messages call it.
func Parse(data []byte, name string) (*File, error) {
	var in lineFile
	if err := spec.ParseTable(data, name, fileTable, &in); err != nil {
		return nil, err
	}
	return fileOf(name, "", in)
}

func fileOf(name, sha string, in lineFile) (*File, error) {
	if len(in.lines) == 0 {
		return nil, &spec.Problems{File: name, List: []spec.Problem{{Place: beverage.Place{File: name}, Read: "has no [[line]] table", Help: "write [[line]], and under it name and plant; posset help lines lists every key"}}}
	}
	return &File{Name: name, SHA256: sha, Lines: in.lines}, nil
}

// addLine takes in a line that is told once.
func addLine(f *lineFile, l Line, at beverage.Place) []spec.Problem {
	l.Place = at
	f.lines = append(f.lines, l)
	first := slices.IndexFunc(f.lines, func(x Line) bool { return x.Name.V == l.Name.V && x.Plant.V == l.Plant.V })
	problems := crossed(l.Carbonation)
	if first < len(f.lines)-1 && l.Name.Known && l.Plant.Known {
		problems = append(problems, spec.Problem{Place: l.Name.Place, Read: quantity.Quote(l.Name.V) + " of this plant is told twice, first in line " + strconv.Itoa(f.lines[first].Place.Line), Help: "keep one of them, or give it another name"})
	}
	return problems
}

func addProcess(l *Line, p Process, at beverage.Place) []spec.Problem {
	p.Place = at
	l.Processes = append(l.Processes, p)
	return crossed(p.HoldC, p.HoldS, p.FillC, p.PackHoldS, p.FlowLPerH, p.BackKPa, p.PressureMPa)
}

func addPack(l *Line, p Pack, at beverage.Place) []spec.Problem {
	p.Place = at
	l.Packs = append(l.Packs, p)
	return crossed(p.FillML)
}

// crossed finds ranges whose ends stand the wrong way round.
func crossed(ranges ...Range) (problems []spec.Problem) {
	for _, r := range ranges {
		if r.AtLeast.Known && r.AtMost.Known && r.AtLeast.V > r.AtMost.V {
			problems = append(problems, spec.Problem{Place: r.AtMost.Place, Read: "is below at_least", Help: "write an at_most that is not below it"})
		}
	}
	return problems
}
