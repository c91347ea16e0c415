package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/BurntSushi/toml"
	"github.com/stretchr/testify/require"

	"posset/beverage"
	"posset/beverage/assess"
	"posset/beverage/copacker"
	"posset/beverage/report"
	"posset/beverage/spec"
	"posset/beverage/sweep"
)

const schemas = "../../docs/schema"

// published are the results, by the id that stands in each.
var published = map[string]any{
	beverage.AssessmentSchema:  beverage.Assessment{},
	beverage.LethalitySchema:   beverage.LethalityResult{},
	beverage.AcidSchema:        beverage.AcidResult{},
	beverage.CarbonationSchema: beverage.GasResult{},
	beverage.ProteinSchema:     beverage.ProteinResult{},
	beverage.RoutesSchema:      beverage.RoutesResult{},
	beverage.BriefSchema:       beverage.Brief{},
	beverage.VerifySchema:      beverage.VerifyResult{},
	beverage.HeatingSchema:     beverage.HeatingResult{},
	beverage.HoldSchema:        beverage.HoldResult{},
	copacker.Schema:            copacker.Result{},
	sweep.Schema:               sweep.Result{},
	assess.CompareSchema:       assess.Comparison{},
	report.ExplainSchema:       report.ExplainResult{},
	report.IngredientsSchema:   report.IngredientsResult{},
}

// schemaFile is where the schema of an id is published: posset/acid/1 is acid-1.json.
func schemaFile(id string) string {
	return filepath.Join(schemas, strings.ReplaceAll(strings.TrimPrefix(id, "posset/"), "/", "-")+".json")
}

// The published schemas follow the result types and meanings.toml. UPDATE=1
// renews them; a field that is new, gone or of another type fails without.
func TestSchemasFollowTheResults(t *testing.T) {
	told := meanings(t)
	for _, id := range slices.Sorted(maps.Keys(published)) {
		made, err := json.Marshal(schemaOf(t, id, published[id], told))
		require.NoError(t, err)
		var text bytes.Buffer
		require.NoError(t, json.Indent(&text, made, "", "  "))
		holdPage(t, schemaFile(id), text.String()+"\n", "Schema")
	}
	ofSpec, err := spec.JSONSchema()
	require.NoError(t, err)
	holdPage(t, schemaFile(spec.SchemaID), string(ofSpec)+"\n", "Schema")
}

// holdPage holds a page of the documentation against what the code says, or
// with UPDATE=1 writes it.
func holdPage(t *testing.T, file, want, renew string) {
	t.Helper()
	if os.Getenv("UPDATE") != "" {
		require.NoError(t, os.WriteFile(file, []byte(want), 0o644))
	}
	have, err := os.ReadFile(file)
	require.NoError(t, err)
	if string(have) != want {
		t.Errorf("%s differs from the code from line %d on; UPDATE=1 go test ./cmd/posset -run %s renews it", file, firstDifference(string(have), want), renew)
	}
}

func firstDifference(a, b string) int {
	x, y := strings.Split(a, "\n"), strings.Split(b, "\n")
	for i := range min(len(x), len(y)) {
		if x[i] != y[i] {
			return i + 1
		}
	}
	return min(len(x), len(y)) + 1
}

// Every id of a result that stands in the code has its schema, and json.md names it.
func TestEverySchemaIsPublished(t *testing.T) {
	id := regexp.MustCompile(`"(posset/[a-z]+/[0-9]+)"`)
	found := 0
	for _, dir := range []string{"../../beverage", "."} {
		require.NoError(t, filepath.WalkDir(dir, func(path string, _ os.DirEntry, err error) error {
			if err != nil || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
				return err
			}
			text, err := os.ReadFile(path)
			for _, m := range id.FindAllStringSubmatch(string(text), -1) {
				found++
				if _, ok := published[m[1]]; !ok && m[1] != spec.SchemaID {
					t.Errorf("%s: %s has no schema: add it to published and its fields to meanings.toml", path, m[1])
				}
			}
			return err
		}))
	}
	require.Greater(t, found, len(published))
	page, err := os.ReadFile(docs + "json.md")
	require.NoError(t, err)
	for name := range published {
		require.Contains(t, string(page), "`"+strings.Split(name, "/")[1]+"`", "json.md does not list %s", name)
	}
}

// Every field has a meaning and every meaning a field.
func TestEveryFieldIsTold(t *testing.T) {
	told := meanings(t)
	types := map[string]reflect.Type{}
	for _, v := range published {
		collect(reflect.TypeOf(v), types)
	}
	for name := range told {
		if _, ok := types[name]; !ok {
			t.Errorf("meanings.toml tells of %s, which is in no result", name)
		}
	}
	for name, typ := range types {
		want := []string{"_"}
		for _, f := range fieldsOf(typ) {
			want = append(want, f.name)
		}
		for _, f := range want {
			if text := told[name][f]; !strings.HasSuffix(text, ".") {
				t.Errorf("meanings.toml: [%s] %s: %q is no sentence", name, f, text)
			}
		}
		for f := range told[name] {
			if !slices.Contains(want, f) && !embedded(typ, f) {
				t.Errorf("meanings.toml: [%s] has no field %s", name, f)
			}
		}
	}
}

// meanings is what each field means, by Go type and JSON name.
func meanings(t *testing.T) map[string]map[string]string {
	var told map[string]map[string]string
	_, err := toml.DecodeFile(filepath.Join(schemas, "meanings.toml"), &told)
	require.NoError(t, err)
	return told
}

// jsonField is a field of a result as JSON has it.
type jsonField struct {
	name     string
	typ      reflect.Type
	optional bool // left out where empty
	goName   string
}

// fieldsOf are the fields of a struct itself, in order; what it embeds comes up
// by ownFields.
func fieldsOf(t reflect.Type) (list []jsonField) {
	for i := range t.NumField() {
		f := t.Field(i)
		name, rest, _ := strings.Cut(f.Tag.Get("json"), ",")
		if f.Anonymous || name == "" || name == "-" {
			continue
		}
		list = append(list, jsonField{name, f.Type, rest == "omitempty", f.Name})
	}
	return list
}

func embedded(t reflect.Type, name string) bool {
	for _, in := range embeds(t) {
		for _, f := range fieldsOf(in) {
			if f.name == name {
				return true
			}
		}
	}
	return false
}

func embeds(t reflect.Type) (list []reflect.Type) {
	for i := range t.NumField() {
		if f := t.Field(i); f.Anonymous {
			list = append(list, f.Type)
		}
	}
	return list
}

// defName is what a schema calls a type: its Go name, with the package where it
// is not the vocabulary's own.
func defName(t reflect.Type) string {
	if home := filepath.Base(t.PkgPath()); home != "beverage" && home != "report" {
		return home + "." + t.Name()
	}
	return t.Name()
}

// collect finds every struct of a result, by name.
func collect(t reflect.Type, into map[string]reflect.Type) {
	switch t.Kind() {
	case reflect.Pointer, reflect.Slice:
		collect(t.Elem(), into)
	case reflect.Struct:
		if known, ok := into[defName(t)]; ok {
			if known != t {
				panic(defName(t) + " is the name of two types")
			}
			return
		}
		into[defName(t)] = t
		for _, in := range embeds(t) {
			collect(in, into)
		}
		for _, f := range fieldsOf(t) {
			collect(f.typ, into)
		}
	}
}

// object is a JSON object whose members keep their order.
type object []member

type member struct {
	key   string
	value any
}

func (o object) MarshalJSON() ([]byte, error) {
	var b bytes.Buffer
	for i, m := range o {
		var value bytes.Buffer
		e := json.NewEncoder(&value)
		e.SetEscapeHTML(false)
		if err := e.Encode(m.value); err != nil {
			return nil, err
		}
		fmt.Fprintf(&b, "%s%q:%s", map[bool]string{true: "{", false: ","}[i == 0], m.key, value.Bytes())
	}
	b.WriteString("}")
	return b.Bytes(), nil
}

// schemaOf is the schema of a result: its own object on top, every other under
// $defs by the name of its Go type.
func schemaOf(t *testing.T, id string, value any, told map[string]map[string]string) object {
	top := reflect.TypeOf(value)
	types := map[string]reflect.Type{}
	collect(top, types)
	root := objectSchema(t, top, told, id)
	defs := object{}
	for _, name := range slices.Sorted(maps.Keys(types)) {
		if typ := types[name]; typ != top && !slices.Contains(embeds(top), typ) {
			defs = append(defs, member{name, objectSchema(t, typ, told, "")})
		}
	}
	head := object{{"$schema", "https://json-schema.org/draft/2020-12/schema"}, {"title", id}}
	return append(append(head, root...), member{"$defs", defs})
}

func objectSchema(t *testing.T, typ reflect.Type, told map[string]map[string]string, id string) object {
	properties, required := object{}, []string{}
	add := func(of reflect.Type) {
		for _, f := range fieldsOf(of) {
			s := append(valueSchema(t, defName(of)+"."+f.name, f.typ), member{"description", told[defName(of)][f.name]})
			if f.name == "schema" && id != "" {
				s = object{{"const", id}, {"description", told[defName(of)][f.name]}}
			}
			properties = append(properties, member{f.name, s})
			if !f.optional {
				required = append(required, f.name)
			}
		}
	}
	add(typ)
	for _, in := range embeds(typ) {
		add(in)
	}
	return object{{"description", told[defName(typ)]["_"]}, {"type", "object"}, {"properties", properties}, {"required", required}, {"additionalProperties", false}}
}
