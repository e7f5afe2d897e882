-- The list of jobs, however many there are. Part of a number or customer is found by looking up each run of three letters in it.
CREATE VIRTUAL TABLE jobs_text USING fts5 (number, customer, content = 'jobs', content_rowid = 'id', tokenize = 'trigram');

INSERT INTO jobs_text (jobs_text) VALUES ('rebuild');

CREATE TRIGGER jobs_text_of_a_new_job AFTER INSERT ON jobs
BEGIN
  INSERT INTO jobs_text (rowid, number, customer) VALUES (NEW.id, NEW.number, NEW.customer);
END;

CREATE TRIGGER jobs_text_of_a_changed_job AFTER UPDATE OF number, customer ON jobs
BEGIN
  INSERT INTO jobs_text (jobs_text, rowid, number, customer) VALUES ('delete', OLD.id, OLD.number, OLD.customer);
  INSERT INTO jobs_text (rowid, number, customer) VALUES (NEW.id, NEW.number, NEW.customer);
END;

CREATE TRIGGER jobs_text_of_a_gone_job AFTER DELETE ON jobs
BEGIN
  INSERT INTO jobs_text (jobs_text, rowid, number, customer) VALUES ('delete', OLD.id, OLD.number, OLD.customer);
END;

-- How many of a job's tickets still want work, kept by the tickets themselves, so that open jobs are found however many are done.
ALTER TABLE jobs ADD COLUMN work_left INTEGER NOT NULL DEFAULT 0 CHECK (work_left >= 0);

UPDATE jobs SET work_left =
  (SELECT count(*) FROM pieces JOIN cut_tickets ON piece_id = pieces.id WHERE job_id = jobs.id AND state IN ('waiting', 'at the bench')) +
  (SELECT count(*) FROM posts JOIN drill_tickets ON post_id = posts.id WHERE job_id = jobs.id AND state IN ('waiting', 'at the bench', 're-ordered'));

CREATE INDEX jobs_open ON jobs (coalesce(due, '9999-99-99'), number, customer, released_at)
WHERE cancelled_at IS NULL AND (released_at IS NULL OR work_left > 0);

CREATE TRIGGER a_new_cut_ticket_is_work_left AFTER INSERT ON cut_tickets WHEN NEW.state IN ('waiting', 'at the bench')
BEGIN
  UPDATE jobs SET work_left = work_left + 1 WHERE id = (SELECT job_id FROM pieces WHERE id = NEW.piece_id);
END;

CREATE TRIGGER a_cut_ticket_is_work_left_or_not AFTER UPDATE OF state ON cut_tickets
WHEN (NEW.state IN ('waiting', 'at the bench')) <> (OLD.state IN ('waiting', 'at the bench'))
BEGIN
  UPDATE jobs SET work_left = work_left + iif(NEW.state IN ('waiting', 'at the bench'), 1, -1) WHERE id = (SELECT job_id FROM pieces WHERE id = NEW.piece_id);
END;

CREATE TRIGGER a_new_drill_ticket_is_work_left AFTER INSERT ON drill_tickets WHEN NEW.state IN ('waiting', 'at the bench', 're-ordered')
BEGIN
  UPDATE jobs SET work_left = work_left + 1 WHERE id = (SELECT job_id FROM posts WHERE id = NEW.post_id);
END;

CREATE TRIGGER a_drill_ticket_is_work_left_or_not AFTER UPDATE OF state ON drill_tickets
WHEN (NEW.state IN ('waiting', 'at the bench', 're-ordered')) <> (OLD.state IN ('waiting', 'at the bench', 're-ordered'))
BEGIN
  UPDATE jobs SET work_left = work_left + iif(NEW.state IN ('waiting', 'at the bench', 're-ordered'), 1, -1) WHERE id = (SELECT job_id FROM posts WHERE id = NEW.post_id);
END;

INSERT INTO history_subjects (name, told) VALUES ('setting', 0);
