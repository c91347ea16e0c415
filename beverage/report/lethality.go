package report

import (
	"fmt"
	"strconv"
	"strings"

	"posset/beverage"
)

// Lethality is what logs alone show.
func Lethality(r *beverage.LethalityResult, u Units) Doc {
	d := Doc{Title: "Lethality of " + counted(len(r.Logs), "log"), Headline: logsHeadline(r), Tool: r.Tool, Cautions: r.Cautions}
	d.add("Basis", basisFigures(r, u))
	d.add("Logs", logErrors(r.Logs), probeTable(r.Logs, u), atMostItems(r.Logs, u), assumedNote(r.Logs), Para(creditedMeans))
	d.addCourse(r.Logs, u)
	d.add("Further bases", moreTable(r.Logs, u), furtherNote(r.Logs))
	d.add("Faults, counted against the process", faultTable(r.Logs))
	d.addDepartures(departuresOf(r.Logs), r.Limits, r.Dispositions, u)
	d.addTurning(r.Logs)
	d.addEvidence(r.Logs)
	d.addUnderstood(r)
	d.addRecordPictures(r.Logs, u)
	d.addFiles(r.Logs)
	d.Sheet = logSheet(r, u)
	d.Further = []Further{faultSheet(r.Logs)}
	return d
}

// mostInputs is how many files stand at the head of a document.
const mostInputs = 8

// addFiles names the files with their hashes: at the head, or where there are
// too many for that as a table at the end.
func (d *Doc) addFiles(logs []beverage.LogResult) {
	t := Table{Columns: columns("file", "sha256")}
	for _, l := range logs {
		t.Rows = append(t.Rows, []string{l.File, orDash(l.SHA256)})
		if len(logs) <= mostInputs {
			d.Inputs = append(d.Inputs, beverage.Input{File: l.File, SHA256: l.SHA256})
		}
	}
	if len(d.Inputs) == 0 {
		d.add("Files", t)
	}
}

const creditedMeans = `"at its word" takes the record as it stands; "credited" is what is left after the sensor's tolerance and every fault are counted against the process, and it alone can meet a target`

// furtherNote is empty where there are no further bases.
func furtherNote(logs []beverage.LogResult) Para {
	if len(furtherNames(logs)) == 0 {
		return ""
	}
	return "an index of damage, such as C0 or C*, is read at its word: what is credited of it is no upper end"
}

// logsHeadline counts the outcomes, the worst first.
func logsHeadline(r *beverage.LethalityResult) string {
	counts := map[string]int{}
	for _, l := range r.Logs {
		counts[logWord(l)]++
	}
	var parts []string
	for _, w := range []string{"unusable", beverage.FallsShort.String(), beverage.CannotTell.String(), beverage.Meets.String(), noTarget} {
		if n := counts[w]; n > 0 {
			parts = append(parts, fmt.Sprintf("%d %s", n, w))
		}
	}
	s := counted(len(r.Logs), "log") + ": " + strings.Join(parts, ", ")
	if counts[beverage.Meets.String()] > 0 {
		s += " (" + besideMeets + ")"
	}
	return s + departed(r.Logs) + "; " + NotARelease
}

const noTarget = "without a target"

func logWord(l beverage.LogResult) string {
	switch {
	case l.Error != nil:
		return "unusable"
	case l.Outcome == nil:
		return noTarget
	}
	return l.Outcome.String()
}

func basisFigures(r *beverage.LethalityResult, u Units) Figures {
	fs := Figures{
		u.figure("Reference temperature", temperature, &r.TrefC),
		u.figure("z", difference, &r.ZC),
		u.figure("Sensor tolerance counted", difference, &r.ToleranceC),
	}
	named := r.Basis != "" && r.Basis != r.Target
	if named {
		fs = append(fs, Figure{Name: "Basis", Words: r.Basis})
	}
	if r.Target == "" && r.TargetMinutes == nil {
		return append(fs, Figure{Name: "Target", Words: "none stated"})
	}
	target := u.figure("Target", minutes, r.TargetMinutes)
	if r.Target == "" {
		return append(fs, target)
	}
	fs = append(fs, Figure{Name: "Target", Words: r.Target})
	if named && r.TargetMinutes != nil {
		target.Name = "Target on this basis"
		fs = append(fs, target)
	}
	return fs
}

// logSheet has one row a probe, and one for each log that is unusable.
func logSheet(r *beverage.LethalityResult, u Units) Table {
	t := Table{Columns: columns("file", "sha256", "retort", "batch", "probe", "role", "role_basis", "samples", "start", "end",
		u.heading("coldest", temperature), u.heading("hottest", temperature), u.heading("reference", temperature), u.heading("z", difference),
		"lethality_minutes", "credited_minutes", "credited_before_cooling_minutes", "target_minutes", "outcome",
		"credited_heating_minutes", "credited_hold_minutes", "credited_cooling_minutes", "peak_s", "come_up_s", "hold_from_s", "hold_s")}
	further := furtherNames(r.Logs)
	for _, name := range further {
		t.Columns = append(t.Columns, columns(name+", at its word", name+", credited")...)
	}
	t.Columns = append(t.Columns, columns("faults", "error")...)
	for _, l := range r.Logs {
		if l.Error != nil || len(l.Probes) == 0 {
			t.Rows = append(t.Rows, unusableRow(l, len(t.Columns)))
		}
		for _, p := range l.Probes {
			t.Rows = append(t.Rows, probeRow(r, l, p, further, u))
		}
	}
	return t
}

func unusableRow(l beverage.LogResult, cells int) []string {
	row := make([]string, cells)
	copy(row, []string{l.File, l.SHA256, l.Retort, l.Batch})
	if l.Error != nil {
		row[cells-1] = *l.Error
	}
	return row
}

func probeRow(r *beverage.LethalityResult, l beverage.LogResult, p beverage.ProbeResult, further []string, u Units) []string {
	t, z := temperature.in(u), difference.in(u)
	row := []string{l.File, l.SHA256, l.Retort, l.Batch, p.Name, p.Role, p.RoleBasis, strconv.Itoa(p.Samples), p.Start, p.End,
		numeral(t.of(p.MinC)), numeral(t.of(p.MaxC)), numeral(t.of(&r.TrefC)), numeral(z.of(&r.ZC)),
		numeral(p.LethalityMinutes), numeral(p.CreditedMinutes), numeral(p.CreditedBeforeCoolingMn), numeral(r.TargetMinutes),
		outcomeText(p.Outcome), numeral(p.CreditedHeatingMins), numeral(p.CreditedHoldMinutes), numeral(p.CreditedCoolingMins), numeral(p.PeakS)}
	if h := p.Hold; h != nil {
		row = append(row, numeral(h.ComeUpS), numeral(&h.StartS), numeral(&h.LengthS))
	} else {
		row = append(row, "", "", "")
	}
	for i := range further {
		if i >= len(p.More) {
			row = append(row, "", "")
			continue
		}
		row = append(row, numeral(p.More[i].LethalityMinutes), numeral(p.More[i].CreditedMinutes))
	}
	return append(row, faultKinds(p.Faults), "")
}

// furtherNames are the further bases, the same for every probe that has any.
func furtherNames(logs []beverage.LogResult) (names []string) {
	for _, l := range logs {
		for _, p := range l.Probes {
			if len(p.More) <= len(names) {
				continue
			}
			names = names[:0]
			for _, b := range p.More {
				names = append(names, b.Basis+" minutes")
			}
		}
	}
	return names
}

func outcomeText(o *beverage.Outcome) string {
	if o == nil {
		return ""
	}
	return o.String()
}

// faultKinds lists each kind once with how often it stands: "gap 2, spike 1".
func faultKinds(faults []beverage.FaultResult) string {
	counts := map[string]int{}
	var kinds []string
	for _, f := range faults {
		if counts[f.Kind] == 0 {
			kinds = append(kinds, f.Kind)
		}
		counts[f.Kind]++
	}
	for i, k := range kinds {
		kinds[i] = fmt.Sprintf("%s %d", k, counts[k])
	}
	return strings.Join(kinds, ", ")
}
