-- Bores are in the parts of their posts now. Before this file the program has filled the parts of all that was stored.

DROP VIEW post_likeness;
DROP TABLE bore_operations;
DROP TABLE bores;

CREATE VIEW post_likeness AS
SELECT posts.id AS post_id, coalesce(jobs.due, '9999-12-31') AS due, coalesce(post_parts.likeness, '') AS likeness
FROM posts JOIN jobs ON jobs.id = job_id LEFT JOIN post_parts ON post_parts.post_id = posts.id;

-- It told which takeoff of a job was an old one; nothing is worked out again.
ALTER TABLE jobs DROP COLUMN version;
