import { copyFileSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { fileURLToPath } from 'node:url'
import pg from 'pg'
import { afterAll, beforeAll, describe } from 'vitest'
import { openDatabase, replaceDatabase, type Database } from '@/lib/data/client'
import { applyMigrations, migrationPlaces } from '@/lib/data/migration'

const folder = mkdtempSync(path.join(tmpdir(), 'bendworthy-data-'))
process.env.BENDWORTHY_DATA_FOLDER = folder
const places = migrationPlaces(fileURLToPath(new URL('../../..', import.meta.url)))

export function describeOnEachDatabase(title: string, body: () => void) {
  describe(`${title} (SQLite)`, () => {
    let database: Database
    beforeAll(async () => {
      const url = `file:${path.join(folder, 'test.db')}`
      await applyMigrations(url, places)
      database = openDatabase(url)
      replaceDatabase(database)
    }, 120000)
    afterAll(async () => {
      await database.close()
      replaceDatabase(null)
      rmSync(path.join(folder, 'test.db'))
    })
    body()
  })
  describe(`${title} (PostgreSQL)`, () => {
    let database: Database
    const name = `bw_${process.pid}_${Math.floor(Math.random() * 1e6)}`
    const admin = async (sql: string) => {
      const client = new pg.Client('postgresql://postgres@127.0.0.1:5432/postgres')
      await client.connect()
      await client.query(sql)
      await client.end()
    }
    beforeAll(async () => {
      await admin(`create database ${name}`)
      const url = `postgresql://postgres@127.0.0.1:5432/${name}`
      await applyMigrations(url, places)
      database = openDatabase(url)
      replaceDatabase(database)
    }, 120000)
    afterAll(async () => {
      await database.close()
      replaceDatabase(null)
      await admin(`drop database ${name}`)
    })
    body()
  })
}
