package report

import (
	"strconv"
	"strings"

	"posset/beverage"
)

// Verify is the table of published check values, recomputed.
func Verify(r *beverage.VerifyResult, u Units) Doc {
	d := Doc{Title: "Published values, recomputed on this machine", Headline: verifyHeadline(r), Tool: r.Tool, Cautions: []string{verifyCaution}}
	d.add("Out of tolerance", outTable(r.Checks))
	var within []beverage.Verified
	for _, v := range r.Checks {
		if v.Holds {
			within = append(within, v)
		}
	}
	for _, part := range firsts(within, partOf) {
		d.add("Within tolerance: "+part, bySource(within, part))
	}
	d.add("In full", Para("The conditions of each check and the reason of each allowed difference: posset verify --format csv"))
	d.Sheet = verifySheet(r.Checks)
	return d
}

// partOf is what a check is about, the first word of its id.
func partOf(v beverage.Verified) string {
	part, _, _ := strings.Cut(v.ID, "/")
	return part
}

func verifySource(v beverage.Verified) string { return join(", ", v.Source, string(v.Basis)) }

// firsts are the distinct keys in the order in which they first stand.
func firsts(vs []beverage.Verified, key func(beverage.Verified) string) []string {
	var out []string
	seen := map[string]bool{}
	for _, v := range vs {
		if k := key(v); !seen[k] {
			seen[k] = true
			out = append(out, k)
		}
	}
	return out
}

// bySource has a line a check, those of one source under it.
func bySource(checks []beverage.Verified, part string) Table {
	t := Table{Columns: numbers(columns("check", "published", "ours", "allowed"), 1, 4)}
	of := map[string][]beverage.Verified{}
	var mine []beverage.Verified
	for _, v := range checks {
		if partOf(v) == part {
			mine = append(mine, v)
			of[verifySource(v)] = append(of[verifySource(v)], v)
		}
	}
	for _, source := range firsts(mine, verifySource) {
		t.Heads = append(t.Heads, Head{len(t.Rows), source})
		for _, v := range of[source] {
			t.Rows = append(t.Rows, []string{strings.TrimPrefix(v.ID, part+"/"), significant(v.Published), figureOrNone(v.Ours), significant(v.Allowed)})
		}
	}
	return t
}

const verifyCaution = "That a model gives its published values says nothing about a drink; a process authority decides."

func verifyHeadline(r *beverage.VerifyResult) string {
	return counted(len(r.Checks), "published value") + " recomputed, " + strconv.Itoa(r.Out) + " out of tolerance"
}

func outTable(checks []beverage.Verified) Table {
	t := Table{Columns: numbers(columns("check", "published", "ours", "allowed", "condition", "source"), 1, 4)}
	for _, v := range checks {
		if !v.Holds {
			t.Rows = append(t.Rows, []string{v.ID, significant(v.Published), figureOrNone(v.Ours), significant(v.Allowed), orDash(v.Condition), verifySource(v)})
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
