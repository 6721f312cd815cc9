import 'server-only'
import {
  ColumnTypeEnum,
  type SqlDriverAdapter,
  type SqlMigrationAwareDriverAdapterFactory,
} from '@prisma/driver-adapter-utils'

/**
 * Stands in for a PostgreSQL connection where the schema engine only compares two texts. On starting, the engine asks
 * for the server's version, since the dialect depends on it; it asks nothing else, and would be refused.
 */
export class PostgresDialect implements SqlMigrationAwareDriverAdapterFactory {
  readonly provider = 'postgres'
  readonly adapterName = 'postgres-dialect'

  async connect(): Promise<SqlDriverAdapter> {
    return {
      provider: this.provider,
      adapterName: this.adapterName,
      getConnectionInfo: () => ({ supportsRelationJoins: true }),
      queryRaw: async ({ sql }) => {
        if (!sql.includes('server_version_num')) return refuse()
        return {
          columnNames: ['exists', 'version', 'numeric_version'],
          columnTypes: [ColumnTypeEnum.Boolean, ColumnTypeEnum.Text, ColumnTypeEnum.Int32],
          rows: [[true, OLDEST_POSTGRES.text, OLDEST_POSTGRES.number]],
        }
      },
      executeRaw: refuse,
      executeScript: refuse,
      startTransaction: refuse,
      dispose: async () => {},
    }
  }

  connectToShadowDb(): Promise<SqlDriverAdapter> {
    return refuse()
  }
}

/** Migrations are written for this version and run on it and on later ones. */
const OLDEST_POSTGRES = { text: 'PostgreSQL 14.0', number: 140_000 }

async function refuse(): Promise<never> {
  throw new Error('No PostgreSQL server is connected here: only texts of models are compared.')
}
