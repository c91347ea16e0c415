package chart

import _ "embed"

// Style is the style sheet of charts and their legends. The page around it says
// the colours --ink, --soft, --faint, --ground, --note, --review and --stop, and
// has the class dense about a chart that a small screen shows in its full width.
//
//go:embed chart.css
var Style string
