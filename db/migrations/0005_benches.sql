-- The benches: who has which ticket and how far it is, and where every inch of rope went.

-- What a bench's queue sorts by (its due day, its place on the coil, its likeness) stands on the ticket itself, so that the next one is found by an
-- index however many are finished. Triggers below keep it as the job and the plan say.
CREATE TABLE new_cut_tickets (
  id           INTEGER PRIMARY KEY,
  piece_id     INTEGER NOT NULL UNIQUE REFERENCES pieces (id),
  state        TEXT NOT NULL CHECK (state IN ('waiting', 'at the bench', 'cut', 'packed', 'cancelled', 'surplus')),
  plan_coil_id INTEGER REFERENCES plan_coils (id),        -- the place by the accepted plan, or the one it was cut from
  queue_due    TEXT NOT NULL DEFAULT '9999-12-31',        -- the job's day; the last day there is where it has none
  queue_place  INTEGER NOT NULL DEFAULT 0,                -- place on the plan's coil
  claimed_by   TEXT,
  claimed_at   TEXT,
  touched_at   TEXT,                                      -- the claim ends by itself when this is long ago
  steps        INTEGER NOT NULL DEFAULT 0 CHECK (steps BETWEEN 0 AND 6),
  cut_coil_id  INTEGER REFERENCES coils (id),             -- the coil hung for it, then the coil it was cut from
  reserved_nm  INTEGER NOT NULL DEFAULT 0 CHECK (reserved_nm >= 0), -- rope of that coil spoken for and not yet taken off
  longest_nm   INTEGER,                                   -- the longest measure, before it was trimmed
  measured_nm  INTEGER CHECK (measured_nm > 0),
  first_use_id INTEGER,                                   -- the first line of rope_uses that this cut made
  cut_by       TEXT,
  cut_at       TEXT,
  packed_at    TEXT,
  CHECK ((state = 'at the bench') = (claimed_by IS NOT NULL)),
  CHECK ((claimed_by IS NULL) = (claimed_at IS NULL))
) STRICT;

INSERT INTO new_cut_tickets (id, piece_id, state, plan_coil_id, queue_due, queue_place, steps, cut_coil_id, measured_nm, cut_at)
SELECT cut_tickets.id, piece_id, state, plan_coil_id, coalesce(jobs.due, '9999-12-31'),
  coalesce((SELECT plan_cuts.position FROM plan_cuts WHERE plan_cuts.piece_id = pieces.id AND plan_cuts.plan_coil_id = cut_tickets.plan_coil_id), 0),
  iif(state IN ('cut', 'surplus'), 6, 0),
  iif(state IN ('cut', 'surplus'), (SELECT plan_coils.coil_id FROM plan_coils WHERE plan_coils.id = plan_coil_id), NULL),
  iif(state IN ('cut', 'surplus'), cut_nm, NULL), cut_at
FROM cut_tickets JOIN pieces ON pieces.id = piece_id JOIN jobs ON jobs.id = job_id;

DROP TABLE cut_tickets;
ALTER TABLE new_cut_tickets RENAME TO cut_tickets;

CREATE INDEX cut_tickets_next ON cut_tickets (queue_due, plan_coil_id, queue_place) WHERE state = 'waiting' AND plan_coil_id IS NOT NULL;
CREATE INDEX cut_tickets_waiting ON cut_tickets (id) WHERE state = 'waiting';
CREATE INDEX cut_tickets_at_the_bench ON cut_tickets (claimed_by) WHERE state = 'at the bench';
CREATE INDEX cut_tickets_by_plan_coil ON cut_tickets (plan_coil_id, state);
CREATE INDEX cut_tickets_by_cutter ON cut_tickets (cut_by, cut_at) WHERE cut_by IS NOT NULL;
CREATE INDEX cut_tickets_by_time ON cut_tickets (cut_at) WHERE cut_at IS NOT NULL;

CREATE TABLE new_drill_tickets (
  id         INTEGER PRIMARY KEY,
  post_id    INTEGER NOT NULL UNIQUE REFERENCES posts (id),
  state      TEXT NOT NULL CHECK (state IN ('waiting', 'at the bench', 'drilled', 're-ordered', 'cancelled', 'surplus')),
  queue_due  TEXT NOT NULL DEFAULT '9999-12-31',
  likeness   TEXT NOT NULL DEFAULT '',                    -- the same for posts that are bored alike
  claimed_by TEXT,
  claimed_at TEXT,
  touched_at TEXT,
  steps      INTEGER NOT NULL DEFAULT 0 CHECK (steps >= 0), -- drillings done, in the ticket's order
  drilled_by TEXT,
  drilled_at TEXT,
  CHECK ((state = 'at the bench') = (claimed_by IS NOT NULL)),
  CHECK ((claimed_by IS NULL) = (claimed_at IS NULL))
) STRICT;

INSERT INTO new_drill_tickets (id, post_id, state) SELECT id, post_id, state FROM drill_tickets;

DROP TABLE drill_tickets;
ALTER TABLE new_drill_tickets RENAME TO drill_tickets;

CREATE INDEX drill_tickets_next ON drill_tickets (queue_due, likeness, id) WHERE state = 'waiting';
CREATE INDEX drill_tickets_at_the_bench ON drill_tickets (claimed_by) WHERE state = 'at the bench';
CREATE INDEX drill_tickets_by_driller ON drill_tickets (drilled_by, drilled_at) WHERE drilled_by IS NOT NULL;
CREATE INDEX drill_tickets_by_time ON drill_tickets (drilled_at) WHERE drilled_at IS NOT NULL;

CREATE VIEW post_likeness AS
SELECT posts.id AS post_id, coalesce(jobs.due, '9999-12-31') AS due,
  coalesce((SELECT group_concat(bit_nm || ' ' || kind || ' ' || height_nm, ', ' ORDER BY bit_nm DESC, kind, height_nm) FROM bores WHERE bores.post_id = posts.id), '') AS likeness
FROM posts JOIN jobs ON jobs.id = job_id;

UPDATE drill_tickets SET queue_due = post_likeness.due, likeness = post_likeness.likeness
FROM post_likeness WHERE post_likeness.post_id = drill_tickets.post_id;

CREATE TRIGGER a_cut_ticket_is_due_with_its_job AFTER INSERT ON cut_tickets
BEGIN
  UPDATE cut_tickets SET queue_due = (SELECT coalesce(jobs.due, '9999-12-31') FROM pieces JOIN jobs ON jobs.id = job_id WHERE pieces.id = NEW.piece_id)
  WHERE id = NEW.id;
END;

CREATE TRIGGER a_cut_ticket_has_its_place_on_the_coil AFTER UPDATE OF plan_coil_id ON cut_tickets
WHEN NEW.plan_coil_id IS NOT NULL AND NEW.plan_coil_id IS NOT OLD.plan_coil_id
BEGIN
  UPDATE cut_tickets SET queue_place = coalesce((SELECT position FROM plan_cuts WHERE piece_id = NEW.piece_id AND plan_coil_id = NEW.plan_coil_id), 0)
  WHERE id = NEW.id;
END;

CREATE TRIGGER a_drill_ticket_stands_with_its_like AFTER INSERT ON drill_tickets
BEGIN
  UPDATE drill_tickets SET (queue_due, likeness) = (SELECT due, likeness FROM post_likeness WHERE post_id = NEW.post_id) WHERE id = NEW.id;
END;

CREATE TRIGGER tickets_are_due_with_their_job AFTER UPDATE OF due ON jobs WHEN NEW.due IS NOT OLD.due
BEGIN
  UPDATE cut_tickets SET queue_due = coalesce(NEW.due, '9999-12-31') WHERE piece_id IN (SELECT id FROM pieces WHERE job_id = NEW.id);
  UPDATE drill_tickets SET queue_due = coalesce(NEW.due, '9999-12-31') WHERE post_id IN (SELECT id FROM posts WHERE job_id = NEW.id);
END;

CREATE INDEX plan_coils_by_coil ON plan_coils (coil_id) WHERE coil_id IS NOT NULL;

-- What is left of a coil beside the rope of pieces that are at the bench.
CREATE VIEW coils_free AS
SELECT coils.id, left_nm - (SELECT coalesce(sum(reserved_nm), 0) FROM cut_tickets WHERE state = 'at the bench' AND cut_coil_id = coils.id) AS free_nm
FROM coils;

-- Whether the ragged end was trimmed off for this plan.
ALTER TABLE plan_coils ADD COLUMN trimmed INTEGER NOT NULL DEFAULT 0 CHECK (trimmed IN (0, 1));
UPDATE plan_coils SET trimmed = 1 WHERE id IN (SELECT plan_coil_id FROM cut_tickets WHERE state IN ('cut', 'surplus'));

-- Where the rope of a coil went. What came in is what is left and the sum of these lines. What was given back is a line below zero.
CREATE TABLE rope_uses (
  id         INTEGER PRIMARY KEY AUTOINCREMENT,
  at         TEXT NOT NULL,
  coil_id    INTEGER NOT NULL REFERENCES coils (id),
  ticket_id  INTEGER REFERENCES cut_tickets (id),
  kind       TEXT NOT NULL CHECK (kind IN ('piece', 'kerf', 'trim', 'offcut', 'scrap', 'correction')),
  nm         INTEGER NOT NULL,
  to_coil_id INTEGER REFERENCES coils (id)                -- the offcut it became
) STRICT;

CREATE INDEX rope_uses_by_coil ON rope_uses (coil_id, id);
CREATE INDEX rope_uses_by_ticket ON rope_uses (ticket_id, id);
CREATE INDEX rope_uses_by_time ON rope_uses (at);

-- What came off before the lines began.
INSERT INTO rope_uses (at, coil_id, kind, nm) SELECT came_at, id, 'correction', whole_nm - left_nm FROM coils WHERE left_nm < whole_nm;

-- A piece that was cut and not taken, so that its ticket waits again.
CREATE TABLE re_cuts (
  id          INTEGER PRIMARY KEY,
  at          TEXT NOT NULL,
  who         TEXT NOT NULL,
  ticket_id   INTEGER NOT NULL REFERENCES cut_tickets (id),
  measured_nm INTEGER NOT NULL CHECK (measured_nm > 0),
  reason      TEXT NOT NULL
) STRICT;

CREATE INDEX re_cuts_by_ticket ON re_cuts (ticket_id);

-- A post that was spoiled, so that another is ordered and its ticket starts again.
CREATE TABLE damages (
  id        INTEGER PRIMARY KEY,
  at        TEXT NOT NULL,
  who       TEXT NOT NULL,
  ticket_id INTEGER NOT NULL REFERENCES drill_tickets (id),
  steps     INTEGER NOT NULL CHECK (steps >= 0),          -- drillings that were done in it
  reason    TEXT NOT NULL
) STRICT;

CREATE INDEX damages_by_ticket ON damages (ticket_id);

CREATE INDEX cut_tickets_not_packed ON cut_tickets (piece_id) WHERE state IN ('waiting', 'at the bench', 'cut');
CREATE INDEX cut_tickets_by_packing ON cut_tickets (packed_at) WHERE packed_at IS NOT NULL;
CREATE INDEX drill_tickets_not_drilled ON drill_tickets (post_id) WHERE state IN ('waiting', 'at the bench', 're-ordered');
CREATE INDEX re_cuts_by_time ON re_cuts (at);
CREATE INDEX damages_by_time ON damages (at);
