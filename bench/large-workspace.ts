import { existsSync } from 'node:fs'
import BetterSqlite from 'better-sqlite3'
import pg from 'pg'

/** How much a workspace holds, beside the demonstration that it begins with. */
export interface WorkspaceSize {
  readonly projects: number
  readonly revisions: number
  readonly trailRecords: number
  /** Of the revisions, those that are under review; the others were superseded. */
  readonly openRevisions: number
}

/** A database as it lies there, without what the application lays over it. */
interface Sql {
  readonly ask: (text: string) => Promise<readonly Record<string, unknown>[]>
  readonly run: (text: string) => Promise<void>
  readonly close: () => Promise<void>
}

async function openSql(url: string): Promise<Sql> {
  if (url.startsWith('file:')) {
    const file = url.slice('file:'.length)
    if (!existsSync(file)) throw new Error(`there is no ${file}`)
    const database = new BetterSqlite(file)
    return {
      ask: async (text) => database.prepare(text).all() as Record<string, unknown>[],
      run: async (text) => {
        database.exec(text)
      },
      close: async () => {
        database.close()
      },
    }
  }
  const client = new pg.Client({ connectionString: url })
  await client.connect()
  return {
    ask: async (text) => (await client.query(text)).rows,
    run: async (text) => {
      await client.query(text)
    },
    close: () => client.end(),
  }
}

interface Copies {
  readonly table: string
  /** Which row is copied: a condition in SQL. */
  readonly row: string
  /** Numbers of the copies, from 1; `n.i` in the expressions. */
  readonly count: number
  /** By column, in SQL. */
  readonly instead: Readonly<Record<string, string>>
}

/** SQL that SQLite and PostgreSQL both read: recursive queries are part of the standard (ISO/IEC 9075-2, SQL:1999). */
async function copyRow(sql: Sql, { table, row, count, instead }: Copies): Promise<void> {
  if (count <= 0) return
  const [sample] = await sql.ask(`SELECT * FROM "${table}" WHERE ${row} LIMIT 1`)
  if (sample === undefined) throw new Error(`there is no row of ${table} to copy`)
  const columns = Object.keys(sample)
  const values = columns.map((column) => instead[column] ?? `o."${column}"`)
  await sql.run(
    `WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < ${count})
     INSERT INTO "${table}" (${columns.map((column) => `"${column}"`).join(', ')})
     SELECT ${values.join(', ')} FROM n, (SELECT * FROM "${table}" WHERE ${row} LIMIT 1) AS o`,
  )
}

/**
 * Makes the workspace of the demonstration large, by rows: acts would take days. Each project has everybody of the demonstration's project, so its lead
 * leads them all. The trail's records are chained to nothing: pages read them, and no check of the trail is measured here.
 */
export async function enlargeWorkspace(url: string, size: WorkspaceSize): Promise<void> {
  const sql = await openSql(url)
  try {
    await sql.run('BEGIN')
    await enlarge(sql, size)
    await sql.run('COMMIT')
    // What the databases know of their tables' sizes, as their own upkeep would tell them within minutes.
    await sql.run('ANALYZE')
  } finally {
    await sql.close()
  }
}

async function enlarge(sql: Sql, size: WorkspaceSize): Promise<void> {
  const idOf = async (table: string, where: string): Promise<string> => {
    const [row] = await sql.ask(`SELECT "id" FROM "${table}" WHERE ${where}`)
    if (row === undefined) throw new Error(`the demonstration has no such ${table}`)
    return String(row.id)
  }
  const skua = await idOf('Project', `"name" = 'Skua'`)
  const revision = await idOf('Revision', `"projectId" = '${skua}' AND "label" = 'B'`)
  const perProject = Math.max(1, Math.round(size.revisions / size.projects))
  const ofRevision = `"revisionId" = '${revision}'`
  const project = `(1 + (n.i - 1) / ${perProject})`
  const closed = size.revisions - size.openRevisions
  await copyRow(sql, {
    table: 'Project',
    row: `"id" = '${skua}'`,
    count: size.projects,
    instead: { id: `'large-' || n.i`, name: `'Large ' || n.i`, nameKey: `'large ' || n.i` },
  })
  for (const { id } of await sql.ask(`SELECT "id" FROM "Membership" WHERE "projectId" = '${skua}'`)) {
    await copyRow(sql, {
      table: 'Membership',
      row: `"id" = '${id}'`,
      count: size.projects,
      instead: { id: `o."id" || '-' || n.i`, projectId: `'large-' || n.i` },
    })
  }
  await copyRow(sql, {
    table: 'Revision',
    row: `"id" = '${revision}'`,
    count: size.revisions,
    instead: {
      id: `'revision-' || n.i`,
      projectId: `'large-' || ${project}`,
      label: `'R' || n.i`,
      labelKey: `'r' || n.i`,
      stage: `CASE WHEN n.i > ${closed} THEN 'early-review' ELSE 'superseded' END`,
      supersededById: 'NULL',
      basedOnId: 'NULL',
    },
  })
  const thread = await idOf('Thread', ofRevision)
  await copyRow(sql, {
    table: 'Thread',
    row: `"id" = '${thread}'`,
    count: size.revisions,
    instead: { id: `'thread-' || n.i`, revisionId: `'revision-' || n.i`, title: `'Cover of region ' || n.i` },
  })
  await copyRow(sql, {
    table: 'Comment',
    row: `"threadId" = '${thread}'`,
    count: size.revisions,
    instead: {
      id: `'comment-' || n.i`,
      threadId: `'thread-' || n.i`,
      ordinal: '1',
      text: `'Is lot ' || n.i || ' rolled-annealed?'`,
    },
  })
  await copyRow(sql, {
    table: 'Answer',
    row: ofRevision,
    count: size.revisions,
    instead: {
      id: `'answer-' || n.i`,
      revisionId: `'revision-' || n.i`,
      reason: `'Measured on lot ' || n.i`,
      carriedFromId: 'NULL',
    },
  })
  // Of open revisions alone: nothing that is measured reads the results of others.
  await copyRow(sql, {
    table: 'Evaluation',
    row: `${ofRevision} AND "ordinal" = (SELECT MAX("ordinal") FROM "Evaluation" WHERE ${ofRevision})`,
    count: size.openRevisions,
    instead: { id: `'results-' || n.i`, revisionId: `'revision-' || (n.i + ${closed})` },
  })
  const [newest] = await sql.ask('SELECT MAX("sequence") AS last FROM "TrailRecord"')
  const last = Number(newest?.last)
  await copyRow(sql, {
    table: 'TrailRecord',
    row: `"sequence" = ${last}`,
    count: size.trailRecords,
    instead: {
      sequence: `${last} + n.i`,
      projectId: `'large-' || (1 + n.i % ${size.projects})`,
      revisionId: `'revision-' || (1 + n.i % ${size.revisions})`,
      hash: `'of no record ' || n.i`,
    },
  })
}
