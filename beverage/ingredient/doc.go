// Package ingredient is the library of what drinks are made of: look-up by the
// trade's names, figures with a source each, and a spec's own description laid
// over them. Figures are per mass of the ingredient as sold.
//
// The data stands in tables under data, one a kind or a source. names.csv says
// what each ingredient is; a figure is a cell of the other tables, "1.2", a
// spread "1..2", or a spread with a typical value "1..1.4..2", and its row names
// source and basis. Two rows may speak of one figure: both are kept, and the
// entry's interval reaches over both. A blank cell is unknown, never zero.
//
// To add an ingredient, add a row to names.csv and its figures to the tables they
// belong in (a pure chemical to chemicals.csv, where formula and make-up give
// the minerals and the acid-base shares), then renew the counts in
// testdata/tables.txt: the tests hold every row against the formula, the ranges
// of its kind and the mass balance.
package ingredient
