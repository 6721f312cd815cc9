export { RemedyPanel } from './remedy-panel'
