-- Work left is counted once for each statement that changes tickets, however many it changes: a job's row that one transaction
-- changes a thousand times is a thousand rows to it, and each look at the job passes all of them.
DROP TRIGGER a_cut_ticket_is_work_left_or_not ON cut_tickets;

CREATE OR REPLACE FUNCTION a_cut_ticket_is_work_left_or_not() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  UPDATE jobs SET work_left = work_left + moved.tickets
  FROM (
    SELECT job_id, sum(one) AS tickets FROM (
      SELECT piece_id, 1 AS one FROM new_tickets WHERE state IN ('waiting', 'at the bench')
      UNION ALL SELECT piece_id, -1 FROM old_tickets WHERE state IN ('waiting', 'at the bench')) AS tickets
    JOIN pieces ON pieces.id = piece_id GROUP BY job_id HAVING sum(one) <> 0) AS moved
  WHERE jobs.id = moved.job_id;
  RETURN NULL;
END $$;

CREATE TRIGGER a_cut_ticket_is_work_left_or_not AFTER UPDATE ON cut_tickets
REFERENCING OLD TABLE AS old_tickets NEW TABLE AS new_tickets FOR EACH STATEMENT EXECUTE FUNCTION a_cut_ticket_is_work_left_or_not();

DROP TRIGGER a_drill_ticket_is_work_left_or_not ON drill_tickets;

CREATE OR REPLACE FUNCTION a_drill_ticket_is_work_left_or_not() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  UPDATE jobs SET work_left = work_left + moved.tickets
  FROM (
    SELECT job_id, sum(one) AS tickets FROM (
      SELECT post_id, 1 AS one FROM new_tickets WHERE state IN ('waiting', 'at the bench', 're-ordered')
      UNION ALL SELECT post_id, -1 FROM old_tickets WHERE state IN ('waiting', 'at the bench', 're-ordered')) AS tickets
    JOIN posts ON posts.id = post_id GROUP BY job_id HAVING sum(one) <> 0) AS moved
  WHERE jobs.id = moved.job_id;
  RETURN NULL;
END $$;

CREATE TRIGGER a_drill_ticket_is_work_left_or_not AFTER UPDATE ON drill_tickets
REFERENCING OLD TABLE AS old_tickets NEW TABLE AS new_tickets FOR EACH STATEMENT EXECUTE FUNCTION a_drill_ticket_is_work_left_or_not();
