-- The epoch of the history. After a restore lines are numbered on from where the backup ends, so a number alone may mean two lines:
-- a restore draws a new epoch. It belongs to this database and not to what the shop holds: exports and digests leave it out.
CREATE TABLE history_epoch (
  id text COLLATE "C" PRIMARY KEY
);

INSERT INTO history_epoch (id) VALUES (left(replace(gen_random_uuid()::text, '-', ''), 12));

-- Sessions that were ended by signing out, by the hash of the id in their cookie, for as long as that cookie could live.
CREATE TABLE ended_sessions (
  session_hash text COLLATE "C" PRIMARY KEY,
  ended_at     text COLLATE "C" NOT NULL
);

CREATE INDEX ended_sessions_by_time ON ended_sessions (ended_at);

-- Tries to sign in, now also by where they come from: an address, a browser that the person has used before, a tablet, or anywhere.
-- Names and places are hashed: a password typed in the wrong box must not stay here.
DROP TABLE sign_in_tries;

CREATE TABLE sign_in_tries (
  name_hash  text COLLATE "C" NOT NULL,
  way        text COLLATE "C" NOT NULL CHECK (way IN ('password', 'PIN')),
  place_hash text COLLATE "C" NOT NULL,
  tries      bigint NOT NULL CHECK (tries > 0),
  last_at    text COLLATE "C" NOT NULL,
  PRIMARY KEY (name_hash, way, place_hash)
);

CREATE INDEX sign_in_tries_by_time ON sign_in_tries (last_at);
