package spec

import "encoding/json"

// SchemaID names the form of a spec file in its JSON Schema.
const SchemaID = "posset/spec/1"

// object is a JSON object; encoding/json writes its keys in order.
type object = map[string]any

// JSONSchema returns the JSON Schema of the spec file, for editors that check
// and complete TOML by one. It is made from the declarations that read the file.
func JSONSchema() ([]byte, error) {
	root := objectOf(allKeys(), "")
	root["$schema"] = "https://json-schema.org/draft/2020-12/schema"
	root["title"] = "posset spec file"
	root["description"] = SchemaID
	root["required"] = []string{"drink"}
	return json.MarshalIndent(root, "", "  ")
}

// objectOf is the schema of the table called home, from the list of all keys.
func objectOf(all []KeyDoc, home string) object {
	properties, required := object{}, []string{}
	for _, doc := range all {
		table, last := split(doc.Key)
		if table != home {
			continue
		}
		properties[last] = schemaOf(all, doc)
		if doc.Required {
			required = append(required, last)
		}
	}
	o := object{"type": "object", "properties": properties, "additionalProperties": false}
	if len(required) > 0 {
		o["required"] = required
	}
	return o
}

func schemaOf(all []KeyDoc, doc KeyDoc) object {
	o := formOf(all, doc)
	o["description"] = doc.Means
	if doc.Default != "" {
		o["description"] = doc.Means + " Unsaid, it counts as " + doc.Default + "."
	}
	return o
}

func formOf(all []KeyDoc, doc KeyDoc) object {
	text := object{"type": "string"}
	word := object{"type": "string", "enum": doc.Values}
	switch doc.Form {
	case FormTable:
		return objectOf(all, doc.Key)
	case FormTables:
		return object{"type": "array", "items": objectOf(all, doc.Key)}
	case FormNumber:
		return object{"type": "number", "minimum": doc.Low, "maximum": doc.High}
	case FormBool:
		return object{"type": "boolean"}
	case FormWord:
		return word
	case FormTexts:
		return oneOrMore(text)
	case FormWords:
		return oneOrMore(word)
	case FormMap:
		if len(doc.Values) > 0 {
			text = word
		}
		return object{"type": "object", "additionalProperties": text}
	case FormBound:
		return object{"type": []string{"string", "number"}}
	}
	return text
}

func oneOrMore(one object) object {
	return object{"anyOf": []object{one, {"type": "array", "items": one, "minItems": 1}}}
}
