// Runs wattle: never through a shell, so that names with blanks or signs stay what they are.
'use strict'
const { spawn } = require('node:child_process')

const MOST = 64 * 1024 * 1024

/** On Windows a command file needs the shell that reads it; there each argument is quoted. */
function started(command, args, options) {
  if (process.platform === 'win32' && /\.(cmd|bat)$/i.test(command)) {
    const quoted = [command, ...args].map(a => `"${a.replace(/"/g, '""')}"`).join(' ')
    return spawn(process.env.ComSpec || 'cmd.exe', ['/d', '/s', '/c', `"${quoted}"`], { ...options, windowsVerbatimArguments: true })
  }
  return spawn(command, args, options)
}

/** What a command ended with, and what it said; a program that cannot be started is an error that says so. */
function run(command, args, options = {}) {
  return new Promise((done, failed) => {
    const child = started(command, args, options)
    const out = []
    const err = []
    let size = 0
    child.stdout.on('data', part => {
      size += part.length
      if (size > MOST) child.kill()
      else out.push(part)
    })
    child.stderr.on('data', part => err.push(part))
    child.on('error', problem => failed(new Error(`${command} cannot be started (${problem.message}); set wattle.command to where it is`)))
    child.on('close', code => done({ code, out: Buffer.concat(out).toString('utf8'), err: Buffer.concat(err).toString('utf8') }))
  })
}

module.exports = { run, started }
