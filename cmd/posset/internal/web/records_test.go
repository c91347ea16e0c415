package web

import (
	"bytes"
	"fmt"
	"mime/multipart"
	"net/http"
	"os"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"
)

// formOf is a form with files, as a browser sends it.
func formOf(t *testing.T, fields [][2]string, files map[string]string) (body, kind string) {
	var b bytes.Buffer
	w := multipart.NewWriter(&b)
	for _, f := range fields {
		require.NoError(t, w.WriteField(f[0], f[1]))
	}
	for name, text := range files {
		part, err := w.CreateFormFile("log", name)
		require.NoError(t, err)
		_, err = part.Write([]byte(text))
		require.NoError(t, err)
	}
	require.NoError(t, w.Close())
	return b.String(), w.FormDataContentType()
}

// cook is an hour at a temperature, a reading a second.
func cook(heading string, tempC float64) string {
	var b strings.Builder
	b.WriteString("time_s," + heading + "\n")
	for i := range 3600 {
		fmt.Fprintf(&b, "%d,%.1f\n", i, min(20+float64(i), tempC)+float64(i%3)/10)
	}
	return b.String()
}

func TestRecords(t *testing.T) {
	site, server := start(t)
	for name, c := range map[string]struct {
		fields [][2]string
		files  map[string]string
		want   string
	}{
		"meets":         {[][2]string{{"target", "F0 6 min"}}, map[string]string{"a.csv": cook("Can (°C)", 121.5)}, "a.csv: meets"},
		"falls short":   {[][2]string{{"target", "F0 6 min"}}, map[string]string{"a.csv": cook("Can (°C)", 90)}, "a.csv: falls short"},
		"ignored":       {[][2]string{{"target", "F0 6 min"}, {"of", "a.csv"}, {"heading", "Can"}, {"role", "retort"}}, map[string]string{"a.csv": cook("Can (°C)", 121.5)}, "a.csv: cannot tell"},
		"no unit":       {nil, map[string]string{"a.csv": cook("Can", 121.5)}, `no unit for temperature column &#34;Can&#34;; say which under Unit<`},
		"unit":          {[][2]string{{"unit", "C"}}, map[string]string{"a.csv": cook("Can", 121.5)}, "C, by declared"},
		"no record":     {nil, nil, "no record was chosen; drop a file, or choose one"},
		"no target":     {[][2]string{{"target", "much"}}, map[string]string{"a.csv": cook("Can", 121.5)}, "target: "},
		"hostile names": {nil, map[string]string{`..\..\<script>.csv`: cook("<img src=x onerror=alert(1)> (°C)", 121.5)}, "&lt;script&gt;.csv"},
	} {
		t.Run(name, func(t *testing.T) {
			body, kind := formOf(t, c.fields, c.files)
			resp, got := sent{method: "POST", path: "/records?part=yes", body: body, headers: map[string]string{"Content-Type": kind}}.to(t, server)
			require.Equal(t, http.StatusOK, resp.StatusCode, got)
			require.Contains(t, got, c.want)
			require.NotContains(t, got, "<img")
			require.NotContains(t, got, site.scratch, "no path of this machine is told")
			left, err := os.ReadDir(site.scratch)
			require.NoError(t, err)
			require.Empty(t, left)
		})
	}
}

func TestRecordsTooManyOrTooLarge(t *testing.T) {
	site, server := start(t)
	files := map[string]string{}
	for i := range mostFiles + 1 {
		files[itoa(i)+".csv"] = "x"
	}
	body, kind := formOf(t, nil, files)
	resp, got := sent{method: "POST", path: "/records", body: body, headers: map[string]string{"Content-Type": kind}}.to(t, server)
	require.Equal(t, 413, resp.StatusCode)
	require.Equal(t, "that is more than 20 files; send fewer at once\n", got)
	body, kind = formOf(t, nil, map[string]string{"a.csv": strings.Repeat("1,2\n", mostLogBytes/4)})
	resp, got = sent{method: "POST", path: "/records", body: body, headers: map[string]string{"Content-Type": kind}}.to(t, server)
	require.Equal(t, 413, resp.StatusCode)
	require.Equal(t, "that is larger than 64 MB; send less at once\n", got)
	resp, got = sent{method: "POST", path: "/records", body: "x"}.to(t, server)
	require.Equal(t, 415, resp.StatusCode)
	require.Equal(t, "this address takes files from a form\n", got)
	left, err := os.ReadDir(site.scratch)
	require.NoError(t, err)
	require.Empty(t, left)
}

func TestManyRecordsAtOnce(t *testing.T) {
	_, server := start(t)
	var group sync.WaitGroup
	for i := range 8 {
		group.Go(func() {
			name := "run-" + itoa(i) + ".csv"
			body, kind := formOf(t, nil, map[string]string{name: cook("Can (°C)", 100+float64(i))})
			resp, got := sent{method: "POST", path: "/records/save?as=csv", body: body, headers: map[string]string{"Content-Type": kind}}.to(t, server)
			if resp.StatusCode != 200 || strings.Count(got, "run-") != 1 || !strings.Contains(got, name) {
				t.Errorf("%s: %d", name, resp.StatusCode)
			}
		})
	}
	group.Wait()
}

func TestEdit(t *testing.T) {
	_, server := start(t)
	post := func(body string) (*http.Response, string) {
		return sent{method: "POST", path: "/spec/edit", body: body, headers: map[string]string{"Content-Type": "application/json"}}.to(t, server)
	}
	for name, c := range map[string]struct{ body, want string }{
		"set":         {`{"text":"[drink]\nname = \"x\"\n","set":{"Key":"measured.ph","Value":"3.2"}}`, `[measured]\nph = 3.2\n`},
		"taken out":   {`{"text":"[drink]\nname = \"x\"\nserving = \"1 L\"\n","set":{"Key":"drink.serving","Value":""}}`, `"text":"[drink]\nname = \"x\"\n"`},
		"no file key": {`{"text":"[drink]\nname = \"x\"\n","set":{"Key":"process.log","Value":"/etc/passwd"}}`, `"said":"the form has no such key"`},
		"no TOML":     {`{"text":"[drink\n","set":{"Key":"drink.name","Value":"y"}}`, `the text is not TOML as it stands`},
		"first":       {`{"text":"[drink]\nname = \"x\"\n"}`, `"said":"First assessment: class undecided, pH not known, `},
		"changed":     {`{"text":"[drink]\nname = \"x\"\n","before":{"class":"acid","ph":"3.10","findings":["stop a-b"],"left":["hot fill"]}}`, `Class was acid, is undecided. pH was 3.10, is not known. New: `},
	} {
		t.Run(name, func(t *testing.T) {
			resp, got := post(c.body)
			require.Equal(t, 200, resp.StatusCode)
			require.Contains(t, got, c.want)
		})
	}
	resp, got := post(`{"text":`)
	require.Equal(t, 400, resp.StatusCode)
	require.Equal(t, "what was sent is no JSON of this page\n", got)
	resp, got = sent{method: "POST", path: "/spec/edit", body: "{}"}.to(t, server)
	require.Equal(t, 415, resp.StatusCode)
	require.Equal(t, "this address takes application/json\n", got)
}

func BenchmarkEdit(b *testing.B) {
	site, err := New(optionsForTests)
	require.NoError(b, err)
	defer site.Close()
	text := starter()
	r, err := http.NewRequest("POST", "/", nil)
	require.NoError(b, err)
	for b.Loop() {
		if _, _, err := site.assessText(r, text, false); err != nil {
			b.Fatal(err)
		}
	}
}

// TestNoCreditIsRoundedUp holds the page to what the report does: a credit that
// falls short of a target never reads as the target.
func TestNoCreditIsRoundedUp(t *testing.T) {
	short := 5.9999
	require.Equal(t, "5.99", (&recordsAnswer{}).Credited(&short))
	require.Equal(t, "-", (&recordsAnswer{}).Credited(nil))
}
