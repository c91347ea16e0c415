package spec_test

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"

	toml "github.com/pelletier/go-toml/v2"
	"github.com/santhosh-tekuri/jsonschema/v6"

	"posset/beverage/spec"
)

// Every key says what it is, and its example can be read where it stands.
func TestKeysAreTold(t *testing.T) {
	seen := make(map[string]bool)
	for _, doc := range spec.Keys() {
		if seen[doc.Key] {
			t.Errorf("%s is told twice", doc.Key)
		}
		seen[doc.Key] = true
		if !strings.HasSuffix(doc.Means, ".") || doc.Type == "" {
			t.Errorf("%s: %q, %q", doc.Key, doc.Type, doc.Means)
		}
		if doc.Form == spec.FormTable || doc.Form == spec.FormTables {
			continue
		}
		if _, err := spec.Parse([]byte(specWith(doc)), "example.toml", "testdata/catalogue", spec.Options{}); err != nil {
			t.Errorf("%s: %v", doc.Key, err)
		}
	}
	if len(seen) < 90 {
		t.Errorf("only %d keys", len(seen))
	}
}

// specWith is a spec with one key as its documentation shows it, and what its
// table cannot be without.
func specWith(doc spec.KeyDoc) string {
	home, last := splitLast(doc.Key)
	text := "[drink]\n"
	if home != "drink" {
		text += header(home)
	}
	for _, other := range spec.Keys() {
		if in, name := splitLast(other.Key); in == home && name != last && other.Required {
			text += name + " = " + other.Example + "\n"
		}
	}
	if home == "process.critical" && last == "what" {
		text += "at_least = \"121.1 C\"\n"
	}
	return text + last + " = " + doc.Example + "\n"
}

func header(home string) string {
	for _, doc := range spec.Keys() {
		if doc.Key == home && doc.Form == spec.FormTables {
			return "[[" + home + "]]\n"
		}
	}
	return "[" + home + "]\n"
}

func compiled(t *testing.T) *jsonschema.Schema {
	t.Helper()
	text, err := spec.JSONSchema()
	if err != nil {
		t.Fatal(err)
	}
	parsed, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource("spec.json", parsed); err != nil {
		t.Fatal(err)
	}
	schema, err := c.Compile("spec.json")
	if err != nil {
		t.Fatal(err)
	}
	return schema
}

// asJSON is a TOML text as an editor hands it to a schema.
func asJSON(t *testing.T, text string) any {
	t.Helper()
	var tree map[string]any
	if err := toml.Unmarshal([]byte(text), &tree); err != nil {
		t.Fatal(err)
	}
	written, err := json.Marshal(tree)
	if err != nil {
		t.Fatal(err)
	}
	value, err := jsonschema.UnmarshalJSON(bytes.NewReader(written))
	if err != nil {
		t.Fatal(err)
	}
	return value
}

// The published schema takes what the parser takes, and refuses misspelt keys,
// unknown words and numbers out of range as the parser does.
func TestJSONSchema(t *testing.T) {
	schema := compiled(t)
	for _, path := range []string{catalogue, "testdata/sound.toml"} {
		if err := schema.Validate(asJSON(t, readText(t, path))); err != nil {
			t.Errorf("%s: %v", path, err)
		}
	}
	for _, text := range []string{
		"[drink]\nservng = \"330 mL\"\n",
		"[drink]\nbase = \"watr\"\n",
		"[drink]\n[measured]\nph = 15\n",
		"[drink]\n[measured]\nPH = 3\n",
		"[measured]\nph = 3\n",
		"[drink]\n[[ingredient]]\nname = \"x\"\n",
		"[drink]\n[market]\njurisdiction = [\"US\", \"JP\"]\n",
		"[drink]\n[[process.record]]\nfile = \"a\"\nroles = { a = \"b\" }\n",
		"[drink]\nlive_cultures = \"no\"\n",
	} {
		if schema.Validate(asJSON(t, text)) == nil {
			t.Errorf("the schema takes %q", text)
		}
		if _, err := spec.Parse([]byte(text), "x.toml", ".", spec.Options{}); err == nil {
			t.Errorf("the parser takes %q", text)
		}
	}
}
