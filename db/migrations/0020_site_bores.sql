-- Bores that installers have ticked in posts that are bored on site; one that nobody has ticked has no row.
CREATE TABLE site_bores (
  post_id   INTEGER NOT NULL REFERENCES posts (id),
  row_mark  TEXT NOT NULL,                             -- the row of rope that it is for
  bore      INTEGER NOT NULL CHECK (bore > 0),         -- which of that row's bores in the post, from 1
  state     TEXT NOT NULL CHECK (state IN ('bored', 'not-bored')),
  tapped_at TEXT NOT NULL,                             -- when the installer tapped, which may be long before it came in
  PRIMARY KEY (post_id, row_mark, bore)
) STRICT, WITHOUT ROWID;

INSERT INTO history_subjects (name, told) VALUES ('post', 1);
