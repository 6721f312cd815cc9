-- The trail only grows: what was recorded is neither changed nor removed, not even by a program that means to.
CREATE FUNCTION "refuse_trail_change"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    RAISE EXCEPTION 'the trail is append-only: % refused', TG_OP USING ERRCODE = 'restrict_violation';
END;
$$;

CREATE TRIGGER "TrailRecord_refuse_change" BEFORE UPDATE OR DELETE OR TRUNCATE ON "TrailRecord"
    FOR EACH STATEMENT EXECUTE FUNCTION "refuse_trail_change"();
