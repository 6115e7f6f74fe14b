-- +goose Up

-- The last numbers given away; numbers are never used twice.
CREATE TABLE counter (
    one    INTEGER PRIMARY KEY CHECK (one = 1),
    person INTEGER NOT NULL, -- of persons and groups alike
    entry  INTEGER NOT NULL,
    letter INTEGER NOT NULL
) STRICT;
INSERT INTO counter VALUES (1, 0, 0, 0);

CREATE TABLE setting (
    name  TEXT PRIMARY KEY,
    value TEXT NOT NULL
) STRICT, WITHOUT ROWID;

-- What came in, as it came. seq is the order of arrival: the platform's own ids
-- start anew at random after a quiet week.
CREATE TABLE inbox (
    seq     INTEGER PRIMARY KEY,
    id      INTEGER NOT NULL UNIQUE,
    chat    INTEGER NOT NULL,      -- 0 when it could not be read
    got     INTEGER NOT NULL,      -- milliseconds since 1970, as all times here
    done    INTEGER,
    spoiled TEXT,                  -- why it was put aside
    raw     BLOB NOT NULL
) STRICT;
CREATE INDEX inbox_waiting ON inbox (seq) WHERE done IS NULL;

CREATE TABLE person (
    id   INTEGER PRIMARY KEY,
    chat INTEGER UNIQUE,           -- none for a farmer without a phone
    talk TEXT NOT NULL,
    last INTEGER NOT NULL,         -- the diary's last line
    upto INTEGER NOT NULL,         -- the last line that fold holds
    fold TEXT                      -- a snapshot; none costs speed and nothing else
) STRICT;

-- The diary. Kept by person, so that one fold reads one stretch of pages.
CREATE TABLE entry (
    person INTEGER NOT NULL,
    id     INTEGER NOT NULL,
    heap   INTEGER NOT NULL,
    at     INTEGER NOT NULL,
    day    INTEGER NOT NULL,
    noted  INTEGER NOT NULL,
    by     INTEGER NOT NULL,
    told   INTEGER NOT NULL,
    kind   TEXT NOT NULL,
    body   TEXT NOT NULL,
    PRIMARY KEY (person, id)
) STRICT, WITHOUT ROWID;

-- Letters that have not gone yet. One that went is deleted; one that was
-- refused stays without its words until housekeeping takes it away.
CREATE TABLE letter (
    id      INTEGER PRIMARY KEY,
    person  INTEGER NOT NULL,
    chat    INTEGER NOT NULL,
    class   INTEGER NOT NULL,      -- 0 replies, 1 reminders, 2 announcements
    after   INTEGER NOT NULL,
    until   INTEGER NOT NULL,      -- 0 = always of use
    made    INTEGER NOT NULL,
    heap    INTEGER NOT NULL,
    about   INTEGER NOT NULL,      -- whose words it may hold, when not the reader's
    batch   TEXT NOT NULL,
    refused TEXT,
    body    TEXT NOT NULL
) STRICT;
-- refused is in both indexes, though it is always null there: without it SQLite
-- looks every row up in the table.
CREATE INDEX letter_waiting ON letter (class, after, id, chat, refused) WHERE refused IS NULL;
CREATE INDEX letter_person ON letter (person, class, id, refused) WHERE refused IS NULL;
CREATE INDEX letter_batch ON letter (batch, refused) WHERE batch <> '';

-- Chats to which nothing may go before a moment; chat 0 stands for all.
CREATE TABLE hold (
    chat  INTEGER PRIMARY KEY,
    until INTEGER NOT NULL,
    tries INTEGER NOT NULL
) STRICT;

-- From here on, everything can be made anew from the diary.
CREATE TABLE due (
    person INTEGER NOT NULL,
    heap   INTEGER NOT NULL,
    task   TEXT NOT NULL,
    day    INTEGER NOT NULL,
    at     INTEGER NOT NULL,
    look   INTEGER NOT NULL,       -- at, or later when an act was looked at in vain
    PRIMARY KEY (person, heap, task, day)
) STRICT, WITHOUT ROWID;
CREATE INDEX due_look ON due (look, person);

CREATE TABLE card (
    person INTEGER PRIMARY KEY,
    body   TEXT NOT NULL
) STRICT;

CREATE TABLE membership (
    crew   INTEGER NOT NULL,       -- the group
    person INTEGER NOT NULL,
    role   TEXT NOT NULL,
    PRIMARY KEY (crew, person)
) STRICT, WITHOUT ROWID;

CREATE TABLE crew (
    id      INTEGER PRIMARY KEY,
    name    TEXT NOT NULL,
    founder INTEGER NOT NULL
) STRICT;

CREATE TABLE invite (
    code    TEXT PRIMARY KEY,
    crew    INTEGER NOT NULL,
    role    TEXT NOT NULL,
    by      INTEGER NOT NULL,
    expires INTEGER NOT NULL,
    ended   INTEGER NOT NULL
) STRICT, WITHOUT ROWID;

-- End of what can be made anew.

-- People who asked to be deleted and wait for their last letter.
CREATE TABLE leaving (
    person INTEGER PRIMARY KEY
) STRICT;

-- People who were deleted, so that an older backup cannot bring them back.
CREATE TABLE tombstone (
    person INTEGER PRIMARY KEY,
    at     INTEGER NOT NULL
) STRICT;

-- +goose Down
DROP TABLE tombstone; DROP TABLE leaving; DROP TABLE invite; DROP TABLE crew;
DROP TABLE membership; DROP TABLE card; DROP TABLE due; DROP TABLE hold; DROP TABLE letter;
DROP TABLE entry; DROP TABLE person; DROP TABLE inbox; DROP TABLE setting; DROP TABLE counter;
