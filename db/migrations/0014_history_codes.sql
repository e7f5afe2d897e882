-- The history keeps what happened as a code, lengths as nanometres, and who did it as a row id. Words are made by the program when
-- somebody reads a line.

-- Who did what the history says: a person, a program's key, or a name without a record.
CREATE TABLE actors (
  id         INTEGER PRIMARY KEY,
  person_id  INTEGER UNIQUE REFERENCES people (id),
  api_key_id INTEGER UNIQUE REFERENCES api_keys (id),
  name       TEXT UNIQUE,
  CHECK ((person_id IS NOT NULL) + (api_key_id IS NOT NULL) + (name IS NOT NULL) = 1)
) STRICT;

CREATE TABLE history_in_codes (
  id            INTEGER PRIMARY KEY AUTOINCREMENT,
  at            TEXT NOT NULL,
  actor_id      INTEGER NOT NULL REFERENCES actors (id),
  from_actor_id INTEGER REFERENCES actors (id),          -- whom a ticket was taken over from
  subject       TEXT NOT NULL REFERENCES history_subjects (name),
  subject_id    INTEGER NOT NULL,
  what          TEXT NOT NULL,                           -- a code
  before        TEXT NOT NULL,                           -- a state, a code or a setting's value; empty where there is none
  after         TEXT NOT NULL,
  before_nm     INTEGER,
  after_nm      INTEGER,
  details       TEXT NOT NULL,                           -- a JSON object of whole numbers and codes
  cause         TEXT NOT NULL,                           -- a code, where the program knows why; else empty
  reason        TEXT NOT NULL                            -- what a person typed, or empty
) STRICT;

-- From here on: the lines of older programs, which were sentences. What is read of them is here as those programs wrote it.

-- Lengths as they were printed: 19' 6 5/16", 1/2", 3 in, 12.7 mm.
CREATE TABLE old_lengths (
  text TEXT PRIMARY KEY,
  nm   INTEGER
) STRICT;

INSERT INTO old_lengths (text)
SELECT before FROM history WHERE subject IN ('coil', 'cut ticket')
UNION SELECT after FROM history WHERE subject IN ('coil', 'cut ticket')
UNION SELECT substr(what, length('measured ') + 1) FROM history WHERE what LIKE 'measured %'
UNION SELECT substr(what, length('not measured, counted as ') + 1) FROM history WHERE what LIKE 'not measured, counted as %'
UNION SELECT substr(reason, length('short by ') + 1) FROM history WHERE reason LIKE 'short by %'
UNION SELECT replace(replace(replace(before || after, ' threaded-forstner', ''), ' spade', ''), ' hole-saw', '') FROM history WHERE subject = 'bit rack';

WITH unit AS (
  SELECT text, 'in' AS unit, substr(text, 1, length(text) - 1) AS size FROM old_lengths WHERE text LIKE '%"'
  UNION ALL SELECT text, 'in', substr(text, 1, length(text) - 3) FROM old_lengths WHERE text LIKE '% in'
  UNION ALL SELECT text, 'mm', substr(text, 1, length(text) - 3) FROM old_lengths WHERE text LIKE '% mm'),
-- Feet end in ' and a blank; after them an inch count is always there.
feet AS (
  SELECT text, unit,
    CASE WHEN instr(size, ''' ') > 0 THEN substr(size, 1, instr(size, ''' ') - 1) ELSE '0' END AS feet,
    CASE WHEN instr(size, ''' ') > 0 THEN substr(size, instr(size, ''' ') + 2) ELSE size END AS size
  FROM unit),
parts AS (
  SELECT text, unit, feet,
    CASE WHEN size NOT LIKE '%/%' THEN size WHEN size LIKE '% %' THEN substr(size, 1, instr(size, ' ') - 1) ELSE '0' END AS whole,
    CASE WHEN size LIKE '%/%' THEN substr(size, instr(size, ' ') + 1, instr(size, '/') - instr(size, ' ') - 1) ELSE '0' END AS over,
    CASE WHEN size LIKE '%/%' THEN substr(size, instr(size, '/') + 1) ELSE '1' END AS under
  FROM feet),
decimals AS (
  SELECT text, unit, feet, over, under,
    CASE WHEN unit = 'mm' AND whole LIKE '%.%' THEN substr(whole, 1, instr(whole, '.') - 1) ELSE whole END AS whole,
    CASE WHEN unit = 'mm' AND whole LIKE '%.%' THEN substr(substr(whole, instr(whole, '.') + 1) || '000000', 1, 6) ELSE '0' END AS millionths
  FROM parts)
UPDATE old_lengths SET nm = (
  SELECT CASE unit
    WHEN 'in' THEN (CAST(feet AS INTEGER) * 12 + CAST(whole AS INTEGER)) * 25400000 + CAST(over AS INTEGER) * 25400000 / CAST(under AS INTEGER)
    ELSE CAST(whole AS INTEGER) * 1000000 + CAST(millionths AS INTEGER)
  END
  FROM decimals
  WHERE decimals.text = old_lengths.text
    AND feet <> '' AND whole <> '' AND over <> ''
    AND feet || whole || over || millionths NOT GLOB '*[^0-9]*'
    AND under IN ('1', '2', '4', '8', '16', '32', '64')
    AND length(feet || whole) <= 10);

-- Who as it was written. Of keys with one name it is the newest.
CREATE TABLE old_names (
  name     TEXT PRIMARY KEY,
  actor_id INTEGER NOT NULL
) STRICT;

INSERT INTO actors (person_id) SELECT id FROM people ORDER BY id;
INSERT INTO actors (api_key_id) SELECT id FROM api_keys ORDER BY id;
INSERT INTO actors (name)
SELECT name FROM (SELECT who AS name FROM history UNION SELECT before FROM history WHERE what = 'taken over' AND before <> '')
WHERE name NOT IN (SELECT name FROM people) AND name NOT IN (SELECT 'key ' || name FROM api_keys)
ORDER BY name;

INSERT INTO old_names (name, actor_id) SELECT people.name, actors.id FROM people JOIN actors ON person_id = people.id;
INSERT INTO old_names (name, actor_id)
SELECT 'key ' || api_keys.name, max(actors.id) FROM api_keys JOIN actors ON api_key_id = api_keys.id WHERE true GROUP BY api_keys.name
ON CONFLICT DO NOTHING;
INSERT INTO old_names (name, actor_id) SELECT name, id FROM actors WHERE name IS NOT NULL;

-- What was written for each code; % is whatever was there.
CREATE TABLE old_words (
  subject TEXT NOT NULL,
  words   TEXT NOT NULL,
  code    TEXT NOT NULL,
  PRIMARY KEY (subject, words)
) STRICT;

INSERT INTO old_words (subject, words, code) VALUES
  ('job', 'received', 'job-received'),
  ('job', 'taken in', 'job-taken-in'),
  ('job', 'released', 'job-released'),
  ('job', 'cancelled', 'job-cancelled'),
  ('job', 'changed', 'job-changed'),
  ('job', 'site pack opened', 'site-pack-opened'),
  ('job', 'site pack replaced', 'site-pack-replaced'),
  ('cut ticket', 'taken to the bench', 'taken-to-bench'),
  ('cut ticket', 'taken over', 'taken-over'),
  ('cut ticket', 'handed back', 'handed-back'),
  ('cut ticket', 'handed back, nothing was done for % minutes', 'handed-back-unused'),
  ('cut ticket', 'undone', 'undone'),
  ('cut ticket', 'cancelled', 'ticket-cancelled'),
  ('cut ticket', 'no longer wanted', 'no-longer-wanted'),
  ('cut ticket', 'pull and mark', 'cut-step-done'),
  ('cut ticket', 'prepare the ends', 'cut-step-done'),
  ('cut ticket', 'cut', 'cut-step-done'),
  ('cut ticket', 'label', 'cut-step-done'),
  ('cut ticket', 'coil and tie', 'cut-step-done'),
  ('cut ticket', 'measured %"', 'cut-measured'),
  ('cut ticket', 'measured % mm', 'cut-measured'),
  ('cut ticket', 'not measured, counted as %', 'cut-not-measured'),
  ('cut ticket', 'measured too long, to be trimmed', 'cut-too-long'),
  ('cut ticket', 'put aside, to be cut again', 'cut-put-aside'),
  ('cut ticket', 'finished', 'cut-finished'),
  ('cut ticket', 'not taken, to be cut again', 'cut-rejected'),
  ('cut ticket', 'packed', 'packed'),
  ('cut ticket', 'taken out of the parcel', 'unpacked'),
  ('cut ticket', 'hung up as an offcut', 'surplus-hung-up'),
  ('cut ticket', 'scrapped', 'surplus-scrapped'),
  ('drill ticket', 'taken to the bench', 'taken-to-bench'),
  ('drill ticket', 'taken over', 'taken-over'),
  ('drill ticket', 'handed back', 'handed-back'),
  ('drill ticket', 'handed back, nothing was done for % minutes', 'handed-back-unused'),
  ('drill ticket', 'undone', 'undone'),
  ('drill ticket', 'cancelled', 'ticket-cancelled'),
  ('drill ticket', 'no longer wanted', 'no-longer-wanted'),
  ('drill ticket', 'drilled a bore', 'bore-drilled'),
  ('drill ticket', 'drilled a screw hole', 'screw-hole-drilled'),
  ('drill ticket', 'drilled, the rope fits', 'post-drilled'),
  ('drill ticket', 'drilled, the rope fits, % with it', 'post-drilled'),
  ('drill ticket', 'spoiled, another post ordered', 'post-spoiled'),
  ('drill ticket', 'the new post is here', 'new-post-here'),
  ('coil', 'received', 'coil-received'),
  ('coil', 'offcut of %', 'offcut-hung-up'),
  ('coil', 'cut from', 'cut-from'),
  ('coil', 'cut from, piece put aside', 'cut-from-put-aside'),
  ('coil', 'scrap', 'rest-scrapped'),
  ('coil', 'rest hung up as %', 'rest-hung-up'),
  ('coil', 'cut undone', 'cut-undone'),
  ('coil', 'part of % again, cut undone', 'offcut-taken-down'),
  ('coil', 'adjusted', 'coil-corrected'),
  ('coil', 'retired', 'coil-retired'),
  ('cut plan', 'drafted', 'plan-drafted'),
  ('cut plan', 'accepted', 'plan-accepted'),
  ('cut plan', 'replaced by plan %', 'plan-replaced'),
  ('piece', 'marked on site', 'piece-marked'),
  ('piece', 'label replaced', 'label-replaced'),
  ('piece', 'cut again', 'piece-cut-again'),
  ('site report', 'reported', 'report-sent'),
  ('site report', 'piece cut again', 'report-cut-again'),
  ('site report', 'closed', 'report-closed'),
  ('draft', 'started', 'draft-started'),
  ('draft', 'dropped', 'draft-dropped'),
  ('draft', 'taken up again', 'draft-reopened'),
  ('draft', 'taken in', 'draft-taken-in'),
  ('quote', 'made', 'quote-made'),
  ('quote', 'accepted', 'quote-accepted'),
  ('price list', 'kept', 'price-list-kept'),
  ('price list', 'currency sign set', 'currency-set'),
  ('setting', '% set', 'setting-set'),
  ('bit rack', 'hung up', 'bit-hung-up'),
  ('bit rack', 'taken off', 'bit-taken-off'),
  ('person', 'added', 'person-added'),
  ('person', 'role changed', 'role-changed'),
  ('person', 'password set', 'password-set'),
  ('person', 'PIN set', 'pin-set'),
  ('person', 'PIN taken away', 'pin-removed'),
  ('person', 'switched on', 'person-switched-on'),
  ('person', 'switched off', 'person-switched-off'),
  ('person', 'units chosen', 'units-chosen'),
  ('person', 'locked', 'sign-in-locked'),
  ('tablet', 'enrolled', 'tablet-enrolled'),
  ('tablet', 'removed', 'tablet-removed'),
  ('API key', 'made', 'key-made'),
  ('API key', 'revoked', 'key-revoked');

-- A line is written as a code only where all that belongs to it could be read; else its words are kept under the code "other".
WITH coded AS MATERIALIZED (
  SELECT history.*,
    coalesce(
      (SELECT code FROM old_words WHERE old_words.subject = history.subject AND words = what),
      (SELECT code FROM old_words WHERE old_words.subject = history.subject AND words LIKE '%\%%' ESCAPE '\' AND what LIKE words LIMIT 1)) AS code
  FROM history),
lengths AS MATERIALIZED (
  SELECT coded.*,
    code IN ('coil-received', 'offcut-hung-up', 'cut-from', 'cut-from-put-aside', 'rest-scrapped', 'rest-hung-up', 'cut-undone', 'offcut-taken-down',
      'coil-corrected', 'cut-too-long', 'bit-hung-up', 'bit-taken-off') AS has_lengths,
    (SELECT nm FROM old_lengths WHERE text = replace(replace(replace(before, ' threaded-forstner', ''), ' spade', ''), ' hole-saw', '')) AS before_nm,
    (SELECT nm FROM old_lengths WHERE text = replace(replace(replace(after, ' threaded-forstner', ''), ' spade', ''), ' hole-saw', '')) AS after_nm,
    (SELECT nm FROM old_lengths WHERE text = CASE code
      WHEN 'cut-measured' THEN substr(what, length('measured ') + 1)
      WHEN 'cut-not-measured' THEN substr(what, length('not measured, counted as ') + 1) END) AS measured_nm,
    (SELECT nm FROM old_lengths WHERE code = 'cut-put-aside' AND reason LIKE 'short by %' AND text = substr(reason, length('short by ') + 1)) AS short_nm,
    CASE WHEN before || after LIKE '% spade' THEN 'spade' WHEN before || after LIKE '% hole-saw' THEN 'hole-saw' ELSE 'threaded-forstner' END AS bit,
    substr(after, instr(after, '; posts ')) AS of_posts
  FROM coded),
detailed AS MATERIALIZED (
  SELECT lengths.*,
    CASE
      WHEN code IS NULL THEN NULL
      WHEN has_lengths AND (before <> '' AND before_nm IS NULL OR after <> '' AND after_nm IS NULL) THEN NULL
      WHEN code IN ('job-received', 'job-taken-in') THEN CASE WHEN after LIKE '% pieces, % bores' THEN
        '{"pieces":' || CAST(after AS INTEGER) || ',"bores":' || CAST(substr(after, instr(after, ' pieces, ') + 9) AS INTEGER) || '}' END
      WHEN code = 'job-cancelled' THEN CASE WHEN after LIKE 'cancelled, % made and now surplus' THEN
        '{"surplus":' || CAST(substr(after, 12) AS INTEGER) || '}' END
      WHEN code = 'job-changed' THEN
        CASE WHEN before LIKE '% pieces, % bores'
          AND after LIKE '% pieces, % bores; pieces % added, % changed, % gone; posts % added, % changed, % gone; % made and now surplus' THEN
          '{"pieces_before":' || CAST(before AS INTEGER)
          || ',"bores_before":' || CAST(substr(before, instr(before, ' pieces, ') + 9) AS INTEGER)
          || ',"pieces":' || CAST(after AS INTEGER)
          || ',"bores":' || CAST(substr(after, instr(after, ' pieces, ') + 9) AS INTEGER)
          || ',"pieces_added":' || CAST(substr(after, instr(after, '; pieces ') + 9) AS INTEGER)
          || ',"pieces_changed":' || CAST(substr(after, instr(after, ' added, ') + 8) AS INTEGER)
          || ',"pieces_gone":' || CAST(substr(after, instr(after, ' changed, ') + 10) AS INTEGER)
          || ',"posts_added":' || CAST(substr(of_posts, 9) AS INTEGER)
          || ',"posts_changed":' || CAST(substr(of_posts, instr(of_posts, ' added, ') + 8) AS INTEGER)
          || ',"posts_gone":' || CAST(substr(of_posts, instr(of_posts, ' changed, ') + 10) AS INTEGER)
          || ',"surplus":' || CAST(substr(of_posts, instr(of_posts, ' gone; ') + 7) AS INTEGER) || '}' END
      WHEN code = 'handed-back-unused' THEN
        '{"minutes":' || CAST(substr(what, length('handed back, nothing was done for ') + 1) AS INTEGER) || '}'
      WHEN code IN ('cut-measured', 'cut-not-measured') AND measured_nm IS NULL THEN NULL
      WHEN code IN ('cut-step-done', 'cut-measured', 'cut-not-measured') THEN
        CASE WHEN before LIKE 'step % of %' AND after LIKE 'step % of %' THEN
          '{"step_before":' || CAST(substr(before, 6) AS INTEGER) || ',"step":' || CAST(substr(after, 6) AS INTEGER)
          || ',"steps":' || CAST(substr(after, instr(after, ' of ') + 4) AS INTEGER) || '}' END
      WHEN short_nm IS NOT NULL THEN '{"short_nm":' || short_nm || '}'
      WHEN code IN ('bore-drilled', 'screw-hole-drilled') THEN
        CASE WHEN before LIKE '% of % drilled' AND after LIKE '% of % drilled' THEN
          '{"drilled_before":' || CAST(before AS INTEGER) || ',"drilled":' || CAST(after AS INTEGER)
          || ',"drillings":' || CAST(substr(after, instr(after, ' of ') + 4) AS INTEGER) || '}' END
      WHEN code = 'post-drilled' THEN '{"screw_holes":' || CAST(substr(what, length('drilled, the rope fits, ') + 1) AS INTEGER) || '}'
      WHEN code = 'offcut-hung-up' THEN '{"coil":' || json_quote(substr(what, length('offcut of ') + 1)) || '}'
      WHEN code = 'rest-hung-up' THEN '{"offcut":' || json_quote(substr(what, length('rest hung up as ') + 1)) || '}'
      WHEN code = 'offcut-taken-down' THEN
        '{"coil":' || json_quote(substr(what, length('part of ') + 1, length(what) - length('part of  again, cut undone'))) || '}'
      WHEN code = 'plan-replaced' THEN '{"plan":' || CAST(substr(what, length('replaced by plan ') + 1) AS INTEGER) || '}'
      WHEN code = 'quote-made' THEN (SELECT '{"total_e4":' || total_e4 || '}' FROM quotes WHERE quotes.id = subject_id)
      WHEN code = 'setting-set' THEN '{"setting":' || json_quote(substr(what, 1, length(what) - length(' set'))) || '}'
      WHEN code = 'sign-in-locked' THEN CASE WHEN after LIKE 'for % minutes' AND reason LIKE '% wrong tries of the %' THEN
        '{"minutes":' || CAST(substr(after, 5) AS INTEGER) || ',"tries":' || CAST(reason AS INTEGER)
        || ',"way":' || json_quote(substr(reason, instr(reason, ' of the ') + 8)) || '}' END
      ELSE '{}'
    END AS details,
    CASE
      WHEN short_nm IS NOT NULL THEN 'short'
      WHEN code = 'sign-in-locked' THEN 'wrong-tries'
      WHEN code = 'coil-corrected' AND reason = 'opened before it came in' THEN 'opened-before'
      WHEN code IN ('ticket-cancelled', 'no-longer-wanted') AND reason = 'the job changed' THEN 'job-changed'
      WHEN code IN ('no-longer-wanted', 'piece-cut-again', 'report-cut-again')
        AND reason IN ('on site: too short', 'on site: too long', 'on site: damaged', 'on site: missing')
        THEN replace(replace(reason, ': ', '-'), ' ', '-')
      ELSE ''
    END AS cause
  FROM lengths)
INSERT INTO history_in_codes (
  id, at, actor_id, from_actor_id, subject, subject_id, what, before, after, before_nm, after_nm, details, cause, reason)
SELECT id, at,
  (SELECT actor_id FROM old_names WHERE name = who),
  CASE WHEN code = 'taken-over' THEN (SELECT actor_id FROM old_names WHERE name = before) END,
  subject, subject_id,
  CASE WHEN details IS NULL THEN 'other' ELSE code END,
  CASE
    WHEN details IS NULL THEN before
    WHEN code IN ('job-changed', 'taken-over', 'cut-step-done', 'cut-measured', 'cut-not-measured', 'bore-drilled', 'screw-hole-drilled') THEN ''
    WHEN code = 'bit-taken-off' THEN bit
    WHEN code = 'units-chosen' THEN replace(before, ' ', '-')
    WHEN has_lengths THEN ''
    ELSE before
  END,
  CASE
    WHEN details IS NULL THEN after
    WHEN code IN ('job-changed', 'taken-over', 'cut-step-done', 'cut-measured', 'cut-not-measured', 'bore-drilled', 'screw-hole-drilled', 'sign-in-locked') THEN ''
    WHEN code = 'job-received' THEN 'received'
    WHEN code = 'job-taken-in' THEN 'released'
    WHEN code = 'job-cancelled' THEN 'cancelled'
    WHEN code = 'quote-made' THEN 'open'
    WHEN code = 'tablet-enrolled' THEN 'enrolled'
    WHEN code = 'bit-hung-up' THEN bit
    WHEN code = 'units-chosen' THEN replace(after, ' ', '-')
    WHEN has_lengths THEN ''
    ELSE after
  END,
  CASE WHEN details IS NOT NULL AND has_lengths THEN before_nm END,
  CASE WHEN details IS NOT NULL THEN CASE WHEN has_lengths THEN after_nm ELSE measured_nm END END,
  CASE WHEN details IS NULL THEN '{"words":' || json_quote(what) || '}' ELSE details END,
  CASE WHEN details IS NULL THEN '' ELSE cause END,
  CASE WHEN details IS NOT NULL AND (cause <> '' OR code = 'key-made') THEN '' ELSE reason END
FROM detailed
ORDER BY id;

DROP TABLE old_words;
DROP TABLE old_names;
DROP TABLE old_lengths;
DROP TABLE history;
ALTER TABLE history_in_codes RENAME TO history;

CREATE INDEX history_by_subject ON history (subject, subject_id, id);

CREATE TRIGGER history_is_never_rewritten BEFORE UPDATE ON history
BEGIN
  SELECT RAISE(ABORT, 'history is append-only');
END;

CREATE TRIGGER history_is_never_erased BEFORE DELETE ON history
BEGIN
  SELECT RAISE(ABORT, 'history is append-only');
END;
