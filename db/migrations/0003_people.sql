-- People who sign in, the tablets where a PIN is enough, and keys for programs.

CREATE TABLE people (
  id                INTEGER PRIMARY KEY,
  name              TEXT NOT NULL,
  name_key          TEXT NOT NULL UNIQUE,               -- the name in capitals: "Ada" and "ADA" are one person
  role              TEXT NOT NULL CHECK (role IN ('owner', 'desk', 'cutter', 'driller')),
  password_hash     TEXT NOT NULL,
  pin_hash          TEXT,                               -- null: no PIN
  millimetres_first INTEGER CHECK (millimetres_first IN (0, 1)),   -- null: as the shop's paper
  state             TEXT NOT NULL CHECK (state IN ('active', 'switched off')),
  stamp             TEXT NOT NULL,                      -- drawn anew when everything signed in under it must end
  added_at          TEXT NOT NULL
) STRICT;

-- Tries to sign in that have not come right. The name is hashed: a password typed in the wrong box must not stay here.
CREATE TABLE sign_in_tries (
  name_hash TEXT NOT NULL,
  way       TEXT NOT NULL CHECK (way IN ('password', 'PIN')),
  tries     INTEGER NOT NULL CHECK (tries > 0),
  last_at   TEXT NOT NULL,
  PRIMARY KEY (name_hash, way)
) STRICT, WITHOUT ROWID;

CREATE INDEX sign_in_tries_by_time ON sign_in_tries (last_at);

CREATE TABLE tablets (
  id          INTEGER PRIMARY KEY,
  name        TEXT NOT NULL,
  token_hash  TEXT NOT NULL UNIQUE,
  enrolled_by TEXT NOT NULL,
  enrolled_at TEXT NOT NULL,
  removed_at  TEXT
) STRICT;

CREATE TABLE api_keys (
  id           INTEGER PRIMARY KEY,
  name         TEXT NOT NULL,
  scope        TEXT NOT NULL CHECK (scope IN ('read', 'take-in')),
  key_hash     TEXT NOT NULL UNIQUE,
  made_by      TEXT NOT NULL,
  made_at      TEXT NOT NULL,
  last_used_at TEXT,
  revoked_at   TEXT
) STRICT;

-- What the history may speak of. "told" is 1 where programs that read the shop's changes are told of it.
CREATE TABLE history_subjects (
  name TEXT PRIMARY KEY,
  told INTEGER NOT NULL CHECK (told IN (0, 1))
) STRICT, WITHOUT ROWID;

INSERT INTO history_subjects (name, told) VALUES
  ('job', 1), ('cut ticket', 1), ('drill ticket', 1), ('coil', 1), ('cut plan', 1),
  ('person', 0), ('tablet', 0), ('API key', 0);

-- The history with its subjects in a table, so that a later migration adds one by a row.
CREATE TABLE history_with_subjects (
  id         INTEGER PRIMARY KEY AUTOINCREMENT,
  at         TEXT NOT NULL,
  who        TEXT NOT NULL,
  subject    TEXT NOT NULL REFERENCES history_subjects (name),
  subject_id INTEGER NOT NULL,
  what       TEXT NOT NULL,
  before     TEXT NOT NULL,
  after      TEXT NOT NULL,
  reason     TEXT NOT NULL DEFAULT ''
) STRICT;

INSERT INTO history_with_subjects (id, at, who, subject, subject_id, what, before, after, reason)
SELECT id, at, who, subject, subject_id, what, before, after, reason FROM history ORDER BY id;

DROP TABLE history;
ALTER TABLE history_with_subjects RENAME TO history;

CREATE INDEX history_by_subject ON history (subject, subject_id, id);

CREATE TRIGGER history_is_never_rewritten BEFORE UPDATE ON history
BEGIN
  SELECT RAISE(ABORT, 'history is append-only');
END;

CREATE TRIGGER history_is_never_erased BEFORE DELETE ON history
BEGIN
  SELECT RAISE(ABORT, 'history is append-only');
END;
