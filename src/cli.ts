#!/usr/bin/env node
import { runVerb } from './commands/run.ts'

process.exitCode = await runVerb(process.argv.slice(2))
