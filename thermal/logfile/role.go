package logfile

import (
	"fmt"
	"sort"
	"strings"
)

// Words of headings that tell a role, in the languages recorders are set up in.
// A product word wins over the others: a probe in the drink is never taken for
// the medium because its heading also names the retort it stands in.
var (
	productWords = setOf(`product produkt produit producto prodotto can cans jar bottle pouch pack package drink juice milk
		core kern dose dosen flasche glas beutel boite boîte bouteille coeur cœur lata botella lattina bottiglia
		center centre coldspot cold spot drinks beverage getränk shake protein smoothie tea coffee`)
	retortWords = setOf(`retort autoclave autoklav medium steam dampf vapeur vapor vapore bath bad chamber kammer vessel kessel
		pasteurizer pasteuriser pasteur tunnel spray zone jacket mantel cuve bain autoclavio env heating
		heizmedium heizwasser rt recorder schreiber chart`)
	referenceWords = setOf(`reference referenz référence referencia mercury quecksilber mig ref tid indicating standard`)
	otherWords     = setOf(`ambient room raum umgebung outside ambiance ambiente condensate kondensat cjc junction internal housing
		board setpoint sollwert soll consigne sp difference differenz delta diff dt drain cooling kühlwasser kühlung air luft`)
)

// roleOf tells a column's role from its heading.
func roleOf(label string) (Role, RoleBasis) {
	has := func(set map[string]bool) bool {
		for _, w := range words(label) {
			if set[w] {
				return true
			}
		}
		return false
	}
	switch {
	case strings.Contains(key(label), "setpoint"), has(otherWords) && !has(productWords):
		return Other, Heading
	case has(productWords):
		return Product, Heading
	case has(referenceWords):
		return ReferenceThermometer, Heading
	case has(retortWords), strings.Contains(key(label), "waterbath"), strings.Contains(key(label), "wasserbad"):
		return Retort, Heading
	}
	return Product, Assumed
}

// declaredRole looks a column up among the caller's roles, by full heading or
// by the heading without its unit.
func declaredRole(roles map[string]Role, h heading) (Role, string, bool) {
	for name, role := range roles {
		if k := key(name); k == key(h.full) || k == key(h.label) {
			return role, name, true
		}
	}
	return "", "", false
}

// checkRoles refuses roles that are none, and headings that do not exist.
func checkRoles(file string, roles map[string]Role, used map[string]bool, columns []heading) error {
	names := make([]string, 0, len(roles))
	for name := range roles {
		names = append(names, name)
	}
	sort.Strings(names)
	for _, name := range names {
		switch roles[name] {
		case Product, Retort, ReferenceThermometer, Other, Ignore:
		default:
			return fmt.Errorf("%s: role %q of %q is none of product, retort, reference, other, ignore", file, roles[name], name)
		}
		if !used[name] {
			return fmt.Errorf("%s: no column is headed %q; the headings are %s", file, name, headingList(columns))
		}
	}
	return nil
}

// headingList names headings in an error, a few of them when there are many.
func headingList(columns []heading) string {
	const most = 12
	var names []string
	for i, c := range columns {
		if i == most {
			names = append(names, fmt.Sprintf("%d more", len(columns)-most))
			break
		}
		names = append(names, fmt.Sprintf("%q", clip(c.label, 40)))
	}
	return strings.Join(names, ", ")
}

// clip shortens text of a file for a message.
func clip(s string, most int) string {
	r := []rune(s)
	if len(r) <= most {
		return s
	}
	return string(r[:most]) + "..."
}
