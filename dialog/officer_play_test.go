package dialog

import (
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"github.com/stretchr/testify/require"

	"warmstick/dialog/phrases"
)

// contractAsks is the closed set of the contract.
var contractAsks = strings.Fields("language consent name place hour units path have more starter date confirm size site ready layer squeeze stick moisture smell bottle shake turn sieve trial feed worms harvest sell rating menu invite target text")

func TestEveryQuestionAsksAWordOfTheContract(t *testing.T) {
	for id, q := range questions() {
		require.Contains(t, contractAsks, q.asks, id)
	}
}

var officerLines = []string{
	"board", "round", "digest", "groups", "invite", "announce Meeting on Friday", "announce", "visited amina", "visited", "heap amina", "heap juma", "heap",
	"1", "2", "3", "4", "5", "6", "done", "done 1", "not today", "not today 2", "why", "why 1", "more", "write", "yes", "no", "menu", "help", "undo", "status", "next",
	"hot", "cold", "dry", "wet", "water", "all is well", "Add more dung", "seen", "stop sending", "fine", "Mama Njeri", "1 basket of dry leaves is 3 kg",
	"amina: turn it tomorrow", "zuri: hello", "go on", "practice heap", "stop", "hello", "???", "", "I burned my hand", "built 4 days ago", "6 x 4 x 4 ft",
	strings.Repeat("word ", 300), "\xff bad", "=1+1", "announce " + strings.Repeat("x", 500), "officer", "my data", "pictures",
}

// Officers, lead farmers and farmers say anything at all, in every order and
// every language that has the words: nothing breaks, everybody is answered, and
// no letter is too long.
func TestOfficersComeToNoDeadEnd(t *testing.T) {
	for seed := range uint64(30) {
		r := rand.New(rand.NewPCG(seed, 11))
		v := ridge(t)
		if tag := []string{"en", "sw", "hi", "es", "fr", "hi-Latn"}[seed%6]; phrases.Has(tag, "board_line") {
			for _, id := range []PersonID{1, 2, 3, 11} {
				v.keep(v.entry(id, LanguageSet{tag}))
			}
		}
		v.check = func(to PersonID, l Letter) {
			limit := letterLimit
			if slices.ContainsFunc(l.Advice, func(a string) bool { return strings.HasSuffix(a, "_care") || a == "smoke_emergency" }) {
				limit = safetyLimit
			}
			if l.Paper == nil {
				require.LessOrEqual(t, utf8.RuneCountInString(l.Text), limit, l.Text)
			}
			require.NotEmpty(t, l.Text)
			require.NotContains(t, l.Text, "<no value>")
			if l.Asks != "" {
				require.Contains(t, contractAsks, l.Asks)
			}
			for _, b := range l.Buttons {
				require.LessOrEqual(t, len(b.Press), 64)
				require.NotEmpty(t, b.Label)
			}
			local := v.now.In(v.states[to].Person.Zone())
			night := local.Hour() >= 20 || local.Hour() < 6
			if night && (l.Kind == Remind || l.Kind == Digest || l.Kind == Broadcast) {
				require.True(t, l.After.After(v.now), "%s at %s: %s", l.Kind, local, l.Text)
			}
		}
		for range 220 {
			id := []PersonID{1, 1, 1, 2, 3, 5, 11, 12}[r.IntN(8)]
			n := len(v.heard[id])
			if buttons := v.last(id).Buttons; len(buttons) > 0 && r.IntN(3) == 0 {
				v.step(id, Press{buttons[r.IntN(len(buttons))].Press})
			} else {
				v.says(id, officerLines[r.IntN(len(officerLines))])
			}
			require.Greater(t, len(v.heard[id]), n, "no answer to %d in seed %d", id, seed)
			if r.IntN(6) == 0 {
				v.wait(time.Duration(r.IntN(40)) * time.Hour)
			}
		}
		// What the clock planned for everybody is what the diaries alone give.
		for _, id := range v.people() {
			require.Equal(t, Plan(v.states[id]), Plan(Fold(id, v.diaries[id])))
		}
	}
}
