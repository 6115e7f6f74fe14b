package store

// query names one statement of the writer. All are prepared once, on its one
// connection; the plans of those on the hot path are asserted in a test.
type query int

const (
	begin query = iota
	commit
	rollback

	counterGet
	counterSet
	settingGet
	settingSet

	inboxAdd
	inboxStale
	inboxDone
	inboxWipe
	inboxSpoil
	inboxList

	personByChat
	personByID
	personAdd
	personTalk
	personFold

	entryAdd
	entryList

	dueList
	dueAdd
	dueCut
	dueCutAll
	dueMove
	duePush
	dueNext
	dueMin

	cardSet
	cardCut
	memberSet
	memberCut
	crewSet
	crewCut
	crewGet
	crewStaff
	crewCards
	inviteSet
	inviteCut
	inviteGet

	letterAdd
	letterCut
	letterRefuse
	letterDrop
	letterStale
	letterLeft
	letterBatch
	letterHalt
	letterOne
	letterAfter
	letterQueue

	holdSet
	holdCut
	holdList

	leavingAdd
	leavingList

	queries
)

var sqlOf = [queries]string{
	begin:    `BEGIN IMMEDIATE`,
	commit:   `COMMIT`,
	rollback: `ROLLBACK`,

	counterGet: `SELECT person, entry, letter FROM counter`,
	counterSet: `UPDATE counter SET person = ?, entry = ?, letter = ?`,
	settingGet: `SELECT value FROM setting WHERE name = ?`,
	settingSet: `INSERT INTO setting VALUES (?, ?) ON CONFLICT (name) DO UPDATE SET value = excluded.value`,

	inboxAdd:   `INSERT INTO inbox (id, chat, got, raw) VALUES (?, ?, ?, ?) ON CONFLICT (id) DO NOTHING`,
	inboxStale: `DELETE FROM inbox WHERE id = ? AND got < ?`,
	inboxDone:  `UPDATE inbox SET done = ? WHERE seq = ? AND done IS NULL`,
	inboxWipe:  `UPDATE inbox SET raw = x'' WHERE seq = ?`,
	inboxSpoil: `UPDATE inbox SET done = ?, spoiled = ? WHERE seq = ?`,
	inboxList:  `SELECT seq, chat, got, raw FROM inbox WHERE done IS NULL ORDER BY seq LIMIT ?`,

	personByChat: `SELECT id, chat, talk, fold FROM person WHERE chat = ?`,
	personByID:   `SELECT id, coalesce(chat, 0), talk, fold FROM person WHERE id = ?`,
	personAdd:    `INSERT INTO person (id, chat, talk) VALUES (?, nullif(?, 0), x'')`,
	personTalk:   `UPDATE person SET talk = ? WHERE id = ?`,
	personFold:   `UPDATE person SET talk = ?, fold = ? WHERE id = ?`,

	entryAdd:  `INSERT INTO entry (person, id, heap, at, day, noted, by, told, kind, body) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
	entryList: `SELECT id, heap, at, day, noted, by, told, kind, body FROM entry WHERE person = ? ORDER BY id`,

	dueList:   `SELECT heap, task, day, at FROM due WHERE person = ? ORDER BY heap, task, day`,
	dueAdd:    `INSERT INTO due (person, heap, task, day, at, look) VALUES (?, ?, ?, ?, ?, ?) ON CONFLICT DO NOTHING`,
	dueCut:    `DELETE FROM due WHERE person = ? AND heap = ? AND task = ? AND day = ?`,
	dueCutAll: `DELETE FROM due WHERE person = ?`,
	dueMove:   `UPDATE due SET day = ?1, at = ?2, look = ?2 WHERE person = ?3 AND heap = ?4 AND task = ?5 AND day = ?6`,
	duePush:   `UPDATE due SET look = ? WHERE person = ? AND look <= ?`,
	dueNext:   `SELECT person FROM due WHERE look <= ? ORDER BY look, person LIMIT ?`,
	dueMin:    `SELECT coalesce(min(look), 0) FROM due`,

	cardSet:   `INSERT INTO card VALUES (?, ?) ON CONFLICT (person) DO UPDATE SET body = excluded.body`,
	cardCut:   `DELETE FROM card WHERE person = ?`,
	memberSet: `INSERT INTO membership VALUES (?, ?, ?) ON CONFLICT (crew, person) DO UPDATE SET role = excluded.role`,
	memberCut: `DELETE FROM membership WHERE crew = ? AND person = ?`,
	crewSet:   `INSERT INTO crew VALUES (?, ?, ?) ON CONFLICT (id) DO UPDATE SET name = excluded.name`,
	crewCut:   `DELETE FROM crew WHERE id = ?`,
	crewGet:   `SELECT name FROM crew WHERE id = ?`,
	crewStaff: `SELECT person, role FROM membership WHERE crew = ? AND role <> 'farmer' ORDER BY person`,
	crewCards: `SELECT c.body FROM membership m JOIN card c ON c.person = m.person WHERE m.crew = ? AND m.role <> 'officer' ORDER BY m.person`,
	inviteSet: `INSERT INTO invite VALUES (?, ?, ?, ?, ?, ?) ON CONFLICT (code) DO UPDATE SET ended = excluded.ended`,
	inviteCut: `DELETE FROM invite WHERE code = ?`,
	inviteGet: `SELECT crew, role, by, expires, ended FROM invite WHERE code = ?`,

	letterAdd:    `INSERT INTO letter (id, person, chat, class, after, until, made, heap, about, batch, body) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
	letterCut:    `DELETE FROM letter WHERE id = ?`,
	letterRefuse: `UPDATE letter SET refused = ?, body = '' WHERE id = ? AND refused IS NULL`,
	letterDrop:   `UPDATE letter SET refused = ?, body = '' WHERE person = ? AND class > 0 AND refused IS NULL`,
	letterStale:  `UPDATE letter SET refused = ?, body = '' WHERE person = ? AND class = 1 AND heap = ? AND refused IS NULL`,
	letterLeft:   `SELECT count(*) FROM letter WHERE person = ? AND refused IS NULL`,
	letterBatch:  `SELECT count(*) FILTER (WHERE refused IS NULL), count(*) FILTER (WHERE refused IS NOT NULL) FROM letter WHERE batch = ? AND batch <> ''`,
	letterHalt:   `DELETE FROM letter WHERE batch = ? AND batch <> '' AND refused IS NULL`,
	letterOne:    `SELECT person, chat, class, until, body FROM letter WHERE id = ? AND refused IS NULL`,
	letterAfter:  `SELECT coalesce(min(after), 0) FROM letter WHERE class = ?1 + 0 AND after > ?2 + 0 AND refused IS NULL`,
	// "+ 0" keeps the planner from looking at the bound values, for which it would
	// prepare the statement anew at each call.
	letterQueue: `SELECT id, chat FROM letter WHERE class = ?1 + 0 AND after <= ?2 + 0 AND refused IS NULL ORDER BY after, id`,

	holdSet:  `INSERT INTO hold VALUES (?, ?, ?) ON CONFLICT (chat) DO UPDATE SET until = excluded.until, tries = excluded.tries`,
	holdCut:  `DELETE FROM hold WHERE chat = ?`,
	holdList: `SELECT chat, until, tries FROM hold`,

	leavingAdd:  `INSERT INTO leaving VALUES (?) ON CONFLICT DO NOTHING`,
	leavingList: `SELECT person FROM leaving`,
}
