package web

import (
	"context"
	"io"
	"net"
	"net/http"
	"net/http/httptest"
	"net/url"
	"os"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"posset/beverage/assess"
)

var optionsForTests = assess.Options{Version: "test"}

func start(t *testing.T) (*Site, *httptest.Server) {
	site, err := New(optionsForTests)
	require.NoError(t, err)
	server := httptest.NewServer(site.Handler())
	t.Cleanup(func() { server.Close(); require.NoError(t, site.Close()) })
	return site, server
}

type sent struct {
	method, path, body string
	host               string
	headers            map[string]string
}

func (q sent) to(t *testing.T, server *httptest.Server) (*http.Response, string) {
	r, err := http.NewRequest(q.method, server.URL+q.path, strings.NewReader(q.body))
	require.NoError(t, err)
	if q.host != "" {
		r.Host = q.host
	}
	if q.method == http.MethodPost {
		r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
	}
	for k, v := range q.headers {
		r.Header.Set(k, v)
	}
	resp, err := http.DefaultClient.Do(r)
	require.NoError(t, err)
	defer resp.Body.Close()
	body, err := io.ReadAll(resp.Body)
	require.NoError(t, err)
	return resp, string(body)
}

const (
	otherName = "this page is not known under that name; open the address that posset serve printed\n"
	otherSite = "another site asked; open the address that posset serve printed\n"
)

func TestOnlyOwnNamesAndOrigins(t *testing.T) {
	_, server := start(t)
	port := server.Listener.Addr().(*net.TCPAddr).Port
	own := "http://127.0.0.1:" + itoa(port)
	for name, c := range map[string]struct {
		sent
		status int
		body   string // "" is not looked at
	}{
		"plain":                {sent{method: "GET", path: "/"}, 200, ""},
		"localhost":            {sent{method: "GET", path: "/", host: "localhost:" + itoa(port)}, 200, ""},
		"ipv6":                 {sent{method: "GET", path: "/", host: "[::1]:" + itoa(port)}, 200, ""},
		"rebound name":         {sent{method: "GET", path: "/", host: "evil.example:" + itoa(port)}, 421, otherName},
		"other port":           {sent{method: "GET", path: "/", host: "127.0.0.1:1"}, 421, otherName},
		"no port":              {sent{method: "GET", path: "/", host: "127.0.0.1"}, 421, otherName},
		"name with tail":       {sent{method: "GET", path: "/", host: "localhost.evil.example:" + itoa(port)}, 421, otherName},
		"own origin":           {sent{method: "POST", path: "/drink", headers: map[string]string{"Origin": own}}, 200, ""},
		"other origin":         {sent{method: "POST", path: "/drink", headers: map[string]string{"Origin": "http://evil.example"}}, 403, otherSite},
		"other origin, get":    {sent{method: "GET", path: "/", headers: map[string]string{"Origin": "http://evil.example"}}, 403, otherSite},
		"no origin at all":     {sent{method: "POST", path: "/drink", headers: map[string]string{"Origin": "null"}}, 403, otherSite},
		"other scheme":         {sent{method: "POST", path: "/drink", headers: map[string]string{"Origin": strings.Replace(own, "http", "https", 1)}}, 403, otherSite},
		"own, by another name": {sent{method: "POST", path: "/drink", host: "localhost:" + itoa(port), headers: map[string]string{"Origin": own}}, 403, otherSite},
		"other site":           {sent{method: "POST", path: "/drink", headers: map[string]string{"Sec-Fetch-Site": "cross-site"}}, 403, otherSite},
		"picture of a site":    {sent{method: "GET", path: "/", headers: map[string]string{"Sec-Fetch-Site": "cross-site", "Sec-Fetch-Mode": "no-cors"}}, 403, otherSite},
		"link of a site":       {sent{method: "GET", path: "/", headers: map[string]string{"Sec-Fetch-Site": "cross-site", "Sec-Fetch-Mode": "navigate"}}, 200, ""},
		"preflight":            {sent{method: "OPTIONS", path: "/spec/edit", headers: map[string]string{"Origin": "http://evil.example"}}, 403, otherSite},
		"unknown":              {sent{method: "GET", path: "/etc/passwd"}, 404, "there is no such page; start at /\n"},
		"unknown, climbing":    {sent{method: "GET", path: "/%2e%2e/%2e%2e/etc/passwd"}, 404, "there is no such page; start at /\n"},
	} {
		t.Run(name, func(t *testing.T) {
			resp, body := c.to(t, server)
			require.Equal(t, c.status, resp.StatusCode, body)
			if c.body != "" {
				require.Equal(t, c.body, body)
			}
			for k, v := range headers {
				require.Equal(t, v, resp.Header.Get(k), k)
			}
			for k := range resp.Header {
				require.False(t, strings.HasPrefix(k, "Access-Control-"), k)
				require.NotEqual(t, "Set-Cookie", k)
			}
		})
	}
}

func TestAnotherMachineIsRefused(t *testing.T) {
	site, _ := start(t)
	r := httptest.NewRequest("GET", "/", nil)
	r.RemoteAddr = "192.0.2.7:4000"
	w := httptest.NewRecorder()
	site.Handler().ServeHTTP(w, r)
	require.Equal(t, 403, w.Code)
	require.Equal(t, "this page answers the machine it runs on, and no other\n", w.Body.String())
}

func TestPagesRunNoScriptOfTheirOwn(t *testing.T) {
	_, server := start(t)
	for _, path := range []string{"/", "/drink?example=yes", "/spec"} {
		resp, body := sent{method: "GET", path: path}.to(t, server)
		require.Equal(t, 200, resp.StatusCode)
		require.Equal(t, 1, strings.Count(body, "<script"))
		require.Contains(t, body, `<script src="/page.js" defer></script>`)
		require.NotContains(t, body, " style=")
		require.NotContains(t, body, "<style")
		require.NotRegexp(t, ` on[a-z]+=`, body)
		require.NotRegexp(t, `(src|href|action)="(https?:)?//`, body)
	}
}

func TestSizes(t *testing.T) {
	_, server := start(t)
	resp, body := sent{method: "POST", path: "/spec", body: "text=" + strings.Repeat("a", mostFormBytes)}.to(t, server)
	require.Equal(t, 413, resp.StatusCode)
	require.Equal(t, "that is larger than 4 MB; send less at once\n", body)
	resp, body = sent{method: "POST", path: "/spec", body: "text=" + strings.Repeat("a", mostSpecBytes+1)}.to(t, server)
	require.Equal(t, 413, resp.StatusCode)
	require.Equal(t, "that is larger than 1 MB; send less at once\n", body)
}

func TestNoFileOfASpecIsOpened(t *testing.T) {
	_, server := start(t)
	t.Chdir(t.TempDir())
	require.NoError(t, os.WriteFile("ours.toml", []byte("[[ingredient]]\nname = \"mine\"\n"), 0o600))
	for _, c := range []struct{ text, want string }{
		{"[drink]\nname = 'x'\ningredient_files = ['ours.toml']\n", "drink.toml:3: drink.ingredient_files: names a file"},
		{"[drink]\nname = 'x'\n[process]\nlog = 'ours.toml'\n", "drink.toml:4: process.log: names a file"},
		{"[drink]\nname = 'x'\n[[process.record]]\nfile = 'ours.toml'\n", "drink.toml:4: process.record: names a file"},
		{"process = { \"log\" = 'ours.toml' }\n[drink]\nname = 'x'\n", "drink.toml:1: process.log: names a file"},
		{"process.record = [{ file = 'ours.toml' }]\n[drink]\nname = 'x'\n", "drink.toml:1: process.record: names a file"},
	} {
		_, err := readSpec(c.text)
		require.EqualError(t, err, c.want+", and this page opens none; take the key out, and use posset check or the page for records")
		_, body := sent{method: "POST", path: "/spec", body: url.Values{"text": {c.text}}.Encode()}.to(t, server)
		require.Contains(t, body, c.want)
	}
}

// TestNowhereIsNoFolder holds what stands behind the refusal: even a name that
// got through opens nothing.
func TestNowhereIsNoFolder(t *testing.T) {
	_, err := os.Stat(nowhere + "/ours.toml")
	require.ErrorContains(t, err, "invalid argument")
}

func TestAFaultIsOneLine(t *testing.T) {
	site, _ := start(t)
	h := site.within(1, time.Minute, func(*http.Request) (answer, error) { panic("no paper") })
	w := httptest.NewRecorder()
	h.ServeHTTP(w, httptest.NewRequest("GET", "/", nil))
	require.Equal(t, 500, w.Code)
	require.Equal(t, "a fault of the program, not of your input; nothing was decided\n", w.Body.String())
}

func TestHostileNamesAreText(t *testing.T) {
	_, server := start(t)
	hostile := "<script>alert(1)</script>\u202e\x1b[2J\" onload=\"x"
	form := exampleForm()
	form.Set("drink.name", hostile)
	form.Add("ingredient", hostile)
	for _, path := range []string{"/drink", "/drink/spec"} {
		_, body := sent{method: "POST", path: path, body: form.Encode()}.to(t, server)
		require.NotContains(t, body, "\x1b")
		if path == "/drink" {
			require.NotContains(t, body, "\u202e")
			require.NotContains(t, body, "<script>alert")
			require.Contains(t, body, "What is it called?: ")
		}
	}
	form.Set("drink.name", "<script>alert(1)</script>")
	form["ingredient"] = form["ingredient"][:3]
	resp, body := sent{method: "POST", path: "/drink", body: form.Encode()}.to(t, server)
	require.Equal(t, 200, resp.StatusCode)
	require.NotContains(t, body, "<script>alert")
	require.Contains(t, body, "&lt;script&gt;alert(1)&lt;/script&gt;")
	form.Set("disclose", "full")
	resp, body = sent{method: "POST", path: "/drink/brief", body: form.Encode()}.to(t, server)
	require.Equal(t, "attachment; filename=script-alert-1-script-brief.html", resp.Header.Get("Content-Disposition"))
	require.NotContains(t, body, "<script")
}

func TestFileNames(t *testing.T) {
	for name, want := range map[string]string{
		"Quince clear": "quince-clear.toml", "": "drink.toml", "../../etc/passwd": "etc-passwd.toml", "酒": "drink.toml",
		"con\r\nSet-Cookie: x": "con-set-cookie-x.toml", strings.Repeat("a", 300): strings.Repeat("a", 60) + ".toml",
	} {
		require.Equal(t, want, fileName(name, ".toml"))
	}
}

func TestManyAtOnce(t *testing.T) {
	_, server := start(t)
	var group sync.WaitGroup
	for i := range 24 {
		group.Go(func() {
			form := exampleForm()
			form.Set("drink.name", "drink "+itoa(i))
			resp, body := sent{method: "POST", path: "/drink", body: form.Encode()}.to(t, server)
			if resp.StatusCode != 200 || !strings.Contains(body, `value="drink `+itoa(i)+`"`) || strings.Contains(body, `value="drink `+itoa(i+1)+`"`) {
				t.Errorf("request %d: %d", i, resp.StatusCode)
			}
		})
	}
	group.Wait()
}

func TestServeStopsWhenToldTo(t *testing.T) {
	site, err := New(optionsForTests)
	require.NoError(t, err)
	listeners, err := Listen(0)
	require.NoError(t, err)
	for _, l := range listeners {
		require.True(t, l.Addr().(*net.TCPAddr).IP.IsLoopback())
	}
	ctx, cancel := context.WithCancel(context.Background())
	done := make(chan error, 1)
	go func() { done <- site.Serve(ctx, listeners) }()
	resp, err := http.Get("http://" + listeners[0].Addr().String() + "/")
	require.NoError(t, err)
	resp.Body.Close()
	hanging, err := net.Dial("tcp", listeners[0].Addr().String())
	require.NoError(t, err)
	defer hanging.Close()
	_, err = hanging.Write([]byte("POST /drink HTTP/1.1\r\n"))
	require.NoError(t, err)
	began := time.Now()
	cancel()
	select {
	case err := <-done:
		require.NoError(t, err)
	case <-time.After(5 * time.Second):
		t.Fatal("still running")
	}
	require.Less(t, time.Since(began), time.Second, "main waits no longer than that")
	require.NoError(t, site.Close())
	require.NoDirExists(t, site.scratch)
}
