package spec

import (
	"regexp"
	"strings"

	"posset/beverage"
	"posset/beverage/quantity"
)

var limitForm = regexp.MustCompile(`^(\pL[\pL -]*?)\s*(>=|<=|≥|≤)\s*(\S.*)$`)

const limitForms = `"retort temperature >= 121.1 C" or "come-up time <= 8 min"`

// ParseLimit reads a critical limit of a scheduled process on one line, such as
// "retort temperature >= 121.1 C". What it is about and its unit are those of a
// [[process.critical]] table. The error is a *quantity.Error.
func ParseLimit(text string) (beverage.CriticalLimit, error) {
	parts := limitForm.FindStringSubmatch(strings.Join(strings.Fields(text), " "))
	if len(text) > longestName || parts == nil {
		return beverage.CriticalLimit{}, &quantity.Error{Text: text, Is: "is not a limit", Write: "write " + limitForms}
	}
	s, ok := subjectOf(beverage.Say(beverage.LimitSubject(parts[1])))
	if !ok || s.dim == quantity.None || s.dim == quantity.Pressure {
		return beverage.CriticalLimit{}, &quantity.Error{Text: text, Is: "is about " + quantity.Quote(parts[1]) + ", which no line like this takes", Write: "write " + limitForms}
	}
	q, err := quantity.ParseLike(parts[3], s.dim.Example(), s.dim)
	if err != nil {
		return beverage.CriticalLimit{}, err
	}
	if !s.within.holds(q.Value) {
		return beverage.CriticalLimit{}, &quantity.Error{Text: text, Is: "is out of range", Write: "write " + parts[1] + " " + s.within.String()}
	}
	c := beverage.CriticalLimit{What: s.what}
	if parts[2] == ">=" || parts[2] == "≥" {
		c.AtLeast, c.Text = beverage.Say(q.Value), boundsText(parts[3], "")
	} else {
		c.AtMost, c.Text = beverage.Say(q.Value), boundsText("", parts[3])
	}
	return c, nil
}
