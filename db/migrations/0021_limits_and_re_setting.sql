-- How many parcels of a job were begun. Each piece of rope that is packed is in one of them, numbered from 1.
ALTER TABLE jobs ADD COLUMN parcels INTEGER NOT NULL DEFAULT 1 CHECK (parcels > 0);
ALTER TABLE cut_tickets ADD COLUMN parcel INTEGER CHECK (parcel > 0);

-- Until now a job had one parcel.
UPDATE cut_tickets SET parcel = 1 WHERE packed_at IS NOT NULL;

-- When the rope of a job is to be set again, since new rope beds in.
CREATE TABLE re_settings (
  job_id       INTEGER PRIMARY KEY REFERENCES jobs (id),
  due          TEXT NOT NULL,
  counted_from TEXT NOT NULL CHECK (counted_from IN ('packed', 'installed', 'chosen')),
  done_at      TEXT
) STRICT;
