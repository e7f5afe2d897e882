-- The code of a job's site pack: whoever has it sees what the labels of the job's pieces show, and no more.
CREATE TABLE site_packs (
  job_id bigint PRIMARY KEY REFERENCES jobs (id),
  code   text COLLATE "C" NOT NULL UNIQUE CHECK (length(code) = 12)
);
