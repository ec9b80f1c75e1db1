// For child processes and threads of tests: lets Node run the TypeScript sources as they are, without a
// build. Each thread registers for itself.
import { register } from 'node:module'

register('./sources-load.mjs', import.meta.url)
