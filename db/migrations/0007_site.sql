-- The site: what is installed, what installers report, and labels that count no more.

-- Drawn anew with each job file that is stored, so that what was worked out of another one is known to be old, after a restore too.
ALTER TABLE jobs ADD COLUMN version INTEGER NOT NULL DEFAULT 1 CHECK (version > 0);

-- The piece that this one was cut again for.
ALTER TABLE pieces ADD COLUMN replaces_id INTEGER REFERENCES pieces (id);

CREATE INDEX pieces_by_replaced ON pieces (replaces_id) WHERE replaces_id IS NOT NULL;

-- A piece that an installer has marked; one that nobody has marked has no row.
CREATE TABLE installations (
  piece_id  INTEGER PRIMARY KEY REFERENCES pieces (id),
  state     TEXT NOT NULL CHECK (state IN ('installed', 'not-installed')),
  tapped_at TEXT NOT NULL                  -- when the installer tapped, which may be long before it came in
) STRICT;

-- Codes that a piece had before. What is printed with one says so, and leads nowhere else.
CREATE TABLE ended_labels (
  code     TEXT PRIMARY KEY CHECK (length(code) = 12),
  piece_id INTEGER NOT NULL REFERENCES pieces (id),
  ended_at TEXT NOT NULL,
  reason   TEXT NOT NULL
) STRICT, WITHOUT ROWID;

CREATE INDEX ended_labels_by_piece ON ended_labels (piece_id);

-- What installers report of a piece, until the desk closes it.
CREATE TABLE site_reports (
  id           INTEGER PRIMARY KEY,
  piece_id     INTEGER NOT NULL REFERENCES pieces (id),
  kind         TEXT NOT NULL CHECK (kind IN ('too-short', 'too-long', 'damaged', 'missing')),
  note         TEXT NOT NULL CHECK (length(note) <= 500),
  photo        TEXT,                       -- the name of a file in the folder of photos
  tapped_at    TEXT NOT NULL,
  came_at      TEXT NOT NULL,
  re_cut_id    INTEGER REFERENCES pieces (id),   -- the piece cut in its place
  closed_at    TEXT,
  closed_by    TEXT,
  closing_note TEXT,
  CHECK ((closed_at IS NULL) = (closed_by IS NULL) AND (closed_at IS NULL) = (closing_note IS NULL))
) STRICT;

CREATE INDEX site_reports_open ON site_reports (id) WHERE closed_at IS NULL;
CREATE INDEX site_reports_by_piece ON site_reports (piece_id);

INSERT INTO history_subjects (name, told) VALUES ('piece', 1), ('site report', 1);
