package report

import (
	"bufio"
	"fmt"
	"html"
	"io"

	"posset/beverage"
)

type evidenceHTML struct {
	to *bufio.Writer
}

// NewEvidenceHTML writes evidence as one page that needs nothing else, one row a
// reading, as the rows come.
func NewEvidenceHTML(w io.Writer) (EvidenceWriter, error) {
	e := &evidenceHTML{to: bufio.NewWriter(w)}
	_, err := fmt.Fprintf(e.to, evidenceHead, policy(), style)
	for _, c := range evidenceColumns {
		fmt.Fprintf(e.to, `<th scope="col">%s</th>`, html.EscapeString(c))
	}
	e.to.WriteString("</tr></thead>\n<tbody>\n")
	return e, err
}

const evidenceHead = `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="%s">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Evidence: every reading with what it adds</title>
<style>%s</style>
</head>
<body>
<main>
<h1>Every reading with what it adds</h1>
<p>What the rows rest on, and the cautions, stand below them.</p>
<div class="wide" tabindex="0" role="group" aria-label="Table: readings"><table>
<thead><tr>`

func (e *evidenceHTML) Row(r beverage.EvidenceRow) error {
	for i, c := range evidenceCells(r) {
		form := "<td>%s</td>"
		if i == 0 {
			form = `<tr><th scope="row">%s</th>`
		}
		fmt.Fprintf(e.to, form, html.EscapeString(printable(c)))
	}
	_, err := e.to.WriteString("</tr>\n")
	return err
}

func (e *evidenceHTML) Close(r *beverage.LethalityResult) error {
	e.to.WriteString("</tbody></table></div>\n<h2>What it rests on</h2>\n<ul>\n")
	for _, line := range evidenceFoot(r) {
		fmt.Fprintf(e.to, "<li>%s</li>\n", html.EscapeString(printable(line)))
	}
	e.to.WriteString("</ul>\n</main>\n</body>\n</html>\n")
	return e.to.Flush()
}
