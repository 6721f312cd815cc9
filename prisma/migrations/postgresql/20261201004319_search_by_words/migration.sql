-- CreateIndex
CREATE INDEX "Revision_createdAt_id_idx" ON "Revision"("createdAt", "id");

-- CreateIndex
CREATE INDEX "Thread_openedAt_id_idx" ON "Thread"("openedAt", "id");

-- What search looks words up in: an index over each text. Words are runs of letters and digits, as SQLite's index has them; everything else parts them. Signs are
-- written in their one form (NFKC), as a query is: a micro sign is a mu, a raised 2 a 2.
CREATE FUNCTION "search_words"(content text) RETURNS tsvector LANGUAGE sql IMMUTABLE PARALLEL SAFE AS $$
  SELECT pg_catalog.to_tsvector('pg_catalog.simple'::regconfig, pg_catalog.regexp_replace(
    CASE WHEN pg_catalog.getdatabaseencoding() = 'UTF8' THEN normalize(content, NFKC) ELSE content END, '[^[:alnum:]]+', ' ', 'g'))
$$;

CREATE INDEX "Project_search" ON "Project" USING GIN ("search_words"("name" || ' ' || "description"));
CREATE INDEX "Thread_search" ON "Thread" USING GIN ("search_words"("title" || ' ' || "anchorLabel"));
CREATE INDEX "Comment_search" ON "Comment" USING GIN ("search_words"("text"));
CREATE INDEX "Answer_search" ON "Answer" USING GIN ("search_words"("reason"));
