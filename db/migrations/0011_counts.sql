-- A job's pieces and posts are counted without looking at them: lists count those of every job they show.
CREATE INDEX pieces_wanted ON pieces (job_id) WHERE dropped_at IS NULL;
CREATE INDEX posts_wanted ON posts (job_id, id) WHERE dropped_at IS NULL;
