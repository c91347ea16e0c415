package report

import "posset/beverage"

// heatingSheet has one row a container, one for the worst joined, and one for
// each record that is unusable.
func heatingSheet(r *beverage.HeatingResult, u Units) Table {
	t := Table{Columns: columns("file", "container", u.heading("initial", temperature), "fh_minutes", "fh_low", "fh_high", "jh", "jh_low", "jh_high",
		"broken", "break_minutes", "f2_minutes", "fc_minutes", "jc", "straight_from_minutes", "straight_to_minutes", "readings", "r2",
		"ball_minutes", "general_minutes", "ball_less_general_minutes", "faults", "error")}
	for _, l := range r.Logs {
		if l.Error != nil {
			t.Rows = append(t.Rows, sheetError(len(t.Columns), l.File, "", *l.Error))
		}
	}
	for _, c := range r.Containers {
		if c.Error != nil {
			t.Rows = append(t.Rows, sheetError(len(t.Columns), c.File, c.Name, *c.Error))
			continue
		}
		t.Rows = append(t.Rows, containerRow(c, u))
	}
	t.Rows = append(t.Rows, worstRow(r, u))
	return t
}

func sheetError(cells int, file, name, text string) []string {
	row := make([]string, cells)
	row[0], row[1], row[cells-1] = file, name, text
	return row
}

func containerRow(c beverage.HeatingContainer, u Units) []string {
	h := c.Heating
	readings, diff := float64(h.Readings), c.Ball.CountMinutes-c.General.CountMinutes
	return []string{c.File, c.Name, numeral(temperature.in(u).of(c.InitialC)), numeral(c.FhMinutes), numeral(&h.FLowMinutes), numeral(&h.FHighMinutes),
		numeral(c.Jh), numeral(&h.JLow), numeral(&h.JHigh), yesNo(c.Broken), numeral(c.BreakMinutes), numeral(c.F2Minutes), numeral(c.FcMinutes), numeral(c.Jc),
		numeral(&h.FromMinutes), numeral(&h.ToMinutes), numeral(&readings), numeral(&h.R2),
		numeral(&c.Ball.CountMinutes), numeral(&c.General.CountMinutes), numeral(&diff), faultKinds(c.Faults), ""}
}

func worstRow(r *beverage.HeatingResult, u Units) []string {
	w := r.Worst
	return []string{"", "worst of all", numeral(temperature.in(u).of(&w.InitialC)), numeral(&w.FhMinutes), "", "", numeral(&w.Jh), "", "",
		yesNo(w.Broken), "", numeral(w.F2Minutes), numeral(w.FcMinutes), numeral(w.Jc), "", "", "", "",
		numeral(&r.BallMinutes), numeral(&r.GeneralMinutes), numeral(&r.MoreByBallMin), "", ""}
}

func yesNo(b bool) string {
	if b {
		return "yes"
	}
	return "no"
}
