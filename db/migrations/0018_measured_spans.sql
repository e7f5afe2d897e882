-- The clear spans that installers measured on site, the last of each section: a piece that is cut again is cut for them.
CREATE TABLE measured_spans (
  piece_id  INTEGER NOT NULL REFERENCES pieces (id),
  section   INTEGER NOT NULL CHECK (section >= 0),     -- of the piece, from 0
  clear_nm  INTEGER NOT NULL CHECK (clear_nm > 0),
  tapped_at TEXT NOT NULL,                             -- when it was measured, which may be long before it came in
  PRIMARY KEY (piece_id, section)
) STRICT, WITHOUT ROWID;
