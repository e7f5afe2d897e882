-- What the shop promised, as it was worked out: a part for each piece, each post and each job's frame, and a document for each quote.
-- "format" is the number of the text's form, "rules" the number of the rules that worked it out, "digest" the SHA-256 of the text in
-- hexadecimal. Format 0 of a post is what an older program kept of a post that a change took out. docs/parts.md describes the texts.

CREATE TABLE job_frames (
  job_id INTEGER PRIMARY KEY REFERENCES jobs (id),
  format INTEGER NOT NULL CHECK (format >= 0),
  rules  INTEGER NOT NULL CHECK (rules > 0),
  digest TEXT NOT NULL,
  part   TEXT NOT NULL
) STRICT;

CREATE TABLE piece_parts (
  piece_id   INTEGER PRIMARY KEY REFERENCES pieces (id),
  line       TEXT NOT NULL,
  first_post INTEGER NOT NULL CHECK (first_post >= 0),          -- its posts in the line, by their places from 0
  last_post  INTEGER NOT NULL CHECK (last_post > first_post),
  format     INTEGER NOT NULL CHECK (format >= 0),
  rules      INTEGER NOT NULL CHECK (rules > 0),
  digest     TEXT NOT NULL,
  part       TEXT NOT NULL
) STRICT;

CREATE TABLE post_parts (
  post_id     INTEGER PRIMARY KEY REFERENCES posts (id),
  line        TEXT NOT NULL,
  mark        TEXT NOT NULL,                                    -- as on its ticket, also after a change took the post out
  drillings   INTEGER NOT NULL CHECK (drillings >= 0),
  screw_holes INTEGER NOT NULL CHECK (screw_holes >= 0),
  likeness    TEXT NOT NULL,                                    -- the same for posts that are bored alike
  format      INTEGER NOT NULL CHECK (format >= 0),
  rules       INTEGER NOT NULL CHECK (rules > 0),
  digest      TEXT NOT NULL,
  part        TEXT NOT NULL
) STRICT;

-- Posts that changes took out are few: an old ticket is found among them.
CREATE INDEX posts_taken_out ON posts (job_id) WHERE dropped_at IS NOT NULL;

CREATE TABLE quote_documents (
  quote_id INTEGER PRIMARY KEY REFERENCES quotes (id),
  format   INTEGER NOT NULL CHECK (format >= 0),
  rules    INTEGER NOT NULL CHECK (rules > 0),
  digest   TEXT NOT NULL,
  part     TEXT NOT NULL
) STRICT;
