package web

import (
	"net/url"
	"regexp"
	"strings"

	"posset/cmd/posset/internal/web/tomltext"
)

// The names of the fields of an ingredient; each stands once a row.
const (
	ingredientField = "ingredient"
	amountField     = "amount"
	perField        = "per"
	unitSuffix      = ".unit"
)

// Rows of the recipe: those that are shown, and the most that count.
const (
	shownRows = 8
	spareRows = 2
	mostRows  = 60
)

var amountUnits = []string{"g/L", "mg/L", "%", "mL/L", "g/serving", "mmol/L"}

// ingredientRow is one line of the recipe as it was typed.
type ingredientRow struct{ Name, Amount, Per string }

func rowsOf(form url.Values) []ingredientRow {
	names, amounts, units := form[ingredientField], form[amountField], form[perField]
	var rows []ingredientRow
	for i := range names[:min(len(names), mostRows)] {
		row := ingredientRow{Name: strings.TrimSpace(names[i]), Amount: strings.TrimSpace(at(amounts, i)), Per: at(units, i)}
		if row.Name != "" || row.Amount != "" {
			rows = append(rows, row)
		}
	}
	return rows
}

func at(list []string, i int) string {
	if i < len(list) {
		return list[i]
	}
	return ""
}

// bareNumber is what may stand in a spec without quotes; anything else is put
// in quotes, and the reader of specs says what is wrong with it.
var bareNumber = regexp.MustCompile(`^-?(0|[1-9][0-9]{0,9})(\.[0-9]{1,12})?$`)

// specOf writes what a form says as a spec. What was left empty is left out.
func specOf(form url.Values) string {
	var tables []string
	lines := map[string][]string{}
	for _, g := range groups {
		for _, q := range g.Questions {
			table, key, ok := strings.Cut(q.Key, ".")
			written := q.written(form)
			if !ok || written == "" {
				continue
			}
			if lines[table] == nil {
				tables = append(tables, table)
			}
			lines[table] = append(lines[table], key+" = "+written)
		}
		if g.Recipe {
			tables = append(tables, ingredientField)
		}
	}
	return drinkFirst(tables, lines, rowsOf(form), form.Get(gasQuestion) == "sparkling")
}

func drinkFirst(tables []string, lines map[string][]string, rows []ingredientRow, sparkling bool) string {
	var b strings.Builder
	b.WriteString("[drink]\n" + joined(lines["drink"]))
	if sparkling && lines["carbonation"] == nil {
		tables = append(tables, "carbonation")
	}
	for _, t := range tables {
		switch {
		case t == "drink", t == "carbonation" && !sparkling:
		case t == ingredientField:
			for _, r := range rows {
				b.WriteString("\n[[ingredient]]\n" + joined(r.lines()))
			}
		default:
			b.WriteString("\n[" + t + "]\n" + joined(lines[t]))
		}
	}
	return b.String()
}

func joined(lines []string) string {
	if len(lines) == 0 {
		return ""
	}
	return strings.Join(lines, "\n") + "\n"
}

func (r ingredientRow) lines() []string {
	var lines []string
	if r.Name != "" {
		lines = append(lines, "name = "+tomltext.Quote(r.Name))
	}
	if r.Amount != "" {
		lines = append(lines, "amount = "+tomltext.Quote(strings.TrimSpace(r.Amount+" "+r.Per)))
	}
	return lines
}

// written is the answer to a question as TOML; "" where there is none.
func (q question) written(form url.Values) string {
	answers := form[q.Key]
	if len(answers) == 0 || strings.TrimSpace(answers[0]) == "" {
		return ""
	}
	one := strings.TrimSpace(answers[0])
	switch {
	case q.Several:
		var words []string
		for _, a := range answers[:min(len(answers), len(q.Choices))] {
			words = append(words, tomltext.Quote(a))
		}
		return "[" + strings.Join(words, ", ") + "]"
	case len(q.Units) > 0:
		return tomltext.Quote(strings.TrimSpace(one + " " + form.Get(q.Key+unitSuffix)))
	case q.Number && bareNumber.MatchString(one), len(q.Choices) == len(yesNo) && (one == "true" || one == "false"):
		return one
	}
	return tomltext.Quote(one)
}
