package web

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"
)

func TestBrandOwnerFromStartToBrief(t *testing.T) {
	v := visit(t)
	v.open("/")
	v.looked("home")
	v.do(chromedp.Click(chromedp.CSS(`main a[href="/drink"]`)))
	v.until(`document.title.startsWith("Describe a drink")`)
	v.open("/drink?example=yes")
	const hostile = `<script>document.title="owned"</script> & "Quince"`
	v.write("q-drink-name", hostile)
	lines, err := os.ReadFile("../../../../testdata/lines.toml")
	require.NoError(t, err)
	path := filepath.Join(t.TempDir(), "lines.toml")
	require.NoError(t, os.WriteFile(path, lines, 0o600))
	v.do(chromedp.SetUploadFiles(chromedp.CSS("#lines-file"), []string{path}))
	rows := ask[int](v, `document.querySelectorAll("#recipe .row").length`)
	v.press("One more ingredient")
	require.Equal(t, rows+1, ask[int](v, `document.querySelectorAll("#recipe .row").length`))
	v.press("Which ways are left?")
	v.until(`document.getElementById("answer") !== null`)
	require.Equal(t, hostile, ask[string](v, `document.getElementById("q-drink-name").value`))
	require.Contains(t, ask[string](v, `document.getElementById("answer").innerText`), "not a scheduled process, not a release")
	require.Contains(t, ask[string](v, `document.getElementById("lines-answer").innerText`), "missing")
	require.NotContains(t, ask[string](v, "document.title"), "owned")
	require.Equal(t, "answer", ask[string](v, "document.activeElement.id"))
	v.looked("drink")
	v.press("Save the brief")
	brief := v.saved("script-document-title-owned-script-quince-brief.html")
	require.Contains(t, brief, "&lt;script&gt;")
	require.NotContains(t, brief, "<script")
	v.press("Save as a spec")
	require.Contains(t, v.saved("script-document-title-owned-script-quince.toml"), `name = "<script>document.title=\"owned\"</script> & \"Quince\""`)
	v.press("Go on with it as a spec")
	v.until(`document.title.startsWith("Work on a spec") && document.getElementById("answer").dataset.turn > 0`)
	require.Equal(t, hostile, ask[string](v, `document.getElementById("k-drink-name").value`))
	v.quiet()
}

// tookMs are the times from a change to its answer in the page, the pause after
// the last stroke included.
func (v *visitor) tookMs(change func(i int), times int) []float64 {
	var took []float64
	for i := range times {
		turn := ask[string](v, `document.getElementById("answer").dataset.turn`)
		change(i)
		v.until(`document.getElementById("answer").dataset.turn !== "` + turn + `"`)
		ms, err := strconv.ParseFloat(ask[string](v, `document.getElementById("answer").dataset.tookMs`), 64)
		require.NoError(v.t, err)
		took = append(took, ms)
	}
	slices.Sort(took)
	return took
}

func TestDeveloperFromChangeToSpec(t *testing.T) {
	v := visit(t)
	v.open("/spec")
	v.until(`document.getElementById("answer").dataset.turn > 0`)
	v.looked("spec")
	took := v.tookMs(func(i int) {
		v.do(chromedp.Evaluate[chromedp.Void](fmt.Sprintf(`(() => { const f = document.getElementById("k-measured-ph"); f.focus(); f.value = "%.2f"; f.dispatchEvent(new Event("input", {bubbles: true})) })()`, 3+0.1*float64(i%10))))
	}, 40)
	t.Logf("from change to answer in the page, with the pause of 60 ms: median %.0f ms, longest %.0f ms of %d", took[len(took)/2], took[len(took)-1], len(took))
	v.write("k-measured-ph", "4.9")
	v.until(`document.getElementById("said").textContent.includes("is low-acid")`)
	require.Contains(t, ask[string](v, `document.getElementById("text").value`), "ph = 4.9\n")
	require.Contains(t, ask[string](v, `document.getElementById("said").textContent`), "New: stop ")
	v.do(chromedp.Evaluate[chromedp.Void](`(() => { const t = document.getElementById("text"); t.focus(); t.value = t.value.replace("ph = 4.9", "ph = 4,9"); t.dispatchEvent(new Event("input", {bubbles: true})) })()`))
	v.until(`document.getElementById("wrong") !== null`)
	require.Contains(t, ask[string](v, `document.getElementById("wrong").innerText`), "write ph = 4.9, with a point")
	v.do(chromedp.Evaluate[chromedp.Void](`(() => { const t = document.getElementById("text"); t.focus(); t.value = t.value.replace("ph = 4,9", "ph = 3.3"); t.dispatchEvent(new Event("input", {bubbles: true})) })()`))
	v.until(`document.getElementById("k-measured-ph").value === "3.3"`)
	require.Contains(t, ask[string](v, `document.getElementById("said").textContent`), "Gone: stop ")
	v.press("One more ingredient")
	v.until(`document.querySelectorAll("#recipe-rows .row2").length === 4`)
	v.do(chromedp.SendKeys(chromedp.CSS(`[data-key="ingredient.3.name"]`), "malic acid"))
	v.until(`document.getElementById("text").value.includes("name = \"malic acid\"")`)
	v.press("Save as TOML")
	require.Equal(t, ask[string](v, `document.getElementById("text").value`), strings.ReplaceAll(v.saved("quince-clear-protein-water.toml"), "\r\n", "\n"))
	v.quiet()
}

func TestEngineerFromRecordToExport(t *testing.T) {
	v := visit(t)
	v.open("/records")
	logs, err := filepath.Abs("../../../../testdata/drinks/logs")
	require.NoError(t, err)
	v.do(chromedp.SetUploadFiles(chromedp.CSS("#log"), []string{filepath.Join(logs, "casein-coffee-retort.csv"), filepath.Join(logs, "barley-tea-retort.csv")}))
	v.until(`document.getElementById("answer").dataset.turn === "1"`)
	shown := ask[string](v, `document.getElementById("answer").innerText`)
	for _, want := range []string{"casein-coffee-retort.csv", "barley-tea-retort.csv", "parted by comma", "F, by heading", "date and time", "the target you stated; whether it is adequate was not judged"} {
		require.Contains(t, shown, want)
	}
	require.Equal(t, 2, ask[int](v, `document.querySelectorAll("#answer svg.chart").length`))
	v.looked("records")
	turn := ask[string](v, `document.getElementById("answer").dataset.turn`)
	v.do(chromedp.Evaluate[chromedp.Void](`(() => { const s = [...document.querySelectorAll("select[name=role]")].find(s => s.getAttribute("aria-label") === "Role of Can A"); s.value = "ignore"; s.dispatchEvent(new Event("change", {bubbles: true})) })()`))
	v.until(`document.getElementById("answer").dataset.turn !== "` + turn + `"`)
	require.Contains(t, ask[string](v, `document.getElementById("answer").innerText`), "Can A")
	require.Contains(t, ask[string](v, `document.getElementById("answer").innerText`), "Left out")
	v.press("Save as CSV")
	require.Contains(t, v.saved("records.csv"), "casein-coffee-retort.csv,")
	v.press("Save as JSON")
	var result struct {
		Schema string
		Logs   []struct{ File string }
	}
	require.NoError(t, json.Unmarshal([]byte(v.saved("records.json")), &result))
	require.Equal(t, "posset/lethality/1", result.Schema)
	require.Len(t, result.Logs, 2)
	v.press("Save the report")
	require.Contains(t, v.saved("records.html"), "casein-coffee-retort.csv")
	v.quiet()
}

// TestEngineerDropsAFaultyRecord drops two files as a mouse does, mends the unit,
// and sees faults and a credit below the record's word.
func TestEngineerDropsAFaultyRecord(t *testing.T) {
	v := visit(t)
	v.open("/records")
	lines := strings.SplitAfter(cook("Can", 121.5), "\n")
	faulty, err := json.Marshal(strings.Join(append(lines[:800:800], lines[1400:]...), ""))
	require.NoError(t, err)
	sound, err := json.Marshal(cook("Can", 121.5))
	require.NoError(t, err)
	v.do(chromedp.Evaluate[chromedp.Void](`(() => {
		const held = new DataTransfer();
		held.items.add(new File([` + string(faulty) + `], "gap.csv", {type: "text/csv"}));
		held.items.add(new File([` + string(sound) + `], "sound.csv", {type: "text/csv"}));
		document.getElementById("drop").dispatchEvent(new DragEvent("drop", {dataTransfer: held, bubbles: true, cancelable: true}));
	})()`))
	v.until(`document.getElementById("answer").dataset.turn === "1"`)
	require.Contains(t, ask[string](v, `document.getElementById("answer").innerText`), "say which under Unit")
	v.do(chromedp.Evaluate[chromedp.Void](`(() => { const s = document.getElementById("unit"); s.value = "C"; s.dispatchEvent(new Event("change", {bubbles: true})) })()`))
	v.until(`document.getElementById("answer").dataset.turn === "2"`)
	shown := ask[string](v, `document.getElementById("answer").innerText`)
	for _, want := range []string{"gap.csv: meets", "sound.csv: meets", "C, by declared", "no reading for 10 min; nothing is credited over it", "no sound reading: nothing is credited"} {
		require.Contains(t, shown, want)
	}
	v.looked("records-faulty")
	v.quiet()
}

// largeLog writes a record of 50 MB: one long cook, a reading a second.
func largeLog(t *testing.T) string {
	path := filepath.Join(t.TempDir(), "large <b>.csv")
	f, err := os.Create(path)
	require.NoError(t, err)
	defer f.Close()
	var b strings.Builder
	b.WriteString("time_s,Retort (°C),Can 1 (°C)\n")
	const rows, bytes = 2_300_000, 50 << 20
	for i := 0; b.Len() < bytes; i++ {
		c := 60 + 62*min(1, 40*float64(i)/rows)
		fmt.Fprintf(&b, "%d,%.3f,%.3f\n", i, c+1+float64(i%7)/100, c)
	}
	_, err = f.WriteString(b.String())
	require.NoError(t, err)
	return path
}

func TestALargeLog(t *testing.T) {
	if raced {
		t.Skip("the race detector makes 50 MB a matter of minutes: many small records at once are its test")
	}
	v := visit(t)
	v.open("/records")
	path := largeLog(t)
	began := time.Now()
	v.do(chromedp.SetUploadFiles(chromedp.CSS("#log"), []string{path}))
	v.until(`document.getElementById("answer").dataset.turn === "1"`)
	t.Logf("50 MB from choice to answer: %.1f s", time.Since(began).Seconds())
	require.Contains(t, ask[string](v, `document.getElementById("answer").innerText`), "large <b>.csv: meets")
	left, err := os.ReadDir(v.site.scratch)
	require.NoError(t, err)
	require.Empty(t, left, "an upload is removed with its answer")
	v.quiet()
}
