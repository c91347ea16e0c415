package report

import (
	"crypto/sha256"
	"encoding/base64"
	"html"
	"regexp"
	"strings"
	"testing"
)

func page1(t *testing.T, docs ...Doc) string {
	t.Helper()
	var b strings.Builder
	if err := HTML(&b, docs...); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func TestHTMLNeedsNothingAndRunsNothing(t *testing.T) {
	s := page1(t, Assessment(quince(), Metric))
	for _, never := range []string{"<script", "http:", "https:", "src=", "<link", "style=", " onclick", "ZgotmplZ"} {
		if strings.Contains(s, never) {
			t.Errorf("holds %q", never)
		}
	}
	sheet := regexp.MustCompile(`(?s)<style>(.*)</style>`).FindStringSubmatch(s)[1]
	sum := sha256.Sum256([]byte(sheet))
	want := "style-src 'sha256-" + base64.StdEncoding.EncodeToString(sum[:]) + "'"
	if !strings.Contains(html.UnescapeString(s), want) {
		t.Errorf("the policy does not name the style sheet by %s", want)
	}
}

func TestHTMLSaysWhatTextSays(t *testing.T) {
	s := html.UnescapeString(page1(t, Assessment(quince(), Metric)))
	for _, want := range []string{"1 stop and 1 review open; not a scheduled process, not a release", "package-pressure", quince().Input.SHA256,
		testCautions[0], testCautions[1], `"fits" says only: not ruled out by what was given`, "acidified, pH 3.25 (3.20 to 3.30); measured"} {
		if !strings.Contains(s, want) {
			t.Errorf("lacks %q", want)
		}
	}
	if w := neverSaid.FindString(regexp.MustCompile(`(?s)<style>.*</style>`).ReplaceAllString(s, "")); w != "" {
		t.Errorf("says %q", w)
	}
}

func TestHTMLEscapesWhatAFileHolds(t *testing.T) {
	a := quince()
	a.Drink.Name = `<script>alert(1)</script>" onload="x`
	a.Findings[0].Detail = "</style><img src=x onerror=alert(1)>\x1b[2J"
	a.Input.File = "a&b<i>.toml"
	s := page1(t, Assessment(a, Metric))
	for _, never := range []string{"<script", "<img", "<i>", "\x1b", `" onload="`} {
		if strings.Contains(s, never) {
			t.Errorf("holds %q", never)
		}
	}
}

func TestHTMLOfManyHasAnIndexAndUniqueIDs(t *testing.T) {
	d := Assessment(quince(), Metric)
	s := page1(t, d, d, d)
	seen := map[string]bool{}
	for _, m := range regexp.MustCompile(` id="([^"]+)"`).FindAllStringSubmatch(s, -1) {
		if seen[m[1]] {
			t.Errorf("id %s stands twice", m[1])
		}
		seen[m[1]] = true
	}
	if n := strings.Count(s, `<li><a href="#d`); n != 3 {
		t.Errorf("%d entries in the index", n)
	}
	if n := strings.Count(s, "<h1"); n != 1 {
		t.Errorf("%d first headings", n)
	}
}
