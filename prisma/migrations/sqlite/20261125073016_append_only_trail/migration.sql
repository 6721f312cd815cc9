-- The trail only grows: what was recorded is neither changed nor removed, not even by a program that means to.
-- A migration that rebuilds the table drops these triggers and must create them again.
CREATE TRIGGER "TrailRecord_refuse_update" BEFORE UPDATE ON "TrailRecord"
BEGIN
    SELECT RAISE(ABORT, 'the trail is append-only: a record cannot be changed');
END;

CREATE TRIGGER "TrailRecord_refuse_delete" BEFORE DELETE ON "TrailRecord"
BEGIN
    SELECT RAISE(ABORT, 'the trail is append-only: a record cannot be removed');
END;
