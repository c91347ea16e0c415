package spec_test

import (
	"testing"

	"posset/beverage/spec"
)

// The catalogue holds every key; a spec that uses them all must be readable.
func TestCatalogueReads(t *testing.T) {
	d, err := spec.Read("testdata/catalogue/drink.toml", spec.Options{})
	if err != nil {
		t.Fatal(err)
	}
	if len(d.Ingredients) != 5 || len(d.Process.Records) != 2 || len(d.Own) != 1 {
		t.Errorf("read %d ingredients, %d records, %d own figures", len(d.Ingredients), len(d.Process.Records), len(d.Own))
	}
}
