//go:build race

package web

// raced tells that the race detector watches.
const raced = true
