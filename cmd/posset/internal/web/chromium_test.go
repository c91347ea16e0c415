package web

import (
	"context"
	"encoding/json"
	"fmt"
	"net/http/httptest"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/browser"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"
)

// visitor is a person at a real browser.
type visitor struct {
	t         *testing.T
	ctx       context.Context
	server    *httptest.Server
	site      *Site
	downloads string

	mu   sync.Mutex
	said []string // what the browser complained of, and requests that left the site
}

// longest is how long a page may take before a test gives up.
const longest = 30 * time.Second

var browserNames = []string{"chromium", "chromium-browser", "google-chrome", "chrome"}

func visit(t *testing.T) *visitor {
	path := ""
	for _, name := range browserNames {
		if found, err := exec.LookPath(name); err == nil {
			path = found
			break
		}
	}
	if path == "" {
		t.Skip("no Chromium on this machine: the page is not tried in a browser")
	}
	v := &visitor{t: t, downloads: t.TempDir()}
	v.site, v.server = start(t)
	flags := append(chromedp.DefaultExecAllocatorOptions[:], chromedp.ExecPath(path), chromedp.NoSandbox,
		chromedp.Flag("disable-gpu", true), chromedp.Flag("disable-quic", true), chromedp.Flag("disable-background-networking", true),
		chromedp.Flag("disable-component-update", true), chromedp.Flag("disable-sync", true))
	allocator, end := chromedp.NewExecAllocator(context.Background(), flags...)
	t.Cleanup(end)
	ctx, cancel := chromedp.NewContext(allocator)
	t.Cleanup(cancel)
	v.ctx = ctx
	v.do(func(ctx context.Context, target *chromedp.Target) (chromedp.Void, error) {
		var none chromedp.Void
		if _, err := chromedp.Call(ctx, network.Enable, network.EnableParams{}); err != nil {
			return none, err
		}
		_, err := chromedp.Call(ctx, browser.SetDownloadBehavior, browser.SetDownloadBehaviorParams{
			Behavior: browser.SetDownloadBehaviorBehaviorAllow, DownloadPath: v.downloads})
		return none, err
	})
	require.NoError(t, chromedp.Listen(ctx, v.hear))
	return v
}

// hear notes every fault that the browser tells, and every request that leaves
// the site.
func (v *visitor) hear(event any) {
	line := ""
	switch e := event.(type) {
	case *network.EventRequestWillBeSent:
		if u := e.Request.URL; !strings.HasPrefix(u, v.server.URL) && !strings.HasPrefix(u, "data:") && !strings.HasPrefix(u, "about:") {
			line = "asked " + u
		}
	case *log.EventEntryAdded:
		if e.Entry.Level == log.EntryLevelError {
			line = "complained: " + e.Entry.Text
		}
	case *runtime.EventExceptionThrown:
		line = "threw: " + e.ExceptionDetails.Text
	}
	if line != "" {
		v.mu.Lock()
		defer v.mu.Unlock()
		v.said = append(v.said, line)
	}
}

// quiet asserts that nothing was complained of and nothing left the site.
func (v *visitor) quiet() {
	v.mu.Lock()
	defer v.mu.Unlock()
	require.Empty(v.t, v.said)
}

func (v *visitor) do(steps ...chromedp.Action[chromedp.Void]) {
	v.t.Helper()
	require.NoError(v.t, chromedp.Do(v.ctx, steps...))
}

func (v *visitor) open(path string) { v.t.Helper(); v.do(chromedp.Navigate(v.server.URL + path)) }

func ask[T any](v *visitor, expression string) T {
	v.t.Helper()
	got, err := chromedp.Run(v.ctx, chromedp.Evaluate[T](expression))
	require.NoError(v.t, err, expression)
	return got
}

// until waits for an expression to hold.
func (v *visitor) until(expression string) {
	v.t.Helper()
	for end := time.Now().Add(longest); time.Now().Before(end); time.Sleep(10 * time.Millisecond) {
		if holds, err := chromedp.Run(v.ctx, chromedp.Evaluate[bool](expression)); err == nil && holds {
			return
		}
	}
	require.Fail(v.t, "never came true", expression+"\n"+ask[string](v, "document.body.innerText.slice(0, 2000)"))
}

// write types over what stands in a field.
func (v *visitor) write(id, text string) {
	v.t.Helper()
	v.do(chromedp.Evaluate[chromedp.Void](`document.getElementById("`+id+`").select()`), chromedp.SendKeys(chromedp.CSS("#"+id), text))
}

// press finds a button by its words and presses it by the keyboard.
func (v *visitor) press(words string) {
	v.t.Helper()
	quoted, _ := json.Marshal(words)
	require.True(v.t, ask[bool](v, `(() => { const b = [...document.querySelectorAll("button")].find(b => b.textContent.trim() === `+string(quoted)+`); b?.focus(); return b !== undefined && document.activeElement === b })()`), words)
	v.do(chromedp.KeyEvent(" "))
}

// saved waits for a download.
func (v *visitor) saved(name string) string {
	v.t.Helper()
	path := filepath.Join(v.downloads, name)
	for end := time.Now().Add(longest); time.Now().Before(end); time.Sleep(20 * time.Millisecond) {
		if data, err := os.ReadFile(path); err == nil && len(data) > 0 {
			require.NoError(v.t, os.Remove(path))
			return string(data)
		}
	}
	list, _ := filepath.Glob(filepath.Join(v.downloads, "*"))
	require.Fail(v.t, "not saved: "+name, fmt.Sprint(list))
	return ""
}

// widths are a phone's, a small window's and a wide screen's.
var widths = []int64{360, 900, 1920}

// looked runs axe over the page at every width, and in the dark, and holds
// the page against its width. With SHOTS set it keeps pictures there.
func (v *visitor) looked(name string) {
	v.t.Helper()
	axe, err := os.ReadFile("testdata/axe/axe.min.js")
	require.NoError(v.t, err)
	for _, scheme := range []string{"light", "dark"} {
		v.do(func(ctx context.Context, target *chromedp.Target) (chromedp.Void, error) {
			var none chromedp.Void
			_, err := chromedp.Call(ctx, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: scheme}}})
			return none, err
		})
		for _, width := range widths[:map[string]int{"light": len(widths), "dark": 1}[scheme]] {
			v.do(chromedp.EmulateViewport(width, 900))
			require.LessOrEqual(v.t, ask[int](v, "document.documentElement.scrollWidth"), int(width), "%s is wider than %d", name, width)
			v.do(chromedp.Evaluate[chromedp.Void](string(axe)))
			found, err := chromedp.Run(v.ctx, chromedp.Evaluate[string](`axe.run(document, {resultTypes: ["violations"]}).then(r => r.violations.map(x => x.id + ": " + x.help + " at " + x.nodes.slice(0, 4).map(n => n.target.join(" ") + " " + (n.any[0]?.message ?? "")).join("; ")).join("\n"))`, chromedp.EvalAwaitPromise))
			require.NoError(v.t, err)
			require.Empty(v.t, found, "%s, %d px, %s", name, width, scheme)
			v.keep(fmt.Sprintf("%s-%d-%s.png", name, width, scheme))
		}
	}
}

func (v *visitor) keep(name string) {
	dir := os.Getenv("SHOTS")
	if dir == "" {
		return
	}
	shot, err := chromedp.Run(v.ctx, chromedp.FullScreenshot(100))
	require.NoError(v.t, err)
	require.NoError(v.t, os.WriteFile(filepath.Join(dir, name), shot, 0o644))
}
