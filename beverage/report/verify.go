package report

import (
	"strconv"

	"posset/beverage"
)

// Verify is the table of published check values, recomputed.
func Verify(r *beverage.VerifyResult, u Units) Doc {
	d := Doc{Title: "Published values, recomputed on this machine", Headline: verifyHeadline(r), Tool: r.Tool, Cautions: []string{verifyCaution}}
	d.add("Out of tolerance", verifyTable(r.Checks, func(v beverage.Verified) bool { return !v.Holds }))
	d.add("Within tolerance", verifyTable(r.Checks, func(v beverage.Verified) bool { return v.Holds }))
	d.Sheet = verifySheet(r.Checks)
	return d
}

const verifyCaution = "That a model gives its published values says nothing about a drink; a process authority decides."

func verifyHeadline(r *beverage.VerifyResult) string {
	return counted(len(r.Checks), "published value") + " recomputed, " + strconv.Itoa(r.Out) + " out of tolerance"
}

func verifyTable(checks []beverage.Verified, want func(beverage.Verified) bool) Table {
	t := Table{Columns: numbers(columns("check", "published", "ours", "allowed", "condition", "source"), 1, 4)}
	for _, v := range checks {
		if want(v) {
			t.Rows = append(t.Rows, []string{v.ID, significant(v.Published), figureOrNone(v.Ours), significant(v.Allowed), orDash(v.Condition), join(", ", v.Source, string(v.Basis))})
		}
	}
	return t
}

func figureOrNone(v float64) string {
	if isFinite(v) {
		return significant(v)
	}
	return "none"
}

func verifySheet(checks []beverage.Verified) Table {
	t := Table{Columns: columns("id", "model", "condition", "published", "ours", "difference", "allowed_difference", "holds", "why_allowed", "source", "basis")}
	for _, v := range checks {
		t.Rows = append(t.Rows, []string{v.ID, v.Model, v.Condition, significant(v.Published), figureOrNone(v.Ours), figureOrNone(v.Difference),
			significant(v.Allowed), strconv.FormatBool(v.Holds), v.Why, v.Source, string(v.Basis)})
	}
	return t
}
