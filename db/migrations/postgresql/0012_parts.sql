-- What the shop promised, as it was worked out: a part for each piece, each post and each job's frame, and a document for each quote.
-- "format" is the number of the text's form, "rules" the number of the rules that worked it out, "digest" the SHA-256 of the text in
-- hexadecimal. Format 0 of a post is what an older program kept of a post that a change took out. docs/parts.md describes the texts.

CREATE TABLE job_frames (
  job_id bigint PRIMARY KEY REFERENCES jobs (id),
  format bigint NOT NULL CHECK (format >= 0),
  rules  bigint NOT NULL CHECK (rules > 0),
  digest text COLLATE "C" NOT NULL,
  part   text COLLATE "C" NOT NULL
);

CREATE TABLE piece_parts (
  piece_id   bigint PRIMARY KEY REFERENCES pieces (id),
  line       text COLLATE "C" NOT NULL,
  first_post bigint NOT NULL CHECK (first_post >= 0),           -- its posts in the line, by their places from 0
  last_post  bigint NOT NULL CHECK (last_post > first_post),
  format     bigint NOT NULL CHECK (format >= 0),
  rules      bigint NOT NULL CHECK (rules > 0),
  digest     text COLLATE "C" NOT NULL,
  part       text COLLATE "C" NOT NULL
);

CREATE TABLE post_parts (
  post_id     bigint PRIMARY KEY REFERENCES posts (id),
  line        text COLLATE "C" NOT NULL,
  mark        text COLLATE "C" NOT NULL,                        -- as on its ticket, also after a change took the post out
  drillings   bigint NOT NULL CHECK (drillings >= 0),
  screw_holes bigint NOT NULL CHECK (screw_holes >= 0),
  likeness    text COLLATE "C" NOT NULL,                        -- the same for posts that are bored alike
  format      bigint NOT NULL CHECK (format >= 0),
  rules       bigint NOT NULL CHECK (rules > 0),
  digest      text COLLATE "C" NOT NULL,
  part        text COLLATE "C" NOT NULL
);

-- Posts that changes took out are few: an old ticket is found among them.
CREATE INDEX posts_taken_out ON posts (job_id) WHERE dropped_at IS NOT NULL;

CREATE TABLE quote_documents (
  quote_id bigint PRIMARY KEY REFERENCES quotes (id),
  format   bigint NOT NULL CHECK (format >= 0),
  rules    bigint NOT NULL CHECK (rules > 0),
  digest   text COLLATE "C" NOT NULL,
  part     text COLLATE "C" NOT NULL
);
