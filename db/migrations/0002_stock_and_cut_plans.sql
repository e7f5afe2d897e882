-- Coils of rope in stock, and the plans that say which piece is cut from which coil.

CREATE TABLE coils (
  id           INTEGER PRIMARY KEY,
  mark         TEXT NOT NULL UNIQUE,
  material     TEXT NOT NULL,
  diameter_nm  INTEGER NOT NULL CHECK (diameter_nm > 0),
  construction TEXT NOT NULL,
  lot          TEXT NOT NULL,
  place        TEXT NOT NULL,
  parent_id    INTEGER REFERENCES coils (id),          -- the coil an offcut came from
  whole_nm     INTEGER NOT NULL CHECK (whole_nm > 0),  -- length when it came in, bought or cut off
  left_nm      INTEGER NOT NULL CHECK (left_nm >= 0),
  state        TEXT NOT NULL CHECK (state IN ('in stock', 'used up', 'retired')),
  came_at      TEXT NOT NULL,
  CHECK (left_nm > 0 OR state <> 'in stock')
) STRICT;

CREATE INDEX coils_in_stock ON coils (material, diameter_nm, construction) WHERE state = 'in stock';

CREATE TABLE cut_plans (
  id            INTEGER PRIMARY KEY,
  material      TEXT NOT NULL,
  diameter_nm   INTEGER NOT NULL CHECK (diameter_nm > 0),
  construction  TEXT NOT NULL,
  state         TEXT NOT NULL CHECK (state IN ('draft', 'accepted', 'replaced')),
  made_at       TEXT NOT NULL,
  made_by       TEXT NOT NULL,
  after_plan_id INTEGER REFERENCES cut_plans (id),     -- the accepted plan of this rope when the draft was made
  kerf_nm       INTEGER NOT NULL CHECK (kerf_nm >= 0),
  squaring_nm   INTEGER NOT NULL CHECK (squaring_nm >= 0),
  first_trim_nm INTEGER NOT NULL CHECK (first_trim_nm >= 0),
  keep_nm       INTEGER NOT NULL CHECK (keep_nm > 0),
  proof         TEXT NOT NULL                          -- in words: proved best, or how far from the bound
) STRICT;

CREATE UNIQUE INDEX one_accepted_plan_a_rope ON cut_plans (material, diameter_nm, construction) WHERE state = 'accepted';

-- A coil as the plan uses it: one in stock, or one to buy.
CREATE TABLE plan_coils (
  id             INTEGER PRIMARY KEY,
  plan_id        INTEGER NOT NULL REFERENCES cut_plans (id),
  position       INTEGER NOT NULL CHECK (position >= 0),
  coil_id        INTEGER REFERENCES coils (id),         -- null: to buy
  left_before_nm INTEGER NOT NULL CHECK (left_before_nm > 0),
  rest_nm        INTEGER NOT NULL CHECK (rest_nm >= 0), -- left when its cuts are made: an offcut or scrap
  UNIQUE (plan_id, position)
) STRICT;

-- A piece on a plan's coil, with its marks on the tape from the coil's free end.
CREATE TABLE plan_cuts (
  plan_coil_id INTEGER NOT NULL REFERENCES plan_coils (id),
  position     INTEGER NOT NULL CHECK (position >= 0),
  piece_id     INTEGER NOT NULL REFERENCES pieces (id),
  from_nm      INTEGER NOT NULL CHECK (from_nm >= 0),
  to_nm        INTEGER NOT NULL CHECK (to_nm > from_nm),
  PRIMARY KEY (plan_coil_id, position)
) STRICT, WITHOUT ROWID;

CREATE INDEX plan_cuts_by_piece ON plan_cuts (piece_id);

-- The place that the accepted plan gives a waiting piece; for a cut piece the place it was cut from, so that it traces to a lot.
ALTER TABLE cut_tickets ADD COLUMN plan_coil_id INTEGER REFERENCES plan_coils (id);
ALTER TABLE cut_tickets ADD COLUMN cut_at TEXT;

CREATE INDEX cut_tickets_by_plan_coil ON cut_tickets (plan_coil_id);
CREATE INDEX pieces_by_rope ON pieces (material, diameter_nm);

-- Answers already given, so that a request sent twice counts once.
CREATE TABLE requests (
  key    TEXT PRIMARY KEY,
  at     TEXT NOT NULL,
  answer TEXT NOT NULL
) STRICT, WITHOUT ROWID;

-- What the shop has set, by name; what is not here has its default in the program.
CREATE TABLE settings (
  name  TEXT PRIMARY KEY,
  value TEXT NOT NULL
) STRICT, WITHOUT ROWID;
