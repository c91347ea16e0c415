package facts

import "strings"

// isCoffee and isTea tell the two extracts that additive law names from the rest.
func isCoffee(name string) bool {
	n := strings.ToLower(name)
	return strings.Contains(n, "coffee") || strings.Contains(n, "cold brew")
}

func isTea(name string) bool { return strings.Contains(strings.ToLower(name), "tea ") }
