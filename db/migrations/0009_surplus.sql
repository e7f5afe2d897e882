-- Pieces that are cut and no longer wanted are few among many.
CREATE INDEX cut_tickets_surplus ON cut_tickets (id) WHERE state = 'surplus';
