package spec

import (
	"regexp"
	"strings"

	"posset/beverage"
	"posset/beverage/quantity"
)

// The bases that a name alone stands for: F0 is at 121.1 °C with z 10 C°, and a
// pasteurization unit (PU) at 60 °C with z 7 C°, and nothing else (trade
// definitions; basis: memory).
const (
	f0TrefC, f0ZC = 121.1, 10
	puTrefC, puZC = 60, 7
)

// Ranges of the figures of a target.
const (
	mostMinutes = 1e6
	mostLogs    = 100
	mostZC      = 100
)

const targetForms = `"F0 6 min", "F 12 min at 93.3 C, z 8.9 C", "15 PU", "15 s at 72 C" or "5 log Alicyclobacillus acidoterrestris"`

var (
	f0Form      = regexp.MustCompile(`^F0\s+(.+)$`)
	fForm       = regexp.MustCompile(`^F\s+(.+?)\s+at\s+(.+?),?\s+z\s+(.+)$`)
	puForm      = regexp.MustCompile(`^(\S+)\s*PU$`)
	stayForm    = regexp.MustCompile(`^([^F]\S*\s*\S+)\s+at\s+(.+)$`)
	logForm     = regexp.MustCompile(`^(\S+?)[\s-]log\s+(\pL.*)$`)
	figureFirst = regexp.MustCompile(`^\s*[+-]?[0-9.,]+\s*\pL*\s*$`)
)

// ParseTarget reads a target in one of the five forms:
//
//	F0 6 min                              minutes at 121.1 °C, z 10 C°
//	F 12 min at 93.3 C, z 8.9 C           minutes at the basis written
//	15 PU                                 minutes at 60 °C, z 7 C°
//	15 s at 72 C                          one unbroken stay at or above
//	5 log Alicyclobacillus acidoterrestris  decimal reductions
//
// The error is a *quantity.Error.
func ParseTarget(text string) (beverage.Target, error) {
	plain := strings.Join(strings.Fields(text), " ")
	t := beverage.Target{Text: plain}
	var err error
	switch {
	case len(text) > longestName || strings.ContainsFunc(text, unprintable):
		err = notTarget(text)
	case f0Form.MatchString(plain):
		err = atBasis(&t, f0Form.FindStringSubmatch(plain)[1], f0TrefC, f0ZC)
	case fForm.MatchString(plain):
		err = atWritten(&t, fForm.FindStringSubmatch(plain))
	case puForm.MatchString(plain):
		err = atBasis(&t, puForm.FindStringSubmatch(plain)[1]+" min", puTrefC, puZC)
	case logForm.MatchString(plain):
		err = reductions(&t, logForm.FindStringSubmatch(plain))
	case stayForm.MatchString(plain):
		err = stay(&t, stayForm.FindStringSubmatch(plain))
	default:
		err = notTarget(text)
	}
	if err != nil {
		return beverage.Target{}, err
	}
	return t, nil
}

// ParseTargetAt is ParseTarget that also takes a time alone, "6 min", on the
// basis given in °C and C°.
func ParseTargetAt(text string, trefC, zC float64) (beverage.Target, error) {
	t, err := ParseTarget(text)
	if err == nil || !figureFirst.MatchString(text) || strings.Contains(text, " at ") || len(text) > longestName {
		return t, err
	}
	t = beverage.Target{Text: strings.Join(strings.Fields(text), " ")}
	if err = atBasis(&t, t.Text, trefC, zC); err != nil {
		return beverage.Target{}, alsoAlone(err)
	}
	return t, nil
}

// alsoAlone adds the time alone to the forms that an error offers.
func alsoAlone(err error) error {
	if e, ok := err.(*quantity.Error); ok {
		e.Write = strings.Replace(e.Write, targetForms, `"6 min" or `+targetForms, 1)
	}
	return err
}

func notTarget(text string) error {
	return &quantity.Error{Text: text, Is: "is not a target", Write: "write " + targetForms}
}

func atBasis(t *beverage.Target, minutes string, trefC, zC float64) error {
	seconds, err := quantity.ParseDuration(minutes)
	if err != nil {
		return inTarget(t.Text, err)
	}
	t.Kind, t.Minutes, t.TrefC, t.ZC = beverage.TargetMinutes, seconds/60, trefC, zC
	if t.Minutes <= 0 || t.Minutes > mostMinutes {
		return &quantity.Error{Text: t.Text, Is: "has a time out of range", Write: "write a time above 0"}
	}
	return nil
}

func atWritten(t *beverage.Target, parts []string) error {
	trefC, err := quantity.ParseTemperature(parts[2])
	if err != nil {
		return inTarget(t.Text, err)
	}
	zC, err := quantity.ParseTemperatureDifference(parts[3])
	if err != nil {
		return inTarget(t.Text, err)
	}
	if zC <= 0 || zC > mostZC || !processRange.holds(trefC) {
		return &quantity.Error{Text: t.Text, Is: "has a basis out of range", Write: "write a temperature " + processRange.String() + ", and a z above 0"}
	}
	return atBasis(t, parts[1], trefC, zC)
}

func stay(t *beverage.Target, parts []string) error {
	seconds, err := quantity.ParseDuration(parts[1])
	if err != nil {
		return inTarget(t.Text, err)
	}
	tC, err := quantity.ParseTemperature(parts[2])
	if err != nil {
		return inTarget(t.Text, err)
	}
	if !stayRange.holds(seconds) || !processRange.holds(tC) {
		return &quantity.Error{Text: t.Text, Is: "has a time or temperature out of range", Write: "write a time above 0 and a temperature " + processRange.String()}
	}
	t.Kind, t.StayS, t.TrefC = beverage.TargetStay, seconds, tC
	return nil
}

func reductions(t *beverage.Target, parts []string) error {
	q, err := quantity.ParseAs(parts[1]+" %", quantity.Fraction)
	if err != nil || q.Value <= 0 || q.Value > mostLogs {
		return &quantity.Error{Text: t.Text, Is: "has no number of decimal reductions that can be", Write: `write one above 0, such as "5 log ` + parts[2] + `"`}
	}
	t.Kind, t.Logs, t.Organism = beverage.TargetReductions, q.Value, parts[2]
	return nil
}

// inTarget says which part of a target is wrong.
func inTarget(text string, err error) error {
	if e, ok := err.(*quantity.Error); ok {
		return &quantity.Error{Text: text, Is: "is not a target: " + quantity.Quote(e.Text) + " " + e.Is, Write: e.Write + "; a target is written " + targetForms}
	}
	return err
}
