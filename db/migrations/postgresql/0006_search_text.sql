-- Part of a job's number or customer is found without reading every job: each run of three letters is looked up. Where the
-- server has no pg_trgm, or the role may not install it, the same search reads every job.
DO $$
BEGIN
  CREATE EXTENSION IF NOT EXISTS pg_trgm;
  CREATE INDEX jobs_text ON jobs USING gin (lower(number COLLATE "default") gin_trgm_ops, lower(customer COLLATE "default") gin_trgm_ops);
EXCEPTION WHEN undefined_file OR insufficient_privilege OR feature_not_supported THEN
  RAISE NOTICE 'The search for part of a job reads every job: %', SQLERRM;
END $$;
