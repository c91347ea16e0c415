package console

import (
	"os"
	"runtime"
	"strings"

	"golang.org/x/term"

	"posset/beverage/report"
)

const widestText = 100 // columns

// terminal returns the file behind a stream where it is a terminal.
func terminal(stream any) (*os.File, bool) {
	f, ok := stream.(*os.File)
	return f, ok && term.IsTerminal(int(f.Fd()))
}

// InIsTerminal tells that nothing was piped in, so that reading would hang.
func (c *Console) InIsTerminal() bool {
	_, is := terminal(c.In)
	return is
}

// style is how text is set for where it goes.
func (c *Console) style() report.Style {
	st := report.Style{Width: widestText, ASCII: !c.isUTF8(), Colour: c.Colour == Always}
	f, is := terminal(c.Out)
	if !is || c.ToFile() {
		return st
	}
	if w, _, err := term.GetSize(int(f.Fd())); err == nil && w > 0 {
		st.Width = min(w, widestText)
	}
	st.Colour = c.Colour == Always || c.Colour == Auto && c.wantsColour()
	return st
}

// wantsColour honours NO_COLOR (no-color.org: set and not empty) and TERM.
// Consoles of Windows without TERM may show the codes as they are.
func (c *Console) wantsColour() bool {
	t := c.env("TERM")
	return c.env("NO_COLOR") == "" && t != "dumb" && (t != "" || runtime.GOOS == "windows" && c.env("WT_SESSION") != "")
}

// isUTF8 reads the locale as POSIX orders it; Windows has none and shows text
// as Unicode. A file is UTF-8 anywhere.
func (c *Console) isUTF8() bool {
	if c.ToFile() || runtime.GOOS == "windows" {
		return true
	}
	for _, name := range []string{"LC_ALL", "LC_CTYPE", "LANG"} {
		if v := c.env(name); v != "" {
			v = strings.ToLower(v)
			return strings.Contains(v, "utf-8") || strings.Contains(v, "utf8")
		}
	}
	return false
}

// errIsTerminal tells whether progress may be drawn.
func (c *Console) errIsTerminal() bool {
	_, is := terminal(c.Err)
	return is && c.env("TERM") != "dumb"
}
