#!/usr/bin/env node
import { runVerb } from './commands/run.ts'

// Records, photos, mails, backups: whatever is written here is for its owner's account alone.
process.umask(0o077)

process.exitCode = await runVerb(process.argv.slice(2))
