package logfile

import (
	"bufio"
	"context"
	"fmt"
)

func readWorkbook(ctx context.Context, br *bufio.Reader, name string, o Options) (*Log, error) {
	return nil, fmt.Errorf("%s: workbooks are not read yet", name)
}
