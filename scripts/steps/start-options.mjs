import { parseArgs } from 'node:util'
import { StepError } from './run-program.mjs'

export const START_HELP = `npm start -- [--port 3000] [--host 127.0.0.1] [--empty]

  --port   port to listen on (or PORT)
  --host   address to listen on (or HOST); beyond this machine, demo sign-ins are refused
  --empty  a real workspace without demo data (or BENDWORTHY_EMPTY=1); remembered in the data folder

The data folder is ./data, or BENDWORTHY_DATA_FOLDER. DATABASE_URL=postgresql://... keeps the database there instead.`

/**
 * @param {string[]} args
 * @returns {{ help: boolean, dev: boolean, environment: Record<string, string> }}  what to set for the server
 * @throws {StepError} naming the option that is not known
 */
export function parseStartOptions(args) {
  try {
    const { values } = parseArgs({
      args,
      options: {
        port: { type: 'string' },
        host: { type: 'string' },
        empty: { type: 'boolean', default: false },
        dev: { type: 'boolean', default: false },
        help: { type: 'boolean', default: false },
      },
    })
    return {
      help: values.help,
      dev: values.dev,
      environment: {
        ...(values.port === undefined ? {} : { PORT: values.port }),
        ...(values.host === undefined ? {} : { HOST: values.host }),
        ...(values.empty ? { BENDWORTHY_EMPTY: '1' } : {}),
      },
    }
  } catch (error) {
    throw new StepError(`${/** @type {Error} */ (error).message}\n\n${START_HELP}`)
  }
}
