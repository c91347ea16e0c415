package main

import (
	"encoding/json"
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A module's line in docs/dependencies.md: its name, where it is used, its
// licence, and a reason that is not empty.
var dependencyLine = regexp.MustCompile(`(?m)^\| (\S+/\S+) \| (binary|tests|tool) \| ([^|]+) \| [^|]{3,} \|$`)

// licenceSigns are words that only one of the licences has.
var licenceSigns = []struct{ licence, sign string }{
	{"MIT", "Permission is hereby granted, free of charge"},
	{"BSD-3-Clause", "Redistribution and use in source and binary forms"},
	{"Apache-2.0", "Apache License"},
	{"MPL-2.0", "Mozilla Public License"},
}

func TestDependenciesDocument(t *testing.T) {
	page, err := os.ReadFile("../../docs/dependencies.md")
	require.NoError(t, err)
	linked := linkedModules(t)
	told := map[string]string{}
	for _, m := range dependencyLine.FindAllStringSubmatch(string(page), -1) {
		told[m[1]] = m[3]
		assert.Equal(t, linked[m[1]], m[2] == "binary", "%s: whether it is in a binary", m[1])
	}
	for name, dir := range requiredModules(t) {
		licence, ok := told[name]
		if assert.True(t, ok, "docs/dependencies.md has no line for %s", name) && dir != "" {
			assert.Equal(t, licenceIn(t, dir), licence, name)
		}
		delete(told, name)
	}
	assert.Empty(t, told, "docs/dependencies.md names what go.mod does not")
}

// requiredModules returns the modules that go.mod requires, each with its
// folder; empty where it was never fetched.
func requiredModules(t *testing.T) map[string]string {
	var mod struct{ Require []struct{ Path string } }
	require.NoError(t, json.Unmarshal(goOutput(t, "mod", "edit", "-json"), &mod))
	all := map[string]string{}
	args := []string{"list", "-m", "-f", "{{.Path}}\t{{.Dir}}"}
	for _, r := range mod.Require {
		args = append(args, r.Path)
	}
	for line := range strings.Lines(string(goOutput(t, args...))) {
		name, dir, _ := strings.Cut(strings.TrimSpace(line), "\t")
		all[name] = dir
	}
	return all
}

// linkedModules are those in a binary for any of the platforms.
func linkedModules(t *testing.T) map[string]bool {
	linked := map[string]bool{}
	for _, system := range []string{"linux", "windows", "darwin"} {
		t.Setenv("GOOS", system)
		for _, name := range strings.Fields(string(goOutput(t, "list", "-deps", "-f", "{{with .Module}}{{.Path}}{{end}}", "."))) {
			linked[name] = true
		}
	}
	return linked
}

func goOutput(t *testing.T, args ...string) []byte {
	out, err := exec.Command("go", args...).Output()
	var exit *exec.ExitError
	if errors.As(err, &exit) {
		t.Fatalf("go %s: %s", strings.Join(args, " "), exit.Stderr)
	}
	require.NoError(t, err)
	return out
}

func licenceIn(t *testing.T, dir string) string {
	var all []string
	for _, name := range []string{"LICEN[CS]E", "LICEN[CS]E.*", "COPYING"} {
		files, err := filepath.Glob(filepath.Join(dir, name))
		require.NoError(t, err)
		for _, file := range files {
			text, err := os.ReadFile(file)
			require.NoError(t, err)
			for _, s := range licenceSigns {
				if strings.Contains(string(text), s.sign) {
					all = append(all, s.licence)
				}
			}
		}
	}
	return strings.Join(all, " and ")
}
