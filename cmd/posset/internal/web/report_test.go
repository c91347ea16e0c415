package web

import (
	"bytes"
	"context"
	"net/http"
	"net/http/httptest"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	cdp "github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"

	"posset/beverage"
	"posset/beverage/assess"
	"posset/beverage/report"
	"posset/beverage/spec"
	"posset/beverage/sweep"
)

const demoDrinks = "../../../../testdata/drinks/"

// demoReports are reports as the commands write them, by name.
func demoReports(t *testing.T) map[string][]byte {
	drawn := optionsForTests
	drawn.Pictures = true
	out := map[string][]byte{}
	put := func(name string, docs ...report.Doc) {
		var b bytes.Buffer
		require.NoError(t, report.HTML(&b, docs...))
		out[name] = b.Bytes()
	}
	read := func(name string) *beverage.Drink {
		d, err := spec.Read(demoDrinks+name+".toml", spec.Options{})
		require.NoError(t, err)
		return d
	}
	var all []report.Doc
	for _, name := range []string{"02-clear-whey-sparkling", "13-apple-quince-juice"} {
		a, err := assess.Drink(t.Context(), read(name), drawn)
		require.NoError(t, err)
		all = append(all, report.Assessment(a, report.Metric))
	}
	put("check", all[0])
	put("check-two", all...)
	d := read("02-clear-whey-sparkling")
	for name, texts := range map[string][]string{"sweep-one": {"carbonation.volumes=1..4"}, "sweep-two": {"measured.ph=2.8..4.8", "carbonation.volumes=1..4"}} {
		var varied []sweep.Varied
		for _, text := range texts {
			v, err := sweep.Parse(d, text)
			require.NoError(t, err)
			varied = append(varied, v)
		}
		r, err := sweep.Run(t.Context(), d, varied, sweep.Options{Options: optionsForTests, Steps: 9})
		require.NoError(t, err)
		put(name, report.Sweep(r, report.Metric))
	}
	b, err := assess.MakeBrief(t.Context(), d, "classes", optionsForTests)
	require.NoError(t, err)
	put("brief", report.Brief(b, report.Metric))
	put("lethality", faultyLethality(t, drawn))
	return out
}

// faultyLethality is a record with a gap beside a sound one.
func faultyLethality(t *testing.T, o assess.Options) report.Doc {
	lines := strings.SplitAfter(cook("Can (°C)", 121.5), "\n")
	gap := filepath.Join(t.TempDir(), "gap.csv")
	require.NoError(t, os.WriteFile(gap, []byte(strings.Join(append(lines[:800:800], lines[1400:]...), "")), 0o600))
	target, err := spec.ParseTarget("F0 6 min")
	require.NoError(t, err)
	reader, err := assess.NewLogReader(assess.LogOptions{Options: o, TrefC: 121.1, ZC: 10, ToleranceC: 0.5, Target: &target})
	require.NoError(t, err)
	var logs []beverage.LogResult
	for _, file := range []string{gap, demoDrinks + "logs/barley-tea-retort.csv"} {
		l, err := reader.Read(t.Context(), file)
		require.NoError(t, err)
		logs = append(logs, l)
	}
	return report.Lethality(reader.Result(logs), report.US)
}

// TestReportsInABrowser opens the reports at three widths, light and dark, and
// prints them on both papers.
func TestReportsInABrowser(t *testing.T) {
	v := visit(t)
	reports := demoReports(t)
	v.server = httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		w.Write(reports[strings.TrimPrefix(r.URL.Path, "/")]) // of a picture for its tab there is none
	}))
	t.Cleanup(v.server.Close)
	for name := range reports {
		v.open("/" + name)
		if name != "brief" && name != "check-two" { // they are of the same parts, and axe takes its time over long pages
			v.looked("report-" + name)
		}
		v.heard("report-" + name)
		for paper, inches := range map[string][2]float64{"a4": {8.27, 11.69}, "letter": {8.5, 11}} {
			v.printed(name+"-"+paper, inches)
		}
	}
	v.quiet()
}

// printed prints the page and, where there is a reader of what was printed,
// holds every sheet to carry the cautions and the hash.
func (v *visitor) printed(name string, inches [2]float64) {
	v.t.Helper()
	var pdf []byte
	v.do(func(ctx context.Context, _ *chromedp.Target) (none chromedp.Void, err error) {
		r, err := chromedp.Call(ctx, cdp.PrintToPDF, cdp.PrintToPDFParams{PaperWidth: inches[0], PaperHeight: inches[1]})
		pdf = r.Data
		return none, err
	})
	if dir := os.Getenv("SHOTS"); dir != "" {
		require.NoError(v.t, os.WriteFile(filepath.Join(dir, name+".pdf"), pdf, 0o644))
	}
	reader, err := exec.LookPath("pdftotext")
	if err != nil {
		return
	}
	read := exec.Command(reader, "-layout", "-", "-")
	read.Stdin = bytes.NewReader(pdf)
	text, err := read.Output()
	require.NoError(v.t, err)
	sheets := strings.Split(strings.TrimSuffix(string(text), "\f"), "\f")
	require.Greater(v.t, len(sheets), 1, name)
	for i, s := range sheets {
		s = strings.Join(strings.Fields(s), " ")
		require.Contains(v.t, s, "A process authority decides", "%s, sheet %d", name, i+1)
		require.Contains(v.t, s, "sha256", "%s, sheet %d", name, i+1)
	}
}
