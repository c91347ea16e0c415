package console

import (
	"io"
	"sync"
	"time"

	"github.com/schollz/progressbar/v3"
)

// progressAfter is how long work may take before it is worth a bar, and how
// often the bar is drawn.
const (
	progressAfter = time.Second
	progressEvery = 200 * time.Millisecond
)

// Progress counts finished pieces of long work. It may be used by several
// goroutines at once.
type Progress struct {
	mu      sync.Mutex
	to      io.Writer // nil: nobody watches
	what    string
	n, all  int
	started time.Time
	bar     *progressbar.ProgressBar
}

// Progress starts a count of n pieces, drawn on the error stream after a
// second, if that is a terminal.
func (c *Console) Progress(n int, what string) *Progress {
	p := &Progress{what: what, all: n, started: time.Now()}
	if !c.Quiet && c.errIsTerminal() {
		p.to = c.Err
	}
	return p
}

// Done counts one piece.
func (p *Progress) Done() {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.n++
	if p.to == nil || time.Since(p.started) < progressAfter {
		return
	}
	if p.bar == nil {
		p.bar = progressbar.NewOptions(p.all, progressbar.OptionSetWriter(p.to), progressbar.OptionSetDescription(p.what),
			progressbar.OptionThrottle(progressEvery), progressbar.OptionClearOnFinish(), progressbar.OptionShowCount())
	}
	p.bar.Set(p.n) // a bar that cannot be drawn is not worth an error
}

// End takes the bar away.
func (p *Progress) End() {
	p.mu.Lock()
	defer p.mu.Unlock()
	if p.bar != nil {
		p.bar.Clear()
	}
}
