package main

import (
	"go/ast"
	"go/parser"
	"go/token"
	"reflect"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"posset/beverage"
	"posset/beverage/assess"
	"posset/beverage/spec"
)

// mayBeNull are plain figures and words that print as null where they are not
// known: JSON has no other way to say so.
var mayBeNull = map[string]bool{
	"AcidClass.ph_basis": true, "FormulaLine.kind": true, "IngredientEntry.kind": true, "copacker.LineResult.by_route": true, "sweep.Point.ph_basis": true,
	"ProteinBehaviour.kind_basis": true, "ProteinBehaviour.isoelectric_basis": true, "ProteinBehaviour.soluble_basis": true, "ProteinBehaviour.looks_basis": true,
	"Verified.ours": true, "Verified.difference": true,
}

// valueSchema is the schema of one field; at is "Type.field".
func valueSchema(t *testing.T, at string, typ reflect.Type) object {
	if typ == reflect.TypeOf(beverage.Text("")) {
		return orNull(object{{"type", "string"}})
	}
	words := wordsOf(t, at, typ)
	switch kind := typ.Kind(); {
	case kind == reflect.Pointer:
		return orNull(valueSchema(t, at, typ.Elem()))
	case words != nil && mayBeNull[at]:
		return object{{"enum", append(words, nil)}}
	case words != nil:
		return object{{"enum", words}}
	case typ == reflect.TypeOf(map[string]any{}):
		return object{{"type", "object"}, {"additionalProperties", object{{"type", []string{"number", "string", "boolean", "array", "null"}}}}}
	case kind == reflect.Struct:
		return object{{"$ref", "#/$defs/" + defName(typ)}}
	case kind == reflect.Slice:
		return object{{"type", "array"}, {"items", valueSchema(t, at, typ.Elem())}}
	case mayBeNull[at]:
		return orNull(object{{"type", plain(t, at, typ)}})
	}
	return object{{"type", plain(t, at, typ)}}
}

func plain(t *testing.T, at string, typ reflect.Type) string {
	name, ok := map[reflect.Kind]string{reflect.String: "string", reflect.Float64: "number", reflect.Int: "integer", reflect.Bool: "boolean"}[typ.Kind()]
	require.True(t, ok, "%s: no schema for a %s", at, typ)
	require.True(t, typ.Name() == typ.Kind().String(), "%s: the words of %s are not listed", at, typ)
	return name
}

func orNull(s object) object {
	if s[0].key == "type" {
		s[0].value = []any{s[0].value, "null"}
		return s
	}
	if s[0].key == "enum" {
		s[0].value = append(s[0].value.([]any), nil)
		return s
	}
	return object{{"anyOf", []object{s, {{"type", "null"}}}}}
}

// wordsOf are the words that a field may hold, or nil where any text will do.
// Those of a Go type are its constants; those that a plain string holds come from
// what fills it.
func wordsOf(t *testing.T, at string, typ reflect.Type) []any {
	if key, ok := keyed[at]; ok && typ.Kind() == reflect.String {
		return keyWords(t, key)
	}
	if from, ok := filled[at]; ok && typ.Kind() == reflect.String {
		return wordsIn(constants(t, from.dir, from.typ), from.less)
	}
	if words, ok := spoken[at]; ok && typ.Kind() == reflect.String {
		return anys(words)
	}
	switch typ {
	case reflect.TypeOf(beverage.Outcome(0)):
		return texts(beverage.Meets, beverage.FallsShort, beverage.CannotTell)
	case reflect.TypeOf(beverage.Fit(0)):
		return texts(beverage.Fits, beverage.DoesNotFit, beverage.FitUnknown)
	case reflect.TypeOf(beverage.Level(0)):
		return texts(beverage.Stop, beverage.Review, beverage.Note)
	case reflect.TypeOf(beverage.Class(0)):
		return texts(beverage.Acid, beverage.Acidified, beverage.LowAcid, beverage.Outside, beverage.Undecided)
	}
	if home, ok := strings.CutPrefix(typ.PkgPath(), "posset/"); ok && typ.Kind() == reflect.String {
		return wordsIn(constants(t, "../../"+home, typ.Name()), "")
	}
	return nil
}

// keyed are fields that repeat a key of the spec.
var keyed = map[string]string{
	"DrinkSummary.base": "drink.base", "DrinkSummary.intended_for": "drink.intended_for", "DrinkSummary.route": "process.route",
	"DrinkSummary.distribution": "storage.distribution", "DrinkSummary.package_type": "package.type",
}

func keyWords(t *testing.T, key string) []any {
	for _, k := range spec.Keys() {
		if k.Key == key {
			return anys(k.Values)
		}
	}
	t.Fatalf("the spec has no key %s", key)
	return nil
}

// filled are fields of plain text that the constants of a Go type fill.
var filled = map[string]struct{ dir, typ, less string }{
	"ProbeResult.role":            {"../../thermal/logfile", "Role", "ignore"},
	"ProbeResult.role_basis":      {"../../thermal/logfile", "RoleBasis", ""},
	"HeatingContainer.role_basis": {"../../thermal/logfile", "RoleBasis", ""},
	"FaultResult.kind":            {"../../thermal/logfile", "FaultKind", ""},
}

// spoken are fields of plain text whose words stand in no type. That they are
// these is held by the outputs of every demo drink.
var spoken = map[string][]string{
	"assess.KeyChange.change": {assess.KeyAdded, assess.KeyRemoved, assess.KeyChanged},
	"PressureAt.at":           {"fill", "storage", "process", "table"},
	"Brief.disclosure":        {"full", "classes", "none"},
	"BriefFigure.basis":       {"measured", "predicted", "stated", "library", "not given"},
	"CriticalPoint.basis":     {"measured", "predicted", "stated", "library", "not given"},
}

// constantText is a constant of a string type, with what the code says beside it.
type constantText struct{ word, means string }

// constants are those that a package declares of a string type, in order.
func constants(t *testing.T, dir, typ string) (list []constantText) {
	for _, file := range parsed(t, dir) {
		ast.Inspect(file, func(n ast.Node) bool {
			v, ok := n.(*ast.ValueSpec)
			if !ok || len(v.Values) != 1 {
				return true
			}
			name, ok := v.Type.(*ast.Ident)
			lit, isText := v.Values[0].(*ast.BasicLit)
			if ok && isText && name.Name == typ {
				if word, err := strconv.Unquote(lit.Value); err == nil && word != "" {
					list = append(list, constantText{word, strings.TrimSpace(v.Comment.Text())})
				}
			}
			return true
		})
	}
	require.NotEmpty(t, list, "%s has no constants of type %s", dir, typ)
	return list
}

// wordsIn are the words of constants, without one of them.
func wordsIn(list []constantText, less string) (words []any) {
	for _, c := range list {
		if c.word != less {
			words = append(words, c.word)
		}
	}
	return words
}

// parsed are the source files of a package, without its tests.
func parsed(t *testing.T, dir string) (files []*ast.File) {
	for _, path := range sources(t, dir) {
		f, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.SkipObjectResolution|parser.ParseComments)
		require.NoError(t, err)
		files = append(files, f)
	}
	return files
}

func texts[T interface{ String() string }](values ...T) (words []any) {
	for _, v := range values {
		words = append(words, v.String())
	}
	return words
}

func anys(words []string) (list []any) {
	for _, w := range words {
		list = append(list, strings.TrimSpace(w))
	}
	return list
}
