package web

import (
	"context"
	"encoding/json"
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/accessibility"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"
)

// marked numbers everything on the page that Tab should stop at, in the order in
// which it is read, goes to its start, and tells how many there are.
const marked = `(() => {
  const open = e => { for (let d = e.parentElement; d; d = d.parentElement) if (d.tagName === "DETAILS" && !d.open && !(e.tagName === "SUMMARY" && e.parentElement === d)) return false; return true };
  const chosen = new Set();
  const all = [...document.querySelectorAll("a[href], button, input, select, textarea, summary, [tabindex='0']")].filter(e => {
    if (e.disabled || e.type === "hidden" || !open(e) || e.getClientRects().length === 0) return false;
    if (e.type !== "radio") return true;
    if (chosen.has(e.name)) return false;
    const group = [...document.getElementsByName(e.name)];
    if (group.some(g => g.checked) && !e.checked) return false;
    chosen.add(e.name);
    return true;
  });
  all.forEach((e, i) => e.dataset.stop = i);
  const before = document.createElement("span");
  before.tabIndex = -1;
  document.body.prepend(before);
  before.focus();
  return all.length;
})()`

// stopped is what the keyboard is on: its number, whether it is seen to be, and
// whether something else covers it.
const stopped = `(() => {
  const e = document.activeElement;
  if (!e || e === document.body) return {Stop: -1};
  const s = getComputedStyle(e), r = e.getBoundingClientRect();
  const x = Math.min(Math.max(r.left + r.width / 2, 1), innerWidth - 2), y = Math.min(Math.max(r.top + Math.min(r.height / 2, 20), 1), innerHeight - 2);
  const on = document.elementFromPoint(x, y);
  return {Stop: Number(e.dataset.stop ?? -2), What: (e.id || e.name || e.textContent.trim().slice(0, 40)) + " <" + e.tagName.toLowerCase() + ">",
    Ringed: s.outlineStyle !== "none" && parseFloat(s.outlineWidth) > 0, InView: r.bottom > 0 && r.top < innerHeight && r.width > 0, Covered: !!on && on !== e && !e.contains(on) && !on.contains(e) && !(on.closest("label")?.contains(e))};
})()`

type stop struct {
	Stop                    int
	What                    string
	Ringed, InView, Covered bool
}

// tabbed walks the page by Tab alone, from its start past its end, and back a
// little: every stop is reached in the order of reading, is seen, and lets go.
func (v *visitor) tabbed(name string) {
	v.t.Helper()
	v.do(chromedp.EmulateViewport(1280, 900))
	n := ask[int](v, marked)
	require.Greater(v.t, n, 4, name)
	var seen []int
	for range n {
		v.do(chromedp.KeyEvent("\t"))
		s := ask[stop](v, stopped)
		require.True(v.t, s.Ringed && s.InView && !s.Covered, "%s: %+v", name, s)
		seen = append(seen, s.Stop)
	}
	v.do(chromedp.KeyEvent("\t"))
	want := make([]int, n)
	for i := range want {
		want[i] = i
	}
	require.Equal(v.t, want, seen, name)
	require.NotContains(v.t, seen[1:], ask[stop](v, stopped).Stop, "%s: Tab leaves its last stop", name)
	v.t.Logf("%s: %d stops by Tab alone, in order, each seen", name, n)
}

// named is a node as a screen reader has it.
type named struct{ role, name string }

// spoken are the nodes that a screen reader is told of.
func (v *visitor) spoken() []named {
	v.t.Helper()
	var tree accessibility.GetFullAXTreeResult
	v.do(func(ctx context.Context, _ *chromedp.Target) (none chromedp.Void, err error) {
		tree, err = chromedp.Call(ctx, accessibility.GetFullAXTree, accessibility.GetFullAXTreeParams{})
		return none, err
	})
	word := func(x *accessibility.Value) (s string) {
		if x != nil {
			_ = json.Unmarshal(x.Value, &s) // what is no word has none
		}
		return strings.TrimSpace(s)
	}
	var out []named
	for _, n := range tree.Nodes {
		if !n.Ignored {
			out = append(out, named{word(n.Role), word(n.Name)})
		}
	}
	return out
}

// needName are the roles that say nothing without a name.
var needName = []string{"button", "link", "textbox", "combobox", "searchbox", "checkbox", "radio", "radiogroup", "image", "img", "heading", "DisclosureTriangle", "navigation", "form", "region", "listbox"}

// heard holds the page against what a screen reader needs: a name for whatever
// can be worked or skipped to, one main part, headings that go down one by one.
func (v *visitor) heard(name string, want ...named) {
	v.t.Helper()
	nodes := v.spoken()
	mains := 0
	for _, n := range nodes {
		if n.name == "" && slices.Contains(needName, n.role) {
			v.t.Errorf("%s: a %s without a name", name, n.role)
		}
		if n.role == "main" {
			mains++
		}
	}
	require.Equal(v.t, 1, mains, name)
	for _, w := range want {
		require.Contains(v.t, nodes, w, name)
	}
	levels := ask[[]int](v, `[...document.querySelectorAll("h1,h2,h3,h4")].filter(e => e.getClientRects().length).map(e => Number(e.tagName[1]))`)
	require.Equal(v.t, 1, levels[0], name)
	for i, l := range levels[1:] {
		require.LessOrEqual(v.t, l, levels[i]+1, fmt.Sprintf("%s: heading %d of %v", name, i+1, levels))
	}
	v.t.Logf("%s: %d nodes told, none that needs a name without one", name, len(nodes))
}

func TestByKeyboardAndByEar(t *testing.T) {
	v := visit(t)
	v.open("/")
	v.tabbed("home")
	v.heard("home", named{"link", "An idea for a drink"}, named{"navigation", "Pages"})

	v.open("/drink?example=yes")
	v.tabbed("drink, empty of answers")
	v.press("Which ways are left?")
	v.until(`document.getElementById("answer") !== null`)
	v.tabbed("drink")
	v.heard("drink", named{"textbox", "What is it called?"}, named{"heading", "Which ways are left"}, named{"button", "Save the brief"}, named{"radiogroup", "How much of the recipe shall the brief tell?"})

	v.open("/spec")
	v.until(`document.getElementById("answer").dataset.turn > 0`)
	v.tabbed("spec")
	v.heard("spec", named{"textbox", "As text"}, named{"button", "Save as TOML"}, named{"region", "Assessment"})

	v.open("/records")
	log, err := filepath.Abs("../../../../testdata/drinks/logs/barley-tea-retort.csv")
	require.NoError(t, err)
	v.do(chromedp.SetUploadFiles(chromedp.CSS("#log"), []string{log}))
	v.until(`document.getElementById("answer").dataset.turn === "1"`)
	v.tabbed("records")
	v.heard("records", named{"textbox", "Target"}, named{"image", "Record of barley-tea-retort.csv"}, named{"combobox", "Role of Can A"}, named{"DisclosureTriangle", "What was understood"})
	v.quiet()
}
