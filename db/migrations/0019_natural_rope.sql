-- Natural rope that was soaked and dried is kept apart from new rope, and ropes by how they are laid and by their colour. A piece of which nothing
-- is said is of three-strand rope of no particular colour, which is new where it is natural.
ALTER TABLE coils ADD COLUMN colour TEXT NOT NULL DEFAULT '';        -- from the shop's own list; empty where it does not matter
ALTER TABLE coils ADD COLUMN preshrunk INTEGER NOT NULL DEFAULT 0 CHECK (preshrunk IN (0, 1));
ALTER TABLE cut_plans ADD COLUMN colour TEXT NOT NULL DEFAULT '';
ALTER TABLE cut_plans ADD COLUMN preshrunk INTEGER NOT NULL DEFAULT 0 CHECK (preshrunk IN (0, 1));
ALTER TABLE pieces ADD COLUMN construction TEXT NOT NULL DEFAULT 'three-strand';
ALTER TABLE pieces ADD COLUMN colour TEXT NOT NULL DEFAULT '';
ALTER TABLE pieces ADD COLUMN preshrunk INTEGER NOT NULL DEFAULT 0 CHECK (preshrunk IN (0, 1)); -- cut from rope that was soaked and dried

DROP INDEX coils_in_stock;
CREATE INDEX coils_in_stock ON coils (material, diameter_nm, construction, colour, preshrunk) WHERE state = 'in stock';
DROP INDEX one_accepted_plan_a_rope;
CREATE UNIQUE INDEX one_accepted_plan_a_rope ON cut_plans (material, diameter_nm, construction, colour, preshrunk) WHERE state = 'accepted';
DROP INDEX pieces_by_rope;
CREATE INDEX pieces_by_rope ON pieces (material, diameter_nm, construction, colour, preshrunk);

-- The ledger has one kind more: what a coil lost when it was soaked and dried.
CREATE TABLE new_rope_uses (
  id         INTEGER PRIMARY KEY AUTOINCREMENT,
  at         TEXT NOT NULL,
  coil_id    INTEGER NOT NULL REFERENCES coils (id),
  ticket_id  INTEGER REFERENCES cut_tickets (id),
  kind       TEXT NOT NULL CHECK (kind IN ('piece', 'kerf', 'trim', 'offcut', 'scrap', 'correction', 'shrunk')),
  nm         INTEGER NOT NULL,
  to_coil_id INTEGER REFERENCES coils (id)                -- the offcut it became
) STRICT;

INSERT INTO new_rope_uses (id, at, coil_id, ticket_id, kind, nm, to_coil_id)
SELECT id, at, coil_id, ticket_id, kind, nm, to_coil_id FROM rope_uses ORDER BY id;

DROP TABLE rope_uses;
ALTER TABLE new_rope_uses RENAME TO rope_uses;

CREATE INDEX rope_uses_by_coil ON rope_uses (coil_id, id);
CREATE INDEX rope_uses_by_ticket ON rope_uses (ticket_id, id);
CREATE INDEX rope_uses_by_time ON rope_uses (at);

-- What rope of a coil lost, measured before it was soaked and once it was dry again: of a sample, or of the coil itself.
CREATE TABLE shrinkings (
  id            INTEGER PRIMARY KEY,
  coil_id       INTEGER NOT NULL REFERENCES coils (id),
  before_nm     INTEGER NOT NULL CHECK (before_nm > 0),
  after_nm      INTEGER NOT NULL CHECK (after_nm > 0),
  measured_at   TEXT NOT NULL,
  use_id        INTEGER,                                  -- the coil's line of rope_uses where the coil itself was soaked; null for a sample
  taken_back_at TEXT,
  CHECK (after_nm < before_nm)
) STRICT;

CREATE INDEX shrinkings_by_coil ON shrinkings (coil_id);
