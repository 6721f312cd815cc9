-- CreateIndex
CREATE INDEX "Revision_createdAt_id_idx" ON "Revision"("createdAt", "id");

-- CreateIndex
CREATE INDEX "Thread_openedAt_id_idx" ON "Thread"("openedAt", "id");

-- What search looks words up in: projects, threads, comments and answers. The words are kept as an index alone; texts stay where they are.
-- Raised digits are written as digits, as in a query; other signs that have several forms the index folds by itself.
-- Rows have numbers of their own here, since those that SQLite gives the rows of other tables change when a file is packed (VACUUM).
CREATE TABLE "_search_row" (
    "number" INTEGER NOT NULL PRIMARY KEY,
    "kind" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    -- What is found by it: the thread of a comment, the revision of an answer.
    "ownerId" TEXT NOT NULL
);
CREATE UNIQUE INDEX "_search_row_kind_id_key" ON "_search_row"("kind", "id");
CREATE VIRTUAL TABLE "_search_text" USING fts5("text", content='', contentless_delete=1, tokenize="unicode61 remove_diacritics 0", prefix='2 3');

CREATE TRIGGER "Project_search_insert" AFTER INSERT ON "Project"
BEGIN
  INSERT INTO "_search_row" ("kind", "id", "ownerId") VALUES ('project', NEW."id", NEW."id");
  INSERT INTO "_search_text" (rowid, "text") VALUES ((SELECT "number" FROM "_search_row" WHERE "kind" = 'project' AND "id" = NEW."id"), replace(replace(NEW."name" || ' ' || NEW."description", '²', '2'), '³', '3'));
END;

CREATE TRIGGER "Project_search_update" AFTER UPDATE OF "name", "description" ON "Project"
BEGIN
  DELETE FROM "_search_text" WHERE rowid = (SELECT "number" FROM "_search_row" WHERE "kind" = 'project' AND "id" = NEW."id");
  INSERT INTO "_search_text" (rowid, "text") VALUES ((SELECT "number" FROM "_search_row" WHERE "kind" = 'project' AND "id" = NEW."id"), replace(replace(NEW."name" || ' ' || NEW."description", '²', '2'), '³', '3'));
END;

CREATE TRIGGER "Project_search_delete" AFTER DELETE ON "Project"
BEGIN
  DELETE FROM "_search_text" WHERE rowid = (SELECT "number" FROM "_search_row" WHERE "kind" = 'project' AND "id" = OLD."id");
  DELETE FROM "_search_row" WHERE "kind" = 'project' AND "id" = OLD."id";
END;

CREATE TRIGGER "Thread_search_insert" AFTER INSERT ON "Thread"
BEGIN
  INSERT INTO "_search_row" ("kind", "id", "ownerId") VALUES ('thread', NEW."id", NEW."id");
  INSERT INTO "_search_text" (rowid, "text") VALUES ((SELECT "number" FROM "_search_row" WHERE "kind" = 'thread' AND "id" = NEW."id"), replace(replace(NEW."title" || ' ' || NEW."anchorLabel", '²', '2'), '³', '3'));
END;

CREATE TRIGGER "Thread_search_update" AFTER UPDATE OF "title", "anchorLabel" ON "Thread"
BEGIN
  DELETE FROM "_search_text" WHERE rowid = (SELECT "number" FROM "_search_row" WHERE "kind" = 'thread' AND "id" = NEW."id");
  INSERT INTO "_search_text" (rowid, "text") VALUES ((SELECT "number" FROM "_search_row" WHERE "kind" = 'thread' AND "id" = NEW."id"), replace(replace(NEW."title" || ' ' || NEW."anchorLabel", '²', '2'), '³', '3'));
END;

CREATE TRIGGER "Thread_search_delete" AFTER DELETE ON "Thread"
BEGIN
  DELETE FROM "_search_text" WHERE rowid = (SELECT "number" FROM "_search_row" WHERE "kind" = 'thread' AND "id" = OLD."id");
  DELETE FROM "_search_row" WHERE "kind" = 'thread' AND "id" = OLD."id";
END;

CREATE TRIGGER "Comment_search_insert" AFTER INSERT ON "Comment"
BEGIN
  INSERT INTO "_search_row" ("kind", "id", "ownerId") VALUES ('comment', NEW."id", NEW."threadId");
  INSERT INTO "_search_text" (rowid, "text") VALUES ((SELECT "number" FROM "_search_row" WHERE "kind" = 'comment' AND "id" = NEW."id"), replace(replace(NEW."text", '²', '2'), '³', '3'));
END;

CREATE TRIGGER "Comment_search_update" AFTER UPDATE OF "text" ON "Comment"
BEGIN
  DELETE FROM "_search_text" WHERE rowid = (SELECT "number" FROM "_search_row" WHERE "kind" = 'comment' AND "id" = NEW."id");
  INSERT INTO "_search_text" (rowid, "text") VALUES ((SELECT "number" FROM "_search_row" WHERE "kind" = 'comment' AND "id" = NEW."id"), replace(replace(NEW."text", '²', '2'), '³', '3'));
END;

CREATE TRIGGER "Comment_search_delete" AFTER DELETE ON "Comment"
BEGIN
  DELETE FROM "_search_text" WHERE rowid = (SELECT "number" FROM "_search_row" WHERE "kind" = 'comment' AND "id" = OLD."id");
  DELETE FROM "_search_row" WHERE "kind" = 'comment' AND "id" = OLD."id";
END;

CREATE TRIGGER "Answer_search_insert" AFTER INSERT ON "Answer"
BEGIN
  INSERT INTO "_search_row" ("kind", "id", "ownerId") VALUES ('answer', NEW."id", NEW."revisionId");
  INSERT INTO "_search_text" (rowid, "text") VALUES ((SELECT "number" FROM "_search_row" WHERE "kind" = 'answer' AND "id" = NEW."id"), replace(replace(NEW."reason", '²', '2'), '³', '3'));
END;

CREATE TRIGGER "Answer_search_update" AFTER UPDATE OF "reason" ON "Answer"
BEGIN
  DELETE FROM "_search_text" WHERE rowid = (SELECT "number" FROM "_search_row" WHERE "kind" = 'answer' AND "id" = NEW."id");
  INSERT INTO "_search_text" (rowid, "text") VALUES ((SELECT "number" FROM "_search_row" WHERE "kind" = 'answer' AND "id" = NEW."id"), replace(replace(NEW."reason", '²', '2'), '³', '3'));
END;

CREATE TRIGGER "Answer_search_delete" AFTER DELETE ON "Answer"
BEGIN
  DELETE FROM "_search_text" WHERE rowid = (SELECT "number" FROM "_search_row" WHERE "kind" = 'answer' AND "id" = OLD."id");
  DELETE FROM "_search_row" WHERE "kind" = 'answer' AND "id" = OLD."id";
END;

-- What is there already.
INSERT INTO "_search_row" ("kind", "id", "ownerId") SELECT 'project', o."id", o."id" FROM "Project" o;
INSERT INTO "_search_text" (rowid, "text") SELECT r."number", replace(replace(o."name" || ' ' || o."description", '²', '2'), '³', '3') FROM "Project" o JOIN "_search_row" r ON r."kind" = 'project' AND r."id" = o."id";
INSERT INTO "_search_row" ("kind", "id", "ownerId") SELECT 'thread', o."id", o."id" FROM "Thread" o;
INSERT INTO "_search_text" (rowid, "text") SELECT r."number", replace(replace(o."title" || ' ' || o."anchorLabel", '²', '2'), '³', '3') FROM "Thread" o JOIN "_search_row" r ON r."kind" = 'thread' AND r."id" = o."id";
INSERT INTO "_search_row" ("kind", "id", "ownerId") SELECT 'comment', o."id", o."threadId" FROM "Comment" o;
INSERT INTO "_search_text" (rowid, "text") SELECT r."number", replace(replace(o."text", '²', '2'), '³', '3') FROM "Comment" o JOIN "_search_row" r ON r."kind" = 'comment' AND r."id" = o."id";
INSERT INTO "_search_row" ("kind", "id", "ownerId") SELECT 'answer', o."id", o."revisionId" FROM "Answer" o;
INSERT INTO "_search_text" (rowid, "text") SELECT r."number", replace(replace(o."reason", '²', '2'), '³', '3') FROM "Answer" o JOIN "_search_row" r ON r."kind" = 'answer' AND r."id" = o."id";
