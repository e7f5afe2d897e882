-- Cutting is four steps: mark; prepare the ends and cut; measure; label, coil and tie. Two pairs of the six before are one step each, and a ticket
-- that is between the two of a pair does the pair again. What the history says of the six stays as it is.
UPDATE cut_tickets SET steps = CASE WHEN steps <= 1 THEN steps WHEN steps = 2 THEN 1 WHEN steps = 3 THEN 2 WHEN steps = 6 THEN 4 ELSE 3 END;

-- When the coil at the bench was scanned and found to be the one of the plan.
ALTER TABLE cut_tickets ADD COLUMN coil_seen_at TEXT;
