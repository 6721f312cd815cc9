-- Until now a company was whoever had been invited under its name. Its people become members of it, without a right over
-- its sheets; nothing of it is shared until an administrator, whom an admin of the workspace appoints, says so.
INSERT INTO "CompanyPerson" ("id", "companyId", "userId", "role", "createdAt")
SELECT MIN("id"), "companyId", "userId", 'member', MIN("createdAt")
FROM "Membership" WHERE "role" = 'fabricator' GROUP BY "companyId", "userId";

-- Its projects wait for its consent; who is in them, and what they wrote, stays.
INSERT INTO "Participation" ("id", "companyId", "projectId", "state", "askedAt")
SELECT MIN(part."id"), part."companyId", part."projectId", 'asked', MIN(part."at")
FROM (
    SELECT "id", "companyId", "projectId", "createdAt" AS "at" FROM "Membership" WHERE "role" = 'fabricator'
    UNION ALL
    SELECT "id", "companyId", "projectId", "createdAt" AS "at" FROM "Invitation"
    WHERE "role" = 'fabricator' AND "revokedAt" IS NULL AND "projectId" IS NOT NULL
    UNION ALL
    SELECT share."id", share."companyId", revision."projectId", share."createdAt" AS "at"
    FROM "RevisionShare" AS share JOIN "Revision" AS revision ON revision."id" = share."revisionId"
) AS part
GROUP BY part."companyId", part."projectId";
