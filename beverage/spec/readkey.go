package spec

import (
	"errors"
	"slices"
	"strings"

	"posset/beverage"
)

// ReadKey reads one key with a value as a person writes it, quotes aside:
// "package.fill" and "330 mL", "measured.ph" and "3.2", "market.jurisdiction" and
// "US, EU". The drink holds nothing else but what its table cannot be without.
// The error says what was read and what would do, without a place.
func ReadKey(key, value string) (*beverage.Drink, error) {
	i := slices.IndexFunc(allKeys(), func(k KeyDoc) bool { return k.Key == key })
	if i < 0 {
		return nil, errors.New(printable(key) + " is no key of a spec")
	}
	d, err := Parse([]byte(onlyKey(allKeys()[i], value)), "", ".", Options{})
	var problems *Problems
	if errors.As(err, &problems) {
		p := problems.List[0]
		return nil, errors.New(strings.TrimSuffix(p.Read+"; "+p.Help, "; "))
	}
	return d, err
}

// onlyKey is the smallest spec with a key.
func onlyKey(doc KeyDoc, value string) string {
	home, last := split(doc.Key)
	text := "[drink]\n"
	if home != "drink" {
		text += headerOf(home)
	}
	for _, other := range allKeys() {
		if in, name := split(other.Key); in == home && name != last && other.Required {
			text += name + " = " + other.Example + "\n"
		}
	}
	return text + last + " = " + tomlValue(doc, value) + "\n"
}

func headerOf(home string) string {
	for _, doc := range allKeys() {
		if doc.Key == home && doc.Form == FormTables {
			return "[[" + home + "]]\n"
		}
	}
	return "[" + home + "]\n"
}

// tomlValue writes a value in the form of its key. What looks like no bare number
// or word where one is wanted goes in as a text, so that it is told what it is.
func tomlValue(doc KeyDoc, value string) string {
	value = strings.TrimSpace(value)
	switch {
	case doc.Form == FormNumber && value != "" && strings.Trim(value, "+-.,_0123456789eE") == "":
		return value
	case doc.Form == FormBool && (value == "true" || value == "false"):
		return value
	case doc.Form == FormWords || doc.Form == FormTexts:
		parts := strings.Split(value, ",")
		for i, p := range parts {
			parts[i] = Quoted(strings.TrimSpace(p))
		}
		return "[" + strings.Join(parts, ", ") + "]"
	}
	return Quoted(value)
}

// Quoted is a text as a TOML basic string.
func Quoted(text string) string {
	var b strings.Builder
	b.WriteByte('"')
	for _, r := range strings.ToValidUTF8(text, "\uFFFD") {
		switch {
		case r == '"' || r == '\\':
			b.WriteByte('\\')
			b.WriteRune(r)
		case r < ' ' || r == 0x7f:
			b.WriteString(`\u00` + string("0123456789abcdef"[r>>4]) + string("0123456789abcdef"[r&15]))
		default:
			b.WriteRune(r)
		}
	}
	b.WriteByte('"')
	return b.String()
}
