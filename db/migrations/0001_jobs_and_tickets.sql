-- Jobs as taken in, the pieces and posts they need, and a ticket for each.
-- Lengths are whole nanometres. Times are UTC, ISO 8601 with milliseconds and a Z.

CREATE TABLE jobs (
  id          INTEGER PRIMARY KEY,
  number      TEXT NOT NULL UNIQUE,
  customer    TEXT NOT NULL,
  due         TEXT CHECK (due IS NULL OR due GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
  one_lot     INTEGER NOT NULL CHECK (one_lot IN (0, 1)),
  job_file    TEXT NOT NULL,           -- the job file in its one plain form; the same job is the same text
  taken_in_at TEXT NOT NULL
) STRICT;

CREATE INDEX jobs_by_due ON jobs (due, number);

CREATE TABLE pieces (
  id          INTEGER PRIMARY KEY,
  job_id      INTEGER NOT NULL REFERENCES jobs (id),
  position    INTEGER NOT NULL CHECK (position >= 0),   -- in the takeoff's order
  run         TEXT NOT NULL,
  code        TEXT NOT NULL UNIQUE CHECK (length(code) = 12),
  material    TEXT NOT NULL,
  diameter_nm INTEGER NOT NULL CHECK (diameter_nm > 0),
  cut_nm      INTEGER NOT NULL CHECK (cut_nm > 0),
  UNIQUE (job_id, position)
) STRICT;

CREATE TABLE posts (
  id       INTEGER PRIMARY KEY,
  job_id   INTEGER NOT NULL REFERENCES jobs (id),
  position INTEGER NOT NULL CHECK (position >= 0),
  mark     TEXT NOT NULL,
  UNIQUE (job_id, mark)
) STRICT;

-- One bore of one run in one post, as ticketed.
CREATE TABLE bores (
  id        INTEGER PRIMARY KEY,
  post_id   INTEGER NOT NULL REFERENCES posts (id),
  piece_id  INTEGER NOT NULL REFERENCES pieces (id),
  kind      TEXT NOT NULL CHECK (kind IN ('stopped', 'through', 'corner', 'knot')),
  bit_nm    INTEGER NOT NULL CHECK (bit_nm > 0),
  height_nm INTEGER NOT NULL CHECK (height_nm > 0),
  UNIQUE (post_id, piece_id)
) STRICT;

CREATE INDEX bores_by_piece ON bores (piece_id);

CREATE TABLE bore_operations (
  bore_id  INTEGER NOT NULL REFERENCES bores (id),
  position INTEGER NOT NULL CHECK (position >= 0),
  face     TEXT NOT NULL,
  depth_nm INTEGER NOT NULL CHECK (depth_nm > 0),
  PRIMARY KEY (bore_id, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE cut_tickets (
  id       INTEGER PRIMARY KEY,
  piece_id INTEGER NOT NULL UNIQUE REFERENCES pieces (id),
  state    TEXT NOT NULL CHECK (state IN ('waiting', 'cut'))
) STRICT;

CREATE INDEX cut_tickets_waiting ON cut_tickets (id) WHERE state = 'waiting';

-- A post with nothing to bore has no drill ticket.
CREATE TABLE drill_tickets (
  id      INTEGER PRIMARY KEY,
  post_id INTEGER NOT NULL UNIQUE REFERENCES posts (id),
  state   TEXT NOT NULL CHECK (state IN ('waiting', 'drilled'))
) STRICT;

-- Every change of state, once and for good.
CREATE TABLE history (
  id         INTEGER PRIMARY KEY AUTOINCREMENT,
  at         TEXT NOT NULL,
  who        TEXT NOT NULL,
  subject    TEXT NOT NULL CHECK (subject IN ('job', 'cut ticket', 'drill ticket', 'coil', 'cut plan')),
  subject_id INTEGER NOT NULL,
  what       TEXT NOT NULL,
  before     TEXT NOT NULL,
  after      TEXT NOT NULL,
  reason     TEXT NOT NULL DEFAULT ''
) STRICT;

CREATE INDEX history_by_subject ON history (subject, subject_id, id);

CREATE TRIGGER history_is_never_rewritten BEFORE UPDATE ON history
BEGIN
  SELECT RAISE(ABORT, 'history is append-only');
END;

CREATE TRIGGER history_is_never_erased BEFORE DELETE ON history
BEGIN
  SELECT RAISE(ABORT, 'history is append-only');
END;
