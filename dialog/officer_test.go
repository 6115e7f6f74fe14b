package dialog

import (
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"warmstick/dialog/phrases"
)

// ridge is a village with the Ngara Ridge growers' group: officer 1 founded it,
// officer 2 helps, 3 is a lead farmer; 11 Amina and 12 Juma are farmers. Officer
// 5 has another group with farmer 15 Zuri; 6 was an officer of the first group.
func ridge(t testing.TB) *village {
	v := newVillage(t, "2026-03-02T07:00:00+03:00")
	v.officer(1, "Tarik")
	v.joinStaff(1, 2, "Lena", Officer)
	v.joinStaff(1, 3, "Lead", Lead)
	v.joinStaff(1, 6, "Former", Officer)
	v.enrol(11, "Amina")
	v.enrol(12, "Juma")
	v.join(1, 11)
	v.join(1, 12)
	v.officer(5, "Otieno")
	v.enrol(15, "Zuri")
	v.join(5, 15)
	v.keep(v.entry(6, RoleEnded{v.states[1].Person.Made[0].ID}))
	return v
}

func (v *village) entry(who PersonID, e Event) Entry {
	return Entry{Person: who, At: v.now, Day: DayOf(v.now, v.states[who].Person.Zone()), Noted: v.now, Event: e}
}

func (v *village) officer(id PersonID, name string) {
	v.step(id, OfficerMade{})
	for _, line := range []string{"hello", name, "Ngara Ridge", "invite", name + " growers"} {
		v.says(id, line)
	}
}

func (v *village) enrol(id PersonID, name string) {
	for _, line := range []string{"hello", "english", "yes", name, "Nakuru"} {
		v.says(id, line)
	}
}

// join sends the newest code of an officer.
func (v *village) join(officer, id PersonID) {
	invites := v.states[officer].Person.Invites
	v.step(id, Message{Kind: Text, Text: invites[len(invites)-1].Code, Code: invites[len(invites)-1].Code})
}

func (v *village) joinStaff(officer, id PersonID, name string, r Role) {
	v.enrol(id, name)
	v.says(officer, "groups")
	v.says(officer, "more")
	v.says(officer, map[Role]string{Lead: "1", Officer: "2"}[r])
	v.join(officer, id)
	v.says(officer, "invite")
}

// heard joins everything a person got since n letters.
func (v *village) since(id PersonID, n int) string {
	var all []string
	for _, l := range v.heard[id][n:] {
		all = append(all, l.Text)
	}
	return strings.Join(all, "\n")
}

// answer is what a person hears to a line.
func (v *village) answer(id PersonID, line string) string {
	n := len(v.heard[id])
	v.says(id, line)
	return v.since(id, n)
}

// built gives a farmer a heap of so many days.
func (v *village) built(id PersonID, daysAgo string) {
	v.says(id, "built "+daysAgo+" days ago")
	v.says(id, "6 x 4 x 4 ft")
}

// cold reports a cold dry heap and orders the rebuilding.
func (v *village) cold(id PersonID) {
	for _, line := range []string{"stick cold", "dry", "nothing", "yes"} {
		v.says(id, line)
	}
}

func TestABoardTellsWhoNeedsSomebody(t *testing.T) {
	v := ridge(t)
	require.Contains(t, v.answer(1, "board"), "Nobody needs you today")
	v.built(11, "6")
	v.cold(11)
	board := v.answer(1, "board")
	require.Contains(t, board, "\n1 Amina (Nakuru): cold, must be built again, today.")
	require.NotContains(t, board, "Juma")
	v.says(1, "menu")
	v.wait(time.Minute)
	require.Contains(t, v.answer(1, "good morning"), board, "a morning's hello asks who needs somebody")
	require.Contains(t, v.answer(1, "1"), "What about Amina?")
	why := v.answer(1, "why")
	require.Contains(t, why, "in 10 of 100 cases 40 days of work are lost")
	require.Contains(t, v.answer(1, "not today"), "off the board until tomorrow")
	require.Contains(t, v.answer(1, "board"), "Nobody needs you today")
	v.wait(24 * time.Hour)
	require.Contains(t, v.answer(1, "board"), "1 Amina")
	require.Contains(t, v.answer(1, "done 1"), "Amina is visited")
	v.says(1, "hot")
	v.says(1, "right")
	v.says(1, "all is well")
	require.NotContains(t, v.answer(1, "board"), "Amina")
}

func TestAVisitLandsInTheFarmersDiaryAndPlan(t *testing.T) {
	v := ridge(t)
	v.built(11, "4")
	before := len(v.heard[11])
	require.Contains(t, v.answer(1, "visited amina"), "stick")
	require.Equal(t, "stick", asksOf(v.talks[1].Open))
	v.says(1, "hot")
	require.Equal(t, "moisture", asksOf(v.talks[1].Open))
	v.says(1, "right")
	v.says(1, "water")
	s := v.states[11]
	r, ok := s.Heaps[0].Read()
	require.True(t, ok)
	require.Equal(t, "hot", r.Warmth)
	require.Equal(t, "right", s.Heaps[0].Moisture)
	require.Equal(t, TaskTurn, s.Heaps[0].Windows()[0].Task, "the plan moved on from the stick")
	for _, e := range v.diaries[11] {
		if _, read := e.Event.(StickRead); read {
			require.Equal(t, PersonID(1), e.By, "marked as the officer's word")
		}
	}
	require.Contains(t, v.since(11, before), "Tarik looked at your heap. The advice: give it water.")
	// Build it again after a cold heap: the farmer is asked for it.
	v.built(12, "7")
	v.says(1, "visited juma")
	v.says(1, "cold")
	v.says(1, "dry")
	v.says(1, "build it again")
	require.True(t, v.states[12].Heaps[0].Redo)
	require.Equal(t, TaskRebuild, v.states[12].Heaps[0].Windows()[0].Task)
}

func TestWordsGoBothWays(t *testing.T) {
	v := ridge(t)
	v.built(11, "6")
	v.says(11, "stick cold")
	v.says(11, "officer")
	before := len(v.heard[1])
	v.says(11, "It is cold, what now?")
	got := v.since(1, before)
	require.Contains(t, got, "Amina (Nakuru) writes: It is cold, what now?")
	require.Contains(t, got, "- stick cold", "the last lines go with it")
	require.Equal(t, "text", asksOf(v.talks[1].Open))
	// A second farmer asks meanwhile; the first waits behind.
	v.says(12, "officer")
	v.says(12, "May I start?")
	require.Contains(t, v.answer(1, "Yes, start with leaves"), "Passed to Juma")
	require.Contains(t, v.last(12).Text, "Tarik, your officer, writes: Yes, start with leaves")
	require.Equal(t, PersonID(11), v.talks[1].Open.Who)
	// A word of danger in the answer is passed on all the same, and commands work.
	require.Contains(t, v.answer(1, "board"), "Amina")
	require.Contains(t, v.answer(1, "amina: if you see smoke, stand back"), "Passed to Amina")
	require.Contains(t, v.last(11).Text, "if you see smoke, stand back")
	require.True(t, v.states[11].Person.Asking.IsZero())
	require.Empty(t, v.states[1].Person.Duty.Alarms)
	// Photos pass by reference, both ways.
	v.says(11, "officer")
	v.step(11, Message{Kind: Photo, File: "ref-1"})
	require.Equal(t, &Enclosed{Photo, "ref-1"}, v.last(1).File)
	v.step(1, Message{Kind: Voice, File: "ref-2"})
	require.Equal(t, &Enclosed{Voice, "ref-2"}, v.last(11).File)
	for _, d := range v.diaries {
		for _, e := range d {
			_, body, _ := Encode(e.Event)
			require.NotContains(t, string(body), "ref-", "references are not kept")
		}
	}
}

func TestWordsAtNightArriveInTheMorning(t *testing.T) {
	v := ridge(t)
	v.wait(15 * time.Hour) // ten in the evening
	v.says(11, "officer")
	v.says(11, "Are you awake?")
	l := v.last(1)
	require.Equal(t, "2026-03-03T06:00:00+03:00", l.After.In(v.states[1].Person.Zone()).Format(time.RFC3339))
	require.NotEqual(t, "answer_text", v.talks[1].Open.ID, "what the officer types now does not go to the farmer")
	v.wait(10 * time.Hour)
	require.Contains(t, v.answer(1, "Good morning, now I am"), "Passed to Amina")
}

func TestAlertsAreRepeatedPassedOnAndSeenOnce(t *testing.T) {
	v := ridge(t)
	v.wait(15 * time.Hour) // night: dangers come at once
	n1, n2 := len(v.heard[1]), len(v.heard[2])
	v.says(11, "smoke from my heap")
	require.Contains(t, v.since(1, n1), "Alert: Amina (Nakuru): smoke from the heap.")
	require.True(t, v.last(1).After.IsZero())
	require.Empty(t, v.since(2, n2), "one officer first")
	v.wait(20 * time.Minute)
	require.Contains(t, v.last(1).Text, "Alert, not seen yet: Amina")
	require.Empty(t, v.since(2, n2))
	v.wait(time.Hour)
	require.Contains(t, v.since(2, n2), "Tarik has not answered")
	// Two officers act: the second is told who has it, nothing is doubled.
	v.step(2, Press{alertSeen})
	require.Contains(t, v.last(2).Text, "you have it in hand: Amina")
	require.Contains(t, v.last(1).Text, "Lena has seen the alert about Amina")
	v.step(1, Press{alertSeen})
	require.Contains(t, v.last(1).Text, "No alert is open")
	n1, n2 = len(v.heard[1]), len(v.heard[2])
	v.wait(5 * time.Hour)
	require.NotContains(t, v.since(1, n1)+v.since(2, n2), "not seen yet")
}

// What can wait till the morning waits: a third cold round told at night, and
// dying worms. Its repeats count from then.
func TestAlertsThatCanWait(t *testing.T) {
	v := ridge(t)
	back := func(days int, e Event) {
		at := v.now.AddDate(0, 0, -days)
		entry := Entry{Person: 11, Heap: 1, At: at, Day: DayOf(at, v.states[11].Person.Zone()), Noted: at, By: 11, Event: e}
		v.keep(entry)
	}
	back(40, Begun{HotHeap})
	back(30, Built{})
	back(22, RedoOrdered{Cause: "dry"})
	back(20, Built{})
	back(12, RedoOrdered{Cause: "dry"})
	back(8, Built{})
	v.talks[11] = Talk{}   // nothing is being asked
	v.wait(15 * time.Hour) // ten in the evening
	n := len(v.heard[1])
	v.says(11, "stick cold")
	require.Contains(t, v.since(1, n), "a third cold round")
	l := v.last(1)
	require.Equal(t, Alert, l.Kind)
	require.Equal(t, "06:00", clockText(l.After.In(v.states[1].Person.Zone())))
	n = len(v.heard[1])
	v.wait(7 * time.Hour)
	require.Empty(t, v.since(1, n), "not repeated before it has come")
	v.wait(75 * time.Minute)
	require.Contains(t, v.since(1, n), "not seen yet")
	require.Contains(t, v.answer(1, "board"), "1 Amina (Nakuru): danger, a third cold round")
	v.says(1, "1")
	require.Empty(t, v.states[1].Person.Duty.Alarms, "who has opened the line has seen the alert")
}

func TestAnnouncements(t *testing.T) {
	v := ridge(t)
	require.Contains(t, v.answer(1, "announce "+strings.Repeat("long ", 800)), "At most 220 fit")
	require.Equal(t, "text", asksOf(v.talks[1].Open))
	v.says(12, "stop")
	preview := v.answer(1, "announce Meeting on Friday")
	require.Contains(t, preview, "English, 2 farmers: Tarik, your officer, to the group: Meeting on Friday")
	require.Equal(t, "confirm", asksOf(v.talks[1].Open))
	n11, n12, n15 := len(v.heard[11]), len(v.heard[12]), len(v.heard[15])
	v.says(1, "yes")
	require.Contains(t, v.since(11, n11), "Meeting on Friday")
	require.Empty(t, v.since(12, n12), "stop holds for announcements")
	require.Empty(t, v.since(15, n15), "another group")
	v.says(1, "fine")
	v.wait(time.Hour)
	require.Contains(t, v.last(1).Text, "Your words went to 2 of 2")
	// At night it waits, and what waits can be taken back.
	v.wait(14 * time.Hour)
	n11 = len(v.heard[11])
	v.says(1, "announce Rain tomorrow")
	v.says(1, "yes")
	require.True(t, v.last(11).After.After(v.now))
	require.Contains(t, v.answer(1, "stop sending"), "2 letters had not gone")
	require.NotContains(t, v.since(11, n11), "Rain tomorrow")
	v.says(12, "hello")
}

// An officer who greets while yesterday's list is open sees today's, with what came in the
// night on top.
func TestAGreetingShowsTodaysList(t *testing.T) {
	v := ridge(t)
	v.built(11, "9")
	v.built(12, "9")
	v.cold(12)
	v.wait(24 * time.Hour)
	v.says(1, "board")
	require.Equal(t, "board", v.talks[1].Open.ID)
	v.says(11, "my son cut his leg with the fork")
	require.Regexp(t, `1 Amina .*danger`, v.answer(1, "hello"))
}

func TestFarmersWithoutPhones(t *testing.T) {
	v := ridge(t)
	v.says(3, "groups")
	v.says(3, "farmer without phone")
	v.says(3, "Mama Njeri")
	require.Equal(t, "consent", asksOf(v.talks[3].Open))
	v.says(3, "yes")
	njeri := v.named("Mama Njeri")
	require.Equal(t, PersonID(3), v.states[njeri].Person.Keeper)
	require.Contains(t, v.answer(3, "heap njeri"), "Mama Njeri")
	v.says(3, "1")
	v.says(3, "built 4 days ago")
	v.says(3, "6 x 4 x 4 ft")
	require.Len(t, v.states[njeri].Heaps, 1)
	require.Empty(t, v.states[3].Heaps, "nothing of it is the keeper's")
	for _, e := range v.diaries[njeri] {
		require.NotEqual(t, njeri, e.By, "%T is marked as told by the keeper", e.Event)
	}
	require.Contains(t, v.answer(3, "undo"), "Taken back")
	v.says(3, "6 x 4 x 4 ft")
	v.says(3, "menu")
	require.Nil(t, v.talks[3].Inside)
	before := len(v.heard[3])
	v.wait(2 * 24 * time.Hour)
	require.Contains(t, v.since(3, before), "Mama Njeri:\n", "reminders go to the keeper")
	require.Empty(t, v.heard[njeri])
	// Her data goes when she asks, through the keeper; the keeper's own stays.
	v.says(3, "heap njeri")
	v.says(3, "1")
	v.says(3, "delete me")
	require.Contains(t, v.last(3).Text, "Mama Njeri:\n")
	v.says(3, "yes")
	require.NotContains(t, v.states, njeri)
	require.Contains(t, v.states, PersonID(3))
	require.Nil(t, v.talks[3].Inside)
	// The lead farmer answers for her, but sees no farmer who has a phone.
	require.Contains(t, v.answer(3, "heap amina"), "I know no amina")
}

func TestLeavingAGroup(t *testing.T) {
	v := ridge(t)
	v.built(11, "4")
	v.says(11, "stick hot")
	group := v.states[1].Person.Made[0].ID
	v.says(11, "groups")
	require.Contains(t, v.answer(11, "leave numbers, no name"), "numbers without your name")
	cards := v.Members(group)
	left := 0
	for _, c := range cards {
		require.NotEqual(t, "Amina", c.Name)
		if c.Nameless {
			left++
			require.Equal(t, "hot", c.Tales[0].Check)
		}
	}
	require.Equal(t, 1, left)
	require.Contains(t, v.answer(1, "heap amina"), "I know no amina")
	require.Len(t, v.states[11].Heaps, 1, "the farmer keeps the heap")
	v.says(12, "groups")
	require.Contains(t, v.answer(12, "leave, take my data"), "sees nothing of you")
	require.Len(t, v.Members(group), 2, "the lead farmer and the numbers")
}

func TestHandingOver(t *testing.T) {
	v := ridge(t)
	v.says(5, "groups")
	v.says(5, "more")
	v.says(5, "leave, hand over")
	require.Contains(t, v.answer(5, "yes"), "You are the only officer")
	v.says(1, "groups")
	v.says(1, "more")
	v.says(1, "leave, hand over")
	require.Contains(t, v.answer(1, "yes"), "The other officers go on")
	require.NotContains(t, v.answer(1, "heap amina"), "Kenya")
	require.Contains(t, v.answer(2, "heap amina"), "Amina, Nakuru")
	// Codes: old, withdrawn, unknown.
	code := v.states[5].Person.Invites[0].Code
	v.says(5, "groups")
	v.says(5, "more")
	require.Contains(t, v.answer(5, "end all codes"), "1 code works no more")
	v.enrol(20, "Late")
	require.Contains(t, v.answer(20, code), "does not work any more")
	v.step(20, Message{Kind: Text, Text: "zzzzzzzzzz", Code: "zzzzzzzzzz"})
	require.Contains(t, v.since(20, len(v.heard[20])-1), "I do not know that code")
}

func TestGroupMeasures(t *testing.T) {
	v := ridge(t)
	v.says(1, "groups")
	v.says(1, "weigh a measure")
	require.Contains(t, v.answer(1, "1 basket of dry leaves is 3 kg"), "1 basket of dry leaves counts as 3 kg now")
	require.InDelta(t, 3, v.states[11].Person.Measures["basket dry_leaves"], 0.01)
	v.enrol(21, "New")
	v.says(1, "invite")
	v.join(1, 21)
	require.InDelta(t, 3, v.states[21].Person.Measures["basket dry_leaves"], 0.01, "newcomers get the group's measures")
}

func TestLessonsTouchNothing(t *testing.T) {
	for n := range courses() {
		v := ridge(t)
		lines := 0
		for _, d := range v.diaries {
			lines += len(d)
		}
		v.says(1, "groups")
		v.says(1, "practice heap")
		before := len(v.heard[1])
		v.says(1, string(rune('1'+n)))
		for range 25 {
			if v.talks[1].Inside == nil {
				break
			}
			l := v.last(1)
			line := "go on"
			if len(l.Buttons) > 0 {
				line = "1"
			}
			v.says(1, line)
		}
		require.Nil(t, v.talks[1].Inside, "the lesson comes to its end")
		said := v.since(1, before)
		require.Contains(t, said, "End of practice")
		require.Contains(t, said, "Practice:\n")
		after := 0
		for _, d := range v.diaries {
			after += len(d)
		}
		require.Equal(t, lines, after, "no diary grew in lesson %s", courses()[n].id)
	}
}

func TestTheMorningBoardComesOnlyWithSomethingToSay(t *testing.T) {
	v := ridge(t)
	n := len(v.heard[1])
	v.wait(24 * time.Hour)
	require.Empty(t, v.since(1, n))
	v.built(11, "6")
	v.cold(11)
	n = len(v.heard[1])
	v.wait(24 * time.Hour)
	require.Contains(t, v.since(1, n), "Good morning. 1 farmer needs you:\n1 Amina")
	for _, l := range v.heard[1][n:] {
		require.Equal(t, Digest, l.Kind)
	}
	n = len(v.heard[1])
	v.says(1, "stop")
	v.wait(3 * 24 * time.Hour)
	require.NotContains(t, v.since(1, n), "Good morning", "stop holds for officers too")
}

// Each item of an officer's menu does what it says, by its number and by its button.
func TestTheOfficersMenuIsTheirs(t *testing.T) {
	for _, tag := range []string{"en", "sw", "hi", "hi-Latn", "es", "fr"} {
		v := ridge(t)
		v.keep(v.entry(1, LanguageSet{tag}))
		refused := phrases.Text(tag, "officers_only", nil)
		v.says(1, "menu")
		buttons := v.last(1).Buttons
		require.Len(t, buttons, 5)
		for i := range buttons {
			v.says(1, "menu")
			require.NotContains(t, v.answer(1, strconv.Itoa(i+1)), refused)
			v.says(1, "menu")
			n := len(v.heard[1])
			v.step(1, Press{v.last(1).Buttons[i].Press})
			require.NotContains(t, v.since(1, n), refused)
			require.NotEmpty(t, v.since(1, n))
		}
	}
}

// What an officer asks for in words of their own.
func TestOfficersWishes(t *testing.T) {
	v := ridge(t)
	v.built(11, "6")
	v.cold(11)
	for _, c := range [][2]string{
		{"who needs me today?", "1 farmer needs you"}, {"where should I go today", "Today 1 visit"}, {"how is Amina", "Amina, Nakuru"}, {"show me juma", "Juma, Nakuru"},
		{"which farmers are late", "1 farmer needs you"}, {"send a message to all", "What shall I tell them?"}, {"how many farmers do I have", "farmers, 0 without a phone"},
		{"I visited Amina, she turned it", "Amina"}, {"visited Amina, it was only steam", "Amina is visited"}, {"write to juma please", "Juma"}, {"how was the week", "3 farmers"},
	} {
		said, has := c[0], c[1]
		v.says(1, "menu")
		got := v.answer(1, said)
		require.Contains(t, got, has, said)
		require.Empty(t, v.states[1].Heaps, said)
		require.NotContains(t, got, "not understand", said)
		v.says(1, "menu")
	}
	require.NotContains(t, v.answer(1, "how is Zuri"), "Zuri, Nakuru", "another officer's farmer is nobody here")
}

// An officer's place was not known while an announcement went out, and is told at
// night: the count waits for the morning, and the clock is not kept busy till then.
func TestACountThatComesAtNight(t *testing.T) {
	v := newVillage(t, "2026-03-02T07:00:00+03:00")
	v.step(1, OfficerMade{})
	for _, line := range []string{"hello", "Tarik"} {
		v.says(1, line)
	}
	v.keep(v.entry(1, Announced{Batch: "b", N: 2, Last: v.now}))
	v.keep(v.entry(1, GroupMade{1, "Ridge"}))
	v.now = v.now.Add(15 * time.Hour)
	v.keep(v.entry(1, Placed{Zone: "Africa/Nairobi"}))
	v.wait(12 * time.Hour)
	for _, d := range Plan(v.states[1]) {
		require.True(t, d.At.After(v.now), d)
	}
	require.Empty(t, v.states[1].Person.Duty.Batches)
}
