-- Part of a job's number or customer is found without reading every job: each run of three letters is looked up.
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
