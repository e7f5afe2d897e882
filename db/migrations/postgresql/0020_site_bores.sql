-- Bores that installers have ticked in posts that are bored on site; one that nobody has ticked has no row.
CREATE TABLE site_bores (
  post_id   bigint NOT NULL REFERENCES posts (id),
  row_mark  text COLLATE "C" NOT NULL,                 -- the row of rope that it is for
  bore      bigint NOT NULL CHECK (bore > 0),         -- which of that row's bores in the post, from 1
  state     text COLLATE "C" NOT NULL CHECK (state IN ('bored', 'not-bored')),
  tapped_at text COLLATE "C" NOT NULL,                 -- when the installer tapped, which may be long before it came in
  PRIMARY KEY (post_id, row_mark, bore)
);

INSERT INTO history_subjects (name, told) VALUES ('post', 1);
