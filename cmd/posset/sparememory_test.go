package main

import (
	"fmt"
	"math"
	"runtime/debug"
	"testing"

	"github.com/stretchr/testify/assert"
)

func limitNow() int64 { return debug.SetMemoryLimit(-1) }

func TestMemoryIsSparedOfManyTextLogs(t *testing.T) {
	t.Setenv(environmentKey, "")
	was := debug.SetMemoryLimit(math.MaxInt64)
	defer debug.SetMemoryLimit(was)

	files := make([]string, 6000)
	for i := range files {
		files[i] = fmt.Sprintf("run-%d.csv", i)
	}
	putBack := spareMemory(files)
	assert.Equal(t, int64(readingBytes+1000*perLogBytes), limitNow())
	putBack()
	assert.Equal(t, int64(math.MaxInt64), limitNow())

	spareMemory(files[:fewestSpared-1])()
	assert.Equal(t, int64(math.MaxInt64), limitNow())

	files[3] = "run.XLSX"
	spareMemory(files)
	assert.Equal(t, int64(math.MaxInt64), limitNow())

	files[3] = "run.csv"
	t.Setenv(environmentKey, "1GiB")
	spareMemory(files)
	assert.Equal(t, int64(math.MaxInt64), limitNow())
}
