package dialog

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// Who may do what: every word of the officers by everybody who might try it. A
// "yes" must work, a "no" must reveal nothing of the group and change nothing
// in any diary but the speaker's own.
func TestRights(t *testing.T) {
	speakers := []struct {
		name string
		id   PersonID
	}{
		{"stranger", 99}, {"farmer", 12}, {"farmer herself", 11}, {"lead farmer", 3}, {"officer", 2}, {"other officer", 5}, {"former officer", 6}, {"owner", 1},
	}
	officers := "officer owner"
	staff := officers + " lead"
	words := []struct {
		line  string
		may   string // speakers, by the first word of their name
		proof string // what only those who may hear
	}{
		{"board", officers, "1 Amina"},
		{"board/1", officers, "What about Amina?"},
		{"board/1/why", officers, "work are lost"},
		{"board/1/not today", officers, "off the board"},
		{"board/done 1", officers, "is visited"},
		{"board/1/write/hello there", officers, "Passed to Amina"},
		{"heap Amina", officers, "Amina, Nakuru"},
		{"heap Amina/1/go on like this", officers, "Passed to Amina"},
		{"heap Mama Njeri", staff, "No phone: you or a lead"},
		{"heap Mama Njeri/1/built 3 days ago", staff, "Njeri:\nWritten down. The heap is 3"},
		{"round", officers, "1 Amina"},
		{"visited Amina", officers, "is visited"},
		{"visited Amina/cold/dry/water", officers, "Written in the diary"},
		{"announce Meeting/yes", officers, "On its way"},
		{"digest", officers, "without a phone"},
		{"digest/2", officers, "a page to print"},
		{"digest/3/yes", officers, "the workbook"},
		{"invite", staff, "Code: "},
		{"groups/1", staff, "Code: "},
		{"groups/2/Baba Kip/yes", staff, "Baba Kip is written in"},
		{"groups/3/1 bag of straw is 6 kg", officers, "counts as 6 kg now, for"},
		{"groups/4", officers, "Rows of the picture"},
		{"groups/5/1", officers, "practice heap"},
		{"groups/more/1", officers, "makes a lead farmer"},
		{"groups/more/2", officers, "makes an officer"},
		{"groups/more/3", officers, "no more"},
		{"groups/more/4/New Name", "owner", "is called New Name"},
		{"amina: hello", officers, "Passed to Amina"},
	}
	table := map[string]string{}
	for _, w := range words {
		for _, s := range speakers {
			v := ridge(t)
			v.says(3, "groups")
			for _, line := range []string{"2", "Mama Njeri", "yes", "menu"} {
				v.says(3, line)
			}
			v.built(11, "6")
			v.cold(11)
			lines := map[PersonID]int{}
			for id, d := range v.diaries {
				lines[id] = len(d)
			}
			before := map[PersonID]int{}
			for id, l := range v.heard {
				before[id] = len(l)
			}
			n := len(v.heard[s.id])
			for line := range strings.SplitSeq(w.line, "/") {
				v.says(s.id, line)
			}
			said := v.since(s.id, n)
			who := strings.Fields(s.name)[0]
			if s.name == "other officer" || s.name == "farmer herself" {
				who = "none"
			}
			may := strings.Contains(" "+w.may+" ", " "+who+" ")
			works := strings.Contains(said, w.proof)
			if s.name == "other officer" && (w.proof == "Code: " || w.proof == "without a phone" || w.proof == "On its way" || strings.HasPrefix(w.line, "groups") || strings.HasPrefix(w.line, "digest")) {
				// These words are theirs for their own group: only leaks are looked for.
				works = false
			}
			table[w.line] += fmt.Sprintf(" %t", works)
			require.Equal(t, may, works, "%s: %q says %q", s.name, w.line, said)
			if may {
				continue
			}
			if s.name != "farmer herself" {
				for _, secret := range []string{"Amina,", "1 Amina", "about Amina", "to Amina", "Njeri is", "Njeri,"} {
					require.NotContains(t, said, secret, "%s learns something by %q", s.name, w.line)
				}
			}
			for id, d := range v.diaries {
				if id == s.id || s.name == "other officer" && (id == 15 || lines[id] == 0) || v.states[id].Person.Nameless {
					continue
				}
				require.Len(t, d, lines[id], "%s changed the diary of %d by %q", s.name, id, w.line)
			}
			for id, l := range v.heard {
				if id != s.id && id != 15 {
					require.Len(t, l, before[id], "%s made somebody read something by %q", s.name, w.line)
				}
			}
		}
	}
	for _, w := range words {
		t.Logf("%-36s%s", w.line, table[w.line])
	}
}

// Another group's farmer is answered exactly as nobody is.
func TestAnotherGroupIsLikeNobody(t *testing.T) {
	for _, word := range []string{"heap %s", "visited %s", "%s: water it please"} {
		v := ridge(t)
		zuri := v.answer(1, fmt.Sprintf(word, "Zuri"))
		v = ridge(t)
		nobody := v.answer(1, fmt.Sprintf(word, "Nobo"))
		require.Equal(t, strings.ReplaceAll(nobody, "Nobo", "Zuri"), zuri)
	}
}

// A role that ended while a list was on the screen ends what the list could do,
// and buttons that somebody made up do nothing.
func TestStaleAndGuessedButtons(t *testing.T) {
	v := ridge(t)
	v.built(11, "6")
	v.cold(11)
	v.says(2, "board")
	buttons := v.last(2).Buttons
	require.NotEmpty(t, buttons)
	v.keep(v.entry(2, RoleEnded{v.states[1].Person.Made[0].ID}))
	lines := len(v.diaries[11])
	v.step(2, Press{buttons[0].Press})
	require.NotContains(t, v.last(2).Text, "Amina")
	v.says(2, "done 1")
	require.Len(t, v.diaries[11], lines)
	for _, guess := range []string{"seen", "ia1.0", "a1.0", "person=11", "i", "a", "a99.99", "line=done"} {
		n := len(v.heard[12])
		v.step(12, Press{guess})
		require.NotContains(t, v.since(12, n), "Amina", guess)
		v.step(5, Press{guess})
		require.NotContains(t, v.last(5).Text, "Amina", guess)
		require.Len(t, v.diaries[11], lines)
	}
}

// A farmer may be called like a word of command, a formula or markup.
func TestHostileNames(t *testing.T) {
	v := ridge(t)
	for i, name := range []string{"Stop", "=HYPERLINK(1)", "<b>Bold</b>", "1 Fake", "Board"} {
		id := PersonID(30 + i)
		v.enrol(id, name)
		v.says(1, "invite")
		v.join(1, id)
		v.built(id, "6")
		v.cold(id)
	}
	v.says(1, "board")
	require.Contains(t, v.answer(1, "stop"), "I stay silent", "a farmer named Stop does not take the word away")
	for _, c := range v.Members(v.states[1].Person.Made[0].ID) {
		require.NotContains(t, c.Name, "=")
		require.NotContains(t, c.Name, "<")
	}
	for line := range strings.SplitSeq(v.answer(1, "board"), "\n") {
		if strings.Contains(line, "cold, must") {
			require.Regexp(t, `^\d+ `, line)
		}
	}
}
