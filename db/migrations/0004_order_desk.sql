-- The order desk: drafts, prices and quotes, release and cancelling, and the shop's own rack of bits.
-- Money is whole ten-thousandths of the currency's unit.

-- A job being written. What was typed is kept as typed.
CREATE TABLE drafts (
  id         INTEGER PRIMARY KEY,
  version    INTEGER NOT NULL CHECK (version > 0),
  number     TEXT NOT NULL,             -- as typed, for the list
  customer   TEXT NOT NULL,             -- as typed, for the list
  form       TEXT NOT NULL,             -- JSON: each field's text as it was typed
  state      TEXT NOT NULL CHECK (state IN ('open', 'taken in', 'dropped')),
  job_number TEXT,                      -- the job it became, or changed
  changed_at TEXT NOT NULL,
  changed_by TEXT NOT NULL,
  CHECK ((state = 'taken in') = (job_number IS NOT NULL))
) STRICT;

CREATE INDEX drafts_open ON drafts (changed_at) WHERE state = 'open';

-- What a draft said before, so that two people's changes can be told apart. Only the newest are kept.
CREATE TABLE draft_versions (
  draft_id INTEGER NOT NULL REFERENCES drafts (id),
  version  INTEGER NOT NULL,
  form     TEXT NOT NULL,
  PRIMARY KEY (draft_id, version)
) STRICT, WITHOUT ROWID;

-- Prices valid from a day on. Never changed: a correction is a newer list for the same day.
CREATE TABLE price_lists (
  id             INTEGER PRIMARY KEY,
  valid_from     TEXT NOT NULL CHECK (valid_from GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
  cut_e4         INTEGER NOT NULL CHECK (cut_e4 >= 0),       -- a piece cut
  packing_e4     INTEGER NOT NULL CHECK (packing_e4 >= 0),   -- a job
  delivery_e4    INTEGER NOT NULL CHECK (delivery_e4 >= 0),  -- a job
  tax_millionths INTEGER NOT NULL CHECK (tax_millionths BETWEEN 0 AND 1000000),
  quote_days     INTEGER NOT NULL CHECK (quote_days BETWEEN 1 AND 365),
  made_at        TEXT NOT NULL
) STRICT;

CREATE INDEX price_lists_by_day ON price_lists (valid_from, id);

CREATE TABLE rope_prices (
  list_id     INTEGER NOT NULL REFERENCES price_lists (id),
  material    TEXT NOT NULL,
  diameter_nm INTEGER NOT NULL CHECK (diameter_nm > 0),
  foot_e4     INTEGER NOT NULL CHECK (foot_e4 >= 0),
  PRIMARY KEY (list_id, material, diameter_nm)
) STRICT, WITHOUT ROWID;

-- A bore costs what the narrowest band that holds its bit says.
CREATE TABLE bore_prices (
  list_id   INTEGER NOT NULL REFERENCES price_lists (id),
  up_to_nm  INTEGER NOT NULL CHECK (up_to_nm > 0),
  bore_e4   INTEGER NOT NULL CHECK (bore_e4 >= 0),
  PRIMARY KEY (list_id, up_to_nm)
) STRICT, WITHOUT ROWID;

-- A quote holds its own figures, so that later prices do not touch it.
CREATE TABLE quotes (
  id             INTEGER PRIMARY KEY,
  draft_id       INTEGER NOT NULL REFERENCES drafts (id),
  draft_version  INTEGER NOT NULL,
  job_number     TEXT NOT NULL,
  customer       TEXT NOT NULL,
  job_file       TEXT NOT NULL,
  price_list_id  INTEGER NOT NULL REFERENCES price_lists (id),
  currency       TEXT NOT NULL,
  tax_millionths INTEGER NOT NULL,
  net_e4         INTEGER NOT NULL,
  tax_e4         INTEGER NOT NULL,
  total_e4       INTEGER NOT NULL CHECK (total_e4 = net_e4 + tax_e4),
  made_on        TEXT NOT NULL,
  valid_until    TEXT NOT NULL,
  state          TEXT NOT NULL CHECK (state IN ('open', 'accepted')),
  UNIQUE (draft_id, draft_version, made_on, price_list_id)
) STRICT;

CREATE INDEX quotes_by_job ON quotes (job_number);

CREATE TABLE quote_lines (
  quote_id  INTEGER NOT NULL REFERENCES quotes (id),
  position  INTEGER NOT NULL CHECK (position >= 0),
  what      TEXT NOT NULL,
  quantity  TEXT NOT NULL,
  price_e4  INTEGER NOT NULL,
  unit      TEXT NOT NULL,
  amount_e4 INTEGER NOT NULL CHECK (amount_e4 % 100 = 0),    -- whole cents
  PRIMARY KEY (quote_id, position)
) STRICT, WITHOUT ROWID;

-- The bits on the shop's rack; while the setting 'bit rack' is not 'own', the program's list counts.
CREATE TABLE bits (
  kind        TEXT NOT NULL CHECK (kind IN ('threaded-forstner', 'spade', 'hole-saw')),
  diameter_nm INTEGER NOT NULL CHECK (diameter_nm > 0),
  PRIMARY KEY (kind, diameter_nm)
) STRICT, WITHOUT ROWID;

-- A job is received, then released to the shop. What was taken in before this had been released at once.
ALTER TABLE jobs ADD COLUMN released_at TEXT;
ALTER TABLE jobs ADD COLUMN cancelled_at TEXT;
UPDATE jobs SET released_at = taken_in_at;

-- The list of jobs is read from this index alone, in its order, however many jobs there are.
CREATE INDEX jobs_listed ON jobs (coalesce(due, '9999-99-99'), number, customer, released_at, cancelled_at);

-- A piece or post that a change of the job took out keeps its row, its ticket and its history.
ALTER TABLE pieces ADD COLUMN dropped_at TEXT;
ALTER TABLE posts ADD COLUMN dropped_at TEXT;

-- Tickets may be cancelled, or what was made may have become surplus.
CREATE TABLE cut_tickets_now (
  id       INTEGER PRIMARY KEY,
  piece_id INTEGER NOT NULL UNIQUE REFERENCES pieces (id),
  state    TEXT NOT NULL CHECK (state IN ('waiting', 'cut', 'cancelled', 'surplus')),
  plan_coil_id INTEGER REFERENCES plan_coils (id),
  cut_at   TEXT
) STRICT;

INSERT INTO cut_tickets_now (id, piece_id, state, plan_coil_id, cut_at) SELECT id, piece_id, state, plan_coil_id, cut_at FROM cut_tickets;
DROP TABLE cut_tickets;
ALTER TABLE cut_tickets_now RENAME TO cut_tickets;
CREATE INDEX cut_tickets_by_plan_coil ON cut_tickets (plan_coil_id);
CREATE INDEX cut_tickets_waiting ON cut_tickets (id) WHERE state = 'waiting';

CREATE TABLE drill_tickets_now (
  id      INTEGER PRIMARY KEY,
  post_id INTEGER NOT NULL UNIQUE REFERENCES posts (id),
  state   TEXT NOT NULL CHECK (state IN ('waiting', 'drilled', 'cancelled', 'surplus'))
) STRICT;

INSERT INTO drill_tickets_now (id, post_id, state) SELECT id, post_id, state FROM drill_tickets;
DROP TABLE drill_tickets;
ALTER TABLE drill_tickets_now RENAME TO drill_tickets;
CREATE INDEX drill_tickets_waiting ON drill_tickets (id) WHERE state = 'waiting';

INSERT INTO history_subjects (name, told) VALUES ('draft', 0), ('quote', 0), ('price list', 0), ('bit rack', 0);
