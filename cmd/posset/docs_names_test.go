package main

import (
	"go/ast"
	"go/token"
	"go/types"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"go/constant"
)

// homes are the packages that the pages speak of.
var homes = map[string]string{
	"thermal": "thermal", "logfile": "thermal/logfile", "heatpen": "thermal/heatpen", "holdtube": "thermal/holdtube",
	"acid": "acid", "carbonation": "carbonation", "beverage": "beverage", "quantity": "beverage/quantity", "spec": "beverage/spec",
	"ingredient": "beverage/ingredient", "protein": "beverage/protein", "law": "beverage/law", "facts": "beverage/facts",
	"need": "beverage/need", "rule": "beverage/rule", "route": "beverage/route", "assess": "beverage/assess",
}

// goName is a name of the code in a page: `thermal.Reference.TrefC`, with the
// value that the page says it has: `acid.EndPointPH` = 8.1.
var goName = regexp.MustCompile("`([a-z]+)\\.([A-Za-z][A-Za-z0-9]*(?:\\.[A-Za-z0-9]+)?)`(?: = (-?[0-9][0-9.e-]*))?")

// What a page names is in the code, and a figure beside it is the code's.
func TestDocsNameWhatIsThere(t *testing.T) {
	known := map[string]map[string]ast.Expr{}
	named, figures := 0, 0
	for _, page := range written {
		text, err := os.ReadFile(docs + page)
		require.NoError(t, err)
		for _, m := range goName.FindAllStringSubmatch(string(text), -1) {
			dir, ok := homes[m[1]]
			if !ok {
				continue
			}
			if known[dir] == nil {
				known[dir] = declared(t, "../../"+dir)
			}
			value, ok := known[dir][m[2]]
			if !ok {
				t.Errorf("%s names %s.%s, which is not in %s", page, m[1], m[2], dir)
				continue
			}
			named++
			if m[3] != "" {
				figures++
				holdFigure(t, page, m, value, known[dir])
			}
		}
	}
	require.Greater(t, named, 60)
	require.Greater(t, figures, 20)
}

func holdFigure(t *testing.T, page string, m []string, value ast.Expr, known map[string]ast.Expr) {
	want, err := strconv.ParseFloat(strings.TrimSuffix(m[3], "."), 64)
	require.NoError(t, err)
	got, ok := evaluated(value, known)
	if !ok || !(math.Abs(got-want) <= 1e-12*math.Abs(want)) {
		t.Errorf("%s: %s.%s is said to be %s and is %v", page, m[1], m[2], m[3], got)
	}
}

// evaluated works out the value of a constant, which may rest on others.
func evaluated(value ast.Expr, known map[string]ast.Expr) (float64, bool) {
	if value == nil {
		return 0, false
	}
	text := expression(value, known, 0)
	v, err := types.Eval(token.NewFileSet(), nil, token.NoPos, text)
	if err != nil || v.Value == nil {
		return 0, false
	}
	f, _ := constant.Float64Val(constant.ToFloat(v.Value))
	return f, true
}

// expression writes an expression with the constants in it worked out.
func expression(e ast.Expr, known map[string]ast.Expr, depth int) string {
	switch x := e.(type) {
	case *ast.BasicLit:
		return x.Value
	case *ast.ParenExpr:
		return "(" + expression(x.X, known, depth) + ")"
	case *ast.UnaryExpr:
		return x.Op.String() + expression(x.X, known, depth)
	case *ast.BinaryExpr:
		return "(" + expression(x.X, known, depth) + ")" + x.Op.String() + "(" + expression(x.Y, known, depth) + ")"
	case *ast.Ident:
		if inner := known[x.Name]; inner != nil && depth < 8 {
			return "(" + expression(inner, known, depth+1) + ")"
		}
	}
	return "unknown"
}

// declared are the names of a package: "Name", "Type.Field", "Type.Method"; of a
// constant with its value.
func declared(t *testing.T, dir string) map[string]ast.Expr {
	names := map[string]ast.Expr{}
	for _, f := range parsed(t, dir) {
		for _, d := range f.Decls {
			switch d := d.(type) {
			case *ast.FuncDecl:
				names[receiver(d)+d.Name.Name] = nil
			case *ast.GenDecl:
				for _, s := range d.Specs {
					declare(s, names)
				}
			}
		}
	}
	return names
}

func receiver(d *ast.FuncDecl) string {
	if d.Recv == nil {
		return ""
	}
	of := d.Recv.List[0].Type
	if p, ok := of.(*ast.StarExpr); ok {
		of = p.X
	}
	if name, ok := of.(*ast.Ident); ok {
		return name.Name + "."
	}
	return "?."
}

func declare(s ast.Spec, names map[string]ast.Expr) {
	switch s := s.(type) {
	case *ast.ValueSpec:
		for i, n := range s.Names {
			names[n.Name] = nil
			if i < len(s.Values) {
				names[n.Name] = s.Values[i]
			}
		}
	case *ast.TypeSpec:
		names[s.Name.Name] = nil
		if st, ok := s.Type.(*ast.StructType); ok {
			for _, f := range st.Fields.List {
				for _, n := range f.Names {
					names[s.Name.Name+"."+n.Name] = nil
				}
			}
		}
	}
}

// The JSON names of the nomenclature are fields of some result or keys of the
// spec.
func TestDocsNameJSONFieldsThatAreThere(t *testing.T) {
	fields := map[string]bool{}
	for _, of := range meanings(t) {
		for name := range of {
			fields[name] = true
		}
	}
	text, err := os.ReadFile(docs + "nomenclature.md")
	require.NoError(t, err)
	found := 0
	for _, line := range strings.Split(string(text), "\n") {
		cells := strings.Split(strings.Trim(line, "| "), " | ")
		if len(cells) != 5 || !strings.HasPrefix(line, "|") {
			continue
		}
		for _, m := range regexp.MustCompile("`([a-z][a-z0-9_]*)`").FindAllStringSubmatch(cells[4], -1) {
			found++
			if !fields[m[1]] {
				t.Errorf("nomenclature.md names the field %s, which is in no result", m[1])
			}
		}
	}
	require.Greater(t, found, 30)
}

var (
	pageLink    = regexp.MustCompile(`\]\(([^)\s#]*)(?:#([^)\s]+))?\)`)
	pageHeading = regexp.MustCompile(`(?m)^#+ (.*)$`)
	notInAnchor = regexp.MustCompile(`[^\p{L}\p{N} _-]`)
)

// Every link of a page leads to a file, and to a heading where it names one.
func TestDocsLinksLead(t *testing.T) {
	pages, err := filepath.Glob(docs + "*.md")
	require.NoError(t, err)
	found := 0
	for _, page := range pages {
		text, err := os.ReadFile(page)
		require.NoError(t, err)
		for _, m := range pageLink.FindAllStringSubmatch(string(text), -1) {
			if strings.Contains(m[1], "://") {
				continue
			}
			found++
			target := page
			if m[1] != "" {
				target = filepath.Join(filepath.Dir(page), m[1])
			}
			if _, err := os.Stat(target); err != nil {
				t.Errorf("%s: %v", page, err)
			} else if m[2] != "" && !anchors(t, target)[m[2]] {
				t.Errorf("%s: %s has no heading #%s", page, target, m[2])
			}
		}
	}
	require.Greater(t, found, 40)
}

// anchors are the headings of a page as links name them.
func anchors(t *testing.T, page string) map[string]bool {
	text, err := os.ReadFile(page)
	require.NoError(t, err)
	names := map[string]bool{}
	for _, m := range pageHeading.FindAllStringSubmatch(string(text), -1) {
		names[strings.ReplaceAll(strings.ToLower(notInAnchor.ReplaceAllString(m[1], "")), " ", "-")] = true
	}
	return names
}
