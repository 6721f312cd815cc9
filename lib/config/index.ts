import 'server-only'

export { getBuildName } from './build-name'
export { now, replaceClock } from './clock'
export {
  type DatabaseKind,
  getSettings,
  isProduction,
  listSettingWarnings,
  makeEnvironment,
  parseSettings,
  type Settings,
  SettingsError,
  withoutPassword,
} from './environment'
export { enterRequest, formatLogLine, log } from './log'
export { isLoopbackOnly } from './loopback'
export { isLoopbackHost } from './loopback-host'
export { ensureSecrets, getSecrets, keepSigningKeyFile, readSigningKeyFile } from './secrets'
export { dropSetupCode, ensureSetupCode, readSetupCode } from './setup-code'
export { writeWhole } from './write-whole'
