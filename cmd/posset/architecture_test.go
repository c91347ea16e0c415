package main

import (
	"encoding/json"
	"errors"
	"io"
	"os/exec"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// order is the house, from the ground up: a package may import what stands in an
// earlier row, and what its own row allows. DEVELOPERS.md draws the same order.
var order = [][]string{
	{"thermal", "acid", "carbonation", "beverage/quantity"},
	{"thermal/logfile", "thermal/heatpen", "thermal/holdtube", "beverage"},
	{"beverage/spec", "beverage/law", "beverage/ingredient", "beverage/protein"},
	{"beverage/facts"},
	{"beverage/need"},
	{"beverage/rule"},
	{"beverage/route"},
	{"beverage/assess"},
	{"beverage/sweep", "beverage/copacker", "beverage/starter", "beverage/checkvalue"},
	{"beverage/report"},
	{"cmd/posset"},
}

// listed is what `go list -json` tells of a package that concerns us here.
type listed struct {
	ImportPath string
	Imports    []string
}

func packages(t *testing.T) []listed {
	out, err := exec.Command("go", "list", "-json=ImportPath,Imports", "posset/...").Output()
	require.NoError(t, err)
	var list []listed
	d := json.NewDecoder(strings.NewReader(string(out)))
	for {
		var p listed
		if err := d.Decode(&p); errors.Is(err, io.EOF) {
			return list
		} else {
			require.NoError(t, err)
		}
		list = append(list, p)
	}
}

// row is the place of a package in the house; one that stands below a listed
// package (beverage/report/chart, cmd/posset/internal/web) shares its row.
func row(path string) int {
	path = strings.TrimPrefix(path, "posset/")
	best, at := -1, -1
	for i, names := range order {
		for _, n := range names {
			if (path == n || strings.HasPrefix(path, n+"/")) && len(n) > best {
				best, at = len(n), i
			}
		}
	}
	return at
}

func TestImportsRunOneWay(t *testing.T) {
	list := packages(t)
	require.NotEmpty(t, list)
	for _, p := range list {
		here := row(p.ImportPath)
		require.GreaterOrEqual(t, here, 0, "%s has no place in the house", p.ImportPath)
		for _, i := range p.Imports {
			if !strings.HasPrefix(i, "posset/") {
				continue
			}
			sameHouse := strings.HasPrefix(i, p.ImportPath+"/") || row(i) == here && here >= len(order)-2
			if row(i) >= here && !sameHouse {
				t.Errorf("%s imports %s, which does not stand below it", p.ImportPath, i)
			}
		}
	}
}

// Physics is pure: it knows numbers, not drinks, and its root packages do no I/O.
func TestPhysicsStandsAlone(t *testing.T) {
	for _, p := range packages(t) {
		name := strings.TrimPrefix(p.ImportPath, "posset/")
		root, _, _ := strings.Cut(name, "/")
		if !slices.Contains([]string{"thermal", "acid", "carbonation"}, root) {
			continue
		}
		for _, i := range p.Imports {
			if strings.HasPrefix(i, "posset/") && !strings.HasPrefix(i, "posset/"+root) {
				t.Errorf("%s imports %s", name, i)
			}
			if name == root && slices.Contains([]string{"os", "net", "net/http", "os/exec"}, i) {
				t.Errorf("%s does I/O by %s", name, i)
			}
		}
	}
}

func TestOnlyCommandsImportCobra(t *testing.T) {
	for _, p := range packages(t) {
		if slices.Contains(p.Imports, "github.com/spf13/cobra") && !strings.HasPrefix(p.ImportPath, "posset/cmd/") {
			t.Errorf("%s imports cobra", p.ImportPath)
		}
	}
}
