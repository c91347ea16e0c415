package report

import (
	"fmt"
	"strconv"

	"posset/beverage"
)

// Heating is what heat-penetration tests say about a process.
func Heating(r *beverage.HeatingResult, u Units) Doc {
	d := Doc{Title: "Heat penetration", Headline: heatingHeadline(r), Tool: r.Tool, Cautions: r.Cautions}
	d.add("Process asked for", heatingAsked(r, u))
	d.add("Process time at the retort temperature", heatingAnswer(r), lengthTable(r.Containers, u), Para(lengthMeans))
	d.add("Worst of all containers", worstFigures(r.Worst, u))
	d.add("Containers", heatingErrors(r), factorTable(r.Containers, u))
	d.add("Straight parts that the factors were read from", straightTable(r.Containers, u), Para("n readings each; f and j with their 95 % interval. Chosen as "+r.Criterion))
	d.add("Medium", mediumTable(r.Logs, u))
	d.add("Mind", noteItems(r.Notes))
	d.add("Faults of the records", containerFaults(r.Containers))
	for _, l := range r.Logs {
		d.Inputs = append(d.Inputs, beverage.Input{File: l.File, SHA256: l.SHA256})
	}
	d.Sheet = heatingSheet(r, u)
	return d
}

const lengthMeans = `minutes at the retort temperature once the come-up is over, each for the cold spot alone, with the tolerance taken off both temperatures; a time is rounded up. The formula joins the worst figures of all containers in one; the general method moves each container's own readings. Where they differ the longer one counts`

func heatingHeadline(r *beverage.HeatingResult) string {
	return fmt.Sprintf("%s: %s min by what was tested, of %s; %s", r.Target, upTo(r.CountMinutes), counted(fitted(r.Containers), "container"), NotARelease)
}

func fitted(cs []beverage.HeatingContainer) int {
	n := 0
	for _, c := range cs {
		if c.Error == nil {
			n++
		}
	}
	return n
}

// upTo prints a time that must not read as shorter than it is.
func upTo(v float64) string {
	d := minutes.metric.decimals
	return fixed(up(v, d), d)
}

func heatingAsked(r *beverage.HeatingResult, u Units) Figures {
	target := Figure{Name: "Target", Words: r.Target}
	fs := Figures{target, u.figure("Target on its basis", minutes, &r.TargetMinutes), u.figure("Reference temperature", temperature, &r.TrefC), u.figure("z", difference, &r.ZC),
		u.figure("Retort temperature, lowest", temperature, &r.RetortC), u.figure("Initial temperature, lowest", temperature, &r.InitialC),
		u.figure("Tolerance taken off both", difference, &r.ToleranceC), u.figure("Cooling medium, coldest", temperature, r.CoolingC),
		u.figure("Come-up of the plant, shortest", minutes, r.ComeUpMin)}
	return fs
}

func heatingAnswer(r *beverage.HeatingResult) Figures {
	figure := func(name, note string, v *float64) Figure {
		f := Figure{Name: name, Words: "not known", Note: note}
		if v != nil {
			f.Words = upTo(*v) + " min"
		}
		return f
	}
	return Figures{
		figure("Ball's formula, worst joined", "", &r.BallMinutes),
		figure("General method, slowest", r.Worst.SlowestByGM, &r.GeneralMinutes),
		{Name: "Formula less general", Words: fixed(r.MoreByBallMin, minutes.metric.decimals) + " min"},
		figure("Longer, which counts", "a process authority sets the process", &r.CountMinutes),
		figure("Without any tolerance", "for comparison only", r.AtItsWordMinutes),
	}
}

func lengthTable(cs []beverage.HeatingContainer, u Units) Table {
	t := Table{Columns: numbers(columns("container", "Ball, min", "no cooling, min", "general, min", "no cooling, min", "Ball less general, min", u.heading("end of heating", temperature)), 1, 7)}
	for _, c := range cs {
		if c.Ball == nil || c.General == nil {
			continue
		}
		t.Rows = append(t.Rows, []string{c.Name, upTo(c.Ball.CountMinutes), upTo(c.Ball.HeatingOnlyMinutes), upTo(c.General.CountMinutes),
			upTo(c.General.HeatingOnlyMinutes), fixed(c.Ball.CountMinutes-c.General.CountMinutes, minutes.metric.decimals), u.cell(temperature, &c.General.EndC)})
	}
	return t
}

func worstFigures(w beverage.WorstContainer, u Units) Figures {
	of := func(f Figure, name string) Figure { f.Note = "of " + name; return f }
	fs := Figures{
		of(u.figure("fh", minutes, &w.FhMinutes), w.FhOf), of(u.figure("jh", plain, &w.Jh), w.JhOf),
		of(u.figure("Initial temperature, lowest", temperature, &w.InitialC), w.InitialOf),
		of(u.figure("Retort temperature, lowest", temperature, &w.RetortC), w.RetortOf),
		u.figure("fc counted", minutes, w.FcMinutes), u.figure("jc counted", plain, w.Jc),
	}
	if w.Broken {
		fs = append(fs, u.figure("f2, broken heating", minutes, w.F2Minutes))
	}
	return fs
}

func heatingErrors(r *beverage.HeatingResult) Items {
	var items Items
	for _, l := range r.Logs {
		if l.Error != nil {
			items = append(items, Item{Mark: "unusable", ID: l.File, Title: *l.Error})
		}
	}
	for _, c := range r.Containers {
		if c.Error != nil {
			items = append(items, Item{Mark: "left out", ID: c.File, Title: *c.Error})
		}
	}
	return items
}

func factorTable(cs []beverage.HeatingContainer, u Units) Table {
	t := Table{Columns: numbers(columns("container", u.heading("initial", temperature), "fh, min", "jh", "break, min", u.heading("break", temperature), "f2, min", "fc, min", "jc"), 1, 9)}
	for _, c := range cs {
		if c.Error != nil {
			continue
		}
		t.Rows = append(t.Rows, []string{containerName(c), u.cell(temperature, c.InitialC), u.cell(minutes, c.FhMinutes), u.cell(plain, c.Jh),
			u.cell(minutes, c.BreakMinutes), u.cell(temperature, c.BreakC), u.cell(minutes, c.F2Minutes), u.cell(minutes, c.FcMinutes), u.cell(plain, c.Jc)})
	}
	return t
}

func containerName(c beverage.HeatingContainer) string {
	if c.RoleBasis == assumedRole {
		return c.Name + " (" + assumedRole + ")"
	}
	return c.Name
}

// straightTable shows what each factor rests on: where the straight part runs,
// how well it fits, and the 95 % interval of its factors.
func straightTable(cs []beverage.HeatingContainer, u Units) Table {
	t := Table{Columns: numbers(columns("container", "part", "span, min", u.heading("span", difference), "n", "f 95 %, min", "j 95 %", "R2", u.heading("worst", difference)), 2, 9)}
	for _, c := range cs {
		for _, p := range []struct {
			name string
			line *beverage.StraightPart
		}{{"heating", c.Heating}, {"second", c.Second}, {"cooling", c.Cooling}} {
			if p.line != nil {
				t.Rows = append(t.Rows, straightRow(c.Name, p.name, *p.line, u))
			}
		}
	}
	return t
}

func straightRow(container, part string, l beverage.StraightPart, u Units) []string {
	return []string{container, part, fixed(l.FromMinutes, 1) + " to " + fixed(l.ToMinutes, 1), u.cell(difference, &l.FromC) + " to " + u.cell(difference, &l.ToC),
		strconv.Itoa(l.Readings), between(l.FLowMinutes, l.FHighMinutes), between(l.JLow, l.JHigh), fixed(l.R2, 4), u.cell(difference, &l.WorstC)}
}

func between(low, high float64) string {
	d := plain.metric.decimals
	return decimal(down(low, d), d) + " to " + decimal(up(high, d), d)
}

func mediumTable(logs []beverage.HeatingLog, u Units) Table {
	t := Table{Columns: numbers(columns("log", "column", u.heading("hold", temperature), u.heading("lowest in the hold", temperature), "steam on, min", "come-up, min", "cooling at, min", u.heading("cooling", temperature)), 2, 8)}
	minute := func(s *float64) *float64 {
		if s == nil {
			return nil
		}
		m := *s / 60
		return &m
	}
	for _, l := range logs {
		if l.Error == nil {
			t.Rows = append(t.Rows, []string{l.File, l.Medium, u.cell(temperature, l.HoldC), u.cell(temperature, l.LowestC), u.cell(minutes, minute(l.SteamOnS)),
				u.cell(minutes, l.ComeUpMinutes), u.cell(minutes, minute(l.CoolAtS)), u.cell(temperature, l.CoolingC)})
		}
	}
	return t
}

func noteItems(notes []string) Items {
	var items Items
	for _, n := range notes {
		items = append(items, Item{Title: n})
	}
	return items
}

func containerFaults(cs []beverage.HeatingContainer) Table {
	var logs []beverage.LogResult
	for _, c := range cs {
		logs = append(logs, beverage.LogResult{File: c.File, Probes: []beverage.ProbeResult{{Name: c.Name, Faults: c.Faults}}})
	}
	return faultTable(logs)
}
