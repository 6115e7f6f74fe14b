package bot

import (
	"errors"
	"os"
	"testing"

	"github.com/stretchr/testify/require"
)

func fileText(t *testing.T, path string) string {
	t.Helper()
	data, err := os.ReadFile(path)
	if errors.Is(err, os.ErrNotExist) {
		return ""
	}
	require.NoError(t, err)
	return string(data)
}
