package report

// Select graphic rendition codes of ISO/IEC 6429 (ECMA-48, 8.3.117).
const (
	sgrReset  = "\x1b[0m"
	sgrBold   = "\x1b[1m"
	sgrRed    = "\x1b[1;31m"
	sgrYellow = "\x1b[1;33m"
	sgrCyan   = "\x1b[36m"
)

var levelColour = map[string]string{"stop": sgrRed, "review": sgrYellow, "note": sgrCyan}

func (p *page) paint(code, s string) string {
	if !p.st.Colour || code == "" || s == "" {
		return s
	}
	return code + s + sgrReset
}

func (p *page) strong(s string) string { return p.paint(sgrBold, s) }

func (p *page) level(mark, s string) string { return p.paint(levelColour[mark], s) }
