import 'server-only'

export { getBuildName } from './build-name'
export { now, replaceClock } from './clock'
export {
  type DatabaseKind,
  getSettings,
  isProduction,
  parseSettings,
  type Settings,
  SettingsError,
  withoutPassword,
} from './environment'
export { formatLogLine, log } from './log'
export { isLoopbackHost, isLoopbackOnly } from './loopback'
export { ensureSecrets, getSecrets, keepSigningKeyFile, readSigningKeyFile } from './secrets'
export { dropSetupCode, ensureSetupCode, readSetupCode } from './setup-code'
export { writeWhole } from './write-whole'
