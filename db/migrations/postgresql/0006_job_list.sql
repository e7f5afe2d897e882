-- The list of jobs, however many there are. Part of a number or customer is found by looking up each run of three letters in it.
-- Where the server has no pg_trgm, or the role may not install it, the same search reads every job.
DO $$
BEGIN
  CREATE EXTENSION IF NOT EXISTS pg_trgm;
  CREATE INDEX jobs_text ON jobs USING gin (lower(number COLLATE "default") gin_trgm_ops, lower(customer COLLATE "default") gin_trgm_ops);
EXCEPTION WHEN undefined_file OR insufficient_privilege OR feature_not_supported THEN
  RAISE NOTICE 'The search for part of a job reads every job: %', SQLERRM;
END $$;

-- How many of a job's tickets still want work, kept by the tickets themselves, so that open jobs are found however many are done.
ALTER TABLE jobs ADD COLUMN work_left bigint NOT NULL DEFAULT 0 CHECK (work_left >= 0);

CREATE INDEX jobs_open ON jobs (coalesce(due, '9999-99-99'), number, customer, released_at)
WHERE cancelled_at IS NULL AND (released_at IS NULL OR work_left > 0);

-- New tickets are counted by the statement that brings them: a row that one transaction changes a thousand times is a thousand
-- rows to it.
CREATE FUNCTION a_new_cut_ticket_is_work_left() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  UPDATE jobs SET work_left = work_left + fresh.tickets
  FROM (SELECT job_id, count(*) AS tickets FROM new_tickets JOIN pieces ON pieces.id = piece_id WHERE state IN ('waiting', 'at the bench') GROUP BY job_id) AS fresh
  WHERE jobs.id = fresh.job_id;
  RETURN NULL;
END $$;

CREATE TRIGGER a_new_cut_ticket_is_work_left AFTER INSERT ON cut_tickets
REFERENCING NEW TABLE AS new_tickets FOR EACH STATEMENT EXECUTE FUNCTION a_new_cut_ticket_is_work_left();

CREATE FUNCTION a_cut_ticket_is_work_left_or_not() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  UPDATE jobs SET work_left = work_left + CASE WHEN NEW.state IN ('waiting', 'at the bench') THEN 1 ELSE -1 END
  WHERE id = (SELECT job_id FROM pieces WHERE id = NEW.piece_id);
  RETURN NULL;
END $$;

CREATE TRIGGER a_cut_ticket_is_work_left_or_not AFTER UPDATE OF state ON cut_tickets
FOR EACH ROW WHEN ((NEW.state IN ('waiting', 'at the bench')) <> (OLD.state IN ('waiting', 'at the bench')))
EXECUTE FUNCTION a_cut_ticket_is_work_left_or_not();

CREATE FUNCTION a_new_drill_ticket_is_work_left() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  UPDATE jobs SET work_left = work_left + fresh.tickets
  FROM (SELECT job_id, count(*) AS tickets FROM new_tickets JOIN posts ON posts.id = post_id
        WHERE state IN ('waiting', 'at the bench', 're-ordered') GROUP BY job_id) AS fresh
  WHERE jobs.id = fresh.job_id;
  RETURN NULL;
END $$;

CREATE TRIGGER a_new_drill_ticket_is_work_left AFTER INSERT ON drill_tickets
REFERENCING NEW TABLE AS new_tickets FOR EACH STATEMENT EXECUTE FUNCTION a_new_drill_ticket_is_work_left();

CREATE FUNCTION a_drill_ticket_is_work_left_or_not() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  UPDATE jobs SET work_left = work_left + CASE WHEN NEW.state IN ('waiting', 'at the bench', 're-ordered') THEN 1 ELSE -1 END
  WHERE id = (SELECT job_id FROM posts WHERE id = NEW.post_id);
  RETURN NULL;
END $$;

CREATE TRIGGER a_drill_ticket_is_work_left_or_not AFTER UPDATE OF state ON drill_tickets
FOR EACH ROW WHEN ((NEW.state IN ('waiting', 'at the bench', 're-ordered')) <> (OLD.state IN ('waiting', 'at the bench', 're-ordered')))
EXECUTE FUNCTION a_drill_ticket_is_work_left_or_not();

INSERT INTO history_subjects (name, told) VALUES ('setting', 0);
