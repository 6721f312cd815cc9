export { type FlexTestContent, flexTestContentSchema } from './content'
