package web

import (
	"bytes"
	"context"
	"io"
	"net"
	"net/http"
	"net/http/httptest"
	"net/url"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// canary stands in files beside the site that no answer may ever hold.
const canary = "canary-of-the-file-that-nobody-opens"

// soundStatuses are all that a request can be answered with. A fault of the
// program is none.
var soundStatuses = []int{200, 301, 307, 308, 400, 403, 404, 405, 413, 415, 421, 422, 503}

// FuzzHandler sends anything to the site: it never fails, never opens what a
// request names, and never sends a script of the sender back.
func FuzzHandler(f *testing.F) {
	f.Chdir(f.TempDir())
	require.NoError(f, os.WriteFile("ours.toml", []byte("[[ingredient]]\nname = \""+canary+"\"\n"), 0o600))
	require.NoError(f, os.WriteFile("run.csv", []byte("time_s,"+canary+" (C)\n0,20\n60,121\n"), 0o600))
	site, err := New(optionsForTests)
	require.NoError(f, err)
	f.Cleanup(func() { site.Close() })
	handler := site.Handler()
	const form, multipart, json = "application/x-www-form-urlencoded", "multipart/form-data; boundary=b", "application/json"
	add := func(method, target, kind, body string) {
		f.Add(method, target, kind, "http://127.0.0.1:8617", true, []byte(body))
	}
	for _, path := range []string{"/", "/drink", "/drink?example=yes", "/spec", "/records", "/page.css", "/page.js", "/mark.svg", "//etc/passwd", "/..%2f..%2fetc%2fpasswd", "/spec/../../x"} {
		add("GET", path, "", "")
	}
	for _, path := range []string{"/drink", "/drink/brief", "/drink/spec"} {
		add("POST", path, form, exampleForm().Encode())
	}
	example := url.Values{"text": {starter()}}.Encode()
	for _, path := range []string{"/spec", "/spec/save", "/spec/report"} {
		add("POST", path, form, example)
		add("POST", path, form, url.Values{"text": {"[drink]\nname = 'x'\ningredient_files = ['ours.toml']\n"}}.Encode())
		add("POST", path, form, url.Values{"text": {"[process]\nlog = 'run.csv'\n[drink]\nname = '<script>'\n"}}.Encode())
	}
	add("POST", "/spec/edit", json, `{"text":"[drink]\nname = \"x\"\n","set":{"Key":"measured.ph","Value":"3.2"},"before":{"class":"<script>"}}`)
	add("POST", "/spec/edit", json, `{"text":"","add":"ingredient"}`)
	record := "--b\r\nContent-Disposition: form-data; name=\"log\"; filename=\"../run.csv\"\r\n\r\ntime_s,Can 1 (C)\n0,20\n60,121\n120,121\n\r\n--b\r\nContent-Disposition: form-data; name=\"target\"\r\n\r\nF0 6 min\r\n--b--\r\n"
	for _, path := range []string{"/records", "/records?part=yes", "/records/save?as=csv", "/records/save?as=html", "/records/save?as=xlsx", "/records/save?as=no"} {
		add("POST", path, multipart, record)
	}
	add("POST", "/drink", multipart, "--b\r\nContent-Disposition: form-data; name=\"lines_file\"; filename=\"/etc/passwd\"\r\n\r\n[[line]]\nname = \"<script>\"\n\r\n--b--\r\n")
	f.Fuzz(func(t *testing.T, method, target, kind, origin string, own bool, body []byte) {
		at, err := url.ParseRequestURI(target)
		if err != nil || !strings.HasPrefix(target, "/") {
			return
		}
		r := &http.Request{Method: method, URL: at, RequestURI: target, Proto: "HTTP/1.1", ProtoMajor: 1, ProtoMinor: 1, Header: http.Header{}, Host: "evil.example", RemoteAddr: "127.0.0.1:4000",
			Body: io.NopCloser(bytes.NewReader(body)), ContentLength: int64(len(body))}
		if own {
			r.Host = "127.0.0.1:8617"
		}
		for name, value := range map[string]string{"Content-Type": kind, "Origin": origin} {
			if value != "" {
				r.Header.Set(name, value)
			}
		}
		r = r.WithContext(context.WithValue(t.Context(), http.LocalAddrContextKey, &net.TCPAddr{IP: net.IPv4(127, 0, 0, 1), Port: 8617}))
		w := httptest.NewRecorder()
		handler.ServeHTTP(w, r)
		got := w.Body.String()
		if !slices.Contains(soundStatuses, w.Code) {
			t.Fatalf("status %d: %.300s", w.Code, got)
		}
		if !own && w.Code != http.StatusMisdirectedRequest {
			t.Fatalf("another name is answered with %d", w.Code)
		}
		if own && origin != "" && origin != "http://127.0.0.1:8617" && w.Code != http.StatusForbidden {
			t.Fatalf("another origin is answered with %d", w.Code)
		}
		for name, value := range headers {
			if w.Header().Get(name) != value {
				t.Fatalf("the header %s is %q", name, w.Header().Get(name))
			}
		}
		if strings.Contains(got, canary) || strings.Contains(got, site.scratch) {
			t.Fatal("the answer holds what a request may not reach")
		}
		if strings.HasPrefix(w.Header().Get("Content-Type"), "text/html") && strings.Count(strings.ToLower(got), "<script") > 1 {
			t.Fatal("the page holds a script that is not its own")
		}
		if left, _ := filepath.Glob(filepath.Join(site.scratch, "*")); len(left) > 0 {
			t.Fatalf("left behind: %v", left)
		}
	})
}
