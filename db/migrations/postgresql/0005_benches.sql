-- The benches: who has which ticket and how far it is, and where every inch of rope went.

-- What a bench's queue sorts by (its due day, its place on the coil, its likeness) stands on the ticket itself, so that the next one is found by an
-- index however many are finished. Triggers below keep it as the job and the plan say.
ALTER TABLE cut_tickets
  DROP CONSTRAINT cut_tickets_state,
  ADD CONSTRAINT cut_tickets_state CHECK (state IN ('waiting', 'at the bench', 'cut', 'packed', 'cancelled', 'surplus')),
  ADD COLUMN queue_due    text COLLATE "C" NOT NULL DEFAULT '9999-12-31',  -- the job's day; the last day there is where it has none
  ADD COLUMN queue_place  bigint NOT NULL DEFAULT 0,                -- place on the plan's coil
  ADD COLUMN claimed_by   text COLLATE "C",
  ADD COLUMN claimed_at   text COLLATE "C",
  ADD COLUMN touched_at   text COLLATE "C",                         -- the claim ends by itself when this is long ago
  ADD COLUMN steps        bigint NOT NULL DEFAULT 0 CHECK (steps BETWEEN 0 AND 6),
  ADD COLUMN cut_coil_id  bigint REFERENCES coils (id),             -- the coil hung for it, then the coil it was cut from
  ADD COLUMN reserved_nm  bigint NOT NULL DEFAULT 0 CHECK (reserved_nm >= 0), -- rope of that coil spoken for and not yet taken off
  ADD COLUMN longest_nm   bigint,                                   -- the longest measure, before it was trimmed
  ADD COLUMN measured_nm  bigint CHECK (measured_nm > 0),
  ADD COLUMN first_use_id bigint,                                   -- the first line of rope_uses that this cut made
  ADD COLUMN cut_by       text COLLATE "C",
  ADD COLUMN packed_at    text COLLATE "C",
  ADD CHECK ((state = 'at the bench') = (claimed_by IS NOT NULL)),
  ADD CHECK ((claimed_by IS NULL) = (claimed_at IS NULL));

CREATE INDEX cut_tickets_next ON cut_tickets (queue_due, plan_coil_id, queue_place) WHERE state = 'waiting' AND plan_coil_id IS NOT NULL;
CREATE INDEX cut_tickets_at_the_bench ON cut_tickets (claimed_by) WHERE state = 'at the bench';
CREATE INDEX cut_tickets_by_plan_coil ON cut_tickets (plan_coil_id, state);
CREATE INDEX cut_tickets_by_cutter ON cut_tickets (cut_by, cut_at) WHERE cut_by IS NOT NULL;
CREATE INDEX cut_tickets_by_time ON cut_tickets (cut_at) WHERE cut_at IS NOT NULL;

ALTER TABLE drill_tickets
  DROP CONSTRAINT drill_tickets_state,
  ADD CONSTRAINT drill_tickets_state CHECK (state IN ('waiting', 'at the bench', 'drilled', 're-ordered', 'cancelled', 'surplus')),
  ADD COLUMN queue_due  text COLLATE "C" NOT NULL DEFAULT '9999-12-31',
  ADD COLUMN likeness   text COLLATE "C" NOT NULL DEFAULT '',        -- the same for posts that are bored alike
  ADD COLUMN claimed_by text COLLATE "C",
  ADD COLUMN claimed_at text COLLATE "C",
  ADD COLUMN touched_at text COLLATE "C",
  ADD COLUMN steps      bigint NOT NULL DEFAULT 0 CHECK (steps >= 0), -- drillings done, in the ticket's order
  ADD COLUMN drilled_by text COLLATE "C",
  ADD COLUMN drilled_at text COLLATE "C",
  ADD CHECK ((state = 'at the bench') = (claimed_by IS NOT NULL)),
  ADD CHECK ((claimed_by IS NULL) = (claimed_at IS NULL));

CREATE INDEX drill_tickets_next ON drill_tickets (queue_due, likeness, id) WHERE state = 'waiting';
CREATE INDEX drill_tickets_at_the_bench ON drill_tickets (claimed_by) WHERE state = 'at the bench';
CREATE INDEX drill_tickets_by_driller ON drill_tickets (drilled_by, drilled_at) WHERE drilled_by IS NOT NULL;
CREATE INDEX drill_tickets_by_time ON drill_tickets (drilled_at) WHERE drilled_at IS NOT NULL;

CREATE VIEW post_likeness AS
SELECT posts.id AS post_id, coalesce(jobs.due, '9999-12-31') AS due,
  coalesce((SELECT string_agg(bit_nm || ' ' || kind || ' ' || height_nm, ', ' ORDER BY bit_nm DESC, kind, height_nm) FROM bores WHERE bores.post_id = posts.id), '') AS likeness
FROM posts JOIN jobs ON jobs.id = job_id;

CREATE FUNCTION a_cut_ticket_is_due_with_its_job() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  UPDATE cut_tickets SET queue_due = (SELECT coalesce(jobs.due, '9999-12-31') FROM pieces JOIN jobs ON jobs.id = job_id WHERE pieces.id = NEW.piece_id)
  WHERE id = NEW.id;
  RETURN NULL;
END $$;

CREATE TRIGGER a_cut_ticket_is_due_with_its_job AFTER INSERT ON cut_tickets
FOR EACH ROW EXECUTE FUNCTION a_cut_ticket_is_due_with_its_job();

CREATE FUNCTION a_cut_ticket_has_its_place_on_the_coil() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  UPDATE cut_tickets SET queue_place = coalesce((SELECT position FROM plan_cuts WHERE piece_id = NEW.piece_id AND plan_coil_id = NEW.plan_coil_id), 0)
  WHERE id = NEW.id;
  RETURN NULL;
END $$;

CREATE TRIGGER a_cut_ticket_has_its_place_on_the_coil AFTER UPDATE OF plan_coil_id ON cut_tickets
FOR EACH ROW WHEN (NEW.plan_coil_id IS NOT NULL AND NEW.plan_coil_id IS DISTINCT FROM OLD.plan_coil_id)
EXECUTE FUNCTION a_cut_ticket_has_its_place_on_the_coil();

CREATE FUNCTION a_drill_ticket_stands_with_its_like() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  UPDATE drill_tickets SET (queue_due, likeness) = (SELECT due, post_likeness.likeness FROM post_likeness WHERE post_id = NEW.post_id) WHERE id = NEW.id;
  RETURN NULL;
END $$;

CREATE TRIGGER a_drill_ticket_stands_with_its_like AFTER INSERT ON drill_tickets
FOR EACH ROW EXECUTE FUNCTION a_drill_ticket_stands_with_its_like();

CREATE FUNCTION tickets_are_due_with_their_job() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  UPDATE cut_tickets SET queue_due = coalesce(NEW.due, '9999-12-31') WHERE piece_id IN (SELECT id FROM pieces WHERE job_id = NEW.id);
  UPDATE drill_tickets SET queue_due = coalesce(NEW.due, '9999-12-31') WHERE post_id IN (SELECT id FROM posts WHERE job_id = NEW.id);
  RETURN NULL;
END $$;

CREATE TRIGGER tickets_are_due_with_their_job AFTER UPDATE OF due ON jobs
FOR EACH ROW WHEN (NEW.due IS DISTINCT FROM OLD.due) EXECUTE FUNCTION tickets_are_due_with_their_job();

CREATE INDEX plan_coils_by_coil ON plan_coils (coil_id) WHERE coil_id IS NOT NULL;

-- What is left of a coil beside the rope of pieces that are at the bench.
CREATE VIEW coils_free AS
SELECT coils.id, CAST(left_nm - (SELECT coalesce(sum(reserved_nm), 0) FROM cut_tickets WHERE state = 'at the bench' AND cut_coil_id = coils.id) AS bigint) AS free_nm
FROM coils;

-- Whether the ragged end was trimmed off for this plan.
ALTER TABLE plan_coils ADD COLUMN trimmed bigint NOT NULL DEFAULT 0 CHECK (trimmed IN (0, 1));

-- Where the rope of a coil went. What came in is what is left and the sum of these lines. What was given back is a line below zero.
CREATE TABLE rope_uses (
  id         bigint GENERATED BY DEFAULT AS IDENTITY PRIMARY KEY,
  at         text COLLATE "C" NOT NULL,
  coil_id    bigint NOT NULL REFERENCES coils (id),
  ticket_id  bigint REFERENCES cut_tickets (id),
  kind       text COLLATE "C" NOT NULL CHECK (kind IN ('piece', 'kerf', 'trim', 'offcut', 'scrap', 'correction')),
  nm         bigint NOT NULL,
  to_coil_id bigint REFERENCES coils (id)                -- the offcut it became
);

CREATE INDEX rope_uses_by_coil ON rope_uses (coil_id, id);
CREATE INDEX rope_uses_by_ticket ON rope_uses (ticket_id, id);
CREATE INDEX rope_uses_by_time ON rope_uses (at);

-- A piece that was cut and not taken, so that its ticket waits again.
CREATE TABLE re_cuts (
  id          bigint GENERATED BY DEFAULT AS IDENTITY PRIMARY KEY,
  at          text COLLATE "C" NOT NULL,
  who         text COLLATE "C" NOT NULL,
  ticket_id   bigint NOT NULL REFERENCES cut_tickets (id),
  measured_nm bigint NOT NULL CHECK (measured_nm > 0),
  reason      text COLLATE "C" NOT NULL
);

CREATE INDEX re_cuts_by_ticket ON re_cuts (ticket_id);

-- A post that was spoiled, so that another is ordered and its ticket starts again.
CREATE TABLE damages (
  id        bigint GENERATED BY DEFAULT AS IDENTITY PRIMARY KEY,
  at        text COLLATE "C" NOT NULL,
  who       text COLLATE "C" NOT NULL,
  ticket_id bigint NOT NULL REFERENCES drill_tickets (id),
  steps     bigint NOT NULL CHECK (steps >= 0),          -- drillings that were done in it
  reason    text COLLATE "C" NOT NULL
);

CREATE INDEX damages_by_ticket ON damages (ticket_id);

CREATE INDEX cut_tickets_not_packed ON cut_tickets (piece_id) WHERE state IN ('waiting', 'at the bench', 'cut');
CREATE INDEX cut_tickets_by_packing ON cut_tickets (packed_at) WHERE packed_at IS NOT NULL;
CREATE INDEX drill_tickets_not_drilled ON drill_tickets (post_id) WHERE state IN ('waiting', 'at the bench', 're-ordered');
CREATE INDEX re_cuts_by_time ON re_cuts (at);
CREATE INDEX damages_by_time ON damages (at);
