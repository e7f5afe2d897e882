-- What is in a parcel beside its pieces of rope, and which parcels are closed.
ALTER TABLE posts ADD COLUMN in_parcel_at text COLLATE "C";

-- Screws that are in, each kind by what it is called, with how many the job needed then: where it needs another number, they are looked at again.
CREATE TABLE parcel_screws (
  job_id bigint NOT NULL REFERENCES jobs (id),
  screw  text COLLATE "C" NOT NULL,
  needed bigint NOT NULL CHECK (needed > 0),
  in_at  text COLLATE "C" NOT NULL,
  PRIMARY KEY (job_id, screw)
);

CREATE TABLE closed_parcels (
  job_id    bigint PRIMARY KEY REFERENCES jobs (id),
  closed_at text COLLATE "C" NOT NULL
);

-- Until now a parcel was closed when its last piece was in it.
INSERT INTO closed_parcels (job_id, closed_at)
SELECT job_id, max(packed_at) FROM pieces JOIN cut_tickets ON piece_id = pieces.id
WHERE dropped_at IS NULL GROUP BY job_id HAVING count(*) = count(*) FILTER (WHERE state = 'packed');
