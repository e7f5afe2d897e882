-- The epoch of the history. After a restore lines are numbered on from where the backup ends, so a number alone may mean two lines:
-- a restore draws a new epoch. It belongs to this database and not to what the shop holds: exports and digests leave it out.
CREATE TABLE history_epoch (
  id TEXT PRIMARY KEY
) STRICT, WITHOUT ROWID;

INSERT INTO history_epoch (id) VALUES (lower(hex(randomblob(6))));

-- Sessions that were ended by signing out, by the hash of the id in their cookie, for as long as that cookie could live.
CREATE TABLE ended_sessions (
  session_hash TEXT PRIMARY KEY,
  ended_at     TEXT NOT NULL
) STRICT, WITHOUT ROWID;

CREATE INDEX ended_sessions_by_time ON ended_sessions (ended_at);

-- Tries to sign in, now also by where they come from: an address, a browser that the person has used before, a tablet, or anywhere.
-- Names and places are hashed: a password typed in the wrong box must not stay here.
DROP TABLE sign_in_tries;

CREATE TABLE sign_in_tries (
  name_hash  TEXT NOT NULL,
  way        TEXT NOT NULL CHECK (way IN ('password', 'PIN')),
  place_hash TEXT NOT NULL,
  tries      INTEGER NOT NULL CHECK (tries > 0),
  last_at    TEXT NOT NULL,
  PRIMARY KEY (name_hash, way, place_hash)
) STRICT, WITHOUT ROWID;

CREATE INDEX sign_in_tries_by_time ON sign_in_tries (last_at);
