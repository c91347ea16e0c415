package main

import (
	"fmt"
	"runtime"
	"runtime/debug"

	"posset/beverage"
)

// version is what results name as the tool's version.
const version = "0.1.0"

const shortCommit = 12 // characters of a commit's hash

// versionLine is the version with the commit that the binary was built from.
func versionLine() string {
	commit, changed := "unknown", ""
	if info, ok := debug.ReadBuildInfo(); ok {
		for _, s := range info.Settings {
			switch {
			case s.Key == "vcs.revision" && s.Value != "":
				commit = s.Value[:min(len(s.Value), shortCommit)]
			case s.Key == "vcs.modified" && s.Value == "true":
				changed = ", changed since"
			}
		}
	}
	return fmt.Sprintf("posset %s (commit %s%s; %s %s/%s)", version, commit, changed, runtime.Version(), runtime.GOOS, runtime.GOARCH)
}

// tool is what results name as their maker.
func tool() beverage.Tool { return beverage.Tool{Name: "posset", Version: version} }
