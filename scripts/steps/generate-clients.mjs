import { existsSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { fingerprint, isStamped, stamp } from './fingerprint.mjs'
import { inRoot } from './places.mjs'
import { runQuietly, StepError, say } from './run-program.mjs'

const MODELS = 'prisma/models.prisma'
const INPUTS = [MODELS, 'package-lock.json', 'scripts/steps/generate-clients.mjs']

/** Folder under lib/data/generated, and Prisma's name of the database. */
const CLIENTS = /** @type {const} */ ([
  { folder: 'sqlite', provider: 'sqlite' },
  { folder: 'postgres', provider: 'postgresql' },
])

/**
 * The schema that Prisma reads for one database: the shared models under a header of its own.
 * @param {'sqlite' | 'postgresql'} provider
 * @param {string} models  text of prisma/models.prisma
 * @param {string} outputFolder  where the client goes, absolute
 */
export function composeSchema(provider, models, outputFolder) {
  return `// Written from ${MODELS}; do not edit.

datasource db {
  provider = "${provider}"
}

generator client {
  provider               = "prisma-client"
  output                 = "${outputFolder.split(path.sep).join('/')}"
  runtime                = "nodejs"
  moduleFormat           = "esm"
  generatedFileExtension = "ts"
  importFileExtension    = ""
}

${models}`
}

/**
 * Write both schemas and generate both clients, unless neither the models nor the packages changed since.
 * @param {{ quiet?: boolean }} [options]  quiet prints nothing unless it fails
 * @returns {Promise<{ changed: boolean }>}
 * @throws {StepError} when the models are missing or Prisma refuses them
 */
export async function generateClients({ quiet = false } = {}) {
  if (!existsSync(inRoot(MODELS)))
    throw new StepError(`${MODELS} is missing: the database clients are generated from it.`)
  const print = fingerprint(INPUTS.filter((file) => existsSync(inRoot(file))))
  const finished = (/** @type {string} */ folder) => inRoot('lib', 'data', 'generated', folder)
  const present = CLIENTS.every(({ folder }) => existsSync(path.join(finished(folder), 'client.ts')))
  if (present && isStamped('generate', print)) return { changed: false }

  if (!quiet) say('Generating the database clients')
  const models = readFileSync(inRoot(MODELS), 'utf8')
  mkdirSync(inRoot('prisma', 'generated'), { recursive: true })
  const started = performance.now()
  await Promise.all(
    CLIENTS.map(async ({ folder, provider }) => {
      // Generated beside its place and moved there, so that a program reading the old client never sees half a new one.
      const fresh = inRoot('lib', 'data', 'generated', `.${folder}-${process.pid}`)
      const schema = inRoot('prisma', 'generated', `${folder}-${process.pid}.prisma`)
      try {
        writeFileSync(schema, composeSchema(provider, models, fresh))
        await runQuietly(
          `Generating the ${provider} client`,
          process.execPath,
          [inRoot('node_modules', 'prisma', 'build', 'index.js'), 'generate', '--schema', schema, '--no-hints'],
          // Generating needs no schema engine, but Prisma would fetch one unless it is told of a program that exists.
          {
            env: {
              PRISMA_SCHEMA_ENGINE_BINARY: process.execPath,
              PRISMA_HIDE_UPDATE_MESSAGE: '1',
              CHECKPOINT_DISABLE: '1',
            },
            quiet: true,
          },
        )
        rmSync(finished(folder), { recursive: true, force: true })
        renameSync(fresh, finished(folder))
      } finally {
        rmSync(fresh, { recursive: true, force: true })
        rmSync(schema, { force: true })
      }
    }),
  )
  stamp('generate', print)
  if (!quiet) say(`  generated in ${Math.round((performance.now() - started) / 100) / 10} s`)
  return { changed: true }
}
