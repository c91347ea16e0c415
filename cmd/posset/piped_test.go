package main

import (
	"bytes"
	"compress/gzip"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"testing"

	"github.com/xuri/excelize/v2"

	"posset/beverage"
	"posset/beverage/assess"
	"posset/beverage/spec"
)

// pipedForms are one record as text, packed, and as a workbook. Two minutes of it
// stand at 121 °C, so that a target can hang on a reading.
func pipedForms(t *testing.T) map[string][]byte {
	t.Helper()
	text := "time (s),Can 1 (°C)\n0,20.0\n60,100.0\n120,121.1\n180,121.2\n240,121.1\n300,90.0\n360,25.0\n"
	var packed, book bytes.Buffer
	z := gzip.NewWriter(&packed)
	io.WriteString(z, text)
	z.Close()
	x := excelize.NewFile()
	for i, row := range [][]any{{"time (s)", "Can 1 (°C)"}, {0, 20.0}, {60, 100.0}, {120, 121.1}, {180, 121.2}, {240, 121.1}, {300, 90.0}, {360, 25.0}} {
		x.SetSheetRow("Sheet1", fmt.Sprintf("A%d", i+1), &row)
	}
	if err := x.Write(&book); err != nil {
		t.Fatal(err)
	}
	return map[string][]byte{"run.csv": []byte(text), "run.csv.gz": packed.Bytes(), "run.xlsx": book.Bytes()}
}

// What is piped in gives what the file gives, but for its name.
func TestPipedIsAsFromFile(t *testing.T) {
	for name, data := range pipedForms(t) {
		for _, target := range []string{"", "F0 2.2 min", "F0 6 min"} {
			o := assess.LogOptions{TrefC: 121.1, ZC: 10, ToleranceC: 0.5}
			if target != "" {
				aim, err := spec.ParseTarget(target)
				if err != nil {
					t.Fatal(err)
				}
				o.Target = &aim
			}
			reader, err := assess.NewLogReader(o)
			if err != nil {
				t.Fatal(err)
			}
			path := filepath.Join(t.TempDir(), name)
			if err := os.WriteFile(path, data, 0o600); err != nil {
				t.Fatal(err)
			}
			want, err := reader.Read(context.Background(), path)
			if err != nil {
				t.Fatal(err)
			}
			got, err := readPiped(context.Background(), bytes.NewReader(data), reader)
			if err != nil {
				t.Fatal(err)
			}
			if got.File != "-" {
				t.Errorf("%s: told as %q", name, got.File)
			}
			want.File = "-"
			if a, b := jsonOf(t, want), jsonOf(t, got); a != b {
				t.Errorf("%s, target %q:\n%s\nis not\n%s", name, target, b, a)
			}
		}
	}
}

func jsonOf(t *testing.T, l beverage.LogResult) string {
	t.Helper()
	b, err := json.Marshal(l)
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}

// A pipe that fails is told, whatever it held before.
func TestPipeThatFails(t *testing.T) {
	reader, err := assess.NewLogReader(assess.LogOptions{TrefC: 121.1, ZC: 10})
	if err != nil {
		t.Fatal(err)
	}
	broken := io.MultiReader(bytes.NewReader([]byte("time (s),Can 1 (°C)\n0,20.0\n")), failing{})
	if _, err := readPiped(context.Background(), broken, reader); err == nil || err.Error() != "-: cannot be read: broken pipe" {
		t.Errorf("got %v", err)
	}
}

type failing struct{}

func (failing) Read([]byte) (int, error) { return 0, errors.New("broken pipe") }
