package phrases

import (
	"bytes"
	"testing"
	"text/template"

	"github.com/stretchr/testify/require"
)

// A cut sentence says what a template says, in every language and for every kind
// of value.
func TestSlotsFillAsATemplateDoes(t *testing.T) {
	values := []any{"Amina", 0, 12, 2.5, int64(7), true, "", "{{.Name}}", "<b>"}
	cutting := 0
	for _, lang := range Languages() {
		for key, forms := range raw(t, lang) {
			for _, sentence := range forms {
				s, ok := cut(sentence)
				if !ok {
					continue
				}
				cutting++
				args := Args{}
				for i := 1; i < len(s); i += 2 {
					args[s[i]] = values[(i/2+len(key))%len(values)]
				}
				var want bytes.Buffer
				require.NoError(t, template.Must(template.New("").Parse(sentence)).Execute(&want, args))
				got, err := s.Execute(args)
				require.NoError(t, err)
				require.Equal(t, want.String(), got, "%s %s", lang, key)
			}
		}
	}
	require.Greater(t, cutting, 3000)
}

func TestCutLeavesConditionsAlone(t *testing.T) {
	for _, sentence := range []string{`{{if .N}}x{{end}}`, `{{.A.B}}`, `{{printf "%d" .N}}`, `{{.N | x}}`, `a {{.N`, `{{}}`, `{{.}}`} {
		_, ok := cut(sentence)
		require.False(t, ok, sentence)
	}
	s, _ := cut("Turn {{.Name}}'s heap {{.N}}.")
	text, err := s.Execute(Args{"Name": "Amina"})
	require.NoError(t, err)
	require.Equal(t, "Turn Amina's heap <no value>.", text)
}

func BenchmarkText(b *testing.B) {
	b.Run("plain", func(b *testing.B) {
		for b.Loop() {
			Text("en", "amount_of", Args{"Amount": "3 baskets", "Material": "cow dung"})
		}
	})
	b.Run("counted", func(b *testing.B) {
		for b.Loop() {
			Text("en", "unit_basket", Args{"N": 3})
		}
	})
}
