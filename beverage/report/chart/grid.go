package chart

import (
	"math"
	"strings"
)

// grid is a field's cells by column and row.
type grid struct {
	f     *Field
	cells []Cell
	at    map[[2]int]int
	of    [][2]int // column and row of each cell
}

func newGrid(f *Field, cells []Cell) grid {
	g := grid{f: f, cells: cells, at: map[[2]int]int{}}
	for i, c := range cells {
		place := [2]int{int(math.Round(c.X / f.XStep)), int(math.Round(c.Y / f.YStep))}
		g.at[place] = i
		g.of = append(g.of, place)
	}
	return g
}

// alike tells whether the cell beside i is told as i is.
func (g grid) alike(i int, dx, dy int) (beside int, ok bool) {
	beside, there := g.at[[2]int{g.of[i][0] + dx, g.of[i][1] + dy}]
	if !there {
		return -1, false
	}
	a, b := g.cells[i], g.cells[beside]
	return beside, a.Tone == b.Tone && a.Hatched == b.Hatched && a.Mark == b.Mark && a.Letters == b.Letters
}

// edges joins what draw makes of each side between cells that are not told alike.
func (g grid) edges(draw func(middle, from, to [2]float64) string) string {
	var path strings.Builder
	for i, c := range g.cells {
		middle := [2]float64{c.X, c.Y}
		if beside, same := g.alike(i, 1, 0); beside >= 0 && !same {
			path.WriteString(draw(middle, [2]float64{0.5, -0.5}, [2]float64{0.5, 0.5}))
		}
		if beside, same := g.alike(i, 0, 1); beside >= 0 && !same {
			path.WriteString(draw(middle, [2]float64{-0.5, 0.5}, [2]float64{0.5, 0.5}))
		}
	}
	return path.String()
}

// region is cells that hang together and are told alike: where its words stand,
// and over how many cells.
type region struct {
	cell Cell
	x, y float64
	run  float64
}

func (g grid) regions() []region {
	var list []region
	seen := make([]bool, len(g.cells))
	for i := range g.cells {
		if !seen[i] {
			list = append(list, g.widest(g.flood(i, seen)))
		}
	}
	return list
}

// flood gathers the cells that hang together with cell i.
func (g grid) flood(i int, seen []bool) []int {
	seen[i] = true
	cells := []int{i}
	for k := 0; k < len(cells); k++ {
		for _, step := range [][2]int{{1, 0}, {-1, 0}, {0, 1}, {0, -1}} {
			if j, same := g.alike(cells[k], step[0], step[1]); same && !seen[j] {
				seen[j] = true
				cells = append(cells, j)
			}
		}
	}
	return cells
}

// widest is the longest row of a region, of equal ones that nearest to its middle.
func (g grid) widest(cells []int) region {
	middle := 0.0
	for _, i := range cells {
		middle += float64(g.of[i][1]) / float64(len(cells))
	}
	best, bestRun, bestOff := cells[0], 0, math.Inf(1)
	for _, i := range cells {
		run, off := g.run(i), math.Abs(float64(g.of[i][1])-middle)
		if run > bestRun || run == bestRun && off < bestOff {
			best, bestRun, bestOff = i, run, off
		}
	}
	c := g.cells[best]
	return region{cell: c, x: c.X + g.f.XStep*float64(bestRun-1)/2, y: c.Y, run: float64(bestRun)}
}

// run counts the cells alike from i to the right, i being the first of them; 0
// where it is not.
func (g grid) run(i int) int {
	if _, same := g.alike(i, -1, 0); same {
		return 0
	}
	n := 1
	for {
		next, same := g.alike(i, 1, 0)
		if !same {
			return n
		}
		i, n = next, n+1
	}
}
