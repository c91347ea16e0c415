package main

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"posset/beverage"
	"posset/beverage/assess"
	"posset/beverage/facts"
	"posset/beverage/quantity"
	"posset/beverage/spec"
)

// What a log is held against unless said: the basis of F0 (trade definition,
// basis: memory), and the accuracy that 21 CFR 113.40 asks of a retort's
// thermometer, 1 °F, as 0.5 C°.
const (
	usualTrefC      = 121.1
	usualZC         = 10
	usualToleranceC = 0.5
)

type lethalityFlags struct {
	trefC, zC, toleranceC beverage.Given[float64]
	organism, target      string
	unit, dates, sheet    string
	roles, limits         []string
	filesFrom, evidence   string
	also, above           []string
	understood            bool
}

func (o *lethalityFlags) bind(f *pflag.FlagSet) {
	f.Var(&quantityFlag{at: &o.trefC, read: quantity.ParseTemperature, kind: "TEMPERATURE"}, "tref", "reference temperature (121.1 C unless said)")
	f.Var(&quantityFlag{at: &o.zC, read: quantity.ParseTemperatureDifference, kind: "DIFFERENCE"}, "z", "z value (10 C unless said)")
	f.StringVar(&o.organism, "organism", "", "`NAME` of an organism, for its own reference temperature and z")
	f.StringVar(&o.target, "target", "", "`TARGET`: \"6 min\", \"F0 6 min\", \"15 PU\", \"15 s at 72 C\", \"5 log NAME\"")
	f.Var(&quantityFlag{at: &o.toleranceC, read: quantity.ParseTemperatureDifference, kind: "DIFFERENCE"}, "tolerance", "sensor tolerance, taken off every reading (0.5 C unless said)")
	f.StringVar(&o.unit, "unit", "", "`C|F|K` of the readings, where the log does not tell; C also settles a doubt about °C")
	f.StringVar(&o.dates, "dates", "", "`dmy|mdy|ymd`: order of the dates, where the log does not tell")
	f.StringVar(&o.sheet, "sheet", "", "`SHEET` of a workbook")
	f.StringArrayVar(&o.roles, "role", nil, "`HEADING=ROLE` of a column: product, retort, reference, other or ignore; repeatable")
	f.StringArrayVar(&o.limits, "limit", nil, "`LIMIT` of the scheduled process: \"retort temperature >= 121.1 C\"; repeatable")
	f.StringArrayVar(&o.also, "also", nil, "`BASIS` to tell beside the first: F0, PU, C0, B*, C*, an organism, \"93.3 C, z 8.9 C\"; repeatable")
	f.StringArrayVar(&o.above, "above", nil, "`TEMPERATURE` of which the time at or above is wanted; repeatable")
	f.BoolVar(&o.understood, "understood", false, "tell what each file was taken for: form, times, unit, roles")
	f.StringVar(&o.evidence, "evidence", "", "`FILE` (.csv, .xlsx or .html) for every reading of one log with what it adds, to be worked out again by hand")
	f.StringVar(&o.filesFrom, "files-from", "", "`FILE` that names logs, one a line; - is standard input")
}

// options is what was asked, held against what can be.
func (o *lethalityFlags) options() (assess.LogOptions, error) {
	want := assess.LogOptions{Options: options(), TrefC: o.trefC.Or(usualTrefC), ZC: o.zC.Or(usualZC), Organism: o.organism,
		ToleranceC: o.toleranceC.Or(usualToleranceC), Sheet: o.sheet}
	if o.organism != "" && (o.trefC.Known || o.zC.Known) {
		return want, errors.New("--organism brings its own basis; leave out --tref and --z")
	}
	if want.ToleranceC < 0 {
		return want, errors.New("--tolerance: a tolerance is not negative; write 0.5C")
	}
	var err error
	if want.Unit, err = oneOf("--unit", strings.ToUpper(o.unit), "C", "F", "K"); err != nil {
		return want, err
	}
	if want.Dates, err = oneOf("--dates", strings.ToLower(o.dates), "dmy", "mdy", "ymd"); err != nil {
		return want, err
	}
	if want.Roles, err = rolesOf(o.roles); err != nil {
		return want, err
	}
	if want.Limits, err = limitsOf(o.limits); err != nil {
		return want, err
	}
	want.Also, want.Understood = o.also, o.understood
	for _, text := range o.above {
		c, err := quantity.ParseTemperature(text)
		if err != nil {
			return want, fmt.Errorf("--above: %w", err)
		}
		want.AboveC = append(want.AboveC, c)
	}
	return want, o.aim(&want)
}

func limitsOf(texts []string) ([]beverage.CriticalLimit, error) {
	var limits []beverage.CriticalLimit
	for _, text := range texts {
		l, err := spec.ParseLimit(text)
		if err != nil {
			return nil, fmt.Errorf("--limit: %w", err)
		}
		if !slices.Contains(facts.Recordable(), l.What) {
			return nil, fmt.Errorf("--limit: no log shows %s; put it into the spec as [[process.critical]] and run posset check", l.What)
		}
		limits = append(limits, l)
	}
	return limits, nil
}

// aim reads the target.
func (o *lethalityFlags) aim(want *assess.LogOptions) error {
	if o.target == "" {
		return nil
	}
	t, err := targetAt(o.target, o.trefC, o.zC)
	if err == nil {
		want.Target = &t
	}
	return err
}

// targetAt reads a target on the basis that was asked for beside it. A target
// that brings its own basis must not disagree with that.
func targetAt(text string, tref, z beverage.Given[float64]) (beverage.Target, error) {
	trefC, zC := tref.Or(usualTrefC), z.Or(usualZC)
	t, err := spec.ParseTargetAt(text, trefC, zC)
	if err != nil {
		return t, fmt.Errorf("--target: %w", err)
	}
	minutes := t.Kind == beverage.TargetMinutes
	if (tref.Known || z.Known) && !(minutes && t.TrefC == trefC && t.ZC == zC) {
		return t, fmt.Errorf("--target %s brings its own basis, and --tref or --z ask for another; leave one out", quantity.Quote(text))
	}
	return t, nil
}

func oneOf(flag, s string, words ...string) (string, error) {
	if s == "" {
		return "", nil
	}
	for _, w := range words {
		if s == w {
			return s, nil
		}
	}
	return "", fmt.Errorf("%s: %s is none of its words; write %s", flag, quantity.Quote(s), quantity.Either(words))
}

// rolesOf reads "Can 1=product"; the heading itself may hold a '='.
func rolesOf(pairs []string) (map[string]string, error) {
	roles := map[string]string{}
	for _, p := range pairs {
		i := strings.LastIndexByte(p, '=')
		if i <= 0 {
			return nil, fmt.Errorf(`--role: %s is no heading and role; write "Can 1=product"`, quantity.Quote(p))
		}
		heading := strings.TrimSpace(p[:i])
		role, err := oneOf("--role", strings.ToLower(strings.TrimSpace(p[i+1:])), "product", "retort", "reference", "other", "ignore")
		if err != nil {
			return nil, err
		}
		if was, ok := roles[heading]; ok && was != role {
			return nil, fmt.Errorf("--role: %s is given two roles, %s and %s", quantity.Quote(heading), was, role)
		}
		roles[heading] = role
	}
	return roles, nil
}
