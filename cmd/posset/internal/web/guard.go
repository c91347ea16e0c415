package web

import (
	"net"
	"net/http"
	"net/netip"
	"strconv"
)

// policy lets a page load its own style, script and pictures, talk to where it
// came from, and nothing else; no script stands in a page itself.
const policy = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'"

// headers go with every answer, errors too. The referrer is kept within the
// site, for without it a browser sends no origin with a form.
var headers = map[string]string{
	"Content-Security-Policy":      policy,
	"X-Content-Type-Options":       "nosniff",
	"X-Frame-Options":              "DENY",
	"Referrer-Policy":              "same-origin",
	"Cross-Origin-Opener-Policy":   "same-origin",
	"Cross-Origin-Resource-Policy": "same-origin",
	"Permissions-Policy":           "camera=(), geolocation=(), microphone=()",
	"Cache-Control":                "no-store",
}

// guarded lets through what comes from this machine, from a page of this very
// site, under a name that only this machine can have. A name that some outside
// server points at this machine (DNS rebinding) is none.
func guarded(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		for name, value := range headers {
			w.Header().Set(name, value)
		}
		switch {
		case !isLocal(r):
			tell(w, http.StatusForbidden, "this page answers the machine it runs on, and no other")
		case !isOwnName(r):
			tell(w, http.StatusMisdirectedRequest, "this page is not known under that name; open the address that posset serve printed")
		case !isOwnOrigin(r):
			tell(w, http.StatusForbidden, "another site asked; open the address that posset serve printed")
		default:
			next.ServeHTTP(w, r)
		}
	})
}

func isLocal(r *http.Request) bool {
	from, err := netip.ParseAddrPort(r.RemoteAddr)
	return err == nil && from.Addr().Unmap().IsLoopback()
}

func isOwnName(r *http.Request) bool {
	at, ok := r.Context().Value(http.LocalAddrContextKey).(*net.TCPAddr)
	if !ok {
		return false
	}
	port := strconv.Itoa(at.Port)
	for _, name := range []string{"127.0.0.1", "::1", "localhost"} {
		if r.Host == net.JoinHostPort(name, port) {
			return true
		}
	}
	return false
}

// isOwnOrigin asks for the origin wherever a browser tells one. Programs that
// are no browsers tell none, and no web page can make them ask.
func isOwnOrigin(r *http.Request) bool {
	if origins := r.Header.Values("Origin"); len(origins) > 0 {
		return len(origins) == 1 && origins[0] == "http://"+r.Host
	}
	switch r.Header.Get("Sec-Fetch-Site") {
	case "", "same-origin", "none":
		return true
	}
	return r.Method == http.MethodGet && r.Header.Get("Sec-Fetch-Mode") == "navigate" // a link to the page
}
